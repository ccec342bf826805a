package bakeday

import (
	"context"
	"encoding/json"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/maslin/schedule/wallclock"
)

// schema is a JSON Schema (2020-12) with the keywords that our schemas use.
type schema map[string]any

func readSchema(t *testing.T, text string) schema {
	t.Helper()
	var s schema
	if err := json.Unmarshal([]byte(text), &s); err != nil {
		t.Fatal(err)
	}
	return s
}

// check lists where a value breaks the schema. Names that the schema does not know count as broken
// here, though readers should pass over them.
func (root schema) check(node map[string]any, v any, at string) []string {
	var out []string
	wrong := func(format string, args ...any) { out = append(out, at+": "+fmt.Sprintf(format, args...)) }
	for key, rule := range node {
		switch key {
		case "$schema", "$id", "$defs", "title", "description", "required":
		case "$ref":
			out = append(out, root.check(root.deref(rule.(string)), v, at)...)
		case "type":
			if !isType(rule, v) {
				wrong("%v is not %v", v, rule)
			}
		case "const":
			if v != rule {
				wrong("%v is not %v", v, rule)
			}
		case "enum":
			if !slices.Contains(rule.([]any), v) {
				wrong("%v is none of %v", v, rule)
			}
		case "pattern":
			if s, ok := v.(string); ok && !regexp.MustCompile(rule.(string)).MatchString(s) {
				wrong("%q does not match %s", s, rule)
			}
		case "format":
			if s, ok := v.(string); ok && rule == "date-time" {
				if _, err := time.Parse(time.RFC3339, s); err != nil {
					wrong("%v", err)
				}
			} else if rule != "date-time" {
				wrong("unknown format %v", rule)
			}
		case "minLength":
			if s, ok := v.(string); ok && len([]rune(s)) < int(rule.(float64)) {
				wrong("%q is too short", s)
			}
		case "minimum":
			if n, ok := v.(float64); ok && n < rule.(float64) {
				wrong("%v is below %v", n, rule)
			}
		case "minItems":
			if l, ok := v.([]any); ok && len(l) < int(rule.(float64)) {
				wrong("%d items", len(l))
			}
		case "items":
			l, _ := v.([]any)
			for i, one := range l {
				out = append(out, root.check(rule.(map[string]any), one, fmt.Sprintf("%s[%d]", at, i))...)
			}
		case "properties":
			o, _ := v.(map[string]any)
			for name, one := range o {
				p, ok := rule.(map[string]any)[name].(map[string]any)
				if !ok {
					wrong("%s is not described", name)
					continue
				}
				out = append(out, root.check(p, one, at+"."+name)...)
			}
			for _, name := range node["required"].([]any) {
				if _, ok := o[name.(string)]; !ok {
					wrong("%s is missing", name)
				}
			}
		default:
			wrong("the schema uses %s, which this test does not check", key)
		}
	}
	return out
}

func (root schema) deref(ref string) map[string]any {
	return root["$defs"].(map[string]any)[strings.TrimPrefix(ref, "#/$defs/")].(map[string]any)
}

func isType(rule, v any) bool {
	if l, ok := rule.([]any); ok {
		return slices.ContainsFunc(l, func(one any) bool { return isType(one, v) })
	}
	switch x := v.(type) {
	case nil:
		return rule == "null"
	case bool:
		return rule == "boolean"
	case string:
		return rule == "string"
	case float64:
		return rule == "number" || rule == "integer" && x == float64(int64(x))
	case []any:
		return rule == "array"
	case map[string]any:
		return rule == "object"
	}
	return false
}

// realPlans are plans in all shapes that they come in.
func realPlans(t *testing.T) map[string]string {
	t.Helper()
	hasty := hall()
	hasty.Wanted = OnDate(wallclock.MustMoment("2026-11-26 06:00"))
	late, err := hall().Plan(context.Background(), KitchenClock{Now: time.Date(2026, 11, 28, 5, 0, 0, 0, time.UTC),
		Zone: zurich(t)})
	if err != nil {
		t.Fatal(err)
	}
	cut := plan(t, rolls())
	cut.TimeRanOut = true
	out := map[string]string{}
	for name, d := range map[string]Day{
		"levain and retard": plan(t, hall()), "yeast and proof": plan(t, rolls()), "made beforehand": plan(t, sticks()),
		"a poolish by the clock": plan(t, poolished(0.1)), "missed": late, "cut short": cut, "not possible": plan(t, hasty),
	} {
		content, err := json.MarshalIndent(d.Data(), "", "  ")
		if err != nil {
			t.Fatal(err)
		}
		out[name] = string(content)
	}
	return out
}

// Bakes as they are written fit the schema of bakes.
func TestRealBakesFitTheSchema(t *testing.T) {
	root := readSchema(t, BakeSchema())
	for _, b := range []Bake{hall(), rolls(), sticks(), slow()} {
		content, err := json.Marshal(b)
		if err != nil {
			t.Fatal(err)
		}
		var v map[string]any
		if err := json.Unmarshal(content, &v); err != nil {
			t.Fatal(err)
		}
		for _, wrong := range root.check(root, v, "bake") {
			t.Errorf("%s: %s", b.Name, wrong)
		}
		delete(v, "wanted")
		if len(root.check(root, v, "bake")) != 1 {
			t.Error("a bake that nobody wants passes")
		}
	}
}

func TestRealPlansFitTheSchema(t *testing.T) {
	root := readSchema(t, PlanSchema())
	seen := map[string]bool{}
	for name, plan := range realPlans(t) {
		var v map[string]any
		if err := json.Unmarshal([]byte(plan), &v); err != nil {
			t.Fatal(err)
		}
		for key := range v {
			seen[key] = true
		}
		for _, wrong := range root.check(root, v, "plan") {
			t.Errorf("%s: %s", name, wrong)
		}
	}
	for key := range root["properties"].(map[string]any) {
		if !seen[key] {
			t.Errorf("no plan here has %s", key)
		}
	}
}

func TestTheSchemaRefusesWhatIsWrong(t *testing.T) {
	root := readSchema(t, PlanSchema())
	plan := realPlans(t)["levain and retard"]
	for _, c := range []struct{ old, new string }{
		{`"format": "maslin plan 2"`, `"format": "maslin plan 3"`},
		{`"hydration": "70 %"`, `"hydration": "70"`},
		{`"hydration": "70 %"`, `"hydration": 0.7`},
		{`"hydration": "70 %"`, `"hydratoin": "70 %"`},
		{`"scaling_weight": "896.551724 g"`, `"scaling_weight": "896.551724 lb"`},
		{`"pieces": 6`, `"pieces": -6`},
		{`"pieces": 6`, `"pieces": 6.5`},
		{`"possible": true`, `"possible": "yes"`},
		{`"wanted": "2026-11-28T12:30:00+01:00"`, `"wanted": "Saturday"`},
		{`"dough_temperature": "26 °C"`, `"dough_temperature": "26 Δ°C"`},
		{`"text": "cold retard"`, `"text": null`},
		{`"kind": "retard"`, `"kind": "cold retard"`},
		{`"id": "retard"`, `"id": 7`},
	} {
		broken := strings.Replace(plan, c.old, c.new, 1)
		if broken == plan {
			t.Errorf("the plan does not have %s", c.old)
			continue
		}
		var v any
		if err := json.Unmarshal([]byte(broken), &v); err != nil {
			t.Fatal(err)
		}
		if len(root.check(root, v, "plan")) == 0 {
			t.Errorf("%s passes", c.new)
		}
	}
}

// A baker who writes a file, and an app that makes a form of it, need a word for every key.
func TestEveryKeyOfABakeIsDescribed(t *testing.T) {
	type node struct {
		Description string          `json:"description"`
		Properties  map[string]node `json:"properties"`
		Const       string          `json:"const"`
	}
	var schema struct {
		node
		Defs map[string]node `json:"$defs"`
	}
	if err := json.Unmarshal([]byte(BakeSchema()), &schema); err != nil {
		t.Fatal(err)
	}
	schema.Defs["the bake"] = schema.node
	keys := 0
	for name, def := range schema.Defs {
		for key, p := range def.Properties {
			keys++
			if p.Description == "" && p.Const == "" && key != "format" {
				t.Errorf("%s: nothing says what %s is", name, key)
			}
		}
	}
	if keys < 80 {
		t.Errorf("%d keys: the schema is not read", keys)
	}
}
