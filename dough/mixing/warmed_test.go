package mixing_test

import (
	"errors"
	"fmt"
	"testing"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
)

func warmed(warming, friction float64) mixing.Factors {
	return mixing.Factors{Target: quantity.Celsius(26), Others: []mixing.Factor{
		{Kind: mixing.FlourFactor, Temperature: quantity.Celsius(21)},
		{Kind: mixing.RoomFactor, Temperature: quantity.Celsius(22)},
	}, Warming: quantity.DeltaCelsius(warming), Friction: quantity.DeltaCelsius(friction)}
}

func ExampleFactors_Weighed() {
	f := warmed(5, 0)
	f.Pour = quantity.Grams(700)
	fmt.Println(f.Water())
	fmt.Println(f.Weighed(mixing.Portion{Mass: quantity.Grams(1000), Temperature: quantity.Celsius(21),
		Substance: mixing.Flour}).Pour())
	// Output:
	// water at 20.0 °C <nil>
	// water at 21.0 °C <nil>
}

// By hand: 26 + (26 − 21) + (26 − 22) − 3 · 5 is 20; a warming of 5 is a friction factor of 15 for three factors, and
// of 20 for four.
func TestAWarmingIsAFriction(t *testing.T) {
	r, err := warmed(5, 0).Water()
	if err != nil || r.Temperature != quantity.Celsius(20) || r.Friction.Factor != quantity.DeltaCelsius(15) ||
		r.Friction.Factors != 3 || len(r.Notes) != 0 {
		t.Errorf("%+v, %v", r, err)
	}
	four := warmed(5, 0)
	four.Others = append(four.Others, mixing.Factor{Kind: mixing.LevainFactor, Temperature: quantity.Celsius(24)})
	four.Mixer = mixing.Spiral // whose guide value is not asked
	if r, err := four.Water(); err != nil || r.Friction.Factor != quantity.DeltaCelsius(20) || len(r.Notes) != 0 {
		t.Errorf("%+v, %v", r, err)
	}
	if r, err := warmed(30, 0).Water(); err != nil || r.Friction.Factor != quantity.DeltaCelsius(90) {
		t.Errorf("%+v, %v", r, err)
	}
	for _, c := range []struct {
		f  mixing.Factors
		is error
	}{
		{warmed(30.1, 0), quantity.ErrOutOfRange}, {warmed(-30.1, 0), quantity.ErrOutOfRange},
		{warmed(5, 15), quantity.ErrInconsistent},
	} {
		_, err := c.f.Water()
		if found := quantity.InputErrors(err); len(found) != 1 || found[0].Path != "warming" || !errors.Is(err, c.is) {
			t.Errorf("%v", err)
		}
	}
}

// What is weighed makes the same question as one put together by hand, whichever way the friction is told.
func TestWeighedFactors(t *testing.T) {
	flour := mixing.Portion{Mass: quantity.Grams(1000), Temperature: quantity.Celsius(21), Substance: mixing.Flour}
	want, err := mixing.Planned{Target: quantity.Celsius(26), Room: quantity.Celsius(22), Water: quantity.Grams(700),
		Warming: quantity.DeltaCelsius(5), Tap: quantity.Celsius(12), Ingredients: []mixing.Portion{flour}}.Pour()
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range []mixing.Factors{warmed(5, 0), warmed(0, 15)} {
		f.Pour, f.Tap = quantity.Grams(700), quantity.Celsius(12)
		got, err := f.Weighed(flour).Pour()
		if err != nil || got.Temperature != want.Temperature || got.Dough != want.Dough {
			t.Errorf("%v, not %v, %v", got, want, err)
		}
	}
	guide := warmed(0, 0)
	guide.Mixer, guide.Pour = mixing.Spiral, quantity.Grams(700)
	if got := guide.Weighed(flour); got.Mixer != mixing.Spiral || got.Warming.Sign() != 0 {
		t.Errorf("%+v", got)
	}
}
