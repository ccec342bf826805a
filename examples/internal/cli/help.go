package cli

import (
	"cmp"
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"example.org/maslin/dough/working"
	"example.org/maslin/internal/textpage"
)

// groups are the commands by what a baker asks, in the order of a bake.
var groups = []struct {
	title    working.Message
	commands string
}{
	{working.Tell("cli.help_whole_bake", "The whole bake"), "plan new bake-file now"},
	{working.Tell("cli.help_bowl", "Into the bowl"),
		"formula levain water mixer sticking scald flour convert chill vessel cost"},
	{working.Tell("cli.help_clock", "The dough's clock"), "bulk log learn"},
	{working.Tell("cli.help_oven", "The oven, and after"), "oven done cool keep loss"},
	{working.Tell("cli.help_teach", "To teach and to compare"), "table compare exercise"},
	{working.Tell("cli.help_program", "This program"), "completion help"},
}

// everywhere are the flags that many commands have; the help lists them last, and in the reader's language.
var everywhere = map[string]bool{"json": true, "as": true, "us": true, "working": true, "document": true,
	"level": true, "log": true, "now": true, "help": true, "version": true}

// showHelp prints the help of a command: an example first, then what it does, then how to ask.
func (s System) showHelp(cmd *cobra.Command) error {
	p := s.page()
	if cmd.HasParent() {
		p.Para(0, cmd.CommandPath()+": "+lowerFirst(cmd.Short))
		if cmd.Example != "" {
			p.heading(s.tells(working.Tell("cli.help_example", "For example")))
			for _, line := range strings.Split(cmd.Example, "\n") {
				p.command(strings.TrimSpace(line))
			}
		}
	}
	if cmd.Long != "" {
		if cmd.HasParent() {
			p.Line("")
		}
		p.prose(cmd.Long)
	}
	if cmd.Runnable() && cmd.HasParent() && !cmd.HasAvailableSubCommands() {
		p.heading(s.tells(working.Tell("cli.help_how_to_ask", "How to ask")))
		p.Para(2, cmd.UseLine())
	}
	if cmd.HasAvailableSubCommands() {
		s.commands(p, cmd)
	}
	s.flags(p, cmd)
	if cmd.HasAvailableSubCommands() {
		p.Line("")
		p.Para(0, s.tells(working.Tell("cli.help_more", "More of each, with an example: %s COMMAND --help",
			cmd.CommandPath())))
	}
	return p.flush(s.Out)
}

// commands lists what a command has under it; those of the program itself in their groups.
func (s System) commands(p *page, cmd *cobra.Command) {
	short := map[string]string{}
	var all []string
	wide := 0
	for _, c := range cmd.Commands() {
		if c.IsAvailableCommand() || c.Name() == "help" {
			short[c.Name()] = c.Short
			all = append(all, c.Name())
			wide = max(wide, len(c.Name()))
		}
	}
	list := func(title string, names []string) {
		p.heading(title)
		var rows [][]string
		for _, n := range names {
			rows = append(rows, []string{fmt.Sprintf("%-*s", wide, n), short[n]}) // one column over all groups
		}
		p.Rows(2, "ll", rows)
	}
	if cmd.HasParent() {
		list(s.tells(working.Tell("cli.help_commands", "Commands")), all)
		return
	}
	for _, g := range groups {
		list(s.tells(g.title), strings.Fields(g.commands))
	}
}

// flags lists the flags of a command, its own ones first.
func (s System) flags(p *page, cmd *cobra.Command) {
	var own, common [][]string
	known := s.commonFlags()
	add := func(f *pflag.Flag) {
		if f.Hidden {
			return
		}
		kind, usage := pflag.UnquoteUsage(f)
		name := "--" + f.Name
		if f.Shorthand != "" && f.ShorthandDeprecated == "" {
			name = "-" + f.Shorthand + ", " + name
		}
		switch {
		case f.NoOptDefVal != "" && f.Value.Type() != "bool":
			name += "[=" + kind + "]"
		case kind != "":
			name += " " + kind
		}
		if everywhere[f.Name] {
			common = append(common, []string{name, cmp.Or(known[f.Name].says, usage)})
		} else {
			own = append(own, []string{name, usage})
		}
	}
	cmd.NonInheritedFlags().VisitAll(add)
	cmd.InheritedFlags().VisitAll(add)
	title := working.Tell("cli.help_flags", "Flags")
	if len(own) > 0 {
		p.heading(s.tells(title))
		p.Rows(2, "ll", own)
		title = working.Tell("cli.help_flags_of_many", "Flags of many commands")
	}
	if len(common) > 0 {
		p.heading(s.tells(title))
		p.Rows(2, "ll", common)
	}
}

// commonFlags say what the flags of many commands do, to a reader for whom there is a page of them.
func (s System) commonFlags() map[string]flagText {
	p := helpText{flags: map[string]flagText{}}
	language, _, _ := strings.Cut(s.language.Tag, "-")
	if text, err := helpFiles.ReadFile("help/everywhere-" + language + ".txt"); err == nil {
		p.readFlags(string(text))
	}
	return p.flags
}

// command prints a command line; one that is too long goes on after a backslash, where a shell reads on.
func (p *page) command(text string) {
	lead := "  "
	for textpage.Width(lead)+textpage.Width(text) > p.Columns() {
		fits := func(i int) bool { return textpage.Width(lead)+textpage.Width(text[:i])+len(` \`) <= p.Columns() }
		cut, quoted := -1, false
		for i, r := range text {
			switch {
			case r == '"' || r == '\'':
				quoted = !quoted
			case r == ' ' && i > 0 && !quoted && fits(i) &&
				(cut < 0 || strings.HasPrefix(text[i:], " --") || !strings.Contains(text, " --")):
				cut = i // between flags, when there are any
			}
		}
		if cut < 0 {
			break
		}
		p.Line(`%s%s \`, lead, text[:cut])
		lead, text = "      ", text[cut+1:]
	}
	p.Line("%s%s", lead, text)
}

// prose prints paragraphs; lines that are indented stay as they are.
func (p *page) prose(text string) {
	var words []string
	flush := func() {
		if len(words) > 0 {
			p.Hang("", "", strings.Join(words, " "))
		}
		words = nil
	}
	for _, line := range strings.Split(text, "\n") {
		switch {
		case line == "":
			flush()
			p.Line("")
		case strings.HasPrefix(line, "  "):
			flush()
			p.command(strings.TrimSpace(line))
		default:
			words = append(words, line)
		}
	}
	flush()
}

func lowerFirst(s string) string {
	if len(s) > 1 && s[1] >= 'a' && s[1] <= 'z' {
		return strings.ToLower(s[:1]) + s[1:]
	}
	return s
}
