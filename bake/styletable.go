package bake

import (
	"time"

	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// styleRow is all that this package knows of a style: one row, one place.
type styleRow struct {
	name  string
	shape Shape // the usual one
	done  doneRow
	bake  reference
	oven  [2]float64 // set at first and when the lid comes off, °C
	steam float64    // lid on or steam in, minutes at most; 0: none
	loss  lossRow
	crumb crumbRow
}

// doneRow is what done means at sea level. Hold is 15 % of a usual bake of the style (arrival near 85 %,
// sources.SCurve), rye at least 10 minutes (sources.RyeHold). The figures are chosen from the published
// ranges of the sources.
type doneRow struct {
	core, from, to float64 // °C
	loss           float64 // least, % of the dough; 0: no criterion
	hold           time.Duration
	confidence     Confidence
	note           string
	sources        []working.Source
}

// lossRow is the usual loss in percent of the dough. Likely 0 is a hearth loaf: its loss depends on its
// size, see hearthPoints, and low and high are below and above it.
type lossRow struct {
	likely, low, high float64
	note              string
}

// crumbRow is the volume of a gram of bread and the porosity of its crumb. Typical values (from memory).
type crumbRow struct{ mlPerGram, porosity float64 }

// Oven settings: 250 to 280 °C for 5 to 10 min, then 200 to 230 °C, rolls 20 to 30 °C lower, Warenkunde Brot
// p. 141; the rest common practice. Steam: the first 15 min; fat and sugar need none, several baking pages.
var styleTable = [...]styleRow{
	LeanHearth: {
		"lean hearth", Round,
		doneRow{96, 93, 99, 10, 6 * time.Minute, Good, "", []working.Source{
			sources.WarenkundeBrot, sources.GuideBakeTimes, sources.ASBProfile, sources.CooksScience,
		}},
		reference{1000, 50, wheatExponent, 500, 1750, 0.2, 0.02, sources.GuideBakeTimes},
		[2]float64{250, 220}, 15, hearthLoss, crumbRow{3.4, 0.75},
	},
	Baguette: {
		"baguette", Thin,
		doneRow{97, 95, 99, 12, 4 * time.Minute, Fair, "the color of the crust decides", []working.Source{
			sources.WarenkundeBrot, sources.CooksScience,
		}},
		reference{350, 23, wheatExponent, 100, 500, 0.2, 0, sources.Practice("a baguette of 350 g of dough bakes 20 to 25 minutes")},
		[2]float64{250, 235}, 10, lossRow{18, 13, 22, "thin and crusty"}, crumbRow{4.5, 0.80},
	},
	Pan: {
		"pan", Tin,
		doneRow{93, 87.8, 96, 9, 5 * time.Minute, Good, "", []working.Source{
			sources.KingArthurThermometer, sources.ASBProfile, sources.CooksScience,
		}},
		reference{1000, 50, wheatExponent, 500, 1750, 0.2, 0.02, sources.GuideBakeTimes},
		[2]float64{220, 200}, 15, lossRow{10, 8.5, 12, "a tin protects the sides"}, crumbRow{4.5, 0.80},
	},
	Enriched: {
		"enriched", Tin,
		doneRow{90, 88, 95, 8, 4 * time.Minute, Fair, "sugar and milk brown the crust long before the core is there", []working.Source{
			sources.GuideBakeTimes, sources.CooksScience,
		}},
		reference{750, 40, wheatExponent, 250, 1500, 0.25, 0, sources.OvenJudgment("rich loaves bake at a lower temperature, about as long as lean ones of less weight")},
		[2]float64{180, 175}, 0, lossRow{9.5, 8, 12, "fat and sugar hold water and the bake is short"}, crumbRow{4.2, 0.78},
	},
	SoftRoll: {
		"soft roll", Ball,
		doneRow{92, 87.8, 96, 8, 3 * time.Minute, Fair, "", []working.Source{sources.KingArthurThermometer, sources.GuideBakeTimes}},
		reference{85, 16, wheatExponent, 40, 150, 0.25, 0, sources.Practice("rolls bake 13 to 20 minutes; crusty ones 20 to 22")},
		[2]float64{200, 190}, 0, lossRow{11, 9, 14, ""}, crumbRow{4.5, 0.80},
	},
	Wholegrain: {
		"wholegrain", Round,
		doneRow{97, 95, 99, 10, 7 * time.Minute, Fair, "", []working.Source{sources.WarenkundeBrot, sources.KingArthurThermometer}},
		reference{1000, 57, 0.48, 500, 1750, 0.2, 0.03, sources.OvenJudgment("between the guide times of wheat and of rye; bran asks for longer")},
		[2]float64{245, 210}, 15, denseLoss, crumbRow{2.8, 0.68},
	},
	Rye: {
		"rye", Round,
		doneRow{98, 96, 99, 10, 10 * time.Minute, Fair, "rye is held hot: the time at the target counts more than the peak", []working.Source{
			sources.KingArthurThermometer, sources.RyeBakeryLoss, sources.RyeHold, sources.GuideBakeTimes,
		}},
		reference{1000, 67.5, ryeExponent, 500, 1750, 0.2, 0.04, sources.GuideBakeTimes},
		[2]float64{250, 200}, 15, denseLoss, crumbRow{2.1, 0.55},
	},
	GlutenFree: {
		"gluten-free", Tin,
		doneRow{97, 96, 99, 8, 7 * time.Minute, Weak, "the starch alone carries the crumb and must set fully", []working.Source{
			sources.KingArthurThermometer,
		}},
		reference{1000, 67.5, ryeExponent, 500, 1750, 0.2, 0.04, sources.GuideBakeTimes},
		[2]float64{230, 200}, 15, denseLoss, crumbRow{2.4, 0.62},
	},
	ParBaked: {
		"par-baked", Round,
		doneRow{90, 90, 99, 0, 0, Good, "the crumb was set in the first bake: a core over 90 °C makes it fresh again", []working.Source{sources.IREKS}},
		reference{300, 11, wheatExponent, 50, 800, 0.3, 0, sources.Practice("par-baked bread bakes 8 to 15 minutes more")},
		[2]float64{210, 210}, 0, lossRow{4, 2, 7, "the second bake only; the first took most of it"}, crumbRow{3.4, 0.75},
	},
}

var (
	hearthLoss = lossRow{0, 2, 5, "wet doughs baked dark lose 16 to 18 %"}
	denseLoss  = lossRow{0, 2, 3, ""}
)

// rowOf is the row of a style that was checked.
func rowOf(s Style) *styleRow {
	if !s.IsValid() {
		return &styleTable[LeanHearth]
	}
	return &styleTable[s]
}
