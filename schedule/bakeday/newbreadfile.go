package bakeday

import (
	"encoding/json"
	"fmt"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// A fileLine is a key of a bake file with its value.
type fileLine struct {
	key   string
	value string // as JSON has it; TOML has it the same
	off   bool   // only shown, as what may be added
	name  string // of an ingredient, which a language may have a word for
	list  bool   // a list, of which a file may have the only item without brackets
}

// A filePart is a table of a bake file; that without a name is its top.
type filePart struct {
	name  string
	many  bool // one of several
	lines []fileLine
}

type fileParts []filePart

// text and number are lines; could is one that may be added.
func text(key, value string) fileLine { return fileLine{key: key, value: quoted(value)} }

func number(key, value string) fileLine { return fileLine{key: key, value: value} }

func could(key, value string) fileLine { return fileLine{key: key, value: quoted(value), off: true} }

// quoted is a text as JSON and TOML both read it. What is no character of Unicode is replaced.
func quoted(value string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range strings.ToValidUTF8(value, "\uFFFD") {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r < 0x20 || r == 0x7f:
			fmt.Fprintf(&b, `\u%04X`, r)
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// lines are those of the file, in its order.
func (b NewBread) lines() fileParts {
	return append(append(b.formulaParts(), b.workParts()...), b.kitchenParts()...)
}

// formulaParts are the bread and what is in it.
func (b NewBread) formulaParts() fileParts {
	out := fileParts{
		{lines: []fileLine{text("name", b.Name), text("wanted", b.Wanted), text("salt", "2 %")}},
		{name: "loaves", lines: []fileLine{
			number("pieces", b.Pieces), text("baked", b.Baked), text("style", b.style().String()), text("shape", "round"),
		}},
	}
	ingredient := func(table, name, percent string, kind ...fileLine) {
		lines := append([]fileLine{{key: "name", value: quoted(name), name: name}, text("percent", percent)}, kind...)
		out = append(out, filePart{name: table, many: true, lines: lines})
	}
	rye, unread := quantity.ParsePercent(b.Rye)
	if wheat := quantity.NewPercent(100).Sub(rye); unread == nil && !wheat.IsZero() {
		ingredient("flour", "wheat bread flour", wheat.String(), text("kind", "wheat"))
	}
	if !rye.IsZero() || unread != nil {
		ingredient("flour", "whole rye flour", b.Rye, text("kind", "whole rye"))
	}
	ingredient("liquid", "water", b.Hydration)
	if b.Leaven == yeastWord {
		ingredient("other", "instant yeast", "0.7 %", text("kind", "instant yeast"))
	}
	return out
}

// workParts say how it is made.
func (b NewBread) workParts() (out fileParts) {
	bulk := []fileLine{text("rise", "150 %")}
	if b.Leaven != yeastWord {
		out = append(out, filePart{name: "levain", lines: []fileLine{
			text("prefermented", "12 %"), text("hydration", "100 %"), text("inoculation", "40 %"),
		}})
		bulk = []fileLine{text("rise", "75 %"), number("folds", "2"), text("fold_every", "45 min")}
	}
	out = append(out,
		filePart{name: "mixing", lines: []fileLine{
			text("temperature", "25 °C"), text("mixer", b.Mixer), could("warming", "3 Δ°C"),
		}},
		filePart{name: "bulk", lines: bulk},
		filePart{name: "shaping", lines: []fileLine{text("takes", "30 min")}})
	if b.Leaven != yeastWord && b.Cold == yesWord {
		out = append(out, filePart{name: "retard", lines: []fileLine{text("at_least", "8 h"), text("at_most", "16 h")}})
	}
	return append(out, filePart{name: "oven", lines: []fileLine{
		could("temperature", "240 °C"), {key: "pots", value: "2", off: true}, {key: "together", value: "4", off: true},
		text("preheat", "45 min"), could("covered", "20 min"), could("uncovered", "20 min"),
	}})
}

// kitchenParts are the kitchen and the life around it.
func (b NewBread) kitchenParts() fileParts {
	lines := []fileLine{
		text("zone", b.Zone), {key: "asleep", value: quoted("22:30 to 06:30"), list: true},
		could("away", "08:00 to 17:00 on Monday"),
		text("altitude", b.Altitude), text("day", b.Day), text("night", b.Night),
	}
	if b.Leaven != yeastWord {
		lines = append(lines, text("refrigerator", "4 °C"))
	}
	lines = append(lines, text("tap", b.Tap), text("scale", "1 g"), text("fine_scale", "0.1 g"))
	out := fileParts{{name: "kitchen", lines: lines}}
	if b.Mixer != handWord {
		out = append(out, filePart{name: "kitchen.mixer", many: true,
			lines: []fileLine{text("kind", b.Mixer), text("bowl", b.Bowl)}})
	}
	return out
}

// json is the bake that the lines describe.
func (f fileParts) json() []byte {
	root := map[string]any{}
	for _, part := range f {
		at, path := root, strings.Split(part.name, ".")
		for _, name := range path[:len(path)-1] {
			at = at[name].(map[string]any) // a table stands before those in it
		}
		own, last := map[string]any{}, path[len(path)-1]
		switch several, _ := at[last].([]any); {
		case part.name == "":
			own = root
		case part.many:
			at[last] = append(several, own)
		default:
			at[last] = own
		}
		for _, l := range part.lines {
			if !l.off {
				own[l.key] = json.RawMessage(l.value)
				if l.list {
					own[l.key] = json.RawMessage("[" + l.value + "]")
				}
			}
		}
	}
	out, err := json.Marshal(root)
	if err != nil {
		return nil // a number that is none: it is refused by who reads it
	}
	return out
}

// File answers: how is this written down? It is the text of a bake file in TOML (toml.io, version 1.0), every key with
// what it means, as [BakeFileKeys] has it, told to the reader; keys and words are the same in every language, and
// ingredients are called as the reader calls them. What may be added stands behind a "#". The head is told first, a
// comment in each line.
func (b NewBread) File(to working.Reader, head ...working.Message) string {
	keys := map[string]FileKey{}
	tables := map[string]FileTable{}
	for _, table := range BakeFileKeys().Tables {
		tables[table.Name] = table
		for _, k := range table.Keys {
			keys[table.Name+"."+k.Name] = k
		}
	}
	var out strings.Builder
	for _, line := range append(head, fileHead[:]...) {
		out.WriteString("# " + line.Text(to) + "\n")
	}
	seen := map[string]bool{}
	write := func(text string, says working.Message) {
		if comment := says.Text(to); comment != "" && !seen[comment] {
			seen[comment] = true
			text = fmt.Sprintf("%-34s # %s", text, comment)
		}
		out.WriteString(text + "\n")
	}
	for _, part := range b.usual().lines() {
		out.WriteByte('\n')
		if part.name != "" {
			name := "[" + part.name + "]"
			if part.many {
				name = "[" + name + "]"
			}
			write(name, tables[part.name].comment())
		}
		for _, l := range part.lines {
			mark := ""
			if l.off {
				mark = "# "
			}
			if l.name != "" {
				l.value = quoted(working.Say("%s", l.name).Text(to))
			}
			write(mark+fmt.Sprintf("%-*s = %s", 13-len(mark), l.key, l.value), keys[part.name+"."+l.key].comment())
		}
	}
	return out.String()
}

// fileHead says how amounts are written.
var fileHead = [...]working.Message{
	working.Tell("bakeday.new_file_units", "Every quantity has its unit: g, kg, oz, lb; °C, °F; %%; m, ft; h, min."),
	working.Tell("bakeday.new_file_percent", "Percentages are of all the flour, the levain's included."),
}

// mostWords is how much of the words to choose from stands beside a key.
const mostWords = 60

// comment is what a key means, as a file shows it.
func (k FileKey) comment() working.Message {
	switch {
	case k.Says == "":
		return working.Message{}
	case k.Takes == "word" && len(strings.Join(k.Forms, ", ")) < mostWords && !strings.Contains(k.Says, `"`):
		return k.told()
	}
	return k.says()
}

// says is what a key means.
func (k FileKey) says() working.Message {
	return working.Tell("bakeday.key_says", "%v", keyComment(k.Says))
}

// comment is what a table is for.
func (t FileTable) comment() working.Message {
	if t.Says == "" {
		return working.Message{}
	}
	return working.Tell("bakeday.file_table_says", "%v", keyComment(t.Says))
}
