package dough

import (
	"sort"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// LevainBuild asks how to get from the starter at hand to the ripe levain wanted.
type LevainBuild struct {
	Want      quantity.Mass    `json:"want"`               // ripe levain for the dough
	KeepBack  quantity.Mass    `json:"keep_back,omitzero"` // ripe levain to keep as the next culture, made in addition
	Hydration quantity.Percent `json:"hydration"`          // of the levain, and of every stage on the way
	Starter   Starter          `json:"starter"`            // at hand
	// Inoculation fixes the starter of the last stage. Zero leaves it free within the bounds, and
	// as much of the starter at hand is used as they allow, so that least is left over.
	Inoculation quantity.Percent `json:"inoculation,omitzero"`
	Of          InoculationBasis `json:"of"` // of Inoculation
	// Stages is the number of feedings, 1 to 4; zero takes as few as the bounds allow.
	Stages int `json:"stages"`
	// Least and Most bound the inoculation of new flour in every stage whose inoculation is
	// free. Zero means 10 % (1:10 by flour) and 100 % (1:1).
	Least quantity.Percent `json:"least,omitzero"`
	Most  quantity.Percent `json:"most,omitzero"`
}

// LevainPlan is the way from a starter to a levain.
type LevainPlan struct {
	answer

	// in order; the starter of each later stage is what the one before made
	Stages   []Feeding     `json:"stages"`
	LeftOver quantity.Mass `json:"left_over,omitzero"` // of the starter at hand, not used
	KeepBack quantity.Mass `json:"keep_back,omitzero"` // to take from the ripe levain and keep
	Use      quantity.Mass `json:"use"`                // ripe levain for the dough
	// false: the starter at hand is too little; Missing and Why say so
	Reached bool            `json:"reached"`
	Missing quantity.Mass   `json:"missing,omitzero"` // how much more starter it would take
	Why     working.Message `json:"why,omitzero"`
	in      LevainBuild
	exact   *LevainPlan // that a rounded plan was rounded from
}

const mostStages = 4

// Plan works out the feedings.
//
//	c = F·s·(1 + h_c) ÷ (1 + h_c + s);  flour = F − c ÷ (1 + h_c);  water = F·h − c·h_c ÷ (1 + h_c)
//
// with F = made ÷ (1 + h) all flour of the stage in g, h its hydration, c the starter in g, h_c
// the starter's hydration and s the inoculation of new flour. The stages are chosen so that
// each free one has the same inoculation, within the bounds. Want plus KeepBack is made exactly
// to the microgram. Masses from 0.1 g to 100 t, hydrations 20 % to 1000 %. Too little
// starter is an answer (Reached is false), not an error. Errors: InputError for impossible
// fields; ErrInconsistent when the starter holds more water or flour than the levain may.
// Source: algebra; the bounds are the feeding ratios 1:1:1 to 1:10:10 in print, The Sourdough
// Framework.
func (l LevainBuild) Plan() (LevainPlan, error) {
	if err := l.check(); err != nil {
		return LevainPlan{}, err
	}
	l.defaults()
	made := l.Want.Add(l.KeepBack)
	first, last := 1, mostStages
	if l.Stages > 0 {
		first, last = l.Stages, l.Stages
	}
	possible := func(starters []quantity.Mass) bool {
		_, err := l.feedings(made, starters)
		return err == nil && starters[0].Compare(l.Starter.Mass) <= 0
	}
	n := first
	for n < last && !possible(l.chain(made, n, l.Least)) {
		n++
	}
	plan := LevainPlan{KeepBack: l.KeepBack, Use: l.Want, Reached: true, in: l}
	if least := l.chain(made, n, l.Least); !possible(least) {
		if _, err := l.feedings(made, least); err != nil {
			return LevainPlan{}, err
		}
		plan.Reached = false
		plan.Missing = least[0].Sub(l.Starter.Mass)
		plan.Why = working.Tell("dough.too_little_starter",
			"%v of culture is too little for %v of levain in %d {3|feeding|feedings}: it takes %v",
			readable(l.Starter.Mass), readable(made), n, readable(least[0]))
		return plan, nil
	}
	starters := l.chain(made, n, l.Most)
	if !possible(starters) && l.free(n) {
		low, high := millionths(l.Least), millionths(l.Most)
		// The largest inoculation for which the starter at hand suffices and is not too wet or too stiff.
		k := low + int64(sort.Search(int(high-low), func(i int) bool {
			return !possible(l.chain(made, n, percentOf(low+int64(i)+1)))
		}))
		starters = l.chain(made, n, percentOf(k))
		if more := l.chain(made, n, percentOf(k+1)); more[0].Compare(l.Starter.Mass) > 0 {
			// All of it: the inoculation lies between two millionths of a point.
			if all := append([]quantity.Mass{l.Starter.Mass}, starters[1:]...); possible(all) {
				starters = all
			}
		}
	}
	var err error
	if plan.Stages, err = l.feedings(made, starters); err != nil {
		return LevainPlan{}, err
	}
	plan.LeftOver = l.Starter.Mass.Sub(starters[0])
	return plan, nil
}

// feedings finds flour and water for stages that start from the starters given.
func (l *LevainBuild) feedings(made quantity.Mass, starters []quantity.Mass) ([]Feeding, error) {
	var out []Feeding
	c := Starter{starters[0], l.Starter.Hydration}
	for i := range starters {
		target := made
		if i+1 < len(starters) {
			target = starters[i+1]
		}
		flour := target.Over(wholeFlour.Add(l.Hydration))
		f := Feeding{Starter: c, Flour: flour.Sub(c.Flour()), Water: target.Sub(flour).Sub(c.Water())}
		if f.Flour.Sign() < 0 || f.Water.Sign() < 0 {
			return nil, &quantity.InputError{
				GoPath: "Starter", Got: quantity.Tell("dough.got_at", "%v for %v at %v", c, target, l.Hydration),
				Want: quantity.Tell("dough.want_starter_no_more_water_and",
					"a culture with no more water and flour than the levain, or a smaller inoculation"), Err: quantity.ErrInconsistent,
			}
		}
		out = append(out, f)
		c = Starter{target, l.Hydration}
	}
	return out, nil
}

func (l *LevainBuild) check() error {
	var p quantity.Problems
	low := quantity.Grams(0.1)
	quantity.Check(&p, "Want", l.Want, low, mostDough)
	quantity.Check(&p, "KeepBack", l.KeepBack, quantity.Mass{}, mostDough)
	least := quantity.MustPercent("20 %")
	quantity.Check(&p, "Hydration", l.Hydration, least, mostOfFlour)
	quantity.Check(&p, "Starter.Mass", l.Starter.Mass, quantity.Micrograms(1000), mostDough)
	quantity.Check(&p, "Starter.Hydration", l.Starter.Hydration, least, mostOfFlour)
	basisWords.Check(&p, "Of", l.Of)
	most := mostOfFlour
	if l.Of == OfMix {
		most = quantity.MustPercent("90 %")
	}
	if !l.Inoculation.IsZero() {
		quantity.Check(&p, "Inoculation", l.Inoculation, quantity.MustPercent("0.1 %"), most)
	}
	p.Int("Stages", l.Stages, 0, mostStages)
	if !l.Least.IsZero() {
		quantity.Check(&p, "Least", l.Least, quantity.MustPercent("0.1 %"), mostOfFlour)
	}
	if !l.Most.IsZero() {
		quantity.Check(&p, "Most", l.Most, quantity.MustPercent("0.1 %"), mostOfFlour)
	}
	if p.Err() == nil {
		d := *l
		d.defaults()
		if d.Least.Compare(d.Most) > 0 {
			p.Add("Least", d.Least, quantity.Tell("dough.want_no_more_than_most", "no more than the most, %v", d.Most),
				quantity.ErrInconsistent)
		}
	}
	return p.ErrFor(*l)
}

func (l *LevainBuild) defaults() {
	if l.Least.IsZero() {
		l.Least = quantity.MustPercent("10 %")
	}
	if l.Most.IsZero() {
		l.Most = wholeFlour
	}
}

// free reports whether any of n stages may choose its inoculation.
func (l *LevainBuild) free(n int) bool { return l.Inoculation.IsZero() || n > 1 }

// chain returns the starter that each of n stages starts from so that the last one makes the
// mass wanted, when every free stage has inoculation s of new flour.
func (l *LevainBuild) chain(made quantity.Mass, n int, s quantity.Percent) []quantity.Mass {
	out := make([]quantity.Mass, n)
	for i := n - 1; i >= 0; i-- {
		from := l.Hydration
		if i == 0 {
			from = l.Starter.Hydration
		}
		use, of := s, OfNewFlour
		if i == n-1 && !l.Inoculation.IsZero() {
			use, of = l.Inoculation, l.Of
		}
		made = starterFor(made, l.Hydration, from, use, of)
		out[i] = made
	}
	return out
}

// starterFor returns the starter of hydration from that makes so much levain at a hydration.
func starterFor(made quantity.Mass, hydration, from, s quantity.Percent, of InoculationBasis) quantity.Mass {
	ps, pf := millionths(s), millionths(from)
	if of == OfMix {
		return massRatio(micrograms(made), []int64{ps}, []int64{one})
	}
	// c = F·s·(1 + h_c) ÷ (1 + h_c + s), F = made ÷ (1 + h)
	return massRatio(micrograms(made), []int64{ps, one + pf}, []int64{one + millionths(hydration), one + pf + ps})
}
