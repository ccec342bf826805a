package schedule

import (
	"errors"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"pgregory.net/rapid"
)

// What is under way lasts from how long it has lasted: a step that is over its time may end now or later, a living one
// likely ends in the middle of what it may take, or now when that is past.
func TestWhatIsUnderWay(t *testing.T) {
	at := func(m int) time.Time { return dawn.Add(mins(m).Duration()) }
	for name, c := range map[string]struct {
		step              DayStep
		now               int // minutes after it began
		least, likely, to int
	}{
		"a step that has time":          {DayStep{Min: mins(20), Max: mins(40)}, 10, 20, 0, 40},
		"a step over its shortest":      {DayStep{Min: mins(20), Max: mins(40)}, 30, 20, 0, 40},
		"a step over its longest":       {DayStep{Min: mins(20), Max: mins(40)}, 50, 20, 0, 50},
		"a step of one length":          {DayStep{Min: mins(20)}, 10, 20, 0, 20},
		"a step of one length, over it": {DayStep{Min: mins(20)}, 30, 20, 0, 30},
		"a dough":                       {DayStep{Min: mins(100), Max: mins(205), Living: true}, 50, 100, 150, 205},
		"a dough that may be ready":     {DayStep{Min: mins(100), Max: mins(205), Living: true}, 120, 120, 150, 205},
		"a dough that is likely ready":  {DayStep{Min: mins(100), Max: mins(205), Living: true}, 170, 170, 170, 205},
		"a dough that is late":          {DayStep{Min: mins(100), Max: mins(205), Living: true}, 220, 220, 220, 220},
		"a dough with its own likelihood": {DayStep{Min: mins(100), Max: mins(205), Living: true, Likely: mins(180)}, 120,
			120, 180, 205},
	} {
		c.step.ID = "a"
		p := Problem{Anchor: dawn, Horizon: mins(300), Grid: mins(5), Steps: []DayStep{c.step}}
		left, err := p.Midway(Midway{Now: at(10 + c.now), Done: []Done{{Step: "a", Start: at(10)}}})
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		s := left.Steps[0]
		if s.Min != mins(c.least) || s.Likely != mins(c.likely) || s.Max != mins(c.to) {
			t.Errorf("%s: %v, likely %v, to %v", name, s.Min, s.Likely, s.Max)
		}
		want := []Bound{{Step: "a", Edge: Start, Earliest: at(10), Latest: at(10)},
			{Step: "a", Edge: End, Earliest: at(10 + c.now)}}
		for k, b := range left.Bounds {
			if !b.Firm || k >= len(want) || b.Step != "a" || b.Edge != want[k].Edge || !b.Earliest.Equal(want[k].Earliest) ||
				!b.Latest.Equal(want[k].Latest) {
				t.Errorf("%s: %+v", name, left.Bounds)
			}
		}
	}
	endless := Problem{Anchor: dawn, Horizon: mins(300), Steps: []DayStep{{ID: "a", Min: mins(5), Max: NoLimit}}}
	if left, err := endless.Midway(Midway{Now: at(60), Done: []Done{{Step: "a", Start: at(0)}}}); err != nil ||
		left.Steps[0].Max != NoLimit {
		t.Error(left.Steps, err)
	}
}

// The plan reaches from the first real start to after the present; like steps that have begun are in no order any more.
func TestTheFrameOfWhatIsLeft(t *testing.T) {
	at := func(m int) time.Time { return dawn.Add(mins(m).Duration()) }
	p := Problem{Anchor: dawn, Horizon: mins(60), Grid: mins(5), Alike: [][]string{{"a", "b", "c"}}}
	for _, id := range []string{"a", "b", "c"} {
		p.Steps = append(p.Steps, DayStep{ID: id, Min: mins(10)})
	}
	for _, c := range []struct {
		now, began      int
		anchor, horizon int
		alike           string
	}{
		{30, 20, 0, 60, "b c"}, {30, -10, -10, 70, "b c"}, {60, 20, 0, 65, "b c"}, {100, 20, 0, 105, "b c"},
		{59, 20, 0, 60, "b c"}, {100, -10, -10, 115, "b c"},
	} {
		if c.now%5 != 0 {
			continue
		}
		left, err := p.Midway(Midway{Now: at(c.now), Done: []Done{{Step: "a", Start: at(c.began), End: at(c.began + 10)}}})
		if err != nil {
			t.Fatal(err)
		}
		if !left.Anchor.Equal(at(c.anchor)) || left.Horizon != mins(c.horizon) ||
			strings.Join(left.Alike[0], " ") != c.alike {
			t.Errorf("%+v: %v for %v, %v", c, left.Anchor.Sub(dawn), left.Horizon, left.Alike)
		}
	}
	p.Steps[0].MinWords, p.Steps[0].MaxWords = working.Say("at least"), working.Say("at most")
	left, err := p.Midway(Midway{Now: at(40), Done: []Done{{Step: "a", Start: at(0), End: at(10)},
		{Step: "b", Start: at(20)}}})
	if err != nil || len(left.Alike) != 0 {
		t.Error(left.Alike, err)
	}
	if s := left.Steps[0]; !s.MinWords.IsZero() || !s.MaxWords.IsZero() || s.Min != mins(10) || s.Max != mins(10) {
		t.Errorf("what is over still has its limits: %+v", s)
	}
}

// A closed span is open after all while something that needs the resource is under way in it, and gone once it is past.
func TestClosedSpansOfWhatIsLeft(t *testing.T) {
	at := func(m int) time.Time { return dawn.Add(mins(m).Duration()) }
	p := Problem{Anchor: dawn, Horizon: mins(300), Resources: []Resource{{ID: "hands"}, {ID: "oven"}},
		Steps: []DayStep{{ID: "a", Min: mins(30), Needs: []Need{{Resource: "hands", Amount: 1}}}, {ID: "b", Min: mins(10)}}}
	for k := range p.Resources {
		for _, m := range [][2]int{{0, 20}, {30, 60}, {40, 70}, {100, 120}} {
			p.Resources[k].Closed = append(p.Resources[k].Closed, Span{From: at(m[0]), To: at(m[1])})
		}
	}
	from := func(r Resource) (out []int) {
		for _, c := range r.Closed {
			out = append(out, int(c.From.Sub(dawn)/time.Minute))
		}
		return out
	}
	for _, c := range []struct {
		now         int
		done        []Done
		hands, oven []int
	}{
		{20, nil, []int{30, 40, 100}, []int{30, 40, 100}},
		{19, nil, []int{0, 30, 40, 100}, []int{0, 30, 40, 100}},
		{30, []Done{{Step: "a", Start: at(25)}}, []int{40, 100}, []int{30, 40, 100}},
		{40, []Done{{Step: "a", Start: at(25)}}, []int{100}, []int{30, 40, 100}},
		{40, []Done{{Step: "a", Start: at(5), End: at(35)}}, []int{30, 40, 100}, []int{30, 40, 100}},
		{40, []Done{{Step: "b", Start: at(35)}}, []int{30, 40, 100}, []int{30, 40, 100}},
	} {
		left, err := p.Midway(Midway{Now: at(c.now), Done: c.done})
		if err != nil {
			t.Fatal(err)
		}
		if h, o := from(left.Resources[0]), from(left.Resources[1]); !slices.Equal(h, c.hands) || !slices.Equal(o, c.oven) {
			t.Errorf("%+v: %v and %v", c, h, o)
		}
	}
}

// What is said of the day is refused where it cannot be: off the grid, far from the plan, out of order.
func TestWhatIsSaidOfTheDay(t *testing.T) {
	at := func(m int) time.Time { return dawn.Add(mins(m).Duration()) }
	p := Problem{Anchor: dawn, Horizon: mins(300), Grid: mins(5),
		Steps: []DayStep{{ID: "a", Min: mins(20), Max: mins(60), Living: true}}}
	days := func(d int) time.Time { return dawn.AddDate(0, 0, d) }
	look := func(now, early, likely, late int) Midway {
		return Midway{Now: at(now), Done: []Done{{Step: "a", Start: at(0)}},
			Ranges: []Look{{Step: "a", Early: at(early), Likely: at(likely), Late: at(late)}}}
	}
	for name, c := range map[string]struct {
		m    Midway
		path string
		want error
	}{
		"the last day":         {Midway{Now: days(180)}, "", nil},
		"after the last day":   {Midway{Now: days(180).Add(5 * time.Minute)}, "Now", quantity.ErrOutOfRange},
		"the first day":        {Midway{Now: days(-90)}, "", nil},
		"before the first day": {Midway{Now: days(-90).Add(-5 * time.Minute)}, "Now", quantity.ErrOutOfRange},
		"off the grid":         {Midway{Now: at(3)}, "Now", quantity.ErrTooPrecise},
		"a look":               {look(10, 10, 10, 10), "", nil},
		"ready in the past":    {look(10, 5, 15, 20), "Ranges[0]", quantity.ErrInconsistent},
		"likely before early":  {look(10, 20, 15, 30), "Ranges[0]", quantity.ErrInconsistent},
		"late before likely":   {look(10, 15, 30, 20), "Ranges[0]", quantity.ErrInconsistent},
		"begun now":            {Midway{Now: at(5), Done: []Done{{Step: "a", Start: at(5), End: at(5)}}}, "", nil},
		"ended before it began": {Midway{Now: at(9 * 5), Done: []Done{{Step: "a", Start: at(5), End: at(0)}}},
			"Done[0].End", quantity.ErrInconsistent},
		"ended after now": {Midway{Now: at(5), Done: []Done{{Step: "a", Start: at(5), End: at(10)}}}, "Done[0].End",
			quantity.ErrInconsistent},
		"a look at what is over": {Midway{Now: at(5), Done: []Done{{Step: "a", Start: at(0), End: at(5)}},
			Ranges: []Look{{Step: "a"}}}, "Ranges[0].Step", quantity.ErrInconsistent},
	} {
		_, err := p.Midway(c.m)
		got := quantity.InputErrors(err)
		if c.want == nil {
			if err != nil {
				t.Errorf("%s: %v", name, err)
			}
			continue
		}
		if len(got) != 1 || got[0].GoPath != c.path || !errors.Is(got[0], c.want) {
			t.Errorf("%s: %v, want %s: %v", name, err, c.path, c.want)
		}
	}
	if _, err := (Problem{}).Midway(Midway{Now: dawn}); !errors.Is(err, quantity.ErrRequired) {
		t.Error(err)
	}
}

// An instant lies between the units of the grid before and after it, which are the same on the grid.
func TestPlacesOnTheGrid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := &compiled{in: Problem{Anchor: dawn}, grid: mins(rapid.SampledFrom([]int{1, 5, 30}).Draw(t, "grid"))}
		at := dawn.Add(time.Duration(rapid.Int64Range(-10_000, 10_000).Draw(t, "seconds")) * time.Second)
		down, up := c.floor(at), c.ceil(at)
		if c.when(down).After(at) || c.when(up).Before(at) || up-down > 1 || (up == down) != c.when(down).Equal(at) {
			t.Fatalf("%v lies between %v and %v", at, c.when(down), c.when(up))
		}
	})
	c := &compiled{in: Problem{Anchor: dawn}, grid: minute}
	for _, years := range []int{-400, 400} {
		far := farAway
		if years < 0 {
			far = -farAway
		}
		if at := dawn.AddDate(years, 0, 0); c.floor(at) != far || c.ceil(at) != far {
			t.Errorf("%d years: %d and %d", years, c.floor(at), c.ceil(at))
		}
	}
}
