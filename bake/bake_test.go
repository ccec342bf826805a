package bake

import (
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/workcheck"
)

func TestWorkingsEvaluate(t *testing.T) {
	hall := At(quantity.Meters(1150))
	for _, place := range []Site{{}, hall, At(quantity.Meters(-400)), {Station: Hectopascals(880)},
		{Altitude: quantity.Meters(1150), SeaLevel: Hectopascals(1030)}} {
		b, err := place.BoilingPoint()
		if err != nil {
			t.Fatal(err)
		}
		workcheck.Verify(t, b.Working())
		for _, style := range quantity.Values[Style]() {
			if !style.ByCore() {
				continue
			}
			target, err := Goal{Style: style, Place: place}.Target()
			if err != nil {
				t.Fatal(err)
			}
			workcheck.Verify(t, target.Working())
			v, err := LoafReading{
				Goal:  Goal{Style: style, Place: place},
				Core:  quantity.Celsius(94),
				Dough: quantity.Grams(886),
				Loaf:  quantity.Grams(790),
			}.Judge()
			if err != nil {
				t.Fatal(err)
			}
			workcheck.Verify(t, v.Working())
			c, err := CoolingLoaf{Style: style, Baked: quantity.Grams(780)}.Time()
			if err != nil {
				t.Fatal(err)
			}
			workcheck.Verify(t, c.Working())
			for _, grams := range []float64{60, 300, 886, 2500} {
				g, err := style.UsualLoss(quantity.Grams(grams))
				if err != nil {
					t.Fatal(err)
				}
				workcheck.Verify(t, g.Working())
				pr, err := OvenLoad{
					Style:       style,
					Dough:       quantity.Grams(grams),
					Pieces:      6,
					Together:    2,
					Vessel:      Pot,
					Cold:        true,
					Extrapolate: true,
				}.Program()
				if err != nil {
					t.Fatal(err)
				}
				workcheck.Verify(t, pr.Working())
			}
		}
	}
	for _, basis := range []LossBasis{OfDough, OfBread} {
		s, err := PromisedLoaf{
			Baked:   quantity.Grams(780),
			Loss:    quantity.MustPercent("12 %"),
			Cooling: quantity.MustPercent("1.5 %"),
			Basis:   basis,
		}.Scaling()
		if err != nil {
			t.Fatal(err)
		}
		workcheck.Verify(t, s.Working())
	}
}

// A rye loaf rests for the knife, a rye roll does not.
func TestRyeRestsByItsSize(t *testing.T) {
	for _, x := range []struct {
		grams float64
		rest  time.Duration
	}{{60, 0}, {200, 0}, {500, 12 * time.Hour}, {2000, 12 * time.Hour}} {
		c, err := CoolingLoaf{Style: Rye, Baked: quantity.Grams(x.grams)}.Time()
		if err != nil {
			t.Fatal(err)
		}
		if c.Rest.Duration() != x.rest {
			t.Errorf("%v g rests %v, want %v", x.grams, c.Rest, x.rest)
		}
	}
}
