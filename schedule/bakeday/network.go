package bakeday

import (
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/wallclock"
)

// times are the durations that the other rooms computed for one bake.
type times struct {
	ripe, past time.Duration // after feeding: at its peak, good until
	fed        time.Time     // of a levain that stands ready or ripens already
	bulk       quantity.TimeRange
	proof      quantity.TimeRange // in the room; zero with a retard
	cool       time.Duration
	mixes      int
	rounds     int
	boil       quantity.Elapsed   // of bagels, before each round
	ripens     []ferment.Ripeness // of each preferment; zero where the baker says how long it stands
	cools      []time.Duration    // each soaker, from hot until it is cool enough for the dough
}

// company is what a bake has to do with the other breads of its day.
type company struct {
	several bool // there are others
	fed     bool // its levain is fed with that of another bread, and there
	// closed are the absences of the kitchen
	closed func(within wallclock.Occurrence) ([]schedule.Span, error)
}

// grid rounds a duration up to the minute, which is the grid of the timetable.
func grid(d time.Duration) quantity.Elapsed {
	return quantity.Elapsed((d + time.Minute - 1).Truncate(time.Minute))
}

// network lays the bake out as steps and rules, in the baker's words. A layout adds what it keeps to beyond the rules.
func (b *Bake) network(now, wanted time.Time, zone *time.Location, t times, c company) (*network, error) {
	anchor := now.In(zone).Truncate(time.Minute)
	if anchor.Before(now) {
		anchor = anchor.Add(time.Minute)
	}
	horizon := wanted.Sub(anchor) + 48*time.Hour // room to find the next time that works
	p := schedule.Problem{Anchor: anchor, Horizon: quantity.Elapsed(horizon), Firm: true}
	closed, err := c.closed(wallclock.Occurrence{From: anchor.Add(-24 * time.Hour), To: anchor.Add(horizon)})
	if err != nil {
		return nil, err
	}
	p.Resources = []schedule.Resource{{ID: baker, Name: working.Tell("bakeday.baker", "the baker"), Closed: closed}}
	n := &network{b: b, t: t, p: &p, company: c}
	n.there = []schedule.Need{{Resource: baker, Amount: 1}}
	n.work = n.there
	if len(b.beforehand()) > 0 || c.several {
		// What is made beforehand is the only work of one bread that could fall together with other work: two hands do
		// one thing at a time. Heating the oven and minding the bake leave them free.
		p.Resources = append(p.Resources, b.Kitchen.workers())
		n.work = append(n.work[:1:1], schedule.Need{Resource: hands, Amount: 1})
	}
	if n.folding, err = b.folding(t.bulk); err != nil {
		return nil, err
	}
	n.mixed(n.levain(), n.beforehand())
	n.bulk()
	n.oven(n.rest())
	p.Bounds = append(p.Bounds, schedule.Bound{
		Step: idCool, Edge: schedule.End, Earliest: wanted, Latest: wanted, Wanted: true,
		Words: working.Tell("bakeday.rule_wanted", "wanted %v", wanted.In(zone)),
	})
	return n, nil
}

// network is a bake being laid out as steps and rules.
type network struct {
	company
	b           *Bake
	t           times
	p           *schedule.Problem
	there, work []schedule.Need // somebody has to be there; and to have hands free
	folding     folding
	folds       []int // the links that say when to fold
	cool        int   // the step in which the bread cools
}

func (n *network) add(s schedule.DayStep) string {
	switch s.Kind {
	case schedule.Retard, schedule.Stand, schedule.Ripen: // the baker's own limits, but for the levain's
		s.MinFirm, s.MaxFirm = s.ID == idRipen, s.ID == idRipen
	case schedule.Cool: // how fresh the bread is to be is the baker's to say
		s.MinFirm = true
	default:
		s.MinFirm, s.MaxFirm = true, true
	}
	s.Bread = n.b.Name
	n.p.Steps = append(n.p.Steps, s)
	return s.ID
}

func (n *network) atOnce(from, to string) {
	if from != "" {
		n.p.Links = append(n.p.Links, schedule.Link{From: from, To: to, Firm: true})
	}
}

// levain feeds it and lets it ripen, and returns the ID of the last step.
func (n *network) levain() string {
	l := n.b.Levain
	if l == nil {
		return ""
	}
	ripe, past := grid(n.t.ripe), grid(n.t.past)
	if l.standing() {
		return n.standing()
	}
	feed := ""
	if !n.fed {
		feed = n.add(n.feed())
	}
	ripen := n.add(schedule.DayStep{
		ID: idRipen, Kind: schedule.Ripen, Thing: levainName,
		Name: working.Tell("bakeday.step_levain_ripens", "levain ripens"), Min: ripe, Max: past,
		MinWords: working.Tell("bakeday.rule_levain_peak", "the levain takes about %v to its peak", ripe),
		MaxWords: working.Tell("bakeday.rule_levain_past", "the levain is past its best after %v", past),
	})
	n.atOnce(feed, ripen)
	return ripen
}

func (n *network) feed() schedule.DayStep {
	return schedule.DayStep{
		ID: idFeed, Kind: schedule.Feed, Thing: levainName, Name: working.Tell("bakeday.step_feed", "feed the levain"),
		Min: grid(n.b.Levain.Takes.Duration()), Needs: n.work,
	}
}

// standing is a levain that is ripe, or ripening, when the plan begins: it has no feed, and it is used while it is
// good.
func (n *network) standing() string {
	since := n.p.Anchor.Sub(n.t.fed)
	least := grid(max(0, n.t.ripe-since))
	most := max(least, grid(n.t.past-since), quantity.Elapsed(time.Hour)) // one that is past its best is taken soon
	ripen := n.add(schedule.DayStep{
		ID: idRipen, Kind: schedule.Ripen, Thing: levainName,
		Name: working.Tell("bakeday.step_levain_ripens", "levain ripens"), Min: least, Max: most,
		MinWords: working.Tell("bakeday.rule_levain_ripe_in", "the levain is at its peak in about %v", least),
		MaxWords: working.Tell("bakeday.rule_levain_good_for", "the levain is good for about %v more", most),
	})
	n.p.Bounds = append(n.p.Bounds, schedule.Bound{
		Step: ripen, Edge: schedule.Start, Earliest: n.p.Anchor, Latest: n.p.Anchor, Firm: true,
		Words: working.Tell("bakeday.rule_levain_stands", "the levain stands there now"),
	})
	return ripen
}

// beforehand makes poolishes, soakers and the like, and returns the IDs of their last steps.
func (n *network) beforehand() []string {
	var last []string
	all := n.beforehandAt()
	for i, s := range all {
		made := n.add(schedule.DayStep{
			ID: nth(schedule.Make.String(), i), Kind: schedule.Make, Thing: s.name, Number: i + 1, Of: len(all),
			Name: working.Tell("bakeday.step_make", "make the %v", s.name), Min: grid(s.takes), Needs: n.work,
		})
		least, most := working.Tell("bakeday.rule_stands_least", "the %v stands at least %v", s.name,
			quantity.Elapsed(s.least)), working.Tell("bakeday.rule_stands_most", "the %v stands at most %v", s.name,
			quantity.Elapsed(s.most))
		title := working.Tell("bakeday.step_stands", "%v stands", s.name)
		if s.waits == schedule.Ripen {
			least, most = working.Tell("bakeday.rule_ripens_least", "the %v ripens at least %v", s.name,
				quantity.Elapsed(s.least)), working.Tell("bakeday.rule_ripens_most", "the %v ripens at most %v",
				s.name, quantity.Elapsed(s.most))
			title = working.Tell("bakeday.step_ripens", "%v ripens", s.name)
		}
		if s.computed {
			least = working.Tell("bakeday.rule_preferment_peak", "the %v takes about %v to its peak", s.name,
				quantity.Elapsed(s.least))
			most = working.Tell("bakeday.rule_preferment_past", "the %v is past its best after %v", s.name,
				quantity.Elapsed(s.most))
		}
		wait := n.add(schedule.DayStep{
			ID: nth(
				s.waits.String(),
				i,
			), Kind: s.waits, Thing: s.name, Number: i + 1, Of: len(all), Name: title, Min: grid(s.least), Max: grid(s.most),
			MinWords: least, MaxWords: most,
		})
		if s.computed {
			ripens := &n.p.Steps[len(n.p.Steps)-1]
			ripens.MinFirm, ripens.MaxFirm = true, true
		}
		n.atOnce(made, wait)
		last = append(last, n.cooling(i, s.name, wait))
	}
	return last
}

// mixed mixes the batches as soon as the levain is ripe, with everything that stands ready.
func (n *network) mixed(previous string, standing []string) {
	for i := range n.t.mixes {
		s := numbered(schedule.Mix, idMix, i, n.t.mixes, working.Tell("bakeday.step_mix", "mix the dough"))
		s.Min, s.Needs = grid(n.b.Mixing.Takes.Duration()), n.work
		mix := n.add(s)
		n.atOnce(previous, mix)
		if i == 0 {
			for _, wait := range standing {
				n.atOnce(wait, mix)
			}
		}
		previous = mix
	}
}

// bulk ferments and folds the dough until it is shaped.
func (n *network) bulk() {
	early, likely, late := grid(n.t.bulk.Early), grid(n.t.bulk.Likely), grid(n.t.bulk.Late)
	bulk := n.add(schedule.DayStep{
		ID: idBulk, Kind: schedule.Bulk, Name: working.Tell("bakeday.step_bulk", "bulk fermentation"), Min: early,
		Max: late, Living: true, Likely: likely, Watch: baker,
	})
	n.atOnce(nth(idMix, n.t.mixes-1), bulk)
	of := n.folding.planned
	var folds []string
	for i := range of {
		s := numbered(schedule.Fold, idFold, i, of, working.Tell("bakeday.step_fold", "fold"))
		s.Min, s.Needs = n.folding.takes, n.work
		least, most := n.folding.between(i+1, everFar)
		n.folds = append(n.folds, len(n.p.Links))
		about := working.Tell("bakeday.rule_fold", "fold %d about %v into the bulk", i+1, n.folding.due(i+1))
		folds = append(folds, n.add(s))
		n.p.Links = append(n.p.Links, schedule.Link{
			From: bulk, To: folds[i], Kind: schedule.StartToStart, Min: least, Max: most, Firm: true, MinWords: about,
			MaxWords: about,
		})
	}
	shape := n.add(
		schedule.DayStep{
			ID:    idShape,
			Kind:  schedule.Shape,
			Name:  n.b.shapeName(),
			Min:   grid(n.b.Shaping.Takes.Duration()),
			Needs: n.work,
		},
	)
	n.atOnce(bulk, shape)
	n.laminate(bulk, folds, shape)
}

// rest is the cold or the final proof after shaping; it returns the ID of the last step.
func (n *network) rest() string {
	r := n.b.Retard
	if r == nil {
		early, likely, late := grid(n.t.proof.Early), grid(n.t.proof.Likely), grid(n.t.proof.Late)
		proof := n.add(schedule.DayStep{
			ID: idProof, Kind: schedule.Proof, Name: working.Tell("bakeday.step_proof", "final proof"), Min: early, Max: late,
			Living: true, Likely: likely, Watch: baker,
		})
		n.atOnce(idShape, proof)
		return proof
	}
	rest := n.add(schedule.DayStep{
		ID: idRetard, Kind: schedule.Retard, Name: working.Tell("bakeday.step_retard", "cold retard"),
		Min: grid(r.AtLeast.Duration()), Max: grid(r.AtMost.Duration()),
		MinWords: working.Tell("bakeday.rule_retard_least", "retard at least %v", r.AtLeast),
		MaxWords: working.Tell("bakeday.rule_retard_most", "retard at most %v", r.AtMost),
	})
	n.atOnce(idShape, rest)
	if r.WarmUp <= 0 {
		return rest
	}
	out := n.add(
		schedule.DayStep{
			ID:    idOut,
			Kind:  schedule.TakeOut,
			Name:  working.Tell("bakeday.step_take_out", "take out of the cold"),
			Min:   takingOut,
			Needs: n.there,
		},
	)
	n.atOnce(rest, out)
	warm := n.add(
		schedule.DayStep{
			ID:   idWarm,
			Kind: schedule.WarmUp,
			Name: working.Tell("bakeday.step_warm_up", "warm up"),
			Min:  r.warming() - takingOut,
			Max:  r.warming() - takingOut,
		},
	)
	n.atOnce(out, warm)
	return warm
}

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
	for _, c := range []struct {
		id          string
		name        working.Message
		bulk, proof time.Duration
	}{
		{idEarly, working.Tell("bakeday.step_shape_early", "divide and shape, if the dough is early"), n.t.bulk.Early,
			n.t.proof.Early},
		{idLate, working.Tell("bakeday.step_shape_late", "divide and shape, if the dough is late"), n.t.bulk.Late,
			n.t.proof.Late},
	} {
		bulk := grid(drawn(c.bulk, n.t.bulk.Likely, l.share))
		shaping := grid(n.b.Shaping.Takes.Duration())
		p.Steps = append(
			p.Steps,
			schedule.DayStep{
				ID:      c.id,
				Bread:   n.b.Name,
				MinFirm: true,
				MaxFirm: true,
				Kind:    schedule.Shape,
				Name:    c.name,
				Spare:   true,
				Min:     shaping,
				Needs:   n.there,
			},
		)
		p.Links = append(p.Links,
			schedule.Link{From: idBulk, To: c.id, Kind: schedule.StartToStart, Min: bulk, Max: bulk, Firm: true})
		if r := n.b.Retard; r != nil {
			p.Links = append(p.Links, schedule.Link{
				From: c.id, To: nth(idBake, 0), Min: grid(r.AtLeast.Duration()) + r.warming(), Max: grid(r.AtMost.Duration()) +
					r.warming(), Firm: true,
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

// baking is how long all rounds take.
func (n *network) baking() quantity.Elapsed {
	return quantity.Elapsed(n.t.rounds)*n.round() + quantity.Elapsed(n.t.rounds-1)*n.reheats()
}

// round is how long one round takes: bagels boil before they bake.
func (n *network) round() quantity.Elapsed {
	return n.t.boil + grid(n.b.Oven.Covered.Duration()+n.b.Oven.Uncovered.Duration())
}

// reheats is from one round to the next: the oven gets hot again while the next bagels boil.
func (n *network) reheats() quantity.Elapsed {
	return max(0, grid(n.b.Oven.Reheat.Duration())-n.t.boil)
}

// fresh is for how long the bread may wait when it is cool.
func (n *network) fresh(l layout) quantity.Elapsed {
	fresh := grid(n.b.Loaves.FreshWithin.Duration())
	if l.fresh && n.b.Loaves.FreshWithin == usualFreshness {
		fresh = grid(fresh.Duration() / 2)
	}
	return fresh
}

// drawn is an end of a range, drawn toward what is likely.
func drawn(end, likely time.Duration, share float64) time.Duration {
	return likely + time.Duration(float64(end-likely)*share)
}

// foldSlack is how far a fold may be moved: a quarter of the time since mixing.
func foldSlack(at quantity.Elapsed) quantity.Elapsed {
	return quantity.Elapsed((at / 4).Duration().Truncate(time.Minute))
}

// closed lists when the baker's hands are not there.
func (k *Kitchen) closed(within wallclock.Occurrence, zone *time.Location) ([]schedule.Span, error) {
	var habits []wallclock.Habit
	add := func(name string, list []wallclock.Habit) {
		for _, h := range list {
			if h.Name == "" {
				h.Name = name
			}
			habits = append(habits, h)
		}
	}
	add("asleep", k.Asleep)
	add("away", k.Away)
	var out []schedule.Span
	for _, h := range habits {
		spans, err := wallclock.Expand([]wallclock.Habit{h}, within, zone)
		if err != nil {
			return nil, err
		}
		for _, s := range wallclock.Clip(spans, within) {
			out = append(out, schedule.Span{From: s.From.In(zone), To: s.To.In(zone), Words: absence(h)})
		}
	}
	slices.SortStableFunc(out, func(a, b schedule.Span) int { return a.From.Compare(b.From) })
	return out, nil
}

// absence is a habit without its days: "asleep 22:30 to 06:30".
func absence(h wallclock.Habit) working.Message {
	if h.From == h.To {
		return working.Tell("bakeday.absence_all_day", "%s all day", h.Name)
	}
	return working.Tell(
		"bakeday.absence", "%s %02d:%02d to %02d:%02d", h.Name, h.From.Hour, h.From.Minute, h.To.Hour, h.To.Minute,
	)
}

// freshWords say how long the bread may wait; a change of it is told from the oven on, so that is said too.
func (b *Bake) freshWords(cooled quantity.Elapsed) working.Message {
	if b.Loaves.Warm {
		return working.Tell("bakeday.rule_warm", "the bread is warm, within %v of the oven", b.Loaves.FreshWithin)
	}
	return working.Tell("bakeday.rule_fresh", "the bread is fresh, within %v of being cool, which is %v from the oven",
		b.Loaves.FreshWithin, cooled+grid(b.Loaves.FreshWithin.Duration()))
}

// staysHot is how long a heated oven may wait for loaves that proof. Judgment.
const staysHot = quantity.Elapsed(2 * time.Hour)

// takingOut is how long hands are busy when the loaves leave the refrigerator; the warm-up begins with it.
const takingOut = quantity.Elapsed(5 * time.Minute)

// warming is the time from the refrigerator to the oven.
func (r *Retard) warming() quantity.Elapsed {
	if r.WarmUp <= 0 {
		return 0
	}
	return max(grid(r.WarmUp.Duration()), takingOut+quantity.Elapsed(time.Minute))
}
