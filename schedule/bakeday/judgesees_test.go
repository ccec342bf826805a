package bakeday

import (
	"context"
	"encoding/json"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
)

// spoiled is what the judge says of a day that was right, changed in one place.
func spoiled(t *testing.T, ordered, right []byte, spoil func(*KitchenDayData)) string {
	t.Helper()
	var d KitchenDayData
	if err := json.Unmarshal(right, &d); err != nil {
		t.Fatal(err)
	}
	spoil(&d)
	text, err := json.Marshal(d)
	if err != nil {
		t.Fatal(err)
	}
	return strings.Join(judged(ordered, text), "; ")
}

// asText is a day and its order as data.
func bothAsText(t *testing.T, o Order, clock KitchenClock) (ordered, day []byte) {
	t.Helper()
	k, err := o.Plan(context.Background(), clock)
	if err != nil || !k.Possible() {
		t.Fatalf("%v, %v", k.Data().Why, err)
	}
	if day, err = json.Marshal(k); err != nil {
		t.Fatal(err)
	}
	if ordered, err = json.Marshal(o); err != nil {
		t.Fatal(err)
	}
	if broken := judged(ordered, day); len(broken) > 0 {
		t.Fatal(broken)
	}
	return ordered, day
}

// dayStep is a step of the day, and ownStep one of a bread.
func dayStep(d *KitchenDayData, id string) *StepData {
	i := slices.IndexFunc(d.Steps, func(s StepData) bool { return s.ID == id })
	return &d.Steps[i]
}

func ownStep(d *KitchenDayData, bread int, id string) *StepData {
	all := d.Breads[bread].Steps
	i := slices.IndexFunc(all, func(s StepData) bool { return s.ID == id })
	return &all[i]
}

func later(s *StepData, start, end int) {
	s.Start = s.Start.Add(time.Duration(start) * time.Minute)
	s.End = s.End.Add(time.Duration(end) * time.Minute)
	s.Takes = quantity.Elapsed(s.End.Sub(s.Start))
}

// The judge sees what is wrong with a day of three breads: a day that was right, changed in one place.
func TestTheJudgeSees(t *testing.T) {
	ordered, right := bothAsText(t, sunday(), wednesday(t))
	for say, spoil := range map[string]func(*KitchenDayData){
		"in the absence": func(d *KitchenDayData) {
			d.Kitchen.Asleep = []wallclock.Habit{wallclock.MustHabit("12:00 to 13:00")}
		},
		"loads at a time":    func(d *KitchenDayData) { d.Breads[1].Oven.Decks = 2 },
		"pots of 1":          func(d *KitchenDayData) { d.Kitchen.Pots = 1 },
		"loaves in 1 places": func(d *KitchenDayData) { d.Kitchen.RefrigeratorPlaces = 1 },
		"beside": func(d *KitchenDayData) {
			s, l := dayStep(d, "Focaccia/bake-1"), dayStep(d, "Loaf/bake-1")
			s.Start, s.End = l.Start, l.End
		},
		"the oven takes": func(d *KitchenDayData) { d.Kitchen.Oven.Cools = quantity.Elapsed(2 * time.Hour) },
		"pots that are cold": func(d *KitchenDayData) {
			d.Breads[1].Oven.Pots, d.Breads[1].Oven.Preheat = 9, quantity.Elapsed(9*time.Hour)
			s, l := dayStep(d, "Focaccia/bake-1"), dayStep(d, "Loaf/bake-1")
			s.Start = l.End.Add(29 * time.Minute)
		},
		"without reheating": func(d *KitchenDayData) { d.Breads[1].Oven.Reheat = quantity.Elapsed(9 * time.Hour) },
		"pairs of hands":    func(d *KitchenDayData) { dayStep(d, "Buns/mix-1").Start = dayStep(d, "Focaccia/shape").Start },
		"which carries": func(d *KitchenDayData) {
			d.Breads[1].Formula.Allergens = "gluten, sesame"
			dayStep(d, "Focaccia/mix-1").End = dayStep(d, "Buns/mix-1").Start
		},
		"in one mixer":       func(d *KitchenDayData) { dayStep(d, "Focaccia/mix-1").End = dayStep(d, "Buns/mix-1").End },
		"is there at":        func(d *KitchenDayData) { d.Breads[0].Wanted = d.Breads[0].Wanted.Add(time.Minute) },
		"from its feed on":   func(d *KitchenDayData) { later(ownStep(d, 0, "feed"), 0, 1) },
		"bulk takes":         func(d *KitchenDayData) { d.Breads[2].Bulk.Ready.Late = time.Minute },
		"proof takes":        func(d *KitchenDayData) { d.Breads[2].Proof.Early = 9 * time.Hour },
		"good until 1h":      func(d *KitchenDayData) { d.Breads[0].Levain.Until.Likely = time.Hour },
		"comes twice":        func(d *KitchenDayData) { d.Steps[1].ID = d.Steps[0].ID },
		"out of order":       func(d *KitchenDayData) { d.Steps[3].Start = d.Steps[2].Start.Add(-time.Minute) },
		"planned at":         func(d *KitchenDayData) { d.Now = d.Now.Add(100 * time.Hour) },
		" takes 1h":          func(d *KitchenDayData) { d.Steps[2].Takes = quantity.Elapsed(time.Hour) },
		"not before":         func(d *KitchenDayData) { d.Steps[2].EarliestStart = d.Steps[2].Start.Add(time.Minute) },
		"in its breads":      func(d *KitchenDayData) { d.Steps = d.Steps[:len(d.Steps)-1] },
		"is not in the day":  func(d *KitchenDayData) { d.Breads[0].Steps[0].ID = "nothing" },
		"takes hands":        func(d *KitchenDayData) { dayStep(d, "Loaf/bulk").Hands = true },
		"heated oven":        func(d *KitchenDayData) { later(ownStep(d, 0, "preheat"), 0, -1) },
		"does not cool":      func(d *KitchenDayData) { later(ownStep(d, 0, "cool"), 1, 0) },
		"shape does not":     func(d *KitchenDayData) { later(ownStep(d, 0, "shape"), 1, 1) },
		"mixed 1 times":      func(d *KitchenDayData) { d.Breads[1].Mixer.Batches = 3 },
		"mix-1 takes":        func(d *KitchenDayData) { later(ownStep(d, 1, "mix-1"), -1, 0) },
		"in the fold before": func(d *KitchenDayData) { later(ownStep(d, 0, "fold-2"), -90, -90) },
		"after its interval": func(d *KitchenDayData) { later(ownStep(d, 0, "fold-1"), 40, 40) },
		"retard takes":       func(d *KitchenDayData) { later(ownStep(d, 0, "retard"), 0, 900) },
		"are told":           func(d *KitchenDayData) { d.Breads[0].Retard.For += quantity.Elapsed(time.Minute) },
		"rounds of":          func(d *KitchenDayData) { d.Breads[0].Oven.Each = 1 },
		"bake-1 takes":       func(d *KitchenDayData) { d.Breads[0].Oven.Covered += quantity.Elapsed(5 * time.Minute) },
		"oven is heated":     func(d *KitchenDayData) { d.Breads[0].Oven.Preheat = quantity.Elapsed(3 * time.Hour) },
		"not in its round":   func(d *KitchenDayData) { later(ownStep(d, 0, "vent-1"), 60, 60) },
		"after loading":      func(d *KitchenDayData) { later(ownStep(d, 0, "vent-1"), 1, 1) },
		"cools and waits":    func(d *KitchenDayData) { d.Breads[0].Oven.Cooling.Late = 20 * time.Hour },
		"the lines make":     func(d *KitchenDayData) { d.Breads[0].Weigh[0].Total = quantity.Grams(1) },
		"of culture":         func(d *KitchenDayData) { d.Breads[0].Levain.Culture = quantity.Kilograms(1) },
		"planned for": func(d *KitchenDayData) {
			d.Breads[0].Wanted = d.Breads[0].Wanted.AddDate(0, 0, 1)
		},
	} {
		if got := spoiled(t, ordered, right, spoil); !strings.Contains(got, say) {
			t.Errorf("%q is not seen: %s", say, got)
		}
	}
}

// The judge sees what is wrong with a day of what is made beforehand, filled in, held cold and warmed up.
func TestTheJudgeSeesWhatGoesBefore(t *testing.T) {
	drawn := someDay(randomly(19128))
	for i := range drawn.Bakes { // all of these rest in the cold when they are shaped
		if r := drawn.Bakes[i].Retard; r != nil && r.Undivided {
			r.Undivided, r.WarmUp = false, quantity.Elapsed(45*time.Minute)
		}
	}
	drawn.Bakes[4].Notes = []StepNote{{Step: "shape", Says: "as ever"}}
	twice := drawn.Bakes[4] // the same levain feeds a second dough
	twice.Name, twice.Soakers, twice.Notes, twice.Loaves.Pieces, twice.Mixing.Mixer = "More", nil, nil, 1, mixing.Hand
	ripens := &drawn.Bakes[2].Preferments[0] // by its clock
	ripens.AtLeast, ripens.AtMost, ripens.Temperature = 0, 0, quantity.Temperature{}
	drawn.Kitchen.Hands, drawn.Kitchen.RefrigeratorPlaces = 3, 12
	drawn.Bakes = append(drawn.Bakes, twice)
	drawn.Bakes[4].Bulk.Box, drawn.Bakes[5].Bulk.Box = quantity.Celsius(28), quantity.Celsius(28)
	ordered, right := bothAsText(t, drawn.Order, drawn.clock(t))
	for say, spoil := range map[string]func(*KitchenDayData){
		"tubs and trays":        func(d *KitchenDayData) { d.Kitchen.BoxPlaces = 1 },
		"the box at":            func(d *KitchenDayData) { d.Breads[4].Bulk.Box = quantity.Celsius(29) },
		"is fed 0 times":        func(d *KitchenDayData) { ownStep(d, 4, "feed").Kind = schedule.Make },
		"is not to be weighed":  func(d *KitchenDayData) { d.Levains[0].Name = "another" },
		"are made":              func(d *KitchenDayData) { d.Levains[0].Total = quantity.Grams(10) },
		"old dough is not made": func(d *KitchenDayData) { ownStep(d, 1, "make-1").Thing = "another" },
		"stands ":               func(d *KitchenDayData) { later(ownStep(d, 4, "stand-1"), 0, 200) },
		"does not cool when":    func(d *KitchenDayData) { later(ownStep(d, 4, "cool-down-1"), 2, 0) },
		"mixed at":              func(d *KitchenDayData) { later(ownStep(d, 4, "make-1"), -5, -5) },
		"nothing is said of":    func(d *KitchenDayData) { d.Breads[2].Preferments = nil },
		"to warm up":            func(d *KitchenDayData) { later(ownStep(d, 4, "warm-up"), 0, 5) },
		"walnuts goes in at 0":  func(d *KitchenDayData) { ownStep(d, 3, "shape").Adds = nil },
		"walnuts goes in at bulk": func(d *KitchenDayData) {
			ownStep(d, 3, "bulk").Adds, ownStep(d, 3, "shape").Adds = ownStep(d, 3, "shape").Adds, nil
		},
		"is lost": func(d *KitchenDayData) { ownStep(d, 4, "shape").Notes = nil },
		"the portions of": func(d *KitchenDayData) {
			l := d.Breads[4].Weigh
			l[len(l)-1].Lines[0].Portions[0] = quantity.Grams(1)
		},
		"loaves on": func(d *KitchenDayData) { d.Kitchen.Oven.Holds = 1 },
		"round 2 after": func(d *KitchenDayData) {
			s := *ownStep(d, 2, "bake-1")
			later(&s, 60, 60)
			s.ID, s.Number = "bake-2", 2
			d.Breads[2].Steps = append(d.Breads[2].Steps, s)
		},
		"boils": func(d *KitchenDayData) { later(ownStep(d, 0, "bake-1"), -40, 0) },
	} {
		if got := spoiled(t, ordered, right, spoil); !strings.Contains(got, say) {
			t.Errorf("%q is not seen: %s", say, got)
		}
	}
}

// A habit holds on its days, over midnight too.
func TestWhenAHabitHolds(t *testing.T) {
	for habit, want := range map[string][]string{
		"22:30 to 06:30":               {"Fri 22:30", "Sat 06:29", "Sat 22:30"},
		"09:00 to 15:00 on Friday":     {"Fri 09:00"},
		"22:00 to 06:30 on Friday":     {"Fri 22:30", "Sat 06:29"},
		"all day on 2026-11-28":        {"Sat 06:29", "Sat 06:30", "Sat 09:00", "Sat 22:30"},
		"00:00 to 06:30 on 2026-11-28": {"Sat 06:29"},
	} {
		var got []string
		for _, at := range []string{"27 09:00", "27 22:30", "28 06:29", "28 06:30", "28 09:00", "28 22:30"} {
			x, err := time.Parse("2006-01-02 15:04", "2026-11-"+at)
			if err != nil {
				t.Fatal(err)
			}
			if during(wallclock.MustHabit(habit), x) {
				got = append(got, x.Format("Mon 15:04"))
			}
		}
		if !slices.Equal(got, want) {
			t.Errorf("%s: %v", habit, got)
		}
	}
}
