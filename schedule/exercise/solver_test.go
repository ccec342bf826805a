package exercise_test

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.org/maslin/schedule/exercise"
)

// solve reads the numbers out of the English question and reckons the answer by itself: it knows nothing of how the
// exercise was made. Masses are in g or oz, temperatures in °C or °F, times in the unit asked for, clocks in minutes of
// the week.
func solve(t *testing.T, id, question string) float64 {
	n := numbers(question)
	need := func(k int) []float64 {
		if len(n) != k {
			t.Fatalf("%s: %d numbers instead of %d in %q: %v", id, len(n), k, question, n)
		}
		return n
	}
	switch strings.TrimPrefix(id, "exercise.") {
	case "percentages_water": // 100 %, water, salt, flour
		need(4)
		return n[3] * n[1] / 100
	case "percentages_flour": // pieces, each, 100 %, water, salt
		need(5)
		return n[0] * n[1] / (1 + n[3]/100 + n[4]/100)
	case "percentages_mishap": // flour, water %, poured
		need(3)
		return n[2]/(n[1]/100) - n[0]
	case "levain_weight": // flour, share, hydration
		need(3)
		return n[0] * n[1] / 100 * (1 + n[2]/100)
	case "levain_water": // flour, water, share, hydration
		need(4)
		return n[0] * (n[1]/100 - n[2]/100*n[3]/100)
	case "levain_build": // want, keep, flour parts, water parts; "one part of starter" is a word
		need(4)
		return (n[0] + n[1]) / (1 + n[2] + n[3])
	case "water_factors": // target, flour, room, friction
		need(4)
		return 3*n[0] - n[1] - n[2] - n[3]
	case "water_levain":
		need(5)
		return 4*n[0] - n[1] - n[2] - n[3] - n[4]
	case "water_other_degrees":
		need(4)
		friction := n[3] / 1.8
		if strings.Contains(question, " °C for three") {
			friction = n[3] * 1.8
		}
		return 3*n[0] - n[1] - n[2] - friction
	case "water_ice": // all, need, tap, melting
		need(4)
		freezing := 0.0
		if strings.Contains(question, "°F") {
			freezing = 32
		}
		return n[0] * (n[2] - n[1]) / (n[2] - freezing + n[3])
	case "rising_one": // temperature, rate, dose
		need(3)
		return n[2] / n[1]
	case "rising_two": // dose, hours, temperature, rate, temperature, rate
		need(6)
		return (n[0] - n[1]*n[3]) / n[5]
	case "rising_less_levain": // percent, hours, temperature, rate, percent
		n = append(n[:4:4], n[len(n)-1])
		return n[1] + math.Log(n[0]/n[4])/n[3]
	case "altitude_boiling": // boiling, step, altitude
		need(3)
		return n[0] - n[2]/n[1]
	case "altitude_core": // core, boiling, margin
		need(3)
		return math.Min(n[0], n[1]-n[2])
	case "altitude_both": // core, boiling, step, margin, altitude
		need(5)
		return math.Min(n[0], n[1]-n[4]/n[2]-n[3])
	case "loss_percent":
		need(2)
		return 100 * (1 - n[1]/n[0])
	case "loss_scaling":
		need(2)
		return n[0] / (1 - n[1]/100)
	case "loss_batch": // loaves, each, loss, process
		need(4)
		return n[0] * n[1] / (1 - n[2]/100) / (1 - n[3]/100)
	case "cooling_core": // start, room, halving, passed
		need(4)
		return n[1] + (n[0]-n[1])*math.Pow(0.5, n[3]/n[2])
	case "cooling_time": // start, room, halving, end
		need(4)
		return n[2] * math.Log2((n[0]-n[1])/(n[3]-n[1]))
	case "cooling_readings": // start, now, apart, room, end
		need(5)
		return n[2] * math.Log((n[1]-n[3])/(n[4]-n[3])) / math.Log((n[0]-n[3])/(n[1]-n[3]))
	case "backward_oven": // ready, bake, cool
		need(3)
		return n[0] - n[1] - n[2]
	case "backward_mix": // ready, mix, bulk, shape, proof, bake, cool, preheat
		need(8)
		return n[0] - n[1] - n[2] - n[3] - n[4] - n[5] - n[6]
	case "backward_night": // ready, mix, bulk, shape, bake, cool, least, most, bed; up at 06:00 has no day
		need(9)
		oven := n[0] - n[4] - n[5]
		return math.Min(oven-60*n[6], n[8]) - n[3] - n[2] - n[1]
	}
	t.Fatalf("no solver for %s", id)
	return 0
}

var (
	clockWords    = regexp.MustCompile(`(Sun|Mon|Tue|Wed|Thu|Fri|Sat) (\d+):(\d\d)( [ap]m)?`)
	durationWords = regexp.MustCompile(`\b(?:(\d+)h(\d+)m|(\d+)h|(\d+)m)\b`)
	numberWords   = regexp.MustCompile(`−?\d+(?:\.\d+)?`)
	kilograms     = regexp.MustCompile(`(\d+) kg\b`)
	pounds        = regexp.MustCompile(`(\d+) lb(?: (\d+\.\d) oz)?`)
)

// numbers lists what stands in a question: clocks and durations as minutes, kilograms as grams, pounds with or without
// ounces as ounces.
func numbers(question string) []float64 {
	question = strings.NewReplacer("ln(f_1 ÷ f_2) ÷ μ", "", "from f_1 to f_2", "", "up at 06:00", "").Replace(question)
	question = clockWords.ReplaceAllStringFunc(question, func(text string) string {
		m := clockWords.FindStringSubmatch(text)
		hour, _ := strconv.Atoi(m[2])
		minute, _ := strconv.Atoi(m[3])
		if m[4] != "" {
			hour %= 12
		}
		if m[4] == " pm" {
			hour += 12
		}
		day := strings.Index("SunMonTueWedThuFriSat", m[1]) / 3
		return strconv.Itoa(day*1440 + hour*60 + minute)
	})
	question = durationWords.ReplaceAllStringFunc(question, func(text string) string {
		m := durationWords.FindStringSubmatch(text)
		hour, _ := strconv.Atoi(m[1] + m[3])
		minute, _ := strconv.Atoi(m[2] + m[4])
		return strconv.Itoa(hour*60 + minute)
	})
	question = kilograms.ReplaceAllString(question, "${1}000 g")
	question = pounds.ReplaceAllStringFunc(question, func(text string) string {
		m := pounds.FindStringSubmatch(text)
		lb, _ := strconv.ParseFloat(m[1], 64)
		oz, _ := strconv.ParseFloat(m[2], 64)
		return strconv.FormatFloat(lb*16+oz, 'f', 2, 64)
	})
	var out []float64
	for _, text := range numberWords.FindAllString(question, -1) {
		x, _ := strconv.ParseFloat(strings.Replace(text, "−", "-", 1), 64)
		out = append(out, x)
	}
	return out
}

var allTopics = []exercise.Topic{
	exercise.Percentages, exercise.Levain, exercise.Water, exercise.Rising,
	exercise.Altitude, exercise.Loss, exercise.Cooling, exercise.Backward,
}
