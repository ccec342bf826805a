package bakeday

import (
	"slices"
	"strings"
	"time"

	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
)

// company is what a bread has to do with the others of its day.
func (p *planning) company(i int) company {
	d := p.breads[i]
	return company{several: len(p.breads) > 1, fed: d.levain != i && !d.Bake.Levain.standing(), closed: p.closed}
}

// together is the problem of all breads, with what they share. The only bread has its own.
func (p *planning) together(nets []*network, l layout) schedule.Problem {
	out := nets[0].layOut(l)
	if len(nets) == 1 {
		return p.eased(out)
	}
	resources := []schedule.Resource{out.Resources[0]}
	resources = append(resources, p.kitchen.workers())
	out.Resources = append(resources, p.shares.resources...)
	out.Steps, out.Links, out.Bounds = nil, nil, nil
	for i, n := range nets {
		d, part := p.breads[i], n.layOut(l)
		p.cold(&part, d)
		out.Horizon = max(out.Horizon, part.Horizon)
		for _, s := range part.Steps {
			d.names[s.ID] = s.Name
			s.ID, s.Name = d.prefix+s.ID, d.of(s.Name)
			s.MinWords, s.MaxWords = d.of(s.MinWords), d.of(s.MaxWords)
			s.Needs = slices.Concat(s.Needs, p.shares.needs[i][s.Kind])
			out.Steps = append(out.Steps, s)
		}
		for _, k := range part.Links {
			k.From, k.To = d.prefix+k.From, d.prefix+k.To
			k.MinWords, k.MaxWords = d.of(k.MinWords), d.of(k.MaxWords)
			out.Links = append(out.Links, k)
		}
		for _, b := range part.Bounds {
			b.Step, b.Words = d.prefix+b.Step, d.of(b.Words)
			out.Bounds = append(out.Bounds, b)
		}
		if n.fed {
			out.Links = append(out.Links, schedule.Link{From: p.breads[d.levain].prefix + idFeed, To: d.prefix + idRipen,
				Firm: true})
		}
	}
	p.open(&out)
	return p.eased(out)
}

// eased is a problem with the change of its rules that is tried.
func (p *planning) eased(out schedule.Problem) schedule.Problem {
	if p.change == nil {
		return out
	}
	return p.change(out)
}

// of is a sentence about one bread of several; most are wanted again for the next layout.
func (d *planned) of(words working.Message) working.Message {
	if words.IsZero() {
		return words
	}
	if d.told == nil {
		d.told = map[working.Message]working.Message{}
	}
	told, ok := d.told[words]
	if !ok {
		told = d.ofBread(words)
		d.told[words] = told
	}
	return told
}

// cold keeps the places of the loaves that rest in the refrigerator until the last of them is taken out.
func (p *planning) cold(part *schedule.Problem, d *planned) {
	r := d.Bake.Retard
	if p.kitchen.RefrigeratorPlaces == 0 || r == nil {
		return
	}
	until, places := nth(idBake, d.Baking.Rounds-1), d.Bake.Loaves.Pieces
	switch {
	case r.Undivided:
		until, places = idDivide, 1
	case r.WarmUp > 0:
		until = idOut
	}
	part.Steps = append(part.Steps, schedule.DayStep{
		ID: idInCold, Kind: schedule.Other, Bread: d.Bake.Name, Spare: true, MinFirm: true, MaxFirm: true,
		Name: working.Tell("bakeday.step_in_cold", "loaves in the refrigerator"),
		Min:  grid(r.AtLeast.Duration()), Max: schedule.NoLimit,
		Needs: []schedule.Need{{Resource: sharedCold, Amount: places}},
	})
	part.Links = append(part.Links,
		schedule.Link{From: idRetard, To: idInCold, Kind: schedule.StartToStart, Firm: true},
		schedule.Link{From: idInCold, To: until, Firm: true})
}

// open drops the closed spans that lie beyond the end of the day.
func (p *planning) open(problem *schedule.Problem) {
	end := problem.Anchor.Add(problem.Horizon.Duration())
	within := wallclock.Occurrence{From: problem.Anchor.Add(-24 * time.Hour), To: end}
	closed, err := p.closed(within)
	if err == nil { // each bread has found its own
		problem.Resources[0].Closed = closed
	}
}

// closed are the absences of the kitchen; every round and layout asks for the same ones.
func (p *planning) closed(within wallclock.Occurrence) ([]schedule.Span, error) {
	if known, ok := p.absent[within]; ok {
		return known, nil
	}
	spans, err := p.kitchen.closed(within, p.clock.Zone)
	if spans = slices.Clip(spans); err == nil {
		if p.absent == nil {
			p.absent = map[wallclock.Occurrence][]schedule.Span{}
		}
		p.absent[within] = spans
	}
	return spans, err
}

// part is what the timetable has of one bread, as if it were alone.
func (p *planning) part(d *planned) schedule.Timetable {
	if len(p.breads) == 1 {
		return p.timetable
	}
	return partOf(p.timetable, d.Day)
}

// partOf is what a timetable of several breads has of one, its steps called as if it were alone.
func partOf(t schedule.Timetable, d Day) schedule.Timetable {
	out := schedule.Timetable{
		Verdict: t.Verdict, Conflict: t.Conflict, Before: t.Before, After: t.After, TimeRanOut: t.TimeRanOut,
	}
	for _, s := range t.Steps {
		if s.Bread == d.Bake.Name {
			s.Label = d.plain(s.Label)
			out.Steps = append(out.Steps, s)
		}
	}
	return out
}

// plain is the label of a step as it is called where there is one bread.
func (d Day) plain(l schedule.Label) schedule.Label {
	l.ID = strings.TrimPrefix(l.ID, d.Bake.Name+"/")
	if name, ok := d.names[l.ID]; ok {
		l.Name = name
	}
	return l
}

// robust is what the timetable survives of one bread's doughs.
func (p *planning) robust(all schedule.Robustness, d *planned) schedule.Robustness {
	if len(p.breads) == 1 {
		return all
	}
	out := all
	out.Spreads, out.Watches = nil, nil
	for _, s := range all.Spreads {
		if s.Bread == d.Bake.Name {
			s.Label = d.plain(s.Label)
			out.Spreads = append(out.Spreads, s)
		}
	}
	for _, w := range all.Watches {
		if w.Bread == d.Bake.Name {
			w.Label = d.plain(w.Label)
			out.Watches = append(out.Watches, w)
		}
	}
	return out
}
