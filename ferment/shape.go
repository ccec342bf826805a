package ferment

import (
	"math"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/gasbalance"
	"example.org/maslin/internal/heat"
	"example.org/maslin/internal/numeric"
)

// Proof is a dough that goes on fermenting after shaping: on the bench, in a refrigerator, warming up, in a box.
type Proof struct {
	// Bulk is the dough; its Rise is not used, it is what is asked for.
	Bulk Bulk `json:"bulk"`
	// Bench is how long dividing, resting and shaping take, along the history of the bulk.
	Bench quantity.Elapsed `json:"bench,omitzero"`
	// Stages are where the shaped piece stands after that, one after the other, each for its For: the refrigerator,
	// then the room. Their Start is not used: each begins as warm as the one before ends. Starts of a Room they stand
	// in is the time of day at which the history of the bulk begins.
	Stages []Piece `json:"stages"`
	// Total is the rise wanted when it goes into the oven, counted over everything as if nothing were lost in shaping.
	Total quantity.Percent `json:"total"`
	// ShapeAt is a rise at which the dough is shaped whatever comes of it: After then tells what. Zero asks for the
	// rise that brings it to the total.
	ShapeAt quantity.Percent `json:"shape_at,omitzero"`
}

// Limits of what follows shaping.
const (
	day        = 24 * time.Hour
	leastStage = time.Minute
	mostStages = 10
)

// laidOut is how long the temperatures of a stage are laid out: at least the hour and at most the days of [Piece.For],
// after which the last temperature is held.
func (c Piece) laidOut() quantity.Elapsed {
	return min(max(c.For, quantity.Elapsed(time.Hour)), quantity.Elapsed(horizon*time.Hour))
}

// ShapeTarget is how far a dough may rise before it is shaped.
type ShapeTarget struct {
	answer

	// Rise is the rise at which to shape; zero and not Feasible when even unrisen dough would go beyond the total.
	Rise     quantity.Percent `json:"rise"`
	Feasible bool             `json:"feasible"`
	// Unrisen is how far the dough would rise after shaping if it were shaped at once.
	Unrisen quantity.Percent `json:"unrisen"`
	// After is the band of the total when shaped at that rise, which is then seen and no longer in doubt.
	After quantity.Range[quantity.Percent] `json:"after"`
	// Shape is when to shape: the dough on its way to Rise. When not Feasible it is on its way to the total.
	Shape Estimate `json:"shape"`
	// Shaped is the dough's temperature when it is shaped, Then those at the end of the bench and of each stage.
	Shaped quantity.Temperature   `json:"shaped"`
	Then   []quantity.Temperature `json:"then"`

	proof Proof
	path  History // from shaping on
}

// ahead is what a dough shaped at an hour of its bulk goes through from then on.
type ahead struct {
	history History
	ends    []quantity.Temperature // at the end of the bench and of each stage
	until   float64                // h from shaping to the oven
}

// course is a proof made ready: how each stage in a steady place cools or warms, as the share of the way that is left.
type course struct {
	*Proof
	left [][]knot // for each stage; nil where the place changes with the hour
}

// course lays out each stage once: in a steady place every piece follows the same curve, whatever it starts from.
func (p *Proof) course() (course, error) {
	c := course{p, make([][]knot, len(p.Stages))}
	for i, piece := range p.Stages {
		if piece.Into.changes() {
			continue
		}
		steady := piece.Into.Night
		piece.Start = steady.Add(quantity.DeltaCelsius(unitStart))
		if piece.Start.Compare(highestTemperature) > 0 {
			piece.Start = steady.Add(quantity.DeltaCelsius(-unitStart))
		}
		from := piece.Start.Celsius() - steady.Celsius()
		piece.For = piece.laidOut()
		h, err := piece.untold(heat.Average)
		if err != nil {
			return c, quantity.At(indexed("Stages", i), err)
		}
		c.left[i] = h.knots
		for k := range h.knots {
			h.knots[k].Celsius = (h.knots[k].Celsius - steady.Celsius()) / from
		}
	}
	return c, nil
}

// unitStart is how far from its place a piece starts for its curve to be laid out, °C: no loaf is put into a place that
// differs more by so much that the straight lines of the curve would be off by over 0.02 °C.
const unitStart = 20.0

// stage is how warm the piece is in a stage; it says nothing of itself.
func (c *course) stage(i int, piece Piece) (History, error) {
	if c.left[i] == nil {
		return piece.untold(heat.Average)
	}
	steady := piece.Into.Night.Celsius()
	by := piece.Start.Celsius() - steady
	h := History{knots: make([]knot, len(c.left[i]))}
	for k, x := range c.left[i] {
		h.knots[k] = exact(x.Hour, steady+by*x.Celsius)
	}
	return h, nil
}

// ahead lays out what follows when the dough is shaped at an hour of its bulk. Only when told to it says what it is:
// most are laid out to find the hour.
func (c *course) ahead(shaped float64, told bool) (a ahead, err error) {
	enough := longest
	if len(c.Stages) > 0 {
		enough = c.Bench.Duration()
	}
	bench, err := c.Bulk.History.shift(span(shaped), enough)
	if err != nil {
		return a, err
	}
	now := bench.At(c.Bench.Duration())
	a.ends = append(a.ends, now)
	a.until = hours(c.Bench.Duration())
	var parts []Stretch
	if c.Bench.Duration() >= time.Second { // less is none
		parts = []Stretch{{History: bench, For: c.Bench}}
	}
	for i, piece := range c.Stages {
		piece.Start = now
		length := piece.For.Duration()
		if piece.Into.changes() {
			piece.Into.Starts = quantity.Elapsed((piece.Into.Starts.Duration() + span(shaped+a.until)) % day)
		}
		piece.For = piece.laidOut()
		h, err := c.stage(i, piece)
		if err != nil {
			return a, quantity.At(indexed("Stages", i), err)
		}
		if told {
			h.label = piece.says()
		}
		parts = append(parts, Stretch{History: h, For: quantity.Elapsed(length)})
		now = h.At(length)
		a.ends = append(a.ends, now)
		a.until += hours(length)
	}
	if len(parts) == 0 {
		parts = []Stretch{{History: bench}}
	}
	a.history, err = join(parts, told)
	return a, err
}

// check reports everything that is wrong with the input.
func (p *Proof) check() error {
	b := p.Bulk
	b.Rise = p.Total
	var faults problems
	own := b.check(true)
	for _, e := range quantity.InputErrors(own.Err()) {
		moved := *e
		if moved.GoPath = "Bulk." + e.GoPath; e.GoPath == "Rise" {
			moved.GoPath = "Total"
		}
		faults.Join("", &moved)
	}
	if !p.ShapeAt.IsZero() {
		quantity.Check(&faults.Problems, "ShapeAt", p.ShapeAt, leastRise, greatestRise)
	}
	faults.Duration("Bench", p.Bench.Duration(), 0, day)
	if p.Bench == 0 && len(p.Stages) == 0 {
		faults.Required("Stages", quantity.Tell("ferment.want_where_shaped_piece_stands_or",
			"where the shaped piece stands, or time on the bench"))
	}
	if len(p.Stages) > mostStages {
		faults.Add("Stages", len(p.Stages), quantity.Tell("ferment.want_at_most_10_stages", "at most 10 stages"),
			errOutOfRange)
	}
	for i, piece := range p.Stages {
		faults.Duration(indexed("Stages", i)+".For", piece.For.Duration(), leastStage, Horizon)
		piece.Start, piece.For = quantity.Celsius(20), 0
		_, _, err := piece.solid()
		faults.Join(indexed("Stages", i), err)
	}
	return faults.ErrFor(*p)
}

// RiseBeforeShaping answers: how far may the dough rise before shaping, so that what follows brings it to the wanted
// total, and when is that?
//
//	find t₁ with G(t₁ + t₂) = N(R, T, p);   R₁ from G(t₁) = N(R₁, T₁, p)
//
// G is the gas of [Bulk.Estimate] along the bulk until t₁ and then along what follows for t₂, R the total, R₁ the rise
// at shaping. How the dough cools depends on how warm it is when shaped, and that on when: both are found together.
// Accuracy: a second in t₁, for the likely value; After gives the band of 80 % about the total. Errors: as
// [Bulk.Estimate] and [Piece.History]; ErrRequired without stages or bench; ErrOutOfRange for a bench over a day or
// stages outside a minute to 30 days. Source: the law of [GasBalance], solved for the time of shaping.
func (p Proof) RiseBeforeShaping() (ShapeTarget, error) {
	if err := p.check(); err != nil {
		return ShapeTarget{}, err
	}
	b := p.Bulk
	b.Rise = p.Total
	d, err := b.prepare(true)
	if err != nil {
		return ShapeTarget{}, quantity.At("Bulk", err)
	}
	way, err := p.course()
	if err != nil {
		return ShapeTarget{}, err
	}
	var failed error
	over := func(shaped float64) float64 { // ln of the gas in the oven over what the total takes
		a, err := way.ahead(shaped, false)
		if err != nil {
			failed = err
			return math.NaN()
		}
		s := d.at(d.start, shaped)
		end := d.clock.AdvanceAlong(s, a.history.knots, 0, a.until)
		return math.Max(math.Log(d.clock.Gas(&end)/d.need.Gas(a.ends[len(a.ends)-1].Celsius())), -700)
	}
	t := ShapeTarget{proof: p}
	if !p.ShapeAt.IsZero() {
		need := d.law.Need(p.ShapeAt.Fraction(), d.formula.Hydration, d.atm)
		t.Feasible = true
		return way.settle(t, &d, b, math.Min(d.clock.Likely(d.start, d.knots, need, hours(Horizon)), hours(Horizon)))
	}
	limit := hours(Horizon)
	latest := math.Min(d.clock.Likely(d.start, d.knots, d.need, limit), limit)
	first, last := over(0), over(latest)
	for first < 0 && last < 0 && latest < limit && failed == nil { // the cold takes back some of what the dough has risen
		latest = math.Min(1.2*latest+0.2, limit)
		last = over(latest)
	}
	shaped := 0.0
	switch {
	case failed != nil:
		return ShapeTarget{}, failed
	case first >= 0:
	case last < 0:
		t.Feasible, shaped = true, latest
	default:
		t.Feasible = true
		if shaped, err = numeric.Root(over, 0, latest, 1e-4); err != nil || failed != nil {
			return ShapeTarget{}, err
		}
	}
	return way.settle(t, &d, b, shaped)
}

// settle fills in the answer for the hour of shaping that was found.
func (c *course) settle(t ShapeTarget, d *prepared, b Bulk, shaped float64) (ShapeTarget, error) {
	a, err := c.ahead(shaped, true)
	if err != nil {
		return ShapeTarget{}, err
	}
	if err := within(b.Law, b.Extrapolate, a.history.knots, a.until, "Stages"); err != nil {
		return ShapeTarget{}, err
	}
	t.path, t.Then, t.Shaped = a.history, a.ends, b.History.At(span(shaped))
	oven := a.ends[len(a.ends)-1].Celsius()
	s := d.at(d.start, shaped)
	end := d.clock.AdvanceAlong(s, a.history.knots, 0, a.until)
	t.After = d.afterShaping(d.start, s, end, shaped, a, oven)
	unrisen, err := c.ahead(0, false)
	if err != nil {
		return ShapeTarget{}, err
	}
	flat := d.clock.AdvanceAlong(d.start, unrisen.history.knots, 0, unrisen.until)
	t.Unrisen = percent(d.rise(&flat, unrisen.ends[len(unrisen.ends)-1].Celsius()))
	switch {
	case !c.ShapeAt.IsZero():
		t.Rise = c.ShapeAt
	case t.Feasible:
		t.Rise = percent(d.rise(&s, t.Shaped.Celsius()))
		t.Feasible = t.Rise.Compare(leastRise) >= 0
	}
	if t.Feasible {
		b.Rise = t.Rise
	}
	if t.Shape, err = b.Estimate(); err != nil {
		return ShapeTarget{}, quantity.At("Bulk", err)
	}
	return t, nil
}

// afterShaping is the band of the total of a dough shaped when it was seen to have risen as wanted: a fast dough is
// then shaped sooner, so that only what it does after shaping, for the gas it had, is in doubt.
func (d *prepared) afterShaping(start, shaped, end gasbalance.State, hour float64, a ahead, oven float64) band {
	likely := d.clock.Gas(&end)
	e := end.LogGas()
	if hour > 0 && shaped.Gas > 0 {
		// By the time of shaping, from a step of a thousandth of it.
		step := hour / 1000
		sooner := d.at(start, hour-step)
		was := d.clock.AdvanceAlong(sooner, a.history.knots, 0, a.until)
		bySeen := math.Log(shaped.Gas/sooner.Gas) / step
		byEnd := math.Log(end.Gas/was.Gas) / step
		if bySeen > 0 {
			seen := shaped.LogGas()
			for i := range e {
				e[i] -= byEnd / bySeen * seen[i]
			}
		}
	}
	v := d.belief.Spread(e).Total()
	margin := math.Exp(
		d.belief.Reach(v, e[gasbalance.Pace]*e[gasbalance.Pace]*d.belief.Luck) * math.Sqrt(math.Max(0, v)))
	rise := func(gas float64) float64 { return d.law.Rise(gas, oven, d.formula.Hydration, d.atm) }
	return newBand(rise(likely/margin), rise(likely), rise(likely*margin))
}

// String prints "shape at 35 %, for the oven at 59 % to 95 %, likely 75 % (80 %)".
func (t ShapeTarget) String() string { return t.Message().String() }

// Message says at which rise to shape.
func (t ShapeTarget) Message() working.Message {
	if !t.Feasible {
		return working.Tell("ferment.shape_too_far",
			"even unrisen dough would rise %v after shaping: shorten or cool what follows", riseWords(t.Unrisen))
	}
	return working.Tell("ferment.shape_at", "shape at %v, for the oven at %v (80 %%)", riseWords(t.Rise),
		bandWords(t.After))
}
