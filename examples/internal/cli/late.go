package cli

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/bakeday"
)

// A replanned day tells what changes, and whether the rest of it still fits.
type replanned interface {
	telling
	Possible() bool
}

// runLate plans the rest of a day again because a step is late; a day that does not fit is told as it is.
func runLate(s System, f planFlags, possible bool, day telling, replan func(bakeday.Late) (replanned, error)) error {
	if f.at == "" {
		f.in.fault("at", "", quantity.Tell("cli.want_step_late_shape_or_rye", `the step that is late, such as "shape", or "Rye/shape" of several breads`), quantity.ErrRequired)
		return f.in.complain(nil)
	}
	if !possible {
		return s.tell(f.output, day, false)
	}
	r, err := replan(bakeday.Late{Step: f.at, By: f.late})
	if err != nil {
		return f.in.complain(err)
	}
	return s.tell(f.output, r, r.Possible())
}
