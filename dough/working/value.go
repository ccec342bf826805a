package working

import (
	"math"
	"strconv"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
)

// A Value is a number of a derivation with its unit and the decimals that are shown.
type Value struct {
	Number   float64        `json:"number"`
	Unit     Unit           `json:"unit"`
	Decimals int            `json:"decimals"`
	exact    bool           // the number has no more decimals than that
	given    bool           // not reckoned: no digit of it says nothing
	zone     *time.Location // of a Clock
}

// Amount is a value in the unit, shown with that many decimals. Use it where no quantity of the library fits:
// Amount(11.344, "kJ/kg", 3).
func Amount(number float64, unit Unit, decimals int) Value {
	return Value{Number: number, Unit: unit, Decimals: min(max(decimals, 0), 12)}
}

// ValueOf makes a value of a quantity, a number or a moment, as [Given] does; one that is not valid of anything else.
func ValueOf(v any) Value { return valueOf(v) }

// In is the value in another unit of its dimension, as fine as it was; not valid for a unit of another dimension.
func (v Value) In(u Unit) Value { return v.in(u) }

// most is how many decimals are shown at most of what was given.
const most = 6

// valueOf makes a value of what Given takes. NaN stands for what is missing or not understood.
func valueOf(v any) Value {
	switch v := v.(type) {
	case Value:
		return v
	case quantity.Temperature:
		return given(v.Celsius(), Celsius)
	case quantity.TemperatureDelta:
		return given(v.Celsius(), DeltaCelsius)
	case quantity.Mass:
		return given(v.Grams(), Gram)
	case quantity.Percent:
		return given(v.Points(), Percent)
	case quantity.Volume:
		return given(v.In(quantity.Milliliter), Milliliter)
	case quantity.Length:
		if math.Abs(v.Meters()) >= 3 {
			return given(v.Meters(), Meter)
		}
		return given(v.Centimeters(), Centimeter)
	case quantity.Elapsed:
		return given(time.Duration(v).Minutes(), Minute)
	case time.Duration:
		return given(v.Minutes(), Minute)
	case time.Time:
		return Value{Number: float64(v.Unix()) / 60, Unit: Clock, exact: true, zone: v.Location()}
	case float64:
		return given(v, Number)
	case float32:
		return given(float64(v), Number)
	case int:
		return given(float64(v), Number)
	case int64:
		return given(float64(v), Number)
	}
	return Value{Number: math.NaN()}
}

// given shows every decimal the number has, at most six.
func given(x float64, unit Unit) Value {
	places, isExact := decimalsOf(x, most)
	switch {
	case isExact || unit == Number:
	case unit == Minute:
		places = 1
	default: // a friction of 8 Δ°F in Δ°C: more digits are put in where a line needs them
		places = min(places, significant(x))
	}
	return Value{Number: x, Unit: unit, Decimals: places, exact: isExact, given: true}
}

// decimalsOf is the number of decimals that a number needs, and whether so many are enough. The last three of
// the sixteen digits of a float64 do not count.
func decimalsOf(x float64, limit int) (int, bool) {
	for d := range limit + 1 {
		if r := round(x, d); math.Abs(r-x) <= 1e-13*math.Abs(x) {
			return d, true
		}
	}
	return limit, false
}

// round rounds to that many decimals.
func round(x float64, decimals int) float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return x
	}
	r, err := strconv.ParseFloat(strconv.FormatFloat(x, 'f', min(max(decimals, 0), 18), 64), 64)
	if err != nil {
		return x
	}
	return r
}

// significant is the number of decimals that show five significant digits.
func significant(x float64) int {
	if x == 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return 0
	}
	return min(max(4-int(math.Floor(math.Log10(math.Abs(x)))), 0), 12)
}

// in shows the value in another unit of its dimension, as fine as it was.
func (v Value) in(u Unit) Value {
	if u == v.Unit {
		return v
	}
	x, ok := convert(v.Number, v.Unit, u)
	if !ok {
		return Value{Number: math.NaN(), Unit: u}
	}
	out := Value{Number: x, Unit: u, Decimals: v.Decimals}
	switch m := v.Unit.measure(); {
	case m.us == u:
		out.Decimals += m.finer
	case u.measure().us == v.Unit:
		out.Decimals = max(0, out.Decimals-u.measure().finer)
	case u == Kelvin || v.Unit == Kelvin:
		out.Decimals = max(out.Decimals, 2)
	default:
		out.Decimals = significant(x)
	}
	if v.exact || v.given {
		if d, isExact := decimalsOf(x, most+2); isExact {
			out.Decimals, out.exact = d, true
		} else if v.given && v.Unit == Gram {
			out.asWeighed()
		}
	}
	return out
}

// asWeighed is a weight in ounces or pounds as somebody gave it: a mass is kept in whole micrograms, so that 169.5 oz
// would read 169.50000002.
func (v *Value) asWeighed() {
	half, ok := convert(massQuantum/2, Gram, v.Unit)
	for d := 0; ok && d <= weighedTo; d++ {
		if r := round(v.Number, d); math.Abs(r-v.Number) <= 1.001*half { // also at a tie
			v.Number, v.Decimals, v.exact = r, d, true
			return
		}
	}
}

// weighedTo is the number of decimals that somebody gives ounces or pounds with.
const weighedTo = 3

// massQuantum is the step of [quantity.Mass], in grams.
const massQuantum = 1e-6

// For converts the value into the unit that the reader is shown.
func (v Value) For(r Reader) Value { return v.in(v.Unit.for_(r)) }

// IsValid reports whether there is a number.
func (v Value) IsValid() bool { return !math.IsNaN(v.Number) && !math.IsInf(v.Number, 0) }

// Text shows the number at its decimals with its unit, for the reader: "22 °C", "5.043 × 10⁻⁷ m²/s", "312 min
// (5h12m)".
func (v Value) Text(r Reader) string { return v.For(r).text(r) }

// text shows the value in the unit that it is in.
func (v Value) text(r Reader) string {
	switch {
	case !v.IsValid():
		return r.word("no value")
	case v.Unit == Clock:
		return r.DayClock(v.moment())
	}
	lit := v.literal(v.Decimals)
	text := r.number(lit.mantissa)
	if lit.exponent != 0 {
		text += " × 10" + superscript(lit.exponent)
	}
	if v.Unit != Number {
		text += " " + string(v.Unit)
	}
	minutes, isTime := convert(v.Number, v.Unit, Minute)
	printed, _ := convert(lit.value, v.Unit, Minute)
	if size := math.Abs(printed); isTime && size >= 60 && size < 1e6 {
		d := time.Duration(minutes * float64(time.Minute)).Round(time.Minute)
		text += " (" + r.Elapsed(d) + ")"
	}
	return text
}

// String is Text for a reader of metric English.
func (v Value) String() string { return v.Text(Reader{}) }

// moment is the time that a Clock stands for.
func (v Value) moment() time.Time {
	t := time.Unix(int64(math.Round(v.Number*60)), 0).UTC()
	if v.zone != nil {
		t = t.In(v.zone)
	}
	return t
}

// finer shows that many decimals more of a value that has them.
func (v Value) finer(by int) Value {
	if !v.exact {
		v.Decimals = min(v.Decimals+by, 15)
	}
	return v
}

// half is half a unit of the last digit shown.
func (v Value) half() float64 {
	if v.Unit == Clock {
		return 0.5
	}
	l := v.literal(v.Decimals)
	_, fraction, _ := strings.Cut(l.mantissa, ".")
	return 0.5 * math.Pow10(l.exponent-len(fraction))
}

// literal is the number rounded to the decimals as a line of numbers writes it.
func (v Value) literal(decimals int) literalNumber {
	if v.exact && decimals > v.Decimals {
		decimals = v.Decimals
	}
	x := v.Number
	if v.Unit != Number { // a plain number is rounded as it stands, here and on the screen
		x = evenAtTie(x, decimals)
	}
	return literalOf(x, decimals)
}

// A literalNumber is a number as it is written, mantissa × 10^exponent.
type literalNumber struct {
	mantissa string // with a typographic minus
	exponent int
	value    float64 // what is written, not what was meant
}

// literalOf writes a number with that many decimals, one below a ten-thousandth as a power of ten.
func literalOf(x float64, decimals int) literalNumber {
	decimals = min(max(decimals, 0), 18)
	if size := math.Abs(x); size != 0 && size < 1e-4 && !math.IsNaN(x) {
		exponent := int(math.Floor(math.Log10(size)))
		text := strconv.FormatFloat(x, 'e', max(decimals+exponent, 1), 64)
		mantissa, power, _ := strings.Cut(text, "e")
		exponent, _ = strconv.Atoi(power)
		value, _ := strconv.ParseFloat(text, 64)
		return literalNumber{mantissa: minus(mantissa), exponent: exponent, value: value}
	}
	text := strconv.FormatFloat(x, 'f', decimals, 64)
	value, _ := strconv.ParseFloat(text, 64)
	if value == 0 {
		text, value = strings.TrimPrefix(text, "-"), 0
	}
	return literalNumber{mantissa: minus(text), value: value}
}

// evenAtTie moves a number that stands at a tie, but for the last bits of a float64, to the side of the even digit, as
// quantities are rounded where they are shown: 91.55 is 91.6 with one decimal and 28.45 is 28.4. A number of which nine
// digits or more are shown stays.
func evenAtTie(x float64, decimals int) float64 {
	steps := math.Abs(x) * math.Pow10(decimals)
	whole := math.Floor(steps)
	if !(steps < 1e9) || math.Abs(steps-whole-0.5) > 1e-9 {
		return x
	}
	if math.Mod(whole, 2) == 0 {
		return x * (1 - 1e-12)
	}
	return x * (1 + 1e-12)
}

func minus(text string) string { return strings.Replace(text, "-", "−", 1) }

var superscripts = strings.NewReplacer(
	"-", "⁻", "0", "⁰", "1", "¹", "2", "²", "3", "³", "4", "⁴", "5", "⁵", "6", "⁶", "7", "⁷", "8", "⁸", "9", "⁹",
)

func superscript(n int) string { return superscripts.Replace(strconv.Itoa(n)) }
