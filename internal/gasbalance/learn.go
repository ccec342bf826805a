package gasbalance

// The spread of an unknown kitchen is shared out over three levels, as parts of each variance: what is the same for
// everyone (the law's own error), what a person's flour, thermometer, hands and eye add, and what is the culture's.
// All judgments.
const (
	partEveryone = 0.2
	partPerson   = 0.3
	partCulture  = 0.5
)

// sdKneading is how far ways of kneading differ in the log of the pace, judgment.
const sdKneading = 0.10

// level is the covariance that one level adds to the effects.
func level(kind Leavening, part float64) (d effectMatrix) {
	p := Prior(kind)
	for i := range p.Cov {
		d[i][i] = part * p.Cov[i][i]
	}
	for k := range kneadings {
		d[Unknowns+k][Unknowns+k] = part * sdKneading * sdKneading
	}
	return d
}

// unknown is the distribution for a culture of which nothing is known.
func unknown(kind Leavening) gaussian { return gaussian{cov: level(kind, 1)} }

// Taught is what is known of a culture: the distribution of its effects and of its luck.
type Taught struct {
	kind    Leavening
	effects gaussian
	// Luck is the standard deviation from bake to bake in the log of the time, Freedom the degrees of freedom
	// behind it.
	Luck, Freedom float64
	// Score is how the ranges given so far have held.
	Score Score
	// HalfLife is after how many days a bake counts half; 0 is never. Where the log chose it, Evidence is how much
	// likelier the log is by it than when all count alike, as a logarithm.
	HalfLife, Evidence float64
	// Bakes is how many bakes it rests on, and Coldest the coldest of them, °C.
	Bakes   int
	Coldest float64
}

// Untaught is a culture of which nothing is known.
func Untaught(kind Leavening) Taught {
	return Taught{kind: kind, effects: unknown(kind), Luck: luckOf(kind), Freedom: freedom}
}

// Unlearned is what is believed of any dough of a culture of which nothing is known.
func Unlearned(kind Leavening) Belief {
	b := Prior(kind)
	b.Cov[Pace][Pace] += sdKneading * sdKneading
	b.Stretch = 1
	return b
}

// Belief is what is believed of a dough kneaded in this way.
func (t *Taught) Belief(kneading int) (b Belief) {
	g, u := &t.effects, Unknowns+kneading
	copy(b.Mean[:], g.mean[:Unknowns])
	b.Mean[Pace] += g.mean[u]
	b.Cov = g.cov.kneaded(u)
	b.Stretch = t.Score.Stretch()
	b.Luck, b.Freedom = t.Luck*t.Luck, t.Freedom
	b.Opens, b.Coldest = t.Bakes > 0, t.Coldest
	return b
}

// kneaded is the covariance of the unknowns of a dough, the pace of its way of kneading counted into its pace.
func (a *effectMatrix) kneaded(u int) (c Matrix) {
	for i := range Unknowns {
		copy(c[i][:], a[i][:Unknowns])
	}
	for i := range Unknowns {
		c[i][Pace] += a[i][u]
		c[Pace][i] += a[u][i]
	}
	c[Pace][Pace] += a[u][u]
	return c
}

// rounds bounds the search for the luck, which a few settle.
const (
	rounds  = 60
	settled = 1e-6
)

// from is what the sums of a culture's bakes add to what was known of it before, with the luck looked for from a
// guess; see [live.settle].
func (s *Sums) from(kind Leavening, before *gaussian, guess float64) (out Taught) {
	out = Taught{kind: kind, Score: s.Score, Bakes: s.Bakes, Coldest: s.Coldest}
	kneaded := s.kneaded()
	l := before.live(&kneaded)
	var used float64
	out.Luck, used, out.Freedom = l.settle(s, kind, guess)
	e := s.evidence(used * used)
	out.effects = before.seen(&e.precision, &e.moment)
	return out
}
