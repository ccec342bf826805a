package report

import (
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// A Cell is what stands in a row or a table: a quantity, a number, a word, a name, a moment or a sentence, with
// how it is rounded when it is shown. The zero value shows as nothing.
type Cell struct {
	answer

	shown working.Message
	raw   any
}

// Of is a value with every digit it has; a moment is shown with weekday and time, a name as it is.
func Of(v any) Cell {
	if m, ok := v.(working.Message); ok {
		return Cell{shown: m, raw: v}
	}
	return Cell{shown: working.Say("%v", v), raw: v}
}

// Rounded is a quantity or a number that is shown with that many decimals (of a gram, a percentage point, a degree
// Celsius). In other units it is shown about as finely.
func Rounded(v any, decimals int) Cell {
	return Cell{shown: working.Say("%."+strconv.Itoa(min(max(decimals, 0), 12))+"f", v), raw: v}
}

// Weighed is a mass shown as finely as the scale that it is weighed on: its step.
func Weighed(m, step quantity.Mass) Cell {
	decimals := 0
	for g := step.Grams(); decimals < 3 && g > 0 && math.Abs(g-math.Round(g)) > 1e-9; g *= 10 {
		decimals++
	}
	return Rounded(m, decimals)
}

// IsZero reports whether there is nothing to show.
func (v Cell) IsZero() bool { return v.raw == nil }

// Text is the value for the reader.
func (v Cell) Text(r working.Reader) string {
	if v.raw == nil {
		return ""
	}
	return v.shown.Text(r)
}

// Equal reports whether both values show the same.
func (v Cell) Equal(u Cell) bool { return v.shown == u.shown }

// MarshalJSON writes what is shown, with its typed quantity; see [working.Message].
func (v Cell) MarshalJSON() ([]byte, error) {
	if v.raw == nil {
		return []byte("null"), nil
	}
	return json.Marshal(v.shown)
}

// plain is the value for a spreadsheet, with a decimal point and without a unit, and the unit.
func (v Cell) plain() (text, unit string) {
	number := func(s, unit string) (string, string) {
		return strings.ReplaceAll(strings.TrimSuffix(s, " "+unit), "−", "-"), unit
	}
	switch x := v.raw.(type) {
	case nil:
		return "", ""
	case quantity.Mass:
		return number(x.String(), "g")
	case quantity.Percent:
		text, _ := number(x.String(), "%")
		return text, "percent"
	case quantity.Temperature:
		if !x.IsValid() {
			return "", "C"
		}
		text, _ := number(x.String(), "°C")
		return text, "C"
	case quantity.TemperatureDelta:
		text, _ := number(x.String(), "Δ°C")
		return text, "K"
	case quantity.Elapsed:
		return strconv.FormatInt(int64(x.Duration().Round(time.Minute)/time.Minute), 10), "min"
	case time.Duration:
		return strconv.FormatInt(int64(x.Round(time.Minute)/time.Minute), 10), "min"
	case time.Time:
		return x.Round(time.Minute).Format("2006-01-02 15:04"), ""
	case int:
		return strconv.Itoa(x), ""
	case float64:
		return strconv.FormatFloat(x, 'g', -1, 64), ""
	case bool:
		return strconv.FormatBool(x), ""
	}
	return v.shown.String(), ""
}
