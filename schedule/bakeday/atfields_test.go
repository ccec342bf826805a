package bakeday

import (
	"context"
	"errors"
	"testing"

	"example.org/maslin/dough/quantity"
)

// What a room calls its inputs is cut off where the bake has no such field; what is no problem of an input stays.
func TestProblemsStandAtFieldsOfTheInput(t *testing.T) {
	of := func(path string) error { return &quantity.InputError{GoPath: path, Err: quantity.ErrOutOfRange} }
	for path, want := range map[string]string{
		"Flours[0].Percent":           "flour[0].percent",
		"Levain.Inoculation.Seed":     "levain.inoculation",
		"Preferments[1].Of.Hydration": "preferment[1]",
		"Preferments[1].Yeast.Amount": "preferment[1].yeast",
		"Mixing.Ingredients[5].Mass":  "mixing",
		"Kitchen.Mixers[0].Bowl":      "kitchen.mixer[0].bowl",
		"Kitchen[0].Mass":             "kitchen",
		"Liquids[0":                   "liquid",
		"Salt.exact":                  "salt",
		"Target":                      "target",
	} {
		found := quantity.InputErrors(atFields(Bake{}, of(path)))
		if len(found) != 1 || found[0].Path != want || found[0].Code != "out_of_range" {
			t.Errorf("%s: %+v, want %s", path, found[0], want)
		}
		order := quantity.InputErrors(atFields(Order{}, quantity.At("Bakes[2]", of(path))))
		if want := "bake[2]." + want; path != "Target" && order[0].Path != want {
			t.Errorf("%s: %s, want %s", path, order[0].Path, want)
		}
	}
	err := atFields(Bake{}, errors.Join(context.DeadlineExceeded, quantity.At("Mixing", of("Water"))))
	if !errors.Is(err, context.DeadlineExceeded) || quantity.InputErrors(err)[0].Path != "mixing" {
		t.Error(err)
	}
	if atFields(Bake{}, nil) != nil {
		t.Error("a problem of nothing")
	}
}
