package bakeday

import (
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule"
)

// What is made hot is kept hot as long as it stands, as food rules ask for, and is then spread out and cools until
// levain or yeast may come near it.
var (
	// usualMash is the mash that a scald is made for; common practice, no source.
	usualMash = quantity.Celsius(65)
	// coolEnough is how warm it may be when it goes into the dough; package mixing says the same.
	coolEnough = quantity.Celsius(30)
	// spread is how thick it lies while it cools: judgment, so that it passes the warm hours within two.
	spread = quantity.Centimeters(2)
)

const (
	// nearEnough is how near it comes to a room that is itself nearly too warm. Judgment.
	nearEnough = 2.0 // °C
	// coolsAtMost is where the looking for a time ends.
	coolsAtMost = 24 * time.Hour
	// layingOut is how much colder than its room a layer starts whose course is laid out: the series is linear in it.
	layingOut = 20.0 // °C
)

// hot is how hot a soaker is until it is cooled; ok is false for one that is made cold, and for one of which the baker
// says how warm it goes into the dough.
func (d *Day) hot(i int) (at quantity.Temperature, ok bool) {
	s := d.Bake.Soakers[i]
	if s.Kind != dough.Scald && s.Kind != dough.HotSoaker || !s.Temperature.IsZero() {
		return at, false
	}
	mash, known := d.mash(i, d.Bake.coldFlour())
	if known && (s.Kind == dough.HotSoaker || !mash.Feasible) {
		return mash.WithBoiling, true
	}
	return usualMash, true
}

// cools answers how long a thin layer takes from hot until it is cool enough, and how warm it is then. Accuracy:
// about a quarter, as the surface coefficient is known. Source: as [ferment.Piece.History].
func cools(hot, room quantity.Temperature) (time.Duration, quantity.Temperature, error) {
	way, err := ferment.Piece{
		Mass: quantity.Kilograms(1), Form: ferment.SlabOfDough, Height: spread, Exposure: ferment.Open,
		Into: ferment.Room{Night: room}, Start: room.Add(quantity.DeltaCelsius(-layingOut)),
		For: quantity.Elapsed(coolsAtMost),
	}.History()
	if err != nil {
		return 0, room, quantity.At("Kitchen", err)
	}
	from, around := hot.Celsius(), room.Celsius()
	at := func(t time.Duration) float64 {
		return around + (from-around)*(around-way.At(t).Celsius())/layingOut
	}
	to, t := max(coolEnough.Celsius(), around+nearEnough), time.Duration(0)
	for t < coolsAtMost && at(t) > to {
		t += time.Minute
	}
	return t, quantity.Celsius(at(t)), nil
}

// soak works out the soakers: how warm they go into the dough, and how long the hot ones cool.
func (d *Day) soak(b *Bake, m moments) error {
	d.soaked, d.cools = nil, nil
	room := b.roomAt(m.mixed, d.Zone)
	var p quantity.Problems
	for i, s := range b.Soakers {
		at, takes := room, time.Duration(0)
		if !s.Temperature.IsZero() {
			at = s.Temperature
		}
		if hot, ok := d.hot(i); ok && room.IsValid() {
			var err error
			takes, at, err = cools(hot, room)
			p.Join("", err)
		}
		d.soaked, d.cools = append(d.soaked, at), append(d.cools, takes)
	}
	return p.Err()
}

// cooling lays out the cooling of a soaker that was kept hot until then, and returns the ID of the step.
func (n *network) cooling(i int, made, hot string) string {
	soaker := i - len(n.b.Preferments)
	if soaker < 0 || soaker >= len(n.t.cools) || n.t.cools[soaker] == 0 {
		return hot
	}
	takes := grid(n.t.cools[soaker])
	step := n.add(schedule.DayStep{
		ID: nth(idCoolDown, i), Kind: schedule.Stand, Thing: made,
		Name: working.Tell("bakeday.step_cool_down", "spread the %v %.0f thin; it cools to %.0f", made, spread,
			coolEnough),
		Min:      takes,
		MinWords: working.Tell("bakeday.rule_cool_down", "the %v cools for %v before it goes into the dough", made, takes),
	})
	n.atOnce(hot, step)
	p := &n.p.Steps[len(n.p.Steps)-1]
	p.MinFirm, p.MaxFirm = true, true
	return step
}
