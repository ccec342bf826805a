package handcheck

import (
	"regexp"
	"strings"
)

// FromGerman puts what is told in German at the width into the forms that this package reads: its numbers, its times
// and the words around them, each line as long as it is. Names and meanings stay German.
func FromGerman(text string, width int) string {
	lines := unwrap(strings.Split(text, "\n"), width)
	for i, l := range lines {
		lines[i] = fromGerman(l)
	}
	return strings.Join(lines, "\n")
}

var (
	decimalComma = regexp.MustCompile(`(\d),(\d)`)
	germanDay    = regexp.MustCompile(`\b(So|Mo|Di|Mi|Do|Fr|Sa) (\d\d?:\d\d)`)
	germanStep   = regexp.MustCompile(`, aus Schritt (\d+)$`)
	wholeDays    = regexp.MustCompile(`\b(\d+) d\b`)
	hoursMinutes = regexp.MustCompile(`(\d+) h (\d+) min\b`)
	days         = map[string]string{"So": "Sun", "Mo": "Mon", "Di": "Tue", "Mi": "Wed", "Do": "Thu", "Fr": "Fri",
		"Sa": "Sat"}
	// germanWords stand at the beginning of a line, or behind the symbol.
	germanWords = strings.NewReplacer("Anmerkung: ", "note: ", "Quelle: ", "source: ", ", gerundet: ", ", rounded: ",
		", verstanden als: ", ", taken as: ")
)

func fromGerman(line string) string {
	if strings.TrimSpace(line) == "wobei" {
		return strings.Replace(line, "wobei", "where", 1)
	}
	for decimalComma.MatchString(line) { // 0,5,7 overlaps
		line = decimalComma.ReplaceAllString(line, "$1.$2")
	}
	line = germanDay.ReplaceAllStringFunc(line, func(text string) string {
		day, clock, _ := strings.Cut(text, " ")
		return days[day] + " " + clock
	})
	line = wholeDays.ReplaceAllString(line, "$1 days")
	line = hoursMinutes.ReplaceAllString(line, "${1}h${2}m")
	line = germanStep.ReplaceAllString(line, ", from step $1")
	return strings.ReplaceAll(germanWords.Replace(line), "; ", ", ")
}
