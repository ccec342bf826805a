package schedule

import (
	"context"
	"encoding/csv"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
)

// A bakingDay is a random day of 6 to 12 breads, small enough for an engine that knows nothing of bread: each is mixed,
// rises and is baked, in units of half an hour.
type bakingDay struct {
	hands, oven, slots int
	breads             []struct{ mix, least, most, bake, due, rise, stale int }
}

func randomDay(seed uint64) bakingDay {
	r := rand.New(rand.NewPCG(seed, 17))
	d := bakingDay{hands: 1 + r.IntN(2), oven: 1 + r.IntN(2), slots: 28}
	d.breads = make([]struct{ mix, least, most, bake, due, rise, stale int }, 6+r.IntN(7))
	for k := range d.breads {
		b := &d.breads[k]
		b.mix, b.bake = 1+r.IntN(2), 1+r.IntN(2)
		b.least = 3 + r.IntN(5)
		b.most = b.least + r.IntN(5)
		b.due = 16 + r.IntN(13)
		b.rise, b.stale = r.IntN(4), 1+r.IntN(3)
	}
	return d
}

func (d bakingDay) problem() Problem {
	slot := quantity.Elapsed(30 * time.Minute)
	p := Problem{Anchor: dawn, Grid: slot, Horizon: quantity.Elapsed(d.slots) * slot, Resources: []Resource{
		{ID: "hands", Capacity: d.hands}, {ID: "oven", Capacity: d.oven}}}
	for k, b := range d.breads {
		mix, rise, bake := fmt.Sprint("mix ", k), fmt.Sprint("rise ", k), fmt.Sprint("bake ", k)
		p.Steps = append(p.Steps,
			DayStep{ID: mix, Min: quantity.Elapsed(b.mix) * slot, Needs: []Need{{Resource: "hands", Amount: 1}}},
			DayStep{ID: rise, Min: quantity.Elapsed(b.least) * slot, Max: quantity.Elapsed(b.most) * slot, PerMinute: b.rise},
			DayStep{ID: bake, Min: quantity.Elapsed(b.bake) * slot, Needs: []Need{{Resource: "oven", Amount: 1}}})
		p.Links = append(p.Links, Link{From: mix, To: rise}, Link{From: rise, To: bake})
		p.Bounds = append(p.Bounds, Bound{Step: bake, Edge: End, EarlyPerMinute: b.stale,
			Latest: dawn.Add(time.Duration(b.due) * slot.Duration())})
	}
	return p
}

// program is the day as an integer program over slots in the LP format, written from the data and not from the network:
// x_k_t mixes bread k at t, y_k_t puts it into the oven at t.
func (d bakingDay) program() string {
	var cost, rows, names strings.Builder
	hands, oven := make([]string, d.slots), make([]string, d.slots)
	row := func(terms, relation string) {
		if terms != "" {
			rows.WriteString(terms + relation + "\n")
		}
	}
	for k, b := range d.breads {
		var once, baked string
		for t := 0; t+b.mix <= d.slots; t++ {
			x := fmt.Sprintf("x_%d_%d", k, t)
			once += " + " + x
			names.WriteString(x + "\n")
			fmt.Fprintf(&cost, " - %d %s\n", b.rise*(t+b.mix), x)
			for i := t; i < t+b.mix; i++ {
				hands[i] += " + " + x
			}
			follows := ""
			for u := t + b.mix + b.least; u <= t+b.mix+b.most && u+b.bake <= b.due; u++ {
				follows += fmt.Sprintf(" + y_%d_%d", k, u)
			}
			row(follows+" - "+x, " >= 0")
		}
		for t := 0; t+b.bake <= b.due; t++ {
			y := fmt.Sprintf("y_%d_%d", k, t)
			baked += " + " + y
			names.WriteString(y + "\n")
			fmt.Fprintf(&cost, " + %d %s\n", b.rise*t+b.stale*(b.due-t-b.bake), y)
			for i := t; i < t+b.bake; i++ {
				oven[i] += " + " + y
			}
			before := ""
			for s := max(0, t-b.most-b.mix); s <= t-b.least-b.mix; s++ {
				before += fmt.Sprintf(" + x_%d_%d", k, s)
			}
			row(before+" - "+y, " >= 0")
		}
		row(once, " = 1")
		row(baked, " = 1")
	}
	for t := range d.slots {
		row(hands[t], fmt.Sprint(" <= ", d.hands))
		row(oven[t], fmt.Sprint(" <= ", d.oven))
	}
	return "minimize\n" + cost.String() + "subject to\n" + rows.String() + "binary\n" + names.String() + "end\n"
}

// Random days of 6 to 12 breads cost what HiGHS (Huangfu and Hall, "Parallelizing the dual revised simplex method",
// Mathematical Programming Computation 10, 2018; package highs 1.15.3 of npm) finds on the integer programs above,
// without a gap. MASLIN_WRITE_DAYS names a folder to write them to; with MASLIN_ALL_DAYS all days are planned and not
// every fourth.
func TestDaysAgainstAnEngine(t *testing.T) {
	if dir := os.Getenv("MASLIN_WRITE_DAYS"); dir != "" {
		for seed := range uint64(200) {
			if err := os.WriteFile(filepath.Join(dir, fmt.Sprint(seed, ".lp")), []byte(randomDay(seed).program()),
				0o600); err != nil {
				t.Fatal(err)
			}
		}
	}
	f, err := os.Open(filepath.Join("testdata", "days.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	every := 4
	switch {
	case os.Getenv("MASLIN_ALL_DAYS") != "":
		every = 1
	case testing.Short():
		every = 20
	}
	for k, row := range rows[1:] {
		if k%every > 0 {
			continue
		}
		seed, _ := strconv.ParseUint(row[0], 10, 64)
		day := randomDay(seed)
		p := day.problem()
		tt, err := p.Best(context.Background())
		if err != nil {
			t.Fatal(err)
		}
		got := "none"
		if tt.Verdict == Optimal {
			got = strconv.Itoa(tt.Cost / 30)
		}
		if got != row[2] || strconv.Itoa(len(day.breads)) != row[1] || got != "none" && len(p.Check(tt)) > 0 {
			t.Errorf("day %s of %s breads: %v at %s, want %s; breaks %v", row[0], row[1], tt.Verdict, got, row[2], p.Check(tt))
		}
	}
}
