package schedule

import (
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
)

// word is the printed form of an enumeration.
func word[T ~int](v T, words []string, name string) string {
	if v < 0 || int(v) >= len(words) {
		return name + "(" + strconv.Itoa(int(v)) + ")"
	}
	return words[v]
}

// marshal is the text form of an enumeration.
func marshal[T ~int](v T, words []string, name string) ([]byte, error) {
	if v < 0 || int(v) >= len(words) {
		return nil, &quantity.InputError{Got: word(v, words, name), Want: "one of: " + strings.Join(words, ", "), Err: quantity.ErrOutOfRange}
	}
	return []byte(words[v]), nil
}

// unmarshal reads the text form of an enumeration.
func unmarshal[T ~int](v *T, text []byte, words []string) error {
	for i, w := range words {
		if w == string(text) {
			*v = T(i)
			return nil
		}
	}
	return &quantity.InputError{Got: quantity.Excerpt(string(text)), Want: "one of: " + strings.Join(words, ", "), Err: quantity.ErrOutOfRange}
}

func verdictWords() []string {
	return []string{Optimal: "optimal", Feasible: "feasible", Infeasible: "infeasible", Unknown: "unknown"}
}

// String names the verdict.
func (v Verdict) String() string { return word(v, verdictWords(), "Verdict") }

// MarshalText implements encoding.TextMarshaler.
func (v Verdict) MarshalText() ([]byte, error) { return marshal(v, verdictWords(), "Verdict") }

// UnmarshalText implements encoding.TextUnmarshaler.
func (v *Verdict) UnmarshalText(text []byte) error { return unmarshal(v, text, verdictWords()) }

func linkWords() []string {
	return []string{EndToStart: "end to start", StartToStart: "start to start", EndToEnd: "end to end", StartToEnd: "start to end"}
}

// String names the kind of link.
func (k LinkKind) String() string { return word(k, linkWords(), "LinkKind") }

// MarshalText implements encoding.TextMarshaler.
func (k LinkKind) MarshalText() ([]byte, error) { return marshal(k, linkWords(), "LinkKind") }

// UnmarshalText implements encoding.TextUnmarshaler.
func (k *LinkKind) UnmarshalText(text []byte) error { return unmarshal(k, text, linkWords()) }

func edgeWords() []string { return []string{Start: "start", End: "end"} }

// String names the edge.
func (e Edge) String() string { return word(e, edgeWords(), "Edge") }

// MarshalText implements encoding.TextMarshaler.
func (e Edge) MarshalText() ([]byte, error) { return marshal(e, edgeWords(), "Edge") }

// UnmarshalText implements encoding.TextUnmarshaler.
func (e *Edge) UnmarshalText(text []byte) error { return unmarshal(e, text, edgeWords()) }

func ruleWords() []string {
	return []string{
		StepMin: "shortest duration", StepMax: "longest duration", LinkMin: "shortest time between", LinkMax: "longest time between",
		NotBefore: "not before", NotAfter: "not after", Absence: "absence", Capacity: "capacity",
		PlanStart: "start of the plan", PlanEnd: "end of the plan", InOrder: "order of like steps", StepExact: "duration",
		LinkExact: "time between", FixedTime: "fixed time", AsPlanned: "as planned", Missing: "missing step",
	}
}

// String names the kind of rule.
func (r Rule) String() string { return word(r, ruleWords(), "Rule") }

// MarshalText implements encoding.TextMarshaler.
func (r Rule) MarshalText() ([]byte, error) { return marshal(r, ruleWords(), "Rule") }

// UnmarshalText implements encoding.TextUnmarshaler.
func (r *Rule) UnmarshalText(text []byte) error { return unmarshal(r, text, ruleWords()) }

func easingWords() []string {
	return []string{
		Shorter: "shorter", Longer: "longer", Earlier: "earlier", Later: "later", Begins: "begins later", Ends: "ends earlier",
		Dropped: "dropped", More: "more of it", AnyOrder: "any order",
	}
}

// String names the way a rule can give; the zero value is an empty text.
func (e Easing) String() string { return word(e, easingWords(), "Easing") }

// MarshalText implements encoding.TextMarshaler.
func (e Easing) MarshalText() ([]byte, error) { return marshal(e, easingWords(), "Easing") }

// UnmarshalText implements encoding.TextUnmarshaler.
func (e *Easing) UnmarshalText(text []byte) error { return unmarshal(e, text, easingWords()) }

func absentWords() []string {
	return []string{Present: "present", AwayAtEnd: "away at the end", AwayAllTime: "away all the time"}
}

// String says how much of the time somebody is away.
func (a Absent) String() string { return word(a, absentWords(), "Absent") }

// MarshalText implements encoding.TextMarshaler.
func (a Absent) MarshalText() ([]byte, error) { return marshal(a, absentWords(), "Absent") }

// UnmarshalText implements encoding.TextUnmarshaler.
func (a *Absent) UnmarshalText(text []byte) error { return unmarshal(a, text, absentWords()) }
