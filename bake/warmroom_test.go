package bake_test

import (
	"strings"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
)

// A room that is too warm for the core at which bread is usually cut moves that core, and the answer says so; a core
// of the baker's own, or a cooler room, needs no word.
func TestAWarmRoomMovesTheCoreAtWhichBreadIsCut(t *testing.T) {
	const says = "cut at 42 °C, not at the usual 35 °C: the room has 36 °C"
	loaf := bake.CoolingLoaf{Style: bake.LeanHearth, Baked: quantity.Grams(800), Room: quantity.Celsius(36)}
	cooling := func(in bake.CoolingLoaf) bake.CoolingTime {
		c, err := in.Time()
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	text := func(r report.Report) string {
		return strings.Join(strings.Fields(r.Text(report.Options{Width: 500})), " ")
	}
	if c := cooling(loaf); len(c.Notes()) != 1 || !strings.Contains(text(c.Report()), says) {
		t.Errorf("%v\n%s", c.Notes(), text(c.Report()))
	}
	own, cool, nearly := loaf, loaf, loaf
	own.Slice, cool.Room, nearly.Room = quantity.Celsius(42), quantity.Celsius(29), quantity.Celsius(29.4)
	for _, in := range []bake.CoolingLoaf{own, cool, nearly} {
		if c := cooling(in); len(c.Notes()) != 0 {
			t.Errorf("room %v, cut at %v: %v", in.Room, in.Slice, c.Notes())
		}
	}
	probe := bake.CoolingProbe{Room: loaf.Room, Samples: []bake.Sample{
		{At: 0, Core: quantity.Celsius(80)}, {At: quantity.Elapsed(20 * time.Minute), Core: quantity.Celsius(65)},
	}}
	left, err := probe.TimeLeft()
	if err != nil || !strings.Contains(text(left.Report()), says) {
		t.Errorf("%v: %s", err, text(left.Report()))
	}
	probe.Slice = quantity.Celsius(42)
	if left, err = probe.TimeLeft(); err != nil || strings.Contains(text(left.Report()), "not at the usual") {
		t.Errorf("%v: %s", err, text(left.Report()))
	}
}
