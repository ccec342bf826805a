package cost_test

import (
	"fmt"
	"testing"

	"example.org/maslin/dough/cost"
	"example.org/maslin/dough/working"
)

func TestZeroResultsPrint(t *testing.T) {
	for _, r := range []fmt.Stringer{cost.Costing{}, cost.MoneyRounding(9)} {
		if r.String() == "" {
			t.Errorf("%T prints nothing", r)
		}
	}
	for _, w := range []interface{ Working() working.Working }{cost.Costing{}} {
		if n := w.Working().Len(); n != 0 {
			t.Errorf("%T derives %d steps from nothing", w, n)
		}
	}
}

func TestNamesAreReadBack(t *testing.T) {
	for i := range 4 {
		text, err := cost.MoneyRounding(i).MarshalText()
		var back cost.MoneyRounding
		if err != nil || back.UnmarshalText(text) != nil || back != cost.MoneyRounding(i) {
			t.Errorf("%v", cost.MoneyRounding(i))
		}
	}
	if _, err := cost.MoneyRounding(-1).MarshalText(); err == nil {
		t.Error("a value without a name was written")
	}
}
