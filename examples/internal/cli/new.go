package cli

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/textpage"
	"example.org/maslin/schedule/bakeday"
)

// newBake asks a few questions and writes a bake file; every answer is written into it as it was given.
type newBake struct {
	Bread bakeday.NewBread `flags:"*"`
	Ask   bool             `flag:"ask"`
}

// tellsItself: what new writes is a file.
func (*newBake) tellsItself() {}

// flagTexts are the questions, which are what the flags say.
func (*newBake) flagTexts(s System) map[string]flagText {
	out := map[string]flagText{}
	for _, q := range (bakeday.NewBread{}).Questions() {
		says := s.tells(q.Says)
		if usual := s.usual(q); usual != "" {
			says += " (" + usual + ")"
		}
		out[q.Key] = flagText{"TEXT", says}
	}
	return out
}

// usual is the usual answer; what a bread is called is told in the reader's language.
func (s System) usual(q bakeday.BreadQuestion) string {
	switch local, _ := zoneOf(s); {
	case q.Key == "zone":
		return local
	case q.Key == "name":
		return s.tells(working.Say("%s", q.Usual))
	}
	return q.Usual
}

func (q *newBake) ask(c *call) error {
	name := "my-bread.toml"
	if len(c.args) == 1 {
		name = c.args[0]
	}
	if _, err := os.Lstat(name); err == nil {
		return existsAlready(name)
	}
	asking := &interview{c: c, bread: q.Bread, file: name, in: bufio.NewReader(io.LimitReader(c.In, 1<<20))}
	asking.on = q.Ask || terminal(c.In)
	if c.Stopping != nil {
		defer c.Stopping(nil)
		c.Stopping(func() { asking.stopped(working.Tell("cli.new_stopped", "stopped")) })
	}
	if err := asking.begin(); err != nil {
		return err
	}
	asking.recall()
	for at := 0; ; {
		if err := asking.from(at); err != nil {
			return err
		}
		day, err := asking.planned()
		if err == nil {
			return asking.write(day)
		}
		if at = asking.wrong(err); at < 0 {
			return err
		}
	}
}

func existsAlready(name string) error {
	return badInput(working.Tell("cli.exists_already_and_not_overwritten",
		"%s: exists already and is not overwritten; choose another name", fileName(name)))
}

// write writes the file, and says what to do next.
func (i *interview) write(day bakeday.Day) error {
	c, name := i.c, i.file
	head := []working.Message{
		working.Tell("cli.new_head", "A bake file. Plan it with: maslin plan %s", working.Say(shellWord(name))),
		working.Tell("cli.new_keys", "What else can stand here: maslin bake-file"),
	}
	if i.zoneGuessed() {
		head = append(head, working.Tell("cli.new_zone_guessed_here", "This computer does not say in which time zone it is: "+
			`write yours below, such as "Europe/Zurich" or "America/Denver".`))
	}
	if err := writeNew(name, i.bread.File(c.reader(output{}), head...)); errors.Is(err, os.ErrExist) {
		return existsAlready(name)
	} else if err != nil {
		return badInput(working.Tell("cli.cannot_be_written", "%s: cannot be written: %s", fileName(name), reason(err)))
	}
	if c.Stopping != nil {
		c.Stopping(nil) // nothing is lost any more
	}
	if i.earlier() != "" {
		_ = os.Remove(i.kept()) // they are in the file now
	}
	p := c.page()
	say := func(m working.Message) { p.Para(0, c.tells(m)) }
	say(working.Tell("cli.new_wrote", "Wrote %s. Now plan it, and change in it what is different at your place:",
		working.Say(textpage.Printable(name))))
	word := textpage.Printable(shellWord(name))
	p.Line("\n  maslin plan %s\n", word)
	say(working.Tell("cli.new_sheet", "and for a sheet to print or prop up:"))
	p.Line("\n  maslin plan %s --html %s", word,
		textpage.Printable(shellWord(strings.TrimSuffix(name, ".toml")+".html")))
	p.Line("")
	say(working.Tell("cli.new_bench", "and on the day, at the bench, where each screen says what to type next:"))
	p.Line("\n  maslin now %s --follow", word)
	if i.zoneGuessed() {
		p.Line("")
		say(working.Tell("cli.new_zone_guessed", "This computer does not say in which time zone it is. The file has %s: "+
			`write yours there, such as "Europe/Zurich" or "America/Denver", or all times are off.`,
			working.Say(i.bread.Answer("zone"))))
	}
	if err := p.flush(c.Out); err != nil {
		return kept(name, err)
	}
	return kept(name, c.hint(day))
}

// writeNew writes a file that is not there yet; of one that cannot be written whole nothing stays.
func writeNew(name, content string) error {
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return err
	}
	if _, err = f.WriteString(content); err == nil {
		err = f.Sync()
	}
	if e := f.Close(); err == nil {
		err = e
	}
	if err != nil {
		os.Remove(name)
	}
	return err
}

// hint tells of a new bake that the time wished for cannot be met, or only a week later, and why.
func (c *call) hint(day bakeday.Day) error {
	told := day.Report()
	var hints []report.Section
	for _, key := range []string{"missed", "why"} {
		if section := told.Section(key); len(section.Blocks) > 0 {
			hints = append(hints, section)
		}
	}
	if len(hints) == 0 {
		return nil
	}
	text := report.Report{Sections: hints}.Text(c.options(output{}))
	_, err := fmt.Fprint(c.Out, "\n", strings.TrimLeft(text, "\n"))
	return err
}

// shellWord quotes a word for a shell where it needs it.
func shellWord(name string) string {
	if name != "" && strings.Trim(name, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_./") == "" {
		return name
	}
	return "'" + strings.ReplaceAll(name, "'", `'\''`) + "'"
}
