package gasbalance

import "math"

// block is of how many bakes the sums of those after them are held at a time.
const block = 256

// around visits for each bake the sums of all others as they count on its day: half as much after each half-life
// before or after it. Bakes are in order of their days, weights as of the day of the sums. What else the sums hold
// counts as on their own day.
//
// The sums of the bakes after it are made backward, since going forward they would grow again, and with them what
// rounding left; those at the ends of blocks are kept, so that a long log is not held once for every bake.
func (s *Sums) around(bakes []Dated, weights []float64, halfLife float64, visit func(i int, s Sums)) {
	n := len(bakes)
	rest := *s
	own := make([]float64, n) // weights on the bakes' own days
	for i := range bakes {
		rest.include(&bakes[i].Row, weights[i], -1)
		if weights[i] > 0 {
			own[i] = math.Min(1, weights[i]*math.Exp2((s.Day-bakes[i].Day)/halfLife))
		}
	}
	if rest.Bakes <= 0 {
		rest = Sums{}
	}
	// step takes sums from the day of one bake, which is added, to that of another.
	step := func(sums *Sums, from, to int) {
		sums.include(&bakes[from].Row, own[from], 1)
		sums.scale(math.Exp2(-math.Abs(bakes[to].Day-bakes[from].Day) / halfLife))
	}
	ends := make([]Sums, n/block+1) // of the bakes after each block, on the day of its last
	var after Sums
	for i := n - 2; i >= 0; i-- {
		step(&after, i+1, i)
		if i%block == block-1 {
			ends[i/block] = after
		}
	}
	var before Sums
	held := make([]Sums, block)
	for i := range bakes {
		if i%block == 0 {
			last := min(i+block, n) - 1
			sums := ends[i/block]
			held[last-i] = sums
			for k := last - 1; k >= i; k-- {
				step(&sums, k+1, k)
				held[k-i] = sums
			}
		}
		if i > 0 {
			step(&before, i-1, i)
		}
		out := rest.Merge(before, 0).Merge(held[i%block], 0)
		out.Score, out.Weighing = s.Score, s.Weighing
		visit(i, out)
	}
}
