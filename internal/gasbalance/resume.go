package gasbalance

// Crossed answers: did the dough meet its need on a straight run of hours from one temperature to another, on this
// side of its range (−1 early, 0 likely, 1 late), and after how long? It is the incremental form of [Clock.Times].
func (c *Clock) Crossed(s State, hours, from, to float64, need *Need, b *Belief, side int) (after float64, ok bool) {
	q := question{clock: c, need: *need, belief: b}
	end := c.Advance(s, hours, from, to)
	if q.score(&end, to, side) < 0 {
		return 0, false
	}
	if q.score(&s, from, side) >= 0 {
		return 0, true
	}
	lo, hi := 0.0, hours
	for range 40 {
		mid := (lo + hi) / 2
		at := from + (to-from)*mid/hours
		m := c.Advance(s, mid, from, at)
		if q.score(&m, at, side) < 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return hi, true
}

// Floats are all numbers of a state, for keeping it; [StateOf] makes it again.
func (s State) Floats() (out [3 + 3*rides]float64) {
	out[0], out[1], out[2] = s.Levain, s.Yeast, s.Gas
	for j := range rides {
		out[3+j], out[3+rides+j], out[3+2*rides+j] = s.levain[j], s.yeast[j], s.gas[j]
	}
	return out
}

// StateOf is the state of [State.Floats].
func StateOf(v [3 + 3*rides]float64) (s State) {
	s.Levain, s.Yeast, s.Gas = v[0], v[1], v[2]
	for j := range rides {
		s.levain[j], s.yeast[j], s.gas[j] = v[3+j], v[3+rides+j], v[3+2*rides+j]
	}
	return s
}

// ColdShift is k(T), what a cold end one degree higher does to the log of every rate, relative to 27 °C.
func ColdShift(celsius float64) float64 { return cold(celsius) }
