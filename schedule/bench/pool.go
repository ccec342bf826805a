package bench

import (
	"strconv"

	"example.org/maslin/dough/quantity"
)

// PersonLog is what one person observed.
type PersonLog struct {
	// Person is who observed; names differ.
	Person       string       `json:"person"`
	Observations Observations `json:"observations"`
}

// Class is several people's logs, such as those of a class or of the team of a kitchen.
type Class []PersonLog

// Pool answers: what do all these people's observations say together? Each observation is marked with whose it is, so
// that doughs and doubts stay with their baker, and scores can be told by person. What the pooled bakes teach is what
// a newcomer's ranges start from.
//
// Errors: ErrRequired for a log without a person; ErrInconsistent for two logs of one.
func (c Class) Pool() (Observations, error) {
	var p quantity.Problems
	var out Observations
	seen := map[string]bool{}
	for i, l := range c {
		path := "[" + strconv.Itoa(i) + "].Person"
		switch {
		case l.Person == "":
			p.Required(path, quantity.Tell("bench.want_whose_observations_they_are", "whose observations they are"))
		case seen[l.Person]:
			p.Add(path, quantity.Excerpt(l.Person), quantity.Tell("bench.want_one_log_each_person", "one log for each person"),
				quantity.ErrInconsistent)
		}
		seen[l.Person] = true
		for _, o := range l.Observations {
			o.By = l.Person
			out = append(out, o)
		}
	}
	if err := p.ErrFor(c); err != nil {
		return nil, err
	}
	return out.ByTime(), nil
}
