package mixing_test

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/handcheck"
)

// inputs are the key=value pairs of a row; the keys before the first other pair say what to compute.
type inputs map[string]string

func (in inputs) temperature(key string) quantity.Temperature {
	if in[key] == "" {
		return quantity.Temperature{}
	}
	return quantity.MustTemperature(in[key])
}

func (in inputs) delta(key string) quantity.TemperatureDelta {
	if in[key] == "" {
		return quantity.TemperatureDelta{}
	}
	return quantity.MustDelta(in[key])
}

func (in inputs) mass(key string) quantity.Mass {
	if in[key] == "" {
		return quantity.Mass{}
	}
	return quantity.MustMass(in[key])
}

func (in inputs) factors() []mixing.Factor {
	var out []mixing.Factor
	for _, kind := range []mixing.FactorKind{mixing.FlourFactor, mixing.RoomFactor, mixing.LevainFactor} {
		if name := kind.String(); in[name] != "" {
			out = append(out, mixing.Factor{Kind: kind, Temperature: in.temperature(name)})
		}
	}
	return out
}

func number(s string) float64 {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		panic(err)
	}
	return v
}

// compute evaluates one row.
func compute(in inputs) (float64, error) {
	scale := quantity.CelsiusScale
	if in["in"] == "°F" {
		scale = quantity.FahrenheitScale
	}
	switch in["find"] {
	case "water":
		r, err := mixing.Factors{Target: in.temperature("target"), Others: in.factors(),
			Friction: in.delta("friction")}.Water()
		return r.Temperature.In(scale), err
	case "friction":
		r, err := mixing.Measured{Dough: in.temperature("dough"), Water: in.temperature("water"),
			Others: in.factors()}.Friction()
		return r.Factor.In(scale), err
	case "rise":
		n, _ := strconv.Atoi(in["factors"])
		d, err := mixing.Friction{Factor: in.delta("friction"), Factors: n}.Rise()
		return d.In(scale), err
	case "ice":
		w := mixing.IceWater{Water: in.mass("water"), Tap: in.temperature("tap"), Need: in.temperature("need")}
		if in["melting"] == "trade" {
			w.Melting = quantity.DeltaFahrenheit(144)
		}
		r, err := w.Replace()
		if in["by"] == "adding" {
			r, err = w.Add()
		}
		return r.Ice.Grams() / in.mass("water").Grams(), err
	case "absorption":
		r, err := mixing.Mix{Mixer: mixing.Planetary, Bowl: quantity.Liters(40), Flour: in.mass("flour"),
			Water: in.mass("water"), Dough: in.mass("flour").Add(in.mass("water"))}.Fit()
		return r.Absorption.Points(), err
	}
	return computeMore(in)
}

func rows(t *testing.T) [][]string {
	f, err := os.Open("testdata/published.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return all[1:]
}

func TestPublished(t *testing.T) {
	seen := map[string]bool{}
	for _, row := range rows(t) {
		id := row[0]
		if seen[id] {
			t.Errorf("%s: listed twice", id)
		}
		seen[id] = true
		in := inputs{}
		for _, pair := range strings.Split(row[2], ";") {
			k, v, ok := strings.Cut(pair, "=")
			if !ok {
				t.Fatalf("%s: no = in %q", id, pair)
			}
			in[strings.TrimSpace(k)] = strings.TrimSpace(v)
		}
		got, err := compute(in)
		if err != nil {
			t.Errorf("%s: %v", id, err)
			continue
		}
		want, tolerance := number(row[3]), number(row[4])
		if !(math.Abs(got-want) <= tolerance+1e-12*math.Abs(want)) {
			t.Errorf("%s: %s: got %v, want %v ± %v", id, row[1], got, want, tolerance)
		}
		if row[5] == "" || row[6] == "" {
			t.Errorf("%s: no reason or no source", id)
		}
		switch row[7] {
		case "published", "computed", "common practice", "from memory":
		default:
			t.Errorf("%s: status %q", id, row[7])
		}
	}
	if len(seen) < 60 {
		t.Errorf("only %d rows", len(seen))
	}
}

// mixOf is a kilogram of flour in a mixer.
func mixOf(in inputs) mixing.Mix {
	m := mixing.Mix{Flour: quantity.Kilograms(1)}
	var err error
	if m.Mixer, err = mixing.ParseMixerKind(in["mixer"]); err != nil {
		panic(err)
	}
	if in["dough"] != "" {
		if err := m.Kind.UnmarshalText([]byte(in["dough"])); err != nil {
			panic(err)
		}
	}
	if in["bowl"] != "" {
		m.Bowl = quantity.MustVolume(in["bowl"])
	}
	water := "65 %"
	if in["hydration"] != "" {
		water = in["hydration"]
	}
	m.Water = quantity.MustPercent(water).Of(m.Flour)
	m.Fat, m.Sugar = in.mass("fat"), in.mass("sugar")
	m.Dough = m.Flour.Add(m.Water).Add(m.Fat).Add(m.Sugar)
	return m
}

// computeMore has the heats.
func computeMore(in inputs) (float64, error) {
	num := func(key string) float64 {
		if in[key] == "" {
			return 0
		}
		return number(in[key])
	}
	switch in["find"] {
	case "btu per lb":
		return float64(mixing.BTUPerPound(num("value"))), nil
	case "wh per kg":
		return float64(mixing.WattHoursPerKilogram(num("value"))), nil
	case "ice cooling": // in BTU
		return float64(mixing.BTUPerPound(144)) * in.mass("ice").Kilograms() / 1.05505585262, nil
	case "warming":
		d, err := mixing.SpecificEnergy(num("energy")).Warming(mixing.SpecificHeat(num("c")))
		return d.Celsius(), err
	case "energy of rise":
		n, _ := strconv.Atoi(in["factors"])
		d, err := mixing.Friction{Factor: in.delta("friction"), Factors: n}.Rise()
		return d.Celsius() * num("c"), err
	case "hydration": // the water that takes up the heat of wetting when everything is at 15 °C
		b := mixing.Balance{
			Ingredients: []mixing.Portion{{Name: "flour", Mass: in.mass("flour"), Temperature: in.temperature("all"),
				Substance: mixing.Flour}},
			Water: in.mass("water"), WaterHeat: mixing.SpecificHeat(num("c")),
		}
		if in["per"] == "dough" {
			b.Mixing = mixing.SpecificEnergy(num("q")) // for each kilogram of dough
		} else {
			b.Hydration = mixing.SpecificEnergy(num("q"))
		}
		r, err := b.WaterFor(in.temperature("all"))
		return r.Water.Celsius(), err
	case "heat":
		for s := mixing.Flour; s <= mixing.Salt; s++ {
			if s.String() == in["of"] {
				c, _ := s.Heat(quantity.Percent{})
				return float64(c), nil
			}
		}
	case "sensitivity":
		flour := quantity.Kilograms(1)
		b := mixing.Balance{
			Ingredients: []mixing.Portion{{Mass: flour, Temperature: quantity.Celsius(20), Substance: mixing.Flour}},
			Water:       quantity.MustPercent(in["hydration"]).Of(flour), WaterTemperature: quantity.Celsius(20),
			Bowl: mixing.HeatCapacity(num("bowl")), Room: quantity.Celsius(20),
		}
		r, err := b.Final()
		return r.Sensitivity, err
	case "prior":
		k, err := mixing.ParseMixerKind(in["kind"])
		if err != nil {
			return 0, err
		}
		p, err := k.Prior()
		return p.Friction.Factor.Fahrenheit(), err
	case "capacity": // the published charts themselves, read back at their own bowl
		flour := quantity.Kilograms(10)
		water := quantity.MustPercent(in["ar"]).Of(flour)
		c := mixing.Mix{Mixer: mixing.Planetary, Bowl: quantity.MustVolume(in["bowl"]), Flour: flour, Water: water,
			Dough: flour.Add(water)}
		switch in["dough"] {
		case "sweet":
			c.Kind = mixing.EnrichedDough
		case "whole grain":
			c.Kind = mixing.WholeGrainDough
		}
		r, err := c.Fit()
		if in["end"] == "low" {
			return r.MostLow.Kilograms(), err
		}
		return r.MostHigh.Kilograms(), err
	case "knead": // minutes of a stage
		k, err := mixOf(in).Kneading()
		if err != nil {
			return 0, err
		}
		i := int(num("stage")) - 1
		if i < 0 || i >= len(k.Stages) {
			return 0, fmt.Errorf("stage %v of %v", in["stage"], k)
		}
		if in["end"] == "to" {
			return k.Stages[i].To.Duration().Minutes(), nil
		}
		return k.Stages[i].From.Duration().Minutes(), nil
	case "knead speed":
		k, err := mixOf(in).Kneading()
		if err != nil {
			return 0, err
		}
		return float64(k.Stages[int(num("stage"))-1].Speed), nil
	case "knead total":
		k, err := mixOf(in).Kneading()
		if in["end"] == "to" {
			return k.To.Duration().Minutes(), err
		}
		return k.From.Duration().Minutes(), err
	case "change": // of development, water or the factor
		c := mixing.DoughChange{From: in.temperature("from"), To: in.temperature("to"),
			Development: quantity.Elapsed(num("development") * float64(time.Minute))}
		c.SaltFrom, c.SaltTo = quantity.NewPercent(num("salt from")), quantity.NewPercent(num("salt to"))
		r, err := c.Effect()
		switch in["of"] {
		case "water":
			return r.Water.Points(), err
		case "times":
			return r.Times, err
		}
		return r.Development, err
	case "motor":
		e, err := mixing.Motor{
			Watts: num("watts"), Share: quantity.MustPercent(in["share"]),
			Time: quantity.Elapsed(num("seconds") * float64(time.Second)), Dough: in.mass("dough"),
		}.Work()
		return float64(e), err
	case "flour for":
		m := mixing.Mix{Mixer: mixing.Hand, Flour: in.mass("flour"),
			Water: quantity.MustPercent(in["now"]).Of(in.mass("flour"))}
		m.Dough = m.Flour.Add(m.Water)
		r, err := m.FlourFor(quantity.MustPercent(in["wanted"]))
		return r.Flour.Grams(), err
	case "hydration with": // of a dough with a tablespoon of flour more
		m := mixing.Mix{Mixer: mixing.Hand, Flour: in.mass("flour"),
			Water: quantity.MustPercent(in["now"]).Of(in.mass("flour"))}
		m.Dough = m.Flour.Add(m.Water)
		c, err := mixing.Sticking{Mix: m, Kneaded: quantity.Elapsed(10 * time.Minute), Rested: true}.Advise()
		if err != nil || len(c.Additions) < 2 {
			return 0, fmt.Errorf("%v, %w", c, err)
		}
		return c.Additions[1].Hydration.Points(), nil
	case "household": // kilograms of flour that a bowl takes
		m := mixOf(in)
		m.Dough = m.Flour.Add(m.Water)
		r, err := m.Fit()
		most := r.MostLow
		if in["end"] == "high" {
			most = r.MostHigh
		}
		return most.Kilograms() * m.Flour.Grams() / m.Dough.Grams(), err
	case "scald":
		r, err := mixing.Scald{
			Flour: in.mass("flour"), Water: in.mass("water"), FlourTemperature: in.temperature("at"),
			Mash: in.temperature("mash"), Bowl: mixing.HeatCapacity(num("bowl")),
		}.Pour()
		if in["of"] == "boiling" {
			return r.WithBoiling.Celsius(), err
		}
		return r.Water.Celsius(), err
	case "reduction":
		flour := quantity.Kilograms(10)
		c := mixing.Mix{Mixer: mixing.Planetary, Bowl: quantity.Liters(20), Flour: flour, Water: quantity.Kilograms(6),
			Dough: quantity.Kilograms(17)}
		plain, err := c.Fit()
		if err != nil {
			return 0, err
		}
		c.HighGluten = in["gluten"] == "high"
		c.WaterTemperature = in.temperature("water")
		less, err := c.Fit()
		if in["end"] == "high" {
			return 100 - 100*less.MostHigh.Grams()/plain.MostHigh.Grams(), err
		}
		return 100 - 100*less.MostLow.Grams()/plain.MostLow.Grams(), err
	}
	return 0, fmt.Errorf("nothing finds %q", in["find"])
}

func TestMisprints(t *testing.T) {
	f, err := os.Open("testdata/misprints.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range all[1:] {
		// A misprint is one: its own arithmetic gives something else than what is printed.
		_, value, err := handcheck.Evaluate(row[3])
		if err != nil {
			t.Errorf("%s: %v", row[0], err)
			continue
		}
		printed := row[2]
		places := 0
		if _, frac, ok := strings.Cut(printed, "."); ok {
			places = len(frac)
		}
		if strconv.FormatFloat(value, 'f', places, 64) == printed {
			t.Errorf("%s: %s is what the arithmetic gives", row[0], printed)
		}
	}
}
