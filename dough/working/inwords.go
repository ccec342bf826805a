package working

import "strings"

// mostInputs is how many of the numbers behind a step a sentence names.
const mostInputs = 6

// told are the steps that are told at the level: in words those that have a sentence of their own, those whose value
// can be weighed, read off or waited for, and the answer.
func (t Telling) told(w Working) []step {
	if t.Level != InWords {
		return w.steps
	}
	var out []step
	for i, s := range w.steps {
		if !s.finding.Brief.IsZero() || s.result.value.Unit.everyday() || i == len(w.steps)-1 {
			out = append(out, s)
		}
	}
	return out
}

// everyday reports whether something is measured in the unit at the bench: on a scale, a thermometer, a clock, a
// ruler, or as a percentage; money too. Plain numbers and units of physics are not.
func (u Unit) everyday() bool {
	switch u {
	case Number, Kelvin, "Pa", "hPa", "kPa", "atm", "J", "kJ", "W":
		return false
	}
	return !strings.ContainsAny(string(u), "/²³")
}

// brief is the step in one sentence: its own, or what was found, from what. Of the numbers behind it those are named
// that a person could have read off.
func (s step) brief(r Reader) string {
	f := s.finding
	if !f.Brief.IsZero() {
		return f.Brief.Text(r)
	}
	value := s.result.value.Text(r)
	if !f.Look.IsZero() {
		return Tell("working.brief_look", "%v: %s (%v)", f.Name, value, f.Look).Text(r)
	}
	var from []any
	if len(f.Table.Columns) == 0 {
		for _, n := range symbolsOf(f.By) {
			b := n.symbol
			if b.column || !b.value.Unit.everyday() || len(from) == mostInputs {
				continue
			}
			v := b.value
			v.Decimals = min(v.Decimals, significant(v.Number))
			from = append(from, Tell("working.brief_input", "%v (%s)", b.meaning, v.Text(r)))
		}
	}
	if len(from) == 0 {
		return Tell("working.brief", "%v: %s", f.Name, value).Text(r)
	}
	return Tell("working.brief_from", "%v: %s, from %v", f.Name, value, And(from...)).Text(r)
}
