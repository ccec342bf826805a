package cli

import (
	"fmt"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/examples/internal/bakelog"
	"example.org/maslin/schedule/bakeday"
	"github.com/spf13/cobra"
)

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
	bakes, b, lacking, err := f.doughOf(s, e)
	if err != nil || lacking != nil {
		return lacking, nil, err
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
	if !said.Ready().Contains(one.Took.Duration()) {
		verdict = "outside"
	}
	r := bakeday.NewRange(said.Ready())
	return []string{fmt.Sprintf("it took %s, %s the range from the bakes before: %s", quantity.FormatDuration(one.Took.Duration().Round(time.Minute)), verdict, said.Ready())}, &r, nil
}
