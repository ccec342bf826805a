package cli

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/maslin/examples/internal/bakelog"
	"example.org/maslin/schedule/bench"
)

// Who only asks how the day stands logs nothing; who follows the plan logs it.
func TestOnlyWhoFollowsIsLogged(t *testing.T) {
	for flags, want := range map[string]int{"": 0, " --follow": 1} {
		log := filepath.Join(t.TempDir(), "bakes.jsonl")
		s, out := kitchen(t, log)
		status := Run(strings.Fields("now ../../bakes/hall-kitchen.toml"+flags), s)
		if status != exitAnswered || out.Len() == 0 {
			t.Errorf("now%s: status %d, %s", flags, status, out)
		}
		if want == 0 {
			if _, err := os.Stat(log); err == nil {
				t.Errorf("now%s: a log was begun", flags)
			}
			continue
		}
		content, err := bakelog.Read(log, bench.LogReading{})
		if err != nil || len(content.Entries) != want || content.Entries[0].Kind != bench.SawPlan {
			t.Errorf("now%s: %v, %+v", flags, err, content.Entries)
		}
	}
}

// A formula in percent is scaled to what is asked for: the dough, the flour, or 1 kg of flour where nothing is.
func TestAFormulaInPercentIsScaledToTheWish(t *testing.T) {
	for wish, want := range map[string]struct{ flour, dough string }{
		"--dough=3400g":          {"2000 g", "3400 g"},
		"--flour=500g":           {"500 g", "850 g"},
		"":                       {"1000 g", "1700 g"},
		"--pieces=4 --each=850g": {"2000 g", "3400 g"},
	} {
		s, out := kitchen(t, filepath.Join(t.TempDir(), "log.jsonl"))
		args := append([]string{"formula", "--percent", "100 % wheat, 68 % water, 2 % salt", "--json"}, strings.Fields(wish)...)
		if status := Run(args, s); status != exitAnswered {
			t.Errorf("%s: status %d, %s", wish, status, out)
			continue
		}
		var read struct {
			Batch struct {
				Views struct{ Flour, Dough string }
			}
		}
		if err := json.Unmarshal(out.Bytes(), &read); err != nil || read.Batch.Views.Flour != want.flour ||
			read.Batch.Views.Dough != want.dough {
			t.Errorf("%s: %+v, want %+v, %v", wish, read, want, err)
		}
	}
}

// A file that is no TOML is told as that and nothing more; of one that is, everything that is wrong is told.
func TestWhatIsToldOfAFileThatIsWrong(t *testing.T) {
	for text, want := range map[string][]string{
		"[[flour]\nname = 1\n":                {"TOML"},
		"[[flower]]\nname = \"x\"\n":          {"flower", "required"},
		"salt = \"2 parrots\"\nwhat = true\n": {"parrots", "what", "required"},
	} {
		name := filepath.Join(t.TempDir(), "bake.toml")
		if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		s, out := kitchen(t, filepath.Join(t.TempDir(), "log.jsonl"))
		status, lines := Run([]string{"plan", name}, s), strings.Count(out.String(), "\n")
		if status != exitBadInput || len(want) == 1 && lines != 1 {
			t.Errorf("%q: status %d, %d lines: %s", text, status, lines, out)
		}
		for _, part := range want {
			if !strings.Contains(out.String(), part) {
				t.Errorf("%q is not told of %q: %s", part, text, out)
			}
		}
	}
}

// What is imported twice is taken once, and each time it is said how many were taken and how many were there.
func TestImportsSayWhatWasThere(t *testing.T) {
	folder := t.TempDir()
	csv := filepath.Join(folder, "bakes.csv")
	if err := os.WriteFile(csv, []byte("at,kind,rise\n2026-11-27 09:00,rise,30 %\n2026-11-27 10:00,rise,50 %\n"),
		0o600); err != nil {
		t.Fatal(err)
	}
	s, out := kitchen(t, filepath.Join(folder, "log.jsonl"))
	for _, want := range []string{"taken: 2; there already: 0", "taken: 0; there already: 2"} {
		out.Reset()
		if status := Run([]string{"log", "import", csv}, s); status != exitAnswered || !strings.Contains(out.String(), want) {
			t.Errorf("status %d, %s, want %s", status, out, want)
		}
	}
}

// A tin is as long, wide and high as it is said to be, in this order, and holds their product.
func TestTheSidesOfATin(t *testing.T) {
	s, out := kitchen(t, "")
	if status := Run(strings.Fields("vessel tin --size 30x10x5cm --json"), s); status != exitAnswered {
		t.Fatal(status, out)
	}
	if !strings.Contains(out.String(), `"1.5 L"`) {
		t.Errorf("30 × 10 × 5 cm are 1.5 L: %s", out)
	}
}

// A formula is one dough: what is given beside it is refused by name.
func TestOneDoughAtATime(t *testing.T) {
	const file = "../../bakes/hall-kitchen.toml"
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{"formula", file, "--percent", "100 % wheat, 68 % water"}, "one dough"},
		{[]string{"formula", "--weights", "1 kg wheat, 680 g water", "--percent", "100 % wheat"}, "one dough"},
		{[]string{"formula", "--weights", "1 kg wheat, 680 g water", "--pieces", "3"}, "--pieces"},
		{[]string{"formula", "--weights", "1 kg wheat, 680 g water", "--each", "300g"}, "--each"},
		{[]string{"formula", "--weights", "1 kg wheat, 680 g water", "--dough", "3kg"}, "--dough"},
		{[]string{"flour", "--lot", "a=13%", "--lot", "b=9%", "--target", "11%", "--gluten"}, "--gluten"},
		{[]string{"flour", "--lot", "a=13%", "--lot", "b=9%", "--target", "11%", "--w", "200"}, "--w"},
		{[]string{"compare", file, "--hand", "--machine", "spiral"}, "want one of"},
		{[]string{"compare", file}, "want one of"},
		{[]string{"cost", file, "--sold", "0"}, "--sold"},
		{[]string{"cost", file, "--loaves", "0"}, "--loaves"},
		{[]string{"plan", "--jsom"}, "did you mean --json?"},
		{[]string{"plam"}, "did you mean"},
	} {
		s, out := kitchen(t, filepath.Join(t.TempDir(), "log.jsonl"))
		if status := Run(c.args, s); status != exitBadInput || !strings.Contains(out.String(), c.want) {
			t.Errorf("%v: status %d, %s", c.args, status, out)
		}
	}
}

// A name is quoted for a shell where it needs it, and only there.
func TestNamesForAShell(t *testing.T) {
	for name, want := range map[string]string{"hall/bread-2.toml": "hall/bread-2.toml", "": "''", "my bread": "'my bread'",
		"grandma's": `'grandma'\''s'`, "$x": "'$x'", "a;b": "'a;b'"} {
		if got := shellWord(name); got != want {
			t.Errorf("%q for a shell is %s, want %s", name, got, want)
		}
	}
}
