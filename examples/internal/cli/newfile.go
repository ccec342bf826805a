package cli

import (
	_ "embed"
	"fmt"
	"strings"
	"text/template"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
)

//go:embed newbread.toml.tmpl
var newBread string

// file is the bake file, with a comment on every line that is not plain.
func (b *newBake) file() string {
	var out strings.Builder
	t := template.Must(template.New("bread").Funcs(template.FuncMap{"q": tomlText}).Parse(newBread))
	if err := t.Execute(&out, b); err != nil {
		panic(err) // the template is compiled in and tested
	}
	lines := strings.Split(strings.TrimRight(out.String(), "\n"), "\n")
	for i, line := range lines {
		text, comment, commented := strings.Cut(line, "\t")
		mark := ""
		if rest, off := strings.CutPrefix(text, "# "); off && commented {
			text, mark = rest, "# "
		}
		if key, value, ok := strings.Cut(text, " = "); ok && (commented || mark == "") && !strings.HasPrefix(text, "#") {
			text = mark + fmt.Sprintf("%-*s = %s", 13-len(mark), key, value)
		}
		if lines[i] = text; commented {
			lines[i] = fmt.Sprintf("%-34s %s", text, comment)
		}
	}
	return strings.Join(lines, "\n") + "\n"
}

// Yeast, Retarded, Wheat and SomeRye are for the template: what raises the bread, whether it spends a night in the
// cold, and the flours that it has.
func (b *newBake) Yeast() bool    { return b.Leaven == "yeast" }
func (b *newBake) Retarded() bool { return b.Leaven == "levain" && b.Cold == "yes" }

func (b *newBake) Wheat() string {
	rye, _ := quantity.ParsePercent(b.Rye) // checked when it was given
	if wheat := quantity.NewPercent(100).Sub(rye); !wheat.IsZero() {
		return wheat.String()
	}
	return ""
}

func (b *newBake) SomeRye() string {
	if rye, _ := quantity.ParsePercent(b.Rye); rye.IsZero() {
		return ""
	}
	return b.Rye
}

// The largest roll, and the rye from which a bread is a rye or a mixed rye bread; common practice, no source.
const (
	largestRoll = 150 // g, baked
	ryeBread    = 90  // % of the flour
	mixedRye    = 30
)

// Style is what kind of bread it is, by its size and its rye.
func (b *newBake) Style() string {
	baked, _ := quantity.ParseMass(b.Baked) // both checked when they were given
	rye, _ := quantity.ParsePercent(b.Rye)
	switch {
	case baked.Grams() <= largestRoll:
		return bake.CrustyRoll.String()
	case rye.Points() >= ryeBread:
		return bake.Rye.String()
	case rye.Points() >= mixedRye:
		return bake.MixedRye.String()
	}
	return bake.LeanHearth.String()
}

// tomlText writes a text as a TOML string.
func tomlText(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range strings.ToValidUTF8(s, "\uFFFD") {
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
