package food

// germanFood is the English name, as people type it, of a food named in German; nothing for another word.
func germanFood(word string) string {
	switch word {
	case "mehl", "weizenmehl", "weißmehl", "weissmehl":
		return "flour"
	case "brotmehl", "backmehl", "ruchmehl":
		return "bread flour"
	case "vollkornmehl", "weizenvollkornmehl", "vollkorn-weizenmehl":
		return "whole-wheat flour"
	case "roggenmehl":
		return "rye flour"
	case "roggenvollkornmehl":
		return "dark rye flour"
	case "reismehl":
		return "rice flour"
	case "grieß", "griess", "hartweizengrieß", "hartweizengriess":
		return "semolina"
	case "haferflocken":
		return "rolled oats"
	case "weizenkleie", "kleie":
		return "wheat bran"
	case "wasser":
		return "water"
	case "milch", "vollmilch":
		return "milk"
	case "buttermilch":
		return "buttermilk"
	case "joghurt", "jogurt", "naturjoghurt":
		return "yogurt"
	case "sahne", "rahm", "schlagsahne", "schlagobers":
		return "cream"
	case "ei", "eier":
		return "egg"
	case "eiweiß", "eiweiss", "eiklar":
		return "egg white"
	case "eigelb", "dotter":
		return "egg yolk"
	case "öl", "pflanzenöl", "rapsöl", "sonnenblumenöl":
		return "oil"
	case "olivenöl":
		return "olive oil"
	case "honig":
		return "honey"
	case "ahornsirup":
		return "maple syrup"
	case "melasse":
		return "molasses"
	case "zucker":
		return "sugar"
	case "salz":
		return "salt"
	case "meersalz", "grobes salz":
		return "sea salt"
	case "trockenhefe", "hefe":
		return "dry yeast"
	}
	return ""
}
