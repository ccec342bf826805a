package dough_test

import (
	"encoding/csv"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
)

// A check computes one published figure from the inputs of its row; the row's "do" key names it.
// Files of this package add theirs to the tables listed in allChecks.
type check func(in *inputs) float64

// inputs are the key=value pairs of a row, separated by semicolons. A value that is asked for and
// missing, or that nobody asks for, fails the row.
type inputs struct {
	t     *testing.T
	pairs map[string]string
	used  map[string]bool
}

func (in *inputs) text(key string) string {
	v, ok := in.pairs[key]
	if !ok {
		in.t.Fatalf("no input %q", key)
	}
	in.used[key] = true
	return v
}

func (in *inputs) has(key string) bool { _, ok := in.pairs[key]; return ok }

func (in *inputs) number(key string) float64 {
	v, err := strconv.ParseFloat(in.text(key), 64)
	if err != nil {
		in.t.Fatal(err)
	}
	return v
}

func (in *inputs) mass(key string) quantity.Mass {
	v, err := quantity.ParseMass(in.text(key))
	if err != nil {
		in.t.Fatal(err)
	}
	return v
}

func (in *inputs) percent(key string) quantity.Percent {
	v, err := quantity.ParsePercent(in.text(key))
	if err != nil {
		in.t.Fatal(err)
	}
	return v
}

// list reads "name:value name:value …", in order; an underscore in a name is a space.
func (in *inputs) list(key string) (names, values []string) {
	for _, pair := range strings.Fields(in.text(key)) {
		name, value, ok := strings.Cut(pair, ":")
		if !ok {
			in.t.Fatalf("%s: %q is not name:value", key, pair)
		}
		names, values = append(names, strings.ReplaceAll(name, "_", " ")), append(values, value)
	}
	return names, values
}

func allChecks() []map[string]check {
	return []map[string]check{formulaChecks}
}

func TestPublishedFigures(t *testing.T) {
	f, err := os.Open("testdata/published.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if want := []string{"id", "what", "inputs", "expected", "tolerance", "reason", "source", "status"}; !slices.Equal(rows[0], want) {
		t.Fatalf("header %v, want %v", rows[0], want)
	}
	seen := map[string]bool{}
	for _, row := range rows[1:] {
		t.Run(row[0], func(t *testing.T) {
			if seen[row[0]] {
				t.Error("id used twice")
			}
			seen[row[0]] = true
			if row[6] == "" || row[5] == "" {
				t.Error("a row needs the reason of its tolerance and its source")
			}
			if !slices.Contains([]string{"published", "computed", "common practice", "from memory"}, row[7]) {
				t.Errorf("status %q", row[7])
			}
			in := &inputs{t: t, pairs: map[string]string{}, used: map[string]bool{}}
			for _, pair := range strings.Split(row[2], ";") {
				key, value, ok := strings.Cut(pair, "=")
				key = strings.TrimSpace(key)
				if _, twice := in.pairs[key]; !ok || twice {
					t.Fatalf("input %q", pair)
				}
				in.pairs[key] = strings.TrimSpace(value)
			}
			var compute check
			for _, table := range allChecks() {
				if c, ok := table[in.text("do")]; ok {
					compute = c
				}
			}
			if compute == nil {
				t.Fatalf("no check is called %q", in.text("do"))
			}
			want, err := strconv.ParseFloat(row[3], 64)
			if err != nil {
				t.Fatal(err)
			}
			tolerance, err := strconv.ParseFloat(row[4], 64)
			if err != nil || tolerance < 0 {
				t.Fatalf("tolerance %q", row[4])
			}
			got := compute(in)
			if diff := math.Abs(got - want); !(diff <= tolerance+1e-12*math.Abs(want)) {
				t.Errorf("%s: got %v, published %v ± %v (%s)", row[1], got, want, tolerance, row[6])
			}
			for key := range in.pairs {
				if !in.used[key] {
					t.Errorf("input %q has no part in the result", key)
				}
			}
		})
	}
	if len(seen) < 90 {
		t.Errorf("only %d rows", len(seen))
	}
}
