package bake

import (
	"time"

	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// styleRow is all that this package knows of a style: one row, one place. Its name stands in styles.
type styleRow struct {
	shape Shape // the usual one
	done  doneRow
	bake  reference
	oven  [2]float64 // set at first and when the lid comes off, °C
	steam float64    // lid on or steam in, minutes at most; 0: none
	loss  lossRow
	crumb crumbRow
	warm  bool // eaten warm: cut at 50 °C, not at 35
	keeps keepRow
}

// doneRow is what done means at sea level. The figures are chosen from the published ranges of the sources.
type doneRow struct {
	core, from, to float64 // °C; 0: a probe is no criterion
	loss           float64 // least, % of the dough; 0: no criterion
	// hold is what the bake-out of a usual piece asks for after the core has arrived, for a baker who does not
	// say how long the loaf has been in the oven.
	hold time.Duration
	// hearth: it bakes out in about as long again as the core took to 93 °C. Otherwise the core arrives near
	// 85 % of the bake (sources.SCurve).
	hearth     bool
	confidence Confidence
	note       working.Message
	sources    []working.Source
}

// lossRow is the usual loss in percent of the dough. Likely 0 is a hearth loaf: its loss depends on its
// size, see hearthPoints, and low and high are below and above it.
type lossRow struct {
	likely, low, high float64
	note              working.Message
}

// crumbRow is the volume of a gram of bread and the porosity of its crumb. Typical values (from memory).
type crumbRow struct{ mlPerGram, porosity float64 }

// Oven settings: 250 to 280 °C for 5 to 10 min, then 200 to 230 °C, rolls 20 to 30 °C lower, Warenkunde Brot
// p. 141; the rest common practice. Steam: the first 15 min; fat and sugar need none, common practice, no source.
var styleTable = [...]styleRow{
	LeanHearth: {
		Round,
		doneRow{96, 93, 99, 10, 20 * time.Minute, true, Good, working.Message{}, []working.Source{
			sources.WarenkundeBrot, sources.GuideBakeTimes, sources.ASBProfile, sources.CooksScience,
		}},
		reference{1000, 50, wheatExponent, 500, 1750, 0.2, 0.02, sources.GuideBakeTimes},
		[2]float64{250, 220}, 15, hearthLoss, crumbRow{3.4, 0.75}, false, keepRow{72, 120},
	},
	Baguette: {
		Thin,
		doneRow{97, 95, 99, 12, 4 * time.Minute, false, Fair, colorDecides, []working.Source{
			sources.WarenkundeBrot, sources.CooksScience,
		}},
		reference{
			350,
			23,
			wheatExponent,
			100,
			500,
			0.2,
			0,
			sources.Practice("a baguette of 350 g of dough bakes 20 to 25 minutes"),
		},
		[2]float64{
			250,
			235,
		}, 10, lossRow{18, 13, 29, working.Tell("bake.note_thin_crusty", "thin and crusty")}, crumbRow{4.5, 0.80}, false,
		keepRow{4, 8},
	},
	Pan: {
		Tin,
		doneRow{93, 87.8, 96, 9, 5 * time.Minute, false, Good, working.Message{}, []working.Source{
			sources.KingArthurThermometer, sources.ASBProfile, sources.CooksScience,
		}},
		reference{1000, 50, wheatExponent, 500, 1750, 0.2, 0.02, sources.GuideBakeTimes},
		[2]float64{
			220,
			200,
		}, 15, lossRow{10, 8.5, 12, working.Tell("bake.note_tin_protects", "a tin protects the sides")},
		crumbRow{4.5, 0.80}, false, keepRow{48, 72},
	},
	Enriched: {
		Tin,
		doneRow{
			90,
			88,
			95,
			8,
			4 * time.Minute,
			false,
			Fair,
			working.Tell("bake.note_rich_browns", "sugar and milk brown the crust long before the core is there"),
			[]working.Source{
				sources.GuideBakeTimes, sources.CooksScience,
			},
		},
		reference{
			750,
			40,
			wheatExponent,
			250,
			1500,
			0.25,
			0,
			sources.OvenJudgment("rich loaves bake at a lower temperature, about as long as lean ones of less weight"),
		},
		[2]float64{
			180,
			175,
		}, 0, lossRow{9.5, 8, 12, working.Tell("bake.note_rich_holds", "fat and sugar hold water and the bake is short")},
		crumbRow{4.2, 0.78}, false, keepRow{48, 72},
	},
	SoftRoll: {
		Ball,
		doneRow{
			92,
			87.8,
			96,
			8,
			3 * time.Minute,
			false,
			Fair,
			working.Message{},
			[]working.Source{sources.KingArthurThermometer, sources.GuideBakeTimes},
		},
		reference{
			85,
			16,
			wheatExponent,
			40,
			150,
			0.25,
			0,
			sources.Practice("rolls bake 13 to 20 minutes; crusty ones 20 to 22"),
		},
		[2]float64{200, 190}, 0, lossRow{11, 9, 14, working.Message{}}, crumbRow{4.5, 0.80}, true, keepRow{24, 48},
	},
	Wholegrain: {
		Round,
		doneRow{
			97,
			95,
			99,
			10,
			20 * time.Minute,
			true,
			Fair,
			working.Message{},
			[]working.Source{sources.WarenkundeBrot, sources.KingArthurThermometer},
		},
		reference{
			1000,
			57,
			0.48,
			500,
			1750,
			0.2,
			0.03,
			sources.OvenJudgment("between the guide times of wheat and of rye; bran asks for longer"),
		},
		[2]float64{245, 210}, 15, denseLoss, crumbRow{2.8, 0.68}, false, keepRow{72, 120},
	},
	Rye: {
		Round,
		doneRow{
			98,
			96,
			99,
			10,
			20 * time.Minute,
			true,
			Fair,
			working.Tell("bake.note_rye_held", "rye is held hot: the time at the target counts more than the peak"),
			[]working.Source{
				sources.KingArthurThermometer, sources.RyeBakeryLoss, sources.RyeHold, sources.GuideBakeTimes,
			},
		},
		reference{1000, 67.5, ryeExponent, 500, 1750, 0.2, 0.04, sources.GuideBakeTimes},
		[2]float64{250, 200}, 15, denseLoss, crumbRow{2.1, 0.55}, false, keepRow{168, 240},
	},
	GlutenFree: {
		Tin,
		doneRow{
			97,
			96,
			99,
			8,
			7 * time.Minute,
			false,
			Weak,
			working.Tell("bake.note_starch_carries", "the starch alone carries the crumb and must set fully"),
			[]working.Source{
				sources.KingArthurThermometer,
			},
		},
		reference{1000, 67.5, ryeExponent, 500, 1750, 0.2, 0.04, sources.GuideBakeTimes},
		[2]float64{230, 200}, 15, denseLoss, crumbRow{2.4, 0.62}, false, keepRow{24, 48},
	},
	ParBaked: {
		Round,
		doneRow{
			90,
			90,
			99,
			0,
			0,
			false,
			Good,
			working.Tell("bake.note_par_baked",
				"the crumb was set in the first bake: a core over 90 °C makes it fresh again"),
			[]working.Source{sources.IREKS},
		},
		reference{
			300,
			11,
			wheatExponent,
			50,
			800,
			0.3,
			0,
			sources.Practice("par-baked bread bakes 8 to 15 minutes more"),
		},
		[2]float64{
			210,
			210,
		}, 0, lossRow{4, 2, 7, working.Tell("bake.note_second_bake", "the second bake only; the first took most of it")},
		crumbRow{3.4, 0.75}, false, keepRow{4, 8},
	},
	MixedRye: {
		Round,
		doneRow{
			97,
			95,
			99,
			10,
			20 * time.Minute,
			true,
			Fair,
			working.Message{},
			[]working.Source{sources.WarenkundeBrot, sources.GuideBakeTimes},
		},
		reference{
			1000,
			57,
			0.48,
			500,
			1750,
			0.2,
			0.03,
			sources.OvenJudgment("between the guide times of wheat and of rye"),
		},
		[2]float64{250, 215}, 15, denseLoss, crumbRow{2.8, 0.68}, false, keepRow{120, 168},
	},
	CrustyRoll: {
		Ball,
		doneRow{
			96,
			93,
			99,
			11,
			3 * time.Minute,
			false,
			Fair,
			colorDecides,
			[]working.Source{sources.WarenkundeBrot, sources.GuideBakeTimes},
		},
		reference{85, 20, wheatExponent, 40, 150, 0.2, 0, sources.Practice("crusty rolls bake 20 to 22 minutes")},
		[2]float64{230, 220}, 10, lossRow{13, 10, 18, working.Message{}}, crumbRow{4.5, 0.80}, true, keepRow{4, 8},
	},
	Bagel: {
		Ball,
		doneRow{
			94,
			90.6,
			98.9,
			7,
			2 * time.Minute,
			false,
			Weak,
			working.Tell("bake.note_boiled", "boiling has set the skin; the color decides"),
			[]working.Source{sources.CooksScience},
		},
		reference{
			110,
			20,
			wheatExponent,
			80,
			150,
			0.25,
			0,
			sources.FromMemory("bagels bake 18 to 22 minutes after boiling"),
		},
		[2]float64{
			220,
			220,
		}, 0, lossRow{9, 6, 13, working.Tell("bake.note_from_memory", "from memory")}, crumbRow{2.8, 0.68}, true,
		keepRow{12, 24},
	},
	Focaccia: {
		Sheet,
		doneRow{
			95,
			93,
			98,
			9,
			3 * time.Minute,
			false,
			Weak,
			working.Tell("bake.note_focaccia", "golden on top and underneath"),
			[]working.Source{sources.FromMemory("focaccia: core 93 to 96 °C, 220 to 250 °C, 15 to 25 min")},
		},
		reference{
			800,
			20,
			sheetExponent,
			250,
			3000,
			0.25,
			0,
			sources.FromMemory("focaccia: core 93 to 96 °C, 220 to 250 °C, 15 to 25 min"),
		},
		[2]float64{
			230,
			230,
		}, 0, lossRow{11, 8, 15, working.Tell("bake.note_from_memory", "from memory")}, crumbRow{3.4, 0.75}, true,
		keepRow{12, 24},
	},
	Pizza: {
		Flat,
		doneRow{
			0,
			0,
			0,
			0,
			0,
			false,
			Fair,
			working.Tell("bake.note_pizza",
				"the rim brown in spots, the bottom dry and colored, the cheese melted; a probe finds no middle"),
			[]working.Source{sources.Falciano2023},
		},
		reference{
			250,
			8,
			sheetExponent,
			150,
			600,
			0.4,
			0,
			sources.FromMemory("a thin pizza bakes 5 to 12 min at 250 to 290 °C, 60 to 90 s at 450 °C and more"),
		},
		[2]float64{
			275,
			275,
		}, 0, lossRow{10, 6, 15, working.Tell("bake.note_from_memory", "from memory")}, crumbRow{2.0, 0.55}, true,
		keepRow{2, 12},
	},
	FlatBread: {
		Flat,
		doneRow{
			0,
			0,
			0,
			0,
			0,
			false,
			Fair,
			working.Tell("bake.note_flat",
				"puffed or blistered, with brown spots, and still pliable; a probe finds no middle"),
			[]working.Source{sources.Mansour2025},
		},
		reference{
			100,
			4,
			sheetExponent,
			40,
			300,
			0.5,
			0,
			sources.FromMemory("pita puffs on a stone at 250 to 290 °C within 2 to 5 min"),
		},
		[2]float64{275, 275}, 0, lossRow{15, 8, 20, working.Message{}}, crumbRow{2.0, 0.55}, true, keepRow{6, 24},
	},
}

// colorDecides is for small crusty pieces: their crust is most of them.
var colorDecides = working.Tell("bake.note_color_decides", "the color of the crust decides")

var (
	hearthLoss = lossRow{0, 2, 5, working.Tell("bake.note_dark_wet", "wet doughs baked dark lose 16 to 18 %%")}
	denseLoss  = lossRow{0, 2, 3, working.Message{}}
)

// rowOf is the row of a style that was checked.
func rowOf(s Style) *styleRow {
	if !s.IsValid() {
		return &styleTable[LeanHearth]
	}
	return &styleTable[s]
}
