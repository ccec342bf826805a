package wallclock

import (
	"time"

	"example.org/maslin/dough/quantity"
)

func must[T any](v T, err error) T {
	if err != nil {
		panic("wallclock: literal refused: " + err.Error())
	}
	return v
}

// refuse is the error for a text that cannot be read.
func refuse(text string, want quantity.Phrase) error {
	if text == "" {
		return &quantity.InputError{Want: want, Err: quantity.ErrRequired}
	}
	return &quantity.InputError{Got: quantity.Excerpt(text), Want: want, Err: ErrSyntax}
}

// unmarshal reads a value whose empty text is the zero value, without copying a megabyte
// before the parser refuses it.
func unmarshal[T any](to *T, text []byte, parse func(string) (T, error)) error {
	if len(text) > maxHabitText {
		text = text[:maxHabitText+1]
	}
	var v T
	if len(text) > 0 {
		var err error
		if v, err = parse(string(text)); err != nil {
			return err
		}
	}
	*to = v
	return nil
}

// digits reads one to four ASCII digits.
func digits(s string) (int, bool) {
	if s == "" || len(s) > 4 {
		return 0, false
	}
	n := 0
	for i := 0; i < len(s); i++ {
		if s[i] < '0' || s[i] > '9' {
			return 0, false
		}
		n = n*10 + int(s[i]-'0')
	}
	return n, true
}

func in(t time.Time, zone *time.Location) time.Time {
	if zone == nil {
		zone = time.UTC
	}
	return t.In(zone)
}
