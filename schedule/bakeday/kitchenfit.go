package bakeday

import (
	"context"
	"fmt"
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// FittedDay is what [Order.Fit] and [Bake.Fit] found.
type FittedDay struct {
	Day       KitchenDay `json:"-"` // that fits best
	AsWritten Choice     `json:"as_written"`
	// Best is AsWritten when nothing fits better; each change says of which bread it is.
	Best   Choice   `json:"best"`
	Others []Choice `json:"others,omitempty"` // of one bread: the next best, each different in some lever
	Tried  int      `json:"tried"`
	// TimeRanOut says that the context ended before all settings were tried.
	TimeRanOut bool `json:"time_ran_out,omitempty"`
}

// Fit answers: which amounts and temperatures of which breads, within the baker's bounds, make the day that fits best?
//
// It moves the levers of one bread after the other, the settings nearest to what is written first, and keeps what
// counts less against the day; then it goes round once more, because what helps one bread may free another. Against a
// day counts what does against the plan of a bake ([Bake.Fit]): no timetable, the share of the doughs' ranges that it
// does not survive, hands needed early or late for all breads, and how far all of them are from what is written. So
// the answer is a good one and not always the best. Where no bread names levers the usual ones of each are tried.
// Breads that share a levain are fed with one: a lever of its feed moves for all. Of one bread all settings are tried
// together, as [Bake.Fit] does.
//
// Errors: as [Order.Plan]; a context that ends stops the search with the best so far, and TimeRanOut is set.
func (o Order) Fit(ctx context.Context, clock KitchenClock, progress func(tried, left int)) (FittedDay, error) {
	if len(o.Bakes) == 1 {
		return o.fitOne(ctx, clock, progress)
	}
	day, err := o.Plan(ctx, clock)
	if err != nil {
		return FittedDay{}, err
	}
	f, err := newFitting(o, day, clock)
	if err != nil {
		return FittedDay{}, atFields(o, err)
	}
	f.progress = progress
	for range 2 {
		before := f.best.Points
		for i := range f.now {
			if f.best.Points == 0 || f.out.TimeRanOut {
				break
			}
			f.move(ctx, i)
		}
		if f.best.Points == before {
			break
		}
	}
	f.out.Best = f.best
	return f.out, nil
}

// fitOne looks for the best setting of the only bread.
func (o Order) fitOne(ctx context.Context, clock KitchenClock, progress func(tried, left int)) (FittedDay, error) {
	whole, err := o.whole()
	if err != nil {
		return FittedDay{}, atFields(o, err)
	}
	f, err := whole.Bakes[0].Fit(ctx, clock, progress)
	return f, atFields(o, quantity.At("Bakes[0]", err))
}

// fitting is a search for the levers of a day.
type fitting struct {
	written, now []Bake // in percent: as written, and with the best setting so far
	order        Order
	clock        KitchenClock
	best         Choice
	out          FittedDay
	progress     func(tried, left int)
}

func newFitting(o Order, day KitchenDay, clock KitchenClock) (*fitting, error) {
	whole, err := o.whole()
	if err != nil {
		return nil, err
	}
	f := &fitting{order: whole, clock: clock, out: FittedDay{Day: day, Tried: 1, TimeRanOut: day.TimeRanOut}}
	for i, b := range whole.Bakes {
		if b, err = b.inPercent(); err != nil {
			return nil, quantity.At(fmt.Sprintf("Bakes[%d]", i), err)
		}
		f.written = append(f.written, b)
	}
	named := slices.ContainsFunc(f.written, func(b Bake) bool { return !b.Levers.IsZero() })
	for i := range f.written {
		if !named {
			f.written[i].Levers = f.written[i].usualLevers()
		}
	}
	f.now = slices.Clone(f.written)
	f.out.AsWritten = f.weigh(day, f.now)
	f.best = f.out.AsWritten
	return f, nil
}

// move tries the settings of one bread beside the best of the others.
func (f *fitting) move(ctx context.Context, i int) {
	settings := f.written[i].byDistance(f.written[i].settings())
	others := 0.0
	for j, b := range f.now {
		if j != i {
			others += f.written[j].distance(b)
		}
	}
	for k, set := range settings {
		if others+set.distance >= f.best.Points {
			return
		}
		bakes := slices.Clone(f.now)
		bakes[i] = set.bake
		f.feedAlike(bakes, i)
		order := f.order
		order.Bakes = make([]Bake, len(bakes))
		fits := true
		for j, b := range bakes {
			order.Bakes[j] = b.withDefaults()
			fits = fits && order.Bakes[j].check() == nil
		}
		if !fits {
			continue // a bound asks for more of a flour in the levain than the formula has
		}
		if f.progress != nil {
			f.progress(f.out.Tried, len(settings)-k)
		}
		day, err := order.planFor(ctx, f.out.Day.wanted(), f.clock)
		if ended(err) {
			f.out.TimeRanOut = true
			return
		}
		if err != nil {
			continue // outside what a model may be used at
		}
		f.out.Tried++
		if c := f.weigh(day, bakes); c.Points < f.best.Points {
			f.best, f.now, f.out.Day = c, bakes, day
		}
	}
}

// feedAlike gives the breads that share the levain of one the same feed.
func (f *fitting) feedAlike(bakes []Bake, i int) {
	for j := range bakes {
		if j == i || f.order.feeds(j) != f.order.feeds(i) || bakes[j].Levain == nil || bakes[i].Levain == nil {
			continue
		}
		l := *bakes[j].Levain
		l.Inoculation = bakes[i].Levain.Inoculation
		bakes[j].Levain = &l
	}
}

// wanted are the wanted times of the breads.
func (k KitchenDay) wanted() []time.Time {
	var out []time.Time
	for _, d := range k.Breads {
		out = append(out, d.Wanted)
	}
	return out
}

// weigh counts what speaks against a day.
func (f *fitting) weigh(k KitchenDay, bakes []Bake) Choice {
	var all Choice
	for i, d := range k.Breads {
		c := f.written[i].choice(d, bakes[i])
		all.Points += c.Points
		for _, m := range c.Changes {
			m.Words = d.bread(m.Words)
			all.Changes = append(all.Changes, m)
		}
		for _, a := range c.Against {
			a.Words = d.bread(a.Words)
			all.Against = append(all.Against, a)
		}
	}
	slices.SortStableFunc(all.Against, func(a, b Against) int { return int(b.Points - a.Points) })
	return all
}

// bread is a sentence about this bread of several.
func (d Day) bread(words working.Message) working.Message {
	return working.Tell("bakeday.of_bread", "%v: %v", working.Tell("bakeday.named", "%v", d.Bake.Name), words)
}

// Report tells which settings of the levers fit best, and the day that they make.
func (f FittedDay) Report() report.Report {
	if !f.Day.worked {
		return report.Report{Headline: working.Tell("bakeday.no_plan", "no plan was made")}
	}
	return fittedPage(f.Day.Report(), f.Tried, f.AsWritten, f.Best, f.Others)
}

// Workings are those of the day that fits best.
func (f FittedDay) Workings() []working.Working { return f.Day.Workings() }
