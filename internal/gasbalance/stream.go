package gasbalance

import "math"

// Dated is a bake with its day.
type Dated struct {
	Row
	Day float64
}

// surprise is beyond how many standard deviations a bake counts less, and then by its third power: one wild bake
// says little, a culture that has changed is followed after a few. Source: Huber, Robust Statistics, chapter 4
// (bounded influence); bound and power are judgments.
const surprise = 2.0

// The means of w and w·z² over a standard normal z for w = min(1, (2/|z|)³), by quadrature.
const (
	surpriseWeight  = 0.98445
	surpriseSquares = 0.89460
)

// weigh is how much a bake counts that fell z standard deviations from what was expected.
func weigh(z float64) float64 {
	if x := surprise / math.Abs(z); x < 1 {
		return x * x * x
	}
	return 1
}

// Learn is the group after bakes of one culture, in their order. Each is first compared with what was expected of
// it: that is the score, and how much the bake counts, which is returned.
func (g Group) Learn(person, culture string, bakes []Dated) (Group, []float64) {
	if len(bakes) == 0 {
		return g, nil
	}
	weights := make([]float64, len(bakes))
	before := g.before(person, culture)
	var s Sums
	if i, found := g.find(person, culture); found {
		s = g.Entries[i].Sums
	}
	t := s.from(g.Kind, &before, luckOf(g.Kind))
	s.Weighing = Surprise
	since := 0
	for i := range bakes {
		b := &bakes[i]
		h := b.effect()
		ph := t.effects.cov.times(&h)
		z, spread, luck := t.expected(&b.Row, &h, &ph)
		stretch := s.Score.Stretch()
		weight := weigh(z / stretch)
		if s.Bakes == 0 || b.Day > s.Day {
			s = s.Forget(b.Day, g.HalfLife)
		}
		reach := t.reach(spread, luck)
		s.Score.add(z*z80/reach, stretch, math.Abs(z) <= reach*stretch)
		s.Add(&b.Row, weight)
		weights[i] = weight
		// The luck is looked for again after every bake of the first few, then each time the log has grown by an
		// eighth.
		if since++; since*8 >= s.Bakes || i == len(bakes)-1 {
			t = s.from(g.Kind, &before, t.Luck)
			since = 0
		} else {
			t.effects.take(&h, &ph, b.Y, b.Scale*t.Luck*t.Luck/weight)
		}
	}
	g.fade(bakes, weights, s.Day)
	return g.set(person, culture, s), weights
}

// fade makes weights what the sums hold of them on a day.
func (g *Group) fade(bakes []Dated, weights []float64, day float64) {
	if !(g.HalfLife > 0) {
		return
	}
	for i := range weights {
		weights[i] *= math.Exp2(-math.Max(0, day-bakes[i].Day) / g.HalfLife)
	}
}

// LearnRobustly is [Group.Learn] with the weights of [Group.Robustly], found over all these bakes at once. The
// score is that of their order.
func (g Group) LearnRobustly(person, culture string, bakes []Dated) (Group, []float64) {
	scored, _ := g.Learn(person, culture, bakes)
	rows := make([]Row, len(bakes))
	for i := range bakes {
		rows[i] = bakes[i].Row
	}
	_, weights := g.Robustly(person, culture, rows)
	var s Sums
	if i, found := g.find(person, culture); found {
		s = g.Entries[i].Sums
	}
	for i := range bakes {
		s = s.Forget(bakes[i].Day, g.HalfLife)
		s.Add(&bakes[i].Row, weights[i])
	}
	s.Weighing = Biweight
	g.fade(bakes, weights, s.Day)
	if i, found := scored.find(person, culture); found {
		s.Score = scored.Entries[i].Sums.Score
	}
	return g.set(person, culture, s), weights
}

// expected is how far a bake falls from what is expected of it, in standard deviations, with the variance expected
// and what of it is luck.
func (t *Taught) expected(r *Row, h, ph *effect) (z, variance, luck float64) {
	luck = t.Luck * t.Luck
	variance = h.dot(ph) + r.Scale*luck
	return (r.Y - h.dot(&t.effects.mean)) / math.Sqrt(variance), variance, luck
}

func (t *Taught) reach(variance, luck float64) float64 {
	b := Belief{Freedom: t.Freedom}
	return b.Reach(variance, luck)
}

// take takes in one row with noise of a variance, P·h being known.
func (g *gaussian) take(h, ph *effect, y, noise float64) {
	gain := 1 / (h.dot(ph) + noise)
	off := (y - h.dot(&g.mean)) * gain
	for i := range ph {
		g.mean[i] += ph[i] * off
		by := ph[i] * gain
		for j := range ph {
			g.cov[i][j] -= by * ph[j]
		}
	}
}
