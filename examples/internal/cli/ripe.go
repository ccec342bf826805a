package cli

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule/bakeday"
)

// feedOf reads "1:2:2", seed : flour : water by weight.
func feedOf(text string) (seed, flour, water float64, err error) {
	parts := strings.Split(text, ":")
	var n [3]float64
	if len(parts) == 3 {
		for i, part := range parts {
			if n[i], err = strconv.ParseFloat(strings.TrimSpace(part), 64); err != nil || !(n[i] > 0) || n[i] > 10_000 {
				break
			}
		}
	}
	if len(parts) != 3 || err != nil || !(n[0] > 0 && n[1] > 0 && n[2] > 0) {
		return 0, 0, 0, &quantity.InputError{Got: quantity.Excerpt(text), Want: "seed : flour : water by weight, such as 1:2:2", Err: quantity.ErrUnit}
	}
	return n[0], n[1], n[2], nil
}

// runLevainRipe answers for a levain just fed.
func runLevainRipe(s System, f *bulkFlags) error {
	in := f.in
	for _, n := range []string{"inoculation", "yeast", "salt", "hydration", "rise", "retard", "ready-by", "seen", "kneaded", "enriched", "svg", "piece", "shaping", "refrigerator"} {
		if in.given(n) {
			in.fault(n, "--"+n+" with --levain", "one of them: --"+n+" belongs to a dough, --levain asks about a levain", quantity.ErrInconsistent)
		}
	}
	seed, flour, water, err := feedOf(f.levain)
	if err != nil {
		in.note("levain", err)
		return in.complain(nil)
	}
	in.paths["Seed"], in.paths["seed"], in.paths["SeedHydration"] = "levain", "levain", "seed-hydration"
	share, err := ferment.FeedRatio{Seed: seed, Flour: flour, SeedHydration: f.seedHydration}.SeedShare()
	if err != nil {
		return in.complain(err)
	}
	inSeed := f.seedHydration.Fraction()
	seedFlour := seed / (1 + inSeed)
	hydration := (seed - seedFlour + water) / (seedFlour + flour)
	l := ferment.Ripening{
		Seed: share, Hydration: quantity.NewPercent(100 * hydration), WholeGrain: f.bulk.WholeGrain, History: f.bulk.History,
		Law: f.law(), ColdSeed: f.bulk.ColdLevain, Extrapolate: f.bulk.Extrapolate,
	}
	if l.Culture, err = f.culture(s); err != nil {
		return err
	}
	r, err := l.Ripe()
	if bad := in.complain(err); bad != nil {
		return bad
	}
	ripe, _, _ := r.Reached()
	data := ripeSheet{Format: "maslin levain 1", Seed: tenthPercent(share), Hydration: tenthPercent(l.Hydration), Ripe: bakeday.NewRange(r.From), Peak: bakeday.NewRange(r.Peak), Until: bakeday.NewRange(r.Until), Reached: ripe, Notes: metric(r.Notes())}
	if f.clocked {
		data.Fed = &f.start
	}
	return s.show(f.output, answer{
		page: func(p *page, u units) { ripePage(p, f, l, r, u) }, data: data,
		workings: []working.Working{r.Working()}, cautions: r.Cautions(), no: !ripe,
	})
}

type ripeSheet struct {
	Format    string           `json:"format"`
	Fed       *time.Time       `json:"fed,omitempty"`
	Seed      quantity.Percent `json:"flour_in_the_seed"`
	Hydration quantity.Percent `json:"hydration"`
	Reached   bool             `json:"reached"`
	Ripe      bakeday.Range    `json:"ripe"`
	Peak      bakeday.Range    `json:"peak"`
	Until     bakeday.Range    `json:"usable_until"`
	Notes     []string         `json:"notes"`
}

func ripePage(p *page, f *bulkFlags, l ferment.Ripening, r ferment.Ripeness, u units) {
	p.para(0, fmt.Sprintf("A levain fed %s (seed : flour : water): %s of its flour comes with the seed, hydration %s; %s",
		printable(f.levain), percent(l.Seed, 1), percent(l.Hydration, 0), stands(f, "the feed", u)))
	p.heading("From the feed")
	ripe, peak, past := r.Reached()
	for _, line := range []struct {
		words   string
		r       quantity.TimeRange
		reached bool
	}{{"ripe", r.From, ripe}, {"stands highest", r.Peak, peak}, {"usable until", r.Until, past}} {
		if !line.reached {
			p.para(2, line.words+": not within 30 days")
			continue
		}
		text := line.words + ": " + line.r.String()
		p.para(2, text)
		if f.clocked {
			p.para(4, clockRange(line.r, f.start))
		}
	}
	p.heading("What to look for")
	p.para(2, "ripe: domed, full of bubbles to the wall of the jar, smells fresh and a little sour; past its best: the middle has sunk and it smells sharp")
	for _, n := range r.Notes() {
		p.para(2, "· "+u.say(n))
	}
}
