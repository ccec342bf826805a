package bakeday

import (
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// checkBaking reports what is wrong with the times in the oven, as far as it can be said without the loaves.
func (b *Bake) checkBaking(p *quantity.Problems) {
	o := b.Oven
	if o.Vessel != bake.UsualVessel && !o.Vessel.IsValid() {
		p.Add("Oven.Vessel", o.Vessel, quantity.Tell("bakeday.want_stone_pot_tin_or_tray", "stone, pot, tin or tray"),
			quantity.ErrOutOfRange)
	}
	if o.Pots > 0 && o.Vessel != bake.UsualVessel && o.Vessel != bake.Pot {
		p.Add("Oven.Vessel", o.Vessel, quantity.Tell("bakeday.want_pot_there_are_pots", "pot, as there are pots"),
			quantity.ErrInconsistent)
	}
	p.Duration("Oven.RescoreAfter", o.RescoreAfter.Duration(), 0, 4*time.Hour)
	p.Duration("Oven.TurnAfter", o.TurnAfter.Duration(), 0, 4*time.Hour)
	const least = quantity.Elapsed(2 * time.Minute) // a pizza in a very hot oven
	if total := o.Covered + o.Uncovered; o.Uncovered > 0 && o.Covered >= 0 && total < least {
		p.Add("Oven.Uncovered", quantity.Tell("bakeday.got_baking_all", "%v of baking in all", total),
			quantity.Tell("bakeday.want_or_more", "%v or more", least), quantity.ErrOutOfRange)
	}
}

// vessel is what the loaves bake on or in, as far as the bake says it.
func (b *Bake) vessel() bake.Vessel {
	if b.Oven.Pots > 0 {
		return bake.Pot
	}
	return b.Oven.Vessel
}

// heat lays out the rounds, and puts the guide values for what the bake leaves out. A guide time for pieces of
// another size than those it is from is taken all the same, with its wider range.
func (b *Bake) heat(k *Baking) error {
	o := &b.Oven
	own := o.Uncovered > 0
	if b.Loaves.toOrder() && o.Reheat == 0 {
		o.Reheat = betweenOrders
	}
	program, err := bake.OvenLoad{
		Style: b.Loaves.Style, Shape: b.Loaves.Shape, Dough: k.Scaling, Pieces: b.Loaves.Pieces, Together: k.Each,
		Vessel: b.vessel(), Cold: b.Retard != nil && b.Retard.WarmUp == 0, Oven: o.Temperature, Then: o.Then,
		Preheat: o.Preheat, Reheat: o.Reheat, Covered: o.Covered, Uncovered: o.Uncovered, Open: own && o.Covered == 0,
		RescoreAfter: o.RescoreAfter, TurnAfter: o.TurnAfter, Extrapolate: true,
	}.Program()
	if err != nil {
		return b.from(ofOven, err)
	}
	k.Program, k.Guide = program, !own
	o.Temperature, o.Then = program.Oven, program.Then
	o.Preheat, o.Reheat, o.Covered = program.Preheat, program.Reheat, program.Covered
	if !own {
		o.Uncovered = quantity.Elapsed(program.Uncovered.Likely.Round(time.Minute))
	}
	return nil
}

// tendingTakes is how long hands are at the oven for the lid, the cuts or a turn. Judgment.
const tendingTakes = time.Minute

// tending are the moments of a round at which hands go to the oven, at their minutes from its beginning.
func (d Day) tending(round StepData) []StepData {
	var out []StepData
	var begun time.Duration // the round, with the boiling or the loading
	boiled := false
	for _, ph := range d.Baking.Program.Phases {
		if ph.Round != round.Number {
			continue
		}
		id := ""
		switch ph.Kind {
		case bake.Boil:
			begun, boiled = ph.Start.Likely, true
		case bake.Load:
			if boiled {
				id = idLoad
				break
			}
			begun = ph.Start.Likely
		case bake.Rescore:
			id = idRescore
		case bake.Vent:
			id = idVent
		case bake.Turn:
			id = idTurn
		}
		if id == "" {
			continue
		}
		s := round
		s.ID, s.Kind, s.Phase = nth(id, round.Number-1), schedule.Tend, ph.Kind
		s.Name = ph.Note
		if ph.Kind == bake.Vent && d.Bake.Oven.Then != d.Bake.Oven.Temperature {
			s.Name = working.Tell("bakeday.step_turn_down", "%v; set the oven to %05.0f", ph.Note, d.Bake.Oven.Then)
		}
		if round.Of > 1 {
			s.Name = working.Tell("bakeday.numbered", "%v, %d of %d", s.Name, round.Number, round.Of)
		}
		after := (ph.Start.Likely - begun).Round(time.Minute)
		s.Start, s.Takes = round.Start.Add(after), quantity.Elapsed(tendingTakes)
		s.End = s.Start.Add(tendingTakes)
		s.EarliestStart, s.LatestStart = round.EarliestStart.Add(after), round.LatestStart.Add(after)
		s.Windows = nil
		for _, w := range round.Windows {
			s.Windows = append(s.Windows, quantity.Window{From: w.From.Add(after), To: w.To.Add(after)})
		}
		out = append(out, s)
	}
	return out
}
