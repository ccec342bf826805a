package sources

import "example.org/maslin/dough/working"

// References of the oven: doneness, boiling point, bake time, loss, cooling, crust, safety.
var (
	// IF97 is the industrial formulation of steam; region 4 is the boiling line.
	IF97 = working.Source{
		Key:    "IAPWS-IF97",
		Author: "IAPWS",
		Title:  "R7-97(2012), Revised Release on the IAPWS Industrial Formulation 1997",
		Year:   2012,
		Where:  "equations 30 and 31",
	}
	// ISO2533 is the standard atmosphere.
	ISO2533 = working.Source{Key: "ISO 2533", Author: "ISO", Title: "ISO 2533, Standard Atmosphere", Year: 1975}
	// CSUElevation is an extension service's guide to cooking at altitude.
	CSUElevation = working.Source{
		Key:    "CSU Extension",
		Author: "Colorado State University Extension",
		Title:  "High Elevation Food Preparation Guide",
		Where:  "table 1",
	}
	// DenverAnswer says that no tested table of core temperatures at altitude exists.
	DenverAnswer = working.Source{
		Key:    "Ask Extension",
		Author: "Ask Extension",
		Title:  "Question 404313: core temperature of bread at 7,700 ft",
		URL:    "https://ask.extension.org",
	}
	// WarenkundeBrot gives the core of a fully baked crumb, the way of baking off, and basket sizes.
	WarenkundeBrot = working.Source{
		Key:    "Warenkunde Brot",
		Author: "Stiftung Warentest",
		Title:  "Warenkunde Brot",
		Where:  "pp. 116, 137, 141",
	}
	// GuideBakeTimes gives guide bake times by mass, and cores for lean and rich doughs.
	GuideBakeTimes = practice("guide bake times", "guide bake times by weight, and cores of lean and rich doughs")
	// KingArthurThermometer tested pan loaves, free-form loaves and soft rolls with a thermometer.
	KingArthurThermometer = working.Source{
		Key:    "King Arthur 2017",
		Author: "King Arthur Baking",
		Title:  "Using a thermometer with yeast bread",
		Year:   2017,
		Where: "pan, free-form and soft rolls 190 °F; rye and gluten-free 205 °F and more, " +
			"quoted by Ask Extension 404313",
	}
	// CooksScience gives the core by type of bread.
	CooksScience = working.Source{
		Key:      "Cook's Illustrated",
		Author:   "Cook's Illustrated",
		Title:    "The Science of Good Cooking",
		Year:     2012,
		Where:    "195 to 210 °F by type of bread, read second-hand",
		Standing: working.FromMemory,
	}
	// TinBakeTimes are those of white tin loaves: 500 g of dough at 218 °C in a turning oven, 590 g at 225 °C.
	TinBakeTimes = practice("tin bake times",
		"a white tin loaf of 500 g of dough bakes 24 to 30 min at 218 °C, one of 590 g "+
			"35 min at 225 °C, one of 800 g at home 30 to 40 min")
	// ASBProfile gives the core at the exit of plant ovens.
	ASBProfile = practice("ASB", "plant ovens: a core of 200 °F at the exit")
	// TestKitchenPlateau saw the core stay flat for the last quarter of a bake.
	TestKitchenPlateau = working.Source{
		Key:      "America's Test Kitchen",
		Author:   "America's Test Kitchen",
		Title:    "Is it done yet? Testing bread doneness",
		Year:     2012,
		Where:    "core past 200 °F at half of 60 min, 210 °F at 45 min and flat after, read second-hand",
		Standing: working.FromMemory,
	}
	// IREKS gives re-baking of par-baked goods, losses and rope.
	IREKS = working.Source{
		Key:    "IREKS",
		Author: "IREKS",
		Title:  "Compendium of Baking Technology",
		Where:  "7.5, 13.4 and 17.1.2",
	}
	// RyeBakeryLoss gives the loss that shows that a rye loaf is done.
	RyeBakeryLoss = practice("rye bakery",
		"a rye loaf is done at 98 °C and about 10 % lighter; beyond 12 to 15 % it is overbaked")
	// RyeHold says that time above 190 °F matters more than the peak.
	RyeHold = practice("rye hold", "rye is held hot: 5 to 20 min above 190 °F, and the crust at 98 °C")
	// SCurve divides a bake: arrival near 85 % of the time, yeast killed near half.
	SCurve = practice("S-curve", "the core arrives near 85 % of the bake, and yeast is killed near half of it")
	// Zanoni1993 is the evaporation front at the boiling point, with the crumb tending to it.
	Zanoni1993 = working.Source{
		Key:    "Zanoni 1993",
		Author: "Zanoni, Peri and Pierucci",
		Title: "A study of the bread-baking process I: a phenomenological model, Journal of Food " +
			"Engineering 19:389",
		Year:  1993,
		Where: "abstract",
	}
	// Zanoni1995 gives density and diffusivity of crumb and crust by porosity.
	Zanoni1995 = working.Source{
		Key:    "Zanoni 1995",
		Author: "Zanoni, Peri and Gianotti",
		Title: "Determination of the thermal diffusivity of bread as a function of porosity, " +
			"Journal of Food Engineering 26:497",
		Year:  1995,
		Where: "abstract",
	}
	// Conduction is the exact series of transient conduction.
	Conduction = working.Source{
		Key:    "Çengel",
		Author: "Çengel",
		Title:  "Heat and Mass Transfer",
		Where:  "chapter 4 and table 4-2",
	}
	// Barham gives the exponents of time on mass for a round body.
	Barham = working.Source{
		Key:    "Barham",
		Author: "Barham",
		Title:  "letter in New Scientist on cooking times",
		Year:   1991,
		Where:  "26 January 1991: time ~ mass^(2/3)",
	}
	// CarryOverReport is one report of a loaf that went on heating on the rack.
	CarryOverReport = practice("carry-over", "a one-pound loaf taken out at 175 °F rose to 205 °F on the rack: one report")
	// GisslenLoss gives the loss of weight in baking.
	GisslenLoss = working.Source{
		Key:    "Gisslen",
		Author: "Gisslen",
		Title:  "Professional Baking",
		Year:   2008,
		Where:  "scaling: 10 to 13 % of the dough; 50 to 65 g more per 500 g baked",
	}
	// BakeOutLoss is the industry's figure, cooling included.
	BakeOutLoss = working.Source{
		Key:    "Baking & Snack",
		Author: "Baking & Snack",
		Title:  "Bakers dictionary: bake-out loss",
		Where:  "9.8 to 11.5 % with cooling",
	}
	// HamelmanLoss gives the wide range of the loss.
	HamelmanLoss = working.Source{
		Key:      "Hamelman",
		Author:   "Hamelman",
		Title:    "Bread",
		Year:     2004,
		Where:    "10 to 20 %, pan loaves less than hearth loaves, read second-hand",
		Standing: working.FromMemory,
	}
	// CFRBread is the US standard of identity: at least 62 % total solids.
	CFRBread = working.Source{
		Key:    "21 CFR 136",
		Author: "US Food and Drug Administration",
		Title:  "21 CFR 136.3 and 136.110, Bakery products",
		Where:  "62 % total solids; a loaf weighs half a pound or more",
	}
	// AverageSystem is the UK rule for packaged goods of a nominal weight.
	AverageSystem = working.Source{
		Key:    "average system",
		Author: "Invest Northern Ireland",
		Title:  "Weights and measures: the average system",
		Where:  "400 g: 388 g and 376 g",
		URL:    "https://www.nibusinessinfo.co.uk",
	}
	// PackTolerances are the tolerable negative errors of prepacked goods.
	PackTolerances = working.Source{
		Key:      "76/211/EEC",
		Author:   "European Economic Community",
		Title:    "Council Directive 76/211/EEC",
		Year:     1976,
		Where:    "annex I, 2.4",
		Standing: working.FromMemory,
	}
	// UnwrappedBread is the UK rule for unwrapped loaves.
	UnwrappedBread = working.Source{
		Key:    "UK bread weights",
		Author: "UK Government",
		Title: "Weights and Measures (Specified Quantities) (Unwrapped Bread and Intoxicating " +
			"Liquor) Order",
		Year:  2011,
		Where: "draft, article 6(3)",
		URL:   "https://www.legislation.gov.uk",
	}
	// BreadCooling gives the core at which bread is sliced or wrapped.
	BreadCooling = practice("bread cooling",
		"bread is sliced and wrapped at a core of 35 to 40 °C, after up to 2 h in air of 24 °C")
	// NoWarmWrap says why warm bread is not wrapped.
	NoWarmWrap = practice("cooling", "bread wrapped warm sweats and molds")
	// Rask is thermal data of bread.
	Rask = working.Source{
		Key:    "Rask 1989",
		Author: "Rask",
		Title:  "Thermal properties of dough and bakery products, Journal of Food Engineering 9:167",
		Year:   1989,
		Where:  "k 0.23 to 0.25 W/(m K), cp 2.74 to 2.80 kJ/(kg K), read second-hand",
	}
	// AcrylamideRule gives the benchmark levels for bread.
	AcrylamideRule = working.Source{
		Key:    "EU 2017/2158",
		Author: "European Union",
		Title:  "Regulation (EU) 2017/2158 on acrylamide",
		Year:   2017,
		Where:  "annex IV and recital 3",
	}
	// RopeSpores says that the core of a loaf does not kill spores of Bacillus.
	RopeSpores = working.Source{
		Key:   "rope",
		Title: "The survival of Bacillus subtilis spores in the baking of bread",
		Where: "abstract: loaf center 100 to 101 °C",
	}
	// BurnsFirstAid is first aid for burns.
	BurnsFirstAid = working.Source{
		Key:    "burns",
		Author: "NHS (UK); British Burn Association; St John Ambulance Cymru",
		Title:  "Burns and scalds: first aid",
		Where:  "20 minutes, read in copies; older leaflets say 10",
	}
	// GlassOvenware is the safe use of glass in the oven.
	GlassOvenware = working.Source{
		Key:    "glass",
		Author: "Consumer Reports",
		Title:  "Safe use of glass bakeware",
		Year:   2011,
	}
	// HSEFlourDust is the exposure limit for flour dust.
	HSEFlourDust = working.Source{
		Key:    "HSE",
		Author: "UK Health and Safety Executive",
		Title:  "Bakery products; COSHH essentials: baking",
		Year:   2021,
		Where:  "10 mg/m³ over 8 h, 30 mg/m³ over 15 min, below 2 mg/m³ usually achievable",
		URL:    "https://www.hse.gov.uk/COSHH/industry/baking.htm",
	}
	// CastIronWater says what water does to hot glass and iron.
	CastIronWater = practice("hot glass and iron",
		"no water on the glass of an oven; hot cast iron on a wet surface can crack")
	// ZanoniColor is the kinetics of crust color on dried crumb.
	ZanoniColor = working.Source{
		Key:    "Zanoni 1995b",
		Author: "Zanoni, Peri and Bruno",
		Title: "Modelling of browning kinetics of bread " + //nolint:misspell // as printed
			"crust during baking, LWT Food Science and Technology 28:604",
		Year:  1995,
		Where: "pp. 604-609, abstract",
	}
	// Auerman describes the two periods of a bake.
	Auerman = working.Source{
		Key:    "Auerman",
		Author: "Auerman",
		Title:  "Technology of baking",
		Where:  "the loss rate is at its maximum, and constant, in the second period; read second-hand",
	}
	// Pashchenko gives cooling and the end of the bake.
	Pashchenko = working.Source{
		Key:    "Pashchenko",
		Author: "Pashchenko",
		Title:  "Technology of bread production",
		Where:  "10.5 and 11.1",
	}
	// Boutroux gives Paris practice of the 1890s in dough per 100 of bread.
	Boutroux = working.Source{
		Key:    "Boutroux",
		Author: "Boutroux",
		Title:  "Le pain et la panification",
		Year:   1897,
		Where:  "p. 246",
	}
	// Falciano2023 measured pizza in a wood oven.
	Falciano2023 = working.Source{
		Key:    "Falciano 2023",
		Author: "Falciano, Moresi and Masi",
		Title:  "Neapolitan pizza in a wood-fired oven, Foods 12:890",
		Year:   2023,
		Where:  "abstract",
	}
	// Mansour2025 measured Lebanese flat bread.
	Mansour2025 = working.Source{
		Key:    "Mansour 2025",
		Author: "Mansour, Rahme, El Hajj and Rouaud",
		Title:  "energy of baking Lebanese flat bread, Applied Sciences 15:8611",
		Year:   2025,
		Where:  "650 °C, 10 to 12 s; 667 kJ/kg",
	}
	// Ahrne2007 is on acrylamide and baking conditions.
	Ahrne2007 = working.Source{
		Key:    "Ahrné 2007",
		Author: "Ahrné, Andersson, Floberg, Rosén and Lingnert",
		Title: "Effect of crust temperature and water content on acrylamide formation during " +
			"baking of white bread, LWT 40:1708",
		Year:  2007,
		Where: "abstract",
	}
	// Cornford1964 is the form of staling over time.
	Cornford1964 = working.Source{
		Key:    "Cornford 1964",
		Author: "Cornford, Axford and Elton",
		Title:  "The elastic modulus of bread crumb in linear compression in relation to staling, Cereal Chemistry 41:216",
		Year:   1964,
		Where:  "pp. 216-229, abstract: e^(−kt), slower the warmer, from 30 to 90 °F",
	}
	// StalingTable are the time constants of staling.
	StalingTable = working.Source{
		Key:      "staling constants",
		Title:    "1.37 d at −1 °C, 2.57 at 10, 3.68 at 21, 5.5 at 32, a later table after Cornford; good to ±30 %",
		Standing: working.FromMemory,
	}
	// Barcenas2003 is on staling in the freezer and after.
	Barcenas2003 = working.Source{
		Key:    "Bárcenas 2003",
		Author: "Bárcenas, Haros, Benedito and Rosell",
		Title: "Effect of freezing and frozen storage on the staling of part-baked bread, Food Research International " +
			"36:863",
		Year:  2003,
		Where: "pp. 863-869, abstract: no retrogradation while frozen",
	}
	// MoldAdvice is what to do with moldy bread.
	MoldAdvice = working.Source{
		Key:    "USDA mold",
		Author: "US Department of Agriculture, a specialist to NPR",
		Title:  "mold on bread is not cut off",
		Year:   2017,
		Where:  "April 2017, read in a copy",
	}
	// CooksStaling is staling in the cold.
	CooksStaling = working.Source{
		Key:    "Cook's Illustrated staling",
		Author: "Cook's Illustrated",
		Title:  "Staling in the refrigerator",
		Where: "bread goes stale about six times faster at 36 to 40 °F than at room temperature, " +
			"read second-hand",
		Standing: working.FromMemory,
	}
	// GasMark is the scale of gas ovens.
	GasMark = working.Source{
		Key:    "GNU units",
		Author: "GNU Project",
		Title:  "GNU units 2.22, definitions file: gas mark",
		Where:  "°F = 275 + 25·(mark − 1); below mark 1, 275 + 25·log2(mark)",
	}
	// FanOven gives the spread of advice on fan ovens.
	FanOven = practice("fan ovens", "fan ovens: 25 to 50 °F or 20 to 25 °C lower, or a quarter less time")
	// PotPreheat gives preheating of a covered pot.
	PotPreheat = practice("pot", "a pot is preheated for at least 30 min, and its lid comes off after 20 to 25 min")
)

// FromMemory is a figure that nobody has looked up.
func FromMemory(what string) working.Source {
	return working.Source{Key: "from memory", Title: what, Standing: working.FromMemory}
}
