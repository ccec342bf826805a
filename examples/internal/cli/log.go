package cli

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"strings"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/examples/internal/bakelog"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule/bakeday"
	"github.com/spf13/cobra"
)

// noteFlags are those of every command that writes to the log.
type noteFlags struct {
	output
	logFlags
	in        *asked
	at, bread string
}

func (f *noteFlags) register(cmd *cobra.Command) {
	f.in = ask(cmd)
	cmd.Flags().StringVar(&f.at, "at", "", "`TIME` of it, such as 10:40 (now)")
	cmd.Flags().StringVar(&f.bread, "bread", "", "`NAME` of the bread (the one mixed last)")
	f.output.register(cmd)
	f.logFlags.register(cmd)
}

// entry starts an entry: when it was, and of what.
func (f *noteFlags) entry(s System, kind bakelog.Kind, zone *time.Location) (bakelog.Entry, error) {
	now, err := f.clock(s, zone)
	if err != nil {
		return bakelog.Entry{}, err
	}
	e := bakelog.Entry{Version: bakelog.Version, At: now.Truncate(time.Second), Kind: kind, Bread: strings.TrimSpace(f.bread)}
	if f.at == "" {
		return e, nil
	}
	if e.At, err = timeIn(f.at, now); err != nil {
		return e, badInput("%s: --at: %s", f.in.cmd.CommandPath(), err)
	}
	if e.At.After(now.Add(time.Minute)) {
		return e, badInput("%s: --at: got %s, want a time that is not in the future", f.in.cmd.CommandPath(), quantity.Excerpt(f.at))
	}
	return e, nil
}

// written is the answer of a command that wrote to the log.
type written struct {
	Format  string          `json:"format"`
	Log     string          `json:"log"`
	Entries []bakelog.Entry `json:"logged"`
	Says    []string        `json:"says"`
	Ready   *bakeday.Range  `json:"ready,omitempty"` // of the dough, after mixing
}

const writtenFormat = "maslin log 1"

// write appends an entry and prints it back.
func (f *noteFlags) write(s System, e bakelog.Entry, more func(e bakelog.Entry) (says []string, ready *bakeday.Range, err error)) error {
	if err := f.in.complain(nil); err != nil {
		return err
	}
	if err := f.output.check(); err != nil {
		return err
	}
	for _, kind := range bakelog.Kinds() { // the log's fields are the flags of the command
		f.in.paths[string(kind)] = f.in.paths["value"]
	}
	if err := e.Check(); err != nil {
		return f.in.complain(err)
	}
	name, err := f.append(s, e)
	if err != nil {
		return f.in.complain(err)
	}
	data := written{Format: writtenFormat, Log: name, Entries: []bakelog.Entry{e}, Says: []string{}}
	if more != nil {
		says, ready, err := more(e)
		if err != nil {
			return err
		}
		data.Says, data.Ready = append(data.Says, says...), ready
	}
	return s.show(f.output, answer{data: data, page: func(p *page, u units) {
		p.para(0, "logged: "+entryLine(e, u))
		for _, line := range data.Says {
			p.para(2, line)
		}
	}})
}

func newLog(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "log",
		Short: "Keep what you observe: dough temperature, rise, when it was ready, core, weights, notes",
		Long: `log keeps what you observe in a file that only ever grows, one line for each observation. From
it "maslin learn" learns your mixer, your culture and your oven, and the ranges narrow.

The file is --log FILE, or MASLIN_LOG, or maslin/bakes.jsonl in your data folder
(XDG_DATA_HOME, else ~/.local/share).`,
		Example: `  maslin log mix hall-kitchen.toml --dough 25.5C --flour 21C --water 17C --levain 22C --slow 3m --fast 8m
  maslin log rise 15% --at 18:30
  maslin log ready 28%
  maslin log core 94.1C --after 42m
  maslin log weights --in 897g --out 781g
  maslin log note "crust a little pale"
  maslin log show`,
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				return nil
			}
			var known []string
			for _, c := range cmd.Commands() {
				known = append(known, c.Name())
			}
			return badInput("maslin log: got %s, want one of %s", quantity.Excerpt(printable(args[0])), strings.Join(known, ", "))
		},
		RunE: func(cmd *cobra.Command, _ []string) error { return s.showHelp(cmd) },
	}
	cmd.AddCommand(newLogMix(s), newLogRise(s), newLogReady(s), newLogCore(s), newLogWeights(s), newLogNote(s), newLogShow(s), newLogImport(s))
	return cmd
}

// oneValue wants one argument and says what it is.
func oneValue(what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		example, _, _ := strings.Cut(strings.TrimSpace(cmd.Example), "\n")
		switch {
		case len(args) == 0:
			return badInput("%s: want %s; for example: %s", cmd.CommandPath(), what, example)
		case len(args) > 1:
			return badInput("%s: got %d values, want one: %s; for example: %s", cmd.CommandPath(), len(args), what, example)
		}
		return nil
	}
}

func newLogRise(s System) *cobra.Command {
	var f noteFlags
	var from, to quantity.Length
	cmd := &cobra.Command{
		Use:     "rise [PERCENT]",
		Short:   "How far the dough has risen; answers with the new range",
		Example: "  maslin log rise 30% --at 10:40\n  maslin log rise --from 12cm --to 15.6cm",
		Args:    cobra.ArbitraryArgs,
	}
	f.register(cmd)
	rise := bakelog.Rise{}
	f.in.value(&from, "from", "LENGTH", "height of the dough after mixing, in a straight-sided container", "Start")
	f.in.value(&to, "to", "LENGTH", "its height now", "Now")
	f.in.value(&rise.Error, "error", "PERCENT", "how far off the reading may be, in points of rise (5 %)", "rise.error")
	f.in.paths["value"], f.in.paths["rise.rise"] = "", ""
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		heights := f.in.given("from") || f.in.given("to")
		switch {
		case heights && len(args) == 0:
			var err error
			if rise.Rise, err = ferment.RiseFromHeights(from, to); err != nil || len(f.in.faults) > 0 {
				return f.in.complain(err)
			}
		case heights:
			return badInput("maslin log rise: want a percentage or --from and --to, not both")
		default:
			if err := oneValue(`a rise such as 30%, or --from and --to`)(cmd, args); err != nil {
				return err
			}
			if err := rise.Rise.UnmarshalText([]byte(args[0])); err != nil {
				return argument("log rise", err)
			}
		}
		rise.Rise = tenthPercent(rise.Rise)
		e, err := f.entry(s, bakelog.KindRise, nil)
		if err != nil {
			return err
		}
		e.Rise = &rise
		return f.write(s, e, func(e bakelog.Entry) ([]string, *bakeday.Range, error) { return f.newRange(s, e) })
	}
	return cmd
}

// argument words the fault of an argument.
func argument(command string, err error) error {
	for _, e := range quantity.InputErrors(err) {
		moved := *e
		moved.Path = ""
		return badInput("maslin %s: %s", command, strings.TrimPrefix(moved.Error(), ": "))
	}
	return badInput("maslin %s: %s", command, err)
}

// newRange says when the dough that was just read is ready now.
func (f *noteFlags) newRange(s System, e bakelog.Entry) ([]string, *bakeday.Range, error) {
	_, content, err := f.read(s)
	if err != nil {
		return nil, nil, err
	}
	bakes := bakelog.Group(content.Entries)
	b, ok := bakeOf(bakes, e)
	if !ok {
		return []string{"no dough was mixed before it in the log, so it teaches nothing yet: see maslin log mix --help"}, nil, nil
	}
	bulk, missing, err := b.Mix.Bulk(nil)
	if len(missing) > 0 || err != nil || b.Mix.Rise.IsZero() {
		return []string{fmt.Sprintf("%s after mixing; for a new range see maslin now FILE --rise", quantity.FormatDuration(e.At.Sub(b.Mixed).Round(time.Minute)))}, nil, nil
	}
	bulk.Rise = b.Mix.Rise
	if bulk.Culture, err = cultureBefore(bakes, b); err != nil {
		return nil, nil, err
	}
	progress, err := followed(bulk, b)
	if err != nil {
		return []string{"no new range: " + err.Error()}, nil, nil
	}
	r := bakeday.NewRange(progress.Now.Ready())
	start := b.Mixed.In(e.At.Location())
	return []string{percent(bulk.Rise, 0) + " risen " + progress.String() + " after mixing", clockRange(progress.Now.Ready(), start)}, &r, nil
}

// bakeOf finds the dough an entry belongs to.
func bakeOf(bakes []bakelog.Bake, e bakelog.Entry) (bakelog.Bake, bool) {
	for i := len(bakes) - 1; i >= 0; i-- {
		b := bakes[i]
		if (e.Bread == "" || e.Bread == b.Bread) && !b.Mixed.After(e.At) && e.At.Sub(b.Mixed) < 5*24*time.Hour {
			return b, true
		}
	}
	return bakelog.Bake{}, false
}

// cultureBefore is what was known of the culture when the dough was mixed.
func cultureBefore(bakes []bakelog.Bake, b bakelog.Bake) (ferment.Culture, error) {
	var before []bakelog.Bake
	for _, one := range bakes {
		if one.Mixed.Before(b.Mixed) {
			before = append(before, one)
		}
	}
	c, ok, err := bakelog.Culture(before, b.Mix.Leavening())
	if err != nil || !ok {
		return ferment.Culture{}, err
	}
	return c.Lesson.Culture, nil
}

// followed is the estimate of a dough brought up to date by what was read of it.
func followed(bulk ferment.Bulk, b bakelog.Bake) (ferment.Progress, error) {
	e, err := bulk.Estimate()
	if err != nil {
		return ferment.Progress{}, err
	}
	var readings []ferment.RiseReading
	for _, r := range b.Rises {
		one := ferment.RiseReading{At: r.At.Sub(b.Mixed), Rise: r.Rise.Rise, Error: r.Rise.Error}
		if n := len(readings); n > 0 && readings[n-1].At >= one.At {
			readings[n-1] = one // read twice in the same minute: the later one counts
			continue
		}
		if one.At >= time.Second {
			readings = append(readings, one)
		}
	}
	if len(readings) == 0 {
		return ferment.Progress{Now: e, Before: e.Ready()}, nil
	}
	return e.Update(readings...)
}

func newLogReady(s System) *cobra.Command {
	var f noteFlags
	var probe string
	cmd := &cobra.Command{
		Use:     "ready PERCENT",
		Short:   "When the dough was really ready, and how far it had risen: what a culture is learned from",
		Example: "  maslin log ready 28% --at 19:40\n  maslin log ready 75% --readings probe.csv",
		Args:    oneValue("how far it had risen, such as 28%"),
	}
	f.register(cmd)
	cmd.Flags().StringVar(&probe, "readings", "", "`FILE` of a probe in the dough, from mixing on")
	f.in.paths["ready.readings"] = "readings"
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		ready := bakelog.Ready{}
		if err := ready.Rise.UnmarshalText([]byte(args[0])); err != nil {
			return argument("log ready", err)
		}
		if probe != "" {
			r, err := readReadings(probe)
			if err == nil {
				_, err = r.History()
				if err != nil {
					err = badInput("%s", readingFaults(probe, err))
				}
			}
			if err != nil {
				return err
			}
			for _, one := range r.Points {
				ready.Readings = append(ready.Readings, bakelog.Reading{After: quantity.Elapsed(one.At), Temperature: one.Temperature})
			}
		}
		e, err := f.entry(s, bakelog.KindReady, nil)
		if err != nil {
			return err
		}
		e.Ready = &ready
		return f.write(s, e, func(e bakelog.Entry) ([]string, *bakeday.Range, error) { return f.held(s, e) })
	}
	return cmd
}

// held says how the range did, and whether the bake can be learned from.
func (f *noteFlags) held(s System, e bakelog.Entry) ([]string, *bakeday.Range, error) {
	_, content, err := f.read(s)
	if err != nil {
		return nil, nil, err
	}
	bakes := bakelog.Group(content.Entries)
	b, ok := bakeOf(bakes, e)
	if !ok {
		return []string{"no dough was mixed before it in the log, so it teaches nothing: see maslin log mix --help"}, nil, nil
	}
	one, why := b.Dough()
	if why != "" {
		return []string{"it teaches nothing about the culture: " + why}, nil, nil
	}
	bulk := one.Bulk
	if bulk.Culture, err = cultureBefore(bakes, b); err != nil {
		return nil, nil, err
	}
	said, err := bulk.Estimate()
	if err != nil {
		return nil, nil, err
	}
	verdict := "inside"
	if !said.Ready().Contains(one.Took) {
		verdict = "outside"
	}
	r := bakeday.NewRange(said.Ready())
	return []string{fmt.Sprintf("it took %s, %s the range from the bakes before: %s", quantity.FormatDuration(one.Took.Round(time.Minute)), verdict, said.Ready())}, &r, nil
}

func newLogCore(s System) *cobra.Command {
	var f noteFlags
	core := bakelog.Core{}
	cmd := &cobra.Command{
		Use:     "core TEMPERATURE",
		Short:   "A reading of the core in the oven",
		Example: "  maslin log core 94.1C --after 42m --out",
		Args:    oneValue("the core temperature, such as 94.1C"),
	}
	f.register(cmd)
	f.in.value(&core.After, "after", "TIME", "in the oven", "core.after")
	cmd.Flags().BoolVar(&core.Out, "out", false, "the loaf was done and taken out")
	f.in.paths["core.core"] = ""
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		if err := core.Core.UnmarshalText([]byte(args[0])); err != nil {
			return argument("log core", err)
		}
		e, err := f.entry(s, bakelog.KindCore, nil)
		if err != nil {
			return err
		}
		e.Core = &core
		return f.write(s, e, nil)
	}
	return cmd
}

func newLogWeights(s System) *cobra.Command {
	var f noteFlags
	w := bakelog.Weights{}
	cmd := &cobra.Command{
		Use:     "weights",
		Short:   "A loaf weighed as dough and when cool: what the oven takes",
		Example: "  maslin log weights --in 897g --out 781g",
		Args:    flagsOnly,
	}
	f.register(cmd)
	f.in.value(&w.In, "in", "MASS", "of the dough that went in", "weights.in")
	f.in.value(&w.Out, "out", "MASS", "of the bread when cool", "weights.out")
	f.in.word(&w.Style, wordsOf(bake.Styles()...), "style", "kind of bread (lean hearth)", "weights.style")
	cmd.RunE = func(*cobra.Command, []string) error {
		e, err := f.entry(s, bakelog.KindWeights, nil)
		if err != nil {
			return err
		}
		e.Weights = &w
		return f.write(s, e, func(e bakelog.Entry) ([]string, *bakeday.Range, error) {
			loss := quantity.NewPercent(100 * (1 - w.Out.Grams()/w.In.Grams()))
			return []string{"lost " + percent(loss, 1) + " of the dough"}, nil, nil
		})
	}
	return cmd
}

func newLogNote(s System) *cobra.Command {
	var f noteFlags
	cmd := &cobra.Command{
		Use:     "note TEXT",
		Short:   "Anything else",
		Example: `  maslin log note "crust a little pale"`,
		Args:    oneValue("a text in quotation marks"),
	}
	f.register(cmd)
	f.in.paths["note"] = ""
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		e, err := f.entry(s, bakelog.KindNote, nil)
		if err != nil {
			return err
		}
		e.Note = args[0]
		return f.write(s, e, nil)
	}
	return cmd
}

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
	in.word(&m.Mixer, wordsOf(mixing.Hand, mixing.Planetary, mixing.Spiral, mixing.Processor), "mixer", "how it was mixed", "mix.mixer")
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
	day, err := bakeday.Plan(ctx, l.bake, l.clock)
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
		for _, f := range day.Water.Factors.Others {
			if f.Name == "room" {
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
		learned, err := mixing.Learn(mixing.Log{Kind: e.Mix.Mixer, Batches: []mixing.Logged{batch}})
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

func newLogShow(s System) *cobra.Command {
	var f logFlags
	var o output
	var bread string
	var last int
	cmd := &cobra.Command{
		Use: "show", Short: "What is in the log", Example: "  maslin log show --last 20\n  maslin log show --bread rolls", Args: flagsOnly,
	}
	in := ask(cmd)
	in.number(&last, "last", "only the last so many observations")
	cmd.Flags().StringVar(&bread, "bread", "", "only those of the bread with this `NAME`")
	o.register(cmd)
	f.register(cmd)
	cmd.RunE = func(*cobra.Command, []string) error {
		if last < 0 {
			in.fault("last", fmt.Sprint(last), "a number of observations", quantity.ErrOutOfRange)
		}
		if err := in.complain(nil); err != nil {
			return err
		}
		name, content, err := f.read(s)
		if err != nil {
			return err
		}
		now, err := f.clock(s, nil)
		if err != nil {
			return err
		}
		entries := []bakelog.Entry{}
		for _, e := range content.Entries {
			if bread == "" || e.Bread == bread {
				entries = append(entries, e)
			}
		}
		if last > 0 && len(entries) > last {
			entries = entries[len(entries)-last:]
		}
		data := struct {
			Format   string          `json:"format"`
			Log      string          `json:"log"`
			Entries  []bakelog.Entry `json:"entries"`
			Problems int             `json:"unreadable_lines"`
		}{writtenFormat, name, entries, len(content.Problems) + content.More}
		return s.show(o, answer{data: data, page: func(p *page, u units) { logPage(p, name, entries, now.Location(), u) }})
	}
	return cmd
}

func logPage(p *page, name string, entries []bakelog.Entry, zone *time.Location, u units) {
	if len(entries) == 0 {
		p.para(0, "Nothing is logged in "+printable(name)+". For example: maslin log rise 30%")
		return
	}
	day, bread := "", ""
	for _, e := range entries {
		at := e.At.In(zone)
		if d := at.Format("Mon 2 Jan 2006"); d != day {
			p.heading(d)
			day, bread = d, ""
		}
		if e.Bread != bread && e.Bread != "" {
			p.para(2, printable(e.Bread))
			bread = e.Bread
		}
		p.hang("    "+at.Format("15:04")+" ", "            ", entryWords(e, u))
	}
}

// entryLine is an entry with its time and bread.
func entryLine(e bakelog.Entry, u units) string {
	text := e.At.Format("Mon 2 Jan 15:04") + ", "
	if e.Bread != "" {
		text += printable(e.Bread) + ": "
	}
	return text + entryWords(e, u)
}

func entryWords(e bakelog.Entry, u units) string {
	switch e.Kind {
	case bakelog.KindMix:
		return mixWords(*e.Mix, u)
	case bakelog.KindRise:
		return "risen " + percent(e.Rise.Rise, 0)
	case bakelog.KindReady:
		text := "ready, risen " + percent(e.Ready.Rise, 0)
		if n := len(e.Ready.Readings); n > 0 {
			text += fmt.Sprintf(", with %d readings of the probe", n)
		}
		return text
	case bakelog.KindCore:
		text := "core " + u.temperature(e.Core.Core, 1)
		if e.Core.After > 0 {
			text += " after " + e.Core.After.String()
		}
		if e.Core.Out {
			text += ", taken out"
		}
		return text
	case bakelog.KindWeights:
		return "weights: " + u.mass(e.Weights.In) + " in, " + u.mass(e.Weights.Out) + " out, " + e.Weights.Style.String()
	case bakelog.KindNote:
		return "note: " + printable(e.Note)
	case bakelog.KindPlan:
		return "following the plan for " + e.Plan.Wanted.In(e.At.Location()).Format("Mon 2 Jan 15:04")
	case bakelog.KindStep:
		return "done: " + printable(e.Step)
	}
	return string(e.Kind)
}

func mixWords(m bakelog.Mix, u units) string {
	words := []string{"mixed, dough " + u.temperature(m.Dough, 1)}
	for _, t := range []struct {
		name string
		t    quantity.Temperature
	}{{"flour", m.Flour}, {"water", m.Water}, {"levain", m.Levain}, {"room", m.Room}} {
		if !t.t.IsZero() {
			words = append(words, t.name+" "+u.temperature(t.t, 1))
		}
	}
	if m.Mixer != 0 {
		words = append(words, m.Mixer.String())
	}
	if m.Slow > 0 {
		words = append(words, m.Slow.String()+" slow")
	}
	if m.Fast > 0 {
		words = append(words, m.Fast.String()+" fast")
	}
	switch m.Leavening() {
	case bakelog.Levain:
		words = append(words, percent(m.Inoculation, 1)+" in the levain")
	case bakelog.Yeast:
		words = append(words, percent(m.Yeast, 2)+" "+m.YeastKind+" yeast")
	case bakelog.Both:
		words = append(words, percent(m.Inoculation, 1)+" in the levain", percent(m.Yeast, 2)+" "+m.YeastKind+" yeast")
	}
	return strings.Join(words, ", ")
}

func newLogImport(s System) *cobra.Command {
	var f logFlags
	var o output
	cmd := &cobra.Command{
		Use:   "import FILE.csv",
		Short: "Take observations from a spreadsheet into the log",
		Long: `import takes observations from a CSV file: one a row, under a heading with the names of the
columns in any order. What is already in the log is not taken again, and when anything is
wrong nothing is.

columns: ` + strings.Join(bakelog.Columns(), ", ") + `
kinds: mix, rise, ready, core, weights, note`,
		Example: "  maslin log import bakes.csv",
		Args:    oneValue("a CSV file"),
	}
	o.register(cmd)
	f.register(cmd)
	cmd.RunE = func(_ *cobra.Command, args []string) error {
		if err := o.check(); err != nil {
			return err
		}
		now, err := f.clock(s, nil)
		if err != nil {
			return err
		}
		file, err := os.Open(args[0])
		if err != nil {
			return badInput("%s: %s", fileName(args[0]), reason(err))
		}
		defer file.Close()
		entries, problems, err := bakelog.ReadCSV(file, func(text string) (time.Time, error) { return timeIn(text, now) })
		if err != nil {
			return badInput("%s: %s", fileName(args[0]), reason(err))
		}
		if len(problems) > 0 {
			var lines []string
			for _, p := range problems {
				lines = append(lines, fileName(args[0])+":"+p.String())
			}
			return badInput("%s", strings.Join(lines, "\n"))
		}
		_, content, err := f.read(s)
		if err != nil {
			return err
		}
		fresh, again, err := notYet(content.Entries, entries)
		if err != nil {
			return err
		}
		name, err := f.append(s, fresh...)
		if err != nil {
			return err
		}
		data := written{Format: writtenFormat, Log: name, Entries: fresh, Says: []string{fmt.Sprintf("%d observations taken, %d were there already", len(fresh), again)}}
		return s.show(o, answer{data: data, page: func(p *page, _ units) { p.para(0, data.Says[0]) }})
	}
	return cmd
}

// notYet leaves out what is in the log already.
func notYet(there, entries []bakelog.Entry) (fresh []bakelog.Entry, again int, err error) {
	key := func(e bakelog.Entry) (string, error) {
		e.At = e.At.UTC()
		line, err := json.Marshal(e)
		return string(bytes.TrimSpace(line)), err
	}
	known := map[string]bool{}
	for _, e := range there {
		k, err := key(e)
		if err != nil {
			return nil, 0, err
		}
		known[k] = true
	}
	fresh = []bakelog.Entry{}
	for _, e := range entries {
		k, err := key(e)
		if err != nil {
			return nil, 0, err
		}
		if known[k] {
			again++
			continue
		}
		known[k] = true
		fresh = append(fresh, e)
	}
	return fresh, again, nil
}
