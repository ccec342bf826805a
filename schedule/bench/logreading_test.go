package bench

import (
	"bytes"
	"io"
	"math/rand/v2"
	"runtime"
	"strconv"
	"testing"
	"time"
)

var saturday = time.Date(2026, 11, 28, 10, 40, 0, 0, time.FixedZone("", 3600))

func note(text string) Observation {
	return Observation{Version: Format, At: saturday, Kind: SawNote, Bread: "maslin", Note: text}
}

// numbered are notes one minute apart, the i-th saying i.
func numbered(n int) Observations {
	out := make(Observations, n)
	for i := range out {
		out[i] = note(strconv.Itoa(i))
		out[i].At = saturday.Add(time.Duration(i) * time.Minute)
	}
	return out
}

func logOf(t *testing.T, entries Observations) *bytes.Reader {
	t.Helper()
	lines, err := entries.Lines()
	if err != nil {
		t.Fatal(err)
	}
	return bytes.NewReader(lines)
}

// However the lines lie, the latest by their own time are kept, in order, and the others are counted.
func TestLatestOfALongLog(t *testing.T) {
	const all = 3000
	entries := numbered(all)
	mixed := append(Observations{}, entries...)
	rand.New(rand.NewPCG(1, 2)).Shuffle(all, func(i, j int) { mixed[i], mixed[j] = mixed[j], mixed[i] })
	for _, c := range []struct {
		what    string
		log     Observations
		reading LogReading
		kept    int
	}{
		{"in order", entries, LogReading{Last: 250}, 250},
		{"mixed up", mixed, LogReading{Last: 250}, 250},
		{"fewer than asked for", mixed[:100], LogReading{Last: 250}, 100},
		{"all", mixed, LogReading{}, all},
		{"one", mixed, LogReading{Last: 1}, 1},
	} {
		got, err := c.reading.From(logOf(t, c.log))
		if err != nil || len(got.Entries) != c.kept || got.Older != len(c.log)-c.kept {
			t.Errorf("%s: %d entries, %d older, %v", c.what, len(got.Entries), got.Older, err)
			continue
		}
		for i := range got.Entries {
			if want := strconv.Itoa(all - c.kept + i); len(c.log) == all && got.Entries[i].Note != want {
				t.Fatalf("%s: entry %d is %s, want %s", c.what, i, got.Entries[i].Note, want)
			}
		}
	}
	if got, err := (LogReading{Most: -1}).From(logOf(t, mixed)); err != nil || len(got.Entries) != all {
		t.Errorf("without an end: %d entries, %v", len(got.Entries), err)
	}
	// By size: as many of the latest lines as fit.
	last, err := entries[all-40:].Lines()
	if err != nil {
		t.Fatal(err)
	}
	for extra, want := range map[int]int{0: 40, 20: 40, -1: 39} {
		got, err := LogReading{Most: len(last) + extra}.From(logOf(t, mixed))
		if err != nil || len(got.Entries) != want || got.Older != all-want {
			t.Errorf("%d bytes: %d entries, %d older, %v", len(last)+extra, len(got.Entries), got.Older, err)
		}
	}
	odd := LogReading{Last: 3, Keep: func(o Observation) bool { i, _ := strconv.Atoi(o.Note); return i%2 == 1 }}
	if got, err := odd.From(logOf(t, entries[:100])); err != nil || len(got.Entries) != 3 || got.Older != 47 ||
		got.Entries[0].Note != "95" || got.Entries[2].Note != "99" {
		t.Errorf("%+v, %v", got, err)
	}
}

// A log ten times as long takes no more memory.
func TestMemoryOfALongLogIsConstant(t *testing.T) {
	live := func(copies int) uint64 {
		lines, err := numbered(5000).Lines()
		if err != nil {
			t.Fatal(err)
		}
		long := io.LimitReader(&repeating{line: lines}, int64(len(lines)*copies))
		most, n := uint64(0), 0
		got, err := LogReading{Most: 256 << 10, Keep: func(Observation) bool {
			if n++; n%4000 == 0 {
				var m runtime.MemStats
				runtime.GC()
				runtime.ReadMemStats(&m)
				most = max(most, m.HeapAlloc)
			}
			return true
		}}.From(long)
		if err != nil || n != 5000*copies || len(got.Entries)+got.Older != n {
			t.Fatalf("%d entries and %d older of %d, %v", len(got.Entries), got.Older, n, err)
		}
		return most
	}
	if short, long := live(2), live(20); long > short+short/4 {
		t.Errorf("a log of ten times the length takes %d bytes, not %d", long, short)
	}
}
