package bakeday

import (
	"slices"
	"strconv"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// The IDs of what several breads share, beside the baker and the hands.
const (
	sharedMixer = "mixer-"
	sharedOven  = "oven"
	sharedPots  = "pots"
	sharedCold  = "refrigerator"
	sharedBox   = "box"
)

const (
	// usualWashing is for a mixer that has had another allergen in it. Common practice, no source.
	usualWashing = quantity.Elapsed(15 * time.Minute)
	// usualCooling is for ten degrees, with the door ajar between loads. Judgment.
	usualCooling = quantity.Elapsed(10 * time.Minute)
	// boxChange is what a proofing box takes from one temperature to another. Judgment.
	boxChange = quantity.Elapsed(20 * time.Minute)
)

// shares is what the breads of a day share of their kitchen: the resources, and what each bread needs of them in its
// steps, by their kinds.
type shares struct {
	resources []schedule.Resource
	needs     []map[schedule.StepKind][]schedule.Need
}

// need adds that a bread needs something in its steps of a kind.
func (s *shares) need(bread int, kind schedule.StepKind, n schedule.Need) {
	s.needs[bread][kind] = append(s.needs[bread][kind], n)
}

// findShares finds what the breads share. One bread shares nothing: its steps follow one another.
func (p *planning) findShares() {
	if len(p.breads) < 2 {
		return
	}
	s := shares{needs: make([]map[schedule.StepKind][]schedule.Need, len(p.breads))}
	for i := range s.needs {
		s.needs[i] = map[schedule.StepKind][]schedule.Need{}
	}
	p.shareMixers(&s)
	p.shareOven(&s)
	p.sharePots(&s)
	p.shareBox(&s)
	if n := p.kitchen.RefrigeratorPlaces; n > 0 {
		s.resources = append(s.resources, schedule.Resource{
			ID: sharedCold, Name: working.Tell("bakeday.refrigerator", "the refrigerator"), Capacity: n,
			Words: working.Tell("bakeday.cold_places", "places for %d loaves in the refrigerator", n), Firm: true,
		})
	}
	p.shares = s
}

// shareMixers shares each mixer, which is washed before a dough that does not carry all that the one before did.
func (p *planning) shareMixers(s *shares) {
	for _, m := range p.kitchen.Mixers {
		var users []int
		for i, d := range p.breads {
			if d.Bake.Mixing.Mixer == m.Kind && m.Kind != mixing.Hand {
				users = append(users, i)
			}
		}
		if len(users) < 2 {
			continue
		}
		r := schedule.Resource{
			ID: sharedMixer + m.Kind.String(), Name: working.Tell("bakeday.mixer", "the %v mixer", m.Kind), Capacity: 1,
			Words: working.Tell("bakeday.one_mixer", "one %v mixer", m.Kind), Firm: true,
		}
		washing := m.Washing
		if washing == 0 {
			washing = usualWashing
		}
		carries := func(i int) dough.Allergens { return p.breads[i].Batch.Allergens() }
		program := func(i int) string { return strconv.Itoa(int(carries(i))) }
		for _, i := range users {
			s.need(i, schedule.Mix, schedule.Need{Resource: r.ID, Amount: 1, Program: program(i)})
			for _, j := range users {
				if !carries(j).Has(carries(i)) && !known(r.Changes, program(i), program(j)) {
					wash := schedule.Changeover{From: program(i), To: program(j), Takes: grid(washing.Duration())}
					r.Changes = append(r.Changes, wash)
				}
			}
		}
		s.resources = append(s.resources, r)
	}
}

func known(all []schedule.Changeover, from, to string) bool {
	for _, c := range all {
		if c.From == from && c.To == to {
			return true
		}
	}
	return false
}

// shareOven shares the oven, which has one temperature at a time.
func (p *planning) shareOven(s *shares) {
	decks := max(1, p.kitchen.Oven.Decks)
	r := schedule.Resource{
		ID: sharedOven, Name: working.Tell("bakeday.shared_oven", "the oven"), Capacity: decks,
		Words: working.Tell("bakeday.one_oven", "one oven"), Firm: true,
	}
	if decks > 1 {
		r.Words = working.Tell("bakeday.decks", "an oven of %d decks", decks)
	}
	program := func(i int) string {
		o := p.breads[i].Bake.Oven
		if decks == 1 || !o.Then.IsZero() && o.Then != o.Temperature {
			return strconv.Itoa(i) // it has its own time to reheat, or bakes alone: no other load stands the falling heat
		}
		return o.Temperature.String()
	}
	for i, d := range p.breads {
		s.need(i, schedule.Bake, schedule.Need{Resource: r.ID, Amount: d.Baking.Decks, Program: program(i)})
	}
	for i, a := range p.breads {
		for j, b := range p.breads {
			change := schedule.Changeover{From: program(i), To: program(j), Takes: p.kitchen.change(&a.Bake, &b.Bake)}
			at := slices.IndexFunc(r.Changes, func(c schedule.Changeover) bool {
				return c.From == change.From && c.To == change.To
			})
			if at < 0 {
				r.Changes = append(r.Changes, change)
			} else { // of several breads at one temperature the slowest
				r.Changes[at].Takes = max(r.Changes[at].Takes, change.Takes)
			}
		}
	}
	s.resources = append(s.resources, r)
}

// change is how long the oven takes from one bread to the next: to reheat, and to get hotter or cooler.
//
//	T₁ at the end of the one, T₂ at the start of the other;
//	hotter:  (T₂ − T₁) ÷ 10 °C · warms; without it as it heats from the room, (T₂ − T₁) ÷ (T₂ − T_room) · preheat
//	cooler:  (T₁ − T₂) ÷ 10 °C · cools
//
// An oven slows down as it gets hotter, so that the time by the preheat is on the short side; judgment. A bread on the
// falling heat of one before it costs no fuel, only this time. Pots that the one before did not bake in are cold.
func (k *Kitchen) change(a, b *Bake) quantity.Elapsed {
	takes := b.Oven.Reheat
	from := a.Oven.Temperature
	if !a.Oven.Then.IsZero() {
		from = a.Oven.Then // it bakes off cooler than it is loaded
	}
	by := b.Oven.Temperature.Sub(from).Celsius()
	switch tens := by / 10; {
	case by > 0 && k.Oven.Warms > 0:
		takes = max(takes, quantity.Elapsed(tens*float64(k.Oven.Warms)))
	case by > 0:
		room := b.Oven.Temperature.Sub(k.Day).Celsius()
		takes = max(takes, quantity.Elapsed(by/room*float64(b.Oven.Preheat)))
	case by < 0:
		cools := k.Oven.Cools
		if cools == 0 {
			cools = usualCooling
		}
		takes = max(takes, quantity.Elapsed(-tens*float64(cools)))
	}
	if b.Oven.Pots > a.Oven.Pots && k.Oven.Decks < 2 { // beside a load there is no place for them
		takes = max(takes, min(b.Oven.Preheat, potsHeat))
	}
	return grid(takes.Duration())
}

// potsHeat is how long cold pots take in an oven that is hot; those that have just been baked in take what the bread
// says of its rounds. Common practice: at least half an hour.
const potsHeat = quantity.Elapsed(30 * time.Minute)

// sharePots shares the covered pots.
func (p *planning) sharePots(s *shares) {
	there, users := p.kitchen.Pots, 0
	for _, d := range p.breads {
		if d.Bake.Oven.Pots > 0 {
			users++
			if p.kitchen.Pots == 0 {
				there = max(there, d.Bake.Oven.Pots)
			}
		}
	}
	if users < 2 {
		return
	}
	s.resources = append(s.resources, schedule.Resource{
		ID: sharedPots, Name: working.Tell("bakeday.pots", "the pots"), Capacity: there,
		Words: working.Tell("bakeday.pots_there", "%d {1|pot|pots}", there), Firm: true,
	})
	for i, d := range p.breads {
		if n := min(d.Bake.Oven.Pots, d.Baking.Each); n > 0 {
			s.need(i, schedule.Bake, schedule.Need{Resource: sharedPots, Amount: n})
		}
	}
}

// shareBox shares the proofing box: one temperature at a time, a tub in bulk and a tray for each round in the proof.
func (p *planning) shareBox(s *shares) {
	users := 0
	for _, d := range p.breads {
		if !d.Bake.Bulk.Box.IsZero() {
			users++
		}
	}
	if users < 2 {
		return
	}
	r := schedule.Resource{
		ID: sharedBox, Name: working.Tell("bakeday.box", "the proofing box"), Capacity: p.kitchen.BoxPlaces,
		Changeover: boxChange, Firm: true,
		Words: working.Tell("bakeday.box_there", "one proofing box"),
	}
	if r.Capacity > 0 {
		r.Words = working.Tell("bakeday.box_places", "%d {1|place|places} in the proofing box", r.Capacity)
	}
	for i, d := range p.breads {
		if d.Bake.Bulk.Box.IsZero() {
			continue
		}
		program := d.Bake.Bulk.Box.String()
		if !known(r.Changes, program, program) { // one dough after another, as warm: it is taken out and put in
			r.Changes = append(r.Changes, schedule.Changeover{From: program, To: program})
		}
		s.need(i, schedule.Bulk, schedule.Need{Resource: r.ID, Amount: 1, Program: program})
		s.need(i, schedule.Proof, schedule.Need{Resource: r.ID, Amount: d.Baking.Rounds, Program: program})
	}
	s.resources = append(s.resources, r)
}
