package bench

import (
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/numeric"
)

// Score is how well ranges held: of how many bakes the truth lay inside, and what that says of the claim.
type Score struct {
	By      string  `json:"by,omitempty"`
	Raising Raising `json:"raising"`
	Inside  int     `json:"inside"`
	Bakes   int     `json:"bakes"`
	// Share is the share of bakes inside that this suggests, with an 80 % range: 7 of 9 is not 78 %.
	Share quantity.Range[quantity.Percent] `json:"share"`
	// Claimed is what the ranges claim.
	Claimed quantity.Percent `json:"claimed"`
}

// Message tells the score.
func (s Score) Message() working.Message {
	if s.Bakes == 0 {
		return working.Tell("bench.no_score", "no bake to judge by yet")
	}
	return working.Tell("bench.score",
		"%d of %d {2|bake|bakes} lay inside the range that the other bakes give; that speaks for a share between %.0f and "+
			"%.0f, where %.0f is claimed", s.Inside, s.Bakes, s.Share.Low, s.Share.High, s.Claimed)
}

// String tells the score in English.
func (s Score) String() string { return s.Message().String() }

// newScore turns a count into a share with its range.
//
//	p ~ Beta(½ + inside, ½ + bakes − inside)
//
// Source: the Jeffreys interval; Brown, Cai and DasGupta, "Interval estimation for a binomial proportion", Statistical
// Science 16 (2001).
func newScore(r Raising, by string, inside, bakes int) Score {
	s := Score{By: by, Raising: r, Inside: inside, Bakes: bakes, Claimed: quantity.NewPercent(80)}
	a, b := 0.5+float64(inside), 0.5+float64(bakes-inside)
	at := func(q float64) quantity.Percent {
		x, err := numeric.BetaQuantile(q, a, b)
		if err != nil {
			return quantity.Percent{} // more bakes than anybody can log
		}
		return quantity.NewPercent(roundTo(100*x, 10))
	}
	s.Share = quantity.Range[quantity.Percent]{
		Low:         at(0.1),
		Likely:      at(0.5),
		High:        at(0.9),
		Probability: quantity.NewPercent(80),
	}
	return s
}

// Reviewed is one bake set against what the other bakes would have predicted for it.
type Reviewed struct {
	Bread  string         `json:"bread,omitempty"`
	By     string         `json:"by,omitempty"`
	Mixed  time.Time      `json:"mixed"`
	Review ferment.Review `json:"review"`
}

// Scores answers: how well did the ranges hold, for each leavening, and by whom? From two bakes on.
//
// Errors: those of [ferment.Lesson.Reviews].
func (l Lessons) Scores() (scores []Score, reviews map[Raising][]Reviewed, err error) {
	reviews = map[Raising][]Reviewed{}
	for _, c := range l.Cultures {
		if len(c.Bakes) < 2 {
			continue
		}
		all, inside, err := c.Lesson.Reviews()
		if err != nil {
			return nil, nil, err
		}
		scores = append(scores, newScore(c.Raising, "", inside, len(all)))
		type count struct{ inside, bakes int }
		by, order := map[string]count{}, []string{}
		for i, r := range all {
			b := c.Bakes[i]
			reviews[c.Raising] = append(reviews[c.Raising], Reviewed{b.Bread, b.By, b.Mixed, r})
			n, known := by[b.By]
			if !known {
				order = append(order, b.By)
			}
			n.bakes++
			if r.Inside {
				n.inside++
			}
			by[b.By] = n
		}
		for _, name := range order {
			if len(order) > 1 {
				scores = append(scores, newScore(c.Raising, name, by[name].inside, by[name].bakes))
			}
		}
	}
	return scores, reviews, nil
}
