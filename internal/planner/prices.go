package planner

// prices bound the cost of a state from below with the shared resources in it: every pool has a price for each
// stretch of time, tasks pay it, and what the pool has to offer is subtracted. Differences that the forest leaves
// out have a price too. Whatever the prices are, the least cost of the rest is a bound; good prices are found by
// raising those of what is short and lowering those of what is left over.
//
// Method: Lagrangian relaxation with subgradient steps of Polyak's length. Source: Held, Wolfe and Crowder,
// "Validation of subgradient optimization", Mathematical Programming 6 (1974); for scheduling with costs for each
// start time Möhring, Schulz, Stork and Uetz, Management Science 49 (2003). All sums are whole numbers, so that
// the bound is exact and the same on every machine.
type prices struct {
	w    *Watch
	s    *state
	b    *bounder
	f    *forest
	r    *reckoner
	own  [][]int64 // cost of every node at every time of the root state, scaled
	from []int     // its first time

	first, width, slots int // stretches of time: from first on, each so wide
	pools               []priced
	loose               []int64 // price of each loose difference, scaled
	scale               int64   // prices and costs are whole numbers of 1/scale points
	most                int64   // no price is higher, so that no sum is too great for an int64

	step    float64 // length of the steps
	failed  int     // steps since the bound was last raised
	bestAt  []priced
	bestArc []int64
	diff    []int64
	// Sums of the times, and of their squares, of every node in the timetables seen while prices were last looked for.
	sum, square []int64
	seen        int
}

// priced is a budget with a price for each stretch of time.
type priced struct {
	g      *budget
	offer  []int64 // what there is in each stretch: capacity times open time
	price  []int64 // of one unit for one unit of time, scaled
	paid   []int64 // price of one unit from the first time on, until each time
	free   bool    // no price
	demand []int64 // what the timetable takes of each stretch
}

const (
	mostRows    = 500_000 // entries of all rows together
	mostStretch = 1500    // stretches of time
	priceScale  = 1 << 10
	mostPriced  = int64(1) << 30
	rootSteps   = 2000
	farSteps    = 40
	nodeSteps   = 10
	patience    = 20   // steps that do not raise the bound before they become shorter
	shorten     = 0.75 // by this factor
	leastStep   = 0.002
)

// newPrices prepares prices for the state at the root; nil when there is nothing to gain, when it would take too
// much memory, or when the watch is over.
func newPrices(w *Watch, s *state, b *bounder) *prices {
	m := s.m
	if len(m.budgets) == 0 {
		return nil
	}
	rows, first, last := 0, 1<<30, -1<<30
	for v := range m.n {
		rows += s.hi[v] - s.lo[v] + 1
		first, last = min(first, s.lo[v]), max(last, s.hi[v])
		if rows > mostRows {
			return nil
		}
	}
	p := &prices{w: w, s: s, b: b, f: plant(m), scale: priceScale, step: 1}
	p.r = newReckoner(p.f, m.n)
	spread := 0
	for task := 0; 2*task+2 < len(m.place); task++ {
		spread = max(spread, m.start(task).off, m.end(task).off, -m.start(task).off, -m.end(task).off)
	}
	p.first = first - spread
	length := last + spread - p.first + 1
	p.width = max(1, (length+mostStretch-1)/mostStretch)
	p.slots = (length + p.width - 1) / p.width
	if !p.costs() {
		return nil
	}
	for k := range m.budgets {
		g := &m.budgets[k]
		if g.always() {
			continue
		}
		q := priced{g: g, offer: make([]int64, p.slots), price: make([]int64, p.slots),
			paid: make([]int64, p.slots*p.width+1), demand: make([]int64, p.slots)}
		for i := range q.offer {
			a := p.first + i*p.width
			q.offer[i] = int64(g.cap) * int64(g.open(a, a+p.width))
		}
		if w.spend(p.slots * (1 + len(g.closed))) {
			return nil
		}
		p.pools = append(p.pools, q)
	}
	p.loose = make([]int64, len(p.f.loose))
	return p.safe(length)
}

// safe bounds the prices; nil when there would be hardly any left.
func (p *prices) safe(length int) *prices {
	amounts := int64(1)
	for _, q := range p.pools {
		for _, u := range q.g.uses {
			amounts += int64(u.Amount)
		}
	}
	p.most = min(mostPriced, endless/8/int64(length)/amounts)
	if p.most < priceScale || len(p.pools) == 0 {
		return nil
	}
	return p
}

// costs tables the cost of every node at every time; false when the watch is over or a cost is too great.
func (p *prices) costs() bool {
	m := p.s.m
	p.own, p.from = make([][]int64, m.n), make([]int, m.n)
	most := endless / int64(8*priceScale*(m.n+1))
	for v := range m.n {
		lo, hi := p.s.lo[v], p.s.hi[v]
		row := make([]int64, hi-lo+1)
		p.from[v] = lo
		if p.w.spend(4 * len(row)) {
			return false
		}
		linear, points := p.b.linear[v], p.b.curves[v]
		for i := range row {
			t := lo + i
			c := linear * int64(t)
			if len(points) > 0 {
				c += valueAt(points, t)
			}
			if c > most || c < -most {
				return false
			}
			row[i] = c * p.scale
		}
		for _, g := range m.gaps[v] {
			for t := max(lo, g.a+1); t <= min(hi, g.b-1); t++ {
				row[t-lo] = endless
			}
		}
		p.own[v] = row
	}
	return true
}

// rows are the costs of the nodes of the state with the prices in them; the second result is what the pools offer
// and the loose differences grant, to be subtracted.
func (p *prices) rows() (granted int64) {
	s, r := p.s, p.r
	for v := range s.m.n {
		lo, hi := s.lo[v], s.hi[v]
		r.lo[v], r.hi[v] = lo, hi
		r.own[v] = resized(r.own[v], hi-lo+1)
		from := p.own[v][lo-p.from[v] : hi-p.from[v]+1]
		copy(r.own[v], from)
	}
	for k := range p.pools {
		q := &p.pools[k]
		q.free = true
		for _, c := range q.price {
			if c != 0 {
				q.free = false
				break
			}
		}
		if q.free {
			continue
		}
		var sum int64
		at := 1
		for i, c := range q.price {
			granted += c * q.offer[i]
			for range p.width {
				sum += c
				q.paid[at] = sum
				at++
			}
		}
		for _, u := range q.g.uses {
			a, b := s.m.start(u.Task), s.m.end(u.Task)
			p.charge(q, b, int64(u.Amount))
			p.charge(q, a, -int64(u.Amount))
		}
	}
	if p.f.turns != nil {
		p.f.turns.order(r, s)
	}
	p.follow()
	for i, c := range p.loose {
		if a := p.arc(i); c > 0 {
			// x[to] ≥ x[from] + W: what is missing costs.
			add := func(v int, c int64) {
				for j := range r.own[v] {
					if r.own[v][j] < endless {
						r.own[v][j] += c * int64(r.lo[v]+j)
					}
				}
			}
			add(a.From, c)
			add(a.To, -c)
			granted -= c * int64(a.W)
		}
	}
	return granted
}

// arc is the difference that a price in loose is for: one that the forest leaves out, or a decision of the state.
func (p *prices) arc(i int) Arc {
	if n := len(p.f.loose); i >= n {
		return p.s.added[i-n]
	}
	return p.f.loose[i]
}

// follow makes room for the prices of new decisions.
func (p *prices) follow() {
	for len(p.loose) < len(p.f.loose)+len(p.s.added) {
		p.loose = append(p.loose, 0)
	}
}

// undo follows the state after it undid decisions.
func (p *prices) undo() {
	if n := len(p.f.loose) + len(p.s.added); len(p.loose) > n {
		p.loose = p.loose[:n]
	}
}

// charge adds, at every time of the place's node, the price of an amount from the first time until then.
func (p *prices) charge(q *priced, at place, amount int64) {
	row := p.r.own[at.node]
	from := p.r.lo[at.node] + at.off - p.first
	paid := q.paid[from : from+len(row)]
	for j, c := range paid {
		if row[j] < endless {
			row[j] += amount * c
		}
	}
}

// work is how much a bound costs, for the watch.
func (p *prices) work() int {
	n := 0
	for v := range p.s.m.n {
		n += p.s.hi[v] - p.s.lo[v] + 1
	}
	return 6*n + p.slots*len(p.pools) + p.f.turns.work()
}

// bound reckons with the prices as they are. Costs that are no whole number of the bounder's steps are rounded up
// to the next.
func (p *prices) bound() (scaled int64, ok bool) {
	if p.w.spend(p.work()) {
		return 0, false
	}
	granted := p.rows()
	least := p.r.least()
	if least >= endless {
		return endless, true
	}
	return least - granted, true
}

// points turns a scaled bound into a cost.
func (p *prices) points(scaled int64) int64 {
	if scaled >= endless {
		return noBound
	}
	q := scaled / p.scale
	if scaled%p.scale > 0 {
		q++
	}
	if rest := q % p.b.step; rest > 0 {
		q += p.b.step - rest
	} else if rest < 0 {
		q -= rest
	}
	return q + p.b.off
}

// now is the bound with the prices as they are; the lowest number when the watch is over.
func (p *prices) now() int64 {
	scaled, ok := p.bound()
	if !ok {
		return -noBound
	}
	return p.points(scaled)
}

// always says that the pool suffices whatever happens.
func (g *budget) always() bool {
	sum := 0
	for _, u := range g.uses {
		sum += u.Amount
	}
	return sum <= g.cap
}
