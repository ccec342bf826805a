package numeric

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

func TestPublished(t *testing.T) {
	f, err := os.Open("testdata/published.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) < 20 {
		t.Fatalf("only %d rows", len(rows))
	}
	for _, row := range rows[1:] {
		in := map[string]float64{}
		for _, pair := range strings.Split(row[2], ";") {
			key, value, _ := strings.Cut(pair, "=")
			if in[key], err = strconv.ParseFloat(value, 64); err != nil {
				t.Fatal(err)
			}
		}
		var got float64
		switch row[1] {
		case "zero of J0":
			got, err = BesselZero0(int(in["n"]))
		case "zero of J1":
			got, err = BesselZero1(int(in["n"]))
		case "normal quantile":
			got, err = NormalQuantile(in["p"])
		case "Student quantile":
			got, err = StudentQuantile(in["p"], in["nu"])
		case "gamma P":
			got, err = PowerExpFrom0(in["s"]-1, 1, in["x"])
			got /= math.Gamma(in["s"])
		case "gamma Q":
			got, err = PowerExpFrom0(in["s"]-1, 1, in["x"])
			got = 1 - got/math.Gamma(in["s"])
		case "power exp":
			got, err = PowerExp(1, in["b"], in["c"], in["x0"], in["x1"])
		default:
			t.Fatalf("no calculation %q", row[1])
		}
		want, err1 := strconv.ParseFloat(row[3], 64)
		tolerance, err2 := strconv.ParseFloat(row[4], 64)
		if err != nil || err1 != nil || err2 != nil {
			t.Errorf("%s: %v", row[0], err)
			continue
		}
		if !(math.Abs(got-want) <= tolerance) {
			t.Errorf("%s: %s(%s) = %.17g, want %.17g ± %g", row[0], row[1], row[2], got, want, tolerance)
		}
	}
}
