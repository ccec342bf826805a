package ferment_test

import (
	"encoding/json"
	"math"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

// What is nothing says so: no history has no temperature and no length, a dough that is not followed no rise and no
// time, no curve no rate and no name.
func TestNothingAnswersNothing(t *testing.T) {
	var h ferment.History
	if h.At(time.Hour) != (quantity.Temperature{}) || h.Known() != 0 || len(h.Knots()) != 0 || len(h.Notes()) != 0 ||
		h.String() != "no history" {
		t.Errorf("no history: %v, %v, %v", h.At(time.Hour), h.Known(), h)
	}
	if text, err := json.Marshal(h); err != nil || string(text) != "null" {
		t.Errorf("no history is written as %s, %v", text, err)
	}
	var f ferment.Followed
	if f.Last() != (ferment.Knot{}) || f.Ready() != (quantity.TimeRange{}) || f.Readings() != 0 ||
		f.Rise() != (quantity.Range[quantity.Percent]{}) || f.String() != "no dough is followed" {
		t.Errorf("nothing followed: %v, %v, %v, %v", f.Last(), f.Ready(), f.Rise(), f)
	}
	var c ferment.Curve
	if at, rate := c.Optimum(); at != (quantity.Temperature{}) || rate != 0 || !math.IsNaN(c.Rate(20)) ||
		c.About() != (ferment.About{}) || c.String() != "" {
		t.Errorf("no curve: %v at %v, %v, %v", rate, at, c.Rate(20), c.About())
	}
	var e ferment.Estimate
	if e.RiseCurve(9) != nil || e.Mean() != (quantity.Temperature{}) || e.Cautions() != nil || len(e.Readings()) != 0 ||
		e.Ready() != (quantity.TimeRange{Probability: pct(80)}) {
		t.Errorf("no estimate: %v, %v, %v", e.RiseCurve(9), e.Mean(), e.Ready())
	}
	if got := (ferment.ShapeTarget{}).Cautions(); got != nil {
		t.Errorf("no shape: %v", got)
	}
	var k ferment.Culture
	if k.Bakes() != 0 || k.String() != "a culture nothing is known about" {
		t.Errorf("no culture: %d bakes, %v", k.Bakes(), k)
	}
}

// A rise is drawn with as many points as were asked for, from two to ten thousand, and else with 25; it ends a tenth
// beyond the late end, or after 30 days.
func TestPointsOfARise(t *testing.T) {
	slow := estimate(t, with(good(), func(b *ferment.Bulk) { b.History = ferment.Constant(quantity.Celsius(1)) }))
	e := estimate(t, good())
	for n, want := range map[int]int{-1: 25, 0: 25, 1: 25, 2: 2, 3: 3, 10_000: 10_000, 10_001: 25} {
		points := e.RiseCurve(n)
		last := points[len(points)-1]
		end := quantity.Elapsed(float64(e.Ready().Late) * 1.1)
		if off := last.At - end; len(points) != want || points[0].At != 0 || off > quantity.Elapsed(time.Second) ||
			off < -quantity.Elapsed(2*time.Second) || last.Temperature != quantity.Celsius(23) {
			t.Errorf("%d points: %d, the last %v, want %v", n, len(points), last, end)
		}
		rise, err := e.RiseAt(last.At.Duration()) // of a time to the second
		if off := rise.Likely.Points() - last.Rise.Likely.Points(); err != nil || !(math.Abs(off) <= 0.1) {
			t.Errorf("%v, %v at %v", rise, err, last)
		}
	}
	if points := slow.RiseCurve(5); points[4].At != quantity.Elapsed(30*24*time.Hour) ||
		points[1].At != quantity.Elapsed(180*time.Hour) {
		t.Errorf("%v", points)
	}
}

// What is wrong with a question about a dough is told at its place in the question.
func TestWhereAnAskedDoughIsRefused(t *testing.T) {
	var a answers
	cold := ferment.Piece{Mass: quantity.Grams(900), Form: ferment.Round, Into: ferment.Room{Night: quantity.Celsius(4)},
		Exposure: ferment.Refrigerator, For: quantity.Elapsed(12 * time.Hour)}
	for name, change := range map[string]func(*ferment.AskedDough){
		"as it is":  func(*ferment.AskedDough) {},
		"its water": func(q *ferment.AskedDough) { q.Bulk.Hydration = pct(400) },
		"a reading": func(q *ferment.AskedDough) { q.Readings = []ferment.RiseReading{{Rise: pct(20)}} },
		"the cold":  func(q *ferment.AskedDough) { q.Cold = &ferment.Proof{} },
		"a stage in the cold": func(q *ferment.AskedDough) {
			q.Cold = &ferment.Proof{Stages: []ferment.Piece{cold, {For: cold.For}}}
		},
		"a reading too late for shaping": func(q *ferment.AskedDough) {
			q.Cold = &ferment.Proof{Stages: []ferment.Piece{cold}}
			q.Readings = []ferment.RiseReading{{At: quantity.Elapsed(31 * 24 * time.Hour), Rise: pct(20)}}
		},
		"when it should be ready": func(q *ferment.AskedDough) { q.ReadyBy = quantity.Elapsed(time.Second) },
		"the room": func(q *ferment.AskedDough) {
			q.ReadyBy, q.Room = quantity.Elapsed(6*time.Hour), ferment.Relaxing{Start: quantity.Celsius(90)}
		},
	} {
		q := asked()
		change(&q)
		_, err := q.Answer()
		a.add(name, err)
	}
	a.kept(t, "asked.txt")
}

// Cultures, followed doughs and histories that are written as something else are refused, and what they were is gone.
func TestWhatIsNoSuchThing(t *testing.T) {
	var a answers
	for name, text := range map[string]string{"a list": "[]", "a text": `"x"`, "an unknown field": `{"loaf":1}`,
		"nothing in it": "{}"} {
		c, f, h := learn(t, ferment.Learning{Bakes: bakeLog(t, 1)}).Culture, ferment.Followed{}, good().History
		a.add("a culture, "+name, json.Unmarshal([]byte(text), &c))
		a.add("a followed dough, "+name, json.Unmarshal([]byte(text), &f))
		a.add("a history, "+name, json.Unmarshal([]byte(text), &h))
		if !c.IsZero() || !f.Equal(ferment.Followed{}) {
			t.Errorf("%s: %v, %v", name, c, f)
		}
	}
	a.kept(t, "others.txt")
}
