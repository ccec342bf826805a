package gasbalance

import (
	"math"
	"testing"
)

// A dough that is put into the warm needs less gas at once: it is ready then, not a little later.
func TestReadyAtAJump(t *testing.T) {
	l := Standard()
	c := l.Clock(plain, Vector{})
	start, need, belief := Start(0.09*l.RipeLevain(), 0), l.Need(0.75, 0.72, 1), Prior(ByLevain)
	held := c.Times(start, []Knot{{0, 24}}, need, &belief, 720)
	for side, at := range []float64{held.Early, held.Likely, held.Late} {
		jump := 0.995 * at
		o := c.Times(start, []Knot{{0, 24}, {jump, 24}, {jump, 36}}, need, &belief, 720)
		if got := []float64{o.Early, o.Likely, o.Late}[side]; got != jump {
			t.Errorf("side %d: ready after %v h, put into the warm after %v", side-1, got, jump)
		}
	}
}

// The scale of a row is 1 and what its reading and its formula leave unsure, over the luck:
// k = 1 + ((dln N/dln R)·δ/R/∂b/σ)² + (0.3·ln(π/π₀)/σ)²
func TestTheScaleOfARow(t *testing.T) {
	l := Standard()
	for kind, luck := range map[Leavening]float64{ByLevain: 0.12, ByYeast: 0.10} {
		b := Logged{
			Start: Start(0.1, 0), Formula: Formula{Hydration: 0.6, Salt: 1, Sugar: 9, Whole: 0.7}, History: []Knot{{0, 24}},
			Hours: 5, Rise: 0.8, Error: 0.07, Pressure: 1,
		}
		if kind == ByYeast {
			b.Start = Start(0, 0.1)
		}
		r, ok := l.RowAtOwnPace(kind, &b)
		c := l.Clock(b.Formula, Vector{Pace: r.Y})
		s := c.AdvanceAlong(b.Start, b.History, 0, b.Hours)
		byPace := s.LogGas()[Pace]
		n := l.Need(b.Rise, b.Formula.Hydration, b.Pressure)
		reading := n.Steepness(24) * 0.07 / 0.8 / byPace / luck
		formula := 0.3 * math.Log(l.Pace(b.Formula)/l.Pace(plain)) / luck
		if want := 1 + reading*reading + formula*formula; !ok || !(math.Abs(r.Scale-want) <= 1e-3*want) {
			t.Errorf("leavening %d: %v, want %v of %v and %v", kind, r.Scale, want, reading, formula)
		}
	}
}
