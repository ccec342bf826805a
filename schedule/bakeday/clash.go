package bakeday

import (
	"context"
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// clashes finds what two breads want at once, when there is no timetable: the day is planned as if there were enough of
// everything, and there the worst overlap is looked for over each shared thing that is in the conflict.
func (k *KitchenDay) clashes(ctx context.Context) []BothWant {
	c := k.Timetable.Conflict
	if c == nil || len(k.Breads) < 2 {
		return nil
	}
	var out []BothWant
	var things []string
	if c.Shortage != nil {
		things = append(things, c.Shortage.Resource)
	}
	for _, m := range c.Members {
		if m.Rule == schedule.Capacity && !slices.Contains(things, m.Other) {
			things = append(things, m.Other)
		}
	}
	t := k.withEnough(ctx)
	for _, thing := range things {
		if w, ok := k.clashOver(t, thing); ok {
			out = append(out, w)
		}
	}
	return out
}

// use is a step that needs a thing.
type use struct {
	schedule.Timed
	need schedule.Need
}

// uses are the steps of a timetable that need a thing.
func (k *KitchenDay) uses(t schedule.Timetable, thing string) []use {
	var out []use
	for i, s := range k.problem.Steps {
		for _, n := range s.Needs {
			if n.Resource == thing && i < len(t.Steps) {
				out = append(out, use{t.Steps[i], n})
			}
		}
	}
	return out
}

// withEnough is the day as it would be if nobody had to wait for anything but the baker.
func (k *KitchenDay) withEnough(ctx context.Context) schedule.Timetable {
	p := k.problem
	p.Steps = slices.Clone(p.Steps)
	for i, s := range p.Steps {
		shared := func(n schedule.Need) bool { return n.Resource != baker }
		p.Steps[i].Needs = slices.DeleteFunc(slices.Clone(s.Needs), shared)
	}
	t, err := p.Latest(ctx)
	if err != nil {
		return schedule.Timetable{}
	}
	return t
}

// clashOver is the worst overlap of two breads over one thing.
func (k *KitchenDay) clashOver(t schedule.Timetable, thing string) (BothWant, bool) {
	p := k.problem
	at := slices.IndexFunc(p.Resources, func(r schedule.Resource) bool { return r.ID == thing })
	if at < 0 || len(t.Steps) == 0 {
		return BothWant{}, false
	}
	r := p.Resources[at]
	var worst BothWant
	all := k.uses(t, thing)
	for i, a := range all {
		for _, b := range all[i+1:] {
			if a.Bread == b.Bread || !tooMuch(r, a.need, b.need) {
				continue
			}
			x, y := a, b
			if y.Start.Before(x.Start) {
				x, y = y, x
			}
			by := min(x.End.Add(change(r, x.need, y.need)).Sub(y.Start), y.End.Add(change(r, y.need, x.need)).Sub(x.Start))
			if quantity.Elapsed(by) > worst.By {
				worst = BothWant{
					Thing: thing, Name: r.Name, First: x.Bread, Then: y.Bread, At: y.Start.In(k.Zone), By: quantity.Elapsed(by),
				}
			}
		}
	}
	return worst, worst.By > 0
}

// tooMuch reports whether two steps cannot have a thing at the same time.
func tooMuch(r schedule.Resource, a, b schedule.Need) bool {
	return r.Capacity > 0 && a.Amount+b.Amount > r.Capacity || a.Program != "" && b.Program != "" && a.Program != b.Program
}

// change is what a thing takes from one step to the next.
func change(r schedule.Resource, a, b schedule.Need) time.Duration {
	for _, c := range r.Changes {
		if c.From == a.Program && c.To == b.Program {
			return c.Takes.Duration()
		}
	}
	return r.Changeover.Duration()
}

// whyNot says why the breads cannot all be there when they are wanted, with what is known of the clashes.
func (k KitchenDay) whyNot() *WhyData {
	if len(k.Breads) == 1 {
		return k.Breads[0].why()
	}
	if slices.ContainsFunc(k.Breads, func(d Day) bool { return !d.Rising.Feasible }) {
		return k.risesTooFar()
	}
	first := k.Breads[0]
	first.Timetable = k.Timetable
	first.Earlier, first.Later = k.shifted(k.Earlier), k.shifted(k.Later)
	w := first.why()
	if w == nil || w.Reason != Clash {
		return w
	}
	k.tried.put(w)
	w.Remedies = k.withMoves(w.Remedies)
	switch {
	case len(k.alone) > 0:
		w.Says = k.sayAlone()
		w.Short = 0 // of all breads together: none of them is missed by that
	case len(k.Wants) > 0:
		all := make([]working.Message, len(k.Wants))
		for i, x := range k.Wants {
			all[i] = x.Message()
		}
		w.Says = working.Join(all, "; ")
	default:
		w.Says = working.Tell("bakeday.why_not_all", "the breads cannot all be there when they are wanted: %v",
			inTheWay(k.Timetable.Conflict, 0))
	}
	return w
}

// risesTooFar says of every bread whose dough would rise too far that it does.
func (k KitchenDay) risesTooFar() *WhyData {
	var all []working.Message
	for _, d := range k.Breads {
		if !d.Rising.Feasible {
			all = append(all, d.ofBread(d.risesTooFar()))
		}
	}
	return &WhyData{Reason: RisesTooFar, Says: working.Join(all, "; "), Rules: []RuleData{}, Remedies: []RuleData{}}
}

// sayAlone says of every bread that could not be there by itself what is in its way.
func (k KitchenDay) sayAlone() working.Message {
	var all []working.Message
	for _, d := range k.alone[:min(len(k.alone), mostSaid)] {
		all = append(all, d.ofBread(d.why().Says))
	}
	says := working.Join(all, "; ")
	if more := len(k.alone) - mostSaid; more > 0 {
		says = working.Tell("bakeday.why_more_breads", "%v; and so it is with %d {2|more bread|more breads}", says, more)
	}
	return says
}

// mostSaid is of how many breads it is said why they cannot be.
const mostSaid = 3

// ofBread is a sentence about one bread of several.
func (d Day) ofBread(words working.Message) working.Message {
	return working.Tell("bakeday.of_bread", "%v: %v", working.Tell("bakeday.named", "%v", d.Bake.Name), words)
}

// shifted is the wanted time of the first bread, moved.
func (k KitchenDay) shifted(by *quantity.Elapsed) *time.Time {
	if by == nil {
		return nil
	}
	at := k.Breads[0].Wanted.Add(by.Duration())
	return &at
}
