package workcheck

import (
	"testing"

	"example.org/maslin/dough/working"
	"example.org/maslin/internal/handcheck"
)

// Verify fails the test unless the derivation, as it is printed for metric and for US readers, can be checked by
// hand; see [handcheck.Faults].
func Verify(t testing.TB, w working.Working) {
	t.Helper()
	for _, fault := range Faults(w) {
		t.Error(fault)
	}
}

// wide is a width at which no line is broken.
const wide = 1 << 20

// readers are those that every derivation is checked for.
var readers = [...]working.Reader{{}, {Units: working.USCustomary}}

// Faults lists what [Verify] would complain about.
func Faults(w working.Working) []string {
	if w.Len() == 0 {
		return []string{"a working without steps"}
	}
	var out []string
	// Whether an expression gives what the library says does not depend on the reader; whether the numbers of a line
	// give its value is read from the text.
	for _, l := range w.Lines(working.Reader{}) {
		if l.Fault != "" {
			out = append(out, l.Fault)
		}
	}
	for _, r := range readers {
		for step := range w.Len() {
			if table := w.Table(step+1, r); table.Fault != "" {
				out = append(out, r.Units.String()+": "+table.Fault)
			}
		}
		faults, counts := handcheck.Faults(working.Telling{Reader: r, Width: wide}.Text(w), wide)
		if counts.Steps != w.Len() {
			out = append(out, "not every step is printed")
		}
		for _, f := range faults {
			out = append(out, r.Units.String()+": "+f)
		}
	}
	return out
}
