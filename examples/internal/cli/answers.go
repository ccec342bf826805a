package cli

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/examples/internal/tomlbind"
	"example.org/maslin/schedule/bakeday"
	"example.org/maslin/schedule/wallclock"
)

// What a baker answers becomes what a bake file holds: a text that reads as it is stays as it was given.

// inUnit reads a quantity; a number alone is in the unit, and "none" is nothing where that can be.
func inUnit[T any](parse func(string) (T, error), unit string) func(string) (string, error) {
	return func(text string) (string, error) {
		if _, err := parse(text); err == nil {
			return text, nil
		}
		bare := text
		if none[strings.ToLower(text)] {
			bare = "0"
		}
		if _, err := parse(bare + " " + unit); err == nil {
			return bare + " " + unit, nil
		}
		_, err := parse(text)
		return text, err
	}
}

var none = map[string]bool{"none": true, "no": true, "nothing": true}

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
func (b *newBake) ofFlour(isWater bool) func(string) (string, error) {
	percent := inUnit(quantity.ParsePercent, "%")
	return func(text string) (string, error) {
		weight, err := quantity.ParseMass(text)
		pieces, bad := strconv.Atoi(b.Pieces)
		baked, unread := quantity.ParseMass(b.Baked)
		if err != nil || bad != nil || unread != nil {
			return percent(text)
		}
		loss, err := bake.LeanHearth.LossOfBread(baked)
		if err != nil {
			return text, err
		}
		scaled, err := bake.PromisedLoaf{Baked: baked, Loss: loss.Loss.Likely}.Scaling()
		if err != nil {
			return text, err
		}
		dry := scaled.Dough.Times(int64(pieces)).Sub(weight) // flour and salt, where the weight is the water's
		others := quantity.NewPercent(102)
		if !isWater {
			hydration, _ := quantity.ParsePercent(b.Hydration)
			dry, others = dry.Add(weight), others.Add(hydration)
		}
		if dry.Sign() <= 0 || weight.Sign() < 0 {
			return text, fmt.Errorf("got %s, want less than all the dough, about %s", text,
				scaled.Dough.Times(int64(pieces)).Text(quantity.Gram, 0))
		}
		return weight.PercentOf(dry.Over(others)).Text(1), nil
	}
}

// oneWord reads one of a few words, or another that a baker has for it.
func oneWord(known []string, others map[string]string) func(string) (string, error) {
	return func(text string) (string, error) {
		word := strings.ToLower(strings.Join(strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == '-' }),
			" "))
		if as, ok := others[word]; ok {
			word = as
		}
		if slices.Contains(known, word) {
			return word, nil
		}
		wrong := fmt.Sprintf("got %s, want %s", quantity.Excerpt(text), strings.Join(known, " or "))
		if near := tomlbind.Suggest(word, known); near != "" {
			wrong += "; did you mean " + near + "?"
		}
		return text, errors.New(wrong)
	}
}

var (
	leavens = oneWord([]string{"levain", "yeast"}, map[string]string{
		"sourdough": "levain", "starter": "levain", "culture": "levain", "wild yeast": "levain", "leaven": "levain",
		"instant yeast": "yeast", "dry yeast": "yeast", "baker's yeast": "yeast", "commercial yeast": "yeast",
	})
	yesOrNo = oneWord([]string{"yes", "no"}, map[string]string{"y": "yes", "n": "no", "none": "no"})
)

// mixerWord reads how a dough is kneaded.
func mixerWord(text string) (string, error) {
	word, err := oneWord([]string{"hand", "planetary", "spiral", "fork", "processor"}, map[string]string{
		"by hand": "hand", "none": "hand", "no": "hand", "no mixer": "hand", "stand mixer": "planetary",
		"planetary mixer": "planetary",
		"kitchen machine": "planetary", "spiral mixer": "spiral", "fork mixer": "fork", "food processor": "processor",
	})(text)
	if err != nil {
		_, err = mixing.ParseMixerKind(text)
	}
	return word, err
}

// nameText reads what a bread is called.
func nameText(text string) (string, error) {
	if strings.TrimSpace(text) == "" || len(text) > 200 {
		return text, errors.New("want a name of 1 to 200 bytes")
	}
	return text, nil
}

// countText reads how many loaves.
func countText(text string) (string, error) {
	if n, err := strconv.Atoi(text); err != nil || n < 1 || n > 1000 {
		return text, fmt.Errorf("got %s, want a number, 1 to 1000", quantity.Excerpt(text))
	}
	return text, nil
}

var twelveHours = regexp.MustCompile(`(?i)\b(\d{1,2})(?::(\d{2}))?\s*([ap])\.?m\.?`)

// wish reads when the bread is wanted: "Saturday 12:30", "tomorrow 10:00", "Sunday 10 am".
func wish(now time.Time) func(string) (string, error) {
	return func(text string) (string, error) {
		said := twelveHours.ReplaceAllStringFunc(text, func(part string) string {
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
			return fmt.Sprintf("%d:%s", hour, m[2])
		})
		day := wallclock.DateOf(now, now.Location())
		first, rest, _ := strings.Cut(strings.Replace(said, "noon", "12:00", 1), " ")
		switch strings.ToLower(first) {
		case "today":
			first = day.String()
		case "tomorrow":
			first = day.AddDays(1).String()
		}
		said = strings.TrimSpace(first + " " + strings.TrimPrefix(strings.TrimSpace(rest), "at "))
		_, err := bakeday.ParseWish(said)
		return said, err
	}
}
