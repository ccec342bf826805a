package cli

import (
	"strconv"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"github.com/spf13/cobra"
)

type leftFlags struct {
	output
	goalFlags
	in   *asked
	p    bake.Probe
	read readings
}

func newLeft(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "left",
		Short: "Minutes left in the oven, from two or more readings of a probe",
		Long: `left says how long a loaf still bakes: from readings a few minutes apart it follows the core on
its way to the boiling point. Readings are in order of time, by the clock or by the time
since the loaf went in. Two ways of reckoning are shown side by side unless you name one.

Exit status: 0 answered; 1 the readings allow no answer, and it says what to do; 2 bad input.`,
		Example: `  maslin left --reading 14:05=72C --reading 14:11=80C --altitude 1150m
  maslin left --style rye --reading 25min=165F --reading 32min=183F --us`,
		Args: flagsOnly,
	}
	f := &leftFlags{in: ask(cmd)}
	in := f.in
	in.each(f.read.read, "reading", "TIME=TEMPERATURE", "of the core (two or more)", "Samples")
	f.goalFlags.register(in, true)
	in.word(&f.p.Approach, wordsOf(bake.Approaches()...), "approach", "one way of reckoning")
	lasting(in, &f.p.Window, "window", "only readings this close to the last one count (15min)", "Window")
	in.value(&f.p.Error, "probe-error", "DIFFERENCE", "how far the probe may be off (1dC)", "Error")
	cmd.Flags().BoolVar(&f.p.Extrapolate, "extrapolate", false, "use readings of the early part too, where the core still gains speed")
	f.output.register(cmd)
	cmd.RunE = func(*cobra.Command, []string) error { return runLeft(s, f) }
	return cmd
}

// leftBy is the answer by one way of reckoning.
type leftBy struct {
	approach bake.Approach
	left     bake.Left
}

func runLeft(s System, f *leftFlags) error {
	if err := f.check(); err != nil {
		return err
	}
	in := f.in
	f.p.Goal, f.p.Samples = f.goal, f.read.samples(in)
	ways := bake.Approaches()
	if in.given("approach") {
		ways = []bake.Approach{f.p.Approach}
	}
	var all []leftBy
	var workings []working.Working
	for _, way := range ways {
		f.p.Approach = way
		left, err := f.p.TimeLeft()
		if wrong := in.complain(err); wrong != nil {
			return wrong
		}
		all = append(all, leftBy{way, left})
		workings = append(workings, left.Working())
	}
	one := all[0].left
	last := f.p.Samples[len(f.p.Samples)-1]
	carry, carryErr := bake.TakenOut{Place: f.goal.Place, Core: last.Core}.CarryOver()
	if carryErr == nil {
		workings = append(workings, carry.Working())
	}
	no := one.State == bake.Flat || one.State == bake.Vague
	return s.show(f.output, answer{
		page: func(p *page, u units) {
			leftPage(p, u, f, all)
			if carryErr == nil && !no {
				section(p, "If it came out now")
				p.para(2, "the core would still rise to "+u.temperature(carry.Peak.Likely, 0)+" ("+u.temperature(carry.Peak.Low, 0)+" to "+u.temperature(carry.Peak.High, 0)+"), but the loaf would not bake out")
			}
		},
		data: leftData(f, all), workings: workings, cautions: one.Cautions(), no: no,
	})
}

func leftPage(p *page, u units, f *leftFlags, all []leftBy) {
	l := all[0].left
	target := u.temperature(l.Target, 1)
	switch l.State {
	case bake.Reached:
		p.para(0, "The core is at its target of "+target+": hold it about "+minutes(l.ToOut.Likely)+" more, or weigh the loaf")
	case bake.Flat:
		p.para(0, "The probe says nothing more: the core is within a degree and a half of boiling ("+u.temperature(l.Boiling, 1)+"). Weigh the loaf, or give it "+minutes(l.ToOut.Likely)+" from when it arrived there")
	case bake.Vague:
		p.para(0, "The readings lie too close together for an answer: read again in "+minutes(l.ReadAgain))
	case bake.Unreachable:
		p.para(0, u.temperature(f.goal.Wanted, 1)+" is never reached here; to "+target+" it is about "+minutes(l.ToTarget.Likely))
	default:
		p.para(0, "About "+minutes(l.ToTarget.Likely)+" to a core of "+target+", about "+minutes(l.ToOut.Likely)+" until baked out")
	}
	if l.State == bake.Rising || l.State == bake.Unreachable {
		section(p, "From the last reading on")
		var rows [][]string
		for _, one := range all {
			rows = append(rows, []string{one.approach.String(), "to the target", f.span(one.left.ToTarget)}, []string{"", "baked out", f.span(one.left.ToOut)})
		}
		p.rows(2, "lll", rows)
		if len(all) > 1 {
			p.para(2, "exponential is the plain law and runs late; quickening was fitted to computed loaves, not to bread")
		}
	}
	section(p, "What it rests on")
	if l.Used > 0 {
		text := count(l.Used, "reading", "readings")
		if l.Early > 0 {
			text += "; " + count(l.Early, "reading", "readings") + " of the early part left out"
		}
		p.para(2, text)
	}
	p.para(2, placePart(u, l.Boiling, f.goal.Place, l.Capped))
	if l.ReadAgain > 0 && l.State == bake.Rising {
		p.para(2, "read again in "+minutes(l.ReadAgain)+": the answer narrows")
	}
	p.para(2, "the color of the crust is yours to judge")
}

// span prints a range of times, by the clock too when the readings are.
func (f *leftFlags) span(r quantity.TimeRange) string {
	text := r.String()
	if at, ok := f.read.last(); ok {
		text = clockAfter(at, r.Early) + " to " + clockAfter(at, r.Late) + " (" + percent(r.Probability, 0) + "), likely " + clockAfter(at, r.Likely) + ", in " + minutes(r.Likely)
	}
	return text
}

// count says how many there are.
func count(n int, one, more string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + more
}

func minutes(d time.Duration) string { return quantity.FormatDuration(d.Round(time.Minute)) }

type leftOne struct {
	Approach  bake.Approach    `json:"approach"`
	ToTarget  *rangeData       `json:"to_target"`
	ToOut     *rangeData       `json:"baked_out"`
	Constant  quantity.Elapsed `json:"time_constant"`
	Used      int              `json:"readings_used"`
	Early     int              `json:"readings_left_out"`
	ReadAgain quantity.Elapsed `json:"read_again"`
	Says      string           `json:"says"`
}

type leftAnswer struct {
	Format string               `json:"format"`
	State  bake.LeftState       `json:"state"`
	Style  bake.Style           `json:"style"`
	Target quantity.Temperature `json:"target"`
	Place  placeData            `json:"place"`
	Capped bool                 `json:"capped"`
	By     []leftOne            `json:"by"`
}

func leftData(f *leftFlags, all []leftBy) leftAnswer {
	l := all[0].left
	out := leftAnswer{"maslin left 1", l.State, f.goal.Style, l.Target, placeData{f.goal.Place.Altitude, l.Boiling}, l.Capped, nil}
	second := func(d time.Duration) quantity.Elapsed { return quantity.Elapsed(d.Round(time.Second)) }
	for _, one := range all {
		l := one.left
		out.By = append(out.By, leftOne{one.approach, rangeOf(l.ToTarget), rangeOf(l.ToOut), second(l.TimeConstant), l.Used, l.Early, second(l.ReadAgain), l.String()})
	}
	return out
}
