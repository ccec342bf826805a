package desk

import (
	"strings"

	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// A task is a question on a bench.
type task struct {
	id     string // "water.plan"
	bench  string // "water"
	title  working.Message
	about  working.Message // what to do, in a sentence or two
	ask    working.Message // what is guessed
	guess  field           // how; no label: nothing is guessed, the answer is shown at once
	near   float64         // how far a guess may lie from an answer that is no range, in the unit of the guess
	fields []field
	steps  []handStep // that are put on the clock by hand
	// paths leads from the data form of the library's inputs to the names of the fields, where they differ.
	paths map[string]string
	solve func(v *values) (solved, error)
	// slow tasks are solved when a field is left, not while a slider moves.
	slow bool
}

// solved is what the library says.
type solved struct {
	report   report.Report
	workings func() []working.Working
	// truth is what was guessed at, and low and high the range of it where the library gives one.
	truth, low, high any
	plan             *schedule.Timetable // where steps are put on the clock by hand; nil: there is none
	// picture is what the report does not draw.
	picture func(r working.Reader, width int) string
}

// planned is the answer of a task about a day: its report, its workings, and its times where there are any.
func planned(told report.Report, workings func() []working.Working, possible bool, times *schedule.Timetable) solved {
	s := solved{report: told, workings: workings}
	if possible {
		s.plan = times
	}
	return s
}

func (t task) field(name string) (field, bool) {
	for _, f := range t.fields {
		if f.name == name {
			return f, true
		}
	}
	return field{}, false
}

// nearest is the field that a path is in: itself, or the one that it is a part of. A cell of a table keeps its path.
func (t task) nearest(path string) string {
	for _, f := range t.fields {
		if path == f.name || f.kind == aTable && strings.HasPrefix(path, f.name+"[") {
			return path
		}
	}
	best := ""
	for _, f := range t.fields {
		rest, ok := strings.CutPrefix(path, f.name)
		if ok && len(f.name) > len(best) && (rest[0] == '.' || rest[0] == '[') {
			best = f.name
		}
	}
	return best
}

func (t task) guesses() bool { return !t.ask.IsZero() }

// A bench is several tasks around one question of the trade.
type bench struct {
	id    string
	title working.Message
	tasks func() []task
}

const (
	firstTask = "percentages.scale"
	worksheet = "worksheet"
)

func benches() []bench {
	return []bench{
		{"percentages", working.Tell("desk.bench_percentages", "Percentages"), percentageTasks},
		{"water", working.Tell("desk.bench_water", "Water and friction"), waterTasks},
		{"clock", working.Tell("desk.bench_clock", "The dough's clock"), clockTasks},
		{"heat", working.Tell("desk.bench_heat", "Heat in a loaf"), heatTasks},
		{"day", working.Tell("desk.bench_day", "The backward day"), dayTasks},
	}
}

// Tasks lists the tasks of all benches by their names.
func Tasks() []string {
	var out []string
	for _, b := range benches() {
		for _, t := range b.tasks() {
			out = append(out, t.id)
		}
	}
	return out
}

func taskOf(id string) (task, bool) {
	name, _, _ := strings.Cut(id, ".")
	for _, b := range benches() {
		if b.id != name {
			continue
		}
		for _, t := range b.tasks() {
			if t.id == id {
				t.bench = b.id
				return t, true
			}
		}
	}
	return task{}, false
}

// fieldNames are the names that a state may hold texts for.
func fieldNames(s State) []string {
	if s.At == worksheet {
		return paperFieldNames(s)
	}
	t, _ := taskOf(s.At)
	var out []string
	for _, f := range t.fields {
		out = append(out, f.name)
	}
	return out
}

// Sliders that several tasks use.

func percents(low, high, step float64) [2]slide {
	s := slide{low, high, step, working.Percent}
	return [2]slide{s, s}
}

func temperatures(low, high, step, lowUS, highUS, stepUS float64) [2]slide {
	return [2]slide{{low, high, step, working.Celsius}, {lowUS, highUS, stepUS, working.Fahrenheit}}
}

func times(low, high, step float64, unit working.Unit) [2]slide {
	s := slide{low, high, step, unit}
	return [2]slide{s, s}
}

func counts(low, high float64) [2]slide {
	s := slide{low, high, 1, working.Number}
	return [2]slide{s, s}
}

// roomField and its like are asked for at several benches.

func kitchenTemperature(name string, label working.Message, metric, us string) field {
	return field{name: name, label: label, kind: aTemperature, start: [2]string{metric, us},
		slide: temperatures(0, 40, 0.5, 32, 104, 1)}
}

func altitudeField(name string) field {
	return field{name: name, label: working.Tell("desk.field_altitude", "altitude"), kind: aLength,
		start: [2]string{"1150 m", "3775 ft"},
		slide: [2]slide{{0, 4000, 50, working.Meter}, {0, 13000, 100, working.Foot}}}
}
