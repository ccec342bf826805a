package food

// sr28Row is one line of the table as it is printed: grams in 100 g.
type sr28Row struct {
	ndb, name           string
	water, protein, ash float64
}

// unread stands where a figure of the table was not read.
const unread = -1

// sr28 is a selection of the USDA National Nutrient Database for Standard Reference, release 28 (public
// domain), by NDB number: water, protein and, for some flours, ash. The names are our own.
func sr28() []sr28Row {
	return []sr28Row{
		{"01077", "Milk, whole", 88.13, 3.15, 0},
		{"01079", "Milk, 2 % fat", 89.21, 3.30, 0},
		{"01082", "Milk, 1 % fat", 89.92, unread, 0},
		{"01085", "Milk, skim", 90.84, 3.37, 0},
		{"01088", "Buttermilk, low-fat", 90.13, 3.31, 0},
		{"01230", "Buttermilk, whole", 87.91, unread, 0},
		{"01090", "Milk powder, whole", 2.47, unread, 0},
		{"01091", "Milk powder, skim", 3.16, 36.16, 0},
		{"01116", "Yogurt, whole", 87.90, unread, 0},
		{"01117", "Yogurt, low-fat", 85.07, unread, 0},
		{"01118", "Yogurt, skim", 85.23, unread, 0},
		{"01256", "Yogurt, Greek, nonfat", 85.10, unread, 0},
		{"01053", "Cream, heavy", 57.81, unread, 0},
		{"01036", "Ricotta, whole", 71.70, unread, 0},
		{"01017", "Cream cheese", 52.62, unread, 0},
		{"01123", "Egg, whole", 76.15, 12.56, 0},
		{"01124", "Egg white", 87.57, 10.90, 0},
		{"01125", "Egg yolk", 52.31, 15.86, 0},
		{"01001", "Butter, salted", 15.87, unread, 0},
		{"01145", "Butter, unsalted", 17.94, unread, 0},
		{"04002", "Lard", 0, unread, 0},
		{"04053", "Olive oil", 0, unread, 0},
		{"19296", "Honey", 17.10, unread, 0},
		{"19352", "Malt syrup", 21.10, unread, 0},
		{"19353", "Maple syrup", 32.39, unread, 0},
		{"19304", "Molasses", 21.87, unread, 0},
		{"19351", "Corn syrup, high-fructose", 24.00, unread, 0},
		{"19335", "Sugar, white", 0.02, unread, 0},
		{"19334", "Sugar, brown", 1.34, unread, 0},
		{"11365", "Potato, boiled in skin, flesh", 76.98, unread, 0},
		{"11367", "Potato, boiled without skin", 77.46, unread, 0},
		{"11371", "Potato, mashed with milk and margarine", 75.25, unread, 0},
		{"11424", "Pumpkin, canned", 89.97, unread, 0},
		{"09040", "Banana", 74.91, unread, 0},
		{"09298", "Raisins", 15.43, unread, 0},
		{"12220", "Flaxseed", 6.96, unread, 0},
		{"12036", "Sunflower seeds", 4.73, unread, 0},
		{"12023", "Sesame seeds", 4.69, unread, 0},
		{"18374", "Yeast, fresh", 69.00, unread, 0},
		{"18375", "Yeast, active dry", 5.08, unread, 0},
		{"02047", "Salt", 0.20, unread, 0},
		{"14411", "Water, tap", 99.90, unread, 0},
		{"20083", "Wheat flour, white, bread", 13.36, 11.98, 0.47},
		{"20081", "Wheat flour, white, all-purpose, bleached", 11.92, 10.33, 0.47},
		{"20084", "Wheat flour, white, cake", 12.51, 8.20, 0},
		{"20082", "Wheat flour, white, self-raising", 10.59, 9.89, 0},
		{"20080", "Wheat flour, whole-grain", 10.74, 13.21, 1.58},
		{"20649", "Wheat flour, whole-grain, soft", 12.42, 9.61, 0},
		{"20065", "Rye flour, light", 11.40, 9.82, 0},
		{"20064", "Rye flour, medium", 10.97, 10.88, 0},
		{"20063", "Rye flour, dark", 10.75, 15.91, 0},
		{"20130", "Barley flour", 12.11, 10.50, 0},
		{"20140", "Spelt, uncooked", 11.02, 14.57, 0},
		{"20066", "Semolina", 12.67, 12.68, 0},
		{"20061", "Rice flour, white", 11.89, 5.95, 0},
		{"20077", "Wheat bran", 9.89, unread, 0},
		{"20078", "Wheat germ", 11.12, 23.15, 0},
		{"48052", "Vital wheat gluten", 8.20, 75.16, 0},
	}
}
