package desk

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/maslin/internal/trial"
)

var (
	around   = regexp.MustCompile(`(?s)<header>.*</header>|<footer>.*</footer>`)
	drawn    = regexp.MustCompile(`(?s)<svg.*?</svg>`)
	allStops = regexp.MustCompile(`data-stops="([^"|]*)\|[^"]*?([^"|]*)"`)
)

// noted is a response as it can be read line by line: what the page is told apart from its HTML, and the page an
// element a line. Pictures are kept elsewhere; of a slider's stops the first and the last stand here.
func noted(a Response, html string) string {
	var out strings.Builder
	line := func(name, text string) {
		if text != "" {
			fmt.Fprintf(&out, "%s: %s\n", name, text)
		}
	}
	line("link", a.Fragment)
	line("title", a.Title)
	line("status", a.Status)
	line("focus", a.Focus)
	line("headline", a.Headline)
	line("value", a.Value)
	for _, name := range slices.Sorted(maps.Keys(a.Problems)) {
		line("problem at "+name, a.Problems[name])
	}
	for _, name := range slices.Sorted(maps.Keys(a.Places)) {
		line("slider "+name, fmt.Sprint(a.Places[name]))
	}
	for _, name := range slices.Sorted(maps.Keys(a.Board)) {
		line("board "+name, fmt.Sprintf("%d drawings", strings.Count(a.Board[name], "<svg")))
	}
	html = drawn.ReplaceAllString(html, "<svg/>")
	html = allStops.ReplaceAllString(html, `data-stops="$1 … $2"`)
	out.WriteString(strings.TrimSpace(strings.ReplaceAll(html, "><", ">\n<")))
	out.WriteString("\n\n")
	return out.String()
}

// body is a page without what stands around every page.
func body(a Response) string { return around.ReplaceAllString(a.Page, "") }

// The pages of each task as a class opens them, before anything is guessed: every field, with its label, its start, its
// slider and the unit of it, in both systems of units.
func TestTheTasksAsTheyAreOpened(t *testing.T) {
	var out strings.Builder
	for _, id := range append(Tasks(), worksheet) {
		a := ask(t, Request{Do: "open", Width: 1000, Fragment: State{At: id}.Fragment()})
		fmt.Fprintf(&out, "== %s\n%s", id, noted(a, body(a)))
		task, _ := taskOf(id)
		for _, units := range []string{"metric", "US customary"} {
			for _, f := range append(task.fields, task.guess) {
				if s := f.slides(State{Units: units}.unitsOf()); f.name != "" && s != (slide{}) {
					fmt.Fprintf(&out, "%s, %s: %v to %v by %v %s, near %v\n", f.name, units, s.low, s.high, s.step, s.unit, task.near)
				}
			}
		}
		us := ask(t, Request{Do: "type", Width: 1000, State: State{At: id, Units: "US customary"}})
		fmt.Fprintf(&out, "== %s, US customary\n%s", id, noted(us, ""))
	}
	trial.Kept(t, "opened.txt", out.String())
}

// What each task answers as it stands, without its pictures; and what the page around it shows.
func TestTheTasksAsTheyAreAnswered(t *testing.T) {
	var out strings.Builder
	for _, id := range Tasks() {
		a := ask(t, Request{Do: "type", Width: 1000, State: State{At: id, Phase: open}})
		fmt.Fprintf(&out, "== %s\n%s", id, noted(a, a.Answer))
	}
	a := ask(t, Request{Do: "open", Width: 1000, Fragment: State{At: "water.plan", Large: true}.Fragment()})
	fmt.Fprintf(&out, "== around a page\n%s", noted(a, strings.Join(around.FindAllString(a.Page, -1), "\n")))
	trial.Kept(t, "answered.txt", out.String())
}

// A lesson step by step, each from where the one before left the page.
func TestALessonStepByStep(t *testing.T) {
	type step struct {
		what string
		q    Request
		set  map[string]string // fields typed before
		off  bool              // only what is told apart from the HTML
	}
	lessons := []struct {
		at, guess string
		steps     []step
	}{
		{"water.friction", "12", []step{
			{"a guess is locked", Request{Do: "lock"}, nil, false},
			{"a field is typed while it is locked", Request{Do: "type"}, map[string]string{"dough": "27 °C"}, false},
			{"and put back", Request{Do: "type"}, map[string]string{"dough": "26 °C"}, true},
			{"it is revealed", Request{Do: "reveal"}, nil, false},
			{"one thing is changed", Request{Do: "type"}, map[string]string{"dough": "27 °C"}, false},
			{"two things are changed", Request{Do: "type"}, map[string]string{"water": "19 °C"}, false},
			{"the working is opened", Request{Do: "working", Working: true, Level: "in words"}, nil, false},
			{"a slider moves", Request{Do: "type", Quick: true, Working: true}, map[string]string{"water": "20 °C"}, false},
			{"the units are changed", Request{Do: "units", Name: "US customary"}, nil, true},
			{"large type", Request{Do: "large"}, nil, true},
			{"in German", Request{Do: "language", Name: "de"}, nil, true},
			{"the question again", Request{Do: "again"}, nil, true},
			{"everything as at first", Request{Do: "fresh"}, nil, true},
		}},
		{"clock.rise", "5 h", []step{
			{"shown without a guess", Request{Do: "show"}, nil, true},
			{"a pointer draws", Request{Do: "draw", Name: "history", Across: 0.5, Down: 0.25, Width: 1000}, nil, true},
			{"a reading of the jar", Request{Do: "add", Name: "jar"}, nil, true},
			{"half of it is typed", Request{Do: "type"}, map[string]string{"jar": "3 h|"}, false},
			{"all of it", Request{Do: "type"}, map[string]string{"jar": "3 h|20 %"}, false},
			{"a slider moves", Request{Do: "type", Quick: true}, map[string]string{"jar": "", "rise": "80 %"}, false},
			{"the row is taken out", Request{Do: "drop", Name: "jar"}, nil, true},
			{"nothing can be read", Request{Do: "type"}, map[string]string{"salt": "some", "rise": "", "history": "x|y"}, false},
		}},
		{"percentages.meaning", "17", []step{
			{"locked", Request{Do: "lock"}, nil, true},
			{"revealed", Request{Do: "reveal"}, nil, false},
			{"read in another way", Request{Do: "type"}, map[string]string{"reading": "levain of dough"}, false},
			{"no such way", Request{Do: "type"}, map[string]string{"reading": "levain of bowl"}, true},
			{"more than one reading has room for", Request{Do: "type"},
				map[string]string{"reading": "levain of added flour", "percent": "210 %", "water": "120 %"}, false},
			{"that reading", Request{Do: "type"}, map[string]string{"reading": "levain of total flour"}, false},
			{"less water than the levain holds", Request{Do: "type"}, map[string]string{"percent": "90 %", "water": "30 %"}, false},
		}},
		{"day.plan", "", []step{
			{"times are put by hand and locked", Request{Do: "lock"}, map[string]string{"by_hand.bake": "Sat 20:00",
				"by_hand.mix": "2026-11-26 08:30", "by_hand.shape": "2026-11-27 20:00",
				"by_hand.cool": "Sat 2026-11-28 10:00"}, true},
			{"revealed", Request{Do: "reveal"}, nil, true},
			{"beside the plan", Request{Do: "type"}, nil, false},
		}},
		{"day.oven", "", []step{
			{"of two breads", Request{Do: "lock"}, map[string]string{"by_hand.loaves.bake": "2026-11-28 20:00",
				"by_hand.buns.mix": "2026-11-26 09:00", "by_hand.buns.bake": "2026-11-28 03:00"}, true},
			{"revealed", Request{Do: "reveal"}, nil, true},
			{"beside the plan", Request{Do: "type"}, nil, false},
		}},
		{worksheet, "", []step{
			{"three questions", Request{Do: "type"}, map[string]string{"count": "3", "answer.1": "12", "answer.2": "much"}, false},
			{"one is checked", Request{Do: "check", Name: "2"}, nil, true},
			{"the key", Request{Do: "key"}, nil, true},
			{"and hidden", Request{Do: "key"}, nil, true},
			{"one topic", Request{Do: "type"}, map[string]string{"topic.water": "on", "count": "1"}, true},
			{"too many", Request{Do: "type"}, map[string]string{"count": "31", "seed": "-1"}, false},
		}},
	}
	var out strings.Builder
	for _, l := range lessons {
		s := State{At: l.at, Guess: l.guess, Fields: map[string]string{}}
		for _, one := range l.steps {
			s.Fields = maps.Clone(s.Fields)
			if s.Fields == nil {
				s.Fields = map[string]string{}
			}
			maps.Copy(s.Fields, one.set)
			q := one.q
			q.State, q.Width = s, 1000
			a := ask(t, q)
			s = a.State
			html := a.Answer
			if a.Page != "" {
				html = body(a)
			}
			if one.off {
				html = ""
			}
			fmt.Fprintf(&out, "== %s: %s\n%s%s", l.at, one.what, noted(a, html), drawn.ReplaceAllString(a.Working, ""))
		}
	}
	trial.Kept(t, "lesson.txt", out.String())
}
