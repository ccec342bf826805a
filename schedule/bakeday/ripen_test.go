package bakeday

import (
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule"
)

// poolished is a bread with a poolish of which the baker says no hours.
func poolished(yeast float64) Bake {
	b := sticks()
	b.Soakers = nil
	p := &b.Preferments[0]
	p.AtLeast, p.AtMost, p.Yeast = 0, 0, quantity.NewPercent(yeast)
	return b
}

// When a poolish is ripe is computed from its yeast and the room, and the dough is mixed between its peak and its end.
func TestAPoolishRipensByTheClock(t *testing.T) {
	d := plan(t, poolished(0.1))
	if !d.Possible() {
		t.Fatal(d.Data().Why.Says)
	}
	r := d.Preferments[0]
	made, mixed := step(t, d, "make-1"), step(t, d, "mix-1")
	stands := mixed.Start.Sub(made.End)
	if stands < r.Peak.Likely || stands > r.Until.Likely+time.Minute {
		t.Errorf("it stands %v, at its peak after %v, good until %v", stands, r.Peak.Likely, r.Until.Likely)
	}
	// Asked of package ferment, with the mean of the room over that time, it is about the same.
	room := d.Bake.roomAt(made.End.Add(stands/2), d.Zone)
	alone, err := ferment.Ripening{
		Yeast:     ferment.Yeast{Kind: ferment.InstantYeast, Amount: quantity.NewPercent(0.1)},
		Hydration: quantity.NewPercent(100),
		History:   ferment.Constant(room), Law: ferment.GasBalance(),
	}.Ripe()
	if err != nil {
		t.Fatal(err)
	}
	if off := (alone.Peak.Likely - r.Peak.Likely).Abs(); off > r.Peak.Likely/8 {
		t.Errorf("peak after %v, at %v throughout after %v", r.Peak.Likely, room, alone.Peak.Likely)
	}
	data := d.Data().Preferments
	if len(data) != 1 || data[0].Name != "poolish" || (data[0].Peak.Likely-r.Peak.Likely).Abs() > time.Minute {
		t.Errorf("%+v", data)
	}
	if !strings.Contains(d.Report().Text(report.Options{}), "poolish: ripe ") {
		t.Error("the report does not say when it is ripe")
	}
	// More yeast is ripe sooner, and what the poolish hands on to the dough is counted from its peak.
	if more := plan(t, poolished(0.4)); more.Preferments[0].Peak.Likely >= r.Peak.Likely {
		t.Error("four times the yeast is not ripe sooner")
	}
	if handed := d.Rising.Bulk.Bulk().Preferments; len(handed) != 1 || handed[0].Ripened.Duration() != r.Peak.Likely {
		t.Errorf("%+v", handed)
	}
}

// In the cold it takes its time, at the baker's hours it takes those.
func TestWhereAPoolishStands(t *testing.T) {
	b := poolished(0.4)
	b.Wanted = OnDay(time.Sunday, b.Wanted.Clock)
	warm := plan(t, b).Preferments[0].Peak.Likely
	b.Preferments[0].Temperature = quantity.Celsius(12)
	cold := plan(t, b)
	if cold.Preferments[0].Peak.Likely < warm*3/2 {
		t.Errorf("at 12 °C ripe after %v, in the room after %v", cold.Preferments[0].Peak.Likely, warm)
	}
	b.Preferments[0].AtLeast, b.Preferments[0].AtMost = minutesOf(600), minutesOf(660)
	own := plan(t, b)
	if len(own.Data().Preferments) != 0 || own.Bake.standing(0, moments{}) != 630*time.Minute {
		t.Error("the baker's own hours are not taken")
	}
	if s := step(t, own, "ripen-1"); s.End.Sub(s.Start) < 10*time.Hour || s.End.Sub(s.Start) > 11*time.Hour {
		t.Errorf("stands %v", s.End.Sub(s.Start))
	}
}

// Without yeast of its own nothing says how long it stands.
func TestAPrefermentOfUnknownHours(t *testing.T) {
	b := poolished(0)
	all := quantity.InputErrors(b.Check(wednesday(t)))
	if len(all) != 1 || all[0].Path != "preferment[0].at_least" {
		t.Error(all)
	}
	b.Preferments[0].Kind, b.Preferments[0].AtMost = dough.OldDough, minutesOf(60)
	if all := quantity.InputErrors(b.Check(wednesday(t))); len(all) != 1 || all[0].Path != "preferment[0].at_least" {
		t.Error(all)
	}
	b = poolished(0.1)
	b.Preferments[0].Temperature = quantity.Celsius(60)
	if all := quantity.InputErrors(b.Check(wednesday(t))); len(all) != 1 || all[0].Path != "preferment[0].temperature" {
		t.Error(all)
	}
}

// Its hours are not up for change when a day does not fit: they follow from the yeast.
func TestARipePoolishIsFirm(t *testing.T) {
	d := plan(t, poolished(0.1))
	for _, s := range d.problem.Steps {
		if s.Kind == schedule.Ripen && (!s.MinFirm || !s.MaxFirm) {
			t.Errorf("%s may be changed", s.ID)
		}
	}
}
