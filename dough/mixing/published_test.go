package mixing_test

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
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
	for _, name := range []string{"flour", "room", "levain"} {
		if in[name] != "" {
			out = append(out, mixing.Factor{Name: name, Temperature: in.temperature(name)})
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
		r, err := mixing.WaterTemperature(mixing.Factors{Target: in.temperature("target"), Others: in.factors(), Friction: in.delta("friction")})
		return r.Temperature.In(scale), err
	case "friction":
		r, err := mixing.FrictionFromBatch(mixing.Measured{Dough: in.temperature("dough"), Water: in.temperature("water"), Others: in.factors()})
		return r.Friction.In(scale), err
	case "rise":
		n, _ := strconv.Atoi(in["factors"])
		d, err := mixing.Rise(in.delta("friction"), n)
		return d.In(scale), err
	case "ice":
		w := mixing.IceWater{Water: in.mass("water"), Tap: in.temperature("tap"), Need: in.temperature("need")}
		if in["melting"] == "trade" {
			w.Melting = mixing.TradeMelting()
		}
		f := mixing.ReplaceWithIce
		if in["by"] == "adding" {
			f = mixing.AddIce
		}
		r, err := f(w)
		return r.Ice.Grams() / in.mass("water").Grams(), err
	case "absorption":
		r, err := mixing.Fits(mixing.Capacity{Kind: mixing.Planetary, Bowl: quantity.Liters(40), Flour: in.mass("flour"), Water: in.mass("water"), Dough: in.mass("flour").Add(in.mass("water"))})
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
		if strings.Contains(row[6], "misprint") != (in["misprint"] != "") {
			t.Errorf("%s: a misprint is said in both places", id)
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
	if len(seen) < 15 {
		t.Errorf("only %d rows", len(seen))
	}
}

func computeMore(in inputs) (float64, error) { return 0, fmt.Errorf("nothing finds %q", in["find"]) }
