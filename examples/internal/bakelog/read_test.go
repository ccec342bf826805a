package bakelog

import (
	"bytes"
	"encoding/json"
	"io"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/bench"
	"github.com/google/go-cmp/cmp"
)

// Whatever is between them, the good lines are read and the others counted.
func TestRubbishBetweenLines(t *testing.T) {
	good, err := encode(bench.Observations{note("a")})
	if err != nil {
		t.Fatal(err)
	}
	rubbish := []string{
		"hello", "null", "[]", "{}", `{"v":0,"kind":"note","note":"x","at":"2026-11-28T10:40:00Z"}`, `{"v":1}`, `{"v":1,"at":"yesterday","kind":"note","note":"x"}`,
		`{"v":1,"at":"2026-11-28T10:40:00Z","kind":"rise","rise":{"rise":"30"}}`, `{"v":-1}`, `{"v":"1"}`, "\x00\x01\x02", strings.Repeat("[", 20000), strings.Repeat("z", mostLine+10),
	}
	var in bytes.Buffer
	in.Write(good)
	for _, line := range rubbish {
		in.WriteString(line + "\n\n")
		in.Write(good)
	}
	r := NewReader(&in)
	n := 0
	for r.Next() {
		n++
	}
	first, more := r.Problems()
	if r.Err() != nil || n != len(rubbish)+1 || len(first)+more != len(rubbish) {
		t.Errorf("%v: %d entries, want %d; %d problems, want %d", r.Err(), n, len(rubbish)+1, len(first)+more, len(rubbish))
	}
	if !strings.Contains(first[7].Why, "rise") && !strings.Contains(first[7].Why, "unit") {
		t.Errorf("it does not say what is wrong: %+v", first[7])
	}
}

func FuzzReader(f *testing.F) {
	for _, e := range someEntries() {
		line, err := json.Marshal(e)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(line)
	}
	f.Add([]byte(`{"v":3}` + "\n"))
	f.Fuzz(func(t *testing.T, source []byte) {
		r := NewReader(bytes.NewReader(source))
		for r.Next() {
			e := r.Entry()
			if err := e.Check(); err != nil {
				t.Errorf("an entry that fails its own check: %v", err)
			}
			if _, err := encode(bench.Observations{e}); err != nil {
				t.Errorf("an entry that cannot be written again: %v", err)
			}
			for _, b := range (bench.Observations{e}).Bakes() {
				_, _ = b.Taught()
				_, _ = b.Batch()
			}
		}
	})
}

func TestReadCSV(t *testing.T) {
	parse := func(text string) (time.Time, error) { return time.Parse("2006-01-02 15:04", text) }
	const sheet = `time;kind;dough;rise;in;out;style;note
# the village hall
2026-11-27 16:52;mix;25,5 °C;28 %;;;;
2026-11-27 18:00;Rise;;12 %;;;;

2026-11-28 11:30;weights;;;897 g;781 g;lean hearth;
2026-11-28 11:31;note;;;;;;"pale; longer next time"
`
	got, problems, err := ReadCSV(strings.NewReader("\ufeff"+sheet), parse)
	if err != nil || len(problems) > 0 || len(got) != 4 {
		t.Fatalf("%v %v %d entries", err, problems, len(got))
	}
	if got[0].Mix.Dough != quantity.Celsius(25.5) || got[0].Mix.Rise != quantity.NewPercent(28) || got[3].Note != "pale; longer next time" {
		t.Errorf("%+v", got)
	}
	for _, e := range got {
		if err := e.Check(); err != nil {
			t.Error(err)
		}
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
		entries, problems, err := ReadCSV(strings.NewReader(text), parse)
		if err != nil || len(entries) > 0 {
			t.Errorf("%q: %v, %d entries", text, err, len(entries))
		}
		for _, p := range problems {
			told = append(told, p.String()[:min(len(p.String()), 42)])
		}
	}
	want := []string{
		"1: \"colour\": unknown column; want time, ki",
		"2: time: parsing time \"27.11.2026\" as \"200",
		"2: dough: unit: got \"25\" without a unit, w",
		"3: dough: out of range: got 98 °C, want 0",
		"4: dough: does not belong to an observatio",
		"5: kind: got \"plan\", want mix, rise, ready",
		"6: more cells than the heading has columns",
		"1: no heading; want one with time, kind an",
		"1: kind: no such column, and it is needed",
		"1: \"kind\": given twice",
	}
	if d := cmp.Diff(want, told); d != "" {
		t.Error(d)
	}
}

func FuzzReadCSV(f *testing.F) {
	f.Add("time,kind,rise\n2026-11-27 16:52,rise,12 %\n")
	f.Add("time;kind\n\"")
	f.Fuzz(func(t *testing.T, text string) {
		entries, problems, _ := ReadCSV(strings.NewReader(text), func(s string) (time.Time, error) { return time.Parse("2006-01-02 15:04", s) })
		if len(problems) > 0 && len(entries) > 0 {
			t.Error("problems and entries")
		}
		for _, e := range entries {
			if e.Check() != nil {
				t.Errorf("a bad entry: %+v", e)
			}
		}
	})
}

func BenchmarkRead(b *testing.B) {
	lines, err := encode(someEntries())
	if err != nil {
		b.Fatal(err)
	}
	log := bytes.Repeat(lines, 10<<20/len(lines))
	b.SetBytes(int64(len(log)))
	b.ReportAllocs()
	for b.Loop() {
		r := NewReader(bytes.NewReader(log))
		n := 0
		for r.Next() {
			n++
		}
		if n == 0 || r.Err() != nil {
			b.Fatal(r.Err())
		}
	}
}

// A log far larger than the memory it needs: the reader keeps one line.
func TestStreams(t *testing.T) {
	line, err := encode(bench.Observations{note("a line of the length of most")})
	if err != nil {
		t.Fatal(err)
	}
	r := NewReader(io.LimitReader(&repeating{line: line}, int64(len(line))*20_000))
	n := 0
	for r.Next() {
		n++
	}
	if r.Err() != nil || n != 20_000 || cap(r.buffer) > 1<<16 {
		t.Errorf("%v: %d entries, a buffer of %d bytes", r.Err(), n, cap(r.buffer))
	}
}

type repeating struct {
	line []byte
	at   int
}

func (r *repeating) Read(p []byte) (int, error) {
	n := 0
	for n < len(p) {
		k := copy(p[n:], r.line[r.at:])
		n += k
		r.at = (r.at + k) % len(r.line)
	}
	return n, nil
}
