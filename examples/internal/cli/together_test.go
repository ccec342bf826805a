package cli

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/maslin/internal/trial"
	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// flagValues are values that flags of these names are given somewhere: by an example, or by a drawn question.
func flagValues() map[string]string {
	a := questioner{rand.New(rand.NewPCG(3, 20261129))}
	lines := [][]string{}
	everyCommand(func(_ []string, c *cobra.Command) {
		for _, example := range strings.Split(c.Example, "\n") {
			lines = append(lines, shellWords(example))
		}
	})
	draws := everyDraw()
	for _, name := range slices.Sorted(maps.Keys(draws)) {
		for range 5 {
			lines = append(lines, draws[name](a))
		}
	}
	values := map[string]string{"language": "de", "cautions": "all", "level": "in words", "late": "bake=1h",
		"step": "bake", "barometer": "1002hPa"}
	for _, words := range lines {
		for i := range words {
			name, ok := strings.CutPrefix(words[i], "--")
			if ok && values[name] == "" && i+1 < len(words) && !strings.HasPrefix(words[i+1], "--") {
				values[name] = words[i+1]
			}
		}
	}
	return values
}

// english are words that no German sentence has.
var english = regexp.MustCompile(`\b(and|or|which|with|whose|the|from)\b`)

// Which flags go together: each flag of a command beside the command's own example, and what is said of those that have
// nothing to do with what is asked.
func TestWhichFlagsGoTogether(t *testing.T) {
	values := flagValues()
	files := strings.NewReplacer("examples/bakes/", "../../bakes/")
	unsafe := strings.Fields("as html ics csv svg log follow done readings pool version help")
	var out strings.Builder
	everyCommand(func(path []string, c *cobra.Command) {
		name := strings.Join(path, " ")
		if c.HasSubCommands() || strings.HasPrefix(name, "log ") || name == "new" || name == "now" || name == "help" ||
			path[0] == "completion" {
			return
		}
		first, _, _ := strings.Cut(c.Example, "\n")
		words := shellWords(files.Replace(first))[1:]
		_, plain, _ := run(words...)
		fmt.Fprintf(&out, "== %s\n", strings.Join(words, " "))
		c.Flags().VisitAll(func(f *pflag.Flag) {
			if slices.Contains(unsafe, f.Name) || slices.Contains(words, "--"+f.Name) {
				return
			}
			more := "--" + f.Name
			if value := values[f.Name]; f.NoOptDefVal == "" && value != "" {
				more += "=" + value
			} else if f.NoOptDefVal == "" {
				t.Errorf("%s --%s is given nowhere", name, f.Name)
			}
			status, answer, complaint := run(append(slices.Clone(words), more)...)
			told, _, _ := strings.Cut(strings.TrimSpace(answer), "\n")
			switch {
			case status != exitAnswered:
				told = strings.TrimSpace(complaint)
				_, _, german := run(append(slices.Clone(words), more, "--language=de")...)
				if english.MatchString(german) {
					t.Errorf("%s %s is refused in two languages: %s", name, more, german)
				}
			case answer == plain:
				told = "as without it"
			}
			fmt.Fprintf(&out, "%s: %d %s\n", more, status, told)
		})
	})
	trial.Kept(t, "together.txt", out.String())
}
