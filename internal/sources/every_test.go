package sources

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"example.org/maslin/dough/working"
)

// every is all that rooms name as sources.
var every = map[string]working.Source{
	"ASBERye": ASBERye, "ASBProfile": ASBProfile, "AcrylamideRule": AcrylamideRule, "Ahrne2007": Ahrne2007,
	"AllergenLaw": AllergenLaw, "AshType": AshType, "Auerman": Auerman, "AverageSystem": AverageSystem,
	"BakeOutLoss": BakeOutLoss, "Barcenas2003": Barcenas2003, "Barham": Barham,
	"BaseTemperature": BaseTemperature, "BasketSizes": BasketSizes, "BasketVolume": BasketVolume,
	"Beranbaum": Beranbaum, "Boutroux": Boutroux, "BreadCooling": BreadCooling, "BreadSchool": BreadSchool,
	"BurnsFirstAid": BurnsFirstAid, "CFRBread": CFRBread, "CSUElevation": CSUElevation,
	"CarryOverReport": CarryOverReport, "CastIronWater": CastIronWater, "CengelHydration": CengelHydration,
	"ChapatiHeat": ChapatiHeat, "ClassicBread": ClassicBread, "ColdStorage": ColdStorage,
	"Conduction": Conduction, "ConjugateRegression": ConjugateRegression, "CookedFourDays": CookedFourDays,
	"CooksFriction": CooksFriction, "CooksScience": CooksScience, "CooksStaling": CooksStaling,
	"Cornford1964": Cornford1964, "CylinderGeometry": CylinderGeometry, "DangerZone": DangerZone, "Dawid": Dawid,
	"DenverAnswer": DenverAnswer, "DoughDensity": DoughDensity, "DoughYieldTerm": DoughYieldTerm,
	"DryMatterAbsorption": DryMatterAbsorption, "ErgotLimits": ErgotLimits, "Falciano2023": Falciano2023,
	"FallingNumbers": FallingNumbers, "FanOven": FanOven, "Fieller": Fieller, "FlourHydration": FlourHydration,
	"FoodCode": FoodCode, "Forkish": Forkish, "FrenchRise": FrenchRise, "FrictionIsRise": FrictionIsRise,
	"GNUUnits": GNUUnits, "Ganzle1998": Ganzle1998, "GarlicOil": GarlicOil, "GasFromGrowth": GasFromGrowth,
	"GasMark": GasMark, "GeankoplisHeats": GeankoplisHeats, "Gelman": Gelman, "Gisslen": Gisslen,
	"GisslenCost": GisslenCost, "GisslenLoss": GisslenLoss, "GlassOvenware": GlassOvenware,
	"GlutenAlgebra": GlutenAlgebra, "GlutenFreeClaim": GlutenFreeClaim, "GlutenWater": GlutenWater,
	"GuideBakeTimes": GuideBakeTimes, "HSEEnzymes": HSEEnzymes, "HSEFlourDust": HSEFlourDust,
	"HamelmanBread": HamelmanBread, "HamelmanFriction": HamelmanFriction, "HamelmanLoss": HamelmanLoss,
	"HamelmanSummary": HamelmanSummary, "HamelmanYeast": HamelmanYeast, "HeatBalance": HeatBalance,
	"Hlynka": Hlynka, "HouseholdManuals": HouseholdManuals, "HouseholdRule": HouseholdRule, "ICC115": ICC115,
	"IF97": IF97, "IREKS": IREKS, "IREKSMixing": IREKSMixing, "IREKSSweet": IREKSSweet, "ISO2533": ISO2533,
	"ISUMoisture": ISUMoisture, "IceHeat": IceHeat, "IceTable": IceTable, "KilbornTipples": KilbornTipples,
	"KingArthurMixing": KingArthurMixing, "KingArthurThermometer": KingArthurThermometer,
	"KneadingMemory": KneadingMemory, "LaMuehla": LaMuehla, "LargestRemainder": LargestRemainder,
	"LeastChange": LeastChange, "Mansour2025": Mansour2025, "MillerBalance": MillerBalance,
	"MixingWork": MixingWork, "MoldAdvice": MoldAdvice, "NISTSP811": NISTSP811, "NavyFriction": NavyFriction,
	"NoWarmWrap": NoWarmWrap, "NormalQuantiles": NormalQuantiles, "OatsMemory": OatsMemory,
	"PackTolerances": PackTolerances, "Pashchenko": Pashchenko, "PearsonMSU": PearsonMSU,
	"PizzaTodayWater": PizzaTodayWater, "PlanetaryManuals": PlanetaryManuals, "PotPreheat": PotPreheat,
	"Rask": Rask, "Ratkowsky1982": Ratkowsky1982, "Ratkowsky1983": Ratkowsky1983, "RawFlour": RawFlour,
	"RestrictedDisjunctions": RestrictedDisjunctions, "RopeSpores": RopeSpores, "Rosso1993": Rosso1993,
	"RyeBakeryLoss": RyeBakeryLoss, "RyeHold": RyeHold, "SCurve": SCurve, "SFBIWater": SFBIWater, "SR28": SR28,
	"SR28Weights": SR28Weights, "Salvado2011": Salvado2011, "SourdoughFramework": SourdoughFramework,
	"SourdoughFrameworkStrength": SourdoughFrameworkStrength, "SpoiledCulture": SpoiledCulture,
	"StalingTable": StalingTable, "StrengthList2017": StrengthList2017,
	"StrengthListItalian": StrengthListItalian, "TemporalNetworks": TemporalNetworks,
	"TestKitchenPlateau": TestKitchenPlateau, "TinBakeTimes": TinBakeTimes, "TinHomeMilled": TinHomeMilled,
	"TinRanges": TinRanges, "TinShallow": TinShallow, "TinWholesale": TinWholesale,
	"UnwrappedBread": UnwrappedBread, "WarenkundeBrot": WarenkundeBrot, "WarenkundeKneading": WarenkundeKneading,
	"WaterDensities": WaterDensities, "WetSoaker": WetSoaker, "WihlfahrtWater": WihlfahrtWater,
	"Windowpane": Windowpane, "YeastHalfThird": YeastHalfThird, "YeastHeat": YeastHeat,
	"YeastHousehold": YeastHousehold, "YeastOldSupplier": YeastOldSupplier, "YeastSmallCake": YeastSmallCake,
	"YieldTest": YieldTest, "Zanoni1993": Zanoni1993, "Zanoni1995": Zanoni1995, "ZanoniColor": ZanoniColor,
}

// printed are the years of what does not carry its year in its name: of these editions, as library catalogs give them,
// from memory.
var printed = map[string]int{
	"Bread": 2004, "Professional Baking": 2008, "The Science of Good Cooking": 2012, "Bayesian Data Analysis": 2013,
	"Handbook of Mathematical Functions": 1964, "Le pain et la panification": 1897, "Armed Forces Recipe Service": 2003,
	"National Nutrient Database for Standard Reference, release 28": 2015, "ISO 2533, Standard Atmosphere": 1975,
	"Is it done yet? Testing bread doneness": 2012, "Safe use of glass bakeware": 2011, "Standard 115/1": 1992,
	"Council Directive 76/211/EEC": 1976, "Bakery products; COSHH essentials: baking": 2021,
	"Weights and Measures (Specified Quantities) (Unwrapped Bread and Intoxicating Liquor) Order": 2011,
	"Food Code": 2022, "Guide for the Use of the International System of Units (SI)": 2008, "Fair Representation": 1982,
	"Bakery products: fungal alpha-amylase is a potent sensitiser": 2021, "Flour Water Salt Yeast": 2012,
	"Some problems in interval estimation, Journal of the Royal Statistical Society B 16:175": 1954,
	"Statistical Theory: The Prequential Approach":                                            1984,
}

// A year is that in the name of a work, in its key or where it stands in print, or that of the edition.
func TestYearsOfSources(t *testing.T) {
	for name, s := range every {
		said := strings.Contains(s.Key+" "+s.Title+" "+s.Where+" "+s.URL, strconv.Itoa(s.Year))
		if s.Year != 0 && !said && printed[s.Title] != s.Year {
			t.Errorf("%s: %s, in %d", name, s, s.Year)
		}
	}
}

// A key is a few words by which a source is found again; what a rule of the trade says is its title.
func TestKeysAreShort(t *testing.T) {
	for name, s := range every {
		if s.Key == "" || s.Title == "" || len(s.Key) > 30 || s.Author == "" && s.Standing == working.CommonPractice &&
			len(s.Key) >= len(s.Title) {
			t.Errorf("%s: %q for %q", name, s.Key, s.Title)
		}
	}
}

// No source is left out above.
func TestEverySourceIsLookedAt(t *testing.T) {
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		tree, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.SkipObjectResolution)
		if err != nil || strings.HasSuffix(file, "_test.go") {
			continue
		}
		for _, d := range tree.Decls {
			g, ok := d.(*ast.GenDecl)
			if !ok || g.Tok != token.VAR {
				continue
			}
			for _, spec := range g.Specs {
				for _, id := range spec.(*ast.ValueSpec).Names {
					if _, ok := every[id.Name]; !ok && id.IsExported() {
						t.Errorf("%s: %s is not looked at", file, id.Name)
					}
				}
			}
		}
	}
}
