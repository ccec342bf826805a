package exercise

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// dice draw the numbers of an exercise. The generator is splitmix64, by Steele, Lea and Flood, Fast splittable
// pseudorandom number generators (2014); the constants are from memory. It is the same everywhere.
type dice struct {
	state uint64
	us    bool
}

func newDice(in Task) *dice {
	d := &dice{state: in.Seed, us: in.Units == working.USCustomary}
	d.state ^= uint64(in.Topic)<<40 ^ uint64(in.Difficulty)<<50
	d.next()
	return d
}

func (d *dice) next() uint64 {
	d.state += 0x9e3779b97f4a7c15
	z := d.state
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// between draws a whole number from low to high in steps.
func (d *dice) between(low, high, step int) int {
	return low + int(d.next()%uint64((high-low)/step+1))*step
}

// of draws one of several.
func of[T any](d *dice, choices ...T) T { return choices[d.between(0, len(choices)-1, 1)] }

// percent draws a percentage.
func (d *dice) percent(low, high, step int) quantity.Percent {
	return quantity.NewPercent(float64(d.between(low, high, step)))
}

// warm draws a temperature of whole degrees: °C, or about as warm in °F.
func (d *dice) warm(low, high int) quantity.Temperature {
	if d.us {
		return quantity.Fahrenheit(float64(d.between(low*9/5+32, high*9/5+32, 1)))
	}
	return quantity.Celsius(float64(d.between(low, high, 1)))
}

// warmer draws a difference of whole degrees: Δ°C, or about as much in Δ°F.
func (d *dice) warmer(low, high int) quantity.TemperatureDelta {
	if d.us {
		return quantity.DeltaFahrenheit(float64(d.between(low*9/5, high*9/5, 1)))
	}
	return quantity.DeltaCelsius(float64(d.between(low, high, 1)))
}

// mass draws a weight of whole steps in grams, or of about as many ounces, quarter pounds or pounds.
func (d *dice) mass(low, high, step int) quantity.Mass {
	if !d.us {
		return quantity.Grams(float64(d.between(low, high, step)))
	}
	ounces := 160
	for _, smaller := range []int{80, 16, 8, 4, 1} {
		if float64(step) < 28*float64(ounces) {
			ounces = smaller
		}
	}
	from := (low/28 + ounces - 1) / ounces * ounces
	return quantity.Ounces(float64(d.between(from, max(from, high/28), ounces)))
}

// A sheet collects one exercise while it is made.
type sheet struct {
	derivation *working.Derivation
	question   working.Message
	tolerance  float64
	slips      []Slip
}

func newSheet(question working.Message) *sheet {
	return &sheet{derivation: working.Derive(question), question: question}
}

// find adds a step of the key.
func (s *sheet) find(name working.Message, symbol string, unit working.Unit, decimals int,
	by working.Expr) working.Expr {
	return s.derivation.Find(working.Finding{
		Name: name, Symbol: symbol, By: by, Unit: unit, Decimals: decimals, Source: working.Algebra(),
	})
}

// agree adds a step of the key that a room of the library has answered as well.
func (s *sheet) agree(name working.Message, symbol string, decimals int, by working.Expr, is any) working.Expr {
	return s.derivation.Find(working.Finding{
		Name: name, Symbol: symbol, By: by, Is: is, Decimals: decimals, Source: working.Algebra(),
	})
}

// slip adds a wrong answer, reckoned as somebody does who makes the mistake.
func (s *sheet) slip(code string, mistake working.Message, by working.Expr) {
	answer := s.derivation.Working().Answer()
	d := working.Derive(mistake)
	d.Find(working.Finding{
		Name: mistake, Symbol: "x", By: by, Unit: answer.Unit, Decimals: max(answer.Decimals, working.WholeNumber),
		Source: sources.Practice("usual mistakes"),
	})
	v := d.Working().Answer()
	v.Decimals = answer.Decimals
	s.slips = append(s.slips, Slip{Code: code, Value: v, Mistake: mistake})
}

// symbol is a number of the question.
func symbol(name string, meaning working.Message, value any) working.Expr {
	return working.Given(name, meaning, value)
}
