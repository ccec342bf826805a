package pupil

import (
	_ "embed"
	"encoding/json"
	"strings"
	"testing"
)

// The questions here were written by hand, and their answers reckoned by hand.
var levainSheet = Sheet{
	Question: "Of 3000 g of flour, 20 % goes into the levain, which has 80 % of its own flour in water. " +
		"How much does the levain weigh?",
	Answer: "1080 g", Tolerance: "1 g", Wrong: map[string]string{"flour_alone": "600 g", "water_alone": "480 g"},
}

var planSheet = Sheet{
	Question: "Das Brot soll bis So 01:30 ausgekühlt sein. Es backt 45 min und kühlt 2 h 15 min aus. " +
		"Wann kommt es spätestens in den Ofen?",
	Answer: "Sa 22:30", Tolerance: "1 min", Wrong: map[string]string{"no_cooling": "So 00:45", "forward": "So 04:30"},
}

func TestAPupilFindsWhatIsRight(t *testing.T) {
	for i, s := range []Sheet{levainSheet, planSheet} {
		if done := New(i == 1).Do(s); len(done.Faults) > 0 || len(done.Met) != 2 {
			t.Error(done)
		}
	}
	if got := New(false).Do(levainSheet); got.Kind != "weight of a levain" ||
		strings.Join(got.Met, ", ") != "weight of a levain flour_alone, weight of a levain water_alone" {
		t.Error(got)
	}
}

func TestAPupilFindsWhatIsWrong(t *testing.T) {
	for _, c := range []struct {
		german bool
		change func(s *Sheet)
		want   string
	}{
		{false, func(s *Sheet) { s.Answer = "1082 g" }, "by hand it is 1080"},
		{false, func(s *Sheet) { s.Answer = "1080 oz" }, "is not in"},
		{false, func(s *Sheet) { s.Tolerance = "1 min" }, "is not in"},
		{false, func(s *Sheet) { s.Question = "How old is the baker?" }, "what is asked?"},
		{false, func(s *Sheet) { delete(s.Wrong, "flour_alone") }, "only 1 wrong"},
		{false, func(s *Sheet) { s.Wrong["asleep"] = "7 g" }, "no mistake is called asleep"},
		{false, func(s *Sheet) { s.Wrong["flour_alone"] = "601 g" }, "by hand it is 600"},
		{false, func(s *Sheet) { s.Wrong["flour_alone"] = "600 oz" }, "by hand it is 600"},
		{false, func(s *Sheet) { s.Wrong["water_alone"] = "600 g" }, "600 g both"},
		{false, func(s *Sheet) { s.Tolerance = "600 g" }, "is right"},
		{true, func(s *Sheet) { s.Answer = "Sa 22:31"; s.Tolerance = "0 min" }, "by hand it is"},
		{true, func(s *Sheet) { s.Answer = "22 h" }, "is not in"},
		{true, func(s *Sheet) { s.Wrong["forward"] = "So 04:31" }, "by hand it is"},
	} {
		s := planSheet
		if !c.german {
			s = levainSheet
		}
		wrong := map[string]string{}
		for name, text := range s.Wrong {
			wrong[name] = text
		}
		s.Wrong = wrong
		c.change(&s)
		if faults := strings.Join(New(c.german).Do(s).Faults, "\n"); !strings.Contains(faults, c.want) {
			t.Errorf("no %q in %q", c.want, faults)
		}
	}
}

func TestAmountsAreReadAsTheyArePrinted(t *testing.T) {
	for _, c := range []struct {
		t          tongue
		kind, text string
		number     float64
		unit       string
	}{
		{english, "mass", "1.5 kg", 1500, gram}, {english, "mass", "2 lb 3.5 oz", 35.5, ounce},
		{english, "mass", "2 lb", 32, ounce},
		{german, "mass", "2 lb 3,5 oz", 35.5, ounce}, {german, "degrees", "−3,5 °C", -3.5, celsius},
		{english, "difference", "4 Δ°F", 4, "Δ°F"}, {english, "duration", "2h05m", 125, minute},
		{english, "duration", "2h", 120, minute},
		{english, "duration", "45m", 45, minute}, {german, "duration", "1 h 30 min", 90, minute},
		{german, "duration", "2 h", 120, minute},
		{german, "duration", "45 min", 45, minute}, {english, "hours", "4.5 h", 4.5, hour},
		{english, "", "8.33 h (8h20m)", 8.33, hour},
		{english, "clock", "Mon 12:05 am", 24*60 + 5, clockUnit}, {english, "clock", "Sun 12:05 pm", 12*60 + 5, clockUnit},
		{english, "clock", "Sun 1:05 pm", 13*60 + 5, clockUnit}, {german, "clock", "Di 06:30", 2*24*60 + 390, clockUnit},
		{english, "number", "12", 12, ""}, {english, "length", "2600 ft", 2600, "ft"},
	} {
		if got := c.t.read(c.kind, c.text); got != (amount{c.number, c.unit}) {
			t.Errorf("%s is read as %v", c.text, got)
		}
	}
	for _, text := range []string{"", "much", "Xyz 12:00", "1.2.3 g"} {
		if got := english.read("", text); got.number == got.number {
			t.Errorf("%q is read as %v", text, got)
		}
	}
}

func TestTimesOfDayGoRoundWithTheWeek(t *testing.T) {
	if apart(clockUnit, 10, week-5) != 15 || apart(clockUnit, week-5, 10) != 15 || apart(minute, 10, week) != week-10 {
		t.Error("how far is Saturday night from Sunday morning?")
	}
}

// Every kind of question has the same numbers in both languages, each used by what is reckoned.
func TestBothLanguagesGiveTheSameNumbers(t *testing.T) {
	for kind, p := range problems() {
		en, de := p.in(english, kind), p.in(german, kind)
		named := map[string]string{}
		for i, name := range en.names {
			named[name] = en.kinds[i]
		}
		for i, name := range de.names {
			if named[name] != de.kinds[i] || len(de.names) != len(en.names) {
				t.Errorf("%s: %s is another number in German", kind, name)
			}
		}
		if len(p.mistakes) < 2 {
			t.Errorf("%s has %d mistakes", kind, len(p.mistakes))
		}
	}
}

// sheetsFile holds exercises as they were printed, of every kind in both languages and both systems of units, each of
// the usual mistakes among them.
//
//go:embed testdata/sheets.json
var sheetsFile []byte

func TestAPupilDoesEveryKindOfExercise(t *testing.T) {
	var kept []struct {
		German bool
		Sheet
	}
	if err := json.Unmarshal(sheetsFile, &kept); err != nil {
		t.Fatal(err)
	}
	for _, german := range []bool{false, true} {
		met := map[string]bool{}
		for _, k := range kept {
			if k.German != german {
				continue
			}
			done := New(german).Do(k.Sheet)
			for _, fault := range done.Faults {
				t.Error(fault)
			}
			for _, m := range done.Met {
				met[m] = true
			}
		}
		for _, m := range Mistakes() {
			if !met[m] {
				t.Errorf("%s is not made, German %v", m, german)
			}
		}
	}
}
