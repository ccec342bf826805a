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
	Key:      "EU 1169/2011",
	Author:   "European Union",
	Title:    "Regulation (EU) No 1169/2011 on food information to consumers",
	Year:     2011,
	Where:    "annex II",
	Standing: working.FromMemory,
}

// RawFlour warns of raw flour and dough.
var RawFlour = working.Source{
	Key:      "FDA flour",
	Author:   "U.S. Food and Drug Administration",
	Title:    "Flour is a raw food and other safety facts",
	Standing: working.FromMemory,
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
	Key:      "FDA Food Code",
	Author:   "U.S. Food and Drug Administration",
	Title:    "Food Code",
	Year:     2022,
	Where:    "3-501, time and temperature control",
	Standing: working.FromMemory,
}

// ClassicBread gives usual hydrations and times of preferments.
var ClassicBread = working.Source{
	Key:    "FCI",
	Author: "French Culinary Institute",
	Title:  "The Fundamental Techniques of Classic Bread Baking",
	Where:  "guide to preferments",
}
