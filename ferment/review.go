package ferment

import (
	"fmt"

	"example.org/maslin/dough/quantity"
)

// Review is what the other bakes would have predicted for one bake.
type Review struct {
	Took      quantity.Elapsed   `json:"took"`
	Predicted quantity.TimeRange `json:"predicted"`
	Inside    bool               `json:"inside"` // Took lies in the predicted range
}

// String prints "took 6h10m; the other bakes said 5h20m to 7h00m (80 %), likely 6h05m".
func (r Review) String() string {
	s := "took " + r.Took.String() + "; the other bakes said " + r.Predicted.String()
	if !r.Inside {
		s += ": outside"
	}
	return s
}

// Review answers: what would the lesson without bake i have predicted for it? Errors: ErrOutOfRange for i. Source: cross-validation
// by leaving one out.
func (l Lesson) Review(i int) (Review, error) {
	var p problems
	if i < 0 || i >= len(l.bakes) {
		p.Add("i", fmt.Sprint(i), "a bake of the lesson", errOutOfRange)
		return Review{}, p.Err()
	}
	b, ok := l.prior.regress(l.log, l.robust, i)
	if !ok {
		p.Add("i", fmt.Sprint(i), "bakes from which a culture can be told", quantity.ErrInconsistent)
		return Review{}, p.Err()
	}
	in := l.bakes[i].Bulk
	in.Culture = Culture{b}
	in.Extrapolate = true // the bake was accepted; its late end may lie beyond its history
	e, err := in.Estimate()
	if err != nil {
		return Review{}, err
	}
	r := Review{Took: l.bakes[i].Took, Predicted: e.Ready()}
	r.Inside = r.Predicted.Contains(r.Took.Duration())
	return r, nil
}

// Reviews is every [Lesson.Review], and how many took as long as predicted; of many bakes about 80 % should.
func (l Lesson) Reviews() (all []Review, inside int, err error) {
	for i := range l.bakes {
		r, err := l.Review(i)
		if err != nil {
			return nil, 0, quantity.At(fmt.Sprintf("Bakes[%d]", i), err)
		}
		if r.Inside {
			inside++
		}
		all = append(all, r)
	}
	return all, inside, nil
}
