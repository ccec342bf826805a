package bakeday

import (
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

// laidOut is how far ahead temperatures in the room are followed; no bulk is planned to take longer.
const laidOut = 48 * time.Hour

// moments are where the rest of the plan puts the dough in time; they are guessed first and then
// taken from the timetable until they agree.
type moments struct {
	now     time.Time     // of the plan
	fed     time.Time     // the levain
	mixed   time.Time     // the last batch leaves the mixer
	retard  time.Duration // of the first loaves
	shaping time.Duration
	peaks   []time.Duration // of the preferments of which the baker says no hours
}

// usualFeed is the starter for each part of flour in a feed that nobody stated: for how long a ripe levain stays
// good. Judgment.
const usualFeed = 0.5

// leaven works out the levain: what it is built from, when it is ripe, how long it stays good. The partners are the
// breads of the day that the same levain feeds; without any it is the bread's own.
func (b *Bake) leaven(batch dough.Batch, m moments, zone *time.Location, partners []*planned) (*Leavening, error) {
	if b.Levain == nil {
		return nil, nil
	}
	l := &Leavening{}
	build, ok := batch.Build(levainName)
	if !ok {
		return nil, &quantity.InputError{
			GoPath: "Levain.Prefermented",
			Want:   quantity.Tell("bakeday.want_more_than_0_percent", "more than 0 %%"),
			Err:    quantity.ErrRequired,
		}
	}
	l.Build = build
	var flour, whole quantity.Mass
	for _, line := range build.Lines {
		switch line.Role {
		case dough.RoleFlour:
			flour = flour.Add(line.Mass)
			if line.Kind.WholeGrain() {
				whole = whole.Add(line.Mass)
			}
		case dough.RoleStarter:
			l.Culture = l.Culture.Add(line.Mass)
		}
	}
	made, culture := build.Made, l.Culture
	if len(partners) > 1 {
		made, culture = together(partners)
		l.Shared = made
	}
	needed, feed := culture, ferment.FeedRatio{
		Seed:          l.Culture.Grams(),
		Flour:         flour.Grams(),
		SeedHydration: b.Levain.CultureHydration,
	}
	if b.Levain.standing() {
		needed = made
		feed = ferment.FeedRatio{Seed: usualFeed, Flour: 1, SeedHydration: b.Levain.CultureHydration}
		if !b.Levain.Inoculation.IsZero() {
			feed.Seed = b.Levain.Inoculation.Fraction()
		}
	}
	if hand := b.Levain.CultureAtHand; !hand.IsZero() && hand.Compare(needed) < 0 {
		l.Short = needed.Sub(hand)
	}
	seed, err := feed.SeedShare()
	if err != nil {
		return nil, quantity.At("Levain.CultureHydration", err) // the inoculation was checked
	}
	history := ferment.Constant(b.Levain.Temperature)
	if b.Levain.Temperature.IsZero() {
		// Mixed with water that brings it to the room's temperature, it then follows the room.
		history, err = ferment.Piece{
			Mass: made, Form: ferment.Tub, Start: b.roomAt(m.fed, zone), Into: b.room(m.fed, zone), Exposure: ferment.Covered,
			For: quantity.Elapsed(laidOut),
		}.History()
		if err != nil {
			return nil, quantity.At("Levain", err)
		}
	}
	in := ferment.Ripening{
		Seed: seed, Hydration: b.Levain.Hydration, WholeGrain: whole.PercentOf(flour), History: history,
		Law: ferment.GasBalance(), ColdSeed: !b.Kitchen.Refrigerator.IsZero(),
	}
	if l.Ripeness, err = in.Ripe(); err != nil {
		return nil, quantity.At("Levain", err)
	}
	l.Temperature = history.At(l.Ripeness.Peak.Likely)
	l.Fed = m.fed
	if b.Levain.RipeNow { // it is at its peak now
		l.Fed = m.now.Add(-l.Ripeness.Peak.Likely)
	}
	return l, nil
}

// together is all that is made of a levain which feeds several doughs, and the starter in it.
func together(partners []*planned) (made, culture quantity.Mass) {
	for _, d := range partners {
		build, _ := d.Batch.Build(levainName)
		made = made.Add(build.Made)
		for _, line := range build.Lines {
			if line.Role == dough.RoleStarter {
				culture = culture.Add(line.Mass)
			}
		}
	}
	return made, culture
}

// rise works out the dough's clock from the mixer to the oven.
func (b *Bake) rise(batch dough.Batch, m moments, zone *time.Location) (Rising, error) {
	r := Rising{Retard: quantity.Elapsed(m.retard), Feasible: true}
	history, err := ferment.Piece{
		Mass: batch.Dough(), Form: ferment.Tub, Start: b.Mixing.Temperature, Into: b.proofing(m.mixed, zone),
		Exposure: ferment.Covered, For: quantity.Elapsed(laidOut),
	}.History()
	if err != nil {
		return r, quantity.At("Kitchen", err)
	}
	bulk := ferment.Bulk{
		Hydration: batch.EffectiveHydration().Hydration, Salt: batch.SaltShare(),
		Sugar:      batch.Share(dough.KindSweetener, dough.KindSyrup),
		WholeGrain: batch.WholeGrain(), History: history, Altitude: b.Kitchen.Altitude, Law: ferment.GasBalance(),
		Rise:    b.Bulk.Rise,
		Culture: b.Culture, Kneading: kneading(b.Mixing.Mixer), Enriched: b.enriched(),
	}
	if b.Levain != nil {
		bulk.Inoculation = b.Levain.Prefermented
	}
	b.leavenWithYeast(&bulk, m, zone)
	if b.Retard == nil {
		return b.riseInTheRoom(r, bulk, m)
	}
	return b.riseWithRetard(r, bulk, batch, m, zone)
}

// MixedAt answers: how does the dough of this day rise that left the mixer at this moment, and so warm? It rests in the
// cold as long as planned.
//
// Errors: ErrOutOfRange for a temperature that no dough has; those of the models.
func (d Day) MixedAt(at time.Time, dough quantity.Temperature) (Rising, error) {
	var p quantity.Problems
	quantity.Check(&p, "Mixing.Temperature", dough, quantity.Celsius(0), quantity.Celsius(50))
	if !d.made() {
		p.Required("Day", quantity.Tell("bakeday.want_day_planned", "a day that was planned"))
	}
	if err := p.ErrFor(d); err != nil {
		return Rising{}, err
	}
	m := d.moments()
	m.mixed, m.peaks = at, d.peaks()
	b := d.Bake
	b.Mixing.Temperature = dough
	return b.rise(d.Batch, m, d.Zone)
}

// riseInTheRoom divides the rise between bulk and a final proof.
func (b *Bake) riseInTheRoom(r Rising, bulk ferment.Bulk, m moments) (Rising, error) {
	r.HasProof = true
	whole := bulk
	whole.Rise = b.Bulk.Rise
	all, err := whole.Estimate()
	if err != nil {
		return r, b.from(ofRise, err)
	}
	if !b.Bulk.ShapeAt.IsZero() {
		return b.shapedAt(r, bulk, all, b.Bulk.ShapeAt, m)
	}
	// Two thirds before shaping, one third after: a judgment; doubled in bulk and half as much again in the
	// proof is common practice for yeast doughs. A quick or small rise would be over before the loaves are shaped:
	// it is shaped sooner, so that they proof for half an hour.
	shares := []float64{2.0 / 3, 0.5, 0.35, leastShare}
	if b.batter() {
		shares = shares[len(shares)-1:] // it has no bulk: it swells for some minutes
	}
	for _, share := range shares {
		if r, err = b.shapedAt(r, bulk, all, quantity.NewPercent(b.Bulk.Rise.Points()*share), m); err != nil ||
			r.Proof.Likely >= shortestProof {
			break
		}
	}
	return r, err
}

const (
	leastShare    = 0.2              // of the rise that comes before shaping
	shortestProof = 30 * time.Minute // that is planned for
	leastProof    = 15 * time.Minute // whatever the dough does
)

// shapedAt is the proof of a dough shaped at a given rise. It goes on at the same clock; the bulk having been watched,
// its pace is known.
func (b *Bake) shapedAt(
	r Rising,
	bulk ferment.Bulk,
	all ferment.Estimate,
	at quantity.Percent,
	m moments,
) (Rising, error) {
	r.ShapeAt, bulk.Rise = at, at
	var err error
	if r.Bulk, err = bulk.Estimate(); err != nil {
		if !b.Bulk.ShapeAt.IsZero() {
			return r, quantity.At("Bulk.ShapeAt", err)
		}
		return r, b.from(ofRise, err)
	}
	shaped := r.Bulk.Ready().Likely
	seen, err := all.Update(ferment.RiseReading{At: quantity.Elapsed(shaped), Rise: at})
	if err != nil {
		return r, b.from(ofRise, err)
	}
	r.Proof = seen.Now.Ready().Add(-shaped - m.shaping)
	r.Proof.Early, r.Proof.Likely, r.Proof.Late = max(r.Proof.Early, leastProof), max(r.Proof.Likely,
		leastProof), max(r.Proof.Late, leastProof)
	baked := shaped + m.shaping + r.Proof.Likely
	r.Shaped, r.Into = bulk.History.At(shaped), bulk.History.At(baked)
	r.InOven, err = seen.Now.RiseAt(baked)
	return r, err
}

// riseWithRetard asks how far the dough may rise before it is shaped or put into the cold, given the cold that follows.
func (b *Bake) riseWithRetard(
	r Rising,
	bulk ferment.Bulk,
	batch dough.Batch,
	m moments,
	zone *time.Location,
) (Rising, error) {
	proof := ferment.Proof{
		Bulk:   bulk,
		Bench:  quantity.Elapsed(m.shaping),
		Stages: b.stages(batch, m, zone),
		Total:  b.Bulk.Rise,
	}
	if b.undivided() {
		proof.Bench = puttingIn
	}
	target, err := proof.RiseBeforeShaping()
	if err != nil {
		return r, b.from(ofRise, err)
	}
	r.Target, r.Bulk = target, target.Shape
	r.ShapeAt, r.InOven, r.Unrisen, r.Feasible = target.Rise, target.After, target.Unrisen, target.Feasible
	r.Shaped, r.FromCold, r.Into = target.Shaped, target.Then[1], target.Then[len(target.Then)-1]
	if wish := b.Bulk.ShapeAt; !wish.IsZero() {
		return b.shapedAsWished(r, proof, wish)
	}
	return r, nil
}

// piece is the form in which a shaped piece rests: dough for a tray lies flat in it, a baguette is a long roll. Balls
// for pizza are stretched only when they are baked. The proportions are judgment.
func (b *Bake) piece(mass quantity.Mass) ferment.Piece {
	p := ferment.Piece{Mass: mass, Form: ferment.Round}
	switch {
	case b.Loaves.toOrder():
	case b.Loaves.Shape.For(b.Loaves.Style) == bake.Sheet:
		p.Form, p.Height, p.Metallic = ferment.SlabOfDough, quantity.Centimeters(2), true
	case b.Loaves.Shape.For(b.Loaves.Style) == bake.Flat:
		p.Form, p.Height = ferment.SlabOfDough, quantity.Centimeters(1)
	case b.Loaves.Shape.For(b.Loaves.Style) == bake.Thin:
		p.Form, p.Height = ferment.Log, quantity.Centimeters(50)
	}
	return p
}

// shapedAsWished is a retarded dough shaped at a rise of the baker's, whatever that makes of it in the oven.
func (b *Bake) shapedAsWished(r Rising, proof ferment.Proof, wish quantity.Percent) (Rising, error) {
	proof.ShapeAt = wish
	target, err := proof.RiseBeforeShaping()
	if err != nil {
		return r, b.from(ofRise, err)
	}
	r.ShapeAt, r.InOven, r.Feasible, r.Bulk = wish, target.After, true, target.Shape
	r.Shaped, r.FromCold, r.Into = target.Shaped, target.Then[1], target.Then[len(target.Then)-1]
	return r, nil
}

// leavenWithYeast puts commercial yeast into the dough: what is weighed into it, and what has grown in poolish and
// the like.
func (b *Bake) leavenWithYeast(bulk *ferment.Bulk, m moments, zone *time.Location) {
	y, ok := b.yeast()
	if !ok {
		return
	}
	left := y.Percent
	for i := range b.Preferments {
		p := &b.Preferments[i]
		if p.Yeast.IsZero() {
			continue
		}
		left = left.Sub(p.Prefermented.OfPercent(p.Yeast))
		stands := b.standing(i, m)
		history := ferment.Constant(p.Temperature)
		if p.Temperature.IsZero() {
			history = ferment.Constant(b.roomAt(m.mixed.Add(-stands), zone))
		}
		bulk.Preferments = append(bulk.Preferments, ferment.HandedOn{
			Flour: p.Prefermented, Ripened: quantity.Elapsed(stands),
			Of: ferment.Ripening{
				Yeast: ferment.Yeast{
					Kind:   yeastKind(y.Kind),
					Amount: p.Yeast,
				}, Hydration: b.wetness(*p), Salt: p.Salt, History: history, Law: bulk.Law,
			},
		})
	}
	if left.Compare(leastYeast) >= 0 {
		bulk.Yeast = ferment.Yeast{Kind: yeastKind(y.Kind), Amount: left}
	}
}

// leastYeast is less than any scale shows: what is left of the formula's yeast when preferments hold all of it.
var leastYeast = quantity.NewPercent(0.001)
