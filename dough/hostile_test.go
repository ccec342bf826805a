package dough_test

import (
	"encoding"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/trial"

	"github.com/google/go-cmp/cmp"
)

var (
	badPercents = []quantity.Percent{
		quantity.NewPercent(math.NaN()), quantity.NewPercent(math.Inf(1)), quantity.NewPercent(math.Inf(-1)),
		quantity.NewPercent(1e300),
		quantity.NewPercent(-1), pc("900000000 %"), pc("-900000000 %"),
	}
	badMasses = []quantity.Mass{
		quantity.Grams(math.NaN()), quantity.Grams(math.Inf(1)), quantity.Grams(math.Inf(-1)), quantity.Grams(1e300),
		quantity.Grams(-1),
		quantity.Kilograms(1e6), quantity.Kilograms(-1e6),
	}
	long = strings.Repeat("x", 1<<20)
)

// refused fails unless err says what is wrong in a few words.
func refused(t *testing.T, what string, err error) {
	t.Helper()
	if err == nil {
		t.Errorf("%s was accepted", what)
		return
	}
	if n := len(err.Error()); n > 4000 {
		t.Errorf("%s: an error text of %d bytes", what, n)
	}
	if len(quantity.InputErrors(err)) == 0 {
		t.Errorf("%s: %v is no InputError", what, err)
	}
	for _, e := range quantity.InputErrors(err) {
		if e.Err == nil || e.Want.IsZero() {
			t.Errorf("%s: %v gives no reason or nothing that is accepted", what, e)
		}
	}
}

func TestImpossibleFormulasAreRefused(t *testing.T) {
	ok := dough.ByDough{Mass: quantity.Grams(1000)}
	spoil := map[string]func(*dough.Formula){
		"no flour":              func(f *dough.Formula) { f.Flours = nil },
		"no liquid":             func(f *dough.Formula) { f.Liquids = nil },
		"no water":              func(f *dough.Formula) { f.Liquids[0].Percent = pc("0 %") },
		"flours of 95 %":        func(f *dough.Formula) { f.Flours[0].Percent = pc("75 %") },
		"flours of 100.000001%": func(f *dough.Formula) { f.Flours[0].Percent = pc("80.000001 %") },
		"no name":               func(f *dough.Formula) { f.Flours[0].Name = "" },
		"a megabyte of name":    func(f *dough.Formula) { f.Flours[0].Name = long },
		"a name twice":          func(f *dough.Formula) { f.Liquids[0].Name = "bread flour" },
		"two salts":             func(f *dough.Formula) { f.Others = []dough.Part{{Name: "salt", Percent: pc("1 %")}} },
		"unknown kind":          func(f *dough.Formula) { f.Flours[0].Kind = 200 },
		"wet beyond 100 %":      func(f *dough.Formula) { f.Flours[0].Water = pc("101 %") },
		"salt of 101 %":         func(f *dough.Formula) { f.Salt = pc("101 %") },
		"too many lines":        func(f *dough.Formula) { f.Others = make([]dough.Part, 100_000) },
		"a total of 6000 %": func(f *dough.Formula) {
			for i := range 6 {
				f.Others = append(f.Others, dough.Part{Name: fmt.Sprint("much ", i), Percent: pc("1000 %")})
			}
		},
		"levain without a name":   func(f *dough.Formula) { f.Preferments[0].Name = "" },
		"levain without flour":    func(f *dough.Formula) { f.Preferments[0].Flour = pc("0 %") },
		"levain of 101 %":         func(f *dough.Formula) { f.Preferments[0].Flour = pc("101 %") },
		"levain without water":    func(f *dough.Formula) { f.Preferments[0].Hydration = pc("0 %") },
		"levain at 1001 %":        func(f *dough.Formula) { f.Preferments[0].Hydration = pc("1001 %") },
		"unknown kind of levain":  func(f *dough.Formula) { f.Preferments[0].Kind = 200 },
		"levain of unknown flour": func(f *dough.Formula) { f.Preferments[0].Blend[0].Name = "spelt" },
		"levain of water":         func(f *dough.Formula) { f.Preferments[0].Blend[0].Name = "water" },
		"levain flours of 90 %":   func(f *dough.Formula) { f.Preferments[0].Blend[0].Percent = pc("90 %") },
		"salt that is not there":  func(f *dough.Formula) { f.Salt = pc("0 %"); f.Preferments[0].Salt = pc("1 %") },
		"malt that is not there": func(f *dough.Formula) {
			f.Preferments[0].Others = []dough.Part{{Name: "malt",
				Percent: pc("1 %")}}
		},
		"flour among the others": func(f *dough.Formula) {
			f.Preferments[0].Others = []dough.Part{{Name: "whole rye", Percent: pc("1 %")}}
		},
		"water twice": func(f *dough.Formula) {
			f.Preferments[0].Others = []dough.Part{{Name: "water",
				Percent: pc("1 %")}}
		},
		"more rye than there is":   func(f *dough.Formula) { f.Preferments[0].Flour = pc("20.00001 %") },
		"more water than there is": func(f *dough.Formula) { f.Preferments[0].Hydration = pc("500 %") },
		"a nest with more than all": func(f *dough.Formula) {
			p := f.Preferments[0]
			p.Name = "inner"
			p.Flour = pc("16 %")
			f.Preferments[0].Preferments = []dough.Preferment{p}
		},
		"a nest and a second levain with more than all": func(f *dough.Formula) {
			outer, inner, second := f.Preferments[0], f.Preferments[0], f.Preferments[0]
			inner.Name, inner.Flour = "inner", pc("5 %")
			outer.Preferments = []dough.Preferment{inner}
			second.Name, second.Flour = "second", pc("6 %")
			f.Preferments = []dough.Preferment{outer, second}
		},
		"a nest inside itself": func(f *dough.Formula) { f.Preferments[0].Preferments = f.Preferments },
		"nine levels": func(f *dough.Formula) {
			p := f.Preferments[0]
			for i := range 9 {
				q := f.Preferments[0]
				q.Name = fmt.Sprint("outer ", i)
				q.Preferments = []dough.Preferment{p}
				p = q
			}
			f.Preferments = []dough.Preferment{p}
		},
		"a hundred levains":         func(f *dough.Formula) { f.Preferments = make([]dough.Preferment, 100) },
		"starter without hydration": func(f *dough.Formula) { f.Preferments[0].Seed.Hydration = pc("0 %") },
		"starter of 1001 %":         func(f *dough.Formula) { f.Preferments[0].Seed.Percent = pc("1001 %") },
		"starter of 91 % of mix": func(f *dough.Formula) {
			f.Preferments[0].Seed.Percent = pc("91 %")
			f.Preferments[0].Seed.Of = dough.OfMix
		},
		"starter wetter than all": func(f *dough.Formula) {
			f.Preferments[0].Seed = dough.Seed{Percent: pc("300 %"), Hydration: pc("1000 %")}
		},
		"unknown account":   func(f *dough.Formula) { f.Preferments[0].Seed.Account = 200 },
		"unknown basis":     func(f *dough.Formula) { f.Preferments[0].Seed.Of = 200 },
		"soaker of nothing": func(f *dough.Formula) { f.Soakers = []dough.Soaker{{Name: "soaker"}} },
		"soaker of seeds that are not there": func(f *dough.Formula) {
			f.Soakers = []dough.Soaker{{Name: "soaker", Parts: []dough.Part{{Name: "seeds", Percent: pc("5 %")}}}}
		},
		"soaker named as the levain": func(f *dough.Formula) {
			f.Soakers = []dough.Soaker{{Name: "levain", Parts: []dough.Part{{Name: "water", Percent: pc("5 %")}}}}
		},
		"unknown soaker": func(f *dough.Formula) {
			f.Soakers = []dough.Soaker{{Name: "s", Kind: 200, Parts: []dough.Part{{Name: "water", Percent: pc("5 %")}}}}
		},
	}
	for i, p := range badPercents {
		places := map[string]func(*dough.Formula) *quantity.Percent{
			"flour":         func(f *dough.Formula) *quantity.Percent { return &f.Flours[0].Percent },
			"liquid":        func(f *dough.Formula) *quantity.Percent { return &f.Liquids[0].Percent },
			"salt":          func(f *dough.Formula) *quantity.Percent { return &f.Salt },
			"water content": func(f *dough.Formula) *quantity.Percent { return &f.Flours[1].Water },
			"levain":        func(f *dough.Formula) *quantity.Percent { return &f.Preferments[0].Flour },
			"levain water":  func(f *dough.Formula) *quantity.Percent { return &f.Preferments[0].Hydration },
			"levain salt":   func(f *dough.Formula) *quantity.Percent { return &f.Preferments[0].Salt },
			"levain blend":  func(f *dough.Formula) *quantity.Percent { return &f.Preferments[0].Blend[0].Percent },
			"seed":          func(f *dough.Formula) *quantity.Percent { return &f.Preferments[0].Seed.Percent },
			"seed's water":  func(f *dough.Formula) *quantity.Percent { return &f.Preferments[0].Seed.Hydration },
		}
		for name, at := range places {
			spoil[fmt.Sprint(name, " ", i)] = func(f *dough.Formula) { *at(f) = p }
		}
	}
	for name, f := range spoil {
		formula := maslin()
		f(&formula)
		_, err := formula.For(ok)
		refused(t, name, err)
	}
	_, err := dough.Formula{}.For(ok)
	refused(t, "the zero formula", err)
	_, err = maslin().For(nil)
	refused(t, "no target", err)
}

func TestImpossibleTargetsAreRefused(t *testing.T) {
	bread := maslin()
	targets := []dough.Target{
		dough.ByDough{}, dough.ByFlour{}, dough.Pieces{}, dough.Baked{}, dough.ByLevain{}, dough.AtHand{}, dough.ByVolume{},
		&dough.ByDough{Mass: quantity.Grams(1000)}, (*dough.Baked)(nil),
		dough.Pieces{Count: -1, Each: quantity.Grams(500)}, dough.Pieces{Count: math.MaxInt, Each: quantity.Grams(500)},
		dough.Pieces{Count: 1_000_000, Each: quantity.Kilograms(100_000)},
		dough.ByLevain{Preferment: "poolish", Mass: quantity.Grams(100)}, dough.ByLevain{Preferment: long,
			Mass: quantity.Grams(100)},
		dough.AtHand{
			Stock: []dough.Stock{{Name: long, Mass: quantity.Grams(1)}},
		}, dough.AtHand{Stock: make([]dough.Stock,
			100_000)},
		dough.AtHand{Stock: []dough.Stock{{Name: "water", Mass: quantity.Mass{}}}},
		dough.ByVolume{Volume: quantity.Liters(5), Density: math.NaN()}, dough.ByVolume{Volume: quantity.Liters(5),
			Density: math.Inf(1)},
		dough.ByVolume{Volume: quantity.Liters(math.NaN()), Density: 1}, dough.ByVolume{Volume: quantity.Liters(-1),
			Density: 1},
	}
	for _, m := range badMasses {
		targets = append(targets, dough.ByDough{Mass: m}, dough.ByFlour{Mass: m}, dough.Pieces{Count: 2, Each: m},
			dough.Baked{Pieces: 2, Each: m},
			dough.ByLevain{Preferment: "levain", Mass: m}, dough.AtHand{Stock: []dough.Stock{{Name: "water", Mass: m}}})
	}
	for _, p := range append(badPercents, pc("91 %")) {
		targets = append(targets, dough.Baked{Pieces: 2, Each: quantity.Grams(500), Loss: p},
			dough.Pieces{Count: 2, Each: quantity.Grams(500), ProcessLoss: p})
	}
	for _, target := range targets {
		_, err := bread.For(target)
		refused(t, fmt.Sprintf("%T %.60s", target, fmt.Sprint(target)), err)
	}
}

func TestAllProblemsAreReportedInFieldOrder(t *testing.T) {
	f := maslin()
	f.Flours[1].Percent = pc("30 %")
	f.Liquids[0].Percent = pc("0 %")
	f.Salt = pc("-2 %")
	f.Others = []dough.Part{{Name: "", Percent: pc("2000 %")}}
	f.Preferments[0].Hydration = pc("2000 %")
	f.Preferments[0].Blend[0].Percent = pc("90 %")
	f.Preferments[0].Preferments = []dough.Preferment{{Name: "levain", Flour: pc("5 %"), Hydration: pc("100 %")}}
	f.Preferments[0].Seed.Hydration = pc("0 %")
	f.Soakers = []dough.Soaker{{Name: "soaker"}}
	_, err := f.For(dough.Baked{Pieces: 6, Loss: pc("12 %")})
	var got []string
	for _, e := range quantity.InputErrors(err) {
		got = append(got, e.GoPath)
	}
	want := []string{"Flours", "Liquids[0].Percent", "Salt", "Others[0].Name", "Others[0].Percent",
		"Preferments[0].Hydration", "Preferments[0].Blend", "Preferments[0].Preferments[0].Name",
		"Preferments[0].Seed.Hydration", "Soakers[0].Parts", "Baked.Each",
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
	if !errors.Is(err, quantity.ErrInconsistent) || !errors.Is(err, quantity.ErrOutOfRange) ||
		!errors.Is(err, quantity.ErrRequired) {
		t.Errorf("reasons are missing in %v", err)
	}
	deep := maslin()
	inner := deep.Preferments[0]
	inner.Name, inner.Flour = "inner", pc("30 %")
	deep.Preferments[0].Preferments = []dough.Preferment{inner}
	_, err = deep.For(dough.ByDough{Mass: quantity.Grams(1000)})
	if e := quantity.InputErrors(err); len(e) == 0 || e[0].GoPath != "Preferments[0].Preferments" {
		t.Errorf("got %v", err)
	}
}

// The zero value of every result answers every question without a panic.
func TestZeroValuesAreHarmless(t *testing.T) {
	var b dough.Batch
	_ = fmt.Sprint(b, b.Overall(), b.FinalDough(), b.Builds(), b.Hydration(), b.FinalHydration(), b.Prefermented(),
		b.SaltShare(), b.SaltInWater(), b.WholeGrain(), b.Rye(), b.Total(), b.Share(dough.KindRye), b.Unstated(),
		b.Allergens(), b.Cautions(), b.Water(), b.Scaled(), b.Pieces(), b.ScalingWeight(), b.Limiting(), b.Formula(),
		b.Working(), b.DoughYield(), b.DoughYield().Working())
	_ = b.EffectiveHydration()
	_, _ = b.LevainPercent("levain", dough.LevainOfDough)
	_, err := b.Weights().Batch()
	refused(t, "no weights", err)
	_, _, err = b.FlourUp(quantity.Grams(1))
	refused(t, "flour up of nothing", err)
	if got := trial.Refused(err); got != "batch required" {
		t.Errorf("flour up of nothing: %s", got)
	}
	for want, r := range map[string]fmt.Stringer{"nothing to make": dough.Build{}, "no levain": dough.LevainPlan{}} {
		if r.String() != want {
			t.Errorf("%q, want %q", r, want)
		}
	}
	if n := (dough.SharedLevain{}).Working().Len(); n != 0 {
		t.Errorf("%d steps to a levain for nobody", n)
	}
	_, _, err = b.Divide(quantity.Grams(1))
	refused(t, "pieces of nothing", err)
	_, err = b.Weigh(dough.Scales{})
	refused(t, "no scales", err)
	_, err = dough.Mishap{}.Repair()
	refused(t, "no mishap", err)
	_, err = dough.OneLevain{}.Plan()
	refused(t, "no doughs", err)
	_, err = dough.OneLevain{Doughs: []dough.Batch{b}}.Plan()
	refused(t, "an empty dough", err)
	_, err = dough.LevainBuild{}.Plan()
	refused(t, "no levain", err)
	_, err = dough.PrintedLevain{}.Flour()
	refused(t, "no share", err)
	_, err = dough.DoughYield{}.Net()
	refused(t, "no yield", err)
	_, err = dough.DoughYield{}.Gross()
	refused(t, "no yield", err)
	_ = fmt.Sprint(dough.PrintedLevain{}.Working(), dough.DoughYield{}.Working(), dough.LevainPlan{},
		dough.LevainPlan{}.Working(), dough.SharedLevain{}.Working(), dough.SharedLevain{}, dough.Repair{},
		dough.Repair{}.Working(), dough.Weighing{}, dough.Weighing{}.TooSmall(), dough.Feeding{},
		dough.Feeding{}.Hydration(), dough.Feeding{}.Inoculation(dough.OfMix), dough.Starter{},
		dough.Build{}.Hydration(), dough.DoughLine{})
}

// A result does not change when the caller changes what was given.
func TestResultsKeepNothingOfTheCaller(t *testing.T) {
	f := maslin()
	stock := []dough.Stock{{Name: "whole rye", Mass: quantity.Grams(1000)}}
	b, err := f.For(dough.AtHand{Stock: stock})
	if err != nil {
		t.Fatal(err)
	}
	before := b.String() + b.Working().Text(80) + fmt.Sprint(b.Formula())
	f.Flours[0].Name, f.Liquids[0].Percent, f.Preferments[0].Name, f.Preferments[0].Blend[0].Name = "x", pc("1 "+
		"%"), "y", "z"
	stock[0] = dough.Stock{Name: "q"}
	b.Overall()[0].Name = "changed"
	if after := b.String() + b.Working().Text(80) + fmt.Sprint(b.Formula()); after != before {
		t.Error(cmp.Diff(before, after))
	}
}

func FuzzNames(f *testing.F) {
	for _, s := range []string{"levain", "pate fermentee", "whole rye", "removed", "of mix", "scald", "levain of dough",
		"all", "flour", ""} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		type named interface {
			encoding.TextUnmarshaler
			fmt.Stringer
			encoding.TextMarshaler
		}
		for _, v := range []named{
			new(dough.Kind), new(dough.PrefermentKind), new(dough.SeedAccount), new(dough.InoculationBasis),
			new(dough.SoakerKind), new(dough.LevainReading),
			new(dough.Role), new(dough.Restore),
		} {
			err := v.UnmarshalText([]byte(s))
			if err != nil {
				if len(err.Error()) > 2000 {
					t.Errorf("an error of %d bytes", len(err.Error()))
				}
				continue
			}
			if v.String() != s && s != "pate fermentee" && s != "old dough" {
				t.Errorf("%q was read as %v", s, v)
			}
			out, err := v.MarshalText()
			if err != nil || string(out) != v.String() {
				t.Errorf("%v is written %q, %v", v, out, err)
			}
		}
	})
}
