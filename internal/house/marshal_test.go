package house

import (
	"encoding"
	"encoding/json"
	"fmt"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/oneway"
)

// offences collects what breaks a law, by the name of the type or function.
type offences map[string][]string

func (o offences) add(name, format string, args ...any) {
	if text := fmt.Sprintf(format, args...); !slices.Contains(o[name], text) && len(o[name]) < 6 {
		o[name] = append(o[name], text)
	}
}

// judge fails for what is not allowed, and for what is allowed and no longer offends. A list allows a name
// ("bake.Goal") or a whole room ("bake.*").
func (o offences) judge(t *testing.T, allowed map[string]string) {
	t.Helper()
	for _, name := range o.unused(t, allowed) {
		t.Errorf("%s keeps the law now: take it off the list", name)
	}
}

// judgeDrawn is judge for values drawn at random: what kept the law may have been lucky, and is named only.
func (o offences) judgeDrawn(t *testing.T, allowed map[string]string) {
	t.Helper()
	for _, name := range o.unused(t, allowed) {
		t.Logf("%s keeps the law for the values drawn", name)
	}
}

func (o offences) unused(t *testing.T, allowed map[string]string) []string {
	t.Helper()
	var out []string
	used := map[string]bool{}
	for _, name := range sortedKeys(o) {
		room, _, _ := strings.Cut(strings.TrimPrefix(name, "(*"), ".")
		_, byName := allowed[name]
		_, byRoom := allowed[room+".*"]
		switch {
		case byName:
			used[name] = true
		case byRoom:
			used[room+".*"] = true
		default:
			t.Errorf("%s: %s", name, strings.Join(o[name], "; "))
			continue
		}
		t.Logf("allowed: %s: %s", name, strings.Join(o[name], "; "))
	}
	for _, name := range sortedKeys(allowed) {
		if !used[name] {
			out = append(out, name)
		}
	}
	return out
}

func sortedKeys[V any](m map[string]V) []string {
	var keys []string
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}

func hasOwnForm(t reflect.Type) bool {
	for _, i := range []reflect.Type{reflect.TypeFor[json.Marshaler](), reflect.TypeFor[encoding.TextMarshaler]()} {
		if t.Implements(i) || reflect.PointerTo(t).Implements(i) {
			return true
		}
	}
	return false
}

// fahrenheit is a temperature that went out in another unit than it should; a source is quoted in its own.
var fahrenheit = regexp.MustCompile(`"-?[0-9.]+ Δ?°F"`)

var snakeKey = regexp.MustCompile(`^[a-z][a-z0-9]*(_[a-z0-9]+)*$`)

// TestFormOfDataByReflection looks at the types: every exported struct has a form in JSON, its keys are tagged and in
// snake_case, and no duration goes out as a number of nanoseconds.
func TestFormOfDataByReflection(t *testing.T) {
	if len(exportedTypes()) == 0 {
		t.Skip("run by TestRoomsByReflection")
	}
	o := offences{}
	for _, e := range exportedTypes() {
		typ := e.typ
		if typ.Kind() != reflect.Struct || hasOwnForm(typ) {
			continue
		}
		shown := 0
		for i := range typ.NumField() {
			f := typ.Field(i)
			key, _, _ := strings.Cut(f.Tag.Get("json"), ",")
			if !f.IsExported() && !f.Anonymous {
				continue
			}
			if key == "-" {
				continue
			}
			shown++
			switch {
			case f.Anonymous && key == "":
			case key == "":
				o.add(e.name, "%s has no json tag", f.Name)
			case !snakeKey.MatchString(key):
				o.add(e.name, "the key %q is not in snake_case", key)
			}
			if f.Type == reflect.TypeFor[time.Duration]() {
				o.add(e.name, "%s is a number of nanoseconds in JSON: its type must be quantity.Elapsed", f.Name)
			}
		}
		if shown == 0 {
			o.add(e.name, "marshals to {}")
		}
	}
	o.judge(t, formless)
}

// TestEveryTypeMarshalsByReflection marshals generated inputs and the answers that the rooms gave to them.
func TestEveryTypeMarshalsByReflection(t *testing.T) {
	if len(exportedTypes()) == 0 {
		t.Skip("run by TestRoomsByReflection")
	}
	m := newMaker(1)
	rounds, values := 3, 40
	if testing.Short() {
		rounds, values = 2, 12
	}
	harvest(t, m, rounds)
	o := offences{}
	total := 0
	for _, e := range exportedTypes() {
		if e.typ.Kind() == reflect.Interface || e.typ.Kind() == reflect.Func {
			continue
		}
		all := slices.Clone(m.pool[e.typ])
		private := e.typ.Kind() == reflect.Struct && hidden(e.typ)
		for range values {
			if !private {
				all = append(all, m.value(e.typ, 4))
			}
		}
		if len(all) == 0 {
			t.Logf("no value of %s was made", e.name)
			all = append(all, reflect.Zero(e.typ))
		}
		for _, v := range all {
			if q, ok := v.Interface().(interface{ IsValid() bool }); ok && !q.IsValid() {
				continue // arithmetic beyond the range of a quantity: that it does not marshal is right
			}
			total++
			marshaled(o, e.name, v)
		}
	}
	t.Logf("%d values of %d types marshaled", total, len(exportedTypes()))
	o.judgeDrawn(t, unmarshalable)
}

// hidden reports whether a value of the type has a state of its own that only its room can make.
func hidden(t reflect.Type) bool {
	for i := range t.NumField() {
		if !t.Field(i).IsExported() {
			return true
		}
	}
	return false
}

func marshaled(o offences, name string, v reflect.Value) {
	text, err := json.Marshal(v.Interface())
	switch {
	case err != nil:
		o.add(name, "does not marshal: %.200v", err)
		return
	case string(text) == "{}" && !v.IsZero():
		o.add(name, "marshals to {}")
	case fahrenheit.Match(text):
		at := fahrenheit.FindIndex(text)
		o.add(name, "marshals °F: %s", text[max(0, at[0]-60):min(len(text), at[1]+20)])
	}
	if v.Kind() != reflect.Struct || !comesBack(v.Type()) {
		return
	}
	back := reflect.New(v.Type())
	if err := quantity.ReadJSON(text, back.Interface()); err != nil {
		o.add(name, "does not read back: %.200v", err)
		return
	}
	again, err := json.Marshal(back.Elem().Interface())
	if err != nil || string(again) != string(text) {
		o.add(name, "comes back as another value")
	}
}

// comesBack reports whether a type says that it can be read: it reads itself, or all of it is open.
func comesBack(t reflect.Type) bool { return opened(t, map[reflect.Type]bool{}) }

// refuses reports whether a type refuses to be read by what it embeds.
func refuses(t reflect.Type) bool {
	if t.Kind() != reflect.Struct {
		return false
	}
	for i := range t.NumField() {
		if f := t.Field(i); f.Anonymous && (f.Type == reflect.TypeFor[oneway.Answer]() || refuses(f.Type)) {
			return true
		}
	}
	return false
}

func readsItself(t reflect.Type) bool {
	p := reflect.PointerTo(t)
	if isText := p.Implements(reflect.TypeFor[encoding.TextUnmarshaler]()); isText {
		return true
	}
	return p.Implements(reflect.TypeFor[json.Unmarshaler]()) && !refuses(t)
}

func opened(t reflect.Type, seen map[reflect.Type]bool) bool {
	if seen[t] {
		return true
	}
	seen[t] = true
	if readsItself(t) {
		return true
	}
	if hasOwnForm(t) || refuses(t) {
		return false
	}
	switch t.Kind() {
	case reflect.Struct:
		for i := range t.NumField() {
			f := t.Field(i)
			if !f.IsExported() || f.Tag.Get("json") == "-" || !opened(f.Type, seen) {
				return false
			}
		}
		return true
	case reflect.Slice, reflect.Array, reflect.Pointer:
		return opened(t.Elem(), seen)
	case reflect.Map:
		return opened(t.Elem(), seen) && opened(t.Key(), seen)
	case reflect.Interface, reflect.Func, reflect.Chan:
		return false
	}
	return true
}

// TestAnswersComeBackOrRefuseByReflection: a type with a state that its JSON does not hold, or with a JSON of its own,
// either reads itself, or refuses to be read. An answer whose question is lost would tell something else.
func TestAnswersComeBackOrRefuseByReflection(t *testing.T) {
	if len(exportedTypes()) == 0 {
		t.Skip("run by TestRoomsByReflection")
	}
	o := offences{}
	refused := 0
	for _, e := range exportedTypes() {
		own := e.typ.Implements(reflect.TypeFor[json.Marshaler]())
		if e.typ.Kind() != reflect.Struct || !hidden(e.typ) && !own || readsItself(e.typ) {
			continue
		}
		if err := json.Unmarshal([]byte("{}"), reflect.New(e.typ).Interface()); err == nil {
			o.add(e.name, "is read without what it hides")
		}
		refused++
	}
	t.Logf("%d types refuse", refused)
	o.judge(t, hiding)
}

// TestEnumerationsByReflection: every enumeration has words that go out and come back, and refuses others.
func TestEnumerationsByReflection(t *testing.T) {
	if len(exportedTypes()) == 0 {
		t.Skip("run by TestRoomsByReflection")
	}
	o := offences{}
	for _, e := range exportedTypes() {
		zero := reflect.Zero(e.typ)
		if !zero.CanInt() && !zero.CanUint() || e.typ == reflect.TypeFor[quantity.Elapsed]() {
			continue
		}
		if _, ok := zero.Interface().(fmt.Stringer); !ok {
			o.add(e.name, "has no String")
		}
		if _, ok := zero.Interface().(encoding.TextMarshaler); !ok {
			o.add(e.name, "has no MarshalText")
			continue
		}
		if _, ok := reflect.New(e.typ).Interface().(encoding.TextUnmarshaler); !ok {
			o.add(e.name, "has no UnmarshalText")
			continue
		}
		n := enumCount(e.typ)
		if n < 2 {
			o.add(e.name, "has %d values", n)
		}
		seen := map[string]bool{}
		for i := range n {
			v := reflect.New(e.typ).Elem()
			if v.CanInt() {
				v.SetInt(int64(i))
			} else {
				v.SetUint(uint64(i))
			}
			word, _ := v.Interface().(encoding.TextMarshaler).MarshalText()
			back := reflect.New(e.typ)
			if err := back.Interface().(encoding.TextUnmarshaler).UnmarshalText(word); err != nil ||
				back.Elem().Interface() != v.Interface() {
				o.add(e.name, "%q does not come back", word)
			}
			if fmt.Sprint(v.Interface()) != string(word) && i > 0 {
				o.add(e.name, "prints %q and marshals %q", fmt.Sprint(v.Interface()), word)
			}
			if seen[string(word)] {
				o.add(e.name, "has the word %q twice", word)
			}
			seen[string(word)] = true
		}
		for _, word := range []string{"no such word", "\x00", strings.Repeat("x", 1<<16)} {
			err := reflect.New(e.typ).Interface().(encoding.TextUnmarshaler).UnmarshalText([]byte(word))
			if err == nil || len(err.Error()) > 1000 || len(quantity.InputErrors(err)) != 1 {
				o.add(e.name, "reads %.12q: %.60v", word, err)
			}
		}
	}
	o.judge(t, wordless)
}
