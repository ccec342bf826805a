package cli

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"
	"unicode"
	"unicode/utf8"

	"example.org/maslin/dough/working"
	"example.org/maslin/examples/internal/tomlbind"
	"example.org/maslin/internal/textpage"
	"example.org/maslin/schedule/bakeday"
	"github.com/spf13/pflag"
)

// Whatever a flag of these commands is given is answered or refused in a few words.
func TestHostileFlagsOfTeaching(t *testing.T) {
	t.Chdir(t.TempDir())
	if status, _, complaint := run("new", "y.toml", "--zone", "Europe/Zurich"); status != 0 {
		t.Fatal(complaint)
	}
	hostile := []string{
		"", "NaN", "Inf C", "1e999 %", "-5 %", "0 %", "-300 C", "\x00", "\xff\xfe", "\x1b[31m", "1,2,3", ";;;", ",", "20C;",
		"100 C", "1 µg", "999999999999999999999 kg", "no\nlines", "Local",
		strings.Repeat("9", 1<<16) + " %", strings.Repeat("20C,", 1<<12),
	}
	for _, command := range []string{"new x.toml", "table bulk", "table water", "compare curves", "compare water y.toml",
		"compare y.toml"} {
		words := strings.Fields(command)
		c, _, err := newRoot(System{Getenv: func(string) string { return "" }}).Find(words)
		if err != nil {
			t.Fatal(err)
		}
		c.Flags().VisitAll(func(f *pflag.Flag) {
			for _, text := range hostile {
				if words[0] == "new" {
					os.Remove("x.toml")
				}
				status, out, complaint := run(append(words, "--"+f.Name+"="+text)...)
				shown := text[:min(len(text), 20)]
				switch {
				case status == exitBadInput && complaint == "":
					t.Errorf("%s --%s=%q: refused without a word", command, f.Name, shown)
				case len(complaint) > 5000:
					t.Errorf("%s --%s=%q: a complaint of %d bytes", command, f.Name, shown, len(complaint))
				case strings.ContainsAny(complaint+out, "\x00\x1b") || strings.Contains(out, "NaN"):
					t.Errorf("%s --%s=%q: prints %.200q", command, f.Name, shown, complaint+out)
				}
			}
		})
	}
}

// FuzzNewFile: whatever the bread is called, the file reads back with that name and can be planned.
func FuzzNewFile(f *testing.F) {
	for _, name := range []string{"Country loaf", `a "b" \ c`, "tab\tline\n", "\x00\x1b\x7f", "\u2028 \ufeff", "'''",
		`"""`, "🍞", "\xff"} {
		f.Add(name, "15 %")
	}
	f.Add("rye", "100 %")
	f.Add("wheat", "0 %")
	clock := bakeday.KitchenClock{Now: time.Date(2026, 11, 25, 20, 0, 0, 0, time.UTC), Zone: time.UTC}
	f.Fuzz(func(t *testing.T, name, rye string) {
		b := bakeday.NewBread{Zone: "UTC"}
		if read, err := b.With("rye", rye, clock); err == nil {
			b = read
		}
		b.Name = name
		if name == "" {
			b.Name = "bread"
		}
		file := b.File(working.Reader{})
		var got bakeday.Bake
		if bound := tomlbind.Bind([]byte(file), &got); len(bound.Faults) > 0 {
			t.Fatalf("%q: %v\n%s", name, bound.Faults, file)
		}
		if want := strings.ToValidUTF8(b.Name, "\uFFFD"); got.Name != want {
			t.Errorf("%q reads back as %q", want, got.Name)
		}
		if same, _ := b.Bake(clock); utf8.ValidString(name) && !reflect.DeepEqual(same, got) {
			t.Errorf("the file is another bake: %s", fmt.Sprint(same, got))
		}
		text := !strings.ContainsFunc(name, func(r rune) bool {
			return unicode.IsControl(r) ||
				unicode.Is(unicode.Bidi_Control, r)
		}) && len(name) < 60
		if err := got.Check(clock); text && err != nil && b.Rye == "" {
			t.Errorf("%q: %v", name, err)
		}
	})
}

func TestEveryAnswerOfNewCanBePlanned(t *testing.T) {
	dir := t.TempDir()
	for _, leaven := range []string{"levain", "yeast"} {
		for _, cold := range []string{"yes", "no"} {
			for _, mixer := range []string{"hand", "planetary", "spiral", "processor"} {
				for _, rye := range []string{"0 %", "40 %", "100 %"} {
					name := filepath.Join(dir, strings.Join([]string{leaven, cold, mixer, rye[:2]}, "-")+".toml")
					if status, _, complaint := run("new", name, "--leaven", leaven, "--cold", cold, "--mixer", mixer, "--rye",
						rye, "--wanted", "Sunday 18:00", "--zone", "Europe/Zurich"); status != 0 {
						t.Errorf("%s: %s", name, complaint)
						continue
					}
					if status, out, complaint := run("plan", name); status != 0 {
						t.Errorf("%s: %d %s%.300s", name, status, complaint, out)
					}
				}
			}
		}
	}
}

func FuzzASCII(f *testing.F) {
	f.Add("26 °C – 12 Δ°C, Gänzle …")
	f.Add("\xff\u202e\u0301")
	f.Fuzz(func(t *testing.T, text string) {
		for _, r := range textpage.ASCII(text) {
			if r > 0x7e {
				t.Errorf("%q becomes %q", text, textpage.ASCII(text))
			}
		}
		if utf8.ValidString(text) && !strings.ContainsFunc(text, func(r rune) bool { return r > 0x7e }) &&
			textpage.ASCII(text) != text {
			t.Errorf("%q is changed", text)
		}
	})
}

func TestLocales(t *testing.T) {
	for _, c := range []struct {
		env  map[string]string
		want bool
	}{
		{nil, false}, {map[string]string{"LANG": "C"}, true}, {map[string]string{"LANG": "POSIX"}, true},
		{map[string]string{"LANG": "C.UTF-8"}, false}, {map[string]string{"LANG": "en_US.UTF-8"}, false},
		{map[string]string{"LANG": "C", "LC_ALL": "en_US.UTF-8"}, false},
		{map[string]string{"LANG": "en_US.UTF-8", "LC_CTYPE": "C"}, true},
		{map[string]string{"LC_ALL": "C", "LANG": "de_CH.UTF-8"}, true},
	} {
		if got := (System{Getenv: func(name string) string { return c.env[name] }}).asciiOnly(); got != c.want {
			t.Errorf("%v: %v", c.env, got)
		}
	}
}

func BenchmarkPlanWithSheet(b *testing.B) {
	name := filepath.Join(b.TempDir(), "day.html")
	for b.Loop() {
		if status, _, complaint := run("plan", "../../bakes/hall-kitchen.toml", "--html", name); status != 0 {
			b.Fatal(complaint)
		}
	}
}
