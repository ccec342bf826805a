package schedule

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/trial"
)

// What a problem may hold, to the last one: what is accepted, and where what is one more is refused.
func TestLimitsOfAProblem(t *testing.T) {
	const day = quantity.Elapsed(24 * time.Hour)
	at := func(m int) time.Time { return dawn.Add(mins(m).Duration()) }
	long := strings.Repeat("ä", maxName/2)
	steps := func(n int) []DayStep {
		out := make([]DayStep, n)
		for k := range out {
			out[k] = DayStep{ID: fmt.Sprint("step ", k), Min: mins(1)}
		}
		return out
	}
	spans := func(n int) []Span {
		out := make([]Span, n)
		for k := range out {
			out[k] = Span{From: at(k), To: at(k + 1)}
		}
		return out
	}
	told := map[string]string{}
	for name, c := range map[string]struct {
		change func(p *Problem, over bool)
		path   string
	}{
		"the year": {func(p *Problem, over bool) {
			p.Anchor, p.Bounds = time.Date(2200, 12, 31, 23, 59, 0, 0, time.UTC), nil
			if over {
				p.Anchor = p.Anchor.Add(time.Minute)
			}
		}, "Anchor"},
		"the first year": {func(p *Problem, over bool) {
			p.Anchor, p.Bounds = time.Date(1900, 1, 1, 0, 0, 0, 0, time.UTC), nil
			if over {
				p.Anchor = p.Anchor.Add(-time.Minute)
			}
		}, "Anchor"},
		"the horizon": {func(p *Problem, over bool) {
			if p.Horizon = 90 * day; over {
				p.Horizon += minute
			}
		}, "Horizon"},
		"one unit": {func(p *Problem, over bool) {
			*p = Problem{Anchor: dawn, Steps: []DayStep{{ID: "a"}}, Grid: mins(5), Horizon: mins(5)}
			if over {
				p.Horizon = mins(4)
			}
		}, "Horizon"},
		"the grid": {func(p *Problem, over bool) {
			*p = Problem{Anchor: dawn, Steps: []DayStep{{ID: "a"}}, Grid: day, Horizon: 2 * day}
			if over {
				p.Grid, p.Horizon = day+minute, 2*(day+minute)
			}
		}, "Grid"},
		"the least grid": {func(p *Problem, over bool) {
			if p.Grid = minute; over {
				p.Grid = minute / 2
			}
		}, "Grid"},
		"whole minutes": {func(p *Problem, over bool) {
			*p = Problem{Anchor: dawn, Steps: []DayStep{{ID: "a"}}, Grid: mins(3), Horizon: mins(9)}
			if over {
				p.Grid, p.Horizon = 3*minute/2, 3*minute
			}
		}, "Grid"},
		"effort": {func(p *Problem, over bool) {
			if over {
				p.Effort = -1
			}
		}, "Effort"},
		"steps": {func(p *Problem, over bool) {
			if p.Steps, p.Links, p.Bounds = steps(maxSteps), nil, nil; over {
				p.Steps = steps(maxSteps + 1)
			}
		}, "Steps"},
		"links": {func(p *Problem, over bool) {
			p.Links = make([]Link, maxItems)
			for k := range p.Links {
				p.Links[k] = Link{From: "mix", To: "bulk"}
			}
			if over {
				p.Links = append(p.Links, p.Links[0])
			}
		}, "Links"},
		"bounds": {func(p *Problem, over bool) {
			b := p.Bounds[0]
			p.Bounds = make([]Bound, maxItems)
			for k := range p.Bounds {
				p.Bounds[k] = b
			}
			if over {
				p.Bounds = append(p.Bounds, b)
			}
		}, "Bounds"},
		"closed spans": {func(p *Problem, over bool) {
			if p.Resources[0].Closed = spans(maxItems); over {
				p.Resources[0].Closed = spans(maxItems + 1)
			}
		}, "Resources[0].Closed"},
		"an ID": {func(p *Problem, over bool) {
			if p.Steps[2].ID = long; over {
				p.Steps[2].ID += "e"
			}
			p.Links, p.Bounds = nil, nil
		}, "Steps[2].ID"},
		"words": {func(p *Problem, over bool) {
			if p.Bounds[0].Words = working.Say(long); over {
				p.Bounds[0].Words = working.Say(long + "e")
			}
		}, "Bounds[0].Words"},
		"a program": {func(p *Problem, over bool) {
			if p.Steps[0].Needs[0].Program = long; over {
				p.Steps[0].Needs[0].Program += "e"
			}
		}, "Steps[0].Needs[0].Program"},
		"points": {func(p *Problem, over bool) {
			if p.Steps[0].PerMinute, p.Bounds[0].EarlyPerMinute = maxPoints, maxPoints; over {
				p.Steps[0].PerMinute++
			}
		}, "Steps[0].PerMinute"},
		"points less than nothing": {func(p *Problem, over bool) {
			if p.Steps[0].PerMinute = -maxPoints; over {
				p.Steps[0].PerMinute--
			}
		}, "Steps[0].PerMinute"},
		"points for bread that is early": {func(p *Problem, over bool) {
			if p.Bounds[0].EarlyPerMinute = maxPoints; over {
				p.Bounds[0].EarlyPerMinute++
			}
		}, "Bounds[0].EarlyPerMinute"},
		"no points for bread that is late": {func(p *Problem, over bool) {
			p.Bounds[0].Earliest, p.Bounds[0].LatePerMinute = dawn, 0
			if over {
				p.Bounds[0].LatePerMinute = -1
			}
		}, "Bounds[0].LatePerMinute"},
		"the amount": {func(p *Problem, over bool) {
			if p.Resources[0].Capacity, p.Steps[0].Needs[0].Amount = maxAmount, maxAmount; over {
				p.Resources[0].Capacity, p.Steps[0].Needs[0].Amount = 0, maxAmount+1
			}
		}, "Steps[0].Needs[0].Amount"},
		"the capacity": {func(p *Problem, over bool) {
			if p.Resources[0].Capacity = maxAmount; over {
				p.Resources[0].Capacity++
			}
		}, "Resources[0].Capacity"},
		"all there is": {func(p *Problem, over bool) {
			if p.Steps[0].Needs[0].Amount, p.Resources[0].Capacity = 2, 2; over {
				p.Steps[0].Needs[0].Amount = 3
			}
		}, "Steps[0].Needs[0].Amount"},
		"a long step": {func(p *Problem, over bool) {
			if p.Steps[0].Min = 180 * day; over {
				p.Steps[0].Min += minute
			}
		}, "Steps[0].Min"},
		"a long link": {func(p *Problem, over bool) {
			if p.Links[0].Max = 180 * day; over {
				p.Links[0].Max += minute
			}
		}, "Links[0].Max"},
		"a long way back": {func(p *Problem, over bool) {
			if p.Links[0].Min = -180 * day; over {
				p.Links[0].Min -= minute
			}
		}, "Links[0].Min"},
		"no limit upward": {func(p *Problem, over bool) {
			if p.Links[0].Min, p.Links[0].Max = -NoLimit, NoLimit; over {
				p.Links[0].Min = NoLimit
			}
		}, "Links[0].Min"},
		"no limit downward": {func(p *Problem, over bool) {
			if p.Links[0].Min, p.Links[0].Max = -NoLimit, NoLimit; over {
				p.Links[0].Max = -NoLimit
			}
		}, "Links[0].Max"},
		"the kind of a link": {func(p *Problem, over bool) {
			if p.Links[0].Kind, p.Links[0].Max = StartToEnd, NoLimit; over {
				p.Links[0].Kind++
			}
		}, "Links[0].Kind"},
		"the first kind of a link": {func(p *Problem, over bool) {
			if over {
				p.Links[0].Kind--
			}
		}, "Links[0].Kind"},
		"the kind of a step": {func(p *Problem, over bool) {
			if p.Steps[0].Kind = Other; over {
				p.Steps[0].Kind++
			}
		}, "Steps[0].Kind"},
		"likely as long as may be": {func(p *Problem, over bool) {
			if p.Steps[1].Likely = p.Steps[1].Max; over {
				p.Steps[1].Likely += minute
			}
		}, "Steps[1].Likely"},
		"likely as short as may be": {func(p *Problem, over bool) {
			if p.Steps[1].Likely = p.Steps[1].Min; over {
				p.Steps[1].Likely -= minute
			}
		}, "Steps[1].Likely"},
		"a link of one length": {func(p *Problem, over bool) {
			if p.Links[1].Min = p.Links[1].Max; over {
				p.Links[1].Min += minute
			}
		}, "Links[1].Max"},
		"a bound at one time": {func(p *Problem, over bool) {
			if p.Bounds[0].Earliest = p.Bounds[0].Latest; over {
				p.Bounds[0].Earliest = p.Bounds[0].Latest.Add(time.Second)
			}
		}, "Bounds[0].Latest"},
		"a fixed time on the grid": {func(p *Problem, over bool) {
			if p.Bounds[0].Earliest = p.Bounds[0].Latest; over {
				p.Bounds[0].Earliest = p.Bounds[0].Latest.Add(time.Second)
				p.Bounds[0].Latest = p.Bounds[0].Earliest
			}
		}, "Bounds[0].Earliest"},
		"awkward times on the grid": {func(p *Problem, over bool) {
			p.Resources[0].Awkward = []Awkward{{From: dawn, To: dawn.Add(time.Hour), PerMinute: maxPoints}}
			if over {
				p.Resources[0].Awkward[0].To = dawn.Add(90 * time.Second)
			}
		}, "Resources[0].Awkward[0]"},
		"points of awkward times": {func(p *Problem, over bool) {
			p.Resources[0].Awkward = []Awkward{{From: dawn, To: dawn.Add(time.Hour), PerMinute: maxPoints}}
			if over {
				p.Resources[0].Awkward[0].PerMinute++
			}
		}, "Resources[0].Awkward[0].PerMinute"},
		"points of awkward times less than nothing": {func(p *Problem, over bool) {
			p.Resources[0].Awkward = []Awkward{{From: dawn, To: dawn.Add(time.Hour), PerMinute: 0}}
			if over {
				p.Resources[0].Awkward[0].PerMinute--
			}
		}, "Resources[0].Awkward[0].PerMinute"},
		"awkward times that begin on the grid": {func(p *Problem, over bool) {
			p.Resources[0].Awkward = []Awkward{{From: dawn, To: dawn.Add(time.Hour), PerMinute: maxPoints}}
			if over {
				p.Resources[0].Awkward[0].From = dawn.Add(90 * time.Second)
			}
		}, "Resources[0].Awkward[0]"},
		"a changeover on the grid": {func(p *Problem, over bool) {
			if p.Resources[0].Changeover = mins(5); over {
				p.Resources[0].Changeover += minute / 2
			}
		}, "Resources[0].Changeover"},
		"each need once": {func(p *Problem, over bool) {
			if over {
				p.Steps[0].Needs = append(p.Steps[0].Needs, p.Steps[0].Needs[0])
			}
		}, "Steps[0].Needs[1].Resource"},
		"each resource once": {func(p *Problem, over bool) {
			p.Resources = append(p.Resources, Resource{ID: "oven"})
			if over {
				p.Resources[1].ID = "baker"
			}
		}, "Resources[1].ID"},
		"a moment of what is shared": {func(p *Problem, over bool) {
			if p.Steps[0].Min, p.Steps[0].Max = mins(1), mins(5); over {
				p.Steps[0].Min = 0
			}
		}, "Steps[0].Min"},
	} {
		for _, over := range []bool{false, true} {
			p := loaf()
			c.change(&p, over)
			_, err := p.compile()
			if !over {
				if err != nil {
					t.Errorf("%s: %.300v", name, err)
				}
				continue
			}
			var paths []string
			for _, e := range quantity.InputErrors(err) {
				paths = append(paths, e.GoPath)
			}
			told[name] = err.Error()
			if len(paths) != 1 || paths[0] != c.path {
				t.Errorf("%s, one more: %v, want %s", name, paths, c.path)
			}
		}
	}
	var b strings.Builder
	for _, name := range slices.Sorted(maps.Keys(told)) {
		fmt.Fprintf(&b, "%s\n    %s\n", name, told[name])
	}
	trial.Kept(t, "refused.txt", b.String())
}
