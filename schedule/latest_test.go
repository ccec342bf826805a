package schedule

import (
	"context"
	"encoding/json"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"strings"
	"testing"
	"time"
)

func windowsOf(t testing.TB, tt Timetable, step string) string {
	t.Helper()
	for _, s := range tt.Steps {
		if s.ID == step {
			var out []string
			for _, w := range s.Windows {
				a, b := w.From.Format("Mon 15:04"), w.To.Format("Mon 15:04")
				if a == b {
					out = append(out, a)
				} else {
					out = append(out, a+"-"+b)
				}
			}
			return strings.Join(out, ", ")
		}
	}
	t.Fatalf("no step %q", step)
	return ""
}

// The possible starts of a retarded dough around sleep and work, computed by hand from the
// windows and independently by interval propagation.
func TestWindowsAroundSleepAndWork(t *testing.T) {
	p := loadKitchen(t, "home4")
	for i := range p.Resources {
		p.Resources[i].Capacity = 0 // the closed spans alone
	}
	tt, err := p.Latest(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ step, want string }{
		{"A.feed", "Fri 08:20"},
		{"A.mix", "Fri 17:30"},
		{"A.fold1", "Fri 18:20-Fri 18:30"},
		{"A.fold2", "Fri 18:55-Fri 19:15"},
		{"A.fold3", "Fri 19:30-Fri 20:00"},
		{"A.shape", "Fri 21:50-Fri 22:30"},
		{"A1.retard", "Fri 22:20-Fri 23:00"},
		{"A1.load", "Sat 06:30-Sat 15:10"},
		{"oven.on", "Fri 19:15-Fri 22:55, Sat 06:30-Sat 14:20"},
	} {
		if got := windowsOf(t, tt, c.step); got != c.want {
			t.Errorf("%s may start %s, want %s", c.step, got, c.want)
		}
	}
}

// Three durations that do not fit: A→B at least 60, B→C at least 120, A→C at most 170.
func TestConflictOfThreeLags(t *testing.T) {
	anchor := time.Date(2026, 3, 13, 8, 0, 0, 0, time.UTC)
	m := mins(1)
	p := Problem{Anchor: anchor, Horizon: quantity.Elapsed(24 * time.Hour),
		Steps: []DayStep{{ID: "A"}, {ID: "B"}, {ID: "C"}},
		Links: []Link{
			{From: "A", To: "B", Min: 60 * m, Max: 90 * m, MinWords: working.Say("A to B at least 60")},
			{From: "B", To: "C", Min: 120 * m, Max: 180 * m, MinWords: working.Say("B to C at least 120")},
			{From: "A", To: "C", Min: -NoLimit, Max: 170 * m, MaxWords: working.Say("A to C at most 170")},
		}}
	tt, err := p.Latest(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	if tt.Verdict != Infeasible || tt.Conflict == nil {
		t.Fatalf("verdict %v", tt.Verdict)
	}
	if tt.Conflict.Short != 10*m {
		t.Errorf("short by %v, want 10m", tt.Conflict.Short)
	}
	got := map[string]bool{}
	for _, k := range tt.Conflict.Members {
		got[k.Words.String()] = true
		if !k.Enough || k.Change != 10*m {
			t.Errorf("%s: change %v enough %v, want 10m", k.Words, k.Change, k.Enough)
		}
	}
	if len(got) != 3 || !got["A to B at least 60"] || !got["B to C at least 120"] || !got["A to C at most 170"] {
		t.Errorf("members %v", got)
	}
	t.Log(tt.Conflict)
}

// A same-day dough cannot be ready by Saturday noon around sleep and work.
func TestSameDayByNoon(t *testing.T) {
	tt, err := loadKitchen(t, "same-day-by-noon").Latest(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	if tt.Verdict != Infeasible {
		t.Fatalf("verdict %v", tt.Verdict)
	}
	t.Log(tt.Conflict)
	t.Log(tt.Before, tt.After)
}

// Two loads of the same-day dough cannot be ready at 15:00 in one oven. There are smallest
// conflicts of 40 rules that drag the other dough into it; a reader is told of one that does not.
func TestTwoDoughsByThree(t *testing.T) {
	start := time.Now()
	tt, err := loadKitchen(t, "two-doughs-by-1500").Latest(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	if tt.Verdict != Infeasible {
		t.Fatalf("verdict %v", tt.Verdict)
	}
	if n := len(tt.Conflict.Members); n > 26 || !tt.Conflict.Minimal {
		t.Errorf("%d rules, a smallest set: %v", n, tt.Conflict.Minimal)
	}
	for _, m := range tt.Conflict.Members {
		if strings.HasPrefix(m.Step, "A") {
			t.Errorf("dough A is not in the way: %q", m.Words)
		}
	}
	// By hand: the baker is up at 06:30, mixing ends at 06:50, bulk at 10:20, shaping at 10:50, proof at 11:50, and the
	// oven heats a quarter of an hour before that; cooling takes from 13:00 to 15:00.
	const want = "2 steps of 1h or more want oven, 1 at a time, between Sat 11:35 and Sat 13:00: 2h of work in 1h25m"
	if text := tt.Conflict.Message().String(); text != want {
		t.Errorf("%s", text)
	}
	t.Log(tt.Conflict, tt.Conflict.Minimal)
	t.Log(tt.Before, tt.After, time.Since(start))
}

// The quick answer has the times of the whole one, and is the whole one once it is described.
func TestLatestTimesAreThoseOfLatest(t *testing.T) {
	ctx := context.Background()
	problems := map[string]Problem{}
	for _, name := range []string{"home4", "home8", "home-of-5", "two-doughs-by-1500", "same-day-by-noon"} {
		problems[name] = loadKitchen(t, name)
		alone := loadKitchen(t, name)
		for i := range alone.Resources {
			alone.Resources[i].Capacity = 0
		}
		problems[name+" without shortage"] = alone
	}
	free := Problem{
		Anchor: dawn, Horizon: quantity.Elapsed(12 * time.Hour),
		Steps: []DayStep{{ID: "mix", Min: mins(20)}, {ID: "bulk", Min: mins(200), Likely: mins(240), Max: mins(300),
			Living: true}, {ID: "shape", Min: mins(30)}},
		Links:  []Link{{From: "mix", To: "bulk"}, {From: "bulk", To: "shape", Max: mins(10)}},
		Bounds: []Bound{{Step: "shape", Edge: End, Latest: dawn.Add(9 * time.Hour)}},
	}
	problems["free"] = free
	late := free
	late.Bounds = []Bound{{Step: "shape", Edge: End, Latest: dawn.Add(4 * time.Hour)}}
	problems["late"] = late
	quick := 0
	for name, p := range problems {
		whole, err := p.Latest(ctx)
		if err != nil {
			t.Fatal(name, err)
		}
		got, ok, err := p.LatestTimes(ctx)
		if err != nil || ok != (len(whole.Steps) > 0) || !ok && (len(got.Steps) > 0 || got.Verdict != Unknown) {
			t.Fatal(name, ok, got.Verdict, err)
		}
		if !ok {
			continue
		}
		for i, s := range whole.Steps {
			if !got.Steps[i].Start.Equal(s.Start) || !got.Steps[i].End.Equal(s.End) {
				t.Errorf("%s: %s from %v, by Latest from %v", name, s.ID, got.Steps[i].Start, s.Start)
			}
		}
		if !got.described {
			quick++
			ended, cancel := context.WithCancel(ctx)
			cancel()
			if known := got.Described(ended); known.TimeRanOut == known.described {
				t.Errorf("%s: described %v, and time ran out %v", name, known.described, known.TimeRanOut)
			}
		}
		before, _ := json.Marshal(got)
		a, _ := json.Marshal(whole)
		b, _ := json.Marshal(got.Described(ctx))
		if after, _ := json.Marshal(got); string(a) != string(b) || string(before) != string(after) {
			t.Errorf("%s:\n%s\nby Latest\n%s", name, b, a)
		}
	}
	if quick == 0 {
		t.Error("no timetable came without its description")
	}
	if none := (Timetable{}).Described(ctx); len(none.Steps) > 0 {
		t.Error(none)
	}
	if _, _, err := (Problem{}).LatestTimes(ctx); err == nil {
		t.Error("no problem was solved")
	}
}
