package schedule

import (
	"testing"
	"time"

	"example.org/maslin/dough/working"
	"github.com/google/go-cmp/cmp"
)

// morning is two loads of one bread by hand, one after the other in an oven that heats up again in between.
func morning() (Problem, Timetable) {
	at := func(m int) time.Time { return dawn.Add(mins(m).Duration()) }
	p := Problem{Anchor: dawn, Horizon: mins(300), Grid: mins(5), Alike: [][]string{{"first", "second"}},
		Steps: []DayStep{
			{ID: "shape", Min: mins(20), Max: mins(40), Needs: []Need{{Resource: "hands", Amount: 2}}},
			{ID: "first", Name: working.Say("the first load"), Min: mins(50), Needs: []Need{{"oven", 1, "hot"}}},
			{ID: "second", Min: mins(50), Needs: []Need{{"oven", 1, "mild"}}},
			{ID: "sweep", Min: mins(10), Needs: []Need{{Resource: "hands", Amount: 1}}},
		},
		Links: []Link{{From: "shape", To: "first", Min: mins(10), Max: mins(30)},
			{From: "first", To: "second", Kind: EndToEnd, Min: mins(60), Max: NoLimit}},
		Bounds: []Bound{{Step: "second", Edge: End, Latest: at(200), Words: working.Say("breakfast")},
			{Step: "shape", Edge: Start, Earliest: at(10), Words: working.Say("not before ten past")}},
		Resources: []Resource{
			{ID: "hands", Capacity: 2, Closed: []Span{{From: at(60), To: at(120), Words: working.Say("market")}}},
			{ID: "oven", Capacity: 2, Changeover: mins(5), Changes: []Changeover{{"hot", "mild", mins(15)}}},
		},
	}
	tt := Timetable{}
	for k, m := range [][2]int{{10, 40}, {50, 100}, {115, 165}, {120, 130}} {
		tt.Steps = append(tt.Steps, Timed{Label: p.Steps[k].label(), Start: at(m[0]), End: at(m[1])})
	}
	return p, tt
}

// Each rule that is broken is named with what it is about, and nothing else is.
func TestCheckNamesEachRule(t *testing.T) {
	const shape, first, second, sweep = 0, 1, 2, 3
	for name, c := range map[string]struct {
		step     int
		from, to int
		want     []Breach
		words    []string
	}{
		"as it is":       {shape, 10, 40, nil, nil},
		"to the edges":   {shape, 10, 30, nil, nil},
		"the other edge": {sweep, 290, 300, nil, nil},
		"too short": {shape, 25, 40, []Breach{{Rule: StepMin, Step: "shape"}},
			[]string{"shape takes 15m"}},
		"too long": {sweep, 120, 135, []Breach{{Rule: StepMax, Step: "sweep"}}, []string{"sweep takes 15m"}},
		"before the plan": {sweep, -10, 0, []Breach{{Rule: PlanStart, Step: "sweep"}},
			[]string{"sweep begins before the plan"}},
		"after the plan": {sweep, 295, 305, []Breach{{Rule: PlanEnd, Step: "sweep"}}, []string{"sweep ends after the plan"}},
		"off the grid": {sweep, 121, 131, []Breach{{Rule: PlanStart, Step: "sweep"}},
			[]string{"sweep is off the grid"}},
		"too soon after it": {first, 45, 95, []Breach{{Rule: LinkMin, Step: "shape", Other: "first"}},
			[]string{"shape to the first load (end to start): 5m"}},
		"too long after it": {shape, 10, 15, []Breach{{Rule: StepMin, Step: "shape"},
			{Rule: LinkMax, Step: "shape", Other: "first"}}, []string{"shape takes 5m",
			"shape to the first load (end to start): 35m"}},
		"an end too soon after an end": {first, 60, 110, []Breach{{Rule: LinkMin, Step: "first", Other: "second"},
			{Rule: Capacity, Step: "first", Other: "oven"}},
			[]string{"the first load to second (end to end): 55m", "the first load and second both use oven"}},
		"too late": {second, 155, 205, []Breach{{Rule: NotAfter, Step: "second"}},
			[]string{"breakfast: end of second is at Sat 09:25"}},
		"too early": {shape, 5, 35, []Breach{{Rule: NotBefore, Step: "shape"}},
			[]string{"not before ten past: start of shape is at Sat 06:05"}},
		"at the market": {sweep, 55, 65, []Breach{{Rule: Absence, Step: "sweep", Other: "hands"}},
			[]string{"sweep during market"}},
		"up to the market":     {sweep, 50, 60, nil, nil},
		"right after the last": {second, 115, 165, nil, nil},
		"too many hands": {sweep, 30, 40, []Breach{{Rule: Capacity, Step: "shape", Other: "hands"},
			{Rule: Capacity, Step: "sweep", Other: "hands"}},
			[]string{"shape and sweep both use hands", "3 of hands used at the start of sweep"}},
		"while it heats": {second, 110, 160, []Breach{{Rule: Capacity, Step: "first", Other: "oven"}},
			[]string{"the first load and second both use oven"}},
	} {
		p, tt := morning()
		at := func(m int) time.Time { return dawn.Add(mins(m).Duration()) }
		tt.Steps[c.step].Start, tt.Steps[c.step].End = at(c.from), at(c.to)
		got := p.Check(tt)
		var words []string
		for k := range got {
			words = append(words, got[k].String())
			got[k].Words = working.Message{}
		}
		if d := cmp.Diff(c.want, got, cmp.AllowUnexported(working.Message{})); d != "" {
			t.Errorf("%s: %s", name, d)
		}
		if d := cmp.Diff(c.words, words); d != "" {
			t.Errorf("%s: %s", name, d)
		}
	}
}

// The order of like steps, a step that is missing, and one that a timetable has too much.
func TestCheckNamesWhatIsMissing(t *testing.T) {
	p, tt := morning()
	p.Alike[0][0], p.Alike[0][1] = "second", "first"
	if got := p.Check(tt); len(got) != 1 || got[0].Rule != InOrder || got[0].Step != "second" || got[0].Other != "first" ||
		got[0].String() != "the first load starts before second" {
		t.Error(got)
	}
	p, tt = morning()
	tt.Steps = tt.Steps[1:]
	if got := p.Check(tt); len(got) != 1 || got[0].Rule != Missing || got[0].Step != "shape" ||
		got[0].String() != "shape is missing" {
		t.Error(got)
	}
	p, tt = morning()
	tt.Steps = append(tt.Steps, Timed{Label: Label{ID: "stray"}, Start: dawn, End: dawn})
	if got := p.Check(tt); len(got) != 0 {
		t.Error(got)
	}
	tt.Steps[2].Start, tt.Steps[2].End = tt.Steps[2].Start.Add(40*time.Minute), tt.Steps[2].End.Add(40*time.Minute)
	if got := p.Check(tt); len(got) != 1 || got[0].Rule != NotAfter {
		t.Error(got)
	}
}

// What takes no time uses nothing, and two at a time are not too many.
func TestCheckOfMoments(t *testing.T) {
	at := func(m int) time.Time { return dawn.Add(mins(m).Duration()) }
	p := Problem{Anchor: dawn, Horizon: mins(60), Resources: []Resource{{ID: "hands", Capacity: 1}},
		Steps: []DayStep{{ID: "a", Min: mins(30), Needs: []Need{{Resource: "hands", Amount: 1}}},
			{ID: "b", Max: mins(30), Needs: []Need{{Resource: "hands", Amount: 1}}}}}
	for _, c := range []struct {
		from, to, capacity, broken int
	}{{10, 10, 1, 0}, {10, 11, 1, 2}, {10, 11, 2, 0}, {30, 31, 1, 0}, {29, 31, 1, 2}, {0, 1, 1, 3}, {0, 60, 1, 4}} {
		p.Resources[0].Capacity = c.capacity
		got := p.Check(Timetable{Steps: []Timed{{Label: Label{ID: "a"}, Start: at(0), End: at(30)},
			{Label: Label{ID: "b"}, Start: at(c.from), End: at(c.to)}}})
		if len(got) != c.broken {
			t.Errorf("%+v: %v", c, got)
		}
	}
}
