package bake

import (
	"math"
	"strconv"

	"example.org/maslin/dough/working"
	"example.org/maslin/internal/heat"
	"example.org/maslin/internal/sources"
)

// surface is how a loaf meets what is around it; the zero value holds its surface at that temperature.
type surface struct{ h, k float64 }

// An axisSymbols is what is derived along one axis of a loaf.
type axisSymbols struct {
	heat.AxisTerm
	number                     string
	radius, eigen, coefficient working.Expr
}

// axisSteps derive the Biot number, the first eigenvalue and its coefficient along each axis of a loaf.
func axisSteps(d *working.Derivation, terms []heat.AxisTerm, air surface) []axisSymbols {
	var out []axisSymbols
	for i, t := range terms {
		a := axisSymbols{AxisTerm: t, number: strconv.Itoa(i + 1)}
		a.radius = working.Given("R_"+a.number,
			working.Tell("bake.symbol_radius", "half thickness or radius, axis %d: %v", i+1, axisName(t.Shape)),
			working.Amount(t.Radius, "m", 4))
		a.eigen = a.eigenvalue(d, i+1, air)
		a.coefficient = d.Find(working.Finding{
			Name:   working.Tell("bake.symbol_coefficient", "coefficient of the first term, axis %d", i+1),
			Symbol: "C_" + a.number, By: coefficient(t, a.eigen), Decimals: 4, Source: sources.Conduction,
			Note: working.Tell("bake.note_coefficient", "for the middle of a body that is equally warm all through at first"),
		})
		out = append(out, a)
	}
	return out
}

// eigenvalue derives the first eigenvalue of an axis.
func (a *axisSymbols) eigenvalue(d *working.Derivation, axis int, air surface) working.Expr {
	z := "z_" + a.number
	if a.Biot > 1e5 {
		f := working.Finding{
			Name:   working.Tell("bake.eigenvalue_held", "first eigenvalue, axis %d, the surface held", axis),
			Symbol: z, Decimals: 4, Source: sources.Conduction, Term: working.Explain("eigenvalue"),
		}
		switch a.Shape {
		case heat.Slab:
			f.By = working.Pi().Over(2)
		case heat.Sphere:
			f.By, f.Note = working.Pi(), working.Tell("bake.note_held_ball", "the first root of sin(z) = 0")
		default:
			f.Is = working.Amount(a.Eigenvalue, "", 4)
			f.Look = working.Tell("bake.look_bessel", "the first zero of the Bessel function J0, in any table")
		}
		return d.Find(f)
	}
	h := working.Given("h", working.Tell("bake.symbol_surface", "heat from the crust to the air, for each degree"),
		working.Amount(air.h, "W/(m² K)", 1))
	k := working.Given("k", working.Tell("bake.symbol_conductivity", "conductivity of the crumb"),
		working.Amount(air.k, "W/(m K)", 2))
	biot := d.Find(working.Finding{
		Name: working.Tell("bake.step_biot", "Biot number, axis %d", axis), Symbol: "Bi_" + a.number, Decimals: 4,
		By: h.Times(a.radius).Over(k), Term: working.Explain("biot"), Source: sources.Conduction,
	})
	guess := working.Given("y_"+a.number, working.Tell("bake.symbol_guess",
		"what was put in; put in what comes out until it stays"), working.Amount(roundTo(a.Eigenvalue, 3), "", 3))
	f := working.Finding{
		Symbol: z, Is: working.Amount(a.Eigenvalue, "", 4), Decimals: 4, By: newton(a.Shape, guess, biot), Within: 1e-4,
		Name: working.Tell("bake.eigenvalue_slab", "first eigenvalue, axis %d: the first root of z × tan(z) = Bi", axis),
		Note: working.Tell("bake.note_newton", "by Newton's method; angles in radians"),
		Term: working.Explain("eigenvalue"), Source: sources.Conduction,
	}
	switch a.Shape {
	case heat.Cylinder:
		f.Name = working.Tell("bake.eigenvalue_cylinder",
			"first eigenvalue, axis %d: the first root of z × J1(z) ÷ J0(z) = Bi", axis)
	case heat.Sphere:
		f.Name = working.Tell("bake.eigenvalue_sphere",
			"first eigenvalue, axis %d: the first root of 1 − z ÷ tan(z) = Bi", axis)
	}
	return d.Find(f)
}

// roundTo rounds to decimals.
func roundTo(x float64, decimals int) float64 {
	p := math.Pow10(decimals)
	return math.Round(x*p) / p
}

// newton is one step of Newton's method toward the first eigenvalue, in a form without poles.
func newton(s heat.Shape, y, biot working.Expr) working.Expr {
	sin, cos := working.Sin(y), working.Cos(y)
	switch s {
	case heat.Cylinder:
		j0, j1 := working.J0(y), working.J1(y)
		return y.Minus(y.Times(j1).Minus(biot.Times(j0)).Over(y.Times(j0).Plus(biot.Times(j1))))
	case heat.Sphere:
		return y.Minus(y.Times(cos).Plus(biot.Minus(1).Times(sin)).Over(biot.Times(cos).Minus(y.Times(sin))))
	}
	return y.Minus(y.Times(sin).Minus(biot.Times(cos)).Over(biot.Plus(1).Times(sin).Plus(y.Times(cos))))
}

// coefficient is that of the term of an eigenvalue.
func coefficient(t heat.AxisTerm, z working.Expr) working.Expr {
	if t.Biot > 1e5 {
		switch t.Shape {
		case heat.Cylinder:
			return working.Num(2).Over(z.Times(working.J1(z)))
		case heat.Sphere:
			return working.Num(2)
		}
		return working.Num(2).Over(z)
	}
	switch t.Shape {
	case heat.Cylinder:
		j0, j1 := working.J0(z), working.J1(z)
		return working.Num(2).Over(z).Times(j1).Over(j0.ToThe(2).Plus(j1.ToThe(2)))
	case heat.Sphere:
		top := working.Num(4).Times(working.Sin(z).Minus(z.Times(working.Cos(z))))
		return top.Over(working.Num(2).Times(z).Minus(working.Sin(working.Num(2).Times(z))))
	}
	return working.Num(4).Times(working.Sin(z)).Over(working.Num(2).Times(z).Plus(working.Sin(working.Num(2).Times(z))))
}

// timeConstant derives how slowly the middle of a loaf follows.
func timeConstant(d *working.Derivation, axes []axisSymbols, alpha working.Expr, minutes float64) working.Expr {
	var rates []working.Expr
	for _, a := range axes {
		rates = append(rates, a.eigen.Over(a.radius).ToThe(2))
	}
	return d.Find(working.Finding{
		Name: working.Tell("bake.step_tau_body", "time constant of the loaf"), Symbol: "τ",
		Is: working.Amount(minutes, working.Minute, 2), Decimals: 2, Within: 0.005,
		By:   working.Num(1).Over(alpha.Times(working.Sum(rates...))).Over(60),
		Term: working.Explain("time_constant"), Source: sources.Conduction,
	})
}

// seriesLead derives what stands before the exponential: the coefficients of the first terms, and how much the later
// terms still add at the time that is found.
func seriesLead(d *working.Derivation, axes []axisSymbols, alpha working.Expr, diffusivity,
	minutes float64) working.Expr {
	t := working.Given("t_s", working.Tell("bake.symbol_seconds",
		"likely time, in seconds; put in what comes out until it stays"), working.Amount(60*minutes, "s", 0))
	lead := working.Expr{}
	for i, a := range axes {
		by := working.Num(1)
		for j, term := range a.Later {
			if a.adds(term, diffusivity*60*minutes) < 1e-7 {
				continue
			}
			n := strconv.Itoa(j+2) + a.number
			z := working.Given("z_"+n, working.Tell("bake.symbol_later_eigenvalue", "eigenvalue %d of axis %d", j+2, i+1),
				working.Amount(term.Eigenvalue, "", 4))
			c := working.Given("C_"+n, working.Tell("bake.symbol_later_coefficient", "its coefficient (term %d, axis %d)", j+2,
				i+1), working.Amount(term.Coefficient, "", 4))
			by = by.Plus(c.Over(a.coefficient).Times(working.Exp(z.ToThe(2).Minus(a.eigen.ToThe(2)).Times(alpha).Times(t).
				Over(a.radius.ToThe(2)).Neg())))
		}
		if len(by.String()) == 1 { // no later term counts
			lead = times(lead, a.coefficient)
			continue
		}
		kappa := d.Find(working.Finding{
			Name:   working.Tell("bake.step_later_terms", "first term and those after it, over the first, axis %d", i+1),
			Symbol: "κ_" + a.number, By: by, Decimals: 5, Source: sources.Conduction,
		})
		lead = times(times(lead, a.coefficient), kappa)
	}
	return d.Find(working.Finding{
		Name: working.Tell("bake.step_lead", "lead of the series"), Symbol: "A", By: lead, Decimals: 4,
		Unit: working.Number, Term: working.Explain("lead"), Source: sources.Conduction,
	})
}

// times is a product of which the first factor may be missing.
func times(x, y working.Expr) working.Expr {
	if x == (working.Expr{}) {
		return y
	}
	return x.Times(y)
}

// adds is how much a later term adds to the first, after a time of which the product with the diffusivity is given.
func (a *axisSymbols) adds(later heat.Term, alphaTime float64) float64 {
	faster := (later.Eigenvalue*later.Eigenvalue - a.Eigenvalue*a.Eigenvalue) / (a.Radius * a.Radius)
	return math.Abs(later.Coefficient/a.Coefficient) * math.Exp(-faster*alphaTime)
}

func axisName(s heat.Shape) working.Message {
	switch s {
	case heat.Cylinder:
		return working.Tell("bake.axis_cylinder", "cylinder")
	case heat.Sphere:
		return working.Tell("bake.axis_sphere", "sphere")
	}
	return working.Tell("bake.axis_slab", "slab")
}
