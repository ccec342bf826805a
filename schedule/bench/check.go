package bench

import (
	"strconv"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/moment"
)

const (
	mostText     = 4000
	mostReadings = 20_000
)

// Check answers: is this an observation at all? It reports everything that is wrong with it. What is possible and
// can hardly be true is left to [Observations.Doubts].
//
// Errors: ErrRequired, ErrOutOfRange, ErrInconsistent.
func (o Observation) Check() error {
	var p quantity.Problems
	p.Int("Version", o.Version, Format, Format)
	if o.At.IsZero() {
		p.Required("At", quantity.Tell("bench.want_time_2026_11_28t10_40", "a time such as 2026-11-28T10:40:00+01:00"))
	}
	moment.Check(&p, "At", o.At)
	checkText(&p, "Bread", o.Bread)
	checkText(&p, "By", o.By)
	checkText(&p, "Note", o.Note)
	checkText(&p, "Step", o.Step)
	o.checkKind(&p)
	if o.Mix != nil {
		o.Mix.check(&p)
	}
	o.checkDough(&p)
	o.checkLoaf(&p)
	return p.ErrFor(o)
}

// checkKind looks whether the part of the kind is there, and no other.
func (o Observation) checkKind(p *quantity.Problems) {
	parts := []struct {
		kind  Sight
		field string
		there bool
	}{
		{
			SawMixed,
			"Mix",
			o.Mix != nil,
		}, {SawRise, "Rise", o.Rise != nil}, {SawReady, "Ready", o.Ready != nil}, {SawCore, "Core", o.Core != nil},
		{
			SawWeights,
			"Weights",
			o.Weights != nil,
		}, {SawNote, "Note", strings.TrimSpace(o.Note) != ""}, {SawPlan, "Plan", o.Plan != nil},
		{SawStep, "Step", strings.TrimSpace(o.Step) != ""},
	}
	if !sights.Has(o.Kind) {
		sights.Check(p, "Kind", o.Kind)
		return
	}
	for _, part := range parts {
		switch {
		case part.kind == o.Kind && !part.there:
			p.Required(part.field, quantity.Tell("bench.want_what_was_observed", "what was observed"))
		case part.kind != o.Kind && part.there:
			p.Add(part.field, "", quantity.Tell("bench.want_only_observation_kind", "only in an observation of the kind %v",
				part.kind), quantity.ErrInconsistent)
		}
	}
}

func (o Observation) checkDough(p *quantity.Problems) {
	if r := o.Rise; r != nil {
		quantity.Check(p, "Rise.Rise", r.Rise, quantity.NewPercent(-20), quantity.NewPercent(300))
		if !r.Error.IsZero() {
			quantity.Check(p, "Rise.Error", r.Error, quantity.NewPercent(0.1), quantity.NewPercent(50))
		}
	}
	if r := o.Ready; r != nil {
		quantity.Check(p, "Ready.Rise", r.Rise, quantity.NewPercent(1), quantity.NewPercent(300))
		p.Int("Ready.Readings", len(r.Readings), 0, mostReadings)
		for i, one := range r.Readings {
			if !quantity.Check(p, "Ready.Readings["+strconv.Itoa(i)+"].Temperature", one.Temperature,
				quantity.Celsius(-25), quantity.Celsius(60)) {
				break // a probe in other units is wrong everywhere
			}
		}
	}
}

func (o Observation) checkLoaf(p *quantity.Problems) {
	if c := o.Core; c != nil {
		quantity.Check(p, "Core.Core", c.Core, quantity.Celsius(-5), quantity.Celsius(150))
		p.Duration("Core.After", c.After.Duration(), 0, 24*time.Hour)
	}
	if w := o.Weights; w != nil {
		ok := quantity.Check(p, "Weights.In", w.In, quantity.Grams(1), quantity.Kilograms(100))
		ok = quantity.Check(p, "Weights.Out", w.Out, quantity.Grams(1), quantity.Kilograms(100)) && ok
		if ok && w.Out.Compare(w.In) > 0 {
			p.Add("Weights.Out", w.Out,
				quantity.Tell("bench.want_no_more_than_went", "no more than the %v that went in", w.In),
				quantity.ErrInconsistent)
		}
		checkBaked(p, "Weights", w.Style, quantity.Length{})
	}
	if l := o.Plan; l != nil {
		if l.Made.IsZero() {
			p.Required("Plan.Made", quantity.Tell("bench.want_when_was_made", "when it was made"))
		}
		moment.Check(p, "Plan.Made", l.Made)
		moment.Check(p, "Plan.Wanted", l.Wanted)
		if l.Wanted.IsZero() {
			p.Required("Plan.Wanted", quantity.Tell("bench.want_when_bread_wanted", "when the bread is wanted"))
		}
		checkBaked(p, "Plan", l.Style, l.Altitude)
	}
}

func (m *DoughMixed) check(p *quantity.Problems) {
	quantity.Check(p, "Mix.Dough", m.Dough, quantity.Celsius(0), quantity.Celsius(50))
	for _, t := range []struct {
		path string
		t    quantity.Temperature
	}{{"Mix.Flour", m.Flour}, {"Mix.Water", m.Water}, {"Mix.Levain", m.Levain}, {"Mix.Bowl", m.Bowl}, {"Mix.Room",
		m.Room}} {
		if !t.t.IsZero() {
			quantity.Check(p, t.path, t.t, quantity.Celsius(-40), quantity.Celsius(95))
		}
	}
	for _, w := range []struct {
		path string
		m    quantity.Mass
	}{{"Mix.FlourWeight", m.FlourWeight}, {"Mix.WaterWeight", m.WaterWeight}, {"Mix.LevainWeight",
		m.LevainWeight}, {"Mix.Weight", m.Weight}} {
		quantity.Check(p, w.path, w.m, quantity.Mass{}, quantity.Kilograms(1000))
	}
	p.Duration("Mix.Slow", m.Slow.Duration(), 0, 4*time.Hour)
	p.Duration("Mix.Fast", m.Fast.Duration(), 0, 4*time.Hour)
	for _, s := range []struct {
		path string
		s    quantity.Percent
		most float64
	}{
		{"Mix.Inoculation", m.Inoculation, 100}, {"Mix.Yeast", m.Yeast, 10}, {"Mix.Salt", m.Salt, 10},
		{"Mix.Sugar", m.Sugar, 60},
		{"Mix.Hydration", m.Hydration, 200}, {"Mix.WholeGrain", m.WholeGrain, 100}, {"Mix.Rise", m.Rise, 300},
	} {
		quantity.Check(p, s.path, s.s, quantity.Percent{}, quantity.NewPercent(s.most))
	}
	checkBaked(p, "Mix", m.Style, m.Altitude)
	if m.Yeast.Sign() > 0 && m.YeastKind == 0 {
		p.Required("Mix.YeastKind", quantity.Tell("bench.want_kind_yeast", "a kind of yeast"))
	}
}

// checkText refuses what is no text that can be shown: control and direction characters, broken UTF-8, a flood.
func checkText(p *quantity.Problems, path, text string) {
	bad := func(r rune) bool {
		return unicode.IsControl(r) && r != '\n' && r != '\t' || r >= 0x202a && r <= 0x202e ||
			r >= 0x2066 && r <= 0x2069
	}
	switch {
	case len(text) > mostText:
		p.Add(path, quantity.Excerpt(text), quantity.Tell("bench.want_at_most_bytes", "at most %d bytes", mostText),
			quantity.ErrOutOfRange)
	case !utf8.ValidString(text):
		p.Add(path, quantity.Excerpt(text), quantity.Tell("bench.want_valid_utf_8", "valid UTF-8"), quantity.ErrForm)
	case strings.IndexFunc(text, bad) >= 0:
		p.Add(path, quantity.Excerpt(text), quantity.Tell("bench.want_text_without_control_or_direction",
			"a text without control or direction characters"), quantity.ErrForm)
	}
}

func checkBaked(p *quantity.Problems, path string, style bake.Style, altitude quantity.Length) {
	if !style.IsValid() {
		p.Required(path+".Style", quantity.Tell("bench.want_style_bread", "a style of bread"))
	}
	quantity.Check(p, path+".Altitude", altitude, quantity.Meters(-500), quantity.Meters(9000))
}
