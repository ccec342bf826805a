package schedule

import (
	"context"
	"fmt"
	"testing"
	"time"
)

// inTurn is loads of an hour each in one oven between 08:00 and so many minutes later, each loaded by hand as it
// begins; the baker is away for a quarter of an hour at 09:00.
func inTurn(loads, minutes int) Problem {
	at := func(m int) time.Time { return dawn.Add(mins(120 + m).Duration()) }
	p := Problem{Anchor: dawn, Horizon: mins(24 * 60), Grid: mins(5), Resources: []Resource{
		{ID: "baker", Capacity: 1, Closed: []Span{{From: at(60), To: at(75)}}}, {ID: "oven", Capacity: 1}}}
	for i := range loads {
		load, oven := fmt.Sprint("load ", i+1), fmt.Sprint("oven ", i+1)
		p.Steps = append(p.Steps,
			DayStep{ID: load, Min: mins(5), Needs: []Need{{Resource: "baker", Amount: 1}}},
			DayStep{ID: oven, Min: mins(60), Needs: []Need{{Resource: "oven", Amount: 1}}})
		p.Links = append(p.Links, Link{From: load, To: oven, Kind: StartToStart})
		p.Bounds = append(p.Bounds,
			Bound{Step: oven, Edge: Start, Earliest: at(0)}, Bound{Step: oven, Edge: End, Latest: at(minutes)})
	}
	return p
}

// Four loads of an hour go into four hours and five minutes by their hours. But whatever their order, the second one
// is to be loaded at 09:00 or 09:05, when the baker is away. With ten minutes more it is loaded at 09:15, with the
// first five minutes earlier at 08:55, and with a baker who leaves at 09:05 at 09:00.
func TestWhatOnlyTheOrderForbidsIsOneSentence(t *testing.T) {
	tt, err := inTurn(4, 245).Latest(context.Background())
	if err != nil || tt.Conflict == nil || tt.Conflict.Shortage != nil || tt.Conflict.Tightest == nil {
		t.Fatal(tt.Message(), err)
	}
	k := tt.Conflict
	const want = "no order of the steps keeps every rule; it is tightest here: 4 steps of 1h or more want oven, " +
		"1 at a time, between Sat 08:00 and Sat 12:05: 4h of work in 4h05m"
	if got := k.Message().String(); got != want {
		t.Errorf("%s\nwant %s", got, want)
	}
	help := map[Rule]string{}
	for _, m := range k.Members {
		if m.Enough && m.Least {
			help[m.Rule] = m.Remedy.String()
		}
	}
	for rule, want := range map[Rule]string{
		Capacity: "1 more: 2", NotAfter: "10m later: Sat 12:15", NotBefore: "5m earlier: Sat 07:55",
		Absence: "from Sat 09:05 instead of Sat 09:00",
	} {
		if help[rule] != want {
			t.Errorf("%v: %q, want %q", rule, help[rule], want)
		}
	}
	if tt, err = inTurn(4, 255).Latest(context.Background()); err != nil || tt.Verdict != Optimal {
		t.Errorf("ten minutes more: %v, %v", tt.Message(), err)
	}
}

// A few rules are told one by one.
func TestFewRulesAreTold(t *testing.T) {
	p := inTurn(2, 125)
	p.Resources[0].Closed[0].From = dawn.Add(3 * time.Hour)
	tt, err := p.Latest(context.Background())
	if err != nil || tt.Conflict == nil || tt.Conflict.Tightest != nil {
		t.Fatal(tt.Message(), err)
	}
}

// Eight breads at home: the loads of all are wanted in the oven on the second day, a quarter of an hour less than it is
// there for; another pair of hands or another oven would do.
func TestEightBreadsAtHome(t *testing.T) {
	if testing.Short() {
		t.Skip("two seconds")
	}
	tt, err := loadKitchen(t, "home-of-8").Latest(context.Background())
	if err != nil || tt.Conflict == nil || tt.Conflict.Tightest == nil {
		t.Fatal(tt.Message(), err)
	}
	x := tt.Conflict.Tightest
	if x.Resource != "oven" || len(x.Steps) != 8 || x.Need != mins(520) || x.Room != mins(535) {
		t.Error(x)
	}
	enough := map[string]bool{}
	for _, m := range tt.Conflict.Remedies() {
		if m.Rule == Capacity && m.More == 1 {
			enough[m.Other] = true
		}
	}
	if !enough["oven"] || !enough["baker"] {
		t.Error(tt.Conflict)
	}
}
