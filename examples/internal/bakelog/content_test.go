package bakelog

import (
	"bytes"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"strconv"
	"testing"
	"time"

	"example.org/maslin/schedule/bench"
)

// numbered are notes one minute apart, the i-th saying i.
func numbered(n int) bench.Observations {
	out := make(bench.Observations, n)
	for i := range out {
		out[i] = note(strconv.Itoa(i))
		out[i].At = saturday.Add(time.Duration(i) * time.Minute)
	}
	return out
}

func logOf(t *testing.T, entries bench.Observations) string {
	t.Helper()
	lines, err := encode(entries)
	if err != nil {
		t.Fatal(err)
	}
	name := filepath.Join(t.TempDir(), "bakes.jsonl")
	if err := os.WriteFile(name, lines, 0o600); err != nil {
		t.Fatal(err)
	}
	return name
}

// However the lines lie, the latest by their own time are kept, in order, and the others are counted.
func TestLatestOfALongLog(t *testing.T) {
	const all = 3000
	entries := numbered(all)
	mixed := append(bench.Observations{}, entries...)
	rand.New(rand.NewPCG(1, 2)).Shuffle(all, func(i, j int) { mixed[i], mixed[j] = mixed[j], mixed[i] })
	for _, c := range []struct {
		what    string
		log     bench.Observations
		reading Reading
		kept    int
	}{
		{"in order", entries, Reading{Last: 250}, 250},
		{"mixed up", mixed, Reading{Last: 250}, 250},
		{"fewer than asked for", mixed[:100], Reading{Last: 250}, 100},
		{"all", mixed, Reading{}, all},
		{"one", mixed, Reading{Last: 1}, 1},
	} {
		got, err := c.reading.File(logOf(t, c.log))
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
	// By size: as many of the latest lines as fit.
	last, err := encode(entries[all-40:])
	if err != nil {
		t.Fatal(err)
	}
	for extra, want := range map[int]int{0: 40, 20: 40, -1: 39} {
		got, err := Reading{Most: len(last) + extra}.File(logOf(t, mixed))
		if err != nil || len(got.Entries) != want || got.Older != all-want {
			t.Errorf("%d bytes: %d entries, %d older, %v", len(last)+extra, len(got.Entries), got.Older, err)
		}
	}
	odd := Reading{Last: 3, Keep: func(o bench.Observation) bool { i, _ := strconv.Atoi(o.Note); return i%2 == 1 }}
	if got, err := odd.File(logOf(t, entries[:100])); err != nil || len(got.Entries) != 3 || got.Older != 47 ||
		got.Entries[0].Note != "95" || got.Entries[2].Note != "99" {
		t.Errorf("%+v, %v", got, err)
	}
}

// A log ten times as long takes no more memory.
func TestMemoryOfALongLogIsConstant(t *testing.T) {
	live := func(copies int) uint64 {
		lines, err := encode(numbered(5000))
		if err != nil {
			t.Fatal(err)
		}
		name := filepath.Join(t.TempDir(), "long.jsonl")
		if err := os.WriteFile(name, bytes.Repeat(lines, copies), 0o600); err != nil {
			t.Fatal(err)
		}
		most, n := uint64(0), 0
		got, err := Reading{Most: 256 << 10, Keep: func(bench.Observation) bool {
			if n++; n%4000 == 0 {
				var m runtime.MemStats
				runtime.GC()
				runtime.ReadMemStats(&m)
				most = max(most, m.HeapAlloc)
			}
			return true
		}}.File(name)
		if err != nil || n != 5000*copies || len(got.Entries)+got.Older != n {
			t.Fatalf("%d entries and %d older of %d, %v", len(got.Entries), got.Older, n, err)
		}
		return most
	}
	if short, long := live(2), live(20); long > short+short/4 {
		t.Errorf("a log of ten times the length takes %d bytes, not %d", long, short)
	}
}
