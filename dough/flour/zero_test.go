package flour_test

import (
	"fmt"
	"testing"

	"example.org/maslin/dough/flour"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/trial"
)

func TestZeroResultsPrint(t *testing.T) {
	for _, r := range []fmt.Stringer{flour.BlendedFlours{}, flour.GlutenDoses{}, flour.OnBasis{}, flour.StrengthAdvice{},
		flour.Stance(9)} {
		if r.String() == "" {
			t.Errorf("%T prints nothing", r)
		}
	}
	for _, w := range []interface{ Working() working.Working }{flour.BlendedFlours{}, flour.GlutenDoses{},
		flour.OnBasis{}, flour.StrengthAdvice{}} {
		if n := w.Working().Len(); n != 0 {
			t.Errorf("%T derives %d steps from nothing", w, n)
		}
	}
}

func TestNamesAreReadBack(t *testing.T) {
	for i := range 3 {
		text, err := flour.Stance(i).MarshalText()
		var back flour.Stance
		if err != nil || back.UnmarshalText(text) != nil || back != flour.Stance(i) {
			t.Errorf("%v", flour.Stance(i))
		}
	}
	for _, b := range quantity.Values[flour.ShareBound]() {
		trial.Travels(t, b)
	}
	if _, err := flour.Stance(-1).MarshalText(); err == nil {
		t.Error("a value without a name was written")
	}
}
