package cli

import (
	"encoding/json"
	"slices"
	"strings"
	"time"

	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule/bakeday"
	"example.org/maslin/schedule/bench"
)

// suggesting is how a day stands, and which commands write down what comes next of it.
type suggesting struct {
	telling
	commands report.Rows
}

// Report adds the commands at the end.
func (s suggesting) Report() report.Report {
	r := s.telling.Report()
	if len(s.commands) > 0 {
		title := working.Tell("cli.title_to_write_down", "To write it down")
		r.Sections = append(r.Sections, report.Section{Key: "commands", Title: title, Blocks: []report.Block{s.commands}})
	}
	return r
}

// MarshalJSON is the data of the day alone.
func (s suggesting) MarshalJSON() ([]byte, error) { return json.Marshal(s.telling) }

// suggesting puts the commands to the day: what to type when what is expected next is done or seen.
func (q *now) suggesting(c *call, b bakes, m bench.KitchenNow) suggesting {
	out := suggesting{telling: only(m, m.Breads)}
	add := func(says working.Message, command string) {
		row := report.Row{Label: says, Value: report.Of(working.Say(command))}
		if !slices.Contains(out.commands, row) {
			out.commands = append(out.commands, row)
		}
	}
	var words []string
	for _, name := range c.args {
		words = append(words, shellWord(name))
	}
	files := strings.Join(words, " ")
	over := false
	for _, e := range m.Expected() {
		add(e.Says, b.commandFor(e.Observation, files))
		over = over || e.Observation.Kind == bench.SawWeights
	}
	if over {
		add(working.Tell("cli.suggest_learn", "what the bake taught"), "maslin learn "+files)
	}
	return out
}

// typed is a time as it is typed: of today the hour and minute, of another day with its date.
func (b bakes) typed(at time.Time) string {
	at = at.In(b.clock.Zone)
	if at.Format(time.DateOnly) == b.clock.Now.In(b.clock.Zone).Format(time.DateOnly) {
		return at.Format("15:04")
	}
	return shellWord(at.Format("2006-01-02 15:04"))
}

// commandFor writes an observation down.
func (b bakes) commandFor(o bench.Observation, files string) string {
	of, step := "", o.Step
	if len(b.files) > 1 {
		of, step = " --bread "+shellWord(o.Bread), o.Bread+"/"+o.Step
	}
	short := func(value interface{ String() string }) string {
		return strings.ReplaceAll(strings.ReplaceAll(value.String(), " ", ""), "°", "")
	}
	switch o.Kind {
	case bench.SawPlan:
		return "maslin now " + files + " --follow"
	case bench.SawStep:
		if o.Step == "" {
			return "maslin now " + files + " --done"
		}
		return "maslin now " + files + " --done --step " + shellWord(step) + " --at " +
			b.typed(o.At) + " --sure"
	case bench.SawMixed:
		i := slices.IndexFunc(b.order.Bakes, func(own bakeday.Bake) bool { return own.Name == o.Bread })
		if b.typed(o.At) != b.typed(b.clock.Now) {
			of = " --at " + b.typed(o.At) + of
		}
		return "maslin log mix " + shellWord(b.files[max(0, i)].name) + " --dough " + short(o.Mix.Dough) + of
	case bench.SawRise:
		return "maslin log rise " + short(o.Rise.Rise) + of
	case bench.SawReady:
		return "maslin log ready " + strings.ReplaceAll(o.Ready.Rise.Text(0), " ", "") + of
	case bench.SawCore:
		if o.Core.Out {
			of = " --done" + of
		}
		return "maslin log core " + short(o.Core.Core) + of
	}
	of = " --style " + strings.ReplaceAll(o.Weights.Style.String(), " ", "-") + of
	return "maslin log weights --in " + short(o.Weights.In) + " --out " + short(o.Weights.Out) + of
}
