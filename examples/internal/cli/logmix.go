package cli

import (
	"context"
	"strings"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/examples/internal/bakelog"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule/bakeday"
	"github.com/spf13/cobra"
)

func newLogMix(s System) *cobra.Command {
	var f noteFlags
	m := bakelog.Mix{}
	cmd := &cobra.Command{
		Use:   "mix [FILE]",
		Short: "A dough that left the mixer: its temperature, and what made it so",
		Long: `mix logs a dough as it leaves the mixer. Only --dough is needed. With a bake FILE what the dough
is made of comes from the file. The temperatures of flour, water and levain with the minutes
teach the mixer; levain or yeast, hydration and room, together with when the dough was ready,
teach the culture.`,
		Example: `  maslin log mix hall-kitchen.toml --dough 25.5C --flour 21C --water 17C --levain 22C --slow 3m --fast 8m
  maslin log mix --bread rolls --dough 25C --room 22C --yeast "0.8 % instant" --hydration 60% --rise 100%`,
		Args: cobra.MaximumNArgs(1),
	}
	f.register(cmd)
	in := f.in
	in.value(&m.Dough, "dough", "TEMPERATURE", "of the dough when the mixer stopped", "mix.dough")
	in.value(&m.Flour, "flour", "TEMPERATURE", "of the flour", "mix.flour")
	in.value(&m.Water, "water", "TEMPERATURE", "of the water poured", "mix.water")
	in.value(&m.Levain, "levain", "TEMPERATURE", "of the levain", "mix.levain")
	in.value(&m.Room, "room", "TEMPERATURE", "of the room where the dough stands", "mix.room")
	in.value(&m.Bowl, "bowl", "TEMPERATURE", "of the bowl before mixing (as the room)", "mix.bowl")
	in.value(&m.Slow, "slow", "TIME", "mixed at slow speed", "mix.slow")
	in.value(&m.Fast, "fast", "TIME", "mixed at fast speed", "mix.fast")
	in.word(&m.Mixer, wordsOf(quantity.Values[mixing.MixerKind]()...), "mixer", "how it was mixed", "mix.mixer")
	in.value(&m.FlourWeight, "flour-weight", "MASS", "flour weighed for one batch", "mix.flour_weight")
	in.value(&m.WaterWeight, "water-weight", "MASS", "water poured for one batch", "mix.water_weight")
	in.value(&m.LevainWeight, "levain-weight", "MASS", "levain for one batch", "mix.levain_weight")
	in.value(&m.Weight, "weight", "MASS", "of the whole dough in its tub", "mix.weight")
	in.value(&m.Inoculation, "inoculation", "PERCENT", "flour in the levain, of all flour", "mix.inoculation")
	in.each(func(text string) error {
		y, kind, err := yeastOf(text)
		m.Yeast, m.YeastKind = y.Amount, kind
		return err
	}, "yeast", "YEAST", `instead of a levain, such as "0.6 % instant"`, "mix.yeast", "mix.yeast_kind")
	in.value(&m.Salt, "salt", "PERCENT", "of the flour", "mix.salt")
	in.value(&m.Hydration, "hydration", "PERCENT", "water, of the flour", "mix.hydration")
	in.value(&m.WholeGrain, "whole-grain", "PERCENT", "whole grain, of the flour", "mix.whole_grain")
	in.value(&m.Rise, "rise", "PERCENT", "that the dough is to have when it is shaped", "mix.rise")
	in.paths["value"], in.paths["mix"] = "dough", "dough"
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		var zone *time.Location
		if !in.given("dough") {
			in.fault("dough", "", `the temperature of the dough when the mixer stopped, such as "25.5 °C"`, quantity.ErrRequired)
		}
		if len(args) == 1 && len(in.faults) == 0 {
			l, day, err := f.planned(cmd.Context(), s, args[0])
			if err != nil {
				return err
			}
			zone = l.clock.Zone
			if f.bread == "" {
				f.bread = l.bake.Name
			}
			m = fromPlan(m, day)
		}
		e, err := f.entry(s, bakelog.KindMix, zone)
		if err != nil {
			return err
		}
		e.Mix = &m
		return f.write(s, e, func(e bakelog.Entry) ([]string, *bakeday.Range, error) { return f.mixSays(s, e) })
	}
	return cmd
}

// planned is the plan of a bake file at the moment of an observation.
func (f *noteFlags) planned(ctx context.Context, s System, name string) (loaded, bakeday.Day, error) {
	l, err := load(s, name, "")
	if err != nil {
		return l, bakeday.Day{}, err
	}
	if l.clock.Now, err = f.clock(s, l.clock.Zone); err != nil {
		return l, bakeday.Day{}, err
	}
	day, err := l.bake.Plan(ctx, l.clock)
	if err != nil {
		return l, day, complain(name, located(l.file, err))
	}
	return l, day, nil
}

// fromPlan fills what was not given with what the plan says the dough is made of.
func fromPlan(m bakelog.Mix, day bakeday.Day) bakelog.Mix {
	b := day.Rising.Bulk.Bulk()
	or := func(to *quantity.Percent, from quantity.Percent) {
		if to.IsZero() {
			*to = tenthPercent(from)
		}
	}
	weigh := func(to *quantity.Mass, from quantity.Mass) {
		if to.IsZero() {
			*to = rounded(from)
		}
	}
	mixes := int64(max(1, day.Water.Mixes))
	var flour, levain quantity.Mass
	for _, l := range day.Batch.FinalDough() {
		switch l.Role {
		case dough.RoleFlour:
			flour = flour.Add(l.Mass)
		case dough.RolePreferment:
			levain = levain.Add(l.Mass)
		}
	}
	weigh(&m.FlourWeight, flour.Divide(mixes))
	weigh(&m.WaterWeight, day.Water.Pour)
	weigh(&m.LevainWeight, levain.Divide(mixes))
	weigh(&m.Weight, day.Batch.Dough())
	if m.Mixer == 0 {
		m.Mixer = day.Bake.Mixing.Mixer
	}
	if m.Yeast.IsZero() && m.Inoculation.IsZero() {
		if b.Yeast.Kind != ferment.NoYeast {
			m.Yeast = b.Yeast.Amount
			m.YeastKind = map[ferment.YeastKind]string{ferment.FreshYeast: "fresh", ferment.ActiveDryYeast: "active dry", ferment.InstantYeast: "instant"}[b.Yeast.Kind]
		}
		m.Inoculation = tenthPercent(b.Inoculation)
	}
	or(&m.Salt, day.Batch.SaltShare())
	or(&m.Hydration, day.Batch.Hydration())
	or(&m.WholeGrain, day.Batch.WholeGrain())
	or(&m.Rise, day.Rising.ShapeAt)
	if m.Room.IsZero() {
		for _, f := range day.Water.Factors {
			if f.Kind == mixing.RoomFactor {
				m.Room = tenth(f.Temperature)
			}
		}
	}
	return m
}

// mixSays tells how much the mixer warmed the dough, and when the dough is ready.
func (f *noteFlags) mixSays(s System, e bakelog.Entry) ([]string, *bakeday.Range, error) {
	u := units{f.us}
	var says []string
	b := bakelog.Bake{Bread: e.Bread, Mixed: e.At, Mix: *e.Mix}
	if batch, why := b.Batch(); why == "" {
		learned, err := mixing.Log{Kind: e.Mix.Mixer, Batches: []mixing.Logged{batch}}.Learn()
		if err == nil {
			prediction, err := learned.Predict(batch, quantity.NewPercent(80))
			if err == nil {
				rise := batch.Dough.Sub(prediction.Dough.Likely.Add(prediction.Rise.Neg()))
				says = append(says, "mixing warmed it by about "+u.delta(rise)+" above where the ingredients meet")
			}
		}
	} else if e.Mix.Mixer != 0 {
		says = append(says, "it teaches nothing about the mixer: "+why)
	}
	bulk, missing, err := e.Mix.Bulk(nil)
	switch {
	case err != nil:
		return append(says, "no range: "+err.Error()), nil, nil
	case len(missing) > 0:
		return append(says, "it teaches nothing about the culture yet: not logged: "+strings.Join(missing, ", ")), nil, nil
	case e.Mix.Rise.IsZero():
		return says, nil, nil
	}
	_, content, err := f.read(s)
	if err != nil {
		return nil, nil, err
	}
	bulk.Rise = e.Mix.Rise
	if bulk.Culture, err = cultureBefore(bakelog.Group(content.Entries), b); err != nil {
		return nil, nil, err
	}
	est, err := bulk.Estimate()
	if err != nil {
		return append(says, "no range: "+err.Error()), nil, nil
	}
	r := bakeday.NewRange(est.Ready())
	return append(says, percent(bulk.Rise, 0)+" risen "+est.Ready().String()+" after mixing", clockRange(est.Ready(), e.At)), &r, nil
}
