package bakeday

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
)

// KitchenClock is where and when a plan is made: the caller's clock and the zone of the kitchen, which
// the caller loads by the name in Kitchen.Zone.
type KitchenClock struct {
	Now  time.Time      `json:"now"`
	Zone *time.Location `json:"zone"`
}

// MarshalJSON implements json.Marshaler: the instant, and the name of the zone.
func (c KitchenClock) MarshalJSON() ([]byte, error) {
	zone := ""
	if c.Zone != nil {
		zone = c.Zone.String()
	}
	return json.Marshal(struct {
		Now  time.Time `json:"now"`
		Zone string    `json:"zone"`
	}{c.Now, zone})
}

// UnmarshalJSON refuses: the caller loads the zone, by the name that is written, and sets the clock.
func (*KitchenClock) UnmarshalJSON([]byte) error {
	return &quantity.InputError{
		Got: quantity.Tell("bakeday.got_kitchen_clock", "a clock"),
		Want: quantity.Tell("bakeday.want_clock_of_caller",
			"the moment and the zone, set by the program: a zone is loaded by its name and does not come back from JSON"),
		Err: quantity.ErrForm,
	}
}

// Plan works the whole bake out: weights, water, the clocks of levain and dough, doneness, and a
// timetable that works backward from the wanted time around the baker's absences.
//
// The dough's clock depends on the time of day through the temperature of the room, and the
// time of day on the dough's clock; Plan goes round until both agree within five minutes.
// When the wanted time cannot be met the timetable's conflict says what is in the way; a wish by
// weekday that can no longer be met moves to the week after, and says so.
//
// When the context ends before any timetable was found or ruled out, the error is the context's, so that
// errors.Is(err, context.DeadlineExceeded) holds; when it ends later the day is what is known, and
// TimeRanOut is set. Other errors: everything that is wrong with the bake, all at once, as quantity.InputError with the
// field paths of [Bake]; a kitchen above 40 °C, in which bread does not cool. Accuracy: that of the rooms; the times of
// living steps are ranges.
func (b Bake) Plan(ctx context.Context, clock KitchenClock) (Day, error) {
	if err := b.Check(clock); err != nil {
		return Day{}, err
	}
	full, err := b.inPercent()
	if err != nil {
		return Day{}, atFields(b, err)
	}
	full = full.withDefaults()
	wanted, err := full.Wanted.instants(clock.Now, clock.Zone)
	if err != nil {
		return Day{}, atFields(b, err)
	}
	first, err := full.planFor(ctx, wanted[0], clock)
	if err != nil {
		return Day{}, atFields(b, err)
	}
	if first.Possible() {
		full.fresher(ctx, &first, clock)
		return first, nil
	}
	for _, w := range wanted[1:] {
		next, err := full.planFor(ctx, w, clock)
		switch {
		case ended(err):
			first.TimeRanOut = true
			return first, nil
		case err != nil:
			return Day{}, atFields(b, err)
		case next.Possible():
			full.remedies(ctx, &first, clock)
			full.lookAround(ctx, &first, clock)
			next.Missed = &Missed{Wanted: first.Wanted, Why: first.why()}
			next.TimeRanOut = next.TimeRanOut || first.TimeRanOut
			return next, nil
		}
	}
	full.remedies(ctx, &first, clock)
	full.lookAround(ctx, &first, clock)
	return first, nil
}

// lookAround finds the wanted times next to one that does not work.
func (b *Bake) lookAround(ctx context.Context, d *Day, clock KitchenClock) {
	d.Earlier = b.nearest(ctx, d, clock, func(d Day) *schedule.Shift { return d.Timetable.Before }, false)
	d.Later = b.nearest(ctx, d, clock, func(d Day) *schedule.Shift { return d.Timetable.After }, true)
}

// ended reports whether an error is that of a context.
func ended(err error) bool {
	return errors.Is(err, context.DeadlineExceeded) || errors.Is(err, context.Canceled)
}

// nearest follows the timetable's suggestions to a wanted time that works: the dough's clock
// moves with the time of day, so that a suggestion may fall short by a few minutes.
func (b *Bake) nearest(
	ctx context.Context,
	first *Day,
	clock KitchenClock,
	suggestion func(Day) *schedule.Shift,
	later bool,
) *time.Time {
	d := *first
	for range 5 {
		s := suggestion(d)
		if s == nil || !s.To.After(clock.Now) {
			return nil
		}
		next, err := b.planFor(ctx, s.To, clock)
		if ended(err) {
			first.TimeRanOut = true
		}
		if err != nil {
			return nil
		}
		if next.Possible() {
			return b.awake(ctx, first, next.Wanted, clock, later)
		}
		d = next
	}
	return nil
}

// awake is a wanted time that works, or the next one, earlier or later, at which nobody is asleep, if that works too.
func (b *Bake) awake(ctx context.Context, first *Day, at time.Time, clock KitchenClock, later bool) *time.Time {
	by := b.Kitchen.awakeBy([]time.Time{at}, 0, later, clock.Zone)
	better := at.Add(by)
	if by == 0 || !better.After(clock.Now) {
		return &at
	}
	d, err := b.planFor(ctx, better, clock)
	if ended(err) {
		first.TimeRanOut = true
	}
	if err != nil || !d.Possible() {
		return &at
	}
	return &better
}

// awakeBy is how far wanted times are moved, or the next distance in the same direction with which nobody is asleep at
// any of them; the same distance when there is none within a day.
func (k *Kitchen) awakeBy(wanted []time.Time, by time.Duration, later bool, zone *time.Location) time.Duration {
	const day = 24 * time.Hour
	better := by
	for moved := true; moved; {
		moved = false
		for _, at := range wanted {
			now := at.Add(better)
			spans, err := wallclock.Expand(k.Asleep, wallclock.Occurrence{From: now.Add(-day), To: now.Add(day)}, zone)
			if err != nil {
				return by
			}
			for _, s := range spans {
				switch {
				case moved || !now.Before(s.To):
				case later && !now.Before(s.From):
					better, moved = s.To.Sub(at), true
				case !later && now.After(s.From):
					better, moved = s.From.Sub(at), true
				}
			}
			if (better - by).Abs() > day {
				return by
			}
		}
	}
	return better
}

// Check reports everything that is wrong with the bake as it stands, all at once, without planning
// it. Errors: as [Bake.Plan].
func (b Bake) Check(clock KitchenClock) error { return atFields(b, b.faults(clock)) }

// faults are those of the bake, by its Go fields.
func (b Bake) faults(clock KitchenClock) error {
	var problems quantity.Problems
	full, err := b.inPercent()
	problems.Join("", err)
	full = full.withDefaults()
	problems.Join("", b.asWritten(full.check(), err != nil))
	for i, h := range b.Kitchen.Asleep {
		problems.Join(fmt.Sprintf("Kitchen.Asleep[%d]", i), h.Check())
	}
	for i, h := range b.Kitchen.Away {
		problems.Join(fmt.Sprintf("Kitchen.Away[%d]", i), h.Check())
	}
	zoneWant := quantity.Tell("bakeday.want_iana_time_zone_europe_zurich", `an IANA time zone, such as "Europe/Zurich"`)
	switch {
	case b.Kitchen.Zone == "":
		problems.Required("Kitchen.Zone", zoneWant)
	case clock.Zone == nil:
		problems.Required("Kitchen.Zone", quantity.Tell("bakeday.want_clock_plan_zone_bake",
			"the clock of the plan in the zone of the bake"))
	case clock.Zone.String() != b.Kitchen.Zone:
		problems.AddCode(
			"Kitchen.Zone",
			"other_zone",
			quantity.Tell("bakeday.got_clock", "a clock in %s", quantity.Excerpt(clock.Zone.String())),
			quantity.Tell("bakeday.want_clock_zone_bake", "a clock in the zone of the bake, %s",
				quantity.Excerpt(b.Kitchen.Zone)),
			quantity.ErrInconsistent,
		)
	case !b.Wanted.IsZero():
		_, err := b.Wanted.instants(clock.Now, clock.Zone)
		problems.Join("", err)
	}
	return problems.Err()
}

// firstGuess is where to begin: a bulk of six hours, the shortest retard, a levain of eight hours.
func (b *Bake) firstGuess(wanted time.Time) moments {
	m := moments{shaping: b.Shaping.Takes.Duration(), retard: 0}
	end := wanted.Add(-4 * time.Hour)
	if b.Retard != nil {
		m.retard = (b.Retard.AtLeast.Duration() + b.Retard.AtMost.Duration()) / 2
	}
	m.mixed = end.Add(-m.retard - m.shaping - 6*time.Hour)
	m.fed = m.mixed.Add(-9 * time.Hour)
	return m
}

// workOut asks every room, with the dough at the given moments. The partners are the breads that its levain feeds.
func (d *Day) workOut(b *Bake, m moments, partners []*planned) error {
	var problems quantity.Problems
	var err error
	if d.Levain, err = b.leaven(d.Batch, m, d.Zone, partners); err != nil {
		problems.Join("", err)
	}
	levain := quantity.Temperature{}
	if d.Levain != nil {
		levain = d.Levain.Temperature
	}
	problems.Join("", d.soak(b, m))
	if d.Water, err = b.water(d.Batch, b.roomAt(m.mixed, d.Zone), levain, d.soaked); err != nil {
		problems.Join("", err)
	}
	problems.Join("", d.ripen(b, m))
	m.peaks = d.peaks()
	if d.Rising, err = b.rise(d.Batch, m, d.Zone); err != nil {
		problems.Join("", err)
	}
	return problems.Err()
}

// times are the durations for the timetable.
func (d *Day) times() times {
	cool := max(d.Baking.Cooling.Ready.Late, d.Baking.Cooling.Rest.Duration())
	if d.Bake.Loaves.Warm {
		cool = tooHotToEat
	}
	t := times{
		bulk:   d.Rising.Bulk.Ready(),
		proof:  d.Rising.Proof,
		cool:   cool,
		mixes:  d.Water.Mixes,
		rounds: d.Baking.Rounds,
		boil:   grid(d.Baking.Program.Boil.Likely),
		ripens: d.Preferments,
		cools:  d.cools,
	}
	if d.Levain != nil {
		// At its likely peak a levain is most surely ripe and not yet past.
		t.ripe, t.past = d.Levain.Ripeness.Peak.Likely, d.Levain.Ripeness.Until.Likely
		t.fed = d.Levain.Fed
	}
	return t
}

// moments reads the timetable.
func (d *Day) moments() moments {
	m := moments{shaping: d.Bake.Shaping.Takes.Duration(), now: d.Now}
	if d.Bake.Levain.standing() {
		m.fed = d.Now.Add(-d.Bake.Levain.FedAgo.Duration())
	}
	if s, ok := d.Timetable.Step(idFeed); ok {
		m.fed = s.End
	}
	if s, ok := d.Timetable.Step(idBulk); ok {
		m.mixed = s.Start
	}
	if s, ok := d.Timetable.Step(idRetard); ok {
		m.retard = s.End.Sub(s.Start)
	}
	return m
}
