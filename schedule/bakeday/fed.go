package bakeday

import (
	"strconv"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
)

// FedLevain is a levain that is fed, once or in stages, and how it stands: the question is when each stage is ripe.
type FedLevain struct {
	Feedings []dough.Feeding `json:"feedings"` // in order, as in [dough.LevainPlan]
	// Ripening is what is the same for all stages: where it stands, its flour, its culture and the law. The seed of each
	// stage is that of its feeding, and ColdSeed is of the first.
	Ripening ferment.Ripening `json:"ripening"`
	// ChilledAfter is when the last stage goes into the refrigerator, from its feeding; 0: never.
	ChilledAfter quantity.Elapsed     `json:"chilled_after,omitzero"`
	Refrigerator quantity.Temperature `json:"refrigerator,omitzero"`
}

// Ripe answers: when is each stage ripe, counted from its feeding? What goes into the refrigerator is a tub there, as
// warm at first as it was on the counter ([ferment.Piece]).
//
// Valid range and accuracy: those of [ferment.Ripening.Ripe]. Errors: ErrRequired without feedings; ErrOutOfRange for a
// stage that is chilled later than after 30 days or within a minute; those of the ripening, under "Ripening", and of
// the feedings.
func (f FedLevain) Ripe() ([]ferment.Ripeness, error) {
	var p quantity.Problems
	if len(f.Feedings) == 0 {
		p.Required("Feedings", quantity.Tell("bakeday.want_feeding", "what the levain is fed with"))
	}
	if f.ChilledAfter != 0 {
		p.Duration("ChilledAfter", f.ChilledAfter.Duration(), time.Minute, ferment.Horizon)
	}
	if err := p.ErrFor(f); err != nil {
		return nil, err
	}
	out := make([]ferment.Ripeness, len(f.Feedings))
	for i, fed := range f.Feedings {
		r := f.Ripening
		seed, err := ferment.FeedRatio{Seed: fed.Starter.Mass.Grams(), Flour: fed.Flour.Grams(),
			SeedHydration: fed.Starter.Hydration}.SeedShare()
		p.Join("Feedings["+strconv.Itoa(i)+"]", err)
		r.Seed, r.ColdSeed = seed, r.ColdSeed && i == 0
		if i == len(f.Feedings)-1 && f.ChilledAfter > 0 && p.Err() == nil {
			r.History, err = f.chilled(fed)
			p.Join("", err)
		}
		if p.Err() == nil {
			out[i], err = r.Ripe()
			p.Join("Ripening", err)
		}
		if p.Err() != nil {
			return nil, p.ErrFor(f)
		}
	}
	return out, nil
}

// chilled is the counter, and the refrigerator after it.
func (f FedLevain) chilled(fed dough.Feeding) (ferment.History, error) {
	counter := f.Ripening.History
	cold, err := ferment.Piece{
		Mass: fed.Made(), Form: ferment.Tub, Start: counter.At(f.ChilledAfter.Duration()),
		Into: ferment.Room{Night: f.Refrigerator}, Exposure: ferment.Refrigerator,
	}.History()
	if err != nil {
		return cold, err
	}
	return ferment.Join(ferment.Stretch{History: counter, For: f.ChilledAfter}, ferment.Stretch{History: cold})
}

// RipeLevain is a plan of feedings, and when each of them is ripe where that was asked.
type RipeLevain struct {
	Plan     dough.LevainPlan   `json:"plan"`
	Rounding quantity.Mass      `json:"rounding,omitzero"` // what weighing on a scale leaves out
	Ripe     []ferment.Ripeness `json:"ripe,omitempty"`
}

// String is the headline of the report.
func (l RipeLevain) String() string { return l.Report().Headline.String() }

// Report tells the feedings, each with its ripeness behind it.
func (l RipeLevain) Report() report.Report {
	r := l.Plan.Report()
	stage := 0
	for i := range r.Sections {
		if r.Sections[i].Key != "feeding" || stage >= len(l.Ripe) {
			continue
		}
		ripe := l.Ripe[stage]
		stage++
		r.Sections[i].Blocks = append(r.Sections[i].Blocks,
			report.List(append([]working.Message{ripe.Message()}, ripe.Notes()...)))
		r.Cautions = ripe.Cautions()
	}
	return r
}

// Workings are those of the feedings and of each ripeness.
func (l RipeLevain) Workings() []working.Working {
	out := []working.Working{l.Plan.Working()}
	for _, r := range l.Ripe {
		out = append(out, r.Working())
	}
	return out
}
