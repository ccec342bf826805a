package working_test

import (
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

func derivedWater() working.Working {
	d := working.Derive(working.Say("a <title> of its own"))
	flour := working.Given("T_flour", working.Say("flour & grain"), quantity.Celsius(21))
	d.Find(working.Finding{Name: working.Say("the water"), Symbol: "T_water", By: working.Num(50).Minus(flour),
		Unit: working.Celsius, Decimals: 1, Note: working.Say("a note"), Source: working.NoSource("a rule")})
	return d.Working()
}

// A page holds every line of the derivation as MathML, each step once, and names as text.
func TestHTMLTellsEveryStep(t *testing.T) {
	w := derivedWater()
	for _, level := range []working.Level{working.Everything, working.WithNumbers, working.InWords} {
		page := working.Telling{Level: level}.HTML(w, 3)
		decoder := xml.NewDecoder(strings.NewReader("<page>" + page + "</page>"))
		for {
			if _, err := decoder.Token(); errors.Is(err, io.EOF) {
				break
			} else if err != nil {
				t.Fatalf("%v: %v\n%s", level, err, page)
			}
		}
		if !strings.HasPrefix(page, "<h3>a &lt;title&gt; of its own</h3>") {
			t.Errorf("%v: no heading: %s", level, page)
		}
		has := func(text string, want bool) {
			t.Helper()
			if strings.Contains(page, text) != want {
				t.Errorf("%v: %q there is %v, want %v", level, text, !want, want)
			}
		}
		has("29.0 °C", true)
		has("<h4>the water</h4>", level != working.InWords)
		has("<math", level != working.InWords)
		has("note: a note", level == working.Everything)
		has("T<sub>flour</sub> = 21 °C", level == working.Everything)
		has("flour &amp; grain", level != working.WithNumbers) // in words beside its value
	}
	if got := (working.Telling{}).HTML(w, 9); !strings.HasPrefix(got, "<h2>") {
		t.Errorf("a rank that there is not: %.20s", got)
	}
}
