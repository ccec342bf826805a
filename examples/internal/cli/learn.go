package cli

import (
	"slices"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/textpage"
	"example.org/maslin/schedule/bakeday"
	"example.org/maslin/schedule/bench"
	"github.com/spf13/cobra"
	"strconv"
)

// lessons is the answer of learn: what was learned, and what that changes in a plan.
type lessons struct {
	Format string          `json:"format"`
	Log    string          `json:"log"`
	Learnt bench.Lessons   `json:"lessons"`
	Scores []bench.Score   `json:"scores,omitempty"`
	Next   *bench.NextPlan `json:"next_plan,omitempty"`
}

// Report tells the lessons, and then the next plan.
func (l lessons) Report() report.Report {
	r := l.Learnt.Report()
	if l.Next != nil {
		next := l.Next.Report()
		r.Sections = append(r.Sections, report.Section{Key: "next", Title: next.Headline})
		r.Sections = append(r.Sections, next.Sections...)
		r.RestsOn = append(r.RestsOn, next.RestsOn...)
	}
	return r
}

// Workings derive what was learned of mixers and losses.
func (l lessons) Workings() []working.Working {
	var out []working.Working
	for _, m := range l.Learnt.Mixers {
		if len(m.Batches) > 0 {
			out = append(out, m.Learned.Working())
		}
	}
	for _, c := range l.Learnt.Cultures {
		if len(c.Bakes) > 0 {
			out = append(out, c.Lesson.Working())
		}
	}
	for _, x := range l.Learnt.Losses {
		out = append(out, x.Learned.Working())
	}
	return out
}

func newLearn(s System) *cobra.Command {
	var o output
	var f logFlags
	var by []string
	var halfLife quantity.Elapsed
	cmd := &cobra.Command{
		Use:   "learn [FILE]",
		Short: "What your log teaches about mixer, culture and oven, and how well the ranges held",
		Long: `learn says what your log teaches: how much a minute of mixing warms the dough, how fast your
culture is and how strongly temperature moves it, what your loaves lose in the oven, and how
well the ranges would have held for each of your bakes. With a bake FILE it shows what that
changes in the next plan, and what to write into the file. A class pools its logs with
--pool NAME=LOG for each person.

All logged bakes count alike. With --half-life 30d, or half_life in the [kitchen] of FILE, a bake
counts half after so long: a kitchen that bakes each week follows a levain that changes with the
seasons, for a range that is hardly wider; with a bake a month too few would be left.`,
		Example: "  maslin learn\n  maslin learn hall-kitchen.toml\n  maslin learn --half-life 30d",
		Args:    cobra.MaximumNArgs(1),
	}
	o.register(cmd)
	f.register(cmd)
	in := ask(cmd)
	in.value(&halfLife, "half-life", "TIME", "after which a bake counts half, such as 30d (as FILE says; all count alike)", "HalfLife")
	cmd.Flags().StringArrayVar(&by, "pool", nil, "`NAME=LOG`: also the log of this person (may be repeated)")
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if err := o.check(); err != nil {
			return err
		}
		name, all, err := f.pooled(s, by)
		if err != nil {
			return err
		}
		if err := in.complain(nil); err != nil {
			return err
		}
		var l loaded
		if len(args) == 1 {
			if l, err = load(s, args[0], f.now); err != nil {
				return err
			}
			if !in.given("half-life") {
				halfLife = l.bake.Kitchen.HalfLife
			}
		}
		out := lessons{Format: "maslin learn 2", Log: name}
		if out.Learnt, err = all.Learn(halfLife.Duration()); in.given("half-life") && halfLifeIn(err) {
			return in.complain(err)
		} else if err != nil {
			return badInput("%s: %s", fileName(name), err)
		}
		if out.Scores, _, err = out.Learnt.Scores(); err != nil {
			return badInput("%s: %s", fileName(name), err)
		}
		if len(args) == 1 {
			next, err := out.Learnt.NextPlan(cmd.Context(), l.bake, l.clock)
			if err != nil {
				return complain(args[0], located(l.file, err))
			}
			out.Next = &next
		}
		return s.tell(o, out, !out.Learnt.IsZero())
	}
	return cmd
}

// halfLifeIn reports whether an error is about the half-life.
func halfLifeIn(err error) bool {
	return slices.ContainsFunc(quantity.InputErrors(err), func(e *quantity.InputError) bool { return e.GoPath == "HalfLife" })
}

// pooled are the observations of the log, and of the logs of other people.
func (f logFlags) pooled(s System, by []string) (string, bench.Observations, error) {
	name, content, err := f.read(s)
	if err != nil || len(by) == 0 {
		return name, content.Entries, err
	}
	var class bench.Class
	if len(content.Entries) > 0 {
		class = append(class, bench.PersonLog{Person: "me", Observations: content.Entries})
	}
	for _, text := range by {
		person, file, ok := cutNamed(text)
		if !ok {
			return name, nil, badInput(`maslin learn: --pool: got %s, want a name and a log, such as "Vreni=vreni.jsonl"`, strconv.Quote(textpage.Printable(text)))
		}
		_, more, err := logFlags{log: file}.read(s)
		if err != nil {
			return name, nil, err
		}
		class = append(class, bench.PersonLog{Person: person, Observations: more.Entries})
	}
	all, err := class.Pool()
	if err != nil {
		return name, nil, badInput("maslin learn: --pool: %s", err)
	}
	return name, all, nil
}

// learnedInto gives a bake what the log taught before, and tells what that rests on.
func learnedInto(s System, log string, b bakeday.Bake) (bench.Applied, error) {
	name, content, err := logFlags{log: log}.read(s)
	if err != nil {
		return bench.Applied{}, err
	}
	l, err := content.Entries.Learn(b.Kitchen.HalfLife.Duration())
	if err != nil {
		return bench.Applied{}, badInput("%s: %s", fileName(name), err)
	}
	out := l.Apply(b)
	if len(out.RestsOn) == 0 {
		out.RestsOn = []working.Message{working.Tell("maslin.nothing_learned", "the log %s has nothing to plan this bake with yet", name)}
	}
	return out, nil
}
