package steam

import (
	"fmt"
	"math"

	"example.org/maslin/dough/quantity"
)

// The coefficients of region 4.
// Source: IAPWS R7-97(2012), table 34.
const (
	n1  = 0.11670521452767e4
	n2  = -0.72421316703206e6
	n3  = -0.17073846940092e2
	n4  = 0.12020824702470e5
	n5  = -0.32325550322333e7
	n6  = 0.14915108613530e2
	n7  = -0.48232657361591e4
	n8  = 0.40511340542057e6
	n9  = -0.23855557567849
	n10 = 0.65017534844798e3
)

// The range of the saturation line, from 0 °C to the critical point.
const (
	MinKelvin = 273.15
	MaxKelvin = 647.096
	MinPascal = 611.213
	MaxPascal = 22.064e6
)

// SaturationPressure is the vapor pressure of water in Pa at T kelvin.
//
// Formula: ϑ = T + n₉/(T − n₁₀); A, B, C quadratic in ϑ; p = (2C/(−B + √(B² − 4AC)))⁴ MPa.
// Valid range: 273.15 K to 647.096 K. Accuracy: within 0.01 % of the scientific formulation (IAPWS SR1-86)
// from 0 to 100 °C, which is 0.002 °C in the boiling point. Errors: [quantity.ErrOutOfRange].
//
// Source: IAPWS R7-97(2012), equation 30.
func SaturationPressure(kelvin float64) (float64, error) {
	if !(kelvin >= MinKelvin && kelvin <= MaxKelvin) {
		return 0, fmt.Errorf("saturation temperature %w: got %g K, want %g K to %g K", quantity.ErrOutOfRange, kelvin,
			MinKelvin, MaxKelvin)
	}
	v := kelvin + n9/(kelvin-n10)
	a := v*v + n1*v + n2
	b := n3*v*v + n4*v + n5
	c := n6*v*v + n7*v + n8
	q := 2 * c / (-b + math.Sqrt(b*b-4*a*c))
	return q * q * q * q * 1e6, nil
}

// SaturationTemperature is the boiling point of water in K at p pascal.
//
// Formula: β = p^¼ (p in MPa); E, F, G quadratic in β; D = 2G/(−F − √(F² − 4EG));
// T = (n₁₀ + D − √((n₁₀ + D)² − 4(n₉ + n₁₀D)))/2.
// Valid range: 611.213 Pa to 22.064 MPa. Accuracy: the exact inverse of [SaturationPressure] to rounding.
// Errors: [quantity.ErrOutOfRange].
//
// Source: IAPWS R7-97(2012), equation 31.
func SaturationTemperature(pascal float64) (float64, error) {
	if !(pascal >= MinPascal && pascal <= MaxPascal) {
		return 0, fmt.Errorf("saturation pressure %w: got %g Pa, want %g Pa to %g Pa", quantity.ErrOutOfRange, pascal,
			MinPascal, MaxPascal)
	}
	beta := math.Sqrt(math.Sqrt(pascal / 1e6))
	e := beta*beta + n3*beta + n6
	f := n1*beta*beta + n4*beta + n7
	g := n2*beta*beta + n5*beta + n8
	d := 2 * g / (-f - math.Sqrt(f*f-4*e*g))
	return (n10 + d - math.Sqrt((n10+d)*(n10+d)-4*(n9+n10*d))) / 2, nil
}

// Region4 are the ten coefficients n₁ to n₁₀ of the boiling line.
// Source: IAPWS R7-97(2012), table 34.
func Region4() [10]float64 { return [10]float64{n1, n2, n3, n4, n5, n6, n7, n8, n9, n10} }
