package sources

import "example.org/maslin/dough/working"

// Gisslen gives baker's percentages, the conversion of a formula to a new yield, and the
// rounding habits of the trade.
var Gisslen = working.Source{
	Key:    "Gisslen",
	Author: "Gisslen",
	Title:  "Professional Baking",
	Year:   2008,
	Where:  "chapter 2",
}

// HamelmanBread gives levain formulas that leave the seed culture out of the sums.
var HamelmanBread = working.Source{
	Key:    "Hamelman",
	Author: "Hamelman",
	Title:  "Bread",
	Year:   2004,
	Where:  "formulas with levain",
}

// AllergenLaw lists the substances that must be named.
var AllergenLaw = working.Source{
	Key:    "EU 1169/2011, FASTER Act",
	Author: "European Union; US Food and Drug Administration",
	Title:  "Regulation (EU) No 1169/2011, annex II (14 allergens); Food Allergies (9, with sesame since 1 January 2023)",
	Year:   2023,
	Where:  "annex II read in the copy of the University of Reading",
}

// RawFlour warns of raw flour and dough.
var RawFlour = working.Source{
	Key:    "FDA flour",
	Author: "US Food and Drug Administration; pets: Animal PoisonLine (UK)",
	Title:  "How to Handle Flour Safely, 5 December 2023; raw dough, 13 December 2021",
	Year:   2023,
}

// GarlicOil warns of garlic in oil.
var GarlicOil = working.Source{
	Key:    "garlic in oil",
	Author: "Penn State Extension; US Centers for Disease Control and Prevention",
	Title:  "garlic in oil and botulism",
	URL:    "https://extension.psu.edu/",
	Where:  "10 days (Penn State, read), 4 days (CDC, read second-hand)",
}

// CookedFourDays is how long cooked and chilled food is kept.
var CookedFourDays = working.Source{
	Key:    "East Devon",
	Author: "East Devon District Council (UK)",
	Title:  "food hygiene: cooked and chilled food is used within 4 days",
	Where:  "council pages on food hygiene",
}

// GlutenFreeClaim is what may be called gluten-free.
var GlutenFreeClaim = working.Source{
	Key:      "gluten-free claim",
	Author:   "European Union; US Food and Drug Administration",
	Title:    "Regulation (EU) No 828/2014; 21 CFR 101.91",
	Year:     2014,
	Where:    "at most 20 mg/kg of gluten",
	Standing: working.FromMemory,
}

// WetSoaker is how long raw grain may stand wet in the warm.
var WetSoaker = working.Source{
	Key:      "wet soaker",
	Title:    "a soaker of raw grain is chilled or salted after 4 hours above 5 °C",
	Standing: working.Judgment,
}

// HSEEnzymes warns of the enzymes of improvers.
var HSEEnzymes = working.Source{
	Key:    "HSE bakery",
	Author: "UK Health and Safety Executive",
	Title:  "Bakery products: fungal alpha-amylase is a potent sensitiser", //nolint:misspell // as printed
	Year:   2021,
}

// ErgotLimits are the limits for ergot.
var ErgotLimits = working.Source{
	Key:    "EU 2024/1808",
	Author: "Max Rubner-Institut on Regulation (EU) 2024/1808",
	Title:  "maximum levels of ergot sclerotia and ergot alkaloids",
	Year:   2024,
	Where:  "rye flour 500 µg/kg, from 1 July 2028 250; picking and baking from memory",
}

// LargestRemainder is the rule that makes rounded parts add up to the whole.
var LargestRemainder = working.Source{
	Key:    "Balinski and Young",
	Author: "Balinski and Young",
	Title:  "Fair Representation",
	Year:   1982,
	Where:  "the method of Hamilton",
}

// SourdoughFramework gives feeding ratios and hydrations of starters.
var SourdoughFramework = working.Source{
	Key:    "Sourdough Framework",
	Author: "Kleinwächter",
	Title:  "The Sourdough Framework",
	Where:  "tables of starter types and feeding ratios",
}

// Forkish prints levain as its flour over all flour.
var Forkish = working.Source{
	Key:    "Forkish",
	Author: "Forkish",
	Title:  "Flour Water Salt Yeast",
	Year:   2012,
	Where:  "p. 197, footnote",
}

// DoughYieldTerm defines the net and the gross dough yield.
var DoughYieldTerm = working.Source{
	Key:    "IREKS",
	Author: "IREKS",
	Title:  "Compendium of Baking Technology",
	Where:  "5.1, dough yield",
	URL:    "https://www.ireks-kompendium.com/en/dough-technology/51-dough-yield",
}

// FoodCode limits how long food that spoils may stand warm.
var FoodCode = working.Source{
	Key:    "FDA Food Code",
	Author: "US Food and Drug Administration",
	Title:  "Food Code",
	Year:   2022,
	Where:  "3-501.14 and 3-403.11, read second-hand",
}

// ClassicBread gives usual hydrations and times of preferments.
var ClassicBread = working.Source{
	Key:    "FCI",
	Author: "French Culinary Institute",
	Title:  "The Fundamental Techniques of Classic Bread Baking",
	Where:  "guide to preferments",
}
