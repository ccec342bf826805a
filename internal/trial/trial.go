package trial

import (
	"encoding/json"
	"errors"
	"math"
	"reflect"
	"strings"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/workcheck"
)

// Percent draws a percentage, every other time one with a decimal at most.
func Percent(t *rapid.T, label string, low, high float64) quantity.Percent {
	return quantity.NewPercent(number(t, label, low, high, 10))
}

// Grams draws a mass, every other time one of whole grams.
func Grams(t *rapid.T, label string, low, high float64) quantity.Mass {
	return quantity.Grams(number(t, label, low, high, 1))
}

// Centimeters draws a length of whole millimeters.
func Centimeters(t *rapid.T, label string, low, high float64) quantity.Length {
	return quantity.Centimeters(math.Round(rapid.Float64Range(low, high).Draw(t, label)*10) / 10)
}

func number(t *rapid.T, label string, low, high, steps float64) float64 {
	x := rapid.Float64Range(low, high).Draw(t, label)
	if rapid.Bool().Draw(t, label+" round") {
		x = math.Round(x*steps) / steps
	}
	return min(max(x, low), high)
}

// Sound fails the property for every line of a working that does not evaluate to its value.
func Sound(t *rapid.T, w working.Working) {
	t.Helper()
	for _, fault := range workcheck.Faults(w) {
		t.Error(fault)
	}
}

// Travels fails the property unless a value comes back equal from its JSON.
func Travels[T any](t Failer, v T) {
	t.Helper()
	data, err := json.Marshal(v)
	if err != nil {
		t.Errorf("%T: %v", v, err)
		return
	}
	var back T
	if err := json.Unmarshal(data, &back); err != nil {
		t.Errorf("%T: %v in %s", v, err, data)
		return
	}
	again, err := json.Marshal(back)
	if err != nil || string(again) != string(data) ||
		!cmp.Equal(v, back, cmp.Exporter(func(reflect.Type) bool { return true })) {
		t.Errorf("%T went out as\n%s\nand came back as\n%s\n%v", v, data, again, err)
	}
}

// A Failer is a test or a property.
type Failer interface {
	Helper()
	Errorf(format string, args ...any)
}

// Holds looks for lines on a page, whatever the spaces between their words.
func Holds(t Failer, page string, lines ...string) {
	t.Helper()
	words := strings.Join(strings.Fields(page), " ")
	for _, l := range lines {
		if !strings.Contains(words, l) {
			t.Errorf("%q is not on the page:\n%s", l, page)
		}
	}
}

// Refused lists the refused fields of an error with their reasons: "mass required; rises[0] out of range".
func Refused(err error) string {
	var out []string
	for _, e := range quantity.InputErrors(err) {
		path := e.Path // in the data, where it is known
		if path == "" {
			path = e.GoPath
		}
		out = append(out, path+" "+errors.Unwrap(e).Error())
	}
	return strings.Join(out, "; ")
}

// Err is the error of a call with one result.
func Err[T any](_ T, err error) error { return err }
