package gasbalance

import "math"

// The weights that let one wild bake count less: Huber's to begin with, so that the start does not matter, then
// Tukey's biweight, which gives a bake beyond 4.685 spreads no say at all and keeps 95 % of the efficiency on
// ordinary bakes. The two means are those of w and w·r² over a standard normal r: 1 − 2/c² + 3/c⁴ and 1 − 6/c² +
// 15/c⁴, the cut at c changing them by less than 1e-4. Source: Huber, Robust Statistics, 4.8 and 7.8.
const (
	huber         = 2.0
	biweight      = 4.685
	meanWeight    = 1 - 2/(biweight*biweight) + 3/(biweight*biweight*biweight*biweight)
	meanWeighted2 = 1 - 6/(biweight*biweight) + 15/(biweight*biweight*biweight*biweight)
	huberRounds   = 8
	roughly       = 1e-3 // of the spread: Huber's weights have done their part
)

// Weighing is how bakes were weighed.
type Weighing int

// The ways of weighing: all alike, by how surprising each was when it was logged, by Tukey's biweight over a whole log.
const (
	Alike Weighing = iota
	Surprise
	Biweight
)

// ordinary is the mean of w and of w·r² over ordinary bakes, r standard normal: what weighing takes from them as well.
func (w Weighing) ordinary() (weight, squares float64) {
	switch w {
	case Surprise:
		return surpriseWeight, surpriseSquares
	case Biweight:
		return meanWeight, meanWeighted2
	}
	return 1, 1
}

// SumRows adds rows up, each with weight 1.
func SumRows(rows []Row) (s Sums) {
	for i := range rows {
		s.Add(&rows[i], 1)
	}
	return s
}

// Robustly adds rows of a culture up so that wild ones count less and less, judged against what they say together
// and what the rest of the group says of the culture. The weights are returned.
func (g Group) Robustly(person, culture string, rows []Row) (Sums, []float64) {
	before := g.before(person, culture)
	weights := make([]float64, len(rows))
	for i := range weights {
		weights[i] = 1
	}
	bounded, last := false, 0.0
	var s Sums
	for round := range rounds {
		s = Sums{}
		if bounded {
			s.Weighing = Biweight
		}
		for i := range rows {
			s.Add(&rows[i], weights[i])
		}
		t := s.from(g.Kind, &before, luckOf(g.Kind))
		change := math.Abs(t.Luck - last)
		last = t.Luck
		if bounded && change < settled {
			break
		}
		bounded = bounded || round >= huberRounds || change < roughly
		for i := range rows {
			h := rows[i].effect()
			r := math.Abs(rows[i].Y-h.dot(&t.effects.mean)) / math.Sqrt(rows[i].Scale) / t.Luck
			if bounded {
				x := math.Max(0, 1-r*r/(biweight*biweight))
				weights[i] = x * x
			} else {
				weights[i] = math.Min(1, huber/math.Max(r, 1e-9))
			}
		}
	}
	return s, weights
}
