package bake_test

import (
	"errors"
	"fmt"
	"testing"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

func ExampleReadOvenSetting() {
	for _, text := range []string{"gas 6", "230C", "a moderate oven"} {
		s, err := bake.ReadOvenSetting(text)
		fmt.Println(s.Wanted, s.Notes, err)
	}
	// Output:
	// 204.444 °C [] <nil>
	// 230 °C [] <nil>
	// 176.667 °C ["moderate" is read as 177 °C; cookery books mean 165 °C to 190 °C by it (from memory)] <nil>
}

// What recipes call an oven, in °F; hotter words are hotter, and a mark is the temperature of the mark.
func TestOvenWords(t *testing.T) {
	last := 0.0
	for _, c := range []struct {
		text string
		f    float64
	}{
		{"very slow", 250}, {"slow oven", 300}, {"moderately slow", 325}, {"Moderate oven", 350}, {"fairly hot", 400},
		{"a hot oven", 425}, {"very hot", 475},
	} {
		s, err := bake.ReadOvenSetting(c.text)
		if err != nil || s.Wanted != quantity.Fahrenheit(c.f) || len(s.Notes) != 1 || c.f <= last {
			t.Errorf("%s: %v, %v, %v", c.text, s.Wanted, s.Notes, err)
		}
		last = c.f
	}
	for _, pair := range [][2]string{{"mittlere Hitze", "moderate"}, {"starke Hitze", "hot"}, {"schwache hitze", "slow"},
		{"mark 4", "gas 4"}, {"Gas Mark 1/2", "gas ½"}} {
		a, err := bake.ReadOvenSetting(pair[0])
		b, err2 := bake.ReadOvenSetting(pair[1])
		if err != nil || err2 != nil || a.Wanted != b.Wanted {
			t.Errorf("%v: %v, %v, %v, %v", pair, a.Wanted, b.Wanted, err, err2)
		}
	}
	for text, reason := range map[string]error{"": quantity.ErrRequired, "6": quantity.ErrUnit, "gas 11": quantity.ErrUnit,
		"hottish": quantity.ErrUnit, "oven": quantity.ErrUnit, "12 Δ°C": quantity.ErrUnit} {
		if s, err := bake.ReadOvenSetting(text); !errors.Is(err, reason) {
			t.Errorf("%q: %v, %v", text, s.Wanted, err)
		}
	}
	// The answer says how a word was read, to readers of °F in steps of their dial.
	s, err := bake.ReadOvenSetting("hot oven")
	if err != nil {
		t.Fatal(err)
	}
	d, err := s.Dial()
	if err != nil {
		t.Fatal(err)
	}
	blocks := d.Report().Sections[0].Blocks
	if got := s.Notes[0].Text(working.Reader{Units: working.USCustomary}); len(blocks) != 3 ||
		got != `"hot" is read as 425 °F; cookery books mean 400 °F to 450 °F by it (from memory)` {
		t.Error(len(blocks), got)
	}
}
