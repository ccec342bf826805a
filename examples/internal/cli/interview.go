package cli

import (
	"bufio"
	"errors"
	"example.org/maslin/dough/working"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/examples/internal/tomlbind"
	"example.org/maslin/internal/textpage"
	"example.org/maslin/schedule/bakeday"
)

// An interview goes through the questions of a new bake: what a flag says is not asked, and away from a terminal
// nothing is. What is answered is checked at once, and not lost when the answers end.
type interview struct {
	c     *call
	b     *newBake
	all   []wanted
	asked []int // which were asked, in order
	file  string
	in    *bufio.Reader
	on    bool // somebody answers
}

// begin takes the flags, and the usual answers for what they do not say. What is wrong with any of them is said for
// all.
func (i *interview) begin() error {
	for _, q := range i.all {
		if !i.c.given(q.flag) {
			*q.to = q.usual
		}
	}
	for _, q := range i.all {
		if i.c.given(q.flag) {
			text, err := q.reads(*q.to)
			if *q.to = text; err != nil {
				i.c.note(q.flag, plainError(err))
			}
		}
	}
	return i.c.complain(nil)
}

// plainError is an error whose words can be printed.
func plainError(err error) error {
	if len(quantity.InputErrors(err)) > 0 {
		return err
	}
	return errors.New(textpage.Printable(err.Error()))
}

// from asks the questions from one on; "back" goes to the one before.
func (i *interview) from(at int) error {
	if i.c.Stopping != nil {
		defer i.c.Stopping(nil)
		i.c.Stopping(func() { fmt.Fprintln(i.c.Err, i.soFar("stopped")) })
	}
	for at < len(i.all) {
		q := i.all[at]
		if !i.on || i.c.given(q.flag) || q.skip != nil && q.skip() {
			at++
			continue
		}
		text, err := i.read(q)
		if err != nil {
			return err
		}
		if strings.EqualFold(text, "back") {
			if n := len(i.asked); n > 0 {
				at, i.asked = i.asked[n-1], i.asked[:n-1]
			}
			continue
		}
		if wrong := i.take(q, text); wrong != nil {
			i.say(wrong.Error())
			continue
		}
		i.asked = append(i.asked, at)
		at++
	}
	return nil
}

// read asks one question. What stands in brackets is what Enter keeps.
func (i *interview) read(q wanted) (string, error) {
	fmt.Fprint(i.c.Out, i.c.plain(q.says+" ["+textpage.Printable(*q.to)+"] "))
	text, err := i.in.ReadString('\n')
	text = strings.TrimSpace(text)
	if err != nil && text == "" {
		fmt.Fprintln(i.c.Out)
		return "", badInput(working.Say("%s", i.soFar("no answer to "+strconv.Quote(q.says))))
	}
	return text, nil
}

// take reads an answer, and lets the library judge it beside the others. How it was understood is said where it
// was not said so.
func (i *interview) take(q wanted, text string) error {
	if text == "" {
		return nil
	}
	before := *q.to
	read, err := q.reads(text)
	if err != nil {
		return err
	}
	if *q.to = read; read != text {
		i.say(read)
	}
	var bake bakeday.Bake
	if len(tomlbind.Bind([]byte(i.b.file()), &bake).Faults) > 0 {
		return nil // said at the end
	}
	clock, err := clockFor(i.c.System, bake.Kitchen.Zone, "")
	if err != nil {
		return nil
	}
	for _, e := range quantity.InputErrors(bake.Check(clock)) {
		if i.c.flagFor(e.GoPath) == "--"+q.flag {
			*q.to = before
			moved := *e
			moved.Path, moved.GoPath = "", ""
			return errors.New(strings.TrimPrefix(moved.Error(), ": "))
		}
	}
	return nil
}

// wrong says what is wrong with the whole and where to ask again; less than 0 when nobody answers.
func (i *interview) wrong(err error) int {
	if !i.on || len(i.asked) == 0 {
		return -1
	}
	at := slices.IndexFunc(i.asked, func(n int) bool { return strings.Contains(err.Error(), "--"+i.all[n].flag+":") })
	if at < 0 {
		return -1
	}
	i.say(err.Error())
	first := i.asked[at]
	i.asked = i.asked[:at]
	return first
}

func (i *interview) say(text string) { fmt.Fprintln(i.c.Out, i.c.plain("  "+textpage.Printable(text))) }

// soFar is the command that goes on where the answers ended.
func (i *interview) soFar(why string) string {
	command := "maslin new " + shellWord(i.file)
	for n, q := range i.all {
		if i.c.given(q.flag) || slices.Contains(i.asked, n) {
			command += " --" + q.flag + " " + shellWord(*q.to)
		}
	}
	return "maslin new: " + why + "; nothing was written; to go on from here: " + textpage.Printable(command)
}
