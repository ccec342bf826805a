package desk

import (
	"testing"
	"time"
	_ "time/tzdata"
)

// The rules that the page carries are those of the zone.
func TestHallZone(t *testing.T) {
	got, err := hallLocation()
	if err != nil {
		t.Fatal(err)
	}
	want, err := time.LoadLocation(hallZone)
	if err != nil {
		t.Fatal(err)
	}
	for at := time.Date(2000, 1, 1, 0, 30, 0, 0, time.UTC); at.Year() < 2060; at = at.Add(7 * time.Hour) {
		a, b := at.In(got), at.In(want)
		if a.Format(time.RFC3339) != b.Format(time.RFC3339) {
			t.Fatalf("%v is not %v", a, b)
		}
	}
	if got.String() != hallZone {
		t.Error(got)
	}
}
