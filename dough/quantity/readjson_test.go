package quantity_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"example.org/maslin/dough/quantity"
	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
)

type base struct {
	Note string `json:"note"`
	Over string `json:"name"`
}

type flourIn struct {
	Name    string               `json:"name"`
	Percent quantity.Percent     `json:"percent"`
	Room    quantity.Temperature `json:"room,omitzero"`
}

type bakeIn struct {
	base
	Name    string                                 `json:"name"`
	Flours  []flourIn                              `json:"flour"`
	Pieces  int8                                   `json:"pieces"`
	Height  float64                                `json:"height"`
	Cold    bool                                   `json:"cold"`
	Unit    quantity.MassUnit                      `json:"unit"`
	Water   *flourIn                               `json:"water"`
	Prices  map[string]quantity.Mass               `json:"prices"`
	Levels  map[uint8]bool                         `json:"levels"`
	ByMass  map[quantity.Mass]string               `json:"by_mass"`
	Pair    [2]int                                 `json:"pair"`
	Bulk    quantity.TimeRange                     `json:"bulk"`
	Rest    quantity.Elapsed                       `json:"rest"`
	Old     time.Duration                          `json:"old"`
	At      time.Time                              `json:"at"`
	Raw     []byte                                 `json:"raw"`
	Any     any                                    `json:"any"`
	Count   uint                                   `json:"count"`
	Curve   fmt.Stringer                           `json:"curve"`
	Cores   []quantity.Range[quantity.Temperature] `json:"cores"`
	Skipped string                                 `json:"-"`
	private string
}

func TestReadJSONReadsWhatIsRight(t *testing.T) {
	text := `{"note":"hall","name":"rye","flour":[{"name":"wheat","percent":"75 %","room":"68 °F"},
	{"percent":"25%"}],"pieces":-3,"height":1e2,"cold":true,
	"unit":"oz","water":{"name":"w"},"prices":{"wheat":"1 kg"},"levels":{"7":true},"by_mass":{"5 g":"five"},"pair":[1,2],
	"bulk":{"early":"1h","likely":"2h","late":"3h","probability":"80 %"},"rest":"20m","old":"1h",
	"at":"2026-11-28T09:00:00+01:00","raw":"aGk=","any":{"x":[1]},"count":7,
	"cores":[{"low":"93 °C","high":"96 °C"}]}`
	var got bakeIn
	if err := quantity.ReadJSON([]byte(text), &got); err != nil {
		t.Fatal(err)
	}
	want := bakeIn{
		base: base{Note: "hall"}, Name: "rye", Pieces: -3, Height: 100, Cold: true, Unit: quantity.Ounce,
		Water:  &flourIn{Name: "w"},
		Flours: []flourIn{{"wheat", quantity.NewPercent(75), quantity.Celsius(20)}, {Percent: quantity.NewPercent(25)}},
		Prices: map[string]quantity.Mass{"wheat": quantity.Kilograms(1)}, Levels: map[uint8]bool{7: true},
		ByMass: map[quantity.Mass]string{quantity.Grams(5): "five"},
		Pair:   [2]int{1, 2}, Bulk: quantity.TimeRange{Early: time.Hour, Likely: 2 * time.Hour, Late: 3 * time.Hour,
			Probability: quantity.NewPercent(80)},
		Rest: quantity.Elapsed(20 * time.Minute), Old: time.Hour, At: time.Date(2026, 11, 28, 8, 0, 0, 0, time.UTC),
		Raw: []byte("hi"),
		Any: map[string]any{"x": []any{1.0}}, Count: 7,
		Cores: []quantity.Range[quantity.Temperature]{{Low: quantity.Celsius(93), High: quantity.Celsius(96)}},
	}
	if diff := cmp.Diff(want, got, cmp.AllowUnexported(bakeIn{}, base{}), cmp.Comparer(time.Time.Equal)); diff != "" {
		t.Error(diff)
	}
	if got.private != "" {
		t.Error("a private field was read")
	}
}

func TestReadJSONReportsEverythingAtOnce(t *testing.T) {
	text := `{
	"flour":[{"percent":"75"},{"percent":75,"colour":"white"},{"percent":"5 %","percent":"6 %"},7,{"room":"12 Δ°C",
	"name":null}],
	"pieces":300, "height":"tall", "cold":1, "unit":"stone", "water":[], "prices":{"rye":"1 °C","rye":"1 kg",
	"oat":false}, "levels":{"x":true,"300":true},
	"by_mass":{"five":"","1 kg":"","1000 g":""}, "pair":[1,"2",3], "bulk":{"early":7,"soon":"1h"}, "rest":"soon",
	 "old":5, "at":"noon", "raw":7, "any":"x", "count":-1,
	"curve":{"a":{"b":[]}}, "cores":[{"low":{"x":1}}], "Name":"rye", "private":"x", "Skipped":"x", "base":{}}`
	var got bakeIn
	err := quantity.ReadJSON([]byte(text), &got)
	var lines []string
	for _, e := range quantity.InputErrors(err) {
		got := ""
		if e.Got != nil {
			got = fmt.Sprint(e.Got)
		}
		lines = append(lines, fmt.Sprintf("%s | %s | %s | got %s", e.Path, e.GoPath, e.Code, got))
	}
	want := []string{
		`flour[0].percent | Flours[0].Percent | unit | got "75" without a unit`,
		`flour[1].percent | Flours[1].Percent | wrong_type | got the number 75`,
		`flour[1].colour | Flours[1].colour | unknown_key | got a key that is not known`,
		`flour[2].percent | Flours[2].Percent | duplicate_key | got the key a second time`,
		`flour[3] | Flours[3] | wrong_type | got the number 7`,
		`flour[4].room | Flours[4].Room | unit | got "12 Δ°C"`,
		`flour[4].name | Flours[4].Name | null | got null`,
		`pieces | Pieces | out_of_range | got 300`,
		`height | Height | wrong_type | got the text "tall"`,
		`cold | Cold | wrong_type | got the number 1`,
		`unit | Unit | unknown_word | got "stone"`,
		`water | Water | wrong_type | got a list`,
		`prices[rye] | Prices[rye] | unit | got "1 °C"`,
		`prices[rye] | Prices[rye] | duplicate_key | got the key a second time`,
		`prices[oat] | Prices[oat] | wrong_type | got false`,
		`levels[x] | Levels[x] | wrong_type | got the key "x"`,
		`levels[300] | Levels[300] | wrong_type | got the key "300"`,
		`by_mass[five] | ByMass[five] | unit | got "five"`,
		`by_mass[1000 g] | ByMass[1000 g] | duplicate_key | got the key a second time`,
		`pair[1] | Pair[1] | wrong_type | got the text "2"`,
		`pair | Pair | wrong_type | got a list of 3`,
		`bulk.early | Bulk.Early | wrong_type | got the number 7`,
		`bulk.soon | Bulk.soon | unknown_key | got a key that is not known`,
		`rest | Rest | unit | got "soon"`,
		`old | Old | wrong_type | got the number 5`,
		`at | At | wrong_form | got "noon"`,
		`raw | Raw | wrong_type | got `,
		`count | Count | out_of_range | got -1`,
		`curve | Curve | wrong_type | got an object`,
		`cores[0].low | Cores[0].Low | wrong_type | got an object`,
		`Name | Name | unknown_key | got a key that is not known`,
		`private | private | unknown_key | got a key that is not known`,
		`Skipped | Skipped | unknown_key | got a key that is not known`,
		`base | base | unknown_key | got a key that is not known`,
	}
	if diff := cmp.Diff(want, lines); diff != "" {
		t.Error(diff)
	}
	for _, e := range quantity.InputErrors(err) {
		if e.Want.IsZero() || len(e.Error()) > 400 {
			t.Errorf("%v", e)
		}
	}
	if !strings.Contains(err.Error(),
		`flour[1].percent: wrong form: got the number 75, want a text: a percentage with its sign, such as "68 %"`) ||
		!strings.Contains(err.Error(),
			"flour[1].colour: wrong form: got a key that is not known, want one of name, percent, room") {
		t.Error(err)
	}
}

func TestReadJSONRefusesWhatIsNoJSON(t *testing.T) {
	deep := strings.Repeat(`{"any":`, 70) + "1" + strings.Repeat("}", 70)
	type nested struct {
		In *json.RawMessage `json:"in"`
	}
	for name, c := range map[string]struct{ text, code, part string }{
		"empty":        {"", "not_json", "ends too early"},
		"cut":          {`{"note":"x"`, "not_json", "ends too early"},
		"comma":        {"{\"note\":\"x\",\n  }", "not_json", "line 2, column 3"},
		"trailing":     {`{} {}`, "trailing_data", "line 1, column 4"},
		"words":        {`hello`, "not_json", "line 1, column 1"},
		"bad bytes":    {"{\"note\":\"\xff\"}", "not_json", "line 1, column 10, bytes that are no UTF-8"},
		"null":         {"null", "null", "null"},
		"null text":    {`{"flour":[{"name":null}]}`, "null", "flour[0].name"},
		"null number":  {`{"pieces":null}`, "null", "pieces"},
		"null percent": {`{"flour":[{"percent":null}]}`, "null", "flour[0].percent"},
		"null range":   {`{"bulk":null}`, "null", "bulk"},
		"null enum":    {`{"unit":null}`, "null", "unit"},
		"null moment":  {`{"at":null}`, "null", "at"},
		"list":         {"[]", "wrong_type", "a list"},
		"deep object":  {deep, "too_deep", "at most 64 levels"},
		"deep unknown": {`{"zzz":` + strings.Repeat("[", 5000) + strings.Repeat("]", 5000) + "}", "too_deep",
			"line 1, column 71"},
		"deep any": {`{"any":` + strings.Repeat("[", 5000) + strings.Repeat("]", 5000) + "}", "too_deep",
			"at most 64 levels"},
		"huge":        {`{"note":"` + strings.Repeat("x", 10<<20) + `"}`, "too_large", "10 MB"},
		"many items":  {`{"flour":[` + strings.Repeat("{},", 300_000) + `{}]}`, "too_many_items", "200000 items"},
		"many faults": {`{"flour":[` + strings.Repeat("1,", 300) + `1]}`, "wrong_type", "fewer than 100"},
		"cut in raw":  {`{"bulk":{"early":`, "not_json", "ends too early"},
		"bad in raw":  {`{"bulk":{"early":}}`, "not_json", "line 1, column 18, "},
		"long key":    {`{"` + strings.Repeat("k", 1<<20) + `":1}`, "unknown_key", "kkk"},
		"mismatched":  {`{"flour":[}`, "not_json", "column"},
	} {
		var got bakeIn
		err := quantity.ReadJSON([]byte(c.text), &got)
		all := quantity.InputErrors(err)
		if len(all) == 0 || all[0].Code != c.code || !strings.Contains(err.Error(), c.part) ||
			len(err.Error()) > 20_000 {
			t.Errorf("%s: %.300v", name, err)
		}
		if len(all) > 101 {
			t.Errorf("%s: %d problems", name, len(all))
		}
	}
	// What is read takes the place of what was there; an empty list is one.
	old := bakeIn{Flours: []flourIn{{Name: "rye"}, {Name: "spelt"}}}
	if err := quantity.ReadJSON([]byte(`{"flour":[{"name":"wheat"}]}`), &old); err != nil || len(old.Flours) != 1 ||
		old.Flours[0].Name != "wheat" {
		t.Errorf("%v, %v", old.Flours, err)
	}
	if err := quantity.ReadJSON([]byte(`{"flour":[]}`), &old); err != nil || old.Flours == nil || len(old.Flours) != 0 {
		t.Errorf("%v, %v", old.Flours, err)
	}
	full := bakeIn{Flours: []flourIn{{}}, Water: &flourIn{}, Prices: map[string]quantity.Mass{"x": {}}, Any: 1,
		Raw: []byte("x")}
	if err := quantity.ReadJSON([]byte(`{"flour":null,"water":null,"prices":null,"any":null,"raw":null}`),
		&full); err != nil ||
		full.Flours != nil || full.Water != nil || full.Prices != nil || full.Any != nil || full.Raw != nil {
		t.Error("null is no list, no table and no pointer", err, full)
	}
	var n nested
	if err := quantity.ReadJSON([]byte(`{"in":[1]}`), &n); err != nil || string(*n.In) != "[1]" {
		t.Error(n, err)
	}
	if err := quantity.ReadJSON([]byte(`{}`), bakeIn{}); err == nil {
		t.Error("read into a value")
	}
	if err := quantity.ReadJSON([]byte(`{}`), (*bakeIn)(nil)); err == nil {
		t.Error("read into nothing")
	}
}

// The reader is used by types of their own, below any depth; paths go on through them.
type wrapped struct{ in flourIn }

func (w *wrapped) UnmarshalJSON(b []byte) error { return quantity.ReadJSON(b, &w.in) }

func TestReadJSONInsideAType(t *testing.T) {
	var got struct {
		List []wrapped `json:"list"`
	}
	err := quantity.ReadJSON([]byte(`{"list":[{"percent":"5 %"},{"percent":"five","name":5}]}`), &got)
	if diff := cmp.Diff([]string{"list[1].percent", "list[1].name"}, pathsOf(err)); diff != "" ||
		!errors.Is(err, quantity.ErrUnit) {
		t.Error(diff, err)
	}
	if got.List[0].in.Percent != quantity.NewPercent(5) {
		t.Error("not read")
	}
	// A problem that such a type found in a part of itself keeps its place, whoever derives paths afterwards.
	var all struct {
		List []picky `json:"list"`
	}
	err = quantity.ReadJSON([]byte(`{"list":[1]}`), &all)
	for _, err := range []error{err, quantity.DataPaths(&all, err)} {
		if diff := cmp.Diff([]string{"list[0].inner.the_water.name"}, pathsOf(err)); diff != "" {
			t.Error(diff)
		}
	}
}

type picky struct{}

func (*picky) UnmarshalJSON([]byte) error {
	var p quantity.Problems
	p.Required("Water.Name", quantity.Tell("test.want_name", "a name"))
	return quantity.At("Inner", p.ErrFor(recipe{}))
}

// Whatever ReadJSON accepts, encoding/json reads to the same value; whatever it refuses has a code and a short text.
func FuzzReadJSON(f *testing.F) {
	f.Add(`{"note":"hall","flour":[{"percent":"75 %"}],"pieces":3,"any":{"x":null},"pair":[1,2],
	"bulk":{"early":"1h","likely":"2h","late":"3h","probability":"80 %"}}`)
	f.Add(`{"unit":"oz","water":{},"prices":{"a":"1 kg"},"levels":{"7":true},"by_mass":{"5 g":"x"},"rest":"20m",
	"at":"2026-11-28T09:00:00Z","raw":"aGk="}`)
	f.Add(`[{"a":1},null,"\ud800",1e400]`)
	f.Add(`{"flour":null,"pieces":1.5,"pieces":2}`)
	f.Fuzz(func(t *testing.T, text string) {
		var got, want bakeIn
		if err := quantity.ReadJSON([]byte(text), &got); err != nil {
			for _, e := range quantity.InputErrors(err) {
				if e.Code == "" || len(e.Error()) > 2000 {
					t.Errorf("%q: %v", text, e)
				}
			}
			return
		}
		if got.Old != 0 {
			return // encoding/json has no text for a plain duration
		}
		if err := json.Unmarshal([]byte(text), &want); err != nil {
			t.Fatalf("%q: accepted, but %v", text, err)
		}
		if diff := cmp.Diff(want, got, cmp.AllowUnexported(bakeIn{}, base{})); diff != "" {
			t.Errorf("%q: %s", text, diff)
		}
	})
}

func ExampleReadJSON() {
	type flour struct {
		Name    string           `json:"name"`
		Percent quantity.Percent `json:"percent"`
	}
	var in struct {
		Flours []flour `json:"flour"`
	}
	err := quantity.ReadJSON([]byte(`{"flour": [{"name": "wheat", "percent": 75}, {"name": "rye", "percent": "25"}]}`),
		&in)
	for _, e := range quantity.InputErrors(err) {
		fmt.Println(e.Path, e.Code)
	}
	// Output:
	// flour[0].percent wrong_type
	// flour[1].percent unit
}

// Money is a decimal: a number or a text, of a size that can be printed.
func TestReadJSONDecimals(t *testing.T) {
	var in struct {
		Price decimal.Decimal `json:"price"`
	}
	for _, text := range []string{`7`, `"4.20"`, `-0.5`, `"1e3"`} {
		if err := quantity.ReadJSON([]byte(`{"price":`+text+`}`), &in); err != nil ||
			!in.Price.Equal(decimal.RequireFromString(strings.Trim(text, `"`))) {
			t.Error(text, in.Price, err)
		}
	}
	for text, code := range map[string]string{
		`"x"`: "wrong_type", `true`: "wrong_type", `{}`: "wrong_type", `""`: "wrong_type", `null`: "null",
		`"1e500"`: "out_of_range", `1e-500`: "out_of_range",
		`"1e999999"`: "wrong_type", `"` + strings.Repeat("9", 5000) + `"`: "wrong_type",
	} {
		err := quantity.ReadJSON([]byte(`{"price":`+text+`}`), &in)
		found := quantity.InputErrors(err)
		if len(found) != 1 || found[0].Path != "price" || found[0].Code != code || len(err.Error()) > 200 {
			t.Errorf("%.20s: %.300v", text, err)
		}
	}
}

type talkative struct{}

func (*talkative) UnmarshalText([]byte) error { return errors.New(strings.Repeat("ä", 1000)) }

// What another package says of a fault is cut.
func TestReadJSONCutsForeignErrors(t *testing.T) {
	var in struct {
		Of talkative `json:"of"`
	}
	if err := quantity.ReadJSON([]byte(`{"of":"x"}`), &in); err == nil || len(err.Error()) > 300 ||
		!utf8.ValidString(err.Error()) {
		t.Error(err)
	}
}
