package bake

import (
	"cmp"
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/enum"
	"example.org/maslin/internal/sources"
)

// OvenLoad asks for the bake program of a batch. What is not given takes guide values.
type OvenLoad struct {
	Style    Style         `json:"style"`
	Shape    Shape         `json:"shape,omitzero"`
	Dough    quantity.Mass `json:"dough"` // of one piece
	Pieces   int           `json:"pieces"`
	Vessel   Vessel        `json:"vessel,omitzero"`   // not given: the style's
	Together int           `json:"together,omitzero"` // pieces in one round; 0: all at once
	Cold     bool          `json:"cold,omitzero"`     // straight from the refrigerator

	Oven quantity.Temperature `json:"oven,omitzero"` // at the start; not given: the style's
	// when the lid comes off; not given: Oven where that is given, else the style's
	Then      quantity.Temperature `json:"then,omitzero"`
	Preheat   quantity.Elapsed     `json:"preheat,omitzero"`   // 0: the vessel's
	Reheat    quantity.Elapsed     `json:"reheat,omitzero"`    // between rounds; 0: the vessel's
	Covered   quantity.Elapsed     `json:"covered,omitzero"`   // lid on, or steam in; 0: the style's
	Uncovered quantity.Elapsed     `json:"uncovered,omitzero"` // 0: what is left of the bake time
	Open      bool                 `json:"open,omitzero"`      // neither lid nor steam: no covered part
	Rescore   bool                 `json:"rescore,omitzero"`   // open the cuts again after the first minutes
	// RescoreAfter is when the cuts are opened again, from loading; 0: after five minutes, where Rescore asks for it.
	RescoreAfter quantity.Elapsed `json:"rescore_after,omitzero"`
	TurnAfter    quantity.Elapsed `json:"turn_after,omitzero"` // from loading: turned front to back; 0: not turned

	KnownDough  quantity.Mass    `json:"known_dough,omitzero"` // a bake of your own that the time is scaled from
	KnownTime   quantity.Elapsed `json:"known_time,omitzero"`
	KnownShape  Shape            `json:"known_shape,omitzero"`
	KnownCold   bool             `json:"known_cold,omitzero"`
	Extrapolate bool             `json:"extrapolate,omitzero"` // accept masses outside the data
}

// PhaseKind is what happens in a phase of a bake.
type PhaseKind int

// The kinds of phases, in the order in which they come.
const (
	Preheating PhaseKind = iota
	Boil                 // bagels, in a wide pot of water
	Load
	Rescore // open the cuts again
	Covered // lid on, or steam in
	Vent    // lid off, or steam out
	Turn    // front to back, where the oven is hotter on one side
	Uncovered
	Reheating // the vessels, before the next round
)

var phaseKinds = enum.Of[PhaseKind]("phase of a bake", "preheat", "boil", "load", "score again", "covered", "vent",
	"turn", "uncovered", "reheat")

// String names the kind.
func (k PhaseKind) String() string { return phaseKinds.String(k) }

// MarshalText implements encoding.TextMarshaler.
func (k PhaseKind) MarshalText() ([]byte, error) { return phaseKinds.Marshal(k) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (k *PhaseKind) UnmarshalText(text []byte) error { return phaseKinds.Unmarshal(k, text) }

// Phase is one step of a bake program.
type Phase struct {
	Kind  PhaseKind            `json:"kind"`
	Round int                  `json:"round"` // from 1
	Oven  quantity.Temperature `json:"oven"`  // what the oven is set to
	Start quantity.TimeRange   `json:"start"` // from the moment the oven is switched on
	Takes quantity.TimeRange   `json:"takes"`
	Hands bool                 `json:"hands"` // somebody has to be there
	Note  working.Message      `json:"note,omitzero"`
}

// String prints "1h07m: vent (round 1, 220 °C): lid off, away from you", with the likely start.
func (p Phase) String() string { return p.message().String() }

func (p Phase) message() working.Message {
	start := p.Start.Likely.Round(time.Minute)
	what := working.Tell("bake.phase", "%v: %v (round %d, %05.0f)", start, p.Kind, p.Round, p.Oven)
	if p.Takes.Likely > 0 {
		what = working.Tell("bake.phase_lasting", "%v: %v (round %d, %05.0f, %v)", start, p.Kind, p.Round, p.Oven,
			p.Takes.Likely.Round(time.Minute))
	}
	if p.Note.IsZero() {
		return what
	}
	return working.Tell("bake.phase_note", "%v: %v", what, p.Note)
}

// Program is the bake of a batch, phase by phase.
type Program struct {
	answer

	Phases    []Phase            `json:"phases"`
	Rounds    int                `json:"rounds"`
	PerRound  int                `json:"per_round"`     // pieces in a round
	Preheat   quantity.Elapsed   `json:"preheat"`       // before the first round
	Reheat    quantity.Elapsed   `json:"reheat"`        // before each further round
	Boil      quantity.TimeRange `json:"boil,omitzero"` // of a round, before it goes in: bagels
	Covered   quantity.Elapsed   `json:"covered"`       // of a round
	Uncovered quantity.TimeRange `json:"uncovered"`     // of a round
	Bake      quantity.TimeRange `json:"bake"`          // covered and uncovered together
	Total     quantity.TimeRange `json:"total"`         // from switching on to the last loaf out
	// Extrapolated says that the guide time is for pieces of another size.
	Extrapolated bool                 `json:"extrapolated"`
	Oven         quantity.Temperature `json:"oven"`
	Then         quantity.Temperature `json:"then"` // what the oven is turned down to when the lid comes off
	in           OvenLoad
	bake         BakeTime
}

// Program answers: how is this batch baked, from switching the oven on to the last loaf?
//
// Method: bake time from [OvenPiece.BakeTime]; a covered or steamed part by style and vessel, at most 60 % of the
// bake; the rest uncovered at the lower setting; a vent between; rounds of Together pieces with reheating between
// them; bagels boil before they go in, four at a time, while the oven heats again. Valid range: 1 to 1,000 pieces, at
// most 50 rounds; bake time as [OvenPiece.BakeTime]. Accuracy: that of the bake time, ±20 % and more; ranges claim
// 80 %, and in a chain of rounds the same oven is early or late in each, so ranges add up in full. Errors:
// [quantity.ErrOutOfRange], [quantity.ErrModelRange], [quantity.ErrInconsistent]. Source: Warenkunde Brot p. 141;
// guide bake times of a German glossary; covered pots, common practice, no source.
func (in OvenLoad) Program() (Program, error) {
	bake, err := checkBatch(in)
	if err != nil {
		return Program{}, err
	}
	in.Vessel = in.Vessel.of(in.Style)
	pr := Program{in: in, bake: bake, Extrapolated: bake.Extrapolated, PerRound: in.Pieces, Rounds: 1}
	if in.Together > 0 && in.Together < in.Pieces {
		pr.PerRound = in.Together
		pr.Rounds = (in.Pieces + in.Together - 1) / in.Together
	}
	first, then := rowOf(in.Style).oven[0], rowOf(in.Style).oven[1]
	pr.Oven, pr.Then = quantity.Celsius(first), quantity.Celsius(then)
	if !in.Oven.IsZero() {
		pr.Oven = in.Oven
		// The baker's own setting stays until the baker turns it down.
		pr.Then = in.Oven
	}
	if !in.Then.IsZero() {
		pr.Then = in.Then
	}
	pr.Boil = boiling(in.Style, pr.PerRound)
	preheat, reheat := vesselTimes(in.Vessel)
	pr.Preheat, pr.Reheat = quantity.Elapsed(preheat), quantity.Elapsed(reheat)
	if in.Preheat > 0 {
		pr.Preheat = in.Preheat
	}
	if in.Reheat > 0 {
		pr.Reheat = in.Reheat
	}
	pr.Covered = quantity.Elapsed(minutes(coveredOf(in.Style, in.Vessel, bake.minutes)))
	if in.Covered > 0 {
		pr.Covered = in.Covered
	}
	if in.Open {
		pr.Covered = 0
	}
	pr.Uncovered = uncovered(bake.Time, pr.Covered.Duration())
	if in.Uncovered > 0 {
		// The baker's own time, with the spread of the whole bake.
		own := in.Uncovered.Duration()
		spread := time.Duration(0.12 * float64(pr.Covered.Duration()+own))
		pr.Uncovered = quantity.TimeRange{
			Early:       max(0, own-spread),
			Likely:      own,
			Late:        own + spread,
			Probability: bake.Time.Probability,
		}
	}
	pr.Bake = pr.Uncovered.Add(pr.Covered.Duration())
	var p quantity.Problems
	for _, mark := range pr.marks() {
		p.Duration(mark.path, mark.after, time.Minute, pr.Bake.Likely-time.Minute)
	}
	if err := p.ErrFor(in); err != nil {
		return Program{}, err
	}
	pr.phases()
	return pr, nil
}

func uncovered(bake quantity.TimeRange, covered time.Duration) quantity.TimeRange {
	less := func(d time.Duration) time.Duration { return max(0, d-covered) }
	return quantity.TimeRange{
		Early:       less(bake.Early),
		Likely:      less(bake.Likely),
		Late:        less(bake.Late),
		Probability: bake.Probability,
	}
}

func checkBatch(in OvenLoad) (BakeTime, error) {
	var p quantity.Problems
	bake, err := OvenPiece{
		Style: in.Style, Shape: in.Shape, Dough: in.Dough, Cold: in.Cold,
		KnownDough: in.KnownDough, KnownTime: in.KnownTime, KnownShape: in.KnownShape, KnownCold: in.KnownCold,
		Extrapolate: in.Extrapolate,
	}.BakeTime()
	p.Join("", err)
	pieces := p.Int("Pieces", in.Pieces, 1, 1000)
	vessels.CheckIfGiven(&p, "Vessel", in.Vessel)
	if p.Int("Together", in.Together, 0, 1000) && pieces && in.Together > 0 &&
		(in.Pieces+in.Together-1)/in.Together > 50 {
		got := quantity.Tell("bake.got_rounds", "%d pieces, %d in a round, which are %d rounds", in.Pieces, in.Together,
			(in.Pieces+in.Together-1)/in.Together)
		p.Add("Together", got, quantity.Tell("bake.want_at_most_50_rounds", "at most 50 rounds"), quantity.ErrOutOfRange)
	}
	if !in.Oven.IsZero() {
		quantity.Check(&p, "Oven", in.Oven, quantity.Celsius(120), quantity.Celsius(500))
	}
	if !in.Then.IsZero() {
		quantity.Check(&p, "Then", in.Then, quantity.Celsius(100), quantity.Celsius(500))
	}
	p.Duration("Preheat", in.Preheat.Duration(), 0, 6*time.Hour)
	p.Duration("Reheat", in.Reheat.Duration(), 0, 2*time.Hour)
	covered := p.Duration("Covered", in.Covered.Duration(), 0, 6*time.Hour)
	if in.Open && in.Covered > 0 {
		p.Add("Covered", in.Covered, quantity.Tell("bake.want_nothing_bake_without_lid_or",
			"nothing for a bake without lid or steam"), quantity.ErrInconsistent)
	}
	p.Duration("Uncovered", in.Uncovered.Duration(), 0, 6*time.Hour)
	if err == nil && covered && in.Uncovered == 0 && in.Covered.Duration() > bake.Time.Late {
		p.Add(
			"Covered",
			in.Covered,
			quantity.Tell("bake.want_no_longer_than_bake_or", "no longer than the bake, %v, or an uncovered time of your own",
				bake.Time),
			quantity.ErrInconsistent,
		)
	}
	return bake, p.ErrFor(in)
}

// sure is a range without spread.
func sure(d time.Duration) quantity.TimeRange {
	return quantity.TimeRange{Early: d, Likely: d, Late: d, Probability: quantity.NewPercent(bakeProbability)}
}

func sum(a, b quantity.TimeRange) quantity.TimeRange {
	return quantity.TimeRange{
		Early:       a.Early + b.Early,
		Likely:      a.Likely + b.Likely,
		Late:        a.Late + b.Late,
		Probability: a.Probability,
	}
}

func (pr *Program) phases() {
	now, none := sure(0), working.Message{}
	add := func(kind PhaseKind, round int, oven quantity.Temperature, takes quantity.TimeRange, hands bool,
		note working.Message) {
		pr.Phases = append(pr.Phases,
			Phase{Kind: kind, Round: round, Oven: oven, Start: now, Takes: takes, Hands: hands, Note: note})
		now = sum(now, takes)
	}
	cover, vent := working.Tell("bake.steam_in", "steam in"), working.Tell("bake.steam_out",
		"let the steam out, away from you")
	if pr.in.Vessel == Pot {
		cover, vent = working.Tell("bake.lid_on", "lid on"), working.Tell("bake.lid_off", "lid off, away from you")
	}
	until := working.Tell("bake.until_core", "until the core is at its target")
	if !pr.in.Style.ByCore() {
		until = working.Tell("bake.until_color", "until the color is right")
	}
	add(Preheating, 1, pr.Oven, sure(pr.Preheat.Duration()), false, preheatNote(pr.in.Vessel))
	for round := 1; round <= pr.Rounds; round++ {
		if round > 1 {
			// The oven gets hot again while the next bagels boil.
			add(Reheating, round, pr.Oven, sure(max(0, pr.Reheat.Duration()-pr.Boil.Likely)), false, none)
		}
		if pr.Boil.Likely > 0 {
			add(Boil, round, pr.Oven, pr.Boil, true, boilNote())
		}
		add(Load, round, pr.Oven, sure(0), true, loadNote(pr.in.Style))
		marks := pr.marks()
		covered := pr.Covered.Duration()
		// lasting is a stretch of the bake with the marks that fall into it.
		lasting := func(kind PhaseKind, oven quantity.Temperature, from time.Duration, takes quantity.TimeRange,
			says working.Message) {
			for len(marks) > 0 && marks[0].after < from+takes.Likely {
				part := marks[0].after - from
				if part > 0 {
					add(kind, round, oven, sure(part), false, none)
				}
				add(marks[0].kind, round, oven, sure(0), true, marks[0].says)
				takes, from, marks = uncovered(takes, part), marks[0].after, marks[1:]
			}
			add(kind, round, oven, takes, false, says)
		}
		if covered > 0 {
			lasting(Covered, pr.Oven, 0, sure(covered), cover)
			add(Vent, round, pr.Then, sure(0), true, vent)
		}
		lasting(Uncovered, pr.Then, covered, pr.Uncovered, until)
	}
	pr.Total = now
}

// mark is a moment of a round, from loading, at which hands are needed.
type mark struct {
	path  string // of the input
	kind  PhaseKind
	after time.Duration
	says  working.Message
}

// marks are those that were asked for, in order of time.
func (pr *Program) marks() []mark {
	var out []mark
	if again := pr.in.RescoreAfter.Duration(); again != 0 || pr.in.Rescore {
		if again == 0 {
			again = min(rescoreAfter, (pr.Bake.Likely / 2).Truncate(time.Minute))
		}
		out = append(out, mark{"RescoreAfter", Rescore, again, working.Tell("bake.rescore", "open the cuts again, quickly")})
	}
	if turn := pr.in.TurnAfter.Duration(); turn != 0 {
		out = append(out, mark{"TurnAfter", Turn, turn, working.Tell("bake.turn", "turn it front to back")})
	}
	slices.SortStableFunc(out, func(a, b mark) int { return cmp.Compare(a.after, b.after) })
	return out
}

// String prints "2 rounds of 3: preheat 45m, covered 22m, uncovered 16m to 34m (80 %), likely 25m; in all
// …".
func (pr Program) String() string { return pr.message().String() }

func (pr Program) message() working.Message {
	one := working.Tell("bake.program_plain", "preheat %v, uncovered %v", pr.Preheat, pr.Uncovered)
	if pr.Covered > 0 {
		one = working.Tell("bake.program_covered", "preheat %v, covered %v, uncovered %v", pr.Preheat, pr.Covered,
			pr.Uncovered)
	}
	if pr.Rounds > 1 {
		return working.Tell("bake.program_rounds", "%d rounds of %d: %v, reheat %v; in all %v", pr.Rounds,
			pr.PerRound, one, pr.Reheat, pr.Total)
	}
	return working.Tell("bake.program", "one round of %d: %v; in all %v", pr.PerRound, one, pr.Total)
}

// Cautions says what can hurt at the oven.
func (pr Program) Cautions() []working.Caution {
	out := append(OvenCautions(), colorCaution())
	if pr.in.Vessel == Pot {
		out = append(out, working.Caution{
			Subject: "pots", Text: working.Tell("bake.caution_pots",
				"Knobs, coatings and enamel have a highest temperature: look it up before you heat a pot to %05.0f, and never "+
					"heat a coated pot empty unless its maker allows it.", pr.Oven),
			Source: sources.CastIronWater,
		})
	}
	return out
}
