package house

import (
	"database/sql"
	"encoding"
	"encoding/json"
	"flag"
	"io"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
)

// slowest is how long the reading of one bad text may take; the machine may be busy.
const slowest = 5 * time.Second

// TestBadJSONByReflection damages, in one place, the JSON of generated values of every type that is read. The damaged
// text is either refused with a path that leads to the place, or kept as it stands: nothing is lost in silence.
func TestBadJSONByReflection(t *testing.T) {
	if len(exportedTypes()) == 0 {
		t.Skip("run by TestRoomsByReflection")
	}
	m := newMaker(3)
	values := 2
	if testing.Short() {
		values = 1
	}
	harvest(t, m, 1)
	o := offences{}
	total := 0
	for _, e := range exportedTypes() {
		if e.typ.Kind() != reflect.Struct || !comesBack(e.typ) {
			continue
		}
		all := slices.Clone(m.pool[e.typ])
		all = all[:min(len(all), values)]
		if !hidden(e.typ) {
			for range values {
				all = append(all, m.value(e.typ, 4))
			}
		}
		for _, v := range all {
			text, err := json.Marshal(v.Interface())
			if err != nil || quantity.ReadJSON(text, reflect.New(e.typ).Interface()) != nil {
				continue // TestEveryTypeMarshals looks at these
			}
			for i, d := range damages(text) {
				if i%4 == 0 || !testing.Short() {
					total++
					refused(o, e, d)
				}
			}
		}
	}
	t.Logf("%d damaged texts", total)
	o.judgeDrawn(t, lenient)
}

func refused(o offences, e namedType, d damage) {
	back := reflect.New(e.typ)
	began := time.Now()
	err := quantity.ReadJSON(d.text, back.Interface())
	if took := time.Since(began); took > slowest {
		o.add(e.name, "%s at %s takes %v", d.what, d.path, took)
	}
	if err == nil {
		again, err := json.Marshal(back.Elem().Interface())
		if err != nil || !sameJSON(again, d.text) {
			o.add(e.name, "%s at %s is read as another value: %.200s", d.what, d.path, again)
		}
		return
	}
	all := quantity.InputErrors(err)
	if len(all) == 0 {
		o.add(e.name, "%s at %s: %.100v has no path", d.what, d.path, err)
	}
	for _, p := range all {
		switch {
		case p.Want.IsZero() || p.Code == "":
			o.add(e.name, "%s at %s: %.100v does not say what is wanted", d.what, d.path, p)
		case !leadsTo(p.Path, d.path):
			o.add(e.name, "%s at %s is told at %q", d.what, d.path, p.Path)
		case len(p.Error()) > 1000:
			o.add(e.name, "%s at %s: an error of %d bytes", d.what, d.path, len(p.Error()))
		}
	}
}

// steps writes a path with points alone, as a key of a table stands in brackets.
var steps = strings.NewReplacer("[", ".", "]", "")

// leadsTo reports whether one of two paths begins with the other: a value with a text of its own is told whole.
func leadsTo(told, at string) bool {
	told, at = steps.Replace(told), steps.Replace(at)
	begins := func(long, short string) bool {
		rest, ok := strings.CutPrefix(long, short)
		return ok && (rest == "" || rest[0] == '.')
	}
	return told != "" && (begins(told, at) || begins(at, told))
}

// TestBadTextsByReflection: whatever reads a text refuses what is none of its words, by a flag of a program too, and in
// no time.
func TestBadTextsByReflection(t *testing.T) {
	if len(exportedTypes()) == 0 {
		t.Skip("run by TestRoomsByReflection")
	}
	o := offences{}
	texts := []string{"7", "no such word", "\x00", "null", "−", "1e999999999", "5 °C 5 °C", "12:60", "100:00", "-",
		strings.Repeat("9", 10_000_000), strings.Repeat("x ", 5_000_000), strings.Repeat("[", 100_000)}
	for _, e := range exportedTypes() {
		into, ok := reflect.New(e.typ).Interface().(encoding.TextUnmarshaler)
		if !ok {
			continue
		}
		for _, text := range texts {
			began := time.Now()
			err := into.UnmarshalText([]byte(text))
			if took := time.Since(began); took > slowest {
				o.add(e.name, "%.12q takes %v", text, took)
			}
			switch {
			case err == nil && !saysAgain(into, text):
				o.add(e.name, "reads %.12q as another value", text)
			case err != nil && (len(quantity.InputErrors(err)) == 0 || len(err.Error()) > 1000):
				o.add(e.name, "%.12q: %.100v", text, err)
			}
			def, ok := reflect.New(e.typ).Elem().Interface().(encoding.TextMarshaler)
			if !ok || err == nil || len(text) > 1000 {
				continue // a flag quotes all of it
			}
			flags := flag.NewFlagSet("house", flag.ContinueOnError)
			flags.SetOutput(io.Discard)
			flags.TextVar(into, "value", def, "")
			if flags.Parse([]string{"-value", text}) == nil {
				o.add(e.name, "a flag reads %.12q", text)
			}
		}
	}
	o.judge(t, lenientTexts)
}

func saysAgain(v any, text string) bool {
	m, ok := v.(encoding.TextMarshaler)
	if !ok {
		return true // a form that is only read
	}
	again, err := m.MarshalText()
	return err == nil && string(again) == text
}

// TestBadColumnsByReflection: a column of a database that is not what was stored is refused. What may be not given is
// read from NULL and from an empty text.
func TestBadColumnsByReflection(t *testing.T) {
	if len(exportedTypes()) == 0 {
		t.Skip("run by TestRoomsByReflection")
	}
	o := offences{}
	columns := []any{int64(7), 7.5, true, time.Unix(0, 0), "no such word", []byte("\x00\xff"), "{", "7 [",
		strings.Repeat("[", 100_000), strings.Repeat("9", 11<<20), nil, "", []byte{}}
	for _, e := range exportedTypes() {
		var scanners []sql.Scanner
		if s, ok := reflect.New(e.typ).Interface().(sql.Scanner); ok {
			scanners = append(scanners, s)
		}
		if e.typ.Kind() != reflect.Interface && e.typ.Kind() != reflect.Func && comesBack(e.typ) {
			scanners = append(scanners, quantity.Stored(reflect.New(e.typ).Interface()))
		}
		for _, s := range scanners {
			for i, from := range columns {
				began := time.Now()
				err := s.Scan(from)
				if took := time.Since(began); took > slowest {
					o.add(e.name, "%.12v takes %v", from, took)
				}
				switch optional := i >= len(columns)-3; {
				case err == nil && !optional:
					o.add(e.name, "%T %.12v is read", from, from)
				case err != nil && (len(quantity.InputErrors(err)) == 0 || len(err.Error()) > 1000):
					o.add(e.name, "%T %.12v: %.100v", from, from, err)
				}
			}
		}
	}
	o.judge(t, lenientColumns)
}
