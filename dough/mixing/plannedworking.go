package mixing

import (
	"example.org/maslin/dough/working"
)

// Working derives the water by the heat balance, and what the factor method says beside it.
func (r PlannedWater) Working() working.Working {
	w := r.balance.Working()
	w.Title = "Water for a planned batch"
	return w
}
