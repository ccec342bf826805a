package cli

import (
	"slices"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule/bakeday"
	"example.org/maslin/schedule/bench"
)

// learn asks what the log teaches, and what that changes in the next plan.
type learn struct {
	logFlags
	HalfLife quantity.Elapsed `flag:"half-life"`
	Pool     []person         `flag:"pool" pair:"Name=Log"`
}

// A person keeps a log.
type person struct{ Name, Log string }

func (q *learn) ask(c *call) error {
	if wrong := c.complain(nil); wrong != nil {
		return wrong
	}
	name, all, err := q.pooled(c.System)
	if err != nil {
		return err
	}
	var b bakes
	if len(c.args) == 1 {
		if b, err = load(c, q.Now, c.args[0]); err != nil {
			return err
		}
		if !c.given("half-life") {
			q.HalfLife = b.first().Kitchen.HalfLife
		}
	}
	out := lessons{Format: "maslin learn 2", Log: name}
	if out.Learnt, err = all.Learn(q.HalfLife.Duration()); err == nil {
		out.Scores, _, err = out.Learnt.Scores()
	}
	ofHalfLife := func(e *quantity.InputError) bool { return e.GoPath == "HalfLife" }
	if c.given("half-life") && slices.ContainsFunc(quantity.InputErrors(err), ofHalfLife) {
		return c.complain(err)
	} else if err != nil {
		return badInput(working.Say("%s: %s", fileName(name), err))
	}
	if len(c.args) == 1 {
		next, err := out.Learnt.NextPlan(c.cmd.Context(), *b.first(), b.clock)
		if err != nil {
			return b.complain(err)
		}
		out.Next = &next
	}
	return c.tellIf(!out.Learnt.IsZero(), out, nil)
}

// pooled are the observations of the log, and of the logs of other people.
func (q *learn) pooled(s System) (string, bench.Observations, error) {
	name, content, err := q.read(s)
	if err != nil || len(q.Pool) == 0 {
		return name, content.Entries, err
	}
	var class bench.Class
	if len(content.Entries) > 0 {
		class = append(class, bench.PersonLog{Person: "me", Observations: content.Entries})
	}
	for _, p := range q.Pool {
		_, more, err := logFlags{Log: p.Log}.read(s)
		if err != nil {
			return name, nil, err
		}
		class = append(class, bench.PersonLog{Person: p.Name, Observations: more.Entries})
	}
	all, err := class.Pool()
	if err != nil {
		return name, nil, badInput(working.Tell("cli.learn_pool", "maslin learn: --pool: %s", err))
	}
	return name, all, nil
}

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

// Workings derive what was learned.
func (l lessons) Workings() []working.Working { return l.Learnt.Workings() }

// learnedInto gives a bake what the log taught before, and tells what that rests on.
func learnedInto(s System, log string, b bakeday.Bake) (bench.Applied, error) {
	name, content, err := logFlags{Log: log}.read(s)
	if err != nil {
		return bench.Applied{}, err
	}
	l, err := content.Entries.Learn(b.Kitchen.HalfLife.Duration())
	if err != nil {
		return bench.Applied{}, badInput(working.Say("%s: %s", fileName(name), err))
	}
	out := l.Apply(b)
	if len(out.RestsOn) == 0 {
		out.RestsOn = []working.Message{working.Tell("maslin.nothing_learned",
			"the log %s has nothing to plan this bake with yet", name)}
	}
	return out, nil
}
