package ferment

import (
	"math"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// Cardinal is the cardinal temperature model of growth: a rate that is 0 at Min and Max and Opt's own at Opt.
//
//	μ = Rate·(T − Max)·(T − Min)² / ((Opt − Min)·((Opt − Min)·(T − Opt) − (Opt − Max)·(Opt + Min − 2T)))
//
// T, Min, Opt and Max in °C, Rate in 1/h; 0 outside Min to Max. Valid where Opt > (Min + Max)/2; [Cardinal.Curve]
// refuses other values. Source: Rosso et al. 1993, Journal of Theoretical Biology 162:447.
type Cardinal struct {
	Name   string         `json:"name"`
	Min    float64        `json:"min"`             // °C
	Opt    float64        `json:"opt"`             // °C
	Max    float64        `json:"max"`             // °C
	Rate   float64        `json:"rate"`            // 1/h at the optimum
	Source working.Source `json:"source,omitzero"` // of the values; not given: that of the form
}

// Gamma is the rate at a temperature in °C relative to the optimum, from 0 to 1.
func (m Cardinal) Gamma(t float64) float64 { return CardinalGamma(t, m.Min, m.Opt, m.Max, 2) }

// CardinalGamma is the cardinal model for any factor X: temperature with n = 2, pH with n = 1.
//
//	γ = (X − max)·(X − min)ⁿ / ((opt − min)ⁿ⁻¹·((opt − min)·(X − opt) − (opt − max)·((n − 1)·opt + min − n·X)))
//
// It is 1 at opt, 0 at min and max and outside them, NaN for NaN. Source: Rosso et al. 1995, Applied and
// Environmental Microbiology 61:610.
func CardinalGamma(x, minimum, optimum, maximum, n float64) float64 {
	if x <= minimum || x >= maximum {
		return 0
	}
	return (x - maximum) * math.Pow(x-minimum, n) /
		(math.Pow(optimum-minimum, n-1) * ((optimum-minimum)*(x-optimum) - (optimum-maximum)*((n-1)*optimum+minimum-n*x)))
}

// ZwieteringGamma is the rate relative to the optimum in the model of Zwietering, γ = ((X − min)/(opt − min))ⁿ, 0 below
// min. It says nothing above the optimum and is held at 1 there. Source: Zwietering et al. 1992, as restated by Garre
// et al., biogrowth.
func ZwieteringGamma(x, minimum, optimum, n float64) float64 {
	switch {
	case x <= minimum:
		return 0
	case x >= optimum:
		return 1
	}
	return math.Pow((x-minimum)/(optimum-minimum), n)
}

// Curve makes a [Curve] of the model. Errors: ErrOutOfRange for values that are not finite or not in order, or an
// optimum in the lower half, where the form has a pole.
func (m Cardinal) Curve() (Curve, error) {
	var p problems
	p.temperature("Min", m.Min)
	p.temperature("Opt", m.Opt)
	p.temperature("Max", m.Max)
	p.Float("Rate", m.Rate, 1e-6, 10, "/h")
	if err := p.ErrFor(m); err != nil {
		return Curve{}, err
	}
	if !(m.Opt < m.Max && m.Opt > (m.Min+m.Max)/2) {
		p.Add("Opt", quantity.Celsius(m.Opt), quantity.Tell("ferment.want_above_middle_least_and_greatest",
			"above the middle of the least and the greatest, and below the greatest"),
			errOutOfRange)
		return Curve{}, p.ErrFor(m)
	}
	if m.Source.IsZero() {
		m.Source = sources.Rosso1993
	}
	return Curve{m.curve(About{Name: m.Name, Low: math.Max(tableLow, m.Min-3), High: m.Max, Source: m.Source})}, nil
}

func (m Cardinal) curve(a About) *curve {
	a.Formula = "μopt·(T − Tmax)·(T − Tmin)² / ((Topt − Tmin)·((Topt − Tmin)·(T − Topt) − (Topt − Tmax)·(Topt + Tmin − " +
		"2T)))"
	return &curve{
		about:  a,
		breaks: []float64{m.Min, m.Max},
		rate:   func(t float64) float64 { return m.Rate * m.Gamma(t) },
		told: func(t working.Expr, _ float64) working.Expr {
			lowest, best := t.Minus(m.Min), working.Num(m.Opt).Minus(m.Min)
			under := best.Times(t.Minus(m.Opt)).
				Minus(working.Num(m.Opt).Minus(m.Max).Times(working.Num(m.Opt + m.Min).Minus(working.Num(2).Times(t))))
			return working.Num(m.Rate).Times(t.Minus(m.Max)).Times(lowest.ToThe(2)).Over(best.Times(under))
		},
	}
}

// SaccharomycesCardinal is baker's yeast: cardinal temperatures 2.8, 32.3 and 45.4 °C, 0.43/h at the optimum.
func SaccharomycesCardinal() Curve { return Curve{saccharomycesCardinalCurve} }

var saccharomycesCardinalCurve = Cardinal{Min: 2.8, Opt: 32.3, Max: 45.4, Rate: 0.43}.curve(About{
	Name: "Saccharomyces cerevisiae, cardinal", Key: "saccharomyces", Low: 0, High: 45.4,
	Note: "optimum and maximum are the species means of Salvadó et al. 2011; the minimum, 2.8 °C, is the middle of " +
		"the 1.3 to 4.3 °C of its genus (an assumption); the rate is that of plate counts of sourdough isolates",
	Source: sources.Salvado2011,
})

// SquareRoot is the square-root model of growth: √μ = B·(T − Min), and with C > 0 the full form that turns
// over and reaches 0 at Max.
//
//	√μ = B·(T − Min)·(1 − exp(C·(T − Max)))
//
// T, Min and Max in °C, B in 1/(°C·√h), C in 1/°C; 0 outside Min to Max. The short form (C = 0) is for temperatures
// well below the optimum. Source: Ratkowsky et al. 1982 and 1983, Journal of Bacteriology 149:1 and 154:1222.
type SquareRoot struct {
	Name   string         `json:"name"`
	Min    float64        `json:"min"` // °C
	Max    float64        `json:"max"` // °C
	B      float64        `json:"b"`   // 1/(°C·√h)
	C      float64        `json:"c"`   // 1/°C; 0 for the short form
	Source working.Source `json:"source,omitzero"`
}

func (m SquareRoot) rate(t float64) float64 {
	if t <= m.Min || t >= m.Max {
		return 0
	}
	root := m.B * (t - m.Min)
	if m.C > 0 {
		root *= -math.Expm1(m.C * (t - m.Max))
	}
	return root * root
}

// Optimum is the temperature in °C at which the full form is fastest:
//
//	Topt = (W(exp(C·(Max − Min) + 1)) + C·Min − 1)/C
//
// W is the Lambert function. NaN for the short form, which has no optimum. Source: Garre et al., biogrowth, after
// Ratkowsky et al. 1983.
func (m SquareRoot) Optimum() float64 {
	if !(m.C > 0) {
		return math.NaN()
	}
	// w·e^w = e^y with y = C·(Max − Min) + 1 means w + ln w = y; Newton from y > 1, each step of which has twice the
	// digits of the one before.
	y := m.C*(m.Max-m.Min) + 1
	w := y - math.Log(y)
	for range 6 {
		w -= (w + math.Log(w) - y) / (1 + 1/w)
	}
	return (w + m.C*m.Min - 1) / m.C
}

// Gamma is the rate of the full form relative to its optimum, from 0 to 1; NaN for the short form.
func (m SquareRoot) Gamma(t float64) float64 { return m.rate(t) / m.rate(m.Optimum()) }

// Curve makes a [Curve] of the model. Errors: ErrOutOfRange for values that are not finite, not positive or not in
// order.
//
// The short form has no upper end: its Max may be left at 0.
func (m SquareRoot) Curve() (Curve, error) {
	if m.C == 0 && m.Max == 0 {
		m.Max = tableHigh
	}
	var p problems
	p.temperature("Min", m.Min)
	p.temperature("Max", m.Max)
	p.Float("B", m.B, 1e-6, 10, "/(°C·√h)")
	p.Float("C", m.C, 0, 100, "/°C")
	if p.Err() == nil && !(m.Min < m.Max) {
		p.Add("Max", quantity.Celsius(m.Max), quantity.Tell("ferment.want_above_least", "above the least"), errOutOfRange)
	}
	if err := p.ErrFor(m); err != nil {
		return Curve{}, err
	}
	if m.Source.IsZero() {
		m.Source = sources.Ratkowsky1983
	}
	return Curve{m.curve(About{Name: m.Name, Low: math.Max(tableLow, m.Min-3), High: m.Max, Source: m.Source})}, nil
}

func (m SquareRoot) curve(a About) *curve {
	c := &curve{about: a, breaks: []float64{m.Min, m.Max}, rate: m.rate}
	c.told = func(t working.Expr, _ float64) working.Expr {
		root := working.Num(m.B).Times(t.Minus(m.Min))
		if m.C > 0 {
			root = root.Times(working.Num(1).Minus(working.Exp(working.Num(m.C).Times(t.Minus(m.Max)))))
		}
		return root.ToThe(2)
	}
	c.about.Formula = "(b·(T − Tmin))²"
	if m.C > 0 {
		c.about.Formula = "(b·(T − Tmin)·(1 − exp(c·(T − Tmax))))²"
	} else {
		c.primitive = func(t float64) float64 {
			x := math.Min(math.Max(t, m.Min), m.Max) - m.Min
			return m.B * m.B * x * x * x / 3
		}
	}
	return c
}

// SquareRootCold is the short square-root form through the Gänzle yeast rates at 12 and 22 °C: for teaching, and as a
// rival in the cold.
func SquareRootCold() Curve { return Curve{squareRootColdCurve} }

var squareRootColdCurve = squareRootThrough(ganzleYeast).curve(About{
	Name: "square root, cool side", Key: "square-root-cold", Low: 0, High: 25,
	Note:   "Tmin and b put through the Gänzle yeast rates at 12 and 22 °C, a judgment; no optimum, so only up to 25 °C",
	Source: sources.Ratkowsky1982,
})

func squareRootThrough(g ganzle) SquareRoot {
	r1, r2 := math.Sqrt(g.rate(12)), math.Sqrt(g.rate(22))
	b := (r2 - r1) / 10
	return SquareRoot{B: b, Min: 12 - r1/b, Max: tableHigh}
}

// SquareRootFull is the full square-root form with Tmin as [SquareRootCold], Tmax 36 °C, and the optimum and greatest
// rate of the Gänzle yeast: for teaching.
func SquareRootFull() Curve { return Curve{squareRootFullCurve} }

var squareRootFullCurve = fullSquareRoot(ganzleYeast).curve(About{
	Name: "square root, full", Key: "square-root-full", Low: 0, High: 36,
	Note:   "C and b chosen so that optimum and greatest rate are those of the Gänzle yeast, a judgment",
	Source: sources.Ratkowsky1983,
})

func fullSquareRoot(g ganzle) SquareRoot {
	m := SquareRoot{Min: squareRootThrough(g).Min, Max: g.max, B: 1}
	lo, hi := 0.01, 5.0 // the optimum rises with C
	for range 60 {
		m.C = (lo + hi) / 2
		if m.Optimum() < g.optimum() {
			lo = m.C
		} else {
			hi = m.C
		}
	}
	m.B = math.Sqrt(g.rate(g.optimum()) / m.rate(m.Optimum()))
	return m
}

// ConstantQ10 is a rate that grows by the same factor Q for every 10 °C.
//
//	μ = Rate·Q^((T − Reference)/10)
//
// Rate in 1/h at Reference in °C. It has no optimum and no end, so Low and High say where it may be used. Source:
// van 't Hoff's rule.
type ConstantQ10 struct {
	Name            string         `json:"name"`
	Q               float64        `json:"q"`
	Rate            float64        `json:"rate"`      // 1/h
	Reference       float64        `json:"reference"` // °C
	Low             float64        `json:"low"`       // °C
	High            float64        `json:"high"`      // °C
	Source          working.Source `json:"source,omitzero"`
	key, whereFound string
}

// Curve makes a [Curve] of the rule. Errors: ErrOutOfRange for values that are not finite, Q outside 1 to 20, or Low
// not below High.
func (m ConstantQ10) Curve() (Curve, error) {
	var p problems
	p.Float("Q", m.Q, 1, 20, "")
	p.Float("Rate", m.Rate, 1e-6, 10, "/h")
	p.temperature("Reference", m.Reference)
	p.temperature("Low", m.Low)
	p.temperature("High", m.High)
	if p.Err() == nil && !(m.Low < m.High) {
		p.Add("High", quantity.Celsius(m.High), quantity.Tell("ferment.want_above_low_end", "above the low end"),
			errOutOfRange)
	}
	if err := p.ErrFor(m); err != nil {
		return Curve{}, err
	}
	if m.Source.IsZero() {
		m.Source = sources.Practice("a rate grows by one factor for every 10 °C")
	}
	return Curve{m.curve()}, nil
}

func (m ConstantQ10) curve() *curve {
	k := math.Log(m.Q) / 10
	rate := func(t float64) float64 { return m.Rate * math.Exp(k*(t-m.Reference)) }
	c := &curve{rate: rate, about: About{Name: m.Name, Key: m.key, Low: m.Low, High: m.High,
		Formula: "μref·Q^((T − Tref)/10)", Note: m.whereFound, Source: m.Source}}
	c.told = func(t working.Expr, _ float64) working.Expr {
		return working.Num(m.Rate).Times(working.Num(m.Q).ToThe(t.Minus(m.Reference).Over(10)))
	}
	if k > 0 {
		c.primitive = func(t float64) float64 { return rate(t) / k }
	}
	return c
}

// TradeQ10 is the bakers' rule that fermentation doubles for every 17 °F: Q10 = 2^(18/17) = 2.083, set to the Gänzle
// yeast's rate at 24 °C. Between 10 and 20 °C the growth curve's own Q10 is 6.7: the rule badly overstates
// fermentation in the cold.
func TradeQ10() Curve { return Curve{tradeQ10Curve} }

var tradeQ10Curve = ConstantQ10{
	Name: "trade rule, doubling each 17 °F", key: "trade-q10", Q: math.Pow(2, 18.0/17), Rate: ganzleYeast.rate(24),
	Reference: 24, Low: 15, High: 35,
	whereFound: "overstates fermentation in the cold; for teaching and for comparison",
	Source:     sources.Practice("fermentation doubles for every 17 °F"),
}.curve()
