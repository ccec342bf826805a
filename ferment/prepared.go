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

func (c *common) check(p *problems) {
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

// body is a checked dough or preferment in numbers, whatever is believed of its kitchen.
type body struct {
	law     *gasbalance.Law
	kind    gasbalance.Leavening
	formula gasbalance.Formula
	atm     float64
	start   gasbalance.State
	knots   []knot // the history, with the dough's own heat when that counts
	target  float64
}

// prepared is a body made ready for arithmetic, with what is believed of its kitchen.
type prepared struct {
	body

	need   gasbalance.Need
	belief gasbalance.Belief
	clock  *gasbalance.Clock
}

// prepare checks a dough and makes it ready.
func (b *Bulk) prepare(needRise bool) (d prepared, err error) {
	if err := b.embody(&d.body, needRise); err != nil {
		return prepared{}, err
	}
	d.know(b.common())
	if needRise {
		d.need = d.law.Need(d.target, d.formula.Hydration, d.atm)
	}
	if b.OwnHeat != 0 {
		d.warm(b)
	}
	return d, nil
}

// embody checks a dough and puts it in numbers, but for its own heat.
func (b *Bulk) embody(d *body, needRise bool) error {
	p := b.check(needRise)
	err := p.ErrFor(b)
	if err != nil {
		return err
	}
	if d.law, err = b.Law.balance(); err != nil {
		return err
	}
	d.kind, d.atm, d.knots = leavening(b.leavens()), gasbalance.Pressure(b.Altitude.Meters()), b.History.knots
	d.target = b.Rise.Fraction()
	d.formula = gasbalance.Formula{
		Hydration: b.Hydration.Fraction(), Salt: b.Salt.Points(), Sugar: b.Sugar.Points(), Whole: b.WholeGrain.Fraction(),
		Osmotolerant: b.Yeast.Kind == OsmotolerantYeast,
	}
	d.start, err = b.cells(d.law)
	return err
}

// cells are those the dough starts with.
func (b *Bulk) cells(law *gasbalance.Law) (gasbalance.State, error) {
	own := gasbalance.Start(ripe(law, b.Inoculation, b.ColdLevain), b.Yeast.instant())
	if len(b.Preferments) == 0 {
		return own, nil
	}
	parts := []gasbalance.State{own}
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
	until := math.Min(limit, 3*d.clock.Likely(d.start, d.knots, d.need, limit)+24)
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
func within(law Law, extrapolate bool, knots []knot, until float64, path string) error {
	lo, hi := History{knots: knots}.extremes(until)
	low, high := law.limits()
	const rounding = 1e-6
	if extrapolate || lo >= low-rounding && hi <= high+rounding {
		return nil
	}
	var p problems
	var got any = degrees(lo)
	if hi-lo > rounding {
		got = quantity.Tell("ferment.got_temperatures", "%.1f to %.1f", degrees(lo), degrees(hi))
	}
	p.Add(path, got, quantity.Tell("ferment.want_temperatures_unless_extrapolating_allowed",
		"%.0f to %.0f for the %v, unless extrapolating is allowed", degrees(low), degrees(high), law),
		quantity.ErrModelRange)
	return p.ErrFor(nil)
}
