package sources

import "example.org/maslin/dough/working"

// References of the mixing room: water temperature, friction, ice, mixer capacity.
var (
	// SFBIWater is the course text behind the factor method with its worked example.
	SFBIWater = working.Source{
		Key:    "SFBI Artisan I",
		Author: "San Francisco Baking Institute",
		Title:  "Artisan I course text",
		Where:  "desired dough temperature, read second-hand",
	}
	// NavyFriction is the procedure that finds a friction factor from one measured batch.
	NavyFriction = working.Source{
		Key:    "NAVEDTRA 14163",
		Author: "US Navy",
		Title:  "Mess Management Specialist",
		Where:  "ch. 8, General Breadmaking Procedures",
	}
	// PizzaTodayWater gives a worked example and the field rule of 5 °F of water for 2 °F of dough.
	PizzaTodayWater = working.Source{
		Key:    "Pizza Today 2018",
		Author: "Pizza Today",
		Title:  "Pizza Today",
		Year:   2018,
		Where:  "June, pp. 28-29",
	}
	// WihlfahrtWater is an early printed example of the factor method.
	WihlfahrtWater = working.Source{
		Key:    "Wihlfahrt",
		Author: "Wihlfahrt",
		Title:  "A Treatise on Baking",
		Where:  "The Temperature of the Bread Dough",
	}
	// BaseTemperature is the French form of the factor method.
	BaseTemperature = practice("base temperature", "the base temperature, less flour and room, is the water")
	// FrictionIsRise is the relation between a friction factor and the rise of the dough itself.
	FrictionIsRise = working.Source{
		Key:      "n·rise",
		Title:    "follows from the factor method: with every factor at T the dough ends at T + friction ÷ n",
		Standing: working.Computed,
	}
	// IceTable is a bakery supplier's table of ice per pound of ingredient water.
	IceTable = practice("ice table", "bakery suppliers' tables of ice, in pounds of ice for a pound of ingredient water")
	// IceHeat is the heat balance of melting ice in water.
	IceHeat = working.Source{
		Key:    "latent heat",
		Author: "GNU Project",
		Title:  "GNU units 2.22, definitions file",
		Where:  "latent heat of ice 6.01 kJ/mol (333.6 kJ/kg), water 4.186 kJ/kg·K",
	}
	// YeastHeat says where yeast begins to suffer in water.
	YeastHeat = working.Source{
		Key:    "TM 10-412",
		Author: "US Armed Forces",
		Title:  "Armed Forces Recipe Service",
		Year:   2003,
		Where:  "yeast suspension water 105 to 110 °F, harmful above 110 °F",
	}
	// CooksFriction lists friction factors by way of mixing.
	CooksFriction = working.Source{
		Key:    "Cook's Illustrated",
		Author: "Cook's Illustrated",
		Title:  "How-to 5818",
		Where:  "hand 5 °F, stand mixer 20 °F, food processor 25 °F",
	}
	// FrenchRise is the rise per minute of mechanical kneading.
	FrenchRise = practice("rise per minute", "kneading by machine warms a dough by 0.3 to 0.5 °C a minute")
	// HamelmanFriction is what Hamelman gives for planetary and spiral mixers.
	HamelmanFriction = working.Source{
		Key:      "Hamelman friction",
		Author:   "Hamelman",
		Title:    "Bread",
		Year:     2004,
		Where:    "24 to 28 °F for planetary and spiral mixers at an improved mix",
		Standing: working.FromMemory,
	}
	// HamelmanSummary is a second-hand summary of Hamelman's figures.
	HamelmanSummary = practice("Hamelman, summarized",
		"friction factors of hand, spiral and planetary mixing as bakers pass them on")
	// PlanetaryManuals are operators' manuals of planetary mixers, which state dough capacity by
	// absorption ratio. Makers are not named here.
	PlanetaryManuals = working.Source{
		Key:    "planetary manuals",
		Author: "makers of planetary mixers",
		Title:  "Operators' manuals, capacity charts by absorption ratio",
		Where: "manual archives easymanua.ls p. 8 and p. 23; manualshive 1777493, 1777512, " +
			"3430620, 3038650",
	}
	// IREKSMixing gives kneading times.
	IREKSMixing = working.Source{
		Key:    "IREKS",
		Author: "IREKS",
		Title:  "Compendium of Baking Technology",
		Where:  "mixing process",
		URL:    "https://www.ireks-kompendium.com/en/",
	}
	// KingArthurMixing gives spiral mixing times.
	KingArthurMixing = working.Source{
		Key:    "KAF formulas",
		Author: "King Arthur Flour",
		Title:  "Professional formulas",
		Where:  "mixing times of spiral mixers",
		URL:    "https://www.bakemag.com/articles/10809",
	}
	// Windowpane is the trade's test of gluten development.
	Windowpane = practice("windowpane",
		"short, improved and intense development, told by stretching a piece of dough to a window")
)

// References of the heat balance.
var (
	// GeankoplisHeats is the handbook table of specific heats.
	GeankoplisHeats = working.Source{
		Key:    "Geankoplis",
		Author: "Geankoplis",
		Title:  "Transport Processes and Separation Process Principles, 4th ed.",
		Where:  "appendix A.4",
	}
	// GNUUnits is the definitions file of GNU units.
	GNUUnits = working.Source{
		Key:    "GNU units",
		Author: "GNU Project",
		Title:  "GNU units 2.22, definitions file",
		Where:  "water",
	}
	// ChapatiHeat is the equation for the specific heat of a flat-bread dough.
	ChapatiHeat = working.Source{
		Key:   "chapati",
		Title: "Specific heat of Indian unleavened flat bread (chapati)",
		Where: "abstract: 2476.56 + 23.56 M − 3.79 T J/(kg·K)",
	}
	// FlourHydration is the heat that flour gives off when it is wetted.
	FlourHydration = working.Source{
		Key:    "heat of hydration",
		Author: "Baking Business",
		Title:  "Dictionary, and article 35816",
		Where:  "6.5 BTU per lb of flour of 11 to 12 % water",
	}
	// CengelHydration is a textbook problem with the heat of hydration counted on the dough.
	CengelHydration = working.Source{
		Key:    "Cengel and Boles 5-157",
		Author: "Cengel and Boles",
		Title:  "Thermodynamics, 8th ed.",
		Where:  "problem 5-157",
	}
	// MixingWork is the work put into a dough by high-speed mixing.
	MixingWork = working.Source{
		Key:    "mixing work",
		Author: "Baking Business",
		Title:  "Dictionary: high-speed mixing",
		Where:  "5 Wh per lb of dough in less than 5 minutes (11 Wh/kg)",
	}
	// HeatBalance is the balance of heats in the bowl.
	HeatBalance = working.Source{
		Key:      "heat balance",
		Title:    "heat given off equals heat taken up, with constant specific heats",
		Standing: working.Computed,
	}
	// ConjugateRegression is the estimate of the mixer's coefficients.
	ConjugateRegression = working.Source{
		Key:    "Gelman, regression",
		Author: "Gelman et al.",
		Title:  "Bayesian Data Analysis",
		Year:   2013,
		Where:  "chapter 14, conjugate normal regression",
	}
	// Fieller is the interval of a ratio.
	Fieller = working.Source{
		Key:      "Fieller",
		Author:   "Fieller",
		Title:    "Some problems in interval estimation, Journal of the Royal Statistical Society B 16:175",
		Year:     1954,
		Standing: working.FromMemory,
	}
)

// References of kneading and of household machines. Makers of household machines are not named here.
var (
	// Hlynka is how temperature and salt move the development time and the absorption of a dough.
	Hlynka = working.Source{
		Key:    "Hlynka 1962",
		Author: "Hlynka",
		Title: "Influence of temperature, speed of mixing, and salt on some rheological " +
			"properties of dough in the farinograph, Cereal Chemistry 39:286-303",
		Year:  1962,
		Where: "abstract; one flour",
	}
	// KilbornTipples is the finding that a dough needs both a least intensity and a least work of mixing.
	KilbornTipples = working.Source{
		Key:    "Kilborn and Tipples 1972",
		Author: "Kilborn and Tipples",
		Title:  "Factors affecting mechanical dough development, Cereal Chemistry 49:34-47",
		Year:   1972,
		Where:  "abstract",
	}
	// LaMuehla gives times of plain bread dough in a household mixer.
	LaMuehla = working.Source{
		Key:    "La Muehla",
		Author: "La Muehla",
		Title:  "Maschinelles Mischen und Kneten",
		Where:  "plain bread: 2 to 4 minutes mixing, 6 to 8 kneading",
	}
	// WarenkundeKneading is a consumer organization's book on bread, on mixing and kneading.
	WarenkundeKneading = working.Source{
		Key:    "Warenkunde Brot, kneading",
		Author: "Stiftung Warentest",
		Title:  "Warenkunde Brot",
		Where:  "pp. 120 and 122, mixing and kneading by grain",
	}
	// ASBERye is a technical bulletin on rye bread.
	ASBERye = working.Source{
		Key:    "ASBE rye",
		Author: "American Society of Baking",
		Title:  "Rye bread",
		Where:  "mixing: more rye, shorter and slower",
	}
	// IREKSSweet gives kneading times of sweet yeast doughs.
	IREKSSweet = working.Source{
		Key:    "IREKS sweet",
		Author: "IREKS",
		Title:  "IREKS compendium of baking technology",
		Where:  "kneading of sweet yeast doughs: light 3 + 6, medium 4 + 8 minutes",
		URL:    "https://www.ireks-kompendium.com/en/",
	}
	// HouseholdManuals are booklets of household mixers, processors and bread machines.
	HouseholdManuals = working.Source{
		Key:    "household manuals",
		Author: "makers of household machines",
		Where:  "bread and dough",
		Title: "Booklets of household mixers, processors and bread machines: largest doughs, " +
			"speeds, times, dough too wet or too dry",
	}
	// KneadingMemory marks kneading times that rest on memory.
	KneadingMemory = working.Source{
		Key:      "kneading, from memory",
		Title:    "usual kneading times of the trade, good to about a third",
		Standing: working.FromMemory,
	}
	// HouseholdRule is the rule for how much flour a household bowl takes.
	HouseholdRule = working.Source{
		Key: "household bowl",
		Title: "flour for each liter of a household bowl, set about one maker's figure of 1.35 " +
			"kg in a bowl of about 5 L",
		Standing: working.Judgment,
	}
	// BreadSchool are the signs of a ready dough.
	BreadSchool = practice("signs of a ready dough",
		"a kneaded dough is smooth, comes off the bowl and stretches to a window")
)
