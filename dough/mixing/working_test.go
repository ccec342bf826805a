package mixing_test

import (
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/workcheck"
)

// near reports two printed figures that differ by one in the last digit of the coarser: a reader of °F is shown whole
// degrees in an answer and tenths in a working.
func near(a, b string) bool {
	number := func(s string) float64 {
		text, _, _ := strings.Cut(strings.ReplaceAll(s, "−", "-"), " ")
		x, err := strconv.ParseFloat(text, 64)
		if err != nil {
			return -1e9
		}
		return x
	}
	d := number(a) - number(b)
	most := 0.1001
	if strings.Contains(b, "°F") && !strings.Contains(b, ".") {
		most = 0.5501
	}
	return d < most && d > -most
}

// Every working is whole in both systems of units, and ends at the number that the answer says.
func TestWorkingsEndAtTheAnswer(t *testing.T) {
	must := func(x any, err error) any {
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	b := planned(18, 21, 22, 20, 3*time.Minute, 5*time.Minute)
	b.Dough = quantity.Celsius(25)
	learned := must(mixing.Log{Kind: mixing.Spiral, Batches: []mixing.Logged{b, b}}.Learn()).(mixing.Learned)
	prediction := must(learned.Predict(b, quantity.NewPercent(80))).(mixing.Prediction)
	friction := must(mixing.Measured{Dough: quantity.Celsius(25), Water: quantity.Celsius(18),
		Others: hall().Others}.Friction()).(mixing.Friction)
	rise, _ := friction.Rise()
	water := must(hall().Water()).(mixing.WaterResult)
	pour := must(hallPlan().Pour()).(mixing.PlannedWater)
	ice := must(mixing.IceWater{Water: quantity.Kilograms(2), Tap: quantity.Celsius(20),
		Need: quantity.Celsius(4)}.Replace()).(mixing.IceResult)
	comparison := must(hallBalance().Compare(hall())).(mixing.Comparison)
	dough := must(hallBalance().Final()).(mixing.BalanceResult)
	flour := must(hallBalance().FlourFor(quantity.Celsius(25))).(mixing.BalanceResult)
	left := must(learned.MinutesLeft(mixing.Running{Now: quantity.Celsius(22), Limit: quantity.Celsius(25), Speed: 1,
		Probability: quantity.NewPercent(80)})).(mixing.MinutesLeft)
	scald := must(mixing.Scald{Flour: quantity.Grams(200), FlourTemperature: quantity.Celsius(19),
		Water: quantity.Grams(400)}.Pour()).(mixing.ScaldWater)
	for name, c := range map[string]struct {
		answer interface {
			Working() working.Working
			Report() report.Report
			String() string
		}
		want any
	}{
		"water":      {water, water.Temperature},
		"pour":       {pour, pour.Temperature},
		"friction":   {friction, rise},
		"ice":        {ice, ice.Ice},
		"comparison": {comparison, comparison.AgreeingFriction},
		"dough":      {dough, dough.Dough},
		"flour":      {flour, flour.Flour},
		"prediction": {prediction, prediction.Dough.High},
		"scald":      {scald, scald.Water},
		"left":       {left, nil},
		"learned":    {learned, learned.Spread},
	} {
		w := c.answer.Working()
		workcheck.Verify(t, w)
		for _, units := range []working.Units{working.Metric, working.USCustomary} {
			r := working.Reader{Units: units}
			// minutes are shown as a time, the spread of a residual is not that of a batch
			if c.want == nil || name == "learned" {
				continue
			}
			want := working.Tell("test.t", "%.1f", c.want).Text(r)
			if got := w.Answer().Text(r); got != want && !near(got, want) {
				t.Errorf("%s in %v: the working ends at %s, the answer is %s", name, units, got, want)
			}
			if text := c.answer.Report().Text(report.Options{Units: units}); text == "" || strings.Contains(text,
				"NaN") || strings.Contains(text, "%!") {
				t.Errorf("%s: %s", name, text)
			}
		}
		if c.answer.Report().Headline.String() != c.answer.String() {
			t.Errorf("%s: %q and %q", name, c.answer.Report().Headline, c.answer)
		}
	}
}
