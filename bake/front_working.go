package bake

import (
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// degreesC keeps the formula of the front in SI, whoever reads.
const degreesC = working.Celsius

// Working derives the likely loss and the color.
func (b BakedOut) Working() working.Working {
	d := working.Derive(working.Tell("bake.derive_baked_out", "Loss and crust of a bake"))
	if len(b.in.Phases) == 0 {
		return d.Working()
	}
	f := b.front
	film := working.Given("h", working.Tell("bake.symbol_film", "heat that the air gives the crust"),
		working.Amount(f.film, "W/(m² K)", 0))
	k := working.Given("k", working.Tell("bake.symbol_crust_k", "conductivity of the crust"),
		working.Amount(f.crust, "W/(m K)", 2))
	rho := working.Given("ρ", working.Tell("bake.symbol_crumb_water", "water in the crumb"),
		working.Amount(f.water, "kg/m³", 1))
	latent := working.Given("L", working.Tell("bake.symbol_latent", "latent heat of water"),
		working.Amount(latentHeat, "J/kg", 0))
	boiling := working.Given("T_b", working.Tell("bake.symbol_boiling", "local boiling point"),
		working.Amount(f.boiling, degreesC, 2))
	depth := working.Given("s", working.Tell("bake.symbol_no_crust", "depth of the crust before"),
		working.Amount(0, "m", 0))
	oven := boiling
	for i, p := range f.steps {
		oven = working.Given("T_oven", working.Tell("bake.symbol_oven", "oven in phase %d", i+1),
			working.Amount(p.oven, degreesC, 1))
		t := working.Given("t", working.Tell("bake.symbol_dry_time", "dry time of phase %d", i+1),
			working.Amount(p.seconds, "s", 1))
		gap := working.Num(1).Over(film).Plus(depth.Over(k))
		drive := working.Num(2).Times(oven.Minus(boiling)).Times(t).Over(k.Times(rho).Times(latent))
		depth = d.Find(working.Finding{
			Name: working.Tell("bake.step_front", "depth of the crust after dry phase %d", i+1), Symbol: "s",
			By: k.Times(working.Sqrt(gap.ToThe(2).Plus(drive)).Minus(working.Num(1).Over(film))),
			Is: working.Amount(p.to, "m", 6), Source: sources.Zanoni1993,
		})
	}
	area := working.Given("A", working.Tell("bake.symbol_area", "area that dries"), working.Amount(f.area, "m²", 4))
	dough := working.Given("m", working.Tell("bake.symbol_dough_kg", "dough"),
		working.Amount(b.in.Dough.Kilograms(), "kg", 3))
	d.Find(working.Finding{
		Name: working.Tell("bake.step_front_loss", "likely loss in the oven"), Symbol: "loss",
		By: working.Num(100).
			Times(rho).
			Times(area).
			Times(depth).
			Over(dough),
		Is: b.Loss.Likely, Decimals: 2, Source: sources.Zanoni1993,
	})
	if len(f.steps) > 0 {
		biot := film.Times(depth).Over(k)
		d.Find(working.Finding{
			Name: working.Tell("bake.step_surface", "surface of the crust at the end"), Symbol: "T_s",
			By: boiling.Plus(oven.Minus(boiling).Times(biot).Over(working.Num(1).Plus(biot))),
			Is: working.Amount(f.surface, degreesC, 1), Source: sources.Zanoni1993,
		})
	}
	pace := working.Given("f",
		working.Tell("bake.symbol_pace", "browning of this dough, the usual bake of the style being golden brown"),
		working.Amount(b.pace, "", 4))
	exposure := working.Given("I",
		working.Tell("bake.symbol_exposure", "sum of the rate k(T_s) over the dry time, by Simpson's rule"),
		working.Amount(f.exposure, "", 4))
	d.Find(working.Finding{
		Name: working.Tell("bake.step_color", "color difference"), Symbol: "ΔE",
		By: working.Num(burnt).
			Times(working.Num(1).Minus(working.Exp(pace.Times(exposure).Neg()))),
		Is: working.Amount(b.Likely, "", 1), Decimals: 1, Source: sources.ZanoniColor,
		Brief: working.Tell("bake.brief_color", "The crust has gone %.1f of the way from white (0) to burnt (52): %v.",
			b.Likely, shadeOf(b.Likely)),
	})
	return d.Working()
}

// Working derives the color.
func (c CrustColor) Working() working.Working {
	d := working.Derive(working.Tell("bake.derive_color", "Color of a crust"))
	exposure := working.Given(
		"I",
		working.Tell("bake.symbol_exposure_all",
			"sum of 42,000·e^(−64,151/(8.314·T)) over the time, with the browning of the dough"),
		working.Amount(c.exposure, "", 4),
	)
	d.Find(working.Finding{
		Name: working.Tell("bake.step_color", "color difference"), Symbol: "ΔE",
		By: working.Num(burnt).
			Times(working.Num(1).Minus(working.Exp(exposure.Neg()))),
		Is: working.Amount(c.Difference, "", 1), Decimals: 1, Source: sources.ZanoniColor,
		Brief: working.Tell("bake.brief_color", "The crust has gone %.1f of the way from white (0) to burnt (52): %v.",
			c.Difference, shadeOf(c.Difference)),
	})
	return d.Working()
}

// Report tells the loss, the crust and its color.
func (b BakedOut) Report() report.Report {
	return report.Report{
		Headline: b.message(), Cautions: []working.Caution{colorCaution(), FoodCautions()[2]},
		Sections: []report.Section{
			{
				Key:   "baked_out",
				Title: working.Tell("bake.title_baked_out", "The outside of the loaf"),
				Blocks: []report.Block{report.Rows{
					{
						Label: working.Tell("bake.label_oven_loss", "lost in the oven"),
						Value: report.Rounded(b.Loss.Likely, 1),
						Note: working.Tell("bake.next_loss", "%.1f to %.1f (%v)", b.Loss.Low, b.Loss.High,
							b.Loss.Probability),
					},
					{Label: working.Tell("bake.label_crust", "dry crust"), Value: report.Of(b.millimeters())},
					{
						Label: working.Tell("bake.label_surface", "its surface at the end"),
						Value: report.Rounded(b.Surface, 0),
					},
					{
						Label: working.Tell("bake.label_color", "color"), Value: report.Of(b.shade()),
						Note: working.Tell("bake.color_difference", "color difference %.1f", b.Likely),
					},
					{Label: working.Tell("bake.label_dries", "dry for"), Value: report.Of(b.Dries)},
				}},
			},
		},
		RestsOn: []working.Message{
			working.Tell("bake.front_rests", "heat through a growing crust, computed; nothing fitted to loaves"),
			working.Tell("bake.color_rests",
				"the usual bake of the style is taken to be golden brown; tell it the color of one bake of your own"),
		},
		Sources: []working.Source{sources.Zanoni1993, sources.ZanoniColor, sources.Auerman},
	}
}

// Report tells the color.
func (c CrustColor) Report() report.Report {
	return report.Report{Headline: c.message(), Sources: []working.Source{sources.ZanoniColor, sources.Ahrne2007}}
}
