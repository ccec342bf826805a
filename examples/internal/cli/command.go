package cli

import (
	"slices"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/vessel"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/textpage"
	"github.com/spf13/cobra"
)

// A command is a question that a baker asks: its name, by which its page of help is found, and an input whose fields
// are its flags, which knows how it is answered. All else about commands is done here, once for all of them.
type command struct {
	name string
	in   question
}

// A question calls the library and tells what it says.
type question interface{ ask(c *call) error }

// commands are all of them; one under another is named after it. They are made anew for each run.
func commands() []command {
	return []command{
		{"plan", &plan{}}, {"new", &newBake{}}, {"bake-file", &bakeFile{}}, {"now", &now{}},
		{"formula", &formula{}}, {"levain", &levain{}}, {"water", &water{}}, {"mixer", &mixer{}},
		{"sticking", &sticking{}}, {"scald", &scald{}}, {"flour", &flourBlend{}}, {"convert", &convert{}},
		{"chill", &chill{}}, {"cost", &costs{}},
		{"vessel", &several{}}, {"vessel tin", &vesselTin{}}, {"vessel basket", &vesselProof{}},
		{"vessel bowl", &vesselProof{vessel.Proofing{Vessel: vessel.LinedBowl}}}, {"vessel piece", &vesselPiece{}},
		{"vessel tub", &vesselTub{}}, {"vessel jar", &vesselJar{}},
		{"bulk", &bulk{}}, {"log", &several{}}, {"log mix", &logMix{}}, {"log rise", &logRise{}},
		{"log ready", &logReady{}}, {"log core", &logCore{}}, {"log weights", &logWeights{}}, {"log note", &logNote{}},
		{"log show", &logShow{}}, {"log import", &logImport{}}, {"learn", &learn{}},
		{"oven", &oven{}}, {"done", &done{}}, {"cool", &cool{}}, {"keep", &keep{}}, {"loss", &loss{}},
		{"table", &several{}}, {"table bulk", &tableBulk{}}, {"table water", &tableWater{}},
		{"compare", &compare{}}, {"compare curves", newCompareCurves()}, {"compare water", &compareWater{}},
		{"exercise", &exercises{}},
	}
}

// several is asked nothing itself: it holds the commands under it.
type several struct{}

func (*several) ask(c *call) error { return c.showHelp(c.cmd) }

// addCommands puts all commands under the root.
func (s System) addCommands(root *cobra.Command) {
	at := map[string]*cobra.Command{"": root}
	for _, one := range commands() {
		at[one.name] = s.cobraCommand(one)
		under, _, found := strings.Cut(one.name, " ")
		if !found {
			under = ""
		}
		at[under].AddCommand(at[one.name])
	}
}

// cobraCommand makes a command of a question and its page of help.
func (s System) cobraCommand(one command) *cobra.Command {
	p := helpPage(one.name)
	cmd := &cobra.Command{Use: p.use, Short: p.short, Long: p.long, Example: p.example}
	c := &call{System: s, cmd: cmd, paths: map[string]string{}}
	if _, ok := one.in.(*several); ok {
		cmd.Args, cmd.RunE = noSuchCommand, func(*cobra.Command, []string) error { return one.in.ask(c) }
		return cmd
	}
	c.bind(p, one.in)
	if own, ok := one.in.(interface{ completes() []string }); ok {
		c.choices = own.completes()
	}
	words := strings.Fields(p.use)[1:]
	cmd.Args = func(_ *cobra.Command, args []string) error { return c.takes(words, args) }
	cmd.ValidArgsFunction = func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
		return complete(words, c.choices, len(args))
	}
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		c.args = args
		c.checkOutput()
		if c.argument != nil && len(args) > 0 {
			if err := c.argument(strings.Join(args, " ")); err != nil {
				return c.complain(quantity.At(argumentPath, err))
			}
		}
		return one.in.ask(c)
	}
	return cmd
}

// takes refuses too many arguments, and too few, as the page of help names them: FILE, [FILE] or FILE....
func (c *call) takes(words, args []string) error {
	least, most := 0, len(words)
	for _, w := range words {
		if !strings.HasPrefix(w, "[") {
			least++
		}
		if strings.HasSuffix(strings.Trim(w, "[]"), "...") {
			most = len(args)
		}
	}
	name := c.cmd.CommandPath()
	switch {
	case len(args) < least && !c.instead():
		return badInput(working.Tell("cli.want", "%s: want %s; for example: %s", name, strings.Join(words[:least], " "),
			c.firstExample()))
	case len(args) > most && most == 0:
		return badInput(working.Tell("cli.want_flags_only", "%s: got %s, want flags only; for example: %s", name,
			excerpt(args[0]), c.firstExample()))
	case len(args) > most:
		return badInput(working.Tell("cli.arguments_want", "%s: got %d arguments, want %s", name, len(args),
			strings.Join(words, " ")))
	}
	return nil
}

// instead reports whether a flag says what the argument would: --weights is as good as a bake file.
func (c *call) instead() bool {
	return slices.ContainsFunc([]string{"weights", "percent"}, func(name string) bool {
		return c.cmd.Flags().Lookup(name) != nil && c.given(name)
	})
}

func (c *call) firstExample() string {
	first, _, _ := strings.Cut(c.cmd.Example, "\n")
	return first
}

func excerpt(text string) string { return quantity.Excerpt(textpage.Printable(text)) }

// complete completes the names of bake files, or words to choose from.
func complete(words, choices []string, given int) ([]string, cobra.ShellCompDirective) {
	if given >= len(words) && (len(words) == 0 || !strings.HasSuffix(words[len(words)-1], "...")) {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	switch word := words[min(given, len(words)-1)]; {
	case len(choices) > 0:
		return choices, cobra.ShellCompDirectiveNoFileComp
	case strings.Contains(word, "FILE.csv"):
		return []string{"csv"}, cobra.ShellCompDirectiveFilterFileExt
	case strings.Contains(word, "FILE") || word == "[OTHER]":
		return []string{"toml"}, cobra.ShellCompDirectiveFilterFileExt
	}
	return nil, cobra.ShellCompDirectiveNoFileComp
}
