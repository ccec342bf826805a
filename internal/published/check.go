package published

import (
	"encoding/csv"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// A Finder computes one figure from the inputs of its row.
type Finder func(in *Inputs) (float64, error)

// Check computes every row of a table with the finder that it names. The table has at least so many rows, so
// that an emptied table does not pass.
func Check(t *testing.T, path string, least int, finders map[string]Finder) {
	t.Helper()
	rows := read(t, path)
	want := []string{"id", "what", "inputs", "expected", "tolerance", "reason", "source", "status"}
	if !slices.Equal(rows[0], want) {
		t.Fatalf("header %v, want %v", rows[0], want)
	}
	seen, found := map[string]bool{}, map[string]bool{}
	for _, row := range rows[1:] {
		t.Run(row[0], func(t *testing.T) {
			if seen[row[0]] {
				t.Error("id used twice")
			}
			seen[row[0]] = true
			checkRow(t, row, finders, found)
		})
	}
	if len(seen) < least {
		t.Errorf("only %d rows", len(seen))
	}
	for name := range finders {
		if !found[name] {
			t.Errorf("no row finds %q", name)
		}
	}
}

func checkRow(t *testing.T, row []string, finders map[string]Finder, found map[string]bool) {
	if row[5] == "" || row[6] == "" {
		t.Error("a row needs the reason of its tolerance and its source")
	}
	if !slices.Contains([]string{"published", "computed", "common practice", "from memory"}, row[7]) {
		t.Errorf("status %q", row[7])
	}
	in := &Inputs{t: t, pairs: map[string]string{}, used: map[string]bool{}}
	for _, pair := range strings.Split(row[2], ";") {
		key, value, ok := strings.Cut(pair, "=")
		key = strings.TrimSpace(key)
		if _, twice := in.pairs[key]; !ok || twice {
			t.Fatalf("input %q", pair)
		}
		in.pairs[key] = strings.TrimSpace(value)
	}
	name := in.Text("find")
	find := finders[name]
	if find == nil {
		t.Fatalf("nothing finds %q", name)
	}
	found[name] = true
	got, err := find(in)
	if row[3] == "refused" {
		if err == nil {
			t.Errorf("%s: got %v, want an error", row[1], got)
		}
		return
	}
	if err != nil {
		t.Fatal(err)
	}
	expected, err1 := strconv.ParseFloat(row[3], 64)
	tolerance, err2 := strconv.ParseFloat(row[4], 64)
	if err1 != nil || err2 != nil || tolerance < 0 {
		t.Fatalf("expected %q, tolerance %q", row[3], row[4])
	}
	if !(math.Abs(got-expected) <= tolerance+1e-12*math.Abs(expected)) {
		t.Errorf("%s: got %v, expected %v ± %v (%s)", row[1], got, expected, tolerance, row[6])
	}
	for key := range in.pairs {
		if !in.used[key] {
			t.Errorf("input %q has no part in the result", key)
		}
	}
}

func read(t *testing.T, path string) [][]string {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = f.Close() }()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) == 0 {
		t.Fatalf("%s is empty", path)
	}
	return rows
}

// Misprints checks that every row of a table of misprints is one: its own arithmetic, as evaluate reads it, gives
// something else than what is printed; with rounded, also when it is rounded to the printed decimals. Columns:
// id, what, printed, arithmetic, unit, source.
func Misprints(t *testing.T, path string, rounded bool, evaluate func(line string) (float64, error)) {
	t.Helper()
	rows := read(t, path)
	for _, row := range rows[1:] {
		v, err := evaluate(row[3])
		if err != nil {
			t.Errorf("%s: %v", row[0], err)
			continue
		}
		decimals := 9
		if _, part, _ := strings.Cut(row[2], "."); rounded {
			decimals = len(part)
		}
		printed, err := strconv.ParseFloat(row[2], 64)
		if err != nil || row[5] == "" {
			t.Errorf("%s: printed %q, source %q", row[0], row[2], row[5])
		}
		if strconv.FormatFloat(v, 'f', decimals, 64) == strconv.FormatFloat(printed, 'f', decimals, 64) {
			t.Errorf("%s: %s is what the arithmetic gives", row[0], row[2])
		}
	}
	if len(rows) < 2 {
		t.Errorf("%s has no rows", path)
	}
}
