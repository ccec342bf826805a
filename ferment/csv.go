package ferment

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"example.org/maslin/dough/quantity"
)

// ParseReadings reads a probe's log or jotted values: one reading a line, time and temperature, separated by comma,
// semicolon or tab. Blank lines and lines beginning with # are skipped.
//
// Times are numbers under a heading that names their unit (h, hours, min, minutes, s, seconds), or carry it ("1h30m",
// "45 min"), or are times of day ("08:30", "08:30:15", going on after midnight), or dates with times ("2025-11-25
// 08:30", "2025-11-25T08:30:00Z"); days and dates count from the first reading. Temperatures are numbers under a
// heading that names their scale (°C, C, celsius, °F, F, fahrenheit, K), or carry it ("24.5 °C"). Without a heading
// every value carries its own unit. Columns beyond the second are ignored.
//
// Errors: ErrUnit, ErrRequired, ErrOutOfRange and ErrTooPrecise with the line in the path; at most twenty are listed.
// Texts over 64 MB are refused. Order, gaps and plausibility are for [Readings.History] to check.
func ParseReadings(text string) (Readings, error) {
	var p problems
	if len(text) > 64<<20 {
		p.Add("Text", quantity.Tell("ferment.got_bytes", "%s bytes", fmt.Sprint(len(text))),
			quantity.Tell("ferment.want_at_most_64_mb", "at most 64 MB"), errOutOfRange)
		return Readings{}, p.ErrFor(nil)
	}
	text = strings.TrimPrefix(text, "\ufeff")
	var out Readings
	var u units
	var c clock
	faults, line, seen := 0, 0, false
	for rest := text; rest != "" && faults < mostFaults; {
		var row string
		row, rest, _ = strings.Cut(rest, "\n")
		line++
		row = strings.TrimSpace(row)
		if row == "" || row[0] == '#' {
			continue
		}
		first, second, ok := split(row)
		where := func(column string) string { return "line " + strconv.Itoa(line) + " " + column }
		if !ok {
			p.Add(
				where("row"),
				quantity.Excerpt(row),
				quantity.Tell("ferment.want_time_and_temperature_separated_by",
					"a time and a temperature, separated by a comma, semicolon or tab"),
				quantity.ErrRequired,
			)
			faults++
			continue
		}
		if !seen {
			seen = true
			if u.heading(first, second) {
				continue
			}
		}
		at, err := c.read(first, u.time)
		if err != nil {
			p.Join(where("time"), err)
			faults++
		}
		t, err := readTemperature(second, u.scale, u.named)
		if err != nil && faults < mostFaults {
			p.Join(where("temperature"), err)
			faults++
		}
		out.Points = append(out.Points, Knot{quantity.Elapsed(at), t})
	}
	if len(out.Points) == 0 && faults == 0 {
		p.Required("Text", quantity.Tell("ferment.want_at_least_one_reading_0h", "at least one reading, such as 0h, 24.5 °C"))
	}
	if err := p.ErrFor(nil); err != nil {
		return Readings{}, err
	}
	return out, nil
}

// split cuts a row at the first separator: a tab or semicolon if there is one, so that a decimal comma may stand
// before it, otherwise a comma.
func split(row string) (first, second string, ok bool) {
	sep := ","
	switch {
	case strings.Contains(row, "\t"):
		sep = "\t"
	case strings.Contains(row, ";"):
		sep = ";"
	}
	first, second, ok = strings.Cut(row, sep)
	second, _, _ = strings.Cut(second, sep)
	clean := func(s string) string { return strings.Trim(strings.TrimSpace(s), `"`) }
	return clean(first), clean(second), ok
}

// units are what a heading says the columns are in.
type units struct {
	time  time.Duration // 0: every value carries its own
	scale quantity.TemperatureUnit
	named bool
}

// heading reports whether the row is a heading, and takes its units.
func (u *units) heading(first, second string) bool {
	if first == "" || second == "" || strings.ContainsAny(first[:1], "0123456789+-−") ||
		strings.ContainsAny(second[:1], "0123456789+-−") {
		return false
	}
	for _, word := range words(first) {
		switch word {
		case "h", "hr", "hour", "hours":
			u.time = time.Hour
		case "min", "minute", "minutes":
			u.time = time.Minute
		case "s", "sec", "second", "seconds":
			u.time = time.Second
		}
	}
	for _, word := range words(second) {
		switch word {
		case "°c", "c", "celsius", "degc":
			u.scale, u.named = quantity.CelsiusScale, true
		case "°f", "f", "fahrenheit", "degf":
			u.scale, u.named = quantity.FahrenheitScale, true
		case "k", "kelvin":
			u.scale, u.named = quantity.KelvinScale, true
		}
	}
	return true
}

// words are those of a heading. What is no text separates them too, such as the sign of a degree in an older encoding.
func words(s string) []string {
	return strings.FieldsFunc(strings.ToLower(s), func(r rune) bool {
		return strings.ContainsRune(" ()[]_/.", r) || r == utf8.RuneError
	})
}

// clock turns times of day and dates into time since the first reading.
type clock struct {
	started bool
	first   time.Duration
	last    time.Duration // of day, days added
	zero    time.Time
}

var timeWant = quantity.Tell("ferment.want_time_unit_1h30m_08_30",
	`a time with its unit, such as "1h30m", "08:30" or "2025-11-25 08:30", or a heading that names the unit`)

func (c *clock) read(s string, unit time.Duration) (time.Duration, error) {
	refuse := func(reason error) (time.Duration, error) {
		return 0, &quantity.InputError{Got: quantity.Excerpt(s), Want: timeWant, Err: reason}
	}
	switch {
	case s == "":
		return refuse(quantity.ErrRequired)
	case len(s) > 64:
		return refuse(quantity.ErrUnit)
	case unit > 0 && !strings.Contains(s, ":"):
		if x, err := parseFloat(s); err == nil {
			if !(x >= 0 && x*float64(unit) <= float64(longest)) {
				return refuse(quantity.ErrOutOfRange)
			}
			return time.Duration(math.Round(x*unit.Seconds()*1e3)) * time.Millisecond, nil
		}
	}
	if d, ok := timeOfDay(s); ok {
		if !c.started {
			c.started, c.first, c.last = true, d, d
		}
		d += c.last / (24 * time.Hour) * (24 * time.Hour)
		if d < c.last {
			d += 24 * time.Hour
		}
		if d-c.first > longest {
			return refuse(quantity.ErrOutOfRange)
		}
		c.last = d
		return d - c.first, nil
	}
	for _, layout := range [...]string{time.RFC3339, "2006-01-02T15:04:05", "2006-01-02T15:04", "2006-01-02 15:04:05",
		"2006-01-02 15:04"} {
		if t, err := time.Parse(layout, s); err == nil {
			if c.zero.IsZero() {
				c.zero = t
			}
			d := t.Sub(c.zero)
			if d < 0 || d > longest {
				return refuse(quantity.ErrOutOfRange)
			}
			return d, nil
		}
	}
	d, err := quantity.ParseDuration(s)
	if err != nil || d < 0 {
		return refuse(quantity.ErrUnit)
	}
	return d, nil
}

// timeOfDay reads 8:30, 08:30 and 08:30:15.
func timeOfDay(s string) (time.Duration, bool) {
	parts := strings.Split(s, ":")
	if len(parts) < 2 || len(parts) > 3 {
		return 0, false
	}
	var d time.Duration
	limits := [3]int{24, 60, 60}
	unit := [3]time.Duration{time.Hour, time.Minute, time.Second}
	for i, part := range parts {
		n, err := strconv.Atoi(part)
		if err != nil || len(part) > 2 || n >= limits[i] || part[0] < '0' { // no sign
			return 0, false
		}
		d += time.Duration(n) * unit[i]
	}
	return d, true
}

// parseFloat reads a plain number with a point or a comma, and nothing else that strconv would take.
func parseFloat(s string) (float64, error) {
	for i := range len(s) {
		switch c := s[i]; {
		case c >= '0' && c <= '9', c == '.', c == '-', c == '+', c == 'e', c == 'E':
		case c == ',':
			s = strings.Replace(s, ",", ".", 1)
		default:
			return 0, strconv.ErrSyntax
		}
	}
	return strconv.ParseFloat(s, 64)
}

func readTemperature(s string, scale quantity.TemperatureUnit, named bool) (quantity.Temperature, error) {
	if named && len(s) <= 32 {
		if x, err := parseFloat(s); err == nil {
			var t quantity.Temperature
			switch scale {
			case quantity.CelsiusScale:
				t = quantity.Celsius(x)
			case quantity.FahrenheitScale:
				t = quantity.Fahrenheit(x)
			default:
				t = quantity.Kelvin(x)
			}
			if t.IsZero() {
				return t, &quantity.InputError{Got: quantity.Excerpt(s),
					Want: quantity.Tell("ferment.want_temperature", "a temperature"), Err: errOutOfRange}
			}
			return t, nil
		}
	}
	return quantity.ParseTemperature(s)
}
