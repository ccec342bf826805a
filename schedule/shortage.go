package schedule

import (
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/planner"
)

// Shortage says in numbers why a shared resource cannot suffice: steps that must lie between two times need more of it
// than there is between them.
type Shortage struct {
	Resource string    `json:"resource"` // its ID
	Capacity int       `json:"capacity"`
	Steps    []string  `json:"steps"` // the IDs of the steps, which cannot lie elsewhere
	From     time.Time `json:"from"`
	To       time.Time `json:"to"`
	// Need is how long the steps keep the resource at least, each counted as often as it needs a unit of it; Room is
	// how long the units of the resource are there in all. Both are 0 when the steps are short by number.
	Need quantity.Elapsed `json:"need,omitempty"`
	Room quantity.Elapsed `json:"room,omitempty"`
	// Wanted is how many units are wanted for at least Each, and Fit how many fit, one after the other; 0 when the
	// steps are short by their hours already.
	Wanted int              `json:"wanted,omitempty"`
	Fit    int              `json:"fit,omitempty"`
	Each   quantity.Elapsed `json:"each,omitempty"` // the least that a step takes

	name working.Message
}

// shortage says in the user's terms what the planner found; nil for nothing.
func (c *compiled) shortage(shop *planner.Shop, x *planner.Shortage) *Shortage {
	if x == nil {
		return nil
	}
	r := c.in.Resources[c.rules[shop.Pools[x.Pool].Rule].index]
	out := &Shortage{
		Resource: r.ID,
		Capacity: r.Capacity,
		From:     c.when(x.From),
		To:       c.when(x.To),
		name:     r.title(),
	}
	least := c.limit
	for _, i := range x.Tasks {
		out.Steps = append(out.Steps, c.in.Steps[i].ID)
		least = min(least, c.lo[i])
	}
	out.Each = c.long(least)
	if x.Length > 0 {
		out.Wanted, out.Fit = x.Need, x.Room
	} else {
		out.Need, out.Room = c.long(x.Need), c.long(x.Room)
	}
	return out
}

// Message says the shortage in one sentence: "20 steps of 45m or more want deck, 2 at a time, between 09:30 and 14:00:
// 15h of work in 9h".
func (s Shortage) Message() working.Message {
	name := s.name
	if name.IsZero() {
		name = working.Tell("schedule.named", "%v", s.Resource)
	}
	if s.Fit > 0 || s.Wanted > 0 {
		return working.Tell(
			"schedule.shortage_number",
			"%d steps of %v or more want %v, %d at a time, between %v and %v: %d are wanted and %d fit",
			len(s.Steps), s.Each, name, s.Capacity, s.From, s.To, s.Wanted, s.Fit,
		)
	}
	return working.Tell(
		"schedule.shortage",
		"%d steps of %v or more want %v, %d at a time, between %v and %v: %v of work in %v",
		len(s.Steps), s.Each, name, s.Capacity, s.From, s.To, s.Need, s.Room,
	)
}

// String is the shortage in words.
func (s Shortage) String() string { return s.Message().String() }
