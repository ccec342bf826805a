package schedule

import (
	"context"
	"slices"
	"strconv"

	"example.org/maslin/dough/working"
	"example.org/maslin/internal/planner"
	"example.org/maslin/internal/sources"
)

// refusal derives a "no": what a shared resource is short of, the rules that clash, added up one after the other
// against the time there is, and how the nearest time that works comes about.
func (t Timetable) refusal() working.Working {
	r := refusing{Derivation: working.Derive(working.Tell("schedule.refusal", "why the times cannot be kept")), c: t.c}
	if s := t.Conflict.Shortage; s != nil {
		r.shortage(s)
	}
	kept := map[int]bool{}
	for _, id := range t.core {
		kept[id] = true
	}
	r.clash(t.c.net.Only(kept).Refutation(limited(describeWork)))
	r.nearest(t.After, t.Conflict)
	return r.Working()
}

// refusing makes the steps of a refusal.
type refusing struct {
	*working.Derivation
	c       *compiled
	lengths int // how many lengths of time were named
	sums    int
}

// stretch is a part of a chain in which each event follows the one before it by a length of time, from a moment on.
type stretch struct {
	from    working.Expr
	lengths []working.Expr
	signs   []bool // that a length is added
	turns   []working.Message
	last    planner.Push
}

// clash adds up the chain of rules that refutes itself.
func (r *refusing) clash(chain []planner.Push) {
	if len(chain) == 0 {
		return
	}
	closing := chain[len(chain)-1]
	if closing.Event != 0 {
		r.circle(chain)
		return
	}
	found := r.along(chain[:len(chain)-1])
	if found.String() == "" || closing.Rule < 0 {
		return
	}
	before := chain[len(chain)-2].Value
	limit := working.Given("W", working.Tell("schedule.last_moment", "the last moment: %v",
		r.c.rules[closing.Rule].words()), r.c.when(before-closing.Value))
	r.Find(working.Finding{
		Name:   working.Tell("schedule.missed_by_rules", "by which these rules alone miss it"),
		Symbol: "Δ", Is: r.c.long(closing.Value), By: found.Minus(limit), Source: sources.TemporalNetworks,
		Brief: working.Tell("schedule.brief_missed", "One after the other, these rules end %v too late.",
			r.c.long(closing.Value)),
	})
}

// along adds up a chain from a moment of the clock: one sum for each stretch between two moments that a rule gives.
func (r *refusing) along(chain []planner.Push) (found working.Expr) {
	var s stretch
	at := 0 // the value of the event before
	for _, p := range chain {
		words := working.Tell("schedule.ends_after_start", "a step ends after it starts")
		if p.Rule >= 0 {
			words = r.c.said(p.Rule)
		}
		switch {
		case p.Jumped:
			if len(s.lengths) > 0 {
				r.close(s)
			}
			s = stretch{from: working.Given("A", working.Tell("schedule.moment_after", "the first moment after: %v", words),
				r.c.when(p.Value))}
		case p.From == 0:
			s = stretch{from: working.Given("B", working.Tell("schedule.first_moment", "the first moment: %v", words),
				r.c.when(p.Value))}
		case p.Value == at:
			if k := p.Rule; k >= 0 && (r.c.rules[k].kind == Capacity || r.c.rules[k].kind == InOrder) {
				s.turns = append(s.turns, words)
			}
		default:
			gap, later := p.Value-at, p.Value > at
			if !later {
				gap = -gap
			}
			r.lengths++
			s.lengths = append(s.lengths, working.Given("T_"+strconv.Itoa(r.lengths), words, r.c.long(gap)))
			s.signs = append(s.signs, later)
		}
		at, s.last = p.Value, p
	}
	return r.close(s)
}

// close adds up a stretch: its lengths, and the moment at its end.
func (r *refusing) close(s stretch) working.Expr {
	if s.from.String() == "" {
		return working.Expr{}
	}
	if len(s.lengths) == 0 {
		return s.from
	}
	r.sums++
	n := strconv.Itoa(r.sums)
	by := s.from
	if len(s.lengths) > 1 && !slices.Contains(s.signs, false) {
		by = by.Plus(r.Find(working.Finding{
			Name:   working.Tell("schedule.stretch_sum", "the rules one after the other, stretch %d", r.sums),
			Symbol: "P_" + n, Unit: working.Minute, Decimals: working.WholeNumber, By: working.Sum(s.lengths...),
			Note: working.Tell("schedule.no_turns", "each begins when the one before it is done"), Source: working.Algebra(),
		}))
	} else {
		for i, x := range s.lengths {
			if s.signs[i] {
				by = by.Plus(x)
			} else {
				by = by.Minus(x)
			}
		}
	}
	f := working.Finding{
		Name:   r.reached(s.last.Event),
		Symbol: "E_" + n, Is: r.c.when(s.last.Value), Unit: working.Clock, By: by,
		Source: sources.TemporalNetworks,
	}
	if len(s.turns) > 0 {
		f.Note = working.Tell("schedule.turns", "waiting for a turn: %v", working.Join(distinct(s.turns), "; "))
	}
	return r.Find(f)
}

// reached names the event at the end of a stretch.
func (r *refusing) reached(v int) working.Message {
	if v > 2*len(r.c.in.Steps) {
		return working.Tell("schedule.earliest_wanted", "the earliest the wanted time can be")
	}
	title := r.c.in.Steps[(v-1)/2].label().Title()
	if v%2 == 1 {
		return working.Tell("schedule.earliest_start", "earliest start of %v", title)
	}
	return working.Tell("schedule.earliest_end", "earliest end of %v", title)
}

// circle adds up rules that contradict each other wherever they lie: what must pass at least is more than may pass.
func (r *refusing) circle(chain []planner.Push) {
	var least, most []working.Expr
	at := chain[0].Value
	short := chain[len(chain)-1].Value
	for k, p := range chain {
		gap := p.Value - at
		if k == 0 { // from the event that the cycle closes at
			gap = r.c.weight(p)
			short += gap - p.Value
		}
		at = p.Value
		if gap == 0 || p.Rule < 0 {
			continue
		}
		r.lengths++
		x := working.Given("T_"+strconv.Itoa(r.lengths), r.c.said(p.Rule), r.c.long(max(gap, -gap)))
		if gap > 0 {
			least = append(least, x)
		} else {
			most = append(most, x)
		}
	}
	if len(least) == 0 {
		return
	}
	need := r.Find(working.Finding{
		Name:   working.Tell("schedule.must_pass", "what must pass at least"),
		Symbol: "P_least", Unit: working.Minute, Decimals: working.WholeNumber, By: working.Sum(least...),
		Source: working.Algebra(),
	})
	r.Find(working.Finding{
		Name:   working.Tell("schedule.misses_itself", "by which these rules miss each other"),
		Symbol: "Δ", Is: r.c.long(short), By: need.Minus(working.Sum(most...)), Source: sources.TemporalNetworks,
	})
}

// said is a rule in the words of a derivation, where the length of a living step is the likely one.
func (c *compiled) said(id int) working.Message {
	r := c.rules[id]
	if i, ok := c.index[r.step]; ok && r.kind == StepExact && c.in.Steps[i].Living {
		return r.made()
	}
	return r.words()
}

// weight is the length of the difference that makes a push.
func (c *compiled) weight(p planner.Push) int {
	best, found := 0, false
	for _, a := range c.net.Arcs {
		if a.From == p.From && a.To == p.Event && a.Rule == p.Rule && (!found || a.W > best) {
			best, found = a.W, true
		}
	}
	return best
}

// shortage compares what must lie between two times with what fits.
func (r *refusing) shortage(s *Shortage) {
	units := working.Given("c", working.Tell("schedule.symbol_capacity", "how many it takes at a time"), s.Capacity)
	from := working.Given("A_from", working.Tell("schedule.symbol_from", "when the first of them can begin"), s.From)
	to := working.Given("A_to", working.Tell("schedule.symbol_to", "when the last of them must be done"), s.To)
	span := r.Find(working.Finding{Name: working.Tell("schedule.time_there_is", "the time there is"), Symbol: "T_there",
		Unit: working.Minute, Decimals: working.WholeNumber, By: to.Minus(from), Source: working.Algebra()})
	if s.Wanted > 0 {
		each := working.Given("T_each", working.Tell("schedule.symbol_each", "the least that one takes"), s.Each)
		fit := r.Find(working.Finding{
			Name: working.Tell("schedule.fit", "how many fit, one after the other"), Symbol: "n_fit",
			Is: s.Fit, By: working.Floor(span.Over(each)).Times(units), Source: sources.TemporalNetworks,
			Within: float64(s.Fit), Note: working.Tell("schedule.note_fit",
				"where they are of different lengths or begin at different times, the planner counts closer than by the shortest"),
		})
		wanted := working.Given("n", working.Tell("schedule.symbol_wanted", "how many are wanted"), s.Wanted)
		r.Find(working.Finding{Name: working.Tell("schedule.too_many", "how many are too many"), Symbol: "Δn",
			Unit: working.Number, By: wanted.Minus(fit), Source: working.Algebra()})
		return
	}
	room := r.Find(working.Finding{Name: working.Tell("schedule.room", "how long it is there in all"), Symbol: "T_room",
		Is: s.Room, By: span.Times(units), Within: s.Room.Duration().Minutes(),
		Note:   working.Tell("schedule.note_room", "without what is closed between them"),
		Source: sources.TemporalNetworks})
	need := working.Given("T_need", working.Tell("schedule.symbol_need", "how long %d steps keep it at least",
		len(s.Steps)), s.Need)
	r.Find(working.Finding{Name: working.Tell("schedule.lacks", "what lacks"), Symbol: "T_lack",
		Is: s.Need - s.Room, By: need.Minus(room), Source: working.Algebra()})
}

// limited allows so much work, and no more: a derivation that would take longer is left out.
func limited(work int) *planner.Watch {
	over, cancel := context.WithCancel(context.Background())
	cancel()
	return planner.NewWatch(over, work)
}

// nearest derives the nearest later time that works, and with it by how much the wanted one is missed.
func (r *refusing) nearest(s *Shift, k *Conflict) {
	if s == nil {
		return
	}
	c := r.c
	w := limited(8 * describeWork)
	net, event, nominal := c.shifted()
	goal := nominal + int(s.By/c.grid)
	m := &mover{c: c, w: w, shop: c.shop(), net: net, event: event, nominal: nominal}
	within := m.within(1, goal-nominal).net
	chain := within.Chain(w, event)
	if len(chain) > 0 && chain[len(chain)-1].Value < goal {
		shop := &planner.Shop{Net: within, Tasks: m.shop.Tasks, Pools: m.shop.Pools}
		chain = nil
		if times, _ := shop.Any(w); times != nil {
			if orders, ok := shop.Orders(w, times); ok {
				ordered := *within
				ordered.Arcs = append(append([]planner.Arc(nil), within.Arcs...), orders...)
				chain = ordered.Chain(w, event)
			}
		}
	}
	wanted := working.Given("W_0", working.Tell("schedule.symbol_wanted_time", "the wanted time"), c.when(nominal))
	var found working.Expr
	if len(chain) > 0 && chain[len(chain)-1].Value == goal {
		found = r.along(chain)
	}
	if found.String() == "" {
		found = working.Given("W_1", working.Tell("schedule.symbol_nearest",
			"the nearest time that works, found by trying the orders of all steps"), c.when(goal))
	}
	note := working.Tell("schedule.note_nearest", "every rule of the plan counts here, not only those that clash")
	if !k.ShortProven {
		note = working.Tell("schedule.note_perhaps", "the nearest that was found; a nearer one was not ruled out")
	}
	r.Find(working.Finding{
		Name:   working.Tell("schedule.missed", "by how much the wanted time is missed"),
		Symbol: "Δ_W", Is: s.By, By: found.Minus(wanted), Note: note, Source: sources.TemporalNetworks,
	})
}

// distinct leaves out what was said before.
func distinct(all []working.Message) (out []working.Message) {
	seen := map[string]bool{}
	for _, m := range all {
		if key := m.String(); !seen[key] {
			seen[key] = true
			out = append(out, m)
		}
	}
	return out
}
