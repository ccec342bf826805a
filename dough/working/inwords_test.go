package working_test

import (
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// In words a derivation tells what can be weighed or read off, and from what; steps of physics have a sentence of their
// own or none, and the answer is always told.
func TestInWords(t *testing.T) {
	d := working.Derive(working.Say("dough"))
	flour := working.Given("F", working.Say("flour"), quantity.Grams(1000.123456))
	rate := working.Given("k", working.Say("rate"), working.Amount(0.5, "/h", 2))
	aside := d.Find(working.Finding{Name: working.Say("speed of it"), Symbol: "v", Unit: "g/h",
		By: flour.Times(rate), Source: working.Algebra()})
	told := d.Find(working.Finding{Name: working.Say("power"), Symbol: "P", Unit: "W", By: aside.Times(2),
		Brief: working.Say("It takes some power."), Source: working.Algebra()})
	weight := d.Find(working.Finding{Name: working.Say("weight"), Symbol: "m", Is: quantity.Grams(250), Decimals: 1,
		By: flour.Over(4), Within: 1, Source: working.Algebra()})
	d.Find(working.Finding{Name: working.Say("found in the chart"), Symbol: "c", Is: quantity.Grams(3),
		Look: working.Say("the chart"), Source: working.Algebra()})
	d.Find(working.Finding{Name: working.Say("number of them"), Symbol: "n", Unit: working.Number,
		By: told.Over(weight), Source: working.Algebra()})
	want := []string{"It takes some power.", "weight: 250.0 g, from flour (1000.1 g)",
		"found in the chart: 3 g (the chart)",
		"number of them: "}
	for name, text := range map[string]string{
		"text":     working.Telling{Level: working.InWords, Width: 200}.Text(d.Working()),
		"markdown": working.Telling{Level: working.InWords}.Markdown(d.Working()),
		"html":     working.Telling{Level: working.InWords}.HTML(d.Working(), 3),
		"latex":    working.Telling{Level: working.InWords}.LaTeX(d.Working()),
	} {
		text = strings.ReplaceAll(strings.ReplaceAll(text, "~", " "), "\u00a0", " ")
		for _, w := range want {
			if !strings.Contains(text, w) {
				t.Errorf("%s: %q is missing in\n%s", name, w, text)
			}
		}
		if strings.Contains(text, "speed of it") {
			t.Errorf("%s: a step of physics is told\n%s", name, text)
		}
	}
	if all := (working.Telling{}).Text(d.Working()); !strings.Contains(all, "speed of it") {
		t.Error("a step is missing where everything is told")
	}
}
