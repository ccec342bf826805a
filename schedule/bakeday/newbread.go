package bakeday

import (
	"cmp"
	"context"
	"strings"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// NewBread is what a baker answers about a bread that is to be written down for the first time: each answer is a text
// that a bake file can hold, in the units in which it was given. The zero value has no answers; [NewBread.Questions]
// says what to ask and what is usual, [NewBread.With] takes an answer as it is said, [NewBread.File] writes the bake
// file and [NewBread.Bake] is the bake.
type NewBread struct {
	Name      string `json:"name,omitzero"`
	Pieces    string `json:"pieces,omitzero"`
	Baked     string `json:"baked,omitzero"`     // each, when cool
	Hydration string `json:"hydration,omitzero"` // water, of the flour
	Rye       string `json:"rye,omitzero"`       // of the flour; the rest is wheat
	Leaven    string `json:"leaven,omitzero"`    // "levain" or "yeast"
	Cold      string `json:"cold,omitzero"`      // "yes" or "no": a night in the refrigerator
	Mixer     string `json:"mixer,omitzero"`
	Bowl      string `json:"bowl,omitzero"`
	Zone      string `json:"zone,omitzero"` // IANA time zone
	Wanted    string `json:"wanted,omitzero"`
	Altitude  string `json:"altitude,omitzero"`
	Day       string `json:"day,omitzero"`   // of the kitchen, at its warmest
	Night     string `json:"night,omitzero"` // at its coldest
	Tap       string `json:"tap,omitzero"`   // the water
}

// BreadQuestion is one thing to ask about a new bread.
type BreadQuestion struct {
	Key   string          `json:"key"` // of the answer
	Says  working.Message `json:"says"`
	Usual string          `json:"usual"` // what stands when nothing is answered; none for the zone
	// Needless says that what is answered already makes the question idle, as that for a bowl is to who kneads by hand.
	Needless bool `json:"needless"`
}

// Questions answers: what has to be known of a new bread, in the order in which a baker would be asked? Accuracy: the
// usual answers are common practice, no source.
func (b NewBread) Questions() []BreadQuestion {
	return []BreadQuestion{
		{"name", working.Tell("bakeday.ask_name", "What is the bread called?"), "Country loaf", false},
		{"pieces", working.Tell("bakeday.ask_pieces", "How many loaves?"), "2", false},
		{"baked", working.Tell("bakeday.ask_baked", "How heavy is each when it is baked and cool?"), "800 g", false},
		{"hydration", working.Tell("bakeday.ask_hydration", "How much water, of the flour?"), "70 %", false},
		{"rye", working.Tell("bakeday.ask_rye",
			"How much of the flour is whole rye? The rest is wheat bread flour."), "15 %", false},
		{"leaven", working.Tell("bakeday.ask_leaven", "What raises it: levain or yeast?"), levainWord, false},
		{"cold", working.Tell("bakeday.ask_cold", "Do the shaped loaves spend the night in the refrigerator: yes or no?"),
			yesWord, b.Leaven == yeastWord},
		{"mixer", working.Tell("bakeday.ask_mixer", "How is it kneaded: hand, planetary, spiral or processor?"),
			handWord, false},
		{"bowl", working.Tell("bakeday.ask_bowl", "How large is the bowl of the mixer?"), "5 L",
			cmp.Or(b.Mixer, handWord) == handWord},
		{"zone", working.Tell("bakeday.ask_zone",
			"In which time zone is the kitchen? Such as Europe/Zurich or America/Denver."), "", false},
		{"wanted", working.Tell("bakeday.ask_wanted", "When is the bread wanted? A day and a time."), "Saturday 12:30",
			false},
		{"altitude", working.Tell("bakeday.ask_altitude", "How high above the sea?"), "0 m", false},
		{"day", working.Tell("bakeday.ask_day", "How warm is the kitchen by day?"), "22 °C", false},
		{"night", working.Tell("bakeday.ask_night", "And by night?"), "19 °C", false},
		{"tap", working.Tell("bakeday.ask_tap", "How cold is the water from the tap?"), "12 °C", false},
	}
}

// answer is where an answer stands; nil for a key that is none.
func (b *NewBread) answer(key string) *string {
	return map[string]*string{
		"name": &b.Name, "pieces": &b.Pieces, "baked": &b.Baked, "hydration": &b.Hydration, "rye": &b.Rye,
		"leaven": &b.Leaven, "cold": &b.Cold, "mixer": &b.Mixer, "bowl": &b.Bowl, "zone": &b.Zone, "wanted": &b.Wanted,
		"altitude": &b.Altitude, "day": &b.Day, "night": &b.Night, "tap": &b.Tap,
	}[key]
}

// Answer is the answer to the question of that key as it stands in the file: the usual one where there is no other.
func (b NewBread) Answer(key string) string {
	to := b.answer(key)
	if to == nil {
		return ""
	}
	for _, q := range b.Questions() {
		if q.Key == key && *to == "" {
			return q.Usual
		}
	}
	return *to
}

// usual fills in what was not answered.
func (b NewBread) usual() NewBread {
	for _, q := range b.Questions() {
		*b.answer(q.Key) = b.Answer(q.Key)
	}
	return b
}

// With answers: how is this answer understood, and can it be? It reads what a baker says: "350 g" of water, "none",
// "stand mixer", "tomorrow 10:00", "70" for a kitchen of 70 °F; the result holds it as a bake file does. An empty text
// takes back what was answered. The clock says which day is tomorrow, and lets the bake be checked as far as the
// answers go; without a zone that is left out. Errors: [quantity.ErrUnit], [quantity.ErrOutOfRange] and those of
// [Bake.Check], with the key as path; [quantity.ErrRequired] for a key that is none.
func (b NewBread) With(key, text string, clock KitchenClock) (NewBread, error) {
	to := b.answer(key)
	var p quantity.Problems
	if to == nil {
		p.Add("key", quantity.Excerpt(key), quantity.Tell("bakeday.want_key_of_question", "the key of a question"),
			quantity.ErrRequired)
		return b, ofQuestion("key", p.Err())
	}
	if text = strings.TrimSpace(text); text == "" {
		*to = ""
		return b, nil
	}
	said, err := b.usual().read(key, text, clock)
	if err != nil {
		return b, ofQuestion(key, err)
	}
	before := b
	*b.answer(key) = said
	if clock.Zone == nil {
		return b, nil
	}
	_, err = b.Bake(clock)
	for _, e := range quantity.InputErrors(err) {
		if e.Path == key {
			p.Join("", e)
		}
	}
	if p.Err() != nil {
		return before, p.Err()
	}
	return b, nil
}

// ofQuestion names an error by its question alone.
func ofQuestion(key string, err error) error {
	var p quantity.Problems
	for _, e := range quantity.InputErrors(err) {
		moved := *e
		moved.Path, moved.GoPath = key, key
		p.Join("", &moved)
	}
	return p.Err()
}

// Bake is the bake that the answers describe, with the usual ones for what was not answered, and what is wrong with it
// by the clock. Errors: those of [Read] and [Bake.Check], with the key of the answer as path where one is to blame.
func (b NewBread) Bake(clock KitchenClock) (Bake, error) {
	out, err := Read(b.usual().lines().json())
	if err == nil {
		err = out.Check(clock)
	}
	return out, toAnswers(err)
}

// Plan is the day of the bake that the answers describe. Errors: those of [NewBread.Bake] and [Bake.Plan], with the key
// of the answer as path where one is to blame.
func (b NewBread) Plan(ctx context.Context, clock KitchenClock) (Day, error) {
	bake, err := b.Bake(clock)
	if err != nil {
		return Day{}, err
	}
	day, err := bake.Plan(ctx, clock)
	return day, toAnswers(err)
}

// The largest roll, and the rye from which a bread is a rye or a mixed rye bread; common practice, no source.
const (
	largestRoll = 150 // g, baked
	ryeBread    = 90  // % of the flour
	mixedRye    = 30
)

// style is what kind of bread it is, by its size and its rye. What cannot be read is said elsewhere.
func (b NewBread) style() bake.Style {
	baked, unread := quantity.ParseMass(b.Baked)
	rye, _ := quantity.ParsePercent(b.Rye)
	switch {
	case unread == nil && baked.Grams() <= largestRoll:
		return bake.CrustyRoll
	case rye.Points() >= ryeBread:
		return bake.Rye
	case rye.Points() >= mixedRye:
		return bake.MixedRye
	}
	return bake.LeanHearth
}
