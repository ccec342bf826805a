package bakelog

import (
	"math"
	"slices"

	"example.org/maslin/schedule/bench"
)

// Content is what a log file holds, or the latest of it.
type Content struct {
	Entries  bench.Observations // in the order in which things happened
	Older    int                // so many before them were left out: more than fits
	Problems []Problem
	More     int // further lines that cannot be read
}

// usual is how many bytes of lines are kept of a log: some hundred thousand observations, which are decades of a home
// and thousands of doughs of a bakery.
const usual = 16 << 20

// Everything is a [Reading.Most] without an end.
const Everything = math.MaxInt

// A Reading says what is kept of a log. Whatever the size of the log is, no more than that is held in memory.
type Reading struct {
	Keep func(bench.Observation) bool // nil: all of them
	// Most is how many bytes of lines are kept, the latest by their own time; zero: 16 MiB
	Most int
	Last int // so many observations are kept, the latest; zero: as many as there are
}

// File reads a log. A file that is not there is an empty log.
func (r Reading) File(name string) (Content, error) {
	w := window{most: r.Most, last: r.Last}
	if w.most == 0 {
		w.most = usual
	}
	if w.last == 0 {
		w.last = math.MaxInt
	}
	var c Content
	var err error
	c.Problems, c.More, err = each(name, func(o bench.Observation, size int) {
		if r.Keep == nil || r.Keep(o) {
			w.add(o, size)
		}
	})
	c.Entries, c.Older = w.latest()
	return c, err
}

// A window holds the latest observations of many, whatever their order is.
type window struct {
	most    int // bytes
	last    int // observations
	entries []sized
	size    int // of all of them
	older   int
}

type sized struct {
	bench.Observation
	size int
}

func (w *window) add(o bench.Observation, size int) {
	w.entries = append(w.entries, sized{o, size})
	w.size += size
	if w.size-w.most > w.most/4 || len(w.entries)-w.last > w.last/4+100 {
		w.close()
	}
}

// close lets go of the oldest that are too much.
func (w *window) close() {
	slices.SortStableFunc(w.entries, func(a, b sized) int { return a.At.Compare(b.At) })
	gone := 0
	for gone < len(w.entries) && (w.size > w.most || len(w.entries)-gone > w.last) {
		w.size -= w.entries[gone].size
		gone++
	}
	w.older += gone
	w.entries = slices.Delete(w.entries, 0, gone)
}

// latest are those that are left, in the order in which things happened.
func (w *window) latest() (bench.Observations, int) {
	w.close()
	var out bench.Observations
	for _, e := range w.entries {
		out = append(out, e.Observation)
	}
	return out, w.older
}
