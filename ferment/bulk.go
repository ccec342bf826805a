package ferment

import (
	"time"

	"example.org/maslin/dough/quantity"
)

// Bulk is a fermenting dough: what is in it, how warm it is over time, and how far it is to rise. All shares are of the
// dough's whole flour, that of levain and preferments included.
type Bulk struct {
	// Inoculation is the share of all flour that comes fermented with a ripe levain: 20 % levain at 100 % hydration
	// on 100 % flour is 10/110 = 9.09 %; see [LevainPercent].
	Inoculation quantity.Percent `json:"inoculation,omitzero"`
	// Yeast is commercial yeast put into the dough itself, instead of a levain or with it.
	Yeast Yeast `json:"yeast,omitzero"`
	// Preferments are poolish, biga, sponge, old dough, or a levain that is not quite ripe: each hands its cells on.
	Preferments []HandedOn `json:"preferments,omitempty"`
	// Hydration is the dough's water in percent of its flour: that of milk and eggs counts.
	Hydration quantity.Percent `json:"hydration"`
	Salt      quantity.Percent `json:"salt"`
	// Sugar is what yeast splits at once: table sugar, glucose, honey; not lactose.
	Sugar quantity.Percent `json:"sugar,omitzero"`
	// WholeGrain is the share of the flour that is whole grain.
	WholeGrain quantity.Percent `json:"whole_grain,omitzero"`
	// Rise is how far the dough is to rise: 75 % is three quarters more volume, 100 % is doubled.
	Rise quantity.Percent `json:"rise"`
	// History is the dough's temperature from the end of mixing on.
	History History `json:"history,omitzero"`
	// OwnHeat counts the heat the ferment makes: it is the time in which the dough loses 63 % of an excess to its
	// surroundings. Zero counts none. It is not for a history that was measured in the dough.
	OwnHeat quantity.Elapsed `json:"own_heat,omitzero"`
	// Altitude lowers the air pressure: the same gas makes a larger rise. Zero is sea level.
	Altitude quantity.Length `json:"altitude,omitzero"`
	// Law is how the clock is reckoned: [GasBalance].
	Law Law `json:"law"`
	// Culture is what is known of the culture; the zero value is nothing.
	Culture Culture `json:"culture,omitzero"`
	// Kneading picks the pace learned for doughs kneaded this way.
	Kneading KneadedBy `json:"kneading,omitzero"`
	// ColdLevain says that the levain comes from the refrigerator: the dough starts slowly.
	ColdLevain bool `json:"cold_levain,omitzero"`
	// Enriched doughs hold egg, milk or other perishables: only their cautions differ.
	Enriched bool `json:"enriched,omitzero"`
	// Extrapolate allows temperatures and sugar outside what the law may be used at; the result says so.
	Extrapolate bool `json:"extrapolate,omitzero"`
}

// HandedOn is a preferment that goes into a dough: what it is, how long it ripened, and how much of the dough's flour
// comes in it. Its cells are handed on; its gas is lost in mixing.
type HandedOn struct {
	Flour   quantity.Percent `json:"flour"`
	Of      Ripening         `json:"of"`
	Ripened quantity.Elapsed `json:"ripened"`
}

// LevainPercent is a levain given in percent of the flour added to it.
type LevainPercent struct {
	Levain    quantity.Percent `json:"levain"` // of the other flour
	Hydration quantity.Percent `json:"hydration"`
}

// Prefermented answers: what share of all flour comes with the levain?
//
//	f = L/(1 + H) / (1 + L/(1 + H))
//
// L is the levain in percent of the other flour, H its hydration. Exact to a millionth of a percent. Errors:
// ErrOutOfRange for a levain outside 0 to 1000 % or a hydration outside 30 to 500 %. Source: arithmetic.
func (l LevainPercent) Prefermented() (quantity.Percent, error) {
	var p problems
	quantity.Check(&p.Problems, "Levain", l.Levain, quantity.Percent{}, quantity.NewPercent(1000))
	quantity.Check(&p.Problems, "Hydration", l.Hydration, quantity.NewPercent(30), quantity.NewPercent(500))
	if err := p.ErrFor(l); err != nil {
		return quantity.Percent{}, err
	}
	flour := l.Levain.Fraction() / (1 + l.Hydration.Fraction())
	return quantity.NewPercent(100 * flour / (1 + flour)), nil
}

// Limits of what is believed of an input.
var (
	greatestRise     = quantity.NewPercent(300) // no dough holds more
	leastRise        = quantity.NewPercent(1)
	leastHydration   = quantity.NewPercent(30)
	mostHydration    = quantity.NewPercent(300)
	mostSalt         = quantity.NewPercent(15)
	mostSugar        = quantity.NewPercent(100)
	lowestAltitude   = quantity.Meters(-500)
	highestAltitude  = quantity.Meters(9000)
	whole            = quantity.NewPercent(100)
	leastInoculation = quantity.NewPercent(0.01)
)

const (
	// saltLimit is where sourdough yeast stops, g in 100 g water (Gänzle 1998, abstract).
	saltLimit = 8.0
	// sugarLimit is where the law ends, in percent of the flour; beyond unsureSugar it is extrapolated.
	sugarLimit  = 40.0
	unsureSugar = 25.0
)

// Horizon is how far ahead this package looks for a dough to be ready.
const Horizon = 30 * 24 * time.Hour

// check reports everything that is wrong with a dough's input.
func (b *Bulk) check(needRise bool) (p problems) {
	levain, yeast := b.leavens()
	if !levain && !yeast {
		p.Required("Inoculation", quantity.Tell("ferment.want_0_01_percent_to_100",
			"0.01 %% to 100 %% of the flour fermented with the levain, or commercial yeast"))
	}
	if !b.Inoculation.IsZero() {
		p.percent("Inoculation", b.Inoculation, leastInoculation, whole)
	}
	if b.Yeast != (Yeast{}) {
		b.Yeast.check(&p, "Yeast")
	}
	sum := b.Inoculation.Points()
	for i := range b.Preferments {
		sum += b.Preferments[i].check(&p, i, b.Law)
	}
	if sum > 100+1e-6 && p.Err() == nil {
		p.Add("Preferments", quantity.NewPercent(sum), quantity.Tell("ferment.want_together_levain_at_most_100",
			"together with the levain at most 100 %% of the flour"),
			quantity.ErrInconsistent)
	}
	checkFormula(&p, b.Hydration, b.Salt, b.Sugar, b.WholeGrain, b.Extrapolate)
	if needRise {
		if b.Rise.IsZero() {
			p.Required("Rise", quantity.Tell("ferment.want_to", "%v to %v", leastRise, greatestRise))
		} else {
			p.percent("Rise", b.Rise, leastRise, greatestRise)
		}
	}
	c := b.common()
	c.check(&p)
	if b.OwnHeat != 0 {
		p.Duration("OwnHeat", b.OwnHeat.Duration(), time.Minute, 7*24*time.Hour)
		if b.History.measured {
			p.Add("OwnHeat", b.OwnHeat, quantity.Tell("ferment.want_none_history_was_measured_dough",
				"none: the history was measured in the dough and holds its own heat"),
				quantity.ErrInconsistent)
		}
	}
	quantity.Check(&p.Problems, "Altitude", b.Altitude, lowestAltitude, highestAltitude)
	return p
}

// checkFormula checks what of a recipe the yeast feels.
func checkFormula(p *problems, hydration, salt, sugar, wholeGrain quantity.Percent, extrapolate bool) {
	water := false
	if hydration.IsZero() {
		p.Required("Hydration", quantity.Tell("ferment.want_to_water", "%v to %v water", leastHydration, mostHydration))
	} else {
		water = p.percent("Hydration", hydration, leastHydration, mostHydration)
	}
	if p.percent("Salt", salt, quantity.Percent{}, mostSalt) && water {
		if c := 100 * salt.Fraction() / hydration.Fraction(); c > saltLimit {
			p.Add("Salt", quantity.Tell("ferment.got_which_percent_water", "%v, which is %.1f %% of the water", salt, c),
				quantity.Tell("ferment.want_at_most_8_percent_water",
					"at most 8 %% of the water, where sourdough yeast stops"), errOutOfRange)
		}
	}
	if p.percent("Sugar", sugar, quantity.Percent{}, mostSugar) && sugar.Points() > sugarLimit &&
		!extrapolate {
		p.Add("Sugar", sugar, quantity.Tell("ferment.want_at_most_flour_unless_extrapolating",
			"at most %v of the flour, unless extrapolating is allowed", quantity.NewPercent(sugarLimit)),
			quantity.ErrModelRange)
	}
	p.percent("WholeGrain", wholeGrain, quantity.Percent{}, whole)
}

// check reports what is wrong with a preferment, and the share of the flour it holds.
func (h *HandedOn) check(p *problems, i int, law Law) float64 {
	path := func(field string) string { return indexed("Preferments", i) + "." + field }
	quantity.Check(&p.Problems, path("Flour"), h.Flour, leastInoculation, whole)
	p.Duration(path("Ripened"), h.Ripened.Duration(), 0, Horizon)
	of := h.Of
	if of.Law.IsZero() {
		of.Law = law
	}
	own := of.check()
	p.Join(path("Of"), own.Err())
	if h.Of.Law != law && !h.Of.Law.IsZero() {
		p.Add(path("Of.Law"), h.Of.Law, quantity.Tell("ferment.want_law_dough", "the law of the dough"),
			quantity.ErrInconsistent)
	}
	return h.Flour.Points()
}

// leavens says what raises the dough.
func (b *Bulk) leavens() (levain, yeast bool) {
	levain = !b.Inoculation.IsZero()
	yeast = b.Yeast.Kind != NoYeast
	for i := range b.Preferments {
		levain = levain || !b.Preferments[i].Of.Seed.IsZero()
		yeast = yeast || b.Preferments[i].Of.Yeast.Kind != NoYeast
	}
	return levain, yeast
}
