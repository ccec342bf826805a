package bakeday

import (
	"strings"
	"testing"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// Whoever tells the data of a day shows the same core and boiling point as whoever tells the day: rounded to
// thousandths first, some would be shown a tenth higher.
func TestCoreIsRoundedOnce(t *testing.T) {
	tenth := func(x quantity.Temperature) string { return working.Say("%.1f", x).String() }
	tried := 0
	for z := 0.0; z <= 3000 && tried < 3; z++ {
		b := hall()
		b.Kitchen.Altitude = quantity.Meters(z)
		target, err := bake.Goal{Style: b.Loaves.Style, Place: bake.At(b.Kitchen.Altitude)}.Target()
		if err != nil {
			t.Fatal(err)
		}
		if tenth(quantity.Celsius(roundTo(target.Core.Celsius(), 1000))) == tenth(target.Core) {
			continue
		}
		tried++
		d := plan(t, b)
		o := d.Data().Oven
		if tenth(o.Core) != tenth(d.Baking.Target.Core) || tenth(o.Boiling) != tenth(d.Baking.Target.Boiling) {
			t.Errorf("at %v m: %v and %v, %v and %v", z, o.Core, d.Baking.Target.Core, o.Boiling, d.Baking.Target.Boiling)
		}
	}
	if tried == 0 {
		t.Error("no altitude at which it would show")
	}
}

// Without an altitude water boils at sea level, not "at 0.0 cm".
func TestSeaLevelIsSaid(t *testing.T) {
	b := hall()
	b.Kitchen.Altitude = quantity.Length{}
	text := strings.Join(strings.Fields(plan(t, b).Report().Text(report.Options{})), " ")
	if !strings.Contains(text, "water boils at 100.0 °C at sea level") || strings.Contains(text, "0.0 cm") {
		t.Error(text)
	}
}
