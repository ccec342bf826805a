package steam

import (
	"fmt"
	"math"

	"example.org/maslin/dough/quantity"
)

// The standard atmosphere below 11 km.
// Source: ISO 2533:1975 (the same values as ICAO Doc 7488 and US Standard Atmosphere 1976).
const (
	SeaLevelPascal  = 101325.0
	seaLevelKelvin  = 288.15
	lapse           = 0.0065    // K per geopotential meter
	gravity         = 9.80665   // m/s²
	molarMass       = 0.0289644 // kg/mol
	gasConstant     = 8.31432   // J/(mol K)
	earthRadius     = 6356766.0 // m
	MinGeopotential = -2000.0   // m
	MaxGeopotential = 11000.0   // m
)

const pressureExponent = gravity * molarMass / (gasConstant * lapse) // 5.255876

// Geopotential is the geopotential altitude of a geometric one, H = R·Z/(R + Z): 1,150 m above the sea
// is 1,149.8 m. Source: ISO 2533:1975.
func Geopotential(geometric float64) float64 {
	return earthRadius * geometric / (earthRadius + geometric)
}

// Pressure is the standard pressure in Pa at a geopotential altitude in m.
//
// Formula: p = 101325·(1 − 0.0065·H/288.15)^(g·M/(R·0.0065)).
// Valid range: −2,000 m to 11,000 m. Accuracy: exact for the standard atmosphere; weather moves the real
// pressure by about ±3 %. Errors: [quantity.ErrOutOfRange]. Source: ISO 2533:1975.
func Pressure(geopotential float64) (float64, error) {
	if !(geopotential >= MinGeopotential && geopotential <= MaxGeopotential) {
		return 0, fmt.Errorf("altitude %w: got %g m, want %g m to %g m", quantity.ErrOutOfRange, geopotential,
			MinGeopotential, MaxGeopotential)
	}
	return SeaLevelPascal * math.Pow(1-lapse*geopotential/seaLevelKelvin, pressureExponent), nil
}

// Altitude is the geopotential altitude in m at which the standard atmosphere has the pressure: the inverse
// of [Pressure], with the same range and errors.
func Altitude(pascal float64) (float64, error) {
	h := seaLevelKelvin / lapse * (1 - math.Pow(pascal/SeaLevelPascal, 1/pressureExponent))
	if !(h >= MinGeopotential-1e-6 && h <= MaxGeopotential+1e-6) {
		return 0, fmt.Errorf("pressure %w: got %g Pa, want the pressure between %g m and %g m",
			quantity.ErrOutOfRange, pascal, MinGeopotential, MaxGeopotential)
	}
	return h, nil
}

// StandardKelvin is the air temperature of the standard atmosphere at a geopotential altitude in m; same
// range and errors as [Pressure].
func StandardKelvin(geopotential float64) (float64, error) {
	if _, err := Pressure(geopotential); err != nil {
		return 0, err
	}
	return seaLevelKelvin - lapse*geopotential, nil
}
