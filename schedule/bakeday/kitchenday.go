package bakeday

import (
	"encoding/json"
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// KitchenDay is a day of several breads in one kitchen worked out: each bread with its own numbers, and one timetable.
type KitchenDay struct {
	answer

	Kitchen Kitchen
	Zone    *time.Location
	Now     time.Time // the clock of the plan

	Breads []Day // in the order of the bakes; each has its own part of the timetable

	// Timetable is that of all breads; the IDs of its steps begin with the name of the bread and a stroke: "Rye/mix-1".
	Timetable schedule.Timetable
	// Earlier and Later are how far all wanted times would have to move, the least that works; nil when none was found.
	Earlier, Later *quantity.Elapsed
	// Missed are the earlier wishes by weekday that can no longer be met; nil when there are none.
	Missed *MissedDay
	// Wants are what two breads want at once, when they cannot both have it: the worst of each shared thing.
	Wants []BothWant

	Careful    bool                // as that of a Day, for all breads
	Room       quantity.Percent    // as that of a Day, for all breads
	Robust     schedule.Robustness // what the timetable survives when doughs are early or late
	Settled    bool
	TimeRanOut bool
	Notes      []working.Message // about the day as a whole

	levains []WeighList
	alone   []Day      // breads that could not be there by themselves either
	moves   []RuleData // breads that would be moved alone
	tried   tried      // of the ways out of the conflict
	problem schedule.Problem
	worked  bool
}

// MissedDay are wishes that could not be met, one for each bread, and why.
type MissedDay struct {
	Wanted  []time.Time       `json:"wanted"`
	Why     *WhyData          `json:"why_not,omitempty"`
	Earlier *quantity.Elapsed `json:"earlier_by,omitempty"` // as those of a day that does not fit
	Later   *quantity.Elapsed `json:"later_by,omitempty"`
}

// BothWant is a thing that two breads want at once.
type BothWant struct {
	Thing string           `json:"thing"` // the ID of what is shared: "oven"
	Name  working.Message  `json:"name"`
	First string           `json:"first"` // the bread
	Then  string           `json:"then"`  // the bread
	At    time.Time        `json:"at"`
	By    quantity.Elapsed `json:"by"` // how long both want it, with what the change from one to the other takes
}

// Message says it in one sentence.
func (w BothWant) Message() working.Message {
	return working.Tell("bakeday.both_want", "%v and %v both want %v at %v: %v",
		working.Tell("bakeday.named", "%v", w.First), working.Tell("bakeday.named", "%v", w.Then), w.Name, w.At, w.By)
}

// String is the message in English.
func (w BothWant) String() string { return w.Message().String() }

// Possible reports whether there is a timetable.
func (k KitchenDay) Possible() bool {
	for _, d := range k.Breads {
		if !d.Possible() {
			return false
		}
	}
	return k.worked && len(k.Breads) > 0
}

// MarshalJSON implements json.Marshaler: the day as plain data, see [KitchenDay.Data].
func (k KitchenDay) MarshalJSON() ([]byte, error) { return json.Marshal(k.Data()) }

// Cautions lists what can go wrong or hurt on the way, each once; the allergens say whose they are where the breads
// differ.
func (k KitchenDay) Cautions() []working.Caution {
	out := k.allergens()
	seen := map[string]bool{}
	for _, d := range k.Breads {
		for _, c := range d.Cautions() {
			if c.Subject == allergenSubject {
				continue
			}
			if key := c.Text.String(); !seen[key] && (c.Subject != rawDough || !seen[string(rawDough)]) {
				seen[key] = true
				seen[string(c.Subject)] = true
				out = append(out, c)
			}
		}
	}
	return out
}

// allergenSubject is the subject of the caution that says what the ingredients carry.
const allergenSubject working.Subject = "allergens"

// allergens are what the breads carry, those alike together.
func (k KitchenDay) allergens() []working.Caution {
	var out []working.Caution
	var whose [][]any
	for _, d := range k.Breads {
		for _, c := range d.Cautions() {
			if c.Subject != allergenSubject {
				continue
			}
			at := slices.IndexFunc(out, func(o working.Caution) bool { return o.Text == c.Text })
			if at < 0 {
				at = len(out)
				out, whose = append(out, c), append(whose, nil)
			}
			whose[at] = append(whose[at], working.Tell("bakeday.named", "%v", d.Bake.Name))
		}
	}
	if len(out) < 2 {
		return out
	}
	for i := range out {
		out[i].Text = working.Tell("bakeday.allergens_of", "in %v: %v", working.And(whose[i]...), out[i].Text)
	}
	return out
}

// Workings lists the derivations behind the numbers of every bread, and behind the times of all of them together.
func (k KitchenDay) Workings() []working.Working {
	var out []working.Working
	for _, d := range k.Breads {
		out = append(out, d.Workings()...)
	}
	if len(k.Breads) > 1 { // of one bread they are its own
		if w, ok := timesWorking(k.Timetable, k.Later); ok {
			out = append(out, w)
		}
	}
	return out
}

// of is the day that was planned.
func (k KitchenDay) of(p *planning) KitchenDay {
	for _, d := range p.breads {
		k.Breads = append(k.Breads, d.Day)
	}
	k.Timetable, k.problem = p.timetable, p.problem
	k.Careful, k.Room = p.possible() && p.found.share == 1, quantity.NewPercent(100*p.found.share)
	k.Settled, k.TimeRanOut, k.Robust = p.settled, p.timeRanOut, p.survives
	k.levains = p.levains()
	if k.Possible() {
		for i := range k.Breads {
			k.Breads[i].hotFrom = k.hotFrom(k.Breads[i])
		}
		k.Notes = slices.Concat(p.washed(), k.levainNotes(), k.ovenOrderNotes(), k.ovenCalls())
	}
	return k
}

// levains are the levains that feed several doughs, to be weighed once.
func (p *planning) levains() []WeighList {
	var out []WeighList
	for i, d := range p.breads {
		all := p.partners(i)
		if d.levain != i || len(all) < 2 || d.Bake.Levain.standing() {
			continue
		}
		l := WeighList{Name: d.Bake.Levain.Name, Batches: 1}
		for _, partner := range all {
			l = l.plus(partner.weighedLevain())
		}
		out = append(out, l)
	}
	return out
}

// weighedLevain is the list of the levain of one dough.
func (d *planned) weighedLevain() WeighList {
	for _, b := range d.Weighing.Builds {
		if b.Build.Name == levainName {
			return weighBuild(b)
		}
	}
	return WeighList{}
}

// plus adds a list of the same lines.
func (l WeighList) plus(o WeighList) WeighList {
	l.Total, l.Residue = l.Total.Add(o.Total), l.Residue.Add(o.Residue)
	lines := append([]WeighLine{}, l.Lines...)
	for _, x := range o.Lines {
		found := false
		for i := range lines {
			if lines[i].Name == x.Name {
				lines[i].Mass, found = lines[i].Mass.Add(x.Mass), true
			}
		}
		if !found {
			lines = append(lines, x)
		}
	}
	l.Lines = lines
	return l
}

// levainNotes say which breads one levain feeds.
func (k KitchenDay) levainNotes() []working.Message {
	var out []working.Message
	seen := map[string]bool{}
	for _, d := range k.Breads {
		l := d.Levain
		if l == nil || l.Shared.IsZero() || seen[d.Bake.Levain.Name] {
			continue
		}
		seen[d.Bake.Levain.Name] = true
		var parts []any
		for _, o := range k.Breads {
			if o.Bake.Levain != nil && o.Bake.Levain.Name == d.Bake.Levain.Name {
				parts = append(parts, working.Tell("bakeday.levain_part", "%.0f for %v", o.Levain.Build.Made,
					working.Tell("bakeday.named", "%v", o.Bake.Name)))
			}
		}
		out = append(out, working.Tell("bakeday.note_shared_levain", "one levain of %.0f, %v, feeds several doughs: %v",
			l.Shared,
			working.Tell("bakeday.named", "%v", d.Bake.Levain.Name), working.And(parts...)))
		if d.Bake.Levain.CultureAtHand.IsZero() && !d.Bake.Levain.standing() {
			out = append(out, usedUp(working.Tell("bakeday.named", "%v", d.Bake.Levain.Name)))
		}
	}
	return out
}
