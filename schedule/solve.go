package schedule

import (
	"context"
	"fmt"
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/planner"
)

// Latest returns the backward plan: every step as late as the rules allow.
//
// The latest times are found by pulling on all rules from the end of the plan until nothing
// moves: x_i = min over rules (x_j − w_ij), skipping closed spans downward. Without shortage of
// a shared resource these times are together a timetable and the answer is exact. Where two
// steps would then use the same resource at once, the timetable with the latest times in sum
// is searched for.
//
// Times are exact to the grid. When the context ends first the timetable is the best so far and TimeRanOut is
// set; when nothing was found or ruled out by then the error is the context's, so that
// errors.Is(err, context.DeadlineExceeded) holds. A nil context never ends. The error also reports malformed
// input, all problems at once, as [quantity.InputError] values; a problem without a timetable is
// answered by a [Conflict].
// Source: Dechter, Meiri and Pearl 1991; Kumar 2005; see the package comment.
func (p Problem) Latest(ctx context.Context) (Timetable, error) {
	c, err := p.compile()
	if err != nil {
		return Timetable{}, err
	}
	return c.answered(ctx, latest)
}

// Earliest returns the forward plan: every step as early as the rules allow. It is the mirror
// image of [Problem.Latest] and has the same limits, accuracy and errors.
//
// Source: Dechter, Meiri and Pearl 1991; Kumar 2005; see the package comment.
func (p Problem) Earliest(ctx context.Context) (Timetable, error) {
	c, err := p.compile()
	if err != nil {
		return Timetable{}, err
	}
	return c.answered(ctx, earliest)
}

// Best returns the timetable that costs least: Σ PerMinute of the steps × their minutes, the
// minutes of use in awkward spans of resources, and the minutes by which bounds with a price
// are missed on their soft side, each times its points.
//
// The search is a branch and bound over times in gaps, bends of the cost and orders at shared
// resources; the bound is the optimum of the problem without shortage and with the cost of
// every time replaced by its convex envelope (the dual of a minimum cost flow). When the
// context ends first, the best timetable so far is returned with a proven bound. Ties are
// broken toward the latest times within the same order at shared resources.
//
// Points are whole numbers and exact. Errors as in [Problem.Latest]. Source: Bartusch, Möhring
// and Radermacher 1988 for branching on forbidden sets; Möhring, Schulz, Stork and Uetz,
// "Solving project scheduling problems by minimum cut computations", Management Science 49
// (2003), for start-time dependent costs.
func (p Problem) Best(ctx context.Context) (Timetable, error) {
	c, err := p.compile()
	if err != nil {
		return Timetable{}, err
	}
	return c.answered(ctx, cheapest)
}

const minute = quantity.Elapsed(time.Minute)

// aim is what a timetable is chosen for.
type aim int

const (
	latest aim = iota
	earliest
	cheapest
)

// possibleWork bounds the search for any timetable: some seconds' worth.
const possibleWork = 1 << 30

// describeWork is how much work may be done after the context has ended to say how far each
// step of the timetable found could move: about ten milliseconds' worth.
const describeWork = 3_000_000

// answered is the answer, and the context's error when it ended before anything was known.
func (c *compiled) answered(ctx context.Context, a aim) (Timetable, error) {
	t := c.answer(ctx, a)
	ended := ctx != nil && ctx.Err() != nil
	if ended && t.Verdict == Unknown {
		return t, fmt.Errorf("no timetable was found or ruled out in the time given: %w", ctx.Err())
	}
	t.TimeRanOut = ended && (t.Verdict == Feasible || !t.described || t.Conflict != nil && !t.Conflict.Complete)
	return t, nil
}

func (c *compiled) answer(ctx context.Context, a aim) Timetable {
	w := planner.NewWatch(ctx, 0)
	times, clash := c.net.Earliest(w)
	switch {
	case clash != nil:
		return c.refuse(w, clash)
	case times == nil:
		return Timetable{Verdict: Unknown, c: c}
	}
	shop := c.shop()
	if a == latest {
		if times, _, _ = c.net.Latest(w); times == nil {
			return Timetable{Verdict: Unknown, c: c}
		}
	}
	describe := planner.NewWatch(ctx, describeWork)
	if a != cheapest && shop.Fits(w, times) {
		return c.timetable(describe, shop, times, Optimal)
	}
	cost := c.objective(a)
	out := shop.Search(w, cost, planner.Options{Effort: c.in.Effort})
	switch {
	case out.Times == nil && out.Done:
		t := c.refuseShared(w, shop)
		t.Nodes = out.Nodes
		return t
	case out.Times == nil:
		return Timetable{Verdict: Unknown, c: c, Nodes: out.Nodes}
	}
	verdict := Optimal
	if !out.Done && out.Bound < out.Cost {
		verdict = Feasible
	}
	times = out.Times
	if a == cheapest {
		times = c.settle(w, shop, cost, times)
	}
	t := c.timetable(describe, shop, times, verdict)
	t.Nodes = out.Nodes
	if a == cheapest {
		t.Bound = int(out.Bound)
	} else {
		t.Bound = t.Cost
	}
	return t
}

// settle chooses, among the timetables with the same order at shared resources and the same
// cost, the one with the latest times in sum, so that equal plans do not differ by chance.
func (c *compiled) settle(w *planner.Watch, shop *planner.Shop, cost planner.Cost, times []int) []int {
	orders, ok := shop.Orders(w, times)
	if !ok {
		return times
	}
	fixed := &planner.Shop{Net: c.withOrders(orders), Tasks: shop.Tasks}
	scale := int64(c.net.Events)*int64(c.limit) + 1
	fine := planner.Cost{Linear: make([]int64, len(cost.Linear))}
	for v := 1; v < len(cost.Linear); v++ {
		fine.Linear[v] = cost.Linear[v]*scale - 1
	}
	for _, k := range cost.Curves {
		k.Sign *= scale
		fine.Curves = append(fine.Curves, k)
	}
	out := fixed.Search(w, fine, planner.Options{Effort: 1000})
	if out.Times == nil || cost.Of(out.Times) > cost.Of(times) {
		return times
	}
	return out.Times
}

func (c *compiled) withOrders(orders []planner.Arc) *planner.Net {
	net := &planner.Net{Events: c.net.Events, Limit: c.net.Limit, Holes: c.net.Holes}
	net.Arcs = append(append(net.Arcs, c.net.Arcs...), orders...)
	return net
}

// timetable describes chosen times, with the room every step has while the order at shared
// resources stays. What the watch leaves no work for is not said.
func (c *compiled) timetable(w *planner.Watch, shop *planner.Shop, times []int, v Verdict) Timetable {
	t := c.timed(times, v)
	t.describe(w, shop)
	return t
}

// timed is the timetable of chosen times, with no more than them.
func (c *compiled) timed(times []int, v Verdict) Timetable {
	t := Timetable{Verdict: v, c: c, times: times, Steps: make([]Timed, len(c.in.Steps))}
	t.Cost = int(c.objective(cheapest).Of(times))
	t.Bound = t.Cost
	for i, s := range c.in.Steps {
		timed := Timed{
			Label: s.label(), Start: c.when(times[planner.StartOf(i)]), End: c.when(times[planner.EndOf(i)]),
		}
		timed.EarliestStart, timed.LatestStart = timed.Start, timed.Start
		timed.EarliestEnd, timed.LatestEnd = timed.End, timed.End
		if s.Living {
			timed.Watch = &Span{From: timed.Start.Add(s.Min.Duration()), To: timed.Start.Add(s.Max.Duration())}
		}
		t.Steps[i] = timed
	}
	return t
}

// describe adds what each step could do else.
func (t *Timetable) describe(w *planner.Watch, shop *planner.Shop) {
	c := t.c
	orders, ok := shop.Orders(w, t.times)
	if !ok {
		return
	}
	t.orders = orders
	net := c.withOrders(orders)
	_, drivers, _ := net.Latest(w)
	if drivers == nil {
		return
	}
	reach := planner.NewReach(w, net)
	if reach == nil {
		return
	}
	t.described = true
	for i := range t.Steps {
		start, end, timed := planner.StartOf(i), planner.EndOf(i), &t.Steps[i]
		timed.EarliestStart, timed.LatestStart = c.when(reach.Early(start)), c.when(reach.Late(start))
		timed.EarliestEnd, timed.LatestEnd = c.when(reach.Early(end)), c.when(reach.Late(end))
		timed.Slack = c.long(reach.Late(start) - t.times[start])
		timed.Drives = c.driver(drivers(start))
		for _, span := range reach.Windows(start) {
			timed.Windows = append(timed.Windows, Span{From: c.when(span[0]), To: c.when(span[1])})
		}
	}
}

// driver picks, from the chain of rules that holds a step back, the one a person would name:
// the nearest absence, time on the clock or shared resource.
func (c *compiled) driver(chain []int) working.Message {
	for _, r := range chain {
		switch c.rules[r].kind {
		case Absence, NotAfter, FixedTime, Capacity, PlanStart, PlanEnd:
			return c.rules[r].words()
		}
	}
	return working.Message{}
}

// LatestTimes answers when each step happens in the timetable of [Problem.Latest], in half the time: what else each
// step could do is left for [Timetable.Described], and why there is no timetable is not looked for. False as of
// [Problem.Possible].
//
// Errors and source: as there.
func (p Problem) LatestTimes(ctx context.Context) (Timetable, bool, error) {
	none := Timetable{Verdict: Unknown}
	c, err := p.compile()
	if err != nil {
		return none, false, err
	}
	w := planner.NewWatch(ctx, 0)
	times, clash := c.net.Earliest(w)
	if clash != nil {
		return none, false, nil
	}
	if times != nil {
		if last, _, _ := c.net.Latest(w); last != nil && c.shop().Fits(w, last) {
			return c.timed(last, Optimal), true, nil
		}
	}
	if ok, err := c.possible(ctx, w, times); !ok || err != nil {
		return none, false, err
	}
	t, err := c.answered(ctx, latest)
	return t, err == nil && len(t.Steps) > 0, err
}

// Described is the timetable with what else each step could do: how far it could move, and what keeps it from moving.
// TimeRanOut is set when the context ended before that was known.
func (t Timetable) Described(ctx context.Context) Timetable {
	if t.described || !t.asFound() {
		return t
	}
	t.Steps = slices.Clone(t.Steps)
	t.describe(planner.NewWatch(ctx, describeWork), t.c.shop())
	t.TimeRanOut = t.TimeRanOut || !t.described
	return t
}

// Possible answers whether there is any timetable, without looking for a good one or for reasons. False may also mean
// that none was found with a bounded effort; [Problem.Latest] tells the two apart.
//
// Errors: malformed input as in [Problem.Latest]; the context's error when it ended first. Source: as there.
func (p Problem) Possible(ctx context.Context) (bool, error) {
	c, err := p.compile()
	if err != nil {
		return false, err
	}
	w := planner.NewWatch(ctx, 0)
	times, clash := c.net.Earliest(w)
	if clash != nil {
		return false, nil
	}
	return c.possible(ctx, w, times)
}

// possible is whether there is any timetable, the earliest times without shared resources being known; nil when time
// ran out before.
func (c *compiled) possible(ctx context.Context, w *planner.Watch, times []int) (bool, error) {
	if times != nil {
		shop := c.shop()
		if shop.Fits(w, times) {
			return true, nil
		}
		if t := shop.Possible(w.Within(possibleWork)); t != planner.Unsure || !w.Over() {
			return t == planner.Yes, nil
		}
	}
	return false, fmt.Errorf("no timetable was found or ruled out in the time given: %w", ctx.Err())
}
