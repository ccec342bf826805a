package bakeday

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/trial"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
	"pgregory.net/rapid"
)

// Two steps cannot have a thing at once that together take more of it than there is, or that run it otherwise; of what
// has no limit everybody has some.
func TestWhatTwoStepsCannotHaveAtOnce(t *testing.T) {
	need := func(amount int, program string) schedule.Need { return schedule.Need{Amount: amount, Program: program} }
	for _, c := range []struct {
		capacity int
		a, b     schedule.Need
		want     bool
	}{
		{2, need(1, ""), need(1, ""), false}, {2, need(1, ""), need(2, ""), true}, {0, need(9, ""), need(9, ""), false},
		{2, need(1, "hot"), need(1, "hot"), false}, {2, need(1, "hot"), need(1, "cool"), true},
		{2, need(1, ""), need(1, "cool"), false}, {0, need(1, "hot"), need(1, "cool"), true},
		{1, need(1, "hot"), need(1, "hot"), true},
	} {
		if got := tooMuch(schedule.Resource{Capacity: c.capacity}, c.a, c.b); got != c.want {
			t.Errorf("%d of it, %v and %v: %v", c.capacity, c.a, c.b, got)
		}
	}
}

// Levers are given as soon as one of them is.
func TestOneLeverIsALever(t *testing.T) {
	one := []quantity.Percent{pct(1)}
	for _, l := range []Levers{{Prefermented: one}, {Inoculation: one}, {Temperature: make([]quantity.Temperature, 1)},
		{Box: make([]quantity.Temperature, 1)}, {Retard: make([]quantity.Elapsed, 1)},
		{Prefermented: one, Inoculation: one}} {
		if l.IsZero() {
			t.Errorf("%+v is none", l)
		}
	}
	if !(Levers{}).IsZero() {
		t.Error("no lever is one")
	}
}

// A wish for a weekday is met on the next two such days, which a walk from day to day finds.
func TestTheNextTwoSuchDays(t *testing.T) {
	zone := zurich(t)
	rapid.Check(t, func(t *rapid.T) {
		day := time.Weekday(rapid.IntRange(0, 6).Draw(t, "weekday"))
		hour := rapid.IntRange(4, 23).Draw(t, "hour") // which no clock skips
		now := time.Date(2026, 1, 1, 0, rapid.IntRange(0, 366*24*60).Draw(t, "minutes"), 0, 0, zone)
		got, err := OnDay(day, wallclock.MustClock(fmt.Sprintf("%02d:00", hour))).instants(now, zone)
		if err != nil {
			t.Fatal(err)
		}
		var want []time.Time
		for d := 0; len(want) < 2; d++ {
			at := time.Date(now.Year(), now.Month(), now.Day()+d, hour, 0, 0, 0, zone)
			if at.Weekday() == day && at.After(now) {
				want = append(want, at)
			}
		}
		if !slices.EqualFunc(got, want, time.Time.Equal) {
			t.Errorf("%v %d:00 after %v: %v, want %v", day, hour, now, got, want)
		}
	})
}

// An hour that the clocks skipped on the last such day is no reason to refuse the next ones: on Sunday 29 March 2026
// the clocks went from 02:00 to 03:00.
func TestAnHourThatWasSkippedLastWeek(t *testing.T) {
	zone := zurich(t)
	w := OnDay(time.Sunday, wallclock.MustClock("02:30"))
	for day := 30; day <= 35; day++ {
		got, err := w.instants(time.Date(2026, 3, day, 12, 0, 0, 0, zone), zone)
		if err != nil || len(got) != 2 || !got[0].Equal(time.Date(2026, 4, 5, 2, 30, 0, 0, zone)) {
			t.Errorf("on March %d: %v, %v", day, got, err)
		}
	}
	if _, err := w.instants(time.Date(2026, 3, 28, 12, 0, 0, 0, zone), zone); err == nil {
		t.Error("the hour that is skipped is wished for")
	}
}

// How far the dough will be by then is set against what the rest wants, and told where an eye would see it: beyond five
// points.
func TestHowFarTheDoughWillBe(t *testing.T) {
	for risen, want := range map[float64]string{
		45: "", 35: "", 45.1: "it will be further on than wanted, so get it cold quickly and bake it first",
		34.9: "it will be behind, so let it rise on before it goes into the cold, if there is time",
	} {
		said := report.Report{Sections: []report.Section{{Blocks: Replanned{Risen: pct(risen), Allowed: pct(40)}.
			riseBlocks()}}}.Text(report.Options{Width: 200})
		text := strings.Join(strings.Fields(said), " ")
		head := fmt.Sprintf("by then the dough has likely risen by %.0f %%; the rest that is left wants it shaped at 40 %%",
			risen)
		if text != strings.TrimSpace(head+" "+want) {
			t.Errorf("risen by %v: %q", risen, text)
		}
	}
	if (Replanned{Risen: pct(40)}).riseBlocks() != nil {
		t.Error("nothing is wanted, and it is told")
	}
}

// A levain that stands ready is past its best when it has been good for as long as it is likely to be, and not before;
// how much culture is short is told.
func TestWhatIsSaidOfALevain(t *testing.T) {
	fed := time.Date(2026, 11, 25, 8, 0, 0, 0, time.UTC)
	l := &Leavening{Fed: fed}
	l.Ripeness.Until = quantity.TimeRange{Early: 5 * time.Hour, Likely: 6 * time.Hour, Late: 8 * time.Hour}
	for past, want := range map[time.Duration]string{0: "", 90 * time.Minute: "the levain has been past its best for " +
		"about 1h30m: it raises the dough more slowly and makes it sour and slack; feed it again, or go by the dough"} {
		d := Day{Bake: Bake{Levain: &Levain{RipeNow: true}}, Now: fed.Add(6*time.Hour + past), Levain: l}
		if got := fmt.Sprint(d.levainNotes()); got != "["+want+"]" {
			t.Errorf("past by %v: %s", past, got)
		}
	}
	short := Day{Bake: Bake{Levain: &Levain{CultureAtHand: quantity.Grams(60)}},
		Levain: &Leavening{Culture: quantity.Grams(100), Short: quantity.Grams(40)}}
	if got := fmt.Sprint(short.levainNotes()); got !=
		"[the levain needs 100 g of culture and 60 g is at hand: feed the culture up the day before]" {
		t.Error(got)
	}
}

// What is in the way is told by the hours that the steps take, where these add up to what is missing, or by the rules.
func TestWhatIsInTheWayInWords(t *testing.T) {
	hours := func(h float64) quantity.Elapsed { return quantity.Elapsed(h * float64(time.Hour)) }
	rule := func(r schedule.Rule, h float64, says string) schedule.Member {
		m := schedule.Member{Limit: hours(h)}
		m.Rule, m.Words = r, working.Say(says)
		return m
	}
	takes := func(h float64) schedule.Member { return rule(schedule.StepMin, h, "takes") }
	asleep, fresh := rule(schedule.Absence, 0, "asleep"), rule(schedule.LinkMax, 0, "fresh")
	for _, c := range []struct {
		of   schedule.Conflict
		left float64
		want string
	}{
		{schedule.Conflict{Members: []schedule.Member{takes(3), takes(2)}, Short: hours(1)}, 4,
			"the steps take 5h one after the other, and only 4h is left"},
		{schedule.Conflict{Members: []schedule.Member{takes(3), rule(schedule.LinkMin, 1, "rests"),
			rule(schedule.LinkExact, -2, "overlaps")}, Short: hours(0.5)}, 3.5,
			"the steps take 4h one after the other, and only 3h30m is left"},
		{schedule.Conflict{Members: []schedule.Member{takes(3), takes(2)}, Short: hours(2)}, 4,
			"the whole bake takes longer, and only 4h is left"},
		{schedule.Conflict{Members: []schedule.Member{takes(3), takes(2)}}, 4, "the steps take 5h one after the other"},
		{schedule.Conflict{Members: []schedule.Member{takes(3), takes(2)}, Short: hours(1)}, 0,
			"the steps take 5h one after the other"},
		{schedule.Conflict{Members: []schedule.Member{takes(3), asleep, fresh, asleep}}, 4,
			"this is in the way: asleep; fresh"},
	} {
		if got := inTheWay(&c.of, hours(c.left)).String(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// The rule of each fold is told by its number and by when it is due.
func TestTheRuleOfAFold(t *testing.T) {
	b := hall()
	b.Bulk.Folds, b.Bulk.FoldEvery = 3, inMinutes(30)
	var got []string
	for _, l := range plan(t, b).problem.Links {
		if l.MinWords.ID() == "bakeday.rule_fold" {
			got = append(got, l.MinWords.String(), l.MaxWords.String())
		}
	}
	want := "fold 1 about 30m into the bulk, fold 1 about 30m into the bulk, fold 2 about 1h into the bulk, " +
		"fold 2 about 1h into the bulk, fold 3 about 1h30m into the bulk, fold 3 about 1h30m into the bulk"
	if text := strings.Join(got, ", "); text != want {
		t.Error(text)
	}
}

// A flour that is held by what is made beforehand needs no line of its own weight.
func TestFloursHeldBeforehand(t *testing.T) {
	of := func(levain *Levain) *Bake {
		return &Bake{Levain: levain, Preferments: []PrefermentWork{{Flour: "spelt"}},
			Soakers: []SoakerWork{{Parts: []SoakerPart{{Name: "oats"}, {Name: "water"}}}}}
	}
	for _, b := range []*Bake{of(nil), of(&Levain{Flour: "rye"})} {
		for name, want := range map[string]bool{"spelt": true, "oats": true, "water": true, "wheat": false,
			"rye": b.Levain != nil} {
			if got := b.holds(name); got != want {
				t.Errorf("%s: %v", name, got)
			}
		}
	}
}

// What two plans differ in, side by side: of two bakes everything, of one that is kneaded otherwise what follows of it.
func TestPlansSideBySideInWords(t *testing.T) {
	o := report.Options{Width: 110}
	by := hall()
	by.Kitchen.Mixers = append(slices.Clone(by.Kitchen.Mixers),
		KitchenMixer{Kind: mixing.Spiral, Bowl: quantity.Liters(20)})
	kneaded, err := by.KneadedBy(context.Background(), wednesday(t), mixing.Spiral)
	if err != nil {
		t.Fatal(err)
	}
	trial.Kept(t, "days/beside.txt", plan(t, hall()).Beside(plan(t, rolls())).Report().Text(o)+"\n"+
		kneaded.Report().Text(o))
}

// Every table of a bake file is told with what it is for.
func TestEveryTableIsTold(t *testing.T) {
	page := BakeFileKeys().Report()
	for _, table := range BakeFileKeys().Tables {
		blocks := page.Section("table-" + table.Name).Blocks
		says := table.Says != "" && table.Name != ""
		if len(blocks) != 1 && !says || len(blocks) != 2 && says {
			t.Errorf("[%s]: %d blocks", table.Name, len(blocks))
		}
	}
}

// Moments are near one another within less than five minutes, either way; and what doughs give is tried from
// the least on.
func TestNearMoments(t *testing.T) {
	at := time.Date(2026, 11, 25, 8, 0, 0, 0, time.UTC)
	for off, want := range map[time.Duration]bool{0: true, 5*time.Minute - 1: true, 1 - 5*time.Minute: true,
		5 * time.Minute: false, -5 * time.Minute: false} {
		if near(at, at.Add(off)) != want {
			t.Errorf("%v off: near %v", off, !want)
		}
	}
	if !slices.IsSorted(gives[:]) || gives[0] <= 0 || !slices.IsSorted(foldGives[:]) {
		t.Errorf("%v, %v", gives, foldGives)
	}
}

// What is laid on top of the loaves adds up over the rounds, and each loaf has its part.
func TestWhatIsLaidOnTopAddsUp(t *testing.T) {
	for _, pieces := range []int{1, 2, 5, 6} {
		b := hall()
		b.Loaves.Pieces, b.Kitchen.RefrigeratorPlaces = pieces, 0
		b.Inclusions = []Ingredient{{Name: "sesame", Percent: pct(3), Kind: dough.KindSesame, At: schedule.Bake}}
		d := plan(t, b)
		var sum quantity.Mass
		rounds := 0
		for _, s := range d.Data().Steps {
			for _, l := range s.Adds {
				sum, rounds = sum.Add(l.Mass), rounds+1
				if each := min(2, pieces-2*(rounds-1)); len(l.Portions) != min(1, each-1) ||
					len(l.Portions) > 0 && l.Portions[0].Times(int64(each)).Sub(l.Mass).Grams() > 0.01 {
					t.Errorf("%d loaves, round %d: %+v", pieces, rounds, l)
				}
			}
		}
		whole := d.Weighing.Lines[slices.IndexFunc(d.Weighing.Lines, func(l dough.Weighed) bool {
			return l.Name == "sesame"
		})].Mass
		if off := sum.Sub(whole).Grams(); rounds != (pieces+1)/2 || !(off < 0.01 && off > -0.01) {
			t.Errorf("%d loaves in %d rounds: %v of %v", pieces, rounds, sum, whole)
		}
	}
}
