package cli

import (
	"context"

	"example.org/maslin/schedule/bakeday"
)

// runLate plans the rest of the day again because a step is late.
func runLate(ctx context.Context, s System, day bakeday.Day, f planFlags) error {
	if f.at == "" {
		return badInput("maslin plan: --late: say which step is late with --at, such as --at shape")
	}
	if !day.Possible() {
		return s.tell(f.output, day, false)
	}
	r, err := day.Replan(ctx, bakeday.Late{Step: f.at, By: f.late})
	if err != nil {
		return complaints("plan", err, map[string]string{"Step": "--at", "By": "--late"})
	}
	return s.tell(f.output, r, r.Possible())
}
