package tomlbind

import (
	"fmt"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"github.com/google/go-cmp/cmp"
)

type part struct {
	Name    string           `json:"name"`
	Percent quantity.Percent `json:"percent"`
}

type sheet struct {
	Name  string               `json:"name"`
	Room  quantity.Temperature `json:"room"`
	Parts []part               `json:"part"`
	Bake  struct {
		Pots  int     `json:"pots"`
		Steam bool    `json:"steam"`
		Loss  float64 `json:"loss"`
	} `json:"bake"`
	Days []string `json:"days"`
}

func TestBindReadsEverything(t *testing.T) {
	var s sheet
	f := Bind([]byte(`name = "hall"
room = "22 °C"
days = "Friday"
[[part]]
name = "wheat"
percent = "80 %"
[[part]]
percent = "20 %"
[bake]
pots = 2
steam = true
loss = 0.12
`), &s)
	if len(f.Faults) != 0 {
		t.Fatal(f.Faults)
	}
	want := sheet{Name: "hall", Room: quantity.Celsius(22), Parts: []part{{"wheat", quantity.NewPercent(80)}, {"", quantity.NewPercent(20)}}, Days: []string{"Friday"}}
	want.Bake.Pots, want.Bake.Steam, want.Bake.Loss = 2, true, 0.12
	if diff := cmp.Diff(want, s); diff != "" {
		t.Error(diff)
	}
	for path, want := range map[string]string{
		"part[1].percent": "8:11", "part[1].name": "7:3", "room": "2:8", "bake.pots": "10:8", "bake.pots.more": "10:8", "nothing": "1:1",
	} {
		line, column := f.Locate(path)
		if got := fmt.Sprintf("%d:%d", line, column); got != want {
			t.Errorf("%s stands at %s, want %s", path, got, want)
		}
	}
}

func TestBindReportsAllFaultsAtTheirPlaces(t *testing.T) {
	var s sheet
	f := Bind([]byte(`nmae = "hall"
room = "22"
days = [1, 2]
[[part]]
percent = 80
[bake]
pots = "two"
steam = 1
loss = nan
zzz = 1
room = {}
`), &s)
	var got []string
	for _, x := range f.Faults {
		got = append(got, fmt.Sprintf("%d:%d %s: %s", x.Line, x.Column, x.Key, x.Text))
	}
	want := []string{
		`1:1 nmae: unknown key; did you mean "name"?`,
		`2:8 room: unit: got "22" without a unit, want a temperature with its scale, such as "24.5 °C", "76 °F" or "297.65 K"`,
		`3:9 days[0]: wrong form: got the number 1, want a text`,
		`3:12 days[1]: wrong form: got the number 2, want a text`,
		`5:11 part[0].percent: wrong form: got the number 80, want a text: a percentage with its sign, such as "68 %"`,
		`7:8 bake.pots: wrong form: got the text "two", want a whole number`,
		`8:9 bake.steam: wrong form: got the number 1, want true or false`,
		`9:8 bake.loss: wrong form: got the text "nan", want a number`,
		`10:1 bake.zzz: unknown key; known here: pots, steam, loss`,
		`11:1 bake.room: unknown key; known here: pots, steam, loss`,
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

func TestBindRefusesWhatIsNoFile(t *testing.T) {
	for name, source := range map[string]string{
		"empty": "", "comment only": "# nothing\n", "syntax": "a = ", "twice": "name = \"a\"\nname = \"b\"", "huge": strings.Repeat("#", MaxBytes+1),
		"binary": "\x00\x01", "not UTF-8": "name = \"\xff\"",
	} {
		var s sheet
		if f := Bind([]byte(source), &s); len(f.Faults) == 0 {
			t.Errorf("%s was accepted: %+v", name, s)
		}
	}
}

func FuzzBind(f *testing.F) {
	f.Add([]byte("name = \"x\"\n[[part]]\npercent = \"5 %\"\n[bake]\npots=1"))
	f.Add([]byte("[bake]\npots.x = 1\n[[bake.y]]\n"))
	f.Add([]byte("part = [{name = \"a\"}, 3]\nbake = {pots = [1]}"))
	f.Fuzz(func(t *testing.T, source []byte) {
		var s sheet
		file := Bind(source, &s)
		for _, x := range file.Faults {
			if x.Line < 1 || x.Column < 1 || x.Text.IsZero() {
				t.Errorf("fault without a place: %+v", x)
			}
		}
	})
}
