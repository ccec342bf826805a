package cli

import (
	"context"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/bakeday"
)

// runLate plans the rest of the day again because a step is late.
func runLate(ctx context.Context, s System, day bakeday.Day, f planFlags) error {
	if f.at == "" {
		f.in.fault("at", "", "the step that is late, such as --at shape", quantity.ErrRequired)
		return f.in.complain(nil)
	}
	if !day.Possible() {
		return s.tell(f.output, day, false)
	}
	r, err := day.Replan(ctx, bakeday.Late{Step: f.at, By: f.late})
	if err != nil {
		return f.in.complain(err)
	}
	return s.tell(f.output, r, r.Possible())
}
