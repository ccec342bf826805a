package ferment

import (
	"math"

	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// The Gänzle form μ = a·x^b·e^(−c·x), x = Tmax − T, and 0 from Tmax on. Its maximum lies at Tmax − b/c.
type ganzle struct{ a, b, c, max float64 }

func (g ganzle) rate(t float64) float64 {
	x := g.max - t
	if x <= 0 {
		return 0
	}
	return g.a * math.Exp(g.b*math.Log(x)-g.c*x)
}

func (g ganzle) optimum() float64 { return g.max - g.b/g.c }

// Constants of the temperature equation of Gänzle, Ehmann and Hammes (1998) as passed on by its author; remembered,
// and in agreement with the optima, the limits and the doubling rule that are published.
var (
	ganzleYeast = ganzle{0.0124, 2.9810, 0.3355, 36}
	ganzleLacto = ganzle{0.1267, 1.5404, 0.1931, 41}
)

// heldTo is where the held variant begins to fall: gas production keeps rising above the optimum of growth.
const heldTo = 30

// GanzleYeast is the growth of the sourdough yeast Kazachstania humilis (Candida milleri): 0.423/h at most, at 27.1 °C,
// none from 36 °C on. It is a curve of growth, not of gas: above 27 °C it falls while gassing still rises.
func GanzleYeast() Curve { return Curve{ganzleYeastCurve} }

var ganzleYeastCurve = ganzleCurve(About{
	Name: "Gänzle yeast", Key: "ganzle-yeast", Low: 0, High: 36,
	Formula: "0.0124·(36 − T)^2.981·exp(−0.3355·(36 − T))",
	Note: "growth of one species in laboratory medium; falls above 27 °C although gas production still rises; never " +
		"quite zero in the cold although the authors report no growth at 8 °C",
	Source: sources.Ganzle1998,
}, ganzleYeast, piece{low: math.Inf(-1), form: ganzleYeast})

// GanzleYeastHeld is [GanzleYeast] holding its maximum from 27.1 to 30 °C before it falls, because gas production has
// its optimum well above that of growth; a judgment of this library, and the curve to plan bulk with.
func GanzleYeastHeld() Curve { return Curve{ganzleYeastHeldCurve} }

var ganzleYeastHeldCurve = ganzleCurve(About{
	Name: "Gänzle yeast, held to 30 °C", Key: "ganzle-yeast-held", Low: 0, High: 38,
	Formula: "0.0124·(36 − T′)^2.981·exp(−0.3355·(36 − T′))",
	Note: "T′ is T below 27.1 °C, stays at 27.1 °C up to 30 °C, and is T − 2.9 °C above; the plateau is a judgment, " +
		"gas production rises beyond the optimum of growth",
	Source: sources.Ganzle1998,
}, ganzleYeast,
	piece{low: math.Inf(-1), form: ganzleYeast},
	piece{low: ganzleYeast.optimum(), flat: true, form: ganzleYeast},
	piece{low: heldTo, shift: heldTo - ganzleYeast.optimum(), form: ganzleYeast})

// GanzleYeastColdStop is [GanzleYeastHeld] with a straight line from its rate at 14 °C to nothing at 8 °C, where the
// authors report no growth; for those who find that their refrigerator stops a dough dead.
func GanzleYeastColdStop() Curve { return Curve{ganzleYeastColdStopCurve} }

var ganzleYeastColdStopCurve = ganzleCurve(About{
	Name: "Gänzle yeast, stopping at 8 °C", Key: "ganzle-yeast-cold-stop", Low: 0, High: 38,
	Formula: "as held to 30 °C; below 14 °C μ(14)·max(0; T − 8)/6",
	Note: "the straight line to zero is a judgment between the equation, which never reaches zero, and the reported " +
		"absence of growth at 8 °C",
	Source: sources.Ganzle1998,
}, ganzleYeast,
	piece{low: math.Inf(-1), line: true},
	piece{low: 8, line: true, slope: ganzleYeast.rate(14) / 6},
	piece{low: 14, form: ganzleYeast},
	piece{low: ganzleYeast.optimum(), flat: true, form: ganzleYeast},
	piece{low: heldTo, shift: heldTo - ganzleYeast.optimum(), form: ganzleYeast})

// GanzleLactobacilli is the growth of Fructilactobacillus sanfranciscensis: 0.665/h at most, at 33.0 °C, none from 41
// °C on.
func GanzleLactobacilli() Curve { return Curve{ganzleLactobacilliCurve} }

var ganzleLactobacilliCurve = ganzleCurve(About{
	Name: "Gänzle lactobacilli", Key: "ganzle-lactobacilli", Low: 0, High: 41,
	Formula: "0.1267·(41 − T)^1.5404·exp(−0.1931·(41 − T))",
	Note:    "growth of one species in laboratory medium; stopped by 4 g salt in 100 mL water and by its own acid",
	Source:  sources.Ganzle1998,
}, ganzleLacto, piece{low: math.Inf(-1), form: ganzleLacto})

// piece is a part of a curve from low up to the next piece: the Gänzle form of T − shift, or its maximum, or a straight
// line slope·(T − low).
type piece struct {
	low   float64
	form  ganzle
	shift float64
	flat  bool
	line  bool
	slope float64
}

func (p piece) rate(t float64) float64 {
	switch {
	case p.flat:
		return p.form.rate(p.form.optimum())
	case p.line:
		if p.slope == 0 {
			return 0
		}
		return p.slope * (t - p.low)
	}
	return p.form.rate(t - p.shift)
}

// told is the rate of a piece as arithmetic.
func (p piece) told(t working.Expr) working.Expr {
	g := p.form
	switch {
	case p.line:
		return working.Num(p.slope).Times(t.Minus(p.low))
	case p.flat:
		t = working.Num(g.optimum())
	case p.shift != 0:
		t = t.Minus(p.shift)
	}
	x := working.Num(g.max).Minus(t)
	return working.Num(g.a).Times(x.ToThe(g.b)).Times(working.Exp(working.Num(-g.c).Times(x)))
}

func ganzleCurve(about About, g ganzle, pieces ...piece) *curve {
	at := func(t float64) piece {
		i := len(pieces) - 1
		for i > 0 && t < pieces[i].low {
			i--
		}
		return pieces[i]
	}
	c := &curve{about: about, rate: func(t float64) float64 { return at(t).rate(t) }}
	for _, p := range pieces[1:] {
		c.breaks = append(c.breaks, p.low)
	}
	c.told = func(t working.Expr, celsius float64) working.Expr { return at(celsius).told(t) }
	last := pieces[len(pieces)-1]
	c.breaks = append(c.breaks, last.form.max+last.shift)
	c.table = newTable(pieces)
	return c
}
