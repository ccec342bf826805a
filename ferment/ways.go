package ferment

import (
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// Ways are what would make a dough ready by a wanted time, one by one.
type Ways struct {
	Ready quantity.Elapsed `json:"ready"`
	// Amount is by how much levain or yeast.
	Amount AmountAnswer `json:"amount"`
	// Dough and Room are by how warm the dough leaves the mixer and by the room; Held is by a proofing box. They are
	// left out where the temperature of the dough is given otherwise.
	Dough *TemperatureAnswer `json:"dough,omitempty"`
	Room  *TemperatureAnswer `json:"room,omitempty"`
	Held  *TemperatureAnswer `json:"held,omitempty"`
}

// WaysTo answers: what would make this dough ready by the wanted time? A dough that drifts to its room may be mixed
// warmer or stand warmer; one at a steady temperature may stand in a box; one followed by a probe may only be changed
// in its amounts. The zero drift says that it does not drift. Errors: as [Bulk.AmountFor], [Bulk.StartFor] and
// [Bulk.HeldFor].
func (b Bulk) WaysTo(ready time.Duration, drift Relaxing) (w Ways, err error) {
	w.Ready = quantity.Elapsed(ready)
	if w.Amount, err = b.AmountFor(ready); err != nil {
		return w, err
	}
	keep := func(a TemperatureAnswer, err error) (*TemperatureAnswer, error) { return &a, err }
	switch {
	case b.History.measured:
	case drift == (Relaxing{}):
		w.Held, err = keep(b.HeldFor(ready))
	default:
		if w.Dough, err = keep(b.StartFor(ready, drift)); err == nil {
			w.Room, err = keep(b.RoomFor(ready, drift))
		}
	}
	return w, err
}

// String lists the ways.
func (w Ways) String() string { return w.Message().String() }

// Message lists the ways.
func (w Ways) Message() working.Message { return working.Join(w.list(), "; ") }

func (w *Ways) list() []working.Message {
	out := []working.Message{w.Amount.way()}
	if w.Dough != nil {
		out = append(out, working.Tell("ferment.way_dough", "by the dough: %v", w.Dough.way()))
	}
	if w.Room != nil {
		out = append(out, working.Tell("ferment.way_room", "by the room: %v", w.Room.way()))
	}
	if w.Held != nil {
		out = append(out, working.Tell("ferment.way_box", "by a proofing box: %v", w.Held.way()))
	}
	return out
}

func (a *AmountAnswer) way() working.Message {
	switch {
	case !a.Feasible:
		return working.Tell("ferment.way_no_amount", "by the amount: %v", a.Why)
	case a.Yeast.Kind != NoYeast:
		return working.Tell("ferment.way_yeast", "by the amount: %.2f %v; then %v", a.Yeast.Amount, a.Yeast.Kind,
			a.Estimate.Ready())
	}
	return working.Tell("ferment.way_levain", "by the amount: %.1f of the flour in the levain; then %v", a.Inoculation,
		a.Estimate.Ready())
}

func (a *TemperatureAnswer) way() working.Message {
	if !a.Feasible {
		return a.Why
	}
	return working.Tell("ferment.way_temperature", "%.1f; then %v", a.Temperature, a.Estimate.Ready())
}

// Report lists the ways under what they lead to.
func (w Ways) Report() report.Report { return w.ReportFrom(time.Time{}) }

// ReportFrom is [Ways.Report] by the clock: mixed is when mixing ended.
func (w Ways) ReportFrom(mixed time.Time) report.Report {
	title := working.Tell("ferment.title_ready_after", "Ready after %v", w.Ready)
	if !mixed.IsZero() {
		title = working.Tell("ferment.title_ready_at", "Ready after %v, at %t", w.Ready, mixed.Add(w.Ready.Duration()))
	}
	return report.Report{Headline: w.Message(), Sections: []report.Section{{Key: "ways", Title: title,
		Blocks: []report.Block{report.List(w.list())}}}}
}
