package bake

import (
	"math"
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/numeric"
	"example.org/maslin/internal/sources"
)

// WeighedLoaf is one loaf weighed before and after.
type WeighedLoaf struct {
	Dough quantity.Mass // when it went in
	Baked quantity.Mass // when cool
}

// LossLog is what was weighed of one product.
type LossLog struct {
	Style  Style
	Loaves []WeighedLoaf
}

// LearnedLoss is the loss of one product of one kitchen.
type LearnedLoss struct {
	Mean      quantity.Percent // of the dough, the usual loss of the style mixed in with the weight of one loaf
	Spread    quantity.Percent // standard deviation from loaf to loaf; the usual 1 point until there are three
	Low, High quantity.Percent // holds the next loaf with 80 %
	Count     int
	in        LossLog
	prior     float64
	losses    []float64
}

const (
	usualSpread = 1.0 // percentage points from loaf to loaf, judgment
	priorLoaves = 1.0 // the weight of the style's usual loss, in loaves
)

// Learn answers: what does this product really lose in this oven?
//
// Formula: mean = (L₀ + Σ Lᵢ)/(1 + n) with L₀ the usual loss of the style at the mean dough weight and Lᵢ =
// 100·(dough − baked)/dough; the next loaf lies within mean ± t·s·√(1 + 1/(n + 1)), with t of Student for n
// − 1 degrees of freedom, s the spread of the loaves (1 point until there are three).
// Valid range: 1 to 10,000 loaves, losses from 0 % to under 50 %. Accuracy: that of the scale; the prior
// counts as one loaf and fades.
// Errors: [quantity.ErrRequired], [quantity.ErrOutOfRange], [quantity.ErrInconsistent] (baked heavier than
// dough).
// Source: a normal prior updated by normal observations; Student's t for the next one.
func (log LossLog) Learn() (LearnedLoss, error) {
	var p quantity.Problems
	if !log.Style.IsValid() {
		p.Add("Style", log.Style.String(), strings.Join(styleNames(), ", "), quantity.ErrOutOfRange)
	}
	if len(log.Loaves) == 0 {
		p.Required("Loaves", "at least one loaf weighed before and after")
	}
	if len(log.Loaves) > mostSamples {
		p.Int("Loaves", len(log.Loaves), 1, mostSamples)
		return LearnedLoss{}, p.Err()
	}
	losses := make([]float64, 0, len(log.Loaves))
	total := 0.0
	for i, w := range log.Loaves {
		path := "Loaves[" + strconv.Itoa(i) + "]"
		if !quantity.Check(&p, path+".Dough", w.Dough, quantity.Grams(20), quantity.Grams(5000)) || !quantity.Check(&p, path+".Baked", w.Baked, leastLoaf, quantity.Grams(5000)) {
			continue
		}
		loss := w.Dough.Sub(w.Baked).PercentOf(w.Dough)
		switch {
		case loss.Sign() < 0:
			p.Add(path+".Baked", w.Baked.String(), "no more than the dough, "+w.Dough.String(), quantity.ErrInconsistent)
		case loss.Compare(mostLoss) >= 0:
			p.Add(path+".Baked", w.Baked.String(), "a loss under 50 %, not "+loss.Text(1), quantity.ErrOutOfRange)
		}
		losses = append(losses, loss.Points())
		total += w.Dough.Grams()
	}
	if err := p.Err(); err != nil {
		return LearnedLoss{}, err
	}
	n := float64(len(losses))
	prior, _, _, _ := usualLoss(log.Style, total/n)
	sum := 0.0
	for _, l := range losses {
		sum += l
	}
	mean := (priorLoaves*prior + sum) / (priorLoaves + n)
	spread, freedom := usualSpread, 30.0 // the usual spread is known about as well as from thirty loaves
	if len(losses) >= 3 {
		ss := 0.0
		for _, l := range losses {
			ss += (l - sum/n) * (l - sum/n)
		}
		// A scale of 5 g on 500 g cannot see less than 0.3 points.
		spread, freedom = math.Max(math.Sqrt(ss/(n-1)), 0.3), n-1
	}
	t, err := numeric.StudentQuantile(0.9, freedom)
	if err != nil {
		return LearnedLoss{}, err
	}
	half := t * spread * math.Sqrt(1+1/(priorLoaves+n))
	return LearnedLoss{
		Mean: quantity.NewPercent(mean), Spread: quantity.NewPercent(spread), Low: quantity.NewPercent(math.Max(0, mean-half)), High: quantity.NewPercent(mean + half),
		Count: len(losses), in: log, prior: prior, losses: losses,
	}, nil
}

// String prints "12.1 % of the dough (next loaf 10.8 % to 13.4 %), from 5 loaves".
func (l LearnedLoss) String() string {
	loaves := " loaves"
	if l.Count == 1 {
		loaves = " loaf"
	}
	return l.Mean.Text(1) + " of the dough (next loaf " + l.Low.Text(1) + " to " + l.High.Text(1) + "), from " + strconv.Itoa(l.Count) + loaves
}

// Working derives the mean.
func (l LearnedLoss) Working() working.Working {
	sum := 0.0
	for _, x := range l.losses {
		sum += x
	}
	return working.Working{Title: "Loss of this product", Steps: []working.Step{{
		Name: "mean loss", Symbol: "L", Formula: "(L_0 + S) ÷ (1 + n)", Numbers: "(" + fixed(l.prior, 2) + " + " + fixed(sum, 2) + ") ÷ (1 + " + strconv.Itoa(l.Count) + ")",
		Where: []working.Binding{
			{Symbol: "L_0", Meaning: "usual loss of the style", Value: fixed(l.prior, 2) + " %"}, {Symbol: "S", Meaning: "sum of the losses weighed", Value: fixed(sum, 2) + " %"},
			{Symbol: "n", Meaning: "loaves weighed", Value: strconv.Itoa(l.Count)},
		},
		Value: fixed(l.Mean.Points(), 2) + " %", Tolerance: 0.01, Source: sources.OvenJudgment("the style's usual loss counts as one loaf"),
	}}}
}
