package cli

import (
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/examples/internal/bakelog"
	"example.org/maslin/internal/textpage"
	"example.org/maslin/schedule/bench"
	"github.com/spf13/cobra"
)

// noteFlags are those of every command that writes to the log.
type noteFlags struct {
	output
	logFlags
	in            *asked
	at, bread, by string
	sure          bool
}

func (f *noteFlags) register(cmd *cobra.Command) {
	f.in = ask(cmd)
	cmd.Flags().StringVar(&f.at, "at", "", "`TIME` of it, such as 10:40 (now)")
	cmd.Flags().StringVar(&f.bread, "bread", "", "`NAME` of the bread (the one mixed last)")
	cmd.Flags().StringVar(&f.by, "by", "", "`NAME` of whose bake it is, where several people keep one log")
	cmd.Flags().BoolVar(&f.sure, "sure", false, "it can hardly be true, was looked at again, and is so")
	f.output.register(cmd)
	f.logFlags.register(cmd)
}

// observation starts an observation: when it was, and of what.
func (f *noteFlags) observation(s System, kind bench.Sight, zone *time.Location) (bench.Observation, error) {
	if zone == nil {
		zone = f.zoneOfBread(s)
	}
	now, err := f.clock(s, zone)
	if err != nil {
		return bench.Observation{}, err
	}
	o := bench.Observation{
		Version: bench.Format, At: now.Truncate(time.Second), Kind: kind, Bread: strings.TrimSpace(f.bread), By: strings.TrimSpace(f.by), Sure: f.sure,
	}
	if f.at == "" {
		return o, nil
	}
	if o.At, err = timeIn(f.at, now); err != nil {
		return o, badInput("%s: --at: %s", f.in.cmd.CommandPath(), err)
	}
	if o.At.After(now.Add(time.Minute)) {
		return o, badInput("%s: --at: got %s, want a time that is not in the future", f.in.cmd.CommandPath(), quantity.Excerpt(f.at))
	}
	return o, nil
}

// zoneOfBread is the clock by which the dough was mixed: that of the bake decides, not the machine's. It is nil when no
// dough of the bread is in the log, or when there is none that can be read: then it says so itself when it is written.
func (f *noteFlags) zoneOfBread(s System) *time.Location {
	name, err := f.place(s)
	if err != nil {
		return nil
	}
	content, err := bakelog.ReadFile(name)
	if err != nil {
		return nil
	}
	var zone *time.Location
	for _, o := range content.Entries {
		if o.Kind == bench.SawMixed && (f.bread == "" || o.Bread == f.bread) {
			zone = o.At.Location()
		}
	}
	return zone
}

// logged is the answer of a command that wrote to the log.
type logged struct {
	Format  string             `json:"format"`
	Log     string             `json:"log"`
	Entries bench.Observations `json:"logged"`
	Says    []working.Message  `json:"says"`
}

const loggedFormat = "maslin log 2"

// Report tells what was written, and what it says at once.
func (l logged) Report() report.Report {
	r := report.Report{Headline: working.Say("%s", l.Log)}
	for i, o := range l.Entries {
		says := working.Tell("maslin.logged", "logged: %v, %s: %v", o.At, o.Bread, o.Message())
		if o.Bread == "" {
			says = working.Tell("maslin.logged_nameless", "logged: %v, %v", o.At, o.Message())
		}
		if i == 0 {
			r.Headline = says
			continue
		}
		r.Sections = append(r.Sections, report.Section{Key: "logged", Blocks: []report.Block{report.Say(says)}})
	}
	if len(l.Says) > 0 {
		r.Sections = append(r.Sections, report.Section{Key: "says", Blocks: []report.Block{report.List(l.Says)}})
	}
	return r
}

// write appends an observation and tells what it says at once.
func (f *noteFlags) write(s System, o bench.Observation) error {
	if err := f.in.complain(nil); err != nil {
		return err
	}
	if err := f.output.check(); err != nil {
		return err
	}
	if err := o.Check(); err != nil {
		return f.in.complain(err)
	}
	name, err := f.append(s, o)
	if err != nil {
		return f.in.complain(err)
	}
	_, content, err := f.read(s)
	if err != nil {
		return kept(name, err)
	}
	says, err := content.Entries.Until(o.At).Tells(o)
	if err != nil {
		return kept(name, err)
	}
	return kept(name, s.tell(f.output, logged{loggedFormat, name, bench.Observations{o}, append([]working.Message{}, says...)}, true))
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
  maslin log weights --in 897g --out 781g --style "lean hearth"
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
			return badInput("maslin log: got %s, want one of %s", quantity.Excerpt(textpage.Printable(args[0])), strings.Join(known, ", "))
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

// argument words the fault of an argument.
func argument(command string, err error) error {
	for _, e := range quantity.InputErrors(err) {
		moved := *e
		moved.Path, moved.GoPath = "", ""
		return badInput("maslin %s: %s", command, strings.TrimPrefix(moved.Error(), ": "))
	}
	return badInput("maslin %s: %s", command, err)
}
