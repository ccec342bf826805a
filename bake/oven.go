package bake

import (
	"math"
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// GasMark is a setting of a gas oven, in quarters: mark ¼ is 1, mark ½ is 2, mark 4 is 16. The zero value
// is no mark.
type GasMark struct {
	quarters int
}

// The marks that gas ovens have.
const leastMark, mostMark = 1, 40 // ¼ to 10

// Mark returns a whole gas mark from 1 to 10; anything else is no mark.
func Mark(n int) GasMark {
	if n < 1 || n > 10 {
		return GasMark{}
	}
	return GasMark{4 * n}
}

// ParseGasMark reads "4", "gas 4", "1/2", "½", "0.25" or "gas mark 7". Whole marks from 1 to 10, ½ and ¼.
func ParseGasMark(text string) (GasMark, error) {
	want := quantity.Tell("bake.want_gas_mark_1_4_1", "gas mark 1/4, 1/2, or 1 to 10")
	t := strings.TrimSpace(strings.ToLower(text))
	if t == "" {
		return GasMark{}, &quantity.InputError{Want: want, Err: quantity.ErrRequired}
	}
	if len(t) <= 32 {
		t = strings.TrimSpace(strings.TrimPrefix(strings.TrimSpace(strings.TrimPrefix(t, "gas")), "mark"))
		switch t {
		case "¼", "1/4", "0.25":
			return GasMark{1}, nil
		case "½", "1/2", "0.5":
			return GasMark{2}, nil
		}
		if n, err := strconv.Atoi(t); err == nil && !Mark(n).IsZero() {
			return Mark(n), nil
		}
	}
	return GasMark{}, &quantity.InputError{Got: quantity.Excerpt(text), Want: want, Err: quantity.ErrOutOfRange}
}

// IsZero reports whether there is no mark.
func (g GasMark) IsZero() bool { return g.quarters == 0 }

// IsValid reports whether there is a mark.
func (g GasMark) IsValid() bool { return g.quarters >= leastMark && g.quarters <= mostMark }

// Number is the mark as it stands on a dial: "4", "1/2"; "" for no mark.
func (g GasMark) Number() string {
	switch {
	case !g.IsValid():
		return ""
	case g.quarters < 4:
		return "1/" + strconv.Itoa(4/g.quarters)
	}
	return strconv.Itoa(g.quarters / 4)
}

// String prints "gas mark 4", "gas mark 1/2".
func (g GasMark) String() string { return g.Message().String() }

// Message is the mark in the language of its reader.
func (g GasMark) Message() working.Message {
	switch {
	case !g.IsValid():
		return working.Tell("bake.gas_mark_none", "no gas mark")
	case g.quarters < 4:
		return working.Tell("bake.gas_mark_part", "gas mark 1/%d", 4/g.quarters)
	}
	return working.Tell("bake.gas_mark", "gas mark %d", g.quarters/4)
}

// MarshalText implements encoding.TextMarshaler; no mark is the empty text.
func (g GasMark) MarshalText() ([]byte, error) {
	if !g.IsValid() {
		return nil, nil
	}
	return []byte(g.String()), nil
}

// UnmarshalText implements encoding.TextUnmarshaler; the empty text is no mark, otherwise see [ParseGasMark].
func (g *GasMark) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*g = GasMark{}
		return nil
	}
	v, err := ParseGasMark(string(text))
	if err == nil {
		*g = v
	}
	return err
}

// Temperature answers: what oven temperature is this mark, exactly?
//
// Formula: °F = 275 + 25·(g − 1) for g ≥ 1; 275 + 25·log₂(g) below: mark ½ is 250 °F and mark ¼ is 225 °F. No mark
// gives no temperature. Source: GNU units 2.22, definitions file; the same as the common tables.
func (g GasMark) Temperature() quantity.Temperature {
	switch {
	case !g.IsValid():
		return quantity.Temperature{}
	case g.quarters == 1:
		return quantity.Fahrenheit(225)
	case g.quarters == 2:
		return quantity.Fahrenheit(250)
	}
	return quantity.Fahrenheit(250 + 25*float64(g.quarters)/4)
}

// Dial is the temperature as ovens print it on their dials: °C rounded to 5.
// Source: practice column of common conversion charts (mark 4 is 175 °C); some UK charts round to 10 (mark
// 4 is 180 °C).
func (g GasMark) Dial() quantity.Temperature { return dial(g.Temperature()) }

func dial(t quantity.Temperature) quantity.Temperature {
	if t.IsZero() {
		return t
	}
	return quantity.Celsius(5 * math.Round(t.Celsius()/5))
}

// NearestMark is the gas mark nearest to a temperature, and how far the mark is from it. Below mark ¼ less
// a half step or above mark 10 and a half step there is none.
func NearestMark(t quantity.Temperature) (GasMark, quantity.TemperatureDelta) {
	best, off := GasMark{}, math.Inf(1)
	for q := leastMark; q <= mostMark; q++ {
		if q > 2 && q%4 != 0 {
			continue
		}
		g := GasMark{q}
		if d := math.Abs(g.Temperature().Sub(t).Fahrenheit()); d < off {
			best, off = g, d
		}
	}
	if !(off <= 12.5001) {
		return GasMark{}, quantity.TemperatureDelta{}
	}
	return best, best.Temperature().Sub(t)
}

// OvenSetting asks what to set an oven to.
type OvenSetting struct {
	Wanted quantity.Temperature `json:"wanted"`       // what the bread should feel, as recipes give it for still heat
	Fan    bool                 `json:"fan,omitzero"` // the oven blows its air
	// this oven's own error: what a thermometer in it shows, less the dial
	Off quantity.TemperatureDelta `json:"off,omitzero"`
	// Notes say how the words of [ReadOvenSetting] were read; the answer tells them again.
	Notes []working.Message `json:"notes,omitempty"`
}

// OvenDial is what to set an oven to.
type OvenDial struct {
	answer

	Set quantity.Temperature `json:"set"`
	// the spread of advice on fan ovens; equal to Set without a fan
	Advice quantity.Range[quantity.Temperature] `json:"advice"`
	Dial   quantity.Temperature                 `json:"dial"`          // rounded to 5 °C, as on a dial
	Mark   GasMark                              `json:"mark,omitzero"` // nearest, if any
	in     OvenSetting
}

// Published spread for fan ovens, °C below still heat.
const fanLess, fanLeast, fanMost = 20.0, 15.0, 30.0

// Dial answers: what do I set my oven to?
//
// Formula: set = wanted − 20 °C with a fan (published 15 to 30) − own error. Valid range: 50 to 500 °C wanted; an own
// error within ±60 °C. Accuracy: thermostats are off by 10 to 30 °C: put a thermometer in. With a fan do not also cut
// the time, and expect a drier crust; for breads with a lid the fan makes no difference while the lid is on. Errors:
// [quantity.ErrRequired], [quantity.ErrOutOfRange]. Source: 25 to 50 °F lower, Gisslen; 25 °F lower or 25 % less
// time, Michigan State University Extension; 20 to 25 °C, UK charts.
func (in OvenSetting) Dial() (OvenDial, error) {
	var p quantity.Problems
	quantity.Check(&p, "Wanted", in.Wanted, quantity.Celsius(50), quantity.Celsius(500))
	quantity.Check(&p, "Off", in.Off, quantity.DeltaCelsius(-60), quantity.DeltaCelsius(60))
	if err := p.ErrFor(in); err != nil {
		return OvenDial{}, err
	}
	less := func(c float64) quantity.Temperature {
		if !in.Fan {
			c = 0
		}
		return in.Wanted.Add(quantity.DeltaCelsius(c).Neg()).Add(in.Off.Neg())
	}
	d := OvenDial{
		Set:    less(fanLess),
		Advice: quantity.Range[quantity.Temperature]{Low: less(fanMost), High: less(fanLeast)},
		in:     in,
	}
	d.Dial = dial(d.Set)
	d.Mark, _ = NearestMark(d.Set)
	return d, nil
}

// String prints "set 200 °C (dial 200 °C, gas mark 6)".
func (o OvenDial) String() string { return o.message().String() }

func (o OvenDial) message() working.Message {
	set := working.Tell("bake.dial_set", "set %.0f, dial %s", o.Set, o.Dial.Text(quantity.CelsiusScale, 0))
	if o.in.Fan {
		set = working.Tell("bake.dial_set_fan", "set %.0f (advice %.0f to %.0f), dial %s", o.Set, o.Advice.Low,
			o.Advice.High, o.Dial.Text(quantity.CelsiusScale, 0))
	}
	if o.Mark.IsValid() {
		return working.Tell("bake.dial_mark", "%v, %v", set, o.Mark)
	}
	return set
}
