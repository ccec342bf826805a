package bake

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
)

type given map[string]string

func (g given) num(t *testing.T, key string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(g[key], 64)
	if err != nil {
		t.Fatalf("input %s: %v", key, err)
	}
	return x
}

func (g given) temperature(t *testing.T, key string) quantity.Temperature {
	t.Helper()
	x, err := quantity.ParseTemperature(g[key])
	if err != nil {
		t.Fatalf("input %s: %v", key, err)
	}
	return x
}

func (g given) mass(t *testing.T, key string) quantity.Mass {
	t.Helper()
	x, err := quantity.ParseMass(g[key])
	if err != nil {
		t.Fatalf("input %s: %v", key, err)
	}
	return x
}

func (g given) percent(t *testing.T, key string) quantity.Percent {
	t.Helper()
	if g[key] == "" {
		return quantity.Percent{}
	}
	x, err := quantity.ParsePercent(g[key])
	if err != nil {
		t.Fatalf("input %s: %v", key, err)
	}
	return x
}

func (g given) place(t *testing.T) Place {
	t.Helper()
	if g["station"] != "" {
		p, err := ParsePressure(g["station"])
		if err != nil {
			t.Fatal(err)
		}
		return Place{Station: p}
	}
	l, err := quantity.ParseLength(g["altitude"])
	if err != nil {
		t.Fatal(err)
	}
	return At(l)
}

func (g given) style(t *testing.T) Style {
	t.Helper()
	s, err := ParseStyle(g["style"])
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func (g given) goal(t *testing.T) Goal {
	t.Helper()
	rule, err := ParseRule(g["rule"])
	if err != nil {
		t.Fatal(err)
	}
	return Goal{Style: g.style(t), Place: g.place(t), Rule: rule}
}

// placeThatBoils is a place with that boiling point, found through its pressure.
func placeThatBoils(t *testing.T, celsius float64) Place {
	t.Helper()
	low, high := 400.0, 1100.0
	for range 60 {
		mid := (low + high) / 2
		b, err := BoilingPoint(Place{Station: Hectopascals(mid)})
		if err != nil {
			t.Fatal(err)
		}
		if b.Point.Celsius() < celsius {
			low = mid
		} else {
			high = mid
		}
	}
	return Place{Station: Hectopascals(low)}
}

func TestPublished(t *testing.T) {
	f, err := os.Open("testdata/published.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) < 130 {
		t.Fatalf("only %d rows", len(rows))
	}
	for _, row := range rows[1:] {
		t.Run(row[0], func(t *testing.T) {
			in := given{}
			for _, pair := range strings.Split(row[2], ";") {
				key, value, _ := strings.Cut(pair, "=")
				in[key] = value
			}
			want, err1 := strconv.ParseFloat(row[3], 64)
			tolerance, err2 := strconv.ParseFloat(row[4], 64)
			if err1 != nil || err2 != nil {
				t.Fatal(row)
			}
			got := compute(t, row[1], in)
			if !(math.Abs(got-want) <= tolerance+1e-9*math.Abs(want)) {
				t.Errorf("%s(%s) = %.8g, want %g ± %g (%s)", row[1], row[2], got, want, tolerance, row[6])
			}
		})
	}
}

func compute(t *testing.T, what string, in given) float64 {
	t.Helper()
	fatal := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	switch what {
	case "boiling F", "boiling C", "pressure psi", "boiling drop C":
		b, err := BoilingPoint(in.place(t))
		fatal(err)
		sea, err := BoilingPoint(Place{})
		fatal(err)
		return map[string]float64{
			"boiling F": b.Point.Fahrenheit(), "boiling C": b.Point.Celsius(), "pressure psi": b.Pressure.pascals() / pascalPerPsi,
			"boiling drop C": sea.Point.Celsius() - b.Point.Celsius(),
		}[what]
	case "target C":
		goal := in.goal(t)
		if in["core"] != "" {
			goal.Wanted = quantity.Celsius(in.num(t, "core"))
		}
		target, err := TargetFor(goal)
		fatal(err)
		return target.Core.Celsius()
	case "celsius":
		return in.temperature(t, "core").Celsius()
	case "accepts":
		v, err := Judge(Reading{Goal: in.goal(t), Core: in.temperature(t, "core")})
		fatal(err)
		if v.InAccepted && in.temperature(t, "core").Compare(mustTarget(t, in.goal(t)).To) <= 0 {
			return 1
		}
		return 0
	case "gas F", "gas C", "gas dial C":
		g, err := ParseGasMark(in["mark"])
		fatal(err)
		return map[string]float64{"gas F": g.Temperature().Fahrenheit(), "gas C": g.Temperature().Celsius(), "gas dial C": g.Dial().Celsius()}[what]
	case "bake min":
		b, err := BakingTime(BakeTimeInput{Style: in.style(t), Dough: in.mass(t, "dough")})
		fatal(err)
		return b.Time.Likely.Minutes()
	case "exponent":
		return math.Log(in.num(t, "t2")/in.num(t, "t1")) / math.Log(in.num(t, "m2")/in.num(t, "m1"))
	case "scaling g":
		basis, err := ParseBasis(in["basis"])
		fatal(err)
		s, err := ScalingWeight(Weighing{Baked: in.mass(t, "baked"), Loss: in.percent(t, "loss"), Basis: basis})
		fatal(err)
		return s.Dough.Grams()
	case "loss %":
		v, err := Judge(Reading{Core: quantity.Celsius(96), Dough: in.mass(t, "dough"), Loaf: in.mass(t, "baked")})
		fatal(err)
		return v.Loss.Points()
	case "usual loss %":
		g, err := UsualLoss(in.style(t), in.mass(t, "dough"))
		fatal(err)
		return g.Likely.Points()
	case "average g":
		a, err := AverageRule(in.mass(t, "nominal"))
		fatal(err)
		return map[string]float64{"few": a.Few.Grams(), "none": a.None.Grams()}[in["limit"]]
	case "solids loss %":
		s, err := LossForSolids(Solids{Water: in.percent(t, "water"), OtherSolids: in.percent(t, "others")})
		fatal(err)
		return s.Loss.Points()
	case "carry high C":
		c, err := CarryOverFrom(Carrying{Core: in.temperature(t, "core")})
		fatal(err)
		return c.Peak.High.Celsius()
	case "fan less C", "fan F low", "fan F high":
		d, err := OvenSetting(Setting{Wanted: in.temperature(t, "wanted"), Fan: true})
		fatal(err)
		return map[string]float64{
			"fan less C": in.temperature(t, "wanted").Sub(d.Set).Celsius(), "fan F low": d.Low.Fahrenheit(), "fan F high": d.High.Fahrenheit(),
		}[what]
	case "preheat min", "covered min":
		v, err := ParseVessel(in["vessel"])
		fatal(err)
		dough := quantity.Grams(900)
		if in["dough"] != "" {
			dough = in.mass(t, "dough")
		}
		pr, err := Plan(Batch{Style: in.style(t), Dough: dough, Pieces: 1, Vessel: v})
		fatal(err)
		return map[string]float64{"preheat min": pr.Preheat.Minutes(), "covered min": pr.Covered.Minutes()}[what]
	case "cooling likely min":
		c, err := CoolTime(Cooling{Style: in.style(t), Baked: in.mass(t, "baked")})
		fatal(err)
		return c.Ready.Likely.Minutes()
	case "cool min":
		// Two readings ten minutes apart that cool with that time constant; the time counts from the first.
		room, first, tau := in.num(t, "room"), in.num(t, "T1"), in.num(t, "tau")
		later := room + (first-room)*math.Exp(-10/tau)
		c, err := RefitCooling(CoolingProbe{
			Samples: []Sample{{0, quantity.Celsius(first)}, {10 * time.Minute, quantity.Celsius(later)}},
			Room:    quantity.Celsius(room), Slice: quantity.Celsius(in.num(t, "slice")),
		})
		fatal(err)
		return c.Ready.Likely.Minutes() + 10
	}
	return computeProbe(t, what, in)
}

func mustTarget(t *testing.T, g Goal) Target {
	t.Helper()
	x, err := TargetFor(g)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

func computeProbe(t *testing.T, what string, in given) float64 {
	t.Helper()
	switch what {
	case "tau min", "left min", "lead":
		boiling := in.num(t, "boiling")
		p := Probe{
			Goal: Goal{Place: placeThatBoils(t, boiling), Wanted: quantity.Celsius(99)},
			Samples: []Sample{
				{30 * time.Minute, quantity.Celsius(in.num(t, "T1"))},
				{minutes(30 + in.num(t, "dt")), quantity.Celsius(in.num(t, "T2"))},
			},
			Error: quantity.DeltaCelsius(0.01), // a good probe, so that there is always an answer
		}
		if in["target"] != "" {
			p.Wanted = quantity.Celsius(in.num(t, "target"))
		}
		f := fitted{boiling: boiling, target: boiling - 1.5, sigma: 0.01, last: in.num(t, "T2")}
		if what == "left min" {
			l, err := TimeLeft(p)
			if err != nil {
				t.Fatal(err)
			}
			return l.ToTarget.Likely.Minutes()
		}
		f.line, f.first = fitApproach(Exponential, p.Samples, p.Samples[1].At, boiling, 0.01)
		tau := -1 / f.line.Slope
		if what == "lead" {
			// A in T = T_b − (T_b − T₀)·A·e^(−t/τ) through the first reading.
			return (boiling - in.num(t, "T1")) / (boiling - in.num(t, "start")) * math.Exp(in.num(t, "at")/tau)
		}
		return tau
	case "bun D z":
		var points []DeathPoint
		for _, pair := range strings.Split(in["D"], ",") {
			d, at, _ := strings.Cut(pair, "@")
			points = append(points, DeathPoint{quantity.Celsius(given{"x": at}.num(t, "x")), minutes(given{"x": d}.num(t, "x"))})
		}
		o, err := FitZ(in["organism"], points)
		if err != nil {
			t.Fatal(err)
		}
		return o.Z.Celsius()
	}
	var organism Organism
	for _, o := range Organisms() {
		if o.Name == in["organism"] {
			organism = o
		}
	}
	switch what {
	case "D min":
		return organism.DecimalTime(in.temperature(t, "core")).Minutes()
	case "five log min":
		return 5 * organism.DecimalTime(in.temperature(t, "core")).Minutes()
	case "ramp log":
		from, to := in.temperature(t, "from"), in.temperature(t, "to")
		l, err := LogReduction(Heating{Organism: organism, Samples: []Sample{{0, from}, {minutes(to.Sub(from).Celsius() / in.num(t, "rate")), to}}})
		if err != nil {
			t.Fatal(err)
		}
		return l.LogReduction
	}
	t.Fatalf("no calculation %q", what)
	return 0
}
