package bakeday_test

import (
	"encoding/csv"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule/bakeday"
	"github.com/google/go-cmp/cmp"
)

// A line for each batch, steps by the clock, and no name that a spreadsheet would compute.
func TestPlanAsATable(t *testing.T) {
	at := time.Date(2026, 11, 28, 9, 5, 0, 0, time.UTC)
	later := at.Add(90 * time.Minute)
	d := bakeday.PlanData{
		Weigh: []bakeday.WeighList{{Name: "mixing", Lines: []bakeday.WeighLine{
			{Name: "@rye", Percent: quantity.NewPercent(12.5), Mass: quantity.Grams(30.5)},
			{Name: "water", Percent: quantity.NewPercent(70), Mass: quantity.Grams(3),
				Portions: []quantity.Mass{quantity.Grams(1), quantity.Grams(2)}},
		}}},
		Steps: []bakeday.StepData{{
			Name: working.Say("=bake"), Start: at, End: later, EarliestStart: at, LatestStart: later, Hands: true,
			LookFrom: &at, LookTo: &later,
		}},
	}
	rows, err := csv.NewReader(strings.NewReader(d.CSV())).ReadAll()
	if err != nil || len(rows) != 5 {
		t.Fatal(err, rows)
	}
	for i, want := range []string{"weigh,mixing,'@rye,1,30.5,12.5", "weigh,mixing,water,1,1,70",
		"weigh,mixing,water,2,2,70"} {
		if got := strings.Join(rows[i+1][:6], ","); got != want {
			t.Errorf("got %s, want %s", got, want)
		}
	}
	want := []string{
		"step", "", "'=bake", "", "", "", "2026-11-28 09:05", "2026-11-28 10:35", "2026-11-28 09:05", "2026-11-28 10:35",
		"true",
		"2026-11-28 09:05", "2026-11-28 10:35",
	}
	if d := cmp.Diff(want, rows[4]); d != "" {
		t.Error(d)
	}
}

// Data of another program may say only one end of a look.
func TestPlanAsATableWithHalfALook(t *testing.T) {
	at := time.Date(2026, 11, 28, 9, 5, 0, 0, time.UTC)
	for want, step := range map[string]bakeday.StepData{
		"2026-11-28 09:05,": {LookFrom: &at}, ",2026-11-28 09:05": {LookTo: &at}, ",": {},
	} {
		_, row, _ := strings.Cut(bakeday.PlanData{Steps: []bakeday.StepData{step}}.CSV(), "\n")
		if row = strings.TrimSpace(row); !strings.HasSuffix(row, ",false,"+want) {
			t.Errorf("want %q at the end of %s", want, row)
		}
	}
}
