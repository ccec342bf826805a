package bakeday

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
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
// field paths of [Bake]. Accuracy: that of the rooms; the times of living steps are ranges.
func (b Bake) Plan(ctx context.Context, clock KitchenClock) (Day, error) {
	if err := b.Check(clock); err != nil {
		return Day{}, err
	}
	full, err := b.inPercent()
	if err != nil {
		return Day{}, quantity.DataPaths(b, err)
	}
	full = full.withDefaults()
	wanted, err := full.Wanted.instants(clock.Now, clock.Zone)
	if err != nil {
		return Day{}, quantity.DataPaths(b, err)
	}
	first, err := full.planFor(ctx, wanted[0], clock)
	if err != nil {
		return Day{}, quantity.DataPaths(b, err)
	}
	if first.Possible() {
		return first, nil
	}
	for _, w := range wanted[1:] {
		next, err := full.planFor(ctx, w, clock)
		switch {
		case ended(err):
			first.TimeRanOut = true
			return first, nil
		case err != nil:
			return Day{}, quantity.DataPaths(b, err)
		case next.Possible():
			full.lookAround(ctx, &first, clock)
			next.Missed = &Missed{Wanted: first.Wanted, Why: first.why()}
			next.TimeRanOut = next.TimeRanOut || first.TimeRanOut
			return next, nil
		}
	}
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
	day := 24 * time.Hour
	spans, err := wallclock.Expand(b.Kitchen.Asleep, wallclock.Occurrence{From: at.Add(-day), To: at.Add(day)}, clock.Zone)
	if err != nil {
		return &at
	}
	better := at
	for _, s := range spans {
		if !at.Before(s.From) && at.Before(s.To) {
			if better = s.From; later {
				better = s.To
			}
		}
	}
	if better.Equal(at) || !better.After(clock.Now) {
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

// Check reports everything that is wrong with the bake as it stands, all at once, without planning
// it. Errors: as [Bake.Plan].
func (b Bake) Check(clock KitchenClock) error { return quantity.DataPaths(b, b.faults(clock)) }

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
		problems.Join("Mixing", err)
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

// soonShaped is the rise in percent below which hardly anything happens before shaping. Judgment.
const soonShaped = 10

// notes are things to know about this day that no single number shows.
func (d *Day) notes() []working.Message {
	var out []working.Message
	add := func(m working.Message) { out = append(out, m) }
	if d.short != nil {
		add(d.short.note(d.Bake.Loaves))
	}
	out = append(out, d.notesAside()...)
	out = append(out, d.Water.Notes...)
	if l := d.Water.Liquids; len(l) == 1 {
		add(working.Tell("bakeday.note_no_water_one",
			"there is no water to pour: the temperature given is for %v",
			working.Tell("bakeday.named", "%v", l[0])))
	} else if len(l) > 1 {
		names := make([]any, len(l))
		for i, name := range l {
			names[i] = working.Tell("bakeday.named", "%v", name)
		}
		add(
			working.Tell(
				"bakeday.note_no_water",
				"there is no water to pour: the temperature given is for %v together",
				working.And(names...),
			),
		)
	}
	if l := d.Levain; l != nil && d.Bake.Levain.standing() {
		if past := d.Now.Sub(l.Fed.Add(l.Ripeness.Until.Likely)); past > 0 {
			add(
				working.Tell(
					"bakeday.note_levain_past",
					"the levain has been past its best for about %v: it raises the dough more slowly and makes it sour and slack; "+
						"feed it again, or go by the dough",
					past.Round(time.Minute),
				),
			)
		}
	} else if d.Levain != nil && !d.Levain.Short.IsZero() {
		add(working.Tell("bakeday.note_starter_short",
			"the levain needs %.0f of culture and %.0f is at hand: feed the culture up the day "+
				"before", d.Levain.Culture, d.Bake.Levain.CultureAtHand))
	}
	for _, w := range d.Weighing.TooSmall() {
		add(
			working.Tell(
				"bakeday.note_too_small",
				"%.2f of %v is too little for the scale: weigh it as part of a solution",
				w.Exact,
				w.Name,
			),
		)
	}
	if l, u := d.Baking.Loss, d.Baking.Usual.Loss; l.Compare(u.Low) < 0 || l.Compare(u.High) > 0 {
		add(
			working.Tell(
				"bakeday.note_loss",
				"a bake loss of %v is outside the usual %v to %v for this bread",
				l,
				u.Low,
				u.High,
			),
		)
	}
	if r := d.Rising; r.HasProof && r.InOven.Likely.Points() > d.Bake.Bulk.Rise.Points()*1.05 {
		add(
			working.Tell(
				"bakeday.note_quick",
				"the dough is quicker than the hands: even with the shortest proof it will have risen about %.0f in the oven, "+
					"not %.0f; cool it, or take less yeast or levain",
				r.InOven.Likely,
				d.Bake.Bulk.Rise,
			),
		)
	}
	out = append(out, d.chilling()...)
	if r := d.Rising; !r.HasProof && r.Feasible && d.Bake.Bulk.ShapeAt.IsZero() && r.ShapeAt.Points() < soonShaped {
		add(working.Tell("bakeday.note_shaped_soon", "it is shaped when it has risen by only %.0f, because the rest after "+
			"shaping brings the rest of the %.0f: for more time before it, less levain, a cooler dough or a shorter rest",
			r.ShapeAt, d.Bake.Bulk.Rise))
	}
	out = append(out, d.Rising.Bulk.Notes()...)
	if s, ok := d.Timetable.Step(idBulk); ok && s.Watch != nil && !d.Careful {
		if asleep := d.absentDuring(*s.Watch); !asleep.IsZero() {
			add(
				working.Tell(
					"bakeday.note_ready_while_away",
					"the bulk may be ready in this time: %v; no plan around that was found: look before, and put the dough in the "+
						"cold if it is nearly there",
					asleep,
				),
			)
		}
	}
	if d.Possible() && !d.Robust.Survives && !d.Careful {
		for _, sp := range d.Robust.Spreads {
			if sp.Early == sp.Late {
				add(working.Tell("bakeday.note_holds_at", "the rest of the plan holds if %v takes %v, neither more nor less; "+
					"otherwise plan the rest of the day again", sp.Title(), sp.Early))
				continue
			}
			add(working.Tell("bakeday.note_holds_if",
				"the rest of the plan holds if %v takes %v to %v; outside of that, plan the rest of the day again",
				sp.Title(), sp.Early, sp.Late))
		}
	}
	if f, err := d.Bake.folding(d.Rising.Bulk.Ready()); err == nil && d.Possible() {
		out = append(out, d.Bake.foldNotes(f)...)
	}
	if off := d.foldsMoved(); off > 0 && d.Possible() {
		add(
			working.Tell(
				"bakeday.note_folds_moved",
				"the folds are up to %v off their interval of %v: other rules leave them no better time",
				off,
				d.Bake.Bulk.FoldEvery,
			),
		)
	}
	if cool, ok := d.Timetable.Step(idCool); ok && d.Possible() && !d.Bake.Loaves.Warm {
		ready := cool.Start.Add(d.times().cool)
		if waits := d.Wanted.Sub(ready); waits > freshEnough {
			add(working.Tell("bakeday.note_waits",
				"the bread is cool at %v and waits %v until it is wanted: a later bake does not fit with when somebody is there",
				ready.In(d.Zone), quantity.Elapsed(waits.Truncate(time.Minute))))
		}
	}
	if d.Possible() && !d.Settled {
		add(
			working.Tell(
				"bakeday.note_not_settled",
				"the room's warmth and the hours of this plan did not settle: the dough was reckoned for hours up to %v off "+
					"these; weights and steps hold, and the ranges of the dough are that much wider",
				d.unsettled,
			),
		)
	}
	if d.TimeRanOut {
		add(working.Tell("bakeday.note_time_ran_out", "the time for planning ran out: there may be a better plan"))
	}
	return out
}

// freshEnough is how long bread may wait, cool, before a word is lost on it. Judgment: half the time that it may at
// most.
const freshEnough = 6 * time.Hour

// absentDuring says in the baker's words which absence lies in a span, if any.
func (d *Day) absentDuring(watch schedule.Span) working.Message {
	spans, err := d.Bake.Kitchen.closed(wallclock.Occurrence{From: watch.From, To: watch.To}, d.Zone)
	if err != nil || len(spans) == 0 {
		return working.Message{}
	}
	return spans[0].Words
}
