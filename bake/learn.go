package bake

import (
	"math"
	"strconv"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/numeric"
)

// WeighedLoaf is one loaf weighed before and after.
type WeighedLoaf struct {
	Dough quantity.Mass `json:"dough"` // when it went in
	Baked quantity.Mass `json:"baked"` // when cool, or as it is now
}

// WeightLoss is what one loaf lost.
type WeightLoss struct {
	answer

	Lost    quantity.Mass    `json:"lost"`
	OfDough quantity.Percent `json:"of_dough"`
	OfBread quantity.Percent `json:"of_bread"`
	in      WeighedLoaf
}

// Loss answers: what did this loaf lose?
//
// Formula: L = 100·(D − B)/D of the dough, 100·(D − B)/B of the bread.
// Symbols: D dough, B bread. Valid range: 10 g to 20 kg of dough, a loss under 50 %. Accuracy: that of the scale; the
// loss out of the oven is 1 to 3 points less than that of the cool loaf.
// Errors: [quantity.ErrRequired], [quantity.ErrOutOfRange], [quantity.ErrInconsistent] (bread heavier than dough).
// Source: arithmetic.
func (w WeighedLoaf) Loss() (WeightLoss, error) {
	var p quantity.Problems
	checkWeights(&p, "Dough", "Baked", w.Dough, w.Baked, leastPiece, mostPiece)
	if err := p.ErrFor(w); err != nil {
		return WeightLoss{}, err
	}
	lost := w.Dough.Sub(w.Baked)
	return WeightLoss{Lost: lost, OfDough: lost.PercentOf(w.Dough), OfBread: lost.PercentOf(w.Baked), in: w}, nil
}

// String prints "114 g: 12.9 % of the dough, 14.8 % of the bread".
func (l WeightLoss) String() string { return l.message().String() }

func (l WeightLoss) message() working.Message {
	return working.Tell("bake.lost", "%v: %.1f of the dough, %.1f of the bread", l.Lost, l.OfDough, l.OfBread)
}

// checkWeights notes what is wrong with the weights of a loaf before and after.
func checkWeights(p *quantity.Problems, doughPath, loafPath string, dough, loaf, least, most quantity.Mass) bool {
	ok := quantity.Check(p, doughPath, dough, least, most)
	if !quantity.Check(p, loafPath, loaf, leastLoaf, most) || !ok {
		return false
	}
	switch loss := dough.Sub(loaf); {
	case loss.Sign() < 0:
		p.Add(loafPath, loaf, quantity.Tell("bake.want_no_more_than_dough", "no more than the dough, %v", dough),
			quantity.ErrInconsistent)
	case loss.PercentOf(dough).Compare(mostLoss) >= 0:
		p.Add(
			loafPath,
			loaf,
			quantity.Tell("bake.want_loss_under_50_percent_dough", "a loss under 50 %% of the dough, not %s",
				loss.PercentOf(dough).Text(1)),
			quantity.ErrOutOfRange,
		)
	default:
		return true
	}
	return false
}

// LossLog is what was weighed of one product.
type LossLog struct {
	Style  Style         `json:"style"`
	Loaves []WeighedLoaf `json:"loaves"`
}

// LearnedLoss is the loss of one product of one kitchen.
type LearnedLoss struct {
	answer

	// of the dough, the usual loss of the style mixed in with the weight of one loaf
	Mean quantity.Percent `json:"mean"`
	// standard deviation from loaf to loaf; the usual 1 point until there are three
	Spread           quantity.Percent                 `json:"spread"`
	Next             quantity.Range[quantity.Percent] `json:"next"` // holds the next loaf
	Count            int                              `json:"count"`
	in               LossLog
	prior            float64
	losses           []float64
	student, freedom float64 // of the range of the next loaf
}

const (
	usualSpread = 1.0 // percentage points from loaf to loaf, judgment
	priorLoaves = 1.0 // the weight of the style's usual loss, in loaves
)

// Learn answers: what does this product really lose in this oven?
//
// Formula: mean = (L₀ + Σ Lᵢ)/(1 + n) with L₀ the usual loss of the style at the mean dough weight and Lᵢ =
// 100·(dough − baked)/dough; the next loaf lies within mean ± t·s·√(1 + 1/(n + 1)), with t of Student for n − 1
// degrees of freedom, s the spread of the loaves (1 point until there are three). Valid range: 1 to 10,000 loaves,
// losses from 0 % to under 50 %. Accuracy: that of the scale; the prior counts as one loaf and fades. Errors:
// [quantity.ErrRequired], [quantity.ErrOutOfRange], [quantity.ErrInconsistent] (baked heavier than dough). Source: a
// normal prior updated by normal observations; Student's t for the next one.
func (log LossLog) Learn() (LearnedLoss, error) {
	var p quantity.Problems
	styles.Check(&p, "Style", log.Style)
	if len(log.Loaves) == 0 {
		p.Required("Loaves", quantity.Tell("bake.want_at_least_one_loaf_weighed",
			"at least one loaf weighed before and after"))
	}
	if len(log.Loaves) > mostSamples {
		p.Int("Loaves", len(log.Loaves), 1, mostSamples)
		return LearnedLoss{}, p.ErrFor(log)
	}
	losses := make([]float64, 0, len(log.Loaves))
	total := 0.0
	for i, w := range log.Loaves {
		path := "Loaves[" + strconv.Itoa(i) + "]"
		if !checkWeights(&p, path+".Dough", path+".Baked", w.Dough, w.Baked, quantity.Grams(20), quantity.Grams(5000)) {
			continue
		}
		loss := w.Dough.Sub(w.Baked).PercentOf(w.Dough)
		losses = append(losses, loss.Points())
		total += w.Dough.Grams()
	}
	if err := p.ErrFor(log); err != nil {
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
		Mean: quantity.NewPercent(mean), Spread: quantity.NewPercent(spread),
		Next: quantity.Range[quantity.Percent]{
			Low: quantity.NewPercent(
				math.Max(0, mean-half),
			), Likely: quantity.NewPercent(mean), High: quantity.NewPercent(mean + half), Probability: quantity.NewPercent(80),
		},
		Count: len(losses), in: log, prior: prior, losses: losses, student: t, freedom: freedom,
	}, nil
}

// String prints "12.1 % of the dough (next loaf 10.8 % to 13.4 %), from 5 loaves".
func (l LearnedLoss) String() string { return l.message().String() }

func (l LearnedLoss) message() working.Message {
	return working.Tell("bake.learned_loss", "%.1f of the dough (next loaf %.1f to %.1f), from %d {4|loaf|loaves}",
		l.Mean, l.Next.Low, l.Next.High, l.Count)
}
