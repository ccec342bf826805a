package planner

import "math"

// A frontier is the open nodes of a search, of which the one of lowest bound is next. From there the search goes depth
// first for a stretch of nodes, because the next node is then at hand; what is left open is kept for later. So the
// lowest bound rises as the search goes on, and most nodes cost no repetition.
type frontier struct {
	queue heap // by bound, the number is that of the node
	nodes []openNode
	here  *path
	end   int // number of nodes at which the stretch is over; 0: there is none
}

type openNode struct {
	bound int64
	path  *path
}

// path is how the search came to a node: the one above, the moves that were refused there, and the one that was made.
type path struct {
	up      *path
	refused []move
	move    move
}

const (
	stretch  = 80      // nodes
	mostOpen = 300_000 // nodes kept for later; beyond them the search goes on depth first
)

// full reports whether the stretch is over.
func (f *frontier) full(nodes int) bool {
	return f.end > 0 && nodes >= f.end && len(f.queue) < mostOpen
}

// push keeps the node at hand for later.
func (f *frontier) push(bound int64) {
	f.queue.push(item{bound, int32(len(f.nodes))})
	f.nodes = append(f.nodes, openNode{bound, f.here})
}

// pop takes the node of lowest bound, among equals the one kept first.
func (f *frontier) pop() openNode {
	k := f.queue.pop().v
	n := f.nodes[k]
	f.nodes[k] = openNode{}
	return n
}

// explore searches everything, the node of lowest bound first.
func (r *search) explore() {
	r.open = frontier{}
	r.open.push(math.MinInt64)
	root := r.s.mark()
	for len(r.open.queue) > 0 && !r.stopped() {
		n := r.open.pop()
		if n.bound >= r.best {
			return // and so is everything else that is open
		}
		before := r.best
		r.open.end = r.nodes + stretch
		r.open.here, r.far = n.path, true
		switch {
		case r.replay(n.path) && (n.path == nil || r.s.propagate()):
			r.visit(n.bound)
		case r.stopped():
			r.lost = min(r.lost, n.bound)
		}
		r.undo(root)
		r.open.end, r.open.here = 0, nil
		if r.best < before {
			r.improve()
		}
	}
	if len(r.open.queue) > 0 {
		r.lost = min(r.lost, r.open.queue[0].key)
	}
}

// replay makes the moves that led to a node; false when nothing is left there or the watch is over.
func (r *search) replay(p *path) bool {
	if p == nil {
		return true
	}
	if !r.replay(p.up) {
		return false
	}
	for _, v := range p.refused {
		if !r.refuse(v) {
			return false
		}
	}
	return r.apply(p.move)
}
