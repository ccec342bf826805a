package bench

import (
	"math"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// IsZero reports whether there was nothing to learn from.
func (l Lessons) IsZero() bool { return l.Bakes == 0 && len(l.Losses) == 0 }

// String is the headline.
func (l Lessons) String() string { return l.headline().String() }

func (l Lessons) headline() working.Message {
	if l.IsZero() {
		return working.Tell("bench.nothing",
			"There is nothing to learn from yet: write down a dough as it leaves the mixer, and when it was ready.")
	}
	return working.Tell("bench.lessons", "%d {1|observation|observations} of %d {2|dough|doughs}", l.Observations,
		l.Bakes)
}

// Report tells what was learned, and how well the ranges held.
func (l Lessons) Report() report.Report {
	r := report.Report{Headline: l.headline()}
	add := func(key string, title working.Message, blocks []report.Block) {
		if len(blocks) > 0 {
			r.Sections = append(r.Sections, report.Section{Key: key, Title: title, Blocks: blocks})
		}
	}
	var doubts []report.Block
	for _, d := range l.Doubts {
		doubts = append(
			doubts,
			report.Paragraph{
				Text: working.Tell("bench.lesson_doubt", "%v: %v It teaches nothing until it is confirmed.",
					d.Observation.At, d.Says),
				Tone: report.Warning,
			},
		)
	}
	add("doubts", working.Tell("bench.title_doubts", "Is this so?"), doubts)
	for _, m := range l.Mixers {
		add("mixer", working.Tell("bench.title_mixer", "The mixer: %v", m.Mixer), m.blocks())
	}
	scores, reviews, err := l.Scores()
	for _, c := range l.Cultures {
		blocks := c.blocks(l.HalfLife.Duration())
		for _, s := range scores {
			if err == nil && s.Raising == c.Raising {
				blocks = append(blocks, s.block())
			}
		}
		if all := reviews[c.Raising]; len(all) > 0 {
			blocks = append(blocks, reviewGrid(all))
		}
		add("culture", working.Tell("bench.title_culture", "What raises the dough: %v", c.Raising),
			append(blocks, unused(c.Unused)...))
	}
	var losses report.Rows
	for _, x := range l.Losses {
		losses = append(losses,
			report.Row{Label: working.Say("%v", x.Style), Value: report.Of(x.Learned.Report().Headline)})
	}
	if len(losses) > 0 {
		add("oven", working.Tell("bench.title_oven", "What loaves lose in the oven"), []report.Block{losses})
	}
	return r
}

func (s Score) block() report.Block {
	if s.By == "" {
		return report.Say(s.Message())
	}
	return report.Say(working.Tell("bench.score_by", "%s: %v", s.By, s.Message()))
}

func (m MixerLesson) blocks() []report.Block {
	var rows report.Rows
	for i, r := range m.Learned.PerMinute {
		label := working.Tell("bench.minute_slow", "a minute at the first speed warms the dough by")
		if i > 0 {
			label = working.Tell("bench.minute_fast", "a minute at the second speed warms the dough by")
		}
		rows = append(
			rows,
			report.Row{
				Label: label,
				Value: report.Rounded(r.Value, 2),
				Note:  working.Tell("bench.give_or_take", "give or take %.2f", r.StandardError),
			},
		)
	}
	var out []report.Block
	if len(m.Batches) > 0 {
		rows = append(
			rows,
			report.Row{
				Label: working.Tell("bench.bowl_share", "bowl and hook count as this much of the dough"),
				Value: report.Rounded(m.Learned.Bowl.Value, 0),
			},
			report.Row{
				Label: working.Tell("bench.batch_spread", "one batch differs from the next by"),
				Value: report.Rounded(m.Learned.Spread, 1),
			},
			report.Row{
				Label: working.Tell("bench.learned_from", "learned from this many batches"),
				Value: report.Of(m.Learned.Batches),
			},
		)
		out = append(append(out, rows), notCounted(m.Older)...)
	}
	return append(out, unused(m.Unused)...)
}

func (c CultureLesson) blocks(halfLife time.Duration) []report.Block {
	if len(c.Bakes) == 0 {
		return nil
	}
	known := c.Lesson.Culture
	out := []report.Block{report.Rows{
		{Label: working.Tell("bench.pace", "pace, of the usual one"), Value: report.Rounded(known.Pace(), 0)},
		{
			Label: working.Tell("bench.sensitivity", "a degree Celsius warmer speeds it up, beyond its curve, by"),
			Value: report.Rounded(known.TemperatureSensitivity(), 1),
		},
		{
			Label: working.Tell("bench.bake_to_bake", "one bake differs from the next by"),
			Value: report.Rounded(known.BakeToBake(), 0),
		},
		{Label: working.Tell("bench.learned_bakes", "learned from this many bakes"), Value: report.Of(known.Bakes())},
	}}
	out = append(out, notCounted(c.Older)...)
	if fades := c.Lesson.Fades; !fades.IsZero() {
		out = append(out, report.Paragraph{Text: fades, Tone: report.Aside})
	}
	if halfLife > 0 {
		out = append(out, report.Paragraph{Text: working.Tell("bench.fading",
			"a bake counts half after %d {1|day|days}", int(math.Round(halfLife.Hours()/24))), Tone: report.Aside})
	}
	low, high := c.Lesson.Temperatures()
	const apart = 2.0 // Δ°C between bakes from which their temperatures teach anything
	if high.Sub(low).Celsius() < apart {
		out = append(out, report.Paragraph{Text: working.Tell("bench.hardly_learned",
			"how temperature moves it is hardly learned: all bakes were at %.1f; write down a cool and a warm one",
			quantity.Range[quantity.Temperature]{Low: low, High: high}), Tone: report.Aside})
	}
	return out
}

// notCounted says that a log is longer than what is learned from.
func notCounted(older int) []report.Block {
	if older == 0 {
		return nil
	}
	return []report.Block{report.Paragraph{Text: working.Tell("bench.older",
		"the log is longer: %d older {1|dough|doughs} {1|is|are} not counted any more", older), Tone: report.Aside}}
}

// mostReviews is how many of the last bakes are shown.
const mostReviews = 24

func reviewGrid(all []Reviewed) report.Grid {
	g := report.Grid{
		Key:     "reviews",
		Caption: working.Tell("bench.reviews", "What the other bakes would have said"),
		Columns: []report.GridColumn{
			{Key: "mixed", Title: working.Tell("bench.column_mixed", "mixed")},
			{Key: "took", Title: working.Tell("bench.column_took", "took"), Right: true},
			{Key: "predicted", Title: working.Tell("bench.column_predicted", "the others say")},
			{Key: "inside"},
		},
	}
	for _, r := range all[max(0, len(all)-mostReviews):] {
		verdict := working.Tell("bench.inside", "inside")
		if !r.Review.Inside {
			verdict = working.Tell("bench.outside", "outside")
		}
		g.Rows = append(
			g.Rows,
			[]report.Cell{
				report.Of(working.Tell("bench.on_day", "%d", r.Mixed)),
				report.Of(quantity.Elapsed(r.Review.Took.Duration().Round(60e9))),
				report.Of(r.Review.Predicted),
				report.Of(verdict),
			},
		)
	}
	return g
}

// mostUnused is how many bakes that teach nothing are listed.
const mostUnused = 5

func unused(all []Unused) []report.Block {
	if len(all) == 0 {
		return nil
	}
	var list report.List
	for i, x := range all {
		if i == mostUnused {
			list = append(list,
				working.Tell("bench.more_unused", "and %d more that teach nothing", len(all)-mostUnused))
			break
		}
		list = append(list, working.Tell("bench.unused", "not learned from %x: %v", x.Mixed, x.Why))
	}
	return []report.Block{list}
}

// Report tells what changes in the next plan.
func (n NextPlan) Report() report.Report {
	r := report.Report{
		Headline: working.Tell("bench.next_plan", "The next plan of %s, and what was learned", n.After.Bake.Name),
		RestsOn:  n.RestsOn,
	}
	grid := report.Grid{Key: "changes", Columns: []report.GridColumn{
		{
			Key: "what",
		}, {Key: "before", Title: working.Tell("bench.before", "as written")},
		{Key: "after", Title: working.Tell("bench.after", "with what was learned")},
	}}
	row := func(what working.Message, before, after report.Cell) {
		grid.Rows = append(grid.Rows, []report.Cell{report.Of(what), before, after})
	}
	row(working.Tell("bench.row_warming", "mixing warms the dough by"), report.Rounded(n.Before.Water.Warming, 1),
		report.Rounded(n.After.Water.Warming, 1))
	row(working.Tell("bench.row_water", "water"), report.Rounded(n.Before.Water.Temperature, 1),
		report.Rounded(n.After.Water.Temperature, 1))
	row(working.Tell("bench.row_loss", "loss in the oven"), report.Rounded(n.Before.Baking.Loss, 1),
		report.Rounded(n.After.Baking.Loss, 1))
	row(working.Tell("bench.row_scaling", "dough for one loaf"), report.Rounded(n.Before.Baking.Scaling, 0),
		report.Rounded(n.After.Baking.Scaling, 0))
	before, after := n.Before.Rising.Bulk.Ready(), n.After.Rising.Bulk.Ready()
	minutes := func(d time.Duration) time.Duration { return d.Round(time.Minute) }
	row(working.Tell("bench.row_bulk", "bulk, likely"), report.Of(minutes(before.Likely)),
		report.Of(minutes(after.Likely)))
	ends := func(r quantity.TimeRange) report.Cell {
		return report.Of(working.Tell("bench.bulk_ends", "%v to %v", minutes(r.Early), minutes(r.Late)))
	}
	row(working.Tell("bench.row_bulk_range", "bulk, four doughs of five"), ends(before), ends(after))
	r.Sections = []report.Section{{Key: "changes", Blocks: []report.Block{grid}}}
	var write report.Rows
	if !n.Warming.IsZero() {
		write = append(write, report.Row{Label: working.Say("mixing.warming"), Value: report.Of(n.Warming)})
	}
	if !n.Loss.IsZero() {
		write = append(write, report.Row{Label: working.Say("loaves.loss"), Value: report.Of(n.Loss)})
	}
	if len(write) > 0 {
		r.Sections = append(
			r.Sections,
			report.Section{
				Key:    "write",
				Title:  working.Tell("bench.write", "To keep it, write into the bake"),
				Blocks: []report.Block{write},
			},
		)
	}
	return r
}

// String is the headline.
func (n NextPlan) String() string { return n.Report().Headline.String() }
