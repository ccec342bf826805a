package schedule

import (
	"context"
	"encoding/json"
	"fmt"
	"testing"
	"time"
)

// loads wants n bakes of so many minutes in decks between two times, in minutes after 06:00.
func loads(n, long, decks, from, to int) Problem {
	at := func(m int) time.Time { return dawn.Add(mins(m).Duration()) }
	p := Problem{Anchor: dawn, Horizon: mins(24 * 60), Resources: []Resource{{ID: "deck", Capacity: decks}}}
	for i := range n {
		id := fmt.Sprint("load ", i+1)
		p.Steps = append(p.Steps, DayStep{ID: id, Min: mins(long), Needs: []Need{{Resource: "deck", Amount: 1}}})
		p.Bounds = append(p.Bounds,
			Bound{Step: id, Edge: Start, Earliest: at(from)},
			Bound{Step: id, Edge: End, Latest: at(to), Wanted: true})
	}
	return p
}

// A shortage is one sentence, by the hours where they are too few and else by the number.
func TestAShortageIsOneSentence(t *testing.T) {
	for _, c := range []struct {
		p     Problem
		want  string
		after int // minutes
	}{
		{loads(20, 45, 2, 210, 480),
			"20 steps of 45m or more want deck, 2 at a time, between Sat 09:30 and Sat 14:00: 15h of work in 9h", 180},
		{loads(3, 60, 2, 0, 100),
			"3 steps of 1h or more want deck, 2 at a time, between Sat 06:00 and Sat 07:40: 3 are wanted and 2 fit", 20},
	} {
		tt, err := c.p.Latest(context.Background())
		if err != nil || tt.Conflict == nil || tt.Conflict.Shortage == nil {
			t.Fatalf("%v, %v", tt.Verdict, err)
		}
		k := tt.Conflict
		if got := k.Message().String(); got != c.want {
			t.Errorf("%s\nwant %s", got, c.want)
		}
		if !k.Minimal || tt.After == nil || tt.After.By != mins(c.after) || !tt.After.Nearest {
			t.Errorf("minimal %v, after %v", k.Minimal, tt.After)
		}
		text, err := json.Marshal(k.Shortage)
		var back Shortage
		if err != nil || json.Unmarshal(text, &back) != nil || back.String() != k.Shortage.String() {
			t.Errorf("%s comes back as %v, %v", text, back, err)
		}
	}
	if tt, err := loads(2, 60, 2, 0, 60).Latest(context.Background()); err != nil || tt.Verdict != Optimal {
		t.Errorf("two loads fit two decks: %v, %v", tt.Verdict, err)
	}
}

// A closed span splits the time: one bake of 40 minutes fits into 75 minutes before a break and one into 75 after it.
func TestAShortageAroundABreak(t *testing.T) {
	p := loads(3, 40, 1, 0, 155)
	p.Resources[0].Closed = []Span{{From: dawn.Add(75 * time.Minute), To: dawn.Add(80 * time.Minute)}}
	tt, err := p.Latest(context.Background())
	if err != nil || tt.Conflict == nil || tt.Conflict.Shortage == nil || tt.Conflict.Shortage.Fit != 2 {
		t.Fatal(tt.Message(), err)
	}
	p.Resources[0].Closed[0].From, p.Resources[0].Closed[0].To = dawn.Add(80*time.Minute), dawn.Add(85*time.Minute)
	if tt, err = p.Latest(context.Background()); err != nil || tt.Verdict != Optimal {
		t.Errorf("two bakes before the break: %v, %v", tt.Message(), err)
	}
}

// Ten doughs of two loads each that two decks cannot bake in time: the smallest set of rules is proven, 20 bakes of 45
// minutes want ten rounds, and ten rounds end ten minutes too late.
func TestTenDoughs(t *testing.T) {
	tt, err := doughs(10).Latest(context.Background())
	if err != nil || tt.Conflict == nil {
		t.Fatal(tt.Message(), err)
	}
	if !tt.Conflict.Minimal || tt.After == nil || tt.After.By != mins(10) || !tt.After.Nearest {
		t.Errorf("minimal %v, after %v", tt.Conflict.Minimal, tt.After)
	}
	const want = "20 steps of 45m or more want deck, 2 at a time, between Sat 07:40 and Sat 15:00: 15h of work in 14h40m"
	if got := tt.Conflict.Message().String(); got != want {
		t.Error(got)
	}
	wanted := 0
	for _, m := range tt.Conflict.Remedies() {
		if m.Wanted {
			wanted++
		}
	}
	if wanted > 1 {
		t.Errorf("the wanted times move together, and are told %d times", wanted)
	}
}

// What is firm is marked and not offered.
func TestFirmCapacityIsNotOffered(t *testing.T) {
	p := loads(3, 60, 2, 0, 100)
	for _, firm := range []bool{false, true} {
		p.Resources[0].Firm = firm
		tt, err := p.Latest(context.Background())
		if err != nil || tt.Conflict == nil {
			t.Fatal(tt.Message(), err)
		}
		for _, m := range tt.Conflict.Members {
			if m.Rule == Capacity && (m.Firm != firm || m.Enough == firm || !firm && m.More != 1) {
				t.Errorf("firm %v: %+v", firm, m)
			}
		}
	}
}

// Two clashes that have nothing to do with each other: no change of one rule is enough, one of each clash is.
func TestChangesThatHelpTogether(t *testing.T) {
	at := func(m int) time.Time { return dawn.Add(mins(m).Duration()) }
	hands := []Need{{Resource: "hands", Amount: 1}}
	p := Problem{Anchor: dawn, Horizon: mins(600), Firm: true,
		Resources: []Resource{{ID: "hands", Capacity: 1, Firm: true}},
		Steps: []DayStep{
			{ID: "a", Min: mins(60), MinFirm: true, MaxFirm: true}, {ID: "b", Min: mins(50), MinFirm: true, MaxFirm: true},
			{ID: "c", Min: mins(30), MinFirm: true, MaxFirm: true, Needs: hands},
			{ID: "d", Min: mins(30), MinFirm: true, MaxFirm: true, Needs: hands},
		},
		Bounds: []Bound{
			{Step: "a", Edge: End, Latest: at(40)}, {Step: "b", Edge: End, Latest: at(45)},
			{Step: "c", Edge: Start, Earliest: at(100)}, {Step: "d", Edge: Start, Earliest: at(100)},
			{Step: "c", Edge: End, Latest: at(140)}, {Step: "d", Edge: End, Latest: at(150)},
		}}
	tt, err := p.Latest(context.Background())
	if err != nil || tt.Conflict == nil {
		t.Fatal(tt.Message(), err)
	}
	k := tt.Conflict
	for _, m := range k.Members {
		if m.Enough {
			t.Errorf("%v alone is not enough", m.Help())
		}
	}
	q := p
	q.Bounds = append([]Bound(nil), p.Bounds...)
	for _, m := range k.Together {
		if !m.Enough || !m.Least {
			t.Errorf("%v is not proven", m.Help())
		}
		for i, b := range p.Bounds {
			if b.Step != m.Step {
				continue
			}
			switch {
			case m.Rule == NotAfter && m.Easing == Later && !b.Latest.IsZero():
				q.Bounds[i].Latest = b.Latest.Add(m.Change.Duration())
			case m.Rule == NotBefore && m.Easing == Earlier && !b.Earliest.IsZero():
				q.Bounds[i].Earliest = b.Earliest.Add(-m.Change.Duration())
			}
		}
	}
	if ok, err := q.Possible(context.Background()); len(k.Together) != 3 || err != nil || !ok {
		t.Errorf("%v: possible %v, %v", k.AllOf(), ok, err)
	}
	for i := range p.Bounds { // each of them is needed
		less := q
		less.Bounds = append([]Bound(nil), q.Bounds...)
		if less.Bounds[i] == p.Bounds[i] {
			continue
		}
		less.Bounds[i] = p.Bounds[i]
		if ok, _ := less.Possible(context.Background()); ok {
			t.Errorf("not needed: %v", p.Bounds[i])
		}
	}
}
