package quantity_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/trial"
)

type numbersIn struct {
	A int8      `json:"a"`
	B int64     `json:"b"`
	C uint16    `json:"c"`
	D float32   `json:"d"`
	E float64   `json:"e"`
	F bool      `json:"f"`
	G string    `json:"g"`
	H []int     `json:"h"`
	I [2]int    `json:"i"`
	J time.Time `json:"j"`
	K *int      `json:"k"`
	L struct{}  `json:"l"`
}

type thirteenIn struct {
	numbersIn
	Last quantity.Mass `json:"last"`
}

// faults are the refusals inside an error, a line each.
func faults(err error) string {
	var out strings.Builder
	for _, e := range quantity.InputErrors(err) {
		fmt.Fprintf(&out, "  %s | %s | %s | %s\n", e.Path, e.GoPath, e.Code, e.Error())
	}
	if err == nil {
		out.WriteString("  read\n")
	}
	return out.String()
}

// What is said of JSON and of forms that are refused, whole: path, Go path, code and words.
func TestWhatIsSaidOfFormsRefused(t *testing.T) {
	var page strings.Builder
	for _, text := range []string{
		`{"a":128,"b":1e30,"c":-1,"d":1e39,"e":1e309,"f":"x","g":1,"h":{},"i":[1],"j":"x","k":"x","l":[]}`,
		`{"a":-129,"b":9223372036854775808,"c":65536,"d":"1","e":true,"f":0,"g":null,"h":[null],"i":[1,2,3],"j":7,"k":[]}`,
		`{"a":127,"b":9223372036854775807,"c":65535,"d":1,"e":1e308,"f":true,"g":"","h":null,"i":[1,2],"k":null,"l":{}}`,
		`{"a":1.5,"c":1.5,"a":1,"m":1}`, `{"a":1} 2`, "{\n \"a\":1}\n x", `{"a":`, `{"a" 1}`, ``, ` `, `[1,]`, `nul`,
		`"` + strings.Repeat("x", 40) + `"`, strings.Repeat("[", 64), strings.Repeat("[", 65), "{\"g\":\"\xff\"}",
		`{"` + strings.Repeat("k", 32) + `":1,"` + strings.Repeat("k", 33) + `":1,"\u0007":1}`,
		`{"g":"` + "\u00fc" + `"} ü`,
	} {
		shown := text
		if len(shown) > 120 {
			shown = fmt.Sprintf("%s… %d bytes", shown[:110], len(shown))
		}
		fmt.Fprintf(&page, "%q\n%s", shown, faults(quantity.ReadJSON([]byte(text), &numbersIn{})))
	}
	fmt.Fprintf(&page, "thirteen\n%s", faults(quantity.ReadJSON([]byte(`{"z":1}`), &thirteenIn{})))
	fmt.Fprintf(&page, "none\n%s", faults(quantity.ReadJSON([]byte(`{"z":1}`), &struct{}{})))
	page.WriteString("forms\n")
	for _, form := range []map[string]string{
		{"a": "1"}, {"a": "x", "b": "1.5", "c": "-1", "d": "1,5", "e": "1e400", "f": "yes", "g": "x", "h": "1", "j": "noon"},
		{"a": "300", "c": "70000"}, {"h[0]": "1", "h[1]": "x", "h[3]": "1"}, {"h[1]": "1"}, {"h[1000]": "1"},
		{"i[0]": "1"}, {"": "1"}, {".a": "1"}, {"a.": "1"}, {"a..b": "1"}, {"h[0": "1"}, {"h0]": "1"}, {"h.[0]": "1"},
		{"h[0]b": "1"}, {"h[0][1]": "1"}, {"a.b": "1"}, {"a[0]": "1"}, {"k": "7"}, {"l": "7"}, {"l.x": "7"},
		{strings.Repeat("n", 200): "1"}, {strings.Repeat("n", 201): "1"}, {strings.Repeat("n", 1000): "1"},
		{strings.Repeat("n", 1001): "1"}, {"f": "on"}, {"f": "true"}, {"f": "false"}, {"\a": "1"},
	} {
		values := map[string][]string{}
		for k, v := range form {
			values[k] = []string{v}
		}
		shown := fmt.Sprint(form)
		if len(shown) > 120 {
			shown = fmt.Sprintf("%s… %d bytes", shown[:40], len(shown))
		}
		fmt.Fprintf(&page, "%q\n%s", shown, faults(quantity.ReadForm(values, &numbersIn{})))
	}
	log := map[string][]string{"log.steps[0].text": {"a"}, "log.steps[2].text": {"b"}}
	fmt.Fprintf(&page, "gap\n%s", faults(quantity.ReadForm(log, &formInput{})))
	fmt.Fprintf(&page, "twice\n%s", faults(quantity.ReadForm(map[string][]string{"a": {"1", "2"}}, &numbersIn{})))
	fmt.Fprintf(&page, "no pointer\n%s", faults(quantity.ReadForm(log, formInput{})))
	unit, span := quantity.Gram, quantity.Range[quantity.Mass]{}
	var mass quantity.Mass
	var takes quantity.Elapsed
	page.WriteString("columns\n")
	for _, from := range []any{nil, "", "x", 7, 1.5, []byte("x"), true} {
		fmt.Fprintf(&page, "%#v\n%s%s%s%s", from, faults(quantity.Stored(&unit).Scan(from)),
			faults(quantity.Stored(&span).Scan(from)), faults(mass.Scan(from)), faults(takes.Scan(from)))
	}
	page.WriteString("bytes\n")
	for _, data := range []string{"", "m", "m12345678", "p\x00\x00\x00\x00\x00\x00\x00\x01",
		"m\x00\x00\x00\x00\x00\x00\x00\x01"} {
		fmt.Fprintf(&page, "%q\n%s", data, faults(mass.UnmarshalBinary([]byte(data))))
	}
	page.WriteString("values that are none\n")
	for _, v := range []interface{ MarshalText() ([]byte, error) }{
		quantity.Grams(math.NaN()), quantity.NewPercent(math.Inf(1)),
		quantity.DeltaCelsius(math.NaN()), quantity.Celsius(math.NaN()), quantity.Liters(1e9), quantity.Meters(1e9)} {
		fmt.Fprintf(&page, "%v, %#v\n%s", v, v, faults(trial.Err(v.MarshalText())))
	}
	trial.Kept(t, "refusals.txt", page.String())
}

// At puts a path in front and keeps the code that a refusal had, its own or that of its reason.
func TestCodesStayWhenPathsAreJoined(t *testing.T) {
	for want, in := range map[string]*quantity.InputError{
		"own": {GoPath: "X", Code: "own", Err: quantity.ErrUnit}, "required": {GoPath: "X", Err: quantity.ErrRequired},
		"outside_model": {GoPath: "X", Err: quantity.ErrModelRange}, "wrong_form": {Err: quantity.ErrForm},
		"refused": {Err: errors.New("plain")}, "inconsistent": {Err: quantity.ErrInconsistent},
	} {
		var moved *quantity.InputError
		if !errors.As(quantity.At("Dough", in), &moved) || moved.Code != want {
			t.Errorf("%v has the code %v, want %s", in, moved, want)
		}
		if path := strings.TrimSuffix("Dough."+in.GoPath, "."); moved.GoPath != path {
			t.Errorf("%v lies at %q, want %s", in, moved.GoPath, path)
		}
	}
}
