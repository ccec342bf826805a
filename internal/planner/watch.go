package planner

import "context"

// lookEvery is how much work is done between two looks at the context: less than a millisecond's.
const lookEvery = 1 << 15

// Watch tells every loop of the planner when to give up. Loops count their work with spend, so
// that the context is looked at after a bounded amount of work whatever the size of the problem,
// and not so often that it costs. Once a watch is over it stays so, and whatever was being
// worked out is no answer.
//
// A Watch belongs to one goroutine. A nil Watch is never over.
type Watch struct {
	ctx   context.Context
	work  int
	grace int // work still allowed once the context has ended
	over  bool
	outer *Watch // of a limited watch
	left  int    // work still allowed, of a limited watch
	limit bool
	spare spare
}

// spare is room that questions under one watch use one after the other.
type spare struct {
	fore, back  half
	early, late trace
	latest      []int
	learner     learner
}

// spares is the room of a watch, which those made of it share.
func (w *Watch) spares() *spare {
	if w == nil {
		return &spare{}
	}
	for w.outer != nil {
		w = w.outer
	}
	return &w.spare
}

// Within is a watch that is also over after so much work, which is the same on every machine. What is done under it
// counts for the watch that it was made of.
func (w *Watch) Within(work int) *Watch {
	in := &Watch{outer: w, left: work, limit: true}
	in.look()
	return in
}

// NewWatch watches a context, which may be nil. The work of grace units more is allowed after
// the context has ended, to describe what was found; a unit is a few nanoseconds.
func NewWatch(ctx context.Context, grace int) *Watch {
	if ctx == nil {
		return nil
	}
	w := &Watch{ctx: ctx, grace: grace}
	w.look()
	return w
}

func (w *Watch) look() {
	if w.limit {
		w.left -= w.work
		w.over = w.outer.spend(w.work) || w.outer.Over() || w.left <= 0
	} else if w.ctx.Err() != nil {
		w.grace -= w.work
		w.over = w.grace <= 0
	}
	w.work = 0
}

// spend counts n units of work and reports whether to give up.
func (w *Watch) spend(n int) bool {
	if w == nil {
		return false
	}
	if w.work += n; w.work >= lookEvery && !w.over {
		w.look()
	}
	return w.over
}

// Over reports, looking at the context, whether to give up.
func (w *Watch) Over() bool {
	if w == nil {
		return false
	}
	if !w.over {
		w.look()
	}
	return w.over
}
