package house

import (
	"fmt"
	"os"
	"reflect"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"
)

// noNumber is what a sentence never says: a number that is none, or a verb that found no argument.
var noNumber = regexp.MustCompile(`\bNaN\b|[+-−]Inf\b|%!`)

// TestNothingPanicsByReflection calls every exported function and method with hostile values among sensible ones:
// nothing panics or hangs, and no answer that was given without an error says NaN, Inf or a failed format.
func TestNothingPanicsByReflection(t *testing.T) {
	if len(exportedTypes()) == 0 {
		t.Skip("run by TestRoomsByReflection")
	}
	if testing.Short() {
		t.Skip("some seconds long")
	}
	const tries = 20
	m := newMaker(hostileSeed(t))
	harvest(t, m, 2)
	m.hostile = true
	o := offences{}
	calls := 0
	for _, c := range callables() {
		if c.leftOut() {
			continue
		}
		for try := 0; try < tries; try++ {
			calls++
			results, panicked, hung := c.within(m, 10*time.Second)
			switch {
			case hung:
				t.Fatalf("%s takes more than ten seconds", c.name) // it goes on in the background: nothing after it would be fair
			case panicked != "":
				o.add(c.name, "panics: %s", panicked)
			case !failed(results) && !madeByHand(c):
				for _, r := range results {
					if text := said(r); noNumber.MatchString(text) {
						o.add(c.name, "answers %.120q", text)
					}
				}
			}
		}
		if results, panicked := c.callZero(); panicked != "" {
			o.add(c.name, "panics on zero values: %s", panicked)
		} else if !failed(results) {
			for _, r := range results {
				if text := said(r); noNumber.MatchString(text) {
					o.add(c.name, "says %.120q of zero values", text)
				}
			}
		}
	}
	t.Logf("%d calls of %d functions and methods", calls, len(callables()))
	o.judgeDrawn(t, careless)
}

// hostileSeed is from where the values are drawn: 2, or what MASLIN_HOSTILE says, to look at others.
func hostileSeed(t *testing.T) uint64 {
	text := os.Getenv("MASLIN_HOSTILE")
	if text == "" {
		return 2
	}
	seed, err := strconv.ParseUint(text, 10, 64)
	if err != nil {
		t.Fatal(err)
	}
	return seed
}

// madeByHand reports whether the function tells a value whose open fields the test filled itself, in which case
// the NaN is the test's.
func madeByHand(c callable) bool {
	t := c.fn.Type()
	if strings.HasSuffix(c.name, ".GoString") {
		return true // math.NaN() is Go
	}
	for i := range t.NumIn() {
		in := t.In(i)
		if t.IsVariadic() && i == t.NumIn()-1 {
			in = in.Elem()
		}
		if in == reflect.TypeFor[any]() {
			return true // it tells whatever it is given
		}
	}
	if t.NumIn() != 1 {
		return false
	}
	in := t.In(0)
	for in.Kind() == reflect.Pointer {
		in = in.Elem()
	}
	return in.Kind() == reflect.Struct && in.NumField() > 0 && in.Field(0).IsExported()
}

func said(v reflect.Value) string {
	switch x := v.Interface().(type) {
	case error:
		return ""
	case fmt.Stringer:
		if v.Kind() == reflect.Pointer && v.IsNil() {
			return ""
		}
		return x.String()
	case string:
		return x
	}
	return ""
}

// within calls in a goroutine of its own, so that a call that hangs is found.
func (c callable) within(m *maker, limit time.Duration) (results []reflect.Value, panicked string, hung bool) {
	done := make(chan struct{})
	go func() {
		defer close(done)
		results, panicked = c.call(m)
	}()
	select {
	case <-done:
		return results, panicked, false
	case <-time.After(limit):
		return nil, "", true
	}
}

// callZero calls with the zero value of everything.
func (c callable) callZero() (results []reflect.Value, panicked string) {
	defer func() {
		if r := recover(); r != nil {
			panicked = fmt.Sprintf("%v %s", r, firstFrames(stackText()))
		}
	}()
	t := c.fn.Type()
	var args []reflect.Value
	for i := range t.NumIn() {
		in := t.In(i)
		if t.IsVariadic() && i == t.NumIn()-1 {
			break
		}
		v := reflect.Zero(in)
		switch {
		case in.String() == "context.Context":
			made, _ := newMaker(1).simple(in)
			v = reflect.ValueOf(made)
		case in.Kind() == reflect.Interface:
			return nil, ""
		case in.Kind() == reflect.Pointer && !strings.HasPrefix(in.String(), "*time."):
			v = reflect.New(in.Elem())
		}
		args = append(args, v)
	}
	return c.fn.Call(args), ""
}
