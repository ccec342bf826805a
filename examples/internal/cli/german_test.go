package cli

import (
	"io"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/maslin/dough/working"
	"example.org/maslin/examples/internal/language"
	"example.org/maslin/internal/house"
	"github.com/spf13/cobra"
)

// villageKitchen is a folder with the shipped bakes, some that cannot be kept, a bake and a log of one's own; the
// working folder is there until the test ends.
func villageKitchen(t *testing.T) {
	t.Helper()
	dir := t.TempDir()
	bakes := filepath.Join(dir, "examples", "bakes")
	if err := os.CopyFS(bakes, os.DirFS("../../bakes")); err != nil {
		t.Fatal(err)
	}
	hall, err := os.ReadFile(filepath.Join(bakes, "hall-kitchen.toml"))
	if err != nil {
		t.Fatal(err)
	}
	spoiled := func(name string, replace ...string) {
		text := strings.NewReplacer(replace...).Replace(string(hall))
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil || text == string(hall) &&
			len(replace) > 0 {
			t.Fatal(name, err)
		}
	}
	spoiled("hall-kitchen.toml")
	spoiled("too-early.toml", `"Saturday 12:30"`, `"2026-11-26 09:00"`)
	spoiled("too-warm.toml", `rise       = "75 %"`, `rise       = "25 %"`, `refrigerator = "4 °C"`,
		`refrigerator = "12 °C"`)
	spoiled("always-away.toml", `"09:00 to 15:00 on Friday"`,
		`["06:30 to 22:00 on Friday", "07:00 to 21:00 on Saturday", "07:00 to 21:00 on Thursday"]`)
	spoiled("hostile.toml", `"planetary"`, `"planetery"`, `"2.1 %"`, `"250 %"`, `"780 g"`, `780`, `"Europe/Zurich"`,
		`"Mars/Dome"`)
	spoiled("hot.toml", `day          = "22 °C"`, `day          = "38 °C"`, `night        = "19 °C"`,
		`night        = "36 °C"`, `warming     = "5 Δ°C"`, `warming     = "14 Δ°C"`)
	if err := os.WriteFile(filepath.Join(dir, "probe.csv"), []byte("0h, 25 °C\n1h, 24 °C\n2h, 23.5 °C\n"),
		0o600); err != nil {
		t.Fatal(err)
	}
	t.Chdir(dir)
}

// spokenIn runs a command line for a reader of the language.
func spokenIn(l working.Language, args ...string) (status int, out, complaint string) {
	return asked(System{language: &l, Getenv: variables(map[string]string{"MASLIN_LOG": "bakes.jsonl"})}, args...)
}

// questions lists command lines: the examples of every command's help, and questions that have no good answer.
func questions(t *testing.T) [][]string {
	t.Helper()
	out := [][]string{{"new", "my-bread.toml", "--zone", "Europe/Zurich"}}
	var visit func(c *cobra.Command)
	visit = func(c *cobra.Command) {
		for _, line := range strings.Split(strings.ReplaceAll(c.Example, "\\\n", " "), "\n") {
			if words := shellWords(line); len(words) > 1 && words[0] == "maslin" && words[1] != "new" &&
				words[1] != "completion" {
				out = append(out, words[1:])
			}
		}
		for _, sub := range c.Commands() {
			visit(sub)
		}
	}
	visit(newRoot(System{Getenv: func(string) string { return "" }, Out: io.Discard, language: new(working.Language)}))
	for _, line := range []string{
		"plan examples/bakes/same-day-rolls.toml --working", "plan examples/bakes/overnight-buns.toml --working", "plan examples/bakes/supper-loaves.toml --cautions",
		"plan hall-kitchen.toml --cautions --working", "plan hall-kitchen.toml --html sheet.html --svg curve.svg",
		"plan too-early.toml", "plan too-warm.toml", "plan always-away.toml", "plan hostile.toml", "plan hot.toml --working",
		"plan hall-kitchen.toml --late 5h --step shape", "plan hall-kitchen.toml --late 90m --step feed",
		"plan too-early.toml --fit",
		"plan hall-kitchen.toml --learned", "now too-early.toml", "now hall-kitchen.toml --now '2026-11-27 18:00'",
		"now hall-kitchen.toml --now '2026-11-28 08:30'",
		"water --dough 24C --flour 35C --room 36C --friction 25dC --tap 20C --water-weight 1kg --working",
		"water --dough 30C --flour 2C --room 4C --friction 1dC", "levain --want 900g --culture 5g --stages 1",
		"formula --weights '800 g wheat, 200 g whole rye, 700 g water, 20 g salt' --working",
		"exercise --count 30 --seed 3 --key", "exercise --count 30 --seed 4 --key --us",
		"exercise --difficulty hard --count 20 --key",
		"water --dough 26 --flour 300C", "done --core 150C", "bulk --dough 3C --room 3C --prefermented 1%",
	} {
		out = append(out, shellWords(line))
	}
	if len(out) < 80 {
		t.Fatalf("%d questions", len(out))
	}
	return out
}

// inGerman are the commands whose answers are German throughout, and stay so.
var inGerman = []string{
	"plan", "now", "formula", "water", "levain", "exercise", "done", "cool", "loss", "oven", "mixer", "bulk", "scald",
}

// shellWords splits a command line as a shell does, with both kinds of quotes.
func shellWords(line string) []string {
	var out []string
	for _, m := range regexp.MustCompile(`(?:[^\s'"]|'[^']*'|"[^"]*")+`).FindAllString(line, -1) {
		out = append(out, strings.NewReplacer("'", "", `"`, "").Replace(m))
	}
	return out
}

// TestShippedPagesAreGerman: every sentence and word that the program tells, for the shipped bakes and for those that
// cannot be kept, has German.
func TestShippedPagesAreGerman(t *testing.T) {
	if testing.Short() {
		t.Skip("asks everything that the help of the program shows")
	}
	const open, shut = "⟦", "⟧"
	english, _, err := house.AllSentences("../../..")
	if err != nil {
		t.Fatal(err)
	}
	vocabulary, err := house.Vocabulary("../../..")
	if err != nil {
		t.Fatal(err)
	}
	all := questions(t)
	villageKitchen(t)
	marked := working.Language{Tag: "de", Sentences: map[string]string{}, Words: map[string]string{}}
	for id, text := range english {
		marked.Sentences[id] = open + id + shut + text
	}
	for _, key := range vocabulary {
		marked.Words[key] = open + key + shut
	}
	told := map[string]string{}
	for _, args := range all {
		_, out, complaint := spokenIn(marked, args...)
		if !slices.Contains(inGerman, args[0]) {
			continue
		}
		for _, m := range regexp.MustCompile(open+`([^`+shut+`]*)`+shut).FindAllStringSubmatch(unwrapped(out+complaint), -1) {
			told[m[1]] = strings.Join(args, " ")
		}
	}
	page, err := os.ReadFile("sheet.html")
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range regexp.MustCompile(open+`([^`+shut+`]*)`+shut).FindAllStringSubmatch(string(page), -1) {
		told[m[1]] = "the sheet"
	}
	german := language.German()
	for _, key := range slices.Sorted(maps.Keys(told)) {
		if german.Sentences[key] == "" && german.Words[key] == "" {
			t.Errorf("%s has no German; it is told by %s", key, told[key])
		}
	}
	if len(told) < 700 {
		t.Errorf("only %d sentences and words are told", len(told))
	}
}

// unwrapped joins what a page breaks into lines.
func unwrapped(page string) string { return strings.Join(strings.Fields(page), " ") }

// TestNothingIsToldInEnglishAlone: where every sentence, word and name that a language can have is taken away, no
// English is left on the pages of plans and what belongs to them: a text that is put together outside of messages
// could not be told in any other language.
func TestNothingIsToldInEnglishAlone(t *testing.T) {
	if testing.Short() {
		t.Skip("asks everything that the help of the program shows")
	}
	english, _, err := house.AllSentences("../../..")
	if err != nil {
		t.Fatal(err)
	}
	vocabulary, err := house.Vocabulary("../../..")
	if err != nil {
		t.Fatal(err)
	}
	all := questions(t)
	villageKitchen(t)
	placeholder := regexp.MustCompile(`%%|%\+?(?:\[\d+\])?(?:0\d*)?(?:\.\d+)?[vsdfgqtx]`)
	mute := working.Language{Tag: "de", Sentences: map[string]string{}, Words: maps.Clone(language.German().Words)}
	for id, text := range english {
		mute.Sentences[id] = "·" + strings.Join(placeholder.FindAllString(text, -1), " ")
	}
	for key := range mute.Words {
		mute.Words[key] = ""
	}
	for _, key := range vocabulary {
		mute.Words[key] = ""
	}
	for _, args := range all {
		if !slices.Contains(inGerman, args[0]) {
			continue
		}
		if slices.Contains(args, "--working") || slices.Contains(args, "--key") {
			continue // formulas have letters
		}
		_, out, _ := spokenIn(mute, args...)
		out = typedCommand.ReplaceAllString(out, "")
		for _, word := range regexp.MustCompile(`[A-Za-z]{3,}`).FindAllString(out, -1) {
			if !slices.Contains(notTranslated, word) {
				t.Errorf("%q is left of %s", word, strings.Join(args, " "))
			}
		}
	}
}

// typedCommand is a command that a page suggests, which is typed as it is in every language, and its further lines.
var typedCommand = regexp.MustCompile(`(?m)maslin (?:now|log|learn) .*$(?:\n {12,}\S.*$)*`)

// notTranslated are units, names that the questions or the files give, and the name of a step for programs.
var notTranslated = strings.Fields("min Maslin for the Saturday lunch Coffee rolls Supper loaves bakes jsonl shape")
