package exercise_test

import (
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/workcheck"
	"example.org/maslin/schedule/exercise"
)

// numberOf is an answer in the reader's units, a clock in minutes of the week.
func numberOf(v working.Value, r working.Reader) float64 {
	if v.Unit == working.Clock {
		return numbers(v.Text(r))[0]
	}
	return v.For(r).Number
}

// Two hundred exercises of every topic: a solver that reads the question gets the answer, the mistakes lead elsewhere,
// and every line of the key evaluates as printed.
func TestExercisesSolveRight(t *testing.T) {
	most := 200
	if testing.Short() {
		most = 40
	}
	for _, topic := range allTopics {
		seen := map[string]bool{}
		for seed := range most {
			task := exercise.Task{Topic: topic, Seed: uint64(seed), Difficulty: exercise.Difficulty(seed % 3)}
			if seed%4 == 3 {
				task.Units = working.USCustomary
			}
			e, err := task.Exercise()
			if err != nil {
				t.Fatal(err)
			}
			r := working.Reader{Units: task.Units}
			question := e.Question.Text(r)
			seen[question] = true
			got, want := numberOf(e.Answer, r), solve(t, e.Question.ID(), question)
			tolerance := math.Abs(e.Tolerance.For(r).Number)
			if difference := apart(e, got, want); !(difference <= tolerance) {
				t.Errorf("%+v: %s\nthe key says %v, the solver %v", task, question, e.Answer.Text(r), want)
			}
			if len(e.Slips) < 2 {
				t.Errorf("%+v has %d slips", task, len(e.Slips))
			}
			codes := map[string]bool{}
			for _, s := range e.Slips {
				if e.Right(s.Value) || apart(e, numberOf(s.Value, r), want) <= tolerance {
					t.Errorf("%+v: the slip %s gives the right answer", task, s.Code)
				}
				if found, ok := e.SlipOf(s.Value); !ok || found.Code != s.Code || codes[s.Code] || s.Mistake.IsZero() {
					t.Errorf("%+v: the slip %s is not told from others", task, s.Code)
				}
				codes[s.Code] = true
			}
			if !e.Right(e.Answer) {
				t.Errorf("%+v: its own answer is wrong", task)
			}
			if _, ok := e.SlipOf(e.Answer); ok {
				t.Errorf("%+v: the right answer is a slip", task)
			}
			workcheck.Verify(t, e.Working())
			if e.Working().Answer() != e.Answer {
				t.Errorf("%+v: the key ends with %v", task, e.Working().Answer())
			}
			again, _ := task.Exercise()
			if again.Question != e.Question || again.Answer != e.Answer {
				t.Errorf("%+v is another exercise the second time", task)
			}
		}
		if len(seen) < most*7/10 {
			t.Errorf("%v: only %d of %d exercises differ", topic, len(seen), most)
		}
	}
}

func apart(e exercise.Exercise, a, b float64) float64 {
	d := math.Abs(a - b)
	if e.Answer.Unit == working.Clock {
		const week = 7 * 24 * 60
		d = math.Mod(d, week)
		d = math.Min(d, week-d)
	}
	return d
}

func TestFriendlyNumbers(t *testing.T) {
	for _, topic := range []exercise.Topic{exercise.Percentages, exercise.Loss} {
		for seed := range 60 {
			e, err := exercise.Task{Topic: topic, Seed: uint64(seed), Difficulty: exercise.Usual}.Exercise()
			if err != nil {
				t.Fatal(err)
			}
			if x := e.Answer.Number; math.Abs(x-math.Round(x/50)*50) > 0.01 {
				t.Errorf("%v is not a friendly answer", e.Answer)
			}
		}
	}
}

func TestRefusedTasks(t *testing.T) {
	_, err := exercise.Task{Topic: 99, Difficulty: 7, Units: 5}.Exercise()
	if in := quantity.InputErrors(err); len(in) != 3 || in[0].Path != "topic" || in[1].Path != "difficulty" ||
		in[2].Path != "units" {
		t.Error(err)
	}
	if _, err := (exercise.Task{}).Exercise(); !errors.Is(err, quantity.ErrRequired) &&
		len(quantity.InputErrors(err)) != 1 {
		t.Error(err)
	}
}

func TestJSONHasTheKey(t *testing.T) {
	e, err := exercise.Task{Topic: exercise.Water, Seed: 1}.Exercise()
	if err != nil {
		t.Fatal(err)
	}
	b, err := json.Marshal(e)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`"topic":"water"`, `"difficulty":"one step"`, `"working":{"title"`,
		`"slips":[{"code":`, `"tolerance":{"number":0.3`} {
		if !strings.Contains(string(b), want) {
			t.Errorf("no %s in %s", want, b)
		}
	}
	if e.String() != e.Question.String() {
		t.Error(e)
	}
}

// A difference given in the other degrees is right in any unit.
func TestAnswersInAnyUnit(t *testing.T) {
	e, err := exercise.Task{Topic: exercise.Levain, Seed: 4}.Exercise()
	if err != nil {
		t.Fatal(err)
	}
	grams := e.Answer.Number
	if !e.Right(quantity.Grams(grams)) || !e.Right(working.Amount(grams/1000, working.Kilogram, 3)) ||
		!e.Right(quantity.Ounces(grams/28.349523125)) {
		t.Error("the same weight in other units is wrong")
	}
	if e.Right(quantity.Grams(grams+3)) || e.Right(quantity.Celsius(grams)) || e.Right("much") {
		t.Error("a wrong answer passes")
	}
}
