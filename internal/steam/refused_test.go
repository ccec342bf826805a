package steam

import (
	"math"
	"testing"
)

// What is refused has no answer; the coefficients that are told are those of the boiling line.
func TestNoAnswerToWhatIsRefused(t *testing.T) {
	for name, of := range map[string]func(float64) (float64, error){
		"pressure": Pressure, "altitude": Altitude, "air": StandardKelvin, "boiling": SaturationTemperature,
		"vapor": SaturationPressure,
	} {
		for _, x := range []float64{math.NaN(), math.Inf(1), -1e9} {
			if got, err := of(x); got != 0 || err == nil {
				t.Errorf("%s of %v: %v, %v", name, x, got, err)
			}
		}
	}
	// IAPWS R7-97, equation 29: β²ϑ² + n₁β²ϑ + n₂β² + n₃βϑ² + n₄βϑ + n₅β + n₆ϑ² + n₇ϑ + n₈ = 0.
	n := Region4()
	for _, kelvin := range []float64{280, 373.15, 500, 640} {
		p, err := SaturationPressure(kelvin)
		if err != nil {
			t.Fatal(err)
		}
		b, v := math.Sqrt(math.Sqrt(p/1e6)), kelvin+n[8]/(kelvin-n[9])
		sum := b*b*(v*v+n[0]*v+n[1]) + b*(n[2]*v*v+n[3]*v+n[4]) + n[5]*v*v + n[6]*v + n[7]
		if !(math.Abs(sum) <= 1e-9*math.Abs(n[5]*v*v)) {
			t.Errorf("at %v K: %v", kelvin, sum)
		}
	}
}
