package desk

import (
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// verdict says how the guess stands to what the library says.
func (s State) verdict(t task, a solved) working.Message {
	r := s.reader()
	if t.guess.kind == onTheClock {
		_, verdict := s.byHandSection(t, a.plan)
		return verdict
	}
	given, err := t.guess.parse(s.Guess, r)
	if err != nil {
		return working.Tell("desk.guess_unread", "The guess cannot be read: %v", working.Problem(err))
	}
	if a.truth == nil {
		return working.Tell("desk.guess_nothing", "Your guess was %v. The library gives no such value here.", given)
	}
	unit := t.guess.unit(r.Units)
	number := func(v any) float64 { return working.ValueOf(v).In(unit).Number }
	guess, truth := number(given), number(a.truth)
	off := working.Amount(max(guess-truth, truth-guess), difference(unit), decimals(unit))
	told := shownValue(a.truth)
	if a.low != nil && a.high != nil {
		if low, high := number(a.low), number(a.high); guess >= low && guess <= high {
			return working.Tell("desk.guess_inside", "Your guess of %v lies in the library's range, %v to %v, likely %v.", given,
				shownValue(a.low), shownValue(a.high), told)
		}
		return working.Tell("desk.guess_outside", "Your guess of %v lies outside the library's range, %v to %v, likely %v.",
			given,
			shownValue(a.low), shownValue(a.high), told)
	}
	switch {
	case max(guess-truth, truth-guess) <= t.near:
		return working.Tell("desk.guess_right", "Your guess of %v is right: the library says %v.", given, told)
	case guess > truth:
		return working.Tell("desk.guess_high", "Your guess of %v is too high by %s: the library says %v.", given,
			off.Text(r), told)
	}
	return working.Tell("desk.guess_low", "Your guess of %v is too low by %s: the library says %v.", given, off.Text(r),
		told)
}

// shownValue is a quantity with the digits that matter at a bench.
func shownValue(v any) any {
	switch v := v.(type) {
	case quantity.Temperature:
		return working.Tell("desk.value_degrees", "%.1f", v)
	case quantity.TemperatureDelta:
		return working.Tell("desk.value_difference", "%.1f", v)
	case quantity.Mass:
		return working.Tell("desk.value_weight", "%.1f", v)
	case quantity.Percent:
		return working.Tell("desk.value_percent", "%.1f", v)
	case quantity.Elapsed:
		return quantity.Elapsed(v.Duration().Round(time.Minute))
	}
	return v
}

// difference is the unit of how far two values of a unit lie apart.
func difference(u working.Unit) working.Unit {
	switch u {
	case working.Celsius:
		return working.DeltaCelsius
	case working.Fahrenheit:
		return working.DeltaFahrenheit
	}
	return u
}

func decimals(u working.Unit) int {
	if u == working.Minute {
		return working.WholeNumber
	}
	return 1
}

// atLock is what the library says to the fields as they were when the guess was locked: the guess was of that.
func (s State) atLock(t task) (solved, error) {
	return t.solve(&values{task: t, texts: s.Was, reader: s.reader()})
}

// sameAsAtLock reports whether no field has changed since.
func (s State) sameAsAtLock(t task) bool {
	v := &values{task: t, texts: s.Fields, reader: s.reader()}
	for _, f := range t.fields {
		if was, ok := s.Was[f.name]; ok && !f.hand && was != v.text(f.name) {
			return false
		}
	}
	return true
}

// changed says what was changed since the guess was locked, and what became of the answer: one thing at a time shows
// what it does.
func (s State) changed(t task, a solved) working.Message {
	var names []working.Message
	var from, to string
	v := &values{task: t, texts: s.Fields, reader: s.reader()}
	for _, f := range t.fields {
		if was, ok := s.Was[f.name]; ok && !f.hand && was != v.text(f.name) {
			names = append(names, f.label)
			from, to = was, v.text(f.name)
		}
	}
	if len(names) == 0 {
		return working.Tell("desk.change_one", "Now change one thing, and say why the answer moves as it does.")
	}
	before, now := working.Tell("desk.before_none", "no answer"), a.report.Headline
	if b, err := s.atLock(t); err == nil {
		before = b.report.Headline
		// Where the headline stays as it was, what was guessed at need not.
		if r := s.reader(); b.truth != nil && a.truth != nil && before.Text(r) == now.Text(r) {
			before = working.Tell("desk.moment", "%v", shownValue(b.truth))
			now = working.Tell("desk.moment", "%v", shownValue(a.truth))
		}
	}
	if len(names) == 1 {
		return working.Tell("desk.changed_one", "You changed one thing, %v, from %s to %s. Before: %v. Now: %v.", names[0],
			readable(from),
			readable(to), before, now)
	}
	list := make([]any, len(names))
	for i, n := range names {
		list[i] = n
	}
	return working.Tell("desk.changed_several",
		"You changed %d things: %v. Change one alone to see what it does. Before: %v. Now: %v.",
		len(names), working.And(list...), before, now)
}

// readable is a table in a sentence.
func readable(text string) string {
	return strings.NewReplacer(betweenCells, " ", betweenRows, ", ").Replace(text)
}
