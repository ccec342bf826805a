package cli

import (
	"fmt"
	"strconv"

	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule/bakeday"
	"github.com/spf13/cobra"
)

type mixerFlags struct {
	output
	in *asked
	c  mixing.Mix
}

func newMixer(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "mixer [FILE]",
		Short: "Does the dough fit the mixer, how to split it, how long to knead",
		Long: `mixer says whether a dough fits a mixer by its bowl and by how stiff the dough is, how many
batches to make of it when it does not, at which speeds and about how long to knead, and
what to take care of. With a bake file it takes dough and mixer from there; flags go before
what the file says. The manual of your own machine is always right: give its figure with
--rated.

Exit status: 0 answered; 1 nothing is published for this kind of mixer; 2 bad input.`,
		Example: `  maslin mixer examples/bakes/hall-kitchen.toml
  maslin mixer --mixer planetary --bowl 7L --dough 4kg --flour 2.3kg --water 1.6kg`,
	}
	f := mixerFlags{in: ask(cmd)}
	in := f.in
	in.word(&f.c.Mixer, wordsOf(quantity.Values[mixing.MixerKind]()...), "mixer", "how you mix", "Mixer")
	in.value(&f.c.Bowl, "bowl", "VOLUME", "of the mixer's bowl", "Bowl")
	in.value(&f.c.Dough, "dough", "MASS", "all the dough", "Dough")
	in.value(&f.c.Flour, "flour", "MASS", "all flour in it, the levain's included", "Flour")
	in.value(&f.c.Water, "water", "MASS", "all water in it, the levain's included", "Water")
	in.word(&f.c.Kind, wordsOf(quantity.Values[mixing.DoughKind]()...), "kind", "of dough", "Kind")
	cmd.Flags().BoolVar(&f.c.HighGluten, "high-gluten", false, "a strong flour, of about 13.5 % protein or more")
	in.value(&f.c.WaterTemperature, "water-temperature", "TEMPERATURE", "of the water poured: cold water makes a stiffer dough", "WaterTemperature")
	in.value(&f.c.Rated, "rated", "MASS", "what the machine's manual gives for this dough", "Rated")
	f.register(cmd)
	cmd.Args = func(cmd *cobra.Command, args []string) error {
		if len(args) > 1 {
			return badInput("maslin mixer: got %d files, want one, or flags only", len(args))
		}
		return nil
	}
	cmd.RunE = func(_ *cobra.Command, args []string) error { return runMixer(s, args, f) }
	return cmd
}

func runMixer(s System, args []string, f mixerFlags) error {
	if err := f.check(); err != nil {
		return err
	}
	in := f.in
	if len(args) == 1 {
		file, err := readFormula(args[0])
		if err != nil {
			return err
		}
		batch, err := file.bake.Batch(nil)
		if err != nil {
			return file.complain(err)
		}
		f.fill(batch, file.bake.Mixing.Mixer, file.bake.Mixing.Bowl)
	}
	r, err := f.c.Fit()
	if wrong := in.complain(err); wrong != nil {
		return wrong
	}
	return s.show(f.output, answer{
		page: func(p *page, u units) { mixerPage(p, u, f.c, r) }, data: mixerData(r), workings: []working.Working{r.Working()}, cautions: r.Cautions,
		no: r.Fullness == mixing.Unknown,
	})
}

// fill takes from a bake what no flag says.
func (f *mixerFlags) fill(b dough.Batch, kind mixing.MixerKind, bowl quantity.Volume) {
	in := f.in
	if !in.given("mixer") {
		f.c.Mixer = kind
	}
	if !in.given("bowl") {
		f.c.Bowl = bowl
	}
	if !in.given("dough") {
		f.c.Dough = b.Dough()
	}
	if !in.given("flour") {
		f.c.Flour = b.Flour()
	}
	if !in.given("water") {
		f.c.Water = b.Water()
	}
	if !in.given("kind") {
		f.c.Kind = bakeday.DoughKind(b)
	}
}

func mixerPage(p *page, u units, c mixing.Mix, r mixing.BowlFit) {
	p.para(0, fmt.Sprintf("%s of dough, mixed %s: %s", u.mass(rounded(c.Dough)), howMixed(c, u), r.Fullness))
	section(p, "The dough and the bowl")
	rows := [][]string{{"water over flour", percent(r.Absorption, 1)}}
	if r.MostHigh.Sign() > 0 {
		rows = append(rows, []string{"most, by the published charts", u.mass(rounded(r.MostLow)) + " to " + u.mass(rounded(r.MostHigh))})
	}
	if r.Least.Sign() > 0 {
		rows = append(rows, []string{"least, for the hook to catch it", u.mass(rounded(r.Least))})
	}
	if r.Batches > 1 {
		rows = append(rows, []string{"mix", strconv.Itoa(r.Batches) + " batches of " + u.mass(rounded(r.Each))})
	}
	if c.Mixer == mixing.Planetary || c.Mixer == mixing.Spiral {
		second := "not with so stiff a dough"
		if r.SecondSpeed {
			second = "allowed"
		}
		rows = append(rows, []string{"second speed", second})
	}
	p.rows(2, "ll", rows)
	for _, n := range r.Notes {
		p.para(2, u.say(n))
	}
	if len(r.Times) > 0 || r.Ready != "" {
		section(p, "Kneading, as published")
		for _, t := range r.Times {
			p.para(2, t.String())
		}
		if r.Ready != "" {
			p.para(2, "ready when "+r.Ready)
		}
	}
}

func howMixed(c mixing.Mix, u units) string {
	switch {
	case c.Mixer == mixing.Hand:
		return "by hand"
	case c.Bowl.IsZero():
		return "in a " + c.Mixer.String() + " mixer"
	}
	unit := quantity.Liter
	if u.us {
		unit = quantity.USQuart
	}
	return "in a " + c.Mixer.String() + " mixer of " + c.Bowl.Text(unit, 1)
}

type kneadingData struct {
	Speed string           `json:"speed"`
	From  quantity.Elapsed `json:"from"`
	To    quantity.Elapsed `json:"to"`
}

type mixerAnswer struct {
	Format      string           `json:"format"`
	Verdict     mixing.Fullness  `json:"verdict"`
	Absorption  quantity.Percent `json:"water_over_flour"`
	MostLow     quantity.Mass    `json:"most_low"`
	MostHigh    quantity.Mass    `json:"most_high"`
	Least       quantity.Mass    `json:"least"`
	Batches     int              `json:"batches"`
	Each        quantity.Mass    `json:"each"`
	SecondSpeed bool             `json:"second_speed"`
	Kneading    []kneadingData   `json:"kneading"`
	Ready       string           `json:"ready"`
	Notes       []string         `json:"notes"`
	Cautions    []cautionData    `json:"cautions"`
}

func mixerData(r mixing.BowlFit) mixerAnswer {
	out := mixerAnswer{
		"maslin mixer 1", r.Fullness, r.Absorption, r.MostLow, r.MostHigh, r.Least, r.Batches, r.Each, r.SecondSpeed, []kneadingData{}, r.Ready, metric(r.Notes), cautionsData(r.Cautions),
	}
	for _, t := range r.Times {
		out.Kneading = append(out.Kneading, kneadingData{t.Speed, t.From, t.To})
	}
	return out
}
