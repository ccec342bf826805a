package flour

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// GlutenBoost is the input of [AddGluten] and [ReplaceWithGluten].
type GlutenBoost struct {
	Protein quantity.Percent // of the flour
	Target  quantity.Percent // of the mixture
	// Gluten is the protein of the dry gluten; zero means 75.16 % (SR28, NDB 48052). All three on
	// the same moisture basis; see [ConvertBasis].
	Gluten quantity.Percent
	// Flour is the flour's weight now; zero gives percentages only.
	Flour quantity.Mass
}

// GlutenResult is the answer of [AddGluten] and [ReplaceWithGluten].
type GlutenResult struct {
	// PerFlour is, of AddGluten, the gluten for 100 of flour; of ReplaceWithGluten, the share of the
	// mixture that is gluten.
	PerFlour quantity.Percent
	Gluten   quantity.Mass
	Flour    quantity.Mass // what is left of it
	// ExtraWater is about what the gluten takes beside the flour's: 1.5 times its weight.
	ExtraWater quantity.Mass
	// Notes say what to look at: usual amounts, allergens.
	Notes []working.Message

	in      GlutenBoost
	replace bool
	given   bool
}

// AddGluten answers how much dry gluten to add to a flour for a protein target, the flour staying
// as it is.
//
//	x = 100 · (T − P) ÷ (G − T)     for 100 of flour
//
// P, T and G are the proteins of flour, mixture and gluten, on the same moisture basis. The total
// flour grows by the gluten. Protein is not quality: gluten gives strength that a weak or damaged
// flour lacks only in part. It is not [ReplaceWithGluten]. Errors: ErrOutOfRange; ErrInconsistent
// unless P ≤ T < G. Source: algebra of mixtures; gluten SR28.
func AddGluten(in GlutenBoost) (GlutenResult, error) { return glutenBoost(in, false) }

// ReplaceWithGluten answers which share of a flour to replace with dry gluten for a protein target,
// the weight of flour and gluten together staying as it is.
//
//	s = (T − P) ÷ (G − P)
//
// Symbols and errors as in [AddGluten].
func ReplaceWithGluten(in GlutenBoost) (GlutenResult, error) { return glutenBoost(in, true) }

// dryGluten is the protein of vital wheat gluten: 75.16 %, NDB 48052. Source: SR28.
func dryGluten() quantity.Percent { return quantity.MustPercent("75.16 %") }

func glutenBoost(in GlutenBoost, replace bool) (GlutenResult, error) {
	var p quantity.Problems
	if in.Gluten.IsZero() {
		in.Gluten = dryGluten()
	}
	ok := quantity.Check(&p, "Protein", in.Protein, quantity.Percent{}, wholeFlour)
	ok = quantity.Check(&p, "Target", in.Target, quantity.Percent{}, wholeFlour) && ok
	ok = quantity.Check(&p, "Gluten", in.Gluten, quantity.MustPercent("40 %"), wholeFlour) && ok
	quantity.Check(&p, "Flour", in.Flour, quantity.Mass{}, mostDough)
	if ok && in.Target.Compare(in.Protein) < 0 {
		p.Add("Target", in.Target.String(), "at least the flour's own "+in.Protein.String(), quantity.ErrInconsistent)
	}
	if ok && in.Target.Compare(in.Gluten) >= 0 {
		p.Add("Target", in.Target.String(), "less than the gluten's "+in.Gluten.String(), quantity.ErrInconsistent)
	}
	if err := p.Err(); err != nil {
		return GlutenResult{}, err
	}
	r := GlutenResult{in: in, replace: replace, given: true}
	rise := in.Target.Sub(in.Protein)
	if replace {
		r.PerFlour = percentRatio(wholeFlour, rise, in.Gluten.Sub(in.Protein))
		r.Gluten = massPart(in.Flour, rise, in.Gluten.Sub(in.Protein))
		r.Flour = in.Flour.Sub(r.Gluten)
	} else {
		r.PerFlour = percentRatio(wholeFlour, rise, in.Gluten.Sub(in.Target))
		r.Gluten = massPart(in.Flour, rise, in.Gluten.Sub(in.Target))
		r.Flour = in.Flour
	}
	r.ExtraWater = quantity.MustPercent("150 %").Of(r.Gluten)
	if !r.Gluten.IsValid() || !r.ExtraWater.IsValid() {
		p.Add("Target", in.Target.String(), "a target well below the gluten's "+in.Gluten.String(), quantity.ErrOutOfRange)
		return GlutenResult{}, p.Err()
	}
	if !rise.IsZero() {
		r.Notes = append(r.Notes, working.Say("gluten takes about 1.5 times its weight of water beside the flour's"))
	}
	if r.PerFlour.Compare(quantity.MustPercent("10 %")) > 0 {
		r.Notes = append(r.Notes, working.Say("more than the trade uses: 1 to 4 % is usual, up to 10 % in doughs with much bran"))
	}
	r.Notes = append(r.Notes, working.Say("gluten is wheat: it belongs on the list of allergens"))
	return r, nil
}

// massPart is m·num ÷ den, rounded once.
func massPart(m quantity.Mass, num, den quantity.Percent) quantity.Mass {
	a, _ := num.Millionths()
	b, _ := den.Millionths()
	return m.Scale(quantity.Micrograms(a), quantity.Micrograms(b))
}

// String says how much gluten.
func (r GlutenResult) String() string {
	if !r.given {
		return "no gluten"
	}
	text := "add " + r.PerFlour.Text(2) + " of the flour's weight as dry gluten"
	if r.replace {
		text = "replace " + r.PerFlour.Text(2) + " of the flour with dry gluten"
	}
	if !r.Flour.IsZero() {
		text += ": " + r.Flour.Text(quantity.Gram, 0) + " flour, " + r.Gluten.Text(quantity.Gram, 1) +
			" gluten, about " + r.ExtraWater.Text(quantity.Gram, 0) + " more water"
	}
	return text
}

// Working derives the percentage and the weights.
func (r GlutenResult) Working() working.Working {
	w := working.Working{Title: "Dry gluten for a protein target"}
	if !r.given {
		return w
	}
	in := r.in
	less, symbol := in.Target, "T"
	if r.replace {
		less, symbol = in.Protein, "P"
	}
	w.Steps = append(w.Steps, working.Step{
		Name: "gluten in percent", Symbol: "x", Formula: "100 × (T − P) ÷ (G − " + symbol + ")",
		Where: []working.Binding{
			{Symbol: "T", Meaning: "protein wanted", Value: in.Target.String()},
			{Symbol: "P", Meaning: "protein of the flour", Value: in.Protein.String()},
			{Symbol: "G", Meaning: "protein of the gluten", Value: in.Gluten.String()},
		},
		Numbers: "100 × (" + points(in.Target) + " − " + points(in.Protein) + ") ÷ (" + points(in.Gluten) + " − " + points(less) + ")",
		Value:   r.PerFlour.String(), Source: sources.GlutenAlgebra,
	})
	if in.Flour.IsZero() {
		return w
	}
	w.Steps = append(w.Steps, working.Step{
		Name: "gluten", Symbol: "m_gluten", Formula: "m × (T − P) ÷ (G − " + symbol + ")",
		Where: []working.Binding{{Symbol: "m", Meaning: "flour", Value: in.Flour.String()}},
		Numbers: bareNumber(in.Flour.String()) + " × (" + points(in.Target) + " − " +
			points(in.Protein) + ") ÷ (" + points(in.Gluten) + " − " + points(less) + ")",
		Value: r.Gluten.String(), Source: sources.GlutenAlgebra,
	}, working.Step{
		Name: "extra water", Symbol: "m_water", Formula: "k × m_gluten",
		Where:   []working.Binding{{Symbol: "k", Meaning: "water for each gram of gluten", Value: decimals(waterForGluten, 1) + " (no unit)"}},
		Numbers: decimals(waterForGluten, 1) + " × " + bareNumber(r.Gluten.String()), Value: r.ExtraWater.String(),
		Note: "about; the dough decides", Source: sources.GlutenWater,
	})
	return w
}
