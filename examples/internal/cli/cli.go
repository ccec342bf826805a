// Package cli is the command line of maslin: it parses, calls the library and prints.
//
// Exit status: 0 answered; 1 no answer is possible, and the output says why; 2 bad input,
// named with its place, what was given and what is accepted; 3 what was asked for is done and
// kept, but could not be shown: do not do it again.
package cli

import (
	"errors"
	"fmt"
	"io"
	"maps"
	"strconv"
	"strings"
	"time"

	"example.org/maslin/dough/working"
	"example.org/maslin/examples/internal/language"
	"example.org/maslin/internal/nearest"
	"example.org/maslin/internal/textpage"
	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// System is what the program uses of the machine it runs on.
type System struct {
	In       io.Reader
	Out, Err io.Writer
	Getenv   func(string) string
	Now      func() time.Time
	Terminal bool   // Out is a terminal
	Width    int    // columns of that terminal; 0 when not known
	Zone     string // name of the machine's time zone; empty when not known

	// Stopping takes what is to be said when the program is told to stop; nil takes it away again.
	Stopping func(say func())

	language *working.Language // of the answers: what the environment prefers, or --language
}

// Version is the version of the program.
const Version = "0.1.0"

const (
	exitAnswered = 0
	exitNoAnswer = 1
	exitBadInput = 2
	exitUnshown  = 3
)

// An exit carries the status of a command that has already said what is to be said.
type exit struct {
	status int
	text   working.Message // for standard error; may be none
}

func (e *exit) Error() string { return e.text.String() }

// Message is what is told.
func (e *exit) Message() working.Message { return e.text }

// kept tells of an entry or a file that is written although what was to follow failed, so that nobody
// writes it twice. Err is why; nil stays nil.
func kept(what string, err error) error {
	if err == nil {
		return nil
	}
	return &exit{exitUnshown, working.Tell("cli.written_but",
		"%s: written, and not to be written again; but what follows it failed: %s", textpage.Printable(what), reason(err))}
}

// badInput says in words what is wrong; an error of the library in it is told in the reader's language.
func badInput(m working.Message) error { return &exit{exitBadInput, m} }

// complaint tells what is wrong. Texts in it stay as they were given: the name of a command is no ingredient.
func (s System) complaint(e *exit) string {
	to := s.reader(output{})
	to.Language.Words = maps.Clone(to.Language.Words)
	maps.DeleteFunc(to.Language.Words, func(key, _ string) bool { return strings.HasPrefix(key, "working.Name/") })
	return e.text.Text(to)
}

// Run executes one command line and returns the exit status.
func Run(args []string, s System) int {
	if s.language == nil {
		preferred := language.Preferred(s.Getenv)
		s.language = &preferred
	}
	badLanguage := s.speak(args)
	other := s.Out // for what cobra prints
	if s.asciiOnly() {
		s.Err, other = asciiWriter{s.Err}, asciiWriter{s.Out}
	}
	root := newRoot(s)
	root.SetArgs(args)
	root.SetIn(s.In)
	root.SetOut(other)
	root.SetErr(s.Err)
	var helped error // of --help, which has no other way back
	root.SetHelpFunc(func(cmd *cobra.Command, _ []string) { helped = s.showHelp(cmd) })
	err := badLanguage
	if err == nil {
		err = root.Execute()
	}
	if err == nil {
		err = helped
	}
	if err == nil {
		return exitAnswered
	}
	var e *exit
	if errors.As(err, &e) {
		if !e.text.IsZero() {
			fmt.Fprintln(s.Err, s.complaint(e))
		}
		return e.status
	}
	fmt.Fprintln(s.Err, "maslin: "+textpage.Printable(unquoteCobra(err.Error())))
	return exitBadInput
}

// speak takes the language that is asked for, so that what is wrong with the line before it is told in it too.
func (s System) speak(args []string) error {
	line := pflag.NewFlagSet("", pflag.ContinueOnError)
	line.ParseErrorsAllowlist.UnknownFlags = true
	line.BoolP("help", "h", false, "")
	tag := line.String("language", "", "")
	if _ = line.Parse(args); !line.Changed("language") { // what is wrong with the line is said when the command reads it
		return nil
	}
	l, err := language.Named(*tag)
	if err != nil {
		return badInput(working.Say("maslin: --language: %v", wordsOf(err)))
	}
	*s.language = l
	return nil
}

func unquoteCobra(text string) string {
	return strings.TrimSuffix(strings.ReplaceAll(text, "\n\nDid you mean this?\n\t", "; did you mean "), "\n")
}

// newRoot is the program with its commands.
func newRoot(s System) *cobra.Command {
	p := helpPage("maslin")
	root := &cobra.Command{
		Use: p.use, Short: p.short, Long: p.long, Version: Version, SilenceUsage: true, SilenceErrors: true,
		Args: noSuchCommand, RunE: func(cmd *cobra.Command, _ []string) error { return s.showHelp(cmd) },
	}
	root.SetVersionTemplate("maslin {{.Version}}\n")
	root.SetFlagErrorFunc(flagError)
	root.SuggestionsMinimumDistance = 2
	root.PersistentFlags().String("language", "", "`LANGUAGE` of the answer: de or en (as LANG says)")
	s.addCommands(root)
	return root
}

// noSuchCommand suggests the command that was probably meant.
func noSuchCommand(under *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	text := working.Tell("cli.no_command", "%s: no command %s", under.CommandPath(),
		strconv.Quote(textpage.Printable(args[0][:min(len(args[0]), 32)])))
	var known []string
	for _, c := range under.Commands() {
		known = append(known, c.Name())
	}
	if near := nearest.Word(args[0], known); near != "" {
		return badInput(working.Tell("cli.did_you_mean", "%v; did you mean %s?", text, strconv.Quote(near)))
	}
	return badInput(working.Tell("cli.help_lists_them", "%v; %s --help lists them", text, under.CommandPath()))
}

// flagError names the flag, what was given and, for an unknown flag, the closest known one.
func flagError(cmd *cobra.Command, err error) error {
	text := err.Error()
	if name, ok := strings.CutPrefix(text, "unknown flag: --"); ok {
		var known []string
		cmd.Flags().VisitAll(func(f *pflag.Flag) { known = append(known, f.Name) })
		out := working.Tell("cli.unknown_flag", "%s: unknown flag --%s", cmd.CommandPath(), fileName(name))
		if near := nearest.Word(name, known); near != "" {
			return badInput(working.Tell("cli.did_you_mean_flag", "%v; did you mean --%s?", out, near))
		}
		return badInput(working.Tell("cli.see_help", "%v; see %s --help", out, cmd.CommandPath()))
	}
	var bare *pflag.ValueRequiredError
	if errors.As(err, &bare) {
		return badInput(working.Tell("cli.flag_needs_value", "%s: --%s: want a value behind it; see %[1]s --help",
			cmd.CommandPath(), bare.GetFlag().Name))
	}
	return badInput(working.Say("%s: %s", cmd.CommandPath(), fileName(text)))
}
