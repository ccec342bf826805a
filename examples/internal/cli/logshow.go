package cli

import (
	"fmt"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/examples/internal/bakelog"
	"github.com/spf13/cobra"
)

func newLogShow(s System) *cobra.Command {
	var f logFlags
	var o output
	var bread string
	var last int
	cmd := &cobra.Command{
		Use: "show", Short: "What is in the log", Example: "  maslin log show --last 20\n  maslin log show --bread rolls", Args: flagsOnly,
	}
	in := ask(cmd)
	in.number(&last, "last", "only the last so many observations")
	cmd.Flags().StringVar(&bread, "bread", "", "only those of the bread with this `NAME`")
	o.register(cmd)
	f.register(cmd)
	cmd.RunE = func(*cobra.Command, []string) error {
		if last < 0 {
			in.fault("last", fmt.Sprint(last), "a number of observations", quantity.ErrOutOfRange)
		}
		if err := in.complain(nil); err != nil {
			return err
		}
		name, content, err := f.read(s)
		if err != nil {
			return err
		}
		now, err := f.clock(s, nil)
		if err != nil {
			return err
		}
		entries := []bakelog.Entry{}
		for _, e := range content.Entries {
			if bread == "" || e.Bread == bread {
				entries = append(entries, e)
			}
		}
		if last > 0 && len(entries) > last {
			entries = entries[len(entries)-last:]
		}
		data := struct {
			Format   string          `json:"format"`
			Log      string          `json:"log"`
			Entries  []bakelog.Entry `json:"entries"`
			Problems int             `json:"unreadable_lines"`
		}{writtenFormat, name, entries, len(content.Problems) + content.More}
		return s.show(o, answer{data: data, page: func(p *page, u units) { logPage(p, name, entries, now.Location(), u) }})
	}
	return cmd
}

func logPage(p *page, name string, entries []bakelog.Entry, zone *time.Location, u units) {
	if len(entries) == 0 {
		p.para(0, "Nothing is logged in "+printable(name)+". For example: maslin log rise 30%")
		return
	}
	day, bread := "", ""
	for _, e := range entries {
		at := e.At.In(zone)
		if d := at.Format("Mon 2 Jan 2006"); d != day {
			p.heading(d)
			day, bread = d, ""
		}
		if e.Bread != bread && e.Bread != "" {
			p.para(2, printable(e.Bread))
			bread = e.Bread
		}
		p.hang("    "+at.Format("15:04")+" ", "            ", entryWords(e, u))
	}
}

// entryLine is an entry with its time and bread.
func entryLine(e bakelog.Entry, u units) string {
	text := e.At.Format("Mon 2 Jan 15:04") + ", "
	if e.Bread != "" {
		text += printable(e.Bread) + ": "
	}
	return text + entryWords(e, u)
}

func entryWords(e bakelog.Entry, u units) string {
	switch e.Kind {
	case bakelog.KindMix:
		return mixWords(*e.Mix, u)
	case bakelog.KindRise:
		return "risen " + percent(e.Rise.Rise, 0)
	case bakelog.KindReady:
		text := "ready, risen " + percent(e.Ready.Rise, 0)
		if n := len(e.Ready.Readings); n > 0 {
			text += fmt.Sprintf(", with %d readings of the probe", n)
		}
		return text
	case bakelog.KindCore:
		text := "core " + u.temperature(e.Core.Core, 1)
		if e.Core.After > 0 {
			text += " after " + e.Core.After.String()
		}
		if e.Core.Out {
			text += ", taken out"
		}
		return text
	case bakelog.KindWeights:
		return "weights: " + u.mass(e.Weights.In) + " in, " + u.mass(e.Weights.Out) + " out, " + e.Weights.Style.String()
	case bakelog.KindNote:
		return "note: " + printable(e.Note)
	case bakelog.KindPlan:
		return "following the plan for " + e.Plan.Wanted.In(e.At.Location()).Format("Mon 2 Jan 15:04")
	case bakelog.KindStep:
		return "done: " + printable(e.Step)
	}
	return string(e.Kind)
}

func mixWords(m bakelog.Mix, u units) string {
	words := []string{"mixed, dough " + u.temperature(m.Dough, 1)}
	for _, t := range []struct {
		name string
		t    quantity.Temperature
	}{{"flour", m.Flour}, {"water", m.Water}, {"levain", m.Levain}, {"room", m.Room}} {
		if !t.t.IsZero() {
			words = append(words, t.name+" "+u.temperature(t.t, 1))
		}
	}
	if m.Mixer != 0 {
		words = append(words, m.Mixer.String())
	}
	if m.Slow > 0 {
		words = append(words, m.Slow.String()+" slow")
	}
	if m.Fast > 0 {
		words = append(words, m.Fast.String()+" fast")
	}
	switch m.Leavening() {
	case bakelog.Levain:
		words = append(words, percent(m.Inoculation, 1)+" in the levain")
	case bakelog.Yeast:
		words = append(words, percent(m.Yeast, 2)+" "+m.YeastKind+" yeast")
	case bakelog.Both:
		words = append(words, percent(m.Inoculation, 1)+" in the levain", percent(m.Yeast, 2)+" "+m.YeastKind+" yeast")
	}
	return strings.Join(words, ", ")
}
