// Package bakesim bakes a loaf numerically: heat conduction in a sphere, cylinder or slab by finite
// volumes, with a moving evaporation front held at the local boiling point, a dry crust growing behind it,
// conductivity that rises with the vapor in the pores, and a surface heated by air and radiation. It is the
// truth against which the minutes-left model of package bake is tested, and shares nothing with that model.
//
// Physics after Zanoni, Peri and Pierucci, Journal of Food Engineering 19 (1993) 389 (front at the boiling
// point, crumb tending to it, crust tending to the oven) and Purlis and Salvadori, Journal of Food
// Engineering 90 (2009) 400 (enthalpy form).
package bakesim

import "math"

// Loaf is what is baked and how.
type Loaf struct {
	Dimension    int     // 1 slab, 2 cylinder, 3 sphere
	Radius       float64 // half thickness or radius, m
	Density      float64 // kg/m³ of the risen dough
	Water        float64 // kg of water per kg of dough
	Start        float64 // °C
	Boiling      float64 // °C, local
	Oven         float64 // °C at first
	Then         float64 // °C after Switch; 0: as Oven
	Switch       float64 // s
	Surface      float64 // W/(m² K), convection and radiation together
	Conductivity float64 // of the cold dough, W/(m K)
	VaporShare   float64 // added conductivity at boiling, W/(m K): evaporation and condensation in the pores
	Out          float64 // s, when it leaves the oven; 0: never
	Room         float64 // °C
	Still        float64 // W/(m² K) in the room
}

// Point is the state at a time.
type Point struct {
	Seconds float64
	Core    float64 // °C
	Mean    float64 // °C
	Surface float64 // °C
	Loss    float64 // kg of water lost per kg of dough
}

const (
	latent       = 2.257e6 // J/kg
	crumbHeat    = 2800.0  // J/(kg K), moist
	crustHeat    = 1680.0  // J/(kg K), Rask 1989
	crustConduct = 0.055   // W/(m K), Rask 1989
)

// Bake runs the loaf for a time and returns a point every `every` seconds.
func Bake(l Loaf, until, every float64) []Point {
	const n = 40
	dx := l.Radius / n
	edge := make([]float64, n+1) // areas of the faces
	volume := make([]float64, n) // of the cells
	h := make([]float64, n)      // enthalpy above the start, J/kg of dough
	temp := make([]float64, n)   // °C
	d := float64(l.Dimension)
	for i := 0; i <= n; i++ {
		edge[i] = math.Pow(float64(i)*dx, d-1)
	}
	total := 0.0
	for i := range volume {
		volume[i] = (math.Pow(float64(i+1)*dx, d) - math.Pow(float64(i)*dx, d)) / d
		total += volume[i]
		temp[i] = l.Start
	}
	toBoil := crumbHeat * (l.Boiling - l.Start)
	dry := l.Water * latent
	state := func(h float64) (t, evaporated float64) {
		switch {
		case h <= toBoil:
			return l.Start + h/crumbHeat, 0
		case h <= toBoil+dry:
			return l.Boiling, (h - toBoil) / latent
		}
		return l.Boiling + (h-toBoil-dry)/crustHeat, l.Water
	}
	evaporated := make([]float64, n)
	conduct := func(i int) float64 {
		wet := 1 - evaporated[i]/l.Water
		// The vapor in the pores carries heat in proportion to the slope of the saturation pressure,
		// roughly e^(0.045·T).
		k := l.Conductivity + l.VaporShare*math.Exp(0.045*(math.Min(temp[i], l.Boiling)-l.Boiling))
		return crustConduct + (k-crustConduct)*wet
	}
	step := 0.2 * dx * dx * l.Density * crustHeat / (l.Conductivity + l.VaporShare)
	var out []Point
	flux := make([]float64, n+1)
	k := make([]float64, n)
	next := 0.0
	for t := 0.0; t <= until+1e-9; t += step {
		if t >= next-1e-9 {
			p := Point{Seconds: t, Core: temp[0], Surface: temp[n-1]}
			for i := range volume {
				p.Mean += temp[i] * volume[i] / total
				p.Loss += evaporated[i] * volume[i] / total
			}
			out = append(out, p)
			next += every
		}
		air, surface := l.Oven, l.Surface
		if l.Then != 0 && t > l.Switch {
			air = l.Then
		}
		if l.Out > 0 && t >= l.Out {
			air, surface = l.Room, l.Still
		}
		for i := range k {
			k[i] = conduct(i)
		}
		for i := 1; i < n; i++ {
			harmonic := 2 * k[i-1] * k[i] / (k[i-1] + k[i])
			flux[i] = edge[i] * harmonic * (temp[i-1] - temp[i]) / dx // outward
		}
		outer := 1 / (1/surface + dx/2/k[n-1])
		flux[n] = edge[n] * outer * (temp[n-1] - air)
		for i := range h {
			h[i] += step * (flux[i] - flux[i+1]) / (volume[i] * l.Density)
			// Steam that has left does not come back: cooling below boiling takes sensible heat only.
			temp[i], evaporated[i] = keepDry(state, h[i], evaporated[i], toBoil, l)
			if evaporated[i] > 0 && temp[i] < l.Boiling {
				h[i] = toBoil + evaporated[i]*latent - crumbHeat*(l.Boiling-temp[i])
			}
		}
	}
	return out
}

// keepDry is the state of a cell that never takes evaporated water back.
func keepDry(state func(float64) (float64, float64), h, gone, toBoil float64, l Loaf) (t, evaporated float64) {
	t, evaporated = state(h)
	if evaporated >= gone {
		return t, evaporated
	}
	// Below the enthalpy at which that much had gone: the cell cools.
	return l.Boiling - (toBoil+gone*latent-h)/crumbHeat, gone
}

// At is the core temperature at a time, by straight lines between points.
func At(points []Point, seconds float64) Point {
	for i := 1; i < len(points); i++ {
		if points[i].Seconds >= seconds {
			a, b := points[i-1], points[i]
			f := (seconds - a.Seconds) / (b.Seconds - a.Seconds)
			mix := func(x, y float64) float64 { return x + f*(y-x) }
			return Point{seconds, mix(a.Core, b.Core), mix(a.Mean, b.Mean), mix(a.Surface, b.Surface), mix(a.Loss, b.Loss)}
		}
	}
	return points[len(points)-1]
}

// Reaches is when the core first is at a temperature, in seconds; +Inf if never.
func Reaches(points []Point, core float64) float64 {
	for i := 1; i < len(points); i++ {
		if a, b := points[i-1], points[i]; b.Core >= core {
			return a.Seconds + (core-a.Core)/(b.Core-a.Core)*(b.Seconds-a.Seconds)
		}
	}
	return math.Inf(1)
}
