package cli

import (
	"fmt"
	"slices"
	"strconv"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
)

func waterPage(p *page, u units, f waterFlags, r mixing.WaterResult, rise quantity.TemperatureDelta, prior *mixing.Prior, ice *mixing.IceResult) {
	if r.Feasible {
		p.para(0, "Water at "+u.temperature(r.Temperature, 1)+", for a dough of "+u.temperature(f.f.Target, 1))
	} else {
		p.para(0, "The water would have to be "+u.temperature(r.Temperature, 1)+" for a dough of "+u.temperature(f.f.Target, 1)+"; that cannot be poured")
	}
	section(p, "Reckoned with")
	var rows [][]string
	for _, o := range f.f.Others {
		rows = append(rows, []string{printable(o.Name), u.temperature(o.Temperature, 1)})
	}
	rows = append(rows, []string{"friction factor", u.delta(f.f.Friction) + " for " + strconv.Itoa(f.f.Count()) + " factors"}, []string{"warming by mixing", u.delta(rise)})
	p.rows(2, "ll", rows)
	if prior != nil {
		p.para(2, fmt.Sprintf("the friction is a guide value (published: %s to %s for 3 factors); measure a dough once and use --measured", u.delta(prior.Low), u.delta(prior.High)))
	}
	if ice != nil {
		section(p, "From the tap at "+u.temperature(f.f.Tap, 1))
		if ice.Feasible {
			p.rows(2, "rl", [][]string{{u.mass(tenthGram(ice.Ice)), "ice"}, {u.mass(tenthGram(ice.Liquid)), "tap water"}})
		} else {
			p.para(2, "even all of the water as ice is not cold enough")
		}
	}
	ways := r.Remedies
	if ice != nil { // said already
		ways = slices.DeleteFunc(slices.Clone(ways), func(x mixing.WaterRemedy) bool { return x.Way == mixing.Ice })
	}
	if len(ways) > 0 {
		title := "Ways to get there"
		if ice != nil {
			title = "Or"
		}
		section(p, title)
		for _, x := range ways {
			text := u.say(x.Text)
			if !x.Enough {
				text += " (not enough by itself)"
			}
			p.para(2, text)
		}
	}
}

func balancePage(p *page, u units, b mixing.BalanceResult, c mixing.Comparison) {
	section(p, "Two methods side by side")
	degree := func(x float64) string { return strconv.FormatFloat(x, 'f', 2, 64) }
	p.rows(2, "lrr", [][]string{
		{"", "factors", "balance"},
		{"water at", u.temperature(c.ByFactors, 1), u.temperature(c.ByBalance, 1)},
		{"a degree of water moves the dough by", degree(c.SensitivityByFactors), degree(c.SensitivityByBalance)},
	})
	if d := c.Difference; d.Sign() < 0 {
		p.para(2, "the factor method asks for water that is "+u.delta(d.Neg())+" colder than by the balance")
	} else {
		p.para(2, "the factor method asks for water that is "+u.delta(d)+" warmer than by the balance")
	}
	section(p, "Why they differ")
	rows := [][]string{{"", "weight", "counted", "shift"}}
	for _, part := range c.Parts {
		rows = append(rows, []string{printable(part.Name), degree(part.Weight), strconv.Itoa(part.Counted), signed(part.Shift, u)})
	}
	rows = append(rows, []string{"heat of mixing", "", "", signed(c.HeatShift, u)})
	p.rows(2, "lrrr", rows)
	p.para(2, "weight: heat capacity, the water being 1; counted: 1 for a factor. Far from the day the friction was measured, believe the balance.")
	p.para(2, "friction factor with which both agree today: "+signed(c.AgreeingFriction, u))
	if !b.Feasible {
		for _, x := range b.Remedies {
			p.para(2, "by the balance: "+u.say(x.Text))
		}
	}
}

func signed(d quantity.TemperatureDelta, u units) string {
	if d.Sign() < 0 {
		return "−" + u.delta(d.Neg())
	}
	return "+" + u.delta(d)
}
