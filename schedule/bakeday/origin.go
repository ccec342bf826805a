package bakeday

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
)

// Inputs of the rooms are filled from fields of a bake. Where a field has another name there, its tag says which it
// fills: fills:"oven:Dough rise:Stages[0].Mass" is the piece of an oven load and of the last stage of the rise. So what
// a room says of its input is told at the field that the baker wrote, and nothing else has to know both names.
const (
	ofFormula = "formula" // dough.Formula and its target; in levain and preferments, dough.Preferment
	ofOven    = "oven"    // bake.OvenLoad
	ofRise    = "rise"    // ferment.Bulk and ferment.Proof
)

// from moves what a room says of its input to the fields of the bake.
func (b *Bake) from(room string, err error) error {
	var p quantity.Problems
	for _, e := range quantity.InputErrors(err) {
		p.Join("", moved(e, b.origin(room, e.GoPath)))
	}
	if p.Err() == nil {
		return err
	}
	return p.Err()
}

// origin is the field of the bake that fills a path of a room's input.
func (b *Bake) origin(room, path string) string {
	if room == ofRise {
		path = strings.TrimPrefix(path, "Bulk.") // of a proof
	}
	if rest, ok := strings.CutPrefix(path, "Preferments"); ok && room == ofFormula {
		return b.originInPreferment(rest)
	}
	own, ok := filler(reflect.TypeFor[Bake](), room, path)
	switch {
	case ok:
		return own
	case room == ofOven:
		return "Oven." + path
	}
	return path
}

// originInPreferment is the same for a path within the preferments of the formula, of which the levain is the first
// where there is one.
func (b *Bake) originInPreferment(path string) string {
	number, field, closed := strings.Cut(strings.TrimPrefix(path, "["), "]")
	i, err := strconv.Atoi(number)
	switch {
	case path == "" && len(b.Preferments) > 0: // more in them together than the formula has
		return "Preferments"
	case path == "" && (b.Levain == nil || len(b.Soakers) > 0):
		return "Soakers"
	case !closed || err != nil:
		return "Levain" + path
	}
	if b.Levain != nil {
		i--
	}
	at, of := fmt.Sprintf("Preferments[%d]", i), reflect.TypeFor[PrefermentWork]()
	if i < 0 || i >= len(b.Preferments) {
		at, of = "Levain", reflect.TypeFor[Levain]()
	}
	if own, ok := filler(of, ofFormula, strings.TrimPrefix(field, ".")); ok {
		return at + "." + own
	}
	return at + field
}

// filler is the field of a type that fills a path, by the longest of the tags that name it or what encloses it.
func filler(t reflect.Type, room, path string) (field string, ok bool) {
	longest := 0
	var look func(t reflect.Type, within string)
	look = func(t reflect.Type, within string) {
		for i := range t.NumField() {
			f := t.Field(i)
			for _, tag := range strings.Fields(f.Tag.Get("fills")) {
				of, name, _ := strings.Cut(tag, ":")
				rest, is := strings.CutPrefix(path, name)
				if of == room && is && len(name) > longest && (rest == "" || rest[0] == '.' || rest[0] == '[') {
					longest, field, ok = len(name), within+f.Name, true
				}
			}
			inner := f.Type
			if inner.Kind() == reflect.Pointer {
				inner = inner.Elem()
			}
			if inner.Kind() == reflect.Struct && inner.PkgPath() == t.PkgPath() {
				look(inner, within+f.Name+".")
			}
		}
	}
	look(t, "")
	return field, ok
}
