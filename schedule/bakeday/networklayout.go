package bakeday

import (
	"slices"
	"time"

	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// layOut is the network with what a layout keeps to.
func (n *network) layOut(l layout) schedule.Problem {
	p := *n.p
	p.Steps, p.Links = slices.Clone(p.Steps), slices.Clone(p.Links)
	for i, k := range n.folds {
		p.Links[k].Min, p.Links[k].Max = n.folding.between(i+1, l.folds)
	}
	for i := range p.Steps {
		if s := &p.Steps[i]; l.ripe > 0 && ripensByItself(*s) {
			s.Max = s.Min + grid(time.Duration(float64(s.Max-s.Min)*l.ripe))
		}
	}
	cool := &p.Steps[n.cool]
	cool.Max = cool.Min + n.fresh(l)
	if l.share > 0 {
		n.keepRoom(&p, l)
	}
	return p
}

// keepRoom adds the steps of a dough that is early or late: shaped then, it must still be able to rest as long as the
// rules ask and be there when it is wanted. They stand in the network only to keep room: whatever the dough does
// within its range, somebody is awake and there for it.
func (n *network) keepRoom(p *schedule.Problem, l layout) {
	end := n.endOfBulk()
	for _, c := range []struct {
		id          string
		name        working.Message
		bulk, proof time.Duration
	}{
		{idEarly, working.Tell("bakeday.step_if_early", "%v, if the dough is early", end.Name), n.t.bulk.Early,
			n.t.proof.Early},
		{idLate, working.Tell("bakeday.step_if_late", "%v, if the dough is late", end.Name), n.t.bulk.Late,
			n.t.proof.Late},
	} {
		bulk := grid(drawn(c.bulk, n.t.bulk.Likely, l.share))
		p.Steps = append(
			p.Steps,
			schedule.DayStep{
				ID:      c.id,
				Bread:   n.b.Name,
				MinFirm: true,
				MaxFirm: true,
				Kind:    end.Kind,
				Name:    c.name,
				Spare:   true,
				Min:     end.Min,
				Needs:   n.there,
			},
		)
		p.Links = append(p.Links,
			schedule.Link{From: idBulk, To: c.id, Kind: schedule.StartToStart, Min: bulk, Max: bulk, Firm: true})
		if r := n.b.Retard; r != nil {
			p.Links = append(p.Links, schedule.Link{
				From: c.id, To: nth(idBake, 0), Min: grid(r.AtLeast.Duration()) + n.b.afterCold(),
				Max: grid(r.AtMost.Duration()) + n.b.afterCold(), Firm: true,
			})
			continue
		}
		// Without the cold nothing stretches but the time for which the bread may wait.
		proof := grid(drawn(c.proof, n.t.proof.Likely, l.share))
		rest := proof + n.baking() + grid(n.t.cool)
		p.Links = append(
			p.Links,
			schedule.Link{
				From: c.id,
				To:   idCool,
				Kind: schedule.EndToEnd,
				Min:  rest,
				Max:  rest + n.fresh(l),
				Firm: true,
			},
			schedule.Link{
				From: idHeat,
				To:   c.id,
				Kind: schedule.StartToEnd,
				Min:  grid(n.b.Oven.Preheat.Duration()) - proof,
				Max:  schedule.NoLimit,
				Firm: true,
			},
		)
	}
}
