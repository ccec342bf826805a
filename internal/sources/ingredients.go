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
	// OatsMemory is a cup of rolled oats.
	OatsMemory = working.Source{
		Key:      "cup of oats",
		Title:    "a cup of rolled oats of 81 g, as the US Department of Agriculture lists it",
		Standing: working.FromMemory,
	}
	// Beranbaum has cups by way of filling.
	Beranbaum = working.Source{
		Key:    "Beranbaum",
		Author: "Beranbaum",
		Title:  "The Cake Bible",
		Where:  "quoted in GNU units 2.22, definitions file",
	}
	// WaterDensities is the standard table of the density of water.
	WaterDensities = working.Source{
		Key:    "Kell 1975",
		Author: "Kell",
		Title: "Density, thermal expansivity and compressibility of liquid water, Journal of Chemical and Engineering " +
			"Data 20:97",
		Year:     1975,
		Where:    "0 to 100 °C",
		Standing: working.FromMemory,
	}
	// PearsonMSU is an extension leaflet on the Pearson square.
	PearsonMSU = working.Source{
		Key:    "MSU Extension",
		Author: "Montana State University Extension",
		Title:  "Pearson squares",
		URL:    "https://animalrangeextension.montana.edu/beef/articles/pearson-sqaures.html",
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
		Where:  "PM-1625",
	}
	// ICC115 defines water absorption at 14 % moisture.
	ICC115 = working.Source{
		Key:    "ICC 115/1",
		Author: "ICC",
		Title:  "Standard 115/1",
		Year:   1992,
		Where:  "ml of water per 100 g of flour at 14.0 % moisture",
	}
	// DryMatterAbsorption is the conversion by dry matter and total water.
	DryMatterAbsorption = working.Source{
		Key: "absorption by dry matter",
		Title: "dry matter and total water kept; agrees with 2(x + y − 50) of AACC 54-21, which " +
			"is from memory",
		Standing: working.Computed,
	}
	// GlutenWater is the extra water that dry gluten takes.
	GlutenWater = working.Source{
		Key:    "gluten water",
		Author: "Baking Industry Research Trust",
		Title:  "bakeinfo.co.nz",
		Where:  "p=9338: about 4 % on flour, with about 1.5 times its weight of extra water",
	}
	// GlutenAlgebra is the two-part mixture behind adding and replacing.
	GlutenAlgebra = working.Source{
		Key:      "mixture",
		Title:    "protein of a mixture is the weighted mean of its parts",
		Standing: working.Computed,
	}
	// AshType is the European type number.
	AshType = working.Source{
		Key:      "ISO 2171",
		Author:   "ISO",
		Title:    "ISO 2171, ash yield by incineration",
		Where:    "type number: ash in mg per 100 g of dry matter",
		Standing: working.FromMemory,
	}
	// SourdoughFrameworkStrength is a table of strength classes with hydrations.
	SourdoughFrameworkStrength = working.Source{
		Key:    "Sourdough Framework",
		Author: "Kleinwächter",
		Title:  "The Sourdough Framework",
		Where:  "table of flour strength",
	}
	// StrengthList2017 and StrengthListItalian are trade lists of strength classes.
	StrengthList2017 = practice("strength list 2017", "classes of W and protein of a millers' list")
	// StrengthListItalian is a second, different list.
	StrengthListItalian = practice("strength list, Italian", "classes of W of another list")
	// MillerBalance is a miller's reading of the alveograph's P/L.
	MillerBalance = practice("P/L", "how P/L is read: below 0.5 extensible, 0.6 to 0.7 balanced, above 0.9 tenacious")
	// FallingNumbers is a trade reading of the falling number.
	FallingNumbers = practice("falling number", "falling number: below 160 s sticky, about 250 s best")
	// HamelmanYeast has the default yeast factors.
	HamelmanYeast = working.Source{
		Key:    "Hamelman yeast",
		Author: "Hamelman",
		Title:  "Bread",
		Year:   2004,
		Where:  "yeast conversions",
	}
	// YeastHalfThird, YeastOldSupplier and YeastHousehold are other published factors.
	YeastHalfThird = practice("yeast ½ and ⅓", "active dry yeast is one half of fresh, instant one third")
	// YeastOldSupplier is an older supplier's text.
	YeastOldSupplier = practice("yeast ⅓", "active dry yeast is one third of fresh")
	// YeastHousehold is the US household equivalence of packets and cakes.
	YeastHousehold = practice("yeast 3/8", "a packet of ¼ oz of active dry yeast stands for a cake of ⅔ oz")
	// YeastSmallCake is the same of today's smaller cakes.
	YeastSmallCake = practice("yeast 5/12", "a packet of ¼ oz of dry yeast, instant or not, stands for a cake of 0.6 oz")
	// TinWholesale is an older US text on tin factors.
	TinWholesale = practice("tin factor", "7.6 cubic inches of open-top tin for an ounce of white dough")
	// TinRanges is this library's choice of tin factors.
	TinRanges = working.Source{
		Key:      "tin factors",
		Title:    "chosen between practitioners' 2.0 to 3.6 cm³/g and the wholesale 4.39 cm³/g",
		Standing: working.Judgment,
	}
	// TinShallow is how the trade fills a shallow home tin.
	TinShallow = practice("shallow tin", "a home tin of 9 × 5 × 2.75 in takes 800 to 900 g of white dough, one of "+
		"8.5 × 4.5 × 2.6 in 450 to 680 g")
	// TinHomeMilled is a home miller's rule.
	TinHomeMilled = practice("home-milled tin", "a tin takes 55 to 65 g of whole-grain dough for each 100 g of water "+
		"that fills it")
	// BasketSizes are practitioners' sizes of round baskets.
	BasketSizes = practice("basket sizes", "round baskets of 8, 9, 10 and 11.75 in for ½-1, 1-2, 2-3 and 3-4 lb")
	// BasketVolume is the volume a proofed dough needs.
	BasketVolume = working.Source{
		Key: "basket volume",
		Title: "proofed dough of about 2 cm³/g; makers' labels reach from 1.6 (1.5 kg in 2.41 L) to 2.6 cm³/g (500 g in " +
			"1.29 L)",
		Standing: working.Judgment,
	}
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
		Key:    "BCcampus",
		Author: "BC Cook Articulation Committee",
		Title:  "Basic Kitchen and Food Service Management",
		Where:  "yield testing",
		URL:    "https://opentextbc.ca/basickitchenandfoodservicemanagement/chapter/yield-testing/",
	}
)
