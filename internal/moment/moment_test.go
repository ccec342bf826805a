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
	var p quantity.Problems
	if !Check(&p, "At", time.Time{}) || p.Err() != nil {
		t.Error("a moment that is not given")
	}
}
