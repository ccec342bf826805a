// Package quantity answers: what is a gram, a percent, a temperature, a temperature
// difference, and how is bad input reported?
//
// Every quantity is an opaque, immutable, comparable value over one exact integer. Values
// are compared with ==, used as map keys and copied freely. The private fields have
// different names, so no quantity converts into another by accident, and there are no
// operators: mass plus percent, or temperature plus temperature, does not compile.
//
// # Representation
//
//	type              one quantum                  exact to                        limit
//	Mass              1 µg                         1 µg                            ±1,000 t
//	Percent           0.000001 percentage points   six decimals of a percent       ±1,000,000,000 %
//	Temperature       1/9000 K                     three decimals of °C and of °F  0 K to 10,000 K
//	TemperatureDelta  1/9000 K                     three decimals of °C and of °F  ±10,000 K
//	Volume            1 pL                         1 pL                            ±1,000,000 L
//	Length            1 µm                         1 µm                            ±1,000 km
//
// One kelvin is 9000 quanta so that 0.001 °C is 9 quanta and 0.001 °F is 5: 77 °F equals
// 25 °C under ==.
//
// # Algebra
//
// Temperature − Temperature is a TemperatureDelta; Temperature + TemperatureDelta is a
// Temperature; two temperatures are never added. A friction factor is a difference:
// 24 °F of warming is 13.33 °C of warming, not −4.44 °C.
//
// Products and quotients use a 128-bit intermediate and round once, half to even. A mass
// is split by percentages with the largest-remainder rule ([Apportion]), so that the parts
// always add up to the whole. Rounding to what a scale can weigh is a separate last step
// ([Mass.RoundTo]) that returns the residue.
//
// # Values that are not there
//
// The zero Temperature is 0 K, which no dough has: it means "not given", and every range
// check catches it. Zero mass, percent and difference are ordinary zeros. A result that
// leaves its limits, or a constructor that is given NaN or infinity, yields an invalid value
// (for Temperature: the zero value). Invalid values stay invalid through arithmetic, print as
// such, and fail every range check. Nothing wraps around, is clamped or panics; only the
// Must functions, which are for literals, panic.
//
// # Text
//
// Text always carries a unit: "780 g", "1 lb 4 oz", "68 %", "24.5 °C", "24 Δ°F", "7 L", "24 cm". A bare number is
// refused with the accepted units named, and so is a text with more digits than the quantum
// can hold; temperatures are read with up to five decimals and rounded to the quantum. A decimal comma is accepted
// where it cannot be a thousands separator.
//
// MarshalText, and with it JSON, TOML, XML, map keys and a column of a database, has one canonical form, g, %, °C,
// Δ°C, L and m, whatever unit was read, with as many decimals as bring the exact value back. Durations are
// time.Duration in Go and [Elapsed] in data: "4h30m". Enumerations are words; [Values] lists them. In a database they,
// and every answer that has JSON, stand in a column as [Stored]. encoding/gob has a binary form.
//
// # Errors
//
// A check collects its [Problems] by Go path; [Problems.ErrFor] adds the path that the data form of the input has, so
// that a form can show each error at its field. [ReadJSON] reports everything that is wrong with a JSON text in the
// same way.
//
// # From question to function
//
//	parse what a person typed         ParseMass, ParsePercent, ParseTemperature, ParseDelta, …
//	write a literal in Go             Grams, NewPercent, Celsius, DeltaFahrenheit, MustMass, …
//	exact decimal in and out          MassOf, Mass.Decimal, PercentOfDecimal, …
//	exact integer in and out          Micrograms, Millionths, TemperatureQuanta, Mass.Micrograms, …
//	p percent of a mass               Percent.Of
//	the whole of which m is p         Mass.Over
//	m as a percentage of another      Mass.PercentOf
//	split a mass exactly              Apportion
//	round to a scale's step           Mass.RoundTo, Mass.RoundUp, Mass.RoundDown
//	report bad input, all at once     Problems, InputError, InputErrors
//	read an input from JSON           ReadJSON
//	read a form by the paths of the data  ReadForm
//	list the choices of a menu        Values
//	keep anything in a database       Stored
//	a prediction or a span            TimeRange, Range, Window
package quantity
