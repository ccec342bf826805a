package gasbalance

import "example.org/maslin/internal/numeric"

// halfLives are after how many days a bake may count half where nobody says it, beside never: for a culture that
// changes over months, and for one that changes over weeks. Judgments; see CLOCK.md, section 5.
var halfLives = [...]float64{60, 15}

// evident is by how much the log of what a half-life foretold must be better than without one for it to be taken:
// the log of bakes is a sixth more likely by it. Judgment: taken too late, ranges lag behind a culture that drifts;
// taken without need, they are a few percent wider.
const evident = 0.15

// tails is the degrees of freedom of the Student's t that bakes are compared by, so that a wild one decides nothing:
// judgment.
const tails = 7.0

// foretold is the log of how likely a bake was that fell z standard deviations from what was expected, but for a
// constant.
func foretold(z, sd float64) float64 { return -numeric.Log(sd) - (tails+1)/2*numeric.Log1p(z*z/tails) }

// best answers: which of the sums of a log, by number, foretold it best, bake by bake? 0 are those that never fade.
//
//	L = Σ ln p(y | the bakes before) = −Σ (ln s + 4·ln(1 + z²/7))
//
// y being a bake, s the standard deviation expected of it and z how many of them it was off. Others than 0 must be
// evidently better. Source: Dawid, J R Statist Soc A 147 (1984) 278 (the prequential principle).
func best(n int, foretold func(k int) float64) (k int) {
	most := foretold(0) + evident
	for i := 1; i < n; i++ {
		if f := foretold(i); f > most {
			k, most = i, f
		}
	}
	return k
}

// fading is which of the half-lives an entry goes by, counted from 1; 0 is none of them.
func (e *Entry) fading() int {
	return best(1+len(e.Fading), func(k int) float64 {
		if k == 0 {
			return e.Sums.Score.Foretold
		}
		return e.Fading[k-1].Score.Foretold
	})
}

// halfLife is that of the sums that speak, in days; 0 is none.
func (e *Entry) halfLife(given float64) float64 {
	if k := e.fading(); k > 0 {
		return halfLives[k-1]
	}
	return given
}

// Foretold is how well a log was foretold, bake by bake, when one counts half after a half-life in days; 0 is never.
type Foretold struct {
	HalfLife float64
	Log      float64 // of how likely the bakes were, but for a constant
}

// Foretold is what a culture's half-life is chosen by: first without one, then by each; nothing where none is chosen.
func (g Group) Foretold(person, culture string) (all []Foretold) {
	e := g.entry(person, culture)
	if e.Fading == nil {
		return nil
	}
	all = append(all, Foretold{Log: e.Sums.Score.Foretold})
	for i, h := range halfLives {
		all = append(all, Foretold{h, e.Fading[i].Score.Foretold})
	}
	return all
}

// speaks are the sums that speak for a culture, with the record of all that was said of it.
func (e *Entry) speaks() Sums {
	i := e.fading()
	if i == 0 {
		return e.Sums
	}
	s := e.Fading[i-1]
	s.Score.Inside, s.Score.Ranges = e.Sums.Score.Inside, e.Sums.Score.Ranges
	return s
}

// parted is an entry that holds its bakes once for every half-life.
func (e Entry) parted() Entry {
	if e.Fading != nil {
		return e
	}
	e.Fading = make([]Sums, len(halfLives))
	for i := range e.Fading {
		e.Fading[i] = e.Sums
		e.Fading[i].Score.Inside, e.Fading[i].Score.Ranges = 0, 0
	}
	return e
}

// merge is both together, each of their sums as of the later day. As long as no bake is older than another, all sums
// are the same and are kept once.
func (e Entry) merge(f Entry, given float64) Entry {
	apart := e.Fading != nil || f.Fading != nil || e.Sums.Bakes > 0 && f.Sums.Bakes > 0 && e.Sums.Day != f.Sums.Day
	if given == 0 && apart {
		e, f = e.parted(), f.parted()
		fading := make([]Sums, len(halfLives))
		for i, h := range halfLives {
			fading[i] = e.Fading[i].Merge(f.Fading[i], h)
		}
		e.Fading = fading
	}
	e.Sums = e.Sums.Merge(f.Sums, given)
	return e
}

// Sound reports whether an entry can hold those of bakes, each once for every half-life or once.
func (e *Entry) Sound() bool {
	ok := e.Sums.Sound() && (len(e.Fading) == 0 || len(e.Fading) == len(halfLives))
	for i := range e.Fading {
		ok = ok && e.Fading[i].Sound() && e.Fading[i].Bakes == e.Sums.Bakes
	}
	return ok
}
