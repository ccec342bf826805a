package handcheck

import (
	"math"
	"regexp"
	"strconv"
	"strings"
)

var clockForm = regexp.MustCompile(`^(Sun|Mon|Tue|Wed|Thu|Fri|Sat) (\d{1,2}):(\d{2})( am| pm)?`)

// clock reads "Sat 14:05" or "Sat 2:05 pm" as minutes of the week.
func (p *parser) clock() (int64, bool) {
	m := clockForm.FindStringSubmatch(p.text[p.at:])
	if m == nil {
		return 0, false
	}
	p.at += len(m[0])
	return minutesOf(m), true
}

func minutesOf(m []string) int64 {
	day := strings.Index("SunMonTueWedThuFriSat", m[1]) / 3
	hour, _ := strconv.Atoi(m[2])
	minute, _ := strconv.Atoi(m[3])
	switch m[4] {
	case " am":
		hour %= 12
	case " pm":
		hour = hour%12 + 12
	}
	return int64(day*24*60 + hour*60 + minute)
}

const week = 7 * 24 * 60

var clocksForm = regexp.MustCompile(strings.TrimPrefix(clockForm.String(), "^"))

// acrossWeeks is how many weeks lie between the difference of two times of day as their names give it and the time
// that is printed: Sunday is after Saturday, and its minutes are fewer.
func acrossWeeks(numbers string, value Value, got float64) int64 {
	if value.clock || len(clocksForm.FindAllString(numbers, 2)) < 2 {
		return 0
	}
	return int64(math.Round((value.Float() - got) / week))
}
