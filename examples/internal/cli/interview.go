package cli

import (
	"bufio"
	"fmt"
	"os"
	"slices"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/textpage"
	"example.org/maslin/schedule/bakeday"
)

// An interview goes through the questions of a new bread: what a flag says is not asked, and away from a terminal
// nothing is. What is answered is checked at once, and not lost when the answers end.
type interview struct {
	c     *call
	bread bakeday.NewBread
	asked []string // keys of the questions that were answered, in order
	file  string
	in    *bufio.Reader
	on    bool // somebody answers
}

// begin reads the flags, and takes the usual answers of this machine and reader. What is wrong with any flag is said
// for all.
func (i *interview) begin() error {
	given := i.bread
	i.bread = bakeday.NewBread{}
	for _, q := range given.Questions() {
		i.c.paths[q.Key] = q.Key
		if text := given.Answer(q.Key); i.c.given(q.Key) {
			i.c.note(q.Key, i.take(q.Key, text))
			continue
		}
		if usual := i.c.usual(q); usual != q.Usual {
			i.c.note(q.Key, i.take(q.Key, usual))
		}
	}
	return i.c.complain(nil)
}

// take reads an answer.
func (i *interview) take(key, text string) (err error) {
	if key == "zone" {
		if _, err := clockFor(i.c.System, text, ""); err != nil {
			return err
		}
	}
	i.bread, err = i.bread.With(key, text, i.clock())
	return err
}

// clock is that of the kitchen, as far as it is known.
func (i *interview) clock() bakeday.KitchenClock {
	clock, err := clockFor(i.c.System, i.bread.Zone, "")
	if err != nil {
		return bakeday.KitchenClock{Now: i.c.Now()}
	}
	return clock
}

// from asks the questions from one on; "back" goes to the one before.
func (i *interview) from(at int) error {
	for {
		all := i.bread.Questions()
		if at == len(all) {
			return nil
		}
		q := all[at]
		if !i.on || i.c.given(q.Key) || q.Needless {
			at++
			continue
		}
		text, err := i.read(q)
		if err != nil {
			return err
		}
		if folded := strings.ToLower(text); folded == "back" || folded == i.c.tells(backWord) {
			if n := len(i.asked); n > 0 {
				at = slices.IndexFunc(all, func(q bakeday.BreadQuestion) bool { return q.Key == i.asked[n-1] })
				i.asked = i.asked[:n-1]
			}
			continue
		}
		if text != "" {
			if err := i.take(q.Key, text); err != nil {
				i.say(i.c.complaint(wordsOf(err)))
				continue
			}
			if said := i.bread.Answer(q.Key); said != text {
				i.say(said)
			}
		}
		i.asked = append(i.asked, q.Key)
		at++
	}
}

var backWord = working.Tell("cli.new_back", "back")

// wordsOf is an error without the place, which has just been asked for.
func wordsOf(err error) *exit {
	var lines []working.Message
	for _, e := range quantity.InputErrors(err) {
		bare := *e
		bare.Path, bare.GoPath = "", ""
		lines = append(lines, working.Problem(&bare))
	}
	return &exit{exitBadInput, working.Join(lines, "\n  ")}
}

// read asks one question. What stands in brackets is what Enter keeps.
func (i *interview) read(q bakeday.BreadQuestion) (string, error) {
	says := i.c.tells(q.Says)
	fmt.Fprint(i.c.Out, i.c.plain(says+" ["+textpage.Printable(i.bread.Answer(q.Key))+"] "))
	text, err := i.in.ReadString('\n')
	text = strings.TrimSpace(text)
	if err != nil && text == "" {
		fmt.Fprintln(i.c.Out)
		i.stopped(working.Tell("cli.new_no_answer", `no answer to "%v"`, working.Say(says)))
		return "", &exit{status: exitBadInput}
	}
	return text, nil
}

// planned is the plan of the bread, or what is wrong with it.
func (i *interview) planned() (bakeday.Day, error) {
	day, err := i.bread.Plan(i.c.cmd.Context(), i.clock())
	return day, i.c.complain(err)
}

// zoneGuessed: nobody said in which zone, and the machine does not know.
func (i *interview) zoneGuessed() bool {
	local, known := zoneOf(i.c.System)
	return !known && i.bread.Answer("zone") == local && !i.c.given("zone")
}

// wrong says what is wrong with the whole and where to ask again; less than 0 when nobody answers.
func (i *interview) wrong(err error) int {
	if !i.on {
		return -1
	}
	for n, q := range i.bread.Questions() {
		at := slices.Index(i.asked, q.Key)
		if at >= 0 && strings.Contains(err.Error(), "--"+q.Key+":") {
			i.say(err.Error())
			i.asked = i.asked[:at]
			return n
		}
	}
	return -1
}

func (i *interview) say(text string) { fmt.Fprintln(i.c.Out, i.c.plain("  "+textpage.Printable(text))) }

// stopped tells how to go on where the answers ended. Where it cannot be told, because the terminal is gone, it is kept
// in a file beside the one that was to be written.
func (i *interview) stopped(why working.Message) {
	says := i.c.complaint(&exit{exitBadInput, working.Tell("cli.new_go_on",
		"maslin new: %v; nothing was written; to go on from here: %v", why, working.Say(textpage.Printable(i.soFar())))})
	if _, err := fmt.Fprintln(i.c.Err, says); err != nil && len(i.asked) > 0 {
		_ = writeNew(i.kept(), i.soFar()+"\n") // there is nobody left to tell
	}
}

// kept is the file of the answers that could not be told.
func (i *interview) kept() string { return i.file + ".answers" }

// earlier are the answers from a time when the terminal went away; any other file of that name is somebody's own.
func (i *interview) earlier() string {
	if info, err := os.Lstat(i.kept()); err != nil || !info.Mode().IsRegular() || info.Size() > 1<<16 {
		return ""
	}
	text, err := os.ReadFile(i.kept())
	if said := strings.TrimSpace(string(text)); err == nil && strings.HasPrefix(said, newCommand) {
		return said
	}
	return ""
}

// recall tells of the answers of an earlier time.
func (i *interview) recall() {
	if said := i.earlier(); said != "" && i.on {
		i.say(i.c.tells(working.Tell("cli.new_kept", "%s has answers of an earlier time; to go on from there: %v",
			working.Say(fileName(i.kept())), working.Say(said[:min(len(said), longest)]))))
	}
}

const newCommand = "maslin new "

// soFar is the command that goes on where the answers ended.
func (i *interview) soFar() string {
	command := newCommand + shellWord(i.file)
	for _, q := range i.bread.Questions() {
		if i.c.given(q.Key) || slices.Contains(i.asked, q.Key) {
			command += " --" + q.Key + " " + shellWord(i.bread.Answer(q.Key))
		}
	}
	return command
}
