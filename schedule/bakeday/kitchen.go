package bakeday

import (
	"fmt"
	"slices"
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
)

// Kitchen is the place and the life around it, described once for every bake that is made in it.
type Kitchen struct {
	Name string `json:"name,omitzero"` // what the kitchen is called
	// the IANA time zone of all wall-clock times, such as "Europe/Zurich"
	Zone   string            `json:"zone"`
	Asleep []wallclock.Habit `json:"asleep,omitzero"` // when no step may need hands, such as "22:30 to 06:30"
	Away   []wallclock.Habit `json:"away,omitzero"`   // when nobody is there either, such as "09:00 to 15:00 on Friday"

	Hands  int            `json:"hands,omitzero"` // pairs of hands that work at a time; 0: one
	Mixers []KitchenMixer `json:"mixer,omitzero"` // one of each kind; each bake says which, or "hand"
	Oven   KitchenOven    `json:"oven,omitzero"`  // what all bakes of the day share
	// covered pots that there are; 0: as many as the bread that uses the most
	Pots int `json:"pots,omitzero"`

	RefrigeratorPlaces int `json:"refrigerator_places,omitzero"` // for loaves that rest in the cold; 0: enough
	BoxPlaces          int `json:"box_places,omitzero"`          // for tubs and trays in the proofing box; 0: enough

	// above the sea: water boils cooler up high
	Altitude  quantity.Length      `json:"altitude,omitzero" fills:"rise:Altitude"`
	Day       quantity.Temperature `json:"day"`                 // how warm the room is at its warmest
	Night     quantity.Temperature `json:"night,omitzero"`      // and at its coldest; not given: as by day
	WarmestAt wallclock.Clock      `json:"warmest_at,omitzero"` // the time of the warmest room; not given: 15:00
	// its temperature; not given: there is none
	Refrigerator quantity.Temperature `json:"refrigerator,omitzero" fills:"rise:Stages"`
	Flour        quantity.Temperature `json:"flour,omitzero"` // not given: the room at the time of mixing
	Tap          quantity.Temperature `json:"tap"`            // the coldest water from the tap
	Ice          quantity.Temperature `json:"ice,omitzero"`   // not given: −18 °C
	Scale        quantity.Mass        `json:"scale,omitzero"` // what the kitchen scale can tell apart; 0 g: 1 g
	// the same of the scale for salt and yeast; left out: the kitchen scale weighs them
	FineScale quantity.Mass `json:"fine_scale,omitzero"`
	// after how long a logged bake counts half, so that a levain that changes with the seasons is followed; not given:
	// chosen by the log, as what would have foretold its bakes best; "366 days": all logged bakes count nearly alike
	HalfLife quantity.Elapsed `json:"half_life,omitzero"`
}

// KitchenMixer is a mixer that stands in the kitchen.
type KitchenMixer struct {
	Kind mixing.MixerKind `json:"kind"`          // "planetary", "spiral", "fork" or "processor"
	Bowl quantity.Volume  `json:"bowl,omitzero"` // 0 L: no check whether a dough fits
	// Washing is how long it takes to wash it before a dough that does not carry all the allergens of the one before;
	// zero: 15 min.
	Washing quantity.Elapsed `json:"washing,omitzero"`
}

// KitchenOven is the oven: one or several decks, which share one temperature.
type KitchenOven struct {
	Decks   int                  `json:"decks,omitzero"`   // loads that bake side by side, one bread on each; 0: one
	Holds   int                  `json:"holds,omitzero"`   // loaves on a deck; 0: as many as the bake says
	Hottest quantity.Temperature `json:"hottest,omitzero"` // that it reaches; not given: no check
	// by ten degrees Celsius; zero: as fast as it heats from the room
	Warms quantity.Elapsed `json:"warms,omitzero"`
	Cools quantity.Elapsed `json:"cools,omitzero"` // by ten degrees Celsius; zero: ten minutes
}

// Mixer is the mixer of the kitchen that the dough is mixed in: that of the kind the bake says, or the only one.
// Without one in the kitchen it is of the kind that the bake says, with no bowl that is known.
func (b Bake) Mixer() KitchenMixer {
	if b.Mixing.Mixer == 0 && len(b.Kitchen.Mixers) == 1 {
		return b.Kitchen.Mixers[0]
	}
	for _, m := range b.Kitchen.Mixers {
		if m.Kind == b.Mixing.Mixer {
			return m
		}
	}
	return KitchenMixer{Kind: b.Mixing.Mixer}
}

// check reports what is wrong with the kitchen itself; cold says that a refrigerator is needed.
func (k *Kitchen) check(p *quantity.Problems, cold bool) {
	celsius := quantity.Celsius
	if !printable(k.Name) {
		p.Add("Kitchen.Name", quantity.Excerpt(k.Name), nameWant, quantity.ErrOutOfRange)
	}
	p.Int("Kitchen.Hands", k.Hands, 0, 100)
	k.checkMixers(p)
	k.checkPlaces(p)
	quantity.Check(p, "Kitchen.Altitude", k.Altitude, quantity.Meters(-500), quantity.Meters(9000))
	quantity.Check(p, "Kitchen.Day", k.Day, celsius(0), celsius(45))
	quantity.Check(p, "Kitchen.Night", k.Night, celsius(0), celsius(45))
	if cold || !k.Refrigerator.IsZero() {
		quantity.Check(p, "Kitchen.Refrigerator", k.Refrigerator, celsius(-1), celsius(15))
	}
	if !k.Flour.IsZero() {
		quantity.Check(p, "Kitchen.Flour", k.Flour, celsius(-20), celsius(50))
	}
	quantity.Check(p, "Kitchen.Tap", k.Tap, celsius(0.5), celsius(45))
	quantity.Check(p, "Kitchen.Ice", k.Ice, celsius(-40), celsius(0))
	if quantity.Check(p, "Kitchen.Scale", k.Scale, quantity.Grams(0.001), quantity.Kilograms(1)) {
		quantity.Check(p, "Kitchen.FineScale", k.FineScale, quantity.Mass{}, k.Scale)
	}
	if k.HalfLife != 0 {
		p.Duration("Kitchen.HalfLife", k.HalfLife.Duration(), 24*time.Hour, 366*24*time.Hour)
	}
}

func (k *Kitchen) checkPlaces(p *quantity.Problems) {
	o := k.Oven
	p.Int("Kitchen.Oven.Decks", o.Decks, 0, 100)
	p.Int("Kitchen.Oven.Holds", o.Holds, 0, 1000)
	if !o.Hottest.IsZero() {
		quantity.Check(p, "Kitchen.Oven.Hottest", o.Hottest, quantity.Celsius(120), quantity.Celsius(500))
	}
	p.Duration("Kitchen.Oven.Warms", o.Warms.Duration(), 0, 2*time.Hour)
	p.Duration("Kitchen.Oven.Cools", o.Cools.Duration(), 0, 2*time.Hour)
	p.Int("Kitchen.Pots", k.Pots, 0, 1000)
	p.Int("Kitchen.RefrigeratorPlaces", k.RefrigeratorPlaces, 0, 10000)
	p.Int("Kitchen.BoxPlaces", k.BoxPlaces, 0, 10000)
}

// checkRoom reports what the bake takes more of than the kitchen has.
func (b *Bake) checkRoom(p *quantity.Problems) {
	k := &b.Kitchen
	most := func(path string, got, has int, want quantity.Phrase) {
		if has > 0 && got > has {
			p.AddCode(path, "more_than_there_is", got, want, quantity.ErrInconsistent)
		}
	}
	most("Oven.Pots", b.Oven.Pots, k.Pots,
		quantity.Tell("bakeday.want_at_most_pots", "at most %d, the pots of the kitchen", k.Pots))
	most("Oven.Together", b.Oven.Together, k.Oven.Holds,
		quantity.Tell("bakeday.want_at_most_on_deck", "at most %d, what a deck of the oven holds", k.Oven.Holds))
	if b.Retard != nil && !b.Retard.Undivided {
		most("Loaves.Pieces", b.Loaves.Pieces, k.RefrigeratorPlaces,
			quantity.Tell("bakeday.want_at_most_cold_places", "at most %d, the places in the refrigerator",
				k.RefrigeratorPlaces))
	}
	if hottest := k.Oven.Hottest; !hottest.IsZero() && b.Oven.Temperature.Compare(hottest) > 0 {
		p.AddCode("Oven.Temperature", "too_hot_for_oven", b.Oven.Temperature,
			quantity.Tell("bakeday.want_at_most_hottest_oven_gets", "at most %v, the hottest that the oven gets",
				hottest), quantity.ErrInconsistent)
	}
}

// boxHolds reports trays for which the proofing box has no place: each round has one of its own.
func (b *Bake) boxHolds(rounds int) error {
	var p quantity.Problems
	if has := b.Kitchen.BoxPlaces; has > 0 && rounds > has && (b.Retard == nil || b.undivided()) && !b.Bulk.Box.IsZero() {
		p.AddCode("Bulk.Box", "more_than_there_is", quantity.Tell("bakeday.got_trays_in_box",
			"a final proof of %d trays in it, one for each round", rounds),
			quantity.Tell("bakeday.want_at_most_box_places", "at most %d, the places in the proofing box", has),
			quantity.ErrInconsistent)
	}
	return p.Err()
}

// workers are the pairs of hands.
func (k *Kitchen) workers() schedule.Resource {
	r := schedule.Resource{
		ID: hands, Name: working.Tell("bakeday.hands", "the baker's hands"), Capacity: max(1, k.Hands),
		Words: working.Tell("bakeday.one_pair", "one pair of hands"),
	}
	if k.Hands > 1 {
		r.Words = working.Tell("bakeday.pairs", "%d pairs of hands", k.Hands)
	}
	return r
}

// needsBowl reports whether nothing is planned for such a mixer without knowing its bowl.
func needsBowl(k mixing.MixerKind) bool { return k == mixing.Planetary || k == mixing.Spiral }

func (k *Kitchen) checkMixers(p *quantity.Problems) {
	want := quantity.Tell("bakeday.want_planetary_spiral_fork_or_processor",
		"planetary, spiral, fork or processor, each once")
	for i, m := range k.Mixers {
		path := fmt.Sprintf("Kitchen.Mixers[%d]", i)
		same := slices.IndexFunc(k.Mixers, func(o KitchenMixer) bool { return o.Kind == m.Kind })
		switch {
		case m.Kind == 0:
			p.Required(path+".Kind", want)
		case m.Kind == mixing.Hand || same < i:
			p.AddCode(path+".Kind", "no_such_mixer", m.Kind, want, quantity.ErrInconsistent)
		}
		if needsBowl(m.Kind) || !m.Bowl.IsZero() {
			quantity.Check(p, path+".Bowl", m.Bowl, quantity.Liters(0.5), quantity.Liters(400))
		}
		p.Duration(path+".Washing", m.Washing.Duration(), 0, 4*time.Hour)
	}
}

// checkMixer reports a mixer that the bake does not name, or that the kitchen does not have.
func (b *Bake) checkMixer(p *quantity.Problems) {
	kind := b.Mixing.Mixer
	if kind == 0 {
		p.Required("Mixing.Mixer", quantity.Tell("bakeday.want_mixer",
			"hand, planetary, spiral, fork or processor"))
		return
	}
	found := slices.ContainsFunc(b.Kitchen.Mixers, func(m KitchenMixer) bool { return m.Kind == kind })
	if kind != mixing.Hand && !found {
		p.AddCode("Mixing.Mixer", "not_in_kitchen", kind,
			quantity.Tell("bakeday.want_hand_or_mixer_stands_kitchen",
				"hand, or a mixer that stands in the kitchen, with its bowl, under kitchen.mixer"), quantity.ErrInconsistent)
	}
}
