package cli

import (
	"errors"
	"slices"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule/wallclock"
	"github.com/spf13/cobra"
)

// A call is a question as it was asked. A flag that cannot be read is noted, and reading goes on, so that everything
// that is wrong with a command line is said at once.
type call struct {
	System
	output
	cmd    *cobra.Command
	args   []string
	faults []*quantity.InputError // their paths are flags
	paths  map[string]string      // field path of the library's input to flag

	argument func(text string) error // reads what stands behind the command, where it is a value
	choices  []string                // or one of these words
}

func (c *call) given(name string) bool { return c.cmd.Flags().Changed(name) }

// note keeps what is wrong with a flag.
func (c *call) note(name string, err error) {
	found := quantity.InputErrors(err)
	if len(found) == 0 && err != nil {
		found = []*quantity.InputError{{Err: err}}
	}
	for _, e := range found {
		moved := *e
		moved.Path, moved.GoPath = "", "--"+name
		c.faults = append(c.faults, &moved)
	}
}

// fault notes a problem in words.
func (c *call) fault(name string, got any, want quantity.Phrase, reason error) {
	c.note(name, &quantity.InputError{Got: got, Want: want, Err: reason})
}

// need notes that a flag is missing.
func (c *call) need(name string, want quantity.Phrase) {
	if !c.given(name) {
		c.fault(name, "", want, quantity.ErrRequired)
	}
}

// only notes the flags that are given although they go with something else that is not.
func (c *call) only(with any, names ...string) {
	c.clash(quantity.Tell("cli.want_together", "it together with %v", with), names)
}

// not notes the flags that are given although something else says as much.
func (c *call) not(with any, names ...string) {
	c.clash(quantity.Tell("cli.want_without", "it without %v", with), names)
}

func (c *call) clash(want quantity.Phrase, names []string) {
	for _, n := range names {
		if c.given(n) && !c.faulty(n) {
			c.fault(n, "--"+n, want, quantity.ErrInconsistent)
		}
	}
}

// faulty reports whether something is wrong with a flag already.
func (c *call) faulty(name string) bool {
	return slices.ContainsFunc(c.faults, func(f *quantity.InputError) bool { return f.GoPath == "--"+name })
}

// one of the flags has to be given, and no second one; it is empty when that is not so.
func (c *call) one(names ...string) string {
	given := slices.DeleteFunc(slices.Clone(names), func(n string) bool { return !c.given(n) })
	first, last := strings.Join(names[:len(names)-1], ", --"), names[len(names)-1]
	switch len(given) {
	case 0:
		c.fault(names[0], "", quantity.Tell("cli.want_or_2", "--%s or --%s", first, last), quantity.ErrRequired)
		return ""
	case 1:
		return given[0]
	}
	c.fault(given[1], quantity.Tell("cli.got_together", "it together with --%s", given[0]),
		quantity.Tell("cli.want_one_and", "one of --%s and --%s", first, last), quantity.ErrInconsistent)
	return ""
}

// tell prints an answer, or complains of the flags and of what the library says of their values.
func (c *call) tell(a telling, err error) error { return c.tellIf(true, a, err) }

// tellIf tells an answer that may be that there is none.
func (c *call) tellIf(possible bool, a telling, err error) error {
	if wrong := c.complain(err); wrong != nil {
		return wrong
	}
	if _, err := c.write(a); err != nil {
		return err
	}
	if !possible {
		return &exit{status: exitNoAnswer}
	}
	return nil
}

// complain is everything wrong with the flags, and what the library says of their values; nil when nothing is wrong.
func (c *call) complain(err error) error {
	out := slices.Clone(c.faults)
	bad, seen := map[string]bool{}, map[string]bool{}
	for _, f := range c.faults {
		bad[f.GoPath] = true
	}
	for _, e := range quantity.InputErrors(err) {
		moved := *e
		moved.Path, moved.GoPath = "", c.flagFor(e.GoPath)
		if moved.GoPath == e.GoPath && e.Path != "" {
			moved.GoPath = c.flagFor(e.Path)
		}
		if !bad[moved.GoPath] && !seen[moved.Error()] {
			seen[moved.Error()] = true
			out = append(out, &moved)
		}
	}
	name := c.cmd.CommandPath() + ": "
	var e *exit
	switch {
	case errors.As(err, &e) && len(out) == 0:
		return err
	case len(out) == 0 && err == nil:
		return nil
	case len(out) == 0:
		return badInput(working.Say("%s%v", name, err))
	}
	var lines []working.Message
	for _, e := range out {
		lines = append(lines, working.Say("%s%v", name, e))
	}
	if e != nil {
		lines = append(lines, e.text)
	}
	if c.cmd.Flags().NFlag() == 0 && len(c.cmd.Flags().Args()) == 0 {
		lines = append(lines, working.Tell("cli.for_example", "for example: %s", c.firstExample()))
	}
	return badInput(working.Join(lines, "\n"))
}

// flagFor is the flag that fills a field, or an enclosing one: by its whole path, or as its own room names it.
func (c *call) flagFor(path string) string {
	for part, more := path, true; more; _, part, more = strings.Cut(part, ".") {
		for p := part; p != ""; p = p[:max(0, strings.LastIndexAny(p, ".["))] {
			if name, ok := c.paths[p]; ok && name == strings.ToUpper(name) {
				return name // an argument, not a flag; empty for one that needs no name
			} else if ok {
				return "--" + name
			}
		}
	}
	return path
}

// either lists words to choose from.
func either(words []string) quantity.Phrase {
	if n := len(words) - 1; n > 0 {
		return quantity.Tell("cli.want_or", "%s or %s", strings.Join(words[:n], ", "), words[n])
	}
	return quantity.Tell("cli.want_word", "%s", strings.Join(words, ""))
}

// past is the moment that a flag tells; none when it is not given. What cannot be read is noted.
func (c *call) past(flag, text string, now time.Time) time.Time {
	if text == "" {
		return time.Time{}
	}
	at, err := wallclock.ReadPast(text, now)
	c.note(flag, err)
	return at
}

// after is how long after the start the time of a flag is. What cannot be read is noted.
func (c *call) after(flag, text string, start time.Time) quantity.Elapsed {
	d, err := wallclock.ReadAfter(text, start)
	c.note(flag, err)
	return quantity.Elapsed(d)
}
