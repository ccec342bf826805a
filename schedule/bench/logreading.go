package bench

import (
	"io"
	"math"
	"slices"

	"example.org/maslin/dough/working"
)

// KeptLog is what a log holds, or the latest of it.
type KeptLog struct {
	Entries Observations `json:"entries"` // in the order in which things happened
	// Older is how many before them were left out: more than fits.
	Older int `json:"older,omitempty"`
	// Unreadable are the first lines that cannot be read; there are so many More of them.
	Unreadable []UnreadableLine `json:"unreadable,omitempty"`
	More       int              `json:"more,omitempty"`
}

// UnreadableLine is a line of a log that cannot be read.
type UnreadableLine struct {
	Line int             `json:"line"`
	Text string          `json:"text"` // the beginning of the line
	Why  working.Message `json:"why"`
}

// usual is how many bytes of lines are kept of a log: some hundred thousand observations, which are decades of a home
// and thousands of doughs of a bakery.
const usual = 16 << 20

// LogReading says what is kept of a log: a text with one observation as JSON on each line, as [Observations.Lines]
// writes it, in any order of time. Whatever the size of the log is, no more than that is held in memory.
type LogReading struct {
	Keep func(Observation) bool `json:"-"` // nil: all of them
	// Most is how many bytes of lines are kept, the latest by their own time; 0: 16 MiB; less than 0: without an end
	Most int `json:"most,omitempty"`
	Last int `json:"last,omitempty"` // so many observations are kept, the latest; 0: as many as there are
}

// From answers: what does the log hold? Lines that cannot be read, and a last line that is not finished, are left alone
// and listed.
//
// Errors: [LaterVersion], because half-understood lines would teach the wrong things; those of the reader.
func (r LogReading) From(in io.Reader) (KeptLog, error) {
	w := window{most: r.Most, last: r.Last}
	switch {
	case w.most == 0:
		w.most = usual
	case w.most < 0:
		w.most = math.MaxInt
	}
	if w.last <= 0 {
		w.last = math.MaxInt
	}
	lines := newLogLines(in)
	for lines.next() {
		if r.Keep == nil || r.Keep(lines.entry) {
			w.add(lines.entry, len(lines.buffer))
		}
	}
	entries, older := w.latest()
	return KeptLog{entries, older, lines.problems, lines.skipped}, lines.err
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
	Observation
	size int
}

func (w *window) add(o Observation, size int) {
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
	for w.size > w.most || len(w.entries)-gone > w.last {
		w.size -= w.entries[gone].size
		gone++
	}
	w.older += gone
	w.entries = slices.Delete(w.entries, 0, gone)
}

// latest are those that are left, in the order in which things happened.
func (w *window) latest() (Observations, int) {
	w.close()
	var out Observations
	for _, e := range w.entries {
		out = append(out, e.Observation)
	}
	return out, w.older
}
