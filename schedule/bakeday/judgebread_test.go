package bakeday

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
)

// one is a bread being judged: as it was ordered, as it is planned, and its steps by their IDs.
type one struct {
	*judge
	b  *Bake
	p  PlanData
	at map[string]StepData
}

// breadOf: in its order, within what its dough and its levain allow, and there when it is wanted.
func (j *judge) breadOf(b *Bake, p PlanData) {
	o := one{judge: j, b: b, p: p, at: map[string]StepData{}}
	for _, s := range p.Steps {
		o.at[s.ID] = s
	}
	o.inOrder()
	o.levain()
	o.beforehand()
	o.dough()
	o.cold()
	o.loads()
	o.wanted()
	o.weights()
	o.notes()
}

func (o one) say(format string, args ...any) { o.judge.say(o.p.Name+": "+format, args...) }

// last is the number of the last step of an ID with numbers.
func (o one) last(id string) int {
	n := 0
	for {
		if _, more := o.at[fmt.Sprintf("%s-%d", id, n+1)]; !more {
			return n
		}
		n++
	}
}

// within: a step takes no less and no more; a minute is the grid.
func (o one) within(id string, least, most time.Duration) {
	s, ok := o.at[id]
	if !ok {
		o.say("there is no %s", id)
	} else if d := s.Takes.Duration(); d < least || d > most {
		o.say("%s takes %v, not %v to %v", id, s.Takes, least, most)
	}
}

// inOrder: each step follows the one before at once.
func (o one) inOrder() {
	var chain []string
	add := func(id string) {
		if _, ok := o.at[id]; ok {
			chain = append(chain, id)
		}
	}
	add("ripen")
	for i := range o.last("mix") {
		add(fmt.Sprintf("mix-%d", i+1))
	}
	for _, id := range o.afterMixing() {
		add(id)
	}
	if len(chain) < 5 && !slices.Contains(chain, "bake-1") {
		o.say("steps are missing: %v", chain)
	}
	for i, id := range chain[1:] {
		if !o.at[chain[i]].End.Equal(o.at[id].Start) {
			o.say("%s does not follow %s", id, chain[i])
		}
	}
	if feed, ok := o.at["feed"]; ok && !feed.End.Equal(o.at["ripen"].Start) {
		o.say("the levain does not ripen from its feed on")
	}
	if !o.at["preheat"].End.Equal(o.at["bake-1"].Start) {
		o.say("the first load does not go into the heated oven")
	}
	if !o.at[fmt.Sprintf("bake-%d", o.last("bake"))].End.Equal(o.at["cool"].Start) {
		o.say("the bread does not cool when it is baked")
	}
}

// levain: used when it is ripe, and while it is good.
func (o one) levain() {
	l := o.b.Levain
	if l == nil {
		return
	}
	ripen, p := o.at["ripen"], o.p.Levain
	ripe := ripen.Takes.Duration()
	switch {
	case l.RipeNow || l.FedAgo > 0:
		since := l.FedAgo.Duration()
		if l.RipeNow {
			since = p.Peak.Likely
		}
		least, most := p.Peak.Likely-since, max(p.Until.Likely-since, time.Hour)
		if ripe < least-2*time.Minute || ripe > most+2*time.Minute {
			o.say("the levain that stands is used after %v, not %v to %v", ripe, least, most)
		}
		if _, fed := o.at["feed"]; fed {
			o.say("a levain that stands is fed")
		}
	case ripe < p.Peak.Likely-time.Minute || ripe > p.Until.Likely+2*time.Minute:
		o.say("the levain is used %v after feeding, at its peak after %v, good until %v", ripe, p.Peak.Likely, p.Until.Likely)
	}
	if l.CultureAtHand.Sign() > 0 && l.Name == "" && p.Short.IsZero() && !l.RipeNow && l.FedAgo == 0 &&
		p.Culture.Compare(l.CultureAtHand) > 0 {
		o.say("%v of culture of %v", p.Culture, l.CultureAtHand)
	}
}

// beforehand: preferments and soakers stand as long as their clock or their baker says, until the dough is mixed.
func (o one) beforehand() {
	mixed := o.at["mix-1"].Start
	stands := func(name string, kind schedule.StepKind, least, most time.Duration) {
		var made, waits, cools *StepData
		for i := range o.p.Steps {
			s := &o.p.Steps[i]
			switch {
			case s.Thing != name:
			case s.Kind == schedule.Make:
				made = s
			case s.Kind == kind && strings.HasPrefix(s.ID, "cool-down"):
				cools = s
			case s.Kind == kind:
				waits = s
			}
		}
		if made == nil || waits == nil {
			o.say("%s is not made", name)
			return
		}
		if d := waits.Takes.Duration(); d < least || d > most {
			o.say("%s stands %v, not %v to %v", name, d, least, most)
		}
		end := waits
		if cools != nil {
			if end = cools; !cools.Start.Equal(waits.End) {
				o.say("%s does not cool when it has stood", name)
			}
		}
		if !made.End.Equal(waits.Start) || !end.End.Equal(mixed) {
			o.say("%s: made until %v, stands %v to %v, mixed at %v", name, made.End, waits.Start, end.End, mixed)
		}
	}
	for _, x := range o.b.Preferments {
		least, most := x.AtLeast.Duration(), x.AtMost.Duration()
		if least == 0 && most == 0 {
			i := slices.IndexFunc(o.p.Preferments, func(r RipePreferment) bool { return r.Name == x.Name })
			if i < 0 {
				o.say("nothing is said of the %s", x.Name)
				continue
			}
			least, most = o.p.Preferments[i].Peak.Likely-time.Minute, o.p.Preferments[i].Until.Likely+time.Minute
		}
		stands(x.Name, schedule.Ripen, least, most)
	}
	for _, x := range o.b.Soakers {
		stands(x.Name, schedule.Stand, x.AtLeast.Duration(), x.AtMost.Duration())
	}
}

// dough: mixed batch by batch, folded at its interval, shaped when it is ready.
func (o one) dough() {
	batches := 1
	if o.p.Mixer != nil {
		batches = o.p.Mixer.Batches
	}
	if n := o.last("mix"); n != batches {
		o.say("%d batches, mixed %d times", batches, n)
	}
	mixing := o.b.Mixing.Takes.Duration()
	if mixing == 0 {
		mixing = 25 * time.Minute
	}
	for i := range o.last("mix") {
		o.within(fmt.Sprintf("mix-%d", i+1), mixing, mixing)
	}
	o.within("bulk", o.p.Bulk.Ready.Early-time.Minute, o.p.Bulk.Ready.Late+time.Minute)
	bulk := o.at["bulk"]
	every := cmpOr(o.b.Bulk.FoldEvery.Duration(), 40*time.Minute)
	folds := o.last("fold")
	if folds > o.b.Bulk.Folds {
		o.say("%d folds of %d", folds, o.b.Bulk.Folds)
	}
	before := bulk.Start
	for i := range folds {
		s := o.at[fmt.Sprintf("fold-%d", i+1)]
		if s.Start.Before(before) || s.End.After(bulk.End) {
			o.say("%s from %v to %v, outside of the bulk or in the fold before", s.ID, s.Start, s.End)
		}
		if late := s.Start.Sub(bulk.Start) - time.Duration(i+1)*every*5/4; late > time.Minute {
			o.say("%s is %v later than a quarter after its interval", s.ID, late)
		}
		before = s.End
	}
	if l := o.b.Bulk.Lamination; l != nil {
		s, rest := o.at["laminate"], cmpOr(l.Rest.Duration(), 30*time.Minute)
		if s.Start.Before(bulk.Start) || s.End.Add(rest).After(bulk.End) {
			o.say("laminated from %v to %v, in a bulk until %v", s.Start, s.End, bulk.End)
		}
	}
	if shaping := o.b.Shaping.Takes.Duration(); shaping > 0 {
		o.within(o.shaped(), shaping, shaping)
	}
	if o.b.Retard == nil {
		o.within("proof", o.p.Proof.Early-time.Minute, o.p.Proof.Late+time.Minute)
	}
}

func cmpOr(d, usual time.Duration) time.Duration {
	if d == 0 {
		return usual
	}
	return d
}

// cold: as long as the baker allows, with its warm-up.
func (o one) cold() {
	r := o.b.Retard
	if r == nil {
		return
	}
	o.within("retard", r.AtLeast.Duration(), r.AtMost.Duration())
	if o.p.Retard.For != o.at["retard"].Takes {
		o.say("%v in the cold are told, and %v are planned", o.p.Retard.For, o.at["retard"].Takes)
	}
	if r.Undivided {
		o.proofsCold()
		return
	}
	if r.WarmUp > 0 {
		if d := o.at["take-out"].Takes + o.at["warm-up"].Takes; d != r.WarmUp {
			o.say("%v to warm up, wanted are %v", d, r.WarmUp)
		}
	}
}

// loads: all loaves, each round as long as it bakes, the next one soon after; and hands at the oven while it bakes.
func (o one) loads() {
	v, n := o.p.Oven, o.last("bake")
	if n != v.Rounds || n*v.Each < o.p.Formula.Pieces || (n-1)*v.Each >= o.p.Formula.Pieces {
		o.say("%d rounds of %d for %d loaves", n, v.Each, o.p.Formula.Pieces)
	}
	if holds := o.day.Kitchen.Oven.Holds; holds > 0 && v.Each > holds*v.Decks {
		o.say("%d loaves on %d decks for %d each", v.Each, v.Decks, holds)
	}
	takes := (v.Covered + v.Uncovered).Duration()
	for i := range n {
		s := o.at[fmt.Sprintf("bake-%d", i+1)]
		boils := s.Takes.Duration() - takes
		switch {
		case boils < -time.Minute || boils > time.Minute && o.b.Loaves.Style != bake.Bagel:
			o.say("%s takes %v, not %v", s.ID, s.Takes, takes)
		case boils > 30*time.Minute:
			o.say("%s boils %v", s.ID, boils)
		}
		if i > 0 {
			before := o.at[fmt.Sprintf("bake-%d", i)]
			gap := s.Start.Sub(before.End)
			if gap+max(0, boils) < v.Reheat.Duration() || gap > v.Reheat.Duration()+15*time.Minute {
				o.say("round %d after %v, the oven reheats in %v", i+1, gap, v.Reheat)
			}
		}
	}
	for _, s := range o.p.Steps {
		if s.Kind != schedule.Tend {
			continue
		}
		round := o.at[fmt.Sprintf("bake-%d", s.Number)]
		if s.Start.Before(round.Start) || s.End.After(round.End) {
			o.say("%s from %v to %v is not in its round", s.ID, s.Start, s.End)
		}
		into := s.Start.Sub(round.Start) - max(0, round.Takes.Duration()-takes)
		if s.Phase == bake.Vent && into != v.Covered.Duration() {
			o.say("%s %v after loading, covered are %v", s.ID, into, v.Covered)
		}
	}
	heat := o.at["preheat"]
	hot := slices.ContainsFunc(o.day.Steps, func(s StepData) bool { // the oven is hot from another bread
		return s.Kind == schedule.Bake && s.Bread != o.p.Name && s.End.Equal(heat.Start)
	})
	if !hot && heat.Takes < v.Preheat {
		o.say("the oven is heated for %v of %v", heat.Takes, v.Preheat)
	}
}

// wanted: there when it is wanted, and not for longer than it is fresh.
func (o one) wanted() {
	cool, wish := o.at["cool"], o.b.Wanted
	if wish.IsZero() {
		wish = o.order.Wanted
	}
	if !cool.End.Equal(o.p.Wanted) {
		o.say("is there at %v, wanted %v", cool.End, o.p.Wanted)
	}
	if m := wish.Moment; m.Date.Year != 0 {
		if got := o.p.Wanted.Format("2006-01-02 15:04"); got != m.Date.String()+" "+m.Clock.String() {
			o.say("is wanted %v, planned for %v", wish, got)
		}
	} else if o.p.Wanted.Weekday() != wish.Weekday || o.p.Wanted.Format("15:04") != wish.Clock.String() {
		o.say("is wanted %v, planned for %v", wish, o.p.Wanted)
	}
	warm := o.b.Loaves.Warm || toOrder(o.b.Loaves.Style)
	usual := 12 * time.Hour
	if warm {
		usual = 30 * time.Minute
	}
	fresh := cmpOr(o.b.Loaves.FreshWithin.Duration(), usual)
	cooled := max(o.p.Oven.Cooling.Late, o.p.Oven.Rest.Duration()) // surely
	if warm {
		cooled = 5 * time.Minute // too hot to eat
	}
	if d := cool.Takes.Duration(); d < cooled || d > cooled+fresh+time.Minute {
		o.say("cools and waits %v: cool after %v, fresh for %v", d, cooled, fresh)
	}
}

// weights: every list and batch adds up, and what goes in later goes in once, at its step.
func (o one) weights() {
	for _, l := range o.p.Weigh {
		var sum quantity.Mass
		for _, line := range l.Lines {
			sum = sum.Add(line.Mass)
			var parts quantity.Mass
			for _, p := range line.Portions {
				parts = parts.Add(p)
			}
			if len(line.Portions) > 0 && parts != line.Mass {
				o.say("%s: the portions of %s make %v of %v", l.Name, line.Name, parts, line.Mass)
			}
		}
		if sum != l.Total {
			o.say("%s: the lines make %v of %v", l.Name, sum, l.Total)
		}
	}
	for _, line := range o.b.Inclusions {
		at, steps := line.At, 1
		switch {
		case line.Fold > 0:
			at = schedule.Fold
		case at == schedule.Bake:
			steps = o.p.Oven.Rounds
		case at == 0:
			steps = 0
		}
		var added quantity.Mass
		found := 0
		for _, s := range o.p.Steps {
			for _, a := range s.Adds {
				if a.Name != line.Name {
					continue
				}
				found, added = found+1, added.Add(a.Mass)
				if s.Kind != at || line.Fold > 0 && s.Number != line.Fold && s.Of > 1 {
					o.say("%s goes in at %s", line.Name, s.ID)
				}
			}
		}
		var weighed quantity.Mass
		for _, w := range o.p.Weigh[len(o.p.Weigh)-1].Lines {
			if w.Name == line.Name {
				weighed = w.Mass
			}
		}
		off := added.Sub(weighed).Grams()
		if found != steps || steps > 0 && (off < -1 || off > 1) {
			o.say("%s goes in at %d steps, wanted %d: %v of %v", line.Name, found, steps, added, weighed)
		}
	}
}

// notes: what the baker noted stands on its step.
func (o one) notes() {
	for _, n := range o.b.Notes {
		if !slices.ContainsFunc(o.p.Steps, func(s StepData) bool { return slices.Contains(s.Notes, n.Says) }) {
			o.say("the note on %s is lost", n.Step)
		}
	}
}
