package schedule

// StepKind says what is done in a step, for programs; the name of the step says it for people.
// The zero value is "not given".
type StepKind int

// The kinds of steps, in the order of a day.
const (
	Feed     StepKind = iota + 1 // a levain is fed
	Ripen                        // a levain or preferment ripens
	Make                         // a preferment or soaker is put together
	Stand                        // a soaker or scald stands
	Mix                          // a batch of dough is mixed
	Fold                         // the dough is folded
	Laminate                     // the dough is stretched out over the bench and folded up again
	Bulk                         // the dough ferments as a whole
	Add                          // something is added to the dough
	Divide                       // the dough is divided
	Shape                        // the pieces are shaped, divided too if no step of its own says so
	Proof                        // the pieces rise in the warm
	Chill                        // the dough is put into the cold as it is
	Retard                       // the pieces or the dough rest in the cold
	TakeOut                      // the pieces are taken out of the cold
	WarmUp                       // they lose their cold
	Preheat                      // the oven gets hot
	Bake                         // a round is in the oven
	Tend                         // hands go to the oven: the lid comes off, the cuts are opened again, a loaf is turned
	Cool                         // the bread cools
	Other                        // anything else
)

// Hands reports whether the baker is busy in such a step. The others go on by themselves: dough
// and bread rise and cool, the oven gets hot.
func (k StepKind) Hands() bool {
	switch k {
	case Ripen, Stand, Bulk, Proof, Retard, WarmUp, Preheat, Cool:
		return false
	}
	return true
}
