package bakeday

import (
	"strings"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
)

// The water of a scald is as hot as package mixing says for its flour, its water and the place.
func TestTheWaterOfAScald(t *testing.T) {
	b := sticks()
	d := plan(t, b)
	build, _ := d.Batch.Build("scald")
	if len(build.Lines) != 2 || build.Lines[1].Role != dough.RoleLiquid {
		t.Fatal(build.Lines)
	}
	want, err := mixing.Scald{
		Flour: build.Lines[0].Mass, Water: build.Lines[1].Mass, FlourTemperature: b.Kitchen.Night,
		Altitude: b.Kitchen.Altitude,
	}.Pour()
	if err != nil {
		t.Fatal(err)
	}
	var said WeighList
	for _, l := range d.Data().Weigh {
		if l.Name == "scald" {
			said = l
		} else if len(l.Says) > 0 {
			t.Errorf("%s: %v", l.Name, l.Says)
		}
	}
	if len(said.Says) < 2 || said.Says[0] != want.Message() {
		t.Errorf("says %v, want %v", said.Says, want)
	}
	burns := false
	for _, c := range d.Cautions() {
		burns = burns || strings.Contains(c.Text.String(), "boiling water and a hot mash burn")
	}
	if !burns {
		t.Error("no caution of boiling water")
	}
	// A soaker that is no scald is not heated, and of one that is nearly dry the heat balance says nothing.
	b.Soakers[0].Kind = dough.ColdSoaker
	cold := plan(t, b)
	if len(cold.scalds()) != 0 || len(cold.scaldCautions()) != 0 {
		t.Error("a cold soaker is scalded")
	}
	b.Soakers[0].Kind = dough.Scald
	b.Soakers[0].Parts[1].Percent = quantity.NewPercent(0.1)
	if dry := plan(t, b); len(dry.scalds()) != 0 {
		t.Error("a dry scald has an answer")
	}
}
