package schedule

// StepKind says what is done in a step, for programs; the name of the step says it for people.
// The zero value is "not given".
type StepKind int

// The kinds of steps, in the order of a day.
const (
	Feed    StepKind = iota + 1 // a levain is fed
	Ripen                       // a levain or preferment ripens
	Make                        // a preferment or soaker is put together
	Stand                       // a soaker or scald stands
	Mix                         // a batch of dough is mixed
	Fold                        // the dough is folded
	Bulk                        // the dough ferments as a whole
	Add                         // something is added to the dough
	Divide                      // the dough is divided
	Shape                       // the pieces are shaped, divided too if no step of its own says so
	Proof                       // the pieces rise in the warm
	Retard                      // the pieces or the dough rest in the cold
	TakeOut                     // the pieces are taken out of the cold
	WarmUp                      // they lose their cold
	Preheat                     // the oven gets hot
	Bake                        // a round is in the oven
	Cool                        // the bread cools
	Other                       // anything else
)

func stepKindWords() []string {
	return []string{
		Feed: "feed", Ripen: "ripen", Make: "make", Stand: "stand", Mix: "mix", Fold: "fold", Bulk: "bulk", Add: "add",
		Divide: "divide", Shape: "shape", Proof: "proof", Retard: "retard", TakeOut: "take out", WarmUp: "warm up",
		Preheat: "preheat", Bake: "bake", Cool: "cool", Other: "other",
	}
}

// String names the kind; the zero value is an empty text.
func (k StepKind) String() string { return word(k, stepKindWords(), "StepKind") }

// MarshalText implements encoding.TextMarshaler: the name of the kind, empty for the zero value.
func (k StepKind) MarshalText() ([]byte, error) { return marshal(k, stepKindWords(), "StepKind") }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what MarshalText writes.
func (k *StepKind) UnmarshalText(text []byte) error { return unmarshal(k, text, stepKindWords()) }

// Hands reports whether the baker is busy in such a step. The others go on by themselves: dough
// and bread rise and cool, the oven gets hot.
func (k StepKind) Hands() bool {
	switch k {
	case Ripen, Stand, Bulk, Proof, Retard, WarmUp, Preheat, Cool:
		return false
	}
	return true
}
