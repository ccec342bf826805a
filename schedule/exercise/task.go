package exercise

import (
	"encoding/json"
	"math"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// A Task asks for one exercise.
type Task struct {
	Topic      Topic      `json:"topic"`
	Seed       uint64     `json:"seed"`
	Difficulty Difficulty `json:"difficulty"`
	// Units are those in which the numbers are friendly.
	Units working.Units `json:"units"`
}

// An Exercise is a question with everything a teacher needs.
type Exercise struct {
	answer

	Task     Task            `json:"task"`
	Question working.Message `json:"question"`
	// Answer is what comes out, and Tolerance how far ordinary rounding on the way may lead from it, in its unit.
	Answer    working.Value `json:"answer"`
	Tolerance working.Value `json:"tolerance"`
	// Slips are the usual wrong answers.
	Slips []Slip `json:"slips"`

	key working.Working
}

// A Slip is a wrong answer and the mistake that it comes from. Code names the mistake for programs.
type Slip struct {
	Code    string          `json:"code"`
	Value   working.Value   `json:"value"`
	Mistake working.Message `json:"mistake"`
}

// Exercise makes the exercise: the same for the same task, on every machine. Errors: [quantity.InputError] for a
// topic, a difficulty or units that are not known.
func (in Task) Exercise() (Exercise, error) {
	var bad quantity.Problems
	topics.Check(&bad, "Topic", in.Topic)
	difficulties.Check(&bad, "Difficulty", in.Difficulty)
	if in.Units != working.Metric && in.Units != working.USCustomary {
		bad.Add("Units", in.Units, quantity.Tell("exercise.want_metric_or_us_customary", "metric or US customary"),
			quantity.ErrOutOfRange)
	}
	if err := bad.ErrFor(in); err != nil {
		return Exercise{}, err
	}
	d := newDice(in)
	for {
		// Some draws lead to numbers that are not friendly, or to mistakes that happen to give the right answer.
		if e, ok := draw(in, d); ok {
			return e, nil
		}
	}
}

func draw(in Task, d *dice) (Exercise, bool) {
	var s *sheet
	switch in.Topic {
	case Percentages:
		s = percentages(d, in.Difficulty)
	case Levain:
		s = levain(d, in.Difficulty)
	case Water:
		s = water(d, in.Difficulty)
	case Rising:
		s = rising(d, in.Difficulty)
	case Altitude:
		s = altitude(d, in.Difficulty)
	case Loss:
		s = loss(d, in.Difficulty)
	case Cooling:
		s = cooling(d, in.Difficulty)
	default:
		s = backward(d, in.Difficulty)
	}
	if s == nil {
		return Exercise{}, false
	}
	e := Exercise{Task: in, Question: s.question, key: s.derivation.Working()}
	e.Answer = e.key.Answer()
	e.Tolerance = toleranceOf(in.Units, e.Answer.Unit, s.tolerance)
	for _, slip := range s.slips {
		if e.distinct(slip) {
			e.Slips = append(e.Slips, slip)
		}
	}
	return e, len(e.Slips) >= least && e.Answer.IsValid()
}

// toleranceOf is a tolerance as a reader is told it, in one digit: that of a weight in grams, or in ounces where they
// are weighed.
func toleranceOf(units working.Units, of working.Unit, x float64) working.Value {
	if of == working.Gram && units == working.USCustomary {
		ounce := quantity.Ounces(1).Grams()
		return working.Amount(ounce*oneDigit(x/ounce), of, 0)
	}
	x = oneDigit(x)
	return working.Amount(x, toleranceUnit(of), decimals(x))
}

// oneDigit rounds to one digit that says something: nobody weighs to 47.85 g.
func oneDigit(x float64) float64 {
	step := math.Pow10(int(math.Floor(math.Log10(x))))
	return math.Round(x/step) * step
}

// least is how many usual wrong answers an exercise has at least.
const least = 2

// decimals are those that a tolerance is shown with.
func decimals(x float64) int {
	switch {
	case whole(x):
		return 0
	case whole(10 * x):
		return 1
	}
	return 2
}

// toleranceUnit is the unit of a difference of two answers.
func toleranceUnit(u working.Unit) working.Unit {
	switch u {
	case working.Celsius:
		return working.DeltaCelsius
	case working.Fahrenheit:
		return working.DeltaFahrenheit
	case working.Clock:
		return working.Minute
	}
	return u
}

// distinct reports whether a wrong answer can be told from the right one and from the other wrong ones.
func (e Exercise) distinct(s Slip) bool {
	if !s.Value.IsValid() || s.Value.Unit != e.Answer.Unit ||
		math.Abs(s.Value.Number-e.Answer.Number) <= 2*e.Tolerance.Number {
		return false
	}
	for _, other := range e.Slips {
		if math.Abs(s.Value.Number-other.Value.Number) <= 2*e.Tolerance.Number {
			return false
		}
	}
	return true
}

// Working derives the answer, step by step: the key.
func (e Exercise) Working() working.Working { return e.key }

// Right reports whether an answer that somebody gave is right within the tolerance. Quantities and
// [working.Amount] are taken, in any unit of the dimension.
func (e Exercise) Right(given any) bool { return e.near(given, e.Answer) }

// SlipOf says which usual mistake an answer comes from, if it is one.
func (e Exercise) SlipOf(given any) (Slip, bool) {
	if e.Right(given) {
		return Slip{}, false
	}
	for _, s := range e.Slips {
		if e.near(given, s.Value) {
			return s, true
		}
	}
	return Slip{}, false
}

func (e Exercise) near(given any, want working.Value) bool {
	got := working.ValueOf(given).In(want.Unit)
	return math.Abs(got.Number-want.Number) <= e.Tolerance.Number*(1+1e-9)
}

// String is the question for a reader of metric English.
func (e Exercise) String() string { return e.Question.String() }

// MarshalJSON writes the exercise with its key.
func (e Exercise) MarshalJSON() ([]byte, error) {
	type plain Exercise
	return json.Marshal(struct {
		plain
		Working working.Working `json:"working"`
	}{plain(e), e.key})
}
