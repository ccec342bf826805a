package sources

import "example.org/maslin/dough/working"

// References of fermentation.
var (
	// Ganzle1998 gives the growth of sourdough yeast and lactobacilli against temperature; of the paper its
	// abstract was read, the constants of the equation are from memory and agree with every published optimum and
	// limit.
	Ganzle1998 = working.Source{
		Key:    "Gänzle 1998",
		Author: "Gänzle, Ehmann and Hammes",
		Title: "Modeling of growth of Lactobacillus sanfranciscensis and Candida milleri in " +
			"response to process parameters of sourdough fermentation, Applied and " +
			"Environmental Microbiology 64:2616",
		Year:     1998,
		Where:    "temperature equation; constants from memory",
		Standing: working.FromMemory,
	}
	// Salvado2011 gives optimum and greatest temperatures of growth of Saccharomyces species.
	Salvado2011 = working.Source{
		Key:    "Salvadó 2011",
		Author: "Salvadó et al.",
		Title: "Temperature adaptation markedly determines evolution within the genus " +
			"Saccharomyces, Applied and Environmental Microbiology 77:2292",
		Year:  2011,
		Where: "abstract",
	}
	// Rosso1993 is the cardinal temperature model.
	Rosso1993 = working.Source{
		Key:    "Rosso 1993",
		Author: "Rosso, Lobry and Flandrois",
		Title: "An unexpected correlation between cardinal temperatures of microbial growth, " +
			"Journal of Theoretical Biology 162:447",
		Year: 1993,
	}
	// Ratkowsky1982 is the square-root model below the optimum.
	Ratkowsky1982 = working.Source{
		Key:    "Ratkowsky 1982",
		Author: "Ratkowsky et al.",
		Title: "Relationship between temperature and growth rate of bacterial cultures, Journal " +
			"of Bacteriology 149:1",
		Year: 1982,
	}
	// Ratkowsky1983 is the square-root model over the whole range.
	Ratkowsky1983 = working.Source{
		Key:    "Ratkowsky 1983",
		Author: "Ratkowsky et al.",
		Title: "Model for bacterial culture growth rate throughout the entire biokinetic " +
			"temperature range, Journal of Bacteriology 154:1222",
		Year: 1983,
	}
	// GasFromGrowth is the relation of rise to growth used for doughs.
	GasFromGrowth = working.Source{
		Key: "rise",
		Title: "gas made in proportion to cells and their rate, integrated over growth; " +
			"amplitude set to agree with trade practice",
		Standing: working.Judgment,
	}
	// NormalQuantiles tabulates how many standard deviations a range reaches.
	NormalQuantiles = working.Source{
		Key:    "Abramowitz and Stegun",
		Author: "Abramowitz and Stegun",
		Title:  "Handbook of Mathematical Functions",
		Year:   1964,
		Where:  "table 26.5 and, for few degrees of freedom, 26.7.5",
	}
	// Gelman is Bayesian linear regression.
	Gelman = working.Source{
		Key:    "Gelman",
		Author: "Gelman et al.",
		Title:  "Bayesian Data Analysis",
		Year:   2013,
		Where:  "chapter 14",
	}
	// Dawid judges a way of forecasting by what it foretold, one after the other.
	Dawid = working.Source{
		Key:      "Dawid",
		Author:   "Dawid",
		Title:    "Statistical Theory: The Prequential Approach",
		Year:     1984,
		Where:    "Journal of the Royal Statistical Society A 147, 278",
		Standing: working.FromMemory,
	}
)

// Judged is a value chosen by this library where published figures are missing or disagree.
func Judged(what string) working.Source {
	return working.Source{Key: "judgment", Title: what, Standing: working.Judgment}
}

// References of food safety in fermentation.
var (
	// DangerZone: perishable food is not left between 5 and 60 °C.
	DangerZone = working.Source{
		Key:      "danger zone",
		Author:   "USDA Food Safety and Inspection Service",
		Title:    "Danger Zone (40 °F - 140 °F)",
		Standing: working.FromMemory,
	}
	// ColdStorage: refrigerators at 40 °F (4 °C) or below in the United States, 5 °C elsewhere.
	ColdStorage = working.Source{
		Key:      "cold storage",
		Author:   "US Food and Drug Administration",
		Title:    "Refrigerator thermometers: cold facts about food safety",
		Standing: working.FromMemory,
	}
	// SpoiledCulture: colored streaks or mold mean that a culture is spoiled.
	SpoiledCulture = working.NoSource("a culture with pink or orange streaks is discarded")
)
