package report

import (
	"math"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// about says in words what a chart shows, for those who cannot see it: where its line begins and ends, when it reaches
// what is marked, and how its second line runs.
func (c Chart) about() working.Message {
	last := len(c.X.Values) - 1
	if last < 0 || len(c.Main.Values) <= last {
		return c.Title
	}
	told := []working.Message{working.Tell("report.about_line", "%v: %v at %v, %v at %v.", c.Main.Name, c.Main.tell(0),
		c.X.tell(0), c.Main.tell(last), c.X.tell(last))}
	if len(c.Low.Values) > last && len(c.High.Values) > last {
		told = append(told, working.Tell("report.about_band", "%v: %v to %v at the end.", c.bandName(), c.Low.tell(last),
			c.High.tell(last)))
	}
	for _, s := range c.Beside {
		if len(s.Values) > last {
			told = append(told, working.Tell("report.about_beside", "%v: %v to %v.", s.Name, s.tell(0), s.tell(last)))
		}
	}
	if c.Top != 0 {
		told = append(told, working.Tell("report.about_top", "What goes beyond %v is cut.", c.Main.Of.tell(c.Top)))
	}
	for _, l := range c.Levels {
		told = append(told, c.aboutLevel(l))
	}
	for _, m := range c.Marks {
		told = append(told, working.Tell("report.about_mark", "%v: %v.", c.X.Of.tell(m.At), m.Text))
	}
	if len(c.Second.Values) > last {
		low, high := c.Second.Values[0], c.Second.Values[0]
		for _, v := range c.Second.Values {
			low, high = min(low, v), max(high, v)
		}
		told = append(told, working.Tell("report.about_second", "%v: %v at first, %v at the end, between %v and %v.",
			c.Second.Name, c.Second.tell(0), c.Second.tell(last), c.Second.Of.tell(low), c.Second.Of.tell(high)))
	}
	return working.Join(told, " ")
}

// aboutLevel says when the line climbs to a height, and when the ends of the band do.
func (c Chart) aboutLevel(l Mark) working.Message {
	height := c.Main.Of.tell(l.At)
	at, ok := c.climbs(c.Main.Values, l.At)
	if !ok {
		return working.Tell("report.about_level", "%v: %v.", l.Text, height)
	}
	early, okEarly := c.climbs(c.High.Values, l.At)
	late, okLate := c.climbs(c.Low.Values, l.At)
	if okEarly && okLate {
		return working.Tell("report.about_level_range", "%v: %v, reached at %v (%v to %v).", l.Text, height, c.X.Of.tell(at),
			c.X.Of.tell(early), c.X.Of.tell(late))
	}
	return working.Tell("report.about_level_reached", "%v: %v, reached at %v.", l.Text, height, c.X.Of.tell(at))
}

// climbs is the first place along the picture at which a line climbs to a height, straight between its points.
func (c Chart) climbs(line []float64, height float64) (float64, bool) {
	for i := 1; i < len(line) && i < len(c.X.Values); i++ {
		if line[i-1] < height && line[i] >= height {
			share := (height - line[i-1]) / (line[i] - line[i-1])
			return c.X.Values[i-1] + share*(c.X.Values[i]-c.X.Values[i-1]), true
		}
	}
	return 0, false
}

func (s Series) tell(i int) working.Message { return s.Of.tell(s.Values[i]) }

// tell is a number of the axis as it is said: with its unit, about as finely as a picture shows it.
func (a Axis) tell(v float64) working.Message {
	if math.IsNaN(v) || math.Abs(v) > 1e9 {
		return working.Tell("report.no_number", "–")
	}
	switch a {
	case Percents:
		return working.Tell("report.axis_percent", "%.0f", quantity.NewPercent(v))
	case Degrees:
		return working.Tell("report.axis_degrees", "%.1f", quantity.Celsius(v))
	case Hours:
		return working.Tell("report.axis_time", "%v", minutes(v*60))
	case Minutes:
		return working.Tell("report.axis_time", "%v", minutes(v))
	case ClockHours:
		midnight := time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)
		return working.Tell("report.axis_clock", "%t", midnight.Add(time.Duration(minutes(v*60))))
	case Grams:
		return working.Tell("report.axis_grams", "%.0f", quantity.Grams(v))
	case MetersAbove:
		return working.Tell("report.axis_altitude", "%v", quantity.Meters(math.Round(v)))
	}
	return working.Tell("report.axis_number", "%.2f", v)
}

func minutes(m float64) quantity.Elapsed {
	return quantity.Elapsed(time.Duration(math.Round(m)) * time.Minute)
}
