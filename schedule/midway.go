package schedule

import "time"

// Midway is what has happened so far on the day.
type Midway struct {
	Now  time.Time // nothing that has not begun may begin before
	Done []Done
	// Ranges update the living steps from a look at the dough.
	Ranges []Range
}

// Done is a step that has begun, or begun and ended, at its real time.
type Done struct {
	Step  string
	Start time.Time
	End   time.Time // zero while the step goes on
}

// Range is a new estimate of when a living step ends, from a reading of the dough.
type Range struct {
	Step                string
	Early, Likely, Late time.Time
}

// Change is how one step differs between two timetables.
type Change struct {
	Step   string
	Start  time.Duration // how much later it starts (negative: earlier)
	End    time.Duration
	Length time.Duration // how much longer it takes
	Words  string        // "retard 40m shorter", "lunch moves to 13:05"
}
