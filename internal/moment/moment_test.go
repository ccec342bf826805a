package moment

import (
	"errors"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
)

func TestYears(t *testing.T) {
	for year, ok := range map[int]bool{-3: false, 1899: false, 1900: true, 9998: true, 9999: false, 12000: false} {
		var p quantity.Problems
		if got := Check(&p, "At", time.Date(year, 5, 1, 0, 0, 0, 0, time.UTC)); got != ok || (p.Err() == nil) != ok {
			t.Errorf("%d: %v, %v", year, got, p.Err())
		}
		if !ok && !errors.Is(p.Err(), quantity.ErrOutOfRange) {
			t.Error(p.Err())
		}
	}
	var bad quantity.Problems
	Check(&bad, "At", time.Date(1899, 12, 31, 8, 30, 0, 0, time.UTC))
	if want := "At: out of range: got 1899-12-31T08:30:00Z, want a year from 1900 to 9998"; bad.Err().Error() != want {
		t.Errorf("%v, want %s", bad.Err(), want)
	}
	var p quantity.Problems
	if !Check(&p, "At", time.Time{}) || p.Err() != nil {
		t.Error("a moment that is not given")
	}
}
