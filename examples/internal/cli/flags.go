package cli

import (
	"cmp"
	"encoding"
	"maps"
	"reflect"
	"slices"
	"strings"

	"example.org/maslin/dough"
	"example.org/maslin/dough/cost"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"github.com/shopspring/decimal"
)

// The flags of a command are fields of its input, and tags name them:
//
//	Room quantity.Temperature `flag:"room"`
//	Loaf bake.CoolingLoaf     `flags:"Baked=loaf Style Shape Room"`
//
// A field without a name of its own is a flag of the same name, as in --in-oven; * is every field that the page of help
// has such a flag for. A flag that is named twice fills both fields. What the library says of a field is told of its
// flag; paths:"Stages[0].For=retard" names a flag for a path that is none of its fields. How a text is read follows
// from the type; further tags say more of a few:
//
//	pair:"Name=Mass"      the parts of a struct; the last may be optional: Name=Protein@Share?
//	arg:"FOOD"            what stands behind the command, instead of a flag
//	words:"sifted,spooned"  the words that may be chosen, where they are not all of the enumeration
//	usual:"2h"            what stands when the flag is not given; of several flags that follow, usual:"salt=2%; rise=75%"
//	form:"* yeast"        what a word is part of

// bind makes the flags of an input, and those by which every answer is told.
func (c *call) bind(p helpText, in question) {
	if own, ok := in.(interface {
		flagTexts(System) map[string]flagText
	}); ok {
		maps.Copy(p.flags, own.flagTexts(c.System))
	}
	b := binder{c, p, map[string]*flagValue{}, map[string]string{}}
	b.fields(reflect.ValueOf(in).Elem())
	if _, own := in.(interface{ tellsItself() }); !own {
		b.fields(reflect.ValueOf(&c.output).Elem())
		c.cmd.Flags().Lookup("working").NoOptDefVal = "text"
	}
}

// argumentPath stands for the argument among the paths of faults.
const argumentPath = "argument"

type binder struct {
	c     *call
	help  helpText
	flags map[string]*flagValue
	usual map[string]string // what stands when the flag is not given
}

func (b *binder) fields(v reflect.Value) {
	for i := range v.NumField() {
		f, at := v.Type().Field(i), v.Field(i)
		for _, pair := range strings.Fields(f.Tag.Get("paths")) {
			path, name, _ := strings.Cut(pair, "=")
			b.c.paths[path] = name
		}
		for _, pair := range strings.Split(f.Tag.Get("usual"), "; ") {
			if name, value, ofSeveral := strings.Cut(pair, "="); ofSeveral {
				b.usual[name] = value
			}
		}
		if name, ok := f.Tag.Lookup("arg"); ok {
			b.c.paths[f.Name], b.c.paths[argumentPath] = name, name
			b.c.argument, b.c.choices = reader(at, f.Tag)
		}
		if name, ok := f.Tag.Lookup("flag"); ok {
			b.flag(name, f.Name, at, f.Tag)
			continue
		}
		if f.Anonymous && f.Tag == "" {
			b.fields(at)
		}
		for _, word := range strings.Fields(f.Tag.Get("flags")) {
			if word == "*" {
				b.all(f.Name, at, f.Tag)
				continue
			}
			path, name, named := strings.Cut(word, "=")
			if name == "-" {
				continue // read otherwise
			}
			if !named {
				name = kebab(path[strings.LastIndex(path, ".")+1:])
			}
			inner := at
			for _, part := range strings.Split(path, ".") {
				inner = inner.FieldByName(part)
			}
			b.flag(name, f.Name+"."+path, inner, f.Tag)
		}
	}
}

// all adds the fields that the page of help has a line for and the tag no other name.
func (b *binder) all(path string, v reflect.Value, tag reflect.StructTag) {
	for i := range v.NumField() {
		f := v.Type().Field(i)
		if f.Anonymous {
			b.all(path, v.Field(i), tag)
			continue
		}
		named := strings.Contains(" "+tag.Get("flags"), " "+f.Name+"=")
		if _, ok := b.help.flags[kebab(f.Name)]; ok && !named {
			b.flag(kebab(f.Name), path+"."+f.Name, v.Field(i), tag)
		}
	}
}

// flag adds a flag that fills a field, or a further field to one.
func (b *binder) flag(name, path string, v reflect.Value, tag reflect.StructTag) {
	for p, more := path, true; more; _, p, more = strings.Cut(p, ".") { // by its whole path, and as its own room names it
		if b.c.paths[p] == "" {
			b.c.paths[p] = name
		}
	}
	if usual := cmp.Or(b.usual[name], tag.Get("usual")); usual != "" {
		read, _ := reader(v, tag) // one of its own: what is given for a list is no more of what stands without it
		if err := read(usual); err != nil {
			panic(err) // it is compiled in, and each command is tested to have its flags
		}
	}
	read, words := reader(v, tag)
	if f := b.flags[name]; f != nil {
		f.read = append(f.read, read)
		return
	}
	text := b.help.flags[name] // a test looks for flags without one
	if text.kind == "" {
		text.kind = kinds[v.Type()]
	}
	if len(words) > 0 {
		text.kind, text.says = "WORD", text.says+": "+strings.Join(words, ", ")
	}
	f := &flagValue{c: b.c, name: name, kind: text.kind, read: []func(string) error{read}}
	b.flags[name] = f
	of := b.c.cmd.Flags().VarPF(f, name, "", text.says)
	if v.Kind() == reflect.Bool {
		f.kind, of.NoOptDefVal = "bool", "true"
	}
}

var kinds = map[reflect.Type]string{
	reflect.TypeFor[quantity.Mass](): "MASS", reflect.TypeFor[quantity.Percent](): "PERCENT",
	reflect.TypeFor[quantity.Temperature](): "TEMPERATURE", reflect.TypeFor[quantity.TemperatureDelta](): "DIFFERENCE",
	reflect.TypeFor[quantity.Volume](): "VOLUME", reflect.TypeFor[quantity.Length](): "LENGTH",
	reflect.TypeFor[quantity.Elapsed](): "TIME", reflect.TypeFor[int](): "N", reflect.TypeFor[uint64](): "N",
}

// flagValue reads one flag, noting instead of refusing.
type flagValue struct {
	c                 *call
	name, kind, given string
	read              []func(string) error
}

// longest is how much text a flag takes: a page of weights.
const longest = 4096

func (f *flagValue) Set(text string) error {
	if len(text) > longest {
		f.c.fault(f.name, quantity.Excerpt(text), quantity.Tell("cli.want_at_most_bytes", "at most %d bytes", longest),
			quantity.ErrOutOfRange)
		return nil
	}
	if text == "" && f.kind == "FILE" { // as a variable that is not set gives it: what was to be written would be nowhere
		f.c.fault(f.name, quantity.Excerpt(""), quantity.Tell("cli.want_name_of_file", "the name of a file"),
			quantity.ErrRequired)
	}
	f.given = text
	for _, read := range f.read {
		if err := read(text); err != nil {
			f.c.note(f.name, err)
			break
		}
	}
	return nil
}

func (f *flagValue) String() string { return f.given }
func (f *flagValue) Type() string   { return f.kind }

// parsers read the types of the library that are told in a text of their own.
var parsers = map[reflect.Type]func(string) (any, error){
	reflect.TypeFor[ferment.Yeast]():   func(s string) (any, error) { return ferment.ParseYeast(s) },
	reflect.TypeFor[dough.Feeding]():   func(s string) (any, error) { return dough.ParseFeeding(s) },
	reflect.TypeFor[dough.Stock]():     func(s string) (any, error) { return dough.ParseStock(s) },
	reflect.TypeFor[decimal.Decimal](): func(s string) (any, error) { return cost.ParseMoney(s) },
}

// reader is how a text becomes a value of this type, and the words to choose from where there are some.
func reader(v reflect.Value, tag reflect.StructTag) (read func(string) error, words []string) {
	to, isText := v.Addr().Interface().(encoding.TextUnmarshaler)
	parse, parsed := parsers[v.Type()]
	words = choices(v, tag)
	switch {
	case v.Kind() == reflect.Struct && tag.Get("pair") != "":
		return func(text string) error { return parts(v, text, tag.Get("pair")) }, nil
	case parsed:
		return func(text string) error {
			got, err := parse(text)
			v.Set(reflect.ValueOf(got))
			return err
		}, nil
	case len(words) > 0 && isText:
		return word(to.UnmarshalText, words, tag.Get("form")), words
	case len(words) > 0 && v.Kind() == reflect.String:
		return word(func(text []byte) error { v.SetString(string(text)); return nil }, words, ""), words
	case isText:
		return func(text string) error { return to.UnmarshalText([]byte(text)) }, nil
	case v.Kind() == reflect.Slice:
		return list(v, tag)
	case v.Kind() == reflect.String:
		return func(text string) error { v.SetString(text); return nil }, nil
	}
	return func(text string) error { // a form leaves out what is blank; a flag was given
		return quantity.ReadForm(map[string][]string{"": {cmp.Or(strings.TrimSpace(text), "nothing")}}, v.Addr().Interface())
	}, nil
}

// choices are the words of an enumeration.
func choices(v reflect.Value, tag reflect.StructTag) (out []string) {
	if given := tag.Get("words"); given != "" {
		return strings.Split(given, ",")
	}
	if _, ok := v.Interface().(encoding.TextMarshaler); !ok || !v.CanInt() && !v.CanUint() || v.Kind() == reflect.Int64 {
		return nil
	}
	for i := range int64(127) {
		one := reflect.ValueOf(i).Convert(v.Type())
		text, err := one.Interface().(encoding.TextMarshaler).MarshalText()
		if err != nil {
			break
		}
		if len(text) > 0 {
			out = append(out, string(text))
		}
	}
	return out
}

// word reads one of a few words, alone or in its form, in any case and with a hyphen for a space.
func word(set func(text []byte) error, words []string, form string) func(string) error {
	folded := func(w string) string { return strings.ReplaceAll(strings.ToLower(w), "-", " ") }
	return func(text string) error {
		i := slices.IndexFunc(words, func(w string) bool {
			return folded(w) == folded(text) || folded(strings.Replace(form, "*", w, 1)) == folded(text)
		})
		if i < 0 {
			return &quantity.InputError{Got: quantity.Excerpt(text), Want: either(words), Err: quantity.ErrOutOfRange}
		}
		if text = words[i]; form != "" {
			text = strings.Replace(form, "*", text, 1)
		}
		return set([]byte(text))
	}
}

// list reads several values: in one text apart by commas (or by ";" where the numbers have decimal commas), and each
// time that the flag is given. The first time replaces what stands without the flag.
func list(v reflect.Value, tag reflect.StructTag) (func(string) error, []string) {
	one := reflect.New(v.Type().Elem()).Elem()
	read, words := reader(one, tag)
	usual := true
	add := func(text string) error {
		one.SetZero()
		if err := read(text); err != nil {
			return err
		}
		if usual {
			v.SetZero()
			usual = false
		}
		v.Set(reflect.Append(v, one))
		return nil
	}
	return func(text string) error {
		err := add(text)
		if err == nil || one.Kind() == reflect.Struct && tag.Get("pair") != "" || len(words) > 0 {
			return err
		}
		at := ","
		if strings.Contains(text, ";") {
			at = ";"
		}
		for _, part := range strings.Split(text, at) {
			if err := add(strings.TrimSpace(part)); err != nil {
				return err
			}
		}
		return nil
	}, words
}

// pairs say what texts of several parts look like.
var pairs = map[string]quantity.Phrase{
	"Name=Of": quantity.Tell("cli.want_name_and_usable_part_what",
		`a name and the usable part of what is bought, such as "walnuts=95 %%"`),
	"Name=Pays/Pack": quantity.Tell("cli.want_name_what_pack_costs_and",
		`a name, what a pack costs and what it weighs, such as "wheat=20/25kg"`),
	"Name=Protein@Share?": quantity.Tell("cli.want_flour_and_protein_bread_flour",
		`a flour and its protein, such as "bread flour=13.2%%", and its share now after an @`),
	"Name=Mass": quantity.Tell("cli.want_name_and_weight_water_2", `a name and a weight, such as "water=2 kg"`),
	"For=At":    quantity.Tell("cli.want_how_long_and_how_warm", `how long and how warm, such as "2d=21C"`),
	"Dough=Baked": quantity.Tell("cli.want_dough_and_cool_loaf_897g",
		`the dough and the cool loaf, such as "897g=781g"`),
	"Name=Temperature": quantity.Tell("cli.want_name_and_temperature_soaker_30c",
		`a name and a temperature, such as "soaker=30C"`),
	"Name=Log": quantity.Tell("cli.want_name_and_log", `a name and a log, such as "Vreni=vreni.jsonl"`),
}

// parts reads "flour=12%@60%" into the fields of a struct, by a pattern such as Name=Protein@Share?
func parts(v reflect.Value, text, pattern string) error {
	refused := &quantity.InputError{Got: quantity.Excerpt(text), Want: pairs[pattern], Err: quantity.ErrUnit}
	for rest := text; pattern != ""; {
		end := strings.IndexAny(pattern, "=@/")
		name, after, part := pattern, "", rest
		if end >= 0 {
			optional := strings.HasSuffix(pattern, "?") && !strings.ContainsAny(pattern[end+1:], "=@/")
			name, after = pattern[:end], pattern[end+1:]
			var found bool
			if part, rest, found = strings.Cut(rest, pattern[end:end+1]); !found && !optional {
				return refused
			} else if !found {
				after = ""
			}
		}
		if part = strings.TrimSpace(part); part == "" {
			return refused
		}
		if strings.Trim(part, "abcdefghijklmnopqrstuvwxyz") == "" && name == "Pack" {
			part = "1 " + part // a unit alone is one of it: 0.90/kg
		}
		read, _ := reader(v.FieldByName(strings.TrimSuffix(name, "?")), "")
		if err := read(part); err != nil {
			return err
		}
		pattern = after
	}
	return nil
}

// kebab is a name of a flag: InOven becomes in-oven.
func kebab(name string) string {
	var b strings.Builder
	for i, r := range name {
		if r >= 'A' && r <= 'Z' {
			if i > 0 {
				b.WriteByte('-')
			}
			r += 'a' - 'A'
		}
		b.WriteRune(r)
	}
	return b.String()
}
