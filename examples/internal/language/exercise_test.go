package language

import (
	"testing"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/pupil"
	"example.org/maslin/schedule/exercise"
)

// Two hundred exercises of every topic and difficulty in both systems of units, told in German: who reads the German
// question alone gets the answer of the German key, and its wrong answers by making their mistakes.
func TestGermanExercisesSolveRight(t *testing.T) {
	most := 200
	if testing.Short() {
		most = 20
	}
	reads := pupil.New(true)
	for _, topic := range quantity.Values[exercise.Topic]() {
		for _, units := range []working.Units{working.Metric, working.USCustomary} {
			r := working.Reader{Units: units, Language: German()}
			for _, difficulty := range quantity.Values[exercise.Difficulty]() {
				for seed := range most {
					task := exercise.Task{Topic: topic, Seed: uint64(seed), Difficulty: difficulty, Units: units}
					e, err := task.Exercise()
					if err != nil {
						t.Fatal(err)
					}
					printed := pupil.Sheet{
						Question: e.Question.Text(r), Answer: e.Answer.Text(r), Tolerance: e.Tolerance.Text(r),
						Wrong: map[string]string{},
					}
					for _, s := range e.Slips {
						printed.Wrong[s.Code] = s.Value.Text(r)
					}
					for _, fault := range reads.Do(printed).Faults {
						t.Fatalf("%+v: %s", task, fault)
					}
				}
			}
		}
	}
}
