package dough

import (
	"slices"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// OneLevain asks for one build that serves several doughs.
type OneLevain struct {
	Preferment string  `json:"preferment"` // its name, the same in every dough
	Doughs     []Batch `json:"doughs"`
	// AtHand is how much ripe levain there is; zero means it is still to be built.
	AtHand quantity.Mass `json:"at_hand,omitzero"`
}

// SharedLevain is one build for several doughs.
type SharedLevain struct {
	answer

	Build Build `json:"build"` // the whole build: the sum of those of the doughs
	// ripe levain for each dough, in order; they add up to Build.Used, or to AtHand if that is less
	Parts []quantity.Mass `json:"parts"`
	// how much the levain at hand falls short; zero if it suffices or is to be built
	Short quantity.Mass `json:"short,omitzero"`
	in    OneLevain
}

// Plan adds up the builds.
//
//	part_i = what dough i takes;  with less at hand, part_i = at hand · taken_i ÷ Σ taken, by largest remainder
//
// When the levain at hand is too little, the parts share it in proportion; each dough then follows
// from Formula.For with [ByLevain]. Exact to the microgram. Errors: ErrInconsistent when a dough has no
// preferment of that name, or when hydration or flours differ by more than a thousandth of a point, so that
// one build cannot serve both. Source: algebra; largest remainder as in [quantity.Apportion].
func (o OneLevain) Plan() (SharedLevain, error) {
	var p quantity.Problems
	if len(o.Doughs) == 0 {
		p.Required("Doughs", quantity.Tell("dough.want_at_least_one_batch", "at least one batch"))
	}
	quantity.Check(&p, "AtHand", o.AtHand, quantity.Mass{}, mostDough)
	if err := p.ErrFor(o); err != nil {
		return SharedLevain{}, err
	}
	o.Doughs = slices.Clone(o.Doughs)
	out := SharedLevain{in: o}
	for i, d := range o.Doughs {
		build, ok := d.Build(o.Preferment)
		if !ok {
			p.Add(at("Doughs", i), quantity.Tell("dough.got_no_build", "no build %s", quantity.Excerpt(o.Preferment)),
				quantity.Tell("dough.want_dough_preferment", "a dough with that preferment"),
				quantity.ErrInconsistent)
			continue
		}
		if i == 0 {
			out.Build = build
			out.Build.Lines = append([]DoughLine(nil), build.Lines...)
		} else if !out.Build.merge(build) {
			p.Add(at("Doughs", i),
				quantity.Tell("dough.got_at_made_other_lines_or", "%s at %s made of other lines or shares",
					quantity.Excerpt(o.Preferment), build.Hydration().Text(3)),
				quantity.Tell("dough.want_same_build_first_dough",
					"the same build as in the first dough"), quantity.ErrInconsistent)
		}
		out.Parts = append(out.Parts, build.Used)
	}
	if err := p.ErrFor(o); err != nil {
		return SharedLevain{}, err
	}
	ofListFlour(out.Build.Lines)
	if !o.AtHand.IsZero() && o.AtHand.Compare(out.Build.Used) < 0 {
		out.Short = out.Build.Used.Sub(o.AtHand)
		parts, err := quantity.ApportionLike(o.AtHand, out.Parts)
		if err != nil {
			return SharedLevain{}, err
		}
		out.Parts = parts
	}
	return out, nil
}

// merge adds another build of the same composition; false if it is not the same.
func (b *Build) merge(o Build) bool {
	if b.Kind != o.Kind || b.Fermented != o.Fermented || len(b.Lines) != len(o.Lines) {
		return false
	}
	for i := range b.Lines {
		l, m := &b.Lines[i], o.Lines[i]
		if l.Name != m.Name || l.Role != m.Role {
			return false
		}
		// Compare shares of the whole; each was rounded to a microgram.
		d := l.Mass.PercentOf(b.Made).Sub(m.Mass.PercentOf(o.Made)).Points()
		if d > 0.001 || d < -0.001 {
			return false
		}
	}
	for i := range b.Lines {
		b.Lines[i].Mass = b.Lines[i].Mass.Add(o.Lines[i].Mass)
	}
	b.Made, b.Removed, b.Used = b.Made.Add(o.Made), b.Removed.Add(o.Removed), b.Used.Add(o.Used)
	b.Flour, b.Water = b.Flour.Add(o.Flour), b.Water.Add(o.Water)
	return true
}

// Working derives the sum and the parts.
func (s SharedLevain) Working() working.Working {
	d := working.Derive(working.Tell("dough.derive_shared", "One levain for several doughs"))
	if len(s.Parts) == 0 || len(s.in.Doughs) != len(s.Parts) {
		return d.Working()
	}
	var sum working.Expr
	need := make([]working.Expr, len(s.Parts))
	for i, b := range s.in.Doughs {
		build, _ := b.Build(s.in.Preferment)
		need[i] = working.Given(subscript("L", i), working.Tell("dough.for_dough", "for dough %d", i+1), build.Used)
		sum = plus(sum, need[i])
	}
	all := d.Find(working.Finding{
		Name: working.Tell("dough.levain_needed", "%s needed",
			s.in.Preferment), Symbol: "L", By: sum, Is: s.Build.Used, Decimals: 1, Source: working.Algebra(),
	})
	if s.Short.IsZero() {
		return d.Working()
	}
	hand := working.Given("A", working.Tell("dough.symbol_levain_at_hand", "levain at hand"), s.in.AtHand)
	for i, m := range s.Parts {
		d.Find(working.Finding{
			Name: working.Tell("dough.part_of", "part of dough %d", i+1), Symbol: subscript("x",
				i), By: hand.Times(need[i]).Over(all), Is: m, Decimals: 1,
			Source: sources.LargestRemainder,
		})
	}
	return d.Working()
}
