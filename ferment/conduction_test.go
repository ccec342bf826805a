package ferment_test

import (
	"math"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

// first is the first root beyond 0 of a function that rises from below.
func first(f func(x float64) float64) float64 {
	low := 0.0
	for f(low+1e-3) < 0 {
		low += 1e-3
	}
	high := low + 1e-3
	for range 60 {
		if mid := (low + high) / 2; f(mid) < 0 {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

// slowest is how long the slowest exponential of a body takes, in hours: of a sphere of radius r (λ·cot λ = 1 − Bi), a
// long cylinder (λ·J₁(λ) = Bi·J₀(λ)), a slab of half-thickness r (λ·tan λ = Bi), with Bi = h·r/k; Carslaw and Jaeger,
// Conduction of Heat in Solids (1959), 3.11, 7.6 and 9.4. Dough conducts 0.41 W/(m K), with 1100 kg/m³ and 2800
// J/(kg K).
func slowest(form ferment.Form, kilograms, height, h float64) float64 {
	const conductivity, density, heat = 0.41, 1100.0, 2800.0
	volume := kilograms / density
	rate := func(r, lambda float64) float64 { return lambda * lambda * conductivity / (density * heat) / (r * r) }
	slab := func(r float64) float64 {
		return rate(r, first(func(x float64) float64 { return x*math.Sin(x) - h*r/conductivity*math.Cos(x) }))
	}
	cylinder := func(r float64) float64 {
		return rate(r, first(func(x float64) float64 { return x*math.J1(x) - h*r/conductivity*math.J0(x) }))
	}
	perSecond := 0.0
	switch form {
	case ferment.Round:
		r := math.Cbrt(3 * volume / (4 * math.Pi))
		perSecond = rate(r, first(func(x float64) float64 { return (1-h*r/conductivity)*math.Sin(x) - x*math.Cos(x) }))
	case ferment.Log:
		perSecond = cylinder(math.Sqrt(volume / (math.Pi * height)))
	case ferment.SlabOfDough:
		perSecond = slab(height / 2)
	case ferment.Tub: // as wide as it is deep: both ways at once
		r := math.Cbrt(volume / (2 * math.Pi))
		perSecond = cylinder(r) + slab(r)
	}
	return 1 / perSecond / 3600
}

// A piece of each form, and as each place and each way to stand lets heat through, takes as long as its series says.
func TestTimeConstantsOfPieces(t *testing.T) {
	through := map[ferment.Exposure]float64{ferment.Covered: 5, ferment.Open: 9, ferment.Refrigerator: 8, ferment.Fan: 20,
		ferment.RefrigeratorBasket: 5, ferment.RefrigeratorBag: 4, ferment.RefrigeratorTub: 5}
	near := func(p ferment.Piece, height, h float64) {
		t.Helper()
		got, err := p.TimeConstant()
		if want := slowest(p.Form, p.Mass.Kilograms(), height, h); err != nil || !(math.Abs(got.Hours()-want) <= 4e-4) {
			t.Errorf("%+v takes %v, want %.4f h (%v)", p, got, want, err)
		}
	}
	for _, form := range []ferment.Form{ferment.Round, ferment.Log, ferment.SlabOfDough, ferment.Tub} {
		for exposure, h := range through {
			p := ferment.Piece{Mass: quantity.Grams(870), Form: form, Start: quantity.Celsius(25), Exposure: exposure,
				Into: ferment.Room{Night: quantity.Celsius(4)}}
			height := 0.0
			switch form {
			case ferment.Log:
				height = 0.30
			case ferment.SlabOfDough:
				height = 0.06
			}
			near(p, height, h)
			p.Height = quantity.Centimeters(11)
			near(p, 0.11, h)
			p.Metallic = true
			near(p, 0.11, h+2)
			p.Crowded = true
			near(p, 0.11, (h+2)*0.75)
			p.Metallic = false
			near(p, 0.11, h*0.75)
			p.Surface, p.Crowded = 13, false
			near(p, 0.11, 13)
		}
	}
}

// A crumb of dough in a gale is as warm as its room, whatever the room does, for all the days that are laid out; and as
// long as a piece is laid out it is as warm as when it is laid out for longer.
func TestPiecesFollowARoomThatChanges(t *testing.T) {
	room := ferment.Room{Night: quantity.Celsius(16), Day: quantity.Celsius(27), Starts: span(7.25), WarmestAt: span(14)}
	crumb := ferment.Piece{Mass: quantity.Grams(10), Start: quantity.Celsius(20), Into: room, Surface: 1000}
	loaf := ferment.Piece{Mass: quantity.Grams(900), Form: ferment.Log, Start: quantity.Celsius(26), Into: room,
		Exposure: ferment.Fan}
	quick := ferment.Relaxing{Start: quantity.Celsius(20), Room: room, TimeConstant: span(1.0 / 60)}
	gale, long, drift := history(t, crumb), history(t, loaf), history(t, quick)
	for hour := 1.0; hour <= 6*24; hour += 1.0 / 3 {
		want, err := room.At(span(hour).Duration())
		if err != nil {
			t.Fatal(err)
		}
		at := func(h ferment.History) float64 { return h.At(span(hour).Duration()).Celsius() }
		if day := span(math.Mod(hour-1, 24) + 1); !(math.Abs(at(gale)-gale.At(day.Duration()).Celsius()) <= 0.025) {
			t.Fatalf("after %v h the crumb is at %v °C, on the first day at that hour at %v", hour, at(gale),
				gale.At(day.Duration()))
		}
		if c := at(gale); !(math.Abs(c-want.Celsius()) <= 0.25) { // it lags by some minutes, at 1.4 °C an hour at most
			t.Fatalf("after %v h the crumb is at %v °C, its room at %v", hour, c, want)
		}
		if c := at(drift); !(math.Abs(c-want.Celsius()) <= 0.06) { // by a minute
			t.Fatalf("after %v h what drifts in a minute is at %v °C, its room at %v", hour, c, want)
		}
	}
	for _, hours := range []float64{1, 3.5, 6, 12, 50} {
		loaf.For = span(hours)
		short := history(t, loaf)
		for part := 0.0; part <= 1; part += 0.05 {
			at := time.Duration(part * hours * float64(time.Hour))
			if a, b := short.At(at).Celsius(), long.At(at).Celsius(); !(math.Abs(a-b) <= 0.04) {
				t.Errorf("after %v a piece laid out for %v h is at %v °C, for six days at %v", at, hours, a, b)
			}
		}
		if known := short.Known(); known != span(hours).Duration() {
			t.Errorf("laid out for %v h it is known for %v", hours, known)
		}
	}
}

// A dough that drifts goes the share 1 − e^(−t/τ) of the way to its room, and where the room changes it is what the
// equation says step by step.
func TestDriftIsItsEquation(t *testing.T) {
	for _, tau := range []float64{0.2, 4, 9, 168} {
		r := ferment.Relaxing{Start: quantity.Celsius(29), Room: ferment.Room{Night: quantity.Celsius(18)},
			TimeConstant: span(tau)}
		steady := history(t, r)
		r.Room.Day, r.Room.Starts = quantity.Celsius(25), span(20)
		moving := history(t, r)
		c, last := 29.0, 0.0
		const step = 1.0 / 240
		for n := 1; n <= 240*144; n++ {
			hour := float64(n) * step
			// between two steps by the middle of the room's temperatures, exactly for the dough's own part
			room := 21.5 + 3.5*math.Cos(2*math.Pi*(20+hour-step/2-15)/24)
			c = room + (c-room)*math.Exp(-step/tau)
			if n%120 != 0 {
				continue
			}
			if got := moving.At(span(hour).Duration()).Celsius(); !(math.Abs(got-c) <= 0.012) {
				t.Fatalf("τ of %v h, after %v h: %v °C, by the equation %v", tau, hour, got, c)
			}
			want := 18 + 11*math.Exp(-hour/tau)
			if got := steady.At(span(hour).Duration()).Celsius(); !(math.Abs(got-want) <= 0.012) {
				t.Fatalf("τ of %v h in a steady room, after %v h: %v °C, want %v", tau, hour, got, want)
			}
			last = hour
		}
		if known := moving.Known(); known != span(last).Duration() || steady.Known() != known {
			t.Errorf("known for %v and %v, want six days", known, steady.Known())
		}
		var before quantity.Elapsed = -1
		for _, k := range moving.Knots() {
			if k.At <= before {
				t.Errorf("τ of %v h: a corner at %v after one at %v", tau, k.At, before)
			}
			before = k.At
		}
	}
}
