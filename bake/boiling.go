package bake

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/steam"
)

// Site says where the oven stands. The zero value is sea level under the standard atmosphere.
type Site struct {
	Altitude quantity.Length `json:"altitude"` // geometric altitude above the sea
	// what a barometer in the kitchen reads, uncorrected; it overrides the altitude
	Station Pressure `json:"station,omitzero"`
	// what a weather service gives, reduced to sea level; needs the altitude
	SeaLevel Pressure `json:"sea_level,omitzero"`
}

// At is the place at an altitude under the standard atmosphere.
func At(altitude quantity.Length) Site { return Site{Altitude: altitude} }

// The altitudes people bake at: from the shores of the Dead Sea to above the highest towns.
var (
	lowestAltitude  = quantity.Meters(-500)
	highestAltitude = quantity.Meters(9000)
	lowestPressure  = Hectopascals(300)
	highestPressure = Hectopascals(1100)
)

// Boiling is the boiling point of water at a place, and the pressure it follows from.
type Boiling struct {
	answer

	Point    quantity.Temperature `json:"point"`
	Pressure Pressure             `json:"pressure"`
	place    Site
}

// BoilingPoint answers: at what temperature does water boil here?
//
// Formula: p from the standard atmosphere at the geopotential altitude H = R·Z/(R + Z), or from the
// barometer; then the saturation temperature of IAPWS-IF97, region 4. A pressure reduced to sea level is
// taken back up: the pressure altitude is H plus the pressure altitude of the reduced value.
// Symbols: Z altitude in m; p in Pa.
// Valid range: −500 to 9,000 m; 300 to 1,100 hPa.
// Accuracy: 0.01 °C for a given pressure; weather moves the real pressure by about ±3 %, which is ±0.9 °C.
// Dissolved salt and sugar raise the boiling point in a crumb by a few tenths more.
// Errors: [quantity.ErrOutOfRange]; [quantity.ErrInconsistent] for both kinds of barometer reading at once.
// Source: ISO 2533 (1975); IAPWS R7-97(2012).
func (s Site) BoilingPoint() (Boiling, error) {
	var problems quantity.Problems
	checkSite(&problems, s)
	if err := problems.ErrFor(s); err != nil {
		return Boiling{}, err
	}
	pa, celsius, err := s.boil()
	if err != nil {
		return Boiling{}, err
	}
	return Boiling{Point: quantity.Celsius(celsius), Pressure: pascals(pa), place: s}, nil
}

// checkSite notes what is wrong with a place.
func checkSite(problems *quantity.Problems, place Site) bool {
	ok := quantity.Check(problems, "Altitude", place.Altitude, lowestAltitude, highestAltitude)
	if !place.Station.IsZero() {
		ok = quantity.Check(problems, "Station", place.Station, lowestPressure, highestPressure) && ok
	}
	if !place.SeaLevel.IsZero() {
		ok = quantity.Check(problems, "SeaLevel", place.SeaLevel, Hectopascals(850), highestPressure) && ok
		if !place.Station.IsZero() {
			problems.Add("SeaLevel", place.SeaLevel,
				quantity.Tell("bake.want_one_barometer_reading_not_two", "one barometer reading, not two"),
				quantity.ErrInconsistent)
			ok = false
		}
	}
	return ok
}

// checkSiteField is checkSite for a field named Place. It does not build the longer paths unless
// something is wrong.
func checkSiteField(problems *quantity.Problems, place Site) bool {
	var inner quantity.Problems
	ok := checkSite(&inner, place)
	if !ok {
		problems.Join("Place", inner.Err())
	}
	return ok
}

// boil is the pressure in Pa and the boiling point in °C at a place that was checked.
func (s Site) boil() (pascal, celsius float64, err error) {
	switch {
	case s.Station.IsValid():
		pascal = s.Station.pascals()
	default:
		h := steam.Geopotential(s.Altitude.Meters())
		if s.SeaLevel.IsValid() {
			reduced, err := steam.Altitude(s.SeaLevel.pascals())
			if err != nil {
				return 0, 0, err
			}
			h += reduced
		}
		if pascal, err = steam.Pressure(h); err != nil {
			return 0, 0, err
		}
	}
	kelvin, err := steam.SaturationTemperature(pascal)
	return pascal, kelvin - 273.15, err
}

// String prints "96.1 °C at 882.5 hPa".
func (b Boiling) String() string { return b.message().String() }

func (b Boiling) message() working.Message {
	return working.Tell("bake.boiling", "%.1f at %v", b.Point, b.Pressure)
}
