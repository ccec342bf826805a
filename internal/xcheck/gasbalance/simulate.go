package gasbalance

import (
	"math"
	"math/rand/v2"
	"runtime"
	"sync"

	"example.org/maslin/internal/gasbalance"
)

// Baker is how the logged bakes are learned from.
type Baker struct {
	Robust   bool
	HalfLife float64 // days; 0 leaves it to the log
}

// Tally is what was found after a number of logged bakes.
type Tally struct {
	Bakes, Kitchens, Inside, Below int
	Width, Floor                   float64
}

// Coverage is the share of ranges that held the truth, in percent.
func (t Tally) Coverage() float64 { return 100 * float64(t.Inside) / float64(t.Kitchens) }

// Ratio is the width over what luck alone leaves.
func (t Tally) Ratio() float64 { return t.Width / t.Floor }

// Simulate runs kitchens from seeds 1 to n, each asked about a new dough after numbers of logged bakes.
func Simulate(w World, b Baker, n int, bakes []int) []Tally {
	out := make([]Tally, len(bakes))
	var mu sync.Mutex
	var wg sync.WaitGroup
	workers := runtime.GOMAXPROCS(0)
	for worker := range workers {
		wg.Add(1)
		go func() {
			defer wg.Done()
			mine := make([]Tally, len(bakes))
			for seed := worker + 1; seed <= n; seed += workers {
				kitchen(w, b, uint64(seed), bakes, mine)
			}
			mu.Lock()
			defer mu.Unlock()
			for i, t := range mine {
				out[i].Bakes = bakes[i]
				out[i].Kitchens += t.Kitchens
				out[i].Inside += t.Inside
				out[i].Below += t.Below
				out[i].Width += t.Width
				out[i].Floor += t.Floor
			}
		}()
	}
	wg.Wait()
	for i := range out {
		out[i].Width /= float64(out[i].Kitchens)
		out[i].Floor /= float64(out[i].Kitchens)
	}
	return out
}

func kitchen(w World, b Baker, seed uint64, bakes []int, tallies []Tally) {
	law := gasbalance.Standard()
	kind := gasbalance.ByLevain
	if w.Yeast {
		kind = gasbalance.ByYeast
	}
	k := NewKitchen(w, rand.New(rand.NewPCG(seed, 20261128)))
	group := gasbalance.Group{Kind: kind, HalfLife: b.HalfLife}
	var logged []gasbalance.Dated
	for i, n := range bakes {
		for len(logged) < n {
			d := k.Mix(len(logged), true)
			bake := gasbalance.Logged{
				Start: d.Start, Formula: d.Formula, History: d.History, Hours: d.Logged, Rise: d.Rise,
				Error: readingError, Pressure: 1,
			}
			r, ok := law.RowAtOwnPace(kind, &bake)
			if !ok {
				return
			}
			dated := gasbalance.Dated{Row: r, Day: 7 * float64(len(logged)+1)}
			logged = append(logged, dated)
			group, _ = group.Learn("", "", []gasbalance.Dated{dated})
		}
		g := group
		if b.Robust {
			g, _ = gasbalance.Group{Kind: kind, HalfLife: b.HalfLife}.LearnRobustly("", "", logged)
		}
		taught := g.Taught("", "")
		d := k.Mix(n, false)
		belief := taught.Belief(0).For(law.Unusual(d.Formula))
		need := law.Need(d.Rise, d.Formula.Hydration, 1)
		o := law.Clock(d.Formula, belief.Mean).Times(d.Start, d.History, need, &belief, 720)
		t := &tallies[i]
		t.Kitchens++
		if o.Early <= d.Ready && d.Ready <= o.Late {
			t.Inside++
		}
		if d.Ready < o.Early {
			t.Below++
		}
		t.Width += math.Log(math.Min(o.Late, 720) / math.Min(o.Early, 720))
		t.Floor += 2 * z80 * d.Sigma
	}
}
