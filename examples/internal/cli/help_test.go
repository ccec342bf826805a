package cli

import (
	"slices"
	"strings"
	"testing"

	"example.org/maslin/internal/textpage"
	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// everyCommand visits all commands that a baker can give.
func everyCommand(visit func(path []string, c *cobra.Command)) {
	var walk func(path []string, c *cobra.Command)
	walk = func(path []string, c *cobra.Command) {
		for _, sub := range c.Commands() {
			if sub.IsAvailableCommand() {
				next := append(slices.Clone(path), sub.Name())
				visit(next, sub)
				walk(next, sub)
			}
		}
	}
	walk(nil, newRoot(System{Getenv: func(string) string { return "" }}))
}

// The help of every command begins with what it answers and a command to try, and is readable at 80 columns.
func TestHelpOfEveryCommand(t *testing.T) {
	everyCommand(func(path []string, c *cobra.Command) {
		name := "maslin " + strings.Join(path, " ")
		status, out, complaint := run(append(slices.Clone(path), "--help")...)
		if status != exitAnswered || complaint != "" {
			t.Errorf("%s --help: status %d, %q", name, status, complaint)
		}
		if !strings.HasPrefix(out, name+": ") {
			t.Errorf("%s --help begins with %.60q", name, out)
		}
		if c.Example == "" {
			t.Errorf("%s has no example", name)
		}
		if _, rest, _ := strings.Cut(out, "\n\n"); !strings.HasPrefix(rest, "For example\n  maslin ") {
			t.Errorf("%s --help: after its first line comes %.60q, not an example", name, rest)
		}
		for _, line := range strings.Split(out, "\n") {
			if textpage.Width(line) > 80 {
				t.Errorf("%s --help has a line of %d columns: %s", name, textpage.Width(line), line)
			}
		}
	})
}

// Every flag is explained in the page of help of its command.
func TestEveryFlagIsExplained(t *testing.T) {
	seen := 0
	everyCommand(func(path []string, c *cobra.Command) {
		c.Flags().VisitAll(func(f *pflag.Flag) {
			if seen++; strings.TrimSpace(f.Usage) == "" || strings.HasPrefix(f.Usage, ":") {
				t.Errorf("maslin %s --%s is not explained", strings.Join(path, " "), f.Name)
			}
		})
	})
	if seen < 300 {
		t.Errorf("only %d flags", seen)
	}
}

// Every command stands in one group of the help, and no group names another.
func TestGroupsNameEveryCommand(t *testing.T) {
	var grouped, known []string
	for _, g := range groups {
		grouped = append(grouped, strings.Fields(g.commands)...)
	}
	everyCommand(func(path []string, _ *cobra.Command) {
		if len(path) == 1 {
			known = append(known, path[0])
		}
	})
	known = append(known, "completion", "help") // cobra adds them when it runs
	slices.Sort(grouped)
	slices.Sort(known)
	if !slices.Equal(grouped, known) {
		t.Errorf("the groups name\n%v, the commands are\n%v", grouped, known)
	}
}

// A long example goes on in a way that a shell reads as one command.
func TestLongCommandsBreakBetweenArguments(t *testing.T) {
	for _, text := range []string{
		`maslin bulk --yeast "0.6 % instant" --dough 25C --seen "30 % at 2h10m" --mixed 14:00`,
		`maslin compare examples/bakes/hall-kitchen.toml examples/bakes/same-day-rolls.toml`,
		`maslin log note 'a text in quotation marks that is longer than a line can be'`,
	} {
		p := &page{textpage.New(40)}
		p.command(text)
		joined := strings.ReplaceAll(strings.TrimSpace(p.String()), " \\\n      ", " ")
		if joined != text {
			t.Errorf("%s\nis printed as\n%s", text, p.String())
		}
	}
}
