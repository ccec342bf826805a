package schedule

import (
	"context"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/working"
)

// What is used by a step of any length, down to none, may be anything that is never short, and nothing that is.
func TestStepsThatMayTakeNoTime(t *testing.T) {
	for capacity, ok := range map[int]bool{0: true, 1: false} {
		p := Problem{Anchor: dawn, Horizon: mins(60), Resources: []Resource{{ID: "hall", Capacity: capacity}},
			Steps: []DayStep{{ID: "rest", Max: mins(30), Needs: []Need{{Resource: "hall", Amount: 1}}}}}
		tt, err := p.Latest(context.Background())
		if (err == nil) != ok || ok && len(tt.Steps) != 1 {
			t.Errorf("with a capacity of %d: %v, %v", capacity, tt, err)
		}
	}
}

// Closed and awkward spans count together, over all that is shared.
func TestSpansOfAllResources(t *testing.T) {
	p := Problem{Anchor: dawn, Horizon: mins(60), Steps: []DayStep{{ID: "mix", Min: mins(5)}}}
	for range 6 {
		r := Resource{ID: "r" + string(rune('a'+len(p.Resources))), Closed: make([]Span, maxItems),
			Awkward: make([]Awkward, maxItems)}
		p.Resources = append(p.Resources, r)
	}
	_, err := p.Latest(context.Background())
	if err == nil || !strings.Contains(err.Error(), "closed and awkward spans in all") {
		t.Errorf("%d spans: %.200v", 12*maxItems, err)
	}
}

// What has no program goes with every program, and two programs not with each other.
func TestWhatHasNoProgramGoesWithAll(t *testing.T) {
	step := func(id string, long int, program string) DayStep {
		return DayStep{ID: id, Min: mins(long), Needs: []Need{{Resource: "oven", Amount: 1, Program: program}}}
	}
	p := Problem{Anchor: dawn, Horizon: mins(100), Resources: []Resource{{ID: "oven", Capacity: 2}},
		Steps: []DayStep{step("hot", 50, "hot"), step("mild", 50, "mild"), step("plain", 100, "")}}
	if tt := plan(t, p); len(tt.Steps) != 3 {
		t.Errorf("%v", tt)
	}
	p.Steps[2] = step("cool", 100, "cool")
	if tt := plan(t, p); len(tt.Steps) != 0 {
		t.Errorf("three programs at once: %v", tt)
	}
}

// The kinds of steps have these words in data, in this order.
func TestWordsOfTheKinds(t *testing.T) {
	for k, want := range map[StepKind]string{Ripen: "ripen", Stand: "stand", Bulk: "bulk", Proof: "proof",
		Retard: "retard", Cool: "cool", Other: "other"} {
		if got, err := k.MarshalText(); err != nil || string(got) != want {
			t.Errorf("%q, want %q, %v", got, want, err)
		}
	}
}

// The beginning and the end of the plan are among the reasons where nothing else bounds the day.
func TestTheFrameOfThePlanIsAReason(t *testing.T) {
	p := loads(3, 60, 2, 0, 100)
	p.Bounds, p.Horizon = nil, mins(100)
	tt := plan(t, p)
	if tt.Conflict == nil {
		t.Fatal(tt)
	}
	met := map[Rule]int{}
	for _, m := range tt.Conflict.Members {
		met[m.Rule]++
	}
	if met[PlanStart] != 1 || met[PlanEnd] != 1 || met[StepExact] != 3 || met[Capacity] != 1 ||
		len(tt.Conflict.Members) != 6 {
		t.Errorf("%v", tt.Conflict)
	}
	p = loads(3, 60, 2, 0, 100) // from the beginning of the plan to the times given: its end has nothing to say
	for _, m := range plan(t, p).Conflict.Members {
		if m.Rule == PlanEnd {
			t.Errorf("the end of the plan is no reason: %v", plan(t, p).Conflict)
		}
	}
}

// A link of one length is told in the words given with either end of it.
func TestLinksOfOneLengthHaveTheirWords(t *testing.T) {
	for name, l := range map[string]Link{"least": {MinWords: working.Say("exactly an hour of rest")},
		"most": {MaxWords: working.Say("exactly an hour of rest")}} {
		l.From, l.To, l.Min, l.Max = "mix", "bake", mins(60), mins(60)
		p := Problem{Anchor: dawn, Horizon: mins(80), Links: []Link{l},
			Steps: []DayStep{{ID: "mix", Min: mins(20)}, {ID: "bake", Min: mins(40)}}}
		tt := plan(t, p)
		if tt.Conflict == nil || !slices.ContainsFunc(tt.Conflict.Members, func(m Member) bool {
			return m.Rule == LinkExact && m.Words.String() == "exactly an hour of rest"
		}) {
			t.Errorf("%s: %v", name, tt.Conflict)
		}
	}
}

// What is found in a refusal by following rules is derived by them, and what is not is said to have been tried.
func TestTheNearestTimeIsDerivedOrTried(t *testing.T) {
	const tried = "found by trying"
	tt, lines := refused(t, loads(3, 60, 2, 0, 100))
	if text := tt.Working().Text(100); strings.Contains(text, tried) || !strings.Contains(text, "waiting for a turn") {
		t.Errorf("%v\n%s", lines, text)
	}
	r := refusing{Derivation: working.Derive(working.Say("why")), c: tt.c}
	// Ten minutes later it does not work: nothing leads there, and a conflict that is not settled says so.
	r.nearest(&Shift{By: mins(10), To: dawn.Add(110 * time.Minute)}, &Conflict{})
	w := r.Working()
	text := w.Text(100)
	if !strings.Contains(text, tried) || !strings.Contains(text, "a nearer one was not ruled out") ||
		w.Len() != 1 || w.Lines(working.Reader{})[0].Value != "10 min" {
		t.Error(text)
	}
}

// Each length of time in a working is told by its own rule, the first one too.
func TestEveryRuleIsTold(t *testing.T) {
	p := Problem{Anchor: dawn, Horizon: mins(200),
		Steps: []DayStep{{ID: "mix", Min: mins(20)}, {ID: "bake", Min: mins(40)}},
		Links: []Link{{From: "mix", To: "bake", Min: mins(30), Max: NoLimit}},
		Bounds: []Bound{{Step: "bake", Edge: End, Latest: dawn.Add(180 * time.Minute), Wanted: true,
			Words: working.Say("nine o'clock")}}}
	text := plan(t, p).Working().Text(200)
	for _, want := range []string{"mix takes 20m", "bake takes 40m", "nine o'clock"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is missing in\n%s", want, text)
		}
	}
	if strings.Contains(text, "a step ends after it starts") {
		t.Error(text)
	}
}
