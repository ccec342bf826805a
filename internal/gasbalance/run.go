package gasbalance

import (
	"example.org/maslin/internal/numeric"
)

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
	c := l.at(pace, u)
	return &c
}

func (l *Law) at(pace float64, u Vector) Clock {
	return Clock{
		law: l, pace: pace * numeric.Exp(u[Pace]), amplitude: numeric.Exp(u[Amplitude]),
		slope: u[Slope], coldEnd: u[ColdEnd], mixture: u[Mixture], growth: numeric.Exp(u[Growth]),
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
		f *= numeric.Exp(c.slope*by + c.coldEnd*ck)
	}
	r := run{law: l, gas: l.Gas * f * mean.gas, by: [common]float64{1, by, ck}}
	grown := l.Growth * f
	ours, ours2, theirs, theirs2 := l.mixed(mean), l.mixed(apart), mean.yeast, apart.yeast
	// What is out of step: Δr_q/avg(r_q) − Δg/avg(g).
	lean := func(g, apartG float64) {
		const least = 1e-6 // growth too small to be out of step with anything
		switch {
		case !mend || !(g > least):
		case r.gas > 0:
			r.lean = (apart.gas*g - apartG*mean.gas) / (12 * mean.gas * g)
		default:
			r.lean = -apartG / (12 * g)
		}
	}
	switch {
	case s.Yeast == 0:
		lean(ours, ours2)
		r.levainGrowth(c, grown, ours, mean)
		r.single(s, &s.Levain, &s.levain, r.levain, r.kappa, 0)
	case s.Levain == 0:
		lean(theirs, theirs2)
		r.single(s, &s.Yeast, &s.yeast, grown*theirs*c.growth, 0, 1)
	default:
		r.levainGrowth(c, grown, ours, mean)
		r.yeast = grown * theirs * c.growth
		r0 := 1 / x0
		if mend {
			x := s.Levain * r0
			lean(x*ours+(1-x)*theirs, x*ours2+(1-x)*theirs2)
			d := r.levain - r.yeast
			r.drift = d * d * x * (1 - x) * max(0, 1-x0*l.perCapacity) / 2
		}
		r.both(s, x0, r0)
	}
}

// common is how many unknowns move the rates of gas and of both leavenings alike: pace, slope and cold end.
const common = 3

// run is one run in numbers: q₂₇·A, the growth of each leavening, the two terms of [Clock.stride], and how the log of
// every rate goes with the common unknowns, and that of the levain's growth with its mixture.
type run struct {
	law           *Law
	gas           float64
	levain, yeast float64
	lean, drift   float64
	by            [common]float64
	kappa         float64
}

// mixed is a levain's share of the curves.
func (l *Law) mixed(v three) float64 { return (1-l.Mixture)*v.humilis + l.Mixture*v.yeast }

// leastMixed is the growth of a levain below which its mixture is not asked for.
const leastMixed = 1e-9

// levainGrowth is B of a levain and κ = dln B/dw, how its growth goes with the mixture of its yeasts.
func (r *run) levainGrowth(c *Clock, grown, g float64, mean three) {
	if g > leastMixed {
		r.kappa = (mean.yeast - mean.humilis) / g
		if c.mixture != 0 {
			g *= numeric.Exp(c.mixture * r.kappa)
		}
	}
	r.levain = grown * g
}

// noGrowth is M below which cells are taken not to grow over a run.
const noGrowth = 1e-9

// single is a run of one leavening that grows by m, the log of which goes with the unknowns of its own by those two
// numbers.
func (r *run) single(s *State, cells *float64, d *[rides]float64, m, mixture, growth float64) {
	x0 := *cells
	capacity := r.law.Capacity
	if !(x0 < capacity && m > noGrowth) {
		s.Gas += r.gas * x0
		for j := range rides {
			s.gas[j] += r.gas * d[j]
		}
		for j, by := range r.by {
			s.gas[j] += r.gas * by * x0
		}
		return
	}
	rc := r.law.perCapacity
	share := x0 * rc
	e := numeric.Expm1(m)
	u1 := share * e
	ru, rm := 1/(1+u1), 1/m
	x1 := x0 * (1 + e) * ru
	mean := capacity * numeric.Log1p(u1) * rm
	gas := r.gas * (1 + r.lean*(x1-x0)/mean)
	s.Gas += gas * mean
	// All derivatives are linear in those before and in how the rates go with the unknown.
	crowded := 1 - share*(1+e)*ru
	gasBy := gas * (capacity*(1-crowded) - mean)
	gasBefore, gasRates := gas*e*ru*rm, gasBy+gas*mean
	before, growing := x1/x0-x1*rc*e*ru, x1*m*crowded
	for j, by := range r.by {
		s.gas[j] += gasBefore*d[j] + gasRates*by
		d[j] = before*d[j] + growing*by
	}
	s.gas[common] += gasBefore*d[common] + gasBy*mixture
	d[common] = before*d[common] + growing*mixture
	s.gas[common+1] += gasBefore*d[common+1] + gasBy*growth
	d[common+1] = before*d[common+1] + growing*growth
	*cells = x1
}

// both is a run of levain and yeast together.
func (r *run) both(s *State, x0, r0 float64) {
	capacity, bl, by := r.law.Capacity, r.levain, r.yeast
	partLevain, partYeast := s.Levain*bl*r0, s.Yeast*by*r0
	m := partLevain + partYeast + r.drift
	delta := bl - by
	// The derivatives of the mean cells, of X₁ and of ψ by X₀ and by M.
	x1, mean, psi := x0, x0, 0.0
	meanX, meanM, endX, endM, psiX, psiM := 1.0, 0.0, 1.0, 0.0, 0.0, 0.0
	if x0 < capacity && m > noGrowth {
		rc := r.law.perCapacity
		share := x0 * rc
		e := numeric.Expm1(m)
		u1 := share * e
		ru, rm := 1/(1+u1), 1/m
		logU := numeric.Log1p(u1)
		x1 = x0 * (1 + e) * ru
		mean = capacity * logU * rm
		psi = (m - logU) * rm
		crowded := 1 - share*(1+e)*ru
		pressed := rc * e * ru
		meanX, meanM = e*ru*rm, (capacity*(1-crowded)-mean)*rm
		endX, endM = x1*(r0-pressed), x1*crowded
		psiX, psiM = -pressed*rm, (crowded-psi)*rm
	}
	gas := r.gas * (1 + r.lean*(x1-x0)/mean)
	s.Gas += gas * mean
	meanX, meanM = gas*meanX, gas*meanM
	// Only the ratio of the two counts, as both are scaled to the sum: the levain outgrows the yeast by e^(δ·ψ), δ the
	// difference of their growth.
	ratio := numeric.Exp(delta * psi)
	levain := s.Levain * ratio
	rt := 1 / (levain + s.Yeast)
	n := x1 * rt
	psiX, psiM = levain*delta*psiX, levain*delta*psiM
	levainM, yeastM := (bl-m)*r0, (by-m)*r0
	bySlope, byColdEnd := r.by[1], r.by[2]
	alike, apart := partLevain+partYeast, levain*psi*delta
	dm := [rides]float64{alike, alike * bySlope, alike * byColdEnd, partLevain * r.kappa, partYeast}
	outgrows := [rides]float64{apart, apart * bySlope, apart * byColdEnd, levain * psi * bl * r.kappa, -levain * psi * by}
	for j := range rides {
		dl, dy := s.levain[j], s.yeast[j]
		dx, dm := dl+dy, dm[j]+dl*levainM+dy*yeastM
		s.gas[j] += meanX*dx + meanM*dm
		dl = dl*ratio + psiX*dx + psiM*dm + outgrows[j]
		dn := (endX*dx + endM*dm - n*(dl+dy)) * rt
		s.levain[j] = dl*n + levain*dn
		s.yeast[j] = dy*n + s.Yeast*dn
	}
	made := gas * mean
	s.gas[0] += made
	s.gas[1] += made * bySlope
	s.gas[2] += made * byColdEnd
	s.Levain, s.Yeast = levain*n, s.Yeast*n
}
