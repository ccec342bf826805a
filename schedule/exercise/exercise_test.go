package exercise_test

import (
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/pupil"
	"example.org/maslin/internal/workcheck"
	"example.org/maslin/schedule/exercise"
)

// sheet is an exercise as it is printed for the reader.
func sheet(e exercise.Exercise, r working.Reader) pupil.Sheet {
	out := pupil.Sheet{
		Question: e.Question.Text(r), Answer: e.Answer.Text(r), Tolerance: e.Tolerance.Text(r), Wrong: map[string]string{},
	}
	for _, s := range e.Slips {
		out.Wrong[s.Code] = s.Value.Text(r)
	}
	return out
}

// Two hundred exercises of every topic and difficulty in both systems of units: who reads the question alone gets the
// answer of the key, and its wrong answers by making their mistakes; every mistake comes up; every line of the key
// evaluates as printed.
func TestExercisesSolveRight(t *testing.T) {
	most := 200
	if testing.Short() {
		most = 40
	}
	reads := pupil.New(false)
	met := map[string]bool{}
	for _, topic := range quantity.Values[exercise.Topic]() {
		for _, units := range []working.Units{working.Metric, working.USCustomary} {
			for _, difficulty := range quantity.Values[exercise.Difficulty]() {
				seen := map[string]bool{}
				for seed := range most {
					task := exercise.Task{Topic: topic, Seed: uint64(seed), Difficulty: difficulty, Units: units}
					e, err := task.Exercise()
					if err != nil {
						t.Fatal(err)
					}
					printed := sheet(e, working.Reader{Units: units})
					seen[printed.Question] = true
					done := reads.Do(printed)
					for _, fault := range done.Faults {
						t.Errorf("%+v: %s", task, fault)
					}
					for _, mistake := range done.Met {
						met[mistake] = true
					}
					judged(t, task, e)
				}
				if len(seen) < most/4 {
					t.Errorf("%v, %v, %v: only %d of %d exercises differ", topic, difficulty, units, len(seen), most)
				}
			}
		}
	}
	for _, mistake := range pupil.Mistakes() {
		if !met[mistake] {
			t.Errorf("%s never comes up", mistake)
		}
	}
}

// judged checks what an exercise says of answers that it is given, and its key.
func judged(t *testing.T, task exercise.Task, e exercise.Exercise) {
	for _, s := range e.Slips {
		if found, ok := e.SlipOf(s.Value); !ok || found.Code != s.Code || s.Mistake.IsZero() {
			t.Errorf("%+v: the slip %s is not told from others", task, s.Code)
		}
	}
	if _, ok := e.SlipOf(e.Answer); ok || !e.Right(e.Answer) {
		t.Errorf("%+v: its own answer is wrong", task)
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

func TestFriendlyNumbers(t *testing.T) {
	for _, topic := range []exercise.Topic{exercise.Percentages, exercise.Loss} {
		for seed := range 60 {
			e, err := exercise.Task{Topic: topic, Seed: uint64(seed), Difficulty: exercise.Usual}.Exercise()
			if err != nil {
				t.Fatal(err)
			}
			if x := e.Answer.Number; !(math.Abs(x-math.Round(x/50)*50) <= 0.01) {
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

// Words that name no topic and no difficulty are refused, and leave what was there.
func TestUnknownWordsAreRefused(t *testing.T) {
	d, topic := exercise.Hard, exercise.Water
	if err := d.UnmarshalText([]byte("impossible")); err == nil || d != exercise.Hard {
		t.Errorf("%v, %v", d, err)
	}
	if err := topic.UnmarshalText([]byte("astronomy")); err == nil || topic != exercise.Water {
		t.Errorf("%v, %v", topic, err)
	}
}
