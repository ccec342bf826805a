package ferment

import (
	"encoding/json"
	"math"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/gasbalance"
)

// Temperatures and sizes at which something is worth a note.
const (
	cold  = 10.0 // °C: where the curves of growth and gas rest on few data
	hot   = 30.0 // °C: above it a levain's growth and its gas part ways
	slack = 2.0  // rise: few doughs hold more
	// hours: below, the minutes in which dry yeast wakes up are a tenth of the time or more
	shortDough = 2.0
	tooWide    = 6.0 // late over early: beyond that a range is of little use
)

// beyond says by how much the dough leaves the temperatures of the law, and what that may mean.
func (e *Estimate) beyond(law About) (out []working.Message) {
	lo, hi := (History{knots: e.d.knots}).extremes(e.end())
	const rounding = 1e-6
	if lo >= law.Low-rounding && hi <= law.High+rounding {
		return nil
	}
	if hi-lo > rounding {
		out = append(out, working.Tell("ferment.extrapolated",
			"extrapolated: the dough is at %.1f to %.1f, the law is for %.0f to %.0f", degrees(lo), degrees(hi),
			degrees(law.Low), degrees(law.High)))
	} else {
		out = append(out, working.Tell("ferment.extrapolated_held",
			"extrapolated: the dough is at %.1f, the law is for %.0f to %.0f", degrees(hi),
			degrees(law.Low), degrees(law.High)))
	}
	if hi > law.High+rounding {
		out = append(out, working.Tell("ferment.dying",
			"above %.0f yeast dies, which is not reckoned with: the dough may come much later, or never",
			degrees(law.High)))
	}
	return out
}

// remark gathers what is to be known about an estimate.
func (e *Estimate) remark() []working.Message {
	h, b := e.bulk.History, &e.bulk
	var out []working.Message
	add := func(m working.Message) { out = append(out, m) }
	about := b.Law.About()
	out = append(out, e.beyond(about)...)
	out = append(out, h.notes...)
	if last := h.knots[len(h.knots)-1]; h.measured && e.outcome.Late > last.Hour {
		add(
			working.Tell("ferment.history_ends",
				"the history ends after %v; from there the last temperature, %.1f, is held",
				quantity.Elapsed(h.Known()), degrees(last.Celsius)),
		)
	}
	s, c := e.moment(e.likely())
	switch mean := meanCelsius(&s, c); {
	case mean > hot && e.d.kind != gasbalance.ByYeast:
		add(
			working.Tell("ferment.hot", "above %.0f growth and gas of a levain part ways: the range is wider",
				degrees(hot)),
		)
	case mean < cold:
		add(working.Tell("ferment.cold", "below %.0f little is measured and every degree counts: the range is wider",
			degrees(cold)))
	}
	if e.d.kind == gasbalance.ByBoth {
		add(working.Tell("ferment.both",
			"levain and yeast crowd each other and their gas is added up; acid slowing the yeast is not reckoned with"))
	}
	if kind := b.Yeast.Kind; kind != NoYeast && kind != FreshYeast && e.d.start.Levain == 0 &&
		e.outcome.Likely < shortDough {
		add(working.Tell("ferment.waking", "dry yeast takes 10 to 15 minutes to wake up, which the range does not count: "+
			"look for a dough so short that much later"))
	}
	if e.d.target > slack {
		add(working.Tell("ferment.slack", "few doughs hold a rise beyond %.0f without falling",
			quantity.NewPercent(100*slack)))
	}
	if b.Sugar.Points() > unsureSugar {
		add(working.Tell("ferment.sweet",
			"beyond %.0f sugar nothing measured stands behind these hours: go by the dough alone",
			quantity.NewPercent(unsureSugar)))
	}
	switch {
	case math.IsInf(e.outcome.Likely, 1):
		add(working.Tell("ferment.not_ready", "not ready within 30 days at these temperatures"))
	case math.IsInf(e.outcome.Late, 1):
		add(working.Tell("ferment.late_end_far", "the late end lies beyond 30 days"))
	}
	if e.outcome.Late > tooWide*e.outcome.Early {
		add(working.Tell("ferment.too_wide",
			"the range is too wide to plan by: so cold or so small a dose makes every doubt count; "+
				"mark the height on the jar, look once a day, and give a reading when it has begun to rise"))
	}
	return out
}

// RestsOn says what the estimate rests on.
func (e Estimate) RestsOn() []working.Message {
	if !e.given() {
		return nil
	}
	b := &e.bulk
	var out []working.Message
	add := func(m working.Message) { out = append(out, m) }
	if !b.Inoculation.IsZero() {
		add(working.Tell("ferment.rests_levain", "%.1f of the flour prefermented", b.Inoculation))
	}
	if b.Yeast.Kind != NoYeast {
		add(b.Yeast.Message())
	}
	for i := range b.Preferments {
		h := &b.Preferments[i]
		add(working.Tell("ferment.rests_preferment",
			"%.1f of the flour in a preferment ripened for %v, its cells handed on", h.Flour, h.Ripened))
	}
	if s, _ := e.moment(e.likely()); e.d.kind == gasbalance.ByBoth && s.Cells() > 0 {
		add(working.Tell("ferment.rests_both", "levain and yeast together, the yeast being %.0f of the two by then",
			quantity.NewPercent(100*s.Yeast/s.Cells())))
	}
	pace := e.d.law.Pace(e.d.formula) / e.d.law.Pace(gasbalance.Formula{Hydration: 0.72, Salt: 2})
	add(working.Tell("ferment.rests_formula",
		"%.1f water, %.1f salt, %.1f sugar and %.0f whole grain: %.0f of the pace of a plain dough (judgment)",
		b.Hydration, b.Salt, b.Sugar, b.WholeGrain, quantity.NewPercent(100*pace)))
	if !b.Altitude.IsZero() {
		add(working.Tell("ferment.rests_altitude",
			"at %.0f the same gas makes a larger rise: the air presses with %.0f of its weight at sea level",
			b.Altitude, quantity.NewPercent(100*e.d.atm)))
	}
	add(working.Tell("ferment.rests_law", "%v; %v", b.Law, b.History))
	add(b.Culture.rests())
	if n := len(e.readings); n > 0 {
		add(working.Tell("ferment.rests_readings", "%d {1|reading|readings} of this dough", n))
	}
	return out
}

// String prints the range and the rise: "75 % rise after 5h10m to 9h00m (80 %), likely 6h50m".
func (e Estimate) String() string { return e.Message().String() }

// Message says the range and the rise.
func (e Estimate) Message() working.Message {
	if !e.given() {
		return working.Tell("ferment.no_estimate", "no estimate")
	}
	if !e.Reached() {
		return working.Tell("ferment.estimate_not_reached", "%v rise after %v; not within 30 days", e.wanted(), e.Ready())
	}
	return working.Tell("ferment.estimate", "%v rise after %v", e.wanted(), e.Ready())
}

// wanted is the rise that is asked for, in words: below 10 % a tenth of a percent counts.
func (e *Estimate) wanted() working.Message {
	if e.d.target < 0.1 {
		return working.Tell("ferment.small_rise", "%.1f", e.bulk.Rise)
	}
	return working.Tell("ferment.rise", "%.0f", e.bulk.Rise)
}

// dataPoints is how finely the rise is told as data.
const dataPoints = 25

// estimateData is an [Estimate] as JSON: what it was made from, and what it says.
type estimateData struct {
	Bulk     Bulk                 `json:"bulk"`
	Readings []RiseReading        `json:"readings,omitempty"`
	Ready    quantity.TimeRange   `json:"ready"`
	Reached  bool                 `json:"reached"`
	Mean     quantity.Temperature `json:"mean_temperature,omitzero"`
	Rise     []RisePoint          `json:"rise"`
	RestsOn  []working.Message    `json:"rests_on"`
	Notes    []working.Message    `json:"notes,omitempty"`
}

// MarshalJSON writes what the estimate was made from and what it says; null for the zero Estimate.
func (e Estimate) MarshalJSON() ([]byte, error) {
	if !e.given() {
		return []byte("null"), nil
	}
	return json.Marshal(estimateData{e.bulk, e.readings, e.Ready(), e.Reached(), e.Mean(), e.RiseCurve(dataPoints),
		e.RestsOn(), e.notes})
}

// UnmarshalJSON makes the estimate again from what it was made from. Errors: as [Bulk.Estimate] and [Estimate.Update].
func (e *Estimate) UnmarshalJSON(data []byte) error {
	*e = Estimate{}
	if string(data) == "null" {
		return nil
	}
	var d estimateData
	if err := quantity.ReadJSON(data, &d); err != nil {
		return err
	}
	again, err := d.Bulk.Estimate()
	if err == nil && len(d.Readings) > 0 {
		var p Progress
		p, err = again.Update(d.Readings...)
		again = p.Now
	}
	if err != nil {
		return err
	}
	*e = again
	return nil
}
