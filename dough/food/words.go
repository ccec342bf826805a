package food

import (
	"slices"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// ReadVolume reads an amount of a food as people type it: "2 1/4 tsp instant yeast", "1 cup sifted bread flour", "½
// c. of honey", "a pinch of salt", "3 large eggs", "1 stick butter", "1 packet dry yeast", "2 cups flour".
//
// A stick of butter is a quarter of a pound and half a cup, a packet of yeast 2¼ teaspoons, a pinch 1/16 and a dash
// 1/8 of a teaspoon (common practice),
// a large egg 50 g without its shell, its white 33, its yolk 17 (USDA). A heaping spoon is taken as one and a half, a
// scant one as nine tenths (from memory). EL and TL are spoons of 15 and 5 mL, and foods may be named in German; a
// Tasse is refused, since no two kitchens mean the same by it. Flour without a kind is all-purpose. How the words
// were read stands in the Notes of the result. The food still needs its [FillMethod] where it packs. Errors: ErrUnit
// for a text without an amount, ErrRequired without a food; a food that is not listed is told by [FoodVolume.Weight].
func ReadVolume(text string) (FoodVolume, error) {
	var v FoodVolume
	refuse := func(reason error) (FoodVolume, error) {
		return FoodVolume{}, &quantity.InputError{
			Got: quantity.Excerpt(text), Want: quantity.Tell("food.want_amount_and_food_2_1",
				`an amount and a food, such as "2 1/4 tsp instant yeast"`), Err: reason,
		}
	}
	if len(text) > mostTyped {
		return refuse(quantity.ErrOutOfRange)
	}
	words := strings.Fields(text)
	if len(words) == 0 {
		return refuse(quantity.ErrRequired)
	}
	number, words := leadingNumber(words)
	words, factor := v.manner(words)
	if len(words) > 0 && slices.Contains([]string{"tasse", "tassen"}, strings.ToLower(words[0])) {
		return FoodVolume{}, &quantity.InputError{
			Got: quantity.Excerpt(text), Want: quantity.Tell("food.want_milliliters_for_tasse",
				`milliliters or dl: a Tasse is anything from 125 to 250 mL`), Code: noSize, Err: quantity.ErrUnit,
		}
	}
	per, rest, ok := v.measure(number, words)
	if !ok {
		return refuse(quantity.ErrUnit)
	}
	v.Volume = per
	if factor != 1 {
		v.Volume = quantity.Milliliters(per.Milliliters() * factor)
	}
	v.name(rest)
	if v.Food == "" {
		return refuse(quantity.ErrRequired)
	}
	v.packed()
	return v, nil
}

// packed takes a packet of yeast as what it is filled with, not as what so many spoons of yeast weigh, and a stick of
// butter as the quarter of a pound that it is sold as: a cup is printed as 227 g, of which half is 113.5.
func (v *FoodVolume) packed() {
	if slices.Contains(v.Notes, stick) {
		v.Measures = []FoodMeasure{{v.Food, Leveled, quantity.MustVolume("0.5 cup"), quantity.Ounces(4),
			sources.Practice("a stick of butter is a quarter of a pound, in the United States")}}
		return
	}
	if !slices.Contains(v.Notes, packet) {
		return
	}
	for _, m := range FoodMeasures() {
		if m.Food == v.Food && m.Per == quantity.MustVolume("2.25 tsp") {
			v.Measures = []FoodMeasure{m}
		}
	}
}

var (
	packet = working.Tell("food.packet", "a packet of yeast is 2¼ teaspoons, 7 g")
	stick  = working.Tell("food.stick", "a stick of butter is 4 oz, a quarter of a pound: 113.4 g, half a cup")
)

// noSize is the code of a measure that is known and has no size of its own.
const noSize = "ambiguous_unit"

const mostTyped = 200

// leadingNumber takes the number off the front: "2", "2 1/4", "½", "a"; a unit that sticks to it is cut off. Without
// one it is 1.
func leadingNumber(words []string) (number string, rest []string) {
	if first := strings.ToLower(words[0]); first == "a" || first == "an" {
		return "1", words[1:]
	}
	const signs = "0123456789.,/½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞⁄"
	for len(words) > 0 {
		tail := strings.TrimLeft(words[0], signs)
		if tail == words[0] {
			break
		}
		number = strings.TrimSpace(number + " " + strings.TrimSuffix(words[0], tail))
		words = words[1:]
		if tail != "" {
			words = append([]string{tail}, words...)
			break
		}
	}
	if number == "" {
		number = "1"
	}
	return number, words
}

// manner takes out the words that say how a cup or a spoon was filled.
func (v *FoodVolume) manner(words []string) (rest []string, factor float64) {
	factor = 1
	for _, w := range words {
		switch strings.ToLower(strings.Trim(w, ".,")) {
		case "sifted", "gesiebt", "gesiebtes":
			v.Method = Sifted
		case "spooned":
			v.Method = Spooned
		case "scooped", "dipped":
			v.Method = Scooped
		case "level", "leveled", "levelled", "gestrichen", "gestrichene", "gestrichener": //nolint:misspell // both are typed
		case "heaping", "heaped", "rounded", "gehäuft", "gehäufte", "gehäufter":
			factor = 1.5
			v.Notes = append(v.Notes, working.Tell("food.heaping", "a heaping spoon is taken as one and a half level ones; it "+
				"may be 1¼ or 2 (from memory)"))
		case "scant":
			factor = 0.9
			v.Notes = append(v.Notes, working.Tell("food.scant", "scant is taken as nine tenths (from memory)"))
		case "of", "large", "warm", "cold", "lukewarm", "melted", "soft", "unsalted", "the":
		default:
			rest = append(rest, w)
		}
	}
	return rest, factor
}

// measure reads the unit, or counts pieces.
func (v *FoodVolume) measure(number string, words []string) (volume quantity.Volume, rest []string, ok bool) {
	if len(words) == 0 {
		return volume, nil, false
	}
	times := func(ml float64, note working.Message) (quantity.Volume, []string, bool) {
		n, err := quantity.ParseVolume(number + " L")
		if err != nil {
			return volume, nil, false
		}
		if !note.IsZero() {
			v.Notes = append(v.Notes, note)
		}
		return quantity.Milliliters(n.Liters() * ml), words[1:], true
	}
	const cup, tsp = 236.5882365, 236.5882365 / 48
	unit := strings.ToLower(strings.TrimSuffix(words[0], "."))
	switch unit {
	case "egg", "eggs":
		volume, rest, ok = times(50*cup/243, working.Tell("food.large_egg", "a large egg of 50 g without its shell"))
		if len(rest) > 0 && (rest[0] == "white" || rest[0] == "whites") {
			v.Notes = nil
			volume, _, ok = times(33*cup/243, working.Tell("food.large_white", "the white of a large egg, 33 g"))
			return volume, []string{"egg", "white"}, ok
		}
		if len(rest) > 0 && (rest[0] == "yolk" || rest[0] == "yolks") {
			v.Notes = nil
			volume, _, ok = times(17*cup/243, working.Tell("food.large_yolk", "the yolk of a large egg, 17 g"))
			return volume, []string{"egg", "yolk"}, ok
		}
		return volume, append([]string{"egg"}, rest...), ok
	case "stick", "sticks":
		return times(cup/2, stick)
	case "packet", "packets", "package", "packages", "sachet", "sachets", "envelope", "envelopes", "päckchen":
		return times(2.25*tsp, packet)
	case "pinch", "pinches", "prise", "prisen":
		return times(tsp/16, working.Tell("food.pinch", "a pinch is a sixteenth of a teaspoon"))
	case "dash", "dashes":
		return times(tsp/8, working.Tell("food.dash", "a dash is an eighth of a teaspoon"))
	}
	if words[0] == "T" || words[0] == "T." {
		unit = "tbsp"
	}
	for n := min(2, len(words)); n > 0; n-- {
		name := unit
		if n == 2 {
			name = unit + " " + strings.ToLower(words[1])
		}
		typed := unitOf(name)
		if one, err := quantity.ParseVolume(typed); err == nil {
			volume, _, ok = times(one.Milliliters(), working.Message{})
			return volume, words[n:], ok
		}
		if got, err := quantity.ParseVolume(number + " " + typed); err == nil {
			return got, words[n:], true
		}
	}
	return volume, nil, false
}

// unitOf is the unit that a short form stands for.
func unitOf(word string) string {
	switch word {
	case "c":
		return "cup"
	case "t", "tsps", "teasp":
		return "tsp"
	case "tbs", "tbl", "tbsps", "tblsp":
		return "tbsp"
	case "fluid ounce", "fluid ounces", "fl oz.":
		return "fl oz"
	case "el", "esslöffel", "eßlöffel":
		return metricTablespoon
	case "tl", "teelöffel":
		return metricTeaspoon
	}
	return word
}

// Metric spoons, of which there is no unit (common practice).
const (
	metricTablespoon = "15 mL"
	metricTeaspoon   = "5 mL"
)

// name finds the food that the words mean in the list.
func (v *FoodVolume) name(words []string) {
	said := strings.ToLower(strings.Join(words, " "))
	if english := germanFood(said); english != "" {
		said = english
	}
	v.Food = said
	switch strings.TrimSuffix(said, "s") {
	case "flour", "ap flour", "all purpose flour", "plain flour", "white flour":
		v.Food = "all-purpose flour"
		v.Notes = append(v.Notes, working.Tell("food.plain_flour", "read as all-purpose flour"))
	case "strong flour", "strong white flour", "white bread flour":
		v.Food = "bread flour"
	case "whole wheat flour", "wholemeal flour", "wholewheat flour", "whole-grain flour":
		v.Food = "whole-wheat flour"
	case "rye flour", "rye":
		v.Food = "medium rye flour"
		v.Notes = append(v.Notes, working.Tell("food.medium_rye", "read as medium rye flour"))
	case "granulated sugar", "white sugar", "caster sugar":
		v.Food = "sugar"
	case "table salt", "fine salt":
		v.Food = "salt"
	case "kosher salt", "sea salt", "flaky salt":
		v.Food = "coarse salt"
		v.Notes = append(v.Notes, working.Tell("food.coarse_salt", "coarse salts differ by brand: weigh it"))
	case "instant dry yeast", "rapid-rise yeast", "fast-action yeast", "instant dried yeast":
		v.Food = "instant yeast"
	case "yeast", "dry yeast", "dried yeast", "active yeast", "active dried yeast":
		v.Food = "active dry yeast"
		v.Notes = append(v.Notes, working.Tell("food.dry_yeast", "read as active dry yeast"))
	case "vegetable oil", "sunflower oil", "canola oil":
		v.Food = "oil"
	case "whole milk":
		v.Food = "milk"
	case "oat", "porridge oat", "oatmeal", "oat flake", "rolled oat":
		v.Food = "rolled oats"
	case "cream", "whipping cream":
		v.Food = "heavy cream"
	case "egg", "egg white", "egg yolk":
		v.Food = strings.TrimSuffix(said, "s")
	case "water", "butter", "honey":
		v.Food = strings.TrimSuffix(said, "s")
	}
}
