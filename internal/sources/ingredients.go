package sources

import "example.org/maslin/dough/working"

// References about flour, yeast, volume measures, vessels, cost and the food table.
var (
	// SR28 is the food table of the US Department of Agriculture, public domain.
	SR28 = working.Source{
		Key:    "SR28",
		Author: "US Department of Agriculture",
		Title:  "National Nutrient Database for Standard Reference, release 28",
		Year:   2015,
		Where:  "by NDB number",
	}
	// SR28Weights is its file of household weights.
	SR28Weights = working.Source{
		Key:    "SR28 weights",
		Author: "US Department of Agriculture",
		Title:  "National Nutrient Database for Standard Reference, release 28",
		Year:   2015,
		Where:  "WEIGHT.txt",
	}
	// Beranbaum has cups by way of filling.
	Beranbaum = working.Source{Key: "Beranbaum", Author: "Beranbaum", Title: "The Cake Bible", Where: "quoted in GNU units 2.22, definitions file"}
	// WaterDensities is the standard table of the density of water.
	WaterDensities = working.Source{Key: "water density", Title: "density of air-free water, standard table", Where: "0 to 100 °C"}
	// PearsonMSU is an extension leaflet on the Pearson square.
	PearsonMSU = working.Source{
		Key: "MSU Extension", Author: "Montana State University Extension", Title: "Pearson squares",
		URL: "https://animalrangeextension.montana.edu/beef/articles/pearson-sqaures.html",
	}
	// LeastChange is the blend that changes the shares least.
	LeastChange = working.Source{
		Key:      "least change",
		Title:    "least squares with bounds; conditions of Karush, Kuhn and Tucker",
		Standing: working.Computed,
	}
	// ISUMoisture is an extension leaflet on moisture bases.
	ISUMoisture = working.Source{
		Key:    "PM-1625",
		Author: "Iowa State University Extension",
		Title:  "Moisture Basis Conversions for Grain Composition Data",
	}
	// ICC115 defines water absorption at 14 % moisture.
	ICC115 = working.Source{Key: "ICC 115/1", Title: "ICC standard 115/1: ml of water per 100 g of flour at 14.0 % moisture", Year: 1992}
	// DryMatterAbsorption is the conversion by dry matter and total water.
	DryMatterAbsorption = working.Source{
		Key: "absorption by dry matter", Title: "dry matter and total water kept; agrees with 2(x + y − 50) of AACC 54-21, which is from memory", Standing: working.Computed,
	}
	// GlutenWater is the extra water that dry gluten takes.
	GlutenWater = working.Source{
		Key:   "gluten water",
		Title: "about 4 % on flour, with about 1.5 times its weight of extra water",
		Where: "bakeinfo.co.nz, p=9338; Cauvain and Young agree",
	}
	// GlutenAlgebra is the two-part mixture behind adding and replacing.
	GlutenAlgebra = working.Source{Key: "mixture", Title: "protein of a mixture is the weighted mean of its parts", Standing: working.Computed}
	// AshType is the European type number.
	AshType = working.Source{Key: "ISO 2171", Title: "type number: ash in mg per 100 g of dry matter", Where: "ISO 2171, quoted by a miller"}
	// SourdoughFrameworkStrength is a table of strength classes with hydrations.
	SourdoughFrameworkStrength = working.Source{Key: "Sourdough Framework", Title: "The Sourdough Framework", Where: "table of flour strength"}
	// StrengthList2017 and StrengthListItalian are trade lists of strength classes.
	StrengthList2017 = working.Source{
		Key:      "strength list 2017",
		Title:    "trade list of W classes and protein classes",
		Year:     2017,
		Standing: working.CommonPractice,
	}
	// StrengthListItalian is a second, different list.
	StrengthListItalian = working.Source{
		Key:      "strength list, Italian",
		Title:    "trade list of W classes",
		Where:    "an Italian page on desserts",
		Standing: working.CommonPractice,
	}
	// MillerBalance is a miller's reading of the alveograph's P/L.
	MillerBalance = working.Source{Key: "P/L", Title: "miller's reading of P/L", Where: "a miller's page", Standing: working.CommonPractice}
	// FallingNumbers is a trade reading of the falling number.
	FallingNumbers = working.Source{Key: "falling number", Title: "falling number below 160 s sticky, about 250 s best", Where: "trade page", Standing: working.CommonPractice}
	// HamelmanYeast has the default yeast factors.
	HamelmanYeast = working.Source{Key: "Hamelman yeast", Author: "Hamelman", Title: "Bread", Year: 2004, Where: "yeast conversions"}
	// YeastHalfThird, YeastOldSupplier and YeastHousehold are other published factors.
	YeastHalfThird = working.Source{Key: "yeast ½ and ⅓", Title: "active dry one half of fresh, instant one third", Where: "a bakery's page", Standing: working.CommonPractice}
	// YeastOldSupplier is an older supplier's text.
	YeastOldSupplier = working.Source{Key: "yeast ⅓", Title: "supplier's text: active dry one third of fresh", Where: "a bakery supplier's page", Standing: working.CommonPractice}
	// YeastHousehold is the US household equivalence of packets and cakes.
	YeastHousehold = working.Source{
		Key:      "yeast 3/8",
		Title:    "US household: ¼ oz active dry for ⅔ oz compressed",
		Where:    "discussion page",
		Standing: working.CommonPractice,
	}
	// TinWholesale is an older US text on tin factors.
	TinWholesale = working.Source{
		Key:   "tin factor",
		Title: "older US baking text: 7.6 cubic inches of open-top tin for an ounce of white dough",
		Where: "teaching page",
	}
	// TinRanges is this library's choice of tin factors.
	TinRanges = working.Source{
		Key:      "tin factors",
		Title:    "chosen between practitioners' 2.0 to 3.6 cm³/g and the wholesale 4.39 cm³/g",
		Standing: working.Judgment,
	}
	// BasketSizes are practitioners' sizes of round baskets.
	BasketSizes = working.Source{
		Key:      "basket sizes",
		Title:    "round baskets of 8, 9, 10 and 11.75 in for ½-1, 1-2, 2-3 and 3-4 lb",
		Where:    "baking forum",
		Standing: working.CommonPractice,
	}
	// BasketVolume is the volume a proofed dough needs.
	BasketVolume = working.Source{Key: "basket volume", Title: "proofed dough of 1.9 to 2.2 cm³/g and a tenth to spare", Standing: working.Judgment}
	// DoughDensity is the density of a mixed dough.
	DoughDensity = working.Source{
		Key:      "dough density",
		Title:    "mixed dough 1.1 to 1.2 kg/L with its gas; 1.25 to 1.28 without",
		Standing: working.FromMemory,
	}
	// CylinderGeometry is the volume of a straight-sided round container.
	CylinderGeometry = working.Source{Key: "cylinder", Title: "volume of a cylinder", Standing: working.Computed}
	// GisslenCost is costing by unit cost.
	GisslenCost = working.Source{
		Key:    "Gisslen, cost",
		Author: "Gisslen",
		Title:  "Professional Baking",
		Year:   2008,
		Where:  "unit costs and formula costs",
	}
	// YieldTest is costing by usable yield.
	YieldTest = working.Source{
		Key: "BCcampus", Author: "BC Cook Articulation Committee", Title: "Basic Kitchen and Food Service Management", Where: "yield testing",
		URL: "https://opentextbc.ca/basickitchenandfoodservicemanagement/chapter/yield-testing/",
	}
)
