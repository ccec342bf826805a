package wallclock

import (
	"slices"
	"strings"
	"time"
)

// Occurrence is a stretch of time from From up to but not including To. Words says why, in the
// user's words: "asleep 22:30 to 06:30".
type Occurrence struct {
	From  time.Time `json:"from"`
	To    time.Time `json:"to"`
	Words string    `json:"words,omitempty"`
}

// String prints both instants in UTC and the words.
func (s Occurrence) String() string {
	const form = "2006-01-02 15:04Z"
	text := s.From.UTC().Format(form) + " to " + s.To.UTC().Format(form)
	if s.Words != "" {
		text += " (" + s.Words + ")"
	}
	return text
}

// Equal reports whether the two are the same stretch of time with the same words.
func (s Occurrence) Equal(other Occurrence) bool {
	return s.From.Equal(other.From) && s.To.Equal(other.To) && s.Words == other.Words
}

// Elapsed returns how long the span really is.
func (s Occurrence) Elapsed() time.Duration { return s.To.Sub(s.From) }

// Merge returns the same stretches of time as one list, ascending, in which no two spans
// overlap or touch; the words of merged spans are joined, each once. Spans that are empty or
// end before they begin are dropped. The argument is not changed.
func Merge(spans []Occurrence) []Occurrence {
	sorted := slices.DeleteFunc(slices.Clone(spans), func(s Occurrence) bool { return !s.From.Before(s.To) })
	slices.SortStableFunc(sorted, func(a, b Occurrence) int {
		if c := a.From.Compare(b.From); c != 0 {
			return c
		}
		return a.To.Compare(b.To)
	})
	var out []Occurrence
	var said [][]string
	for _, s := range sorted {
		n := len(out) - 1
		if n < 0 || out[n].To.Before(s.From) {
			out = append(out, s)
			said = append(said, []string{s.Words})
			continue
		}
		if out[n].To.Before(s.To) {
			out[n].To = s.To
		}
		if s.Words != "" && !slices.Contains(said[n], s.Words) {
			said[n] = append(said[n], s.Words)
		}
	}
	for i := range out {
		words := slices.DeleteFunc(said[i], func(w string) bool { return w == "" })
		out[i].Words = strings.Join(words, ", ")
	}
	return out
}

// Clip returns the parts of the spans that lie within, in the same order, with their words;
// nothing is merged.
func Clip(spans []Occurrence, within Occurrence) []Occurrence {
	var out []Occurrence
	for _, s := range spans {
		if s.From.Before(within.From) {
			s.From = within.From
		}
		if s.To.After(within.To) {
			s.To = within.To
		}
		if s.From.Before(s.To) {
			out = append(out, s)
		}
	}
	return out
}

// Free returns what is left of the span within when the busy spans are taken away, ascending.
func Free(within Occurrence, busy []Occurrence) []Occurrence {
	var out []Occurrence
	at := within.From
	for _, b := range Merge(Clip(busy, within)) {
		if at.Before(b.From) {
			out = append(out, Occurrence{From: at, To: b.From, Words: within.Words})
		}
		at = b.To
	}
	if at.Before(within.To) {
		out = append(out, Occurrence{From: at, To: within.To, Words: within.Words})
	}
	return out
}

// Total returns the elapsed time covered by the spans, counting overlaps once.
func Total(spans []Occurrence) time.Duration {
	var sum time.Duration
	for _, s := range Merge(spans) {
		sum += s.Elapsed()
	}
	return sum
}
