package vessel

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// Density of a mixed dough with the gas of mixing in it, kg/L. Published figures were not found;
// the spread is what bakers' texts give. [from memory]
const (
	densityLow    = 1.05
	densityLikely = 1.12
	densityHigh   = 1.20
)

// MixedDough is a dough as it leaves the mixer.
type MixedDough struct {
	Mass    quantity.Mass `json:"mass"`
	Density float64       `json:"density,omitzero"` // kg/L; zero means 1.12, with 1.05 to 1.20 as range
}

// VesselVolume is how large a vessel a dough takes.
type VesselVolume struct {
	answer

	Dough quantity.Mass `json:"dough"`
	// Volume is the room it takes, or the size of the vessel, as a range without a probability.
	Volume quantity.Range[quantity.Volume] `json:"volume"`
	// Round lists the round baskets that practitioners name by their diameter; for a proof only.
	Round []RoundBasket `json:"round,omitempty"`

	asked   asked
	perGram [3]float64 // mL: least, likely, most
	loaf    TinLoaf
	says    working.Source
}

// asked is which question an answer is of.
type asked int

const (
	nothing asked = iota
	forRoom
	forBasket
	forBowl
	forTin
	forOwnTin
)

// Volume answers how much room a dough takes as it leaves the mixer.
//
//	V = m ÷ ρ
//
// m is the dough, ρ its density in kg/L, 0.5 to 1.4; a density that is given is taken as exact. Dough 1 g to 100 t.
// Errors: ErrOutOfRange. Source: density of mixed dough, from memory.
func (d MixedDough) Volume() (VesselVolume, error) {
	var p quantity.Problems
	quantity.Check(&p, "Mass", d.Mass, quantity.Grams(1), quantity.Kilograms(100_000))
	low, likely, high := densityHigh, densityLikely, densityLow
	if d.Density != 0 {
		p.Float("Density", d.Density, 0.5, 1.4, "kg/L")
		low, likely, high = d.Density, d.Density, d.Density
	}
	if err := p.ErrFor(d); err != nil {
		return VesselVolume{}, err
	}
	return volumeFor(d.Mass, [3]float64{1 / low, 1 / likely, 1 / high}, forRoom, sources.DoughDensity), nil
}

func volumeFor(m quantity.Mass, perGram [3]float64, of asked, says working.Source) VesselVolume {
	ml := func(i int) quantity.Volume { return quantity.Milliliters(m.Grams() * perGram[i]) }
	return VesselVolume{
		Dough: m, Volume: quantity.Range[quantity.Volume]{Low: ml(0), Likely: ml(1), High: ml(2)},
		asked: of, perGram: perGram, says: says,
	}
}

// String is the headline of the report.
func (v VesselVolume) String() string { return v.Report().Headline.String() }

// Report tells the volume, with the published round baskets for a proof.
func (v VesselVolume) Report() report.Report {
	r := report.Report{Headline: v.headline()}
	if v.asked == nothing {
		return r
	}
	r.Sources = []working.Source{v.says}
	if len(v.Round) > 0 {
		r.Sections = append(r.Sections, roundBaskets(v.Round))
		r.Sources = append(r.Sources, sources.BasketSizes)
	}
	r.Sections = append(r.Sections, measureYours(v.asked))
	return r
}

func (v VesselVolume) headline() working.Message {
	exact := v.Volume.Low == v.Volume.High
	likely, m := v.Volume.Likely, v.Dough
	switch {
	case v.asked == forRoom && exact:
		return working.Tell("vessel.room_exact", "%v of dough takes %v as it leaves the mixer", m, likely)
	case v.asked == forRoom:
		return working.Tell("vessel.room", "%v of dough takes about %v as it leaves the mixer (%v to %v)", m, likely,
			v.Volume.Low, v.Volume.High)
	case v.asked == forBasket:
		return working.Tell("vessel.basket", "A proofing basket of about %[2]v for %[1]v of dough (%[3]v to %[4]v)", m,
			likely, v.Volume.Low, v.Volume.High)
	case v.asked == forBowl:
		return working.Tell("vessel.bowl",
			"A bowl lined with a cloth of about %[2]v for %[1]v of dough (%[3]v to %[4]v)", m, likely, v.Volume.Low,
			v.Volume.High)
	case v.asked == forOwnTin, v.asked == forTin && exact:
		return working.Tell("vessel.tin_exact", "A tin of %[2]v for %[1]v of dough", m, likely)
	case v.asked == forTin:
		return working.Tell("vessel.tin", "A tin of about %[2]v for %[1]v of dough (%[3]v to %[4]v)", m, likely,
			v.Volume.Low, v.Volume.High)
	}
	return working.Tell("vessel.no_volume", "no volume was asked for")
}

// measureYours is what to know about the volume of one's own vessel.
func measureYours(of asked) report.Section {
	s := report.Section{Key: "measure"}
	switch of {
	case forTin, forOwnTin, forBasket, forBowl:
		s.Blocks = append(s.Blocks, report.Say(working.Tell("vessel.weigh_water",
			"weigh the water that fills yours to the rim: a gram is a milliliter")))
	case forRoom, nothing:
		s.Blocks = append(s.Blocks, report.Say(working.Tell("vessel.before_rise",
			"this is before the rise: a dough that doubles takes twice as much")))
	}
	return s
}

// Working derives the volumes.
func (v VesselVolume) Working() working.Working {
	d := working.Derive(working.Tell("vessel.derive_volume", "Volume for a dough"))
	if v.asked == nothing {
		return d.Working()
	}
	m := working.Given("m", working.Tell("vessel.symbol_dough", "dough"), v.Dough)
	for i, of := range bounds() {
		f := working.Given("f_"+of.index, perGramMeaning(v.asked, v.loaf), working.Amount(v.perGram[i], "mL/g", 4))
		d.Find(working.Finding{
			Name: of.volume, Symbol: "V_" + of.index, By: m.Times(f), Source: v.says,
			Is: [3]quantity.Volume{v.Volume.Low, v.Volume.Likely, v.Volume.High}[i], Decimals: working.WholeNumber,
		})
	}
	return d.Working()
}

// bound is one of the three values of a range.
type bound struct {
	index         string
	volume, dough working.Message
}

func bounds() [3]bound {
	return [3]bound{
		{
			"least",
			working.Tell("vessel.least_volume", "least volume"),
			working.Tell("vessel.least_dough", "least dough"),
		},
		{"likely", working.Tell("vessel.likely_volume", "likely volume"),
			working.Tell("vessel.likely_dough", "likely dough")},
		{"most", working.Tell("vessel.most_volume", "most volume"), working.Tell("vessel.most_dough", "most dough")},
	}
}

func perGramMeaning(of asked, loaf TinLoaf) working.Message {
	switch of {
	case forTin:
		return working.Tell("vessel.symbol_tin_factor", "tin factor, %v", loaf)
	case forOwnTin:
		return working.Tell("vessel.symbol_own_factor", "tin factor of your own tin")
	case forRoom:
		return working.Tell("vessel.symbol_room", "room of a gram, 1 ÷ density")
	case forBasket, forBowl, nothing:
	}
	return working.Tell("vessel.symbol_per_gram", "volume for each gram")
}
