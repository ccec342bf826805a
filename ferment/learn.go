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
	// On is when it was baked. With a date on each, bakes are learned from in that order, and old ones may fade.
	On time.Time `json:"on,omitzero"`
}

// Learning is a kitchen's log of bakes, all with levain, all with commercial yeast, or all with both.
type Learning struct {
	Bakes []LoggedBulk `json:"bakes"`
	// Person and Name say whose bakes they are, and of which culture: for a class that pools, or a kitchen with
	// several.
	Person string `json:"person,omitzero"`
	Name   string `json:"name,omitzero"`
	// Prior is what was known before, of this culture or of others; the zero value is nothing.
	Prior Culture `json:"prior,omitzero"`
	// HalfLife is after how long a dated bake counts half, so that a culture that changes is followed. Zero leaves it to
	// the log: see [Lesson.HalfLife]. A prior with a half-life that was given keeps it unless one is given.
	HalfLife quantity.Elapsed `json:"half_life,omitzero"`
	// Robust weighs the log as a whole, so that one wild bake (a forgotten heater, a misread clock) hardly counts, and
	// beyond 4.7 spreads not at all. Without it each bake is weighed by how surprising it was when it was learned.
	Robust bool `json:"robust,omitzero"`
}

// Lesson is what a log of bakes has taught.
type Lesson struct {
	answer

	Culture Culture `json:"culture"`
	// HalfLife is after how long a dated bake counts half; zero: all count alike. It is the one that was given, or else
	// never, 60 or 15 days: whichever would have foretold the log best, bake by bake.
	HalfLife quantity.Elapsed `json:"half_life,omitzero"`
	// Fades says so when the log chose a half-life.
	Fades working.Message `json:"fades,omitzero"`

	in      Learning
	rows    []gasbalance.Dated
	weights []float64 // with which the sums hold them
}

// mostBakes is how many bakes are learned at once.
const mostBakes = 100_000

// Learn answers: what do the logged bakes say about this kitchen's culture?
//
//	y = ln(N(R)/G(t))/∂b = hᵀ·x + ε,   ε ~ N(0, k·σ²)
//	P = (P₀⁻¹ + Σ w·h·hᵀ/(k·σ²))⁻¹,   x = P·(P₀⁻¹·x₀ + Σ w·h·y/(k·σ²))
//	σ² = (ν₀·σ₀² + Σ w·((y − hᵀx)² + hᵀPh)/k)/(ν₀ + n)
//
// N is the gas the logged rise takes and G what the law gives a typical culture by then; ∂b is the derivative of ln G
// by the log of the pace, h the derivatives by all unknowns (amplitude, pace, slope, cold end, mixture, growth of
// yeast, and the pace for the way of kneading) over ∂b, P₀ and x₀ what was known before, from the person's other
// cultures and other persons; k is 1 plus the shares of the rise's reading error and of what the formula leaves
// unsure; w is 1 up to two spreads from what was expected and falls with the third power beyond (with Robust Tukey's
// biweight over the whole log), times 2^(−age/half-life). Given σ the update is the closed form of normal regression;
// σ itself has a scaled inverse χ² prior of 12 bakes and is found with it in a few rounds, so that ranges become
// Student's. What is kept are the sums. Each bake is first compared with what was expected of it; see
// [Culture.Score]. A half-life that is not given is chosen by how likely the log is when each bake is foretold from
// those before it: never, 60 or 15 days, the latter two when the log is likelier by a sixth; see
// [Lesson.Working]. Valid for up to 100,000 bakes. Accuracy: that of the normal approximation, checked by simulating
// kitchens. Errors: ErrRequired without bakes; for each bake those of [Bulk.Estimate] and ErrOutOfRange for Took
// outside 1 minute to 30 days or a date before 1900 or after 2200; ErrInconsistent for bakes with different leavening
// or only some dated; at most twenty bakes are complained of. Source: Gelman et al., Bayesian Data Analysis, chapters
// 5 and 14; Huber, Robust Statistics, chapters 4 and 7; Dawid, J R Statist Soc A 147 (1984) 278 (choosing by what was
// foretold).
func (l Learning) Learn() (Lesson, error) {
	var p problems
	if n := len(l.Bakes); n == 0 || n > mostBakes {
		p.Required("Bakes", quantity.Tell("ferment.want_1_to_100_000_logged", "1 to 100,000 logged bakes"))
		return Lesson{}, p.ErrFor(l)
	}
	c := l.Bakes[0].Bulk.common()
	if !l.Prior.learnedFrom(c.kind) {
		p.Add("Prior", l.Prior, quantity.Tell("ferment.want_culture_learned_from_same_kind",
			"a culture learned from the same kind of leavening"), quantity.ErrInconsistent)
	}
	p.name("Person", l.Person)
	p.name("Name", l.Name)
	if l.HalfLife != 0 {
		p.Duration("HalfLife", l.HalfLife.Duration(), 24*time.Hour, 100*365*24*time.Hour)
	}
	out := Lesson{in: l, rows: make([]gasbalance.Dated, len(l.Bakes))}
	faults := 0
	for i := range l.Bakes {
		row, err := l.Bakes[i].row(c.kind)
		if dated := !l.Bakes[i].On.IsZero(); err == nil && dated == l.Bakes[0].On.IsZero() {
			var one problems
			one.Add("On", l.Bakes[i].On.Format(time.DateOnly),
				quantity.Tell("ferment.want_date_every_bake_or_none", "a date on every bake, or on none"),
				quantity.ErrInconsistent)
			err = one.Err()
		}
		if err != nil {
			p.Join(indexed("Bakes", i), err)
			if faults++; faults == mostFaults {
				break
			}
		}
		out.rows[i] = gasbalance.Dated{Row: row, Day: l.Bakes[i].day()}
	}
	if err := p.ErrFor(l); err != nil {
		return Lesson{}, err
	}
	out.learn(c.kind)
	return out, nil
}

// learn adds the rows up, in order of their dates.
func (l *Lesson) learn(kind gasbalance.Leavening) {
	in := &l.in
	g := gasbalance.Group{Kind: kind}
	if in.Prior.of != nil {
		g = in.Prior.of.group
	}
	if in.HalfLife > 0 {
		g.HalfLife = in.HalfLife.Duration().Hours() / 24
	}
	order := l.order()
	learn := g.Learn
	if in.Robust {
		learn = g.LearnRobustly
	}
	taught, weights := learn(in.Person, in.Name, l.ordered(order))
	l.weights = make([]float64, len(order))
	for k, i := range order {
		l.weights[i] = weights[k]
	}
	l.Culture = newCulture(taught, in.Person, in.Name)
	l.HalfLife = quantity.Elapsed(l.Culture.of.taught.HalfLife * 24 * float64(time.Hour))
	l.Fades = l.Culture.fades()
}

// day is the date as a number of days; 0 without one.
func (k *LoggedBulk) day() float64 {
	if k.On.IsZero() {
		return 0
	}
	return float64(k.On.Unix()) / (24 * 60 * 60)
}

// earliest and latest are the years in which a bake may be dated.
const earliest, latest = 1900, 2200

// row makes the line of the regression.
func (k *LoggedBulk) row(kind gasbalance.Leavening) (gasbalance.Row, error) {
	b := &k.Bulk
	if !b.Culture.IsZero() { // a copy takes time
		plain := *b
		plain.Culture = Culture{}
		b = &plain
	}
	var p problems
	var d body
	err := b.embody(&d, true)
	p.Join("Bulk", err)
	if err == nil && d.kind != kind {
		p.Add("Bulk", d.kind, quantity.Tell("ferment.want_leavening_first_bake", "the leavening of the first bake"),
			quantity.ErrInconsistent)
	}
	p.Duration("Took", k.Took.Duration(), time.Minute, Horizon)
	if !k.On.IsZero() {
		if y := k.On.Year(); y < earliest || y > latest {
			p.Add("On", k.On.Format(time.DateOnly), quantity.Tell("ferment.want_date_from_1900_to_2200",
				"a date from 1900 to 2200"), errOutOfRange)
		}
	}
	reading := RiseReading{Error: k.Error}
	if !k.Error.IsZero() {
		p.percent("Error", k.Error, leastError, greatestError)
	}
	if err := p.ErrFor(k); err != nil {
		return gasbalance.Row{}, err
	}
	if err := within(b.Law, b.Extrapolate, b.History.knots, hours(k.Took.Duration()), "Bulk.History"); err != nil {
		return gasbalance.Row{}, err
	}
	if b.OwnHeat != 0 { // as far as it matters, which is believed from what is known of no kitchen
		warm, err := b.prepare(true)
		if err != nil {
			return gasbalance.Row{}, err
		}
		d.knots = warm.knots
	}
	row, ok := d.law.RowAtOwnPace(kind, &gasbalance.Logged{
		Start: d.start, Formula: d.formula, History: d.knots, Hours: hours(k.Took.Duration()), Rise: d.target,
		Error:    reading.within(),
		Pressure: d.atm, Kneading: int(b.Kneading),
	})
	if !ok {
		p.Add("Bulk.History", b.History, quantity.Tell("ferment.want_history_which_dough_can_rise",
			"a history in which the dough can rise"), quantity.ErrInconsistent)
	}
	return row, p.ErrFor(k)
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
