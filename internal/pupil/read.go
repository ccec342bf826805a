package pupil

import (
	"math"
	"regexp"
	"strconv"
	"strings"
)

// A tongue is how numbers, times and weekdays are written in a language.
type tongue struct {
	decimal  string
	days     string // three or two letters each
	duration string // of hours, of minutes, or of both
}

var (
	english = tongue{decimal: ".", days: "Sun Mon Tue Wed Thu Fri Sat", duration: `\d+h\d+m|\d+h|\d+m`}
	german  = tongue{decimal: ",", days: "So Mo Di Mi Do Fr Sa", duration: `\d+ h \d+ min|\d+ h|\d+ min`}
)

// form is how a thing of that kind is written.
func (t tongue) form(kind string) string {
	number := `\d+(?:` + regexp.QuoteMeta(t.decimal) + `\d+)?`
	switch kind {
	case "mass":
		return number + ` lb(?: ` + number + ` oz)?|` + number + ` (?:kg|g|oz)`
	case "degrees":
		return `−?` + number + ` °[CF]`
	case "difference":
		return number + ` Δ°[CF]`
	case "percent":
		return number + ` %`
	case "hours":
		return number + ` h`
	case "length":
		return number + ` (?:m|ft)`
	case "duration":
		return t.duration
	case "clock":
		return `(?:` + strings.ReplaceAll(t.days, " ", "|") + `) \d+:\d\d(?: [ap]m)?`
	}
	return number
}

// An amount is a number with its unit: weights in g or oz, times in min, a time of day in minutes of the week.
type amount struct {
	number float64
	unit   string
}

const (
	clockUnit = "time of day"
	minute    = "min"
	hour      = "h"
	gram      = "g"
	ounce     = "oz"
	celsius   = "°C"
	degreeF   = "°F"
	week      = 7 * 24 * 60
)

var (
	clockForm    = regexp.MustCompile(`^(\pL+) (\d+):(\d\d)( [ap]m)?$`)
	poundsForm   = regexp.MustCompile(`^(\S+) lb(?: (\S+) oz)?$`)
	hoursForm    = regexp.MustCompile(`^(\d+) ?h(?: ?(\d+) ?m(?:in)?)?$`)
	minutesForm  = regexp.MustCompile(`^(\d+)m$`)
	ordinaryForm = regexp.MustCompile(`^([−\d.,]+)(?: (\S+))?(?: \(.*\))?$`)
)

// number reads digits.
func (t tongue) number(text string) float64 {
	text = strings.Replace(strings.Replace(text, "−", "-", 1), t.decimal, ".", 1)
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return math.NaN()
	}
	return x
}

// read reads an amount as it is printed; NaN if it is none.
func (t tongue) read(kind, text string) amount {
	if m := clockForm.FindStringSubmatch(text); m != nil {
		return t.clock(m)
	}
	if m := poundsForm.FindStringSubmatch(text); m != nil {
		oz := 0.0
		if m[2] != "" {
			oz = t.number(m[2])
		}
		return amount{16*t.number(m[1]) + oz, ounce}
	}
	if m := hoursForm.FindStringSubmatch(text); m != nil && kind == "duration" {
		more := 0.0
		if m[2] != "" {
			more = t.number(m[2])
		}
		return amount{60*t.number(m[1]) + more, minute}
	}
	if m := minutesForm.FindStringSubmatch(text); m != nil {
		return amount{t.number(m[1]), minute}
	}
	m := ordinaryForm.FindStringSubmatch(text)
	if m == nil {
		return amount{math.NaN(), ""}
	}
	a := amount{t.number(m[1]), m[2]}
	if a.unit == "kg" {
		a = amount{1000 * a.number, gram}
	}
	return a
}

func (t tongue) clock(m []string) amount {
	hours := int(t.number(m[2]))
	switch m[4] {
	case " am":
		hours %= 12
	case " pm":
		hours = hours%12 + 12
	}
	for day, name := range strings.Fields(t.days) {
		if name == m[1] {
			return amount{float64(day*24*60+hours*60) + t.number(m[3]), clockUnit}
		}
	}
	return amount{math.NaN(), clockUnit}
}

// places are the decimals that a number is printed with.
func (t tongue) places(text string) int {
	digits, _, _ := strings.Cut(text, " ")
	_, fraction, _ := strings.Cut(digits, t.decimal)
	return len(fraction)
}
