package bakesheet

import (
	"encoding/json"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/pelletier/go-toml/v2"

	"example.org/maslin/examples/internal/tomlbind"
	"example.org/maslin/schedule/bakeday"
)

// Whatever stands in a bake file in place of what belongs there is a fault at its key, with its line; or it is kept: a
// name is any text, nothing is nothing, and a list may be empty.
func TestDamagedBakeFilesAreRefused(t *testing.T) {
	source, err := os.ReadFile("../../bakes/hall-kitchen.toml")
	if err != nil {
		t.Fatal(err)
	}
	var tree map[string]any
	if err := toml.Unmarshal(source, &tree); err != nil {
		t.Fatal(err)
	}
	n := 0
	each(tree, "", func(path string, at any, put func(any)) {
		for _, bad := range []any{int64(7), 7.5, true, "no such word", "", []any{}, map[string]any{}, map[string]any{"x": "y"},
			strings.Repeat("x", 5000), []any{int64(1), "x"}} {
			_, isText := at.(string)
			_, badText := bad.(string)
			if !isText && fmt.Sprintf("%T", at) == fmt.Sprintf("%T", bad) {
				continue
			}
			put(bad)
			text, err := toml.Marshal(tree)
			if err != nil {
				continue
			}
			n++
			var b bakeday.Bake
			f := tomlbind.Bind(text, &b)
			kept, _ := json.Marshal(b)
			nothing := bad == "" || fmt.Sprint(bad) == "[]" || fmt.Sprint(bad) == "map[]"
			if len(f.Faults) == 0 && !nothing && (!badText || !strings.Contains(string(kept), fmt.Sprint(bad))) {
				t.Errorf("%s = %.20v is read", path, bad)
			}
			for _, fault := range f.Faults {
				if fault.Line < 1 || !strings.HasPrefix(fault.Key, path) && !strings.HasPrefix(path, fault.Key) ||
					len(fault.Message().String()) > 500 {
					t.Errorf("%s = %.20v: %s: %.500v", path, bad, fault.Key, fault.Message())
				}
			}
		}
		put(at)
	})
	if n < 400 {
		t.Error(n)
	}
}

func each(at any, path string, see func(path string, at any, put func(any))) {
	switch at := at.(type) {
	case map[string]any:
		for key, v := range at {
			there := strings.TrimPrefix(path+"."+key, ".")
			see(there, v, func(x any) { at[key] = x })
			each(v, there, see)
		}
	case []any:
		for i, v := range at {
			there := fmt.Sprintf("%s[%d]", path, i)
			see(there, v, func(x any) { at[i] = x })
			each(v, there, see)
		}
	}
}
