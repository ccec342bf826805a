package bake

import (
	"math"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// LoafReading is what a baker knows of a loaf in the oven.
type LoafReading struct {
	Goal
	Core       quantity.Temperature      // what the probe reads now
	ProbeError quantity.TemperatureDelta // how far the probe may be off; 0 takes ±1 °C
	Dough      quantity.Mass             // the piece when it went in; 0 g: not weighed
	Loaf       quantity.Mass             // the piece now; 0 g: not weighed
	Held       time.Duration             // since the core reached its target
	InOven     time.Duration             // since the loaf went in; 0: not known
}

// LoafState is the answer to "is it done?".
type LoafState int

// The states of a loaf.
const (
	NotYet      LoafState = iota
	Done                  // core and bake-out are there
	SaysNothing           // the core is so near boiling that the probe carries no information: weigh the loaf or take the time
)

// String names the state.
func (s LoafState) String() string {
	switch s {
	case NotYet:
		return "not yet"
	case Done:
		return "done"
	case SaysNothing:
		return "the probe says nothing"
	}
	return "unknown state"
}

// LoafVerdict is whether a loaf is done, and by which criteria.
type LoafVerdict struct {
	State      LoafState
	Target     quantity.Temperature
	Boiling    quantity.Temperature
	CoreThere  bool             // the core is at its target
	InAccepted bool             // the core is in the range that sources accept, even below the target
	Weighed    bool             // the loaf was weighed
	Loss       quantity.Percent // of the dough, when weighed
	LossThere  bool             // the loss is at its minimum
	HeldThere  bool             // the target was held long enough
	HoldFor    time.Duration    // still to hold, when the loaf is not weighed
	Light      bool             // lighter than the style usually gets: drier than usual
	Capped     bool             // the target is what boiling allows here, less than was asked
	Informs    bool             // the probe reading carries information: it is not within the flat end near boiling
	reading    LoafReading
	minimum    float64
	hold       time.Duration
	pressure   float64
	sea        float64
}

const (
	// flat is how near to boiling a core stops telling anything: the last loaf of a test stood at 210 °F
	// for a quarter of its time while its crumb went from gummy to done (sources.TestKitchenPlateau).
	flat = 1.5 // °C
	// above is how far over the boiling point a core may read: salt and sugar raise it by a few tenths,
	// probes err by a degree.
	above = 2.5 // °C
	// bakeOut is the share of a bake that follows the arrival of the core (sources.SCurve).
	bakeOut = 0.15
)

// Judge answers: is it done?
//
// Rule: done when the core is at its target AND (the loss is at its minimum OR the target was held long
// enough). Held long enough is the style's hold, or 15 % of the time in the oven when that is given, rye
// never under 10 minutes. A par-baked loaf is done by its core alone. Without a weight or a time, a core
// within 1.5 °C of boiling says nothing: all loaves end there, baked out or not.
// Valid range: probe readings from 0 °C to 2.5 °C above the local boiling point; −500 to 9,000 m.
// Accuracy: the figures of the styles differ between sources by ±3 °C. The color of the crust is a
// criterion of its own, which no number here can see.
// Errors: [quantity.ErrRequired], [quantity.ErrOutOfRange] (a core above boiling; one that looks like °F
// says so), [quantity.ErrInconsistent] (a loaf heavier than its dough, one weight without the other).
// It takes under a microsecond and does not allocate.
// Source: [Style.Guide] of the style; arrival near 85 % of the time, S-curve of thermal profiling.
func (r LoafReading) Judge() (LoafVerdict, error) {
	if err := checkReading(r); err != nil {
		return LoafVerdict{}, err
	}
	t, err := r.target()
	if err != nil {
		return LoafVerdict{}, err
	}
	core := r.Core.Celsius()
	if core > t.boiling+above {
		return LoafVerdict{}, aboveBoiling("Core", r.Core, t.boiling)
	}
	row := rowOf(r.Style).done
	v := LoafVerdict{
		Target: quantity.Celsius(t.core), Boiling: quantity.Celsius(t.boiling),
		// A reading counts as the target when it prints like it.
		CoreThere: core >= t.core-0.05, InAccepted: core >= t.from-0.05, Informs: core < t.boiling-flat,
		Capped: t.capped(r.Goal), reading: r, minimum: row.loss, hold: row.hold, pressure: t.pressure, sea: t.sea,
	}
	if r.Dough.Sign() > 0 {
		v.Weighed = true
		v.Loss = r.Dough.Sub(r.Loaf).PercentOf(r.Dough)
		v.LossThere = v.Loss.Points() >= row.loss
		_, _, most, _ := usualLoss(r.Style, r.Dough.Grams())
		v.Light = v.Loss.Points() > most
	}
	if share := time.Duration(bakeOut * float64(r.InOven)); share > 0 {
		v.hold = share
		if r.Style == Rye {
			v.hold = max(share, row.hold)
		}
	}
	v.HeldThere = v.CoreThere && r.Held >= v.hold
	if v.CoreThere && !v.HeldThere {
		v.HoldFor = v.hold - r.Held
	}
	switch {
	case v.CoreThere && (v.LossThere || v.HeldThere || row.loss == 0):
		v.State = Done
	case !v.Informs && !v.Weighed && r.Held == 0:
		v.State = SaysNothing
	}
	return v, nil
}

func checkReading(r LoafReading) error {
	var p quantity.Problems
	checkGoal(&p, r.Goal)
	checkProbe(&p, "Core", r.Core)
	quantity.Check(&p, "ProbeError", r.ProbeError, quantity.TemperatureDelta{}, mostProbeError)
	switch {
	case r.Dough.IsZero() && r.Loaf.IsZero():
	case r.Dough.IsZero():
		p.Required("Dough", "the weight of the dough that went in, or no weight of the loaf")
	case r.Loaf.IsZero():
		p.Required("Loaf", "the weight of the loaf now, or no weight of the dough")
	default:
		if quantity.Check(&p, "Dough", r.Dough, leastPiece, mostPiece) && quantity.Check(&p, "Loaf", r.Loaf, leastLoaf, mostPiece) && r.Loaf.Compare(r.Dough) > 0 {
			p.Add("Loaf", r.Loaf.String(), "no more than the dough, "+r.Dough.String(), quantity.ErrInconsistent)
		}
	}
	p.Duration("Held", r.Held, 0, 24*time.Hour)
	p.Duration("InOven", r.InOven, 0, 24*time.Hour)
	if r.InOven > 0 && r.Held > r.InOven {
		p.Add("Held", quantity.FormatDuration(r.Held), "no longer than the time in the oven", quantity.ErrInconsistent)
	}
	return p.Err()
}

var (
	leastPiece     = quantity.Grams(10)
	leastLoaf      = quantity.Grams(5)
	mostPiece      = quantity.Grams(20000)
	mostProbeError = quantity.DeltaCelsius(10)
	coldProbe      = quantity.Celsius(-5)
	hotProbe       = quantity.Celsius(110)
)

// checkProbe notes a core temperature that no loaf has. 200 typed as °C is suspected to be °F.
func checkProbe(p *quantity.Problems, path string, t quantity.Temperature) bool {
	if t.Compare(hotProbe) > 0 && t.IsValid() {
		p.Add(path, t.String(), "a core of 0 °C to 102 °C"+suspectFahrenheit(t), quantity.ErrOutOfRange)
		return false
	}
	return quantity.Check(p, path, t, coldProbe, hotProbe)
}

// suspectFahrenheit says so when a number of °C would make sense as °F.
func suspectFahrenheit(t quantity.Temperature) string {
	c := t.Celsius()
	if c < 110 || c > 215 {
		return ""
	}
	return "; " + fixed(c, 0) + " °F would be " + degrees((c-32)/1.8) + ": was it °F?"
}

func aboveBoiling(path string, t quantity.Temperature, boiling float64) error {
	return &quantity.InputError{
		GoPath: path, Got: t.String(), Err: quantity.ErrOutOfRange,
		Want: "at most " + degrees(boiling+above) + ": water boils here at " + degrees(boiling) + ", and a moist crumb is no hotter" + suspectFahrenheit(t),
	}
}

// String prints the verdict in one or two sentences.
func (v LoafVerdict) String() string {
	core := celsius(v.reading.Core)
	bakesOut := v.minimum > 0
	switch v.State {
	case Done:
		by := ""
		switch {
		case !bakesOut:
		case v.LossThere:
			by = ", " + v.Loss.Text(1) + " lighter"
		default:
			by = ", held for " + quantity.FormatDuration(v.reading.Held)
		}
		if v.Light {
			by += ", drier than usual"
		}
		return "done: core " + core + by + ". The color of the crust is yours to judge."
	case SaysNothing:
		return "a core of " + core + " says nothing: water boils here at " + celsius(v.Boiling) + " and every loaf ends there. Weigh it (at least " +
			fixed(v.minimum, 0) + " % lighter than its dough), or give it " + quantity.FormatDuration(v.hold) + " from the moment it reached " + celsius(v.Target) + "."
	}
	var b strings.Builder
	b.WriteString("not yet: core " + core)
	if v.CoreThere {
		b.WriteString(" is there")
		if v.Weighed {
			b.WriteString(", but only " + v.Loss.Text(1) + " lighter, " + fixed(v.minimum, 0) + " % wanted; or hold it " + quantity.FormatDuration(v.HoldFor) + " more")
		} else {
			b.WriteString("; hold it " + quantity.FormatDuration(v.HoldFor) + " more, or weigh it (at least " + fixed(v.minimum, 0) + " % lighter)")
		}
	} else {
		b.WriteString(", target " + celsius(v.Target) + cappedText(v.Capped, v.reading.Goal, v.sea))
		if v.InAccepted {
			b.WriteString("; some take it out from here")
		}
	}
	return b.String() + "."
}

// Working derives the verdict.
func (v LoafVerdict) Working() working.Working {
	t, err := v.reading.Goal.Target()
	if err != nil {
		return working.Working{Title: "Is it done?"}
	}
	w := t.Working()
	w.Title = "Is it done?"
	w.Steps = append(w.Steps, working.Step{
		Name: "core below boiling", Symbol: "d", Formula: "T_b − T", Numbers: fixed(v.Boiling.Celsius(), 2) + " − " + num(v.reading.Core.Celsius(), 2),
		Where: []working.Binding{{Symbol: "T_b", Meaning: "local boiling point", Value: v.Boiling.Text(quantity.CelsiusScale, 2)}, {Symbol: "T", Meaning: "core now", Value: v.reading.Core.Text(quantity.CelsiusScale, 2)}},
		Value: fixed(v.Boiling.Celsius()-v.reading.Core.Celsius(), 1) + " °C", Tolerance: 0.011,
		Note: "below 1.5 °C a probe carries no information", Source: sources.TestKitchenPlateau,
	})
	if v.Weighed {
		dough, loaf := v.reading.Dough.Grams(), v.reading.Loaf.Grams()
		w.Steps = append(w.Steps, working.Step{
			Name: "loss", Symbol: "L", Formula: "100 × (D − B) ÷ D", Numbers: "100 × (" + fixed(dough, 1) + " − " + fixed(loaf, 1) + ") ÷ " + fixed(dough, 1),
			Where: []working.Binding{{Symbol: "D", Meaning: "dough that went in", Value: v.reading.Dough.String()}, {Symbol: "B", Meaning: "loaf now", Value: v.reading.Loaf.String()}},
			Value: fixed(v.Loss.Points(), 2) + " %", Tolerance: 10 / dough, Note: "at least " + fixed(v.minimum, 0) + " % wanted", Source: working.Algebra(),
		})
	}
	if v.minimum > 0 {
		w.Steps = append(w.Steps, working.Step{
			Name: "time at the target that shows bake-out", Symbol: "t_hold", Value: fixed(v.hold.Minutes(), 1) + " min",
			Note: "held so far: " + quantity.FormatDuration(v.reading.Held) + "; 15 % of the time in the oven, or the style's usual", Source: sources.SCurve,
		})
	}
	w.Steps = append(w.Steps, working.Step{
		Name: "verdict", Symbol: "state", Value: v.State.String(), Note: "core at its target AND (loss at its minimum OR held long enough)", Source: sources.OvenJudgment("the rule of two criteria"),
	})
	return w
}

// Cautions says what can hurt at the oven.
func (v LoafVerdict) Cautions() []working.Caution { return append(OvenCautions(), colorCaution()) }

// probeSigma is the standard deviation of a probe reading in °C: its stated error is taken as 1.96 standard
// deviations.
func probeSigma(d quantity.TemperatureDelta) float64 {
	e := d.Celsius()
	if e == 0 {
		e = 1
	}
	return math.Max(e/1.96, 0.02)
}
