package mixing

import (
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// Sticking is a dough that does not let go of the bowl.
type Sticking struct {
	Mix Mix `json:"mix"`
	// Kneaded is how long it has been kneaded.
	Kneaded quantity.Elapsed `json:"kneaded"`
	// Rested reports that it was already scraped down, left to rest for 10 to 20 minutes and kneaded for 2 more.
	Rested bool `json:"rested,omitzero"`
	// FatIn reports that the fat of a rich dough is in.
	FatIn bool `json:"fat_in,omitzero"`
	// Added is the flour that was already added against sticking, and is not yet part of Mix.
	Added quantity.Mass `json:"added,omitzero"`
	// Dough is its temperature now.
	Dough quantity.Temperature `json:"dough,omitzero"`
}

// ClearingStep is what to do next with a dough that sticks.
type ClearingStep int

// What to do next.
const (
	_ ClearingStep = iota
	// LeaveIt: this dough does not clear the bowl, and need not.
	LeaveIt
	// KneadOn: it is too early to tell.
	KneadOn
	// ScrapeAndRest cures most cases.
	ScrapeAndRest
	// AddFlour: a teaspoon at a time.
	AddFlour
	// StopAndFold: more flour or more mixing does no good.
	StopAndFold
	// CoolIt: it sticks because it is warm.
	CoolIt
)

// Clearing is the answer of [Sticking.Advise].
type Clearing struct {
	answer

	Step ClearingStep `json:"step"`
	// Expected reports that a dough of this kind does not clear the bowl, now or at all.
	Expected bool `json:"expected"`
	// Say are what to do and why, in order.
	Say []working.Message `json:"say,omitempty"`
	// KneadOn is how much longer to knead before asking again, when that is the advice.
	KneadOn quantity.Elapsed `json:"knead_on,omitzero"`
	// Cap is the most flour to add in all, and Left what is left of it.
	Cap  quantity.Mass `json:"cap"`
	Left quantity.Mass `json:"left"`
	// Additions say what a teaspoon, a tablespoon and the cap do to the dough, as far as they are left.
	Additions []FlourAdded `json:"additions,omitempty"`

	in Sticking
}

// FlourAdded is what some flour does to a dough, as percentages of all its flour.
type FlourAdded struct {
	Flour        quantity.Mass    `json:"flour"`
	Hydration    quantity.Percent `json:"hydration"`
	Salt         quantity.Percent `json:"salt"`
	Prefermented quantity.Percent `json:"prefermented"`
}

// Flour by the spoon: a tablespoon of wheat flour is 7.8 g. Source: bread machine booklets add it by the spoon; the
// weight is that of 125 g to a cup of 16 tablespoons.
const (
	gramsTablespoon = 125.0 / 16
	gramsTeaspoon   = gramsTablespoon / 3
	// The most flour to add, of the flour in the dough. Judgment.
	mostAdded = 3.0 // %
	// Hydration at which a wheat dough does not clear the bowl. From memory: above 72 to 75 %.
	neverClears = 75.0 // %
	// The dough temperature above which it sticks because it is warm. A home baker's text stops machines there.
	warmDough = 28.0 // °C
	// Whole grain takes up water for as long as this before it can be judged. From memory.
	wholeGrainSoaks = 10 * time.Minute
)

// Advise answers what to do about a dough that does not clear the bowl: is that expected of it, and if not, what
// first and what next.
//
// Wet doughs (water above 72 to 75 % of the flour), rye, whole grain before 10 minutes, and rich doughs before the
// fat is in do not clear it: knead on, scrape, or fold later. Otherwise stop, scrape, rest 10 to 20 minutes while the
// flour takes up water, knead 2 more; that cures most cases. Only then flour, a teaspoon (2.6 g) at a time, at most 3
// % of the flour in all, with what it does to hydration, salt and prefermented flour. After that, or when the dough
// is warmer than 28 °C or kneaded half as long again as usual: stop the machine, cool and fold. Kneaded 0 to 4 h,
// flour added 0 to 20 % of the flour. The order is the trade's, its figures are marked where they stand. Errors:
// ErrRequired, ErrOutOfRange, ErrInconsistent. Source: booklets of bread machines; from memory and judgment where
// marked.
func (in Sticking) Advise() (Clearing, error) {
	var p quantity.Problems
	k, err := in.Mix.Kneading()
	p.Join("Mix", err)
	p.Duration("Kneaded", in.Kneaded.Duration(), 0, mostMixing)
	if err == nil {
		quantity.Check(&p, "Added", in.Added, quantity.Mass{}, quantity.NewPercent(20).Of(in.Mix.Flour))
	}
	if !in.Dough.IsZero() {
		quantity.Check(&p, "Dough", in.Dough, coldestDough, hottestDough)
	}
	if err := p.ErrFor(in); err != nil {
		return Clearing{}, err
	}
	c := Clearing{in: in, Cap: quantity.NewPercent(mostAdded).Of(in.Mix.Flour)}
	if in.Added.Compare(c.Cap) < 0 {
		c.Left = c.Cap.Sub(in.Added)
	}
	c.decide(k)
	c.additions()
	return c, nil
}

func (c *Clearing) decide(k Kneading) {
	in, m := c.in, c.in.Mix
	say := func(s working.Message) { c.Say = append(c.Say, s) }
	wet := m.hydration().Points()
	soaking := m.Kind == WholeGrainDough && in.Kneaded.Duration() < wholeGrainSoaks
	switch {
	case m.Kind == RyeDough:
		c.Step, c.Expected = LeaveIt, true
		say(working.Tell("mixing.clear_rye", "rye sticks and is meant to: no flour; scrape the bowl, use wet hands, "+
			"and stop when there are no dry specks"))
	case m.Kind == GlutenFreeDough:
		c.Step, c.Expected = LeaveIt, true
		say(working.Tell("mixing.clear_gluten_free", "a dough without gluten never clears the bowl: no flour; wait 10 to "+
			"15 minutes, in which psyllium, gum and starch swell, and shape it with wet hands"))
	case !in.Dough.IsZero() && in.Dough.Celsius() > warmDough:
		c.Step = CoolIt
		say(working.Tell(
			"mixing.clear_warm", "at %.1f a dough sticks because it is warm: stop the machine, let it rest in the "+
				"cold for 20 to 30 minutes, then fold", in.Dough))
	case in.Kneaded < k.From && !in.Rested || soaking:
		c.Step, c.Expected = KneadOn, true
		c.KneadOn = k.From - in.Kneaded
		if soaking {
			c.KneadOn = max(c.KneadOn, quantity.Elapsed(wholeGrainSoaks)-in.Kneaded)
		}
		say(working.Tell("mixing.clear_early", "too early to tell: knead about %v more, scrape the bowl once, and "+
			"add no flour", c.KneadOn))
	case m.rich() && !in.FatIn:
		c.Step, c.Expected = KneadOn, true
		say(working.Tell("mixing.clear_rich", "a rich dough clears the bowl only after the fat is in: let the gluten "+
			"form, then add the fat in pieces"))
	case wet > neverClears:
		c.Step, c.Expected = StopAndFold, true
		say(working.Tell(
			"mixing.clear_wet", "at %.0f water a dough need not clear the bowl: stop when it is smooth, and give it "+
				"three or four sets of folds", m.hydration()))
	case !in.Rested:
		c.Step = ScrapeAndRest
		c.Expected = wet > wetDough || m.Kind == MixedRyeDough
		say(working.Tell("mixing.clear_rest", "stop, scrape bowl and hook, let it rest 10 to 20 minutes, then knead "+
			"2 minutes: this cures most cases"))
		if m.Mixer != Hand && m.Mixer != Processor && wet > 60 {
			say(working.Tell(
				"mixing.clear_gather",
				"if it still lies flat, one speed up for 1 to 2 minutes lets a soft dough gather, then back; not "+
					"beyond what the machine's booklet allows"))
		}
	case in.Kneaded > k.To+k.To/2 || c.Left.IsZero():
		c.Step = StopAndFold
		if c.Left.IsZero() {
			say(working.Tell("mixing.clear_cap", "%.0f of flour is the most: more makes another dough", c.Cap))
		} else {
			say(working.Tell("mixing.clear_long", "kneaded for %v, half as long again as usual: more mixing tears it "+
				"down", in.Kneaded))
		}
		say(working.Tell("mixing.clear_fold", "stop the machine; three or four sets of folds half an hour apart give "+
			"the strength"))
	default:
		c.Step = AddFlour
		say(working.Tell(
			"mixing.clear_flour", "a teaspoon of flour (%.1f), knead a minute, look again; at most %.0f more in all",
			quantity.Grams(gramsTeaspoon), c.Left))
		say(working.Tell("mixing.clear_record",
			"write it down: it changes water, salt and levain for all of the flour"))
	}
	if in.Mix.Mixer == Planetary || in.Mix.Mixer == Spiral || in.Mix.Mixer == Fork {
		say(working.Tell("mixing.clear_stop_first", "switch the machine off before you scrape"))
	}
}

// additions are a teaspoon, a tablespoon and all that is left.
func (c *Clearing) additions() {
	if c.Step != AddFlour && c.Step != ScrapeAndRest {
		return
	}
	for _, g := range []quantity.Mass{quantity.Grams(gramsTeaspoon), quantity.Grams(gramsTablespoon), c.Left} {
		if g.Compare(c.Left) <= 0 && g.Sign() > 0 {
			c.Additions = append(c.Additions, c.in.with(g))
		}
	}
}

// with is the dough with some more flour.
func (in Sticking) with(flour quantity.Mass) FlourAdded {
	all := in.Mix.Flour.Add(in.Added).Add(flour)
	return FlourAdded{
		Flour: flour, Hydration: in.Mix.Water.PercentOf(all), Salt: in.Mix.Salt.PercentOf(all),
		Prefermented: in.Mix.Prefermented.PercentOf(all),
	}
}

// FlourFor answers how much flour brings a dough down to a hydration, and what that does to its salt and levain.
//
//	x = F·(h₁ ÷ h₂ − 1) = W ÷ h₂ − F
//
// F is the flour, W the water, h₁ the hydration now and h₂ that wanted, which is not above it and not below 20 %.
// Exact. It does not ask whether that much is wise: compare [Clearing] Cap. Errors: ErrRequired, ErrOutOfRange,
// ErrInconsistent. Source: algebra of baker's percentages.
func (in Mix) FlourFor(hydration quantity.Percent) (FlourAdded, error) {
	var p quantity.Problems
	in.check(&p)
	quantity.Check(&p, "hydration", hydration, quantity.NewPercent(20), quantity.NewPercent(150))
	if p.Err() == nil && hydration.Compare(in.hydration()) > 0 {
		p.Add("hydration", hydration, quantity.Tell("mixing.want_at_most_what_dough_has", "at most what the dough has, %v",
			in.hydration()),
			quantity.ErrInconsistent)
	}
	if err := p.ErrFor(in); err != nil {
		return FlourAdded{}, err
	}
	return Sticking{Mix: in}.with(in.Water.Over(hydration).Sub(in.Flour)), nil
}

// String says the first thing to do.
func (c Clearing) String() string { return c.Message().String() }

// Message says what to do and why.
func (c Clearing) Message() working.Message {
	if len(c.Say) == 0 {
		return working.Tell("mixing.no_dough", "no dough")
	}
	return working.Join(c.Say, "; ")
}

// Working derives the cap and what each addition does.
func (c Clearing) Working() working.Working {
	d := working.Derive(working.Tell("mixing.derive_clearing", "Flour against sticking"))
	if c.Step == 0 {
		return d.Working()
	}
	in := c.in
	flour := working.Given("F", working.Tell("mixing.symbol_all_flour", "flour of the whole dough"),
		in.Mix.Flour.Add(in.Added))
	first := working.Given("F_0", working.Tell("mixing.symbol_flour_first", "flour of the formula"), in.Mix.Flour)
	d.Find(working.Finding{
		Name: working.Tell("mixing.flour_cap", "the most flour to add"), Symbol: "x_max",
		By: first.Times(working.Given("k", working.Tell("mixing.symbol_cap", "share of the flour"),
			quantity.NewPercent(mostAdded)).Share()), Is: c.Cap,
		Decimals: 1, Source: working.Source{Key: "cap on flour", Title: "3 % of the flour at most",
			Standing: working.Judgment},
	})
	water := working.Given("W", working.Tell("mixing.symbol_all_water", "water of the whole dough"), in.Mix.Water)
	for i, a := range c.Additions {
		x := working.Given(symbolNumber("x", i), working.Tell("mixing.symbol_added", "flour added"), a.Flour)
		d.Find(working.Finding{
			Name:   working.Tell("mixing.hydration_with", "hydration with %.1f more flour", a.Flour),
			Symbol: symbolNumber("h", i),
			By:     working.Num(100).Times(water.Over(flour.Plus(x))), Is: a.Hydration, Decimals: 2,
			Source: sources.PlanetaryManuals,
		})
	}
	return d.Working()
}
