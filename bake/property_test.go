package bake

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/workcheck"
)

func anyStyle(t *rapid.T) Style { return rapid.SampledFrom(quantity.Values[Style]()).Draw(t, "style") }

func probedStyle(t *rapid.T) Style {
	return rapid.SampledFrom(quantity.Values[Style]()).Filter(Style.ByCore).Draw(t, "style")
}

func anyPlace(t *rapid.T) Site {
	z := quantity.Meters(rapid.Float64Range(-500, 9000).Draw(t, "altitude"))
	switch rapid.IntRange(0, 3).Draw(t, "kind of place") {
	case 0:
		return Site{Station: Hectopascals(rapid.Float64Range(301, 1099).Draw(t, "station"))}
	case 1:
		return Site{
			Altitude: quantity.Meters(rapid.Float64Range(-400, 4000).Draw(t, "altitude")),
			SeaLevel: Hectopascals(rapid.Float64Range(960, 1050).Draw(t, "sea level")),
		}
	}
	return At(z)
}

// A target never lies above the boiling point less the margin, moves no more than it must, and its working holds.
func TestTargetProperties(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		goal := Goal{Style: probedStyle(rt), Place: anyPlace(rt)}
		target, err := goal.Target()
		if err != nil {
			rt.Fatal(err)
		}
		if target.Core.Celsius() > target.Boiling.Celsius()-capMargin+1e-3 {
			rt.Fatalf("target %v above boiling %v less 2 °C", target.Core, target.Boiling)
		}
		sea, err := Goal{Style: goal.Style}.Target()
		if err != nil {
			rt.Fatal(err)
		}
		if !target.Capped && !(math.Abs(target.Core.Celsius()-rowOf(goal.Style).done.core) <= 1e-3) {
			rt.Fatalf("moved without need: %v", target)
		}
		if goal.Place.Altitude.Meters() > 0 && goal.Place.SeaLevel.IsZero() && goal.Place.Station.IsZero() &&
			target.Core.Compare(sea.Core) > 0 {
			rt.Fatalf("higher up the target rises: %v over %v", target, sea)
		}
		if target.From.Compare(target.Core) > 0 {
			rt.Fatalf("target outside its own range: %v", target)
		}
		for _, fault := range workcheck.Faults(target.Working()) {
			rt.Fatal(fault)
		}
	})
}

// °F and °C give the same verdict, and a verdict never gets worse when the core, the loss or the time grows.
func TestJudgeProperties(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		place := anyPlace(rt)
		b, err := place.BoilingPoint()
		if err != nil {
			rt.Fatal(err)
		}
		f := math.Round(rapid.Float64Range(100, b.Point.Fahrenheit()+3).Draw(rt, "core °F")*10) / 10
		r := LoafReading{
			Goal: Goal{Style: probedStyle(rt), Place: place},
			Core: quantity.Fahrenheit(f),
			Held: quantity.Elapsed(time.Duration(rapid.IntRange(0, 30).Draw(rt, "held")) * time.Minute),
		}
		if rapid.Bool().Draw(rt, "weighed") {
			r.Dough = quantity.Grams(rapid.Float64Range(50, 2000).Draw(rt, "dough"))
			r.Loaf = quantity.NewPercent(100 - rapid.Float64Range(0, 20).Draw(rt, "loss")).Of(r.Dough)
		}
		v, err := r.Judge()
		if err != nil {
			rt.Fatal(err)
		}
		same := r
		same.Core = quantity.Celsius((f - 32) / 1.8)
		if w, err := same.Judge(); err != nil || w.State != v.State || w.Target != v.Target {
			rt.Fatalf("°F %v, °C %v (%v)", v, w, err)
		}
		for _, fault := range workcheck.Faults(v.Working()) {
			rt.Fatal(fault)
		}
		if v.String() == "" || len(v.Cautions()) == 0 {
			rt.Fatal("a verdict without words or cautions")
		}
		if v.State != Done {
			return
		}
		better := r
		better.Held += quantity.Elapsed(5 * time.Minute)
		if w, err := better.Judge(); err != nil || w.State != Done {
			rt.Fatalf("done, but not five minutes later: %v %v", w, err)
		}
		if hotter := r.Core.Add(quantity.DeltaCelsius(0.2)); hotter.Celsius() < b.Point.Celsius()+above {
			better = r
			better.Core = hotter
			if w, err := better.Judge(); err != nil || w.State != Done {
				rt.Fatalf("done, but not at 0.2 °C more: %v %v", w, err)
			}
		}
	})
}

func risingProbe(rt *rapid.T) (Probe, float64) {
	z := rapid.Float64Range(-500, 5000).Draw(rt, "altitude")
	place := At(quantity.Meters(z))
	b, err := place.BoilingPoint()
	if err != nil {
		rt.Fatal(err)
	}
	boiling := b.Point.Celsius()
	tau := rapid.Float64Range(3, 20).Draw(rt, "tau")
	gap := rapid.Float64Range(2, 6).Draw(rt, "minutes between")
	n := rapid.IntRange(2, 5).Draw(rt, "readings")
	below := rapid.Float64Range(15, 44).Draw(rt, "first below boiling")
	p := Probe{
		Goal:     Goal{Style: probedStyle(rt), Place: place},
		Approach: rapid.SampledFrom(quantity.Values[Approach]()).Draw(rt, "approach"),
		Window:   quantity.Elapsed(time.Hour),
	}
	start := rapid.Float64Range(10, 30).Draw(rt, "start")
	for i := range n {
		o := p.Approach.ordinate(below) - gap*float64(i)/tau
		p.Samples = append(p.Samples,
			Sample{within(start + gap*float64(i)), quantity.Celsius(boiling - p.Approach.below(o))})
	}
	return p, tau
}

// Exact readings give back their time constant and their time; higher last readings leave less time; workings hold.
func TestTimeLeftProperties(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		p, tau := risingProbe(rt)
		l, err := p.TimeLeft()
		if err != nil {
			rt.Fatal(err)
		}
		for _, fault := range workcheck.Faults(l.Working()) {
			rt.Fatal(fault)
		}
		if l.String() == "" {
			rt.Fatal("no words")
		}
		if l.State != Rising {
			return
		}
		if !(math.Abs(l.TimeConstant.Duration().Minutes()-tau) <= 0.02*tau) {
			rt.Fatalf("time constant %v, want %.3f min", l.TimeConstant, tau)
		}
		last := p.Samples[len(p.Samples)-1]
		want := tau * (p.Approach.ordinate(l.Boiling.Celsius()-last.Core.Celsius()) - p.Approach.ordinate(l.Boiling.Celsius()-l.Target.Celsius()))
		if got := l.ToTarget.Likely.Minutes(); !(math.Abs(got-want) <= 0.02*want+0.02) {
			rt.Fatalf("left %.3f, want %.3f", got, want)
		}
		if l.ToTarget.Early > l.ToTarget.Likely || l.ToTarget.Likely > l.ToTarget.Late || l.ToTarget.Early < 0 {
			rt.Fatalf("range out of order: %+v", l.ToTarget)
		}
		higher := p
		higher.Samples = append([]Sample(nil), p.Samples...)
		higher.Samples[len(higher.Samples)-1].Core = last.Core.Add(quantity.DeltaCelsius(0.5))
		if h, err := higher.TimeLeft(); err != nil {
			rt.Fatal(err)
		} else if h.State == Rising && h.ToTarget.Likely >= l.ToTarget.Likely {
			rt.Fatalf("a higher reading leaves more time: %v then %v", l, h)
		}
		worse := p
		worse.Error = quantity.DeltaCelsius(2)
		if x, err := worse.TimeLeft(); err != nil {
			rt.Fatal(err)
		} else if x.State == Rising && x.ToTarget.Late < l.ToTarget.Late {
			rt.Fatalf("a worse probe gives a narrower range: %v then %v", l, x)
		}
	})
}

// More dough never bakes faster nor cools faster, and never needs a shorter program.
func TestMoreMassIsNeverFaster(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		style, shape := probedStyle(rt), rapid.SampledFrom(append(quantity.Values[Shape](), UsualShape)).
			Draw(rt, "shape")
		m := rapid.Float64Range(20, 4000).Draw(rt, "mass")
		more := m * rapid.Float64Range(1, 1.2).Draw(rt, "more")
		type times [4]time.Duration
		at := func(grams float64, derived bool) times {
			dough := quantity.Grams(grams)
			b, err := OvenPiece{Style: style, Shape: shape, Dough: dough, Extrapolate: true}.BakeTime()
			if err != nil {
				rt.Fatal(err)
			}
			c, err := CoolingLoaf{Style: style, Shape: shape, Baked: dough}.Time()
			if err != nil {
				rt.Fatal(err)
			}
			a, err := UnprobedLoaf{Goal: Goal{Style: style}, Shape: shape, Dough: dough}.Arrival()
			if err != nil {
				rt.Fatal(err)
			}
			pr, err := OvenLoad{
				Style:       style,
				Shape:       shape,
				Dough:       dough,
				Pieces:      3,
				Together:    2,
				Extrapolate: true,
			}.Program()
			if err != nil {
				rt.Fatal(err)
			}
			for _, w := range []interface{ String() string }{b, c, a, pr} {
				if w.String() == "" {
					rt.Fatal("no words")
				}
			}
			if !derived {
				return times{b.Time.Likely, c.Ready.Likely, a.Time.Likely, pr.Total.Likely}
			}
			for _, fault := range append(append(workcheck.Faults(b.Working()), workcheck.Faults(c.Working())...),
				append(workcheck.Faults(a.Working()), workcheck.Faults(pr.Working())...)...) {
				rt.Fatal(fault)
			}
			return times{b.Time.Likely, c.Ready.Likely, a.Time.Likely, pr.Total.Likely}
		}
		small, large := at(m, true), at(more, false)
		for i := range small {
			if large[i] < small[i]-time.Second {
				rt.Fatalf("%.1f g %v, %.1f g %v", m, small, more, large)
			}
		}
	})
}

// dough → bread → dough comes back to the microgram, by either basis.
func TestLossRoundTrips(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		in := PromisedLoaf{
			Baked: quantity.Micrograms(rapid.Int64Range(20_000_000, 5_000_000_000).Draw(rt, "µg")),
			Loss:  quantity.NewPercent(math.Round(rapid.Float64Range(0, 49).Draw(rt, "loss")*100) / 100),
			Basis: LossBasis(rapid.IntRange(0, 1).Draw(rt, "basis")),
		}
		s, err := in.Scaling()
		if err != nil {
			rt.Fatal(err)
		}
		var back quantity.Mass
		if in.Basis == OfDough {
			back = quantity.NewPercent(100).Sub(in.Loss).Of(s.Dough)
		} else {
			back = s.Dough.Over(quantity.NewPercent(100).Add(in.Loss))
		}
		if off, _ := back.Sub(in.Baked).Micrograms(); off < -1 || off > 1 {
			rt.Fatalf("%v -> %v -> %v", in.Baked, s.Dough, back)
		}
		for _, fault := range workcheck.Faults(s.Working()) {
			rt.Fatal(fault)
		}
	})
}

// Readings of an exact exponential give back its time constant; later slicing never comes earlier.
func TestCoolingRefitProperties(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		tau := rapid.Float64Range(15, 90).Draw(rt, "tau")
		room := rapid.Float64Range(0, 30).Draw(rt, "room")
		in := CoolingProbe{Room: quantity.Celsius(room)}
		for i := range rapid.IntRange(2, 6).Draw(rt, "readings") {
			m := 15 + 6*float64(i)
			in.Samples = append(in.Samples, Sample{within(m), quantity.Celsius(room + (92-room)*math.Exp(-m/tau))})
		}
		c, err := in.TimeLeft()
		if err != nil {
			rt.Fatal(err)
		}
		for _, fault := range workcheck.Faults(c.Working()) {
			rt.Fatal(fault)
		}
		if c.Reached {
			return
		}
		last := in.Samples[len(in.Samples)-1]
		want := tau * math.Log((last.Core.Celsius()-room)/(c.Slice.Celsius()-room))
		if got := c.Ready.Likely.Minutes(); !(math.Abs(got-want) <= 0.01*want+0.05) {
			rt.Fatalf("left %.3f, want %.3f", got, want)
		}
		cooler := in
		cooler.Slice = c.Slice.Add(quantity.DeltaCelsius(-2))
		if x, err := cooler.TimeLeft(); err != nil || x.Ready.Likely <= c.Ready.Likely {
			rt.Fatalf("a cooler core comes no later: %v, %v (%v)", c, x, err)
		}
	})
}

// Learned losses lie between what was weighed and what is usual, and the range narrows.
func TestLearnLossProperties(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		log := LossLog{Style: anyStyle(rt)}
		low, high := math.Inf(1), math.Inf(-1)
		for range rapid.IntRange(1, 20).Draw(rt, "loaves") {
			dough := rapid.Float64Range(100, 2000).Draw(rt, "dough")
			loss := rapid.Float64Range(0, 30).Draw(rt, "loss")
			log.Loaves = append(log.Loaves, WeighedLoaf{quantity.Grams(dough), quantity.Grams(dough * (1 - loss/100))})
			low, high = math.Min(low, loss), math.Max(high, loss)
		}
		l, err := log.Learn()
		if err != nil {
			rt.Fatal(err)
		}
		for _, fault := range workcheck.Faults(l.Working()) {
			rt.Fatal(fault)
		}
		low, high = math.Min(low, l.prior), math.Max(high, l.prior)
		if m := l.Mean.Points(); m < low-1e-5 || m > high+1e-5 {
			rt.Fatalf("mean %v outside %v to %v", m, low, high)
		}
		if !l.Next.Contains(l.Mean) || l.String() == "" {
			rt.Fatalf("%+v", l)
		}
	})
}

func TestOvenSettingProperties(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		in := OvenSetting{
			Wanted: quantity.Celsius(math.Round(rapid.Float64Range(100, 400).Draw(rt, "wanted"))),
			Fan:    rapid.Bool().Draw(rt, "fan"),
			Off:    quantity.DeltaCelsius(rapid.Float64Range(-40, 40).Draw(rt, "off")),
		}
		d, err := in.Dial()
		if err != nil {
			rt.Fatal(err)
		}
		if d.Working().Len() == 0 && (in.Fan || !in.Off.IsZero()) {
			rt.Fatal("a correction is not derived")
		}
		if d.Working().Len() > 0 { // a setting that is dialed as it is needs no arithmetic
			for _, fault := range workcheck.Faults(d.Working()) {
				rt.Fatal(fault)
			}
		}
		if !d.Advice.Contains(d.Set) || !in.Fan && d.Advice.Low != d.Advice.High || d.String() == "" {
			rt.Fatalf("%+v", d)
		}
		if d.Mark.IsValid() {
			if back, off := NearestMark(d.Mark.Temperature()); back != d.Mark || !off.IsZero() {
				rt.Fatalf("%v -> %v", d.Mark, back)
			}
		}
	})
	carry := func(c float64) CarryOver {
		x, err := TakenOut{Core: quantity.Celsius(c)}.CarryOver()
		if err != nil {
			t.Fatal(err)
		}
		workcheck.Verify(t, x.Working())
		return x
	}
	if a, b := carry(80), carry(90); a.Peak.Likely.Compare(b.Peak.Likely) >= 0 || a.Peak.High.Compare(a.Boiling) > 0 {
		t.Errorf("carry-over: %v, %v", a, b)
	}
	for _, g := range []float64{40, 90, 150, 250, 400, 800, 2000} {
		a, err := (PackedWeight{Nominal: quantity.Grams(g)}).Limits()
		if err != nil {
			t.Fatal(err)
		}
		workcheck.Verify(t, a.Working())
	}
	s, err := Solids{Water: quantity.MustPercent("72 %"), OtherSolids: quantity.MustPercent("2 %")}.LeastLoss()
	if err != nil {
		t.Fatal(err)
	}
	workcheck.Verify(t, s.Working())
}
