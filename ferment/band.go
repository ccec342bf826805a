package ferment

import (
	"math"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

// band is a rise at one time: Low and High enclose 80 %. A value of 300 % means that or more: gas enough is made, but
// no dough holds it.
type band = quantity.Range[quantity.Percent]

// newBand makes a band of three rises as fractions.
func newBand(low, likely, high float64) band {
	return band{Low: percent(low), Likely: percent(likely), High: percent(high), Probability: probabilityClaimed}
}

// percent is a fraction as a percentage, to a hundredth, and at most the greatest rise: that or more.
func percent(fraction float64) quantity.Percent {
	return quantity.NewPercent(math.Round(math.Min(fraction*1e4, greatestRise.Points()*100)) / 100)
}

// bandWords says a band of a rise.
func bandWords(b band) working.Message {
	return working.Tell("ferment.band", "%v to %v, likely %v", riseWords(b.Low), riseWords(b.High), riseWords(b.Likely))
}

func riseWords(p quantity.Percent) working.Message {
	if p.Compare(greatestRise) >= 0 {
		return working.Tell("ferment.over", "over %v", greatestRise)
	}
	return working.Tell("ferment.rise", "%.0f", p)
}

// probabilityClaimed is what every range of this package claims.
var probabilityClaimed = quantity.NewPercent(80)
