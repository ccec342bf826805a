package bake

import (
	"math"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/enum"
)

// LoafReading is what a baker knows of a loaf in the oven.
type LoafReading struct {
	Goal
	Core quantity.Temperature `json:"core,omitzero"` // what the probe reads now; a thin bread has none
	// how far the probe may be off either way; 0 takes 1 °C
	ProbeError quantity.TemperatureDelta `json:"probe_error,omitzero"`
	Dough      quantity.Mass             `json:"dough,omitzero"`   // the piece when it went in; 0 g: not known
	Loaf       quantity.Mass             `json:"loaf,omitzero"`    // the piece now; 0 g: not weighed
	Held       quantity.Elapsed          `json:"held,omitzero"`    // since the core reached its target
	InOven     quantity.Elapsed          `json:"in_oven,omitzero"` // since the loaf went in; 0: not known
}

// LoafState is the answer to "is it done?".
type LoafState int

// The states of a loaf.
const (
	NotYet LoafState = iota
	Done             // set and baked out
	// the core is there, but nothing says whether the loaf has baked out: weigh it or give it time
	Set
	// the core is so near boiling that the probe carries no information: weigh the loaf or take the time
	SaysNothing
	ByTimeAndColor // a thin bread: a probe is no criterion
)

var loafStates = enum.Of[LoafState]("state of a loaf", "not yet", "done", "set", "the probe says nothing",
	"by time and color")

// String names the state.
func (s LoafState) String() string { return loafStates.String(s) }

// MarshalText implements encoding.TextMarshaler.
func (s LoafState) MarshalText() ([]byte, error) { return loafStates.Marshal(s) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (s *LoafState) UnmarshalText(text []byte) error { return loafStates.Unmarshal(s, text) }

// LoafVerdict is whether a loaf is done, and by which criteria.
type LoafVerdict struct {
	answer

	State     LoafState            `json:"state"`
	Target    quantity.Temperature `json:"target,omitzero"`
	Boiling   quantity.Temperature `json:"boiling,omitzero"`
	CoreThere bool                 `json:"core_there"` // the core is at its target
	// the core is where some take the loaf out, even below the target
	InAccepted  bool             `json:"in_accepted"`
	Weighed     bool             `json:"weighed"`      // the loaf was weighed
	Loss        quantity.Percent `json:"loss"`         // of the dough, when weighed
	MinimumLoss quantity.Percent `json:"minimum_loss"` // that shows bake-out; 0 % when loss is no criterion
	LossThere   bool             `json:"loss_there"`   // the loss is at its minimum
	// from the arrival of the core to bake-out, when the loaf is not weighed
	Hold      quantity.Elapsed `json:"hold"`
	HeldThere bool             `json:"held_there"`        // the target was held that long
	HoldFor   quantity.Elapsed `json:"hold_for,omitzero"` // still to hold, when the loaf is not weighed
	Light     bool             `json:"light"`             // lighter than the style usually gets: drier than usual
	// the target is what boiling allows here, less than was asked
	Capped    bool `json:"capped"`
	MayNotSet bool `json:"may_not_set"` // water boils so low here that the crumb may not set
	// the reading carries information: it is not within the flat end near boiling
	Informs bool `json:"informs"`
	// the answer is the same with the core read lower or higher by what the probe may be off
	Firm bool `json:"firm"`
	// of a hearth loaf that is set: how long such a loaf usually bakes in all
	Usual    quantity.TimeRange `json:"usual,omitzero"`
	reading  LoafReading
	pressure float64
	sea      float64
}

const (
	// flat is how near to boiling a core stops telling anything: the last loaf of a test stood at 210 °F
	// for a quarter of its time while its crumb went from gummy to done (sources.TestKitchenPlateau).
	flat = 1.5 // °C
	// above is how far over the boiling point a core may read: salt and sugar raise it by a few tenths,
	// probes err by a degree.
	above = 2.5 // °C
)

// Judge answers: is it done?
//
// Rule: done when the core is at its target AND the loaf has baked out, which its weight or its time tells: the loss
// is at its minimum, or the target was held long enough. A loaf that is light enough is done from the lowest core
// that sources accept. Held long enough: a hearth loaf has been in the oven twice as long as its core took to come
// within 7 °C of boiling (93 °C at sea level); another bread has held its target for 15 parts of a bake whose other
// 85 were the arrival; rye never under 10 minutes. Without the time in the oven a usual piece of the style stands in.
// A par-baked loaf is done by its core alone, a thin bread by time and color. A core at its target of which neither
// weight nor time is known is set, and not known to be baked out. Within 1.5 °C of boiling, with nothing else known,
// a reading says nothing: all loaves end there. Valid range: probe readings from −5 °C to 2.5 °C above the local
// boiling point; −500 to 9,000 m. Accuracy: the figures of the styles differ between sources by ±3 °C; "as long
// again" rests on one loaf of an hour (the trade's figure for pan bread would have it out at 35 minutes). The color
// of the crust is a criterion of its own, which no number here can see. Errors: [quantity.ErrRequired],
// [quantity.ErrOutOfRange] (a core above boiling; one that looks like °F says so), [quantity.ErrInconsistent] (a loaf
// heavier than its dough, one weight without the other). It takes about a microsecond and does not allocate. Source:
// [Style.Guide] of the style; a loaf whose core passed 93 °C at half of an hour's bake and was gummy at 45 minutes,
// America's Test Kitchen (2012); arrival near 85 % of the time, S-curve of thermal profiling.
func (r LoafReading) Judge() (LoafVerdict, error) {
	if err := r.check(); err != nil {
		return LoafVerdict{}, err
	}
	if !r.Style.ByCore() {
		return LoafVerdict{State: ByTimeAndColor, Firm: true, reading: r}, nil
	}
	t, err := r.target()
	if err != nil {
		return LoafVerdict{}, err
	}
	core := r.Core.Celsius()
	if core > t.boiling+above {
		return LoafVerdict{}, quantity.DataPaths(r, aboveBoiling("Core", r.Core, t.boiling))
	}
	v := r.judgedAt(core, t)
	if v.State == Set && r.InOven > 0 && rowOf(r.Style).done.hearth {
		if v.Usual, err = r.usual(); err != nil {
			return LoafVerdict{}, err
		}
	}
	off := r.probeError().Celsius()
	v.Firm = r.judgedAt(core-off, t).State == v.State && r.judgedAt(min(core+off, t.boiling+above), t).State == v.State
	return v, nil
}

// usual is how long such a loaf bakes in all: by its dough, or a usual piece of the style.
func (r LoafReading) usual() (quantity.TimeRange, error) {
	b, err := OvenPiece{Style: r.Style, Dough: r.usualDough(), Extrapolate: true}.BakeTime()
	return b.Time, quantity.DataPaths(r, err)
}

func (r LoafReading) usualDough() quantity.Mass {
	if r.Dough.Sign() > 0 {
		return r.Dough
	}
	return quantity.Grams(rowOf(r.Style).bake.grams)
}

// probeError is how far the probe may be off.
func (r LoafReading) probeError() quantity.TemperatureDelta {
	if r.ProbeError.IsZero() {
		return quantity.DeltaCelsius(usualProbeError)
	}
	return r.ProbeError
}

// usualProbeError is what a probe thermometer for kitchens may be off, in °C. From memory: makers state 0.5 to 1 °C.
const usualProbeError = 1

// judgedAt judges the reading as if its core were so warm, in °C.
func (r LoafReading) judgedAt(core float64, t target) LoafVerdict {
	row := &rowOf(r.Style).done
	v := LoafVerdict{
		Target:  quantity.Celsius(t.core),
		Boiling: quantity.Celsius(t.boiling), MinimumLoss: quantity.NewPercent(row.loss),
		// A reading counts as the target when it prints like it.
		CoreThere: core >= t.core-0.05, InAccepted: core >= t.from-0.05, Informs: core < t.boiling-flat,
		Capped: t.capped(r.Goal), MayNotSet: t.core < crumbSets, reading: r, pressure: t.pressure, sea: t.sea,
	}
	if r.Loaf.Sign() > 0 {
		v.Weighed = true
		v.Loss = r.Dough.Sub(r.Loaf).PercentOf(r.Dough)
		v.LossThere = v.Loss.Points() >= row.loss
		_, _, most, _ := usualLoss(r.Style, r.Dough.Grams())
		v.Light = v.Loss.Points() > most
	}
	v.Hold = quantity.Elapsed(row.hold)
	if r.InOven > 0 {
		v.Hold = quantity.Elapsed(t.bakeOut(r.Style, time.Duration(r.InOven-r.Held)).late)
	}
	v.HeldThere = v.CoreThere && r.Held >= v.Hold
	if v.CoreThere && !v.HeldThere {
		v.HoldFor = v.Hold - r.Held
	}
	switch {
	case v.CoreThere && (v.HeldThere || row.loss == 0), v.InAccepted && v.Weighed && v.LossThere && row.loss > 0:
		v.State = Done
	case !v.Informs && !v.Weighed && r.Held == 0:
		v.State = SaysNothing
	case v.CoreThere && !v.Weighed:
		v.State = Set
	}
	return v
}

func (r LoafReading) check() error {
	var p quantity.Problems
	checkGoal(&p, r.Goal)
	if r.Style.ByCore() || !r.Core.IsZero() {
		checkProbe(&p, "Core", r.Core)
	}
	quantity.Check(&p, "ProbeError", r.ProbeError, quantity.TemperatureDelta{}, mostProbeError)
	switch {
	case r.Dough.IsZero() && r.Loaf.IsZero():
	case r.Dough.IsZero():
		p.Required("Dough", quantity.Tell("bake.want_weight_dough_went_or_no",
			"the weight of the dough that went in, or no weight of the loaf"))
	case r.Loaf.IsZero():
		quantity.Check(&p, "Dough", r.Dough, leastOvenPiece, mostOvenPiece)
	default:
		checkWeights(&p, "Dough", "Loaf", r.Dough, r.Loaf, leastPiece, mostPiece)
	}
	p.Duration("Held", time.Duration(r.Held), 0, 24*time.Hour)
	p.Duration("InOven", time.Duration(r.InOven), 0, 24*time.Hour)
	if r.InOven > 0 && r.Held > r.InOven {
		p.Add("Held", r.Held, quantity.Tell("bake.want_no_longer_than_time_oven", "no longer than the time in the oven"),
			quantity.ErrInconsistent)
	}
	return p.ErrFor(r)
}

var (
	leastOvenPiece = quantity.Grams(20) // of which a bake time is known
	mostOvenPiece  = quantity.Grams(5000)
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
		want := quantity.Tell("bake.want_core", "a core of %v to %v", coldProbe, hotProbe)
		p.Add(path, t, suspectFahrenheit(t, want), quantity.ErrOutOfRange)
		return false
	}
	return quantity.Check(p, path, t, coldProbe, hotProbe)
}

// suspectFahrenheit says so behind what is wanted when a number of °C would make sense as °F.
func suspectFahrenheit(t quantity.Temperature, want quantity.Phrase) quantity.Phrase {
	c := t.Celsius()
	if c < 110 || c > 215 {
		return want
	}
	return quantity.Tell("bake.want_celsius", "%v; %s °F would be %.1f: was it °F?", want, fixed(c, 0),
		quantity.Celsius((c-32)/1.8))
}

func aboveBoiling(path string, t quantity.Temperature, boiling float64) error {
	return &quantity.InputError{
		GoPath: path, Got: t, Err: quantity.ErrOutOfRange,
		Want: suspectFahrenheit(t, quantity.Tell("bake.want_at_most_water_boils_here",
			"at most %.1f: water boils here at %.1f, and a moist crumb is no hotter", quantity.Celsius(boiling+above),
			quantity.Celsius(boiling))),
	}
}

// String prints the verdict in one or two sentences.
func (v LoafVerdict) String() string { return v.message().String() }

func (v LoafVerdict) message() working.Message {
	core := v.reading.Core
	switch v.State {
	case Done:
		return v.doneMessage()
	case ByTimeAndColor:
		return working.Tell("bake.by_time_and_color", "%v is done by time and color: %v", v.reading.Style,
			rowOf(v.reading.Style).done.note)
	case SaysNothing:
		return working.Tell("bake.says_nothing",
			"a core of %.1f says nothing: water boils here at %.1f and every loaf ends there. Weigh it (at least %v lighter "+
				"than its dough), or give it %v from the moment it reached %.1f.", core, v.Boiling, v.MinimumLoss,
			wholeMinutes(v.Hold), v.Target)
	case Set:
		if v.Usual.Late > 0 {
			return v.setByGuide()
		}
		return working.Tell("bake.set",
			"set, but not known to be baked out: core %.1f. Weigh it (at least %v lighter than its dough), or give it %v more.",
			core, v.MinimumLoss, wholeMinutes(v.HoldFor))
	}
	switch {
	case v.CoreThere:
		return working.Tell("bake.too_heavy",
			"not yet: core %.1f is there, but only %.1f lighter, %v wanted; or hold it %v more.", core, v.Loss,
			v.MinimumLoss, wholeMinutes(v.HoldFor))
	case v.InAccepted && v.Weighed:
		return working.Tell("bake.not_yet_heavy", "not yet: core %.1f, target %v, and only %.1f lighter, %v wanted.",
			core, wish(v.Target, v.Capped, v.reading.Goal), v.Loss, v.MinimumLoss)
	case v.InAccepted:
		return working.Tell("bake.not_yet_accepted",
			"not yet: core %.1f, target %v. Some take it out from here: at least %v lighter than its dough, it would be done.",
			core, wish(v.Target, v.Capped, v.reading.Goal), v.MinimumLoss)
	}
	return working.Tell("bake.not_yet", "not yet: core %.1f, target %v.", core,
		wish(v.Target, v.Capped, v.reading.Goal))
}

// setByGuide is what to do with a hearth loaf of which nothing says that it has baked out. Twice the time in which its
// core arrived would prove it; most are baked out before, within the guide times of [OvenPiece], so that these say how
// long to wait for the color. What to do with a loaf that is past them: common practice, no source.
func (v LoafVerdict) setByGuide() working.Message {
	in, dough := v.reading.InOven, v.reading.usualDough()
	if left := v.guideLeft(); left > 0 {
		return working.Tell("bake.set_up_to",
			"set, but not known to be baked out: core %.1f. Weigh it (at least %v lighter than its dough), or give it up to "+
				"%v more, until its color is right: a loaf of %.0f of dough usually bakes %v.",
			v.reading.Core, v.MinimumLoss, wholeMinutes(left), dough, v.Usual)
	}
	return working.Tell("bake.set_past_guide",
		"set, and after %v in the oven likely baked out: core %.1f; a loaf of %.0f of dough usually bakes %v. Take it out "+
			"when its color is right, and weigh it: less than %v lighter than its dough, it gets 5 to 10 minutes more with the "+
			"oven door ajar.",
		in, v.reading.Core, dough, v.Usual, v.MinimumLoss)
}

// guideLeft is the rest of the usual time, and no more than what would prove that the loaf has baked out.
func (v LoafVerdict) guideLeft() quantity.Elapsed {
	return min(v.HoldFor, quantity.Elapsed(v.Usual.Late)-v.reading.InOven)
}

func (v LoafVerdict) doneMessage() working.Message {
	core := v.reading.Core
	switch {
	case v.LossThere && v.Light:
		return working.Tell("bake.done_light",
			"done: core %.1f, %.1f lighter, drier than usual. The color of the crust is yours to judge.", core,
			v.Loss)
	case v.LossThere:
		return working.Tell("bake.done_by_loss",
			"done: core %.1f, %.1f lighter. The color of the crust is yours to judge.", core, v.Loss)
	case v.MinimumLoss.IsZero():
		return working.Tell("bake.done_by_core", "done: core %.1f. The color of the crust is yours to judge.", core)
	}
	return working.Tell("bake.done_by_time",
		"done: core %.1f, held for %v. The color of the crust is yours to judge.", core, v.reading.Held)
}

// Notes says what else to know of the verdict.
func (v LoafVerdict) Notes() []working.Message {
	if v.State == ByTimeAndColor {
		return nil
	}
	notes := CoreTarget{Boiling: v.Boiling, Capped: v.Capped, MayNotSet: v.MayNotSet}.Notes()
	if !v.Firm {
		notes = append(notes, working.Tell("bake.note_not_firm",
			"the probe may be off by %.1f, and then this answer may be another: look at the loaf too",
			v.reading.probeError()))
	}
	return notes
}

// Cautions says what can hurt at the oven.
func (v LoafVerdict) Cautions() []working.Caution { return doorCautions() }

// probeSigma is the standard deviation of a probe reading in °C: its stated error is taken as 1.96 standard
// deviations.
func probeSigma(d quantity.TemperatureDelta) float64 {
	e := d.Celsius()
	if e == 0 {
		e = usualProbeError
	}
	return math.Max(e/1.96, 0.02)
}
