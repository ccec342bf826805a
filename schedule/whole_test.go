package schedule

import (
	"context"
	"encoding/json"
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/working"
	"example.org/maslin/internal/trial"
)

// asKept is an answer as data and in words, without the count of decisions, which is nobody's business.
func asKept(t *testing.T, name string, tt Timetable) string {
	t.Helper()
	tt.Nodes = 0
	data, err := json.Marshal(tt)
	if err != nil {
		t.Fatal(err)
	}
	text := strings.NewReplacer(`{"`, "\n  {\"", `"nodes":0,`, "").Replace(string(data))
	return name + ": " + tt.String() + text + "\n"
}

// Whole answers as they are told today: when each step begins, what holds it, how far it could move, what is in the way
// and by how much it would have to give. That they are right the other tests know, by trying everything and by an
// engine from outside; here stands that none of it moves without somebody seeing it.
func TestWholeTimetables(t *testing.T) {
	ctx := context.Background()
	var b strings.Builder
	ask := func(name string, f func(context.Context) (Timetable, error)) Timetable {
		tt, err := f(ctx)
		if err != nil {
			t.Fatal(err)
		}
		b.WriteString(asKept(t, name, tt))
		return tt
	}
	for name, p := range map[string]Problem{"hall": hall(), "loaf": loaf(), "changing": changing()} {
		b.Reset()
		ask(name+", latest", p.Latest)
		ask(name+", earliest", p.Earliest)
		best := ask(name+", best", p.Best)
		b.WriteString(working.Telling{Level: working.WithNumbers, Width: 110}.Text(best.Working()))
		sure, err := best.Robust(ctx)
		if err != nil {
			t.Fatal(err)
		}
		data, err := json.Marshal(sure)
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(&b, "\n%s\n", data)
		trial.Kept(t, "whole/"+name+".txt", b.String())
	}
	b.Reset()
	for seed := range uint64(2) {
		p := randomDay(seed).problem()
		ask(fmt.Sprint("day ", seed), p.Best)
		for i := range p.Bounds {
			p.Bounds[i].Wanted, p.Bounds[i].Words = true, working.Say("bread %d", i)
			p.Bounds[i].Latest = p.Bounds[i].Latest.Add(-7 * time.Hour) // which is too early for all of them
		}
		ask(fmt.Sprint("day ", seed, ", too early"), p.Latest)
	}
	trial.Kept(t, "whole/days.txt", b.String())
}
