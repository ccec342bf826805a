package pupil

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// A Sheet is one exercise as it is printed, with what its key says.
type Sheet struct {
	Question, Answer, Tolerance string
	Wrong                       map[string]string // the usual wrong answers, by the name of their mistake
}

// A Pupil reads one language.
type Pupil struct {
	tongue tongue
	forms  []form
}

// New is a pupil who reads German, or English.
func New(readsGerman bool) Pupil {
	p := Pupil{tongue: english}
	if readsGerman {
		p.tongue = german
	}
	for kind, problem := range problems() {
		p.forms = append(p.forms, problem.in(p.tongue, kind))
	}
	return p
}

// Done is an exercise that was done.
type Done struct {
	Kind   string   // of question
	Met    []string // the mistakes that were made, with the kind
	Faults []string // what is wrong with the key
}

// Do does the exercise and every usual mistake, and compares with the key.
func (pupil Pupil) Do(s Sheet) Done {
	t := pupil.tongue
	var out Done
	fault := func(format string, args ...any) {
		out.Faults = append(out.Faults, fmt.Sprintf(format, args...)+": "+s.Question)
	}
	var n given
	var p form
	for _, f := range pupil.forms {
		if read, ok := f.read(t, s.Question); ok {
			if out.Kind != "" {
				fault("may be %s or %s", out.Kind, f.kind)
			}
			out.Kind, n, p = f.kind, read, f
		}
	}
	if out.Kind == "" {
		fault("what is asked?")
		return out
	}
	answer, tolerance := t.read("", s.Answer), t.read("", s.Tolerance)
	unit := p.unitOf(n)
	if answer.unit != unit || !sameKind(unit, tolerance.unit) {
		fault("the answer %s, give or take %s, is not in %q", s.Answer, s.Tolerance, unit)
	}
	right := p.answer(n)
	if d := apart(unit, answer.number, right); !(d <= tolerance.number+half(t, s.Answer)) {
		fault("the key says %s, by hand it is %g", s.Answer, right)
	}
	if len(s.Wrong) < 2 {
		fault("only %d wrong answers", len(s.Wrong))
	}
	for name, text := range s.Wrong {
		wrong := t.read("", text)
		mistake, ok := p.mistakes[name]
		if !ok {
			fault("no mistake is called %s", name)
			continue
		}
		out.Met = append(out.Met, out.Kind+" "+name)
		if made := mistake(n); wrong.unit != unit || !(apart(unit, wrong.number, made) <= 1.01*half(t, text)+1e-9) {
			fault("with the mistake %s the key says %s, by hand it is %g %s", name, text, made, unit)
		}
		if !(apart(unit, wrong.number, right) > tolerance.number) {
			fault("the wrong answer %s is right", text)
		}
		for other, same := range s.Wrong {
			if other != name && same == text {
				fault("%s and %s give %s both", name, other, text)
			}
		}
	}
	slices.Sort(out.Met)
	return out
}

// half is half a unit of the last digit of a printed number; none of a time of day, which is reckoned in minutes.
func half(t tongue, text string) float64 {
	if strings.Contains(text, ":") {
		return 0
	}
	return 0.5 * math.Pow10(-t.places(text))
}

// sameKind reports whether a tolerance is a difference of answers in the unit.
func sameKind(unit, tolerance string) bool {
	switch unit {
	case celsius, degreeF:
		return tolerance == "Δ"+unit
	case clockUnit:
		return tolerance == minute
	}
	return tolerance == unit
}

// apart is how far two numbers are from each other; times of day go round with the week.
func apart(unit string, a, b float64) float64 {
	d := math.Abs(a - b)
	if unit == clockUnit {
		d = math.Mod(d, week)
		d = math.Min(d, week-d)
	}
	return d
}

// Mistakes lists every usual mistake that is known, with the kind of question.
func Mistakes() []string {
	var out []string
	for kind, p := range problems() {
		for name := range p.mistakes {
			out = append(out, kind+" "+name)
		}
	}
	slices.Sort(out)
	return out
}
