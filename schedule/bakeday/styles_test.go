package bakeday

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
)

// pizzas are eight, from balls that stand in the cold, with a topping.
func pizzas() Bake {
	b := rolls()
	pct := quantity.NewPercent
	b.Name, b.Wanted = "Pizza", OnDay(time.Sunday, b.Wanted.Clock)
	b.Loaves = Loaves{Pieces: 8, Scaling: quantity.Grams(250), Style: bake.Pizza}
	b.Others[0].Percent, b.Bulk.Rise = pct(0.1), pct(120)
	b.Inclusions = []Ingredient{{Name: "mozzarella", Percent: pct(40), Kind: dough.KindDairy, At: schedule.Bake,
		Perishable: true}}
	b.Retard = &Retard{AtLeast: minutesOf(24 * 60), AtMost: minutesOf(72 * 60), WarmUp: minutesOf(120)}
	b.Oven = OvenWork{Temperature: quantity.Celsius(300), Uncovered: minutesOf(6)}
	b.Kitchen.Away = nil
	return b
}

// Pizza is baked to order: one after the other on the stone, the last out a few minutes before it is wanted, none
// cooled.
func TestPizzaIsBakedToOrder(t *testing.T) {
	d := plan(t, pizzas())
	if !d.Possible() {
		t.Fatal(d.Data().Why.Says)
	}
	if d.Baking.Rounds != 8 || d.Baking.Each != 1 {
		t.Fatalf("%d rounds of %d", d.Baking.Rounds, d.Baking.Each)
	}
	first, last := step(t, d, "bake-1"), step(t, d, "bake-8")
	if wait := d.Wanted.Sub(last.End); wait != tooHotToEat {
		t.Errorf("the last is out %v before it is wanted", wait)
	}
	if all := last.End.Sub(first.Start); all < 8*6*time.Minute+7*3*time.Minute || all > 100*time.Minute {
		t.Errorf("all are baked in %v", all)
	}
	cold := step(t, d, "retard")
	if stands := cold.End.Sub(cold.Start); stands < 24*time.Hour || stands > 72*time.Hour {
		t.Errorf("the balls stand %v in the cold", stands)
	}
	// A ball is as heavy as was written, the topping apart.
	if got := d.Data().Formula.Divide; !(math.Abs(got.Grams()-250) <= 0.5) {
		t.Errorf("balls of %v", got)
	}
	if name := step(t, d, "shape").Name.String(); name != "divide into balls" {
		t.Error(name)
	}
	if name := step(t, d, "bake-2").Name.String(); name != "stretch and bake, 2 of 8" {
		t.Error(name)
	}
	// Cheese on top is not in the dough while it ferments.
	for _, c := range d.Cautions() {
		if c.Subject == "food safety" {
			t.Errorf("%v", c.Text)
		}
	}
	b := pizzas()
	b.Inclusions[0].At = 0
	if warned := len(plan(t, b).Cautions()); warned <= len(d.Cautions()) {
		t.Error("cheese in the dough brings no caution")
	}
	// Two at a time, if the baker says so.
	b = pizzas()
	b.Oven.Together = 2
	if two := plan(t, b); two.Baking.Rounds != 4 {
		t.Errorf("%d rounds", two.Baking.Rounds)
	}
}

// Of rounds that are alike the timetable says once what is the same in each.
func TestRoundsAlikeAreToldOnce(t *testing.T) {
	b := pizzas()
	b.Notes = []StepNote{{"bake", "flour the peel"}}
	data := plan(t, b).Data()
	table := data.timetable()
	told, peel := 0, 0
	for _, row := range table.Rows {
		says := row[len(row)-1].Text(working.Reader{})
		if strings.Contains(says, "mozzarella") {
			told++
		}
		if strings.Contains(says, "flour the peel") {
			peel++
		}
	}
	if told != 1 || peel != 1 {
		t.Errorf("told %d and %d times", told, peel)
	}
	for _, s := range data.Steps { // as data each step has it
		if s.Kind == schedule.Bake && (len(s.Adds) != 1 || len(s.Notes) != 1) {
			t.Errorf("%+v", s)
		}
	}
}

// A flat bread of a levain is baked to order too; a focaccia lies in its tray, and rolls are eaten warm when that is
// asked.
func TestOtherStyles(t *testing.T) {
	flat := hall()
	flat.Wanted = OnDay(time.Saturday, wallclock.MustClock("19:00"))
	flat.Loaves, flat.Retard, flat.Oven = Loaves{Pieces: 10, Scaling: quantity.Grams(120),
		Style: bake.FlatBread}, nil, OvenWork{}
	d := plan(t, flat)
	early := d.Wanted.Sub(step(t, d, "bake-10").End)
	if d.Baking.Rounds != 10 || early < tooHotToEat || early > 35*time.Minute || d.Bake.Oven.Reheat != betweenOrders {
		t.Errorf("%d rounds, reheat %v, the last out %v before they are wanted", d.Baking.Rounds, d.Bake.Oven.Reheat, early)
	}
	sheet := rolls()
	sheet.Loaves, sheet.Oven = Loaves{Pieces: 1, Scaling: quantity.Grams(1300), Style: bake.Focaccia,
		Warm: true}, OvenWork{}
	d = plan(t, sheet)
	if !d.Possible() || step(t, d, "shape").Name.String() != "lay it in the oiled tray" ||
		step(t, d, "bake-1").Name.String() != "dimple and bake" || d.Data().Oven.Preheat != minutesOf(20) {
		t.Errorf("%v %v", step(t, d, "shape").Name, d.Data().Oven)
	}
	buns := rolls()
	buns.Loaves, buns.Oven = Loaves{Pieces: 12, Baked: quantity.Grams(70), Style: bake.SoftRoll, Warm: true}, OvenWork{}
	d = plan(t, buns)
	if !d.Possible() || d.Wanted.Sub(step(t, d, "bake-1").End) < tooHotToEat ||
		d.Wanted.Sub(step(t, d, "bake-1").End) > 40*time.Minute {
		t.Errorf("out %v before they are eaten", d.Wanted.Sub(step(t, d, "bake-1").End))
	}
}

// A filling goes on top of the dough that was divided.
func TestScalingIsOfTheDoughAlone(t *testing.T) {
	b := pizzas()
	b.Inclusions = append(b.Inclusions, Ingredient{Name: "figs", Percent: quantity.NewPercent(10), Kind: dough.KindFruit,
		At: schedule.Shape},
		Ingredient{Name: "seeds", Percent: quantity.NewPercent(5), Kind: dough.KindSeeds})
	d := plan(t, b)
	whole := 250.0 * (100 + 70 + 2.1 + 0.1 + 40 + 10 + 5) / (100 + 70 + 2.1 + 0.1 + 5)
	if b.Salt != quantity.NewPercent(2.1) || b.Liquids[0].Percent != quantity.NewPercent(70) {
		t.Fatal(b.Salt, b.Liquids)
	}
	if got := d.Batch.ScalingWeight().Grams(); !(math.Abs(got-whole) <= 0.001) {
		t.Errorf("a piece of %v g in all, want %v", got, whole)
	}
}

// At 2,800 m the target of a hearth loaf is the low end of what is accepted there: both are told with the same
// decimals, so that it lies in its range.
func TestTheTargetLiesInItsRange(t *testing.T) {
	b := hall()
	b.Kitchen.Altitude = quantity.Meters(2800)
	d := plan(t, b)
	o := d.Data().Oven
	if o.Core.Compare(o.CoreFrom) < 0 || o.Core.Compare(o.CoreTo) > 0 {
		t.Errorf("%v outside of %v to %v", o.Core, o.CoreFrom, o.CoreTo)
	}
	want := fmt.Sprintf("core of %.1f °C (%.1f °C to %.1f °C)", o.Core.Celsius(), o.CoreFrom.Celsius(), o.CoreTo.Celsius())
	if text := d.Report().Text(report.Options{}); !strings.Contains(strings.Join(strings.Fields(text), " "), want) {
		t.Errorf("no %q in\n%s", want, text)
	}
}
