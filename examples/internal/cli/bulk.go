package cli

import (
	"fmt"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/examples/internal/bakelog"
	"example.org/maslin/examples/internal/outfile"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule/bench"
	"github.com/spf13/cobra"
)

type bulkFlags struct {
	output
	logFlags
	in                                    *asked
	bulk                                  ferment.Bulk
	curve                                 ferment.Curve
	salt, hydration, seedHydration        quantity.Percent
	dough, room, night, refrigerator      quantity.Temperature
	weight, piece                         quantity.Mass
	retard, shaping, halfLife             quantity.Elapsed
	readings, mixed, readyBy, svg, levain string
	drift                                 quantity.Elapsed
	seen                                  []string
	withoutLog, replace                   bool

	start   time.Time // of the clock of the dough
	clocked bool      // start is real: it was given
	relax   ferment.Relaxing
}

func newBulk(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "bulk",
		Short: "When the dough is ready: a range from its temperature, levain or yeast, salt and flour",
		Long: `bulk says when a dough has risen as far as you want, as a range that holds in four of five
bakes, with the curve of the rise. The bakes in your log narrow the range.

The dough starts at --dough and drifts to --room; a probe's file of times and temperatures
(--readings) is better. --seen brings the range up to date while the dough ferments.
--ready-by asks the other way round: how much levain, how warm a dough, how warm a room?
--retard says how far the dough may rise before shaping when it goes into the cold afterward.
--levain 1:2:2 asks for a levain just fed (seed : flour : water) instead of a dough.`,
		Example: `  maslin bulk --inoculation 9% --dough 25C --room 21C
  maslin bulk --inoculation 12% --dough 26C --room 22C --weight 5.4kg --retard 10h --refrigerator 4C
  maslin bulk --yeast "0.6 % instant" --dough 25C --room 22C --mixed 14:00 --ready-by 17:00
  maslin bulk --inoculation 9% --readings probe.csv --seen "30 % at 2h10m"
  maslin bulk --levain 1:5:5 --dough 24C --room 21C --mixed 22:00`,
		Args: flagsOnly,
	}
	f := bulkFlags{
		in: ask(cmd), salt: quantity.NewPercent(2), hydration: quantity.NewPercent(70), seedHydration: quantity.NewPercent(100),
		refrigerator: quantity.Celsius(4), piece: quantity.Grams(900), shaping: quantity.Elapsed(30 * time.Minute), drift: quantity.Elapsed(2 * time.Hour),
	}
	f.bulk.Rise = quantity.NewPercent(75)
	in := f.in
	in.value(&f.bulk.Inoculation, "inoculation", "PERCENT", "flour in the levain, of all flour", "Inoculation", "Seed")
	in.each(func(text string) (err error) { f.bulk.Yeast, _, err = yeastOf(text); return err }, "yeast", "YEAST", `instead of a levain or with it, such as "0.6 % instant", of the flour`, "Yeast", "Yeast.Amount", "Yeast.Kind")
	in.value(&f.salt, "salt", "PERCENT", "of the flour (2 %)", "Salt")
	in.value(&f.bulk.Sugar, "sugar", "PERCENT", "of the flour", "Sugar")
	in.value(&f.bulk.Altitude, "altitude", "LENGTH", "of the kitchen: thinner air lets the dough rise further", "Altitude")
	in.value(&f.hydration, "hydration", "PERCENT", "water, of the flour (70 %)", "Hydration")
	in.value(&f.bulk.WholeGrain, "whole-grain", "PERCENT", "whole grain, of the flour", "WholeGrain")
	in.value(&f.bulk.Rise, "rise", "PERCENT", "that is wanted, as added volume (75 %; 100 % is doubled); with --retard in all", "Rise", "Total")
	in.value(&f.dough, "dough", "TEMPERATURE", "of the dough after mixing", "Start", "History")
	in.value(&f.room, "room", "TEMPERATURE", "where it stands (not given: it stays as it is)", "Room", "Room.Night", "Into", "Into.Night")
	in.value(&f.night, "night", "TEMPERATURE", "of the room at its coldest, --room being its warmest", "Room.Day", "Into.Day")
	in.value(&f.weight, "weight", "MASS", "of the dough in its covered tub: how slowly it follows the room", "Mass")
	in.value(&f.drift, "drift", "TIME", "instead of the weight: after this time it has gone 63 % of the way (2h)", "TimeConstant")
	cmd.Flags().StringVar(&f.readings, "readings", "", "`FILE` of a probe in the dough: time and temperature on each line")
	in.paths["Points"] = "readings"
	in.word(shortWord{before: "by ", of: &f.bulk.Kneading}, []string{"hand", "machine"}, "kneaded", "your log may know a pace for each", "Kneading")
	curveFlag(in, &f.curve)
	cmd.Flags().BoolVar(&f.bulk.ColdLevain, "cold-levain", false, "the levain (or its seed) comes from the refrigerator")
	cmd.Flags().BoolVar(&f.bulk.Enriched, "enriched", false, "with egg, milk or the like")
	cmd.Flags().BoolVar(&f.bulk.Extrapolate, "extrapolate", false, "also at temperatures and sugar outside what the law may be used at")
	cmd.Flags().StringVar(&f.mixed, "mixed", "", "`TIME` at which mixing ended, such as 14:05: answers by the clock")
	in.value(&f.retard, "retard", "TIME", "in the refrigerator after shaping", "Stages[0].For")
	in.value(&f.refrigerator, "refrigerator", "TEMPERATURE", "with --retard (4 °C)", "Stages[0].Into.Night")
	in.value(&f.piece, "piece", "MASS", "of one loaf, with --retard (900 g)", "Stages[0].Mass")
	in.value(&f.shaping, "shaping", "TIME", "between bulk and refrigerator, with --retard (30m)", "Bench")
	cmd.Flags().StringVar(&f.readyBy, "ready-by", "", "`TIME`, such as 8h after mixing or 22:30: what would make it ready then?")
	in.paths["Ready"] = "ready-by"
	cmd.Flags().StringArrayVar(&f.seen, "seen", nil, "`RISE at TIME` of this dough, such as \"30 % at 2h10m\" (may be repeated)")
	cmd.Flags().StringVar(&f.levain, "levain", "", "`SEED:FLOUR:WATER`: a levain just fed, such as 1:2:2")
	in.value(&f.seedHydration, "seed-hydration", "PERCENT", "of the seed, with --levain (100 %)")
	cmd.Flags().StringVar(&f.svg, "svg", "", "also write the curve as a picture `FILE`")
	registerReplace(cmd, &f.replace)
	in.value(&f.halfLife, "half-life", "TIME", "after which a logged bake counts half, such as 30d (all count alike)", "HalfLife")
	cmd.Flags().BoolVar(&f.withoutLog, "without-log", false, "as for a culture nothing is known about")
	f.output.register(cmd)
	f.logFlags.register(cmd)
	cmd.RunE = func(*cobra.Command, []string) error { return runBulk(s, &f) }
	return cmd
}

// history is the temperature of the dough, from what the flags say of it.
func (f *bulkFlags) history() (ferment.History, error) {
	if f.readings != "" {
		if f.in.given("dough") {
			f.in.fault("dough", quantity.Tell("cli.got_dough_and_readings", "--dough and --readings"), quantity.Tell("cli.want_one_them_readings_say_how", "one of them: the readings say how warm the dough was"), quantity.ErrInconsistent)
		}
		r, err := readReadings(f.readings)
		if err != nil {
			return ferment.History{}, err
		}
		h, err := r.History()
		if err != nil {
			return h, badInput("%s", readingFaults(f.readings, err))
		}
		return h, nil
	}
	if f.dough.IsZero() {
		if !f.in.given("dough") {
			f.in.fault("dough", "", quantity.Tell("cli.want_temperature_dough_after_mixing_25", `the temperature of the dough after mixing, such as "25 °C", or --readings FILE`), quantity.ErrRequired)
		}
		return ferment.History{}, nil
	}
	var p quantity.Problems
	if !quantity.Check(&p, "Start", f.dough, quantity.Celsius(-25), quantity.Celsius(60)) {
		return ferment.History{}, p.Err()
	}
	if f.room.IsZero() {
		return ferment.Constant(f.dough), nil
	}
	room := ferment.Room{Night: f.room}
	if !f.night.IsZero() {
		room = ferment.Room{Night: f.night, Day: f.room, Starts: quantity.Elapsed(time.Duration(f.start.Hour())*time.Hour + time.Duration(f.start.Minute())*time.Minute)}
	}
	if f.weight.Sign() > 0 {
		return ferment.Piece{Mass: f.weight, Form: ferment.Tub, Start: f.dough, Into: room, Exposure: ferment.Covered}.History()
	}
	f.relax = ferment.Relaxing{Start: f.dough, Room: room, TimeConstant: f.drift}
	return f.relax.History()
}

func runBulk(s System, f *bulkFlags) error {
	if err := f.check(); err != nil {
		return err
	}
	if err := s.guarded("bulk", outfile.Guard{
		Inputs:  []outfile.Input{{Called: "the probe's readings", Name: f.readings}},
		Outputs: []outfile.Output{{Flag: "--svg", Name: f.svg, Form: outfile.SVG()}},
		Replace: f.replace,
	}, f.logFlags.log); err != nil {
		return err
	}
	now, err := f.clock(s, nil)
	if err != nil {
		return err
	}
	f.start = now
	if f.mixed != "" {
		if f.start, err = timeIn(f.mixed, now); err != nil {
			return badInput("maslin bulk: --mixed: %s", err)
		}
		f.clocked = true
	}
	h, err := f.history()
	if err != nil {
		faults := quantity.InputErrors(err)
		if len(faults) == 0 {
			return f.in.complain(err)
		}
		for _, e := range faults {
			f.in.note(strings.TrimPrefix(f.in.flagFor(e.GoPath), "--"), e)
		}
	}
	if len(f.in.faults) > 0 {
		h = ferment.Constant(quantity.Celsius(24)) // for what else is wrong
	}
	f.bulk.History = h
	if f.levain != "" {
		return runLevainRipe(s, f)
	}
	f.bulk.Law = lawWith(f.curve, f.bulk.Inoculation.IsZero() && f.bulk.Yeast.Kind != ferment.NoYeast)
	f.bulk.Salt, f.bulk.Hydration = f.salt, f.hydration
	known, err := f.culture(s)
	if len(quantity.InputErrors(err)) > 0 {
		return f.in.complain(err)
	}
	if err != nil {
		return err
	}
	f.bulk.Culture = known
	e, err := f.bulk.Estimate()
	if bad := f.in.complain(err); bad != nil {
		return bad
	}
	return f.answer(s, e)
}

// culture is what the log knows of the culture.
func (f *bulkFlags) culture(s System) (ferment.Culture, error) {
	if f.withoutLog {
		return ferment.Culture{}, nil
	}
	if f.log == "" {
		if _, err := bakelog.Place(s.Getenv); err != nil {
			return ferment.Culture{}, nil // nowhere to keep a log, so there is none
		}
	}
	_, content, err := f.read(s)
	if err != nil {
		return ferment.Culture{}, err
	}
	l, err := content.Entries.Learn(f.halfLife.Duration())
	return l.Culture(bench.RaisingOf(f.bulk)), err
}

// answer adds what else was asked to the estimate, and prints.
func (f *bulkFlags) answer(s System, e ferment.Estimate) error {
	a := bulkAnswer{Estimate: e}
	if f.clocked {
		a.Mixed = f.start
	}
	in := f.in
	if len(f.seen) > 0 {
		seen, err := f.update(e)
		if err != nil {
			return in.complain(err)
		}
		a.Estimate, a.Seen = seen.Now, &seen
	}
	if f.retard > 0 {
		if err := f.shape(&a); err != nil {
			return in.complain(err)
		}
	}
	if f.readyBy != "" {
		if err := f.inverse(&a); err != nil {
			return in.complain(err)
		}
	}
	if err := in.complain(nil); err != nil {
		return err
	}
	if f.svg != "" {
		picture, err := picture(a.Report().Section("rise"), s.options(f.output))
		if err != nil {
			return err
		}
		if err := writeFile(f.svg, []byte(picture)); err != nil {
			return err
		}
	}
	return s.tell(f.output, a, a.Estimate.Reached())
}

// update takes the readings of --seen, in order of time.
func (f *bulkFlags) update(e ferment.Estimate) (ferment.Progress, error) {
	var readings []ferment.RiseReading
	for _, text := range f.seen {
		rise, when, found := strings.Cut(text, " at ")
		if !found {
			f.in.fault("seen", quantity.Excerpt(text), quantity.Tell("cli.want_rise_and_time_30_percent", `a rise and a time, such as "30 %% at 2h10m" or "30 %% at 16:20"`), quantity.ErrUnit)
			continue
		}
		var r ferment.RiseReading
		var err error
		if r.Rise, err = quantity.ParsePercent(strings.TrimSpace(rise)); err != nil {
			f.in.note("seen", err)
			continue
		}
		at, err := whenFrom(when, f.start)
		r.At = quantity.Elapsed(at)
		if err != nil {
			f.in.note("seen", err)
			continue
		}
		f.in.paths[fmt.Sprintf("Readings[%d]", len(readings))] = "seen"
		readings = append(readings, r)
	}
	if len(f.in.faults) > 0 {
		return ferment.Progress{}, nil
	}
	return e.Update(readings...)
}

// shape finds how far the dough may rise before shaping, and when that is.
func (f *bulkFlags) shape(a *bulkAnswer) error {
	bulk := a.Estimate.Bulk()
	proof := ferment.Proof{Bulk: bulk, Bench: f.shaping, Total: bulk.Rise, Stages: []ferment.Piece{{
		Mass: f.piece, Form: ferment.Round, Into: ferment.Room{Night: f.refrigerator}, Exposure: ferment.Refrigerator, For: f.retard,
	}}}
	target, err := proof.RiseBeforeShaping()
	if err != nil {
		return err
	}
	if target.Feasible && len(f.seen) > 0 {
		seen, err := f.update(target.Shape)
		if err != nil {
			return err
		}
		target.Shape = seen.Now
	}
	a.Shape = &target
	return nil
}

// inverse asks what would make the dough ready at the wanted time.
func (f *bulkFlags) inverse(a *bulkAnswer) error {
	d, err := whenFrom(f.readyBy, f.start)
	if err != nil {
		f.in.note("ready-by", err)
		return nil
	}
	drift := f.relax
	if f.readings == "" && !f.room.IsZero() && drift.Start.IsZero() {
		drift = ferment.Relaxing{Start: f.dough, Room: ferment.Room{Night: f.room}, TimeConstant: f.drift}
	}
	ways, err := f.bulk.WaysTo(d, drift)
	if err != nil {
		return err
	}
	a.Ways = &ways
	return nil
}
