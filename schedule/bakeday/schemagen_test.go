package bakeday

import (
	"encoding"
	"encoding/json"
	"flag"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule/wallclock"
)

var update = flag.Bool("update", false, "write the schemas anew from the types and their comments")

// drawer makes a JSON Schema of Go types; the descriptions are the comments of the fields.
type drawer struct {
	comments map[string]string // by "Type.Field" and "Type"
	defs     map[string]any
	required func(t reflect.Type, tag, options string) bool
	input    bool // quantities may come in any unit
}

// texts are the types with a text form of their own.
func texts() map[reflect.Type][2]string {
	const number = `^-?[0-9]+(\.[0-9]+)? `
	return map[reflect.Type][2]string{
		reflect.TypeFor[quantity.Mass](): {
			`A weight in grams with its unit, exact to the microgram: "625.5 g".`,
			number + `g$`,
		},
		reflect.TypeFor[quantity.Percent]():     {`A percentage with its sign: "70 %".`, number + `%$`},
		reflect.TypeFor[quantity.Temperature](): {`A temperature, exact: "24.5 °C".`, number + `°[CF]$`},
		reflect.TypeFor[quantity.TemperatureDelta](): {
			`A difference of temperatures, exact: "5 Δ°C".`,
			number + `Δ°[CF]$`,
		},
		reflect.TypeFor[quantity.Length](): {`A length in meters: "1150 m".`, number + `m$`},
		reflect.TypeFor[quantity.Volume](): {`A volume in liters: "7 L".`, number + `L$`},
		reflect.TypeFor[quantity.Elapsed](): {
			`Elapsed time: "4h30m", "45m", "50h05m".`,
			`^-?([0-9]+h)?([0-9]+m)?([0-9]+s)?$`,
		},
		reflect.TypeFor[wallclock.Clock](): {`A time of day: "15:00".`, `^[0-9]{2}:[0-9]{2}$`},
		reflect.TypeFor[wallclock.Habit](): {
			`A stretch of every day or of some days of the week: "22:30 to 06:30", "09:00 to 15:00 on Friday".`,
			``,
		},
		reflect.TypeFor[Wish](): {
			`A day of the week or a date, with a time of day: "Saturday 12:30", "2026-11-28 12:30".`,
			``,
		},
	}
}

func (d *drawer) schema(t reflect.Type) map[string]any {
	ref := func(def map[string]any) map[string]any {
		name := snake(t.Name())
		d.defs[name] = def
		return map[string]any{"$ref": "#/$defs/" + name}
	}
	if text, ok := texts()[t]; ok {
		def := map[string]any{"type": "string", "description": text[0]}
		if text[1] != "" && !d.input {
			def["pattern"] = text[1]
		}
		return ref(def)
	}
	switch {
	case t == reflect.TypeFor[working.Message]():
		text := map[string]any{"type": "string"}
		return ref(map[string]any{
			"type": "object",
			"description": "A sentence or name for people: English text, and its identifier and values for telling it in " +
				"another language or other units.",
			"properties": map[string]any{
				"id":   text,
				"text": text,
				"say":  text,
				"args": map[string]any{"type": "array"},
			}, "required": []string{"text"},
		})
	case t == reflect.TypeFor[quantity.TimeRange]():
		at := d.schema(reflect.TypeFor[quantity.Elapsed]())
		return ref(map[string]any{
			"type": "object", "description": "A prediction: early to late with the probability, likely in the middle.",
			"properties": map[string]any{
				"early": at, "likely": at, "late": at, "probability": d.schema(reflect.TypeFor[quantity.Percent]()),
			}, "required": []string{"early", "late", "likely", "probability"},
		})
	case t == reflect.TypeFor[quantity.Range[quantity.Percent]]():
		share := d.schema(reflect.TypeFor[quantity.Percent]())
		d.defs["range"] = map[string]any{
			"type": "object",
			"description": "A percentage with its band: low to high with the probability, where one is claimed; likely is 0 " +
				"% where it is missing.",
			"properties": map[string]any{"low": share, "likely": share, "high": share, "probability": share},
			"required":   []string{"high", "low"},
		}
		return map[string]any{"$ref": "#/$defs/range"}
	case t == reflect.TypeFor[time.Time]():
		d.defs["instant"] = map[string]any{
			"type":        "string",
			"format":      "date-time",
			"description": "An instant with the offset of the kitchen's zone: \"2026-11-28T12:30:00+01:00\".",
		}
		return map[string]any{"$ref": "#/$defs/instant"}
	case reflect.PointerTo(t).Implements(reflect.TypeFor[encoding.TextUnmarshaler]()):
		name := snake(t.Name())
		if room := filepath.Base(t.PkgPath()); room != "bakeday" {
			name = room + "_" + name
		}
		d.defs[name] = map[string]any{"type": "string", "enum": words(t)}
		return map[string]any{"$ref": "#/$defs/" + name}
	}
	switch t.Kind() {
	case reflect.Pointer:
		return d.schema(t.Elem())
	case reflect.Slice:
		return map[string]any{"type": "array", "items": d.schema(t.Elem())}
	case reflect.String:
		return map[string]any{"type": "string"}
	case reflect.Bool:
		return map[string]any{"type": "boolean"}
	case reflect.Int:
		return map[string]any{"type": "integer", "minimum": 0}
	case reflect.Float64:
		return map[string]any{"type": "number"}
	case reflect.Struct:
		name := snake(t.Name())
		if _, ok := d.defs[name]; !ok {
			d.defs[name] = nil // a struct may hold itself
			return ref(d.object(t))
		}
		return map[string]any{"$ref": "#/$defs/" + name}
	}
	panic("no schema for " + t.String())
}

func (d *drawer) object(t reflect.Type) map[string]any {
	properties, required := map[string]any{}, []string{}
	for i := range t.NumField() {
		f := t.Field(i)
		tag, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		if tag == "-" {
			continue
		}
		p := d.schema(f.Type)
		if c := d.comments[t.Name()+"."+f.Name]; c != "" {
			p["description"] = c
		}
		properties[tag] = p
		if d.required(t, tag, options) {
			required = append(required, tag)
		}
	}
	slices.Sort(required)
	return map[string]any{
		"type":        "object",
		"properties":  properties,
		"required":    required,
		"description": d.comments[t.Name()],
	}
}

// words lists the texts that an enumeration reads, other than the empty one.
func words(t reflect.Type) []string {
	out := []string{}
	for i := range int64(255) {
		v := reflect.New(t)
		if v.Elem().CanInt() {
			v.Elem().SetInt(i)
		} else {
			v.Elem().SetUint(uint64(i))
		}
		text, err := v.Interface().(encoding.TextMarshaler).MarshalText()
		if err == nil && len(text) > 0 && v.Interface().(encoding.TextUnmarshaler).UnmarshalText(text) == nil {
			out = append(out, string(text))
		}
	}
	return out
}

func snake(name string) string {
	var b strings.Builder
	for i, r := range strings.TrimSuffix(name, "Data") {
		if unicode.IsUpper(r) && i > 0 {
			b.WriteByte('_')
		}
		b.WriteRune(unicode.ToLower(r))
	}
	return b.String()
}

// readComments collects what the source says about types and fields.
func readComments(t *testing.T, dirs ...string) map[string]string {
	t.Helper()
	out := map[string]string{}
	text := func(groups ...*ast.CommentGroup) string {
		var all []string
		for _, g := range groups {
			if g != nil {
				all = append(all, strings.Join(strings.Fields(g.Text()), " "))
			}
		}
		return strings.Join(all, " ")
	}
	for _, dir := range dirs {
		files, err := filepath.Glob(filepath.Join(dir, "*.go"))
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range files {
			f, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ParseComments)
			if err != nil {
				t.Fatal(err)
			}
			ast.Inspect(f, func(n ast.Node) bool {
				g, ok := n.(*ast.GenDecl)
				if !ok || g.Tok != token.TYPE {
					return true
				}
				for _, s := range g.Specs {
					spec := s.(*ast.TypeSpec)
					out[spec.Name.Name] = text(g.Doc, spec.Doc)
					fields, ok := spec.Type.(*ast.StructType)
					if !ok {
						continue
					}
					for _, f := range fields.Fields.List {
						for _, n := range f.Names {
							out[spec.Name.Name+"."+n.Name] = text(f.Doc, f.Comment)
						}
					}
				}
				return true
			})
		}
	}
	return out
}

func schemaText(
	t *testing.T,
	input bool,
	of reflect.Type,
	format, title, id string,
	required func(reflect.Type, string, string) bool,
) string {
	t.Helper()
	d := &drawer{comments: readComments(t, "."), defs: map[string]any{}, required: required, input: input}
	root := d.object(of)
	root["properties"].(map[string]any)["format"] = map[string]any{"const": format}
	root["$schema"], root["$id"], root["title"] = "https://json-schema.org/draft/2020-12/schema",
		"https://example.org/maslin/"+id, title
	root["$defs"] = d.defs
	content, err := json.MarshalIndent(root, "", "  ")
	if err != nil {
		t.Fatal(err)
	}
	return string(content) + "\n"
}

// always are the fields that a bake cannot do without.
func always() []string {
	return []string{
		"Bake.wanted",
		"Kitchen.zone",
		"Bake.flour",
		"Bake.liquid",
		"Bake.mixing",
		"Bake.bulk",
		"Bake.kitchen",
		"Ingredient.name",
		"Levain.hydration",
		"PrefermentWork.name",
		"PrefermentWork.hydration",
		"SoakerWork.name",
		"SoakerWork.part",
		"SoakerWork.at_least",
		"SoakerWork.at_most",
		"SoakerPart.name",
		"Mixing.temperature",
		"KitchenMixer.kind",
		"BulkWork.rise",
		"Retard.at_least",
		"Retard.at_most",
		"Kitchen.day",
		"Kitchen.tap",
	}
}

// TestSchemasAreThoseOfTheTypes compares the schemas with what the types and their comments say.
func TestSchemasAreThoseOfTheTypes(t *testing.T) {
	for _, c := range []struct{ file, got, want string }{
		{"plan.schema.json", PlanSchema(), schemaText(t, false, reflect.TypeFor[PlanData](), PlanFormat, "A planned bake",
			"plan.schema.json",
			func(_ reflect.Type, _, options string) bool {
				return !strings.Contains(options, "omitempty") && !strings.Contains(options, "omitzero")
			})},
		{"kitchenday.schema.json", KitchenDaySchema(), schemaText(t, false, reflect.TypeFor[KitchenDayData](),
			KitchenDayFormat,
			"A planned day of several breads", "kitchenday.schema.json",
			func(_ reflect.Type, _, options string) bool {
				return !strings.Contains(options, "omitempty") && !strings.Contains(options, "omitzero")
			})},
		{"bake.schema.json", BakeSchema(), schemaText(t, true, reflect.TypeFor[Bake](), BakeFormat, "A bake to plan",
			"bake.schema.json",
			func(t reflect.Type, tag, _ string) bool { return slices.Contains(always(), t.Name()+"."+tag) })},
	} {
		if *update {
			if err := os.WriteFile(c.file, []byte(c.want), 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		if c.got != c.want {
			t.Errorf("%s is not what the types say; write it anew: go test ./schedule/bakeday -run Schemas -update",
				c.file)
		}
	}
}

// A schema describes itself in words that are no code and names no Go identifier.
func TestSchemasAreReadable(t *testing.T) {
	for _, s := range []string{PlanSchema(), BakeSchema(), KitchenDaySchema()} {
		if m := regexp.MustCompile(`"description": "[^"]*(\bnil\b|quantity\.|time\.)[^"]*"`).FindString(s); m != "" {
			t.Error(m)
		}
	}
}
