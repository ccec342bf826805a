package bakeday

import (
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
	"github.com/google/go-cmp/cmp"
)

// filled is the hall's bread with something at every moment.
func filled() Bake {
	b := hall()
	pct := quantity.NewPercent
	b.Kitchen.Away = nil
	b.Bulk.Folds, b.Bulk.FoldEvery = 3, minutesOf(30)
	b.Bulk.Lamination = &Lamination{After: minutesOf(45), Takes: minutesOf(10), Rest: minutesOf(5)}
	b.Inclusions = []Ingredient{
		{Name: "sunflower seeds", Percent: pct(4), Kind: dough.KindSeeds},
		{Name: "walnuts", Percent: pct(8), Kind: dough.KindNuts, Fold: 2},
		{Name: "figs", Percent: pct(6), Kind: dough.KindFruit, At: schedule.Laminate},
		{Name: "hard cheese", Percent: pct(5), Kind: dough.KindDairy, At: schedule.Shape, Perishable: true},
		{Name: "sesame", Percent: pct(2), Kind: dough.KindSesame, At: schedule.Bake},
	}
	return b
}

// Each addition is said at its step, with how much of it; on the list to weigh it has its moment.
func TestAdditionsHaveAMoment(t *testing.T) {
	d := plan(t, filled())
	if !d.Possible() {
		t.Fatal(d.Data().Why.Says)
	}
	data := d.Data()
	got := map[string]string{}
	var onTop quantity.Mass
	var share quantity.Percent
	for _, s := range data.Steps {
		for _, l := range s.Adds {
			got[l.Name] += " " + s.ID
			if each := l.At == schedule.Shape || l.At == schedule.Bake; each != (len(l.Portions) == 1) {
				t.Errorf("%s at %s: portions %v", l.Name, s.ID, l.Portions)
			}
			if l.Name == "sesame" {
				onTop, share = onTop.Add(l.Mass), share.Add(l.Percent)
			}
		}
	}
	want := map[string]string{
		"walnuts": " fold-2", "figs": " laminate", "hard cheese": " shape", "sesame": " bake-1 bake-2 bake-3",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	list := data.Weigh[len(data.Weigh)-1]
	weighed := map[string]WeighLine{}
	for _, l := range list.Lines {
		weighed[l.Name] = l
	}
	if on := weighed["sesame"]; onTop != on.Mass || on.At != schedule.Bake ||
		!(math.Abs(share.Points()-on.Percent.Points()) <= 1e-5) {
		t.Errorf("%v and %v on top, %v weighed", onTop, share, on)
	}
	if w := weighed["walnuts"]; w.At != schedule.Fold || w.Fold != 2 {
		t.Errorf("%+v", w)
	}
	if at, fold := (Ingredient{At: schedule.Mix}).moment(); at != 0 || fold != 0 {
		t.Errorf("at mixing is at %v, fold %d", at, fold)
	}
	if w := weighed["sunflower seeds"]; w.At != 0 {
		t.Errorf("%+v", w)
	}
	apart := weighed["hard cheese"].Mass.Add(weighed["sesame"].Mass).Divide(int64(d.Batch.Pieces()))
	if data.Formula.Divide.Add(apart) != data.Formula.Scaling {
		t.Errorf("divided at %v, with %v a piece of %v", data.Formula.Divide, apart, data.Formula.Scaling)
	}
	names := ""
	for _, s := range data.Steps {
		names += s.says().String() + "\n"
	}
	summaries := ""
	for _, e := range data.CalendarEvents() {
		summaries += e.Summary + "\n"
	}
	if !strings.Contains(summaries, "fold, 2 of 3; add 218 g of walnuts (") {
		t.Errorf("the calendar has %s", summaries)
	}
	for _, says := range []string{"fold, 2 of 3; add 218 g of walnuts", "laminate the dough; add 164 g of figs", "each)",
		"bake, 1 of 3; first lay on top 18 g of sesame (9.1 g each)"} {
		if !strings.Contains(names, says) {
			t.Errorf("%q is not in\n%s", says, names)
		}
	}
	// The water answers to what is in the bowl, and the bowl holds only that.
	var later quantity.Mass
	for _, l := range d.Batch.FinalDough() {
		if d.Bake.later(l.Name) {
			later = later.Add(l.Mass)
		}
	}
	if in := quantity.Sum(d.Water.Each.Times(int64(d.Water.Mixes)), later); in.Sub(d.Batch.Dough()).Grams() > 0.001 ||
		d.Batch.Dough().Sub(in).Grams() > 0.001 {
		t.Errorf("%v in the bowl and %v later of %v", d.Water.Each, later, d.Batch.Dough())
	}
}

// The lamination keeps its time and its rest between the folds.
func TestLaminationStandsBetweenTheFolds(t *testing.T) {
	d := plan(t, filled())
	at, bulk := step(t, d, idLaminate), step(t, d, idBulk)
	if after := at.Start.Sub(bulk.Start); after < 35*time.Minute || after > 55*time.Minute ||
		at.End.Sub(at.Start) != 10*time.Minute {
		t.Errorf("after %v for %v", after, at.End.Sub(at.Start))
	}
	if one, two := step(t, d, "fold-1"), step(t, d, "fold-2"); one.End.After(at.Start) ||
		two.Start.Sub(at.End) < 5*time.Minute {
		t.Errorf("fold 1 until %v, laminated %v to %v, fold 2 from %v", one.End, at.Start, at.End, two.Start)
	}
	for _, l := range d.problem.Links {
		if l.From == idBulk && l.To == idLaminate && (l.Min != minutesOf(35) || l.Max != minutesOf(55)) {
			t.Errorf("it may be %v to %v after mixing", l.Min, l.Max)
		}
	}
	if s := step(t, d, idShape); s.Start.Sub(at.End) < 5*time.Minute {
		t.Error("shaped before it has rested")
	}
	// By default it is one hour after mixing, with half an hour of rest.
	b := filled()
	b.Bulk.Folds, b.Bulk.Lamination, b.Inclusions[1].Fold = 1, &Lamination{}, 1
	d = plan(t, b)
	if l := d.Bake.Bulk.Lamination; *l != (Lamination{After: minutesOf(60), Takes: minutesOf(15), Rest: minutesOf(30)}) {
		t.Errorf("%+v", l)
	}
	if b.Bulk.Lamination.After != 0 {
		t.Error("the bake of the caller was changed")
	}
}

// What the bake has no moment for is refused where it is written.
func TestImpossibleAdditions(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*Bake)
		path   string
		says   string
	}{
		"fold 4 of 3":       {func(b *Bake) { b.Inclusions[1].Fold = 4 }, "inclusion[1].fold", "got 4 of 3, want 1 to 3"},
		"fold -1":           {func(b *Bake) { b.Inclusions[1].Fold = -1 }, "inclusion[1].fold", "want 1 to 3"},
		"no folds":          {func(b *Bake) { b.Bulk.Folds = 0 }, "inclusion[1].fold", "there are none"},
		"which fold":        {func(b *Bake) { b.Inclusions[0].At = schedule.Fold }, "inclusion[0].fold", "at which fold"},
		"a fold at shaping": {func(b *Bake) { b.Inclusions[3].Fold = 1 }, "inclusion[3].fold", "another moment"},
		"no lamination":     {func(b *Bake) { b.Bulk.Lamination = nil }, "inclusion[2].at", "a lamination under bulk"},
		"while it cools":    {func(b *Bake) { b.Inclusions[0].At = schedule.Cool }, "inclusion[0].at", "on top"},
		"flour":             {func(b *Bake) { b.Flours[0].At = schedule.Fold }, "flour[0].at", "at mixing"},
		"fold in the lamination": {func(b *Bake) { b.Bulk.Lamination.After = minutesOf(60) }, "bulk.lamination.after",
			"with fold 2 at 1h"},
		"fold in its rest": {func(b *Bake) { b.Bulk.Lamination.Rest = minutesOf(30) }, "bulk.lamination.after",
			"with fold 2 at 1h"},
		"lamination at once":    {func(b *Bake) { b.Bulk.Lamination.After = minutesOf(2) }, "bulk.lamination.after", "5m"},
		"lamination of no time": {func(b *Bake) { b.Bulk.Lamination.Takes = minutesOf(-1) }, "bulk.lamination.takes", ""},
	} {
		b := filled()
		b.Inclusions = append([]Ingredient{}, b.Inclusions...)
		b.Flours = append([]Ingredient{}, b.Flours...)
		c.change(&b)
		all := quantity.InputErrors(b.Check(wednesday(t)))
		if len(all) != 1 || all[0].Path != c.path || !strings.Contains(all[0].Error(), c.says) {
			t.Errorf("%s: %v", name, all)
		}
	}
}

// What is cooked or spoils brings its caution, with how long it stands warm by this plan.
func TestFillingsBringTheirCaution(t *testing.T) {
	says := func(b Bake) string {
		text := ""
		for _, c := range plan(t, b).Cautions() {
			if c.Subject == "cooked filling" || c.Subject == "perishable filling" {
				text += c.Text.String() + "\n"
			}
		}
		return text
	}
	b := filled()
	b.Inclusions[3].Perishable, b.Inclusions[3].Kind = false, dough.KindOther
	if got := says(b); got != "" {
		t.Errorf("nothing spoils: %s", got)
	}
	b.Inclusions[3].Perishable = true // at shaping, 40 minutes before the cold
	if got := says(b); !strings.Contains(got,
		"hard cheese: not more than 2h in all between 4 °C and 60 °C; keep it cold") {
		t.Error(got)
	}
	b.Inclusions[3].At, b.Inclusions[3].Kind = 0, dough.KindCookedFilling // at mixing: with all of the bulk
	got := says(b)
	d := plan(t, b)
	mixed, cold := step(t, d, "mix-1"), step(t, d, "retard")
	warm := quantity.Elapsed(cold.Start.Sub(mixed.Start)).String()
	for _, want := range []string{"from 57 °C to 21 °C within 2 hours and to 5 °C within 6 in all", "74 °C",
		"it stands " + warm + " in the warm dough"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not in %q", want, got)
		}
	}
	b.Inclusions[3].At, b.Inclusions[3].Fold = 0, 3
	d = plan(t, b)
	at := d.standsWarm(b.Inclusions[3])
	if want := step(t, d, "retard").Start.Sub(step(t, d, "fold-3").Start); at != want {
		t.Errorf("from fold 3 it stands warm for %v, want %v", at, want)
	}
	b.Inclusions[3].Fold = 0
	b.Kitchen.Day, b.Kitchen.Night = quantity.Celsius(33), quantity.Celsius(30)
	b.Inclusions[3].Perishable, b.Inclusions[3].At = false, schedule.Shape
	if got := says(b); !strings.Contains(got, "more than 1h in all") {
		t.Error(got)
	}
}

// The baker's own notes stand at their steps.
func TestNotesOfTheBaker(t *testing.T) {
	b := hall()
	b.Oven.RescoreAfter = minutesOf(5)
	b.Notes = []StepNote{
		{"shape", "tight, seam down"}, {"fold-2", "gently"}, {"vent", "kettle gloves"}, {"score again", "the old cuts"},
		{"mix-2", "the stiffer half"}, {"fold", "wet hands"}, {"bake-3", "these are for the neighbors"}, {"mix-9", "never"},
	}
	d := plan(t, b)
	got := map[string][]string{}
	for _, s := range d.Data().Steps {
		if len(s.Notes) > 0 {
			got[s.ID] = s.Notes
		}
	}
	want := map[string][]string{
		"shape": {"tight, seam down"}, "fold-1": {"wet hands"}, "fold-2": {"gently", "wet hands"},
		"mix-2":  {"the stiffer half"},
		"bake-3": {"these are for the neighbors"},
		"vent-1": {"kettle gloves"}, "vent-2": {"kettle gloves"}, "vent-3": {"kettle gloves"},
		"rescore-1": {"the old cuts"}, "rescore-2": {"the old cuts"}, "rescore-3": {"the old cuts"},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	described := ""
	for _, e := range d.Data().CalendarEvents() {
		if e.Step == "shape" {
			described = e.Description
		}
	}
	if !strings.HasSuffix(described, "\ntight, seam down") {
		t.Errorf("the calendar has %q", described)
	}
	aside := ""
	for _, n := range d.Notes {
		if n.ID() == "bakeday.note_aside" {
			aside += n.String()
		}
	}
	if aside != "for your note on mix-9 this plan has no step: never" {
		t.Error(aside)
	}
	for _, s := range d.Data().Steps {
		if s.ID == idShape && s.says().String() != "divide and shape (tight, seam down)" {
			t.Error(s.says())
		}
	}
	for name, c := range map[string]struct {
		note StepNote
		path string
	}{
		"no step":      {StepNote{"", "x"}, "note[0].step"},
		"no words":     {StepNote{"shape", ""}, "note[0].says"},
		"no such step": {StepNote{"fold-9", "x"}, "note[0].step"},
		"control":      {StepNote{"shape", "a\x1b[2J"}, "note[0].says"},
		"long":         {StepNote{"shape", strings.Repeat("x", 300)}, "note[0].says"},
		"no UTF-8":     {StepNote{"shape", "\xff"}, "note[0].says"},
	} {
		b := hall()
		b.Notes = []StepNote{c.note}
		if all := quantity.InputErrors(b.Check(wednesday(t))); len(all) != 1 || all[0].Path != c.path {
			t.Errorf("%s: %v", name, all)
		}
	}
	b.Notes = make([]StepNote, 60)
	if all := quantity.InputErrors(b.Check(wednesday(t))); len(all) < 2 || all[0].Path != "note" {
		t.Error(all)
	}
	if k, p, ok := (StepNote{Step: "turn"}).kindOf(); !ok || k != schedule.Tend || p != bake.Turn {
		t.Error(k, p, ok)
	}
}
