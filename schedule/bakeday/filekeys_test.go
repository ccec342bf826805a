package bakeday_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"path"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/bakeday"
)

// Every key that the form of a bake file has is listed once, with what it takes.
func TestFileKeysAreThoseOfTheSchema(t *testing.T) {
	listed := map[string]bool{}
	for _, table := range bakeday.BakeFileKeys().Tables {
		for _, k := range table.Keys {
			path := table.Name + "." + k.Name
			if listed[path] || k.Takes == "" || k.Takes == "word" && len(k.Forms) == 0 {
				t.Errorf("%s: %+v", path, k)
			}
			listed[path] = true
		}
	}
	for _, path := range []string{".wanted", "kitchen.altitude", "flour.percent", "kitchen.mixer.bowl"} {
		if !listed[path] {
			t.Errorf("%s is not listed", path)
		}
	}
	if n := strings.Count(bakeday.BakeSchema(), `"description"`); len(listed) < n/2 {
		t.Errorf("%d keys of a schema with %d descriptions", len(listed), n)
	}
}

// What a key is shown to look like can stand there: all of them together are read, and none lies outside its bounds.
func TestFileKeysShowWhatTheyTake(t *testing.T) {
	tables := map[string]map[string]any{}
	for _, table := range bakeday.BakeFileKeys().Tables {
		into := map[string]any{}
		tables[table.Name] = into
		for _, k := range table.Keys {
			var value any = k.Takes
			switch {
			case k.Takes == "number":
				value = 1
			case k.Takes == "switch":
				value = true
			case len(k.Forms) > 0:
				value = k.Forms[0]
			default:
				t.Errorf("%s.%s looks like nothing", table.Name, k.Name)
			}
			if k.Many {
				list := []any{}
				for _, form := range k.Forms {
					list = append(list, form)
				}
				value = list
			}
			into[k.Name] = value
		}
		if above, own := path.Split(strings.ReplaceAll(table.Name, ".", "/")); own != "" {
			var inner any = into
			if table.Many {
				inner = []any{into}
			}
			tables[strings.ReplaceAll(strings.TrimSuffix(above, "/"), "/", ".")][own] = inner
		}
	}
	text, err := json.Marshal(tables[""])
	if err != nil {
		t.Fatal(err)
	}
	var b bakeday.Bake
	if err := quantity.ReadJSON(text, &b); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	zurich := time.FixedZone("Europe/Zurich", 3600)
	clock := bakeday.KitchenClock{Now: time.Date(2026, 11, 25, 19, 0, 0, 0, time.UTC), Zone: zurich}
	for _, e := range quantity.InputErrors(b.Check(clock)) {
		if errors.Is(e, quantity.ErrOutOfRange) || errors.Is(e, quantity.ErrUnit) {
			t.Errorf("%v", e)
		}
	}
}

func ExampleBakeFileKeys() {
	for _, table := range bakeday.BakeFileKeys().Tables {
		for _, k := range table.Keys {
			if table.Name == "levain" && k.Name == "prefermented" {
				fmt.Println(k.Takes, k.Forms, k.Required)
			}
		}
	}
	// Output: text [15 %] false
}
