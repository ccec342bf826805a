package bakelog

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"
	"unicode/utf8"

	"example.org/maslin/bake"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

// Version is the version of the lines that this package writes, and the highest it reads.
const Version = 1

// Kind says what was observed.
type Kind string

// The kinds of entries.
const (
	KindMix     Kind = "mix"     // the dough left the mixer
	KindRise    Kind = "rise"    // how far it has risen
	KindReady   Kind = "ready"   // it was ready, by hand and eye
	KindCore    Kind = "core"    // a reading of the core in the oven
	KindWeights Kind = "weights" // dough in, bread out
	KindNote    Kind = "note"
	KindPlan    Kind = "plan" // a plan is being followed
	KindStep    Kind = "step" // a step of the plan is done
)

// Kinds lists every kind.
func Kinds() []Kind {
	return []Kind{KindMix, KindRise, KindReady, KindCore, KindWeights, KindNote, KindPlan, KindStep}
}

// Entry is one line of the log: what was observed, when, of which bread. Of the parts, the one
// of its kind is present and no other.
type Entry struct {
	Version int       `json:"v"`
	At      time.Time `json:"at"`
	Kind    Kind      `json:"kind"`
	Bread   string    `json:"bread,omitempty"` // empty: the bread that was mixed last

	Mix     *Mix     `json:"mix,omitempty"`
	Rise    *Rise    `json:"rise,omitempty"`
	Ready   *Ready   `json:"ready,omitempty"`
	Core    *Core    `json:"core,omitempty"`
	Weights *Weights `json:"weights,omitempty"`
	Note    string   `json:"note,omitempty"`
	Plan    *Plan    `json:"plan,omitempty"`
	Step    string   `json:"step,omitempty"` // the ID of the step that is done
}

// Mix is a dough as it left the mixer. Only Dough is required; what else is known decides what
// can be learned from it.
type Mix struct {
	Dough quantity.Temperature `json:"dough"`

	// For the mixer: what went into one batch, how warm, and for how long.
	Flour        quantity.Temperature `json:"flour,omitzero"`
	Water        quantity.Temperature `json:"water,omitzero"`
	Levain       quantity.Temperature `json:"levain,omitzero"`
	Bowl         quantity.Temperature `json:"bowl,omitzero"` // not given: as the room
	FlourWeight  quantity.Mass        `json:"flour_weight,omitzero"`
	WaterWeight  quantity.Mass        `json:"water_weight,omitzero"`
	LevainWeight quantity.Mass        `json:"levain_weight,omitzero"`
	Mixer        mixing.MixerKind     `json:"mixer,omitzero"`
	Slow         quantity.Elapsed     `json:"slow,omitzero"`
	Fast         quantity.Elapsed     `json:"fast,omitzero"`

	// For the culture: what the dough is, and where it stands.
	Inoculation quantity.Percent     `json:"inoculation,omitzero"` // flour in the levain, of all flour
	Yeast       quantity.Percent     `json:"yeast,omitzero"`
	YeastKind   string               `json:"yeast_kind,omitempty"` // "fresh", "active dry" or "instant"
	Salt        quantity.Percent     `json:"salt,omitzero"`
	Hydration   quantity.Percent     `json:"hydration,omitzero"`
	WholeGrain  quantity.Percent     `json:"whole_grain,omitzero"`
	Room        quantity.Temperature `json:"room,omitzero"`
	Weight      quantity.Mass        `json:"weight,omitzero"` // of the dough in its tub
	Rise        quantity.Percent     `json:"rise,omitzero"`   // aimed at when it is shaped
}

// Rise is how far the dough has risen.
type Rise struct {
	Rise  quantity.Percent `json:"rise"`
	Error quantity.Percent `json:"error,omitzero"` // in points of rise; zero: 5
}

// Ready is a dough that was ready for shaping.
type Ready struct {
	Rise quantity.Percent `json:"rise"` // as read or judged then
	// Readings are those of a probe in the dough, from mixing on.
	Readings []Reading `json:"readings,omitempty"`
}

// Reading is one temperature of a probe.
type Reading struct {
	After       quantity.Elapsed     `json:"after"`
	Temperature quantity.Temperature `json:"t"`
}

// Core is the core of a loaf in the oven.
type Core struct {
	Core  quantity.Temperature `json:"core"`
	After quantity.Elapsed     `json:"after,omitzero"` // in the oven
	Out   bool                 `json:"out,omitempty"`  // the loaf was done and taken out
}

// Weights are those of one loaf.
type Weights struct {
	In    quantity.Mass `json:"in"`  // dough
	Out   quantity.Mass `json:"out"` // bread, when cool
	Style bake.Style    `json:"style"`
}

// Plan is a plan being followed: with the bake file it says everything, because a plan depends
// on nothing but the file and the clock.
type Plan struct {
	Made   time.Time `json:"made"`
	Wanted time.Time `json:"wanted"`
}

var yeastKinds = map[string]ferment.YeastKind{"fresh": ferment.FreshYeast, "active dry": ferment.ActiveDryYeast, "instant": ferment.InstantYeast}

// YeastKinds lists the kinds of yeast as the log names them.
func YeastKinds() []string { return []string{"fresh", "active dry", "instant"} }

const (
	mostText     = 4000
	mostReadings = 20000
)

// Check reports what is wrong with an entry. Errors: quantity.ErrRequired,
// quantity.ErrOutOfRange and quantity.ErrInconsistent with the field.
func (e Entry) Check() error {
	var p quantity.Problems
	if e.Version != Version {
		p.Add("v", fmt.Sprint(e.Version), fmt.Sprint(Version), quantity.ErrOutOfRange)
	}
	switch year := e.At.Year(); {
	case e.At.IsZero():
		p.Add("at", "", "a time such as 2026-11-28T10:40:00+01:00", quantity.ErrRequired)
	case year < 1900 || year > 9998:
		p.Add("at", e.At.Format(time.RFC3339), "a year from 1900 to 9998", quantity.ErrOutOfRange)
	}
	checkText(&p, "bread", e.Bread)
	checkText(&p, "note", e.Note)
	checkText(&p, "step", e.Step)
	parts := map[Kind]bool{
		KindMix: e.Mix != nil, KindRise: e.Rise != nil, KindReady: e.Ready != nil, KindCore: e.Core != nil, KindWeights: e.Weights != nil,
		KindNote: strings.TrimSpace(e.Note) != "", KindPlan: e.Plan != nil, KindStep: strings.TrimSpace(e.Step) != "",
	}
	if _, known := parts[e.Kind]; !known {
		p.Add("kind", quantity.Excerpt(string(e.Kind)), kindList(), quantity.ErrOutOfRange)
	} else {
		for _, k := range Kinds() {
			if k == e.Kind && !parts[k] {
				p.Add(string(k), "", "what was observed", quantity.ErrRequired)
			}
			if k != e.Kind && parts[k] {
				p.Add(string(k), "", "only in an entry of the kind "+string(k), quantity.ErrInconsistent)
			}
		}
	}
	e.checkParts(&p)
	return p.Err()
}

func (e Entry) checkParts(p *quantity.Problems) {
	if m := e.Mix; m != nil {
		m.check(p)
	}
	if r := e.Rise; r != nil {
		quantity.Check(p, "rise.rise", r.Rise, quantity.NewPercent(-20), quantity.NewPercent(300))
		if !r.Error.IsZero() {
			quantity.Check(p, "rise.error", r.Error, quantity.NewPercent(0.1), quantity.NewPercent(50))
		}
	}
	if r := e.Ready; r != nil {
		quantity.Check(p, "ready.rise", r.Rise, quantity.NewPercent(1), quantity.NewPercent(300))
		if len(r.Readings) > mostReadings {
			p.Add("ready.readings", fmt.Sprint(len(r.Readings)), fmt.Sprintf("at most %d", mostReadings), quantity.ErrOutOfRange)
		}
		for i, one := range r.Readings {
			if !inDough(one.Temperature) {
				quantity.Check(p, fmt.Sprintf("ready.readings[%d].t", i), one.Temperature, quantity.Celsius(-25), quantity.Celsius(60))
				break
			}
		}
	}
	if c := e.Core; c != nil {
		if quantity.Check(p, "core.core", c.Core, quantity.Celsius(-5), quantity.Celsius(150)) && (c.After < 0 || c.After.Duration() > 24*time.Hour) {
			p.Add("core.after", c.After.String(), "0 to 24h", quantity.ErrOutOfRange)
		}
	}
	if w := e.Weights; w != nil {
		ok := quantity.Check(p, "weights.in", w.In, quantity.Grams(1), quantity.Kilograms(100))
		ok = quantity.Check(p, "weights.out", w.Out, quantity.Grams(1), quantity.Kilograms(100)) && ok
		if ok && w.Out.Compare(w.In) > 0 {
			p.Add("weights.out", w.Out.String(), "no more than the "+w.In.String()+" that went in", quantity.ErrInconsistent)
		}
		if !w.Style.IsValid() {
			p.Add("weights.style", "", "a style of bread", quantity.ErrOutOfRange)
		}
	}
	if l := e.Plan; l != nil && (l.Made.IsZero() || l.Wanted.IsZero()) {
		p.Add("plan", "", "when it was made and when the bread is wanted", quantity.ErrRequired)
	}
}

func (m *Mix) check(p *quantity.Problems) {
	quantity.Check(p, "mix.dough", m.Dough, quantity.Celsius(0), quantity.Celsius(50))
	for _, t := range []struct {
		path string
		t    quantity.Temperature
	}{{"mix.flour", m.Flour}, {"mix.water", m.Water}, {"mix.levain", m.Levain}, {"mix.bowl", m.Bowl}, {"mix.room", m.Room}} {
		if !t.t.IsZero() {
			quantity.Check(p, t.path, t.t, quantity.Celsius(-40), quantity.Celsius(95))
		}
	}
	for _, w := range []struct {
		path string
		m    quantity.Mass
	}{{"mix.flour_weight", m.FlourWeight}, {"mix.water_weight", m.WaterWeight}, {"mix.levain_weight", m.LevainWeight}, {"mix.weight", m.Weight}} {
		quantity.Check(p, w.path, w.m, quantity.Mass{}, quantity.Kilograms(1000))
	}
	for _, d := range []struct {
		path string
		d    quantity.Elapsed
	}{{"mix.slow", m.Slow}, {"mix.fast", m.Fast}} {
		if d.d < 0 || d.d.Duration() > 4*time.Hour {
			p.Add(d.path, d.d.String(), "0 to 4h", quantity.ErrOutOfRange)
		}
	}
	for _, s := range []struct {
		path string
		s    quantity.Percent
		most float64
	}{
		{"mix.inoculation", m.Inoculation, 100}, {"mix.yeast", m.Yeast, 10}, {"mix.salt", m.Salt, 10},
		{"mix.hydration", m.Hydration, 200}, {"mix.whole_grain", m.WholeGrain, 100}, {"mix.rise", m.Rise, 300},
	} {
		quantity.Check(p, s.path, s.s, quantity.Percent{}, quantity.NewPercent(s.most))
	}
	if _, ok := yeastKinds[m.YeastKind]; !ok && (m.YeastKind != "" || m.Yeast.Sign() > 0) {
		p.Add("mix.yeast_kind", quantity.Excerpt(m.YeastKind), strings.Join(YeastKinds(), ", "), quantity.ErrOutOfRange)
	}
}

func inDough(t quantity.Temperature) bool {
	return t.Compare(quantity.Celsius(-25)) >= 0 && t.Compare(quantity.Celsius(60)) <= 0
}

func checkText(p *quantity.Problems, path, text string) {
	switch {
	case len(text) > mostText:
		p.Add(path, quantity.Excerpt(text), fmt.Sprintf("at most %d bytes", mostText), quantity.ErrOutOfRange)
	case !utf8.ValidString(text):
		p.Add(path, quantity.Excerpt(text), "valid UTF-8", quantity.ErrOutOfRange)
	}
}

func kindList() string {
	var names []string
	for _, k := range Kinds() {
		names = append(names, string(k))
	}
	return strings.Join(names, ", ")
}

// ErrVersion: the log was written by a later version of the program.
var ErrVersion = errors.New("written by a later version of maslin")

// ErrNotLog: the file holds something else, and nothing is added to it.
var ErrNotLog = errors.New("is not a bake log: it is left as it is; want a bake log, an empty file, or a name that is not taken")

// A Problem is a line that cannot be read. The line stays as it is.
type Problem struct {
	Line int
	Text string // the beginning of the line
	Why  string
}

// sortByTime puts entries in the order in which things happened; of the same instant the order
// of writing stands.
func sortByTime(all []Entry) {
	slices.SortStableFunc(all, func(a, b Entry) int { return a.At.Compare(b.At) })
}
