package quantity_test

import (
	"database/sql"
	"database/sql/driver"
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// A way of mixing would be 3 without it, and a kitchen's answer could not be stored at all.
func ExampleStored() {
	unit := quantity.Kilogram
	warm := quantity.Range[quantity.Temperature]{Low: quantity.Celsius(24), High: quantity.Celsius(26)}
	for _, of := range []any{&unit, &warm} {
		kept, err := quantity.Stored(of).Value()
		fmt.Println(kept, err)
	}
	fmt.Println(quantity.Stored(&unit).Scan("oz"), unit)
	fmt.Println(quantity.Stored(&unit).Scan(int64(3)))
	// Output:
	// kg <nil>
	// {"low":"24 °C","high":"26 °C"} <nil>
	// <nil> oz
	// wrong form: got a column of type int64, want a text
}

func TestStoredComeBack(t *testing.T) {
	type pair struct {
		Name  string            `json:"name"`
		Parts []quantity.Mass   `json:"parts"`
		Takes quantity.Elapsed  `json:"takes"`
		Unit  quantity.MassUnit `json:"unit"`
	}
	rapid.Check(t, func(t *rapid.T) {
		in := pair{Name: rapid.String().Draw(t, "name"), Takes: quantity.Elapsed(rapid.Int64().Draw(t, "takes")),
			Unit: rapid.SampledFrom(quantity.Values[quantity.MassUnit]()).Draw(t, "unit")}
		for range rapid.IntRange(0, 3).Draw(t, "parts") {
			in.Parts = append(in.Parts, quantity.Micrograms(rapid.Int64Range(-1e15, 1e15).Draw(t, "µg")))
		}
		var out pair
		var unit quantity.MassUnit
		for _, c := range [][2]any{{in, &out}, {in.Unit, &unit}} {
			kept, err := quantity.Stored(c[0]).Value()
			if err != nil || !driver.IsValue(kept) {
				t.Fatal(kept, err)
			}
			if err := quantity.Stored(c[1]).Scan([]byte(kept.(string))); err != nil {
				t.Fatal(err)
			}
		}
		if diff := cmp.Diff(in, out); diff != "" || unit != in.Unit {
			t.Fatal(diff, unit)
		}
		kept, err := in.Takes.Value()
		var takes quantity.Elapsed
		if err != nil || takes.Scan(kept) != nil || takes != in.Takes {
			t.Fatal(kept, err, takes)
		}
	})
}

// What is not given is NULL, and NULL is read back where nothing may be given.
func TestStoredThatAreNull(t *testing.T) {
	var none *quantity.MassUnit
	var temperature quantity.Temperature
	var list []quantity.Mass
	for _, of := range []any{none, nil, temperature, &temperature, list, &list} {
		if kept, err := quantity.Stored(of).Value(); kept != nil || err != nil {
			t.Errorf("%T: %v, %v", of, kept, err)
		}
	}
	temperature, list = quantity.Celsius(20), []quantity.Mass{quantity.Grams(1)}
	for _, of := range []any{&temperature, &list} {
		if err := quantity.Stored(of).Scan(nil); err != nil {
			t.Errorf("%T: %v", of, err)
		}
	}
	if !temperature.IsZero() || list != nil {
		t.Error(temperature, list)
	}
}

// A sentence says more in its JSON than in its text.
type sentence struct{ id, text string }

func (s sentence) MarshalText() ([]byte, error) { return []byte(s.text), nil }

func (s sentence) MarshalJSON() ([]byte, error) {
	return []byte(fmt.Sprintf(`{"id":%q,"text":%q}`, s.id, s.text)), nil
}

func (s *sentence) UnmarshalText(text []byte) error {
	s.text = string(text)
	return nil
}

func (s *sentence) UnmarshalJSON(text []byte) error {
	var in struct {
		ID   string `json:"id"`
		Text string `json:"text"`
	}
	err := quantity.ReadJSON(text, &in)
	s.id, s.text = in.ID, in.Text
	return err
}

func TestStoredAsJSONWhereThatSaysMore(t *testing.T) {
	in, out := sentence{"a", "b"}, sentence{}
	kept, err := quantity.Stored(in).Value()
	if err != nil || kept != `{"id":"a","text":"b"}` {
		t.Fatal(kept, err)
	}
	if err := quantity.Stored(&out).Scan(kept); err != nil || out != in {
		t.Error(out, err)
	}
	if err := quantity.Stored(&out).Scan("b"); !errors.Is(err, quantity.ErrForm) {
		t.Error(err)
	}
	if err := quantity.Stored(&out).Scan(nil); !errors.Is(err, quantity.ErrRequired) {
		t.Error(err)
	}
}

func TestStoredRefuse(t *testing.T) {
	unit, takes := quantity.Kilogram, quantity.Elapsed(time.Hour)
	span := quantity.Range[quantity.Mass]{Low: quantity.Grams(1)}
	of := func(v any) sql.Scanner { return quantity.Stored(v) }
	for _, c := range []struct {
		into   sql.Scanner
		from   any
		code   string
		path   string
		reason error
	}{
		{of(&unit), nil, "required", "", quantity.ErrRequired},
		{of(&unit), "", "required", "", quantity.ErrRequired},
		{of(&unit), "stone", "unknown_word", "", quantity.ErrUnit},
		{of(&unit), int64(1), "wrong_type", "", quantity.ErrForm},
		{of(&unit), 1.5, "wrong_type", "", quantity.ErrForm},
		{of(&unit), true, "wrong_type", "", quantity.ErrForm},
		{of(&unit), time.Now(), "wrong_type", "", quantity.ErrForm},
		{of(&unit), strings.Repeat("x", 10<<20), "unknown_word", "", quantity.ErrUnit},
		{of(&span), nil, "null", "", quantity.ErrRequired},
		{of(&span), "", "not_json", "", quantity.ErrForm},
		{of(&span), `{"low": "3"}`, "unit", "low", quantity.ErrUnit},
		{of(&span), []byte(`{"low": 3}`), "wrong_type", "low", quantity.ErrForm},
		{of(&span), strings.Repeat("[", 100_000), "too_deep", "", quantity.ErrOutOfRange},
		{of(&span), int64(1), "wrong_type", "", quantity.ErrForm},
		{of(unit), "kg", "wrong_type", "", quantity.ErrForm},
		{of((*quantity.MassUnit)(nil)), "kg", "wrong_type", "", quantity.ErrForm},
		{of(nil), "kg", "wrong_type", "", quantity.ErrForm},
		{&takes, nil, "required", "", quantity.ErrRequired},
		{&takes, "", "required", "", quantity.ErrRequired},
		{&takes, int64(12), "unit", "", quantity.ErrUnit},
		{&takes, []byte("12"), "unit", "", quantity.ErrUnit},
	} {
		err := c.into.Scan(c.from)
		found := quantity.InputErrors(err)
		if len(found) != 1 || found[0].Code != c.code || found[0].Path != c.path || !errors.Is(err, c.reason) ||
			found[0].Want.IsZero() {
			t.Errorf("%T from %.40v: %v", c.into, c.from, err)
		}
	}
	if unit != quantity.Kilogram || takes != quantity.Elapsed(time.Hour) {
		t.Error(unit, takes)
	}
	if kept, err := quantity.Stored(quantity.MassUnit(99)).Value(); err == nil {
		t.Error(kept)
	}
}
