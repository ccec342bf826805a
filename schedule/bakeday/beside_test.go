package bakeday

import (
	"context"
	"errors"
	"slices"
	"strings"
	"testing"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/schedule"
	"github.com/google/go-cmp/cmp"
)

func TestKneadedAnotherWay(t *testing.T) {
	b := hall()
	got, err := b.KneadedBy(context.Background(), wednesday(t), mixing.Hand)
	if err != nil {
		t.Fatal(err)
	}
	own, same, cold := got.Plans[0].Plan, got.Plans[1].Plan, got.Plans[2].Plan
	if d := cmp.Diff(plan(t, b).Data().Steps, own.Steps); d != "" {
		t.Errorf("the first is not the plan as it is: %s", d)
	}
	if same.Water.Target != own.Water.Target {
		t.Errorf("the same dough is of %v and of %v", own.Water.Target, same.Water.Target)
	}
	// With the same water the dough is colder by what the mixer would have added, exactly.
	lost := own.Water.Warming.Sub(cold.Water.Warming)
	if want := own.Water.Target.Add(quantity.TemperatureDelta{}.Sub(lost)); cold.Water.Target != want {
		t.Errorf("with the same water the dough is of %v, want %v", cold.Water.Target, want)
	}
	if d := cold.Water.Temperature.Sub(own.Water.Temperature).Celsius(); d > 0.3 || d < -0.3 {
		t.Errorf("the same water is off by %.2f °C", d) // the room has another temperature at another hour
	}
	if cold.Bulk.Ready.Likely <= own.Bulk.Ready.Likely || !cold.starts(schedule.Mix).Before(own.starts(schedule.Mix)) {
		t.Error("a colder dough takes no longer, or is mixed no earlier")
	}
	var ids []string
	for _, m := range got.Changes {
		ids = append(ids, m.ID())
	}
	want := []string{
		"bakeday.kneading_warms", "bakeday.kneading_water", "bakeday.kneading_bulk_longer", "bakeday.kneading_retard",
		"bakeday.kneading_mix_earlier", "bakeday.kneading_batches",
	}
	if d := cmp.Diff(want, ids); d != "" {
		t.Error(d)
	}
	if len(got.Workings()) != 3*4 { // water, rise, bulk and times of each
		t.Errorf("%d derivations", len(got.Workings()))
	}
}

func TestKneadedByMachineNeedsABowl(t *testing.T) {
	b := hall()
	b.Mixing.Mixer, b.Mixing.Warming, b.Kitchen.Mixers = mixing.Hand, quantity.TemperatureDelta{}, nil
	got, err := b.KneadedBy(context.Background(), wednesday(t), mixing.Spiral)
	if err != nil {
		t.Fatal(err)
	}
	if got.Plans[1].Plan.Water.Warming.Celsius() <= got.Plans[0].Plan.Water.Warming.Celsius() {
		t.Error("a machine warms no more than hands")
	}
	if said := strings.Join(strings.Fields(got.Report().Text(report.Options{})), " "); !strings.Contains(said,
		"(both guide values)") {
		t.Error("nothing says that both are guide values")
	}
	_, err = b.KneadedBy(context.Background(), wednesday(t), mixing.Hand)
	var e *quantity.InputError
	if !errors.As(err, &e) || e.Path != "mixing.mixer" || !errors.Is(err, quantity.ErrInconsistent) {
		t.Errorf("kneaded as it is: %v", err)
	}
}

func TestBesideShowsWhatDiffers(t *testing.T) {
	both := plan(t, hall()).Beside(plan(t, rolls()))
	grid := both.Report().Grids()[0]
	rows := map[string][]report.Cell{}
	for _, r := range grid.Rows {
		rows[r[0].Text(report.Options{}.Reader())] = r[1:]
	}
	for label, want := range map[string][2]string{
		"prefermented flour": {"12.0 %", "0.0 %"}, "retard": {"Fri 21:04", ""}, "wanted": {"Sat 12:30", "Sun 15:00"},
	} {
		got := rows[label]
		if len(got) != 2 || got[0].Text(report.Options{}.Reader()) != want[0] ||
			got[1].Text(report.Options{}.Reader()) != want[1] {
			t.Errorf("%s: %v, want %v", label, got, want)
		}
	}
	if len(both.Changes) != 0 || slices.ContainsFunc(both.Report().Sections,
		func(s report.Section) bool { return s.Key == "changes" }) {
		t.Error("two bakes differ in more than one thing, so nothing is said to be the cause")
	}
	if (SideBySide{}).Report().Headline.ID() != "bakeday.no_plan" {
		t.Error("a comparison of nothing says something")
	}
}
