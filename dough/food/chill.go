package food

import (
	"strconv"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/enum"
	"example.org/maslin/internal/moment"
	"example.org/maslin/internal/sources"
)

// ChilledKind is a food beside the dough that spoils, by how it was made.
type ChilledKind int

// The kinds.
const (
	// Cooked: custard, cream, porridge, cooked filling or soaker, as it leaves the heat.
	Cooked ChilledKind = iota
	// MixedCold: a filling of ingredients at room temperature, not cooked.
	MixedCold
	// InfusedOil: oil with garlic or herbs in it, pesto.
	InfusedOil
	// WetGrain: a soaker of raw grain, seeds or flour in water, without salt or leavening.
	WetGrain
)

var chilledKinds = enum.Of[ChilledKind]("food that spoils", "cooked", "mixed cold", "infused oil", "wet grain")

// String names the kind: "mixed cold".
func (k ChilledKind) String() string { return chilledKinds.String(k) }

// MarshalText implements encoding.TextMarshaler.
func (k ChilledKind) MarshalText() ([]byte, error) { return chilledKinds.Marshal(k) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (k *ChilledKind) UnmarshalText(text []byte) error { return chilledKinds.Unmarshal(k, text) }

// ChilledFood is such a food and when it was made: off the heat, or mixed.
type ChilledFood struct {
	Kind ChilledKind `json:"kind"`
	Made time.Time   `json:"made,omitzero"` // not given: the answer has durations alone
}

// ChillLimit is one thing that has to be reached, or done, in time.
type ChillLimit struct {
	// To is the temperature to be at; not given for food that is thrown away.
	To     quantity.Temperature `json:"to,omitzero"`
	Within quantity.Elapsed     `json:"within"` // from when it was made
	By     time.Time            `json:"by,omitzero"`
	Source working.Source       `json:"source"`
}

// ChillPlan is the answer of [ChilledFood.Limits]. It is what authorities ask for, and no promise.
type ChillPlan struct {
	answer

	Limits []ChillLimit `json:"limits"`

	in ChilledFood
}

// Limits answers by when a cooked filling, a custard, a soaker or an oil with garlic has to be cold, and when it is
// thrown away.
//
// Cooked: 57 to 21 °C within 2 hours and to 5 °C within 6 in all, both from the start; kept cold, 4 days. Mixed cold:
// 5 °C within 4 hours. Oil with garlic or herbs: 5 °C at once, thrown away after 4 days. Wet grain: chilled or salted
// after 4 hours above 5 °C. Where authorities differ the shortest is taken; local rules decide. Valid for the
// years 1900 to 9998. Errors: ErrOutOfRange for an unknown kind or another year. Source: FDA Food Code 2022, 3-501.14
// (second-hand); CDC on garlic in oil
// (second-hand); a council's four days for cooked food; judgment for wet grain.
func (c ChilledFood) Limits() (ChillPlan, error) {
	var p quantity.Problems
	chilledKinds.Check(&p, "Kind", c.Kind)
	moment.Check(&p, "Made", c.Made)
	if err := p.ErrFor(c); err != nil {
		return ChillPlan{}, err
	}
	cool, cold := quantity.Celsius(21), quantity.Celsius(5)
	hours := func(n int) quantity.Elapsed { return quantity.Elapsed(time.Duration(n) * time.Hour) }
	plan := ChillPlan{in: c, Limits: map[ChilledKind][]ChillLimit{
		Cooked: {
			{To: cool, Within: hours(2), Source: sources.FoodCode}, {To: cold, Within: hours(6), Source: sources.FoodCode},
			{Within: hours(4 * 24), Source: sources.CookedFourDays},
		},
		MixedCold:  {{To: cold, Within: hours(4), Source: sources.FoodCode}},
		InfusedOil: {{Within: hours(4 * 24), Source: sources.GarlicOil}},
		WetGrain:   {{To: cold, Within: hours(4), Source: sources.WetSoaker}},
	}[c.Kind]}
	if !c.Made.IsZero() {
		for i := range plan.Limits {
			plan.Limits[i].By = c.Made.Add(plan.Limits[i].Within.Duration())
		}
	}
	return plan, nil
}

// String is the headline of the report.
func (p ChillPlan) String() string { return p.Report().Headline.String() }

// Report tells the limits and how to keep them.
func (p ChillPlan) Report() report.Report {
	if len(p.Limits) == 0 {
		return report.Report{Headline: working.Tell("food.no_chill", "no food was asked about")}
	}
	var rows report.Rows
	r := report.Report{Headline: p.headline()}
	for _, l := range p.Limits {
		row := report.Row{Label: working.Tell("food.at_or_below", "at %.0f or colder", l.To)}
		if l.To.IsZero() {
			row.Label = working.Tell("food.thrown_away", "thrown away")
		}
		row.Value = report.Of(working.Tell("food.within", "within %v", l.Within))
		if !l.By.IsZero() {
			row.Value, row.Note = report.Of(working.Tell("food.by", "by %v", l.By)), working.Tell("food.within", "within %v",
				l.Within)
		}
		rows = append(rows, row)
		r.Sources = append(r.Sources, l.Source)
	}
	r.Sections = []report.Section{
		{Key: "limits", Blocks: []report.Block{rows}}, {Key: "how", Blocks: []report.Block{p.advice()}},
	}
	r.Cautions = []working.Caution{{
		Subject: "food safety", Source: sources.FoodCode,
		Text: working.Tell("food.caution_chill",
			"these are what authorities ask for, and no promise: local food rules decide; when in doubt, throw it away"),
	}}
	return r
}

func (p ChillPlan) headline() working.Message {
	last := p.Limits[len(p.Limits)-1]
	switch {
	case p.in.Kind == InfusedOil:
		return working.Tell("food.chill_oil", "in the refrigerator at once, at %.0f or colder, and thrown away after %v",
			quantity.Celsius(5), last.Within)
	case p.in.Kind == Cooked && len(p.Limits) > 1: // fewer in a plan that was put together by hand
		return working.Tell("food.chill_cooked", "down to %.0f within %v and to %.0f within %v in all", p.Limits[0].To,
			p.Limits[0].Within, p.Limits[1].To, p.Limits[1].Within)
	case p.in.Kind == WetGrain:
		return working.Tell("food.chill_wet", "chilled to %.0f or salted after %v at the latest", last.To, last.Within)
	}
	return working.Tell("food.chill_mixed", "down to %.0f within %v", last.To, last.Within)
}

func (p ChillPlan) advice() report.List {
	switch p.in.Kind {
	case Cooked:
		return report.List{
			working.Tell("food.how_cool", "shallow dishes, a bath of ice, stir; the cover on when it is cold"),
			working.Tell("food.missed", "what is not at %.0f in time is heated through again, to %.0f, or thrown away",
				quantity.Celsius(21), quantity.Celsius(74)),
			working.Tell("food.spores", "spores of Bacillus cereus in rice, grain and potato survive the cooking"),
		}
	case InfusedOil:
		return report.List{
			working.Tell("food.oil_smell", "spoiled oil need not smell; never keep it in the room"),
			working.Tell("food.oil_freeze", "frozen it keeps for months; advice on the cold differs, 4, 7 or 10 days: the "+
				"shortest is taken"),
		}
	case WetGrain:
		return report.List{working.Tell("food.salt_soaker",
			"the salt of the dough may go into the soaker; in the refrigerator it has until the next day")}
	case MixedCold:
	}
	return report.List{working.Tell("food.left_out",
		"at home nothing that spoils stands out for more than 2 hours, 1 hour above %.0f", quantity.Celsius(32))}
}

// Working names the rule behind each limit.
func (p ChillPlan) Working() working.Working {
	d := working.Derive(working.Tell("food.derive_chill", "By when food must be cold"))
	for i, l := range p.Limits {
		name := working.Tell("food.at_or_below", "at %.0f or colder", l.To)
		if l.To.IsZero() {
			name = working.Tell("food.thrown_away", "thrown away")
		}
		d.Find(working.Finding{
			Name: name, Symbol: "t_" + strconv.Itoa(i+1), Is: working.Amount(l.Within.Duration().Hours(), "h", 0),
			Look: working.Tell("food.look_rule", "the rule, counted from when it was made"), Source: l.Source,
		})
	}
	return d.Working()
}
