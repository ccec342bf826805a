package gasbalance

// Weighed is how one bake moved the log of the pace of its culture.
type Weighed struct {
	Read     float64 // the log of the pace at which it would have been just ready when it was
	Expected float64 // of it, by what was known before the bake
	Variance float64 // of what was expected
	Noise    float64 // variance of the bake itself: its luck, its reading, its formula, over its weight
	Share    float64 // how much of what is expected is the pace's: their covariance over Variance
}

// Weight is that of the bake beside what was expected of it: its precision over both.
func (w *Weighed) Weight() float64 { return w.Variance / (w.Variance + w.Noise) }

// Retold takes the last bakes of a culture in again, one after the other, with the luck that was found for all of them:
// which is the same as all at once. Mean and variance are those of the log of the pace before the first of them. Bakes
// without weight say nothing and are left out.
func (g Group) Retold(person, culture string, bakes []Dated, weights []float64) (
	mean, variance float64, each []Weighed,
) {
	before := g.before(person, culture)
	i, found := g.find(person, culture)
	if !found {
		return before.mean[Pace], before.cov[Pace][Pace], nil
	}
	s := g.Entries[i].speaks()
	now := s.from(g.Kind, &before, luckOf(g.Kind))
	luck := now.Luck * now.Luck
	at := before
	if s.Bakes > len(bakes) {
		for i := range bakes {
			s.include(&bakes[i].Row, weights[i], -1)
		}
		e := s.evidence(luck)
		at = before.seen(&e.precision, &e.moment)
	}
	mean, variance = at.mean[Pace], at.cov[Pace][Pace]
	for i := range bakes {
		if !(weights[i] > 0) {
			continue
		}
		r := &bakes[i].Row
		h := r.effect()
		ph := at.cov.times(&h)
		w := Weighed{Read: r.Y, Expected: h.dot(&at.mean), Variance: h.dot(&ph), Noise: r.Scale * luck / weights[i]}
		if !(w.Variance > 0) {
			continue
		}
		w.Share = ph[Pace] / w.Variance
		each = append(each, w)
		at.take(&h, &ph, r.Y, w.Noise)
	}
	return mean, variance, each
}
