package bakeday

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/nearest"
	"example.org/maslin/schedule/wallclock"
)

// The words of a file for what a baker has many words for.
const (
	levainWord, yeastWord = "levain", "yeast"
	yesWord, noWord       = "yes", "no"
	handWord              = "hand"
)

var (
	leavens = []string{levainWord, yeastWord}
	answers = []string{yesWord, noWord}
	mixers  = []string{handWord, "planetary", "spiral", "fork", "processor"}
)

// otherWords are those that bakers have, in English and German.
var otherWords = map[string]string{
	"sourdough": levainWord, "starter": levainWord, "culture": levainWord, "wild yeast": levainWord,
	"leaven": levainWord, "sauerteig": levainWord,
	"instant yeast": yeastWord, "dry yeast": yeastWord, "baker's yeast": yeastWord, "commercial yeast": yeastWord,
	"hefe": yeastWord,
	"y":    yesWord, "ja": yesWord, "j": yesWord, "n": noWord, "nein": noWord,
	"by hand": handWord, "no mixer": handWord, "von hand": handWord, "stand mixer": "planetary",
	"planetary mixer": "planetary", "kitchen machine": "planetary", "küchenmaschine": "planetary",
	"spiral mixer": "spiral", "spiralkneter": "spiral", "fork mixer": "fork", "food processor": "processor",
}

var none = map[string]bool{"none": true, "no": true, "nothing": true, "kein": true, "keine": true, "nichts": true}

// read is an answer as a bake file holds it: a text that reads as it is stays as it was given.
func (b NewBread) read(key, text string, clock KitchenClock) (string, error) {
	switch key {
	case "name":
		return nameOf(text)
	case "pieces":
		return countOf(text)
	case "baked":
		return inUnit(text, quantity.ParseMass, "g")
	case "hydration", "rye":
		return b.ofFlour(key == "hydration", text)
	case "leaven":
		return oneOf(text, leavens)
	case "cold":
		if none[strings.ToLower(text)] {
			return noWord, nil
		}
		return oneOf(text, answers)
	case "mixer":
		if none[strings.ToLower(text)] {
			return handWord, nil
		}
		return oneOf(text, mixers)
	case "bowl":
		return inUnit(text, quantity.ParseVolume, "L")
	case "wanted":
		return wish(text, clock)
	case "altitude":
		return inUnit(text, quantity.ParseLength, "m")
	case "day", "night", "tap":
		return warmth(text)
	}
	return text, nil
}

// inUnit reads a quantity; a number alone is in the unit, and "none" is nothing where that can be.
func inUnit[T any](text string, parse func(string) (T, error), unit string) (string, error) {
	_, err := parse(text)
	if err == nil {
		return text, nil
	}
	bare := text
	if none[strings.ToLower(text)] {
		bare = "0"
	}
	if _, inUnit := parse(bare + " " + unit); inUnit == nil {
		return bare + " " + unit, nil
	}
	return text, err
}

// warmth reads a temperature; of a number alone it takes the scale in which a kitchen is so warm.
func warmth(text string) (string, error) {
	n, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
	switch {
	case err == nil && n >= 0 && n <= 38:
		return text + " °C", nil
	case err == nil && n > 38 && n <= 100:
		return text + " °F", nil
	}
	_, err = quantity.ParseTemperature(text)
	return text, err
}

// ofFlour reads a percentage of the flour, or a weight in all the dough. The flour is what the dough holds beside the
// water and 2 % salt.
func (b NewBread) ofFlour(isWater bool, text string) (string, error) {
	weight, err := quantity.ParseMass(text)
	pieces, bad := strconv.Atoi(b.Pieces)
	baked, unread := quantity.ParseMass(b.Baked)
	if err != nil || bad != nil || unread != nil {
		return inUnit(text, quantity.ParsePercent, "%")
	}
	loss, err := bake.LeanHearth.LossOfBread(baked)
	if err != nil {
		return text, err
	}
	scaled, err := bake.PromisedLoaf{Baked: baked, Loss: loss.Loss.Likely}.Scaling()
	if err != nil {
		return text, err
	}
	all := scaled.Dough.Times(int64(pieces))
	dry, others := all.Sub(weight), quantity.NewPercent(102) // flour and salt, where the weight is the water's
	if !isWater {
		hydration, _ := quantity.ParsePercent(b.Hydration) // read when it was given
		dry, others = all, others.Add(hydration)
	}
	if dry.Sign() <= 0 || weight.Sign() < 0 {
		return text, &quantity.InputError{Got: quantity.Excerpt(text), Err: quantity.ErrOutOfRange,
			Want: quantity.Tell("bakeday.want_less_than_dough", "less than all the dough, about %.0f", all)}
	}
	return weight.PercentOf(dry.Over(others)).Text(1), nil
}

// oneOf reads one of a few words, or another that a baker has for it.
func oneOf(text string, known []string) (string, error) {
	apart := func(r rune) bool { return r == ' ' || r == '-' }
	word := strings.ToLower(strings.Join(strings.FieldsFunc(text, apart), " "))
	if as, ok := otherWords[word]; ok {
		word = as
	}
	if slices.Contains(known, word) {
		return word, nil
	}
	most := len(known) - 1
	want := quantity.Tell("bakeday.want_one_of_words", "%s or %s", strings.Join(known[:most], ", "), known[most])
	if near := nearest.Word(word, known); near != "" {
		want = quantity.Tell("bakeday.want_did_you_mean", "%v; did you mean %s?", want, near)
	}
	return text, &quantity.InputError{Got: quantity.Excerpt(text), Want: want, Err: quantity.ErrOutOfRange}
}

// nameOf reads what a bread is called.
func nameOf(text string) (string, error) {
	if len(text) > 200 {
		return text, &quantity.InputError{Got: quantity.Excerpt(text), Err: quantity.ErrOutOfRange,
			Want: quantity.Tell("bakeday.want_name_of_bytes", "a name of 1 to 200 bytes")}
	}
	return text, nil
}

// countOf reads how many loaves.
func countOf(text string) (string, error) {
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 || n > 1000 {
		return text, &quantity.InputError{Got: quantity.Excerpt(text), Err: quantity.ErrOutOfRange,
			Want: quantity.Tell("bakeday.want_count_of_loaves", "a number, 1 to 1000")}
	}
	return strconv.Itoa(n), nil
}

// wish reads when the bread is wanted: "Saturday 12:30", "tomorrow 10:00", "Sunday 10 am".
func wish(text string, clock KitchenClock) (string, error) {
	twelveHours := regexp.MustCompile(`(?i)\b(\d{1,2})(?::(\d{2}))?\s*([ap])\.?m\.?`)
	text = twelveHours.ReplaceAllStringFunc(text, func(part string) string {
		m := twelveHours.FindStringSubmatch(part)
		hour, _ := strconv.Atoi(m[1])
		if hour < 1 || hour > 12 {
			return part
		}
		if hour %= 12; strings.EqualFold(m[3], "p") {
			hour += 12
		}
		if m[2] == "" {
			m[2] = "00"
		}
		return strconv.Itoa(hour) + ":" + m[2]
	})
	first, rest, _ := strings.Cut(strings.Replace(text, "noon", "12:00", 1), " ")
	if clock.Zone != nil {
		today := wallclock.DateOf(clock.Now, clock.Zone)
		switch strings.ToLower(first) {
		case "today", "heute":
			first = today.String()
		case "tomorrow", "morgen":
			first = today.AddDays(1).String()
		}
	}
	if day, ok := germanDays[strings.ToLower(first)]; ok {
		first = day
	}
	rest = strings.TrimSpace(rest)
	for _, at := range []string{"at ", "um "} {
		rest = strings.TrimPrefix(rest, at)
	}
	whole := strings.TrimSpace(first + " " + strings.TrimSpace(strings.TrimSuffix(rest, "Uhr")))
	if _, err := ParseWish(whole); err != nil {
		return text, err
	}
	return whole, nil
}

var germanDays = map[string]string{
	"montag": "Monday", "dienstag": "Tuesday", "mittwoch": "Wednesday", "donnerstag": "Thursday", "freitag": "Friday",
	"samstag": "Saturday", "sonnabend": "Saturday", "sonntag": "Sunday",
}

// toAnswers names errors of a bake by the answers that they come from. Other errors stay as they are.
func toAnswers(err error) error {
	found := quantity.InputErrors(err)
	if len(found) == 0 {
		return err
	}
	var p quantity.Problems
	for _, e := range found {
		moved := *e
		for _, of := range answered {
			if strings.HasPrefix(e.Path, of.path) {
				moved.Path, moved.GoPath = of.key, of.key
				break
			}
		}
		p.Join("", &moved)
	}
	return p.Err()
}

// answered says which answer a part of the bake comes from.
var answered = [...]struct{ path, key string }{
	{"name", "name"}, {"loaves.pieces", "pieces"}, {"loaves.baked", "baked"}, {"loaves", "baked"},
	{"liquid", "hydration"}, {"salt", "hydration"}, {"mixing.water", "hydration"},
	{"flour", "rye"}, {"mixing.mixer", "mixer"}, {"kitchen.mixer", "bowl"},
	{"kitchen.zone", "zone"}, {"wanted", "wanted"}, {"kitchen.altitude", "altitude"}, {"kitchen.day", "day"},
	{"kitchen.night", "night"}, {"kitchen.tap", "tap"},
}
