package quantity

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"
)

// A Phrase is what an error says is accepted, and sometimes what was given: a stable identifier, the English template
// and typed arguments, so that package working tells it in the language and the units of its reader. The zero value
// says nothing.
type Phrase struct {
	ID      string
	English string
	Args    []any
}

// Tell makes a phrase, by the rules of working.Tell: the identifier begins with the package and has one English
// template in the whole library. Of the placeholders it knows %v, %s, %d, %q and %.1f, by order or by number; a
// percent sign is %%. A duration is told as an [Elapsed]; a number with more than twelve characters has six digits.
func Tell(id, english string, args ...any) Phrase {
	for i, a := range args {
		switch a := a.(type) {
		case time.Duration:
			args[i] = Elapsed(a)
		case float64:
			args[i] = shortNumber(a)
		}
	}
	return Phrase{ID: id, English: english, Args: args}
}

// IsZero reports whether there is no phrase.
func (p Phrase) IsZero() bool { return p.ID == "" && p.English == "" }

// String tells the phrase in English and metric units.
func (p Phrase) String() string {
	args := make([]any, len(p.Args))
	for i, a := range p.Args {
		args[i] = a
		switch x := a.(type) {
		case float64:
			args[i] = shownNumber(x)
		case int:
			if x < 0 {
				args[i] = shownNumber(x)
			}
		}
	}
	return fmt.Sprintf(p.English, args...)
}

// MarshalText implements encoding.TextMarshaler: the English phrase.
func (p Phrase) MarshalText() ([]byte, error) { return []byte(p.String()), nil }

// shortNumber rounds a number whose text is long to six digits.
func shortNumber(x float64) float64 {
	if s := strconv.FormatFloat(x, 'f', -1, 64); len(s) > 12 && !math.IsInf(x, 0) && !math.IsNaN(x) {
		x, _ = strconv.ParseFloat(strconv.FormatFloat(x, 'g', 6, 64), 64)
	}
	return x
}

// A shownNumber prints as a reader expects: with a minus sign, and without an exponent where it is not needed.
type shownNumber float64

// Format implements fmt.Formatter.
func (n shownNumber) Format(f fmt.State, _ rune) {
	x, precision, form := float64(n), -1, byte('f')
	if places, ok := f.Precision(); ok {
		precision = places
	} else if size := math.Abs(x); size != 0 && (size < 1e-6 || size >= 1e21) {
		form = 'g'
	}
	_, _ = f.Write([]byte(strings.Replace(strconv.FormatFloat(x, form, precision, 64), "-", "−", 1)))
}

// given is the text of what an error was given: a text, a quantity, a number or a [Phrase]. Nothing is "".
func given(got any) string {
	switch got := got.(type) {
	case nil:
		return ""
	case string:
		return got
	case time.Duration:
		return FormatDuration(got)
	case float64:
		return fmt.Sprint(shownNumber(shortNumber(got)))
	case int:
		return fmt.Sprint(shownNumber(got))
	}
	return fmt.Sprint(got)
}
