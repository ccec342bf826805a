package bakeday

import (
	"context"
	"encoding/json"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/workcheck"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
	"github.com/google/go-cmp/cmp"
)

func pct(x float64) quantity.Percent { return quantity.NewPercent(x) }

// sticks is a white bread with a poolish, for the hall's supper.
func sticks() Bake {
	b := rolls()
	b.Name, b.Wanted = "Supper sticks", OnDay(time.Saturday, wallclock.MustClock("19:00"))
	b.Kitchen.Asleep = []wallclock.Habit{mustHabit("22:30 to 06:30")}
	b.Others[0].Percent = pct(0.4)
	b.Preferments = []PrefermentWork{{
		Name: "poolish", Kind: dough.Poolish, Prefermented: pct(30), Hydration: pct(100), Flour: "wheat bread flour",
		Yeast:   pct(0.1),
		AtLeast: quantity.Elapsed(10 * time.Hour), AtMost: quantity.Elapsed(15 * time.Hour),
	}}
	b.Soakers = []SoakerWork{{
		Name: "scald", Kind: dough.Scald, Parts: []SoakerPart{{Name: "whole rye flour", Percent: pct(5)},
			{Name: "water", Percent: pct(10)}},
		AtLeast: quantity.Elapsed(3 * time.Hour), AtMost: quantity.Elapsed(12 * time.Hour),
	}}
	return b
}

func mustHabit(text string) wallclock.Habit {
	h, err := wallclock.ParseHabit(text)
	if err != nil {
		panic(err)
	}
	return h
}

func step(t *testing.T, d Day, name string) schedule.Timed {
	t.Helper()
	s, ok := d.Timetable.Step(name)
	if !ok {
		t.Fatalf("no step %q in %v", name, d.Timetable)
	}
	return s
}

func TestWhatIsMadeBeforehandHasItsPlace(t *testing.T) {
	d := plan(t, sticks())
	if !d.Possible() {
		t.Fatal(d.Timetable.Conflict)
	}
	mix := step(t, d, "mix-1")
	for _, c := range []struct {
		make, stand string
		least, most time.Duration
	}{{"make-1", "ripen-1", 10 * time.Hour, 15 * time.Hour}, {"make-2", "stand-2", 3 * time.Hour, 12 * time.Hour}} {
		made, stands := step(t, d, c.make), step(t, d, c.stand)
		if took := stands.End.Sub(stands.Start); took < c.least || took > c.most {
			t.Errorf("%s for %v", c.stand, took)
		}
		next := mix.Start
		if cools, ok := d.Timetable.Step("cool-down-2"); ok && c.stand == "stand-2" {
			next = cools.Start
		}
		if !made.End.Equal(stands.Start) || !stands.End.Equal(next) {
			t.Errorf("%s from %v to %v, mixed at %v", c.stand, stands.Start, stands.End, mix.Start)
		}
		if h := made.Start.In(d.Zone).Hour(); h >= 23 || h < 6 {
			t.Errorf("%s at %v, while asleep", c.make, made.Start)
		}
	}
	for i, a := range d.Timetable.Steps { // two hands do one thing at a time
		for _, z := range d.Timetable.Steps[i+1:] {
			busy := a.Kind.Hands() && z.Kind.Hands() && !a.Spare && !z.Spare
			if busy && a.Start.Before(z.End) && z.Start.Before(a.End) {
				t.Errorf("%s from %v to %v, %s from %v to %v", a.ID, a.Start, a.End, z.ID, z.Start, z.End)
			}
		}
	}
	s := d.Data()
	var lists []string
	for _, l := range s.Weigh {
		lists = append(lists, l.Name)
		if l.Name != "poolish" {
			continue
		}
		if got := l.Lines[len(l.Lines)-1]; got.Name != "instant yeast" || got.Percent.Text(1) != "0.1 %" {
			t.Error("the poolish has", got)
		}
	}
	if diff := cmp.Diff([]string{"poolish", "scald", "dough"}, lists); diff != "" {
		t.Error(diff)
	}
	for _, x := range s.Steps {
		if x.Hands != (x.Kind == schedule.Make) && x.Thing != "" {
			t.Errorf("%s: hands %v", x.ID, x.Hands)
		}
	}
	// The poolish's flour is no levain: the dough is raised by yeast, by what is weighed into it and what has grown in
	// the poolish.
	in := d.Rising.Bulk.Bulk()
	if !in.Inoculation.IsZero() || in.Yeast.Amount != pct(0.37) || len(in.Preferments) != 1 ||
		in.Preferments[0].Of.Yeast.Amount != pct(0.1) {
		t.Error(in)
	}
	for _, w := range d.Workings() {
		workcheck.Verify(t, w)
	}
}

func (d Day) noteTexts() []string {
	content, _ := json.Marshal(d.Data().Notes)
	return []string{string(content)}
}

func TestLevainAndYeastTogether(t *testing.T) {
	b := hall()
	alone := plan(t, b)
	b.Others = append(b.Others, Ingredient{Name: "instant yeast", Percent: pct(0.1), Kind: dough.KindInstantYeast})
	d := plan(t, b)
	in := d.Rising.Bulk.Bulk()
	if in.Inoculation != b.Levain.Prefermented || in.Yeast.Amount != pct(0.1) {
		t.Fatal(in)
	}
	if d.Rising.Feasible && d.Rising.Bulk.Ready().Likely >= alone.Rising.Bulk.Ready().Likely {
		t.Errorf("with yeast %v, without %v", d.Rising.Bulk, alone.Rising.Bulk)
	}
	for _, w := range d.Workings() {
		workcheck.Verify(t, w)
	}
}

// Loaves are taken out of the cold by hands that are there, and rise on while they warm up.
func TestWarmUpAfterTheCold(t *testing.T) {
	b := hall()
	cold := plan(t, b)
	r := *b.Retard
	r.WarmUp = quantity.Elapsed(90 * time.Minute)
	b.Retard = &r
	d := plan(t, b)
	if !d.Possible() || !cold.Possible() {
		t.Fatal(d.Timetable.Conflict)
	}
	retard, out, bakes := step(t, d, idRetard), step(t, d, idOut), step(t, d, nth(idBake, 0))
	if !retard.End.Equal(out.Start) || bakes.Start.Sub(out.Start) != 90*time.Minute {
		t.Errorf("out of the cold at %v to %v, baked at %v", out.Start, out.End, bakes.Start)
	}
	if h := out.Start.In(d.Zone).Hour(); h < 6 || h >= 22 {
		t.Error("taken out at", out.Start)
	}
	if d.Rising.ShapeAt.Compare(cold.Rising.ShapeAt) > 0 || d.Rising.Into.Compare(d.Rising.FromCold) <= 0 {
		t.Errorf("shaped at %v (without a warm-up %v); from %v to %v", d.Rising.ShapeAt, cold.Rising.ShapeAt,
			d.Rising.FromCold, d.Rising.Into)
	}
	if s := d.Data().Retard; s.WarmUp != r.WarmUp || s.DoughAt.Compare(quantity.Celsius(8)) > 0 {
		t.Errorf("%+v", s)
	}
}

func TestEatenWarm(t *testing.T) {
	b := rolls()
	b.Loaves.Warm = true
	d := plan(t, b)
	last := step(t, d, nth(idBake, d.Baking.Rounds-1))
	if wait := d.Wanted.Sub(last.End); !d.Possible() || wait < tooHotToEat || wait > usualWarmth.Duration() {
		t.Errorf("baked at %v, wanted at %v", last.End, d.Wanted)
	}
}

// A dough that would have risen before it is shaped is shaped sooner, so that the loaves still proof.
func TestAQuickDoughStillProofs(t *testing.T) {
	b := rolls()
	b.Others[0].Percent, b.Bulk.Rise, b.Bulk.Box = pct(0.4), pct(90), quantity.Celsius(25)
	d := plan(t, b)
	if p := d.Rising.Proof; p.Likely < shortestProof || p.Late <= p.Early {
		t.Errorf("shaped at %v, proof %v", d.Rising.ShapeAt, p)
	}
	b.Others[0].Percent = pct(4)
	d = plan(t, b)
	if notes := strings.Join(d.noteTexts(), "\n"); !strings.Contains(notes, "quicker than the hands") ||
		d.Rising.InOven.Likely.Compare(b.Bulk.Rise) <= 0 {
		t.Error(d.Rising.InOven, notes)
	}
}

// A dough of egg and milk has liquids to pour, and a wetness for the mixer.
func TestADoughWithoutWater(t *testing.T) {
	b := rolls()
	b.Flours = []Ingredient{{Name: "wheat bread flour", Percent: pct(100), Kind: dough.KindWheat}}
	b.Liquids = []Ingredient{
		{Name: "egg", Percent: pct(50), Kind: dough.KindEgg, Water: pct(76)},
		{Name: "whole milk", Percent: pct(12), Kind: dough.KindMilk, Water: pct(88)},
	}
	b.Others = append(b.Others, Ingredient{Name: "sugar", Percent: pct(12), Kind: dough.KindSweetener})
	d := plan(t, b)
	if d.Water.Pour.IsZero() || len(d.Water.Liquids) != 2 {
		t.Errorf("%+v", d.Water)
	}
	if notes := strings.Join(d.noteTexts(), "\n"); !strings.Contains(notes, "egg and whole milk") {
		t.Error(notes)
	}
	if in := d.Rising.Bulk.Bulk(); in.Sugar != pct(12) || in.Hydration.Compare(pct(40)) < 0 {
		t.Errorf("%v sugar, %v water", in.Sugar, in.Hydration)
	}
}

func TestFaultsOfWhatIsMadeBeforehand(t *testing.T) {
	b := sticks()
	b.Preferments[0].Kind = dough.Levain
	b.Preferments[0].AtMost = quantity.Elapsed(time.Hour)
	b.Preferments[0].Flour = "no such flour"
	b.Preferments[0].Temperature = quantity.Celsius(90)
	b.Soakers[0].Name = " "
	b.Soakers[0].AtLeast = quantity.Elapsed(-time.Hour)
	r := Retard{
		AtLeast: quantity.Elapsed(time.Hour),
		AtMost:  quantity.Elapsed(2 * time.Hour),
		WarmUp:  quantity.Elapsed(100 * time.Hour),
	}
	b.Retard = &r
	err := b.Check(wednesday(t))
	var paths []string
	for _, e := range quantity.InputErrors(err) {
		paths = append(paths, e.GoPath)
	}
	all := strings.Join(paths, " ") + " "
	for _, want := range []string{"Preferments[0].Kind", "Preferments[0].AtMost", "Preferments[0].Flour",
		"Preferments[0].Temperature", "Soakers[0].Name", "Soakers[0].AtLeast", "Retard.WarmUp"} {
		if !strings.Contains(all, want+" ") {
			t.Errorf("no fault at %s: %v", want, err)
		}
	}
	b = sticks()
	b.Soakers[0].Parts[0].Percent = pct(50)
	if err := b.Check(wednesday(t)); err == nil || !strings.Contains(err.Error(), "preferment: inconsistent") {
		t.Error("more of a flour in the scald than there is:", err)
	}
	b = sticks()
	b.Others = nil
	if err := b.Check(wednesday(t)); err == nil {
		t.Error("a poolish with yeast of which the formula has none")
	}
}

// A late step moves the rest of a plan with things made beforehand.
func TestReplanWithWhatIsMadeBeforehand(t *testing.T) {
	d := plan(t, sticks())
	poolish := step(t, d, "make-1")
	again, err := d.Replan(context.Background(), Late{Step: "make-1", By: quantity.Elapsed(20 * time.Minute)})
	if err != nil {
		t.Fatal(err)
	}
	if len(again.Timetable.Steps) == 0 {
		t.Fatal(again)
	}
	made, ok := again.Timetable.Step("make-1")
	stands, _ := again.Timetable.Step("ripen-1")
	if !ok || made.Start.Sub(poolish.Start) != 20*time.Minute || stands.End.Sub(stands.Start) < 10*time.Hour {
		t.Errorf("%v: made at %v, stands from %v to %v", again, made.Start, stands.Start, stands.End)
	}
}
