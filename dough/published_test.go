package dough_test

import (
	"strings"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/handcheck"
	"example.org/maslin/internal/published"
)

func TestPublishedFigures(t *testing.T) {
	finders := map[string]published.Finder{}
	for name, find := range formulaChecks {
		finders[name] = func(in *published.Inputs) (float64, error) { return find(in), nil }
	}
	published.Check(t, "testdata/published.csv", 150, finders)
}

func TestMisprints(t *testing.T) {
	published.Misprints(t, "testdata/misprints.csv", false, func(line string) (float64, error) {
		_, v, err := handcheck.Evaluate(line)
		return v, err
	})
}

var formulaChecks = map[string]func(in *published.Inputs) float64{
	"allergens": checkAllergens,
	"formula":   checkFormula,
	"weights":   checkWeights,
	"feed":      checkFeeding,
	"rehydrate": checkRehydrate,
	"reading":   checkReading,
	"yield":     checkYield,
	"usual":     checkUsual,
	"total":     checkTotal,
	"convert":   func(in *published.Inputs) float64 { return in.Mass("mass").In(in.Unit("unit")) },
}

var foodKinds = map[string]dough.Kind{"milk": dough.KindMilk, "egg": dough.KindEgg, "butter": dough.KindButter,
	"fresh yeast": dough.KindFreshYeast}

// formulaOf reads a formula: lists of percentages, and up to two preferments under pre and pre2.
func formulaOf(in *published.Inputs) dough.Formula {
	f := dough.Formula{
		Flours: partsOf(in, "flours"), Liquids: partsOf(in, "liquids"), Others: partsOf(in,
			"others"), Inclusions: partsOf(in, "inclusions"),
	}
	if in.Has("salt") {
		f.Salt = in.Percent("salt")
	}
	for _, pre := range []string{"pre", "pre2"} {
		if !in.Has(pre) {
			continue
		}
		name, share, _ := strings.Cut(in.Text(pre), ":")
		pf := dough.Preferment{Name: name, Flour: percentIn(in, share), Hydration: in.Percent(pre + ".hydration"),
			Blend: partsOf(in, pre+".blend"), Others: partsOf(in, pre+".others")}
		if in.Has(pre + ".seed") {
			pf.Seed = seedOf(in, pre+".seed")
		}
		f.Preferments = append(f.Preferments, pf)
	}
	return f
}

func seedOf(in *published.Inputs, key string) dough.Seed {
	var s dough.Seed
	fields := strings.Split(in.Text(key), "/") // "20%/100%/removed"
	s.Percent, s.Hydration = percentIn(in, fields[0]), percentIn(in, fields[1])
	if err := s.Account.UnmarshalText([]byte(fields[2])); err != nil {
		in.Fail("%v", err)
	}
	return s
}

func partsOf(in *published.Inputs, key string) []dough.Part {
	if !in.Has(key) {
		return nil
	}
	names, values := in.List(key)
	var out []dough.Part
	for i, v := range values {
		out = append(out, dough.Part{Name: names[i], Percent: percentIn(in, v), Kind: foodKinds[names[i]]})
	}
	return out
}

func percentIn(in *published.Inputs, text string) quantity.Percent {
	p, err := quantity.ParsePercent(text)
	if err != nil {
		in.Fail("%v", err)
	}
	return p
}

func massIn(in *published.Inputs, text string) quantity.Mass {
	m, err := quantity.ParseMass(text)
	if err != nil {
		in.Fail("%v", err)
	}
	return m
}

func checkFormula(in *published.Inputs) float64 {
	f := formulaOf(in)
	var target dough.Target
	switch {
	case in.Has("dough"):
		target = dough.ByDough{Mass: in.Mass("dough")}
	case in.Has("flour"):
		target = dough.ByFlour{Mass: in.Mass("flour")}
	default:
		target = dough.ByFlour{Mass: quantity.Kilograms(1)}
	}
	b, err := f.For(target)
	if err != nil {
		in.Fail("%v", err)
	}
	if in.Has("flour up to") {
		if b, _, err = b.FlourUp(in.Mass("flour up to")); err != nil {
			in.Fail("%v", err)
		}
	}
	return read(in, b)
}

// weightsOf reads a dough as it was weighed. "30g/88.13%" gives an ingredient's water content.
func weightsOf(in *published.Inputs) dough.Weights {
	w := dough.Weights{Final: bowlOf(in, "")}
	for _, pre := range []string{"pre", "pre2"} {
		if !in.Has(pre) {
			continue
		}
		pf := dough.PrefermentWeights{Name: in.Text(pre), Bowl: bowlOf(in, pre+".")}
		if in.Has(pre + ".seed") {
			fields := strings.Split(in.Text(pre+".seed"), "/") // "0.253kg/80%/counted"
			pf.Seed.Mass, pf.Seed.Hydration = massIn(in, fields[0]), percentIn(in, fields[1])
			if err := pf.Seed.Account.UnmarshalText([]byte(fields[2])); err != nil {
				in.Fail("%v", err)
			}
		}
		if in.Has(pre + ".used") {
			pf.Used = in.Mass(pre + ".used")
		}
		w.Preferments = append(w.Preferments, pf)
	}
	return w
}

func bowlOf(in *published.Inputs, prefix string) dough.Bowl {
	list := func(key string) []dough.Weight {
		if !in.Has(prefix + key) {
			return nil
		}
		names, values := in.List(prefix + key)
		var out []dough.Weight
		for i, v := range values {
			mass, water, _ := strings.Cut(v, "/")
			w := dough.Weight{Name: names[i], Mass: massIn(in, mass), Kind: foodKinds[names[i]]}
			if water != "" {
				w.Water = percentIn(in, water)
			}
			out = append(out, w)
		}
		return out
	}
	b := dough.Bowl{Flours: list("flours"), Liquids: list("liquids"), Others: list("others"),
		Inclusions: list("inclusions")}
	if in.Has(prefix + "salt") {
		b.Salt = in.Mass(prefix + "salt")
	}
	return b
}

func checkWeights(in *published.Inputs) float64 {
	b, err := weightsOf(in).Batch()
	if err != nil {
		in.Fail("%v", err)
	}
	return read(in, b)
}

// read takes one figure out of a batch: "line:NAME", "share:NAME", "true:NAME" of the overall formula,
// "final:NAME" and "final share:NAME" of the weighing list, "build:NAME" and "build:NAME:LINE" of what
// is made beforehand, and the figures of the whole.
func read(in *published.Inputs, b dough.Batch) float64 {
	what, name, _ := strings.Cut(in.Text("get"), ":")
	line := func(lines []dough.DoughLine, name string) dough.DoughLine {
		l := lineOf(lines, name)
		if l.Name == "" {
			in.Fail("no line %q", name)
		}
		return l
	}
	build := func(name string) dough.Build {
		out, ok := b.Build(name)
		if !ok {
			in.Fail("no build %q", name)
		}
		return out
	}
	switch what {
	case "total":
		return b.Total().Points()
	case "dough":
		return b.Dough().In(in.Unit("unit"))
	case "flour":
		return b.Flour().In(in.Unit("unit"))
	case "water":
		return b.Water().In(in.Unit("unit"))
	case "hydration":
		return b.Hydration().Points()
	case "salt":
		return b.SaltShare().Points()
	case "prefermented":
		return b.Prefermented().Points()
	case "effective":
		e := b.EffectiveHydration()
		if len(e.Unknown)+len(e.Assumed) > 0 {
			in.Fail("water content not stated: %v", e)
		}
		return e.Hydration.Points()
	case "net yield":
		y, err := b.DoughYield().Net()
		if err != nil {
			in.Fail("%v", err)
		}
		return y.Points()
	case "line":
		return line(b.Overall(), name).Mass.In(in.Unit("unit"))
	case "share":
		return line(b.Overall(), name).Percent.Points()
	case "true":
		return b.ShareOfDough(name).Points()
	case "final":
		return line(b.FinalDough(), name).Mass.In(in.Unit("unit"))
	case "final share":
		return line(b.FinalDough(), name).Percent.Points()
	case "build hydration":
		return build(name).Hydration().Points()
	case "build made":
		return build(name).Made.In(in.Unit("unit"))
	case "build":
		name, item, ok := strings.Cut(name, ":")
		if !ok {
			return build(name).Used.In(in.Unit("unit"))
		}
		return line(build(name).Lines, item).Mass.In(in.Unit("unit"))
	case "build share":
		name, item, _ := strings.Cut(name, ":")
		return line(build(name).Lines, item).Percent.Points()
	case "levain":
		var r dough.LevainReading
		if err := r.UnmarshalText([]byte(in.Text("reading"))); err != nil {
			in.Fail("%v", err)
		}
		p, ok := b.LevainPercent(name, r)
		if !ok {
			in.Fail("no levain %q", name)
		}
		return p.Points()
	}
	in.Fail("cannot get %q", what)
	return 0
}

func checkFeeding(in *published.Inputs) float64 {
	f := dough.Feeding{
		Starter: dough.Starter{Mass: in.Mass("starter"),
			Hydration: in.Percent("hydration")}, Flour: in.Mass("flour"), Water: in.Mass("water"),
	}
	switch get := in.Text("get"); get {
	case "hydration":
		return f.Hydration().Points()
	case "of new flour":
		return f.Inoculation(dough.OfNewFlour).Points()
	case "of mix":
		return f.Inoculation(dough.OfMix).Points()
	case "made":
		return f.Made().In(in.Unit("unit"))
	case "starter flour":
		return f.Starter.Flour().In(in.Unit("unit"))
	case "starter water":
		return f.Starter.Water().In(in.Unit("unit"))
	default:
		in.Fail("cannot get %q", get)
		return 0
	}
}

func checkRehydrate(in *published.Inputs) float64 {
	r, err := dough.LevainBuild{
		Want: in.Mass("made"), Hydration: in.Percent("to"), Starter: dough.Starter{Mass: in.Mass("starter"),
			Hydration: in.Percent("from")},
		Stages: 1, Most: pc("1000 %"),
	}.Plan()
	if err != nil || !r.Reached || !r.LeftOver.IsZero() {
		in.Fail("%v %v", r, err)
	}
	if in.Text("get") == "flour" {
		return r.Stages[0].Flour.In(in.Unit("unit"))
	}
	return r.Stages[0].Water.In(in.Unit("unit"))
}

func checkReading(in *published.Inputs) float64 {
	l := dough.PrintedLevain{Percent: in.Percent("levain"), Hydration: in.Percent("hydration")}
	if err := l.Reading.UnmarshalText([]byte(in.Text("reading"))); err != nil {
		in.Fail("%v", err)
	}
	if in.Has("total") {
		l.Total = in.Percent("total")
	}
	x, err := l.Flour()
	if err != nil {
		in.Fail("%v", err)
	}
	return x.Points()
}

func checkYield(in *published.Inputs) float64 {
	y := dough.DoughYield{Flour: in.Mass("flour")}
	if in.Has("rest") {
		y.Rest = in.Mass("rest")
		gross, err := y.Gross()
		if err != nil {
			in.Fail("%v", err)
		}
		return gross.Points()
	}
	y.Liquid = in.Mass("liquid")
	net, err := y.Net()
	if err != nil {
		in.Fail("%v", err)
	}
	return net.Points()
}

func checkUsual(in *published.Inputs) float64 {
	var k dough.PrefermentKind
	if err := k.UnmarshalText([]byte(in.Text("kind"))); err != nil {
		in.Fail("%v", err)
	}
	usual, ok := k.UsualHydration()
	if !ok {
		in.Fail("nothing is published of %v", k)
	}
	if in.Text("get") == "low" {
		return usual.Low.Points()
	}
	return usual.High.Points()
}

// checkTotal adds up 100 % of flour and the parts.
func checkTotal(in *published.Inputs) float64 {
	names, values := in.List("parts")
	f := dough.Formula{Flours: []dough.Part{{Name: "flour", Percent: pc("100 %")}}}
	for i, name := range names {
		if part := (dough.Part{Name: name, Percent: percentIn(in, values[i])}); name == "water" {
			f.Liquids = append(f.Liquids, part)
		} else {
			f.Others = append(f.Others, part)
		}
	}
	b, err := f.For(dough.ByFlour{Mass: quantity.Grams(1000)})
	if err != nil {
		in.Fail("%v", err)
	}
	return b.Total().Points()
}
