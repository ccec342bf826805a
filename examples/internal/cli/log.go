package cli

import (
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/examples/internal/bakelog"
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
			return kept(name, err)
		}
		data.Says, data.Ready = append(data.Says, says...), ready
	}
	return kept(name, s.show(f.output, answer{data: data, page: func(p *page, u units) {
		p.para(0, "logged: "+entryLine(e, u))
		for _, line := range data.Says {
			p.para(2, line)
		}
	}}))
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

// argument words the fault of an argument.
func argument(command string, err error) error {
	for _, e := range quantity.InputErrors(err) {
		moved := *e
		moved.Path, moved.GoPath = "", ""
		return badInput("maslin %s: %s", command, strings.TrimPrefix(moved.Error(), ": "))
	}
	return badInput("maslin %s: %s", command, err)
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
