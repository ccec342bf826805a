package cli

import (
	"maps"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.org/maslin/internal/trial"
)

// told asks the program as on a page that is so wide, and notes what it says and how it ends.
func told(columns string, args ...string) string {
	status, out, complaint := asked(System{Getenv: variables(map[string]string{"COLUMNS": columns})}, args...)
	var words []string
	for _, a := range args {
		if strings.ContainsAny(a, " ") || a == "" {
			a = "'" + a + "'"
		}
		words = append(words, a)
	}
	return heard(strings.Join(words, " "), status, out, complaint)
}

// The page of help of every command, as wide as a terminal and as narrow as a telephone.
func TestPagesOfHelp(t *testing.T) {
	var out strings.Builder
	out.WriteString(told("80", "--help") + told("44", "--help"))
	for _, c := range commands() {
		path := strings.Fields(c.name)
		out.WriteString(told("80", append(slices.Clone(path), "--help")...))
	}
	for _, name := range []string{"plan", "log mix", "bulk"} {
		out.WriteString(told("44", append(strings.Fields(name), "--help")...))
	}
	trial.Kept(t, "help.txt", out.String())
}

// What a shell completes after every command, and what each says of arguments that it cannot take.
func TestArgumentsOfEveryCommand(t *testing.T) {
	var out strings.Builder
	for _, c := range commands() {
		path := strings.Fields(c.name)
		for _, given := range [][]string{{""}, {"x", ""}, {"x", "y", ""}} {
			out.WriteString(told("80", slices.Concat([]string{"__completeNoDesc"}, path, given)...))
		}
		out.WriteString(told("80", slices.Concat(path, strings.Fields("x y z 1 2 3 4"))...))
		out.WriteString(told("80", append(slices.Clone(path), "--no-such-flag")...))
		if c.name != "new" && c.name != "bake-file" && c.name != "now" && !strings.HasPrefix(c.name, "log") {
			out.WriteString(told("80", path...))
		}
	}
	trial.Kept(t, "arguments.txt", out.String())
}

// Questions of every kind, drawn once and kept with their answers: in turns plain, in US units, on a narrow page; every
// eleventh with its derivation, every eleventh as data.
func TestAnswersOfEveryCommand(t *testing.T) {
	a := questioner{rand.New(rand.NewPCG(7, 20261129))}
	log, probe := logFile(t), probeFile(t)
	files := strings.NewReplacer("READINGS", probe, "LOG", log)
	names := strings.NewReplacer(log, "bakes.jsonl", probe, "probe.csv")
	var out strings.Builder
	draws := everyDraw()
	for i, name := range slices.Sorted(maps.Keys(draws)) {
		if name == "no plan" {
			continue
		}
		args := draws[name](a)
		for k, arg := range args {
			args[k] = files.Replace(arg)
		}
		columns := []string{"80", "100", "46"}[i%3]
		switch {
		case i%2 == 1:
			args = append(args, "--us")
		case i%11 == 6 && args[0] != "plan":
			args = append(args, "--working")
		case i%11 == 8 && args[0] != "plan":
			args = append(args, "--json")
		}
		out.WriteString(names.Replace(told(columns, args...)))
	}
	trial.Kept(t, "answers.txt", out.String())
}

// Every form an answer can be printed in.
func TestFormsOfAnAnswer(t *testing.T) {
	var b strings.Builder
	for i, line := range []string{"levain --ratio 1:2:2 --room 25C", "formula --weights '1 kg wheat, 700 g water, 20 g salt'",
		"cost --weights '1 kg wheat, 700 g water, 20 g salt' --loaves 2 --price wheat=20/25kg --price salt=0.90/kg", "cool --loaf 780g --room 21C"} {
		for _, form := range []string{"markdown", "html", "csv", "text"} {
			if i == 2 || form != "html" { // one page of HTML shows how they are
				b.WriteString(told("80", append(shellWords(line), "--as", form)...))
			}
		}
	}
	b.WriteString(told("80", shellWords("bulk --dough 26C --room 20C --weight 3kg --prefermented 10% --ready-by 6h")...))
	trial.Kept(t, "forms.txt", b.String())
}
