package report

import (
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// A reckoning is its lines and what the symbols stand for, in every rendering.
func TestReckonings(t *testing.T) {
	tell := working.Tell
	d := working.Derive(tell("test.water", "Water"))
	flour := working.Given("F_all", tell("test.flour", "flour"), quantity.Grams(500))
	d.Find(working.Finding{Name: tell("test.half", "half"), Symbol: "H", By: flour.Over(2), Unit: working.Gram,
		Decimals: working.WholeNumber, Source: working.Algebra()})
	r := Report{Sections: []Section{{Key: "key", Blocks: []Block{
		List{tell("test.before", "before")}, Reckoning{Of: d.Working()}, List{tell("test.after", "after")},
	}}}}
	for _, c := range []struct{ got, want string }{
		{r.Text(Options{}), "  · before\n  · H = F_all ÷ 2 = 500 ÷ 2 = 250 g\n  H: half; F_all: flour\n  · after\n"},
		{r.Markdown(Options{}), "- before\n\n- H = F\\_all ÷ 2 = 500 ÷ 2 = 250 g\n\nH: half; F\\_all: flour\n\n- after\n"},
		{r.HTML(Options{}), "<li>before</li>\n</ul>\n<ul class=\"working-lines\">\n<li><math"},
		{r.HTML(Options{}), "flour</p>\n<ul>\n<li>after"},
	} {
		if !strings.Contains(c.got, c.want) {
			t.Errorf("no %q in %q", c.want, c.got)
		}
	}
}
