package dough_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/trial"
	"example.org/maslin/internal/workcheck"

	"pgregory.net/rapid"
)

func near(a, b quantity.Percent, tolerance float64) bool {
	return math.Abs(a.Points()-b.Points()) <= tolerance
}

func faults(t *rapid.T, w working.Working) {
	t.Helper()
	for _, f := range workcheck.Faults(w) {
		t.Error(f)
	}
}

func anyMass(t *rapid.T, label string, low, high float64) quantity.Mass {
	return quantity.Grams(rapid.Float64Range(low, high).Draw(t, label))
}

// A levain build makes exactly what is wanted, from no more than there is, within the bounds.
func TestLevainBuildsAreSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := dough.LevainBuild{
			Want: anyMass(t, "want", 50, 5000), Hydration: points(t, "hydration", 50, 150),
			Starter: dough.Starter{
				Mass:      anyMass(t, "starter", 1, 2000),
				Hydration: points(t, "starter's hydration", 50, 500),
			},
			Stages: rapid.IntRange(0, 4).Draw(t, "stages"),
		}
		if rapid.Bool().Draw(t, "keep") {
			l.KeepBack = anyMass(t, "keep back", 1, 100)
		}
		if rapid.Bool().Draw(t, "fixed") {
			l.Inoculation = points(t, "inoculation", 1, 60)
			l.Of = rapid.SampledFrom([]dough.InoculationBasis{dough.OfNewFlour, dough.OfMix}).Draw(t, "basis")
		}
		p, err := l.Plan()
		if err != nil {
			if len(quantity.InputErrors(err)) != 1 {
				t.Fatal(err)
			}
			return // too wet or too stiff for what is wanted
		}
		faults(t, p.Working())
		if !p.Reached {
			if p.Missing.Sign() <= 0 || p.Why.IsZero() || len(p.Stages) > 0 {
				t.Fatalf("not reached, missing %v, %q", p.Missing, p.Why)
			}
			l.Starter.Mass = l.Starter.Mass.Add(p.Missing)
			if again, err := l.Plan(); err != nil || !again.Reached {
				t.Fatalf("with %v more starter it is still not reached: %v %v", p.Missing, again, err)
			}
			return
		}
		if l.Stages > 0 && len(p.Stages) != l.Stages || len(p.Stages) > 4 {
			t.Errorf("%d stages, asked for %d", len(p.Stages), l.Stages)
		}
		if used := p.Stages[0].Starter.Mass; used.Add(p.LeftOver) != l.Starter.Mass || p.LeftOver.Sign() < 0 {
			t.Errorf("%v of starter, %v used, %v left over", l.Starter.Mass, used, p.LeftOver)
		}
		for i, f := range p.Stages {
			last := i == len(p.Stages)-1
			if i > 0 && f.Starter.Mass != p.Stages[i-1].Made() {
				t.Errorf("stage %d starts from %v, the one before made %v", i+1, f.Starter.Mass, p.Stages[i-1].Made())
			}
			if f.Flour.Sign() < 0 || f.Water.Sign() < 0 {
				t.Errorf("stage %d takes %v", i+1, f)
			}
			if made := f.Made(); !near(f.Hydration(), l.Hydration, 1000/made.Grams()*1e-4+1e-5) {
				t.Errorf("stage %d of %v has hydration %v, not %v", i+1, made, f.Hydration(), l.Hydration)
			}
			slip := 1e-2 / f.Flour.Grams() // a few micrograms of flour
			switch {
			case last && !l.Inoculation.IsZero():
				if !near(f.Inoculation(l.Of), l.Inoculation, slip) {
					t.Errorf("inoculation %v, asked for %v", f.Inoculation(l.Of), l.Inoculation)
				}
			default:
				if s := f.Inoculation(dough.OfNewFlour).Points(); s < 10-slip || s > 100+slip {
					t.Errorf("stage %d has an inoculation of %v %%", i+1, s)
				}
			}
		}
		if made := p.Stages[len(p.Stages)-1].Made(); made != l.Want.Add(l.KeepBack) {
			t.Errorf("made %v, wanted %v and %v", made, l.Want, l.KeepBack)
		}
		w, residue, err := p.Weigh(dough.Scales{Flour: quantity.Grams(1), Fine: quantity.Grams(0.1)})
		if err != nil {
			if first := p.Stages[0]; first.Starter.Mass.Grams() > 0.1 && first.Flour.Grams() > 0.1 {
				t.Fatal(err)
			}
			return // too small for the scale
		}
		faults(t, w.Working())
		if w.Use.Add(residue) != p.Use || w.Stages[len(w.Stages)-1].Made() != w.Use.Add(w.KeepBack) {
			t.Errorf("rounded: uses %v with residue %v of %v", w.Use, residue, p.Use)
		}
		for i := 1; i < len(w.Stages); i++ {
			if w.Stages[i].Starter.Mass != w.Stages[i-1].Made() {
				t.Errorf("rounded stage %d starts from %v, the one before made %v", i+1, w.Stages[i].Starter.Mass,
					w.Stages[i-1].Made())
			}
		}
	})
}

// A printed levain percentage, turned into prefermented flour and put into a formula, reads back as
// printed.
func TestLevainReadingsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := dough.Formula{
			Flours:  []dough.Part{{Name: "flour", Percent: pc("100 %")}},
			Liquids: []dough.Part{{Name: "water", Percent: points(t, "water", 75, 100)}},
			Salt:    points(t, "salt", 0, 3),
		}
		total := pc("100 %").Add(f.Liquids[0].Percent).Add(f.Salt)
		l := dough.PrintedLevain{
			Percent: points(t, "levain", 5, 40), Hydration: points(t, "hydration", 50, 150), Total: total,
			Reading: rapid.SampledFrom([]dough.LevainReading{dough.FlourOfTotalFlour, dough.LevainOfAddedFlour,
				dough.LevainOfTotalFlour, dough.LevainOfDough}).Draw(t, "reading"),
		}
		x, err := l.Flour()
		if err != nil {
			t.Fatal(err)
		}
		faults(t, l.Working())
		f.Preferments = []dough.Preferment{{Name: "levain", Flour: x, Hydration: l.Hydration}}
		b, err := f.For(dough.ByFlour{Mass: quantity.Kilograms(10)})
		if err != nil {
			t.Skip("the levain holds more water than the formula")
		}
		got, ok := b.LevainPercent("levain", l.Reading)
		if !ok || !near(got, l.Percent, 1e-5) {
			t.Errorf("%v %v became prefermented flour %v and reads back as %v", l.Percent, l.Reading, x, got)
		}
	})
}

// After a repair the ratios are those of the plan, whatever was weighed wrongly.
func TestRepairsBringTheFormulaBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBatch(t)
		lines := b.FinalDough()
		m := dough.Mishap{Batch: b, Restore: rapid.SampledFrom([]dough.Restore{dough.RestoreHydration,
			dough.RestoreHydrationAndSalt, dough.RestoreAll}).Draw(t, "restore")}
		want := map[string]quantity.Mass{}
		for range rapid.IntRange(1, 2).Draw(t, "mistakes") {
			l := rapid.SampledFrom(lines).Draw(t, "line")
			if l.Role == dough.RoleStarter || !want[l.Name].IsZero() {
				continue
			}
			extra := l.Mass.Scale(quantity.Micrograms(rapid.Int64Range(-200, 900).Draw(t, "per mille")),
				quantity.Micrograms(1000))
			m.Extra = append(m.Extra, dough.Stock{Name: l.Name, Mass: extra})
			want[l.Name] = l.Mass.Add(extra)
		}
		r, err := m.Repair()
		if err != nil {
			t.Fatalf("%v\n%v\n%v", err, m.Extra, b)
		}
		if rapid.IntRange(0, 4).Draw(t, "derive") == 0 { // a derivation takes a hundred times as long as a repair
			faults(t, r.Working())
		}
		for name, mass := range want {
			if got := lineOf(r.Became.FinalDough(), name); got.Mass != mass {
				t.Errorf("%s: %v in the bowl, became %v", name, mass, got.Mass)
			}
		}
		checkViews(t, r.Became)
		checkViews(t, r.After)
		add := quantity.Mass{}
		for _, l := range r.Add {
			if l.Mass.Sign() <= 0 {
				t.Errorf("add %v", l)
			}
			add = add.Add(l.Mass)
		}
		if r.After.Dough() != r.Became.Dough().Add(add) {
			t.Errorf("dough %v, with %v more %v", r.Became.Dough(), add, r.After.Dough())
		}
		slip := 1e-3/b.Flour().Grams() + 2e-5
		if !near(r.After.Hydration(), b.Hydration(), slip) {
			t.Errorf("hydration %v, then %v, planned %v", r.Became.Hydration(), r.After.Hydration(), b.Hydration())
		}
		if m.Restore != dough.RestoreHydration && !near(r.After.SaltShare(), b.SaltShare(), slip) {
			t.Errorf("salt %v, then %v, planned %v", r.Became.SaltShare(), r.After.SaltShare(), b.SaltShare())
		}
		if m.Restore == dough.RestoreAll && (!near(r.After.Prefermented(), b.Prefermented(), slip) ||
			!near(r.After.Total(), b.Total(), 10*slip)) {
			t.Errorf("prefermented %v, planned %v; total %v, planned %v", r.After.Prefermented(), b.Prefermented(),
				r.After.Total(), b.Total())
		}
	})
}

// What is at hand is never exceeded, and what limits is used up.
func TestAtHandStaysWithinTheStock(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := anyFormula(t)
		stock := []dough.Stock{{Name: "water", Mass: anyMass(t, "water at hand", 100, 10_000)},
			{Name: f.Flours[0].Name, Mass: anyMass(t, "flour at hand", 100, 10_000)}}
		if len(f.Preferments) > 0 {
			stock = append(stock,
				dough.Stock{Name: f.Preferments[0].Name, Mass: anyMass(t, "levain at hand", 100, 5000)})
		}
		b, err := f.For(dough.AtHand{Stock: stock})
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range stock {
			uses := lineOf(b.Overall(), s.Name).Mass
			if build, ok := b.Build(s.Name); ok {
				uses = build.Used
			}
			if uses.Compare(s.Mass) > 0 {
				t.Errorf("%v of %s at hand, %v used", s.Mass, s.Name, uses)
			}
			if left := s.Mass.Sub(uses).Grams(); s.Name == b.Limiting() && left > 1e-4 {
				t.Errorf("%s limits, and %v g of it are left", s.Name, left)
			}
		}
	})
}

func TestOneLevainServesSeveralDoughs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := dough.OneLevain{Preferment: "levain"}
		want := quantity.Mass{}
		for range rapid.IntRange(1, 4).Draw(t, "doughs") {
			f := maslin()
			f.Liquids[0].Percent = points(t, "water", 60, 80)
			f.Preferments[0].Flour = points(t, "levain", 10, 20)
			b, err := f.For(dough.ByDough{Mass: anyMass(t, "dough", 500, 20_000)})
			if err != nil {
				t.Fatal(err)
			}
			build, _ := b.Build("levain")
			want = want.Add(build.Used)
			o.Doughs = append(o.Doughs, b)
		}
		if rapid.Bool().Draw(t, "at hand") {
			o.AtHand = anyMass(t, "levain at hand", 100, 3000)
		}
		s, err := o.Plan()
		if err != nil {
			t.Fatal(err)
		}
		faults(t, s.Working())
		if s.Build.Used != want || total(s.Build.Lines) != s.Build.Made {
			t.Errorf("build of %v, lines %v, needed %v", s.Build.Used, total(s.Build.Lines), want)
		}
		give := want
		if !o.AtHand.IsZero() && o.AtHand.Compare(want) < 0 {
			give = o.AtHand
			if s.Short != want.Sub(o.AtHand) {
				t.Errorf("short by %v", s.Short)
			}
		}
		if sum := quantity.Sum(s.Parts...); sum != give {
			t.Errorf("parts add up to %v, not %v", sum, give)
		}
	})
	other := maslin()
	other.Preferments[0].Hydration = pc("60 %")
	a, err := maslin().For(dough.ByDough{Mass: quantity.Grams(1000)})
	if err != nil {
		t.Fatal(err)
	}
	b, err := other.For(dough.ByDough{Mass: quantity.Grams(1000)})
	if err != nil {
		t.Fatal(err)
	}
	_, err = dough.OneLevain{Preferment: "levain", Doughs: []dough.Batch{a, b}}.Plan()
	refused(t, "two hydrations from one levain", err)
}

func TestFlourUpKeepsTheFormula(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBatch(t)
		step := rapid.SampledFrom([]quantity.Mass{quantity.Grams(1), quantity.Grams(10), quantity.Grams(250)}).
			Draw(t, "step")
		up, more, err := b.FlourUp(step)
		if err != nil {
			t.Fatal(err)
		}
		if _, odd := up.Flour().RoundTo(step); !odd.IsZero() || up.Flour().Compare(b.Flour()) < 0 ||
			up.Flour().Sub(b.Flour()).Compare(step) >= 0 {
			t.Errorf("flour %v up to %v by %v", b.Flour(), up.Flour(), step)
		}
		if up.Dough().Sub(b.Dough()) != more || up.Hydration() != b.Hydration() || up.Pieces() != b.Pieces() {
			t.Errorf("dough %v, %v more than %v", up.Dough(), more, b.Dough())
		}
		checkViews(t, up)
		each := anyMass(t, "each", 50, 2000)
		n, left, err := b.Divide(each)
		if err != nil || each.Times(int64(n)).Add(left) != b.Scaled() || left.Sign() < 0 || left.Compare(each) >= 0 {
			t.Errorf("%v makes %d pieces of %v and %v, %v", b.Scaled(), n, each, left, err)
		}
	})
}

// Inputs, batches and answers come back from their data as they went.
func TestDataTravels(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBatch(t)
		trial.Travels(t, b.Formula())
		trial.Travels(t, b)
		trial.Travels(t, b.Weights())
		up, _, err := b.FlourUp(quantity.Grams(10))
		if err != nil {
			t.Fatal(err)
		}
		trial.Travels(t, up)
		weighed, err := b.Weights().Batch()
		if err != nil {
			t.Fatal(err)
		}
		trial.Travels(t, weighed)
		m := dough.Mishap{Batch: b, Extra: []dough.Stock{{Name: "water", Mass: quantity.Grams(5)}},
			Restore: dough.RestoreHydration}
		trial.Travels(t, m)
		w, err := b.Weigh(dough.Scales{Flour: quantity.Grams(1), Fine: quantity.Grams(0.1)})
		if err != nil {
			t.Fatal(err)
		}
		trial.Travels(t, w)
	})
	var b dough.Batch
	for text, want := range map[string]string{
		`{}`: "order required", `{"order":{}}`: "order inconsistent", `{"weights":{}}`: "weights.final.flours required",
		`{"order":{},"weights":{}}`: "order required",
		`{"order":{"formula":{},"by_dough":{"mass":"1 kg"}}}`: "order.formula.flours required; " +
			"order.formula.liquids required",
	} {
		if got := trial.Refused(json.Unmarshal([]byte(text), &b)); !strings.EqualFold(got, want) {
			t.Errorf("%s: %s, want %s", text, got, want)
		}
	}
}
