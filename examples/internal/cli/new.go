package cli

import (
	"bufio"
	"errors"
	"example.org/maslin/dough/working"
	"fmt"
	"io"
	"os"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/examples/internal/tomlbind"
	"example.org/maslin/internal/textpage"
	"example.org/maslin/schedule/bakeday"
)

// newBake asks a few questions and writes a bake file; every answer is written into it as it was given. The questions
// are the texts of the flags, with the usual answers.
type newBake struct {
	Name      string `flag:"name"`
	Pieces    string `flag:"pieces" paths:"Loaves.Pieces=pieces"`
	Baked     string `flag:"baked" paths:"Loaves.Baked=baked"`
	Hydration string `flag:"hydration" paths:"Liquids=hydration Salt=hydration"`
	Rye       string `flag:"rye" paths:"Flours=rye"`
	Leaven    string `flag:"leaven"`
	Cold      string `flag:"cold"`
	Mixer     string `flag:"mixer"`
	Bowl      string `flag:"bowl" paths:"Kitchen.Mixers=bowl"`
	Zone      string `flag:"zone"`
	Wanted    string `flag:"wanted"`
	Altitude  string `flag:"altitude" paths:"Kitchen.Altitude=altitude"`
	Day       string `flag:"day" paths:"Kitchen.Day=day"`
	Night     string `flag:"night" paths:"Kitchen.Night=night"`
	Tap       string `flag:"tap" paths:"Kitchen.Tap=tap"`
	Ask       bool   `flag:"ask"`

	ZoneGuessed bool // nobody said in which zone, and the machine does not know
}

// tellsItself: what new writes is a file.
func (*newBake) tellsItself() {}

// A wanted is one thing that maslin new wants to know.
type wanted struct {
	flag, says, usual string
	to                *string
	reads             func(string) (string, error)
	skip              func() bool
}

// questions are asked in this order.
func (b *newBake) questions(s System) []wanted {
	local, _ := zoneOf(s)
	temperature := warmth
	yeast, hand := func() bool { return b.Leaven == "yeast" }, func() bool { return b.Mixer == "hand" }
	out := []wanted{
		{flag: "name", to: &b.Name, reads: nameText},
		{flag: "pieces", to: &b.Pieces, reads: countText},
		{flag: "baked", to: &b.Baked, reads: inUnit(quantity.ParseMass, "g")},
		{flag: "hydration", to: &b.Hydration, reads: b.ofFlour(true)},
		{flag: "rye", to: &b.Rye, reads: b.ofFlour(false)},
		{flag: "leaven", to: &b.Leaven, reads: leavens},
		{flag: "cold", to: &b.Cold, reads: yesOrNo, skip: yeast},
		{flag: "mixer", to: &b.Mixer, reads: mixerWord},
		{flag: "bowl", to: &b.Bowl, reads: inUnit(quantity.ParseVolume, "L"), skip: hand},
		{flag: "zone", to: &b.Zone, usual: local, reads: func(text string) (string, error) {
			_, err := clockFor(s, text, "")
			return text, err
		}},
		{flag: "wanted", to: &b.Wanted, reads: func(text string) (string, error) {
			clock, err := clockFor(s, b.Zone, "")
			if err != nil {
				clock.Now = s.Now()
			} else {
				clock.Now = clock.Now.In(clock.Zone)
			}
			return wish(clock.Now)(text)
		}},
		{flag: "altitude", to: &b.Altitude, reads: inUnit(quantity.ParseLength, "m")},
		{flag: "day", to: &b.Day, reads: temperature},
		{flag: "night", to: &b.Night, reads: temperature},
		{flag: "tap", to: &b.Tap, reads: temperature},
	}
	p := helpPage("new")
	for i := range out {
		q := &out[i]
		says, usual, _ := strings.Cut(p.flags[q.flag].says, " (")
		if q.says = says; q.usual == "" {
			q.usual = strings.TrimSuffix(usual, ")")
		}
		if q.flag == "zone" && q.usual == "UTC" {
			q.says = `In which time zone is the kitchen? Such as Europe/Zurich or America/Denver; this computer does not say.`
		}
	}
	return out
}

func (b *newBake) ask(c *call) error {
	name := "my-bread.toml"
	if len(c.args) == 1 {
		name = c.args[0]
	}
	if _, err := os.Lstat(name); err == nil {
		return badInput(working.Tell("cli.exists_already_and_not_overwritten", "%s: exists already and is not overwritten; choose another name", name))
	}
	asking := &interview{c: c, b: b, all: b.questions(c.System), file: name,
		in: bufio.NewReader(io.LimitReader(c.In, 1<<20))}
	asking.on = b.Ask || terminal(c.In)
	if err := asking.begin(); err != nil {
		return err
	}
	for at := 0; ; {
		if err := asking.from(at); err != nil {
			return err
		}
		content, day, err := b.planned(c)
		if err == nil {
			return b.write(c, name, content, day)
		}
		if at = asking.wrong(err); at < 0 {
			return err
		}
	}
}

// planned is the file and its plan, or what is wrong with it.
func (b *newBake) planned(c *call) (string, bakeday.Day, error) {
	local, known := zoneOf(c.System)
	b.ZoneGuessed = !known && b.Zone == local && !c.given("zone")
	content := b.file()
	var bake bakeday.Bake
	if bound := tomlbind.Bind([]byte(content), &bake); len(bound.Faults) > 0 {
		return "", bakeday.Day{}, badInput(working.Tell("cli.new", "maslin new: %v", bound.Faults[0]))
	}
	clock, err := clockFor(c.System, bake.Kitchen.Zone, "")
	if err != nil {
		return "", bakeday.Day{}, badInput(working.Tell("cli.new_zone", "maslin new: --zone: %v", err))
	}
	day, err := bake.Plan(c.cmd.Context(), clock)
	return content, day, c.complain(err)
}

// write writes the file, and says what to do next.
func (b *newBake) write(c *call, name, content string, day bakeday.Day) error {
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if errors.Is(err, os.ErrExist) {
		return badInput(working.Tell("cli.exists_already_and_not_overwritten", "%s: exists already and is not overwritten; choose another name", name))
	}
	if err == nil {
		if _, err = f.WriteString(content); err == nil {
			err = f.Sync()
		}
		if e := f.Close(); err == nil {
			err = e
		}
		if err != nil {
			os.Remove(name)
		}
	}
	if err != nil {
		return badInput(working.Tell("cli.cannot_be_written", "%s: cannot be written: %s", name, reason(err)))
	}
	p := c.page()
	p.Para(0, "Wrote "+textpage.Printable(name)+". Now plan it, and change in it what is different at your place:")
	word := textpage.Printable(shellWord(name))
	p.Line("\n  maslin plan %s", word)
	p.Line("\nand for a sheet to print or prop up:\n\n  maslin plan %s --html %s", word,
		textpage.Printable(shellWord(strings.TrimSuffix(name, ".toml")+".html")))
	if b.ZoneGuessed {
		p.Line("")
		p.Para(0, "This computer does not say in which time zone it is. The file has "+b.Zone+": write yours there, such "+
			"as \"Europe/Zurich\" or \"America/Denver\", or all times are off.")
	}
	if err := p.flush(c.Out); err != nil {
		return kept(name, err)
	}
	return kept(name, c.hint(day))
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
