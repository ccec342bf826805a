package bakeday

import (
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// oven heats it, bakes all rounds and lets the bread cool.
func (n *network) oven(rest string) {
	b := n.b
	heat := n.add(n.preheat())
	for i := range n.t.rounds {
		s := numbered(schedule.Bake, idBake, i, n.t.rounds, n.b.bakeName())
		s.Min, s.Needs = n.round(), n.there
		bake := n.add(s)
		if i == 0 {
			n.atOnce(rest, bake)
			n.atOnce(heat, bake)
			continue
		}
		gap := n.reheats()
		most := gap + quantity.Elapsed(5*time.Minute) // proofed loaves do not wait
		if b.Retard != nil && b.Retard.WarmUp == 0 {
			most = gap + quantity.Elapsed(15*time.Minute) // cold ones may
		}
		n.p.Links = append(n.p.Links, schedule.Link{From: nth(idBake, i-1), To: bake, Min: gap, Max: most, Firm: true,
			MinWords: working.Tell("bakeday.rule_reheat", "the oven and pots reheat for %v", gap),
			MaxWords: working.Tell("bakeday.rule_next_round", "the next round follows within %v", most)})
	}
	cooled := grid(n.t.cool)
	n.cool = len(n.p.Steps)
	cool := n.add(schedule.DayStep{
		ID: idCool, Kind: schedule.Cool, Name: working.Tell("bakeday.step_cool", "cool"), Min: cooled, Max: cooled +
			grid(b.Loaves.FreshWithin.Duration()),
		MinWords: working.Tell("bakeday.rule_cools", "the last loaf cools for %v", cooled), MaxWords: b.freshWords(cooled),
	})
	n.atOnce(nth(idBake, n.t.rounds-1), cool)
}

// preheat is as long as the oven takes; for loaves that decide themselves when they are ready it may stay hot.
func (n *network) preheat() schedule.DayStep {
	s := schedule.DayStep{
		ID:    idHeat,
		Kind:  schedule.Preheat,
		Name:  n.b.heatName(),
		Min:   grid(n.b.Oven.Preheat.Duration()),
		Needs: n.there,
	}
	if n.b.Retard == nil {
		s.Max = s.Min + staysHot
	}
	return s
}

// baking is how long all rounds take.
func (n *network) baking() quantity.Elapsed {
	return quantity.Elapsed(n.t.rounds)*n.round() + quantity.Elapsed(n.t.rounds-1)*n.reheats()
}
