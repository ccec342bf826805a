package cli

import (
	"time"

	"example.org/maslin/dough/quantity"
)

func rounded(m quantity.Mass) quantity.Mass {
	r, _ := m.RoundTo(quantity.Grams(1))
	return r
}

func leaves(residue quantity.Mass, u units) string {
	if residue.Sign() < 0 {
		return "adds " + u.mass(residue.Neg())
	}
	return "leaves out " + u.mass(residue)
}

// clock prints a time, with its day when that differs from the reference day.
func clock(t, reference time.Time) string {
	if t.YearDay() == reference.YearDay() && t.Year() == reference.Year() {
		return t.Format("15:04")
	}
	return t.Format("Mon 15:04")
}
