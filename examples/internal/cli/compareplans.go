package cli

import (
	"context"
	"fmt"
	"slices"
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/textpage"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/bakeday"
)

type compareFlags struct {
	output
	hand    bool
	machine mixing.MixerKind
	now     string
}

// comparedPlan is one plan of a comparison.
type comparedPlan struct {
	Name string           `json:"name"`
	Plan bakeday.PlanData `json:"plan"`
}

// compared is a comparison of plans, as data.
type compared struct {
	Plans   []comparedPlan `json:"plans"`
	Changes []string       `json:"what_changes"`
}

func runCompare(ctx context.Context, s System, names []string, f compareFlags) error {
	if err := f.check(); err != nil {
		return err
	}
	ways := 0
	for _, asked := range []bool{f.hand, f.machine != 0, len(names) == 2} {
		if asked {
			ways++
		}
	}
	if ways != 1 {
		return badInput("maslin compare: want one of: a second bake file, --hand, or --machine planetary, spiral or processor")
	}
	l, err := load(s, names[0], f.now)
	if err != nil {
		return err
	}
	day, err := l.bake.Plan(ctx, l.clock)
	if err != nil {
		return complain(l.name, located(l.file, err))
	}
	if len(names) == 2 {
		return compareFiles(ctx, s, f, day, names[1])
	}
	return compareKneading(ctx, s, f, l, day)
}

func compareFiles(ctx context.Context, s System, f compareFlags, one bakeday.Day, name string) error {
	l, err := load(s, name, f.now)
	if err != nil {
		return err
	}
	other, err := l.bake.Plan(ctx, l.clock)
	if err != nil {
		return complain(name, located(l.file, err))
	}
	data := compared{Plans: []comparedPlan{{"first", one.Data()}, {"second", other.Data()}}, Changes: []string{}}
	return s.show(f.output, answer{
		data: data, workings: append(one.Workings(), other.Workings()...),
		page: func(p *page, u units) {
			p.Para(0, "first: "+textpage.Printable(one.Bake.Name))
			p.Para(0, "second: "+textpage.Printable(other.Bake.Name))
			p.Line("")
			p.grid(2, planRows(data, u, true))
			unpourable(p, data)
		},
	})
}

// compareKneading plans the bake kneaded another way twice: with the water that gives the same
// dough temperature, and with the water of the first plan.
func compareKneading(ctx context.Context, s System, f compareFlags, l loaded, day bakeday.Day) error {
	kind := mixing.Hand
	if !f.hand {
		kind = f.machine
	}
	own := l.bake.Mixer().Kind
	if own == kind {
		return badInput("maslin compare: %s is kneaded that way already (%s); choose another", l.name, kind)
	}
	bake := l.bake
	bake.Mixing.Mixer, bake.Mixing.Warming = kind, quantity.TemperatureDelta{}
	if kind != mixing.Hand && bake.Mixer().Bowl.IsZero() { // large enough for a household; only batches depend on it
		has := func(m bakeday.KitchenMixer) bool { return m.Kind == kind }
		others := slices.DeleteFunc(slices.Clone(bake.Kitchen.Mixers), has)
		bake.Kitchen.Mixers = append(others, bakeday.KitchenMixer{Kind: kind, Bowl: quantity.Liters(7)})
	}
	warmer, err := bake.Plan(ctx, l.clock)
	if err != nil {
		return complaints("compare", err, nil)
	}
	// The same water: the dough differs by what mixing gives it, and by nothing else.
	bake.Mixing.Temperature = l.bake.Mixing.Temperature.Add(warmer.Water.Warming.Sub(day.Water.Warming))
	same, err := bake.Plan(ctx, l.clock)
	if err != nil {
		return complaints("compare", err, map[string]string{"Mixing.Temperature": "the dough with the same water"})
	}
	a, b := way(own), way(kind)
	data := compared{Plans: []comparedPlan{{own.String(), day.Data()}, {kind.String() + ", same dough", warmer.Data()}, {kind.String() + ", same water", same.Data()}}}
	return s.show(f.output, answer{
		data: withChanges(data, a, b, units{f.us}), workings: append(append(day.Workings(), warmer.Workings()...), same.Workings()...),
		page: func(p *page, u units) {
			data = withChanges(data, a, b, u)
			p.Para(0, textpage.Printable(day.Bake.Name)+", kneaded "+a+" and "+b)
			p.Line("")
			p.grid(2, planRows(data, u, false))
			unpourable(p, data)
			p.heading("What it changes")
			for _, c := range data.Changes {
				p.Para(2, c)
			}
		},
	})
}

func way(kind mixing.MixerKind) string {
	if kind == mixing.Hand {
		return "by hand"
	}
	return "by " + kind.String() + " mixer"
}

// withChanges says in words what kneading changes in water, bulk and timetable.
func withChanges(data compared, a, b string, u units) compared {
	one, dough, water := data.Plans[0].Plan, data.Plans[1].Plan, data.Plans[2].Plan
	guide := ""
	switch {
	case one.Water.Guess && dough.Water.Guess:
		guide = " (both guide values)"
	case dough.Water.Guess:
		guide = " (the second a guide value)"
	}
	data.Changes = []string{fmt.Sprintf("mixing warms the dough by %s %s and by %s %s%s", u.delta(one.Water.Warming), a, u.delta(dough.Water.Warming), b, guide)}
	if dough.Formula.Dough == one.Formula.Dough && (one.Water.Warming != dough.Water.Warming) {
		data.Changes = append(data.Changes, fmt.Sprintf("for the same dough of %s the water must be %s instead of %s; bulk and timetable stay much the same",
			u.temperature(one.Water.Target, 1), u.temperature(dough.Water.Temperature, 1), u.temperature(one.Water.Temperature, 1)))
	}
	if !dough.Water.Feasible && len(dough.Water.Remedies) > 0 {
		data.Changes = append(data.Changes, "such water cannot be poured: "+u.say(dough.Water.Remedies[0]))
	}
	longer := quantity.Elapsed(water.Bulk.Ready.Likely - one.Bulk.Ready.Likely)
	text := fmt.Sprintf("with the same water the dough comes out at %s, and bulk likely takes %s instead of %s", u.temperature(water.Water.Target, 1), quantity.FormatDuration(water.Bulk.Ready.Likely), quantity.FormatDuration(one.Bulk.Ready.Likely))
	switch {
	case longer > 0:
		text += fmt.Sprintf(", %s longer", longer)
	case longer < 0:
		text += fmt.Sprintf(", %s shorter", -longer)
	}
	data.Changes = append(data.Changes, text)
	if r, w := water.Retard, one.Retard; r != nil && w != nil && r.For != w.For {
		data.Changes = append(data.Changes, fmt.Sprintf("the loaves are then in the cold for %s instead of %s", r.For, w.For))
	}
	mixed, was, ok := startOf(water, schedule.Mix), startOf(one, schedule.Mix), one.Possible && water.Possible
	if ok && !mixed.IsZero() && !was.IsZero() {
		d := was.Sub(mixed)
		switch {
		case d > 0:
			data.Changes = append(data.Changes, fmt.Sprintf("so that the bread is ready in time, mixing then begins %s earlier, %s", quantity.FormatDuration(d), mixed.Format("Mon 15:04")))
		case d < 0:
			data.Changes = append(data.Changes, fmt.Sprintf("mixing may then begin %s later, %s", quantity.FormatDuration(-d), mixed.Format("Mon 15:04")))
		}
	}
	if n, m := batchesOf(one), batchesOf(dough); n != m {
		data.Changes = append(data.Changes, fmt.Sprintf("the dough is mixed in %d batches %s and in %d %s, each taking the time the file gives", n, a, m, b))
	}
	return data
}

// unpourable explains the mark at a water temperature.
func unpourable(p *page, data compared) {
	for _, one := range data.Plans {
		if !one.Plan.Water.Feasible {
			p.Line("")
			p.Para(2, "* cannot be poured as it is; maslin plan says what to do instead")
			return
		}
	}
}

func batchesOf(s bakeday.PlanData) int { return s.Weigh[len(s.Weigh)-1].Batches }

// startOf is when the first step of a kind begins; the zero time when there is none.
func startOf(s bakeday.PlanData, kind schedule.StepKind) time.Time {
	for _, t := range s.Steps {
		if t.Kind == kind {
			return t.Start
		}
	}
	return time.Time{}
}

// planRows lists what plans are compared by; the formula too when it may differ.
func planRows(data compared, u units, formula bool) [][]string {
	head := []string{""}
	for _, p := range data.Plans {
		head = append(head, p.Name)
	}
	rows := [][]string{head}
	row := func(what string, value func(bakeday.PlanData) string) {
		r, any := []string{what}, false
		for _, p := range data.Plans {
			v := value(p.Plan)
			any = any || v != ""
			if v == "" {
				v = "–"
			}
			r = append(r, v)
		}
		if any {
			rows = append(rows, r)
		}
	}
	if formula {
		row("pieces", func(s bakeday.PlanData) string {
			return fmt.Sprintf("%d × %s", s.Formula.Pieces, u.mass(s.Oven.Baked))
		})
		row("flour", func(s bakeday.PlanData) string { return u.mass(rounded(s.Formula.Flour)) })
		row("hydration", func(s bakeday.PlanData) string { return percent(s.Formula.Effective, 1) })
		row("salt", func(s bakeday.PlanData) string { return percent(s.Formula.Salt, 1) })
		row("rye", func(s bakeday.PlanData) string { return percent(s.Formula.Rye, 0) })
		row("whole grain", func(s bakeday.PlanData) string { return percent(s.Formula.WholeGrain, 0) })
		row("prefermented flour", func(s bakeday.PlanData) string { return percent(s.Formula.Prefermented, 1) })
	}
	row("mixing warms by", func(s bakeday.PlanData) string { return u.delta(s.Water.Warming) })
	row("water", func(s bakeday.PlanData) string {
		text := u.temperature(s.Water.Temperature, 1)
		if !s.Water.Feasible {
			text += "*"
		}
		return text
	})
	row("dough when mixed", func(s bakeday.PlanData) string { return u.temperature(s.Water.Target, 1) })
	row("batches", func(s bakeday.PlanData) string { return fmt.Sprint(batchesOf(s)) })
	row("bulk, likely", func(s bakeday.PlanData) string { return quantity.FormatDuration(s.Bulk.Ready.Likely) })
	row("bulk, early end", func(s bakeday.PlanData) string { return s.Bulk.Ready.Early.String() })
	row("bulk, late end", func(s bakeday.PlanData) string { return s.Bulk.Ready.Late.String() })
	row("dough after bulk", func(s bakeday.PlanData) string { return u.temperature(s.Bulk.End, 1) })
	row("shape at a rise of", func(s bakeday.PlanData) string { return percent(s.Bulk.ShapeAt, 0) })
	if formula {
		row("oven", func(s bakeday.PlanData) string { return u.temperature(s.Oven.Temperature, 0) })
		row("core when done", func(s bakeday.PlanData) string { return u.temperature(s.Oven.Core, 1) })
		row("bake loss", func(s bakeday.PlanData) string { return percent(s.Oven.Loss, 1) })
	}
	for _, step := range []struct {
		kind schedule.StepKind
		name string
	}{{schedule.Feed, "feed the levain"}, {schedule.Mix, "mix the dough"}, {schedule.Bulk, "bulk fermentation"}, {schedule.Shape, "divide and shape"},
		{schedule.Retard, "cold retard"}, {schedule.Proof, "final proof"}, {schedule.Bake, "bake"}} {
		row(step.name, func(s bakeday.PlanData) string {
			if t := startOf(s, step.kind); !t.IsZero() {
				return t.Format("Mon 15:04")
			}
			return ""
		})
	}
	row("wanted", func(s bakeday.PlanData) string {
		if !s.Possible {
			return "does not fit"
		}
		return s.Wanted.Format("Mon 15:04")
	})
	return rows
}
