package bakeday

import (
	"slices"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/food"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
)

// chilling says by which times of this plan what was cooked, infused or wetted beforehand has to be cold: the clock of
// [food.ChilledFood] put to the hours at which it is made or goes in. Fillings and toppings are cooked before the plan
// begins, so their time is counted back from when they go in; soakers have a step of their own and are counted from
// its end.
func (d Day) chilling() []working.Message {
	if !d.Possible() {
		return nil
	}
	var out []working.Message
	for _, list := range d.Bake.lists() {
		for _, l := range list.lines {
			in, there := d.goesIn(l)
			if !there {
				continue
			}
			switch l.Kind {
			case dough.KindCookedFilling:
				out = append(out, cookedBefore(l.Name, in))
			case dough.KindInfusedOil:
				out = append(out, infusedBefore(l.Name, in))
			}
		}
	}
	out = append(out, d.milkInTheWarm()...)
	for i, s := range d.Bake.Soakers {
		cooling, cools := d.Timetable.Step(nth(idCoolDown, len(d.Bake.Preferments)+i))
		made, used, there := d.stands(i)
		if cools {
			out = append(out, working.Tell("bakeday.chill_kept",
				"%v: hot at %v; kept above %.0f until it is spread at %v, and down to %.0f at %v", s.Name, made, hotKept(),
				cooling.Start, coolEnough, cooling.End))
		} else if there {
			by := d.lastAwake(made, limits(food.WetGrain, made)[0].By)
			out = append(out, soaking(soaked{s, made, used, by, d.Bake.salted(s), d.goesInAt(s.Name)})...)
		}
	}
	return out
}

// limits are those of a kind of food, which there always are.
func limits(k food.ChilledKind, made time.Time) []food.ChillLimit {
	p, _ := food.ChilledFood{Kind: k, Made: made}.Limits()
	return p.Limits
}

// cookedBefore is by when a cooked filling leaves the heat, so that it goes in cold.
func cookedBefore(name string, in time.Time) working.Message {
	l := limits(food.Cooked, time.Time{})
	cool, cold, gone := l[0], l[1], l[2]
	return working.Tell("bakeday.chill_cooked",
		"%v: off the heat by %v, so that it goes in cold at %v, and not before %v; from the heat to %.0f within %v and to "+
			"%.0f within %v in all, or it is thrown away",
		name, in.Add(-cold.Within.Duration()), in, in.Add(-gone.Within.Duration()), cool.To, cool.Within, cold.To,
		cold.Within)
}

// infusedBefore is how old oil with garlic or herbs may be.
func infusedBefore(name string, in time.Time) working.Message {
	gone := limits(food.InfusedOil, time.Time{})[0]
	return working.Tell("bakeday.chill_oil", "%v: made not before %v, and kept at %.0f or colder until it goes in at %v",
		name, in.Add(-gone.Within.Duration()), quantity.Celsius(5), in)
}

// soaked is a soaker in a plan: when it is made and used, the last moment at which somebody can put it into the cold in
// time, whether salt would keep it instead, and how warm it goes into the dough.
type soaked struct {
	SoakerWork
	made, used, by time.Time
	salted         bool
	at             quantity.Temperature
}

// soaking is what a soaker has to reach by when, where it stands longer than that.
func soaking(s soaked) []working.Message {
	if s.Kind == dough.ColdSoaker {
		l := limits(food.WetGrain, s.made)[0]
		if !s.used.After(l.By) {
			return nil
		}
		says := working.Tell("bakeday.chill_soaker_wet", "%v: wet since %v; into the cold, at %.0f, by %v", s.Name, s.made,
			l.To, s.by)
		switch {
		case s.by.Equal(s.made):
			says = working.Tell("bakeday.chill_soaker_at_once",
				"%v: made at %v, and into the cold at once, at %.0f: nobody is there later in time", s.Name, s.made, l.To)
		case s.salted:
			says = working.Tell("bakeday.chill_soaker",
				"%v: wet since %v; into the cold, at %.0f, or salted, by %v", s.Name, s.made, l.To, s.by)
		}
		if s.at.Compare(l.To) > 0 {
			says = working.Tell("bakeday.chill_soaker_warmed", "%v; out of the cold, warm it to %.0f before you mix: the water "+
				"is reckoned with that, or tell the plan how warm it goes in", says, s.at)
		}
		return []working.Message{says}
	}
	l := limits(food.Cooked, s.made)
	cool, cold := l[0], l[1]
	switch {
	case !s.used.After(cool.By):
		return nil
	case !s.used.After(cold.By):
		return []working.Message{working.Tell("bakeday.chill_scald",
			"%v: hot at %v; kept above %.0f, or down to %.0f by %v", s.Name, s.made, hotKept(), cool.To, cool.By)}
	}
	return []working.Message{working.Tell("bakeday.chill_scald_long",
		"%v: hot at %v; kept above %.0f, or down to %.0f by %v and to %.0f by %v", s.Name, s.made, hotKept(), cool.To,
		cool.By, cold.To, cold.By)}
}

// milkInTheWarm says of which preferments milk stands in the warm for longer than usual rules allow.
func (d Day) milkInTheWarm() []working.Message {
	var out []working.Message
	for i, x := range d.Bake.Preferments {
		l, _ := d.Bake.liquidOf(x)
		wait, there := d.Timetable.Step(nth(schedule.Ripen.String(), i))
		long := wait.End.Sub(wait.Start)
		cold := !x.Temperature.IsZero() && x.Temperature.Compare(quantity.Celsius(5)) <= 0
		if !there || !l.spoils() || cold || long <= warmLimit {
			continue
		}
		out = append(out, working.Tell("bakeday.milk_in_the_warm",
			"%v: %v stands in it in the warm for %v, and usual rules allow perishable food %v: make it with water, more "+
				"yeast and less time, or in the cold; local food rules decide", x.Name, l.Name, quantity.Elapsed(long),
			quantity.Elapsed(warmLimit)))
	}
	return out
}

// salted reports whether a soaker can be kept by salt: one of grain or seeds, and not of fruit alone.
func (b *Bake) salted(s SoakerWork) bool {
	for _, part := range s.Parts {
		for _, list := range b.lists() {
			for _, l := range list.lines {
				if l.Name == part.Name && l.Kind != dough.KindFruit && list.field != "Liquids" {
					return true
				}
			}
		}
	}
	return false
}

// lastAwake is the last moment until a limit at which somebody is there to put something into the cold; the beginning
// where nobody is there from then on.
func (d Day) lastAwake(from, limit time.Time) time.Time {
	spans, err := d.Bake.Kitchen.closed(wallclock.Occurrence{From: from, To: limit.Add(time.Minute)}, d.Zone)
	if err != nil {
		return limit // the plan has been made with these absences
	}
	for _, s := range slices.Backward(spans) {
		if !limit.Before(s.From) && !limit.After(s.To) && s.From.Before(limit) {
			limit = s.From
		}
	}
	if limit.Before(from) {
		return from
	}
	return limit
}

// goesInAt is how warm a part made beforehand is taken to be when it goes into the dough; not given where nothing is
// known.
func (d Day) goesInAt(name string) quantity.Temperature {
	for _, f := range d.Water.Factors {
		if f.Name == name {
			return f.Temperature
		}
	}
	return quantity.Temperature{}
}

// hotKept is the temperature above which food is kept hot.
func hotKept() quantity.Temperature { return quantity.Celsius(60) }

// stands is when soaker i is made and when the dough that it goes into is mixed.
func (d Day) stands(i int) (made, used time.Time, ok bool) {
	step, there := d.Timetable.Step(nth(schedule.Stand.String(), len(d.Bake.Preferments)+i))
	mix, mixed := d.Timetable.Step(nth(idMix, 0))
	return step.Start, mix.Start, there && mixed
}

// goesIn is when a line goes into the dough or onto it.
func (d Day) goesIn(l Ingredient) (time.Time, bool) {
	at, fold := l.moment()
	id := nth(idMix, 0)
	switch at {
	case schedule.Fold:
		id = nth(idFold, fold-1)
	case schedule.Laminate:
		id = idLaminate
	case schedule.Shape:
		id = d.Bake.shaped()
	case schedule.Bake:
		id = nth(idBake, 0)
	}
	s, there := d.Timetable.Step(id)
	return s.Start, there
}
