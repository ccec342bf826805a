package cli

import (
	"encoding/json"
	"fmt"
	"html"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// numberForms are the forms of an answer whose numbers are compared.
var numberForms = []string{"text", "markdown", "html"}

// Every number of an answer is the same in all its forms: text, Markdown and HTML show the same ones in the same order,
// and what is shown with a unit is a value of the JSON, at the rounding that is shown.
func TestNumbersAgreeInEveryForm(t *testing.T) {
	if testing.Short() {
		t.Skip("asks everything that the help of the program shows, in four forms and two systems of units")
	}
	all := questions(t)
	villageKitchen(t)
	bakes, err := filepath.Glob("examples/bakes/*.toml")
	if err != nil || len(bakes) < 5 {
		t.Fatal(bakes, err)
	}
	for _, day := range []string{"class", "market", "sunday"} {
		all = append(all, []string{"plan", "examples/bakes/" + day})
	}
	for _, file := range bakes {
		all = append(all, []string{"plan", file}, []string{"now", file, "--now", "2026-11-27 18:00"},
			[]string{"formula", file}, []string{"compare", "water", file})
	}
	var compared counted
	for _, args := range all {
		if ownForms(args) {
			continue
		}
		for _, units := range [][]string{nil, {"--us"}} {
			line := slices.Concat(day(args), units)
			if slices.Contains(args, "--us") && units != nil {
				continue
			}
			n := agree(t, line)
			compared.shown += n.shown
			compared.amounts += n.amounts
			compared.found += n.found
		}
	}
	t.Logf("%+v", compared)
	// The rest are sums and shares of what is in the data, and what a sentence says of a source or a model.
	if compared.shown < 10000 || float64(compared.found) < 0.93*float64(compared.amounts) {
		t.Errorf("of %d numbers shown, %d have a unit, and %d of these are in the data", compared.shown, compared.amounts,
			compared.found)
	}
}

// ownForms are questions that choose a form themselves, write to the log, or are told in a form of their own.
func ownForms(args []string) bool {
	own := slices.ContainsFunc(args, func(a string) bool {
		return strings.HasPrefix(a, "--json") || strings.HasPrefix(a, "--working") || strings.HasPrefix(a, "--as") ||
			strings.HasPrefix(a, "--html") || a == "--done" || a == "--follow"
	})
	return own || slices.Contains([]string{"new", "exercise", "log", "completion"}, args[0])
}

// day puts the files of a folder in its place.
func day(args []string) []string {
	var out []string
	for _, a := range args {
		if info, err := os.Stat(a); err == nil && info.IsDir() {
			files, _ := filepath.Glob(a + "/*.toml")
			out = append(out, files...)
			continue
		}
		out = append(out, a)
	}
	return out
}

// counted are the numbers that were shown, those with a unit, and those of them that were found in the data.
type counted struct{ shown, amounts, found int }

// otherThings are shown beside a value of the data from which they differ little, and are something else.
var otherThings = map[string]struct{ kind, what string }{
	"compare curves": {"temperature", "up to where a curve was measured, beside a temperature of the table"},
	"cost":           {"mass", "what one pound costs, beside what is used"},
	"done":           {"temperature", "where the usual cores end, beside the target"},
	"levain":         {"duration", "to a quarter of an hour: about when it is past its best"},
	"oven":           {"temperature", "what a mark of a gas oven is exactly, beside what its dial says"},
	"plan":           {"mass", "the sum of what is weighed, and what rounding it to the scale makes of all batches"},
	"formula":        {"mass", "what rounding to the scale makes of the whole dough, beside that of one line"},
	"sticking": {"percent",
		"the hydration of the dough, and the most flour against sticking, beside the same of the bowl"},
	"table bulk": {"percent", "how wide the range is, beside the hydration"},
}

// excused reports whether a question may show such things of a kind.
func excused(args []string, kind string) bool {
	return otherThings[args[0]].kind == kind || len(args) > 1 && otherThings[args[0]+" "+args[1]].kind == kind
}

// agree compares the forms of one answer, and counts its numbers.
func agree(t *testing.T, args []string) (n counted) {
	t.Helper()
	name := strings.Join(args, " ")
	shown := map[string][]string{}
	pages := map[string]string{}
	for _, form := range numberForms {
		status, out, _ := spokenIn(working.Language{}, append(slices.Clone(args), "--as", form)...)
		if status > exitNoAnswer {
			return n // a question that is refused has no forms
		}
		pages[form] = out
	}
	text := withoutCharts(pages["text"])
	for form, page := range map[string]string{
		"text": text, "markdown": withoutTables(pages["markdown"], charts(pages["html"])),
		"html": html.UnescapeString(tags.ReplaceAllString(pictures.ReplaceAllString(pages["html"], " "), " ")),
	} {
		shown[form] = digits.FindAllString(page, -1)
	}
	for _, form := range numberForms[1:] {
		if !slices.Equal(shown["text"], shown[form]) {
			t.Errorf("%s: text and %s differ: %s", name, form, firstDifference(shown["text"], shown[form]))
		}
	}
	_, data, _ := spokenIn(working.Language{}, append(slices.Clone(args), "--json")...)
	values := valuesOf(t, data)
	given := amountsIn(typed.Replace(apart.ReplaceAllString(strings.Join(args, " "), "$1 $2")))
	for _, one := range amountsIn(text) {
		same := func(g shownAmount) bool { return g.kind == one.kind && math.Abs(g.value-one.value) <= one.half+1e-9 }
		if n.amounts++; values.has(one) || slices.ContainsFunc(given, same) {
			n.found++
		} else if near, ok := values.near(one); ok && !excused(args, one.kind) {
			t.Errorf("%s: %q is %.6g in the data", name, one.text, near)
		}
	}
	n.shown = len(shown["text"])
	return n
}

var digits = regexp.MustCompile(`\d+(?:[.:]\d+)*`)

func firstDifference(a, b []string) string {
	for i := range a {
		if i >= len(b) || a[i] != b[i] {
			return fmt.Sprintf("%q against %q", a[max(0, i-3):min(len(a), i+4)], b[min(max(0, i-3), len(b)):min(len(b), i+4)])
		}
	}
	return fmt.Sprintf("%q is too much", b[len(a):])
}

var (
	pictures = regexp.MustCompile(`(?s)<svg.*?</svg>|<head>.*?</head>|<details><summary>The numbers of this.*?</details>`)
	captions = regexp.MustCompile(`(?s)<details><summary>The numbers of this picture</summary>.*?<caption>(.*?)</caption>`)
	tags     = regexp.MustCompile(`<[^>]*>`)
	drawnRow = regexp.MustCompile(`[│┤├└┴━░∙┄]`)
)

// charts are the titles of the pictures on a page.
func charts(page string) (out []string) {
	for _, m := range captions.FindAllStringSubmatch(page, -1) {
		// A unit stays on the line of its number on a page of HTML.
		out = append(out, strings.ReplaceAll(html.UnescapeString(m[1]), "\u00a0", " "))
	}
	return out
}

// withoutTables leaves the tables out that stand for pictures, by their titles.
func withoutTables(page string, titles []string) string {
	var out []string
	skip := false
	for _, block := range strings.Split(page, "\n\n") {
		plain := strings.TrimSpace(strings.ReplaceAll(block, `\`, ""))
		switch {
		case slices.Contains(titles, strings.Trim(plain, "*")):
			skip = true
		case skip && strings.HasPrefix(plain, "|"):
			skip = false
		default:
			out = append(out, strings.ReplaceAll(block, `\`, ""))
		}
	}
	return strings.Join(out, "\n\n")
}

// withoutCharts leaves pictures of characters out: the rows that are drawn, and those around them.
func withoutCharts(page string) string {
	var out []string
	for _, part := range strings.Split(page, "\n\n") {
		if !drawnRow.MatchString(part) {
			out = append(out, part)
		}
	}
	return strings.Join(out, "\n\n")
}

// An amount is a number with its unit as it is shown, in the unit of comparison, and half the step it is rounded to.
type shownAmount struct {
	text, kind  string
	value, half float64
}

// perUnit says what kind a unit is of, and how much of the unit of comparison.
var perUnit = map[string]struct {
	kind   string
	factor float64
}{
	"g": {"mass", 1}, "kg": {"mass", 1000}, "mg": {"mass", 0.001}, "oz": {"mass", 28.349523125}, "lb": {"mass", 453.59237},
	"°C": {"temperature", 1}, "°F": {"temperature", 5.0 / 9}, "Δ°C": {"delta", 1}, "Δ°F": {"delta", 5.0 / 9},
	"%": {"percent", 1}, "L": {"volume", 1000}, "mL": {"volume", 1}, "cm": {"length", 1}, "mm": {"length", 0.1},
	"m": {"length", 100}, "in": {"length", 2.54}, "ft": {"length", 30.48},
}

// apart and typed turn "24C" and "5dC", as they are typed, into "24 °C" and "5 Δ°C".
var (
	apart = regexp.MustCompile(`(\d)([A-Za-z%])`)
	typed = strings.NewReplacer(" dC", " Δ°C", " dF", " Δ°F", " C", " °C", " F", " °F", " min", "m", " h", "h")
)

var (
	amountShown   = regexp.MustCompile(`(([−-]?)(?:(\d+) lb )?(\d+(?:\.\d+)?) (Δ°C|Δ°F|°C|°F|kg|mg|g|oz|lb|%|mL|L|cm|mm|m|ft))(?:[^\pL]|$)`)
	durationShown = regexp.MustCompile(`\b(?:(\d+)h)?(?:(\d+)m)?\b`)
)

// coolestOven is the lowest setting of an oven that is told, in °F; no core comes near it.
const coolestOven = 250

// amountsIn are the numbers with a unit on a page.
func amountsIn(page string) (out []shownAmount) {
	page = strings.Join(strings.Fields(page), " ")
	for _, m := range amountShown.FindAllStringSubmatch(page, -1) {
		unit := perUnit[m[5]]
		x, _ := strconv.ParseFloat(m[4], 64)
		_, decimals, _ := strings.Cut(m[4], ".")
		half := 0.5 * math.Pow(10, -float64(len(decimals))) * unit.factor
		if m[2] != "" {
			x = -x
		}
		value := x * unit.factor
		if m[5] == "°F" {
			value = (x - 32) * 5 / 9
			if x >= coolestOven && math.Mod(x, 5) == 0 {
				half = 2.5 * unit.factor // a setting stands in the steps of a dial
			}
		}
		if pounds, err := strconv.Atoi(m[3]); err == nil {
			value += float64(pounds) * perUnit["lb"].factor
		}
		out = append(out, shownAmount{m[1], unit.kind, value, half})
	}
	page = amountShown.ReplaceAllString(page, " ") // "20 m" is no time
	for _, m := range durationShown.FindAllStringSubmatch(page, -1) {
		if m[0] != "" {
			hours, _ := strconv.Atoi(m[1])
			minutes, _ := strconv.Atoi(m[2])
			out = append(out, shownAmount{m[0], "duration", float64(60*hours + minutes), 0.5})
		}
	}
	return out
}

// jsonValues are the values of an answer's data, by their kind, and all its texts.
type jsonValues struct {
	byKind map[string][]float64
	texts  string
}

// near is a value that differs from what is shown in its last digit, where none is the same.
func (v jsonValues) near(a shownAmount) (float64, bool) {
	for _, x := range v.byKind[a.kind] {
		if d := math.Abs(x - a.value); d <= 3*a.half {
			return x, true
		}
	}
	return 0, false
}

func (v jsonValues) has(a shownAmount) bool {
	for _, x := range v.byKind[a.kind] {
		if math.Abs(x-a.value) <= a.half*1.000001+1e-9 {
			return true
		}
	}
	return strings.Contains(v.texts, a.text) // in a sentence of the data
}

// valuesOf reads every leaf of the data.
func valuesOf(t *testing.T, data string) jsonValues {
	t.Helper()
	var root any
	if err := json.Unmarshal([]byte(data), &root); err != nil {
		t.Fatalf("%v: %.200s", err, data)
	}
	out := jsonValues{byKind: map[string][]float64{}}
	var texts strings.Builder
	add := func(kind string, x float64) { out.byKind[kind] = append(out.byKind[kind], x) }
	var walk func(v any)
	walk = func(v any) {
		switch v := v.(type) {
		case map[string]any:
			for _, x := range v {
				walk(x)
			}
		case []any:
			for _, x := range v {
				walk(x)
			}
		case string:
			texts.WriteString(strings.Join(strings.Fields(v), " ") + "\n")
			if m, err := quantity.ParseMass(v); err == nil {
				add("mass", m.Grams())
			} else if c, err := quantity.ParseTemperature(v); err == nil {
				add("temperature", c.Celsius())
			} else if d, err := quantity.ParseDelta(v); err == nil {
				add("delta", d.Celsius())
			} else if p, err := quantity.ParsePercent(v); err == nil {
				add("percent", p.Points())
			} else if l, err := quantity.ParseVolume(v); err == nil {
				add("volume", l.Liters()*1000)
			} else if l, err := quantity.ParseLength(v); err == nil {
				add("length", l.Meters()*100)
			} else if d, err := quantity.ParseDuration(v); err == nil {
				add("duration", d.Minutes())
			} else if at, err := time.Parse(time.RFC3339, v); err == nil {
				add("instant", float64(at.Unix()))
			}
		}
	}
	walk(root)
	out.texts = texts.String()
	return out
}
