package fermentsim

import (
	"math"
	"math/rand/v2"
	"runtime"
	"sync"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

// Tally is what was found after a number of logged bakes.
type Tally struct {
	Bakes   int
	Kitchen int
	Inside  int
	Width   float64 // mean of ln(late/early)
	Floor   float64 // the same for a kitchen that is perfectly known
	Below   int     // truth earlier than the range
}

// Coverage is the share of ranges that held the truth, in percent.
func (t Tally) Coverage() float64 { return 100 * float64(t.Inside) / float64(t.Kitchen) }

// Ratio is the width over the floor.
func (t Tally) Ratio() float64 { return t.Width / t.Floor }

// Result is one world's outcome: the range before the dough is seen, after numbers of logged bakes, and updated by one
// reading at six tenths of the likely time.
type Result struct {
	World   World
	Ranges  []Tally
	Updated Tally
}

// Simulate runs kitchens from seeds 1 to n.
func Simulate(w World, n int, bakes []int, robust bool) (Result, error) {
	out := Result{World: w, Ranges: make([]Tally, len(bakes))}
	var mu sync.Mutex
	var first error
	var wg sync.WaitGroup
	workers := runtime.GOMAXPROCS(0)
	for worker := range workers {
		wg.Add(1)
		go func() {
			defer wg.Done()
			mine := Result{Ranges: make([]Tally, len(bakes))}
			for seed := worker + 1; seed <= n; seed += workers {
				if err := mine.kitchen(w, uint64(seed), bakes, robust); err != nil {
					mu.Lock()
					first = err
					mu.Unlock()
					return
				}
			}
			mu.Lock()
			defer mu.Unlock()
			for i := range bakes {
				out.Ranges[i].add(mine.Ranges[i])
				out.Ranges[i].Bakes = bakes[i]
			}
			out.Updated.add(mine.Updated)
		}()
	}
	wg.Wait()
	for i := range out.Ranges {
		out.Ranges[i].Width /= float64(out.Ranges[i].Kitchen)
		out.Ranges[i].Floor /= float64(out.Ranges[i].Kitchen)
	}
	out.Updated.Width /= float64(out.Updated.Kitchen)
	out.Updated.Floor /= float64(out.Updated.Kitchen)
	return out, first
}

func (t *Tally) add(o Tally) {
	t.Kitchen += o.Kitchen
	t.Inside += o.Inside
	t.Below += o.Below
	t.Width += o.Width
	t.Floor += o.Floor
}

func (t *Tally) count(r quantity.TimeRange, d *Dough) {
	truth := d.TrueTime
	t.Kitchen++
	if r.Contains(truth) {
		t.Inside++
	}
	if truth < r.Early {
		t.Below++
	}
	t.Width += math.Log(r.Late.Hours() / r.Early.Hours())
	t.Floor += math.Log(d.FloorLate.Hours() / d.FloorEarly.Hours())
}

func (res *Result) kitchen(w World, seed uint64, bakes []int, robust bool) error {
	k := NewKitchen(w, rand.New(rand.NewPCG(seed, 20251125)))
	var log []ferment.LoggedBulk
	for i, n := range bakes {
		for len(log) < n {
			d, err := k.Mix(true)
			if err != nil {
				return err
			}
			log = append(log, ferment.LoggedBulk{Bulk: d.Bulk, Took: quantity.Elapsed(d.LogTime)})
		}
		next, err := k.Mix(false)
		if err != nil {
			return err
		}
		if n > 0 {
			lesson, err := ferment.Learning{Bakes: log, Robust: robust}.Learn()
			if err != nil {
				return err
			}
			next.Bulk.Culture = lesson.Culture
		}
		e, err := next.Bulk.Estimate()
		if err != nil {
			return err
		}
		res.Ranges[i].count(e.Ready(), &next)
		if n == 0 {
			at := time.Duration(0.6 * float64(e.Ready().Likely)).Round(time.Minute)
			reading := next.RiseAt(at) + readingError*k.rng.NormFloat64()
			if next.TrueTime > at { // a dough already ready is not read to learn when it will be
				p, err := e.Update(ferment.RiseReading{At: quantity.Elapsed(at),
					Rise: quantity.NewPercent(math.Max(-10, math.Min(290, 100*reading)))})
				if err != nil {
					return err
				}
				res.Updated.count(p.Now.Ready(), &next)
			}
		}
	}
	return nil
}
