package bench

import (
	"time"

	"example.org/maslin/dough/report"
	"example.org/maslin/schedule/bakeday"
)

var reportOptions = report.Options{Width: 110}

func clockOf(now time.Time) bakeday.KitchenClock {
	return bakeday.KitchenClock{Now: now, Zone: time.UTC}
}
