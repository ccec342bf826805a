package schedule

import (
	"context"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
)

func engines(t *testing.T) {
	t.Helper()
	if os.Getenv("MASLIN_ENGINES") == "" {
		t.Skip("set MASLIN_ENGINES after engines/install.sh to compare with MiniZinc and HiGHS")
	}
}

// answer is what an engine says: a cost, or that there is none, and whether it was proven.
type answer struct {
	Cost    int     `json:"cost"`
	None    bool    `json:"none,omitempty"`
	Proven  bool    `json:"proven"`
	Seconds float64 `json:"seconds"`
	Note    string  `json:"note,omitempty"`
}

func (a answer) String() string {
	switch {
	case a.None && a.Proven:
		return fmt.Sprintf("infeasible, %.2f s", a.Seconds)
	case a.None:
		return fmt.Sprintf("nothing found, %.2f s", a.Seconds)
	case a.Proven:
		return fmt.Sprintf("%d proven, %.2f s", a.Cost, a.Seconds)
	}
	return fmt.Sprintf("%d not proven, %.2f s", a.Cost, a.Seconds)
}

func gecode(t *testing.T, p schedule.Problem, limit time.Duration) answer {
	t.Helper()
	f := filepath.Join(t.TempDir(), "day.mzn")
	if err := os.WriteFile(f, []byte(read(p).miniZinc()), 0o600); err != nil {
		t.Fatal(err)
	}
	start := time.Now()
	out, err := exec.Command("minizinc", "--solver", "gecode", "--statistics", "--time-limit",
		strconv.Itoa(int(limit.Milliseconds())), f).CombinedOutput()
	a := answer{Seconds: time.Since(start).Seconds()}
	if err != nil {
		t.Fatalf("minizinc: %v\n%s", err, out)
	}
	text := string(out)
	// The time of the solver alone, without reading and flattening the model.
	if m := regexp.MustCompile(`solveTime=([0-9.]+)`).FindStringSubmatch(text); m != nil {
		a.Seconds, _ = strconv.ParseFloat(m[1], 64)
	}
	costs := regexp.MustCompile(`cost=(\d+)`).FindAllStringSubmatch(text, -1)
	a.None = len(costs) == 0
	if !a.None {
		a.Cost, _ = strconv.Atoi(costs[len(costs)-1][1])
	}
	a.Proven = strings.Contains(text, "==========") || strings.Contains(text, "=====UNSATISFIABLE=====")
	return a
}

func highs(t *testing.T, p schedule.Problem, limit time.Duration) answer {
	t.Helper()
	lp := read(p).stepLP()
	if lp == "" {
		return answer{None: true, Proven: true, Note: "no time left before solving"}
	}
	f := filepath.Join(t.TempDir(), "day.lp")
	if err := os.WriteFile(f, []byte(lp), 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command("node", "engines/highs.js", f, strconv.Itoa(int(limit.Seconds()))).CombinedOutput()
	if err != nil {
		t.Fatalf("highs: %v\n%.2000s", err, out)
	}
	var r struct {
		Status  string
		Cost    float64
		Seconds float64
	}
	if err := json.Unmarshal(out, &r); err != nil {
		t.Fatalf("highs: %v\n%.2000s", err, out)
	}
	a := answer{Seconds: r.Seconds, Cost: int(r.Cost + 0.5)}
	switch r.Status {
	case "Optimal":
		a.Proven = true
	case "Infeasible":
		a.None, a.Proven, a.Cost = true, true, 0
	}
	return a
}

func ours(t *testing.T, p schedule.Problem, limit time.Duration) answer {
	t.Helper()
	ctx, cancel := context.WithTimeout(context.Background(), limit)
	defer cancel()
	start := time.Now()
	tt, err := p.Best(ctx)
	if err != nil {
		t.Fatal(err)
	}
	a := answer{Seconds: time.Since(start).Seconds(), Cost: tt.Cost, Proven: tt.Verdict == schedule.Optimal ||
		tt.Verdict == schedule.Infeasible}
	a.None = len(tt.Steps) == 0
	if !a.None {
		if broken := p.Check(tt); len(broken) > 0 {
			t.Fatalf("our timetable breaks %v", broken)
		}
	}
	return a
}

// The invented kitchens beside the engines, in the same run. Costs are in points of five
// minutes.
func TestEnginesOnKitchens(t *testing.T) {
	engines(t)
	names := []string{"home4", "home8", "home12", "shop60", "same-day-by-noon", "two-doughs-by-1500"}
	if only := os.Getenv("MASLIN_KITCHEN"); only != "" {
		names = []string{only}
	}
	for _, name := range names {
		p := load(t, name)
		a, g, h := ours(t, p, 60*time.Second), gecode(t, p, 60*time.Second), highs(t, p, 60*time.Second)
		t.Logf("%-20s ours %v | gecode %v | highs %v", name, a, g, h)
		for _, o := range []answer{g, h} {
			if o.Proven && (o.None != a.None || o.Cost != a.Cost) || !a.Proven {
				t.Errorf("%s: ours %v, gecode %v, highs %v", name, a, g, h)
			}
		}
	}
}

// random draws a day of two or three doughs over 36 hours on a grid of five minutes, with a
// night in the middle.
func random(seed uint64) schedule.Problem {
	r := rand.New(rand.NewPCG(seed, 0x6d61736c696e))
	between := func(a, b int) int { return a + r.IntN(b-a+1) }
	u := func(n int) quantity.Elapsed { return quantity.Elapsed(time.Duration(n) * 5 * time.Minute) }
	anchor := time.Date(2026, 3, 13, 10, 0, 0, 0, time.UTC)
	at := func(n int) time.Time { return anchor.Add(u(n).Duration()) }
	const h = 36 * 12
	night := between(11*12, 13*12) // in units after the anchor
	morning := night + between(7*12, 9*12)
	p := schedule.Problem{Anchor: anchor, Horizon: u(h), Grid: u(1), Resources: []schedule.Resource{
		{ID: "baker", Capacity: 1,
			Closed: []schedule.Span{{From: at(night), To: at(morning)},
				{From: at(between(2*12, 3*12)), To: at(between(4*12, 5*12))}},
			Awkward: []schedule.Awkward{{From: at(night - 12), To: at(night), PerMinute: between(1, 4)},
				{From: at(morning), To: at(morning + 6), PerMinute: between(1, 5)}}},
		{ID: "mixer", Capacity: 1}, {ID: "oven", Capacity: 1}, {ID: "fridge", Capacity: between(2, 6)},
	}}
	hand := []schedule.Need{{Resource: "baker", Amount: 1}}
	for k, n := 0, between(2, 3); k < n; k++ {
		name := func(s string) string { return fmt.Sprintf("%c %s", 'A'+k, s) }
		bulk := between(24, 50)
		p.Steps = append(p.Steps,
			schedule.DayStep{ID: name("mix"), Min: u(between(2, 5)),
				Needs: []schedule.Need{{Resource: "baker", Amount: 1}, {Resource: "mixer", Amount: 1}}},
			schedule.DayStep{ID: name("bulk"), Min: u(bulk), Max: u(bulk + between(4, 14))},
			schedule.DayStep{ID: name("shape"), Min: u(between(3, 7)), Needs: hand})
		p.Links = append(p.Links, schedule.Link{From: name("mix"), To: name("bulk")},
			schedule.Link{From: name("bulk"), To: name("shape"), Max: u(between(0, 3))})
		cold := r.IntN(2) == 0
		var loads []string
		due := between(morning+5*12, h)
		for l := 1; l <= between(1, 2); l++ {
			load := func(s string) string { return fmt.Sprintf("%c%d %s", 'A'+k, l, s) }
			rest := schedule.DayStep{ID: load("proof"), Min: u(between(9, 15)), PerMinute: between(0, 1)}
			rest.Max = rest.Min + u(between(10, 18))
			if cold {
				rest.ID, rest.Min, rest.Max, rest.PerMinute = load("retard"), u(between(84, 120)), u(between(150, 220)), 1
				rest.Needs = []schedule.Need{{Resource: "fridge", Amount: between(1, 2)}}
			}
			bake := between(6, 9)
			p.Steps = append(p.Steps, rest,
				schedule.DayStep{ID: load("load"), Min: u(1), Needs: hand},
				schedule.DayStep{ID: load("bake"), Min: u(bake), Needs: []schedule.Need{{Resource: "oven", Amount: 1}}},
				schedule.DayStep{ID: load("unload"), Min: u(1), Needs: hand},
				schedule.DayStep{ID: load("cool"), Min: u(between(12, 24))})
			p.Links = append(p.Links, schedule.Link{From: name("shape"), To: rest.ID},
				schedule.Link{From: rest.ID, To: load("load")},
				schedule.Link{From: load("bake"), To: load("load"), Kind: schedule.StartToStart, Min: u(2), Max: u(2)},
				schedule.Link{From: load("bake"), To: load("unload"), Kind: schedule.EndToStart, Min: -u(1), Max: -u(1)},
				schedule.Link{From: load("unload"), To: load("cool")})
			p.Bounds = append(p.Bounds, schedule.Bound{Step: load("cool"), Edge: schedule.End, Latest: at(due),
				EarlyPerMinute: between(0, 2)})
			loads = append(loads, load("load"))
		}
		p.Alike = append(p.Alike, loads)
	}
	return p
}

// provenDays is how many random days are kept whose answer Gecode proved. It does not prove
// every day it is asked about; those are kept too, with the best cost it found.
const provenDays = 200

type kept struct {
	Seed uint64 `json:"seed"`
	answer
}

// keptDays reads what is kept of the engine's answers.
func keptDays(t *testing.T) []kept {
	t.Helper()
	text, err := os.ReadFile("testdata/random.json")
	if err != nil {
		t.Fatal(err)
	}
	var all []kept
	if err := json.Unmarshal(text, &all); err != nil {
		t.Fatal(err)
	}
	return all
}

func proven(all []kept) int {
	n := 0
	for _, k := range all {
		if k.Proven {
			n++
		}
	}
	return n
}

// Writes testdata/random.json with what Gecode says about the random days, going on from what is
// kept there. After a change of the days write [] into it first.
func TestEnginesOnRandomDays(t *testing.T) {
	engines(t)
	all := keptDays(t)
	wrong, none := 0, 0
	for seed := uint64(len(all)) + 1; proven(all) < provenDays; seed++ {
		p := random(seed)
		a, g := ours(t, p, 30*time.Second), gecode(t, p, 20*time.Second)
		if g.Proven && (a.None != g.None || a.Cost != g.Cost) || !a.Proven || !g.None && a.Cost > g.Cost {
			t.Errorf("seed %d: ours %v, gecode %v", seed, a, g)
			wrong++
		}
		if a.None {
			none++
		}
		g.Seconds = float64(int(g.Seconds*1000)) / 1000
		all = append(all, kept{seed, g})
	}
	t.Logf("%d days kept, %d proven by gecode; of the new ones %d have no timetable, %d differ", len(all), proven(all),
		none, wrong)
	text, err := json.MarshalIndent(all, "", " ")
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile("testdata/random.json", append(text, '\n'), 0o644); err != nil {
		t.Fatal(err)
	}
}

// The planner agrees with the costs kept from the engine.
func TestRandomDaysAgreeWithKeptOptima(t *testing.T) {
	all := keptDays(t)
	if proven(all) != provenDays {
		t.Fatalf("%d proven days kept, want %d", proven(all), provenDays)
	}
	none := 0
	for _, k := range all {
		if k.None && k.Proven {
			none++
		}
		a := ours(t, random(k.Seed), 30*time.Second)
		if !a.Proven || k.Proven && (a.None != k.None || a.Cost != k.Cost) || !k.None && a.Cost > k.Cost {
			t.Errorf("seed %d: ours %v, kept %v", k.Seed, a, k.answer)
		}
	}
	if 4*none > provenDays {
		t.Errorf("%d of %d proven days have no timetable: they compare too little", none, provenDays)
	}
}
