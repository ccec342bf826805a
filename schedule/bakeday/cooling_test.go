package bakeday

import (
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
)

// factor is a temperature that the water answers to, by its name.
func factor(t *testing.T, d Day, name string) float64 {
	t.Helper()
	for _, f := range d.Data().Water.Factors {
		if f.Name == name {
			return f.Temperature.Celsius()
		}
	}
	t.Fatalf("no temperature of %s among %v", name, d.Data().Water.Factors)
	return 0
}

// A scald is kept hot as long as it stands, then spread two centimeters thin until levain may come near it; the water
// is reckoned with what it has cooled to. Against one lump of it: 9 W/(m² K) on both faces, 1050 kg/m³ and 2.8
// kJ/(kg K), as ferment takes dough to be, or 3.4 as a third of flour and two of water have together.
func TestAScaldCoolsBeforeItIsMixed(t *testing.T) {
	b := sticks()
	b.Kitchen.Night, b.Kitchen.Day = quantity.Celsius(21), quantity.Celsius(21)
	d := plan(t, b)
	stands, cool, mix := step(t, d, "stand-2"), step(t, d, "cool-down-2"), step(t, d, "mix-1")
	if !cool.Start.Equal(stands.End) || !mix.Start.Equal(cool.End) {
		t.Errorf("stands until %v, cools from %v to %v, mixed at %v", stands.End, cool.Start, cool.End, mix.Start)
	}
	lump := func(heat float64) time.Duration {
		tau := 1050 * heat * 0.01 / 9
		return time.Duration(tau * math.Log((65.0-21)/(30-21)) * float64(time.Second))
	}
	if took := cool.End.Sub(cool.Start); took < lump(2500) || took > lump(3600) {
		t.Errorf("cools for %v, one lump of it for %v to %v", took, lump(2800), lump(3400))
	}
	if at := factor(t, d, "scald"); at > 30 || at < 29.5 {
		t.Errorf("mixed in at %.1f °C", at)
	}
	want := "spread the scald 2.0 cm thin; it cools to 30 °C"
	if got := cool.Title().String(); got != want {
		t.Errorf("%q, want %q", got, want)
	}
	said := d.chilling()
	if len(said) != 1 || said[0].ID() != "bakeday.chill_kept" || !strings.Contains(said[0].String(),
		"kept above 60 °C until it is spread at "+stands.End.In(d.Zone).Format("Mon 15:04")) {
		t.Error(said)
	}
	// A room nearly as warm as that lets it come within two degrees.
	b.Kitchen.Night, b.Kitchen.Day = quantity.Celsius(31), quantity.Celsius(31)
	if at := factor(t, plan(t, b), "scald"); at > 33 || at < 32.5 {
		t.Errorf("in a room of 31 °C mixed in at %.1f °C", at)
	}
}

// A temperature of the baker's own is taken as it is.
func TestASoakerOfAGivenTemperature(t *testing.T) {
	b := sticks()
	cooled := plan(t, b)
	b.Soakers[0].Temperature = quantity.Celsius(45)
	d := plan(t, b)
	if _, cools := d.Timetable.Step("cool-down-2"); cools || factor(t, d, "scald") != 45 {
		t.Errorf("mixed in at %v", factor(t, d, "scald"))
	}
	if d.Water.Temperature.Compare(cooled.Water.Temperature) >= 0 {
		t.Errorf("water of %v for a scald of 45 °C, %v for one of 30 °C", d.Water.Temperature, cooled.Water.Temperature)
	}
	b.Soakers[0].Temperature = quantity.Celsius(61)
	if found := quantity.InputErrors(b.Check(wednesday(t))); len(found) != 1 || found[0].Path != "soaker[0].temperature" {
		t.Error(found)
	}
}

// A soaker that is made cold is as warm as the room; one made with boiling water cools from what the heat balance says.
func TestOnlyWhatIsMadeHotCools(t *testing.T) {
	b := sticks()
	b.Soakers[0].Kind = dough.ColdSoaker
	d := plan(t, b)
	if _, cools := d.Timetable.Step("cool-down-2"); cools || factor(t, d, "scald") != factor(t, d, "room") {
		t.Errorf("a cold soaker at %.1f °C in a room of %.1f °C", factor(t, d, "scald"), factor(t, d, "room"))
	}
	b.Soakers[0].Kind = dough.HotSoaker
	d = plan(t, b)
	mash, _ := d.mash(0, d.Bake.coldFlour())
	if hot, ok := d.hot(0); !ok || hot != mash.WithBoiling || hot.Celsius() < 70 {
		t.Errorf("a hot soaker begins at %v", hot)
	}
	b.Soakers[0].Kind = dough.Scald
	b.Soakers[0].Parts[1].Percent = pct(3) // too little water for 65 °C
	d = plan(t, b)
	if hot, ok := d.hot(0); !ok || hot.Celsius() >= 65 || hot.Celsius() < 40 {
		t.Errorf("a stiff scald begins at %v", hot)
	}
}

// What spoils comes out of the refrigerator, and the plan names it; its own temperature may be given. Against the heat
// balance by hand: 246 g of milk 17 °C colder, of 3.9 kJ/(kg K), takes 448 g of water 8.7 °C warmer.
func TestColdMilkIsReckonedWith(t *testing.T) {
	b := rolls()
	b.Liquids = []Ingredient{{Name: "water", Percent: pct(40), Kind: dough.KindWater},
		{Name: "whole milk", Percent: pct(22), Kind: dough.KindMilk}}
	b.Kitchen.Refrigerator = quantity.Celsius(5)
	cold := plan(t, b)
	if factor(t, cold, "whole milk") != 5 {
		t.Error(cold.Data().Water.Factors)
	}
	b.Liquids[1].Temperature = quantity.Celsius(22)
	warm := plan(t, b)
	if factor(t, warm, "whole milk") != 22 {
		t.Error(warm.Data().Water.Factors)
	}
	c, _ := mixing.Milk.Heat(quantity.Percent{})
	want := 17.0 * 22 * float64(c) / (40 * 4.186)
	if got := cold.Water.Temperature.Sub(warm.Water.Temperature).Celsius(); !(math.Abs(got-want) <= 0.1) {
		t.Errorf("water %.2f °C warmer for milk 17 °C colder, want %.2f", got, want)
	}
	b.Liquids[1].Temperature, b.Kitchen.Refrigerator = quantity.Temperature{}, quantity.Temperature{}
	b.Retard = nil
	if at := factor(t, plan(t, b), "whole milk"); at != 4 {
		t.Errorf("milk at %.1f °C from a refrigerator of which nothing is known", at)
	}
	// Butter does not spoil in the hours it takes to soften.
	b.Others = append(b.Others, Ingredient{Name: "butter", Percent: pct(6), Kind: dough.KindButter})
	for _, f := range plan(t, b).Data().Water.Factors {
		if f.Name == "butter" {
			t.Error("butter has a temperature of its own")
		}
	}
}

// Without water what is poured is found; a temperature for all of it leaves nothing to find.
func TestTheTemperatureOfWhatIsPoured(t *testing.T) {
	b := rolls()
	b.Liquids = []Ingredient{{Name: "whole milk", Percent: pct(60), Kind: dough.KindMilk}}
	d := plan(t, b)
	if n := sentence(d, "bakeday.note_no_water_one").String(); !strings.HasSuffix(n, "is for whole milk") {
		t.Error(n, d.Notes)
	}
	b.Liquids = append(b.Liquids, Ingredient{Name: "eggs", Percent: pct(10), Kind: dough.KindEgg,
		Temperature: quantity.Celsius(18)})
	d = plan(t, b)
	if len(d.Water.Liquids) != 1 || factor(t, d, "eggs") != 18 {
		t.Errorf("poured %v, %v", d.Water.Liquids, d.Data().Water.Factors)
	}
	for name, c := range map[string]struct {
		change func(*Bake)
		path   string
	}{
		"all liquids": {func(b *Bake) { b.Liquids[0].Temperature = quantity.Celsius(20) }, "liquid[0].temperature"},
		"too warm":    {func(b *Bake) { b.Liquids[1].Temperature = quantity.Celsius(61) }, "liquid[1].temperature"},
		"water": {func(b *Bake) {
			b.Liquids[0] = Ingredient{Name: "water", Percent: pct(60), Kind: dough.KindWater,
				Temperature: quantity.Celsius(20)}
		}, "liquid[0].temperature"},
	} {
		wrong := b
		wrong.Liquids = append([]Ingredient(nil), b.Liquids...)
		c.change(&wrong)
		found := false
		for _, e := range quantity.InputErrors(wrong.Check(wednesday(t))) {
			found = found || e.Path == c.path
		}
		if !found {
			t.Errorf("%s: %v", name, wrong.Check(wednesday(t)))
		}
	}
}

// Ice is as cold as the kitchen says: colder ice is less of it.
func TestIceIsAsColdAsTheKitchenSays(t *testing.T) {
	ice := func(at float64) float64 {
		b := hall()
		b.Kitchen.Day, b.Kitchen.Night, b.Kitchen.Tap = quantity.Celsius(31), quantity.Celsius(31), quantity.Celsius(24)
		b.Kitchen.Ice = quantity.Celsius(at)
		return plan(t, b).Data().Water.Ice.Grams()
	}
	melting, frozen := ice(0), ice(-18)
	// Of ice at 0 °C and at −18 °C the heat to 0 °C differs by 18 × 2.1 kJ/kg beside 333.6 and the water's own.
	if melting <= 0 || frozen >= melting || frozen/melting < 0.90 || frozen/melting > 0.94 {
		t.Errorf("%v g of melting ice, %v g at −18 °C", melting, frozen)
	}
}
