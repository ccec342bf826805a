package vessel

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// VesselFill is how much dough a tin, basket or bowl takes.
type VesselFill struct {
	answer

	Volume quantity.Volume `json:"volume"` // of the vessel
	// Dough is what it takes, as a range without a probability.
	Dough quantity.Range[quantity.Mass] `json:"dough"`

	asked   asked
	perGram [3]float64 // mL of vessel: most dough, likely, least dough
	loaf    TinLoaf
	says    working.Source
}

func fillOf(v quantity.Volume, perGram [3]float64, of asked, says working.Source) VesselFill {
	g := func(i int) quantity.Mass { return quantity.Grams(v.Milliliters() / perGram[i]) }
	return VesselFill{
		Volume: v, Dough: quantity.Range[quantity.Mass]{Low: g(2), Likely: g(1),
			High: g(0)}, asked: of, perGram: perGram, says: says,
	}
}

// String is the headline of the report.
func (f VesselFill) String() string { return f.Report().Headline.String() }

// Report tells the weight of dough.
func (f VesselFill) Report() report.Report {
	r := report.Report{Headline: f.headline()}
	if f.asked == nothing {
		return r
	}
	r.Sections, r.Sources = []report.Section{measureYours(f.asked)}, []working.Source{f.says}
	if f.asked == forTin {
		r.RestsOn = []working.Message{working.Tell("vessel.for_loaf", "for a loaf of this kind: %v", f.loaf)}
		switch f.loaf {
		case OpenTinWhite:
			r.RestsOn = append(r.RestsOn, working.Tell("vessel.deep_tin",
				"for a tin about as high as it is wide; a lower one, shallow white, takes about a quarter more"))
		case ShallowTinWhite:
			r.RestsOn = append(r.RestsOn, working.Tell("vessel.shallow_tin",
				"a tin lower than 0.7 of its width: the loaf domes high above the rim"))
		case WholesaleWhite, LiddedTin, WholeGrainTin, RyeTin, EnrichedTin, SourdoughTin, HomeMilledTin, GlutenFreeTin:
		}
	}
	return r
}

func (f VesselFill) headline() working.Message {
	low, likely, high := f.Dough.Low, f.Dough.Likely, f.Dough.High
	switch {
	case f.asked == forBasket:
		return working.Tell("vessel.fill_basket", "About %.0f of dough for a proofing basket of %v (%.0f to %.0f)", likely,
			f.Volume, low, high)
	case f.asked == forBowl:
		return working.Tell("vessel.fill_bowl", "About %.0f of dough for a bowl, lined with a cloth, of %v (%.0f to %.0f)",
			likely, f.Volume, low, high)
	case f.asked == forOwnTin, f.asked == forTin && low == high:
		return working.Tell("vessel.fill_tin_exact", "%.0f of dough for a tin of %v", likely, f.Volume)
	case f.asked == forTin:
		return working.Tell("vessel.fill_tin", "About %.0f of dough for a tin of %v (%.0f to %.0f)", likely, f.Volume,
			low, high)
	}
	return working.Tell("vessel.no_fill", "no vessel was asked for")
}

// Working derives the weights.
func (f VesselFill) Working() working.Working {
	d := working.Derive(working.Tell("vessel.derive_fill", "Dough for a vessel"))
	if f.asked == nothing {
		return d.Working()
	}
	v := working.Given("V", working.Tell("vessel.symbol_volume", "volume of the vessel"), f.Volume)
	for i, of := range bounds() {
		per := working.Given("f_"+of.index, perGramMeaning(f.asked, f.loaf), working.Amount(f.perGram[2-i], "mL/g", 4))
		d.Find(working.Finding{
			Name: of.dough, Symbol: "m_" + of.index, By: v.Over(per), Source: f.says,
			Is: [3]quantity.Mass{f.Dough.Low, f.Dough.Likely, f.Dough.High}[i], Decimals: working.WholeNumber,
		})
	}
	return d.Working()
}
