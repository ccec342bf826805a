package cli

import (
	"strconv"
)

// rarer draw the questions with the options that are seldom given, so that every one is asked.
var rarer = map[string]func(questioner) []string{
	"bulk, all said": func(a questioner) []string {
		return flags([]string{"bulk", "--prefermented", a.between(6, 20, 0, "%"), "--dough", a.between(20, 27, 1, "C"),
			"--room", a.between(21, 26, 0, "C"), "--night", a.between(15, 20, 0, "C"), "--mixed", "17:30", "--without-log"},
			a.maybe("--sugar", a.between(3, 20, 0, "%")), a.maybe("--enriched"), a.maybe("--cold-levain"),
			a.maybe("--kneaded-by", a.one("hand", "machine")), a.maybe("--half-life", "30d"))
	},
	"bulk by a rival": func(a questioner) []string {
		return flags([]string{"bulk", "--prefermented", a.between(6, 20, 0, "%"), "--dough", a.between(20, 27, 1, "C"),
			"--room", a.between(20, 25, 0, "C"), "--drift", a.between(1, 4, 0, "h"), "--curve",
			a.one("ganzle-yeast-held", "trade-q10")}, a.maybe("--extrapolate"))
	},
	"bulk and loaves": func(a questioner) []string {
		return []string{"bulk", "--prefermented", a.between(8, 18, 0, "%"), "--dough", a.between(23, 27, 1, "C"), "--room",
			"22C", "--retard", a.between(8, 14, 0, "h"), "--piece", a.between(400, 1200, 0, "g"), "--shaping",
			a.between(20, 60, 0, "m")}
	},
	"bulk by a probe": func(questioner) []string {
		return []string{"bulk", "--prefermented", "12%", "--readings", "READINGS"}
	},
	"levain, all said": func(a questioner) []string {
		return flags([]string{"levain", "--want", a.between(200, 2000, 0, "g"), "--culture", a.between(20, 200, 0, "g"),
			"--culture-hydration", a.between(50, 125, 0, "%"), "--least", "15%", "--most", "120%", "--whole-grain",
			a.between(0, 60, 0, "%"), "--scale", a.one("1g", "5g"), "--room", a.between(20, 27, 0, "C"), "--night", "18C"},
			a.maybe("--fed", "21:00"), a.maybe("--of-mix", "--inoculation", a.between(10, 30, 0, "%")),
			a.maybe("--without-log"), a.maybe("--half-life", "30d"))
	},
	"levain in the cold": func(a questioner) []string {
		return []string{"levain", "--ratio", a.one("1:2:2", "1:3:3"), "--dough", a.between(22, 27, 0, "C"), "--room", "22C",
			"--weight", a.between(200, 900, 0, "g"), "--refrigerate-after", a.between(2, 4, 0, "h"), "--refrigerator",
			a.between(3, 6, 0, "C"), "--culture", "80g", "--want", "400g"}
	},
	"levain by a rival": func(a questioner) []string {
		return flags([]string{"levain", "--ratio", "1:2:2", "--dough", a.between(20, 27, 0, "C"), "--room", "22C", "--drift",
			a.between(1, 3, 0, "h"), "--curve", a.one("ganzle-yeast-held", "trade-q10")}, a.maybe("--extrapolate"))
	},
	"levain by a probe": func(questioner) []string {
		return []string{"levain", "--ratio", "1:2:2", "--readings", "READINGS"}
	},
	"chill": func(a questioner) []string {
		return flags([]string{"chill", a.one("cooked", "infused-oil", "wet-grain", "mixed-cold")}, a.maybe("--made", "14:00"))
	},
	"keep": func(a questioner) []string {
		return flags([]string{"keep", "--style", a.one(styles...), "--stay", a.between(6, 60, 0, "h=") +
			a.between(4, 28, 0, "C")}, a.maybe("--stay", a.between(1, 20, 0, "d=-18C")))
	},
	"compare by hand": func(a questioner) []string {
		return []string{"compare", "../../bakes/hall-kitchen.toml", a.one("--hand", "--machine=spiral")}
	},
	"compare by machine": func(questioner) []string {
		return []string{"compare", "../../bakes/hall-kitchen.toml", "--machine", "fork"}
	},
	"curves at": func(a questioner) []string {
		return []string{"compare", "curves", "ganzle-yeast-held", "trade-q10", "--temperatures",
			a.between(16, 20, 0, "C,") + a.between(21, 30, 0, "C")}
	},
	"cool, all said": func(a questioner) []string {
		return []string{"cool", "--loaf", a.between(300, 1800, 0, "g"), "--shape", a.one("round", "long", "tin"), "--loses",
			a.between(1, 3, 1, "%"), "--slice", a.between(30, 45, 0, "C"), "--room", a.between(15, 26, 0, "C")}
	},
	"cool by a probe": func(a questioner) []string {
		return []string{"cool", "--core", "9:40=88C", "--core", "10:05=61C", "--room", "21C", "--probe-error",
			a.between(0.5, 2, 1, "dC")}
	},
	"cost, all said": func(a questioner) []string {
		return []string{"cost", "--weights", "1 kg wheat, 700 g water, 20 g salt", "--loaves", "4", "--sold",
			strconv.Itoa(1 + a.IntN(4)), "--price", "wheat=" + a.between(10, 40, 2, "") + "/25kg", "--price", "salt=0.90/kg",
			"--places", a.one("0", "2", "3"), "--rounding", a.one("up", "half up", "half even"), "--unit",
			a.one("kilogram", "pound", "ounce"), "--unit-rounding", a.one("exact", "up", "half even")}
	},
	"done, all said": func(a questioner) []string {
		return flags([]string{"done", "--core", a.between(90, 95, 1, "C"), "--in-oven", a.between(30, 70, 0, "min"),
			"--probe-error", a.between(0.5, 2, 1, "dC")}, a.maybe("--target", a.between(92, 96, 0, "C")),
			a.maybe("--dough", a.between(600, 1500, 0, "g")), a.maybe("--held", "10min"))
	},
	"done by a barometer": func(a questioner) []string {
		return []string{"done", "--core", a.between(85, 92, 1, "C"), "--barometer", a.between(860, 1020, 0, "hPa")}
	},
	"done in this weather": func(a questioner) []string {
		return []string{"done", "--core", a.between(85, 92, 1, "C"), "--altitude", a.between(100, 1500, 0, "m"), "--weather",
			a.between(990, 1030, 0, "hPa")}
	},
	"left, all said": func(a questioner) []string {
		return flags([]string{"done", "--core", "14:05=" + a.between(60, 70, 1, "C"), "--core", "14:11=" +
			a.between(73, 84, 1, "C"), "--window", a.between(8, 20, 0, "min"), "--probe-error", a.between(0.5, 2, 1, "dC"),
			"--altitude", "500m", "--weather", a.between(995, 1030, 0, "hPa")}, a.maybe("--extrapolate"))
	},
	"strength": func(a questioner) []string {
		return []string{"flour", "--hydration", a.between(60, 80, 0, "%"), "--absorption", a.between(54, 66, 0, "%"), "--pl",
			a.between(0.4, 1.2, 2, ""), "--falling-number", a.between(150, 400, 0, ""), "--w", a.between(150, 400, 0, "")}
	},
	"formula, baked": func(a questioner) []string {
		return flags([]string{"formula", "../../bakes/hall-kitchen.toml", "--pieces", strconv.Itoa(1 + a.IntN(9)), "--baked",
			a.between(300, 1200, 0, "g"), "--fine-scale", a.one("0.1g", "1g")}, a.maybe("--loss", a.between(9, 16, 1, "%")))
	},
	"formula, divided": func(a questioner) []string {
		return []string{"formula", "../../bakes/hall-kitchen.toml", "--pieces", strconv.Itoa(1 + a.IntN(9)), "--each",
			a.between(300, 1200, 0, "g")}
	},
	"formula of flour": func(a questioner) []string {
		return []string{"formula", "../../bakes/hall-kitchen.toml", "--flour", a.between(500, 5000, 0, "g")}
	},
	"formula of levain": func(a questioner) []string {
		return []string{"formula", "../../bakes/hall-kitchen.toml", "--levain-at-hand", a.between(100, 900, 0, "g")}
	},
	"formula of stock": func(a questioner) []string {
		return []string{"formula", "../../bakes/hall-kitchen.toml", "--stock", "whole rye flour=" + a.between(100, 900, 0, "g"),
			"--stock", "salt=" + a.between(20, 200, 0, "g")}
	},
	"formula of percents": func(a questioner) []string {
		return []string{"formula", "--percent", a.between(60, 90, 0, " % wheat, ") + a.between(5, 10, 0, " % rye, ") +
			"10 % whole wheat, 68 % water, 2 % salt", "--dough", a.between(800, 5000, 0, "g")}
	},
	"repair, too little": func(a questioner) []string {
		return []string{"formula", "../../bakes/hall-kitchen.toml", "--too-little", a.between(5, 30, 0, "g salt"), "--restore",
			a.one("hydration and salt", "hydration", "all")}
	},
	"loss, all said": func(a questioner) []string {
		return []string{"loss", "--baked", a.between(300, 1500, 0, "g"), "--loss", a.between(9, 16, 1, "%"), "--basis",
			a.one("of dough", "of bread"), "--cooling", a.between(0.5, 3, 1, "%")}
	},
	"solids of rich bread": func(a questioner) []string {
		return []string{"loss", "--hydration", a.between(58, 80, 0, "%"), "--other-solids", a.between(2, 20, 0, "%")}
	},
	"mixer by its manual": func(a questioner) []string {
		return flags([]string{"mixer", "--mixer", "planetary", "--bowl", "7L", "--dough", a.between(1500, 4000, 0, "g"),
			"--flour", "900g", "--water", "560g", "--kind", a.one("wheat", "whole grain", "rye", "enriched", "pizza"),
			"--rated", a.between(1000, 3000, 0, "g"), "--water-temperature", a.between(5, 25, 0, "C")}, a.maybe("--high-gluten"))
	},
	"sticking, all said": func(a questioner) []string {
		return flags([]string{"sticking", "--mixer", "planetary", "--bowl", "7L", "--dough", "1900g", "--flour", "1100g",
			"--water", a.between(650, 780, 0, "g"), "--mixing", a.between(8, 20, 0, "min"), "--rested", "--kind",
			a.one("wheat", "enriched"), "--temperature", a.between(22, 29, 0, "C"), "--rated", "2500g", "--water-temperature",
			a.between(8, 25, 0, "C")}, a.maybe("--added", a.between(5, 30, 0, "g")), a.maybe("--high-gluten"),
			a.maybe("--fat-in"))
	},
	"rounds, all said": func(a questioner) []string {
		return flags([]string{"oven", "--pieces", strconv.Itoa(2 + a.IntN(6)), "--dough", a.between(600, 1200, 0, "g"),
			"--style", a.one("lean hearth", "wholegrain", "mixed rye"), "--shape", a.one("round", "long"), "--covered",
			a.between(10, 20, 0, "min"), "--uncovered", a.between(15, 30, 0, "min"), "--preheat", a.between(30, 60, 0, "min"),
			"--reheat", a.between(5, 15, 0, "min"), "--together", "2"}, a.maybe("--cold"), a.maybe("--rescore"))
	},
	"rounds by a bake": func(a questioner) []string {
		return flags([]string{"oven", "240C", "--then", a.between(200, 230, 0, "C"), "--pieces", "3", "--dough",
			a.between(700, 1200, 0, "g"), "--known-dough", "900g", "--known-time", a.between(38, 55, 0, "min")},
			a.maybe("--extrapolate"))
	},
	"bagels": func(a questioner) []string {
		return []string{"oven", "--style", "bagel", "--pieces", strconv.Itoa(6 + a.IntN(20)), "--dough", "110g", "--together",
			strconv.Itoa(4 + a.IntN(8))}
	},
	"scald to": func(a questioner) []string {
		return []string{"scald", "--flour-weight", "200g", "--flour", "20C", "--water-weight", a.between(300, 700, 0, "g"),
			"--mash", a.between(60, 72, 0, "C")}
	},
	"table of levains": func(a questioner) []string {
		return flags([]string{"table", "bulk", "--amounts", "8%,16%", "--temperatures", a.between(19, 21, 0, "C,25C"),
			"--hydration", a.between(62, 80, 0, "%"), "--salt", "1.8%", "--rise", a.between(40, 100, 0, "%"), "--whole-grain",
			a.between(0, 50, 0, "%")}, a.maybe("--curve", "trade-q10"))
	},
	"table of yeasts": func(a questioner) []string {
		return []string{"table", "bulk", "--yeast", a.one("fresh", "instant"), "--temperatures", "22C,26C"}
	},
	"table of waters": func(a questioner) []string {
		by := []string{"--mixer", a.one("planetary", "spiral")}
		if a.IntN(2) == 0 {
			by = a.maybe("--warming", a.between(2, 8, 0, "dC"))
		}
		return flags([]string{"table", "water", "--dough", a.between(23, 27, 0, "C"), "--flour", "16C,22C", "--room",
			"18C,24C"}, by, a.maybe("--levain", a.between(20, 27, 0, "C")))
	},
	"basket by size": func(a questioner) []string {
		return []string{"vessel", "basket", "--diameter", a.between(18, 26, 0, "cm"), "--height", a.between(7, 10, 1, "cm")}
	},
	"oval basket": func(a questioner) []string {
		return []string{"vessel", "basket", "--length", a.between(24, 34, 0, "cm"), "--width", a.between(13, 18, 0, "cm"),
			"--height", a.between(6, 7, 1, "cm")}
	},
	"basket by water": func(a questioner) []string {
		return []string{"vessel", "basket", "--volume", a.between(1, 3, 1, "L")}
	},
	"bowl": func(a questioner) []string {
		return flags([]string{"vessel", "bowl"}, [][]string{{"--dough", a.between(400, 1800, 0, "g")},
			{"--volume", a.between(1, 3, 1, "L")}, {"--diameter", "22cm", "--height", a.between(7, 10, 1, "cm")},
			{"--length", "28cm", "--width", "16cm", "--height", "8cm"}}[a.IntN(4)])
	},
	"piece": func(a questioner) []string {
		return [][]string{
			{"vessel", "piece", "--bread", "tall focaccia", "--length", a.between(30, 45, 0, "cm"), "--width", "30cm"},
			{"vessel", "piece", "--bread", "Neapolitan pizza", "--dough", a.between(200, 300, 0, "g")},
			{"vessel", "piece", "--bread", "pan pizza", "--diameter", a.between(20, 32, 0, "cm")},
		}[a.IntN(3)]
	},
	"tin by its floor": func(a questioner) []string {
		return []string{"vessel", "tin", "--size", "30x11x9cm", "--base", "28x" + a.between(8, 10, 1, "cm"), "--loaf", "rye"}
	},
	"tin for a dough": func(a questioner) []string {
		return []string{"vessel", "tin", "--dough", a.between(500, 1500, 0, "g"), "--loaf", a.one("open white", "lidded")}
	},
	"tin by one's own": func(a questioner) []string {
		return []string{"vessel", "tin", "--volume", a.between(1, 3, 1, "L"), "--own-volume", "1.8L", "--own-dough",
			a.between(600, 900, 0, "g")}
	},
	"jar, all said": func(a questioner) []string {
		return []string{"vessel", "jar", "--diameter", "6cm", "--height", "14cm", "--density", a.between(1.05, 1.15, 2, ""),
			"--rise", a.between(80, 200, 0, "%")}
	},
	"square tub": func(a questioner) []string {
		return []string{"vessel", "tub", "--width", "20cm", "--depth", "20cm", "--height", "25cm", "--dough",
			a.between(1000, 4000, 0, "g"), "--density", a.between(1.05, 1.15, 2, "")}
	},
	"water, all said": func(a questioner) []string {
		return []string{"water", "--dough", a.between(23, 27, 0, "C"), "--flour", a.between(16, 28, 0, "C"), "--room",
			a.between(16, 28, 0, "C"), "--levain", "22C", "--levain-weight", "300g", "--levain-hydration",
			a.between(50, 110, 0, "%"), "--flour-weight", "1kg", "--water-weight", "600g", "--tap", "14C", "--ice", "-18C",
			"--mixer", "spiral", "--balance"}
	},
	"water with a soaker": func(a questioner) []string {
		return []string{"water", "--dough", "25C", "--flour", "21C", "--room", "22C", "--other", "soaker=" +
			a.between(6, 22, 0, "C"), "--mixer", "planetary", "--mixing", a.between(5, 15, 0, "min"), "--water-weight", "800g",
			"--tap", "12C"}
	},
	"fitted": func(questioner) []string { return []string{"plan", "../../bakes/same-day-rolls.toml", "--fit"} },
	"learned": func(questioner) []string {
		return []string{"plan", "../../bakes/hall-kitchen.toml", "--learned", "--log", "LOG"}
	},
	"lessons": func(a questioner) []string {
		return flags([]string{"learn", "--log", "LOG"}, a.maybe("--half-life", "30d"), a.maybe("--pool", "Vreni=LOG"))
	},
	"a cup of flour": func(a questioner) []string {
		return []string{"convert", a.between(1, 5, 0, "cups"), "bread flour", "--method", a.one("sifted", "spooned", "scooped")}
	},
}
