package schedule

import (
	"encoding/json"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"fmt"
	"os"
	"testing"
	"time"
)

// kitchen is the format of the invented kitchens in testdata/kitchens. Times and durations are
// in units of the grid.
type kitchen struct {
	Name      string    `json:"name"`
	Grid      int       `json:"grid"`
	Anchor    time.Time `json:"anchor"`
	Zone      int       `json:"zone offset"`
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
		Edge   string `json:"edge"`
		Latest int    `json:"latest"`
		Early  int    `json:"early cost"`
		Wanted bool   `json:"wanted"`
		Words  string `json:"words"`
	} `json:"bounds"`
	Alike [][]string `json:"alike"`
}

func (k kitchen) problem() Problem {
	grid := mins(k.Grid)
	zone := time.FixedZone("hall", k.Zone*3600)
	u := func(n int) quantity.Elapsed { return quantity.Elapsed(n) * grid }
	anchor := k.Anchor.In(zone)
	at := func(n int) time.Time { return anchor.Add(u(n).Duration()) }
	p := Problem{Anchor: anchor, Horizon: u(k.Horizon), Grid: grid, Alike: k.Alike}
	for _, r := range k.Resources {
		res := Resource{ID: r.Name, Capacity: r.Capacity}
		for _, c := range r.Closed {
			res.Closed = append(res.Closed,
				Span{From: at(int(c[0].(float64))), To: at(int(c[1].(float64))), Words: working.Say(c[2].(string))})
		}
		for _, a := range r.Awkward {
			res.Awkward = append(res.Awkward, Awkward{From: at(a[0]), To: at(a[1]), PerMinute: a[2]})
		}
		p.Resources = append(p.Resources, res)
	}
	for _, s := range k.Steps {
		st := DayStep{ID: s.Name, Min: u(s.Min), Max: u(s.Max), PerMinute: s.Cost}
		for _, r := range k.Resources {
			if n := s.Needs[r.Name]; n > 0 {
				st.Needs = append(st.Needs, Need{Resource: r.Name, Amount: n})
			}
		}
		p.Steps = append(p.Steps, st)
	}
	kinds := map[string]LinkKind{"es": EndToStart, "ss": StartToStart, "ee": EndToEnd, "se": StartToEnd}
	for _, l := range k.Links {
		link := Link{From: l.From, To: l.To, Kind: kinds[l.Kind], Min: u(l.Min), Max: NoLimit}
		if l.Max != nil {
			link.Max = u(*l.Max)
		}
		p.Links = append(p.Links, link)
	}
	for _, b := range k.Bounds {
		p.Bounds = append(
			p.Bounds,
			Bound{
				Step:           b.Step,
				Edge:           End,
				Latest:         at(b.Latest),
				EarlyPerMinute: b.Early,
				Wanted:         b.Wanted,
				Words:          working.Say(b.Words),
			},
		)
	}
	return p
}

func loadKitchen(t testing.TB, name string) Problem {
	t.Helper()
	text, err := os.ReadFile(fmt.Sprintf("testdata/kitchens/%s.json", name))
	if err != nil {
		t.Fatal(err)
	}
	var k kitchen
	if err := json.Unmarshal(text, &k); err != nil {
		t.Fatal(err)
	}
	return k.problem()
}
