package wallclock

import (
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/enum"
)

// Reading says how the clocks of a zone show a moment.
type Reading int

// The three ways of being shown.
const (
	Once    Reading = iota // the clocks show it exactly once
	Skipped                // they never show it: it lies in a gap
	Twice                  // they show it more than once: it lies in a fold
)

var readings = enum.Of[Reading]("reading of a clock", "once", "skipped", "twice")

// String prints "once", "skipped" or "twice".
func (r Reading) String() string { return readings.String(r) }

// MarshalText implements encoding.TextMarshaler.
func (r Reading) MarshalText() ([]byte, error) { return readings.Marshal(r) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what String prints.
func (r *Reading) UnmarshalText(text []byte) error { return readings.Unmarshal(r, text) }

// Resolution is the instant that a moment means in a zone.
type Resolution struct {
	answer

	// At is the instant, by the policy.
	At time.Time `json:"at"`
	// Reading says whether the clocks show the moment once, never or twice.
	Reading Reading `json:"reading"`
	// Before and After are the two real times nearest to the moment: in a gap the last minute
	// before the clocks jump and the instant at which they do; in a fold the first and the last
	// instant at which they show it. Otherwise both are At.
	Before time.Time `json:"before"`
	After  time.Time `json:"after"`

	asked Moment
	zone  *time.Location
}

// String prints the instant with its offset, and says so when the moment is skipped or shown
// twice.
func (r Resolution) String() string {
	s := r.At.Format("Mon 2006-01-02 15:04 -07:00")
	switch r.Reading {
	case Skipped:
		return s + " (for " + r.asked.String() + ", which the clocks skip)"
	case Twice:
		return s + " (shown twice)"
	}
	return s
}

// zoneName keeps errors short whatever a zone calls itself.
func zoneName(zone *time.Location) string {
	if name := zone.String(); len(name) <= 32 {
		return name
	}
	return quantity.Excerpt(zone.String())
}

// shown is an instant where an error speaks of it.
func shown(t time.Time) quantity.Phrase {
	return quantity.Tell("wallclock.instant", "%v %s", t.Weekday(), t.Format("2006-01-02 15:04 -07:00"))
}

// Doubt returns nil when the clocks show the moment exactly once, and otherwise an error that
// names what was given and the two nearest real times, for a caller who would rather ask than
// choose. Its reason is [ErrSkipped] or [ErrTwice].
func (r Resolution) Doubt() error {
	reason := ErrSkipped
	switch r.Reading {
	case Once:
		return nil
	case Twice:
		reason = ErrTwice
	}
	return &quantity.InputError{
		Got:  quantity.Tell("wallclock.got_in", "%v in %s", r.asked.told(), zoneName(r.zone)),
		Want: quantity.Tell("wallclock.want_or", "%s or %s", shown(r.Before), shown(r.After)),
		Err:  reason,
	}
}

// Resolve answers: which instant does this moment mean in this zone?
//
// With o the offset of local time from UTC, a moment w means every instant t with t + o(t) = w.
// In a gap there is none, in a fold there are two; then the policy decides. Where a jump at T
// raises the offset from o₁ to o₂, a moment in the gap reads as w − o₁ (after the jump) or w −
// o₂ (before it). The zone must be given; the date must be valid.
//
// Range: every valid date, in every zone whose offsets are less than 26 hours and which does
// not jump twice within two days. Exact there.
//
// Errors: a moment, zone or policy that is missing or impossible, all at once; by [Refuse], a
// moment in a gap or fold ([ErrSkipped], [ErrTwice]).
//
// Source: RFC 5545 (2009), section 3.3.5, form 3.
func Resolve(m Moment, zone *time.Location, policy Policy) (Resolution, error) {
	var bad quantity.Problems
	switch {
	case m.IsZero():
		bad.Required("Moment", momentWant)
	case !m.Date.IsValid():
		bad.Join("Moment.Date", noSuchDay(m.Date))
	case !m.Clock.IsValid():
		bad.Add("Moment.Clock", m.Clock, clockWant, quantity.ErrOutOfRange)
	}
	if zone == nil {
		bad.Required("Zone", quantity.Tell("wallclock.want_time_zone", "a time zone"))
	}
	policies.Check(&bad, "Policy", policy)
	if err := bad.ErrFor(nil); err != nil {
		return Resolution{}, err
	}
	r, err := resolve(m, zone, policy)
	if err != nil {
		return Resolution{}, err
	}
	if policy == Refuse && r.Reading != Once {
		return Resolution{}, r.Doubt()
	}
	return r, nil
}

// reach is how far from its own reading as UTC a moment can lie, with room to spare: offsets
// in use have always been below 16 hours.
const reach = 26 * 60 * 60

// resolve looks at every offset in force around the moment and asks of each whether reading
// the moment with it gives an instant at which it is in force. Each answer is confirmed by a
// look-up, so nothing depends on the bounds being tight.
func resolve(m Moment, zone *time.Location, policy Policy) (Resolution, error) {
	wall := m.wall()
	at := func(u int64) time.Time { return time.Unix(u, 0).In(zone) }
	offset := func(u int64) int64 { _, o := at(u).Zone(); return int64(o) }

	var shownAt []int64
	var jump, before, after int64 // the gap that holds the moment: when, and the two offsets
	inGap := false
	last := int64(0)
	for u, first := wall-reach, true; u <= wall+reach; first = false {
		o := offset(u)
		if t := wall - o; offset(t) == o && !slices.Contains(shownAt, t) {
			shownAt = append(shownAt, t)
		}
		if !first && u+last <= wall && wall < u+o {
			inGap, jump, before, after = true, u, last, o
		}
		last = o
		u = nextChange(at(u), u)
	}
	slices.Sort(shownAt)

	r := Resolution{asked: m, zone: zone}
	switch {
	case len(shownAt) == 1:
		r.At = at(shownAt[0])
		r.Before, r.After = r.At, r.At
	case len(shownAt) > 1:
		r.Reading, r.Before, r.After = Twice, at(shownAt[0]), at(shownAt[len(shownAt)-1])
		r.At = r.Before
		if policy == Later {
			r.At = r.After
		}
	case inGap:
		r.Reading, r.Before, r.After = Skipped, at(jump-60), at(jump)
		r.At = at(wall - before)
		if policy == Earlier {
			r.At = at(wall - after)
		}
	default:
		return r, &quantity.InputError{GoPath: "Zone", Got: zoneName(zone),
			Want: quantity.Tell("wallclock.want_zone_offsets_less_than_26",
				"a zone with offsets of less than 26 hours"), Err: quantity.ErrOutOfRange}
	}
	return r, nil
}

// nextChange returns when the offset may change next after u. Bounds that do not lie ahead (the
// zone rules of some Go releases give a year end that is a day early) move the search by an
// hour.
func nextChange(t time.Time, u int64) int64 {
	_, end := t.ZoneBounds()
	if end.IsZero() {
		return u + 4*reach
	}
	if next := end.Unix(); next > u {
		return next
	}
	return u + 60*60
}
