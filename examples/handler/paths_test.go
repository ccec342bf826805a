package main

import (
	"encoding/json"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/bakeday"
)

var amount = regexp.MustCompile(`^(-?[0-9.]+)( .*)$`)

// Whatever is too much or too little in a bake, the answer names fields that the bake has.
func TestEveryProblemIsAtAFieldOfTheBake(t *testing.T) {
	files := []string{"supper-loaves.toml", "hall-kitchen.toml", "same-day-rolls.toml"}
	if testing.Short() {
		files = files[:1]
	}
	for _, name := range files {
		_, text := shipped(t, name)
		var tree map[string]any
		if err := json.Unmarshal(text, &tree); err != nil {
			t.Fatal(err)
		}
		refused := 0
		amounts(tree, "", func(path, at string, put func(string)) {
			parts := amount.FindStringSubmatch(at)
			for _, factor := range []string{"0.01", "3", "40", "-1"} {
				n := json.Number(parts[1])
				x, _ := n.Float64()
				f, _ := json.Number(factor).Float64()
				put(fmt.Sprintf("%.4g%s", x*f, parts[2]))
				body, _ := json.Marshal(tree)
				w := post(string(body))
				if w.Code == 200 {
					continue
				}
				refused++
				var all []*struct{ Path, Code, Message string }
				if err := json.Unmarshal(w.Body.Bytes(), &all); err != nil || len(all) == 0 {
					t.Errorf("%s, %s × %s: %d %s", name, path, factor, w.Code, w.Body)
				}
				for _, p := range all {
					if !isField(p.Path) {
						t.Errorf("%s, %s × %s: %s: %s", name, path, factor, p.Path, p.Message)
					}
				}
			}
			put(at)
		})
		if refused < 50 {
			t.Errorf("%s: only %d bakes were refused", name, refused)
		}
	}
}

// amounts goes through the numbers with a unit.
func amounts(at any, path string, see func(path, at string, put func(string))) {
	switch at := at.(type) {
	case map[string]any:
		for key, v := range at {
			there := strings.TrimPrefix(path+"."+key, ".")
			if text, ok := v.(string); ok && amount.MatchString(text) {
				see(there, text, func(x string) { at[key] = x })
			}
			amounts(v, there, see)
		}
	case []any:
		for i, v := range at {
			amounts(v, fmt.Sprintf("%s[%d]", path, i), see)
		}
	}
}

// isField reports whether a bake has a field of that path.
func isField(path string) bool {
	if path == "" {
		return false
	}
	var b bakeday.Bake
	for _, e := range quantity.InputErrors(quantity.ReadForm(map[string][]string{zeroed.ReplaceAllString(path, "[0]"): {"x"}}, &b)) {
		if e.Code == "unknown_key" {
			return false
		}
	}
	return true
}

var zeroed = regexp.MustCompile(`\[\d+\]`)
