package cli

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/examples/internal/outfile"
	"example.org/maslin/examples/internal/tomlbind"
	"example.org/maslin/internal/textpage"
	"example.org/maslin/schedule/bakeday"
	"example.org/maslin/schedule/wallclock"
	"github.com/spf13/cobra"
)

type planFlags struct {
	output
	in       *asked
	files    sheetFiles
	now, ics string
	late     quantity.Elapsed
	at       string
	fit      bool
	learned  bool
	cautions bool
	log      string
}

func newPlan(s System) *cobra.Command {
	var f planFlags
	cmd := &cobra.Command{
		Use:   "plan FILE...",
		Short: "Plan the whole bake in a bake file: weights, water, times, doneness, timetable",
		Long: `plan reads a bake file and works the whole bake out: what to weigh, how warm the water must
be, when the levain is ripe and the dough ready, what done means, and when to do what so
that the bread is there when it is wanted. Of several files it makes one day: the breads
share the oven, the mixers, the hands and all else of one kitchen, which the first file
describes, or each of them the same, or a file that they name (kitchen = "hall.toml").

Exit status: 0 planned; 1 the wanted time cannot be met, and the output says what is in
the way; 2 bad input.`,
		Example: "  maslin plan examples/bakes/hall-kitchen.toml\n  maslin plan my-bread.toml --us --ics my-bread.ics",
		Args:    oneFileOrMore,

		ValidArgsFunction: bakeFiles,
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) > 1 {
				return runTogether(cmd.Context(), s, args, f)
			}
			return runPlan(cmd.Context(), s, args[0], f)
		},
	}
	f.register(cmd)
	f.files.register(cmd)
	cmd.Flags().StringVar(&f.ics, "ics", "", "also write the timetable as a calendar `FILE`")
	f.in = ask(cmd)
	f.in.value(&f.late, "late", "DURATION", "a step begins so much later than planned (-20m: earlier): plan the rest again; needs --at", "By")
	cmd.Flags().StringVar(&f.at, "at", "", "the `STEP` that is late, such as \"shape\" or \"fold-2\"")
	f.in.paths["Step"] = "at"
	cmd.Flags().BoolVar(&f.fit, "fit", false, "look for amounts and temperatures within the bake's levers that fit better, and say what they cost")
	cmd.Flags().BoolVar(&f.cautions, "cautions", false, "print every caution in full")
	cmd.Flags().BoolVar(&f.learned, "learned", false, "with what your bake log has taught about the culture (see maslin learn)")
	cmd.Flags().StringVar(&f.log, "log", "", "with --learned: the bake log is this `FILE`")
	nowFlag(cmd, &f.now)
	return cmd
}

// oneFileOrMore is for what is asked of a whole day.
func oneFileOrMore(cmd *cobra.Command, args []string) error {
	return oneFile(cmd, args[:min(1, len(args))])
}

func oneFile(cmd *cobra.Command, args []string) error {
	switch len(args) {
	case 1:
		return nil
	case 0:
		return badInput("maslin %s: no bake file given; for example: maslin %s examples/bakes/hall-kitchen.toml", cmd.Name(), cmd.Name())
	}
	return badInput("maslin %s: got %d files, want one", cmd.Name(), len(args))
}

// loaded is a bake file with its clock.
type loaded struct {
	name  string
	place string // of the kitchen file that it names
	file  *tomlbind.File
	bake  bakeday.Bake
	clock bakeday.KitchenClock
}

// load reads a bake file and reports everything that is wrong with it.
func load(s System, name, now string) (loaded, error) {
	l, faults, err := readBake(name)
	if err != nil {
		return l, err
	}
	if l.readable() {
		l.clock, err = clockFor(s, l.bake.Kitchen.Zone, now)
		var flag *exit
		if errors.As(err, &flag) {
			return l, err
		}
		if err != nil {
			line, column, key := l.file.Locate("Kitchen.Zone")
			faults = append(faults, placed{line, column, working.Say(key + ": " + err.Error())})
		}
		faults = withNew(faults, located(l.file, l.bake.Check(l.clock)))
	}
	if len(faults) > 0 {
		return l, complain(name, faults)
	}
	return l, nil
}

// readBake reads the text of a bake file, and of the kitchen file that it names.
func readBake(name string) (loaded, []placed, error) {
	l := loaded{name: name}
	source, err := readFile(name)
	if err != nil {
		return l, nil, err
	}
	l.file = tomlbind.BindWith(source, &l.bake, map[string]tomlbind.Open{"Kitchen": func(other string) ([]byte, error) {
		l.place = kitchenPath(name, other)
		return kitchenFile(name, other)
	}})
	if len(l.file.Faults) > 0 && describesKitchen(source) {
		return l, nil, badInput("%s: describes a kitchen and no bake; want a bake file, such as one with kitchen = %q", fileName(name), filepath.Base(name))
	}
	var faults []placed
	for _, f := range l.file.Faults {
		text := f.Text
		if f.Key != "" {
			text = f.Key + ": " + text
		}
		faults = append(faults, placed{f.Line, f.Column, working.Say(text)})
	}
	return l, faults, nil
}

// readable reports whether the text could be read, even if not all of it means something.
func (l loaded) readable() bool { return len(l.file.Faults) == 0 || l.file.Faults[0].Key != "" }

// kitchenPath is where the kitchen file is that a bake file names, seen from there.
func kitchenPath(from, name string) string {
	path := filepath.FromSlash(name)
	if !filepath.IsAbs(path) {
		path = filepath.Join(filepath.Dir(from), path)
	}
	return filepath.Clean(path)
}

// describesKitchen reports whether a file holds a kitchen and nothing else.
func describesKitchen(source []byte) bool {
	var k bakeday.Kitchen
	return len(tomlbind.Bind(source, &k).Faults) == 0 && k.Zone != ""
}

// kitchenFile reads the kitchen file that a bake file names, seen from there.
func kitchenFile(from, name string) ([]byte, error) {
	path := kitchenPath(from, name)
	a, errA := os.Stat(from)
	b, errB := os.Stat(path)
	if errA == nil && errB == nil && os.SameFile(a, b) {
		return nil, fmt.Errorf("%s names itself; want the kitchen, or another file that describes it", fileName(name))
	}
	return readFile(path)
}

// withNew adds the faults for which none stands at the same place.
func withNew(faults, more []placed) []placed {
	for _, f := range more {
		if !slices.ContainsFunc(faults, func(g placed) bool { return g.line == f.line && g.column == f.column && g.line > 1 }) {
			faults = append(faults, f)
		}
	}
	return faults
}

func clockFor(s System, zone, now string) (bakeday.KitchenClock, error) {
	const want = `an IANA time zone, such as "Europe/Zurich" or "America/Denver"`
	if zone == "" {
		return bakeday.KitchenClock{}, errors.New("required: want " + want)
	}
	if zone == "Local" || len(zone) > 64 {
		return bakeday.KitchenClock{}, errors.New("unknown zone, want " + want)
	}
	where, err := time.LoadLocation(zone)
	if err != nil {
		return bakeday.KitchenClock{}, fmt.Errorf("unknown zone %q, want %s", textpage.Printable(zone), want)
	}
	clock := bakeday.KitchenClock{Now: s.Now(), Zone: where}
	if now != "" {
		m, err := wallclock.ParseMoment(now)
		if err != nil {
			return clock, badInput("--now: %s", err)
		}
		r, err := wallclock.Resolve(m, where, wallclock.RFC5545)
		if err != nil {
			return clock, badInput("--now: %s", err)
		}
		clock.Now = r.At
	}
	return clock, nil
}

func runPlan(ctx context.Context, s System, name string, f planFlags) error {
	if err := f.check(); err != nil {
		return err
	}
	if wrong := f.in.complain(nil); wrong != nil {
		return wrong
	}
	if err := s.guarded("plan", outfile.Guard{
		Inputs:  []outfile.Input{{Called: "the bake file", Name: name}},
		Outputs: append(f.files.outputs(), outfile.Output{Flag: "--ics", Name: f.ics, Form: outfile.Calendar()}),
		Replace: f.files.replace,
	}, f.log); err != nil {
		return err
	}
	l, err := load(s, name, f.now)
	if err != nil {
		return err
	}
	var known []working.Message
	if f.learned {
		applied, err := learnedInto(s, f.log, l.bake)
		if err != nil {
			return err
		}
		l.bake, known = applied.Bake, applied.RestsOn
	}
	if f.fit {
		return runFit(ctx, s, l, f)
	}
	day, err := l.bake.Plan(ctx, l.clock)
	if err != nil {
		return complain(name, located(l.file, err))
	}
	if f.late != 0 || f.at != "" {
		return runLate(s, f, day.Possible(), day, func(late bakeday.Late) (replanned, error) { return day.Replan(ctx, late) })
	}
	day.Notes = append(day.Notes, known...)
	sheet := day.Data()
	if f.ics != "" && sheet.Possible {
		if err := writeCalendar(f.ics, sheet.Name, sheet, l.clock.Now); err != nil {
			return err
		}
	}
	if err := f.files.write(day, s.sheetOptions(f.output)); err != nil {
		return err
	}
	f.output.everyCaution = f.cautions
	return s.tell(f.output, day, day.Possible())
}

func nowFlag(cmd *cobra.Command, to *string) {
	cmd.Flags().StringVar(to, "now", "", "plan as if it were this `TIME` in the bake's zone, such as \"2026-11-25 20:00\"")
}
