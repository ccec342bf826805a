package cli

import (
	"encoding"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/textpage"
	"github.com/spf13/cobra"
)

// asked is what a command was asked by its flags. A flag that cannot be read is noted, and
// reading goes on, so that everything that is wrong with a command line is said at once.
type asked struct {
	cmd    *cobra.Command
	faults []*quantity.InputError // their paths are flags
	paths  map[string]string      // field path of the library's input to flag
}

func ask(cmd *cobra.Command) *asked { return &asked{cmd: cmd, paths: map[string]string{}} }

// longest is how much text a flag takes: a page of weights.
const longest = 4096

// flagValue reads one flag, noting instead of refusing.
type flagValue struct {
	in    *asked
	name  string
	kind  string
	given string
	read  func(string) error
}

func (f *flagValue) Set(text string) error {
	if len(text) > longest {
		f.in.fault(f.name, quantity.Excerpt(text), quantity.Tell("cli.want_at_most_bytes", "at most %d bytes", longest), quantity.ErrOutOfRange)
		return nil
	}
	f.given = text
	if err := f.read(text); err != nil {
		f.in.note(f.name, err)
	}
	return nil
}

func (f *flagValue) String() string { return f.given }
func (f *flagValue) Type() string   { return f.kind }

// note keeps what is wrong with a flag.
func (a *asked) note(name string, err error) {
	found := quantity.InputErrors(err)
	if len(found) == 0 {
		found = []*quantity.InputError{{Err: err}}
	}
	for _, e := range found {
		moved := *e
		moved.Path, moved.GoPath = "", "--"+name
		a.faults = append(a.faults, &moved)
	}
}

// fault notes a problem in words.
func (a *asked) fault(name string, got any, want quantity.Phrase, reason error) {
	a.note(name, &quantity.InputError{Got: got, Want: want, Err: reason})
}

// value adds a flag that reads a quantity; fields are the library's input fields that it fills.
func (a *asked) value(target encoding.TextUnmarshaler, name, kind, usage string, fields ...string) {
	a.each(func(text string) error { return target.UnmarshalText([]byte(text)) }, name, kind, usage, fields...)
}

// each adds a flag that may be given several times, and is read by a function.
func (a *asked) each(read func(string) error, name, kind, usage string, fields ...string) {
	a.cmd.Flags().Var(&flagValue{in: a, name: name, kind: kind, read: read}, name, usage)
	for _, f := range fields {
		a.paths[f] = name
	}
}

// number adds a flag that reads a whole number.
func (a *asked) number(target *int, name, usage string, fields ...string) {
	a.each(func(text string) error {
		n, err := strconv.Atoi(strings.TrimSpace(text))
		if err != nil {
			return &quantity.InputError{Got: quantity.Excerpt(text), Want: quantity.Tell("cli.want_whole_number", "a whole number"), Err: quantity.ErrUnit}
		}
		*target = n
		return nil
	}, name, "N", usage, fields...)
}

// word adds a flag that is one of a few words.
func (a *asked) word(target encoding.TextUnmarshaler, words []string, name, usage string, fields ...string) {
	a.each(func(text string) error {
		if i := slices.IndexFunc(words, func(w string) bool { return folded(w) == folded(text) }); i >= 0 {
			text = words[i]
		}
		if text == "" || target.UnmarshalText([]byte(text)) != nil {
			return &quantity.InputError{Got: quantity.Excerpt(text), Want: either(words), Err: quantity.ErrOutOfRange}
		}
		return nil
	}, name, "WORD", usage+": "+strings.Join(words, ", "), fields...)
}

// folded is a word without its case and with spaces for hyphens.
func folded(word string) string { return strings.ReplaceAll(strings.ToLower(word), "-", " ") }

// either lists words to choose from.
func either(words []string) quantity.Phrase {
	if n := len(words) - 1; n > 0 {
		return quantity.Tell("cli.want_or", "%s or %s", strings.Join(words[:n], ", "), words[n])
	}
	return quantity.Tell("cli.want_word", "%s", strings.Join(words, ""))
}

// named reads "NAME=VALUE"; the example says how it should have looked.
func named(text string, value encoding.TextUnmarshaler, example quantity.Phrase) (string, error) {
	name, rest, found := strings.Cut(text, "=")
	name = strings.TrimSpace(name)
	if !found || name == "" {
		return "", &quantity.InputError{Got: quantity.Excerpt(text), Want: example, Err: quantity.ErrUnit}
	}
	return name, value.UnmarshalText([]byte(rest))
}

func (a *asked) given(name string) bool { return a.cmd.Flags().Changed(name) }

// only notes the flags that are given although they go with something else that is not.
func (a *asked) only(with any, names ...string) {
	a.clash(quantity.Tell("cli.want_together", "it together with %v", with), names)
}

// not notes the flags that are given although something else says as much.
func (a *asked) not(with string, names ...string) {
	a.clash(quantity.Tell("cli.want_without", "it without %s", with), names)
}

func (a *asked) clash(want quantity.Phrase, names []string) {
	for _, n := range names {
		if a.given(n) && !slices.ContainsFunc(a.faults, func(f *quantity.InputError) bool { return f.GoPath == "--"+n }) {
			a.fault(n, "--"+n, want, quantity.ErrInconsistent)
		}
	}
}

// complain is everything wrong with the flags, and what the library says of their values; nil
// when nothing is wrong.
func (a *asked) complain(err error) error {
	out := slices.Clone(a.faults)
	bad := map[string]bool{}
	for _, f := range a.faults {
		bad[f.GoPath] = true
	}
	seen := map[string]bool{}
	for _, e := range quantity.InputErrors(err) {
		moved := *e
		moved.Path, moved.GoPath = "", a.flagFor(e.GoPath)
		if moved.GoPath == e.GoPath && e.Path != "" {
			moved.GoPath = a.flagFor(e.Path)
		}
		if !bad[moved.GoPath] && !seen[moved.Error()] {
			seen[moved.Error()] = true
			out = append(out, &moved)
		}
	}
	name := a.cmd.CommandPath() + ": "
	if len(out) == 0 {
		if err == nil || len(a.faults) > 0 {
			return nil
		}
		var e *exit
		if errors.As(err, &e) {
			return err
		}
		return badInput("%s%v", name, err)
	}
	var lines []working.Message
	for _, e := range out {
		lines = append(lines, sentence("%s%v", name, e))
	}
	if a.cmd.Flags().NFlag() == 0 && len(a.cmd.Flags().Args()) == 0 {
		example, _, _ := strings.Cut(strings.TrimSpace(a.cmd.Example), "\n")
		lines = append(lines, sentence("for example: %s", example))
	}
	return badInput("%v", working.Join(lines, "\n"))
}

// flagFor is the flag that fills a field, or an enclosing one.
func (a *asked) flagFor(path string) string {
	for p := path; p != ""; {
		if name, ok := a.paths[p]; ok && name == strings.ToUpper(name) {
			return name // an argument, not a flag; empty for one that needs no name
		} else if ok {
			return "--" + name
		}
		p = p[:max(0, strings.LastIndexAny(p, ".["))]
	}
	return path
}

// flagsOnly refuses arguments of a command that takes none.
func flagsOnly(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	example, _, _ := strings.Cut(strings.TrimSpace(cmd.Example), "\n")
	return badInput("%s: got %s, want flags only; for example: %s", cmd.CommandPath(), quantity.Excerpt(textpage.Printable(args[0])), example)
}

// wordsOf lists the names of values.
func wordsOf[T fmt.Stringer](values ...T) []string {
	var out []string
	for _, v := range values {
		out = append(out, v.String())
	}
	return out
}
