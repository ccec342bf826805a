package ferment_test

import (
	"fmt"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

func asked() ferment.AskedDough {
	return ferment.AskedDough{Bulk: ferment.Bulk{Inoculation: quantity.NewPercent(12), Hydration: quantity.NewPercent(70),
		Salt: quantity.NewPercent(2), Rise: quantity.NewPercent(75), Law: ferment.GasBalance(),
		History: ferment.Constant(quantity.Celsius(25))}}
}

func ExampleAskedDough_Answer() {
	a := asked()
	a.Readings = []ferment.RiseReading{{At: quantity.Elapsed(2 * time.Hour), Rise: quantity.NewPercent(20)}}
	got, err := a.Answer()
	before, _ := a.Bulk.Estimate()
	fmt.Println(got.Seen.Before == before.Ready(), got.Estimate.Ready().Late < before.Ready().Late, err)
	// Output: true true <nil>
}

// Each answer is that of its own question, and what is not asked is not answered.
func TestEverythingThatIsAskedOfADough(t *testing.T) {
	a := asked()
	plain, err := a.Answer()
	if err != nil || plain.Seen != nil || plain.Shape != nil || plain.Ways != nil || len(plain.Workings()) != 1 {
		t.Fatalf("%+v, %v", plain, err)
	}
	a.Readings = []ferment.RiseReading{{At: quantity.Elapsed(2 * time.Hour), Rise: quantity.NewPercent(20)}}
	a.Cold = &ferment.Proof{Bench: quantity.Elapsed(30 * time.Minute), Stages: []ferment.Piece{{
		Mass: quantity.Grams(900), Form: ferment.Round, Into: ferment.Room{Night: quantity.Celsius(4)},
		Exposure: ferment.Refrigerator, For: quantity.Elapsed(12 * time.Hour)}}}
	a.ReadyBy = quantity.Elapsed(6 * time.Hour)
	a.Mixed = time.Date(2026, 11, 28, 9, 0, 0, 0, time.UTC)
	all, err := a.Answer()
	if err != nil {
		t.Fatal(err)
	}
	e, err := a.Bulk.Estimate()
	if err != nil {
		t.Fatal(err)
	}
	seen, err := e.Update(a.Readings...)
	if err != nil {
		t.Fatal(err)
	}
	cold := *a.Cold
	cold.Bulk, cold.Total = seen.Now.Bulk(), a.Bulk.Rise
	target, err := cold.RiseBeforeShaping()
	if err != nil {
		t.Fatal(err)
	}
	shape, err := target.Shape.Update(a.Readings...)
	if err != nil {
		t.Fatal(err)
	}
	ways, err := a.Bulk.WaysTo(6*time.Hour, ferment.Relaxing{})
	if err != nil {
		t.Fatal(err)
	}
	if all.Estimate.Ready() != seen.Now.Ready() || all.Shape.Rise != target.Rise ||
		all.Shape.Shape.Ready() != shape.Now.Ready() || all.Ways.String() != ways.String() {
		t.Errorf("%v, %v, %v", all.Estimate, all.Shape, all.Ways)
	}
	if n := len(all.Workings()); n != 2 || all.Report().Headline != all.Shape.ReportFrom(a.Mixed).Headline {
		t.Errorf("%d derivations, %v", n, all)
	}
	if all.Shape = nil; all.Report().Headline != all.Seen.ReportFrom(a.Mixed).Headline || len(all.Workings()) != 2 {
		t.Error(all)
	}
	a.Bulk.Hydration = quantity.Percent{}
	if _, err := a.Answer(); err == nil || quantity.InputErrors(err)[0].Path != "bulk.hydration" {
		t.Error(err)
	}
}
