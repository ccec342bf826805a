package gasbalance

import (
	"math"
	"slices"
)

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
	e := g.entry(person, culture)
	if g.HalfLife == 0 && e.apart(bakes) {
		e = e.parted()
	}
	before := g.before(person, culture)
	all := make([]learner, 1+len(e.Fading))
	kneaded := e.Sums.kneaded()
	for i := range bakes {
		kneaded[bakes[i].Kneading] = true
	}
	for k := range all {
		all[k] = learner{
			kind: g.Kind, live: before.live(&kneaded), halfLife: g.HalfLife, s: e.Sums,
			weights: make([]float64, len(bakes)),
		}
		if k > 0 {
			all[k].s, all[k].halfLife = e.Fading[k-1], halfLives[k-1]
		}
		all[k].begin()
	}
	foretold := func(k int) float64 { return all[k].s.Score.Foretold }
	for i := range bakes {
		speaks := best(len(all), foretold)
		held := false
		for k := range all {
			if h := all[k].take(&bakes[i], i); k == speaks {
				held = h
			}
		}
		all[0].s.Score.given(held)
	}
	e.Sums, e.Fading = all[0].s, nil
	for k := range all[1:] {
		e.Fading = append(e.Fading, all[k+1].s)
	}
	chosen := &all[best(len(all), foretold)]
	fade(chosen.weights, bakes, chosen.s.Day, chosen.halfLife)
	return g.set(e), chosen.weights
}

// apart reports whether any bake is older than another.
func (e *Entry) apart(bakes []Dated) bool {
	first := bakes[0].Day
	if e.Sums.Bakes > 0 {
		first = e.Sums.Day
	}
	return slices.ContainsFunc(bakes, func(b Dated) bool { return b.Day != first })
}

// learner takes the bakes of one culture in, one after the other.
type learner struct {
	live

	kind     Leavening
	halfLife float64
	s        Sums
	luck     float64
	degrees  float64   // of freedom behind it
	since    int       // bakes since the luck was looked for
	weights  []float64 // by bake
}

func (l *learner) begin() {
	l.look(luckOf(l.kind))
	l.s.Weighing = Surprise
}

// look looks for the luck from a guess.
func (l *learner) look(guess float64) {
	l.luck, _, l.degrees = l.settle(&l.s, l.kind, guess)
	l.since = 0
}

// take takes in bake i and reports whether the range held it that was given before. How far it falls from what is
// expected of it is told in standard deviations, z.
func (l *learner) take(b *Dated, i int) (held bool) {
	s, luck := &l.s, l.luck*l.luck
	h := l.among(&b.Row)
	ph, mean, known := l.expected(&h)
	variance := known + b.Scale*luck
	sd, stretch := math.Sqrt(variance), s.Score.Stretch()
	z := (b.Y - mean) / sd
	weight := weigh(z / stretch)
	s.forget(b.Day, l.halfLife)
	reach := reach(l.degrees, variance, luck)
	s.Score.add(z*z80/reach, stretch)
	s.Score.Foretold += foretold(z/stretch, sd*stretch)
	s.Add(&b.Row, weight)
	l.weights[i] = weight
	// The luck is looked for again after every bake of the first few, then each time the log has grown by an eighth.
	if l.since++; l.since*8 >= s.Bakes {
		l.look(l.luck)
	} else {
		precision := 1 / (known + b.Scale*luck/weight)
		l.live.take(&ph, (b.Y-mean)*precision, precision)
	}
	return math.Abs(z) <= reach*stretch
}

// fade makes weights what the sums hold of them on a day.
func fade(weights []float64, bakes []Dated, day, halfLife float64) {
	if !(halfLife > 0) {
		return
	}
	for i := range weights {
		weights[i] *= math.Exp2(-math.Max(0, day-bakes[i].Day) / halfLife)
	}
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
