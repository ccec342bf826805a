package bakeday

// fileExamples are what the keys of a bake file look like, by table and key, or by key where they are alike in each.
var fileExamples = map[string]string{
	".name": "Saturday rye", ".salt_weight": "20 g",
	"bulk.box": "26 °C", "bulk.fold_every": "30m", "bulk.fold_takes": "5m", "bulk.rise": "75 %", "bulk.shape_at": "50 %",
	"bulk.lamination.after": "1h", "bulk.lamination.rest": "30m", "bulk.lamination.takes": "15m",
	"flour.name": "whole rye flour", "flour.percent": "25 %", "flour.temperature": "18 °C", "flour.water": "14 %",
	"inclusion.name": "walnuts", "inclusion.percent": "15 %", "inclusion.water": "4 %",
	"liquid.name": "milk", "liquid.percent": "70 %", "liquid.temperature": "5 °C", "liquid.water": "88 %",
	"other.name": "butter", "other.percent": "5 %", "other.water": "16 %",
	"kitchen.altitude": "1150 m", "kitchen.day": "24 °C", "kitchen.fine_scale": "0.1 g", "kitchen.flour": "19 °C",
	"kitchen.half_life": "30 days", "kitchen.ice": "-18 °C", "kitchen.name": "the village hall", "kitchen.night": "18 °C",
	"kitchen.refrigerator": "4 °C",
	"kitchen.scale":        "1 g", "kitchen.zone": "Europe/Zurich", "kitchen.tap": "12 °C", "kitchen.mixer.bowl": "7 L",
	"kitchen.mixer.washing": "15m",
	"kitchen.oven.cools":    "10m", "kitchen.oven.hottest": "250 °C", "kitchen.oven.warms": "2m",
	"levain.culture_at_hand": "60 g", "levain.culture_hydration": "100 %", "levain.fed_ago": "5h",
	"levain.flour": "whole rye flour", "levain.hydration": "100 %", "levain.inoculation": "20 %",
	"levain.name": "rye levain", "levain.prefermented": "15 %", "levain.takes": "10m", "levain.temperature": "26 °C",
	"levain.weight": "150 g",
	"loaves.baked":  "800 g", "loaves.fresh_within": "12h", "loaves.loss": "13 %", "loaves.scaling": "920 g",
	"mixing.takes": "25m", "mixing.temperature": "25 °C", "mixing.warming": "5 Δ°C",
	"note.says": "seeds on top", "note.step": "fold",
	"oven.covered": "20m", "oven.preheat": "45m", "oven.reheat": "10m", "oven.rescore_after": "5m",
	"oven.temperature": "245 °C", "oven.then": "225 °C", "oven.turn_after": "25m", "oven.uncovered": "20m",
	"preferment.at_least": "10h", "preferment.at_most": "14h", "preferment.flour": "bread flour",
	"preferment.liquid":    "whole milk",
	"preferment.hydration": "100 %", "preferment.name": "poolish", "preferment.prefermented": "20 %",
	"preferment.salt": "0.2 %", "preferment.takes": "10m", "preferment.temperature": "20 °C",
	"preferment.weight": "300 g", "preferment.yeast": "0.1 %",
	"retard.at_least": "8h", "retard.at_most": "16h", "retard.warm_up": "1h", "shaping.takes": "40m",
	"soaker.at_least": "2h", "soaker.at_most": "12h", "soaker.name": "soaked seeds", "soaker.takes": "5m",
	"soaker.temperature": "20 °C", "soaker.part.name": "water", "soaker.part.percent": "10 %",
	"soaker.part.weight": "60 g",
	"at_hand":            "500 g", "temperature": "20 °C", "weight": "500 g",
}

// leverExamples are the two ends of a list of them.
var leverExamples = map[string][]string{
	"box": {"23 °C", "28 °C"}, "inoculation": {"10 %", "30 %"}, "prefermented": {"8 %", "18 %"}, "retard": {"8h", "16h"},
	"temperature": {"23 °C", "27 °C"},
}

// fileExample is what a key of a table looks like, or the two ends of a list; nothing where its form says it.
func fileExample(table, key string) []string {
	if table == "levers" {
		return leverExamples[key]
	}
	if own, found := fileExamples[table+"."+key]; found {
		return []string{own}
	}
	if alike, found := fileExamples[key]; found {
		return []string{alike}
	}
	return nil
}
