package ferment

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/gasbalance"
)

// Review is what the other bakes would have predicted for one bake.
type Review struct {
	Took      quantity.Elapsed   `json:"took"`
	Predicted quantity.TimeRange `json:"predicted"`
	Inside    bool               `json:"inside"` // Took lies in the predicted range
}

// String prints "took 6h10m; the other bakes said 5h20m to 7h00m (80 %), likely 6h05m".
func (r Review) String() string { return r.Message().String() }

// Message says what was predicted and what came.
func (r Review) Message() working.Message {
	if !r.Inside {
		return working.Tell("ferment.review_outside", "took %v; the other bakes said %v: outside", r.Took, r.Predicted)
	}
	return working.Tell("ferment.review", "took %v; the other bakes said %v", r.Took, r.Predicted)
}

// Reviews answers for each bake: what would the lesson without it have predicted, and did it come so? Inside counts the
// bakes that did; of many about 80 % should. Each bake is taken out of the sums again, so that n bakes cost n
// solutions. With a half-life the others count less the longer before or after it they were. Errors: as
// [Bulk.Estimate]. Source: cross-validation by leaving one out.
func (l Lesson) Reviews() (all []Review, inside int, err error) {
	if len(l.rows) == 0 {
		return nil, 0, nil
	}
	g := l.Culture.of.group
	all = make([]Review, len(l.rows))
	order := l.order()
	g.Without(l.in.Person, l.in.Name, l.ordered(order), l.orderedWeights(order), func(k int, t *gasbalance.Taught) {
		if err != nil {
			return
		}
		i := order[k]
		if all[i], err = l.review(i, t); err != nil {
			err = quantity.At(indexed("Bakes", i), err)
			return
		}
		if all[i].Inside {
			inside++
		}
	})
	if err != nil {
		return nil, 0, err
	}
	return all, inside, nil
}

// review is what a culture taught by other bakes says of bake i.
func (l *Lesson) review(i int, t *gasbalance.Taught) (Review, error) {
	b := l.in.Bakes[i].Bulk
	b.Culture = Culture{}
	d, err := b.prepare(true)
	if err != nil {
		return Review{}, err
	}
	d.belief = t.Belief(int(b.Kneading)).For(d.law.Unusual(d.formula))
	d.clock = d.law.Clock(d.formula, d.belief.Mean)
	o := d.clock.Times(d.start, d.knots, d.need, &d.belief, hours(Horizon))
	r := Review{Took: l.in.Bakes[i].Took, Predicted: timeRange(o.Early, o.Likely, o.Late)}
	r.Inside = r.Predicted.Contains(r.Took.Duration())
	return r, nil
}
