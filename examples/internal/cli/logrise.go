package cli

import (
	"fmt"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/examples/internal/bakelog"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule/bakeday"
	"github.com/spf13/cobra"
)

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
			if rise.Rise, err = (ferment.Heights{Start: from, Now: to}).Rise(); err != nil || len(f.in.faults) > 0 {
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

// newRange says when the dough that was just read is ready now.
func (f *noteFlags) newRange(s System, e bakelog.Entry) ([]string, *bakeday.Range, error) {
	bakes, b, lacking, err := f.doughOf(s, e)
	if err != nil || lacking != nil {
		return lacking, nil, err
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

// doughOf finds the dough that was just observed among those of the log; when there is none, it says what is lacking.
func (f *noteFlags) doughOf(s System, e bakelog.Entry) (all []bakelog.Bake, b bakelog.Bake, lacking []string, err error) {
	_, content, err := f.read(s)
	if err != nil {
		return nil, b, nil, err
	}
	all = bakelog.Group(content.Entries)
	b, ok := bakeOf(all, e)
	if !ok {
		lacking = []string{"no dough was mixed before it in the log, so it teaches nothing yet: see maslin log mix --help"}
	}
	return all, b, lacking, nil
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
		one := ferment.RiseReading{At: quantity.Elapsed(r.At.Sub(b.Mixed)), Rise: r.Rise.Rise, Error: r.Rise.Error}
		if n := len(readings); n > 0 && readings[n-1].At >= one.At {
			readings[n-1] = one // read twice in the same minute: the later one counts
			continue
		}
		if one.At.Duration() >= time.Second {
			readings = append(readings, one)
		}
	}
	if len(readings) == 0 {
		return ferment.Progress{Now: e, Before: e.Ready()}, nil
	}
	return e.Update(readings...)
}
