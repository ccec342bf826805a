package mixing

import (
	"math"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/numeric"
)

// Prediction is the answer of [Learned.Predict].
type Prediction struct {
	answer

	Dough quantity.Range[quantity.Temperature] `json:"dough"`
	// Rise is the likely warming above where the ingredients would meet without mixing.
	Rise quantity.TemperatureDelta `json:"rise"`
	// Extrapolated reports that the batch is a third lighter or heavier than any in the log.
	Extrapolated bool `json:"extrapolated,omitzero"`

	l        Learned
	b        Logged
	t0       float64
	row      []float64
	quantile float64
	spread   float64
	likely   float64
}

// Predict answers at what temperature a planned batch will leave the mixer, as a range.
//
//	T = (T₀ + Σ rₛ·tₛ + k·T_bowl) ÷ (1 + k);   T ± t·s·√(1 + x·V·x) ÷ (1 + k)
//
// Symbols as in [Log.Learn]; V is the covariance of the coefficients, t the quantile of Student's t for
// the probability and the degrees of freedom. probability 1 to 99.9 %; 80 % is this library's
// habit. The batch may not use more speeds than the log. Errors: ErrRequired, ErrOutOfRange,
// ErrInconsistent; ErrModelRange for a batch a third lighter or heavier than any in the log, unless
// it says Extrapolate. Source: see [Log.Learn].
func (l Learned) Predict(b Logged, probability quantity.Percent) (Prediction, error) {
	var p quantity.Problems
	q := l.ready(&p, "Batch.", b, probability)
	if err := p.ErrFor(l); err != nil {
		return Prediction{}, err
	}
	return l.predict(b, probability, q), nil
}

func (l Learned) predict(b Logged, probability quantity.Percent, q float64) Prediction {
	b = b.clone()
	k := l.speeds()
	t0, _ := b.meeting(l.in.Hydration)
	row := b.minutes(k)
	share := l.theta[k]
	sum := t0 + share*b.Bowl.Celsius()
	for j := range k {
		sum += l.theta[j] * row[j]
	}
	t := sum / (1 + share)
	row = append(row, b.Bowl.Celsius()-t)
	sd := l.scale * math.Sqrt(1+quadratic(row, l.cov)) / (1 + share)
	r := Prediction{
		Dough: quantity.Range[quantity.Temperature]{
			Low: quantity.Celsius(t - q*sd), Likely: quantity.Celsius(t), High: quantity.Celsius(t + q*sd),
			Probability: probability,
		},
		Rise: quantity.DeltaCelsius(t - t0), l: l, b: b, t0: t0, row: row, quantile: q, spread: sd, likely: t,
		Extrapolated: l.outside(b),
	}
	return r
}

// ready checks a planned batch, whose fields stand at the path, and returns the quantile of its range.
func (l Learned) ready(p *quantity.Problems, path string, b Logged, probability quantity.Percent) float64 {
	if !l.ok {
		p.Required("Learned", quantity.Tell("mixing.want_what_log_batches_teaches", "what a log of batches teaches"))
		return 0
	}
	var own quantity.Problems
	b.check(&own, path)
	if len(b.Speeds) > l.speeds() {
		own.Add(path+"Speeds", quantity.Tell("mixing.got_speeds", "%d speeds", len(b.Speeds)),
			quantity.Tell("mixing.want_at_most_log", "at most the %d of the log", l.speeds()), quantity.ErrInconsistent)
	}
	q := l.quantile(&own, probability)
	if own.Err() == nil && !b.Extrapolate && l.outside(b) {
		own.Add(
			path+"Ingredients",
			quantity.Tell("mixing.got_dough", "%s of dough", b.mass().Text(quantity.Gram, 0)),
			quantity.Tell("mixing.want_about_to_log_or_extrapolation", "about the %s to %s of the log, or extrapolation",
				l.lightest.Text(quantity.Gram, 0), l.heaviest.Text(quantity.Gram,
					0)),
			quantity.ErrModelRange,
		)
	}
	if own.Err() == nil && l.theta[l.speeds()] <= -0.9 {
		own.Add("Learned.Bowl", l.Bowl, quantity.Tell("mixing.want_batches_do_not_contradict_each",
			"batches that do not contradict each other"), quantity.ErrModelRange)
	}
	p.Join("", own.Err())
	return q
}

// outside reports a weight a third below or above all that was logged: the warming of a kilogram
// depends on how much of it the hook works at a time. A third is a judgment.
func (l Learned) outside(b Logged) bool {
	if l.Batches == 0 {
		return false
	}
	m := b.mass()
	return m.Compare(quantity.MustPercent("66.7 %").Of(l.lightest)) < 0 ||
		m.Compare(quantity.MustPercent("133.3 %").Of(l.heaviest)) > 0
}

func (l Learned) quantile(p *quantity.Problems, probability quantity.Percent) float64 {
	if !quantity.Check(p, "probability", probability, quantity.MustPercent("1 %"), quantity.MustPercent("99.9 %")) {
		return 0
	}
	q, err := numeric.StudentQuantile(0.5+probability.Fraction()/2, l.Freedom)
	if err != nil {
		p.Join("probability", err)
	}
	return q
}

func quadratic(x []float64, v [][]float64) float64 {
	s := 0.0
	for i := range x {
		for j := range x {
			s += x[i] * v[i][j] * x[j]
		}
	}
	return s
}

// String says the range.
func (r Prediction) String() string { return r.Message().String() }

// Message says the range, for the units of its reader.
func (r Prediction) Message() working.Message {
	if !r.l.ok {
		return working.Tell("mixing.no_prediction", "no prediction")
	}
	return working.Tell("mixing.prediction", "dough at %.1f, from %d {2|batch|batches}", r.Dough, r.l.Batches)
}

// Running is a mixer at work, for [Learned.MinutesLeft].
type Running struct {
	// Now is the dough as just measured.
	Now quantity.Temperature `json:"now,omitzero"`
	// Limit is the temperature it should not pass.
	Limit quantity.Temperature `json:"limit,omitzero"`
	// Speed is the speed it runs at from now on: 1 is slow.
	Speed       int              `json:"speed"`
	Probability quantity.Percent `json:"probability"`
}

// MinutesLeft is the answer of [Learned.MinutesLeft].
type MinutesLeft struct {
	answer

	// Range is when the dough reaches the limit, from now.
	Range quantity.TimeRange `json:"range"`
	// Open reports that the late end is not known: so slow a warming cannot be told from none. Late
	// is then the longest time that is considered, 4 h.
	Open bool `json:"open,omitzero"`
	// Reached reports that the dough is at the limit or above it.
	Reached bool `json:"reached,omitzero"`

	rate, rateSE, gap, quantile, scale float64
}

// MinutesLeft answers how long a running mixer may go on before the dough reaches a limit.
//
//	t = (limit − now)·(1 + k) ÷ rₛ, with Fieller's interval for the ratio
//
// The measured temperature counts with the spread of a single reading, rₛ with its standard error.
// Now and Limit 0 to 50 °C. Stop at Early when the limit matters. Errors: ErrRequired,
// ErrOutOfRange; ErrModelRange when the log says the mixer cools the dough. Source: Fieller (1954);
// see [Log.Learn].
func (l Learned) MinutesLeft(in Running) (MinutesLeft, error) {
	var p quantity.Problems
	if !l.ok {
		p.Required("Learned", quantity.Tell("mixing.want_what_log_batches_teaches", "what a log of batches teaches"))
		return MinutesLeft{}, p.ErrFor(in)
	}
	quantity.Check(&p, "Now", in.Now, coldestDough, hottestDough)
	quantity.Check(&p, "Limit", in.Limit, coldestDough, hottestDough)
	p.Int("Speed", in.Speed, 1, l.speeds())
	q := l.quantile(&p, in.Probability)
	if err := p.ErrFor(in); err != nil {
		return MinutesLeft{}, err
	}
	k := l.speeds()
	r, v := l.theta[in.Speed-1], l.cov[in.Speed-1][in.Speed-1]*l.scale*l.scale
	grow := 1 + l.theta[k]
	if r <= 0 || grow <= 0.1 {
		p.Add("Speed", quantity.Tell("mixing.got_warming_minute", "a warming of %s a minute",
			quantity.DeltaCelsius(r).Text(quantity.CelsiusScale, 3)),
			quantity.Tell("mixing.want_mixer_warms_dough", "a mixer that warms its dough"), quantity.ErrModelRange)
		return MinutesLeft{}, p.ErrFor(in)
	}
	gap := in.Limit.Sub(in.Now).Celsius() * grow
	out := MinutesLeft{rate: r, rateSE: math.Sqrt(v), gap: gap, quantile: q, scale: l.scale}
	out.Range.Probability = in.Probability
	if gap <= 0 {
		out.Reached = true
		return out, nil
	}
	// (gap − r·t)² = q²·(s² + v·t²)
	s2 := l.scale * l.scale / 2 // half of a batch's variance is taken to be the reading itself
	a, b, c := r*r-q*q*v, gap*r, gap*gap-q*q*s2
	root := math.Sqrt(math.Max(b*b-a*c, 0))
	late := math.Inf(1)
	early := c / (b + root) // the smaller root, whatever the sign of a
	if a > 0 {
		late = (b + root) / a
	}
	out.Range.Early = minutesOf(math.Max(early, 0))
	out.Range.Likely = minutesOf(gap / r)
	if late > mostMixing.Minutes() {
		out.Open, late = true, mostMixing.Minutes()
	}
	out.Range.Late = max(minutesOf(late), out.Range.Likely)
	return out, nil
}

func minutesOf(m float64) time.Duration {
	return time.Duration(math.Min(m, 1e6) * float64(time.Minute)).Round(time.Second)
}

// String says the minutes left.
func (t MinutesLeft) String() string { return t.Message().String() }

// Message says the minutes left.
func (t MinutesLeft) Message() working.Message {
	switch {
	case t.Reached:
		return working.Tell("mixing.limit_reached", "the limit is reached: stop")
	case t.Open:
		return working.Tell(
			"mixing.minutes_open", "%v or much longer (%v), likely %v", t.Range.Early, t.Range.Probability,
			t.Range.Likely)
	case t.Range.Late == 0:
		return working.Tell("mixing.no_time", "no time")
	}
	return working.Tell("mixing.minutes_left", "%v", t.Range)
}
