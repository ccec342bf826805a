package bakeday

import (
	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// scald answers how hot the water of a scald must be, over flour as warm as the kitchen; ok is false for a soaker
// that is no scald, and for one so stiff or so thin that the heat balance says nothing of it.
func (d *Day) scald(i int, flour quantity.Temperature) (answer mixing.ScaldWater, ok bool) {
	if d.Bake.Soakers[i].Kind != dough.Scald {
		return answer, false
	}
	return d.mash(i, flour)
}

// mash answers what hot water does to the dry part of a soaker.
func (d *Day) mash(i int, flour quantity.Temperature) (answer mixing.ScaldWater, ok bool) {
	s := d.Bake.Soakers[i]
	in := mixing.Scald{FlourTemperature: flour, Altitude: d.Bake.Kitchen.Altitude}
	build, _ := d.Batch.Build(s.Name)
	for _, l := range build.Lines {
		switch l.Role {
		case dough.RoleLiquid:
			in.Water = in.Water.Add(l.Mass)
		default:
			in.Flour = in.Flour.Add(l.Mass)
		}
	}
	answer, err := in.Pour()
	return answer, err == nil
}

// coldFlour is flour as cold as it gets in the kitchen, so that the water is hot enough.
func (b *Bake) coldFlour() quantity.Temperature {
	if !b.Kitchen.Flour.IsZero() {
		return b.Kitchen.Flour
	}
	return b.Kitchen.Night
}

// scalds are the answers of all scalds, by the names of their soakers.
func (d *Day) scalds() map[string]mixing.ScaldWater {
	out := map[string]mixing.ScaldWater{}
	for i, s := range d.Bake.Soakers {
		if answer, ok := d.scald(i, d.Bake.coldFlour()); ok {
			out[s.Name] = answer
		}
	}
	return out
}

// scaldCautions are those of boiling water and hot mash.
func (d *Day) scaldCautions() []working.Caution {
	for _, s := range d.scalds() {
		return s.Cautions // the same of all
	}
	return nil
}

// scaldSays tells how hot the water is poured, and what to do then.
func scaldSays(s mixing.ScaldWater) []working.Message {
	return append([]working.Message{s.Message()}, s.Notes...)
}
