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
	growth    float64 // e^y, of commercial yeast
	even      bool    // neither slope nor cold end: the pace is the same at every temperature
}

// Clock is the law for a formula in a kitchen with these unknowns.
func (l *Law) Clock(f Formula, unknowns Vector) *Clock { return l.ClockAt(l.Pace(f), unknowns) }

// ClockAt is [Law.Clock] for a pace that is known already.
func (l *Law) ClockAt(pace float64, u Vector) *Clock {
	return &Clock{
		law: l, pace: pace * math.Exp(u[Pace]), amplitude: math.Exp(u[Amplitude]),
		slope: u[Slope], coldEnd: u[ColdEnd], mixture: u[Mixture], growth: math.Exp(u[Growth]),
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
	return 2/(reference-coldestGas) - 2/max(celsius-coldestGas, 2.5)
}

// run takes a state along one straight run of temperature:
//
//	φ = max(0, 1 − (X + Y)/X_m)
//	dX/dt = P·μ₂₇·g_l(T)·e^(w·κ)·φ·X     dY/dt = P·μ₂₇·g_y(T)·e^y·φ·Y     dG/dt = e^a·P·q₂₇·r_q(T)·(X + Y)
//	P = π·e^(b + d·(T − 24) + c·k(T))
//
// With averages over the run from antiderivatives, A = P·avg(r_q)·Δt, B = P·μ₂₇·avg(g)·Δt, and M the mean of the
// two B by cells, the crowded sum is a logistic curve in M, exact at one temperature for one leavening:
//
//	u = 1 + X₀/X_m·(e^M − 1)     X₁ = X₀·e^M/u     mean cells = X_m·ln(u)/M     G += q₂₇·A·mean
//
// Two leavenings grow each by e^(B·ψ), ψ = (M − ln u)/M, and both are scaled to the sum. The derivatives by the
// unknowns ride along. Gas and growth are taken as proportional within the run and the shares of two leavenings as
// those at its start. [Clock.stride] mends both to first order.
func (c *Clock) run(s *State, hours, from, to float64) { c.step(s, hours, from, to, false) }

// stride is run with two terms more:
//
//	G += q₂₇·A·(mean + (X₁ − X₀)/12·(Δr_q/avg(r_q) − Δg/avg(g)))     M += (B_l − B_y)²·x·(1 − x)·φ/2
//
// The first is what gas and growth do out of step as the temperature moves, Δ being end less start; the second how the
// share x of the levain moves. With them runs may be longer for the same error.
func (c *Clock) stride(s *State, hours, from, to float64) { c.step(s, hours, from, to, true) }

func (c *Clock) step(s *State, hours, from, to float64, mend bool) {
	x0 := s.Levain + s.Yeast
	if !(hours > 0) || !(x0 > 0) {
		return
	}
	l := c.law
	mid := (from + to) / 2
	var mean, apart three
	if d := to - from; d < closeTogether && d > -closeTogether {
		mean = l.rates(mid)
	} else {
		mean, apart = l.means(from, to)
	}
	by := mid - slopeFrom
	ck := cold(mid)
	f := c.pace * hours
	if !c.even {
		f *= math.Exp(c.slope*by + c.coldEnd*ck)
	}
	gas := l.Gas * f * mean.gas
	grown := l.Growth * f
	all := [rides]float64{1, by, ck}
	run := run{law: l, gas: gas, byGas: all, byLevain: all, byYeast: all}
	run.byYeast[Growth-1] = 1
	lean := 0.0
	if mend && gas > 0 {
		lean = apart.gas / mean.gas
	}
	const least = 1e-6 // growth too small to be out of step with anything
	switch {
	case s.Yeast == 0:
		run.levain, run.byLevain[Mixture-1] = c.levainGrowth(mean, grown)
		if g := l.mixed(mean); mend && g > least {
			run.lean = (lean - l.mixed(apart)/g) / 12
		}
		run.single(s, &s.Levain, &s.levain, run.levain, &run.byLevain)
	case s.Levain == 0:
		if mend && mean.yeast > least {
			run.lean = (lean - apart.yeast/mean.yeast) / 12
		}
		run.single(s, &s.Yeast, &s.yeast, grown*mean.yeast*c.growth, &run.byYeast)
	default:
		run.levain, run.byLevain[Mixture-1] = c.levainGrowth(mean, grown)
		run.yeast = grown * mean.yeast * c.growth
		if mend {
			x := s.Levain / x0
			if g := x*l.mixed(mean) + (1-x)*mean.yeast; g > least {
				run.lean = (lean - (x*l.mixed(apart)+(1-x)*apart.yeast)/g) / 12
			}
			d := run.levain - run.yeast
			run.drift = d * d * x * (1 - x) * max(0, 1-x0/l.Capacity) / 2
		}
		run.both(s)
	}
}

// run is one run in numbers: q₂₇·A, the growth of each leavening, how the logs of the three go with the unknowns, and
// the two terms of [Clock.stride].
type run struct {
	law           *Law
	gas           float64
	levain, yeast float64
	lean, drift   float64

	byGas, byLevain, byYeast [rides]float64
}

// mixed is a levain's share of the curves.
func (l *Law) mixed(v three) float64 { return (1-l.Mixture)*v.humilis + l.Mixture*v.yeast }

// levainGrowth is B of a levain and κ = dln B/dw, how its growth goes with the mixture of its yeasts.
func (c *Clock) levainGrowth(mean three, grown float64) (b, kappa float64) {
	g := c.law.mixed(mean)
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

// single is a run of one leavening that grows by m, the log of which goes with the unknowns by grows.
func (r *run) single(s *State, cells *float64, d *[rides]float64, m float64, grows *[rides]float64) {
	x0 := *cells
	capacity, by := r.law.Capacity, &r.byGas
	if !(x0 < capacity && m > noGrowth) {
		s.Gas += r.gas * x0
		for j := range rides {
			s.gas[j] += r.gas * (by[j]*x0 + d[j])
		}
		return
	}
	rc := 1 / capacity
	share := x0 * rc
	e := expm1(m)
	u1 := share * e
	ru, rm, r0 := 1/(1+u1), 1/m, 1/x0
	x1 := x0 * (1 + e) * ru
	mean := capacity * log1p(u1) * rm
	gas := r.gas * (1 + r.lean*(x1-x0)/mean)
	s.Gas += gas * mean
	grown := share * (1 + e)
	for j := range rides {
		dm := m * grows[j]
		du := (d[j]*rc*e + grown*dm) * ru
		dmean := (capacity*du-mean*dm)*rm + by[j]*mean
		s.gas[j] += gas * dmean
		d[j] = x1 * (d[j]*r0 + dm - du)
	}
	*cells = x1
}

// both is a run of levain and yeast together.
func (r *run) both(s *State) {
	capacity, bl, by := r.law.Capacity, r.levain, r.yeast
	x0 := s.Levain + s.Yeast
	r0 := 1 / x0
	m := (s.Levain*bl+s.Yeast*by)*r0 + r.drift
	var dx0, dm [rides]float64
	for j := range rides {
		dx0[j] = s.levain[j] + s.yeast[j]
		dm[j] = s.levain[j]*(bl-m) + s.yeast[j]*(by-m) + s.Levain*bl*r.byLevain[j] + s.Yeast*by*r.byYeast[j]
		dm[j] *= r0
	}
	x1, mean, psi := x0, x0, 0.0
	dx1, dmean := dx0, dx0
	var dpsi [rides]float64
	if x0 < capacity && m > noGrowth {
		rc := 1 / capacity
		share := x0 * rc
		e := expm1(m)
		u1 := share * e
		ru, rm := 1/(1+u1), 1/m
		logU := log1p(u1)
		x1 = x0 * (1 + e) * ru
		mean = capacity * logU * rm
		psi = (m - logU) * rm
		for j := range rides {
			du := (dx0[j]*rc*e + share*(1+e)*dm[j]) * ru
			dmean[j] = (capacity*du - mean*dm[j]) * rm
			grew := dm[j] - du // dln(X₁/X₀)
			dx1[j] = x1 * (dx0[j]*r0 + grew)
			dpsi[j] = (grew - psi*dm[j]) * rm
		}
	}
	gas := r.gas * (1 + r.lean*(x1-x0)/mean)
	s.Gas += gas * mean
	for j := range rides {
		s.gas[j] += gas * (dmean[j] + r.byGas[j]*mean)
	}
	// Only the ratio of the two counts, as both are scaled to the sum: the levain outgrows the yeast by e^(δ·ψ), δ the
	// difference of their growth.
	delta := bl - by
	ratio := math.Exp(delta * psi)
	levain := s.Levain * ratio
	rt := 1 / (levain + s.Yeast)
	n := x1 * rt
	for j := range rides {
		ddelta := bl*r.byLevain[j] - by*r.byYeast[j]
		dl := s.levain[j]*ratio + levain*(delta*dpsi[j]+psi*ddelta)
		dy := s.yeast[j]
		dn := (dx1[j] - n*(dl+dy)) * rt
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
