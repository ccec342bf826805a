package bake

import (
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

func TestVerdicts(t *testing.T) {
	sea, hall := Site{}, At(quantity.Meters(1150))
	loaf := func(lost float64) (quantity.Mass, quantity.Mass) {
		return quantity.Grams(1000), quantity.Grams(1000 - 10*lost)
	}
	cases := []struct {
		name  string
		style Style
		place Site
		core  float64
		lost  float64 // %; 0: not weighed
		held  time.Duration
		in    time.Duration
		want  LoafState
		says  string
	}{
		{"far below", LeanHearth, sea, 80, 12, 0, 0, NotYet, "target 96.0 °C"},
		{"light but cold", LeanHearth, sea, 92, 14, 0, 0, NotYet, "target 96.0 °C"},
		{"accepted by some", LeanHearth, sea, 94, 0, 0, 0, NotYet, "Some take it out from here"},
		{"accepted by some, and light", LeanHearth, sea, 93.3, 13.5, 0, 0, Done, "13.5 % lighter"},
		{"accepted by some, and heavy", LeanHearth, sea, 93.3, 9, 0, 0, NotYet, "only 9.0 % lighter, 10 % wanted"},
		{"core there, nothing else known", LeanHearth, sea, 96.5, 0, 0, 0, Set, "or give it 20m more"},
		{"core and loss", LeanHearth, sea, 96.5, 11, 0, 0, Done, "11.0 % lighter"},
		{"core and time", LeanHearth, sea, 96.5, 0, 20 * time.Minute, 0, Done, "held for 20m"},
		{"too heavy, but held", LeanHearth, sea, 96.5, 8, 21 * time.Minute, 0, Done, "held for 21m"},
		{"too heavy", LeanHearth, sea, 98.9, 7, 2 * time.Minute, 0, NotYet, "only 7.0 % lighter"},
		{"at the plateau, nothing else known", LeanHearth, sea, 98.9, 0, 0, 0, SaysNothing, "every loaf ends there"},
		{"at the plateau and weighed", LeanHearth, sea, 98.9, 12, 0, 0, Done, ""},
		{"very light", LeanHearth, sea, 98.9, 24, 0, 0, Done, "drier than usual"},
		// The loaf of an hour that was pale and gummy when it was pulled at 45 minutes, ten of them at its plateau.
		{"pulled at 45 minutes", LeanHearth, sea, 98.5, 0, 10 * time.Minute, 45 * time.Minute, Set,
			"give it up to 15m more, until its color is right"},
		{"… and right at an hour", LeanHearth, sea, 98.9, 0, 25*time.Minute + 30*time.Second, time.Hour, Done, ""},
		{"a tin: 15 % of an hour", Pan, sea, 95, 0, 8 * time.Minute, time.Hour, Set, "2m more"},
		{"a tin: 15 % of an hour is nine minutes", Pan, sea, 95, 0, 9*time.Minute + 1*time.Second, time.Hour, Done, ""},
		{
			"small rye is held ten minutes at least",
			Rye,
			sea,
			98.2,
			0,
			8 * time.Minute,
			28 * time.Minute,
			Set,
			"2m more",
		},
		{"small rye held", Rye, sea, 98.2, 0, 10 * time.Minute, 28 * time.Minute, Done, ""},
		{"par-baked by core alone", ParBaked, sea, 91, 0, 0, 0, Done, "done: core 91.0 °C."},
		{"96 °C is out of reach at the hall, 94.1 is not", LeanHearth, hall, 94.2, 11, 0, 0, Done, ""},
		{"93 °C at the hall, and light", LeanHearth, hall, 93.2, 11, 0, 0, Done, "11.0 % lighter"},
		{"brioche does not move", Enriched, hall, 89, 7, 0, 0, NotYet, "target 90.0 °C"},
		{"pizza", Pizza, sea, 0, 0, 0, 0, ByTimeAndColor, "the rim brown in spots"},
	}
	for _, c := range cases {
		r := LoafReading{
			Goal:   Goal{Style: c.style, Place: c.place},
			Held:   quantity.Elapsed(c.held),
			InOven: quantity.Elapsed(c.in),
		}
		if c.core > 0 {
			r.Core = quantity.Celsius(c.core)
		}
		if c.lost > 0 {
			r.Dough, r.Loaf = loaf(c.lost)
		}
		v, err := r.Judge()
		if err != nil || v.State != c.want || !strings.Contains(v.String(), c.says) {
			t.Errorf("%s: %v, %v; want %v saying %q", c.name, v, err, c.want, c.says)
		}
	}
	own := Goal{Place: hall, Wanted: quantity.Celsius(97)}
	v, err := LoafReading{Goal: own, Core: quantity.Celsius(90)}.Judge()
	if err != nil || !v.Capped ||
		!strings.Contains(v.String(), "94.1 °C (not 97.0 °C: water boils too low for it here)") {
		t.Errorf("own target out of reach: %v, %v", v, err)
	}
	l, err := Probe{Goal: Goal{Place: hall, Wanted: quantity.Celsius(95)}, Samples: readings(20, 70, 25, 82)}.TimeLeft()
	if err != nil || !l.Capped || !strings.Contains(l.String(), "not 95.0 °C") {
		t.Errorf("own target out of reach: %v, %v", l, err)
	}
}

// A hearth loaf that is set is told how long such a loaf usually bakes: before that, for how long to wait for its
// color; after it, that it comes out. Only a hearth loaf, and only with its time in the oven.
func TestALoafPastItsUsualTimeComesOut(t *testing.T) {
	judged := func(in, held time.Duration, dough float64, s Style) LoafVerdict {
		r := LoafReading{Goal: Goal{Style: s}, Core: quantity.Celsius(97), Held: quantity.Elapsed(held),
			InOven: quantity.Elapsed(in)}
		if dough > 0 {
			r.Dough = quantity.Grams(dough)
		}
		v, err := r.Judge()
		if err != nil || v.State != Set || v.Weighed {
			t.Fatal(v, err)
		}
		return v
	}
	usual, err := OvenPiece{Dough: quantity.Grams(900)}.BakeTime()
	if err != nil {
		t.Fatal(err)
	}
	early := judged(45*time.Minute, 0, 900, LeanHearth)
	if early.Usual != usual.Time || early.guideLeft() != quantity.Elapsed(usual.Time.Late-45*time.Minute) ||
		!strings.Contains(early.String(), "up to 13m more, until its color is right: a loaf of 900 g of dough") {
		t.Errorf("after 45 minutes: %v, usual %v", early, usual)
	}
	if early.HoldFor <= early.guideLeft() {
		t.Errorf("held for %v more it would be known, %v", early.HoldFor, early.guideLeft())
	}
	late := judged(58*time.Minute, 0, 900, LeanHearth)
	if late.guideLeft() > 0 || !strings.HasPrefix(late.String(), "set, and after 58m in the oven likely baked out") ||
		!strings.Contains(late.String(), "5 to 10 minutes more with the oven door ajar") {
		t.Errorf("after 58 minutes: %v", late)
	}
	// What proves it may come sooner than the end of the usual time.
	if v := judged(40*time.Minute, 15*time.Minute, 1000, LeanHearth); v.guideLeft() != v.HoldFor || v.HoldFor > 6*60e9 {
		t.Errorf("%v: %v of %v", v, v.guideLeft(), v.HoldFor)
	}
	if v := judged(40*time.Minute, 0, 0, LeanHearth); !strings.Contains(v.String(), "a loaf of 1000 g of dough") {
		t.Errorf("without its weight: %v", v)
	}
	if v := judged(40*time.Minute, 0, 800, Pan); v.Usual.Late != 0 || !strings.Contains(v.String(), "give it 8m more.") {
		t.Errorf("in a tin: %v", v)
	}
	if v := judged(0, 0, 900, LeanHearth); v.Usual.Late != 0 || !strings.Contains(v.String(), "give it 20m more.") {
		t.Errorf("without its time: %v", v)
	}
	_, err = LoafReading{Core: quantity.Celsius(97), Dough: quantity.Grams(6000), InOven: 45 * 60e9}.Judge()
	if paths(err) != "Dough" {
		t.Error(err)
	}
}

// The confidence of a verdict's figures, and where they come from, are given for every style.
func TestEveryStyleHasItsFigures(t *testing.T) {
	for _, s := range quantity.Values[Style]() {
		d, err := s.Guide()
		if err != nil || len(d.Sources) == 0 || s.ByCore() && (!d.Accepted.Contains(d.Core) || d.Core.Celsius() > 98) {
			t.Errorf("%v: %+v, %v", s, d, err)
		}
		for _, src := range d.Sources {
			if src.IsZero() || src.Title == "" {
				t.Errorf("%v: a source without title", s)
			}
		}
		if ref := rowOf(s).bake; ref.source.IsZero() || ref.exponent <= 0 || ref.exponent > greatestExponent {
			t.Errorf("%v: bake time %+v", s, ref)
		}
		if first, then := rowOf(s).oven[0], rowOf(s).oven[1]; first < then || then < 150 {
			t.Errorf("%v: oven %v then %v", s, first, then)
		}
	}
	for _, c := range append(OvenCautions(), FoodCautions()...) {
		if c.Subject == "" || c.Text.IsZero() || c.Source.IsZero() {
			t.Errorf("caution %+v", c)
		}
	}
}

func TestProgramRounds(t *testing.T) {
	p, err := OvenLoad{
		Style:     LeanHearth,
		Dough:     quantity.Grams(886),
		Pieces:    5,
		Vessel:    Pot,
		Together:  2,
		Rescore:   true,
		Oven:      quantity.Celsius(240),
		Covered:   quantity.Elapsed(20 * time.Minute),
		Uncovered: quantity.Elapsed(22 * time.Minute),
	}.Program()
	if err != nil {
		t.Fatal(err)
	}
	if p.Rounds != 3 || p.PerRound != 2 || p.Covered.Duration() != 20*time.Minute ||
		p.Uncovered.Likely != 22*time.Minute ||
		p.Then != quantity.Celsius(240) {
		t.Errorf("%+v", p)
	}
	if want := p.Preheat.Duration() + 3*(42*time.Minute) + 2*p.Reheat.Duration(); p.Total.Likely != want {
		t.Errorf("total %v, want %v", p.Total.Likely, want)
	}
	var kinds []string
	for _, ph := range p.Phases {
		if ph.Round == 2 {
			kinds = append(kinds, ph.Kind.String())
		}
		if ph.Start.Early > ph.Start.Likely || ph.Start.Likely > ph.Start.Late {
			t.Errorf("start out of order: %v", ph)
		}
	}
	if got := strings.Join(kinds, ", "); got != "reheat, load, covered, score again, covered, vent, uncovered" {
		t.Errorf("round 2: %s", got)
	}
	if _, err := (OvenLoad{Dough: quantity.Grams(900), Pieces: 1,
		Covered: quantity.Elapsed(2 * time.Hour)}).Program(); err == nil {
		t.Error("two hours covered of a one-hour bake accepted")
	}
	// Thin bread bakes faster than round bread of the same weight, and a known bake of the same loaf comes back.
	round, err1 := OvenPiece{Shape: Round, Dough: quantity.Grams(900)}.BakeTime()
	thin, err2 := OvenPiece{Shape: Thin, Dough: quantity.Grams(900)}.BakeTime()
	known, err3 := OvenPiece{
		Shape:      Thin,
		Dough:      quantity.Grams(900),
		KnownDough: quantity.Grams(900),
		KnownTime:  quantity.Elapsed(round.Time.Likely),
		KnownShape: Round,
	}.BakeTime()
	if err1 != nil || err2 != nil || err3 != nil || thin.Time.Likely >= round.Time.Likely ||
		(known.Time.Likely-thin.Time.Likely).Abs() > time.Second {
		t.Errorf("round %v, thin %v, thin from round %v", round, thin, known)
	}
}

// An answer that would be another within what the probe may be off says so, and a better probe makes it firm.
func TestTheProbeMayBeOff(t *testing.T) {
	for _, c := range []struct {
		core, off float64
		firm      bool
	}{{96.5, 0, false}, {96.5, 0.3, true}, {95.5, 0, false}, {94.2, 0, true}, {97.8, 1.9, false}, {97.8, 1.7, true}} {
		v, err := LoafReading{Goal: Goal{Style: LeanHearth}, Core: quantity.Celsius(c.core),
			ProbeError: quantity.DeltaCelsius(c.off), Held: quantity.Elapsed(5 * time.Minute)}.Judge()
		if err != nil {
			t.Fatal(err)
		}
		said := slices.ContainsFunc(v.Notes(), func(m working.Message) bool { return m.ID() == "bake.note_not_firm" })
		if v.Firm != c.firm || said == c.firm {
			t.Errorf("core %v, off by %v: firm %v, said %v, %v", c.core, c.off, v.Firm, said, v)
		}
	}
}
