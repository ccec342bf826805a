package cli

import (
	"context"

	"example.org/maslin/schedule/bench"
	"github.com/spf13/cobra"
)

type nowFlags struct {
	noteFlags
	done, follow bool
	step         string
}

func newNow(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "now FILE",
		Short: "At the bench: the step of the day that is due, what to look for, and what has changed",
		Long: `now reads the plan of a bake file and your log, and says what is under way, what comes next and
what to look for. What the log has taught counts, as in maslin plan --learned.
--follow keeps to the plan as it is now while you bake; --done logs that a step is done. How far the
dough has risen is logged with maslin log rise.

Exit status: 0 answered; 1 the plan does not fit; 2 bad input.`,
		Example: "  maslin now hall-kitchen.toml --follow\n  maslin now hall-kitchen.toml --done\n  maslin now hall-kitchen.toml --done --step shape --at 20:40",
		Args:    oneFile,
	}
	var f nowFlags
	f.register(cmd)
	cmd.Flags().Lookup("bread").Hidden = true // the file names it
	cmd.Flags().BoolVar(&f.done, "done", false, "log that the step that was due is done")
	cmd.Flags().StringVar(&f.step, "step", "", "with --done: this `STEP` instead, such as shape or fold-2")
	cmd.Flags().BoolVar(&f.follow, "follow", false, "keep to the plan as it is now, while you bake")
	cmd.RunE = func(cmd *cobra.Command, args []string) error { return runNow(cmd.Context(), s, &f, args[0]) }
	return cmd
}

func runNow(ctx context.Context, s System, f *nowFlags, file string) error {
	if err := f.in.complain(nil); err != nil {
		return err
	}
	if err := f.check(); err != nil {
		return err
	}
	switch {
	case f.bread != "":
		return badInput("maslin now: --bread: the bread is the one of the bake file")
	case f.step != "" && !f.done:
		return badInput("maslin now: --step: goes with --done")
	}
	l, err := load(s, file, "")
	if err != nil {
		return err
	}
	if l.clock.Now, err = f.clock(s, l.clock.Zone); err != nil {
		return err
	}
	m, err := f.moment(ctx, s, l)
	if err != nil {
		return err
	}
	if !m.Day.Possible() {
		return s.tell(f.output, m, false)
	}
	entries, err := f.entries(s, l, m)
	if err != nil {
		return err
	}
	if len(entries) == 0 {
		return s.tell(f.output, m, true)
	}
	name, err := f.append(s, entries...)
	if err != nil {
		return f.in.complain(err)
	}
	if m, err = f.moment(ctx, s, l); err != nil {
		return kept(name, err)
	}
	if !f.output.json {
		if err := s.tell(f.output, logged{loggedFormat, name, entries, nil}, true); err != nil {
			return kept(name, err)
		}
	}
	return kept(name, s.tell(f.output, m, true))
}

// moment is how the day stands by the log.
func (f *nowFlags) moment(ctx context.Context, s System, l loaded) (bench.DayNow, error) {
	name, content, err := f.read(s)
	if err != nil {
		return bench.DayNow{}, err
	}
	m, err := bench.Under{Bake: l.bake, Observations: content.Entries}.At(ctx, l.clock)
	if err != nil {
		if faults := located(l.file, err); len(faults) > 0 {
			return m, complain(l.name, faults)
		}
		return m, badInput("%s: %s", fileName(name), err)
	}
	return m, nil
}

// entries are what the flags ask to be logged. Whoever logs follows the plan.
func (f *nowFlags) entries(s System, l loaded, m bench.DayNow) (bench.Observations, error) {
	var out bench.Observations
	f.bread = l.bake.Name
	if m.Followed == nil && (f.follow || f.done) {
		o, err := f.observation(s, bench.SawPlan, l.clock.Zone)
		if err != nil {
			return nil, err
		}
		o.At, o.Plan = m.Now, &bench.FollowedPlan{Made: m.Day.Now, Wanted: m.Day.Wanted}
		out = append(out, o)
	}
	if !f.done {
		return out, nil
	}
	due, ok := m.StepDue()
	id := due.ID
	switch {
	case f.step != "":
		if step, ok := m.Step(f.step); ok { // what is done at the oven is a step too
			id = step.ID
			break
		}
		step, err := m.Day.StepNamed(f.step)
		if err != nil {
			return nil, badInput("maslin now: --step: %v", err)
		}
		id = step.ID
	case !ok:
		return nil, badInput("maslin now: --done: no step was due yet; say which with --step")
	}
	o, err := f.observation(s, bench.SawStep, l.clock.Zone)
	o.Step = id
	return append(out, o), err
}
