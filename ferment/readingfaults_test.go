package ferment_test

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/trial"
)

// knots are readings at hours.
func knots(hourCelsius ...float64) (out []ferment.Knot) {
	for i := 0; i < len(hourCelsius); i += 2 {
		out = append(out, ferment.Knot{At: span(hourCelsius[i]), Temperature: quantity.Celsius(hourCelsius[i+1])})
	}
	return out
}

// What is wrong with a reading is said once and in full, and nothing else with it: its time and its temperature apart.
func TestWhatIsWrongWithReadings(t *testing.T) {
	const from, to = ": out of range: got ", ", want −25 °C to 60 °C"
	for _, c := range []struct {
		in   ferment.Readings
		want string
	}{
		{ferment.Readings{Points: knots(0, 20, 4, 21, 8, -25, 12, 60)}, ""},
		{ferment.Readings{Points: knots(5, 20, 9, 21)}, ""},
		{ferment.Readings{Points: knots(0, 20, 366*24, 21), MaxGap: span(366 * 24)}, ""},
		{ferment.Readings{Points: knots(0, 20, 366*24+1, 21), MaxGap: span(366 * 24)},
			"points[1].at: out of range: got 8785h, want 0m to 8784h"},
		{ferment.Readings{Points: knots(0, 20, 4, 61)}, "points[1].temperature" + from + "61 °C" + to},
		{ferment.Readings{Points: knots(5, -26, 9, 20)}, "points[0].temperature" + from + "−26 °C" + to},
		{ferment.Readings{Points: knots(0, 20, 4, math.NaN())},
			"points[1].temperature: required: want −25 °C to 60 °C"},
		{ferment.Readings{Points: knots(0, 70, 1, 76)}, "points[0].temperature" + from + "70 °C" + to +
			" (these readings look like °F taken for °C)\npoints[1].temperature" + from + "76 °C" + to +
			" (these readings look like °F taken for °C)"},
		{ferment.Readings{Points: knots(0, 20, 5, 60)}, "points[1].at: inconsistent: got a gap of 5h, want at most 4h " +
			"without a reading"},
		{ferment.Readings{Points: knots(0, 20, 0, -25)}, "points[1].at: inconsistent: got 0m, want after the reading " +
			"before it, at 0m"},
		{ferment.Readings{Points: knots(-1, 20)}, "points[0].at: out of range: got −1h, want 0m to 8784h"},
		{ferment.Readings{Points: knots(0, 20, 1, 20, 1, 21)},
			"points[2].at: inconsistent: got 1h, want after the reading before it, at 1h"},
		{ferment.Readings{Points: knots(0, 20, 4.001, 20)}, "points[1].at: inconsistent: got a gap of 4h00m04s, want at " +
			"most 4h without a reading"},
		{ferment.Readings{Points: knots(0, 20, 1, 20, 1.5, 20), MaxGap: span(0.75)}, "points[1].at: inconsistent: got a " +
			"gap of 1h, want at most 45m without a reading"},
	} {
		if d := cmp.Diff(c.want, saying(trial.Err(c.in.History()))); d != "" {
			t.Error(d)
		}
	}
}

// A fault after a hundred good readings at the very ends of what is taken is found; of many faults twenty are told, and
// of bakes likewise.
func TestFaultsAfterGoodReadings(t *testing.T) {
	var points []ferment.Knot
	for i := range 100 {
		points = append(points, ferment.Knot{At: span(4 * float64(i)), Temperature: quantity.Celsius(
			[]float64{-25, 60, 20}[i%3])})
	}
	bad := append(points, ferment.Knot{At: span(401), Temperature: quantity.Celsius(20)})
	if got := trial.Refused(trial.Err(ferment.Readings{Points: bad}.History())); got != "points[100].at inconsistent" {
		t.Errorf("refused are %q", got)
	}
	for i := range points {
		points[i].Temperature = quantity.Celsius(61)
	}
	if n := len(quantity.InputErrors(trial.Err(ferment.Readings{Points: points}.History()))); n != 20 {
		t.Errorf("%d faults of 100 are told", n)
	}
	if n := len(quantity.InputErrors(trial.Err(ferment.Readings{Points: points[:19]}.History()))); n != 19 {
		t.Errorf("%d faults of 19 are told", n)
	}
	log := bakeLog(t, 30)
	for i := range log {
		log[i].Took = 1
	}
	err := trial.Err(ferment.Learning{Bakes: log}.Learn())
	if n := len(quantity.InputErrors(err)); n != 20 || !strings.Contains(saying(err), "bakes[19].took") {
		t.Errorf("%d bakes of 30 are told: %v", n, err)
	}
}

// The page says of readings how many they are, how long they last and between which temperatures.
func TestWhatReadingsSayOfThemselves(t *testing.T) {
	for want, in := range map[string][]ferment.Knot{
		"1 reading over 0m, 21.5 °C to 21.5 °C":        knots(0, 21.5),
		"3 readings over 3h30m, −2.0 °C to 24.0 °C":    knots(0, 24, 2, -2, 3.5, 5),
		"4 readings over 3h, 20.0 °C to 60.0 °C":       knots(0.5, 20, 1, 60, 2, 30, 3, 20),
		"2 readings over 1h, −25.0 °C to −24.5 °C":     knots(0, -24.5, 1, -25),
		"2 readings over 2h30m, 32.9 °C to 40.0 °C":    knots(0, 40, 2.5, 32.9),
		"2 readings over 2h30m, 33.0 °C to 43.3 °C °F": knots(0, 43.3, 2.5, 33),
	} {
		want, suspect := strings.CutSuffix(want, " °F")
		h, err := ferment.Readings{Points: in}.History()
		if err != nil || h.String() != want || (len(h.Notes()) == 1) != suspect {
			t.Errorf("%v, %v, %v; want %q, taken for °F %v", h, h.Notes(), err, want, suspect)
		}
	}
}
