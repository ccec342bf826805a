package cli

import (
	"fmt"
	"strings"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
	"github.com/spf13/cobra"
)

type levainFlags struct {
	output
	in           *asked
	build        dough.LevainBuild
	ratio        string
	fed          dough.Feeding // as the ratio says
	ofMix, cold  bool
	at, fridge   quantity.Temperature
	after        quantity.Elapsed
	whole        quantity.Percent
	extrapolate  bool
	scale        quantity.Mass
	cultureGiven bool
}

func newLevain(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "levain",
		Short: "From the culture at hand to a ripe levain: what to feed, and when it is ripe",
		Long: `levain says how to feed the culture there is so that so much ripe levain is made, in one to
four stages, with something kept back for the next bake; and from the temperature at which
it stands, when each stage is ripe and how long it stays usable.

Without --culture it says how much culture it takes.`,
		Example: `  maslin levain --want 750g --keep 50g --culture 150g --inoculation 40% --at 21C
  maslin levain --want 400g --ratio 1:4:4 --at 24C --cold
  maslin levain --want 2kg --culture 20g --stages 2 --at 76F`,
		Args: flagsOnly,
	}
	f := levainFlags{in: ask(cmd), scale: quantity.Grams(1)}
	f.build.Hydration = quantity.NewPercent(100)
	in, b := f.in, &f.build
	in.value(&b.Want, "want", "MASS", "ripe levain for the dough", "Want")
	in.value(&b.KeepBack, "keep", "MASS", "ripe levain to keep back, made in addition", "KeepBack")
	in.value(&b.Hydration, "hydration", "PERCENT", "of the levain (100 %)", "Hydration")
	in.value(&b.Starter.Mass, "culture", "MASS", "culture at hand", "Starter.Mass", "Starter")
	in.value(&b.Starter.Hydration, "culture-hydration", "PERCENT", "of the culture at hand (as the levain's)", "Starter.Hydration")
	in.value(&b.Inoculation, "inoculation", "PERCENT", "culture, of the flour the last stage is fed with (free unless given)", "Inoculation", "Seed")
	cmd.Flags().BoolVar(&f.ofMix, "of-mix", false, "the inoculation is of the whole mix")
	in.each(f.readRatio, "ratio", "C:F:W", "culture, flour and water of the last stage, such as 1:5:5, instead of hydration and inoculation")
	in.number(&b.Stages, "stages", "feedings, 1 to 4 (as few as the bounds allow)", "Stages")
	in.value(&b.Least, "least", "PERCENT", "smallest inoculation of a free stage (10 %)", "Least")
	in.value(&b.Most, "most", "PERCENT", "largest inoculation of a free stage (100 %)", "Most")
	in.value(&f.at, "at", "TEMPERATURE", "at which it ripens; with it comes when it is ripe", "History", "Temperature", "Start")
	cmd.Flags().BoolVar(&f.cold, "cold", false, "the culture comes from the refrigerator")
	in.value(&f.after, "refrigerate-after", "TIME", "when the last stage goes into the refrigerator, from its feeding", "After")
	in.value(&f.fridge, "refrigerator", "TEMPERATURE", "of the refrigerator (4 °C)", "Into.Night")
	in.value(&f.whole, "whole-grain", "PERCENT", "of the levain's flour", "WholeGrain")
	cmd.Flags().BoolVar(&f.extrapolate, "extrapolate", false, "accept temperatures outside the data of the growth curve")
	in.value(&f.scale, "scale", "MASS", "step of the scale (1 g)", "Flour", "Fine")
	f.register(cmd)
	cmd.RunE = func(*cobra.Command, []string) error { return runLevain(s, f) }
	return cmd
}

// readRatio reads "1:5:5".
func (f *levainFlags) readRatio(text string) error {
	refuse := &quantity.InputError{Got: quantity.Excerpt(text), Want: "culture, flour and water as 1:5:5", Err: quantity.ErrUnit}
	parts := strings.Split(text, ":")
	if len(parts) != 3 {
		return refuse
	}
	var masses [3]quantity.Mass
	for i, p := range parts {
		m, err := quantity.ParseMass(strings.TrimSpace(p) + " g")
		if err != nil || m.Sign() <= 0 {
			return refuse
		}
		masses[i] = m
	}
	f.ratio = text
	f.fed = dough.Feeding{Starter: dough.Starter{Mass: masses[0]}, Flour: masses[1], Water: masses[2]}
	return nil
}

// stage is one feeding and when it is ripe.
type stage struct {
	fed  dough.Feeding
	ripe *ferment.Ripeness
}

func runLevain(s System, f levainFlags) error {
	if err := f.check(); err != nil {
		return err
	}
	in, b := f.in, f.build
	if f.ofMix {
		b.Of = dough.OfMix
	}
	if f.ratio != "" {
		in.not("--ratio, which says as much", "inoculation", "of-mix", "hydration")
		f.fed.Starter.Hydration = b.Starter.Hydration
		if !in.given("culture-hydration") {
			f.fed.Starter.Hydration = f.fed.Water.PercentOf(f.fed.Flour)
		}
		b.Inoculation, b.Hydration = f.fed.Inoculation(dough.OfNewFlour), f.fed.Hydration()
	}
	if !in.given("culture-hydration") {
		b.Starter.Hydration = b.Hydration
	}
	f.cultureGiven = in.given("culture")
	if !f.cultureGiven {
		b.Starter.Mass = b.Want.Add(b.KeepBack) // more than it can take
		if b.Starter.Mass.Sign() <= 0 {
			b.Starter.Mass = quantity.Grams(1) // what is wrong then is the levain wanted
		}
		if b.Inoculation.IsZero() && in.given("want") {
			in.fault("culture", "", "the culture at hand, or --inoculation or --ratio to be told how much it takes", quantity.ErrRequired)
		}
	}
	if f.at.IsZero() {
		in.only("--at", "cold", "refrigerate-after", "refrigerator", "whole-grain")
	}
	var p quantity.Problems
	if in.given("at") {
		quantity.Check(&p, "Temperature", f.at, quantity.Celsius(-25), quantity.Celsius(60))
	}
	if in.given("refrigerate-after") {
		p.Duration("After", f.after.Duration(), time.Minute, ferment.Horizon)
	}
	plan, err := b.Plan()
	p.Join("", err)
	err = p.Err()
	if wrong := in.complain(err); wrong != nil {
		return wrong
	}
	var residue quantity.Mass
	weighed := plan
	if plan.Reached {
		weighed, residue, err = plan.Weigh(dough.Scales{Flour: f.scale})
		if err != nil {
			return in.complain(err)
		}
	}
	stages, err := f.ripen(weighed.Stages, b)
	if err != nil {
		return in.complain(err)
	}
	a := answer{
		page: func(p *page, u units) { levainPage(p, u, f, b, weighed, stages, residue) }, data: levainData(f, weighed, stages, residue),
		workings: []working.Working{plan.Working()}, no: !plan.Reached,
	}
	for _, st := range stages {
		if st.ripe != nil {
			a.workings = append(a.workings, st.ripe.Working())
			a.cautions = st.ripe.Cautions()
		}
	}
	return s.show(f.output, a)
}

// ripen asks when each stage is ripe.
func (f levainFlags) ripen(feedings []dough.Feeding, b dough.LevainBuild) ([]stage, error) {
	var out []stage
	for i, fed := range feedings {
		st := stage{fed: fed}
		if !f.at.IsZero() {
			seed, err := ferment.FeedRatio{Seed: fed.Starter.Mass.Grams(), Flour: fed.Flour.Grams(), SeedHydration: fed.Starter.Hydration}.SeedShare()
			if err != nil {
				return nil, err
			}
			history, err := f.history(fed, i == len(feedings)-1)
			if err != nil {
				return nil, err
			}
			r, err := ferment.Ripening{
				Seed: seed, Hydration: b.Hydration, WholeGrain: f.whole, History: history, Law: ferment.GasBalance(),
				ColdSeed: f.cold && i == 0, Extrapolate: f.extrapolate,
			}.Ripe()
			if err != nil {
				return nil, err
			}
			st.ripe = &r
		}
		out = append(out, st)
	}
	return out, nil
}

// history is the counter, and for the last stage the refrigerator after it.
func (f levainFlags) history(fed dough.Feeding, last bool) (ferment.History, error) {
	counter := ferment.Constant(f.at)
	if !last || f.after <= 0 {
		return counter, nil
	}
	into := f.fridge
	if into.IsZero() {
		into = quantity.Celsius(4)
	}
	cold, err := ferment.Piece{
		Mass: fed.Made(), Form: ferment.Tub, Start: f.at, Into: ferment.Room{Night: into}, Exposure: ferment.Refrigerator,
	}.History()
	if err != nil {
		return cold, err
	}
	return ferment.Join(ferment.Stretch{History: counter, For: quantity.Elapsed(f.after.Duration())}, ferment.Stretch{History: cold})
}

func levainPage(p *page, u units, f levainFlags, b dough.LevainBuild, plan dough.LevainPlan, stages []stage, residue quantity.Mass) {
	title := fmt.Sprintf("Levain — %s at %s", u.mass(b.Want), percent(b.Hydration, 0))
	if b.KeepBack.Sign() > 0 {
		title += ", and " + u.mass(b.KeepBack) + " to keep"
	}
	p.para(0, title)
	if !plan.Reached {
		section(p, "It cannot be done")
		p.para(2, u.say(plan.Why))
		if plan.Missing.Sign() > 0 {
			p.para(2, "missing: "+u.mass(tenthGram(plan.Missing))+" of culture")
		}
		return
	}
	for i, st := range stages {
		name := "Feed"
		if len(stages) > 1 {
			name = fmt.Sprintf("Stage %d of %d", i+1, len(stages))
		}
		section(p, name)
		fed := st.fed
		p.rows(2, "rl", [][]string{
			{u.mass(fed.Starter.Mass), "culture"}, {u.mass(fed.Flour), "flour"}, {u.mass(fed.Water), "water"},
			{u.mass(fed.Made()), fmt.Sprintf("together, at %s", percent(fed.Hydration(), 0))},
		})
		p.para(2, fmt.Sprintf("inoculation %s of the new flour, %s of the mix", percent(fed.Inoculation(dough.OfNewFlour), 1), percent(fed.Inoculation(dough.OfMix), 1)))
		if st.ripe != nil {
			ripePart(p, u, *st.ripe)
		}
	}
	section(p, "Then")
	if !tenthGram(residue).IsZero() {
		p.para(2, "rounding to the scale "+leaves(residue, u))
	}
	p.para(2, u.mass(plan.Use)+" for the dough")
	if plan.KeepBack.Sign() > 0 {
		p.para(2, u.mass(plan.KeepBack)+" to keep: take it before you mix the dough")
	}
	if f.cultureGiven && plan.LeftOver.Sign() > 0 {
		p.para(2, u.mass(plan.LeftOver)+" of the culture at hand is left over: feed it and keep it, or bake with it")
	}
}

// ripePart prints when a levain is ripe.
func ripePart(p *page, u units, r ferment.Ripeness) {
	ripe, peak, past := r.Reached()
	if !ripe {
		p.para(2, "it does not get ripe within "+days(ferment.Horizon))
		return
	}
	p.para(2, "ripe "+span(r.From)+" after feeding")
	if peak {
		p.para(2, "highest after "+span(r.Peak))
	}
	if past {
		p.para(2, "usable until "+span(r.Until))
	} else {
		p.para(2, "usable for "+days(ferment.Horizon)+" or more after feeding")
	}
	for _, n := range r.Notes() {
		p.para(2, u.say(n))
	}
}

func days(d time.Duration) string { return fmt.Sprintf("%d days", int(d.Hours()/24)) }

// span prints a range of times.
func span(r quantity.TimeRange) string {
	return spell(r.Early) + " to " + spell(r.Late) + " (" + percent(r.Probability, 0) + "), likely " + spell(r.Likely)
}

// spell prints a time, in days where hours say little.
func spell(d time.Duration) string {
	switch {
	case d >= ferment.Horizon:
		return days(d) + " or more"
	case d >= 96*time.Hour:
		return days(d)
	}
	return quantity.FormatDuration(d.Round(time.Minute))
}

type stageData struct {
	Culture     quantity.Mass    `json:"culture"`
	Flour       quantity.Mass    `json:"flour"`
	Water       quantity.Mass    `json:"water"`
	Inoculation quantity.Percent `json:"inoculation_of_new_flour"`
	OfMix       quantity.Percent `json:"inoculation_of_mix"`
	Ripe        *rangeData       `json:"ripe,omitempty"`
	Peak        *rangeData       `json:"peak,omitempty"`
	Until       *rangeData       `json:"usable_until,omitempty"`
}

type levainAnswer struct {
	Format   string        `json:"format"`
	Reached  bool          `json:"reached"`
	Why      string        `json:"why,omitempty"`
	Missing  quantity.Mass `json:"missing_culture"`
	Stages   []stageData   `json:"stages"`
	Use      quantity.Mass `json:"use"`
	Keep     quantity.Mass `json:"keep"`
	LeftOver quantity.Mass `json:"left_over"`
	Residue  quantity.Mass `json:"rounding"`
}

func levainData(f levainFlags, plan dough.LevainPlan, stages []stage, residue quantity.Mass) levainAnswer {
	out := levainAnswer{
		Format: "maslin levain 1", Reached: plan.Reached, Why: plan.Why.String(), Missing: plan.Missing, Stages: []stageData{}, Use: plan.Use, Keep: plan.KeepBack, Residue: residue,
	}
	if f.cultureGiven {
		out.LeftOver = plan.LeftOver
	}
	for _, st := range stages {
		d := stageData{
			Culture: st.fed.Starter.Mass, Flour: st.fed.Flour, Water: st.fed.Water,
			Inoculation: st.fed.Inoculation(dough.OfNewFlour), OfMix: st.fed.Inoculation(dough.OfMix),
		}
		if st.ripe != nil {
			d.Ripe, d.Peak, d.Until = rangeOf(st.ripe.From), rangeOf(st.ripe.Peak), rangeOf(st.ripe.Until)
		}
		out.Stages = append(out.Stages, d)
	}
	return out
}
