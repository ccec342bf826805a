package bakeday

import (
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
	name := working.Tell("bakeday.step_levain_ripens", "levain ripens")
	if n.b.Levain.RipeNow {
		name = working.Tell("bakeday.step_levain_stands", "the levain stands ripe")
	}
	ripen := n.add(schedule.DayStep{
		ID: idRipen, Kind: schedule.Ripen, Thing: levainName, Name: name, Min: least, Max: most,
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

// bulk ferments and folds the dough until it is shaped or put into the cold.
func (n *network) bulk() {
	early, likely, late := grid(n.t.bulk.Early), grid(n.t.bulk.Likely), grid(n.t.bulk.Late)
	bulk := n.add(schedule.DayStep{
		ID: idBulk, Kind: schedule.Bulk, Name: n.b.standName(), Min: early,
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
	end := n.add(n.endOfBulk())
	n.atOnce(bulk, end)
	n.laminate(bulk, folds, end)
}

// rest is the cold or the final proof after shaping; it returns the ID of the last step.
func (n *network) rest() string {
	r := n.b.Retard
	if r == nil {
		early, likely, late := grid(n.t.proof.Early), grid(n.t.proof.Likely), grid(n.t.proof.Late)
		proof := n.add(schedule.DayStep{
			ID: idProof, Kind: schedule.Proof, Name: n.b.proofName(), Min: early, Max: late,
			Living: true, Likely: likely, Watch: baker,
		})
		n.atOnce(idShape, proof)
		return proof
	}
	rest := n.add(schedule.DayStep{
		ID: idRetard, Kind: schedule.Retard, Name: n.b.retardName(),
		Min: grid(r.AtLeast.Duration()), Max: grid(r.AtMost.Duration()),
		MinWords: working.Tell("bakeday.rule_retard_least", "retard at least %v", r.AtLeast),
		MaxWords: working.Tell("bakeday.rule_retard_most", "retard at most %v", r.AtMost),
	})
	n.atOnce(n.b.afterBulk(), rest)
	if r.Undivided {
		return n.coldDough(rest)
	}
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
