package gasbalance

import (
	"math"

	"example.org/maslin/internal/numeric"
)

// Formula is what of a recipe the yeast feels.
type Formula struct {
	// Hydration is the water over the flour: 0.72. Milk counts with its water, eggs too.
	Hydration float64
	// Salt and Sugar are in percent of the flour; sugar is what yeast splits at once, such as table sugar.
	Salt, Sugar float64
	// Whole is the share of the flour that is whole grain, 0 to 1.
	Whole float64
	// Osmotolerant says that the yeast is one made for sweet doughs.
	Osmotolerant bool
}

const (
	// Molar masses of sodium chloride and sucrose, g/mol (standard atomic weights).
	molarSalt    = 58.44
	molarSucrose = 342.3
	// Salt comes apart into two ions, at the osmotic coefficient 0.93 of sea-water strength (from memory); sucrose
	// is split by the yeast into two hexoses.
	saltParticles    = 1.86
	sucroseParticles = 2.0
	// plainHydration is the water of the dough the pace is counted from.
	plainHydration = 0.72
)

// Solutes is Π, what salt and sugar press with in the dough's water, osmol per kg water.
//
//	Π = (c_s/h)·10/58.44·1.86 + (c_z/h)·10/342.3·2
//
// c_s and c_z are salt and sugar in percent of the flour, h the water over the flour. The flour's own solutes are
// not counted: they are the same in every dough. Source: van 't Hoff; the osmotic coefficient of salt from memory.
func (f Formula) Solutes() float64 {
	return 10 / f.Hydration * (f.Salt/molarSalt*saltParticles + f.Sugar/molarSucrose*sucroseParticles)
}

// Pace is π, what the formula does to every rate: 0.88 for 2 % salt at 72 % water.
//
//	π = 1/(1 + (Π/Π₅₀)²) · (min(h, 1)/0.72)^0.4 · e^(0.182·whole)
//
// Π₅₀ is 2.4 osmol/kg, 3.4 for osmotolerant yeast. All judgments between what the trade says of salt (10 to 30 %
// longer), of sugar (harmless to 5 %, slow above 10 %) and of stiff doughs (slower).
func (l *Law) Pace(f Formula) float64 {
	half := l.Halfway
	if f.Osmotolerant {
		half = l.HalfwayTolerant
	}
	x := f.Solutes() / half
	water := numeric.Log(math.Min(f.Hydration, 1) / plainHydration)
	return numeric.Exp(l.Stiffness*water+l.Whole*f.Whole) / (1 + x*x)
}

// plain is the dough every other is compared with: 2 % salt at 72 % water.
var plain = Formula{Hydration: plainHydration, Salt: 2}

// Unusual is |ln(π/π of 2 % salt at 72 % water)|: how far the formula leads from the dough the law is set on, in
// the log of the pace.
func (l *Law) Unusual(f Formula) float64 { return l.unusual(l.Pace(f)) }

// unusual is that of a pace that is known already.
func (l *Law) unusual(pace float64) float64 { return math.Abs(numeric.Log(pace / l.plainPace)) }

// Ideal is what salt and sugar press with as ideal particles, osmol per kg water: as [Formula.Solutes] with salt as
// two whole ions. It is for comparison with published osmotic pressures of dough, 35 to 100 atm with the 5 to 10 of
// the flour itself.
func (f Formula) Ideal() float64 {
	return 10 / f.Hydration * (f.Salt/molarSalt*2 + f.Sugar/molarSucrose*sucroseParticles)
}

// Atmospheres is the osmotic pressure of a solution in osmol per kg water at a temperature in °C: 24.6 atm for one
// at 27 °C. Source: van 't Hoff.
func Atmospheres(osmolality, celsius float64) float64 {
	return osmolality * gasConst * (celsius + kelvin) / 101.325
}
