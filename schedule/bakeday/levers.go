package bakeday

import (
	"context"
	"fmt"
	"math"
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// Levers are the bounds within which [Bake.Fit] may change a bake. A pair has its low and its high
// end; an empty one is left alone.
type Levers struct {
	Prefermented []quantity.Percent     `json:"prefermented,omitzero"` // flour in the levain, of all flour
	Inoculation  []quantity.Percent     `json:"inoculation,omitzero"`  // culture, of the new flour of the levain
	Temperature  []quantity.Temperature `json:"temperature,omitzero"`  // of the dough when mixed
	Box          []quantity.Temperature `json:"box,omitzero"`          // of a proofing box
	Retard       []quantity.Elapsed     `json:"retard,omitzero"`       // how long the retard may be, from the shortest to the longest
}

// IsZero reports whether no lever may be moved.
func (l Levers) IsZero() bool {
	return len(l.Prefermented)+len(l.Inoculation)+len(l.Temperature)+len(l.Box)+len(l.Retard) == 0
}

func (l Levers) check(p *quantity.Problems) {
	pair := func(path string, n int) bool {
		if n != 0 && n != 2 {
			p.Add(path, fmt.Sprintf("%d values", n), "two: the low and the high end", quantity.ErrOutOfRange)
		}
		return n == 2
	}
	percent, celsius := quantity.NewPercent, quantity.Celsius
	if v := l.Prefermented; pair("Levers.Prefermented", len(v)) {
		quantity.Check(p, "Levers.Prefermented[0]", v[0], percent(1), percent(80))
		quantity.Check(p, "Levers.Prefermented[1]", v[1], v[0], percent(80))
	}
	if v := l.Inoculation; pair("Levers.Inoculation", len(v)) {
		quantity.Check(p, "Levers.Inoculation[0]", v[0], percent(1), percent(500))
		quantity.Check(p, "Levers.Inoculation[1]", v[1], v[0], percent(500))
	}
	if v := l.Temperature; pair("Levers.Temperature", len(v)) {
		quantity.Check(p, "Levers.Temperature[0]", v[0], celsius(10), celsius(40))
		quantity.Check(p, "Levers.Temperature[1]", v[1], v[0], celsius(40))
	}
	if v := l.Box; pair("Levers.Box", len(v)) {
		quantity.Check(p, "Levers.Box[0]", v[0], celsius(10), celsius(38))
		quantity.Check(p, "Levers.Box[1]", v[1], v[0], celsius(38))
	}
	if v := l.Retard; pair("Levers.Retard", len(v)) {
		p.Duration("Levers.Retard[0]", v[0].Duration(), 30*time.Minute, 96*time.Hour)
		p.Duration("Levers.Retard[1]", v[1].Duration(), v[0].Duration(), 96*time.Hour)
	}
}

// Choice is one setting of the levers with the day it makes.
type Choice struct {
	Day     Day
	Changes []working.Message // against the bake as written: "prefermented flour 16 % instead of 12 %"
	Points  float64           // what speaks against it; the lowest fits best
	Against []string          // in words, the largest first
}

// Fitted is what [Bake.Fit] found.
type Fitted struct {
	AsWritten Choice
	Best      Choice   // AsWritten when nothing fits better
	Others    []Choice // the next best, each different from the better ones in some lever
	Tried     int
	// TimeRanOut says that the context ended before all settings were tried.
	TimeRanOut bool
}

// Fit answers: which amounts and temperatures, within the baker's bounds, make the plan that fits
// best?
//
// It plans the bake at the ends and at points between them for every lever, and counts what speaks against
// each plan: no timetable at all (1000 points); parts of the dough's range that the plan does not survive (up to 200); hands needed before
// 7:00 or after 21:00 (1 a minute); and how far it is from the bake as written (up to 20 a lever), so that of two plans
// that fit alike the smaller change wins. The points are a judgment and are shown in words. Levers not given are left alone. Errors: as
// [Bake.Plan]; a context that ends stops the search with the best so far, and TimeRanOut is set.
func (b Bake) Fit(ctx context.Context, clock Clock) (Fitted, error) {
	written, err := b.Plan(ctx, clock)
	if err != nil {
		return Fitted{}, err
	}
	f := Fitted{AsWritten: b.choice(written, b), Tried: 1, TimeRanOut: written.TimeRanOut}
	f.Best = f.AsWritten
	all := []Choice{f.AsWritten}
	for _, set := range b.settings() {
		full := set.withDefaults()
		if full.check() != nil {
			continue // a bound asks for more of a flour in the levain than the formula has
		}
		day, err := full.planFor(ctx, written.Wanted, clock)
		if ended(err) {
			f.TimeRanOut = true
			break
		}
		if err != nil {
			continue // outside what a model may be used at
		}
		f.Tried++
		all = append(all, b.choice(day, set))
	}
	slices.SortStableFunc(all, func(a, b Choice) int {
		switch {
		case a.Points < b.Points:
			return -1
		case a.Points > b.Points:
			return 1
		}
		return len(a.Changes) - len(b.Changes)
	})
	f.Best = all[0]
	f.Others = all[1:min(len(all), 4)]
	return f, nil
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
			c.Levain.Prefermented = quantity.NewPercent(between(l.Prefermented[0].Points(), l.Prefermented[1].Points(), x, 0.5))
		})
	}
	if len(l.Inoculation) == 2 && b.Levain != nil {
		vary(4, func(c *Bake, x float64) {
			c.Levain.Inoculation = quantity.NewPercent(between(l.Inoculation[0].Points(), l.Inoculation[1].Points(), x, 1))
		})
	}
	if len(l.Temperature) == 2 {
		vary(4, func(c *Bake, x float64) {
			c.Mixing.Temperature = quantity.Celsius(between(l.Temperature[0].Celsius(), l.Temperature[1].Celsius(), x, 0.5))
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

// choice weighs a day against the bake as written.
func (b Bake) choice(d Day, changed Bake) Choice {
	c := Choice{Day: d}
	against := func(points float64, format string, args ...any) {
		if points > 0 {
			c.Points += points
			c.Against = append(c.Against, fmt.Sprintf(format, args...))
		}
	}
	if !d.Possible() {
		against(1000, "no timetable fits")
	} else {
		if !d.Careful && !d.Robust.Survives {
			words := fmt.Sprintf("the plan holds over only %.0f %% of the range in which the dough may be early or late", 100*d.Robust.Share)
			if d.Robust.Share < 0.01 {
				words = "the plan holds only if the dough keeps to its likely time"
			}
			against(200*(1-d.Robust.Share), "%s", words)
		}
		awkward := d.awkward()
		against(awkward.Minutes(), "%s of hands-on work before 7:00 or after 21:00", hm(awkward))
	}
	change := func(what string, now, was any, by float64) {
		if now != was {
			c.Changes = append(c.Changes, working.Say("%s %v instead of %v", what, now, was))
			c.Points += 20 * math.Min(1, math.Abs(by))
		}
	}
	l := b.Levers
	if changed.Levain != nil && b.Levain != nil {
		change("prefermented flour", changed.Levain.Prefermented, b.Levain.Prefermented, ratio(l.Prefermented, func(p quantity.Percent) float64 { return p.Points() }, changed.Levain.Prefermented.Points()-b.Levain.Prefermented.Points()))
		change("culture in the levain's feed", changed.Levain.Inoculation, b.Levain.Inoculation, ratio(l.Inoculation, func(p quantity.Percent) float64 { return p.Points() }, changed.Levain.Inoculation.Points()-b.Levain.Inoculation.Points()))
	}
	celsius := func(t quantity.Temperature) float64 { return t.Celsius() }
	change("dough at", changed.Mixing.Temperature, b.Mixing.Temperature, ratio(l.Temperature, celsius, changed.Mixing.Temperature.Sub(b.Mixing.Temperature).Celsius()))
	if changed.Bulk.Box != b.Bulk.Box {
		was, by := any("the room"), 1.0
		if !b.Bulk.Box.IsZero() {
			was, by = b.Bulk.Box, ratio(l.Box, celsius, changed.Bulk.Box.Sub(b.Bulk.Box).Celsius())
		}
		change("bulk at", changed.Bulk.Box, was, by)
	}
	if b.Retard != nil && changed.Retard != nil && *b.Retard != *changed.Retard {
		change("retard from", changed.Retard.AtLeast.String()+" to "+changed.Retard.AtMost.String(), b.Retard.AtLeast.String()+" to "+b.Retard.AtMost.String(), 0.5)
	}
	return c
}

// ratio is a change as a share of the lever's length.
func ratio[T any](bounds []T, value func(T) float64, by float64) float64 {
	if len(bounds) != 2 || by == 0 {
		return 0
	}
	length := value(bounds[1]) - value(bounds[0])
	if length == 0 {
		return 1
	}
	return by / length
}

// awkward is how long hands are needed before 7:00 or after 21:00.
func (d Day) awkward() time.Duration {
	var sum time.Duration
	for _, s := range d.Timetable.Steps {
		if s.Spare || !s.Kind.Hands() {
			continue
		}
		for t := s.Start; t.Before(s.End); t = t.Add(time.Minute) {
			if h := t.In(d.Zone).Hour(); h < 7 || h >= 21 {
				sum += time.Minute
			}
		}
	}
	return sum
}
