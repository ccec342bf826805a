package schedule

import (
	"encoding/json"
	"os"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
)

// kitchen is the format of the invented kitchens among the test data of package schedule;
// times and durations are in units of the grid.
type kitchen struct {
	Grid      int       `json:"grid"`
	Anchor    time.Time `json:"anchor"`
	Horizon   int       `json:"horizon"`
	Resources []struct {
		Name     string   `json:"name"`
		Capacity int      `json:"capacity"`
		Closed   [][3]any `json:"closed"`
		Awkward  [][3]int `json:"awkward"`
	} `json:"resources"`
	Steps []struct {
		Name  string         `json:"name"`
		Min   int            `json:"min"`
		Max   int            `json:"max"`
		Needs map[string]int `json:"needs"`
		Cost  int            `json:"cost"`
	} `json:"steps"`
	Links []struct {
		From string `json:"from"`
		To   string `json:"to"`
		Kind string `json:"kind"`
		Min  int    `json:"min"`
		Max  *int   `json:"max"`
	} `json:"links"`
	Bounds []struct {
		Step   string `json:"step"`
		Latest int    `json:"latest"`
		Early  int    `json:"early cost"`
	} `json:"bounds"`
	Alike [][]string `json:"alike"`
}

func load(t testing.TB, name string) schedule.Problem {
	t.Helper()
	text, err := os.ReadFile("../../../schedule/testdata/kitchens/" + name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	var k kitchen
	if err := json.Unmarshal(text, &k); err != nil {
		t.Fatal(err)
	}
	u := func(n int) quantity.Elapsed { return quantity.Elapsed(time.Duration(n*k.Grid) * time.Minute) }
	at := func(n int) time.Time { return k.Anchor.Add(u(n).Duration()) }
	p := schedule.Problem{Anchor: k.Anchor, Horizon: u(k.Horizon), Grid: u(1), Alike: k.Alike}
	for _, r := range k.Resources {
		res := schedule.Resource{ID: r.Name, Capacity: r.Capacity}
		for _, c := range r.Closed {
			res.Closed = append(res.Closed, schedule.Span{From: at(int(c[0].(float64))), To: at(int(c[1].(float64)))})
		}
		for _, a := range r.Awkward {
			res.Awkward = append(res.Awkward, schedule.Awkward{From: at(a[0]), To: at(a[1]), PerMinute: a[2]})
		}
		p.Resources = append(p.Resources, res)
	}
	for _, s := range k.Steps {
		st := schedule.DayStep{ID: s.Name, Min: u(s.Min), Max: u(s.Max), PerMinute: s.Cost}
		for _, r := range k.Resources {
			if n := s.Needs[r.Name]; n > 0 {
				st.Needs = append(st.Needs, schedule.Need{Resource: r.Name, Amount: n})
			}
		}
		p.Steps = append(p.Steps, st)
	}
	kinds := map[string]schedule.LinkKind{"es": schedule.EndToStart, "ss": schedule.StartToStart,
		"ee": schedule.EndToEnd, "se": schedule.StartToEnd}
	for _, l := range k.Links {
		link := schedule.Link{From: l.From, To: l.To, Kind: kinds[l.Kind], Min: u(l.Min), Max: schedule.NoLimit}
		if l.Max != nil {
			link.Max = u(*l.Max)
		}
		p.Links = append(p.Links, link)
	}
	for _, b := range k.Bounds {
		p.Bounds = append(p.Bounds, schedule.Bound{Step: b.Step, Edge: schedule.End, Latest: at(b.Latest),
			EarlyPerMinute: b.Early})
	}
	return p
}
