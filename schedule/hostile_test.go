package schedule

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
)

// loaf is a small good problem to spoil.
func loaf() Problem {
	return Problem{Anchor: dawn, Horizon: quantity.Elapsed(24 * time.Hour),
		Steps: []DayStep{
			{ID: "mix", Min: mins(20), Needs: []Need{{Resource: "baker", Amount: 1}}},
			{
				ID:     "bulk",
				Min:    quantity.Elapsed(4 * time.Hour),
				Max:    quantity.Elapsed(6 * time.Hour),
				Living: true,
				Watch:  "baker",
			},
			{ID: "shape", Min: mins(30), Needs: []Need{{Resource: "baker", Amount: 1}}},
		},
		Links:  []Link{{From: "mix", To: "bulk"}, {From: "bulk", To: "shape", Max: mins(15)}},
		Bounds: []Bound{{Step: "shape", Edge: End, Latest: dawn.Add(10 * time.Hour), Wanted: true}},
		Resources: []Resource{
			{ID: "baker", Capacity: 1, Closed: []Span{{From: dawn.Add(2 * time.Hour), To: dawn.Add(3 * time.Hour)}}},
		},
	}
}

func TestBadInput(t *testing.T) {
	big := strings.Repeat("x", 1<<20)
	for _, c := range []struct {
		name  string
		spoil func(p *Problem)
		path  string
		want  error
	}{
		{"nothing", func(p *Problem) { *p = Problem{} }, "Anchor", quantity.ErrRequired},
		{"no steps", func(p *Problem) { p.Steps, p.Links, p.Bounds = nil, nil, nil }, "Steps", quantity.ErrRequired},
		{"no horizon", func(p *Problem) { p.Horizon = 0 }, "Horizon", quantity.ErrRequired},
		{"endless horizon", func(p *Problem) { p.Horizon = math.MaxInt64 }, "Horizon", quantity.ErrOutOfRange},
		{"negative horizon", func(p *Problem) { p.Horizon = math.MinInt64 }, "Horizon", quantity.ErrOutOfRange},
		{"crooked horizon", func(p *Problem) { p.Horizon += quantity.Elapsed(time.Second) }, "Horizon",
			quantity.ErrTooPrecise},
		{"grid of a second", func(p *Problem) { p.Grid = quantity.Elapsed(time.Second) }, "Grid", quantity.ErrOutOfRange},
		{"negative grid", func(p *Problem) { p.Grid = math.MinInt64 }, "Grid", quantity.ErrOutOfRange},
		{"year 9999", func(p *Problem) { p.Anchor = time.Date(9999, 1, 1, 0, 0, 0, 0, time.UTC) }, "Anchor",
			quantity.ErrOutOfRange},
		{"negative effort", func(p *Problem) { p.Effort = -1 }, "Effort", quantity.ErrOutOfRange},
		{"no name", func(p *Problem) { p.Steps[0].ID = "" }, "Steps[0].ID", quantity.ErrRequired},
		{"huge name", func(p *Problem) { p.Steps[0].ID = big }, "Steps[0].ID", quantity.ErrOutOfRange},
		{"broken name", func(p *Problem) { p.Steps[0].ID = "mi\xff" }, "Steps[0].ID", quantity.ErrOutOfRange},
		{"name twice", func(p *Problem) { p.Steps[1].ID = "mix" }, "Steps[1].ID", quantity.ErrInconsistent},
		{"negative duration", func(p *Problem) { p.Steps[0].Min = -1 }, "Steps[0].Min", quantity.ErrOutOfRange},
		{"inverted duration", func(p *Problem) { p.Steps[1].Max = quantity.Elapsed(time.Hour) }, "Steps[1].Max",
			quantity.ErrInconsistent},
		{"seconds", func(p *Problem) { p.Steps[0].Min = quantity.Elapsed(90 * time.Second) }, "Steps[0].Min",
			quantity.ErrTooPrecise},
		{"endless duration", func(p *Problem) { p.Steps[0].Min = math.MaxInt64 }, "Steps[0].Min", quantity.ErrOutOfRange},
		{"likely outside", func(p *Problem) { p.Steps[1].Likely = quantity.Elapsed(time.Hour) }, "Steps[1].Likely",
			quantity.ErrInconsistent},
		{"likely but not living", func(p *Problem) { p.Steps[0].Likely = quantity.Elapsed(time.Hour) }, "Steps[0].Likely",
			quantity.ErrInconsistent},
		{"living without end", func(p *Problem) { p.Steps[1].Max = NoLimit }, "Steps[1].Max", quantity.ErrInconsistent},
		{"watched by nobody", func(p *Problem) { p.Steps[1].Watch = "cat" }, "Steps[1].Watch", quantity.ErrInconsistent},
		{"unknown resource", func(p *Problem) { p.Steps[0].Needs[0].Resource = "cat" }, "Steps[0].Needs[0].Resource",
			quantity.ErrInconsistent},
		{"needs nothing", func(p *Problem) { p.Steps[0].Needs[0].Amount = 0 }, "Steps[0].Needs[0].Amount",
			quantity.ErrRequired},
		{"needs more than exists", func(p *Problem) { p.Steps[0].Needs[0].Amount = 2 }, "Steps[0].Needs[0].Amount",
			quantity.ErrInconsistent},
		{"shares for no time", func(p *Problem) { p.Steps[0].Min, p.Steps[0].Max = 0, mins(60) }, "Steps[0].Min",
			quantity.ErrInconsistent},
		{"price too high", func(p *Problem) { p.Steps[0].PerMinute = math.MaxInt }, "Steps[0].PerMinute",
			quantity.ErrOutOfRange},
		{"link from nowhere", func(p *Problem) { p.Links[0].From = "knead" }, "Links[0].From", quantity.ErrInconsistent},
		{"link of no kind", func(p *Problem) { p.Links[0].Kind = 9 }, "Links[0].Kind", quantity.ErrOutOfRange},
		{"inverted link", func(p *Problem) { p.Links[0].Min = quantity.Elapsed(time.Hour) }, "Links[0].Max",
			quantity.ErrInconsistent},
		{"bound on nothing", func(p *Problem) { p.Bounds[0].Step = "lunch" }, "Bounds[0].Step", quantity.ErrInconsistent},
		{"bound without time", func(p *Problem) { p.Bounds[0].Latest = time.Time{} }, "Bounds[0]", quantity.ErrRequired},
		{"inverted bound", func(p *Problem) { p.Bounds[0].Earliest = dawn.Add(20 * time.Hour) }, "Bounds[0].Latest",
			quantity.ErrInconsistent},
		{"price without time", func(p *Problem) { p.Bounds[0].LatePerMinute = 1 }, "Bounds[0].LatePerMinute",
			quantity.ErrInconsistent},
		{"bound of no edge", func(p *Problem) { p.Bounds[0].Edge = 7 }, "Bounds[0].Edge", quantity.ErrOutOfRange},
		{"negative capacity", func(p *Problem) { p.Resources[0].Capacity = -1 }, "Resources[0].Capacity",
			quantity.ErrOutOfRange},
		{"negative changeover", func(p *Problem) { p.Resources[0].Changeover = -1 }, "Resources[0].Changeover",
			quantity.ErrOutOfRange},
		{"inverted absence", func(p *Problem) { p.Resources[0].Closed[0].To = dawn }, "Resources[0].Closed[0].To",
			quantity.ErrInconsistent},
		{"absence without end", func(p *Problem) { p.Resources[0].Closed[0].To = time.Time{} }, "Resources[0].Closed[0].To",
			quantity.ErrRequired},
		{"unlike", func(p *Problem) { p.Alike = [][]string{{"mix", "cat"}} }, "Alike[0][1]", quantity.ErrInconsistent},
		{"too many spans in all", func(p *Problem) {
			closed := make([]Span, maxItems)
			for i := 0; i < 11; i++ {
				p.Resources = append(p.Resources, Resource{ID: strings.Repeat("r", i+1), Closed: closed})
			}
		}, "Resources", quantity.ErrOutOfRange},
		{"too many spans for the steps", func(p *Problem) {
			p.Resources[0].Closed = make([]Span, maxItems)
			for i := 0; i < 60; i++ {
				p.Steps = append(p.Steps, DayStep{ID: strings.Repeat("s", i+1), Min: mins(5), Needs: p.Steps[0].Needs})
			}
		}, "Resources", quantity.ErrOutOfRange},
		{"too many steps", func(p *Problem) { p.Steps = make([]DayStep, 5000) }, "Steps", quantity.ErrOutOfRange},
	} {
		p := loaf()
		c.spoil(&p)
		_, err := p.Latest(context.Background())
		if err == nil {
			t.Errorf("%s: no error", c.name)
			continue
		}
		found := false
		for _, e := range quantity.InputErrors(err) {
			found = found || e.GoPath == c.path && errors.Is(e, c.want)
		}
		if !found {
			t.Errorf("%s: %v\nwant %s: %v", c.name, err, c.path, c.want)
		}
		if len(err.Error()) > 20000 {
			t.Errorf("%s: an error of %d bytes", c.name, len(err.Error()))
		}
	}
}

// All problems of an input come at once, in the order of the fields.
func TestAllProblemsAtOnce(t *testing.T) {
	p := loaf()
	p.Steps[0].Min = -1
	p.Links[1].To = "lunch"
	p.Bounds[0].Step = "dinner"
	_, err := p.Best(context.Background())
	var paths []string
	for _, e := range quantity.InputErrors(err) {
		paths = append(paths, e.GoPath)
	}
	if got := strings.Join(paths, " "); got != "Steps[0].Min Links[1].To Bounds[0].Step" {
		t.Errorf("paths %q", got)
	}
}

// What cannot be met is an answer: a cycle, contradictory fixed times, a wanted time in the
// past.
func TestImpossibleIsAnAnswer(t *testing.T) {
	for name, spoil := range map[string]func(p *Problem){
		"a cycle": func(p *Problem) { p.Links = append(p.Links, Link{From: "shape", To: "mix", Max: NoLimit}) },
		"contradictory times": func(p *Problem) {
			p.Bounds = append(p.Bounds, Bound{Step: "shape", Edge: Start, Earliest: dawn.Add(12 * time.Hour)})
		},
		"wanted in the past": func(p *Problem) { p.Bounds[0].Latest = dawn.Add(-24 * time.Hour) },
		"wanted after all": func(p *Problem) {
			p.Bounds[0].Earliest, p.Bounds[0].Latest = dawn.Add(4000*time.Hour), dawn.Add(4000*time.Hour)
		},
	} {
		p := loaf()
		spoil(&p)
		tt, err := p.Latest(context.Background())
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if tt.Verdict != Infeasible || tt.Conflict == nil || len(tt.Conflict.Members) == 0 || !tt.Conflict.Minimal {
			t.Errorf("%s: %v %v", name, tt.Verdict, tt.Conflict)
		}
		if tt.Conflict.Short <= 0 {
			t.Errorf("%s: short by %v", name, tt.Conflict.Short)
		}
	}
}

func TestThousandSteps(t *testing.T) {
	p := thousand()
	tt, err := p.Latest(context.Background())
	if err != nil || tt.Verdict != Optimal {
		t.Fatal(err, tt.Verdict)
	}
	if broken := p.Check(tt); len(broken) > 0 {
		t.Fatal(broken[:1])
	}
	p.Horizon = quantity.Elapsed(24 * time.Hour)
	tt, err = p.Latest(context.Background())
	if err != nil || tt.Verdict != Infeasible || tt.Conflict == nil {
		t.Fatal(err, tt.Verdict)
	}
}

// A context that has ended gives an answer at once, and never a wrong one.
func TestContextEnds(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	tt, err := loadKitchen(t, "shop60").Best(ctx)
	if !errors.Is(err, context.Canceled) {
		t.Fatal(err)
	}
	if tt.Verdict != Unknown {
		t.Errorf("verdict %v", tt.Verdict)
	}
	p := loadKitchen(t, "shop60")
	p.Effort = 300
	tt, err = p.Best(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	if tt.Verdict != Feasible || tt.Bound > 5*1125 || tt.Cost < 5*1125 || len(p.Check(tt)) > 0 {
		t.Errorf("verdict %v, cost %d, bound %d", tt.Verdict, tt.Cost, tt.Bound)
	}
	if g := tt.Gap(); g <= 0 || g > 0.2 {
		t.Errorf("gap %v", g)
	}
}

func TestZeroValuesPrint(t *testing.T) {
	var tt Timetable
	var c *Conflict
	var s *Shift
	for _, text := range []string{tt.String(), c.String(), s.String(), Verdict(99).String(), LinkKind(99).String(),
		Edge(9).String(), Rule(99).String(), Robustness{}.String()} {
		if len(text) > 200 {
			t.Errorf("%q", text)
		}
	}
	if _, err := tt.Robust(context.Background()); !errors.Is(err, quantity.ErrRequired) {
		t.Errorf("robustness of nothing: %v", err)
	}
	if got := loaf().Check(tt); len(got) != 3 {
		t.Errorf("nothing keeps the rules: %v", got)
	}
}
