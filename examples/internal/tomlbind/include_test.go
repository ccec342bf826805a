package tomlbind

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// bound reads a sheet whose bake may stand in another file.
func bound(source string, files map[string]string) (sheet, []string) {
	var s sheet
	f := BindWith([]byte(source), &s, map[string]Open{"bake": func(name string) ([]byte, error) {
		text, ok := files[name]
		if !ok {
			return nil, errors.New("no such file")
		}
		return []byte(text), nil
	}})
	var out []string
	for _, x := range f.Faults {
		out = append(out, fmt.Sprintf("%d:%d %s", x.Line, x.Column, x.Message()))
	}
	return s, out
}

// A table may stand in a file of its own: what is wrong there is told where the file is named, and where it stands in
// it.
func TestATableInAFileOfItsOwn(t *testing.T) {
	const source = "name = \"hall\"\nbake = \"oven.toml\"\n"
	s, faults := bound(source, map[string]string{"oven.toml": "pots = 3\nsteam = true\n"})
	if len(faults) != 0 || s.Name != "hall" || s.Bake.Pots != 3 || !s.Bake.Steam {
		t.Errorf("%+v, %v", s, faults)
	}
	for name, c := range map[string]struct {
		files map[string]string
		want  []string
	}{
		"none":   {nil, []string{"2:8 bake: no such file"}},
		"syntax": {map[string]string{"oven.toml": "pots = 3\nsteam = \n"}, []string{`2:8 bake: in "oven.toml":2:`}},
		"a value": {map[string]string{"oven.toml": "steam = true\npots = \"two\"\n"},
			[]string{`2:8 bake.pots: in "oven.toml":2:8: wrong form: got the text "two", want a whole number`}},
		"a key": {map[string]string{"oven.toml": "\nstaem = true\n"},
			[]string{`2:8 bake.staem: in "oven.toml":2:1: unknown key; did you mean "steam"?`}},
		"again": {map[string]string{"oven.toml": "pots = 1\nbake = \"other.toml\"\n", "other.toml": "pots = 2"},
			[]string{`2:8 bake: in "oven.toml":2:8: names a file again; want the bake itself`}},
		"huge": {map[string]string{"oven.toml": strings.Repeat("#", MaxBytes+1)},
			[]string{"2:8 bake: the file has more than the 1048576 bytes"}},
	} {
		_, faults := bound(source, c.files)
		ok := len(faults) == len(c.want)
		for i := range c.want {
			ok = ok && strings.HasPrefix(faults[i], c.want[i])
		}
		if !ok {
			t.Errorf("%s: %q, want %q", name, faults, c.want)
		}
	}
	if s, faults := bound(source, map[string]string{"oven.toml": strings.Repeat("#", MaxBytes-9) +
		"\npots = 4"}); len(faults) != 0 ||
		s.Bake.Pots != 4 {
		t.Errorf("a file of as many bytes as are read: %v, %v", s.Bake, faults)
	}
	// What stands beside the name of another file is read; of a table that is not read nothing is missing.
	for file, want := range map[string]bool{"pots = 1\nbake = \"other.toml\"\n": true, "pots = \n": false} {
		var s sheet
		f := BindWith([]byte(source), &s, map[string]Open{"bake": func(string) ([]byte, error) { return []byte(file), nil }})
		if (s.Bake.Pots == 1) != want || f.Meant("bake.steam") == want || f.Meant("name") || len(f.Faults) != 1 {
			t.Errorf("%q: %+v, %v", file, s, f.Faults)
		}
	}
	// Without a file, the table itself; and only where a file may be named.
	s, faults = bound("[bake]\npots = 5\n", nil)
	if len(faults) != 0 || s.Bake.Pots != 5 {
		t.Errorf("%+v, %v", s, faults)
	}
	var plain sheet
	if f := Bind([]byte(source), &plain); len(f.Faults) != 1 || f.Faults[0].Key != "bake" {
		t.Errorf("%v", f.Faults)
	}
}

// A missing key is not asked for where an unknown one is taken for it, and a place has its fault once.
func TestSlipsAndPlaces(t *testing.T) {
	var s sheet
	f := Bind([]byte("nmae = \"hall\"\n"), &s)
	if !f.Meant("name") || f.Meant("room") {
		t.Errorf("meant: name %v, room %v", f.Meant("name"), f.Meant("room"))
	}
	if !f.Has(1, 1) || f.Has(1, 2) || f.Has(2, 1) {
		t.Errorf("%v", f.Faults)
	}
	if diff := cmp.Diff(`nmae: unknown key; did you mean "name"?`, f.Faults[0].Message().String()); diff != "" {
		t.Error(diff)
	}
	if huge := Bind([]byte(strings.Repeat("#", MaxBytes+1)), &s); len(huge.Faults) != 1 ||
		huge.Faults[0].Message().String() != "the file has more than the 1048576 bytes that are read" {
		t.Errorf("%v", huge.Faults)
	}
	// Keys with dots, numbers in other bases, and numbers that are none.
	var dotted sheet
	if f := Bind([]byte("bake.pots = 0x1_0\nbake.steam = true\n"), &dotted); len(f.Faults) != 0 ||
		dotted.Bake.Pots != 16 ||
		!dotted.Bake.Steam {
		t.Errorf("%+v, %v", dotted, f.Faults)
	}
	for _, text := range []string{"inf", "-inf", "nan"} {
		f := Bind([]byte("bake.loss = "+text+"\n"), &dotted)
		if len(f.Faults) != 1 || !strings.Contains(f.Faults[0].Message().String(), `got the text "`+text+`"`) {
			t.Errorf("%s: %v", text, f.Faults)
		}
	}
	// Faults stand in the order of the file, also within a line, whenever they are found.
	var places []string
	for _, x := range Bind([]byte("bake = {pots = \"two\", zzz = 1, steam = 3}\n"), &s).Faults {
		places = append(places, fmt.Sprintf("%d:%d", x.Line, x.Column))
	}
	if diff := cmp.Diff([]string{"1:16", "1:23", "1:40"}, places); diff != "" {
		t.Error(diff)
	}
	// Places are counted in bytes from the beginning of a line, whatever ends it and wherever the text stands.
	places = nil
	const lines = "\n# ä\r\nname = \"ä\"\r\nzzz = 1\n  'q' = {a = 1}\n[bake]\n\tzz = [\n 1,\n]\n\"ä\" = 1\npots = \"ä\""
	for _, x := range Bind([]byte(lines), &s).Faults {
		places = append(places, fmt.Sprintf("%d:%d", x.Line, x.Column))
	}
	if diff := cmp.Diff([]string{"4:1", "5:3", "7:2", "10:1", "11:8"}, places); diff != "" {
		t.Error(diff)
	}
	if empty := Bind(nil, &s); len(empty.Faults) != 1 || empty.Faults[0].Message().String() != "the file is empty" {
		t.Errorf("%v", empty.Faults)
	}
}

// Pointers are read as what they point to, and a table of one key knows the others as unknown.
func TestPointersAndTablesOfOneKey(t *testing.T) {
	var s struct {
		One *struct {
			Pots int `json:"pots"`
		} `json:"one"`
		Many []*part `json:"many"`
		Text *string `json:"text"`
	}
	f := Bind([]byte("text = \"x\"\n[one]\npots = 3\n[[many]]\nname = \"wheat\"\n"), &s)
	if len(f.Faults) != 0 || s.One == nil || s.One.Pots != 3 || len(s.Many) != 1 || s.Many[0].Name != "wheat" || *s.Text != "x" {
		t.Errorf("%+v, %v", s, f.Faults)
	}
	f = Bind([]byte("[one]\npost = 3\n[many]\nnmae = \"wheat\"\n"), &s)
	var told []string
	for _, x := range f.Faults {
		told = append(told, fmt.Sprintf("%d:%d %s", x.Line, x.Column, x.Message()))
	}
	if diff := cmp.Diff([]string{`2:1 one.post: unknown key; did you mean "pots"?`,
		`4:1 many[0].nmae: unknown key; did you mean "name"?`}, told); diff != "" {
		t.Error(diff)
	}
}
