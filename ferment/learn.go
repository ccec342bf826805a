package ferment

import (
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/gasbalance"
)

// LoggedBulk is a logged bulk: the dough, the temperature it had, and how long it took to rise so far.
type LoggedBulk struct {
	// Bulk is the dough, with the Rise it had reached; its Culture is not used.
	Bulk Bulk `json:"bulk"`
	// Took is how long it took to reach that rise.
	Took quantity.Elapsed `json:"took"`
	// Error is the standard deviation of the rise as read, in points; zero means 5.
	Error quantity.Percent `json:"error,omitzero"`
}

// Learning is a kitchen's log of bakes, all with levain, all with commercial yeast, or all with both.
type Learning struct {
	Bakes []LoggedBulk `json:"bakes"`
	// Prior is what was known before; the zero value is nothing.
	Prior Culture `json:"prior,omitzero"`
	// Robust limits what one wild bake (a forgotten heater, a misread clock) can do: it counts less and less, and
	// beyond 4.7 spreads not at all.
	Robust bool `json:"robust,omitzero"`
}

// Lesson is what a log of bakes has taught.
type Lesson struct {
	Culture Culture `json:"culture"`

	in      Learning
	rows    []gasbalance.Row
	weights []float64
}

// mostBakes is how many bakes are learned at once.
const mostBakes = 100_000

// Learn answers: what do the logged bakes say about this kitchen's culture?
//
//	y = ln(N(R)/G(t))/∂b = hᵀ·x + ε,   ε ~ N(0, k·σ²)
//	P = (P₀⁻¹ + Σ w·h·hᵀ/(k·σ²))⁻¹,   x = P·(P₀⁻¹·x₀ + Σ w·h·y/(k·σ²))
//	σ² = (ν₀·σ₀² + Σ w·((y − hᵀx)² + hᵀPh)/k)/(ν₀ + n)
//
// N is the gas the logged rise takes and G what the law gives a typical culture by then; ∂b is the derivative of ln G by
// the log of the pace, h the derivatives by all unknowns (amplitude, pace, slope, cold end, mixture, and the pace for
// the way of kneading) over ∂b, P₀ and x₀ what was known before; k is 1 plus the shares of the rise's reading error and of
// what the formula leaves unsure; w is 1 (with Robust Tukey's biweight of the residual in spreads). Given σ the update is
// the closed form of normal regression; σ itself has a scaled inverse χ² prior of 12 bakes and is found with it in a few
// rounds, so that ranges become Student's. Valid for up to 100,000 bakes. Accuracy: that of the normal approximation,
// checked by simulating kitchens. Errors: ErrRequired without bakes; for each bake those of [Bulk.Estimate] and
// ErrOutOfRange for Took outside 1 minute to 30 days; ErrInconsistent for bakes with different leavening; at most twenty
// bakes are complained of. Source: Gelman et al., Bayesian Data Analysis, chapter 14; Huber, Robust Statistics, chapter 7.
func (l Learning) Learn() (Lesson, error) {
	var p problems
	if n := len(l.Bakes); n == 0 || n > mostBakes {
		p.Required("Bakes", "1 to 100,000 logged bakes")
		return Lesson{}, p.ErrFor(l)
	}
	c := l.Bakes[0].Bulk.common()
	if !l.Prior.learnedFrom(c.kind) {
		p.Add("Prior", l.Prior.String(), "a culture learned from the same kind of leavening", quantity.ErrInconsistent)
	}
	out := Lesson{in: l, rows: make([]gasbalance.Row, len(l.Bakes))}
	faults := 0
	for i := range l.Bakes {
		row, err := l.Bakes[i].row(c.kind)
		if err != nil {
			p.Join(indexed("Bakes", i), err)
			if faults++; faults == mostFaults {
				break
			}
		}
		out.rows[i] = row
	}
	if err := p.ErrFor(l); err != nil {
		return Lesson{}, err
	}
	g := gasbalance.Group{Kind: c.kind}
	if l.Prior.of != nil {
		g = l.Prior.of.group
	}
	var sums gasbalance.Sums
	if l.Robust {
		sums, out.weights = g.Robustly("", "", out.rows)
	} else {
		sums = gasbalance.SumRows(out.rows)
	}
	out.Culture = newCulture(g.With("", "", sums))
	return out, nil
}

// row makes the line of the regression.
func (k *LoggedBulk) row(kind gasbalance.Leavening) (gasbalance.Row, error) {
	b := k.Bulk
	b.Culture = Culture{}
	var p problems
	d, err := b.prepare(true)
	p.Join("Bulk", err)
	if err == nil && d.kind != kind {
		p.Add("Bulk", leavenings.String(d.kind), "the leavening of the first bake", quantity.ErrInconsistent)
	}
	p.Duration("Took", k.Took.Duration(), time.Minute, Horizon)
	reading := RiseReading{Error: k.Error}
	if !k.Error.IsZero() {
		quantity.Check(&p.Problems, "Error", k.Error, leastError, greatestError)
	}
	if err := p.Err(); err != nil {
		return gasbalance.Row{}, err
	}
	if err := within(b.Law, b.Extrapolate, b.History, hours(k.Took.Duration()), "Bulk.History"); err != nil {
		return gasbalance.Row{}, err
	}
	row, ok := d.law.RowAtOwnPace(kind, &gasbalance.Logged{
		Start: d.start, Formula: d.formula, History: d.knots, Hours: hours(k.Took.Duration()), Rise: d.target, Error: reading.within(),
		Pressure: d.atm, Kneading: int(b.Kneading),
	})
	if !ok {
		p.Add("Bulk.History", b.History.String(), "a history in which the dough can rise", quantity.ErrInconsistent)
	}
	return row, p.Err()
}

// Temperatures are the lowest and the highest mean temperature of the bakes, weighted by fermentation: temperature
// sensitivity is learned only as far as they differ.
func (l Lesson) Temperatures() (low, high quantity.Temperature) {
	if len(l.rows) == 0 {
		return low, high
	}
	lo, hi := l.rows[0].Celsius, l.rows[0].Celsius
	for _, o := range l.rows {
		lo, hi = min(lo, o.Celsius), max(hi, o.Celsius)
	}
	return degrees(lo), degrees(hi)
}

// String says what was learned, and on how many bakes.
func (l Lesson) String() string { return l.Culture.String() }

// Message says what was learned.
func (l Lesson) Message() working.Message { return l.Culture.Message() }
