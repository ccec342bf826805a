package gasbalance

import "math"

// Row is one logged bake as a line of a regression, in the log of the time:
//
//	y = ln(N(R)/G(t))/∂b = hᵀ·x + ε,   var ε = k·σ²
//
// h are the derivatives of ln G by the unknowns over that by the pace, σ the luck from bake to bake; k is 1, and
// more by what the rise was read to and what the formula leaves unsure. It is a value.
type Row struct {
	Y float64
	H Vector
	// Scale is k.
	Scale float64
	// Kneading is the way of kneading, 0 to 2.
	Kneading int
	// Celsius is the mean temperature that counted.
	Celsius float64
}

// Logged is what a bake's log says.
type Logged struct {
	Start    State
	Formula  Formula
	History  []Knot
	Hours    float64 // how long it took
	Rise     float64 // to rise this far
	Error    float64 // standard deviation of the rise as read
	Pressure float64 // atm
	Kneading int
}

// Row makes the line of a logged bake, at the typical kitchen: one linearization is enough. ok is false when the
// dough cannot have risen.
func (l *Law) Row(kind Leavening, b *Logged) (r Row, ok bool) {
	c := l.Clock(b.Formula, Vector{})
	s := c.AdvanceAlong(b.Start, b.History, 0, b.Hours)
	end := celsius(b.History, b.Hours)
	n := l.Need(b.Rise, b.Formula.Hydration, b.Pressure)
	need := n.Gas(end)
	e := s.LogGas()
	if !(s.Gas > 0) || !(need > 0) || math.IsInf(need, 1) || !(e[Pace] > 0) {
		return Row{}, false
	}
	luck := luckOf(kind)
	inv := 1 / e[Pace]
	reading := n.Steepness(end) * b.Error / b.Rise * inv / luck
	unusual := sdFormula * l.Unusual(b.Formula) / luck
	r = Row{
		Y: math.Log(need/s.Gas) * inv, Scale: 1 + reading*reading + unusual*unusual,
		Kneading: b.Kneading, Celsius: slopeFrom + e[Slope]*inv,
	}
	for i := range e {
		r.H[i] = e[i] * inv
	}
	return r, true
}

func luckOf(kind Leavening) float64 {
	if kind == ByYeast {
		return sdLuckYeast
	}
	return sdLuck
}

// effect is the row over all effects: its pace counts once more for its way of kneading.
func (r *Row) effect() (h effect) {
	copy(h[:Unknowns], r.H[:])
	h[Unknowns+r.Kneading] = r.H[Pace]
	return h
}

// expected is hᵀx, what effects make of the row.
func (r *Row) expected(x *effect) float64 {
	y := r.H[Pace] * x[Unknowns+r.Kneading]
	for i, h := range r.H {
		y += h * x[i]
	}
	return y
}

// Sums are what any number of bakes say: sufficient for everything that is learned of them, unless wild bakes are
// to count less. They are added, in any order, and forgotten in part; the zero value is no bake.
type Sums struct {
	// Gram is Σ w·h·hᵀ/k by unknown and way of kneading, its lower half; Moment is Σ w·h·y/k and Squares Σ w·y²/k.
	Gram    [kneadings][Unknowns][Unknowns]float64 `json:"gram"`
	Moment  [kneadings]Vector                      `json:"moment"`
	Squares float64                                `json:"squares"`
	// Weight is Σ w, and Bakes how many there were.
	Weight float64 `json:"weight"`
	Bakes  int     `json:"bakes"`
	// Coldest is the lowest of their temperatures, °C; only with bakes.
	Coldest float64 `json:"coldest"`
	// Day is the day on which the weights are what they are.
	Day float64 `json:"day"`
	// Score is how the ranges given before these bakes were known have held.
	Score Score `json:"score,omitzero"`
	// Weighing is how the weights were found, which the luck makes up for.
	Weighing Weighing `json:"weighing,omitzero"`
}

// Add adds a bake with a weight.
func (s *Sums) Add(r *Row, weight float64) { s.include(r, weight, 1) }

// include adds a bake, or with -1 takes it out again, all but the coldest temperature.
func (s *Sums) include(r *Row, weight, sign float64) {
	w := sign * weight / r.Scale
	g, m := &s.Gram[r.Kneading], &s.Moment[r.Kneading]
	for i, h := range r.H {
		if h == 0 {
			continue // a levain says nothing of commercial yeast
		}
		wh := w * h
		for j := 0; j <= i; j++ {
			g[i][j] += wh * r.H[j]
		}
		m[i] += wh * r.Y
	}
	s.Squares += w * r.Y * r.Y
	s.Weight += sign * weight
	if s.Bakes == 0 || r.Celsius < s.Coldest {
		s.Coldest = r.Celsius
	}
	s.Bakes += int(sign)
}

// Forget is the sums seen from a later day, when every bake counts half as much after a half-life in days. No
// half-life, or an earlier day, changes nothing.
func (s Sums) Forget(day, halfLife float64) Sums {
	s.forget(day, halfLife)
	return s
}

func (s *Sums) forget(day, halfLife float64) {
	if s.Bakes == 0 {
		s.Day = day
	}
	if !(day > s.Day) {
		return
	}
	if halfLife > 0 {
		s.scale(math.Exp2(-(day - s.Day) / halfLife))
	}
	s.Day = day
}

func (s *Sums) scale(f float64) {
	for k := range s.Gram {
		if s.Gram[k][Pace][Pace] == 0 {
			continue // no bake was kneaded so: the pace of each counts 1
		}
		for i := range s.Gram[k] {
			for j := range s.Gram[k][i] {
				s.Gram[k][i][j] *= f
			}
			s.Moment[k][i] *= f
		}
	}
	s.Squares *= f
	s.Weight *= f
	s.Score.Squares *= f
	s.Score.Weight *= f
}

// Merge is both together, as of the later day.
func (s Sums) Merge(t Sums, halfLife float64) Sums {
	day := math.Max(s.Day, t.Day)
	switch {
	case s.Bakes == 0:
		day = t.Day
	case t.Bakes == 0:
		day = s.Day
	}
	s, t = s.Forget(day, halfLife), t.Forget(day, halfLife)
	if s.Bakes == 0 || t.Bakes > 0 && t.Coldest < s.Coldest {
		s.Coldest = t.Coldest
	}
	for k := range s.Gram {
		for i := range s.Gram[k] {
			for j := range s.Gram[k][i] {
				s.Gram[k][i][j] += t.Gram[k][i][j]
			}
			s.Moment[k][i] += t.Moment[k][i]
		}
	}
	s.Squares += t.Squares
	s.Weight += t.Weight
	s.Bakes += t.Bakes
	s.Score.merge(t.Score)
	s.Weighing = max(s.Weighing, t.Weighing)
	return s
}

// evidence is what the bakes say for a luck of variance σ².
func (s *Sums) evidence(variance float64) (e evidence) {
	r := 1 / variance
	for k := range s.Gram {
		g, u := &s.Gram[k], Unknowns+k
		if g[Pace][Pace] == 0 {
			continue // no bake was kneaded so: the pace of each counts 1
		}
		for i := range Unknowns {
			for j := 0; j <= i; j++ {
				v := g[i][j] * r
				e.precision[i][j] += v
				if i != j {
					e.precision[j][i] += v
				}
			}
			pace := g[max(i, Pace)][min(i, Pace)] * r
			e.precision[u][i], e.precision[i][u] = pace, pace
			e.moment[i] += s.Moment[k][i] * r
		}
		e.precision[u][u] = g[Pace][Pace] * r
		e.moment[u] = s.Moment[k][Pace] * r
	}
	return e
}
