package bake

import (
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
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

var ruleNames = [...]string{"cap", "offset"}

// IsValid reports whether the rule is one of the rules.
func (r AltitudeRule) IsValid() bool { return r >= 0 && int(r) < len(ruleNames) }

// String names the rule.
func (r AltitudeRule) String() string {
	if !r.IsValid() {
		return "unknown rule"
	}
	return ruleNames[r]
}

// ParseAltitudeRule reads "cap" or "offset". The empty text is the cap.
func ParseAltitudeRule(text string) (AltitudeRule, error) {
	if text == "" {
		return Cap, nil
	}
	if i := indexName(ruleNames[:], text); i >= 0 {
		return AltitudeRule(i), nil
	}
	return 0, &quantity.InputError{Got: quantity.Excerpt(text), Want: strings.Join(ruleNames[:], ", "), Err: quantity.ErrOutOfRange}
}

// MarshalText implements encoding.TextMarshaler.
func (r AltitudeRule) MarshalText() ([]byte, error) {
	if !r.IsValid() {
		return nil, unknown("rule", int(r), ruleNames[:])
	}
	return []byte(r.String()), nil
}

// UnmarshalText implements encoding.TextUnmarshaler; see [ParseAltitudeRule].
func (r *AltitudeRule) UnmarshalText(text []byte) error {
	v, err := ParseAltitudeRule(string(text))
	if err == nil {
		*r = v
	}
	return err
}

const (
	// capMargin keeps a target this far below the boiling point; nearer than reach it is never reached.
	capMargin = 2.0 // °C
	reach     = 1.0 // °C
	// metersPerDegree is the offset rule's slope: 1 °C per 300 m, within 0.04 °C of the boiling point up to
	// 3,048 m.
	metersPerDegree = 300.0
)

// Goal asks for the core temperature that means done.
type Goal struct {
	Style  Style
	Place  Site
	Rule   AltitudeRule         // how the target moves with altitude; Cap unless set
	Wanted quantity.Temperature // the baker's own target; not given: the style's
}

// CoreTarget is the core temperature that means done here.
type CoreTarget struct {
	Core     quantity.Temperature
	From, To quantity.Temperature // cores that sources accept, moved the same way
	Boiling  quantity.Temperature
	Capped   bool // the boiling point, not the style, sets the target
	goal     Goal
	sea      float64
	pressure float64
}

// target is Target in floats, without allocation.
type target struct{ core, from, to, boiling, sea, pressure float64 }

// Target answers: what core temperature means done for this style at this altitude?
//
// Formula: T* = min(T₀, T_b − m) for the cap; T* = min(T₀ − Z/300, T_b − m) for the offset.
// Symbols: T₀ target at sea level; T_b local boiling point; m 2 °C; Z altitude in m.
// Valid range: −500 to 9,000 m. Accuracy: that of the style's figures, ±3 °C.
// Errors: [quantity.ErrOutOfRange]; [quantity.ErrModelRange] for the offset rule with a barometer reading,
// which it was not made for.
// Source: the style's [Style.Guide]; the cap is a judgment, matched by a loaf baked to 90.6 °C at 2,347 m (Ask
// Extension 404313).
func (goal Goal) Target() (CoreTarget, error) {
	var problems quantity.Problems
	checkGoal(&problems, goal)
	if err := problems.Err(); err != nil {
		return CoreTarget{}, err
	}
	t, err := goal.target()
	if err != nil {
		return CoreTarget{}, err
	}
	return CoreTarget{
		Core: quantity.Celsius(t.core), From: quantity.Celsius(t.from), To: quantity.Celsius(t.to), Boiling: quantity.Celsius(t.boiling),
		Capped: t.capped(goal), goal: goal, sea: t.sea, pressure: t.pressure,
	}, nil
}

var (
	lowestCore  = quantity.Celsius(60)
	highestCore = quantity.Celsius(102)
)

func checkGoal(problems *quantity.Problems, goal Goal) bool {
	ok := true
	if !goal.Style.IsValid() {
		problems.Add("Style", goal.Style.String(), strings.Join(styleNames(), ", "), quantity.ErrOutOfRange)
		ok = false
	}
	ok = checkPlaceField(problems, goal.Place) && ok
	if !goal.Rule.IsValid() {
		problems.Add("Rule", goal.Rule.String(), strings.Join(ruleNames[:], ", "), quantity.ErrOutOfRange)
		ok = false
	}
	if goal.Rule == Offset && (goal.Place.Station.IsValid() || goal.Place.SeaLevel.IsValid()) {
		problems.Add("Rule", "offset with a barometer reading", "the cap, or an altitude without a barometer", quantity.ErrModelRange)
		ok = false
	}
	if !goal.Wanted.IsZero() {
		ok = quantity.Check(problems, "Wanted", goal.Wanted, lowestCore, highestCore) && ok
	}
	return ok
}

func (g Goal) target() (target, error) {
	r := rowOf(g.Style).done
	if !g.Wanted.IsZero() {
		shift := g.Wanted.Celsius() - r.core
		r.core += shift
		r.from = min(r.from, r.core)
		r.to = max(r.to, r.core)
	}
	pressure, boiling, err := g.Place.boil()
	if err != nil {
		return target{}, err
	}
	drop := 0.0
	if g.Rule == Offset {
		drop = g.Place.Altitude.Meters() / metersPerDegree
	}
	core := min(r.core-drop, boiling-capMargin)
	return target{
		core: core, from: min(r.from-drop, core), to: max(core, min(r.to-drop, boiling)),
		boiling: boiling, sea: r.core, pressure: pressure,
	}, nil
}

// capped reports that the boiling point kept the target below what the style, or the baker, asks for here.
func (t target) capped(g Goal) bool {
	drop := 0.0
	if g.Rule == Offset {
		drop = g.Place.Altitude.Meters() / metersPerDegree
	}
	return t.core < t.sea-drop-1e-9
}

// cappedText says so when the baker's own target is out of reach; the styles' targets are meant to be
// capped.
func cappedText(capped bool, g Goal, sea float64) string {
	if !capped || g.Wanted.IsZero() {
		return ""
	}
	return " (not " + degrees(sea) + ": water boils too low for it here)"
}

// String prints "94.2 °C (93.0 °C to 96.2 °C; water boils at 96.2 °C)".
func (t CoreTarget) String() string {
	return celsius(t.Core) + " (" + celsius(t.From) + " to " + celsius(t.To) + "; water boils at " + celsius(t.Boiling) + ")"
}

// Working derives the target.
func (t CoreTarget) Working() working.Working {
	w := working.Working{Title: "Core temperature that means done"}
	b := Boiling{Point: t.Boiling, Pressure: pascals(t.pressure), place: t.goal.Place}
	w = w.Append(b.Working())
	style := sourcesOf(t.goal)
	w.Steps = append(w.Steps, working.Step{
		Name: "target at sea level", Symbol: "T_0", Value: degrees(t.sea), Note: "for " + t.goal.Style.String() + " bread", Source: style,
	})
	where := []working.Binding{{Symbol: "T_0", Meaning: "target at sea level", Value: degrees(t.sea)}}
	formula, numbers := "min(T_0, T_b − m)", "min("+fixed(t.sea, 1)
	if t.goal.Rule == Offset {
		formula = "min(T_0 − Z ÷ 300, T_b − m)"
		numbers += " − " + num(t.goal.Place.Altitude.Meters(), 1) + " ÷ 300.0"
		where = append(where, working.Binding{Symbol: "Z", Meaning: "altitude", Value: fixed(t.goal.Place.Altitude.Meters(), 1) + " m"})
	}
	where = append(where,
		working.Binding{Symbol: "T_b", Meaning: "local boiling point", Value: t.Boiling.Text(quantity.CelsiusScale, 2)},
		working.Binding{Symbol: "m", Meaning: "margin below it", Value: "2 °C"})
	w.Steps = append(w.Steps, working.Step{
		Name: "target here", Symbol: "T_done", Formula: formula, Where: where,
		Numbers: numbers + ", " + fixed(t.Boiling.Celsius(), 2) + " − 2.0)", Value: t.Core.Text(quantity.CelsiusScale, 1), Tolerance: 0.01,
		Note: t.goal.Rule.String() + " rule", Source: sources.OvenJudgment("the cap or offset rule for altitude; no tested table exists (Ask Extension 404313)"),
	})
	return w
}

func sourcesOf(g Goal) working.Source {
	if !g.Wanted.IsZero() {
		return sources.Practice("the baker's own target")
	}
	return rowOf(g.Style).done.sources[0]
}
