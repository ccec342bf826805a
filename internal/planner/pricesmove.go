package planner

// raise looks for prices with a better bound, in at most so many steps, until the bound reaches the goal.
func (p *prices) raise(steps int, goal int64) (bound int64, ok bool) {
	bound = -noBound
	p.failed = 0
	top := -endless
	n := p.s.m.n
	p.sum, p.square, p.seen = resized(p.sum, n), resized(p.square, n), 0
	clear(p.sum)
	clear(p.square)
	for range steps {
		scaled, sure := p.bound()
		if !sure {
			return bound, false
		}
		if scaled >= endless {
			return noBound, true
		}
		if scaled > top {
			if scaled-top > (abs64(top)>>12)+1 {
				p.failed = 0
			}
			top = scaled
			bound = max(bound, p.points(scaled))
			p.keep()
		} else {
			p.failed++
		}
		if bound >= goal {
			break
		}
		p.seen++
		for v, x := range p.r.x {
			p.sum[v] += int64(x)
			p.square[v] += int64(x) * int64(x)
		}
		if p.failed >= patience {
			p.failed = 0
			p.step = float64(p.step * shorten)
			if p.step < leastStep {
				break
			}
		}
		if !p.move(scaled, goal) {
			break // no resource is short: nothing to gain
		}
	}
	p.restore()
	return bound, true
}

// move changes the prices by what is short and what is left over; false when nothing is.
func (p *prices) move(scaled, goal int64) bool {
	var norm float64
	x := p.r.x
	for k := range p.pools {
		q := &p.pools[k]
		p.demands(q)
		for i := range q.demand {
			q.demand[i] -= q.offer[i]
			if d := q.demand[i]; d > 0 || q.price[i] > 0 {
				norm += float64(float64(d) * float64(d))
			}
		}
	}
	for i := range p.loose {
		a := p.arc(i)
		if short := int64(a.W + x[a.From] - x[a.To]); short > 0 || p.loose[i] > 0 {
			norm += float64(float64(short) * float64(short))
		}
	}
	if norm == 0 {
		return false
	}
	reach := float64(float64(goal-p.b.off)*float64(p.scale)) - float64(scaled)
	length := float64(float64(p.step*reach) / norm)
	if !(length > 0) {
		return false
	}
	change := func(price, short int64) int64 {
		if short <= 0 && price == 0 {
			return 0
		}
		most := float64(p.most)
		return min(max(0, price+int64(min(max(-most, float64(length*float64(short))), most))), p.most)
	}
	for k := range p.pools {
		q := &p.pools[k]
		for i := range q.price {
			q.price[i] = change(q.price[i], q.demand[i])
		}
	}
	for i := range p.loose {
		a := p.arc(i)
		p.loose[i] = change(p.loose[i], int64(a.W+x[a.From]-x[a.To]))
	}
	return true
}

// demands fills in what the timetable takes of each stretch.
func (p *prices) demands(q *priced) {
	m, x := p.s.m, p.r.x
	diff := resized(p.diff, p.slots*p.width+1)
	p.diff = diff
	clear(diff)
	for _, u := range q.g.uses {
		a, b := m.start(u.Task), m.end(u.Task)
		diff[x[a.node]+a.off-p.first] += int64(u.Amount)
		diff[x[b.node]+b.off-p.first] -= int64(u.Amount)
	}
	var now int64
	at := 0
	for i := range q.demand {
		var sum int64
		for range p.width {
			now += diff[at]
			sum += now
			at++
		}
		q.demand[i] = sum
	}
}

// keep remembers the prices; restore takes them back.
func (p *prices) keep() {
	if p.bestAt == nil {
		p.bestAt = make([]priced, len(p.pools))
		for k := range p.pools {
			p.bestAt[k].price = make([]int64, p.slots)
		}
	}
	for k := range p.pools {
		copy(p.bestAt[k].price, p.pools[k].price)
	}
	p.bestArc = append(p.bestArc[:0], p.loose...)
}

func (p *prices) restore() {
	if p.bestAt == nil || len(p.bestArc) != len(p.loose) {
		return
	}
	for k := range p.pools {
		copy(p.pools[k].price, p.bestAt[k].price)
	}
	copy(p.loose, p.bestArc)
}
