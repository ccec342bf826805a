package mixing_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/trial"
)

// Every way to a target that the water alone does not reach, with its derivation: too warm and too cold, by the factor
// method, by the balance of heat, and for a bake as planned.
func TestRemediesAreToldWhole(t *testing.T) {
	c := quantity.Celsius
	var page strings.Builder
	ways := func(what string, remedies []mixing.WaterRemedy, err error) {
		fmt.Fprintf(&page, "# %s\n\n", what)
		if err != nil {
			t.Errorf("%s: %v", what, err)
		}
		for _, r := range remedies {
			fmt.Fprintf(&page, "%v, enough: %v: %v\n%s\n", r.Way, r.Enough, r.Text, r.Working().Text(110))
		}
	}
	factors := func(flour, room, tap float64) {
		in := hall()
		in.Others = []mixing.Factor{{Kind: mixing.FlourFactor, Temperature: c(flour)}, {Kind: mixing.RoomFactor,
			Temperature: c(room)}, {Temperature: c(room)}, {Name: strings.Repeat("n", 41), Temperature: c(room)}}
		in.Friction, in.Pour, in.Tap = quantity.DeltaCelsius(14), quantity.Kilograms(1.9), c(tap)
		in.Mixing = quantity.Elapsed(8 * time.Minute)
		r, err := in.Water()
		ways(fmt.Sprintf("factors, flour %v, room %v, tap %v: %v", flour, room, tap, r), r.Remedies, err)
		page.WriteString(r.Working().Text(110))
	}
	factors(31, 33, 17)
	factors(26, 27, 17)
	factors(5, 4, 12)
	for _, target := range []float64{14, 20, 34, 40} {
		r, err := hallBalance().WaterFor(c(target))
		ways(fmt.Sprintf("balance, to %v: %v", target, r), r.Remedies, err)
	}
	for _, room := range []float64{5, 33} {
		in := hallPlan()
		in.Room = c(room)
		for i := range in.Ingredients {
			in.Ingredients[i].Temperature = c(room)
		}
		in.Mixing = quantity.Elapsed(10 * time.Minute)
		r, err := in.Pour()
		ways(fmt.Sprintf("plan in a room of %v: %v", room, r), r.Remedies, err)
	}
	trial.Kept(t, "remedies.txt", page.String())
}

// What is said of a balance that cannot be, and of words that name no way.
func TestRefusalsOfABalance(t *testing.T) {
	c, g := quantity.Celsius, quantity.Grams
	var page strings.Builder
	for _, x := range []struct {
		what   string
		change func(*mixing.Balance)
	}{
		{"ice of all the water", func(b *mixing.Balance) { b.Ice = b.Water }},
		{"ice of more than the water", func(b *mixing.Balance) { b.Ice = b.Water.Add(g(1)) }},
		{"coldest as warm as warmest", func(b *mixing.Balance) { b.Coldest, b.Warmest = c(20), c(20) }},
		{"coldest warmer than warmest", func(b *mixing.Balance) { b.Coldest, b.Warmest = c(20.1), c(20) }},
		{"200 ingredients", func(b *mixing.Balance) {
			for len(b.Ingredients) < 200 {
				b.Ingredients = append(b.Ingredients, mixing.Portion{Name: "seed", Mass: g(1), Temperature: c(20),
					Substance: mixing.Flour})
			}
		}},
		{"201 ingredients", func(b *mixing.Balance) { b.Ingredients = make([]mixing.Portion, 201) }},
	} {
		b := hallBalance()
		b.Ingredients = append([]mixing.Portion(nil), b.Ingredients...)
		x.change(&b)
		said := "taken"
		if err := second(b.WaterFor(c(25))); err != nil {
			said = strings.ReplaceAll(err.Error(), "\n", "\n  ")
		}
		fmt.Fprintf(&page, "%s\n  %s\n", x.what, said)
	}
	for w := range mixing.Way(12) {
		fmt.Fprintf(&page, "%v\n", w)
	}
	fmt.Fprintf(&page, "%v\n%v\n%v\n", new(mixing.Way).UnmarshalText([]byte("stone")), mixing.BowlFit{},
		mixing.MinutesLeft{})
	trial.Kept(t, "balances.txt", page.String())
}
