package cli

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/maslin/schedule/bakeday"
)

// schema is a JSON Schema (2020-12) with the keywords that plan.schema.json uses.
type schema map[string]any

func readSchema(t *testing.T) schema {
	t.Helper()
	content, err := os.ReadFile("../../plan.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	var s schema
	if err := json.Unmarshal(content, &s); err != nil {
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

// planJSON runs maslin plan --json.
func planJSON(t *testing.T, status int, args ...string) []byte {
	t.Helper()
	var out, complaint bytes.Buffer
	s := System{In: strings.NewReader(""), Out: &out, Err: &complaint, Getenv: func(string) string { return "" }, Now: func() time.Time { return time.Date(2026, 11, 25, 20, 0, 0, 0, time.UTC) }}
	if got := Run(append([]string{"plan", "--json"}, args...), s); got != status {
		t.Fatalf("%v: status %d: %s", args, got, complaint.String())
	}
	return out.Bytes()
}

// realPlans are plans of the shipped bakes in all shapes that they come in.
func realPlans(t *testing.T) map[string][]byte {
	t.Helper()
	const hall, rolls = "../../bakes/hall-kitchen.toml", "../../bakes/same-day-rolls.toml"
	content, err := os.ReadFile(hall)
	if err != nil {
		t.Fatal(err)
	}
	hasty := filepath.Join(t.TempDir(), "hasty.toml")
	if err := os.WriteFile(hasty, bytes.Replace(content, []byte(`"Saturday 12:30"`), []byte(`"2026-11-26 06:00"`), 1), 0o600); err != nil {
		t.Fatal(err)
	}
	return map[string][]byte{
		"levain and retard": planJSON(t, 0, hall),
		"yeast and proof":   planJSON(t, 0, rolls),
		"missed":            planJSON(t, 0, hall, "--now", "2026-11-27 20:00"),
		"not possible":      planJSON(t, 1, hasty),
	}
}

func TestRealPlansFitTheSchema(t *testing.T) {
	root := readSchema(t)
	seen := map[string]bool{}
	for name, plan := range realPlans(t) {
		var v map[string]any
		if err := json.Unmarshal(plan, &v); err != nil {
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
	root := readSchema(t)
	plan := string(realPlans(t)["levain and retard"])
	for _, c := range []struct{ old, new string }{
		{`"format": "maslin plan 1"`, `"format": "maslin plan 2"`},
		{`"hydration": "70 %"`, `"hydration": "70"`},
		{`"hydration": "70 %"`, `"hydration": 0.7`},
		{`"hydration": "70 %"`, `"hydratoin": "70 %"`},
		{`"scaling_weight": "896.551724 g"`, `"scaling_weight": "896.551724 lb"`},
		{`"pieces": 6`, `"pieces": 0`},
		{`"pieces": 6`, `"pieces": 6.5`},
		{`"possible": true`, `"possible": "yes"`},
		{`"wanted": "2026-11-28T12:30:00+01:00"`, `"wanted": "Saturday"`},
		{`"dough_temperature": "26 °C"`, `"dough_temperature": "26 Δ°C"`},
		{`"verdict": "too much"`, `"verdict": "much too much"`},
		{`"name": "cold retard"`, `"name": null`},
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

// TestEveryFieldIsDescribed compares the schema with the Go types, field by field.
func TestEveryFieldIsDescribed(t *testing.T) {
	root := readSchema(t)
	var compare func(typ reflect.Type, node map[string]any, at string)
	compare = func(typ reflect.Type, node map[string]any, at string) {
		if ref, ok := node["$ref"].(string); ok {
			node = root.deref(ref)
		}
		switch typ.Kind() {
		case reflect.Pointer:
			compare(typ.Elem(), node, at)
			return
		case reflect.Slice:
			compare(typ.Elem(), node["items"].(map[string]any), at+"[]")
			return
		case reflect.Struct:
		default:
			return
		}
		properties, ok := node["properties"].(map[string]any)
		if !ok {
			return // a text form
		}
		known := map[string]bool{}
		for i := range typ.NumField() {
			tag, options, _ := strings.Cut(typ.Field(i).Tag.Get("json"), ",")
			known[tag] = true
			p, ok := properties[tag].(map[string]any)
			if !ok {
				t.Errorf("%s.%s is not in the schema", at, tag)
				continue
			}
			required := slices.Contains(node["required"].([]any), any(tag))
			if required == strings.Contains(options, "omitempty") {
				t.Errorf("%s.%s: required is %v in the schema", at, tag, required)
			}
			compare(typ.Field(i).Type, p, at+"."+tag)
		}
		for name := range properties {
			if !known[name] {
				t.Errorf("%s.%s is in the schema only", at, name)
			}
		}
	}
	compare(reflect.TypeFor[bakeday.Sheet](), root, "plan")
}
