package gasbalance

import (
	"math"
	"slices"
)

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

// LearnRobustly is [Group.Learn] with weights by which wild bakes count less and less, judged against what all these
// bakes say together and what the rest of the group says of the culture. The score is that of their order.
func (g Group) LearnRobustly(person, culture string, bakes []Dated) (Group, []float64) {
	if len(bakes) == 0 {
		return g, nil
	}
	scored, _ := g.Learn(person, culture, bakes)
	was, e := g.entry(person, culture), scored.entry(person, culture)
	if e.Fading != nil {
		was, e.Fading = was.parted(), slices.Clone(e.Fading)
	}
	before := g.before(person, culture)
	chosen := e.fading()
	var speak []float64
	for k := range 1 + len(e.Fading) {
		from, to, halfLife := was.Sums, &e.Sums, g.HalfLife
		if k > 0 {
			from, to, halfLife = was.Fading[k-1], &e.Fading[k-1], halfLives[k-1]
		}
		score := to.Score
		day := to.Day
		weights := robustly(g.Kind, &before, bakes, day, halfLife)
		*to = from.Forget(day, halfLife)
		for i := range bakes {
			to.Add(&bakes[i].Row, weights[i])
		}
		to.Weighing, to.Score = Biweight, score
		if k == chosen {
			speak = weights
		}
	}
	return g.set(e), speak
}

// robustly are the weights of bakes of which wild ones count less and less, as a half-life leaves them on a day.
func robustly(kind Leavening, before *gaussian, bakes []Dated, day, halfLife float64) []float64 {
	weights, kept := make([]float64, len(bakes)), make([]float64, len(bakes))
	for i := range kept {
		kept[i] = 1
	}
	fade(kept, bakes, day, halfLife)
	copy(weights, kept)
	steady := make([]float64, len(bakes)) // 1/√k
	for i := range steady {
		steady[i] = 1 / math.Sqrt(bakes[i].Scale)
	}
	bounded, last := false, 0.0
	for round := range rounds {
		var s Sums
		if bounded {
			s.Weighing = Biweight
		}
		for i := range bakes {
			s.Add(&bakes[i].Row, weights[i])
		}
		t := s.from(kind, before, luckOf(kind))
		change := math.Abs(t.Luck - last)
		last = t.Luck
		if bounded && change < settled {
			break
		}
		bounded = bounded || round >= huberRounds || change < roughly
		for i := range bakes {
			r := math.Abs(bakes[i].Y-bakes[i].expected(&t.effects.mean)) * steady[i] / t.Luck
			if bounded {
				x := max(0, 1-r*r/(biweight*biweight))
				weights[i] = kept[i] * x * x
			} else {
				weights[i] = kept[i] * min(1, huber/max(r, 1e-9))
			}
		}
	}
	return weights
}
