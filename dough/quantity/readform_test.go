package quantity_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.org/maslin/dough/quantity"
)

type formPart struct {
	Name    string           `json:"name"`
	Percent quantity.Percent `json:"percent"`
}

// formLog has a JSON of its own.
type formLog struct{ first, second string }

func (l *formLog) UnmarshalJSON(text []byte) error {
	var in struct {
		Steps []struct {
			Text string           `json:"text"`
			Of   quantity.Percent `json:"of"`
		} `json:"steps"`
	}
	if err := quantity.ReadJSON(text, &in); err != nil {
		return err
	}
	for _, s := range in.Steps {
		l.first, l.second = l.second, s.Text+" "+s.Of.String()
	}
	return nil
}

type formHead struct {
	Room quantity.Temperature `json:"room"`
}

type formInput struct {
	formHead
	Target quantity.Temperature `json:"target"`
	Parts  []formPart           `json:"parts"`
	Extra  *formPart            `json:"extra"`
	Takes  quantity.Elapsed     `json:"takes"`
	Rest   time.Duration        `json:"rest"`
	Pieces int                  `json:"pieces"`
	Share  float64              `json:"share"`
	Cold   bool                 `json:"cold"`
	Table  map[string]int       `json:"table"`
	Hidden int                  `json:"-"`
	Log    formLog              `json:"log"`
}

// The names of a form are the paths of its errors.
func ExampleReadForm() {
	type factor struct {
		Temperature quantity.Temperature `json:"temperature"`
	}
	var in struct {
		Target quantity.Temperature `json:"target"`
		Others []factor             `json:"others"`
	}
	err := quantity.ReadForm(map[string][]string{
		"target": {"26 °C"}, "others[0].temperature": {"70 F"}, "others[1].temperature": {"22"}, "mixer": {"spiral"},
	}, &in)
	fmt.Println(in.Target, in.Others[0].Temperature.Text(quantity.FahrenheitScale, 0))
	for _, e := range quantity.InputErrors(err) {
		fmt.Println(e.Path, e.Code)
	}
	// Output:
	// 26 °C 70 °F
	// others[1].temperature unit
	// mixer unknown_key
}

func TestReadForm(t *testing.T) {
	var in formInput
	err := quantity.ReadForm(map[string][]string{
		"target": {"26,5 °C"}, "parts[1].name": {"rye"}, "parts[0].name": {"wheat"}, "parts[0].percent": {"75 %"},
		"extra.percent": {"2 %"},
		"takes":         {"25 min"}, "rest": {"1h"}, "pieces": {" 6 "}, "share": {"0.5"}, "cold": {"on"}, "room": {"21 °C"},
		"parts[1].percent": {" "},
	}, &in)
	want := formInput{
		formHead: formHead{quantity.Celsius(21)}, Target: quantity.Celsius(26.5),
		Parts: []formPart{{"wheat", quantity.NewPercent(75)}, {Name: "rye"}},
		Extra: &formPart{Percent: quantity.NewPercent(2)},
		Takes: quantity.Elapsed(25 * time.Minute), Rest: time.Hour, Pieces: 6, Share: 0.5, Cold: true,
	}
	if diff := cmp.Diff(want, in, cmp.AllowUnexported(formInput{}, formLog{})); err != nil || diff != "" {
		t.Error(err, diff)
	}
}

// Every name that cannot be read is a problem at its own path, and all are told at once.
func TestReadFormProblems(t *testing.T) {
	cases := map[string]struct{ text, path, code string }{
		"target":           {"26", "target", "unit"},
		"nobody":           {"x", "nobody", "unknown_key"},
		"Target":           {"26 °C", "Target", "unknown_key"},
		"hidden":           {"1", "hidden", "unknown_key"},
		"parts[1].name":    {"gap", "parts[1].name", "unknown_key"},
		"parts[01].name":   {"x", "parts[01].name", "unknown_key"},
		"parts[-1].name":   {"x", "parts[-1].name", "unknown_key"},
		"parts[1000].name": {"x", "parts[1000].name", "unknown_key"},
		"parts[0":          {"x", "parts[0", "unknown_key"},
		"parts":            {"x", "parts", "wrong_type"},
		"target.degrees":   {"26 °C", "target.degrees", "unknown_key"},
		"pieces":           {"six", "pieces", "wrong_type"},
		"share":            {"NaN!", "share", "wrong_type"},
		"cold":             {"perhaps", "cold", "wrong_type"},
		"table":            {"x", "table", "wrong_type"},
		"extra.percent":    {"2", "extra.percent", "unit"},
		"takes":            {"soon", "takes", "unit"},
		"log.steps[0].of":  {"2", "log.steps[0].of", "unit"},
		"log.stages":       {"2", "log.stages", "unknown_key"},
		"log.steps[1].of":  {"2 %", "log.steps[1].of", "unknown_key"},
		".pieces":          {"2", ".pieces", "unknown_key"},
		"pieces.":          {"2", "pieces.", "unknown_key"},
		"parts.[0].name":   {"x", "parts.[0].name", "unknown_key"},
		"parts[0]name":     {"x", "parts[0]name", "unknown_key"},
		"":                 {"x", "", "wrong_type"},
	}
	form := map[string][]string{}
	for name, c := range cases {
		form[name] = []string{c.text}
		var in formInput
		found := quantity.InputErrors(quantity.ReadForm(map[string][]string{name: {c.text}}, &in))
		if len(found) != 1 || found[0].Path != c.path || found[0].Code != c.code || found[0].Want.IsZero() {
			t.Errorf("%q = %q: %+v, want %s at %q", name, c.text, found, c.code, c.path)
		}
	}
	var in formInput
	delete(form, "log.steps[0].of") // or else the list has no gap
	delete(form, "log.stages")      // is not looked for in a list with one
	if found := quantity.InputErrors(quantity.ReadForm(form, &in)); len(found) != len(cases)-2 {
		t.Errorf("%d problems of %d", len(found), len(cases))
	}
	blank := formInput{Pieces: 3}
	if err := quantity.ReadForm(map[string][]string{"parts[0].name": {""}, "parts[1].name": {"rye"}, "pieces": {" "}},
		&blank); err != nil ||
		len(blank.Parts) != 2 || blank.Parts[1].Name != "rye" || blank.Pieces != 3 {
		t.Errorf("%v %+v", err, blank)
	}
	twice := quantity.InputErrors(quantity.ReadForm(map[string][]string{"pieces": {"6", "7"}}, &in))
	if len(twice) != 1 || twice[0].Code != "duplicate_key" || twice[0].Path != "pieces" {
		t.Errorf("%+v", twice)
	}
	for _, into := range []any{nil, in, (*formInput)(nil)} {
		if err := quantity.ReadForm(nil, into); !errors.Is(err, quantity.ErrForm) {
			t.Errorf("%T: %v", into, err)
		}
	}
}

// What has a JSON of its own is read from the names of it, or from a field that holds it whole.
func TestReadFormOfWhatReadsItself(t *testing.T) {
	want := formLog{"mix 2 %", "fold 3 %"}
	for name, form := range map[string]map[string][]string{
		"names": {
			"log.steps[0].text": {"mix"}, "log.steps[0].of": {"2 %"}, "log.steps[1].of": {"3 %"}, "log.steps[1].text": {"fold"},
		},
		"whole": {"log": {` {"steps": [{"text": "mix", "of": "2 %"}, {"text": "fold", "of": "3 %"}]}`}},
		"blank": {"log": {" "}, "log.steps[0].text": {""}, "log.nobody": {""}},
	} {
		var in formInput
		err := quantity.ReadForm(form, &in)
		if blank := (in.Log == formLog{}); err != nil || !blank && in.Log != want || blank != (name == "blank") {
			t.Errorf("%s: %v, %+v", name, err, in.Log)
		}
	}
	for _, text := range []string{"{", "mix", `{"steps": [{"text": 1}]}`, strings.Repeat("[", 1000) +
		strings.Repeat("]", 1000)} {
		var in formInput
		found := quantity.InputErrors(quantity.ReadForm(map[string][]string{"log": {text}}, &in))
		if len(found) != 1 || !strings.HasPrefix(found[0].Path, "log") || found[0].Code != "wrong_type" {
			t.Errorf("%.40s: %+v", text, found)
		}
	}
}

// formBake reads itself from JSON, and its fields say what that is.
type formBake struct {
	Pieces int `json:"pieces"`
}

func (b *formBake) UnmarshalJSON([]byte) error { return errors.New("not asked") }

func TestReadFormReadsFieldsWhereThereAreTags(t *testing.T) {
	var in formBake
	if err := quantity.ReadForm(map[string][]string{"pieces": {"6"}}, &in); err != nil || in.Pieces != 6 {
		t.Error(err, in)
	}
}

// Rows of a form that nobody filled in are no items, and parts without a text are not there.
func TestReadFormLeavesBlankRowsOut(t *testing.T) {
	var in formInput
	err := quantity.ReadForm(map[string][]string{"parts[0].name": {""}, "parts[1].name": {"rye"}, "parts[2].name": {" "},
		"parts[3].name": {""}, "parts[3].percent": {""}, "extra.name": {""}, "extra.percent": {" "}}, &in)
	if err != nil || in.Extra != nil || len(in.Parts) != 2 || in.Parts[1].Name != "rye" {
		t.Errorf("%v, %+v", err, in)
	}
	found := quantity.InputErrors(quantity.ReadForm(map[string][]string{"extra.nobody": {""}, "parts[0].nobody": {""}},
		&in))
	if len(found) != 2 || found[0].Path != "parts[0].nobody" || found[1].Path != "extra.nobody" {
		t.Errorf("%+v", found)
	}
}

// A list of any length is read in order, whatever the order of the names.
func TestReadFormLists(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 30).Draw(t, "n")
		form := map[string][]string{}
		for i := range n {
			form[fmt.Sprintf("parts[%d].name", i)] = []string{fmt.Sprint("n", i)}
		}
		var in formInput
		if err := quantity.ReadForm(form, &in); err != nil || len(in.Parts) != n {
			t.Fatal(err, len(in.Parts))
		}
		for i, p := range in.Parts {
			if p.Name != fmt.Sprint("n", i) {
				t.Fatalf("%d is %s", i, p.Name)
			}
		}
	})
}

func FuzzReadForm(f *testing.F) {
	f.Add("parts[0].percent", "75 %")
	f.Add("a[[.]", strings.Repeat("[0]", 100))
	f.Add("log"+strings.Repeat("[0]", 300), "x")
	f.Add("log.steps[0].of", "x")
	f.Fuzz(func(t *testing.T, name, text string) {
		var in formInput
		if err := quantity.ReadForm(map[string][]string{name: {text}}, &in); err != nil &&
			len(quantity.InputErrors(err)) == 0 {
			t.Errorf("%q: %v", name, err)
		}
	})
}

// What could not be read is not also told as missing.
func TestWhatCannotBeReadIsNotRequired(t *testing.T) {
	var in formInput
	var p quantity.Problems
	p.Join("", quantity.ReadForm(map[string][]string{"target": {"26"}}, &in))
	p.Required("Target", quantity.Tell("test.want_temperature", "a temperature"))
	p.Required("Room", quantity.Tell("test.want_temperature", "a temperature"))
	var codes []string
	for _, e := range quantity.InputErrors(p.ErrFor(in)) {
		codes = append(codes, e.Path+" "+e.Code)
	}
	if diff := cmp.Diff([]string{"target unit", "room required"}, codes); diff != "" {
		t.Error(diff)
	}
}
