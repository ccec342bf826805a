package exercise_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule/exercise"
)

// One exercise with its key and what somebody did who got something else.
func ExampleTask_Exercise() {
	e, err := exercise.Task{Topic: exercise.Water, Seed: 3, Difficulty: exercise.Usual}.Exercise()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(strings.ReplaceAll(e.String(), ". ", ".\n"))
	fmt.Println(e.Answer, "±", e.Tolerance)
	for _, l := range e.Working().Lines(working.Reader{}) {
		fmt.Println(l.Symbol, "=", l.Formula)
		fmt.Println(l.Symbol, "=", l.Numbers)
	}
	for _, s := range e.Slips {
		fmt.Printf("%v: %v\n", s.Value, s.Mistake)
	}
	// Output:
	// The dough should come from the mixer at 25 °C.
	// The flour is at 16 °C, the room at 24 °C, the levain at 28 °C, and the friction factor is 10 Δ°C for four factors.
	// How warm must the water be?
	// 22.0 °C ± 0.3 Δ°C
	// T_water = T + (T − T_flour) + (T − T_room) + (T − T_levain) − F
	// T_water = 25 + (25 − 16) + (25 − 24) + (25 − 28) − 10
	// 25.0 °C: the levain was left out of the factors
	// 42.0 °C: the friction was added instead of taken off
	// 32.0 °C: the friction was forgotten
}

// A worksheet and its key.
func ExamplePaper_Exercises() {
	set, err := exercise.Paper{
		Topics: []exercise.Topic{exercise.Loss, exercise.Backward},
		Count:  2,
		Seed:   11,
	}.Exercises()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(set.Worksheet().Text(report.Options{}), set.Key(working.Reader{}).Text(report.Options{}))
	// Output:
	// Exercises, paper 11, one step
	//
	// 1. loss
	//   A piece of dough of 1400 g gives a loaf of 1204 g. How much did it lose, in
	//     percent of the dough?
	//   Answer: ______________________
	//
	// 2. backward
	//   The bread shall be cool by Sat 17:45. It bakes for 30m and cools for 2h. When
	//     does it go into the oven at the latest?
	//   Answer: ______________________
	// Key, paper 11, one step
	//
	//   Last come the usual wrong answers, each with the mistake that leads to it.
	//
	// 1. loss
	//   14.0 %, give or take 0.1 %
	//   · L = (D − B) ÷ D × 100 = (1400 − 1204) ÷ 1400 × 100 = 14.0 %
	//   L: loss; D: dough scaled; B: baked and cool
	//   · 16.3 %: the loss was taken in percent of the bread
	//   · 86.0 %: what stays was given instead of what is lost
	//
	// 2. backward
	//   Sat 15:15, give or take 1 min
	//   · t_oven = t_end − c − b = Sat 17:45 − 120 min − 30 min = Sat 15:15
	//   t_oven: into the oven at the latest; t_end: bread is wanted; c: cooling; b:
	//     baking
	//   · Sat 17:15: the cooling was forgotten
	//   · Sat 20:15: baking and cooling were added instead of taken off
	//   · Sat 15:45: the time out of the oven was given
}

func TestAKeyOfSevenFitsTwoPages(t *testing.T) {
	for seed := range 30 {
		for _, units := range []working.Units{working.Metric, working.USCustomary} {
			for _, d := range quantity.Values[exercise.Difficulty]() {
				set, err := exercise.Paper{Count: 7, Seed: uint64(seed), Difficulty: d, Units: units}.Exercises()
				if err != nil {
					t.Fatal(err)
				}
				r := set.Reader(working.Language{})
				text := set.Key(r).Text(report.Options{Units: units, Width: 92})
				if lines := strings.Count(text, "\n"); lines > 2*60 {
					t.Errorf("seed %d, %v, %v: %d lines\n%s", seed, units, d, lines, text)
				}
				tell := working.Telling{Reader: r, Document: true}
				for _, tex := range []string{set.WorksheetLaTeX(tell), set.KeyLaTeX(tell)} {
					plain := strings.NewReplacer(`\{`, "", `\}`, "", `\\`, "").Replace(tex)
					if strings.Count(plain, "{") != strings.Count(plain, "}") || strings.Contains(tex, "[U+") ||
						!strings.HasSuffix(tex,
							"\\end{document}\n") || strings.Count(tex, "\\begin") != strings.Count(tex, "\\end{") {
						t.Errorf("LaTeX is broken: %s", tex)
					}
				}
				questions := map[string]bool{}
				for _, e := range set.Exercises {
					questions[e.Question.Text(r)] = true
				}
				if len(questions) != 7 {
					t.Errorf("a question stands twice on a paper")
				}
			}
		}
	}
}

func TestRefusedPapers(t *testing.T) {
	_, err := exercise.Paper{
		Topics:     []exercise.Topic{exercise.Loss, 77},
		Count:      101,
		Difficulty: -1,
		Units:      9,
	}.Exercises()
	var paths []string
	for _, in := range quantity.InputErrors(err) {
		paths = append(paths, in.Path)
	}
	if strings.Join(paths, " ") != "topics[1] count difficulty units" {
		t.Error(err)
	}
}

// More papers of one topic than there are questions still end.
func TestAPaperOfOneTopicEnds(t *testing.T) {
	set, err := exercise.Paper{Topics: []exercise.Topic{exercise.Altitude}, Count: 100}.Exercises()
	if err != nil || len(set.Exercises) != 100 {
		t.Error(len(set.Exercises), err)
	}
}
