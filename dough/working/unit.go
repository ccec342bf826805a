package working

// A Unit is what a number of a derivation is measured in. The units below are known: they can be converted, and
// those that a reader of US customary units does not use are shown in those that he does. Any other text is a
// unit of its own that is the same for every reader, such as "kJ/K"; the empty unit is a plain number.
type Unit string

// The known units. In a line of numbers Percent is the number of percentage points: 12 % is 12.
const (
	Celsius         Unit = "°C"
	Kelvin          Unit = "K"
	Fahrenheit      Unit = "°F"
	DeltaCelsius    Unit = "Δ°C"
	DeltaFahrenheit Unit = "Δ°F"
	Gram            Unit = "g"
	Kilogram        Unit = "kg"
	Ounce           Unit = "oz"
	Pound           Unit = "lb"
	Meter           Unit = "m"
	Centimeter      Unit = "cm"
	Foot            Unit = "ft"
	Inch            Unit = "in"
	Liter           Unit = "L"
	Milliliter      Unit = "mL"
	Quart           Unit = "qt"
	FluidOunce      Unit = "fl oz"
	Second          Unit = "s"
	Minute          Unit = "min"
	Hour            Unit = "h"
	Percent         Unit = "%"
	Number          Unit = ""
	// Clock is a moment, in minutes since the beginning of 1970 in UTC, shown as weekday and time of day.
	Clock Unit = "clock"
)

// A measure places a unit among those of its dimension: base = (number + zero) × factor. The factors are exact
// and are written into lines of conversion. Source: NIST SP 811 (2008), appendix B.
type measure struct {
	dimension string
	factor    string // the size in the base unit, as a line of conversion writes it
	zero      string // what is added before the factor
	size      float64
	offset    float64
	us        Unit // what a reader of US customary units is shown instead
	finer     int  // decimals more for the same fineness in that unit
	suffix    string
}

func (u Unit) measure() measure {
	switch u {
	case Celsius:
		return measure{
			dimension: "temperature",
			factor:    "1",
			size:      1,
			zero:      "273.15",
			offset:    273.15,
			us:        Fahrenheit,
			suffix:    "C",
		}
	case Kelvin:
		return measure{dimension: "temperature", factor: "1", size: 1, suffix: "K"}
	case Fahrenheit:
		return measure{
			dimension: "temperature",
			factor:    "1.8",
			size:      1 / 1.8,
			zero:      "459.67",
			offset:    459.67,
			suffix:    "F",
		}
	case DeltaCelsius:
		return measure{dimension: "difference", factor: "1", size: 1, us: DeltaFahrenheit, suffix: "C"}
	case DeltaFahrenheit:
		return measure{dimension: "difference", factor: "1.8", size: 1 / 1.8, suffix: "F"}
	case Gram:
		return measure{dimension: "mass", factor: "1", size: 1, us: Ounce, finer: 2, suffix: "g"}
	case Kilogram:
		return measure{dimension: "mass", factor: "1000", size: 1000, us: Pound, finer: 1, suffix: "kg"}
	case Ounce:
		return measure{dimension: "mass", factor: "28.349523125", size: 28.349523125, suffix: "oz"}
	case Pound:
		return measure{dimension: "mass", factor: "453.59237", size: 453.59237, suffix: "lb"}
	case Meter:
		return measure{dimension: "length", factor: "100", size: 100, us: Foot, suffix: "m"}
	case Centimeter:
		return measure{dimension: "length", factor: "1", size: 1, us: Inch, finer: 1, suffix: "cm"}
	case Foot:
		return measure{dimension: "length", factor: "30.48", size: 30.48, suffix: "ft"}
	case Inch:
		return measure{dimension: "length", factor: "2.54", size: 2.54, suffix: "in"}
	case Liter:
		return measure{dimension: "volume", factor: "1000", size: 1000, us: Quart, finer: 1, suffix: "L"}
	case Milliliter:
		return measure{dimension: "volume", factor: "1", size: 1, us: FluidOunce, finer: 2, suffix: "mL"}
	case Quart:
		return measure{dimension: "volume", factor: "946.352946", size: 946.352946, suffix: "qt"}
	case FluidOunce:
		return measure{dimension: "volume", factor: "29.5735295625", size: 29.5735295625, suffix: "floz"}
	case Second:
		return measure{dimension: "time", factor: "1", size: 1, suffix: "s"}
	case Minute:
		return measure{dimension: "time", factor: "60", size: 60, suffix: "min"}
	case Hour:
		return measure{dimension: "time", factor: "3600", size: 3600, suffix: "h"}
	case Percent:
		return measure{dimension: "share", factor: "1", size: 1, suffix: "percent"}
	case Number:
		return measure{dimension: "share", factor: "100", size: 100, suffix: "share"}
	}
	return measure{suffix: "u"}
}

// for_ is the unit that the reader is shown.
func (u Unit) for_(r Reader) Unit {
	if m := u.measure(); r.Units == USCustomary && m.us != "" {
		return m.us
	}
	return u
}

// convert turns a number of one unit into another of the same dimension.
func convert(x float64, from, to Unit) (float64, bool) {
	if from == to {
		return x, true
	}
	f, t := from.measure(), to.measure()
	if f.dimension == "" || f.dimension != t.dimension {
		return 0, false
	}
	switch {
	case from == Celsius && to == Fahrenheit:
		return x*1.8 + 32, true
	case from == Fahrenheit && to == Celsius:
		return (x - 32) / 1.8, true
	}
	return (x+f.offset)*(f.size/t.size) - t.offset, true
}

// conversion is the expression that turns a symbol of one unit into another of the same dimension.
func conversion(x Expr, from, to Unit) Expr {
	f, t := from.measure(), to.measure()
	switch {
	case from == Celsius && to == Fahrenheit:
		return x.Times(exact("1.8")).Plus(32)
	case from == Fahrenheit && to == Celsius:
		return x.Minus(32).Over(exact("1.8"))
	case from == Celsius && to == Kelvin:
		return x.Plus(exact("273.15"))
	case from == Kelvin && to == Celsius:
		return x.Minus(exact("273.15"))
	case f.dimension == "temperature" && to == Kelvin:
		return x.Plus(exact(f.zero)).Over(exact(f.factor))
	case f.dimension == "temperature" && from == Kelvin:
		return x.Times(exact(t.factor)).Minus(exact(t.zero))
	case from == DeltaFahrenheit:
		return x.Over(exact(f.factor))
	case to == DeltaFahrenheit:
		return x.Times(exact(t.factor))
	}
	if f.factor != "1" && f.size > t.size && t.factor != "1" && f.dimension == "time" {
		return x.Times(f.size / t.size)
	}
	if f.dimension == "time" && t.size > f.size && f.factor != "1" {
		return x.Over(t.size / f.size)
	}
	if f.factor != "1" {
		x = x.Times(exact(f.factor))
	}
	if t.factor != "1" {
		x = x.Over(exact(t.factor))
	}
	return x
}
