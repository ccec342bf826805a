package dough_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"example.org/maslin/internal/workcheck"
)

// Figures that print got wrong, or rounded so that they do not follow from their own inputs, are
// no check values. They are listed with the arithmetic, which must disagree with the print.
func TestMisprintsAreMisprints(t *testing.T) {
	f, err := os.Open("testdata/misprints.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows[1:] {
		printed, err := strconv.ParseFloat(row[2], 64)
		if err != nil {
			t.Fatal(err)
		}
		_, right, err := workcheck.Evaluate(row[3])
		if err != nil {
			t.Errorf("%s: %v", row[0], err)
		}
		if math.Abs(right-printed) < 1e-9 {
			t.Errorf("%s: print and arithmetic agree on %v, so that it is a check value", row[0], printed)
		}
		if row[5] == "" {
			t.Errorf("%s: no source", row[0])
		}
	}
}
