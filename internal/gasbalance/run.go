package gasbalance

import "math"

// Clock is a law put to one dough in one kitchen: what its formula and the kitchen's unknowns make of every rate.
// It is immutable.
type Clock struct {
	law       *Law
	pace      float64 // π·e^b
	amplitude float64 // e^a
	slope     float64 // d
	coldEnd   float64 // c
	mixture   float64 // w
	even      bool    // neither slope nor cold end: the pace is the same at every temperature
}

// Clock is the law for a formula in a kitchen with these unknowns.
func (l *Law) Clock(f Formula, unknowns Vector) *Clock { return l.ClockAt(l.Pace(f), unknowns) }

// ClockAt is [Law.Clock] for a pace that is known already.
func (l *Law) ClockAt(pace float64, u Vector) *Clock {
	return &Clock{
		law: l, pace: pace * math.Exp(u[Pace]), amplitude: math.Exp(u[Amplitude]),
		slope: u[Slope], coldEnd: u[ColdEnd], mixture: u[Mixture],
		even: u[Slope] == 0 && u[ColdEnd] == 0,
	}
}

// Law is the law behind the clock.
func (c *Clock) Law() *Law { return c.law }

// Gas is the gas of a state with the kitchen's amplitude, L/kg flour.
func (c *Clock) Gas(s *State) float64 { return c.amplitude * s.Gas }

// slopeFrom is the temperature from which the slope of a kitchen counts, °C.
const slopeFrom = 24.0

// cold is dln(rate)/dc: what a cold end one degree higher does to the log of every rate, relative to 27 °C.
func cold(celsius float64) float64 {
	return 2/(reference-coldestGas) - 2/math.Max(celsius-coldestGas, 2.5)
}

// run takes a state along one straight run of temperature:
//
//	φ = max(0, 1 − (X + Y)/X_m)
//	dX/dt = P·μ₂₇·g_l(T)·e^(w·κ)·φ·X     dY/dt = P·μ₂₇·g_y(T)·φ·Y     dG/dt = e^a·P·q₂₇·r_q(T)·(X + Y)
//	P = π·e^(b + d·(T − 24) + c·k(T))
//
// With averages over the run from antiderivatives, A = P·avg(r_q)·Δt, B = P·μ₂₇·avg(g)·Δt, and M the mean of the
// two B by cells, the crowded sum is a logistic curve in M, exact at one temperature for one leavening:
//
//	u = 1 + X₀/X_m·(e^M − 1)     X₁ = X₀·e^M/u     mean cells = X_m·ln(u)/M     G += q₂₇·A·mean
//
// Two leavenings grow each by e^(B·ψ), ψ = (M − ln u)/M, and both are scaled to the sum. The derivatives by the
// unknowns ride along. Within a run gas and growth are taken as proportional, so runs are cut; see [Clock.Advance].
func (c *Clock) run(s *State, hours, from, to float64) {
	x0 := s.Levain + s.Yeast
	if !(hours > 0) || !(x0 > 0) {
		return
	}
	l := c.law
	mid := (from + to) / 2
	mean := l.means(from, to)
	by := mid - slopeFrom
	ck := cold(mid)
	f := c.pace * hours
	if !c.even {
		f *= math.Exp(c.slope*by + c.coldEnd*ck)
	}
	gas := l.Gas * f * mean.gas
	grown := l.Growth * f
	switch {
	case s.Yeast == 0:
		b, kappa := c.levainGrowth(mean, grown)
		s.single(l, &s.Levain, &s.levain, gas, b, [rides]float64{1, by, ck, kappa})
	case s.Levain == 0:
		s.single(l, &s.Yeast, &s.yeast, gas, grown*mean.yeast, [rides]float64{1, by, ck, 0})
	default:
		b, kappa := c.levainGrowth(mean, grown)
		s.both(l, gas, b, grown*mean.yeast, [rides]float64{1, by, ck, kappa})
	}
}

// levainGrowth is B of a levain and κ = dln B/dw, how its growth goes with the mixture of its yeasts.
func (c *Clock) levainGrowth(mean three, grown float64) (b, kappa float64) {
	w := c.law.Mixture
	g := (1-w)*mean.humilis + w*mean.yeast
	if !(g > 1e-9) {
		return grown * g, 0
	}
	kappa = (mean.yeast - mean.humilis) / g
	if c.mixture != 0 {
		g *= math.Exp(c.mixture * kappa)
	}
	return grown * g, kappa
}

// noGrowth is M below which cells are taken not to grow over a run.
const noGrowth = 1e-9

// single is a run of one leavening: gas q₂₇·A, growth m and its derivatives by.
func (s *State) single(l *Law, cells *float64, d *[rides]float64, gas, m float64, by [rides]float64) {
	x0 := *cells
	if !(x0 < l.Capacity && m > noGrowth) {
		s.Gas += gas * x0
		for j := range rides - 1 {
			s.gas[j] += gas * (by[j]*x0 + d[j])
		}
		s.gas[rides-1] += gas * d[rides-1]
		return
	}
	share := x0 / l.Capacity
	e := expm1(m)
	u1 := share * e
	ru, rm, r0 := 1/(1+u1), 1/m, 1/x0
	x1 := x0 * (1 + e) * ru
	mean := l.Capacity * log1p(u1) * rm
	s.Gas += gas * mean
	for j := range rides {
		dm := m * by[j]
		du := (d[j]/l.Capacity*e + share*(1+e)*dm) * ru
		dmean := (l.Capacity*du - mean*dm) * rm
		if j < rides-1 {
			dmean += by[j] * mean
		}
		s.gas[j] += gas * dmean
		d[j] = x1 * (d[j]*r0 + dm - du)
	}
	*cells = x1
}

// both is a run of levain and yeast together: growth bl and by of each.
func (s *State) both(l *Law, gas, bl, by float64, d [rides]float64) {
	x0 := s.Levain + s.Yeast
	r0 := 1 / x0
	m := (s.Levain*bl + s.Yeast*by) * r0
	var dx0, dm [rides]float64
	for j := range rides {
		dx0[j] = s.levain[j] + s.yeast[j]
		dm[j] = s.levain[j]*(bl-m) + s.yeast[j]*(by-m) + s.Levain*bl*d[j]
		if j < rides-1 {
			dm[j] += s.Yeast * by * d[j]
		}
		dm[j] *= r0
	}
	x1, mean, psi := x0, x0, 0.0
	dx1, dmean := dx0, dx0
	var dpsi [rides]float64
	if x0 < l.Capacity && m > noGrowth {
		share := x0 / l.Capacity
		e := expm1(m)
		u1 := share * e
		ru, rm := 1/(1+u1), 1/m
		logU := log1p(u1)
		x1 = x0 * (1 + e) * ru
		mean = l.Capacity * logU * rm
		psi = (m - logU) * rm
		for j := range rides {
			du := (dx0[j]/l.Capacity*e + share*(1+e)*dm[j]) * ru
			dmean[j] = (l.Capacity*du - mean*dm[j]) * rm
			grew := dm[j] - du // dln(X₁/X₀)
			dx1[j] = x1 * (dx0[j]*r0 + grew)
			dpsi[j] = (grew - psi*dm[j]) * rm
		}
	}
	s.Gas += gas * mean
	for j := range rides {
		v := dmean[j]
		if j < rides-1 {
			v += d[j] * mean
		}
		s.gas[j] += gas * v
	}
	// Only the ratio of the two counts, as both are scaled to the sum: the levain outgrows the yeast by e^(δ·ψ), δ
	// the difference of their growth.
	delta := bl - by
	levain := s.Levain * math.Exp(delta*psi)
	ratio, r0t := levain/s.Levain, 1/(levain+s.Yeast)
	n := x1 * r0t
	for j := range rides {
		ddelta := bl * d[j]
		if j < rides-1 {
			ddelta -= by * d[j]
		}
		dl := s.levain[j]*ratio + levain*(delta*dpsi[j]+psi*ddelta)
		dy := s.yeast[j]
		dn := (dx1[j] - n*(dl+dy)) * r0t
		s.levain[j] = dl*n + levain*dn
		s.yeast[j] = dy*n + s.Yeast*dn
	}
	s.Levain, s.Yeast = levain*n, s.Yeast*n
}

// seriesBelow is below which three terms of the series are exact to 1e-12, and above which the plain functions lose
// no more than that.
const seriesBelow = 1e-3

func expm1(x float64) float64 {
	if x < seriesBelow {
		return x * (1 + x/2*(1+x/3*(1+x/4)))
	}
	return math.Exp(x) - 1
}

func log1p(x float64) float64 {
	if x < seriesBelow {
		return x * (1 - x*(1.0/2-x*(1.0/3-x/4)))
	}
	return math.Log(1 + x)
}
