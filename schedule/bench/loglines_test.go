package bench

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"github.com/google/go-cmp/cmp"
)

// Whatever is between them, the good lines are read and the others counted.
func TestRubbishBetweenLines(t *testing.T) {
	good, err := Observations{note("a")}.Lines()
	if err != nil {
		t.Fatal(err)
	}
	rubbish := []string{
		"hello", "null", "[]", "{}", `{"v":0,"kind":"note","note":"x","at":"2026-11-28T10:40:00Z"}`, `{"v":1}`,
		`{"v":1,"at":"yesterday","kind":"note","note":"x"}`,
		`{"v":1,"at":"2026-11-28T10:40:00Z","kind":"rise","rise":{"rise":"30"}}`, `{"v":-1}`, `{"v":"1"}`, "\x00\x01\x02",
		strings.Repeat("[", 20000), strings.Repeat("z", mostLine+10),
	}
	var in bytes.Buffer
	in.Write(good)
	for _, line := range rubbish {
		in.WriteString(line + "\n\n")
		in.Write(good)
	}
	r := newLogLines(&in)
	n := 0
	for r.next() {
		n++
	}
	first, more := r.problems, r.skipped
	if r.err != nil || n != len(rubbish)+1 || len(first)+more != len(rubbish) {
		t.Errorf("%v: %d entries, want %d; %d problems, want %d", r.err, n, len(rubbish)+1, len(first)+more, len(rubbish))
	}
	if !strings.Contains(first[7].Why.String(), "rise") && !strings.Contains(first[7].Why.String(), "unit") {
		t.Errorf("it does not say what is wrong: %+v", first[7])
	}
	// Twenty lines are told, the others counted.
	r = newLogLines(strings.NewReader(strings.Repeat("no entry\n", 27)))
	if r.next() || len(r.problems) != 20 || r.skipped != 7 {
		t.Errorf("%d lines are told and %d counted", len(r.problems), r.skipped)
	}
}

// Scores have the range of a count: 7 of 9 is not 78 %. Half of some bakes speak for a half, as much above it as below,
// the closer the more there are; and as many misses for what as many hits speak against.
func TestScoresOfACount(t *testing.T) {
	last := 100.0
	for _, n := range []int{2, 10, 100} {
		s := newScore(ByLevain, "", n/2, n)
		low, high := s.Share.Low.Points(), s.Share.High.Points()
		if s.Share.Likely != quantity.NewPercent(50) || !(math.Abs(low+high-100) <= 0.11) || high-low >= last {
			t.Errorf("%d of %d: %v to %v, likely %v", n/2, n, low, high, s.Share.Likely)
		}
		last = high - low
	}
	hits, misses := newScore(ByLevain, "", 7, 9), newScore(ByLevain, "", 2, 9)
	if sum := hits.Share.Low.Add(misses.Share.High).Points(); !(math.Abs(sum-100) <= 0.11) ||
		hits.Share.High.Sub(hits.Share.Low).Points() < 20 || hits.Share.Likely.Compare(misses.Share.Likely) <= 0 {
		t.Errorf("7 of 9: %v, 2 of 9: %v", hits.Share, misses.Share)
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
		r := newLogLines(bytes.NewReader(source))
		for r.next() {
			e := r.entry
			if err := e.Check(); err != nil {
				t.Errorf("an entry that fails its own check: %v", err)
			}
			if _, err := (Observations{e}).Lines(); err != nil {
				t.Errorf("an entry that cannot be written again: %v", err)
			}
			for _, b := range (Observations{e}).Bakes() {
				_, _ = b.Taught()
				_, _ = b.Batch()
			}
		}
	})
}

func someEntries() Observations {
	at := func(d time.Duration) time.Time { return saturday.Add(d) }
	return Observations{
		{Version: 1, At: at(0), Kind: SawPlan, Bread: "maslin",
			Plan: &FollowedPlan{Made: at(-time.Hour), Wanted: at(26 * time.Hour)}},
		{Version: 1, At: at(time.Hour), Kind: SawMixed, Bread: "maslin", Mix: &DoughMixed{
			Dough: quantity.Celsius(25.5), Flour: quantity.Celsius(21), Water: quantity.Celsius(17),
			Levain: quantity.Celsius(22), FlourWeight: quantity.Grams(1376), WaterWeight: quantity.Grams(906),
			LevainWeight: quantity.Grams(375), Mixer: 2, Slow: quantity.Elapsed(3 * time.Minute),
			Fast:        quantity.Elapsed(8 * time.Minute),
			Inoculation: quantity.NewPercent(12), Salt: quantity.NewPercent(2.1), Hydration: quantity.NewPercent(70),
			WholeGrain: quantity.NewPercent(25),
			Room:       quantity.Celsius(22), Weight: quantity.Grams(5379), Rise: quantity.NewPercent(28),
		}},
		{Version: 1, At: at(3 * time.Hour), Kind: SawRise,
			Rise: &SeenRise{Rise: quantity.NewPercent(15), Error: quantity.NewPercent(4)}},
		{Version: 1, At: at(4 * time.Hour), Kind: SawReady,
			Ready: &ReadyDough{Rise: quantity.NewPercent(28),
				Readings: []ferment.Knot{{Temperature: quantity.Celsius(25.5)},
					{At: quantity.Elapsed(time.Hour), Temperature: quantity.Celsius(25.2)}}}},
		{Version: 1, At: at(5 * time.Hour), Kind: SawStep, Bread: "maslin", Step: "divide and shape"},
		{Version: 1, At: at(22 * time.Hour), Kind: SawCore,
			Core: &SeenCore{Core: quantity.Celsius(94.1), After: quantity.Elapsed(40 * time.Minute), Out: true}},
		{Version: 1, At: at(23 * time.Hour), Kind: SawWeights,
			Weights: &LoafWeights{In: quantity.Grams(897), Out: quantity.Grams(781), Style: bake.LeanHearth}},
		{Version: 1, At: at(24 * time.Hour), Kind: SawNote, Note: "crust a little pale — 水 \u2028 ok"},
	}
}

func BenchmarkRead(b *testing.B) {
	lines, err := someEntries().Lines()
	if err != nil {
		b.Fatal(err)
	}
	log := bytes.Repeat(lines, 10<<20/len(lines))
	b.SetBytes(int64(len(log)))
	b.ReportAllocs()
	for b.Loop() {
		r := newLogLines(bytes.NewReader(log))
		n := 0
		for r.next() {
			n++
		}
		if n == 0 || r.err != nil {
			b.Fatal(r.err)
		}
	}
}

// A log far larger than the memory it needs: the reader keeps one line.
func TestStreams(t *testing.T) {
	line, err := Observations{note("a line of the length of most")}.Lines()
	if err != nil {
		t.Fatal(err)
	}
	r := newLogLines(io.LimitReader(&repeating{line: line}, int64(len(line))*20_000))
	n := 0
	for r.next() {
		n++
	}
	if r.err != nil || n != 20_000 || cap(r.buffer) > 1<<16 {
		t.Errorf("%v: %d entries, a buffer of %d bytes", r.err, n, cap(r.buffer))
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

// A log of a later version is refused, where it begins, however strange its lines are.
func TestLaterVersionIsRefused(t *testing.T) {
	for _, line := range []string{
		`{"v":2,"at":"2026-11-28T10:40:00+01:00","kind":"note","note":"x"}`,
		`{"v":2,"at":12345,"kind":["new"],"mix":"text now"}`, `{"v":1.5,"note":"x"}`,
	} {
		_, err := LogReading{}.From(strings.NewReader("\n" + line + "\n"))
		var later LaterVersion
		if !errors.As(err, &later) || later.Line != 2 || later.Version <= 1 || !strings.Contains(err.Error(), "line 2") {
			t.Errorf("%s: %v", line, err)
		}
	}
}

// What is wrong with observations is said of each before anything is written.
func TestLinesOfWrongObservations(t *testing.T) {
	lines, err := Observations{note("fine"), {}, {Version: 1, At: saturday, Kind: SawRise}, note("\xff")}.Lines()
	var paths []string
	for _, e := range quantity.InputErrors(err) {
		paths = append(paths, e.Path)
	}
	want := []string{"entries[1].v", "entries[1].at", "entries[1].kind", "entries[2].rise", "entries[3].note"}
	if d := cmp.Diff(want, paths); d != "" {
		t.Error(d, len(lines))
	}
}

func ExampleLogReading_From() {
	at := time.Date(2026, 11, 28, 10, 40, 0, 0, time.UTC)
	lines, _ := Observations{
		{Version: Format, At: at, Kind: SawNote, Note: "a new bag of flour"},
		{Version: Format, At: at.Add(time.Hour), Kind: SawRise, Rise: &SeenRise{Rise: quantity.NewPercent(15)}},
	}.Lines()
	log, err := LogReading{Last: 1}.From(strings.NewReader(string(lines) + "{torn"))
	fmt.Println(log.Entries[0], log.Older, err)
	fmt.Println(log.Unreadable[0].Line, log.Unreadable[0].Why)
	// Output:
	// risen by 15 % 1 <nil>
	// 3 the last line is not finished; it is left alone
}

// A line may have four MiB with its end, and no byte more; one that is longer does not hide the next.
func TestLinesEndAtFourMiB(t *testing.T) {
	good, err := Observations{note("a")}.Lines()
	if err != nil {
		t.Fatal(err)
	}
	for size, problems := range map[int]int{4 << 20: 0, 4<<20 + 1: 1, 4<<20 + 1<<16: 1} {
		padded := append(bytes.TrimSuffix(good, []byte("\n")), bytes.Repeat([]byte(" "), size-len(good))...)
		r := newLogLines(bytes.NewReader(append(append(padded, '\n'), good...)))
		n := 0
		for r.next() {
			n++
		}
		if r.err != nil || n != 2-problems || len(r.problems) != problems {
			t.Errorf("a line of %d bytes: %d entries, %d problems, %v", size, n, len(r.problems), r.err)
		}
	}
}
