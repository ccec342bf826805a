package mixing

import (
	"math"
	"strconv"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/numeric"
)

// Logged is a batch as it was mixed, or as it is planned.
type Logged struct {
	// Ingredients are everything with its temperature, the water too.
	Ingredients []Portion `json:"ingredients,omitempty"`
	// Bowl is the temperature of the bowl before mixing.
	Bowl quantity.Temperature `json:"bowl,omitzero"`
	// Speeds are the times at each speed, slow first.
	Speeds []quantity.Elapsed `json:"speeds,omitempty"`
	// Dough is the temperature at the end of mixing; of a planned batch it is not given.
	Dough quantity.Temperature `json:"dough,omitzero"`
	// Extrapolate allows a planned batch of a weight outside that of the log.
	Extrapolate bool `json:"extrapolate,omitzero"`
}

// Log is what was written down of batches mixed in one way.
type Log struct {
	Kind MixerKind `json:"kind"`
	// Batches may be none: the answer is the prior then.
	Batches []Logged `json:"batches,omitempty"`
	// Thermometer is how far a measured rise may be off (one standard deviation); zero means
	// 0.7 Δ°C: about 0.5 °C in the dough and as much in what went in.
	Thermometer quantity.TemperatureDelta `json:"thermometer,omitzero"`
	// Hydration is the heat of wetting for each kilogram of flour; zero leaves it to the friction.
	Hydration SpecificEnergy `json:"hydration,omitzero"`
	// Bowl and BowlSpread are what is believed of the heat capacity of bowl and hook, as a share of
	// that of the dough; both zero means 10 % ± 10 %.
	Bowl       quantity.Percent `json:"bowl,omitzero"`
	BowlSpread quantity.Percent `json:"bowl_spread,omitzero"`
}

// Learned is the answer of [Log.Learn]: what the batches say about a mixer.
type Learned struct {
	// PerMinute is the warming of the dough itself in a minute at each speed.
	PerMinute []RiseEstimate `json:"per_minute,omitempty"`
	// Bowl is the heat capacity of bowl and hook as a share of that of the dough.
	Bowl ShareEstimate `json:"bowl"`
	// Batches is the number of measured batches that the estimates rest on.
	Batches int `json:"batches"`
	// Spread is the standard deviation of a single batch about the estimate, and Freedom the degrees of
	// freedom it is known with; the prior counts for four.
	Spread  quantity.TemperatureDelta `json:"spread"`
	Freedom float64                   `json:"freedom"`

	in      Log
	theta   []float64
	cov     [][]float64
	scale   float64
	design  [][]float64
	rises   []float64
	sumSq   float64
	ok      bool
	initial []float64
	spread0 []float64
	// lightest and heaviest dough of the log
	lightest, heaviest quantity.Mass
}

// IsZero reports that nothing was learned.
func (l Learned) IsZero() bool { return !l.ok }

// RiseEstimate is a warming per minute with its standard error.
type RiseEstimate struct {
	Value         quantity.TemperatureDelta `json:"value"`
	StandardError quantity.TemperatureDelta `json:"standard_error"`
}

// String prints "0.41 Δ°C ± 0.06 Δ°C".
func (e RiseEstimate) String() string { return e.Message().String() }

// Message says the warming with its standard error, for the units of its reader.
func (e RiseEstimate) Message() working.Message {
	return working.Tell("mixing.plus_minus", "%.2f ± %.2f", e.Value, e.StandardError)
}

// ShareEstimate is a share with its standard error.
type ShareEstimate struct {
	Value         quantity.Percent `json:"value"`
	StandardError quantity.Percent `json:"standard_error"`
}

// String prints "5.2 % ± 3.1 %".
func (e ShareEstimate) String() string { return e.Message().String() }

// Message says the share with its standard error.
func (e ShareEstimate) Message() working.Message {
	return working.Tell("mixing.share_plus_minus", "%.1f ± %.1f", e.Value, e.StandardError)
}

const (
	mostSpeeds    = 4
	mostBatches   = 10_000
	priorFreedom  = 4.0
	thermometer0  = 0.7  // Δ°C, judgment
	bowlShare0    = 0.10 // of the dough's heat capacity, judgment: a kilogram of steel to two of dough is 8 %,
	bowlShareSd0  = 0.10 // and the field rule of 5 °F of water for 2 °F of dough means 44 % with all exchange
	minThermomter = 0.05
)

// Learn answers what logged batches say about a mixer: how much each minute at each speed warms the
// dough, and how much heat the bowl takes, each with its standard error.
//
//	T − T₀ = Σ rₛ·tₛ − k·(T − T_bowl)
//
// T is the dough at the end, T₀ the temperature at which the ingredients would meet without mixing
// (heat balance, with the heat of hydration if given), rₛ the warming per minute at speed s, tₛ the
// minutes, k the bowl's heat capacity over the dough's. The coefficients are found by least squares
// with the figures of [MixerKind.Prior] and the bowl's share as a prior, which counts as four earlier
// residuals for the spread; with no batch the answer is the prior, and each batch moves it. The
// warming is per kilogram: it holds for batches of much the same weight and stiffness. At most
// 10,000 batches, 4 speeds; every ingredient −40 to 95 °C. Errors: ErrRequired, ErrOutOfRange.
// Source: conjugate normal regression, Gelman et al., Bayesian Data Analysis, ch. 14; the model is
// the heat balance.
func (in Log) Learn() (Learned, error) {
	var p quantity.Problems
	speeds := 1
	mixerKinds.Check(&p, "Kind", in.Kind)
	if len(in.Batches) > mostBatches {
		p.Add("Batches", quantity.Tell("mixing.got_batches", "%d batches", len(in.Batches)),
			quantity.Tell("mixing.want_at_most_3", "at most %d", mostBatches),
			quantity.ErrOutOfRange)
		return Learned{}, p.ErrFor(in)
	}
	for i, b := range in.Batches {
		path := "Batches[" + strconv.Itoa(i) + "]."
		b.check(&p, path)
		quantity.Check(&p, path+"Dough", b.Dough, coldestDough, hottestDough)
		speeds = max(speeds, min(len(b.Speeds), mostSpeeds))
	}
	if in.Thermometer.IsZero() {
		in.Thermometer = quantity.DeltaCelsius(thermometer0)
	}
	quantity.Check(&p, "Thermometer", in.Thermometer, quantity.DeltaCelsius(minThermomter), quantity.DeltaCelsius(10))
	p.Float("Hydration", float64(in.Hydration), 0, 50, "kJ/kg")
	if in.Bowl.IsZero() && in.BowlSpread.IsZero() {
		in.Bowl, in.BowlSpread = quantity.NewPercent(100*bowlShare0), quantity.NewPercent(100*bowlShareSd0)
	}
	quantity.Check(&p, "Bowl", in.Bowl, quantity.Percent{}, quantity.MustPercent("200 %"))
	quantity.Check(&p, "BowlSpread", in.BowlSpread, quantity.MustPercent("0.01 %"), quantity.MustPercent("200 %"))
	if err := p.ErrFor(in); err != nil {
		return Learned{}, err
	}
	prior, err := in.Kind.Prior()
	if err != nil {
		return Learned{}, err
	}
	in.Batches = append([]Logged(nil), in.Batches...)
	for i := range in.Batches {
		in.Batches[i] = in.Batches[i].clone()
	}
	l := Learned{Batches: len(in.Batches), in: in, ok: true}
	for i, b := range in.Batches {
		m := b.mass()
		if i == 0 || m.Compare(l.lightest) < 0 {
			l.lightest = m
		}
		if m.Compare(l.heaviest) > 0 {
			l.heaviest = m
		}
	}
	for range speeds {
		l.initial = append(l.initial, prior.RisePerMinute.Celsius())
		l.spread0 = append(l.spread0, prior.RiseSpread.Celsius())
	}
	l.initial = append(l.initial, in.Bowl.Fraction())
	l.spread0 = append(l.spread0, in.BowlSpread.Fraction())
	return l, l.fit()
}

// clone keeps what a result remembers apart from what the caller may change.
func (b Logged) clone() Logged {
	b.Ingredients = append([]Portion(nil), b.Ingredients...)
	b.Speeds = append([]quantity.Elapsed(nil), b.Speeds...)
	return b
}

// check notes what is wrong with the batch, whose fields stand at the path.
func (b Logged) check(p *quantity.Problems, path string) {
	if !b.checkIngredients(p, path) {
		return
	}
	quantity.Check(p, path+"Bowl", b.Bowl, coldestThing, hottestThing)
	if len(b.Speeds) == 0 {
		p.Required(path+"Speeds", quantity.Tell("mixing.want_time_at_each_speed_slow", "the time at each speed, slow first"))
	}
	if len(b.Speeds) > mostSpeeds {
		p.Add(path+"Speeds", quantity.Tell("mixing.got_speeds", "%d speeds", len(b.Speeds)),
			quantity.Tell("mixing.want_1_to", "1 to %d", mostSpeeds),
			quantity.ErrOutOfRange)
		return
	}
	for i, s := range b.Speeds {
		p.Duration(path+"Speeds["+strconv.Itoa(i)+"]", s.Duration(), 0, mostMixing)
	}
}

func (b Logged) checkIngredients(p *quantity.Problems, path string) bool {
	if len(b.Ingredients) == 0 {
		p.Required(path+"Ingredients", quantity.Tell("mixing.want_flour_water_and_whatever_else",
			"flour, water and whatever else goes into the bowl"))
		return true
	}
	if len(b.Ingredients) > 200 {
		p.Add(path+"Ingredients", quantity.Tell("mixing.got_ingredients", "%d ingredients", len(b.Ingredients)),
			quantity.Tell("mixing.want_1_to_200", "1 to 200"), quantity.ErrOutOfRange)
		return false
	}
	var total quantity.Mass
	for i, g := range b.Ingredients {
		g.check(p, path+"Ingredients["+strconv.Itoa(i)+"]", true)
		total = total.Add(g.Mass)
	}
	quantity.Check(p, path+"Ingredients", total, quantity.Grams(1), mostMass)
	return true
}

func (b Logged) mass() quantity.Mass {
	var m quantity.Mass
	for _, i := range b.Ingredients {
		m = m.Add(i.Mass)
	}
	return m
}

// meeting is T₀ in °C and the dough's heat capacity in kJ/K.
func (b Logged) meeting(hydration SpecificEnergy) (t0, capacity float64) {
	heat := 0.0
	for _, i := range b.Ingredients {
		c := i.Mass.Kilograms() * float64(i.heat())
		capacity += c
		heat += c * i.Temperature.Celsius()
		if i.Substance == Flour {
			heat += hydration.of(i.Mass)
		}
	}
	return heat / capacity, capacity
}

func (b Logged) minutes(speeds int) []float64 {
	m := make([]float64, max(0, speeds), max(0, speeds)+1)
	for i, s := range b.Speeds[:min(len(b.Speeds), len(m))] {
		m[i] = s.Duration().Minutes()
	}
	return m
}

func (l *Learned) speeds() int { return len(l.initial) - 1 }

// fit runs the conjugate regression: the prior enters as one more row for each coefficient.
func (l *Learned) fit() error {
	k := len(l.initial)
	s0 := l.in.Thermometer.Celsius()
	var rows [][]float64
	var y []float64
	for _, b := range l.in.Batches {
		t0, _ := b.meeting(l.in.Hydration)
		t := b.Dough.Celsius()
		row := append(b.minutes(k-1), b.Bowl.Celsius()-t)
		rows = append(rows, row)
		y = append(y, t-t0)
	}
	l.design, l.rises = rows, y
	n := len(rows)
	all := append([][]float64(nil), rows...)
	target := append([]float64(nil), y...)
	for i := range k {
		row := make([]float64, k)
		row[i] = s0 / l.spread0[i]
		all = append(all, row)
		target = append(target, s0/l.spread0[i]*l.initial[i])
	}
	f, err := numeric.LeastSquares(all, target, nil)
	if err != nil {
		return err
	}
	if n > 0 {
		l.sumSq = f.Variance * float64(n) // n + k rows, k coefficients
	}
	l.Freedom = priorFreedom + float64(n)
	l.scale = math.Sqrt((priorFreedom*s0*s0 + l.sumSq) / l.Freedom)
	l.theta, l.cov = f.Coefficients, f.Cov
	l.Spread = quantity.DeltaCelsius(l.scale / (1 + l.theta[k-1]))
	for i := range k - 1 {
		l.PerMinute = append(l.PerMinute, RiseEstimate{quantity.DeltaCelsius(l.theta[i]),
			quantity.DeltaCelsius(l.se(i))})
	}
	l.Bowl = ShareEstimate{quantity.NewPercent(100 * l.theta[k-1]), quantity.NewPercent(100 * l.se(k-1))}
	return nil
}

func (l *Learned) se(i int) float64 { return l.scale * math.Sqrt(l.cov[i][i]) }

// String says what was learned and from how much.
func (l Learned) String() string { return l.Message().String() }

// Message says what was learned and from how much, for the units of its reader.
func (l Learned) Message() working.Message {
	if !l.ok {
		return working.Tell("mixing.nothing_learned", "nothing learned")
	}
	var speeds []any
	for i, e := range l.PerMinute {
		if len(l.PerMinute) == 1 {
			speeds = append(speeds, e.Message())
			break
		}
		speeds = append(speeds, working.Tell("mixing.learned_speed", "%v at speed %d", e.Message(), i+1))
	}
	return working.Tell(
		"mixing.learned", "the dough warms by %v a minute, from %d {2|batch|batches} and the trade's figures",
		working.And(speeds...), l.Batches)
}

// Warming answers by how much mixing warmed a batch above where its ingredients met: the warming that [Planned] takes.
//
//	d = T − T₀     T₀ = Σ Cᵢ·Tᵢ ÷ Σ Cᵢ
//
// T is the dough at the end, Cᵢ = mᵢ·cᵢ and Tᵢ the heat capacity and temperature of each ingredient, the water too. It
// holds what bowl, room and the heat of wetting did. Ingredients −40 to 95 °C, dough 0 to 50 °C. Accuracy: that of the
// thermometer, 0.7 °C for single batches. Errors: ErrRequired, ErrOutOfRange. Source: heat balance.
func (b Logged) Warming() (quantity.TemperatureDelta, error) {
	var p quantity.Problems
	b.checkIngredients(&p, "")
	quantity.Check(&p, "Dough", b.Dough, coldestDough, hottestDough)
	if err := p.ErrFor(b); err != nil {
		return quantity.TemperatureDelta{}, err
	}
	t0, _ := b.meeting(0)
	return quantity.DeltaCelsius(b.Dough.Celsius() - t0), nil
}
