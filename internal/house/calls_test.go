package house

import (
	"fmt"
	"reflect"
	"runtime/debug"
	"strings"
	"testing"
	"time"
)

// A callable is an exported function, or an exported method with its receiver as the first argument.
type callable struct {
	name string
	fn   reflect.Value
}

func callables() []callable {
	var out []callable
	for _, f := range exportedFuncs() {
		out = append(out, callable{f.name, reflect.ValueOf(f.fn)})
	}
	for _, t := range exportedTypes() {
		if t.typ.Kind() == reflect.Interface {
			continue
		}
		for i := range t.typ.NumMethod() {
			m := t.typ.Method(i)
			out = append(out, callable{t.name + "." + m.Name, m.Func})
		}
		p := reflect.PointerTo(t.typ)
		for i := range p.NumMethod() {
			m := p.Method(i)
			if _, byValue := t.typ.MethodByName(m.Name); !byValue {
				out = append(out, callable{"(*" + t.name + ")." + m.Name, m.Func})
			}
		}
	}
	return out
}

// callers are left out: Must functions may panic, and a nil function or interface is the program's own fault.
func (c callable) leftOut() bool {
	_, name, _ := strings.Cut(c.name, ".")
	if strings.HasPrefix(name, "Must") {
		return true
	}
	for i := range c.fn.Type().NumIn() {
		if in := c.fn.Type().In(i); in.Kind() == reflect.Func || in.Kind() == reflect.Chan || in.String() == "fmt.State" {
			return true
		}
	}
	return false
}

// call calls with made arguments, and returns what panicked.
func (c callable) call(m *maker) (results []reflect.Value, panicked string) {
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
			for range m.r.IntN(3) {
				args = append(args, m.value(in.Elem(), 3))
			}
			continue
		}
		v := m.value(in, 4)
		if i == 0 && in.Kind() == reflect.Pointer && v.IsNil() {
			v = reflect.New(in.Elem())
		}
		if in.Kind() == reflect.Interface && v.IsNil() {
			return nil, ""
		}
		args = append(args, v)
	}
	return c.fn.Call(args), ""
}

func stackText() string { return string(debug.Stack()) }

// firstFrames cuts a stack down to where the library panicked.
func firstFrames(stack string) string {
	var out []string
	for _, line := range strings.Split(stack, "\n") {
		if line = strings.TrimSpace(line); strings.HasPrefix(line, module) && strings.Contains(line, ".go:") &&
			!strings.Contains(line, "/internal/house/") {
			at, _, _ := strings.Cut(line, " ")
			out = append(out, strings.TrimPrefix(at, module+"/"))
		}
	}
	return "(" + strings.Join(out[:min(len(out), 3)], " < ") + ")"
}

func failed(results []reflect.Value) bool {
	if len(results) == 0 {
		return false
	}
	err, ok := results[len(results)-1].Interface().(error)
	return ok && err != nil
}

// harvest calls every function with sensible arguments and keeps the answers, a few rounds long, since the answer of
// one is the input of another. What panics is left to TestNothingPanicsByReflection.
func harvest(t *testing.T, m *maker, rounds int) {
	t.Helper()
	tries := 12
	if testing.Short() {
		tries = 4
	}
	for range rounds {
		for _, c := range callables() {
			if c.leftOut() {
				continue
			}
			for range tries {
				results, panicked, hung := c.within(m, 10*time.Second)
				if hung {
					t.Fatalf("%s takes more than ten seconds", c.name)
				}
				if panicked != "" || failed(results) {
					continue
				}
				for _, r := range results {
					m.keep(r)
				}
			}
		}
	}
}
