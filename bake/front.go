package bake

import (
	"math"
	"strconv"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// HeatPhase is a part of a bake at one setting of the oven.
type HeatPhase struct {
	Oven quantity.Temperature `json:"oven"`
	For  quantity.Elapsed     `json:"for"`
	// lid on or steam in: the surface stays wet, nothing dries and nothing browns
	Wet bool `json:"wet,omitzero"`
}

// OvenBake asks what a bake does to the outside of a loaf: how much water it drives off and how dark the crust gets.
type OvenBake struct {
	Style  Style         `json:"style"`
	Shape  Shape         `json:"shape,omitzero"`
	Dough  quantity.Mass `json:"dough"` // of the piece when it goes in
	Place  Site          `json:"place,omitzero"`
	Phases []HeatPhase   `json:"phases"`
	// Browning is the pace of this dough's crust in this oven over that which makes the usual bake of the style golden
	// brown; 0: 1. [OvenBake.LearnBrowning] finds it from one bake.
	Browning float64 `json:"browning,omitzero"`
}

// BakedOut is what a bake does to the outside of a loaf.
type BakedOut struct {
	answer

	Loss    quantity.Range[quantity.Percent] `json:"loss"`       // of the dough, in the oven
	Crust   quantity.Length                  `json:"crust"`      // depth of the dry crust, likely
	Surface quantity.Temperature             `json:"surface"`    // of the crust at the end, likely
	Color   Shade                            `json:"color"`      // likely
	Shades  [2]Shade                         `json:"shades"`     // from the lightest to the darkest that the range holds
	Boiling quantity.Temperature             `json:"boiling"`    // of water, here
	Dries   quantity.Elapsed                 `json:"dries"`      // how long the surface is dry
	Likely  float64                          `json:"difference"` // of the color, likely
	in      OvenBake
	front   front
	pace    float64
}

// A front is where the crust ends and the moist crumb begins, and the values it moves by.
type front struct {
	film, crust, water float64 // h in W/(m² K), k in W/(m K), water of the crumb in kg/m³
	warming            float64 // seconds until the surface boils
	area               float64 // that dries, m²
	boiling            float64 // °C
	depth              float64 // m, at the end
	surface            float64 // °C, at the end
	exposure           float64 // ∫k dt of the color
	dry                float64 // seconds that it moved
	steps              []frontStep
}

type frontStep struct{ oven, seconds, from, to float64 }

const (
	// Properties of the crust: k 0.04 to 0.055 W/(m K), Rask (1989) second hand, 0.06 with its cracks; h 20 to 30 W/(m² K)
	// with radiation, from memory; latent heat of water at 100 °C.
	crustK, leastCrustK, mostCrustK = 0.06, 0.045, 0.075
	ovenFilm, leastFilm, mostFilm   = 25.0, 20.0, 30.0
	latentHeat                      = 2.257e6 // J/kg
	crumbMoisture                   = 0.46    // of the crumb (from memory)
	// The surface boils after 3 to 6 minutes (judgment).
	surfaceWarms, soonestWarm, latestWarm = 270.0, 180.0, 360.0 // s
	// The usual bake of a style comes out golden brown (judgment): the color difference that it is given.
	guideColor       = 34.0
	frontProbability = 80.0
)

// BakeOut answers: how much water does this bake drive off, and how dark does it make the crust?
//
// Formula: once the surface boils, a dry crust grows inward: s²/(2·k) + s/h = (T_oven − T_b)·t/(ρ·L), so that over a
// phase s = k·(√((1/h + s₀/k)² + 2·(T_oven − T_b)·t/(k·ρ·L)) − 1/h). The loss is ρ·A·s. The surface is at T_s = T_b +
// (T_oven − T_b)·(h·s/k)/(1 + h·s/k), and colors as [DryCrust.Color]. Symbols: s depth of the crust; h film, 25 W/(m²
// K); k crust, 0.06 W/(m K); ρ water in the crumb, 0.46 of its density; L 2.257 MJ/kg; A the area that dries: top and
// sides, half of the base, and a third of what stands in a tin. Valid range: 20 g to 5 kg, ovens of 120 to 350 °C,
// breads with a middle. While the lid is on or the steam in nothing dries; the surface needs 3 to 6 minutes to boil.
// Accuracy: computed physics, nothing fitted to loaves. With 2 points for cooling it lies within 5 points of the
// table of usual losses ([Style.UsualLoss]) over styles and sizes, 2.3 on average; baguettes and rolls come out too
// moist, large loaves too dry. The range claims 80 % and is a judgment. Color is a band around the usual bake of the
// style, which is taken to be golden brown: fit it to one bake of your own. Errors: [quantity.ErrRequired],
// [quantity.ErrOutOfRange], [quantity.ErrModelRange] (a thin bread). Source: evaporation front at the boiling point,
// Zanoni, Peri and Pierucci (1993); the loss rate at its maximum in the second period, course text after Auerman;
// kinetics of color, Zanoni, Peri and Bruno (1995).
func (in OvenBake) BakeOut() (BakedOut, error) {
	boiling, err := in.check()
	if err != nil {
		return BakedOut{}, err
	}
	likely := in.move(boiling, ovenFilm, crustK, surfaceWarms)
	least := in.move(boiling, leastFilm, leastCrustK, latestWarm)
	most := in.move(boiling, mostFilm, mostCrustK, soonestWarm)
	loss := func(f front) quantity.Percent { return quantity.NewPercent(f.loss() / in.Dough.Kilograms() * 100) }
	out := BakedOut{
		Loss: quantity.Range[quantity.Percent]{
			Low:    loss(least),
			Likely: loss(likely), High: loss(most), Probability: quantity.NewPercent(frontProbability),
		},
		Crust:   quantity.Meters(likely.depth),
		Surface: quantity.Celsius(likely.surface), Boiling: quantity.Celsius(boiling),
		Dries: quantity.Elapsed(seconds(likely.dry)), in: in, front: likely,
	}
	f := factor(in.Browning) * in.guidePace(boiling)
	out.pace = f
	out.Likely = colorAfter(f * likely.exposure)
	out.Color = shadeOf(out.Likely)
	// A factor of 1.5 on the exposure is 10 °C of the surface.
	out.Shades = [2]Shade{
		shadeOf(colorAfter(f * likely.exposure / 1.5)),
		shadeOf(colorAfter(f * likely.exposure * 1.5)),
	}
	return out, nil
}

// LearnBrowning answers: how fast does this dough brown in this oven, when the bake as it was gave that shade?
//
// Formula: f = −ln(1 − ΔE/52)/I with the middle of the shade as ΔE and I of [OvenBake.BakeOut] without a factor.
// Put the answer into Browning of further bakes. Valid range: bakes whose surface was dry. Accuracy: half a shade.
// Errors: as [OvenBake.BakeOut]; [quantity.ErrModelRange] where nothing could brown.
// Source: Zanoni, Peri and Bruno (1995).
func (in OvenBake) LearnBrowning(saw Shade) (float64, error) {
	boiling, err := in.check()
	if err != nil {
		return 0, err
	}
	var p quantity.Problems
	if !shades.Check(&p, "Shade", saw) {
		return 0, p.ErrFor(in)
	}
	exposure := in.guidePace(boiling) * in.move(boiling, ovenFilm, crustK, surfaceWarms).exposure
	if exposure < 0.01 {
		return 0, &quantity.InputError{
			GoPath: "Phases",
			Got:    quantity.Tell("bake.got_bake_whose_surface_never_was", "a bake whose surface never was dry and hot"),
			Want:   quantity.Tell("bake.want_bake_without_lid_and_steam", "a bake without lid and steam at its end"),
			Err:    quantity.ErrModelRange,
		}
	}
	return -math.Log(1-saw.middle()/burnt) / exposure, nil
}

func (in OvenBake) check() (boiling float64, err error) {
	var p quantity.Problems
	if styles.Check(&p, "Style", in.Style) && !in.Style.ByCore() {
		p.Add("Style", in.Style, quantity.Tell("bake.want_bread_middle_thin_breads_dry",
			"a bread with a middle; thin breads dry through"), quantity.ErrModelRange)
	}
	shapes.CheckIfGiven(&p, "Shape", in.Shape)
	quantity.Check(&p, "Dough", in.Dough, quantity.Grams(20), quantity.Grams(5000))
	ok := checkSiteField(&p, in.Place)
	if len(in.Phases) == 0 {
		p.Required("Phases", quantity.Tell("bake.want_at_least_one_phase_bake", "at least one phase of the bake"))
	}
	if len(in.Phases) > mostPhases {
		p.Int("Phases", len(in.Phases), 1, mostPhases)
		return 0, p.ErrFor(in)
	}
	for i, h := range in.Phases {
		path := "Phases[" + strconv.Itoa(i) + "]"
		quantity.Check(&p, path+".Oven", h.Oven, quantity.Celsius(120), quantity.Celsius(350))
		p.Duration(path+".For", h.For.Duration(), time.Second, 24*time.Hour)
	}
	checkBrowning(&p, in.Browning)
	if ok {
		_, boiling, err = in.Place.boil()
		p.Join("Place", err)
	}
	return boiling, p.ErrFor(in)
}

const mostPhases = 100

// guidePace is the pace of browning that makes the usual bake of the style golden brown.
func (in OvenBake) guidePace(boiling float64) float64 {
	row := rowOf(in.Style)
	vessel := UsualVessel.of(in.Style)
	if row.shape == Tin {
		vessel = TinPan
	}
	covered := coveredOf(in.Style, vessel, row.bake.minutes)
	guide := OvenBake{Style: in.Style, Dough: quantity.Grams(row.bake.grams), Phases: []HeatPhase{
		{Oven: quantity.Celsius(row.oven[0]), For: quantity.Elapsed(minutes(covered)), Wet: true},
		{Oven: quantity.Celsius(row.oven[1]), For: quantity.Elapsed(minutes(row.bake.minutes - covered))},
	}}
	return -math.Log(1-guideColor/burnt) / guide.move(boiling, ovenFilm, crustK, surfaceWarms).exposure
}

// move lets the front run through the phases.
func (in OvenBake) move(boiling, film, k, warming float64) front {
	c := rowOf(in.Style).crumb
	loss, _, _, _ := usualLoss(in.Style, in.Dough.Grams())
	volume := in.Dough.Grams() * (1 - loss/100) * c.mlPerGram * 1e-6
	f := front{
		film:    film,
		crust:   k,
		water:   crumbMoisture * 1000 / c.mlPerGram,
		warming: warming,
		boiling: boiling,
		surface: boiling,
	}
	f.area = in.Shape.For(in.Style).drying(volume)
	cold := warming
	for _, h := range in.Phases {
		t := h.For.Duration().Seconds()
		warm := math.Min(cold, t)
		cold -= warm
		if t -= warm; h.Wet || t <= 0 {
			continue
		}
		f.advance(h.Oven.Celsius(), t)
	}
	return f
}

// advance moves the front for a time at one temperature of the oven.
func (f *front) advance(oven, t float64) {
	from := f.depth
	at := func(t float64) float64 {
		gap := 1/f.film + from/f.crust
		return f.crust * (math.Sqrt(gap*gap+2*(oven-f.boiling)*t/(f.crust*f.water*latentHeat)) - 1/f.film)
	}
	skin := func(t float64) float64 {
		biot := f.film * at(t) / f.crust
		return f.boiling + (oven-f.boiling)*biot/(1+biot)
	}
	const parts = 60
	for i := range parts {
		f.exposure += exposureOf(t/parts, skin(t*float64(i)/parts), skin(t*float64(i+1)/parts))
	}
	f.depth, f.surface, f.dry = at(t), skin(t), f.dry+t
	f.steps = append(f.steps, frontStep{oven, t, from, f.depth})
}

// loss is the water that the front has driven off, in kg.
func (f front) loss() float64 { return f.water * f.area * f.depth }

// drying is the area of a loaf of a volume in m³ that dries, in m².
func (s Shape) drying(volume float64) float64 {
	switch s {
	case Long, Thin:
		slender := 6.0
		if s == Thin {
			slender = 18
		}
		r := math.Cbrt(volume / (slender * math.Pi))
		return 0.875*2*math.Pi*r*slender*r + 2*math.Pi*r*r
	case Tin:
		w := math.Cbrt(volume / 2)
		return 2*w*w + (2*w*w+4*w*w+2*w*w)/3 // the top whole, base and walls a third
	case Sheet, Flat:
		return volume / 0.025 * 1.5
	case Ball:
		r := math.Cbrt(3 * volume / (4 * math.Pi))
		return 0.85 * 4 * math.Pi * r * r
	}
	r := math.Cbrt(volume / math.Pi)
	return math.Pi*r*r + 2*math.Pi*r*r + math.Pi*r*r/2
}

// BakeOut answers for the program of a batch, each piece baked its likely time: how much water does it drive off, and
// how dark does the crust get? See [OvenBake.BakeOut].
func (pr Program) BakeOut() (BakedOut, error) { return pr.OvenBake().BakeOut() }

// OvenBake is the bake of one piece of the program, at its likely times.
func (pr Program) OvenBake() OvenBake {
	b := OvenBake{Style: pr.in.Style, Shape: pr.in.Shape, Dough: pr.in.Dough}
	if pr.Covered > 0 {
		b.Phases = append(b.Phases, HeatPhase{Oven: pr.Oven, For: pr.Covered, Wet: true})
	}
	if pr.Uncovered.Likely > 0 {
		b.Phases = append(b.Phases, HeatPhase{Oven: pr.Then, For: quantity.Elapsed(pr.Uncovered.Likely)})
	}
	return b
}

// String prints "8.9 % to 13.5 % (80 %), likely 11.2 %, of the dough lost in the oven; crust 7.8 mm, golden brown
// (pale golden to dark brown)".
func (b BakedOut) String() string { return b.message().String() }

func (b BakedOut) message() working.Message {
	return working.Tell("bake.baked_out", "%.1f to %.1f (%v), likely %.1f, of the dough lost in the oven; crust %v, %v",
		b.Loss.Low, b.Loss.High, b.Loss.Probability, b.Loss.Likely, b.millimeters(), b.shade())
}

func (b BakedOut) millimeters() working.Message {
	return working.Tell("bake.millimeters", "%.0f mm", b.front.depth*1000)
}

func (b BakedOut) shade() working.Message {
	if b.Shades[0] == b.Shades[1] {
		return working.Tell("bake.shade", "%v", b.Color)
	}
	return working.Tell("bake.shade_band", "%v (%v to %v)", b.Color, b.Shades[0], b.Shades[1])
}
