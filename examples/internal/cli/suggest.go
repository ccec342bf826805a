package cli

import (
	"encoding/json"
	"slices"
	"strings"
	"time"

	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
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

// suggesting puts the commands to the day: what to type when what is under way, or comes next, is done or seen.
func (q *now) suggesting(c *call, d bakes, m bench.KitchenNow) suggesting {
	files := "maslin now"
	for _, name := range c.args {
		files += " " + shellWord(name)
	}
	out := suggesting{telling: told(m)}
	add := func(says working.Message, command string) {
		row := report.Row{Label: says, Value: report.Of(working.Say(command))}
		if !slices.Contains(out.commands, row) {
			out.commands = append(out.commands, row)
		}
	}
	for i, bread := range m.Breads {
		for _, d := range bread.Doubts {
			if o := d.Observation; o.Step != "" {
				step := o.Step
				if len(m.Breads) > 1 {
					step = bread.Name + "/" + step
				}
				add(working.Tell("cli.suggest_sure", "if that is so"), files+" --done --step "+shellWord(step)+
					" --at "+shellWord(o.At.In(m.Now.Location()).Format("2006-01-02 15:04"))+" --sure")
			}
		}
		of := ""
		if len(m.Breads) > 1 {
			of = " --bread " + shellWord(bread.Name)
		}
		if bread.Followed == nil && bread.Dough == nil {
			add(working.Tell("cli.suggest_follow", "to keep to this plan"), files+" --follow")
			continue
		}
		steps := bread.UnderWay()
		next, left := bread.Next()
		if left && !soonest(m).Before(next.Start) { // what is not the day's next is no matter yet
			steps = append(steps, next)
		}
		for _, s := range steps {
			if s.Hands && s.Kind != schedule.Bake {
				add(working.Tell("cli.suggest_done", "when a step is done"), files+" --done")
			}
			suggestLog(add, bread, s, shellWord(d.files[i].name), of)
		}
		if !left && !slices.ContainsFunc(steps, func(s bakeday.StepData) bool { return s.Kind == schedule.Bake }) {
			add(working.Tell("cli.suggest_weights", "what a loaf weighs, as dough and cool"),
				"maslin log weights --in 900g --out 790g"+of)
			add(working.Tell("cli.suggest_learn", "what the bake taught"), strings.Replace(files, "now", "learn", 1))
		}
	}
	return out
}

// soonest is when something of the day needs hands next; zero: nothing does.
func soonest(m bench.KitchenNow) (at time.Time) {
	for _, bread := range m.Breads {
		if next, ok := bread.Next(); ok && (at.IsZero() || next.Start.Before(at)) {
			at = next.Start
		}
	}
	return at
}

// suggestLog adds what is to be written down at a step.
func suggestLog(add func(working.Message, string), bread bench.DayNow, s bakeday.StepData, file, of string) {
	mixed := bread.Dough != nil && !bread.Dough.Mix.Dough.IsZero()
	switch s.Kind {
	case schedule.Mix, schedule.Bulk, schedule.Fold:
		if !mixed {
			add(working.Tell("cli.suggest_mix", "how warm the dough is when it is kneaded"),
				"maslin log mix "+file+" --dough 25C"+of)
		}
	case schedule.Bake:
		add(working.Tell("cli.suggest_core", "what the probe shows"), "maslin log core 94C"+of)
		add(working.Tell("cli.suggest_out", "when it comes out"), "maslin log core 96C --done"+of)
	}
	ready := bread.Dough != nil && bread.Dough.Ready != nil
	if !ready && (s.Kind == schedule.Bulk || s.Kind == schedule.Shape) {
		rise := "30%"
		if bread.Progress != nil {
			rise = strings.ReplaceAll(bread.Progress.Now.Bulk().Rise.Text(0), " ", "")
		}
		add(working.Tell("cli.suggest_rise", "how far it has risen"), "maslin log rise 20%"+of)
		add(working.Tell("cli.suggest_ready", "when it is ready to shape"), "maslin log ready "+rise+of)
	}
}
