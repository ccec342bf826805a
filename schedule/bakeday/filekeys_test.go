package bakeday_test

import (
	"fmt"
	"strings"
	"testing"

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

func ExampleBakeFileKeys() {
	for _, table := range bakeday.BakeFileKeys().Tables {
		for _, k := range table.Keys {
			if table.Name == "levain" && k.Name == "prefermented" {
				fmt.Println(k.Takes, k.Forms, k.Required)
			}
		}
	}
	// Output: text [70 %] false
}
