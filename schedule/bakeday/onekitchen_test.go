package bakeday

import (
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
)

// What one bake says and another one does not is told as nothing, whichever of the two it is, of a kitchen and of a
// levain.
func TestDifferencesThatAreNothing(t *testing.T) {
	two := func(change func(a, b *Bake)) string {
		a, b := hall(), hall()
		a.Name, b.Name = "Rye", "White"
		x, y := *a.Levain, *b.Levain
		a.Levain, b.Levain = &x, &y
		x.Name, y.Name, x.CultureAtHand, y.CultureAtHand = "market", "market", quantity.Mass{}, quantity.Mass{}
		change(&a, &b)
		if err := (Order{Bakes: []Bake{a, b}}).Check(wednesday(t)); err != nil {
			return err.Error()
		}
		return ""
	}
	takes := quantity.Elapsed(20 * time.Minute)
	for want, change := range map[string]func(a, b *Bake){
		"": func(*Bake, *Bake) {},
		`got "2", want nothing, as in the kitchen of "Rye"`:        func(_, b *Bake) { b.Kitchen.Pots = 2 },
		`got nothing, want "2", as in the kitchen of "Rye"`:        func(a, _ *Bake) { a.Kitchen.Pots = 2 },
		`got "20m", want nothing, as the same levain has in "Rye"`: func(_, b *Bake) { b.Levain.Takes = takes },
		`got nothing, want "20m", as the same levain has in "Rye"`: func(a, _ *Bake) { a.Levain.Takes = takes },
	} {
		if got := two(change); !strings.Contains(got, want) || (got == "") != (want == "") {
			t.Errorf("%s\nwant %s", got, want)
		}
	}
	o := sunday()
	o.Bakes[1].Kitchen = o.Kitchen
	o.Bakes[1].Kitchen.Pots = 2
	o.Bakes[2].Kitchen = o.Kitchen
	o.Bakes[2].Kitchen.Refrigerator = quantity.Temperature{}
	err := o.Check(wednesday(t))
	for _, want := range []string{`got "2", want nothing, as in the kitchen of the day`,
		`got nothing, want "4 °C", as in the kitchen of the day`} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v\nwant %s", err, want)
		}
	}
}
