package bake

import (
	"math"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// Vessel is what a loaf bakes on or in.
type Vessel int

// The vessels. The zero value is the stone.
const (
	Stone  Vessel = iota // a stone or steel, or the oven's floor, with steam put in
	Pot                  // a lidded pot, one loaf each
	TinPan               // open tins
	Tray                 // a tray
)

var vesselNames = [...]string{"stone", "pot", "tin", "tray"}

// IsValid reports whether the vessel is one of the vessels.
func (v Vessel) IsValid() bool { return v >= 0 && int(v) < len(vesselNames) }

// String names the vessel as [ParseVessel] reads it.
func (v Vessel) String() string {
	if !v.IsValid() {
		return "unknown vessel"
	}
	return vesselNames[v]
}

// ParseVessel reads "stone", "pot", "tin" or "tray". The empty text is the stone.
func ParseVessel(text string) (Vessel, error) {
	if text == "" {
		return Stone, nil
	}
	if i := indexName(vesselNames[:], text); i >= 0 {
		return Vessel(i), nil
	}
	return 0, &quantity.InputError{Got: quantity.Excerpt(text), Want: strings.Join(vesselNames[:], ", "), Err: quantity.ErrOutOfRange}
}

// MarshalText implements encoding.TextMarshaler.
func (v Vessel) MarshalText() ([]byte, error) {
	if !v.IsValid() {
		return nil, unknown("vessel", int(v), vesselNames[:])
	}
	return []byte(v.String()), nil
}

// UnmarshalText implements encoding.TextUnmarshaler; see [ParseVessel].
func (v *Vessel) UnmarshalText(text []byte) error {
	x, err := ParseVessel(string(text))
	if err == nil {
		*v = x
	}
	return err
}

// OvenLoad asks for the bake program of a batch. What is not given takes guide values.
type OvenLoad struct {
	Style    Style
	Shape    Shape
	Dough    quantity.Mass // of one piece
	Pieces   int
	Vessel   Vessel
	Together int  // pieces in one round; 0: all at once
	Cold     bool // straight from the refrigerator

	Oven      quantity.Temperature // at the start; not given: the style's
	Then      quantity.Temperature // when the lid comes off; not given: as far below Oven as the style falls
	Preheat   time.Duration        // 0: the vessel's
	Reheat    time.Duration        // between rounds; 0: the vessel's
	Covered   time.Duration        // lid on, or steam in; 0: the style's
	Uncovered time.Duration        // 0: what is left of the bake time
	Rescore   bool                 // open the cuts again after the first minutes

	KnownDough  quantity.Mass // a bake of your own that the time is scaled from
	KnownTime   time.Duration
	KnownShape  Shape
	KnownCold   bool
	Extrapolate bool // accept masses outside the data
}

// PhaseKind is what happens in a phase of a bake.
type PhaseKind int

// The kinds of phases, in the order in which they come.
const (
	Preheating PhaseKind = iota
	Load
	Rescore // open the cuts again
	Covered // lid on, or steam in
	Vent    // lid off, or steam out
	Uncovered
	Reheating // the vessels, before the next round
)

// String names the kind.
func (k PhaseKind) String() string {
	names := [...]string{"preheat", "load", "score again", "covered", "vent", "uncovered", "reheat"}
	if k < 0 || int(k) >= len(names) {
		return "unknown phase"
	}
	return names[k]
}

// Phase is one step of a bake program.
type Phase struct {
	Kind  PhaseKind
	Round int                  // from 1
	Oven  quantity.Temperature // what the oven is set to
	Start quantity.TimeRange   // from the moment the oven is switched on
	Takes quantity.TimeRange
	Hands bool // somebody has to be there
	Note  string
}

// String prints "1h07m: vent (round 1, 220 °C): lid off, away from you", with the likely start.
func (p Phase) String() string {
	s := quantity.FormatDuration(p.Start.Likely.Round(time.Minute)) + ": " + p.Kind.String() + " (round " + fixed(float64(p.Round), 0) + ", " + p.Oven.Text(quantity.CelsiusScale, 0)
	if p.Takes.Likely > 0 {
		s += ", " + quantity.FormatDuration(p.Takes.Likely.Round(time.Minute))
	}
	s += ")"
	if p.Note != "" {
		s += ": " + p.Note
	}
	return s
}

// Program is the bake of a batch, phase by phase.
type Program struct {
	Phases    []Phase
	Rounds    int
	PerRound  int                // pieces in a round
	Preheat   time.Duration      // before the first round
	Reheat    time.Duration      // before each further round
	Covered   time.Duration      // of a round
	Uncovered quantity.TimeRange // of a round
	Bake      quantity.TimeRange // covered and uncovered together
	Total     quantity.TimeRange // from switching on to the last loaf out
	Oven      quantity.Temperature
	Then      quantity.Temperature // what the oven is turned down to when the lid comes off
	in        OvenLoad
	bake      BakeTime
}

// coveredOf is how long the lid stays on or the steam in, in minutes.
// Source: steam for the first 15 min; lid off after 20 to 25 min, several baking pages; fat and sugar need
// none.
func coveredOf(s Style, v Vessel, bake float64) float64 {
	most := rowOf(s).steam
	switch {
	case most == 0:
		return 0
	case v == Pot:
		most = 22
	case v == TinPan:
		most = min(most, 10)
	}
	return math.Round(min(most, 0.6*bake))
}

// vesselTimes are preheating and reheating.
// Source: pot at least 30 min, several baking pages that agree; stone 45 to 60 min (from memory); the rest
// judgment.
func vesselTimes(v Vessel) (preheat, reheat time.Duration) {
	switch v {
	case Pot:
		return 45 * time.Minute, 10 * time.Minute
	case TinPan, Tray:
		return 20 * time.Minute, 5 * time.Minute
	}
	return 50 * time.Minute, 10 * time.Minute
}

// Program answers: how is this batch baked, from switching the oven on to the last loaf?
//
// Method: bake time from [OvenPiece.BakeTime]; a covered or steamed part by style and vessel, at most 60 % of the
// bake; the rest uncovered at the lower setting; a vent between; rounds of Together pieces with reheating
// between them.
// Valid range: 1 to 500 pieces, at most 50 rounds; bake time as [OvenPiece.BakeTime]. Accuracy: that of the bake
// time, ±20 % and more; ranges claim 80 %, and in a chain of rounds the same oven is early or late in each,
// so ranges add up in full.
// Errors: [quantity.ErrOutOfRange], [quantity.ErrModelRange], [quantity.ErrInconsistent].
// Source: Warenkunde Brot p. 141; guide bake times of a German glossary; covered pots, baking pages that agree.
func (in OvenLoad) Program() (Program, error) {
	bake, err := checkBatch(in)
	if err != nil {
		return Program{}, err
	}
	pr := Program{in: in, bake: bake, PerRound: in.Pieces, Rounds: 1}
	if in.Together > 0 && in.Together < in.Pieces {
		pr.PerRound = in.Together
		pr.Rounds = (in.Pieces + in.Together - 1) / in.Together
	}
	first, then := rowOf(in.Style).oven[0], rowOf(in.Style).oven[1]
	pr.Oven, pr.Then = quantity.Celsius(first), quantity.Celsius(then)
	if !in.Oven.IsZero() {
		pr.Oven = in.Oven
		// As far below the setting as the style's own fall.
		pr.Then = in.Oven.Add(quantity.DeltaCelsius(then - first))
	}
	if !in.Then.IsZero() {
		pr.Then = in.Then
	}
	pr.Preheat, pr.Reheat = vesselTimes(in.Vessel)
	if in.Preheat > 0 {
		pr.Preheat = in.Preheat
	}
	if in.Reheat > 0 {
		pr.Reheat = in.Reheat
	}
	pr.Covered = minutes(coveredOf(in.Style, in.Vessel, bake.minutes))
	if in.Covered > 0 {
		pr.Covered = in.Covered
	}
	pr.Uncovered = uncovered(bake.Time, pr.Covered)
	if in.Uncovered > 0 {
		// The baker's own time, with the spread of the whole bake.
		whole := pr.Covered + in.Uncovered
		spread := time.Duration(0.12 * float64(whole))
		pr.Uncovered = quantity.TimeRange{Early: max(0, in.Uncovered-spread), Likely: in.Uncovered, Late: in.Uncovered + spread, Probability: bake.Time.Probability}
	}
	pr.Bake = pr.Uncovered.Add(pr.Covered)
	pr.phases()
	return pr, nil
}

func uncovered(bake quantity.TimeRange, covered time.Duration) quantity.TimeRange {
	less := func(d time.Duration) time.Duration { return max(0, d-covered) }
	return quantity.TimeRange{Early: less(bake.Early), Likely: less(bake.Likely), Late: less(bake.Late), Probability: bake.Probability}
}

func checkBatch(in OvenLoad) (BakeTime, error) {
	var p quantity.Problems
	bake, err := OvenPiece{
		Style: in.Style, Shape: in.Shape, Dough: in.Dough, Cold: in.Cold,
		KnownDough: in.KnownDough, KnownTime: in.KnownTime, KnownShape: in.KnownShape, KnownCold: in.KnownCold, Extrapolate: in.Extrapolate,
	}.BakeTime()
	p.Join("", err)
	pieces := p.Int("Pieces", in.Pieces, 1, 500)
	if !in.Vessel.IsValid() {
		p.Add("Vessel", in.Vessel.String(), strings.Join(vesselNames[:], ", "), quantity.ErrOutOfRange)
	}
	if p.Int("Together", in.Together, 0, 500) && pieces && in.Together > 0 && (in.Pieces+in.Together-1)/in.Together > 50 {
		p.Add("Together", fixed(float64(in.Together), 0), "at most 50 rounds", quantity.ErrOutOfRange)
	}
	if !in.Oven.IsZero() {
		quantity.Check(&p, "Oven", in.Oven, quantity.Celsius(120), quantity.Celsius(500))
	}
	if !in.Then.IsZero() {
		quantity.Check(&p, "Then", in.Then, quantity.Celsius(100), quantity.Celsius(500))
	}
	p.Duration("Preheat", in.Preheat, 0, 6*time.Hour)
	p.Duration("Reheat", in.Reheat, 0, 2*time.Hour)
	covered := p.Duration("Covered", in.Covered, 0, 6*time.Hour)
	p.Duration("Uncovered", in.Uncovered, 0, 6*time.Hour)
	if err == nil && covered && in.Uncovered == 0 && in.Covered > bake.Time.Late {
		p.Add("Covered", quantity.FormatDuration(in.Covered), "no longer than the bake, "+bake.Time.String()+", or an Uncovered time", quantity.ErrInconsistent)
	}
	return bake, p.Err()
}

// sure is a range without spread.
func sure(d time.Duration) quantity.TimeRange {
	return quantity.TimeRange{Early: d, Likely: d, Late: d, Probability: quantity.NewPercent(bakeProbability)}
}

func sum(a, b quantity.TimeRange) quantity.TimeRange {
	return quantity.TimeRange{Early: a.Early + b.Early, Likely: a.Likely + b.Likely, Late: a.Late + b.Late, Probability: a.Probability}
}

func (pr *Program) phases() {
	now := sure(0)
	add := func(kind PhaseKind, round int, oven quantity.Temperature, takes quantity.TimeRange, hands bool, note string) {
		pr.Phases = append(pr.Phases, Phase{Kind: kind, Round: round, Oven: oven, Start: now, Takes: takes, Hands: hands, Note: note})
		now = sum(now, takes)
	}
	lid := pr.in.Vessel == Pot
	add(Preheating, 1, pr.Oven, sure(pr.Preheat), false, preheatNote(pr.in.Vessel))
	for round := 1; round <= pr.Rounds; round++ {
		if round > 1 {
			add(Reheating, round, pr.Oven, sure(pr.Reheat), false, "")
		}
		add(Load, round, pr.Oven, sure(0), true, "score and load")
		covered := pr.Covered
		if pr.in.Rescore && covered > rescoreAfter {
			add(Covered, round, pr.Oven, sure(rescoreAfter), false, "")
			add(Rescore, round, pr.Oven, sure(0), true, "open the cuts again, quickly")
			covered -= rescoreAfter
		}
		if covered > 0 {
			add(Covered, round, pr.Oven, sure(covered), false, map[bool]string{true: "lid on", false: "steam in"}[lid])
			add(Vent, round, pr.Then, sure(0), true, map[bool]string{true: "lid off, away from you", false: "let the steam out, away from you"}[lid])
		}
		add(Uncovered, round, pr.Then, pr.Uncovered, false, "until the core is at its target")
	}
	pr.Total = now
}

func preheatNote(v Vessel) string {
	switch v {
	case Pot:
		return "oven with the pots and their lids in it"
	case Stone:
		return "oven with the stone in it"
	}
	return "oven"
}

const rescoreAfter = 5 * time.Minute

// String prints "2 rounds of 3: preheat 45m, covered 22m, uncovered 16m to 34m (80 %), likely 25m; in all
// …".
func (pr Program) String() string {
	s := fixed(float64(pr.Rounds), 0) + " rounds of " + fixed(float64(pr.PerRound), 0)
	if pr.Rounds == 1 {
		s = "one round of " + fixed(float64(pr.PerRound), 0)
	}
	s += ": preheat " + quantity.FormatDuration(pr.Preheat)
	if pr.Covered > 0 {
		s += ", covered " + quantity.FormatDuration(pr.Covered)
	}
	s += ", uncovered " + pr.Uncovered.String()
	if pr.Rounds > 1 {
		s += ", reheat " + quantity.FormatDuration(pr.Reheat)
	}
	return s + "; in all " + pr.Total.String()
}

// Cautions says what can hurt at the oven.
func (pr Program) Cautions() []working.Caution {
	out := append(OvenCautions(), colorCaution())
	if pr.in.Vessel == Pot {
		out = append(out, working.Caution{
			Subject: "pots", Text: working.Say("Knobs, coatings and enamel have a highest temperature: look it up before you heat a pot to %.1f, and never heat a coated pot empty unless its maker allows it.", pr.Oven),
			Source: sources.CastIronWater,
		})
	}
	return out
}

// Working derives the likely times.
func (pr Program) Working() working.Working {
	w := pr.bake.Working()
	w.Title = "Bake program"
	covered, un := pr.Covered.Minutes(), pr.Uncovered.Likely.Minutes()
	w.Steps = append(w.Steps, working.Step{
		Name: "covered or steamed", Symbol: "t_c", Value: fixed(covered, 1) + " min", Note: "given, or by style and vessel, at most 60 % of the bake", Source: sources.PotPreheat,
	})
	if pr.in.Uncovered > 0 {
		w.Steps = append(w.Steps, working.Step{Name: "uncovered", Symbol: "t_u", Value: fixed(un, 1) + " min", Note: "as given", Source: sources.Practice("the baker's own time")})
	} else {
		w.Steps = append(w.Steps, working.Step{
			Name: "uncovered", Symbol: "t_u", Formula: "max(0, t − t_c)", Numbers: "max(0, " + fixed(pr.bake.minutes, 1) + " − " + fixed(covered, 1) + ")", Value: fixed(un, 1) + " min", Tolerance: 0.11,
			Where:  []working.Binding{{Symbol: "t", Meaning: "likely bake time", Value: fixed(pr.bake.minutes, 1) + " min"}, {Symbol: "t_c", Meaning: "covered or steamed", Value: fixed(covered, 1) + " min"}},
			Source: working.Algebra(),
		})
	}
	n := float64(pr.Rounds)
	w.Steps = append(w.Steps, working.Step{
		Name: "in all", Symbol: "t_all", Formula: "p + r × (t_c + t_u) + (r − 1) × q",
		Numbers: fixed(pr.Preheat.Minutes(), 1) + " + " + fixed(n, 0) + " × (" + fixed(covered, 1) + " + " + fixed(un, 1) + ") + (" + fixed(n, 0) + " − 1) × " + fixed(pr.Reheat.Minutes(), 1),
		Value:   fixed(pr.Total.Likely.Minutes(), 1) + " min", Tolerance: 0.1 * n,
		Where: []working.Binding{
			{Symbol: "p", Meaning: "preheating", Value: fixed(pr.Preheat.Minutes(), 1) + " min"}, {Symbol: "r", Meaning: "rounds", Value: fixed(n, 0)},
			{Symbol: "t_c", Meaning: "covered or steamed", Value: fixed(covered, 1) + " min"}, {Symbol: "t_u", Meaning: "uncovered", Value: fixed(un, 1) + " min"}, {Symbol: "q", Meaning: "reheating", Value: fixed(pr.Reheat.Minutes(), 1) + " min"},
		},
		Source: working.Algebra(),
	})
	return w
}
