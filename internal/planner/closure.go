package planner

// none stands for no path and no limit: later than everything when it is negated. It is far from the limits of an int
// of 32 bits, so that two of them can be added.
const none = -1 << 29

// apart makes a matrix of differences in which nothing is known but that each event is no time after itself.
func apart(d []int, n int) {
	for i := range d {
		d[i] = none
	}
	for v := range n {
		d[v*n+v] = 0
	}
}

// closure finds all longest paths of a matrix of differences; false when there is a positive cycle or the watch is
// over. Method: Floyd and Warshall. Source: Floyd, "Algorithm 97: shortest path", Communications of the ACM 5 (1962).
func closure(w *Watch, d []int, n int) bool {
	for m := range n {
		via := d[m*n : m*n+n]
		for u := range n {
			um := d[u*n+m]
			if w.spend(1) {
				return false
			}
			if um == none {
				continue
			}
			row := d[u*n : u*n+n]
			for v, mv := range via {
				if mv != none && um+mv > row[v] {
					row[v] = um + mv
				}
			}
			w.spend(n)
		}
	}
	for v := range n {
		if d[v*n+v] > 0 {
			return false
		}
	}
	return true
}

// tighten adds one difference to longest paths; false when it closes a positive cycle or the
// watch is over.
func tighten(watch *Watch, d []int, n, u, v, w int) bool {
	if u == v {
		return w <= 0
	}
	if back := d[v*n+u]; back != none && back+w > 0 {
		return false
	}
	for p := range n {
		pu := d[p*n+u]
		if pu == none {
			continue
		}
		pu += w
		if watch.spend(n) {
			return false
		}
		for q := range n {
			if vq := d[v*n+q]; vq != none && pu+vq > d[p*n+q] {
				d[p*n+q] = pu + vq
			}
		}
	}
	return true
}
