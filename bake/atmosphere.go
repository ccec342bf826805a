package bake

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/steam"
)

// Atmosphere is the standard atmosphere at an altitude.
type Atmosphere struct {
	answer

	Pressure    Pressure             `json:"pressure"`
	Temperature quantity.Temperature `json:"temperature"` // of the air outside, on average over the year and the world
	place       Site
}

// StandardAtmosphere answers: what pressure and what air temperature has the standard atmosphere at this altitude?
//
// Formula: p = 101325·(1 − 0.0065·H/288.15)^5.255876 Pa and T = 288.15 − 0.0065·H K at the geopotential altitude H =
// R·Z/(R + Z). Barometer readings are left out of account. Symbols: Z altitude in m, R = 6,356,766 m. Valid range:
// −500 to 9,000 m. Accuracy: exact for the standard; weather moves the pressure by about ±3 % and the temperature by
// tens of degrees. Errors: [quantity.ErrOutOfRange]. Source: ISO 2533 (1975).
func (s Site) StandardAtmosphere() (Atmosphere, error) {
	var problems quantity.Problems
	checkSite(&problems, Site{Altitude: s.Altitude})
	if err := problems.ErrFor(s); err != nil {
		return Atmosphere{}, err
	}
	h := steam.Geopotential(s.Altitude.Meters())
	pascal, err := steam.Pressure(h)
	if err != nil {
		return Atmosphere{}, err
	}
	kelvin, err := steam.StandardKelvin(h)
	if err != nil {
		return Atmosphere{}, err
	}
	return Atmosphere{Pressure: pascals(pascal), Temperature: quantity.Celsius(kelvin - 273.15), place: s}, nil
}

// String prints "882.5 hPa and 7.5 °C".
func (a Atmosphere) String() string { return a.message().String() }

func (a Atmosphere) message() working.Message {
	return working.Tell("bake.atmosphere", "%v and %.1f", a.Pressure, a.Temperature)
}
