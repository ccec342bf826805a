package cli

import (
	"fmt"
	"strconv"
	"strings"

	"example.org/maslin/dough/flour"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"github.com/spf13/cobra"
)

type flourFlags struct {
	output
	in       *asked
	lots     []flour.FlourShare
	shares   int
	target   quantity.Percent
	total    quantity.Mass
	protein  quantity.Percent
	gluten   bool
	strength flour.FlourStrength
}

func newFlour(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "flour",
		Short: "Blend flours to a protein, add gluten, judge whether a flour carries the water",
		Long: `flour blends flours to a protein target: two by their proteins, more by changing their shares as little
as possible. With --gluten it says how much dry gluten takes a flour there. With --hydration
it lists which published figures speak for or against so much water, and where they disagree.`,
		Example: `  maslin flour --lot 'bread flour=13.2%' --lot 'all-purpose=10.5%' --target 12% --total 2kg
  maslin flour --lot 'strong=13.5%@60%' --lot 'wheat=11%@30%' --lot 'rye=8.5%@10%' --target 12.4%
  maslin flour --protein 10.5% --target 12.5% --gluten --total 1kg
  maslin flour --hydration 75% --protein 12% --w 260`,
		Args: flagsOnly,
	}
	f := &flourFlags{in: ask(cmd)}
	in := f.in
	in.each(f.readLot, "lot", "NAME=PROTEIN[@SHARE]", "a flour with its protein, and its share now (may be repeated)", "Flours", "A", "B")
	in.value(&f.target, "target", "PERCENT", "protein of the blend", "Target")
	in.value(&f.total, "total", "MASS", "of the blend; of the flour, with --gluten", "Total", "Flour")
	in.value(&f.protein, "protein", "PERCENT", "of the flour", "Protein")
	cmd.Flags().BoolVar(&f.gluten, "gluten", false, "reach the target with dry gluten")
	in.value(&f.strength.Hydration, "hydration", "PERCENT", "which the flour is to carry", "Hydration")
	in.each(f.plain(&f.strength.W), "w", "W", "the work to blow up a bubble of dough, in 10⁻⁴ J (alveograph)", "W")
	in.each(f.plain(&f.strength.PL), "pl", "P/L", "how much the dough resists over how far it stretches (alveograph)", "PL")
	in.each(f.plain(&f.strength.FallingNumber), "falling-number", "SECONDS", "a plunger takes through a hot paste: few mean much enzyme", "FallingNumber")
	in.value(&f.strength.Absorption, "absorption", "PERCENT", "water that the flour takes at 14 % moisture (farinograph)", "Absorption")
	f.register(cmd)
	cmd.RunE = func(*cobra.Command, []string) error { return runFlour(s, f) }
	return cmd
}

// plain reads a number without a unit.
func (f *flourFlags) plain(target *float64) func(string) error {
	return func(text string) error {
		x, err := strconv.ParseFloat(strings.Replace(strings.TrimSpace(text), ",", ".", 1), 64)
		if err != nil {
			return &quantity.InputError{Got: quantity.Excerpt(text), Want: "a number", Err: quantity.ErrUnit}
		}
		*target = x
		return nil
	}
}

// readLot reads "bread flour=13.2%" or "bread flour=13.2%@60%".
func (f *flourFlags) readLot(text string) error {
	before, share, shared := strings.Cut(text, "@")
	var lot flour.FlourShare
	name, err := named(before, &lot.Protein, `a flour and its protein, such as "bread flour=13.2%", and its share now after an @`)
	if err == nil && shared {
		f.shares++
		err = lot.Share.UnmarshalText([]byte(share))
	}
	if err != nil {
		return err
	}
	lot.Name = name
	f.lots = append(f.lots, lot)
	return nil
}

// flourFound is what flour was asked for.
type flourFound struct {
	blend          *flour.FlourBlend
	added, instead *flour.GlutenResult
	advice         *flour.StrengthAdvice
}

func runFlour(s System, f *flourFlags) error {
	if err := f.check(); err != nil {
		return err
	}
	in := f.in
	var p quantity.Problems
	var r flourFound
	var workings []working.Working
	need := func(flag, want string) {
		if !in.given(flag) {
			p.Add("--"+flag, "", want, quantity.ErrRequired)
		}
	}
	switch {
	case in.given("lot"):
		in.not("--lot, which asks for a blend", "gluten", "hydration", "protein", "w", "pl", "falling-number", "absorption")
		need("target", "the protein of the blend")
		blend, err := f.blendIt()
		p.Join("", err)
		if err == nil {
			r.blend, workings = &blend, append(workings, blend.Working())
		}
	case f.gluten:
		in.not("--gluten, which asks for gluten", "hydration", "w", "pl", "falling-number", "absorption")
		need("protein", "the protein of the flour")
		need("target", "the protein wanted")
		boost := flour.GlutenBoost{Protein: f.protein, Target: f.target, Flour: f.total}
		added, err := flour.AddGluten(boost)
		p.Join("", err)
		instead, err2 := flour.ReplaceWithGluten(boost)
		if err == nil {
			p.Join("", err2)
		}
		if err == nil && err2 == nil {
			r.added, r.instead, workings = &added, &instead, append(workings, added.Working(), instead.Working())
		}
	case in.given("hydration"):
		in.not("--hydration, which asks for a judgment", "target", "total")
		f.strength.Protein = f.protein
		advice, err := flour.JudgeFlour(f.strength)
		p.Join("", err)
		if err == nil {
			r.advice, workings = &advice, append(workings, advice.Working())
		}
	default:
		in.fault("lot", "", "flours to blend; or --gluten to reach a protein with gluten, or --hydration to judge a flour", quantity.ErrRequired)
	}
	if wrong := in.complain(p.Err()); wrong != nil {
		return wrong
	}
	return s.show(f.output, answer{
		page: func(p *page, u units) { flourPage(p, u, f, r) }, data: flourData(r), workings: workings, no: r.blend != nil && !r.blend.Feasible,
	})
}

// blendIt takes two flours by the square, and flours with shares by least change.
func (f *flourFlags) blendIt() (flour.FlourBlend, error) {
	for i := range f.lots {
		f.in.paths[fmt.Sprintf("Flours[%d]", i)] = "lot"
	}
	if len(f.lots) == 2 && f.shares == 0 {
		return flour.PearsonSquare(flour.TwoFlours{A: f.lots[0].FlourLot, B: f.lots[1].FlourLot, Target: f.target, Total: f.total})
	}
	return flour.BlendFlours(flour.BlendGoal{Flours: f.lots, Target: f.target, Total: f.total})
}

func flourPage(p *page, u units, f *flourFlags, r flourFound) {
	switch {
	case r.blend != nil:
		title := "A blend of " + percent(r.blend.Protein, 2) + " protein"
		if !r.blend.Feasible {
			title = "It cannot be reached; the nearest is " + percent(r.blend.Protein, 2) + " protein"
		}
		p.para(0, title)
		p.line("")
		var rows [][]string
		for _, l := range r.blend.Flours {
			mass := ""
			if l.Mass.Sign() > 0 {
				mass = u.mass(tenthGram(l.Mass))
			}
			text := printable(l.Name) + " (" + percent(l.Protein, 1) + ")"
			if l.Held != "" {
				text += ", held by its bounds"
			}
			row := []string{percent(l.Share, 1), mass, text}
			if f.total.IsZero() {
				row = []string{row[0], text}
			}
			rows = append(rows, row)
		}
		p.rows(2, strings.Repeat("r", len(rows[0])-1)+"l", rows)
	case r.added != nil:
		p.para(0, "Dry gluten from "+percent(f.protein, 1)+" to "+percent(f.target, 1)+" protein")
		p.line("")
		line := func(how string, g flour.GlutenResult) []string {
			mass := ""
			if g.Gluten.Sign() > 0 {
				mass = u.mass(tenthGram(g.Gluten)) + " to " + u.mass(tenthGram(g.Flour)) + " of flour; about " + u.mass(tenthGram(g.ExtraWater)) + " more water"
			}
			return []string{how, percent(g.PerFlour, 2), mass}
		}
		p.rows(2, "lrl", [][]string{line("added, of the flour", *r.added), line("in its place, of the mixture", *r.instead)})
		for _, n := range r.added.Notes {
			p.para(2, u.say(n))
		}
	case r.advice != nil:
		a := r.advice
		p.para(0, fmt.Sprintf("Hydration %s: %d speak for it, %d against", percent(f.strength.Hydration, 0), a.For, a.Against))
		p.line("")
		for _, o := range a.Opinions {
			p.para(2, o.String())
		}
		p.line("")
		said := map[string]bool{}
		for _, o := range a.Opinions {
			if !said[o.Meaning] {
				said[o.Meaning] = true
				name, _, _ := strings.Cut(o.Figure, " ")
				if name == "falling" {
					name = "falling number"
				}
				p.para(2, name+": "+o.Meaning)
			}
		}
		p.line("")
		if a.Disagreement != "" {
			p.para(2, a.Disagreement)
		}
		for _, x := range a.Advice {
			p.para(2, x)
		}
	}
}

type blendLine struct {
	Name    string           `json:"name"`
	Protein quantity.Percent `json:"protein"`
	Share   quantity.Percent `json:"share"`
	Mass    quantity.Mass    `json:"mass"`
}

type glutenLine struct {
	Percent quantity.Percent `json:"percent"`
	Gluten  quantity.Mass    `json:"gluten"`
	Flour   quantity.Mass    `json:"flour"`
	Water   quantity.Mass    `json:"extra_water"`
}

type flourAnswer struct {
	Format   string            `json:"format"`
	Feasible *bool             `json:"feasible,omitempty"`
	Protein  *quantity.Percent `json:"protein,omitempty"`
	Blend    []blendLine       `json:"blend,omitempty"`
	Added    *glutenLine       `json:"gluten_added,omitempty"`
	Instead  *glutenLine       `json:"gluten_in_place_of_flour,omitempty"`
	For      *int              `json:"for,omitempty"`
	Against  *int              `json:"against,omitempty"`
	Opinions []string          `json:"opinions,omitempty"`
	Advice   []string          `json:"advice,omitempty"`
}

func flourData(r flourFound) flourAnswer {
	out := flourAnswer{Format: "maslin flour 1"}
	if b := r.blend; b != nil {
		out.Feasible, out.Protein = &b.Feasible, &b.Protein
		for _, l := range b.Flours {
			out.Blend = append(out.Blend, blendLine{l.Name, l.Protein, l.Share, l.Mass})
		}
	}
	line := func(g *flour.GlutenResult) *glutenLine {
		if g == nil {
			return nil
		}
		return &glutenLine{g.PerFlour, g.Gluten, g.Flour, g.ExtraWater}
	}
	out.Added, out.Instead = line(r.added), line(r.instead)
	if a := r.advice; a != nil {
		out.For, out.Against, out.Advice = &a.For, &a.Against, a.Advice
		for _, o := range a.Opinions {
			out.Opinions = append(out.Opinions, o.String())
		}
	}
	return out
}
