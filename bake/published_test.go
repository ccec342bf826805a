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

func (g given) place(t *testing.T) Site {
	t.Helper()
	if g["station"] != "" {
		p, err := ParsePressure(g["station"])
		if err != nil {
			t.Fatal(err)
		}
		return Site{Station: p}
	}
	l, err := quantity.ParseLength(g["altitude"])
	if err != nil {
		t.Fatal(err)
	}
	return At(l)
}

// word reads the word of an enumeration; without one it is the zero value.
func word[E any, P interface {
	*E
	UnmarshalText([]byte) error
}](t *testing.T, text string) E {
	t.Helper()
	var e E
	if text == "" {
		return e
	}
	if err := P(&e).UnmarshalText([]byte(text)); err != nil {
		t.Fatal(err)
	}
	return e
}

func (g given) style(t *testing.T) Style {
	t.Helper()
	return word[Style](t, g["style"])
}

func (g given) goal(t *testing.T) Goal {
	t.Helper()
	return Goal{Style: g.style(t), Place: g.place(t), Rule: word[AltitudeRule](t, g["rule"])}
}

// placeThatBoils is a place with that boiling point, found through its pressure.
func placeThatBoils(t *testing.T, celsius float64) Site {
	t.Helper()
	low, high := 400.0, 1100.0
	for range 60 {
		mid := (low + high) / 2
		b, err := Site{Station: Hectopascals(mid)}.BoilingPoint()
		if err != nil {
			t.Fatal(err)
		}
		if b.Point.Celsius() < celsius {
			low = mid
		} else {
			high = mid
		}
	}
	return Site{Station: Hectopascals(low)}
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
		b, err := in.place(t).BoilingPoint()
		fatal(err)
		sea, err := Site{}.BoilingPoint()
		fatal(err)
		return map[string]float64{
			"boiling F": b.Point.Fahrenheit(), "boiling C": b.Point.Celsius(),
			"pressure psi":   b.Pressure.pascals() / pascalPerPsi,
			"boiling drop C": sea.Point.Celsius() - b.Point.Celsius(),
		}[what]
	case "target C":
		goal := in.goal(t)
		if in["core"] != "" {
			goal.Wanted = quantity.Celsius(in.num(t, "core"))
		}
		target, err := goal.Target()
		fatal(err)
		return target.Core.Celsius()
	case "celsius":
		return in.temperature(t, "core").Celsius()
	case "accepts":
		v, err := LoafReading{Goal: in.goal(t), Core: in.temperature(t, "core")}.Judge()
		fatal(err)
		if v.InAccepted && in.temperature(t, "core").Compare(mustTarget(t, in.goal(t)).Accepted.High) <= 0 {
			return 1
		}
		return 0
	case "gas F", "gas C", "gas dial C":
		g, err := ParseGasMark(in["mark"])
		fatal(err)
		return map[string]float64{"gas F": g.Temperature().Fahrenheit(), "gas C": g.Temperature().Celsius(),
			"gas dial C": g.Dial().Celsius()}[what]
	case "bake min":
		b, err := OvenPiece{Style: in.style(t), Dough: in.mass(t, "dough")}.BakeTime()
		fatal(err)
		return b.Time.Likely.Minutes()
	case "exponent":
		return math.Log(in.num(t, "t2")/in.num(t, "t1")) / math.Log(in.num(t, "m2")/in.num(t, "m1"))
	case "scaling g":
		s, err := PromisedLoaf{
			Baked: in.mass(t, "baked"),
			Loss:  in.percent(t, "loss"),
			Basis: word[LossBasis](t, in["basis"]),
		}.Scaling()
		fatal(err)
		return s.Dough.Grams()
	case "loss %":
		v, err := LoafReading{Core: quantity.Celsius(96), Dough: in.mass(t, "dough"), Loaf: in.mass(t, "baked")}.Judge()
		fatal(err)
		return v.Loss.Points()
	case "usual loss %":
		g, err := in.style(t).UsualLoss(in.mass(t, "dough"))
		fatal(err)
		return g.Loss.Likely.Points()
	case "average g":
		a, err := (PackedWeight{Nominal: in.mass(t, "nominal")}).Limits()
		fatal(err)
		return map[string]float64{"few": a.Few.Grams(), "none": a.None.Grams()}[in["limit"]]
	case "solids loss %":
		s, err := Solids{Water: in.percent(t, "water"), OtherSolids: in.percent(t, "others")}.LeastLoss()
		fatal(err)
		return s.Loss.Points()
	case "carry high C":
		c, err := TakenOut{Core: in.temperature(t, "core")}.CarryOver()
		fatal(err)
		return c.Peak.High.Celsius()
	case "fan less C", "fan F low", "fan F high":
		d, err := OvenSetting{Wanted: in.temperature(t, "wanted"), Fan: true}.Dial()
		fatal(err)
		return map[string]float64{
			"fan less C": in.temperature(t, "wanted").Sub(d.Set).Celsius(), "fan F low": d.Advice.Low.Fahrenheit(),
			"fan F high": d.Advice.High.Fahrenheit(),
		}[what]
	case "preheat min", "covered min":
		v := word[Vessel](t, in["vessel"])
		dough := quantity.Grams(900)
		if in["dough"] != "" {
			dough = in.mass(t, "dough")
		}
		pr, err := OvenLoad{Style: in.style(t), Dough: dough, Pieces: 1, Vessel: v}.Program()
		fatal(err)
		return map[string]float64{"preheat min": pr.Preheat.Duration().Minutes(),
			"covered min": pr.Covered.Duration().Minutes()}[what]
	case "cooling likely min":
		c, err := CoolingLoaf{Style: in.style(t), Baked: in.mass(t, "baked")}.Time()
		fatal(err)
		return c.Ready.Likely.Minutes()
	case "cool min":
		// Two readings ten minutes apart that cool with that time constant; the time counts from the first.
		room, first, tau := in.num(t, "room"), in.num(t, "T1"), in.num(t, "tau")
		later := room + (first-room)*math.Exp(-10/tau)
		c, err := CoolingProbe{
			Samples: []Sample{
				{0, quantity.Celsius(first)},
				{quantity.Elapsed(10 * time.Minute), quantity.Celsius(later)},
			},
			Room: quantity.Celsius(room), Slice: quantity.Celsius(in.num(t, "slice")),
		}.TimeLeft()
		fatal(err)
		return c.Ready.Likely.Minutes() + 10
	}
	if got, ok := computeCrust(t, what, in); ok {
		return got
	}
	if got, ok := computeKeeping(t, what, in); ok {
		return got
	}
	return computeProbe(t, what, in)
}

func computeKeeping(t *testing.T, what string, in given) (float64, bool) {
	t.Helper()
	staling := func(l StoredLoaf) Staleness {
		t.Helper()
		s, err := l.Staling()
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	day := quantity.Elapsed(24 * time.Hour)
	switch what {
	case "staling %":
		var l StoredLoaf
		for _, stay := range strings.Split(in["stays"], "|") {
			long, at, _ := strings.Cut(stay, "@")
			d, err := quantity.ParseDuration(long)
			if err != nil {
				t.Fatal(err)
			}
			l.Stays = append(l.Stays, Stay{quantity.Elapsed(d), given{"at": at}.temperature(t, "at")})
		}
		return staling(l).Share.Likely.Points(), true
	case "staling tau d":
		s := staling(StoredLoaf{Stays: []Stay{{day, quantity.Celsius(in.num(t, "T"))}}})
		return -1 / math.Log(1-s.Share.Likely.Fraction()), true
	case "staling refrigerator over room":
		return staling(StoredLoaf{Stays: []Stay{{day, quantity.Celsius(4)}}}).AtRoom.Duration().Hours() / 24, true
	case "keeps h":
		keeps := staling(StoredLoaf{Style: in.style(t), Stays: []Stay{{day, quantity.Celsius(21)}}}).Keeps
		if in["get"] == "low" {
			return keeps.Low.Duration().Hours(), true
		}
		return keeps.High.Duration().Hours(), true
	}
	return 0, false
}

func computeCrust(t *testing.T, what string, in given) (float64, bool) {
	t.Helper()
	switch what {
	case "browning 1/s":
		return browningRate(in.num(t, "T")), true
	case "minutes per k":
		return 1 / browningRate(in.num(t, "T")) / 60, true
	case "dE":
		c, err := DryCrust{Surface: []Sample{
			{0, quantity.Celsius(in.num(t, "from"))}, {within(in.num(t, "min")), quantity.Celsius(in.num(t, "to"))},
			{within(in.num(t, "min") + in.num(t, "then") + 1e-6), quantity.Celsius(in.num(t, "to"))},
		}}.Color()
		if err != nil {
			t.Fatal(err)
		}
		return c.Difference, true
	case "exposure":
		return exposureOf(60*in.num(t, "min"), in.num(t, "from"), in.num(t, "to")), true
	case "min to dE":
		return -math.Log(1-in.num(t, "dE")/burnt) / browningRate(in.num(t, "T")) / 60, true
	case "front mm", "front water g", "front loss %":
		f := front{film: 25, crust: 0.06, water: 135, boiling: 100, area: 1}
		if in["area"] != "" {
			f.area = in.num(t, "area")
		}
		f.advance(in.num(t, "oven"), 60*in.num(t, "min"))
		switch what {
		case "front mm":
			return 1000 * f.depth, true
		case "front water g":
			return 1000 * f.loss(), true
		}
		return 100 * f.loss() / in.mass(t, "dough").Kilograms(), true
	case "loss of dough %", "loss of bread %":
		l, err := WeighedLoaf{Dough: in.mass(t, "dough"), Baked: in.mass(t, "baked")}.Loss()
		if err != nil {
			t.Fatal(err)
		}
		return map[string]float64{"loss of dough %": l.OfDough.Points(), "loss of bread %": l.OfBread.Points()}[what], true
	case "steam cools C":
		return coolPerPercent * in.num(t, "loss"), true
	case "whole bake min":
		// The bake that time alone proves, from when the core was at a temperature.
		g := Goal{Style: in.style(t), Wanted: quantity.Celsius(in.num(t, "core"))}
		x, err := g.target()
		if err != nil {
			t.Fatal(err)
		}
		arrival := within(in.num(t, "at")).Duration()
		return (arrival + x.bakeOut(g.Style, arrival).late).Minutes(), true
	case "air C":
		a, err := in.place(t).StandardAtmosphere()
		if err != nil {
			t.Fatal(err)
		}
		return a.Temperature.Celsius(), true
	case "loss in range":
		g, err := in.style(t).UsualLoss(in.mass(t, "dough"))
		if err != nil {
			t.Fatal(err)
		}
		if g.Loss.Contains(in.percent(t, "loss")) {
			return 1, true
		}
		return 0, true
	case "time in range":
		b, err := OvenPiece{Style: in.style(t), Dough: in.mass(t, "dough"), Extrapolate: true}.BakeTime()
		if err != nil {
			t.Fatal(err)
		}
		if b.Time.Contains(within(in.num(t, "min")).Duration()) {
			return 1, true
		}
		return 0, true
	}
	return 0, false
}

func mustTarget(t *testing.T, g Goal) CoreTarget {
	t.Helper()
	x, err := g.Target()
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
			Goal: Goal{Place: placeThatBoils(t, boiling), Wanted: quantity.Celsius(99)}, Approach: Exponential,
			Samples: []Sample{
				{quantity.Elapsed(30 * time.Minute), quantity.Celsius(in.num(t, "T1"))},
				{within(30 + in.num(t, "dt")), quantity.Celsius(in.num(t, "T2"))},
			},
			Error: quantity.DeltaCelsius(0.01), // a good probe, so that there is always an answer
		}
		if in["target"] != "" {
			p.Wanted = quantity.Celsius(in.num(t, "target"))
		}
		f := fitted{boiling: boiling, target: boiling - 1.5, sigma: 0.01, last: in.num(t, "T2")}
		if what == "left min" {
			l, err := p.TimeLeft()
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
	}
	t.Fatalf("no calculation %q", what)
	return 0
}
