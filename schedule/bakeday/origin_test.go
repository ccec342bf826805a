package bakeday

import (
	"reflect"
	"strings"
	"testing"

	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/ferment"
)

// Each tag names a field that the input of its room has.
func TestFillsNameFieldsOfTheRooms(t *testing.T) {
	inputs := map[string][]reflect.Type{
		ofFormula: {reflect.TypeFor[dough.Formula](), reflect.TypeFor[dough.Preferment](),
			reflect.TypeFor[struct{ dough.Baked }]()},
		ofOven: {reflect.TypeFor[bake.OvenLoad]()},
		ofRise: {reflect.TypeFor[ferment.Bulk](), reflect.TypeFor[ferment.Proof]()},
	}
	tags := 0
	seen := map[reflect.Type]bool{}
	var look func(of reflect.Type)
	look = func(of reflect.Type) {
		for of.Kind() == reflect.Pointer || of.Kind() == reflect.Slice {
			of = of.Elem()
		}
		if of.Kind() != reflect.Struct || of.PkgPath() != reflect.TypeFor[Bake]().PkgPath() || seen[of] {
			return
		}
		seen[of] = true
		for i := range of.NumField() {
			for _, tag := range strings.Fields(of.Field(i).Tag.Get("fills")) {
				tags++
				room, path, _ := strings.Cut(tag, ":")
				known := false
				for _, in := range inputs[room] {
					known = known || knownPath(in, path) == path
				}
				if !known {
					t.Errorf("%v.%s fills %s, which is not there", of, of.Field(i).Name, tag)
				}
			}
			look(of.Field(i).Type)
		}
	}
	look(reflect.TypeFor[Bake]())
	if tags < 20 {
		t.Errorf("only %d tags", tags)
	}
}

func TestOriginOfARoomsPaths(t *testing.T) {
	plain := &Bake{Levain: &Levain{}, Preferments: make([]PrefermentWork, 1)}
	yeasted := &Bake{Preferments: make([]PrefermentWork, 1), Soakers: make([]SoakerWork, 1)}
	for _, c := range []struct {
		b                *Bake
		room, path, want string
	}{
		{plain, ofFormula, "Flours[1].Percent", "Flours[1].Percent"},
		{plain, ofFormula, "Baked.Each", "Loaves.Baked"},
		{plain, ofFormula, "Baked.Loss", "Loaves.Loss"},
		{plain, ofFormula, "Preferments[0].Flour", "Levain.Prefermented"},
		{plain, ofFormula, "Preferments[0].Hydration", "Levain.Hydration"},
		{plain, ofFormula, "Preferments[0].Blend[0].Name", "Levain.Flour"},
		{plain, ofFormula, "Preferments[0].Seed.Percent", "Levain.Inoculation"},
		{plain, ofFormula, "Preferments[0].Seed.Hydration", "Levain.CultureHydration"},
		{plain, ofFormula, "Preferments[0]", "Levain"},
		{plain, ofFormula, "Preferments[1].Others[0].Percent", "Preferments[0].Yeast"},
		{plain, ofFormula, "Preferments", "Preferments"},
		{&Bake{Levain: &Levain{}}, ofFormula, "Preferments", "Levain"},
		{&Bake{}, ofFormula, "Preferments", "Soakers"},
		{&Bake{Levain: &Levain{}, Soakers: make([]SoakerWork, 1)}, ofFormula, "Preferments", "Soakers"},
		{yeasted, ofFormula, "Preferments[0].Flour", "Preferments[0].Prefermented"},
		{yeasted, ofFormula, "Preferments[0].Hydration", "Preferments[0].Hydration"},
		{plain, ofOven, "Dough", "Loaves.Baked"}, {plain, ofOven, "Style", "Loaves.Style"},
		{plain, ofOven, "Oven", "Oven.Temperature"}, {plain, ofOven, "Covered", "Oven.Covered"},
		{plain, ofRise, "Inoculation", "Levain.Prefermented"}, {plain, ofRise, "Bulk.Yeast.Amount", "Others"},
		{plain, ofRise, "Hydration", "Liquids"}, {plain, ofRise, "Salt", "Salt"}, {plain, ofRise, "Total", "Bulk.Rise"},
		{plain, ofRise, "Altitude", "Kitchen.Altitude"}, {plain, ofRise, "History", "Kitchen"},
		{plain, ofRise, "Stages[0].For", "Retard"}, {plain, ofRise, "Stages[0].Mass", "Loaves"},
		{plain, ofRise, "Stages[0].Into", "Kitchen.Refrigerator"}, {plain, ofRise, "Culture", "Culture"},
	} {
		if got := c.b.origin(c.room, c.path); got != c.want {
			t.Errorf("%s %s: %s, want %s", c.room, c.path, got, c.want)
		}
	}
}
