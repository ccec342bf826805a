// Package steam answers: at what temperature does water boil at this pressure, and what is
// the pressure at this altitude? Temperatures are in kelvins, pressures in pascals, altitudes in meters.
//
// Saturation follows the industrial formulation IAPWS-IF97, region 4; the atmosphere is the
// standard one of ISO 2533 up to 11,000 m. A real barometer stands some 3 kPa above or below
// the standard atmosphere with the weather, which moves the boiling point by about 0.9 °C.
//
// # From question to function
//
//	boiling point at a pressure         SaturationTemperature
//	vapor pressure at a temperature     SaturationPressure
//	pressure at an altitude             Pressure, and its inverse Altitude
//	air temperature at an altitude      StandardKelvin
//	geopotential of a geometric altitude Geopotential
package steam
