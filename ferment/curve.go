package ferment

import (
	"math"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// Curve answers: how fast does a culture grow at a temperature? It is an immutable value; none is a hidden default. The
// named curves are functions of this package, listed by [Curves]; a curve of your own comes from [NewCurve] or from
// [Cardinal], [SquareRoot] or [ConstantQ10]. Equal curves compare equal with ==. A named curve marshals as its key and
// reads back from it; a curve of your own has no key to be read back by, and marshaling it is an error that says so.
type Curve struct{ of *curve }

// About describes a rate curve.
type About struct {
	Name string `json:"name"`          // "Gänzle yeast, held to 30 °C"
	Key  string `json:"key,omitempty"` // short form for files: "ganzle-yeast-held"; empty for a curve of one's own
	// Low and High bound the temperatures the curve may be used at without extrapolating, °C.
	Low     float64        `json:"low"`
	High    float64        `json:"high"`
	Formula string         `json:"formula,omitempty"`
	Note    string         `json:"note,omitempty"` // how it was fitted, and what to beware of
	Source  working.Source `json:"source,omitzero"`
}

// NewCurve makes a curve of a rate of your own, in 1/h (natural logarithm) at a temperature in °C. It must be finite
// and not negative from −25 to 60 °C. Errors: ErrRequired without a rate or name; ErrOutOfRange for bounds outside −25
// to 60 °C or out of order, or a rate that is not finite or negative at a whole degree.
func NewCurve(about About, rate func(celsius float64) float64) (Curve, error) {
	var p problems
	if rate == nil {
		p.Required("Rate", quantity.Tell("ferment.want_rate_1_h_each_temperature",
			"a rate in 1/h for each temperature in °C"))
		return Curve{}, p.ErrFor(nil)
	}
	if about.Name == "" {
		p.Required("About.Name", quantity.Tell("ferment.want_name_to_show_beside_results", "a name to show beside results"))
	}
	p.temperature("About.Low", about.Low)
	p.temperature("About.High", about.High)
	if p.Err() == nil && !(about.Low < about.High) {
		p.Add("About.High", quantity.Celsius(about.High), quantity.Tell("ferment.want_above_low_end", "above the low end"),
			errOutOfRange)
	}
	for c := tableLow; c <= tableHigh; c++ {
		if mu := rate(c); !(mu >= 0) || math.IsInf(mu, 1) {
			p.Add("Rate", quantity.Tell("ferment.got_h_at", "%v/h at %v", mu, quantity.Celsius(c)),
				quantity.Tell("ferment.want_finite_rate_not_negative", "a finite rate that is not negative"), errOutOfRange)
			break
		}
	}
	about.Key = ""
	if about.Source.IsZero() {
		about.Source = sources.Judged("a rate curve of one's own")
	}
	return Curve{&curve{about: about, rate: rate, adaptive: true}}, p.ErrFor(nil)
}

// IsZero reports whether no curve is given.
func (c Curve) IsZero() bool { return c.of == nil }

// Rate is μ in 1/h (natural logarithm) at a temperature in °C; NaN for NaN and for the zero Curve.
func (c Curve) Rate(celsius float64) float64 {
	if c.of == nil {
		return math.NaN()
	}
	return c.of.rate(celsius)
}

// About says what the curve is, who says so, and between which temperatures it may be used.
func (c Curve) About() About {
	if c.of == nil {
		return About{}
	}
	return c.of.about
}

// String prints the curve's name.
func (c Curve) String() string { return c.About().Name }

// MarshalText writes the key of a named curve, and nothing for the zero Curve. Errors: ErrInconsistent for a curve of
// your own.
func (c Curve) MarshalText() ([]byte, error) {
	if c.of != nil && c.of.about.Key == "" {
		return nil, &quantity.InputError{
			Got: quantity.Excerpt(c.of.about.Name), Want: quantity.Tell("ferment.want_named_curve_keep_values_your",
				"a named curve: keep the values your own is made from"),
			Err: quantity.ErrInconsistent,
		}
	}
	return []byte(c.About().Key), nil
}

// UnmarshalText reads the key of a named curve; an empty text is the zero Curve. Errors: ErrOutOfRange for any other
// key.
func (c *Curve) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*c = Curve{}
		return nil
	}
	named, ok := CurveNamed(string(text))
	if !ok {
		var keys []string
		for _, one := range Curves() {
			keys = append(keys, one.About().Key)
		}
		return &quantity.InputError{Got: quantity.Excerpt(string(text)),
			Want: quantity.Tell("ferment.want_one", "one of %s", strings.Join(keys, ", ")),
			Err:  errOutOfRange}
	}
	*c = named
	return nil
}

// DoublingTime is how long the culture takes to double at a temperature.
//
//	t₂ = ln 2 / μ(T)
//
// μ is the curve's rate in 1/h. It is reported as ok = false where the curve does not grow. Accuracy is
// that of the curve. Source: definition of the natural growth rate.
func (c Curve) DoublingTime(t quantity.Temperature) (hours float64, ok bool) {
	if c.of == nil || !t.IsValid() {
		return 0, false
	}
	mu := c.Rate(t.Celsius())
	if !(mu > 0) {
		return 0, false
	}
	return math.Ln2 / mu, true
}

// Optimum finds where the curve is fastest, within the temperatures it may be used at, to 0.001 °C. A plateau reports
// its cool end. Source: golden-section search on the curve itself.
func (c Curve) Optimum() (t quantity.Temperature, rate float64) {
	if c.of == nil {
		return quantity.Temperature{}, 0
	}
	about := c.About()
	const steps = 500
	best, at := -1.0, about.Low
	for i := 0; i <= steps; i++ {
		x := about.Low + (about.High-about.Low)*float64(i)/steps
		if mu := c.Rate(x); mu > best*(1+1e-12) {
			best, at = mu, x
		}
	}
	step := (about.High - about.Low) / steps
	lo, hi := math.Max(about.Low, at-step), math.Min(about.High, at+step)
	const ratio = 0.6180339887498949
	for hi-lo > 1e-5 {
		p, q := hi-ratio*(hi-lo), lo+ratio*(hi-lo)
		if c.Rate(p) < c.Rate(q)*(1-1e-15) {
			lo = p
		} else {
			hi = q
		}
	}
	mid := (lo + hi) / 2
	return quantity.Celsius(math.Round(mid*1e4) / 1e4), c.Rate(mid)
}

// curve is what the named curves are made of: a rate, and the integral of the rate over temperature where it is known.
type curve struct {
	about About
	rate  func(celsius float64) float64
	// breaks are temperatures where the rate is not smooth; quadrature stops there.
	breaks []float64
	// primitive is ∫ rate dT within one smooth stretch; nil where there is none in closed form.
	primitive func(celsius float64) float64
	table     *table // the primitive of the Gänzle form, tabulated
	adaptive  bool   // the rate is the caller's: nothing is known of its form
	// told is the rate at a temperature as arithmetic on its symbol; nil where nothing is known of its form.
	told func(t working.Expr, celsius float64) working.Expr
}

// Curves lists the named curves for a baker to choose from or compare.
func Curves() []Curve {
	return []Curve{
		GanzleYeast(), GanzleYeastHeld(), GanzleYeastColdStop(), GanzleLactobacilli(), SaccharomycesCardinal(),
		SquareRootCold(), SquareRootFull(), TradeQ10(),
	}
}

// CurveNamed finds one of [Curves] by its key.
func CurveNamed(key string) (Curve, bool) {
	for _, c := range Curves() {
		if c.About().Key == key {
			return c, true
		}
	}
	return Curve{}, false
}
