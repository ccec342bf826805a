package bake

import (
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// Report tells the usual loss, and the bread that is left of the dough.
func (g LossGuide) Report() report.Report {
	bread := g.Bread()
	rows := report.Rows{{
		Label: working.Tell("bake.label_usual", "usual"),
		Value: report.Of(
			working.Tell("bake.usual_loss_of", "%v of the dough (%v to %v), %v of %.0f", g.Loss.Likely, g.Loss.Low,
				g.Loss.High, g.Style, g.Dough),
		),
	}, {
		Label: working.Tell("bake.label_bread", "bread"),
		Value: report.Of(working.Tell("bake.bread_range", "%.0f (%.0f to %.0f)", bread.Likely, bread.Low, bread.High)),
	}}
	blocks := []report.Block{rows}
	if !g.Note.IsZero() {
		blocks = append(blocks, report.Say(g.Note))
	}
	return report.Report{
		Headline: g.message(), Sources: g.Sources,
		Sections: []report.Section{
			{Key: "usual_loss", Title: working.Tell("bake.title_loss", "The loss"), Blocks: blocks},
		},
	}
}

// Report tells what was learned.
func (l LearnedLoss) Report() report.Report {
	return report.Report{Headline: l.message(), Sections: []report.Section{{
		Key: "learned_loss", Title: working.Tell("bake.title_weighed", "As weighed"), Blocks: []report.Block{report.Rows{
			{Label: working.Tell("bake.label_mean", "on average"), Value: report.Rounded(l.Mean, 1)},
			{
				Label: working.Tell("bake.label_next", "the next loaf"),
				Value: report.Of(
					working.Tell("bake.next_loss", "%.1f to %.1f (%v)", l.Next.Low, l.Next.High, l.Next.Probability)),
			},
			{Label: working.Tell("bake.label_spread", "from loaf to loaf"), Value: report.Rounded(l.Spread, 1)},
		}},
	}}}
}

// Report tells what the loaf lost.
func (l WeightLoss) Report() report.Report { return report.Report{Headline: l.message()} }

// Report tells the dough to weigh.
func (s Scaling) Report() report.Report {
	return report.Report{Headline: s.message(), Sections: []report.Section{{
		Key: "scaling", Title: working.Tell("bake.title_scaling", "Scaling weight"), Blocks: []report.Block{report.Rows{
			{Label: working.Tell("bake.label_dough", "dough"), Value: report.Rounded(s.Dough, 1)},
			{Label: working.Tell("bake.label_bread", "bread"), Value: report.Rounded(s.Baked, 1)},
			{
				Label: working.Tell("bake.label_lost", "into the air"),
				Value: report.Rounded(s.Lost, 1),
				Note:  s.lossNote(),
			},
		}},
	}}}
}

func (s Scaling) lossNote() working.Message {
	if s.in.Cooling.Sign() > 0 {
		return working.Tell("bake.loss_and_cooling", "%.1f %v, and %.1f while cooling", s.in.Loss, s.in.Basis,
			s.in.Cooling)
	}
	return working.Tell("bake.loss_of", "%.1f %v", s.in.Loss, s.in.Basis)
}

// Report tells the limits.
func (a AverageWeight) Report() report.Report {
	return report.Report{Headline: a.message(), Cautions: a.Cautions(), Sections: []report.Section{{
		Key: "average_system", Title: working.Tell("bake.title_average",
			"Average system of the UK and the EU, as information"), Blocks: []report.Block{report.Rows{
			{Label: working.Tell("bake.label_average", "on average at least"), Value: report.Of(a.Mean)},
			{Label: working.Tell("bake.label_few", "at most 1 in 40 below"), Value: report.Of(a.Few)},
			{Label: working.Tell("bake.label_none", "none below"), Value: report.Of(a.None)},
		}},
	}}}
}

// Report tells the loss.
func (s SolidsLoss) Report() report.Report {
	return report.Report{Headline: s.message(), Cautions: s.Cautions()}
}
