package bakeday

import (
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
	"github.com/google/go-cmp/cmp"
)

// The clocks of what is cooked, infused or wetted beforehand stand in the plan: 57 to 21 °C within two hours and to
// 5 °C within six (FDA Food Code 2022, 3-501.14), kept four days; oil with garlic four days (CDC); wet grain four
// hours (judgment).
func TestChillingClock(t *testing.T) {
	b := hall()
	b.Inclusions = append(b.Inclusions,
		Ingredient{Name: "custard", Percent: quantity.NewPercent(10), Kind: dough.KindCookedFilling, At: schedule.Shape},
		Ingredient{Name: "garlic oil", Percent: quantity.NewPercent(2), Kind: dough.KindInfusedOil, At: schedule.Bake},
		Ingredient{Name: "cold butter", Percent: quantity.NewPercent(2), Kind: dough.KindButter, At: schedule.Shape},
	)
	d := plan(t, b)
	step := func(id string) time.Time {
		s, ok := d.Timetable.Step(id)
		if !ok {
			t.Fatalf("no step %s", id)
		}
		return s.Start
	}
	shaped, baked := step(idShape), step(nth(idBake, 0))
	var told []string
	for _, n := range d.chilling() {
		told = append(told, n.String())
	}
	clock := func(at time.Time, before time.Duration) string { return at.Add(-before).Format("Mon 15:04") }
	want := []string{
		"custard: off the heat by " + clock(shaped, 6*time.Hour) + ", so that it goes in cold at " + clock(shaped, 0) +
			", and not before " + clock(shaped, 96*time.Hour) + "; from the heat to 21 °C within 2h and to 5 °C within 6h " +
			"in all, or it is thrown away",
		"garlic oil: made not before " + clock(baked, 96*time.Hour) + ", and kept at 5 °C or colder until it goes in at " +
			clock(baked, 0),
	}
	if diff := cmp.Diff(want, told); diff != "" {
		t.Error(diff)
	}
	if text := working.Join(d.Notes, "\n").String(); !strings.Contains(text, "custard: off the heat by ") {
		t.Errorf("the plan does not say it:\n%s", text)
	}
}

// A soaker that goes into the dough before its limit has none; one that stands longer has the hours of its limits.
func TestSoakerClock(t *testing.T) {
	made := time.Date(2026, 12, 4, 20, 0, 0, 0, time.UTC)
	for _, c := range []struct {
		kind   dough.SoakerKind
		stands time.Duration
		id     string
		by     []time.Duration // after it was made
	}{
		{dough.ColdSoaker, 4 * time.Hour, "", nil},
		{dough.ColdSoaker, 4*time.Hour + time.Minute, "bakeday.chill_soaker", []time.Duration{0, 4 * time.Hour}},
		{dough.HotSoaker, 2 * time.Hour, "", nil},
		{dough.HotSoaker, 3 * time.Hour, "bakeday.chill_scald", []time.Duration{0, 2 * time.Hour}},
		{dough.Scald, 6 * time.Hour, "bakeday.chill_scald", []time.Duration{0, 2 * time.Hour}},
		{dough.Scald, 12 * time.Hour, "bakeday.chill_scald_long", []time.Duration{0, 2 * time.Hour, 6 * time.Hour}},
	} {
		said := soaking(soaked{SoakerWork{Name: "grain", Kind: c.kind}, made, made.Add(c.stands), made.Add(4 * time.Hour),
			true,
			quantity.Celsius(4)})
		if c.id == "" {
			if len(said) != 0 {
				t.Errorf("%v for %v: %v", c.kind, c.stands, said)
			}
			continue
		}
		if len(said) != 1 || said[0].ID() != c.id {
			t.Errorf("%v for %v: %v", c.kind, c.stands, said)
			continue
		}
		text := said[0].String()
		for _, by := range c.by {
			at := made.Add(by).Format("Mon 15:04")
			if !strings.Contains(text, at) {
				t.Errorf("%v for %v: %s, want %s in it", c.kind, c.stands, text, at)
			}
			text = strings.Replace(text, at, "", 1)
		}
		if strings.Count(text, ":") != 1 {
			t.Errorf("%v for %v: more times than wanted: %s", c.kind, c.stands, text)
		}
	}
}

// A soaker that is kept in the cold but is reckoned warmer in the dough says so.
func TestASoakerOutOfTheColdIsWarmed(t *testing.T) {
	made := time.Date(2026, 12, 4, 20, 0, 0, 0, time.UTC)
	for at, want := range map[float64]bool{4: false, 5: false, 21.7: true} {
		said := soaking(soaked{SoakerWork{Name: "grain", Kind: dough.ColdSoaker}, made, made.Add(9 * time.Hour),
			made.Add(4 * time.Hour), true, quantity.Celsius(at)})
		text := working.Join(said, "\n").String()
		if got := strings.Contains(text, "out of the cold, warm it to 22 °C before you mix"); got != want {
			t.Errorf("at %v °C: %s", at, text)
		}
	}
	b := hall()
	b.Soakers = []SoakerWork{{Name: "seeds", Kind: dough.ColdSoaker, Parts: []SoakerPart{
		{Name: "water", Percent: quantity.NewPercent(5)}}, AtLeast: minutesOf(480), AtMost: minutesOf(960)}}
	d := plan(t, b)
	if at := d.goesInAt("seeds"); at.Celsius() < 15 || at.Celsius() > 25 {
		t.Errorf("the soaker goes in at %v", at)
	}
	if at := d.goesInAt("nothing"); at.IsValid() && !at.IsZero() {
		t.Errorf("what is not there goes in at %v", at)
	}
}
