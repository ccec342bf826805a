package bench_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule/bench"
	"github.com/google/go-cmp/cmp"
)

func TestReadCSV(t *testing.T) {
	parse := func(text string) (time.Time, error) { return time.Parse("2006-01-02 15:04", text) }
	const sheet = `time;kind;dough;rise;in;out;style;note
# the village hall
2026-11-27 16:52;mix;25,5 °C;28 %;;;;
2026-11-27 18:00;Rise;;12 %;;;;

2026-11-28 11:30;weights;;;897 g;781 g;lean hearth;
2026-11-28 11:31;note;;;;;;"pale; longer next time"
`
	got, err := bench.ReadCSV("\ufeff"+sheet, parse)
	if err != nil || len(got) != 4 {
		t.Fatalf("%v, %d observations", err, len(got))
	}
	if got[0].Mix.Dough != quantity.Celsius(25.5) || got[0].Mix.Rise != quantity.NewPercent(28) ||
		got[3].Note != "pale; longer next time" {
		t.Errorf("%+v", got)
	}
	for _, e := range got {
		if err := e.Check(); err != nil {
			t.Error(err)
		}
	}
	if got, err = bench.ReadCSV("time,kind,dough,yeast,yeast kind\n2026-11-27 16:52,mix,25 °C,1 %,fresh\n"+
		"2026-11-27 17:52,mix,25 °C,1 %,instant yeast\n", parse); err != nil || len(got) != 2 ||
		got[0].Mix.YeastKind != ferment.FreshYeast || got[1].Mix.YeastKind != ferment.InstantYeast {
		t.Errorf("%+v, %v", got, err)
	}
	for _, name := range []string{"yeast-kind", "Yeast_Kind", " yeast  kind "} {
		got, err := bench.ReadCSV("at,kind,dough,yeast,"+name+"\n2026-11-27 16:52,mix,25 °C,1 %,fresh\n", parse)
		if err != nil || len(got) != 1 || got[0].Mix.YeastKind != ferment.FreshYeast {
			t.Errorf("%q: %+v, %v", name, got, err)
		}
	}
	_, err = bench.ReadCSV("time,kind\n2026-11-27 16:52,\"mix\n", parse)
	if err == nil || !strings.HasPrefix(err.Error(), "line 2: wrong form: got ") ||
		!strings.Contains(err.Error(), "want a row of comma-separated values") {
		t.Error(err)
	}
	const bad = `time,kind,dough,rise,colour
2026-11-27 16:52,mix,25 °C,,
`
	const worse = `time,kind,dough,rise
27.11.2026,mix,25,
2026-11-27 16:52,mix,98 °C,
2026-11-27 16:52,rise,24 °C,10 %
2026-11-27 16:52,plan,,
2026-11-27 16:52,ready,,,,7
`
	var told []string
	for _, text := range []string{bad, worse, "", "time\n", "time,kind,kind\n"} {
		entries, err := bench.ReadCSV(text, parse)
		if len(entries) > 0 {
			t.Errorf("%q: %v, %d observations", text, err, len(entries))
		}
		for _, line := range strings.Split(fmt.Sprint(err), "\n") {
			told = append(told, line[:min(len(line), 60)])
		}
	}
	want := []string{
		`line 1: wrong form: got "colour", want a column of the name `,
		`line 2 time: parsing time "27.11.2026" as "2006-01-02 15:04"`,
		`line 2 dough: unit: got "25" without a unit, want a temperat`,
		"line 3 dough: out of range: got 98 °C, want 0 °C to 50 °C",
		"line 4 dough: wrong form: got a name that is not known, want",
		`line 5 kind: wrong form: got "plan", want mix, rise, ready, `,
		`line 6: wrong form: got "7", want no more cells than the hea`,
		`line 1: wrong form: got "no heading", want a heading with ti`,
		"line 1 kind: required: want this column",
		`line 1: wrong form: got "kind", want each column once`,
	}
	if d := cmp.Diff(want, told); d != "" {
		t.Error(d)
	}
}

func FuzzReadCSV(f *testing.F) {
	f.Add("time,kind,rise\n2026-11-27 16:52,rise,12 %\n")
	f.Add("time;kind\n\"")
	f.Fuzz(func(t *testing.T, text string) {
		entries, err := bench.ReadCSV(text, func(s string) (time.Time, error) { return time.Parse("2006-01-02 15:04", s) })
		if err != nil && len(entries) > 0 {
			t.Error("problems and entries")
		}
		for _, e := range entries {
			if e.Check() != nil {
				t.Errorf("a bad entry: %+v", e)
			}
		}
	})
}

// A column for every value that an observation of these kinds may have.
func ExampleCSVColumns() {
	fmt.Println(bench.CSVColumns()[:6])
	// Output: [time kind bread by dough flour]
}

func ExampleReadCSV() {
	const sheet = "time;kind;rise\n2026-11-27 18:00;rise;12,5 %\n2026-11-27 19:00;rise;28 %\n"
	clock := func(text string) (time.Time, error) { return time.Parse("2006-01-02 15:04", text) }
	seen, err := bench.ReadCSV(sheet, clock)
	fmt.Println(len(seen), seen[0].Rise.Rise, err)
	// Output: 2 12.5 % <nil>
}
