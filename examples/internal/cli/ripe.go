package cli

import (
	"strconv"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/ferment"
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
		return 0, 0, 0, &quantity.InputError{Got: quantity.Excerpt(text), Want: quantity.Tell("cli.want_seed_flour_water_by_weight", "seed : flour : water by weight, such as 1:2:2"), Err: quantity.ErrUnit}
	}
	return n[0], n[1], n[2], nil
}

// runLevainRipe answers for a levain just fed.
func runLevainRipe(s System, f *bulkFlags) error {
	in := f.in
	for _, n := range []string{"inoculation", "yeast", "salt", "hydration", "rise", "retard", "ready-by", "seen", "kneaded", "enriched", "svg", "piece", "shaping", "refrigerator"} {
		if in.given(n) {
			in.fault(n, quantity.Tell("cli.got_levain", "--%s with --levain", n), quantity.Tell("cli.want_one_them_belongs_to_dough", "one of them: --%s belongs to a dough, --levain asks about a levain", n), quantity.ErrInconsistent)
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
		Law: lawWith(f.curve, false), ColdSeed: f.bulk.ColdLevain, Extrapolate: f.bulk.Extrapolate,
	}
	if l.Culture, err = f.culture(s); len(quantity.InputErrors(err)) > 0 {
		return in.complain(err)
	} else if err != nil {
		return err
	}
	r, err := l.Ripe()
	if bad := in.complain(err); bad != nil {
		return bad
	}
	ripe, _, _ := r.Reached()
	told := levainRipe{Ripeness: r}
	if f.clocked {
		told.fed = f.start
	}
	return s.tell(f.output, told, ripe)
}

// levainRipe is when a levain is ripe, by the clock where it is known when it was fed.
type levainRipe struct {
	ferment.Ripeness
	fed time.Time
}

// Report tells it by the clock.
func (r levainRipe) Report() report.Report { return r.ReportFrom(r.fed) }
