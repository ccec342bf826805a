package language_test

import (
	"testing"

	"example.org/maslin/examples/internal/language"
)

func TestNamed(t *testing.T) {
	for _, c := range []struct {
		tag, want string
		ok        bool
	}{{"de", "de", true}, {"de-CH", "de", true}, {"de_AT", "de", true}, {"DE", "de", true}, {"en", "", true}, {"en-GB", "", true}, {"tlh", "", false}, {"", "", false}, {"d", "", false}} {
		l, ok := language.Named(c.tag)
		if ok != c.ok || l.Tag != c.want {
			t.Errorf("%q: %q, %v; want %q, %v", c.tag, l.Tag, ok, c.want, c.ok)
		}
	}
	for _, tag := range language.Tags() {
		if _, ok := language.Named(tag); !ok {
			t.Errorf("%s is listed and not there", tag)
		}
	}
}

func TestPreferred(t *testing.T) {
	for _, c := range []struct {
		env  map[string]string
		want string
	}{
		{nil, ""},
		{map[string]string{"LANG": "de_CH.UTF-8"}, "de"},
		{map[string]string{"LANG": "de_DE@euro"}, "de"},
		{map[string]string{"LANG": "de_CH.UTF-8", "LC_ALL": "C"}, ""},
		{map[string]string{"LANG": "en_US.UTF-8", "LC_MESSAGES": "de_DE"}, "de"},
		{map[string]string{"LANG": "C.UTF-8"}, ""},
		{map[string]string{"LANG": "sw_KE.UTF-8"}, ""},
	} {
		if got := language.Preferred(func(name string) string { return c.env[name] }); got.Tag != c.want {
			t.Errorf("%v: %q, want %q", c.env, got.Tag, c.want)
		}
	}
}
