package schedule

import (
	"context"
	"encoding/csv"
	"example.org/maslin/dough/quantity"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// chain is a retarded dough loaded at 15:10 on Saturday, without windows.
func chain() Problem {
	h, m := time.Hour, time.Minute
	anchor := time.Date(2026, 3, 12, 12, 0, 0, 0, time.UTC)
	return Problem{Anchor: anchor, Horizon: quantity.Elapsed(60 * h),
		Steps: []DayStep{
			{ID: "feed", Min: quantity.Elapsed(10 * m)},
			{ID: "levain", Min: quantity.Elapsed(5 * h), Max: quantity.Elapsed(9 * h)},
			{ID: "mix", Min: quantity.Elapsed(20 * m)},
			{
				ID:  "bulk",
				Min: quantity.Elapsed(4 * h),
				Max: quantity.Elapsed(5 * h),
			},
			{ID: "shape", Min: quantity.Elapsed(30 * m)},
			{ID: "retard", Min: quantity.Elapsed(8 * h), Max: quantity.Elapsed(24 * h)},
			{ID: "load", Min: quantity.Elapsed(50 * m)},
		},
		Links: []Link{
			{From: "feed", To: "levain"},
			{From: "levain", To: "mix"},
			{From: "mix", To: "bulk"},
			{From: "bulk", To: "shape"},
			{From: "shape", To: "retard"},
			{From: "retard", To: "load"},
		},
		Bounds: []Bound{
			{Step: "load", Edge: Start, Earliest: anchor.Add(51*h + 10*m), Latest: anchor.Add(51*h + 10*m)},
		}}
}

func measure(t *testing.T, in map[string]string) string {
	t.Helper()
	var p Problem
	if k := in["kitchen"]; k != "" {
		p = loadKitchen(t, k)
		if in["shared"] == "no" {
			for i := range p.Resources {
				p.Resources[i].Capacity = 0
			}
		}
	}
	solve := func(f func(context.Context) (Timetable, error)) Timetable {
		tt, err := f(context.Background())
		if err != nil {
			t.Fatal(err)
		}
		return tt
	}
	switch in["do"] {
	case "best":
		tt := solve(p.Best)
		if tt.Verdict != Optimal {
			return tt.Verdict.String()
		}
		if broken := p.Check(tt); len(broken) > 0 {
			t.Errorf("broken: %v", broken)
		}
		return fmt.Sprint(tt.Cost / int(p.Grid/minute))
	case "windows":
		return strings.ReplaceAll(windowsOf(t, solve(p.Latest), in["step"]), ", ", " & ")
	case "after":
		tt := solve(p.Latest)
		if tt.Verdict != Infeasible || tt.After == nil || !tt.Conflict.Minimal {
			return "no answer"
		}
		return tt.After.To.Format("Mon 15:04")
	case "short":
		return fmt.Sprint(int(solve(p.Latest).Conflict.Short / minute))
	case "chain":
		tt := solve(chain().Latest)
		step, edge, _ := strings.Cut(in["edge"], " ")
		s, _ := tt.Step(step)
		a, b := s.EarliestStart, s.LatestStart
		if edge == "end" {
			a, b = s.EarliestEnd, s.LatestEnd
		}
		return a.Format("Mon 15:04") + "-" + b.Format("Mon 15:04")
	case "project":
		dir := filesFolder(t)
		f := filepath.Join(dir, in["file"])
		q := readSM
		if !strings.HasSuffix(f, ".sm") {
			q = readSCH
		}
		tt := solve(q(t, f).problem().Best)
		if tt.Verdict == Infeasible {
			return "none"
		}
		return fmt.Sprint(tt.Cost)
	}
	t.Fatalf("do=%s", in["do"])
	return ""
}

func TestPublished(t *testing.T) {
	f, err := os.Open("testdata/published.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if got := strings.Join(rows[0], ","); got != "id,what,inputs,expected,tolerance,reason,source,status" {
		t.Fatalf("header %q", got)
	}
	for _, r := range rows[1:] {
		in := map[string]string{}
		for _, kv := range strings.Split(r[2], ";") {
			k, v, ok := strings.Cut(kv, "=")
			if !ok {
				t.Fatalf("%s: %q", r[0], kv)
			}
			in[strings.TrimSpace(k)] = strings.TrimSpace(v)
		}
		t.Run(r[0], func(t *testing.T) {
			if got := measure(t, in); got != r[3] {
				t.Errorf("%s: got %s, want %s (%s)", r[1], got, r[3], r[6])
			}
		})
	}
}
