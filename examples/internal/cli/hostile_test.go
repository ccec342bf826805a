package cli

import (
	"slices"
	"strings"
	"testing"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// commandsHere are the commands of the bowl and the oven.
func commandsHere(visit func(path []string, c *cobra.Command)) {
	everyCommand(func(path []string, c *cobra.Command) {
		if !slices.Contains(strings.Fields("plan new bake-file now bulk log learn table compare exercise"), path[0]) &&
			!c.HasSubCommands() {
			visit(path, c)
		}
	})
}

var hostile = []string{
	"", "NaN", "-Inf", "1e999", "-1", "=1g", "a=", "0:0:0", "\x00\x1b[31m\xff", "٣ g", "NaN g", "-273.15 C", "1e30 g",
	"0.0000000000001 g", "100000 %", "-5 %", "99:99=80C",
	"00:00=0K", "10000h", "5 g 5 g 5 g", strings.Repeat("9", 1_000_000) + " g", strings.Repeat("1 g flour,", 400),
}

// Whatever is given to any flag is answered or refused in words: no panic, no long quotation, nothing
// on standard output together with a refusal, no control characters.
func TestHostileFlags(t *testing.T) {
	commandsHere(func(path []string, c *cobra.Command) {
		c.Flags().VisitAll(func(f *pflag.Flag) {
			for _, text := range hostile {
				if testing.Short() && len(text) > 1000 {
					continue // long to read under the race detector
				}
				args := slices.Clone(path)
				if (c.Name() == "formula" || c.Name() == "cost") && f.Name != "weights" {
					args = append(args, "../../bakes/hall-kitchen.toml")
				}
				status, out, complaint := run(append(args, "--"+f.Name+"="+text)...)
				shown := text[:min(len(text), 20)]
				switch {
				case status == exitBadInput && (out != "" || complaint == ""):
					t.Errorf("%s --%s=%q: refused with %d bytes of output and the complaint %q", c.Name(), f.Name, shown, len(out),
						complaint)
				case status != exitBadInput && complaint != "":
					t.Errorf("%s --%s=%q: status %d with the complaint %q", c.Name(), f.Name, shown, status, complaint)
				case len(complaint) > 20_000:
					t.Errorf("%s --%s=%q: a complaint of %d bytes", c.Name(), f.Name, shown, len(complaint))
				case strings.ContainsAny(complaint+out, "\x00\x1b"):
					t.Errorf("%s --%s=%q: control characters are printed", c.Name(), f.Name, shown)
				}
			}
		})
	})
}

// Every command explains itself, and its first example works as it stands.
func TestHelpHasAWorkingExample(t *testing.T) {
	commandsHere(func(_ []string, c *cobra.Command) {
		if c.Short == "" {
			t.Errorf("%s does not say what it is for", c.Name())
		}
		for line := range strings.SplitSeq(strings.TrimSpace(c.Example), "\n") {
			args := words(strings.TrimPrefix(strings.TrimSpace(line), "maslin "))
			for i, a := range args {
				args[i] = strings.Replace(a, "examples/bakes/", "../../bakes/", 1)
			}
			if status, _, complaint := run(args...); status != exitAnswered {
				t.Errorf("%s: status %d, %s", line, status, complaint)
			}
			for _, form := range []string{"--json", "--us", "--working", "--working=markdown", "--working=latex"} {
				if c.Name() == "convert" && len(args) == 2 && strings.HasPrefix(form, "--working") {
					continue // units are converted by definition, and it says so
				}
				if status, out, complaint := run(append(args, form)...); status != exitAnswered || len(out) < 20 {
					t.Errorf("%s %s: status %d, %d bytes, %s", line, form, status, len(out), complaint)
				}
			}
		}
	})
}

// words splits a command line with quotes.
func words(line string) []string {
	var out []string
	for i, part := range strings.FieldsFunc(strings.ReplaceAll(line, `"`, `'`), func(r rune) bool { return r == '\'' }) {
		if i%2 == 1 {
			out = append(out, part)
		} else {
			out = append(out, strings.Fields(part)...)
		}
	}
	return out
}
