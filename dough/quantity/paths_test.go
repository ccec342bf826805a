package quantity_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"github.com/google/go-cmp/cmp"
)

type share struct {
	Name    string           `json:"name"`
	Percent quantity.Percent `json:"percent"`
}

type common struct {
	Note     string `json:"note"`
	PHTarget float64
}

type recipe struct {
	common
	Flours []share           `json:"flours"`
	Water  *share            `json:"the_water,omitempty"`
	ByName map[string]share  `json:"by_name"`
	Any    any               `json:"any"`
	Hidden share             `json:"-"`
	Room   quantity.Elapsed  `json:",omitempty"`
	Inner  struct{ X share } `json:"inner"`
}

type meal struct {
	Main recipe `json:"main"`
	Side []recipe
}

func pathsOf(err error) (out []string) {
	for _, e := range quantity.InputErrors(err) {
		out = append(out, e.Path)
	}
	return out
}

func TestDataPathsComeFromTheTags(t *testing.T) {
	in := recipe{Any: &share{}, Flours: make([]share, 1)}
	for goPath, want := range map[string]string{
		"Flours[1].Percent":    "flours[1].percent",
		"Flours":               "flours",
		"Water.Name":           "the_water.name",
		"ByName[rye].Percent":  "by_name[rye].percent",
		"Any.Percent":          "any.percent",
		"Hidden.Name":          "hidden.name",
		"Room":                 "room",
		"Inner.X.Name":         "inner.x.name",
		"Note":                 "note",
		"PHTarget":             "ph_target",
		"TargetPH":             "target_ph",
		"PTarget":              "p_target",
		"common.Note":          "note",
		"NoSuch.FlourKind[2].": "no_such.flour_kind[2]",
		"Flours[1":             "flours[1]",
		"Flours[x].Percent":    "flours[x].percent",
		"Flours.Percent":       "flours.percent",
		"Flours[0][1].Name":    "flours[0][1].name",
		"[2].Name":             "[2].name",
		"pieces":               "pieces",
		"Note.Deep":            "note.deep",
	} {
		var p quantity.Problems
		p.Required(goPath, quantity.Tell("test.want_something", "something"))
		err := p.ErrFor(in)
		if got := pathsOf(err); len(got) != 1 || got[0] != want {
			t.Errorf("%s is %v, want %s", goPath, got, want)
		}
		if byPointer := pathsOf(p.ErrFor(&in)); byPointer[0] != want {
			t.Errorf("%s of a pointer is %v", goPath, byPointer)
		}
		if quantity.InputErrors(err)[0].GoPath != goPath {
			t.Errorf("the Go path %s is lost", goPath)
		}
	}
	var p quantity.Problems
	if p.ErrFor(in) != nil || quantity.DataPaths(nil, nil) != nil {
		t.Error("no problem is no error")
	}
	p.Required("TooWarm", quantity.Tell("test.want_x", "x"))
	if got := fmt.Sprint(p.ErrFor(nil)); got != "too_warm: required: want x" {
		t.Error(got)
	}
}

// A part's own paths stay right when the part is put into a whole, however often and whether the whole names them or
// not. In a list of anything only the value at its index knows its own keys.
func TestDataPathsOfAListOfAnything(t *testing.T) {
	list := make([]any, 12)
	list[1], list[11] = share{}, recipe{}
	for goPath, want := range map[string]string{
		"Any[1].Water": "any[1].water", "Any[11].Water.Name": "any[11].the_water.name",
		"Any[12].Water.Name": "any[12].water.name", "Any[x].Water": "any[x].water",
	} {
		got := pathsOf(quantity.DataPaths(recipe{Any: list}, &quantity.InputError{GoPath: goPath}))
		if !cmp.Equal(got, []string{want}) {
			t.Errorf("%s: %v, want %s", goPath, got, want)
		}
	}
}

func TestDataPathsCompose(t *testing.T) {
	part := func() error {
		var p quantity.Problems
		p.Required("Flours[1].Percent", quantity.Tell("test.want_percentage", "a percentage"))
		p.Required("Water.Name", quantity.Tell("test.want_name", "a name"))
		p.Join("Elsewhere", errors.New("plain"))
		return p.ErrFor(recipe{})
	}
	var whole quantity.Problems
	whole.Join("Main", part())
	whole.Join("Side[3]", part())
	whole.Join("Dough.Made", part()) // not a field of the input
	whole.Required("Main.Water.Percent", quantity.Tell("test.want_percentage", "a percentage"))
	if diff := cmp.Diff([]string{
		"main.flours[1].percent", "main.the_water.name", "side[3].flours[1].percent", "side[3].the_water.name",
		"dough.made.flours[1].percent", "dough.made.the_water.name", "main.the_water.percent",
	}, pathsOf(whole.ErrFor(meal{}))); diff != "" {
		t.Error(diff)
	}
	// Before the whole is known, the path in front is put in snake_case; the whole then sets it right, through any
	// number of levels.
	twice := quantity.At("Side[0]", quantity.At("Inner", part()))
	if got := pathsOf(twice); got[0] != "side[0].inner.flours[1].percent" {
		t.Error(got)
	}
	type tagged struct {
		Side []struct {
			Inner recipe `json:"within"`
		} `json:"sides"`
	}
	done := quantity.DataPaths(tagged{}, twice)
	if got := pathsOf(done); got[0] != "sides[0].within.flours[1].percent" {
		t.Error(got)
	}
	if got := quantity.InputErrors(done)[0].GoPath; got != "Side[0].Inner.Flours[1].Percent" {
		t.Error(got)
	}
	if again := pathsOf(quantity.DataPaths(tagged{}, done)); again[0] != "sides[0].within.flours[1].percent" {
		t.Error("deriving twice changes a path", again)
	}
	outer := struct {
		T tagged `json:"t"`
	}{}
	if got := pathsOf(quantity.DataPaths(outer, quantity.At("T", done))); got[0] != "t.sides[0].within.flours[1].percent" {
		t.Error(got)
	}
}

func TestErrorsForPrograms(t *testing.T) {
	var p quantity.Problems
	quantity.Check(&p, "Room", quantity.Celsius(400), quantity.Celsius(-40), quantity.Celsius(60))
	quantity.Check(&p, "Target", quantity.Temperature{}, quantity.Celsius(0), quantity.Celsius(60))
	p.Float("PHTarget", math.NaN(), 0, 14, "")
	p.Int("Pieces", -1, 1, 1000)
	p.Duration("Rest", -time.Hour, 0, time.Hour)
	p.Float("Open", -1, 0, math.Inf(1), "")
	p.AddCode("Culture", "culture_too_large", "900 g", quantity.Phrase{}, quantity.ErrInconsistent)
	p.Add("Steam", "40 min", quantity.Phrase{}, quantity.ErrModelRange)
	p.Join("Mass", second(quantity.ParseMass("5")))
	text, err := json.Marshal(quantity.InputErrors(p.ErrFor(recipe{})))
	if err != nil {
		t.Fatal(err)
	}
	want := `[` +
		`{"path":"room","go_path":"Room","code":"out_of_range","got":"400 °C","want":"−40 °C to 60 °C","low":"-40 °C",` +
		`"high":"60 °C","message":"out of range: got 400 °C, want −40 °C to 60 °C"},` +
		`{"path":"target","go_path":"Target","code":"required","want":"0 °C to 60 °C","low":"0 °C","high":"60 °C",` +
		`"message":"required: want 0 °C to 60 °C"},` +
		`{"path":"ph_target","go_path":"PHTarget","code":"out_of_range","got":"NaN","want":"0 to 14","low":0,` +
		`"high":14,"message":"out of range: got NaN, want 0 to 14"},` +
		`{"path":"pieces","go_path":"Pieces","code":"out_of_range","got":"−1","want":"1 to 1000","low":1,"high":1000,` +
		`"message":"out of range: got −1, want 1 to 1000"},` +
		`{"path":"rest","go_path":"Rest","code":"out_of_range","got":"−1h","want":"0m to 1h","low":"0m","high":"1h",` +
		`"message":"out of range: got −1h, want 0m to 1h"},` +
		`{"path":"open","go_path":"Open","code":"out_of_range","got":"−1","want":"0 to +Inf","low":0,` +
		`"message":"out of range: got −1, want 0 to +Inf"},` +
		`{"path":"culture","go_path":"Culture","code":"culture_too_large","got":"900 g",` +
		`"message":"inconsistent: got 900 g"},` +
		`{"path":"steam","go_path":"Steam","code":"outside_model","got":"40 min",` +
		`"message":"outside the model's range: got 40 min"},` +
		`{"path":"mass","go_path":"Mass","code":"unit","got":"\"5\" without a unit",` +
		`"want":"a mass with its unit, such as \"780 g\", \"1.2 kg\", \"500 mg\", \"4 oz\", \"1 lb\" or \"1 lb 4 oz\"",` +
		`` +
		`"message":"unit: got \"5\" without a unit, want a mass with its unit, ` +
		`such as \"780 g\", \"1.2 kg\", \"500 mg\", \"4 oz\", \"1 lb\" or \"1 lb 4 oz\""}]`
	if diff := cmp.Diff(want, string(text)); diff != "" {
		t.Error(diff)
	}
	bare := quantity.InputErrors(&quantity.InputError{Err: quantity.ErrTooPrecise})
	if bare[0].Code != "too_precise" || quantity.InputErrors(&quantity.InputError{})[0].Code != "refused" {
		t.Error("every error has a code")
	}
}

func ExampleProblems_ErrFor() {
	type flour struct {
		Percent quantity.Percent `json:"percent"`
	}
	type formula struct {
		Flours []flour `json:"flour"`
	}
	in := formula{Flours: []flour{{quantity.NewPercent(100)}, {quantity.NewPercent(-2)}}}
	var problems quantity.Problems
	quantity.Check(&problems, "Flours[1].Percent", in.Flours[1].Percent, quantity.NewPercent(0),
		quantity.NewPercent(1000))
	err := problems.ErrFor(in)
	fmt.Println(err)
	fmt.Println(quantity.InputErrors(err)[0].GoPath)
	// Output:
	// flour[1].percent: out of range: got −2 %, want 0 % to 1000 %
	// Flours[1].Percent
}
