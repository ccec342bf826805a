package bakeday

import (
	"context"
	"errors"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
)

// A bake is planned up to twelve weeks ahead, and what is wanted later is refused by its own name.
func TestWishesFarAhead(t *testing.T) {
	clock := KitchenClock{Now: time.Date(2026, 11, 25, 19, 0, 0, 0, time.UTC), Zone: zurich(t)}
	for text, far := range map[string]bool{"2027-02-17 20:00": false, "2027-02-17 20:01": true, "2028-01-02 12:30": true,
		"2400-01-01 12:30": true, "9998-12-31 12:30": true} {
		b := hall()
		var err error
		if b.Wanted, err = ParseWish(text); err != nil {
			t.Fatal(err)
		}
		day, err := b.Plan(context.Background(), clock)
		switch {
		case !far && (err != nil || !day.Possible()):
			t.Errorf("%s: %v", text, err)
		case far && (!errors.Is(err, quantity.ErrOutOfRange) || strings.Count(err.Error(), "\n") != 0 ||
			!strings.HasPrefix(err.Error(), "wanted: ")):
			t.Errorf("%s: %v", text, err)
		}
	}
}
