package bake

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/enum"
	"example.org/maslin/internal/sources"
)

// AltitudeRule says how a target moves with altitude.
type AltitudeRule int

// The rules. The zero value is the cap.
const (
	// Cap keeps the sea-level target unless the local boiling point less a margin is lower. It is the
	// default because setting of starch and protein is not an effect of pressure: a brioche needs its 90 °C
	// anywhere.
	Cap AltitudeRule = iota
	// Offset lowers every target by 1 °C per 300 m, like the boiling point. It is not the default: at 1,600
	// m it would send a brioche to 84.7 °C, below the end of the gelatinization of wheat starch. The
	// evidence between the two rules is two anecdotes from 2,300 m.
	Offset
)

var altitudeRules = enum.Of[AltitudeRule]("altitude rule", "cap", "offset")

// IsValid reports whether the rule is one of the rules.
func (r AltitudeRule) IsValid() bool { return altitudeRules.Has(r) }

// String names the rule.
func (r AltitudeRule) String() string { return altitudeRules.String(r) }

// MarshalText implements encoding.TextMarshaler.
func (r AltitudeRule) MarshalText() ([]byte, error) { return altitudeRules.Marshal(r) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (r *AltitudeRule) UnmarshalText(text []byte) error { return altitudeRules.Unmarshal(r, text) }

const (
	// capMargin keeps a target this far below the boiling point; nearer than reach it is never reached.
	capMargin = 2.0 // °C
	reach     = 1.0 // °C
	// metersPerDegree is the offset rule's slope: 1 °C per 300 m, within 0.04 °C of the boiling point up to
	// 3,048 m.
	metersPerDegree = 300.0
	// crumbSets is where wheat starch has gelatinized to its end, in the middle of the 80 to 90 °C that
	// Hamelman's chart of stages gives. A loaf whose core cannot get there may stay soft.
	crumbSets = 85.0 // °C
)

// Goal asks for the core temperature that means done.
type Goal struct {
	Style  Style                `json:"style"`
	Place  Site                 `json:"place,omitzero"`
	Rule   AltitudeRule         `json:"rule,omitzero"`   // how the target moves with altitude; Cap unless set
	Wanted quantity.Temperature `json:"wanted,omitzero"` // the baker's own target; not given: the style's
}

// CoreTarget is the core temperature that means done here.
type CoreTarget struct {
	answer

	Core quantity.Temperature `json:"core"`
	// From is the lowest core at which some take the loaf out here: the low end of Accepted, or Core where water
	// boils too low for it.
	From quantity.Temperature `json:"from"`
	// Accepted are the cores that sources accept, as they give them, for sea level.
	Accepted quantity.Range[quantity.Temperature] `json:"accepted"`
	Boiling  quantity.Temperature                 `json:"boiling"`
	// the boiling point, not the style, sets the target
	Capped    bool `json:"capped"`
	MayNotSet bool `json:"may_not_set"` // water boils so low that the crumb may not set
	goal      Goal
	sea       float64
	pressure  float64
}

// target is CoreTarget in floats, without allocation.
type target struct{ core, from, boiling, sea, pressure float64 }

// Target answers: what core temperature means done for this style at this altitude?
//
// Formula: T* = min(T₀, T_b − m) for the cap; T* = min(T₀ − Z/300, T_b − m) for the offset. Symbols: T₀ target at sea
// level; T_b local boiling point; m 2 °C; Z altitude in m. Valid range: −500 to 9,000 m. Accuracy: that of the
// style's figures, ±3 °C. Above about 4,000 m the target falls below 85 °C, where wheat starch has gelatinized to its
// end: the crumb may not set, and MayNotSet says so. Errors: [quantity.ErrOutOfRange]; [quantity.ErrModelRange] for a
// thin bread, which no probe judges, and for the offset rule with a barometer reading, which it was not made for.
// Source: the style's [Style.Guide]; the cap is a judgment, matched by a loaf baked to 90.6 °C at 2,347 m (Ask
// Extension 404313).
func (goal Goal) Target() (CoreTarget, error) {
	var problems quantity.Problems
	checkGoal(&problems, goal)
	if goal.Style.IsValid() && !goal.Style.ByCore() && goal.Wanted.IsZero() {
		problems.Add(
			"Style",
			goal.Style,
			quantity.Tell("bake.want_bread_middle_probe_thin_breads",
				"a bread with a middle for a probe; thin breads are done by time and color"),
			quantity.ErrModelRange,
		)
	}
	if err := problems.ErrFor(goal); err != nil {
		return CoreTarget{}, err
	}
	t, err := goal.target()
	if err != nil {
		return CoreTarget{}, err
	}
	row := rowOf(goal.Style).done
	return CoreTarget{
		Core: quantity.Celsius(t.core), From: quantity.Celsius(t.from), Boiling: quantity.Celsius(t.boiling),
		Accepted: quantity.Range[quantity.Temperature]{Low: quantity.Celsius(row.from), High: quantity.Celsius(row.to)},
		Capped:   t.capped(goal), MayNotSet: t.core < crumbSets, goal: goal, sea: t.sea, pressure: t.pressure,
	}, nil
}

var (
	lowestCore  = quantity.Celsius(60)
	highestCore = quantity.Celsius(102)
)

func checkGoal(problems *quantity.Problems, goal Goal) bool {
	ok := styles.Check(problems, "Style", goal.Style)
	ok = checkSiteField(problems, goal.Place) && ok
	ok = altitudeRules.Check(problems, "Rule", goal.Rule) && ok
	if goal.Rule == Offset && (goal.Place.Station.IsValid() || goal.Place.SeaLevel.IsValid()) {
		problems.Add("Rule", quantity.Tell("bake.got_offset_barometer_reading", "offset with a barometer reading"),
			quantity.Tell("bake.want_cap_or_altitude_without_barometer", "the cap, or an altitude without a barometer"),
			quantity.ErrModelRange)
		ok = false
	}
	if !goal.Wanted.IsZero() {
		ok = quantity.Check(problems, "Wanted", goal.Wanted, lowestCore, highestCore) && ok
	}
	return ok
}

func (goal Goal) target() (target, error) {
	r := rowOf(goal.Style).done
	if !goal.Wanted.IsZero() {
		r.core = goal.Wanted.Celsius()
		if r.from == 0 {
			r.from = r.core
		}
		r.from = min(r.from, r.core)
	}
	pressure, boiling, err := goal.Place.boil()
	if err != nil {
		return target{}, err
	}
	drop := goal.drop()
	core := min(r.core-drop, boiling-capMargin)
	return target{core: core, from: min(r.from-drop, core), boiling: boiling, sea: r.core, pressure: pressure}, nil
}

// drop is how far the offset rule lowers every target here, in °C.
func (goal Goal) drop() float64 {
	if goal.Rule == Offset {
		return goal.Place.Altitude.Meters() / metersPerDegree
	}
	return 0
}

// capped reports that the boiling point kept the target below what the style, or the baker, asks for here.
func (t target) capped(g Goal) bool { return t.core < t.sea-g.drop()-1e-9 }

// wish names the target, and the baker's own where it is out of reach; the styles' targets are meant to be capped.
func wish(core quantity.Temperature, capped bool, g Goal) working.Message {
	if capped && !g.Wanted.IsZero() {
		return working.Tell("bake.target_not_wanted", "%.1f (not %.1f: water boils too low for it here)", core,
			g.Wanted)
	}
	return working.Tell("bake.target_core", "%.1f", core)
}

// String prints "94.1 °C (water boils here at 96.1 °C; at sea level sources accept 93.0 °C to 99.0 °C)".
func (t CoreTarget) String() string { return t.message().String() }

func (t CoreTarget) message() working.Message {
	return working.Tell("bake.target", "%.1f (water boils here at %.1f; at sea level sources accept %.1f to %.1f)",
		t.Core, t.Boiling, t.Accepted.Low, t.Accepted.High)
}

// Notes says what to know of the target: that boiling water sets it, and that the crumb may not set at all.
func (t CoreTarget) Notes() []working.Message {
	var out []working.Message
	if t.Capped {
		out = append(
			out,
			working.Tell("bake.note_boiling_sets_target", "boiling water, at %.1f, is what sets the target here",
				t.Boiling),
		)
	}
	if t.MayNotSet {
		out = append(out, working.Tell("bake.note_may_not_set",
			"water boils so low here that the crumb may not set: wheat starch is done at %.0f to %.0f, and the core gets no "+
				"hotter than %.1f. Bake thin, or under pressure.", quantity.Celsius(80), quantity.Celsius(90), t.Boiling))
	}
	return out
}

func sourcesOf(g Goal) working.Source {
	if !g.Wanted.IsZero() || !g.Style.ByCore() {
		return sources.Practice("the baker's own target")
	}
	return rowOf(g.Style).done.sources[0]
}
