package dough_test

import (
	"errors"
	"fmt"
	"testing"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
)

func ExampleParseFeeding() {
	f, err := dough.ParseFeeding("1:5:4")
	fmt.Println(f.Starter.Mass, f.Flour, f.Water, err)
	// Output: 1 g 5 g 4 g <nil>
}

func TestParseFeeding(t *testing.T) {
	if f, err := dough.ParseFeeding(" 1 : 2.5:2,5"); err != nil || f.Flour != quantity.Grams(2.5) || f.Water != f.Flour {
		t.Errorf("%+v, %v", f, err)
	}
	for _, text := range []string{"", "1:2", "1:2:3:4", "1:0:1", "1:-1:1", "a:b:c", "1:5 g:5", "1:10001:1"} {
		if f, err := dough.ParseFeeding(text); !errors.Is(err, quantity.ErrUnit) || f != (dough.Feeding{}) {
			t.Errorf("%q: %+v, %v", text, f, err)
		}
	}
	if _, err := dough.ParseFeeding("1:10000:1"); err != nil {
		t.Error(err)
	}
}
