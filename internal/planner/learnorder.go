package planner

import "slices"

// order lists variables, those moved to the front last first.
type order struct {
	up, down    []int32 // by variable; n is the head
	stamp       []int
	now, search int
}

// begin lists so many variables in the order given.
func (o *order) begin(n int, first []int) {
	o.up, o.down, o.stamp, o.now = resized(o.up, n+1), resized(o.down, n+1), resized(o.stamp, n), 0
	o.up[n], o.down[n] = int32(n), int32(n)
	for _, k := range slices.Backward(first) {
		o.insert(k)
	}
	o.search = int(o.down[n])
}

func (o *order) insert(k int) {
	head := int32(len(o.stamp))
	first := o.down[head]
	o.down[head], o.up[k], o.down[k], o.up[first] = int32(k), head, first, int32(k)
	o.now++
	o.stamp[k] = o.now
}

// front moves a variable to the front.
func (o *order) front(k int) {
	o.down[o.up[k]], o.up[o.down[k]] = o.down[k], o.up[k]
	if o.search == k {
		o.search = int(o.down[k])
	}
	o.insert(k)
}

// free says that a variable is undecided again.
func (o *order) free(k int) {
	if o.search == len(o.stamp) || o.stamp[k] > o.stamp[o.search] {
		o.search = k
	}
}
