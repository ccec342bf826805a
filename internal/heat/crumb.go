package heat

import "math"

// CrumbDiffusivity is the thermal diffusivity of bread crumb in m²/s at a porosity from 0 to 0.95: α =
// exp(0.01·ε − 15.25), ε in %. It was measured without evaporation: an evaporating crumb conducts better.
// Errors: [quantity.ErrOutOfRange].
//
// Source: Zanoni, Peri and Gianotti, Journal of Food Engineering 26 (1995) 497-510.
func CrumbDiffusivity(porosity float64) (float64, error) {
	if !within(porosity, 0, 0.95) {
		return 0, outOfRange("porosity", porosity, 0, 0.95, "")
	}
	return math.Exp(porosity - 15.25), nil
}
