package ferment

import (
	"math"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/gasbalance"
)

// common is what a dough and a ripening preferment have in common.
type common struct {
	history     History
	law         Law
	culture     Culture
	kneading    KneadedBy
	kind        gasbalance.Leavening
	extrapolate bool
}

func (b *Bulk) common() common {
	return common{b.History, b.Law, b.Culture, b.Kneading, leavening(b.leavens()), b.Extrapolate}
}

// leavening is the kind of leavening, each with spreads of its own and learned from its own bakes.
func leavening(levain, yeast bool) gasbalance.Leavening {
	switch {
	case levain && yeast:
		return gasbalance.ByBoth
	case yeast:
		return gasbalance.ByYeast
	}
	return gasbalance.ByLevain
}

func (c common) check(p *problems) {
	if c.history.IsZero() {
		p.Required("History", quantity.Tell("ferment.want_temperature_history_between_minus_25",
			"a temperature history between −25 and 60 °C"))
	}
	if c.law.IsZero() {
		p.Required("Law", quantity.Tell("ferment.want_how_clock_reckoned_gas_balance",
			"how the clock is reckoned: the gas balance"))
	}
	if !c.culture.learnedFrom(c.kind) {
		p.Add("Culture", c.culture,
			quantity.Tell("ferment.want_culture_learned_from_same_kind", "a culture learned from the same kind of leavening"),
			quantity.ErrInconsistent)
	}
	kneadings.CheckIfGiven(&p.Problems, "Kneading", c.kneading)
}

// prepared is a checked dough or preferment made ready for arithmetic.
type prepared struct {
	law     *gasbalance.Law
	kind    gasbalance.Leavening
	formula gasbalance.Formula
	atm     float64
	start   gasbalance.State
	need    gasbalance.Need
	belief  gasbalance.Belief
	clock   *gasbalance.Clock
	knots   []knot // the history, with the dough's own heat when that counts
	target  float64
}

// prepare checks a dough and makes it ready.
func (b *Bulk) prepare(needRise bool) (prepared, error) { return b.readied(needRise, true) }

// readied is prepare, which may leave out what is believed of the kitchen.
func (b *Bulk) readied(needRise, believed bool) (prepared, error) {
	p := b.check(needRise)
	if err := p.ErrFor(*b); err != nil {
		return prepared{}, err
	}
	law, err := b.Law.balance()
	if err != nil {
		return prepared{}, err
	}
	c := b.common()
	d := prepared{
		law: law, kind: c.kind, atm: gasbalance.Pressure(b.Altitude.Meters()), target: b.Rise.Fraction(),
		knots: b.History.knots,
		formula: gasbalance.Formula{
			Hydration: b.Hydration.Fraction(), Salt: b.Salt.Points(), Sugar: b.Sugar.Points(), Whole: b.WholeGrain.Fraction(),
			Osmotolerant: b.Yeast.Kind == OsmotolerantYeast,
		},
	}
	if believed || b.OwnHeat != 0 {
		d.know(c)
	}
	if d.start, err = b.cells(law); err != nil {
		return prepared{}, err
	}
	if needRise {
		d.need = law.Need(d.target, d.formula.Hydration, d.atm)
	}
	if b.OwnHeat != 0 {
		d.warm(b)
	}
	return d, nil
}

// cells are those the dough starts with.
func (b *Bulk) cells(law *gasbalance.Law) (gasbalance.State, error) {
	parts := []gasbalance.State{gasbalance.Start(ripe(law, b.Inoculation, b.ColdLevain), b.Yeast.instant())}
	for i := range b.Preferments {
		h := &b.Preferments[i]
		own, err := h.prepare(b.Law)
		if err != nil {
			return gasbalance.State{}, quantity.At(indexed("Preferments", i)+".Of", err)
		}
		s := own.at(own.start, hours(h.Ripened.Duration()))
		parts = append(parts, s.HandOn(h.Flour.Fraction()))
	}
	return gasbalance.Mix(parts...), nil
}

// prepare makes the preferment ready, by the law of its dough unless it has its own.
func (h *HandedOn) prepare(law Law) (prepared, error) {
	of := h.Of
	if of.Law.IsZero() {
		of.Law = law
	}
	return of.prepare()
}

// know takes in what is believed of the kitchen.
func (d *prepared) know(c common) {
	d.belief = c.culture.belief(c.kind, c.kneading).For(d.law.Unusual(d.formula))
	d.clock = d.law.Clock(d.formula, d.belief.Mean)
}

// ripe are the cells that a ripe levain brings, in percent of the dough's flour as instant yeast.
func ripe(law *gasbalance.Law, share quantity.Percent, cold bool) float64 {
	x := share.Fraction() * law.RipeLevain()
	if cold {
		x *= math.Exp(-coldLag)
	}
	return x
}

// coldLag is the growth a culture from the refrigerator loses before it is at work again, h₀ of Baranyi and Roberts
// 1994, where a lag in the end comes to e^(−h₀) of the cells. 0.35 is an hour of a levain at 24 °C, a judgment: plate
// counts of cultures from frozen stock stay slow for six hours.
const coldLag = 0.35

// warm puts the dough's own heat on the history, for as long as it could matter.
func (d *prepared) warm(b *Bulk) {
	limit := hours(Horizon)
	until := limit
	if needed := d.clock.Likely(d.start, d.knots, d.need, limit); needed < limit {
		until = math.Min(limit, 3*needed+24)
	}
	d.knots, _ = d.clock.FollowWarm(d.start, d.knots, gasbalance.Warming{Constant: hours(b.OwnHeat.Duration())}, until)
}

// at is the state at a time of the history.
func (d *prepared) at(from gasbalance.State, hour float64) gasbalance.State {
	return d.clock.AdvanceAlong(from, d.knots, 0, hour)
}

// rise is the likely rise of a state.
func (d *prepared) rise(s *gasbalance.State, celsius float64) float64 {
	return d.law.Rise(d.clock.Gas(s), celsius, d.formula.Hydration, d.atm)
}

// within refuses a history that leaves the law's temperatures before a time, unless extrapolating.
func within(law Law, extrapolate bool, h History, until float64, path string) error {
	lo, hi := h.extremes(until)
	about := law.About()
	const rounding = 1e-6
	if extrapolate || lo >= about.Low-rounding && hi <= about.High+rounding {
		return nil
	}
	var p problems
	var got any = degrees(lo)
	if hi-lo > rounding {
		got = quantity.Tell("ferment.got_temperatures", "%.1f to %.1f", degrees(lo), degrees(hi))
	}
	p.Add(path, got, quantity.Tell("ferment.want_temperatures_unless_extrapolating_allowed",
		"%.0f to %.0f for the %v, unless extrapolating is allowed", degrees(about.Low), degrees(about.High), law),
		quantity.ErrModelRange)
	return p.ErrFor(nil)
}
