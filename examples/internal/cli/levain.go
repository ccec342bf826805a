package cli

import (
	"strings"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
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
	refuse := &quantity.InputError{Got: quantity.Excerpt(text), Want: quantity.Tell("cli.want_culture_flour_and_water_1", "culture, flour and water as 1:5:5"), Err: quantity.ErrUnit}
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
			in.fault("culture", "", quantity.Tell("cli.want_culture_at_hand_or_inoculation", "the culture at hand, or --inoculation or --ratio to be told how much it takes"), quantity.ErrRequired)
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
	if !f.cultureGiven {
		weighed.LeftOver = quantity.Mass{}
	}
	return s.tell(f.output, fedLevain{Plan: weighed, Rounding: residue, Ripe: stages}, plan.Reached)
}

// fedLevain is a plan of feedings with when each of them is ripe.
type fedLevain struct {
	Plan     dough.LevainPlan   `json:"plan"`
	Rounding quantity.Mass      `json:"rounding,omitzero"`
	Ripe     []ferment.Ripeness `json:"ripe,omitempty"`
}

// Report tells the feedings, each with its ripeness behind it.
func (l fedLevain) Report() report.Report {
	r := l.Plan.Report()
	stage := 0
	for i := range r.Sections {
		if r.Sections[i].Key != "feeding" || stage >= len(l.Ripe) {
			continue
		}
		ripe := l.Ripe[stage]
		stage++
		r.Sections[i].Blocks = append(r.Sections[i].Blocks, report.List(append([]working.Message{ripe.Message()}, ripe.Notes()...)))
		r.Cautions = ripe.Cautions()
	}
	return r
}

// Workings are those of the feedings and of each ripeness.
func (l fedLevain) Workings() []working.Working {
	out := []working.Working{l.Plan.Working()}
	for _, r := range l.Ripe {
		out = append(out, r.Working())
	}
	return out
}

// ripen asks when each stage is ripe.
func (f levainFlags) ripen(feedings []dough.Feeding, b dough.LevainBuild) ([]ferment.Ripeness, error) {
	var out []ferment.Ripeness
	for i, fed := range feedings {
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
			out = append(out, r)
		}
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
