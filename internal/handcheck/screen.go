package handcheck

import (
	"math"
	"math/big"
	"regexp"
	"strconv"
	"strings"
)

var (
	durationForm = regexp.MustCompile(`(−?)(?:(\d+)h(\d\d)m(?:(\d\d)s)?|(\d+)h\b|(\d+)m(\d\d)s|(\d+)m\b|(\d+)s\b)`)
	daysForm     = regexp.MustCompile(`(\d+) days(?: (\d+)h)?(?: ?(\d+)m\b)?`)
	amountForm   = regexp.MustCompile(`[−-]?\d+(?:\.\d+)?(?: × 10[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+)?` +
		`(?: ?(?:%|(?:Δ°C|Δ°F|°C|°F|kg|g|fl oz|oz|lb|qt|mL|L|cm|in|m|ft|min|hPa|inHg|kJ)\b)| h\b)?`)
	poundForm = regexp.MustCompile(`(\d+) lb (\d+(?:\.(\d+))?) oz`)
	timeForm  = regexp.MustCompile(`(?:(?:Sun|Mon|Tue|Wed|Thu|Fri|Sat) )?(\d{1,2}):(\d{2})( am| pm)?`)
)

// OnScreen reports whether a text for people shows the value, rounded as it likes and in a unit of the same kind.
func OnScreen(text string, v Value) bool {
	text = strings.Join(strings.Fields(text), " ") // a value may be broken at the end of a line
	if v.clock {
		return clockShown(text, v)
	}
	if unit, ok := units[v.Unit]; ok && unit.base == "min" {
		for _, m := range durationForm.FindAllStringSubmatch(text, -1) {
			if inBase(durationOf(m)).agrees(inBase(v)) {
				return true
			}
		}
	}
	if unit, ok := units[v.Unit]; ok && unit.base == "min" {
		for _, m := range daysForm.FindAllStringSubmatch(text, -1) {
			if daysOf(m).agrees(inBase(v)) {
				return true
			}
		}
	}
	for _, m := range poundForm.FindAllStringSubmatch(text, -1) {
		pounds, ounces := rat(m[1]), rat(m[2])
		shown := Value{Text: m[0], Unit: "oz", Half: 0.5 * math.Pow10(-len(m[3])),
			Number: pounds.Add(pounds.Mul(pounds, rat("16")), ounces)}
		if inBase(shown).agrees(inBase(v)) {
			return true
		}
	}
	for _, part := range amountForm.FindAllString(text, -1) {
		shown, ok := ReadValue(part)
		if ok && inBase(shown).agrees(inBase(v)) {
			return true
		}
	}
	return false
}

type unit struct {
	base string
	size *big.Rat
}

func rat(text string) *big.Rat {
	r, _ := new(big.Rat).SetString(text)
	return r
}

// units that are told in one another.
var units = map[string]unit{
	"kg": {"g", rat("1000")}, "g": {"g", rat("1")}, "oz": {"g", rat("28.349523125")}, "lb": {"g", rat("453.59237")},
	"L": {"mL", rat("1000")}, "mL": {"mL", rat("1")}, "m": {"cm", rat("100")}, "cm": {"cm", rat("1")},
	"in": {"cm", rat("2.54")}, "ft": {"cm", rat("30.48")}, "h": {"min", rat("60")}, "min": {"min", rat("1")},
	"s": {"min", rat("1/60")}, "fl oz": {"mL", rat("29.5735295625")}, "qt": {"mL", rat("946.352946")},
}

func inBase(v Value) Value {
	u, ok := units[v.Unit]
	if !ok {
		return v
	}
	size, _ := u.size.Float64()
	return Value{Text: v.Text, Number: new(big.Rat).Mul(v.Number, u.size), Half: v.Half * size, Unit: u.base}
}

func durationOf(m []string) Value {
	n := func(i int) int64 { x, _ := strconv.ParseInt(m[i], 10, 64); return x }
	seconds := n(2)*3600 + n(3)*60 + n(4) + n(5)*3600 + n(6)*60 + n(7) + n(8)*60 + n(9)
	half := 0.5
	if m[4]+m[7]+m[9] != "" {
		half = 0.5 / 60
	}
	if m[1] != "" {
		seconds = -seconds
	}
	return Value{Text: m[0], Number: big.NewRat(seconds, 60), Half: half, Unit: "min"}
}

// daysOf is "4 days" or "2 days 6h05m".
func daysOf(m []string) Value {
	n := func(i int) int64 { x, _ := strconv.ParseInt(m[i], 10, 64); return x }
	return Value{Text: m[0], Number: big.NewRat(n(1)*1440+n(2)*60+n(3), 1), Half: 0.5, Unit: "min"}
}

// clockShown looks for a time of day, with or without the day of the week.
func clockShown(text string, v Value) bool {
	minutes := v.Number.Num().Int64()
	for _, m := range timeForm.FindAllStringSubmatch(text, -1) {
		full := "Sun " + m[0]
		if strings.Contains(m[0], " ") && clockForm.MatchString(m[0]) {
			full = m[0]
		}
		got := clockForm.FindStringSubmatch(full)
		if got == nil {
			continue
		}
		at := minutesOf(got)
		if at == minutes || full != m[0] && at == minutes%(24*60) {
			return true
		}
	}
	return false
}
