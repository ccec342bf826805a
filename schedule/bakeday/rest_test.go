package bakeday

import (
	"context"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/trial"
	"example.org/maslin/schedule"
)

// The rest of a day of one bread in words, whatever comes early or late, or at once; and what of it is refused.
func TestTheRestOfADayInWords(t *testing.T) {
	d := plan(t, hall())
	at := func(id string) time.Time { return step(t, d, id).Start }
	var out strings.Builder
	for _, c := range []struct {
		name string
		late []Late
	}{
		{"shaped an hour late", []Late{{Step: "shape", By: minutes(60)}}},
		{"mixed early, and done at once", []Late{{Step: "mix-2", By: minutes(-20), Ended: at("mix-2")}}},
		{"the dough was seen to be slow", []Late{{Step: "shape", By: minutes(80), Seen: at("bulk").Add(time.Hour)}}},
		{"the bulk half an hour late, and the oven too", []Late{{Step: "bulk", By: minutes(30)},
			{Step: "bake-1", By: minutes(25)}}},
		{"hours late", []Late{{Step: "mix-1", By: minutes(300)}}},
		{"before the plan", []Late{{Step: "feed", By: minutes(-47 * 60)}}},
		{"no such step, and too far", []Late{{Step: "moon", By: minutes(49 * 60)}}},
		{"twice", []Late{{Step: "shape", By: minutes(10)}, {Step: "shape", By: minutes(20)}}},
		{"over before it began", []Late{{Step: "shape", By: minutes(60), Ended: at("shape")}}},
		{"nothing", nil},
	} {
		r, err := d.Replan(context.Background(), c.late...)
		if fmt.Fprintf(&out, "== %s\n", c.name); err != nil {
			fmt.Fprintln(&out, err)
			continue
		}
		out.WriteString(r.Report().Text(report.Options{Width: 110}))
	}
	trial.Kept(t, "days/rest.txt", out.String())
}

// A day in a calendar: what blocks the time, what is reminded of and when.
func TestADayInACalendar(t *testing.T) {
	b := hall()
	b.Notes = []StepNote{{Step: "shape", Says: "flour the baskets"}}
	var out strings.Builder
	for _, e := range plan(t, b).Data().CalendarEvents() {
		fmt.Fprintf(&out, "%s to %s, busy %v: %s\n  %s\n", e.From.Format("Mon 15:04"), e.To.Format("Mon 15:04"), e.Busy,
			e.Summary, strings.ReplaceAll(e.Description, "\n", "\n  "))
		for _, a := range e.Alarms {
			fmt.Fprintf(&out, "  reminds %v before it begins: %s\n", a.Before, a.Text)
		}
	}
	trial.Kept(t, "days/calendar.txt", out.String())
}

// What would help is told as one thing, as one of several, or as all of several.
func TestWhatWouldHelpInWords(t *testing.T) {
	rule := func(n int) RuleData {
		return RuleData{Words: working.Say(fmt.Sprintf("rule %d", n)), Remedy: working.Say(fmt.Sprintf("%dh less", n))}
	}
	for _, c := range []struct {
		w    WhyData
		want string
	}{
		{WhyData{}, ""},
		{WhyData{Remedies: []RuleData{rule(1)}}, "Or this: · rule 1: 1h less"},
		{WhyData{Remedies: []RuleData{rule(1), rule(2)}},
			"Or one of these, each enough by itself: · rule 1: 1h less · rule 2: 2h less"},
		{WhyData{Together: []RuleData{rule(3)}}, "Or all of these: · rule 3: 3h less"},
		{WhyData{Together: []RuleData{rule(1), rule(2)}}, "Or all of these: · rule 1: 1h less · rule 2: 2h less"},
		{WhyData{Remedies: []RuleData{rule(1)}, Together: []RuleData{rule(2), rule(3)}}, "Or this: · rule 1: 1h less"},
	} {
		text := report.Report{Sections: []report.Section{{Blocks: c.w.help()}}}.Text(report.Options{})
		if got := strings.Join(strings.Fields(text), " "); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// The end of a context is told from what is wrong with a bake, and is no problem of its fields.
func TestTheEndOfAContext(t *testing.T) {
	b := hall()
	for _, err := range []error{context.Canceled, context.DeadlineExceeded, fmt.Errorf("a: %w", context.Canceled),
		fmt.Errorf("b: %w", context.DeadlineExceeded)} {
		if !ended(err) || b.from(ofRise, err) != err {
			t.Errorf("%v: ended %v, moved to %v", err, ended(err), b.from(ofRise, err))
		}
	}
	wrong := &quantity.InputError{GoPath: "Bulk.Hydration", Err: quantity.ErrOutOfRange}
	if ended(wrong) || ended(nil) || b.from(ofRise, nil) != nil {
		t.Error("no end")
	}
	if got := b.from(ofRise, wrong); !errors.Is(got, quantity.ErrOutOfRange) || got == error(wrong) {
		t.Errorf("%v", got)
	}
}

// A dough that is weighed at mixing is the dough in percent, whatever its preferment is made with: each line's share of
// all flour comes back from the weights that go into the bowl.
func TestSharesFromWhatIsWeighed(t *testing.T) {
	for name, liquids := range map[string][]Ingredient{
		"water":          {{Name: "water", Percent: pct(68)}},
		"milk":           {{Name: "milk", Percent: pct(72), Kind: dough.KindMilk, Water: pct(88)}},
		"water and milk": {{Name: "water", Percent: pct(30)}, {Name: "milk", Percent: pct(42), Kind: dough.KindMilk}},
	} {
		for _, of := range []string{"", liquids[len(liquids)-1].Name} {
			b := hall()
			b.Levain, b.Retard = nil, nil
			b.Liquids, b.Loaves.Pieces = liquids, 2
			b.Others = []Ingredient{{Name: "yeast", Percent: pct(0.8), Kind: dough.KindInstantYeast}}
			b.Preferments = []PrefermentWork{{Name: "sponge", Kind: dough.Sponge, Prefermented: pct(20), Hydration: pct(60),
				Liquid: of, Flour: "wheat bread flour", Yeast: pct(0.2), AtLeast: inMinutes(60), AtMost: inMinutes(120)}}
			batch, err := b.Batch(nil)
			if err != nil {
				t.Fatal(name, err)
			}
			bowl := map[string]quantity.Mass{}
			for _, l := range batch.FinalDough() {
				bowl[l.Name] = l.Mass
			}
			w := b
			weighed := func(all []Ingredient) (out []Ingredient) {
				for _, l := range all {
					l.Percent, l.Weight = quantity.Percent{}, bowl[l.Name]
					out = append(out, l)
				}
				return out
			}
			w.Flours, w.Liquids, w.Others = weighed(b.Flours), weighed(b.Liquids), weighed(b.Others)
			w.Salt, w.SaltWeight = quantity.Percent{}, bowl["salt"]
			w.Preferments = []PrefermentWork{b.Preferments[0]}
			w.Preferments[0].Prefermented, w.Preferments[0].Weight = quantity.Percent{}, bowl["sponge"]
			w.Loaves = Loaves{}
			got, err := w.inPercent()
			if err != nil {
				t.Fatal(name, of, err)
			}
			compare := func(got, want []Ingredient) {
				for i, l := range got {
					if !(math.Abs(l.Percent.Points()-want[i].Percent.Points()) <= 1e-4) {
						t.Errorf("%s, a sponge of %q: %v of %s, want %v", name, of, l.Percent, l.Name, want[i].Percent)
					}
				}
			}
			compare(got.Flours, b.Flours)
			compare(got.Liquids, b.Liquids)
			compare(got.Others, b.Others)
			if !(math.Abs(got.Salt.Points()-b.Salt.Points()) <= 1e-4) ||
				!(math.Abs(got.Preferments[0].Prefermented.Points()-20) <= 1e-4) {
				t.Errorf("%s: salt %v, sponge %v", name, got.Salt, got.Preferments[0].Prefermented)
			}
		}
	}
}

// A day for which the time ran out says so, and that nothing is known of it; and a problem of a preferment that
// the bake does not have is the levain's, which the formula has beside them.
func TestADayThatIsNotKnown(t *testing.T) {
	d := Day{Zone: time.UTC}
	d.Rising.Feasible, d.Timetable.Verdict = true, schedule.Unknown
	w := d.why()
	if w == nil || w.Reason != TimeRanOut || len(w.Rules)+len(w.Remedies) > 0 ||
		w.Says.String() != "the time for planning ran out before a timetable was found or ruled out" {
		t.Errorf("%+v", w)
	}
	b := &Bake{Levain: &Levain{}, Preferments: make([]PrefermentWork, 2)}
	for path, want := range map[string]string{"Preferments[0].Hydration": "Levain.Hydration",
		"Preferments[1].Hydration": "Preferments[0].Hydration", "Preferments[2].Hydration": "Preferments[1].Hydration",
		"Preferments[3].Hydration": "Levain.Hydration"} {
		if got := b.origin(ofFormula, path); got != want {
			t.Errorf("%s is of %s, want %s", path, got, want)
		}
	}
}
