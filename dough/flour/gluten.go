package flour

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// GlutenBoost is a flour that is to have more protein by dry gluten.
type GlutenBoost struct {
	Protein quantity.Percent `json:"protein"` // of the flour
	Target  quantity.Percent `json:"target"`  // of the mixture
	// Gluten is the protein of the dry gluten; zero means 75.16 % (SR28, NDB 48052). All three on
	// the same moisture basis; see [FlourBasis].
	Gluten quantity.Percent `json:"gluten,omitzero"`
	// Flour is the flour's weight now; zero gives percentages only.
	Flour quantity.Mass `json:"flour,omitzero"`
}

// GlutenDose is one way to take dry gluten.
type GlutenDose struct {
	// Percent is of the flour's weight when the gluten is added, and of the mixture when it takes flour's place.
	Percent quantity.Percent `json:"percent"`
	Gluten  quantity.Mass    `json:"gluten,omitzero"`
	Flour   quantity.Mass    `json:"flour,omitzero"` // beside it
	// ExtraWater is about what the gluten takes beside the flour's: 1.5 times its weight.
	ExtraWater quantity.Mass `json:"extra_water,omitzero"`
}

// GlutenDoses is the answer of [GlutenBoost.Doses].
type GlutenDoses struct {
	answer

	// Added is to the flour as it is; InPlace keeps the weight of flour and gluten together.
	Added   GlutenDose `json:"added"`
	InPlace GlutenDose `json:"in_place"`
	// Notes say what to look at: usual amounts, water, allergens.
	Notes []working.Message `json:"notes"`

	in    GlutenBoost
	given bool
}

// dryGluten is the protein of vital wheat gluten: 75.16 %, NDB 48052. Source: SR28.
func dryGluten() quantity.Percent { return quantity.MustPercent("75.16 %") }

// waterForGluten is how much water dry gluten takes beside the flour's: 1.5 times its weight.
func waterForGluten() quantity.Percent { return quantity.MustPercent("150 %") }

// Doses answers how much dry gluten brings a flour to a protein.
//
//	added:     x = 100 · (T − P) ÷ (G − T)     for 100 of flour
//	in place:  s = 100 · (T − P) ÷ (G − P)     of 100 of the mixture
//
// P, T and G are the proteins of flour, mixture and gluten, on the same moisture basis. Protein is not quality: gluten
// gives strength that a weak or damaged flour lacks only in part. Errors: ErrOutOfRange; ErrInconsistent
// unless P ≤ T < G. Source: algebra of mixtures; gluten SR28.
func (in GlutenBoost) Doses() (GlutenDoses, error) {
	var p quantity.Problems
	given := in
	if in.Gluten.IsZero() {
		in.Gluten = dryGluten()
	}
	ok := quantity.Check(&p, "Protein", in.Protein, quantity.Percent{}, wholeFlour)
	ok = quantity.Check(&p, "Target", in.Target, quantity.Percent{}, wholeFlour) && ok
	ok = quantity.Check(&p, "Gluten", in.Gluten, quantity.MustPercent("40 %"), wholeFlour) && ok
	quantity.Check(&p, "Flour", in.Flour, quantity.Mass{}, mostDough)
	if ok && in.Target.Compare(in.Protein) < 0 {
		p.Add("Target", in.Target, quantity.Tell("flour.want_at_least_flours_own", "at least the flour's own %v",
			in.Protein), quantity.ErrInconsistent)
	}
	if ok && in.Target.Compare(in.Gluten) >= 0 {
		p.Add("Target", in.Target, quantity.Tell("flour.want_less_than_glutens", "less than the gluten's %v", in.Gluten),
			quantity.ErrInconsistent)
	}
	if err := p.ErrFor(given); err != nil {
		return GlutenDoses{}, err
	}
	r := GlutenDoses{Added: in.dose(in.Target), InPlace: in.dose(in.Protein), in: in, given: true}
	r.Added.Flour, r.InPlace.Flour = in.Flour, in.Flour.Sub(r.InPlace.Gluten)
	if !r.Added.Gluten.IsValid() || !r.Added.ExtraWater.IsValid() {
		p.Add("Target", in.Target,
			quantity.Tell("flour.want_target_well_below_glutens", "a target well below the gluten's %v", in.Gluten),
			quantity.ErrOutOfRange)
		return GlutenDoses{}, p.ErrFor(given)
	}
	if in.Target != in.Protein {
		r.Notes = append(r.Notes, working.Tell("flour.gluten_water",
			"gluten takes about 1.5 times its weight of water beside the flour's"))
	}
	if r.Added.Percent.Compare(quantity.MustPercent("10 %")) > 0 {
		r.Notes = append(r.Notes, working.Tell("flour.much_gluten",
			"more than the trade uses: 1 to 4 %% is usual, up to 10 %% in doughs with much bran"))
	}
	r.Notes = append(r.Notes, working.Tell("flour.gluten_allergen",
		"gluten is wheat: it belongs on the list of allergens"))
	return r, nil
}

// dose is the gluten for a rise of protein over what the gluten has more than so much.
func (in GlutenBoost) dose(less quantity.Percent) GlutenDose {
	rise, more := in.Target.Sub(in.Protein), in.Gluten.Sub(less)
	d := GlutenDose{Percent: percentRatio(wholeFlour, rise, more), Gluten: massPart(in.Flour, rise, more)}
	d.ExtraWater = waterForGluten().Of(d.Gluten)
	return d
}

// String is the headline of the report.
func (r GlutenDoses) String() string { return r.Report().Headline.String() }

// Report tells both ways.
func (r GlutenDoses) Report() report.Report {
	if !r.given {
		return report.Report{Headline: working.Tell("flour.no_gluten", "no gluten")}
	}
	t := report.Grid{Key: "doses", Columns: []report.GridColumn{
		{Key: "way"}, {Key: "percent", Title: working.Tell("flour.column_gluten", "gluten"), Right: true},
	}}
	weighs := !r.in.Flour.IsZero()
	if weighs {
		t.Columns = append(t.Columns,
			report.GridColumn{Key: "gluten", Title: working.Tell("flour.column_weight", "weight"), Right: true},
			report.GridColumn{Key: "flour", Title: working.Tell("flour.column_flour", "flour"), Right: true},
			report.GridColumn{Key: "extra_water", Title: working.Tell("flour.column_water", "water more"), Right: true})
	}
	for _, way := range []struct {
		name working.Message
		dose GlutenDose
	}{
		{working.Tell("flour.added", "added"), r.Added},
		{working.Tell("flour.in_place", "in its place"), r.InPlace},
	} {
		row := []report.Cell{report.Of(way.name), report.Rounded(way.dose.Percent, 2)}
		if weighs {
			row = append(row, report.Rounded(way.dose.Gluten, 1), report.Rounded(way.dose.Flour, 1),
				report.Rounded(way.dose.ExtraWater, 0))
		}
		t.Rows = append(t.Rows, row)
	}
	return report.Report{
		Headline: working.Tell("flour.gluten", "Dry gluten from %.1f to %.1f protein: %.2f of the flour's weight",
			r.in.Protein, r.in.Target, r.Added.Percent),
		Sections: []report.Section{{Key: "doses", Blocks: []report.Block{t, report.List(r.Notes)}}},
		Sources:  []working.Source{sources.GlutenAlgebra, sources.GlutenWater},
	}
}

// Working derives the percentages and the weights.
func (r GlutenDoses) Working() working.Working {
	d := working.Derive(working.Tell("flour.derive_gluten", "Dry gluten for a protein target"))
	if !r.given {
		return d.Working()
	}
	target := working.Given("T", working.Tell("flour.symbol_target", "protein wanted"), r.in.Target)
	protein := working.Given("P", working.Tell("flour.symbol_protein", "protein of the flour"), r.in.Protein)
	gluten := working.Given("G", working.Tell("flour.symbol_gluten", "protein of the gluten"), r.in.Gluten)
	rise := working.Num(100).Times(target.Minus(protein))
	placed := d.Find(working.Finding{
		Name: working.Tell("flour.percent_in_place",
			"gluten in place of flour, of the mixture"), Symbol: "s", By: rise.Over(gluten.Minus(protein)),
		Is: r.InPlace.Percent, Decimals: 2, Source: sources.GlutenAlgebra,
	})
	added := d.Find(working.Finding{
		Name: working.Tell("flour.percent_added",
			"gluten added, of the flour"), Symbol: "x", By: rise.Over(gluten.Minus(target)),
		Is: r.Added.Percent, Decimals: 2, Source: sources.GlutenAlgebra,
	})
	if r.in.Flour.IsZero() {
		return d.Working()
	}
	m := working.Given("m", working.Tell("flour.symbol_flour", "flour"), r.in.Flour)
	k := working.Given("k", working.Tell("flour.symbol_water", "water for each gram of gluten"), 1.5)
	weigh := func(share working.Expr, index string, dose GlutenDose, name, water working.Message) {
		w := d.Find(working.Finding{
			Name: name, Symbol: "m_" +
				index, By: m.Times(share.Share()), Is: dose.Gluten, Decimals: 1, Source: sources.GlutenAlgebra,
		})
		d.Find(working.Finding{
			Name: water, Symbol: "w_" + index, By: k.Times(w), Is: dose.ExtraWater, Decimals: 1, Source: sources.GlutenWater,
			Note: working.Tell("flour.dough_decides", "about; the dough decides"),
		})
	}
	weigh(placed, "in_place", r.InPlace, working.Tell("flour.weight_in_place", "gluten in place of flour"),
		working.Tell("flour.water_in_place", "more water with it"))
	weigh(added, "added", r.Added, working.Tell("flour.weight_added", "gluten added"),
		working.Tell("flour.water_added", "more water with it, added"))
	return d.Working()
}
