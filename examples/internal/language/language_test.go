package language

import (
	"encoding/json"
	"errors"
	"maps"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/house"
	"example.org/maslin/schedule/bakeday"
	"github.com/google/go-cmp/cmp"
)

const root = "../../.."

// english lists the sentences of the library and of the example programs.
func english(t *testing.T) map[string]string {
	t.Helper()
	all, faults, err := house.AllSentences(root)
	if err != nil || len(faults) > 0 {
		t.Fatal(err, faults)
	}
	return all
}

// vocabulary lists the keys of all words that a language may have.
func vocabulary(t *testing.T) map[string]bool {
	t.Helper()
	keys, err := house.Vocabulary(root)
	if err != nil || len(keys) < 300 {
		t.Fatal(err, len(keys))
	}
	all := map[string]bool{"dough.Allergens/" + dough.Allergens(0).String(): true}
	for _, k := range keys {
		all[k] = true
	}
	for _, comment := range keyComments() {
		all[comment] = true
	}
	for _, a := range dough.Allergens(1<<16 - 1).List() {
		all["dough.Allergens/"+a.String()] = true
	}
	for day := range 7 {
		name := weekdays[day]
		all["time.Weekday/"+name], all["time.Weekday/"+name[:3]] = true, true
	}
	for _, m := range months {
		all["time.Month/"+m] = true
	}
	return all
}

// keyComments are the words that a language may have for what the keys of a bake file mean.
func keyComments() (out []string) {
	for _, table := range bakeday.BakeFileKeys().Tables {
		for _, says := range append([]bakeday.FileKey{{Says: table.Says}}, table.Keys...) {
			if says.Says != "" {
				out = append(out, "bakeday.keyComment/"+says.Says)
			}
		}
	}
	return out
}

// What a key of a bake file means is told in German, and its forms stay as they are typed.
func TestKeysOfBakeFilesAreGerman(t *testing.T) {
	german := German()
	quoted := regexp.MustCompile(`"[^"]*"`)
	comments := keyComments()
	for _, key := range comments {
		says := german.Words[key]
		if says == "" || "bakeday.keyComment/"+says == key && !strings.HasPrefix(says, `"`) {
			t.Errorf("%s has no German", key)
		}
		if diff := cmp.Diff(quoted.FindAllString(key, -1), quoted.FindAllString(says, -1)); diff != "" {
			t.Errorf("%s: what is typed differs: %s", key, diff)
		}
	}
	if len(comments) < 150 {
		t.Errorf("only %d keys are looked at", len(comments))
	}
}

var (
	weekdays = strings.Fields("Sunday Monday Tuesday Wednesday Thursday Friday Saturday")
	months   = strings.Fields("January February March April May June July August September October November December")
)

// Each German sentence is one of the library's, shows the same arguments, and shows numbers as finely.
func TestSentencesFitTheEnglishOnes(t *testing.T) {
	if testing.Short() {
		t.Skip("reads the source of the whole library")
	}
	all := english(t)
	for id, text := range German().Sentences {
		template, known := all[id]
		if !known {
			t.Errorf("%s is no identifier of the library", id)
			continue
		}
		want, got := house.Placeholders(template), house.Placeholders(text)
		if !maps.Equal(want, got) {
			t.Errorf("%s: %q shows %v, its German %q shows %v", id, template, want, text, got)
		}
		if strings.TrimSpace(text) == "" {
			t.Errorf("%s: empty", id)
		}
	}
	for _, e := range quantity.InputErrors(German().Check(working.Language{Sentences: all})) {
		if !errors.Is(e, quantity.ErrRequired) { // the shipped pages have no gaps, see TestShippedPagesAreGerman
			t.Error(e)
		}
	}
}

// Each German word is that of a word of the library or of a name.
func TestWordsAreKnown(t *testing.T) {
	if testing.Short() {
		t.Skip("reads the source of the whole library")
	}
	all := vocabulary(t)
	german := German()
	for key, word := range german.Words {
		kind, _, _ := strings.Cut(key, "/")
		if !all[key] && kind != "working.Name" {
			t.Errorf("%s is no word of the library", key)
		}
		if strings.TrimSpace(word) == "" {
			t.Errorf("%s: empty", key)
		}
	}
}

// Everything that an error says has German: what is accepted, what was given, and what an enumeration is called.
func TestErrorsAreGerman(t *testing.T) {
	if testing.Short() {
		t.Skip("reads the source of the whole library")
	}
	german := German()
	seen := 0
	for id, text := range english(t) {
		if strings.Contains(id, ".want_") || strings.Contains(id, ".got_") || strings.Contains(id, ".hint_") ||
			strings.HasPrefix(id, "error.") || strings.HasPrefix(id, "quantity.") || strings.HasPrefix(id, "cli.") ||
			strings.HasPrefix(id, "tomlbind.") {
			if seen++; german.Sentences[id] == "" {
				t.Errorf("%s: %q has no German", id, text)
			}
		}
	}
	for key := range vocabulary(t) {
		told := strings.HasPrefix(key, "enum.Noun/") || strings.HasPrefix(key, "working.sourceTitle/") ||
			strings.HasPrefix(key, "working.Index/")
		if told && german.Words[key] == "" {
			t.Errorf("%s has no German", key)
		}
	}
	if seen < 700 {
		t.Errorf("only %d texts are looked at", seen)
	}
}

// A key that stands twice in a file, or in two files, would lose one of its texts in silence.
func TestNoKeyStandsTwice(t *testing.T) {
	names, err := files.ReadDir("german")
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]string{}
	for _, f := range names {
		data, err := files.ReadFile(path.Join("german", f.Name()))
		if err != nil {
			t.Fatal(err)
		}
		d := json.NewDecoder(strings.NewReader(string(data)))
		depth, key := 0, true
		for {
			token, err := d.Token()
			if err != nil {
				break
			}
			switch token := token.(type) {
			case json.Delim:
				depth += map[json.Delim]int{'{': 1, '}': -1}[token]
				key = true
				continue
			case string:
				if key && depth == 2 {
					if other, twice := seen[token]; twice {
						t.Errorf("%s stands in %s and in %s", token, other, f.Name())
					}
					seen[token] = f.Name()
				}
			}
			key = !key
		}
	}
	german := German()
	if n := len(german.Sentences) + len(german.Words); len(seen) != n || n < 2500 {
		t.Errorf("the files have %d keys, the catalog %d", len(seen), n)
	}
}

func TestNamed(t *testing.T) {
	for tag, want := range map[string]string{
		"de": "de", " DE ": "de", "de-ch": "de-CH", "de_AT.UTF-8@euro": "de-AT", "en": "", "C": "", "POSIX": "",
		"C.UTF-8": "", "en_US": "", "de@euro": "de", "de_CH@euro": "de-CH", "en@x": "",
		"de-Latn-ch-1996": "de-CH", "de-1996": "de", "de-x-ch": "de", "de-<b": "de", "de-419": "de",
	} {
		if l, err := Named(tag); err != nil || l.Tag != want || (want != "") != (len(l.Sentences) > 0) {
			t.Errorf("%q: tag %q with %d sentences, %v", tag, l.Tag, len(l.Sentences), err)
		}
	}
	for _, tag := range []string{"fr", "", "deutsch", "d"} {
		if _, err := Named(tag); !errors.Is(err, quantity.ErrOutOfRange) {
			t.Errorf("%q: %v", tag, err)
		}
	}
	// Official rules of German spelling, § 25 E2 (from memory): in Switzerland ss may always be written.
	for tag, has := range map[string]bool{"de-CH": false, "de-LI": false, "de": true, "de-AT": true, "de-DE": true} {
		l, _ := Named(tag)
		texts := slices.Concat(slices.Collect(maps.Values(l.Sentences)), slices.Collect(maps.Values(l.Words)))
		if strings.Contains(strings.Join(texts, " "), "ß") != has {
			t.Errorf("%s with ß: want %v", tag, has)
		}
	}
	if German().Words["working.Subject/hot glass, enamel and iron"] != "heißes Glas, Emaille und Eisen" {
		t.Error("German has lost its ß")
	}
}

func TestPreferred(t *testing.T) {
	for _, c := range []struct{ all, messages, lang, want string }{
		{"", "", "", ""}, {"", "", "de_DE.UTF-8", "de-DE"}, {"", "C", "de_DE.UTF-8", ""}, {"C", "de_DE", "de_DE", ""},
		{"de_CH", "en_US", "C", "de-CH"}, {"", "", "fr_FR", ""}, {"", "fr_FR", "de_DE", ""},
	} {
		env := map[string]string{"LC_ALL": c.all, "LC_MESSAGES": c.messages, "LANG": c.lang}
		if got := Preferred(func(k string) string { return env[k] }); got.Tag != c.want {
			t.Errorf("%v: %q", c, got.Tag)
		}
	}
}

// Numbers, dates and ranges as a German reader writes them, and a sentence that the catalog lacks in English.
func TestGermanReader(t *testing.T) {
	r := working.Reader{Language: German()}
	for _, c := range []struct {
		m    working.Message
		want string
	}{
		{working.Say("%.1f, %v, %v", quantity.Celsius(20.4), quantity.NewPercent(2.1), 1234.5), "20,4 °C, 2,1 %, 1234,5"},
		{working.Say("%v and %v", "salt", "Vreni's salt"), "Salz and Vreni's salt"},
		{working.Tell("nobody.said", "%v of %s", quantity.Grams(12.5), "water"), "12,5 g of Wasser"},
		{working.And("Salz", dough.KindRye, dough.KindSalt), "Salz, Roggen und Salz"},
		{working.Tell("dough.pieces_of_it", "%d {1|piece|pieces} of it {1|weighs|weigh} %v each", 1, quantity.Grams(5)),
			"1 Stück davon wiegt je 5 g"},
		{working.Problem(&quantity.InputError{Path: "salt", Got: "salt",
			Want: quantity.Tell("quantity.want_0_g_or_more", "0 g or more"), Err: quantity.ErrOutOfRange}),
			"salt: außerhalb des Bereichs: angegeben ist salt, verlangt ist mindestens 0 g"},
	} {
		if got := c.m.Text(r); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}

func TestReadRefusesWhatIsNoCatalog(t *testing.T) {
	if _, err := read(fstest.MapFS{"x/a.json": {Data: []byte(`{"sentences": 3}`)}}, "x"); err == nil ||
		!strings.HasPrefix(err.Error(), "x/a.json: json: ") {
		t.Error(err)
	}
	if _, err := read(fstest.MapFS{"x/a.json/b": {}}, "x"); err == nil {
		t.Error("a folder was read as a file")
	}
	if _, err := read(fstest.MapFS{}, "["); !errors.Is(err, path.ErrBadPattern) {
		t.Error(err)
	}
}
