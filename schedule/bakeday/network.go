package bakeday

import (
	"fmt"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
)

// The names of the steps, as they stand in timetables, calendars and conflicts.
const (
	stepFeed   = "feed the levain"
	stepRipen  = "levain ripens"
	stepMix    = "mix the dough"
	stepBulk   = "bulk fermentation"
	stepShape  = "divide and shape"
	stepRetard = "cold retard"
	stepOut    = "take out of the cold"
	stepWarm   = "warm up"
	stepProof  = "final proof"
	stepHeat   = "heat the oven"
	stepBake   = "bake"
	stepCool   = "cool"

	baker = "the baker"
	pair  = "the baker's hands"
)

// times are the durations that the other rooms computed for one bake.
type times struct {
	ripe, past time.Duration // after feeding: at its peak, good until
	bulk       quantity.TimeRange
	proof      quantity.TimeRange // in the room; zero with a retard
	cool       time.Duration
	mixes      int
	rounds     int
}

// grid rounds a duration up to the minute, which is the grid of the timetable.
func grid(d time.Duration) time.Duration {
	return (d + time.Minute - 1).Truncate(time.Minute)
}

func numbered(name string, i, of int) string {
	if of == 1 {
		return name
	}
	return fmt.Sprintf("%s, %d of %d", name, i+1, of)
}

func hm(d time.Duration) string { return quantity.FormatDuration(d) }

// The steps of a dough that is early or late. They stand in the network only to keep room for
// it: whatever the dough does within its range, there is a time for it that is not slept through.
const (
	ifEarly = "if the dough is early: "
	ifLate  = "if the dough is late: "
)

// imagined reports whether a step only keeps room for a dough that is early or late.
func imagined(name string) bool {
	return strings.HasPrefix(name, ifEarly) || strings.HasPrefix(name, ifLate)
}

// network lays the bake out as steps and rules, in the baker's words. Careful keeps room for a dough
// that is early or late.
func (b *Bake) network(now, wanted time.Time, zone *time.Location, t times, careful bool) (schedule.Problem, error) {
	anchor := now.In(zone).Truncate(time.Minute)
	if anchor.Before(now) {
		anchor = anchor.Add(time.Minute)
	}
	horizon := wanted.Sub(anchor) + 48*time.Hour // room to find the next time that works
	p := schedule.Problem{Anchor: anchor, Horizon: horizon}
	closed, err := b.closed(wallclock.Span{From: anchor.Add(-24 * time.Hour), To: anchor.Add(horizon)}, zone)
	if err != nil {
		return p, err
	}
	p.Resources = []schedule.Resource{{Name: baker, Closed: closed}}
	hands := []schedule.Need{{Resource: baker, Amount: 1}}
	work := hands
	if len(b.beforehand()) > 0 {
		// What is made beforehand is the only work that could fall together with other work: two hands do one
		// thing at a time. Heating the oven and minding the bake leave them free.
		p.Resources = append(p.Resources, schedule.Resource{Name: pair, Capacity: 1, Words: "one pair of hands"})
		work = append(work[:1:1], schedule.Need{Resource: pair, Amount: 1})
	}
	add := func(s schedule.Step) string {
		p.Steps = append(p.Steps, s)
		return s.Name
	}
	atOnce := func(from, to string) { p.Links = append(p.Links, schedule.Link{From: from, To: to}) }

	previous := ""
	if b.Levain != nil {
		feed := add(schedule.Step{Name: stepFeed, Min: grid(b.Levain.Takes.Duration()), Needs: work})
		previous = add(schedule.Step{
			Name: stepRipen, Min: grid(t.ripe), Max: grid(t.past),
			MinWords: "the levain takes about " + hm(grid(t.ripe)) + " to its peak", MaxWords: "the levain is past its best after " + hm(grid(t.past)),
		})
		atOnce(feed, previous)
	}
	var standing []string
	for _, s := range b.beforehand() {
		make := add(schedule.Step{Name: s.makes(), Min: grid(s.takes), Needs: work})
		wait := add(schedule.Step{
			Name: s.waits(), Min: grid(s.least), Max: grid(s.most),
			MinWords: "the " + s.waits() + " at least " + hm(s.least), MaxWords: "the " + s.waits() + " at most " + hm(s.most),
		})
		atOnce(make, wait)
		standing = append(standing, wait)
	}
	for i := range t.mixes {
		mix := add(schedule.Step{Name: numbered(stepMix, i, t.mixes), Min: grid(b.Mixing.Takes.Duration()), Needs: work})
		if previous != "" {
			atOnce(previous, mix)
		}
		if i == 0 {
			for _, wait := range standing {
				atOnce(wait, mix)
			}
		}
		previous = mix
	}
	bulk := add(schedule.Step{
		Name: stepBulk, Min: grid(t.bulk.Early), Max: grid(t.bulk.Late), Living: true, Likely: grid(t.bulk.Likely), Watch: baker,
		MinWords: "bulk at least " + hm(grid(t.bulk.Early)), MaxWords: "bulk at most " + hm(grid(t.bulk.Late)),
	})
	atOnce(previous, bulk)
	for i := range b.Bulk.Folds {
		fold := add(schedule.Step{Name: numbered("fold", i, b.Bulk.Folds), Min: grid(b.Bulk.FoldTakes.Duration()), Needs: work})
		at := time.Duration(i+1) * b.Bulk.FoldEvery.Duration()
		p.Links = append(p.Links, schedule.Link{
			From: bulk, To: fold, Kind: schedule.StartToStart, Min: at - foldSlack(at), Max: at + foldSlack(at),
			MinWords: fmt.Sprintf("fold %d about %s into the bulk", i+1, hm(at)), MaxWords: fmt.Sprintf("fold %d about %s into the bulk", i+1, hm(at)),
		})
	}
	shape := add(schedule.Step{Name: stepShape, Min: grid(b.Shaping.Takes.Duration()), Needs: work})
	atOnce(bulk, shape)
	var rest string
	if r := b.Retard; r != nil {
		rest = add(schedule.Step{
			Name: stepRetard, Min: grid(r.AtLeast.Duration()), Max: grid(r.AtMost.Duration()),
			MinWords: "retard at least " + hm(r.AtLeast.Duration()), MaxWords: "retard at most " + hm(r.AtMost.Duration()),
		})
		atOnce(shape, rest)
		if r.WarmUp > 0 {
			out := add(schedule.Step{Name: stepOut, Min: grid(takingOut), Needs: hands})
			atOnce(rest, out)
			rest = out
			warm := add(schedule.Step{Name: stepWarm, Min: r.warming() - takingOut, Max: r.warming() - takingOut})
			atOnce(rest, warm)
			rest = warm
		}
	} else {
		rest = add(schedule.Step{
			Name: stepProof, Min: grid(t.proof.Early), Max: grid(t.proof.Late), Living: true, Likely: grid(t.proof.Likely), Watch: baker,
			MinWords: "final proof at least " + hm(grid(t.proof.Early)), MaxWords: "final proof at most " + hm(grid(t.proof.Late)),
		})
		atOnce(shape, rest)
	}
	firstBake := numbered(stepBake, 0, t.rounds)
	if careful {
		b.keepRoom(&p, t, firstBake)
	}
	heat := add(schedule.Step{Name: stepHeat, Min: grid(b.Oven.Preheat.Duration()), Needs: hands})
	each := grid(b.Oven.Covered.Duration() + b.Oven.Uncovered.Duration())
	previous = ""
	for i := range t.rounds {
		bake := add(schedule.Step{Name: numbered(stepBake, i, t.rounds), Min: each, Needs: hands})
		if i == 0 {
			atOnce(rest, bake)
			atOnce(heat, bake)
		} else {
			gap := grid(b.Oven.Reheat.Duration())
			most := gap + 5*time.Minute // proofed loaves do not wait
			if b.Retard != nil && b.Retard.WarmUp == 0 {
				most = gap + 15*time.Minute // cold ones may
			}
			p.Links = append(p.Links, schedule.Link{From: previous, To: bake, Min: gap, Max: most,
				MinWords: "the oven and pots reheat for " + hm(gap), MaxWords: "the next round follows within " + hm(most)})
		}
		previous = bake
	}
	cool := add(schedule.Step{
		Name: stepCool, Min: grid(t.cool), Max: grid(t.cool) + grid(b.Loaves.FreshWithin.Duration()),
		MinWords: "the last loaf cools for " + hm(grid(t.cool)), MaxWords: b.freshWords(),
	})
	atOnce(previous, cool)
	p.Bounds = []schedule.Bound{{
		Step: stepCool, Edge: schedule.End, Earliest: wanted, Latest: wanted, Wanted: true,
		Words: "wanted " + wallclock.MomentOf(wanted, zone).String(),
	}}
	return p, nil
}

// keepRoom adds the steps of a dough that is early or late: shaped then, it must still be able to
// rest as long as the rules ask before the first loaves go into the oven.
func (b *Bake) keepRoom(p *schedule.Problem, t times, firstBake string) {
	hands := []schedule.Need{{Resource: baker, Amount: 1}}
	for _, c := range []struct {
		prefix string
		bulk   time.Duration
	}{{ifEarly, t.bulk.Early}, {ifLate, t.bulk.Late}} {
		shape := c.prefix + stepShape
		p.Steps = append(p.Steps, schedule.Step{Name: shape, Min: grid(b.Shaping.Takes.Duration()), Needs: hands})
		p.Links = append(p.Links, schedule.Link{From: stepBulk, To: shape, Kind: schedule.StartToStart, Min: grid(c.bulk), Max: grid(c.bulk)})
		if r := b.Retard; r != nil {
			p.Links = append(p.Links, schedule.Link{From: shape, To: firstBake, Min: grid(r.AtLeast.Duration()) + r.warming(), Max: grid(r.AtMost.Duration()) + r.warming()})
		}
	}
}

// foldSlack is how far a fold may be moved: a quarter of the time since mixing.
func foldSlack(at time.Duration) time.Duration { return (at / 4).Truncate(time.Minute) }

// closed lists when the baker's hands are not there.
func (b *Bake) closed(within wallclock.Span, zone *time.Location) ([]schedule.Span, error) {
	var habits []wallclock.Habit
	add := func(name string, list []wallclock.Habit) {
		for _, h := range list {
			if h.Name == "" {
				h.Name = name
			}
			habits = append(habits, h)
		}
	}
	add("asleep", b.Asleep)
	add("away", b.Away)
	spans, err := wallclock.Expand(habits, within, zone)
	if err != nil {
		return nil, err
	}
	var out []schedule.Span
	for _, s := range wallclock.Clip(spans, within) {
		out = append(out, schedule.Span{From: s.From.In(zone), To: s.To.In(zone), Words: s.Words})
	}
	return out, nil
}

func (b *Bake) freshWords() string {
	within := hm(b.Loaves.FreshWithin.Duration())
	if b.Loaves.Warm {
		return "the bread is warm, within " + within + " of the oven"
	}
	return "the bread is fresh, within " + within + " of being cool"
}

// takingOut is how long hands are busy when the loaves leave the refrigerator; the warm-up begins with it.
const takingOut = 5 * time.Minute

// warming is the time from the refrigerator to the oven.
func (r *Retard) warming() time.Duration {
	if r.WarmUp <= 0 {
		return 0
	}
	return max(grid(r.WarmUp.Duration()), takingOut+time.Minute)
}
