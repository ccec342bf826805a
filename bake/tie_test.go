package bake

import (
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/workcheck"
)

// Boiling points that the last quantum of a temperature carries onto a tie of the printed hundredth: at this barometer
// 179.765 °F, and at this altitude 100.615 °C. What is derived from them has to hold as it is printed.
func TestBoilingPointAtATieIsDerived(t *testing.T) {
	target, err := Goal{Place: Site{Station: Hectopascals(515.760498046875)}}.Target()
	if err != nil {
		t.Fatal(err)
	}
	if got := target.Boiling; got != quantity.Fahrenheit(179.765) {
		t.Errorf("boiling point %v is no tie", got)
	}
	workcheck.Verify(t, target.Working())
	p := Probe{Goal: Goal{Place: At(quantity.Meters(-192.90625))}, Window: quantity.Elapsed(time.Hour)}
	boiling, err := p.Place.BoilingPoint()
	if err != nil {
		t.Fatal(err)
	}
	if got := boiling.Point; got != quantity.Celsius(100.615) {
		t.Errorf("boiling point %v is no tie", got)
	}
	for i, below := range []float64{15, 7.870556} {
		p.Samples = append(p.Samples, Sample{
			within(10 + 2*float64(i)), quantity.Celsius(boiling.Point.Celsius() - below),
		})
	}
	left, err := p.TimeLeft()
	if err != nil {
		t.Fatal(err)
	}
	workcheck.Verify(t, left.Working())
	workcheck.Verify(t, boiling.Working())
}
