package dough_test

import (
	"strings"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
)

var formulaChecks = map[string]check{
	"formula":   checkFormula,
	"weights":   checkWeights,
	"feed":      checkFeeding,
	"rehydrate": checkRehydrate,
	"reading":   checkReading,
	"yield":     checkYield,
	"milk":      checkMilk,
	"usual":     checkUsual,
}

var foodKinds = map[string]dough.Kind{"milk": dough.KindMilk, "egg": dough.KindEgg, "butter": dough.KindButter, "fresh yeast": dough.KindFreshYeast}

// formulaOf reads a formula: lists of percentages, and up to two preferments under pre and pre2.
func formulaOf(in *inputs) dough.Formula {
	f := dough.Formula{
		Flours: partsOf(in, "flours"), Liquids: partsOf(in, "liquids"), Others: partsOf(in, "others"), Inclusions: partsOf(in, "inclusions"),
	}
	if in.has("salt") {
		f.Salt = in.percent("salt")
	}
	for _, pre := range []string{"pre", "pre2"} {
		if !in.has(pre) {
			continue
		}
		name, share, _ := strings.Cut(in.text(pre), ":")
		pf := dough.Preferment{Name: name, Flour: percentIn(in, share), Hydration: in.percent(pre + ".hydration"), Blend: partsOf(in, pre+".blend"), Others: partsOf(in, pre+".others")}
		if in.has(pre + ".seed") {
			pf.Seed = seedOf(in, pre+".seed")
		}
		f.Preferments = append(f.Preferments, pf)
	}
	return f
}

func seedOf(in *inputs, key string) dough.Seed {
	var s dough.Seed
	fields := strings.Split(in.text(key), "/") // "20%/100%/removed"
	s.Percent, s.Hydration = percentIn(in, fields[0]), percentIn(in, fields[1])
	if err := s.Account.UnmarshalText([]byte(fields[2])); err != nil {
		in.t.Fatal(err)
	}
	return s
}

func partsOf(in *inputs, key string) []dough.Part {
	if !in.has(key) {
		return nil
	}
	names, values := in.list(key)
	var out []dough.Part
	for i, v := range values {
		out = append(out, dough.Part{Name: names[i], Percent: percentIn(in, v), Kind: foodKinds[names[i]]})
	}
	return out
}

func percentIn(in *inputs, text string) quantity.Percent {
	p, err := quantity.ParsePercent(text)
	if err != nil {
		in.t.Fatal(err)
	}
	return p
}

func massIn(in *inputs, text string) quantity.Mass {
	m, err := quantity.ParseMass(text)
	if err != nil {
		in.t.Fatal(err)
	}
	return m
}

func massUnit(in *inputs) quantity.MassUnit {
	u, ok := map[string]quantity.MassUnit{"g": quantity.Gram, "kg": quantity.Kilogram, "oz": quantity.Ounce, "lb": quantity.Pound}[in.text("unit")]
	if !ok {
		in.t.Fatal("unknown unit")
	}
	return u
}

func checkFormula(in *inputs) float64 {
	f := formulaOf(in)
	var target dough.Target
	switch {
	case in.has("dough"):
		target = dough.ByDough{Mass: in.mass("dough")}
	case in.has("flour"):
		target = dough.ByFlour{Mass: in.mass("flour")}
	default:
		target = dough.ByFlour{Mass: quantity.Kilograms(1)}
	}
	b, err := f.For(target)
	if err != nil {
		in.t.Fatal(err)
	}
	if in.has("flour up to") {
		if b, _, err = b.FlourUp(in.mass("flour up to")); err != nil {
			in.t.Fatal(err)
		}
	}
	return read(in, b)
}

// weightsOf reads a dough as it was weighed. "30g/88.13%" gives an ingredient's water content.
func weightsOf(in *inputs) dough.Weights {
	w := dough.Weights{Final: bowlOf(in, "")}
	for _, pre := range []string{"pre", "pre2"} {
		if !in.has(pre) {
			continue
		}
		pf := dough.PrefermentWeights{Name: in.text(pre), Bowl: bowlOf(in, pre+".")}
		if in.has(pre + ".seed") {
			fields := strings.Split(in.text(pre+".seed"), "/") // "0.253kg/80%/counted"
			pf.Seed.Mass, pf.Seed.Hydration = massIn(in, fields[0]), percentIn(in, fields[1])
			if err := pf.Seed.Account.UnmarshalText([]byte(fields[2])); err != nil {
				in.t.Fatal(err)
			}
		}
		if in.has(pre + ".used") {
			pf.Used = in.mass(pre + ".used")
		}
		w.Preferments = append(w.Preferments, pf)
	}
	return w
}

func bowlOf(in *inputs, prefix string) dough.Bowl {
	list := func(key string) []dough.Weight {
		if !in.has(prefix + key) {
			return nil
		}
		names, values := in.list(prefix + key)
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
	b := dough.Bowl{Flours: list("flours"), Liquids: list("liquids"), Others: list("others"), Inclusions: list("inclusions")}
	if in.has(prefix + "salt") {
		b.Salt = in.mass(prefix + "salt")
	}
	return b
}

func checkWeights(in *inputs) float64 {
	b, err := weightsOf(in).Batch()
	if err != nil {
		in.t.Fatal(err)
	}
	return read(in, b)
}

// read takes one figure out of a batch: "line:NAME", "share:NAME", "true:NAME" of the overall formula,
// "final:NAME" and "final share:NAME" of the weighing list, "build:NAME" and "build:NAME:LINE" of what
// is made beforehand, and the figures of the whole.
func read(in *inputs, b dough.Batch) float64 {
	what, name, _ := strings.Cut(in.text("get"), ":")
	line := func(lines []dough.Line, name string) dough.Line {
		l := lineOf(lines, name)
		if l.Name == "" {
			in.t.Fatalf("no line %q", name)
		}
		return l
	}
	build := func(name string) dough.Build {
		out, ok := b.Build(name)
		if !ok {
			in.t.Fatalf("no build %q", name)
		}
		return out
	}
	switch what {
	case "total":
		return b.Total().Points()
	case "dough":
		return b.Dough().In(massUnit(in))
	case "flour":
		return b.Flour().In(massUnit(in))
	case "water":
		return b.Water().In(massUnit(in))
	case "hydration":
		return b.Hydration().Points()
	case "salt":
		return b.SaltShare().Points()
	case "prefermented":
		return b.Prefermented().Points()
	case "effective":
		h, unknown := b.EffectiveHydration()
		if len(unknown) > 0 {
			in.t.Errorf("water content not stated: %v", unknown)
		}
		return h.Points()
	case "net yield":
		y, err := b.DoughYield().Net()
		if err != nil {
			in.t.Fatal(err)
		}
		return y.Points()
	case "line":
		return line(b.Overall(), name).Mass.In(massUnit(in))
	case "share":
		return line(b.Overall(), name).Percent.Points()
	case "true":
		return b.ShareOfDough(name).Points()
	case "final":
		return line(b.FinalDough(), name).Mass.In(massUnit(in))
	case "final share":
		return line(b.FinalDough(), name).Percent.Points()
	case "build hydration":
		return build(name).Hydration().Points()
	case "build made":
		return build(name).Made.In(massUnit(in))
	case "build":
		name, item, ok := strings.Cut(name, ":")
		if !ok {
			return build(name).Used.In(massUnit(in))
		}
		return line(build(name).Lines, item).Mass.In(massUnit(in))
	case "build share":
		name, item, _ := strings.Cut(name, ":")
		return line(build(name).Lines, item).Percent.Points()
	case "levain":
		var r dough.LevainReading
		if err := r.UnmarshalText([]byte(in.text("reading"))); err != nil {
			in.t.Fatal(err)
		}
		p, ok := b.LevainPercent(name, r)
		if !ok {
			in.t.Fatalf("no levain %q", name)
		}
		return p.Points()
	}
	in.t.Fatalf("cannot get %q", what)
	return 0
}

func checkFeeding(in *inputs) float64 {
	f := dough.Feeding{
		Culture: dough.Culture{Mass: in.mass("culture"), Hydration: in.percent("hydration")}, Flour: in.mass("flour"), Water: in.mass("water"),
	}
	switch get := in.text("get"); get {
	case "hydration":
		return f.Hydration().Points()
	case "of new flour":
		return f.Inoculation(dough.OfNewFlour).Points()
	case "of mix":
		return f.Inoculation(dough.OfMix).Points()
	case "made":
		return f.Made().In(massUnit(in))
	case "culture flour":
		return f.Culture.Flour().In(massUnit(in))
	case "culture water":
		return f.Culture.Water().In(massUnit(in))
	default:
		in.t.Fatalf("cannot get %q", get)
		return 0
	}
}

func checkRehydrate(in *inputs) float64 {
	r, err := dough.Rehydrate{
		Culture: dough.Culture{Mass: in.mass("culture"), Hydration: in.percent("from")}, Hydration: in.percent("to"), Mass: in.mass("made"),
	}.Plan()
	if err != nil || !r.Reached {
		in.t.Fatal(r, err)
	}
	if in.text("get") == "flour" {
		return r.Feeding.Flour.In(massUnit(in))
	}
	return r.Feeding.Water.In(massUnit(in))
}

func checkReading(in *inputs) float64 {
	l := dough.LevainShare{Percent: in.percent("levain"), Hydration: in.percent("hydration")}
	if err := l.Reading.UnmarshalText([]byte(in.text("reading"))); err != nil {
		in.t.Fatal(err)
	}
	if in.has("total") {
		l.Total = in.percent("total")
	}
	x, err := l.Flour()
	if err != nil {
		in.t.Fatal(err)
	}
	return x.Points()
}

func checkYield(in *inputs) float64 {
	y := dough.DoughYield{Flour: in.mass("flour")}
	if in.has("rest") {
		y.Rest = in.mass("rest")
		gross, err := y.Gross()
		if err != nil {
			in.t.Fatal(err)
		}
		return gross.Points()
	}
	y.Liquid = in.mass("liquid")
	net, err := y.Net()
	if err != nil {
		in.t.Fatal(err)
	}
	return net.Points()
}

func checkMilk(in *inputs) float64 {
	m, err := dough.InPlaceOfWater(in.mass("water"), in.percent("content"))
	if err != nil {
		in.t.Fatal(err)
	}
	return m.In(massUnit(in))
}

func checkUsual(in *inputs) float64 {
	var k dough.PrefermentKind
	if err := k.UnmarshalText([]byte(in.text("kind"))); err != nil {
		in.t.Fatal(err)
	}
	low, high, _, ok := k.UsualHydration()
	if !ok {
		in.t.Fatalf("nothing is published of %v", k)
	}
	if in.text("get") == "low" {
		return low.Points()
	}
	return high.Points()
}
