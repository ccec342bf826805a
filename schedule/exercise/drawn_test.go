package exercise_test

import (
	"crypto/sha256"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/trial"
	"example.org/maslin/schedule/exercise"
)

var numbers = regexp.MustCompile(`[0-9][0-9.:]*`)

// fingerprint stands for the numbers of some exercises: those of the question, the answer, its tolerance and the
// wrong answers. Words may change.
func fingerprint(t *testing.T, in exercise.Task, from, to uint64) string {
	t.Helper()
	sum := sha256.New()
	r := working.Reader{Units: in.Units}
	for in.Seed = from; in.Seed < to; in.Seed++ {
		e, err := in.Exercise()
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprintln(sum, numbers.FindAllString(e.Question.Text(r), -1), e.Answer.Text(r), e.Tolerance.Text(r))
		for _, s := range e.Slips {
			fmt.Fprintln(sum, s.Code, s.Value.Text(r))
		}
	}
	return fmt.Sprintf("%x", sum.Sum(nil)[:6])
}

// A worksheet that hangs in the kitchen is found again by its number, with its key: a task is the same exercise on
// every machine and next year too. A fingerprint that changes means that papers handed out before have lost their keys.
// That the exercises are right is not known by this, but by the pupil who does them.
func TestATaskStaysTheSameExercise(t *testing.T) {
	var got, more strings.Builder
	for _, topic := range quantity.Values[exercise.Topic]() {
		for _, difficulty := range quantity.Values[exercise.Difficulty]() {
			for i, units := range []working.Units{working.Metric, working.USCustomary} {
				task := exercise.Task{Topic: topic, Difficulty: difficulty, Units: units}
				name := fmt.Sprintf("%v, %v, %s", topic, difficulty, []string{"metric", "US"}[i])
				fmt.Fprintf(&got, "%s: %s\n", name, fingerprint(t, task, 0, 40))
				fmt.Fprintf(&more, "%s: %s\n", name, fingerprint(t, task, 40, 200))
			}
		}
	}
	trial.Kept(t, "drawn.txt", got.String())
	trial.Kept(t, "drawn-later.txt", more.String())
}

// A paper with a question of every topic, with its key: as it is printed, as a page, and as LaTeX.
func TestPapersAsTheyAreHandedOut(t *testing.T) {
	var out strings.Builder
	for _, in := range []exercise.Paper{{Count: 8, Seed: 3}, {Count: 8, Seed: 5, Difficulty: exercise.Hard,
		Units: working.USCustomary}} {
		set, err := in.Exercises()
		if err != nil {
			t.Fatal(err)
		}
		o := report.Options{Units: in.Units, Width: 100}
		r := set.Reader(working.Language{})
		tell := working.Telling{Reader: r, Document: true}
		out.WriteString(set.Worksheet().Text(o) + "\n" + set.Key(r).Text(o) + "\n" + set.Worksheet().Markdown(o) + "\n" +
			set.WorksheetLaTeX(tell) + "\n" + set.KeyLaTeX(tell) + "\n")
	}
	trial.Kept(t, "papers.txt", out.String())
}

// A class that meets differences and pounds for the first time is told what they are, and no other class.
func TestRemarksForWhatIsNewToAClass(t *testing.T) {
	const difference = "from 20 °C to 22 °C it is 2 Δ°C"
	const differenceUS, pound = "from 70 °F to 74 °F it is 4 Δ°F", "A pound (lb) has 16 ounces (oz)."
	for _, c := range []struct {
		topics []exercise.Topic
		units  working.Units
		want   []string
	}{
		{[]exercise.Topic{exercise.Backward, exercise.Rising}, working.USCustomary, nil},
		{[]exercise.Topic{exercise.Loss}, working.Metric, nil},
		{[]exercise.Topic{exercise.Loss}, working.USCustomary, []string{pound}},
		{[]exercise.Topic{exercise.Levain}, working.USCustomary, []string{pound}},
		{[]exercise.Topic{exercise.Percentages}, working.USCustomary, []string{pound}},
		{[]exercise.Topic{exercise.Cooling}, working.Metric, []string{difference}},
		{[]exercise.Topic{exercise.Altitude}, working.USCustomary, []string{differenceUS}},
		{[]exercise.Topic{exercise.Water}, working.USCustomary, []string{differenceUS, pound}},
	} {
		set, err := exercise.Paper{Topics: c.topics, Count: 2, Units: c.units}.Exercises()
		if err != nil {
			t.Fatal(err)
		}
		o := report.Options{Units: c.units, Width: 200}
		r := set.Reader(working.Language{})
		for what, page := range map[string]string{"worksheet": set.Worksheet().Text(o), "key": set.Key(r).Text(o)} {
			for _, remark := range []string{difference, differenceUS, pound} {
				wanted := strings.Contains(strings.Join(c.want, " "), remark)
				if strings.Contains(page, remark) != wanted {
					t.Errorf("%v, %s: %q is told: %v\n%s", c.topics, what, remark, !wanted, page)
				}
			}
		}
	}
}
