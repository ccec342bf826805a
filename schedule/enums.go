package schedule

import "example.org/maslin/internal/enum"

var stepKinds = enum.Of[StepKind]("kind of step", "", "feed", "ripen", "make", "stand", "mix", "fold", "laminate",
	"bulk", "add", "divide", "shape", "proof", "chill", "retard", "take out", "warm up", "preheat", "bake", "tend", "cool",
	"other")

// String names the kind; the zero value is an empty text.
func (k StepKind) String() string { return stepKinds.String(k) }

// MarshalText implements encoding.TextMarshaler.
func (k StepKind) MarshalText() ([]byte, error) { return stepKinds.Marshal(k) }

// UnmarshalText implements encoding.TextUnmarshaler.
func (k *StepKind) UnmarshalText(text []byte) error { return stepKinds.Unmarshal(k, text) }

var verdicts = enum.Of[Verdict]("verdict", "optimal", "feasible", "infeasible", "unknown")

// String names the verdict.
func (v Verdict) String() string { return verdicts.String(v) }

// MarshalText implements encoding.TextMarshaler.
func (v Verdict) MarshalText() ([]byte, error) { return verdicts.Marshal(v) }

// UnmarshalText implements encoding.TextUnmarshaler.
func (v *Verdict) UnmarshalText(text []byte) error { return verdicts.Unmarshal(v, text) }

var linkKinds = enum.Of[LinkKind]("kind of link", "end to start", "start to start", "end to end", "start to end")

// String names the kind of link.
func (k LinkKind) String() string { return linkKinds.String(k) }

// MarshalText implements encoding.TextMarshaler.
func (k LinkKind) MarshalText() ([]byte, error) { return linkKinds.Marshal(k) }

// UnmarshalText implements encoding.TextUnmarshaler.
func (k *LinkKind) UnmarshalText(text []byte) error { return linkKinds.Unmarshal(k, text) }

var edges = enum.Of[Edge]("edge", "start", "end")

// String names the edge.
func (e Edge) String() string { return edges.String(e) }

// MarshalText implements encoding.TextMarshaler.
func (e Edge) MarshalText() ([]byte, error) { return edges.Marshal(e) }

// UnmarshalText implements encoding.TextUnmarshaler.
func (e *Edge) UnmarshalText(text []byte) error { return edges.Unmarshal(e, text) }

var ruleKinds = enum.Of[Rule]("kind of rule", "shortest duration", "longest duration", "shortest time between",
	"longest time between", "not before", "not after", "absence", "capacity", "start of the plan", "end of the plan",
	"order of like steps", "duration", "time between", "fixed time", "as planned", "missing step")

// String names the kind of rule.
func (r Rule) String() string { return ruleKinds.String(r) }

// MarshalText implements encoding.TextMarshaler.
func (r Rule) MarshalText() ([]byte, error) { return ruleKinds.Marshal(r) }

// UnmarshalText implements encoding.TextUnmarshaler.
func (r *Rule) UnmarshalText(text []byte) error { return ruleKinds.Unmarshal(r, text) }

var easings = enum.Of[Easing]("way a rule can give", "", "shorter", "longer", "earlier", "later", "begins later",
	"ends earlier", "dropped", "more of it", "any order")

// String names the way a rule can give; the zero value is an empty text.
func (e Easing) String() string { return easings.String(e) }

// MarshalText implements encoding.TextMarshaler.
func (e Easing) MarshalText() ([]byte, error) { return easings.Marshal(e) }

// UnmarshalText implements encoding.TextUnmarshaler.
func (e *Easing) UnmarshalText(text []byte) error { return easings.Unmarshal(e, text) }

var absents = enum.Of[Absent]("absence when it matters", "present", "away at the end", "away all the time")

// String says how much of the time somebody is away.
func (a Absent) String() string { return absents.String(a) }

// MarshalText implements encoding.TextMarshaler.
func (a Absent) MarshalText() ([]byte, error) { return absents.Marshal(a) }

// UnmarshalText implements encoding.TextUnmarshaler.
func (a *Absent) UnmarshalText(text []byte) error { return absents.Unmarshal(a, text) }
