package main

import (
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

var fed = time.Date(2026, 11, 27, 8, 0, 0, 0, time.UTC)

func TestItSaysWhenAndRingsThen(t *testing.T) {
	var out strings.Builder
	var slept time.Duration
	if err := run([]string{"-seed", "1:2:2", "-room", "23 °C", "-ring"}, &out, fed, func(d time.Duration) { slept += d }); err != nil {
		t.Fatal(err)
	}
	want, err := ferment.Ripening{Seed: quantity.MustPercent("20 %"), Hydration: quantity.MustPercent("100 %"), History: ferment.Constant(quantity.Celsius(23)), Law: ferment.GasBalance()}.Ripe()
	if err != nil {
		t.Fatal(err)
	}
	for _, text := range []string{
		"look at it from " + fed.Add(want.From.Early).Format("Mon 15:04"), "likely ripe " + fed.Add(want.From.Likely).Format("Mon 15:04"),
		"use it before " + fed.Add(want.Until.Likely).Format("Mon 15:04"), "mold", "\aLook at the levain.",
	} {
		if !strings.Contains(out.String(), text) {
			t.Errorf("it does not say %q:\n%s", text, out.String())
		}
	}
	if slept != want.From.Early {
		t.Errorf("rang after %v, want %v", slept, want.From.Early)
	}
}

func TestWarmthAndSeedHurry(t *testing.T) {
	say := func(args ...string) string {
		var out strings.Builder
		if err := run(args, &out, fed, nil); err != nil {
			t.Fatal(err)
		}
		return out.String()
	}
	if say("-room", "19 °C") == say("-room", "25 °C") || say("-seed", "1:2:2") == say("-seed", "1:5:5") || say("-cold") == say() {
		t.Error("it makes no difference")
	}
}

func TestBadInputIsRefused(t *testing.T) {
	for _, args := range [][]string{
		{"-seed", "1:2"}, {"-seed", "a:b:c"}, {"-seed", "1:0:1"}, {"-seed", "NaN:1:1"}, {"-seed", "1:1:Inf"}, {"-seed", "-1:2:2"},
		{"-seed", strings.Repeat("1:", 1<<20)}, {"-room", "23"}, {"-room", "90 °C"}, {"-rooom", "1"},
	} {
		var out strings.Builder
		if err := run(args, &out, fed, nil); err == nil {
			t.Errorf("%.60v is taken: %s", args, out.String())
		}
	}
}
