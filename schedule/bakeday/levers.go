package bakeday

import (
	"cmp"
	"context"
	"math"
	"slices"

	"example.org/maslin/dough/quantity"
)

// Levers are the bounds within which [Bake.Fit] may change a bake. A pair has its low and its high
// end; an empty one is left alone.
type Levers struct {
	Prefermented []quantity.Percent     `json:"prefermented,omitzero"` // flour in the levain, of all flour
	Inoculation  []quantity.Percent     `json:"inoculation,omitzero"`  // culture, of the new flour of the levain
	Temperature  []quantity.Temperature `json:"temperature,omitzero"`  // of the dough when mixed
	Box          []quantity.Temperature `json:"box,omitzero"`          // of a proofing box
	// how long the retard may be, from the shortest to the longest
	Retard []quantity.Elapsed `json:"retard,omitzero"`
}

// IsZero reports whether no lever may be moved.
func (l Levers) IsZero() bool {
	return len(l.Prefermented)+len(l.Inoculation)+len(l.Temperature)+len(l.Box)+len(l.Retard) == 0
}

func (l Levers) check(p *quantity.Problems) {
	percent, celsius := quantity.NewPercent, quantity.Celsius
	checkEnds(p, "Levers.Prefermented", l.Prefermented, percent(1), percent(80))
	checkEnds(p, "Levers.Inoculation", l.Inoculation, percent(1), percent(500))
	checkEnds(p, "Levers.Temperature", l.Temperature, celsius(10), celsius(40))
	checkEnds(p, "Levers.Box", l.Box, celsius(10), celsius(38))
	if v := l.Retard; twoEnds(p, "Levers.Retard", len(v)) {
		least := shortestRetard
		if p.Duration("Levers.Retard[0]", v[0].Duration(), shortestRetard, longestRest) {
			least = v[0].Duration()
		}
		p.Duration("Levers.Retard[1]", v[1].Duration(), least, longestRest)
	}
}

// checkEnds reports a lever whose ends are no low and high end within what there may be.
func checkEnds[Q quantity.Ranged[Q]](p *quantity.Problems, path string, ends []Q, low, high Q) {
	if !twoEnds(p, path, len(ends)) {
		return
	}
	if quantity.Check(p, path+"[0]", ends[0], low, high) {
		low = ends[0]
	}
	quantity.Check(p, path+"[1]", ends[1], low, high)
}

// twoEnds reports whether a lever that is given has two ends.
func twoEnds(p *quantity.Problems, path string, n int) bool {
	if n != 0 && n != 2 {
		got := quantity.Tell("bakeday.got_values", "%d values", n)
		if n == 1 {
			got = quantity.Tell("bakeday.got_one_value", "one value")
		}
		p.Add(path, got,
			quantity.Tell("bakeday.want_two_low_and_high_end", "two: the low and the high end"), quantity.ErrOutOfRange)
	}
	return n == 2
}

// mostOthers is how many settings next to the best are told.
const mostOthers = 3

// Fit answers: which amounts and temperatures, within the baker's bounds, make the plan that fits
// best?
//
// It plans the bake at the ends and at points between them for every lever, and counts what speaks against each plan:
// no timetable at all (1000 points); parts of the dough's range that the plan does not survive (up to 200); hands
// needed before 7:00 or after 21:00 (1 a minute); and how far it is from the bake as written (up to 20 a lever), so
// that of two plans that fit alike the smaller change wins. The points are a judgment and are shown in words. Levers
// not given are left alone; where none is given, a levain of half to twice its size and a dough two degrees cooler or
// one warmer are tried.
//
// The settings nearest to the bake as written come first. A setting costs at least its distance, so that the rest is
// left out once that is no less than what the best and its nearest rivals cost, and at once when nothing speaks against
// the bake as written. Progress, when it is not nil, is told before each setting how many were planned and how many are
// left at most.
//
// Errors: as [Bake.Plan]; a context that ends stops the search with the best so far, and TimeRanOut is set.
func (b Bake) Fit(ctx context.Context, clock KitchenClock, progress func(tried, left int)) (FittedDay, error) {
	written, err := b.Plan(ctx, clock)
	if err != nil {
		return FittedDay{}, err
	}
	if b.Levers.IsZero() {
		b.Levers = b.usualLevers()
	}
	if b, err = b.inPercent(); err != nil {
		return FittedDay{}, err
	}
	f := FittedDay{AsWritten: b.choice(written, b), Tried: 1, TimeRanOut: written.TimeRanOut}
	best := []Choice{f.AsWritten} // the lowest points first
	settings := b.byDistance(b.settings())
	for k, set := range settings {
		if enough(best, set.distance) {
			break
		}
		full := set.bake.withDefaults()
		if full.check() != nil {
			continue // a bound asks for more of a flour in the levain than the formula has
		}
		if progress != nil {
			progress(f.Tried, len(settings)-k)
		}
		day, err := full.briefly(ctx, written.Wanted, clock)
		if ended(err) {
			f.TimeRanOut = true
			break
		}
		if err != nil {
			continue // outside what a model may be used at
		}
		f.Tried++
		best = ranked(append(best, b.choice(day, set.bake)))
	}
	f.Best, f.Others = best[0], best[1:]
	whole := Order{Kitchen: b.Kitchen}
	f.Day = whole.ofOne(f.Best.Day)
	return f, nil
}

// enough reports whether no setting so far from the bake as written can be among those that are told.
func enough(best []Choice, distance float64) bool {
	return best[0].Points == 0 || len(best) == 1+mostOthers && distance >= best[mostOthers].Points
}

// ranked are the best of the choices, in order: fewer points, then fewer changes.
func ranked(all []Choice) []Choice {
	slices.SortStableFunc(all, func(a, b Choice) int {
		return cmp.Or(cmp.Compare(a.Points, b.Points), cmp.Compare(len(a.Changes), len(b.Changes)))
	})
	return all[:min(len(all), 1+mostOthers)]
}

// setting is a bake with its levers moved, and the points of the distance alone.
type setting struct {
	bake     Bake
	distance float64
}

// byDistance puts the settings that differ from the bake in order of their distance.
func (b Bake) byDistance(all []Bake) (out []setting) {
	for _, s := range all {
		if d := b.distance(s); d > 0 {
			out = append(out, setting{s, d})
		}
	}
	slices.SortStableFunc(out, func(a, b setting) int { return cmp.Compare(a.distance, b.distance) })
	return out
}

// settings lists the bake with its levers at every combination of points.
func (b Bake) settings() []Bake {
	all := []Bake{b}
	vary := func(n int, set func(*Bake, float64)) {
		var next []Bake
		for _, one := range all {
			for i := range n {
				c := one
				if one.Levain != nil {
					l := *one.Levain
					c.Levain = &l
				}
				if one.Retard != nil {
					r := *one.Retard
					c.Retard = &r
				}
				set(&c, float64(i)/float64(n-1))
				next = append(next, c)
			}
		}
		all = next
	}
	between := func(low, high, x, step float64) float64 { return math.Round((low+(high-low)*x)/step) * step }
	l := b.Levers
	if len(l.Prefermented) == 2 && b.Levain != nil {
		vary(5, func(c *Bake, x float64) {
			c.Levain.Prefermented = quantity.NewPercent(
				between(l.Prefermented[0].Points(), l.Prefermented[1].Points(), x, 0.5))
		})
	}
	if len(l.Inoculation) == 2 && b.Levain != nil {
		vary(4, func(c *Bake, x float64) {
			c.Levain.Inoculation = quantity.NewPercent(
				between(l.Inoculation[0].Points(), l.Inoculation[1].Points(), x, 1))
		})
	}
	if len(l.Temperature) == 2 {
		vary(4, func(c *Bake, x float64) {
			c.Mixing.Temperature = quantity.Celsius(
				between(l.Temperature[0].Celsius(), l.Temperature[1].Celsius(), x, 0.5))
		})
	}
	if len(l.Box) == 2 {
		vary(4, func(c *Bake, x float64) {
			c.Bulk.Box = quantity.Celsius(between(l.Box[0].Celsius(), l.Box[1].Celsius(), x, 0.5))
		})
	}
	if len(l.Retard) == 2 && b.Retard != nil {
		vary(2, func(c *Bake, x float64) {
			if x > 0 {
				c.Retard.AtLeast, c.Retard.AtMost = l.Retard[0], l.Retard[1]
			}
		})
	}
	return all
}

// usualLevers are tried when the bake names none: a levain of half to twice its size, a dough two
// degrees cooler or one warmer.
func (b Bake) usualLevers() Levers {
	l := Levers{Temperature: []quantity.Temperature{
		b.Mixing.Temperature.Add(quantity.DeltaCelsius(-2)), b.Mixing.Temperature.Add(quantity.DeltaCelsius(1)),
	}}
	if b.Levain == nil {
		return l
	}
	share := b.Levain.Prefermented
	if batch, err := b.Batch(nil); err == nil && share.IsZero() && len(b.Preferments) == 0 {
		share = batch.Prefermented() // the levain is given by weight
	}
	if p := share.Points(); p > 0 {
		l.Prefermented = []quantity.Percent{quantity.NewPercent(p / 2), quantity.NewPercent(min(2*p, 50))}
	}
	return l
}
