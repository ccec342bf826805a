package cli

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/examples/internal/tomlbind"
	"example.org/maslin/internal/textpage"
	"example.org/maslin/schedule/bakeday"
	"github.com/spf13/cobra"
)

// newBake is what maslin new asks; every text is written into the file as it was given.
type newBake struct {
	name, pieces, baked, rye, hydration, leaven, mixer, bowl, cold, wanted, zone, altitude, day, night, tap string

	zoneGuessed bool // nobody said in which zone, and the machine does not know
}

// question is one thing that maslin new wants to know.
type question struct {
	flag, ask, usual string
	to               *string
	check            func(string) error
	skip             func() bool
}

func reads[T any](parse func(string) (T, error)) func(string) error {
	return func(text string) error { _, err := parse(text); return err }
}

func oneOf(words ...string) func(string) error {
	return func(text string) error {
		for _, w := range words {
			if text == w {
				return nil
			}
		}
		if near := tomlbind.Suggest(text, words); near != "" {
			return fmt.Errorf("got %s, want %s; did you mean %s?", quantity.Excerpt(text), strings.Join(words, " or "), near)
		}
		return fmt.Errorf("got %s, want %s", quantity.Excerpt(text), strings.Join(words, " or "))
	}
}

// questions are asked in this order.
func (b *newBake) questions(s System, zone string) []question {
	return []question{
		{flag: "name", ask: "What is the bread called?", usual: "Country loaf", to: &b.name, check: nameCheck},
		{flag: "pieces", ask: "How many loaves?", usual: "2", to: &b.pieces, check: countCheck},
		{flag: "baked", ask: "How heavy is each when it is baked and cool?", usual: "800 g", to: &b.baked, check: reads(quantity.ParseMass)},
		{flag: "rye", ask: "How much of the flour is whole rye? The rest is wheat bread flour.", usual: "15 %", to: &b.rye, check: reads(quantity.ParsePercent)},
		{flag: "hydration", ask: "How much water, of the flour?", usual: "70 %", to: &b.hydration, check: reads(quantity.ParsePercent)},
		{flag: "leaven", ask: "What raises it: levain or yeast?", usual: "levain", to: &b.leaven, check: oneOf("levain", "yeast")},
		{flag: "cold", ask: "Do the shaped loaves spend the night in the refrigerator: yes or no?", usual: "yes", to: &b.cold, check: oneOf("yes", "no"), skip: func() bool { return b.leaven == "yeast" }},
		{flag: "mixer", ask: "How is it kneaded: hand, planetary, spiral or processor?", usual: "hand", to: &b.mixer, check: reads(mixing.ParseMixerKind)},
		{flag: "bowl", ask: "How large is the bowl of the mixer?", usual: "5 L", to: &b.bowl, check: reads(quantity.ParseVolume), skip: func() bool { return b.mixer == "hand" }},
		{flag: "wanted", ask: "When is the bread wanted? A day and a time.", usual: "Saturday 12:30", to: &b.wanted, check: reads(bakeday.ParseWish)},
		{flag: "zone", ask: zoneQuestion(zone), usual: zone, to: &b.zone, check: func(text string) error { _, err := clockFor(s, text, ""); return err }},
		{flag: "altitude", ask: "How high above the sea?", usual: "0 m", to: &b.altitude, check: reads(quantity.ParseLength)},
		{flag: "day", ask: "How warm is the kitchen by day?", usual: "22 °C", to: &b.day, check: reads(quantity.ParseTemperature)},
		{flag: "night", ask: "And by night?", usual: "19 °C", to: &b.night, check: reads(quantity.ParseTemperature)},
		{flag: "tap", ask: "How cold is the water from the tap?", usual: "12 °C", to: &b.tap, check: reads(quantity.ParseTemperature)},
	}
}

func nameCheck(text string) error {
	if strings.TrimSpace(text) == "" || len(text) > 200 {
		return errors.New("want a name of 1 to 200 bytes")
	}
	return nil
}

func countCheck(text string) error {
	if n, err := strconv.Atoi(text); err != nil || n < 1 || n > 1000 {
		return fmt.Errorf("got %s, want a number, 1 to 1000", quantity.Excerpt(text))
	}
	return nil
}

func newNew(s System) *cobra.Command {
	var b newBake
	var always bool
	cmd := &cobra.Command{
		Use:   "new [FILE]",
		Short: "Write a bake file for a bread of your own, with every line explained",
		Long: `new asks a few questions and writes a bake file with a comment on every line; the usual answer
stands in brackets, and Enter takes it. What a flag says is not asked; away from a terminal
nothing is asked. The file can be planned at once, and is yours to change. An existing
file is never overwritten.`,
		Example: "  maslin new my-bread.toml\n  maslin new rolls.toml --leaven yeast --pieces 12 --baked \"80 g\" --wanted \"Sunday 9:00\"",
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) > 1 {
				return badInput("maslin new: got %d files, want one", len(args))
			}
			return nil
		},
		ValidArgsFunction: cobra.NoFileCompletions,
	}
	in := ask(cmd)
	in.paths = map[string]string{
		"Loaves.Pieces": "pieces", "Liquids": "hydration", "Salt": "hydration", "Loaves.Baked": "baked", "Kitchen.Mixers": "bowl", "Wanted": "wanted",
		"Kitchen.Altitude": "altitude", "Kitchen.Day": "day", "Kitchen.Night": "night", "Kitchen.Tap": "tap", "Flours": "rye",
	}
	for _, q := range b.questions(s, "that of this computer") {
		cmd.Flags().StringVar(q.to, q.flag, "", fmt.Sprintf("%s (%s)", q.ask, q.usual))
	}
	cmd.Flags().BoolVar(&always, "ask", false, "ask even when this is not a terminal")
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		name := "my-bread.toml"
		if len(args) == 1 {
			name = args[0]
		}
		if _, err := os.Lstat(name); err == nil {
			return badInput("%s: exists already and is not overwritten; choose another name", name)
		}
		asker := &asking{s: s, in: bufio.NewReader(io.LimitReader(s.In, 1<<20)), on: always || terminal(s.In)}
		zone, known := zoneOf(s)
		for _, q := range b.questions(s, zone) {
			if err := asker.answer(q, cmd.Flags().Changed(q.flag)); err != nil {
				return err
			}
		}
		b.zoneGuessed = !known && b.zone == zone && !cmd.Flags().Changed("zone")
		return b.write(cmd.Context(), s, in, name)
	}
	return cmd
}

// asking goes through the questions.
type asking struct {
	s  System
	in *bufio.Reader
	on bool
}

// answer takes the flag, or asks, or takes the usual answer; what cannot be read is asked again.
func (a *asking) answer(q question, given bool) error {
	if given {
		if err := q.check(*q.to); err != nil {
			return badInput("maslin new: --%s: %s", q.flag, textpage.Printable(err.Error()))
		}
		return nil
	}
	*q.to = q.usual
	if !a.on || q.skip != nil && q.skip() {
		return nil
	}
	for {
		fmt.Fprint(a.s.Out, a.s.plain(q.ask+" ["+q.usual+"] "))
		text, err := a.in.ReadString('\n')
		text = strings.TrimSpace(text)
		if err != nil && text == "" {
			fmt.Fprintln(a.s.Out)
			return badInput("maslin new: no answer to %s; nothing was written", strconv.Quote(q.ask))
		}
		if text == "" {
			return nil
		}
		if wrong := q.check(text); wrong != nil {
			fmt.Fprintln(a.s.Out, a.s.plain("  "+textpage.Printable(wrong.Error())))
			continue
		}
		*q.to = text
		return nil
	}
}

// write checks that the file can be planned, writes it, and says what to do next.
func (b *newBake) write(ctx context.Context, s System, in *asked, name string) error {
	content := b.file()
	var bake bakeday.Bake
	bound := tomlbind.Bind([]byte(content), &bake)
	if len(bound.Faults) > 0 {
		return badInput("maslin new: %s", textpage.Printable(bound.Faults[0].Text))
	}
	clock, err := clockFor(s, bake.Kitchen.Zone, "")
	if err != nil {
		return badInput("maslin new: --zone: %s", err)
	}
	day, err := bake.Plan(ctx, clock)
	if err != nil {
		return in.complain(err)
	}
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if errors.Is(err, os.ErrExist) {
		return badInput("%s: exists already and is not overwritten; choose another name", name)
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
		return badInput("%s: cannot be written: %s", name, reason(err))
	}
	p := s.page()
	p.Para(0, "Wrote "+textpage.Printable(name)+". Now plan it, and change in it what is different at your place:")
	word := textpage.Printable(shellWord(name))
	p.Line("\n  maslin plan %s", word)
	p.Line("\nand for a sheet to print or prop up:\n\n  maslin plan %s --html %s", word, textpage.Printable(shellWord(strings.TrimSuffix(name, ".toml")+".html")))
	if b.zoneGuessed {
		p.Line("")
		p.Para(0, "This computer does not say in which time zone it is. The file has "+b.zone+": write yours there, such as \"Europe/Zurich\" or \"America/Denver\", or all times are off.")
	}
	if err := p.flush(s.Out); err != nil {
		return kept(name, err)
	}
	return kept(name, s.hint(day))
}

// hint tells of a new bake that the time wished for cannot be met, or only a week later, and why.
func (s System) hint(day bakeday.Day) error {
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
	_, err := io.WriteString(s.Out, "\n"+strings.TrimLeft(report.Report{Sections: hints}.Text(s.options(output{})), "\n"))
	return err
}

// shellWord quotes a file name for a shell where it needs it.
func shellWord(name string) string {
	if name != "" && strings.Trim(name, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_./") == "" {
		return name
	}
	return "'" + strings.ReplaceAll(name, "'", `'\''`) + "'"
}
