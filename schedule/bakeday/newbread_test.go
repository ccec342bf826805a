package bakeday_test

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule/bakeday"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// askedAt is a Wednesday evening in the hall kitchen.
func askedAt() bakeday.KitchenClock {
	zone := time.FixedZone("hall", 3600)
	return bakeday.KitchenClock{Now: time.Date(2026, 11, 25, 21, 0, 0, 0, zone), Zone: zone}
}

// What a baker says is understood, and stands in the file in the units in which it was said.
func TestNewBreadReadsWhatABakerSays(t *testing.T) {
	hall := bakeday.NewBread{Zone: "UTC", Pieces: "3", Baked: "800 g"}
	for _, c := range []struct{ key, text, want string }{
		{"name", " Hall loaf ", "Hall loaf"}, {"pieces", "+4", "4"}, {"pieces", "1000", "1000"},
		{"baked", "2,5 oz", "2,5 oz"}, {"baked", "780", "780 g"},
		{"hydration", "68 %", "68 %"}, {"hydration", "68", "68 %"}, {"hydration", "1200 g", "81.0 %"},
		{"rye", "none", "0 %"}, {"rye", "nichts", "0 %"}, {"rye", "150 g", "9.5 %"},
		{"leaven", "Sourdough", "levain"}, {"leaven", "baker's-yeast", "yeast"}, {"leaven", "Hefe", "yeast"},
		{"cold", "Y", "yes"}, {"cold", "none", "no"}, {"cold", "nein", "no"},
		{"mixer", "Stand Mixer", "planetary"}, {"mixer", "none", "hand"}, {"mixer", "fork", "fork"},
		{"bowl", "5", "5 L"}, {"bowl", "5 qt", "5 qt"}, {"altitude", "1150", "1150 m"}, {"altitude", "none", "0 m"},
		{"day", "70", "70 °F"}, {"day", "38", "38 °C"}, {"night", "19,5", "19,5 °C"}, {"tap", "9 °C", "9 °C"},
		{"wanted", "tomorrow 10 pm", "2026-11-26 22:00"}, {"wanted", "today at noon", "2026-11-25 12:00"},
		{"wanted", "Sunday 12:15 a.m.", "Sunday 0:15"}, {"wanted", "Sonntag um 9:00 Uhr", "Sunday 9:00"},
		{"wanted", "morgen 12 pm", "2026-11-26 12:00"}, {"wanted", "Sat 13:00", "Sat 13:00"},
	} {
		got, err := hall.With(c.key, c.text, askedAt())
		if err != nil || got.Answer(c.key) != c.want {
			t.Errorf("%s %q: %q %v, want %q", c.key, c.text, got.Answer(c.key), err, c.want)
		}
	}
}

// What cannot be is refused under the key that was asked, and the answer before it stays.
func TestNewBreadRefuses(t *testing.T) {
	hall := bakeday.NewBread{Zone: "UTC", Hydration: "70 %", Day: "22 °C"}
	for _, c := range []struct{ key, text, want string }{
		{"pieces", "many", "a number, 1 to 1000"}, {"pieces", "0", "a number"}, {"pieces", "1001", "a number"},
		{"baked", "heavy", "a mass with its unit"}, {"hydration", "99 kg", "less than all the dough, about 1808 g"},
		{"hydration", "0 %", "more than 0 %"}, {"rye", "120 %", "100 %"}, {"rye", "-5 g", "less than all the dough"},
		{"leaven", "leven", "did you mean levain?"}, {"leaven", "steam", "want levain or yeast"},
		{"mixer", "planetry", "fork or processor; did you mean planetary?"},
		{"wanted", "nonsense", "a weekday or a date"}, {"wanted", "Sunday 13 pm", "want"}, {"day", "101", "scale"},
		{"day", "-1", "scale"}, {"name", strings.Repeat("x", 201), "1 to 200 bytes"},
	} {
		got, err := hall.With(c.key, c.text, askedAt())
		found := quantity.InputErrors(err)
		if len(found) == 0 || found[0].Path != c.key || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s %q: %v, want %q", c.key, c.text, err, c.want)
		}
		if diff := cmp.Diff(hall, got); diff != "" {
			t.Errorf("%s %q changes the answers: %s", c.key, c.text, diff)
		}
	}
	if _, err := hall.With("oven", "hot", askedAt()); err == nil {
		t.Error("an answer to no question is taken")
	}
	if got, err := hall.With("day", " ", askedAt()); err != nil || got.Day != "" {
		t.Errorf("taken back: %q %v", got.Day, err)
	}
}

// A question is idle where another answer makes it so.
func TestNewBreadQuestions(t *testing.T) {
	idle := func(b bakeday.NewBread) (out []string) {
		for _, q := range b.Questions() {
			if q.Needless {
				out = append(out, q.Key)
			}
			if b.Answer(q.Key) != q.Usual && q.Key != "leaven" && q.Key != "mixer" || q.Says.IsZero() {
				t.Errorf("%s: %q, usual %q", q.Key, b.Answer(q.Key), q.Usual)
			}
		}
		return out
	}
	for want, b := range map[string]bakeday.NewBread{
		"[bowl]": {}, "[]": {Mixer: "spiral"}, "[cold]": {Leaven: "yeast", Mixer: "spiral"},
		"[cold bowl]": {Leaven: "yeast", Mixer: "hand"},
	} {
		if got := fmt.Sprint(idle(b)); got != want {
			t.Errorf("%s: %s", want, got)
		}
	}
}

// The kind of bread follows from its size and its rye.
func TestNewBreadStyle(t *testing.T) {
	for want, b := range map[string]bakeday.NewBread{
		"lean hearth": {Baked: "151 g", Rye: "29 %"}, "crusty roll": {Baked: "150 g", Rye: "100 %"},
		"mixed rye": {Rye: "30 %"}, "rye": {Rye: "90 %"},
	} {
		b.Zone = "UTC"
		bake, err := b.Bake(bakeday.KitchenClock{Now: askedAt().Now, Zone: time.UTC})
		if got := bake.Loaves.Style.String(); err != nil || got != want {
			t.Errorf("%+v: %s %v, want %s", b, got, err, want)
		}
	}
}

// Every answer that is taken makes a bake that can be planned, or says which answer is to blame.
func TestNewBreadPlans(t *testing.T) {
	clock := bakeday.KitchenClock{Now: askedAt().Now, Zone: time.UTC}
	rapid.Check(t, func(t *rapid.T) {
		b := bakeday.NewBread{Zone: "UTC", Wanted: "Sunday 18:00"}
		for key, texts := range map[string][]string{
			"leaven": {"levain", "yeast"}, "cold": {"yes", "no"}, "mixer": {"hand", "planetary", "spiral", "processor"},
			"rye": {"0 %", "40 %", "100 %"}, "pieces": {"1", "6"}, "hydration": {"60 %", "80 %"}, "day": {"18 °C", "26 °C"},
		} {
			next, err := b.With(key, rapid.SampledFrom(texts).Draw(t, key), clock)
			if err != nil {
				t.Fatalf("%s: %v", key, err)
			}
			b = next
		}
		bake, err := b.Bake(clock)
		if err != nil {
			t.Fatalf("%+v: %v", b, err)
		}
		if retard := bake.Retard != nil; retard != (b.Leaven == "levain" && b.Cold == "yes") ||
			(bake.Levain != nil) != (b.Leaven == "levain") || (len(bake.Kitchen.Mixers) > 0) != (b.Mixer != "hand") {
			t.Fatalf("%+v becomes %+v", b, bake)
		}
	})
	wet := bakeday.NewBread{Zone: "UTC", Hydration: "900 %"}
	if _, err := wet.Plan(context.Background(), clock); err == nil || quantity.InputErrors(err)[0].Path != "hydration" {
		t.Errorf("900 %% of water: %v", err)
	}
}

func ExampleNewBread() {
	clock := bakeday.KitchenClock{Now: time.Date(2026, 11, 25, 20, 0, 0, 0, time.UTC), Zone: time.UTC}
	bread := bakeday.NewBread{Zone: "UTC"}
	for _, said := range [][2]string{{"name", "Hall loaf"}, {"hydration", "600 g"}, {"leaven", "sourdough"}} {
		var err error
		if bread, err = bread.With(said[0], said[1], clock); err != nil {
			fmt.Println(err)
		}
	}
	fmt.Println(bread.Hydration, bread.Leaven, bread.Answer("pieces"))
	_, err := bread.With("pieces", "many", clock)
	fmt.Println(err)
	fmt.Println(strings.SplitAfterN(bread.File(working.Reader{}), "\n", 5)[3])
	// Output:
	// 50.7 % levain 2
	// pieces: out of range: got "many", want a number, 1 to 1000
	// name          = "Hall loaf"        # what the bread is called
}

func ExampleNewBread_Plan() {
	clock := bakeday.KitchenClock{Now: time.Date(2026, 11, 25, 20, 0, 0, 0, time.UTC), Zone: time.UTC}
	day, err := bakeday.NewBread{Name: "Hall loaf", Zone: "UTC"}.Plan(context.Background(), clock)
	fmt.Println(day.Possible(), err)
	// Output: true <nil>
}
