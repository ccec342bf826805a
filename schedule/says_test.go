package schedule

import (
	"slices"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// member is a rule with words, told or not, and the change of it that helps.
func member(words, remedy string, change int) Member {
	m := Member{Breach: Breach{Words: working.Say(words)}}
	if remedy != "" {
		m.Enough, m.Least, m.Change, m.Remedy = true, true, mins(change), working.Say(remedy)
	}
	return m
}

// At most five ways out are told, the smallest changes first and those of one size in the order of the rules; what is
// told in the same words comes once, and of wanted times, which move together, one.
func TestRemediesInOrder(t *testing.T) {
	lunch, supper := member("lunch", "later", 20), member("supper", "later", 20)
	lunch.Wanted, supper.Wanted = true, true
	other := member("lunch", "later", 20)
	k := &Conflict{Members: []Member{
		member("a", "x", 30), member("b", "", 0), member("c", "x", 10), lunch, supper, member("c", "x", 10), other,
		member("d", "y", 10), member("e", "x", 40), member("f", "x", 5),
	}}
	var got []string
	for _, m := range k.Remedies() {
		got = append(got, m.Help().String())
	}
	if want := []string{"f (x)", "c (x)", "d (y)", "lunch (later)", "a (x)"}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	if (*Conflict)(nil).Remedies() != nil {
		t.Error("remedies for nothing")
	}
	perhaps := member("a", "x", 30)
	perhaps.Least = false
	for want, m := range map[string]Member{"a (x; less may do)": perhaps, "b": member("b", "", 0)} {
		if got := m.Help().String(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// A conflict in words: steps that follow one another come with the time they take, what is wanted and the edges of the
// plan at the end, what follows at once is not told, and nothing is told twice.
func TestConflictsInWords(t *testing.T) {
	length := func(rule Rule, step, words string, limit int) Member {
		return Member{Breach: Breach{Rule: rule, Step: step, Words: working.Say(words)}, Limit: mins(limit)}
	}
	link := func(rule Rule, kind LinkKind, from, to, words string, limit int) Member {
		return Member{Breach: Breach{Rule: rule, Step: from, Other: to, Words: working.Say(words)}, Link: kind,
			Limit: mins(limit)}
	}
	wanted := length(NotAfter, "bake", "bread at noon", 0)
	wanted.Wanted = true
	bake := length(StepExact, "bake", "bake 40m", 40)
	mix, rise := length(StepExact, "mix", "mix 20m", 20), length(StepMin, "rise", "rise 3h", 180)
	rest := link(LinkMin, EndToStart, "mix", "rise", "rest 10m", 10)
	atOnce := link(LinkExact, EndToStart, "rise", "bake", "at once", 0)
	for name, c := range map[string]struct {
		k    *Conflict
		want string
	}{
		"nothing": {nil, "no conflict"},
		"a chain": {&Conflict{Members: []Member{length(PlanStart, "", "not before six", 0), wanted, bake, mix, rise, rest,
			atOnce, length(Absence, "", "away", 0), length(Absence, "", "away", 0)}, Short: mins(10), ShortProven: true},
			"these cannot all be kept, they miss each other by 10m: away; one after the other, together 4h10m: mix 20m, " +
				"rise 3h, bake 40m; not before six; bread at noon"},
		"at most so much": {&Conflict{Members: []Member{mix, wanted}, Short: mins(10)},
			"these cannot all be kept, they miss each other by 10m or less: mix 20m; bread at noon"},
		"not by how much": {&Conflict{Members: []Member{length(PlanEnd, "", "done by ten", 0), mix}},
			"these cannot all be kept: mix 20m; done by ten"},
		"links of another kind are no chain": {&Conflict{Members: []Member{mix, rise,
			link(LinkMin, StartToStart, "mix", "rise", "ss", 0), link(LinkMax, EndToStart, "mix", "rise", "max", 5),
			link(LinkExact, StartToStart, "mix", "rise", "exactly", 0)}},
			"these cannot all be kept: mix 20m; rise 3h; ss; max; exactly"},
		"steps that overlap are no chain": {&Conflict{Members: []Member{mix, rise,
			link(LinkMin, EndToStart, "mix", "rise", "before it ends", -5)}},
			"these cannot all be kept: mix 20m; rise 3h; before it ends"},
		"one length is no chain": {&Conflict{Members: []Member{mix, rest}}, "these cannot all be kept: mix 20m; rest 10m"},
		"a circle is no chain": {&Conflict{Members: []Member{mix, rise, rest,
			link(LinkMin, EndToStart, "rise", "mix", "and back", 0)}},
			"these cannot all be kept: mix 20m; rise 3h; rest 10m; and back"},
		"two chains": {&Conflict{Members: []Member{mix, rise, rest, length(StepMin, "a", "a 1h", 60),
			length(StepMin, "b", "b 2h", 120), link(LinkExact, EndToStart, "a", "b", "then", 5)}},
			"these cannot all be kept: one after the other, together 3h30m: mix 20m, rise 3h; one after the other, " +
				"together 3h05m: a 1h, b 2h"},
	} {
		if got := c.k.Message().String(); got != c.want {
			t.Errorf("%s: %s\nwant %s", name, got, c.want)
		}
	}
	k := &Conflict{Members: []Member{member("a", "x", 5)}, Together: []Member{member("b", "y", 1), member("c", "z", 2)}}
	if got := k.String(); got != "these cannot all be kept: a\n  a (x)\n  together: b (y); c (z)" {
		t.Error(got)
	}
	if !(*Conflict)(nil).AllOf().IsZero() || !(&Conflict{}).AllOf().IsZero() {
		t.Error("changes that help together where there are none")
	}
}

// Timetables, steps and other times in words.
func TestTimetablesInWords(t *testing.T) {
	at := func(m int) time.Time { return dawn.Add(mins(m).Duration()) }
	s := Timed{Label: Label{ID: "bulk"}, Start: at(0), End: at(60), EarliestStart: at(-5), LatestStart: at(10),
		Slack: mins(10)}
	const line = "Sat 06:00 to Sat 07:00  bulk  (start Sat 05:55 to Sat 06:10, slack 10m)"
	watched := s
	watched.Watch = &Span{From: at(50), To: at(70)}
	sooner := &Shift{By: mins(-15), To: at(-15), Nearest: true}
	later := &Shift{By: mins(20), To: at(20)}
	why := &Conflict{Members: []Member{member("a", "x", 5)}}
	for name, c := range map[string]struct {
		t          Timetable
		says, text string
	}{
		"best": {Timetable{Verdict: Optimal, Steps: []Timed{s}}, "no timetable is better", line},
		"not proven": {Timetable{Verdict: Feasible, Steps: []Timed{s}, Cost: 10, Bound: 9},
			"not proven best: costs 10, none costs less than 9", line + "\nnot proven best: costs 10, none costs less than 9"},
		"unknown": {Timetable{Verdict: Unknown}, "no timetable found in the time given; whether there is one is not known",
			"no timetable found in the time given; whether there is one is not known"},
		"none": {Timetable{Verdict: Infeasible, Conflict: why}, "no timetable: these cannot all be kept: a",
			"no timetable: these cannot all be kept: a\n  a (x)"},
		"others": {Timetable{Verdict: Infeasible, Conflict: why, Before: sooner, After: later},
			"no timetable: these cannot all be kept: a; would work: Sat 05:45, 15m earlier; " +
				"would work: Sat 06:20, 20m later, perhaps a nearer time too",
			"no timetable: these cannot all be kept: a\n  a (x)\nwould work: Sat 05:45, 15m earlier\n" +
				"would work: Sat 06:20, 20m later, perhaps a nearer time too"},
		"empty": {Timetable{Verdict: Optimal}, "no timetable is better", "no timetable is better"},
	} {
		if got := c.t.Message().String(); got != c.says {
			t.Errorf("%s: %s\nwant %s", name, got, c.says)
		}
		if got := c.t.String(); got != c.text {
			t.Errorf("%s: %s\nwant %s", name, got, c.text)
		}
	}
	if got := watched.Message().String(); got != line+"; look at it from Sat 06:50 to Sat 07:10" {
		t.Error(got)
	}
	for want, x := range map[string]*Shift{
		"none": nil, "Sat 05:45, 15m earlier, perhaps a nearer time too": {By: mins(-15), To: at(-15)},
		"Sat 06:20, 20m later": {By: mins(20), To: at(20), Nearest: true},
	} {
		if got := x.String(); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
}

// The gap is the share of the cost that may be saved, and steps are told in order of start, then end.
func TestGapAndOrder(t *testing.T) {
	for _, c := range []struct {
		cost, bound int
		want        float64
	}{{0, 0, 0}, {-5, -9, 0}, {10, 10, 0}, {10, 12, 0}, {10, 8, 0.2}, {1, 0, 1}, {4, -4, 2}} {
		if got := (Timetable{Cost: c.cost, Bound: c.bound}).Gap(); got != c.want {
			t.Errorf("%d and %d: %g, want %g", c.cost, c.bound, got, c.want)
		}
	}
	var tt Timetable
	for _, m := range [][2]int{{5, 9}, {1, 7}, {5, 8}, {1, 7}, {0, 9}} {
		tt.Steps = append(tt.Steps, Timed{Start: dawn.Add(mins(m[0]).Duration()), End: dawn.Add(mins(m[1]).Duration())})
	}
	if got := tt.ByTime(); !slices.Equal(got, []int{4, 1, 3, 2, 0}) {
		t.Error(got)
	}
}

// How a step differs between two timetables.
func TestChangesInWords(t *testing.T) {
	steps := func(times ...int) (out Timetable) {
		for k := 0; k < len(times); k += 2 {
			out.Steps = append(out.Steps, Timed{Label: Label{ID: string(rune('a' + k/2))},
				Start: dawn.Add(mins(times[k]).Duration()), End: dawn.Add(mins(times[k+1]).Duration())})
		}
		return out
	}
	got := Changes(steps(0, 10, 20, 40, 20, 40, 30, 50, 30, 50, 60, 70),
		steps(0, 10, 20, 35, 25, 40, 30, 55, 25, 50, 90, 100,
			95, 96))
	var words []string
	for _, c := range got {
		words = append(words, c.String())
		if c.Length != c.End-c.Start || c.Title().String() != c.ID {
			t.Errorf("%+v", c)
		}
	}
	want := []string{"b 5m shorter", "c 5m shorter, from Sat 06:25", "e 5m longer, from Sat 06:25", "d 5m longer",
		"f moves to Sat 07:30"}
	if !slices.Equal(words, want) {
		t.Errorf("%q, want %q", words, want)
	}
	if got[len(got)-1].Start != quantity.Elapsed(30*time.Minute) || got[0].Start != 0 || got[0].End != mins(-5) {
		t.Errorf("%+v", got)
	}
}
