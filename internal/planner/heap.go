package planner

// item is something that waits, the lowest key first and among equals the lowest number.
type item struct {
	key int64
	v   int32
}

func (a item) before(b item) bool { return a.key < b.key || a.key == b.key && a.v < b.v }

// heap is a binary heap of items. It is not container/heap because it is the innermost loop of
// everything here.
type heap []item

func (h *heap) push(it item) {
	q := append(*h, it)
	i := len(q) - 1
	for i > 0 {
		p := (i - 1) / 2
		if !q[i].before(q[p]) {
			break
		}
		q[p], q[i] = q[i], q[p]
		i = p
	}
	*h = q
}

func (h *heap) pop() item {
	q := *h
	top, last := q[0], len(q)-1
	q[0] = q[last]
	q = q[:last]
	for i := 0; ; {
		c := 2*i + 1
		if c >= last {
			break
		}
		if c+1 < last && q[c+1].before(q[c]) {
			c++
		}
		if !q[c].before(q[i]) {
			break
		}
		q[i], q[c] = q[c], q[i]
		i = c
	}
	*h = q
	return top
}
