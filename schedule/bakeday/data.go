package bakeday

import (
	"math"
	"slices"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// thousandths rounds a computed temperature for data, which would otherwise carry digits that mean
// nothing; what the baker gave is left as it is.
//
// Where the thousandth would stand in the middle between two degrees or tenths, as it is shown, more digits are kept:
// who rounds it for a person must come to what the number itself rounds to.
func thousandths(t quantity.Temperature) quantity.Temperature {
	if !t.IsValid() {
		return t
	}
	out := t
	for _, to := range []float64{1e3, 1e4, 1e5, 1e6} {
		c := roundTo(t.Celsius(), to)
		if out = quantity.Celsius(c); !tied(c) && !tied(10*c) {
			break
		}
	}
	return out
}

// tenths rounds what every page shows to a tenth of a degree: rounded to thousandths first, 94.1499 °C would be shown
// as 94.2 by whoever tells the data and as 94.1 by whoever tells the day.
func tenths(t quantity.Temperature) quantity.Temperature {
	if !t.IsValid() {
		return t
	}
	return quantity.Celsius(roundTo(t.Celsius(), 10))
}

// tied reports whether a number lies in the middle between two whole ones.
func tied(x float64) bool { return math.Abs(x-math.Floor(x)-0.5) < 1e-7 }

// Data turns the day into plain data.
func (d Day) Data() PlanData {
	if !d.made() {
		return PlanData{Format: PlanFormat, Notes: []working.Message{}, Steps: []StepData{}, Cautions: []CautionText{}}
	}
	s := PlanData{
		Format: PlanFormat, Name: d.Bake.Name, Zone: d.Bake.Kitchen.Zone, Now: d.Now.In(d.Zone).Truncate(time.Second),
		Wanted: d.Wanted.In(d.Zone), Possible: d.Possible(), TimeRanOut: d.TimeRanOut,
		Survives: quantity.NewPercent(100 * d.Robust.Share),
		Weigh:    d.weighLists(), Notes: append([]working.Message{}, d.Notes...), Steps: []StepData{},
		Cautions: []CautionText{},
	}
	b := d.Batch
	s.Formula = FormulaData{
		Dough: b.Dough(), Flour: b.Flour(), Hydration: b.Hydration(), Effective: b.EffectiveHydration().Hydration,
		Prefermented: b.Prefermented(), Salt: b.SaltShare(),
		WholeGrain: b.WholeGrain(), Rye: b.Rye(), Pieces: b.Pieces(), Scaling: b.ScalingWeight(), Divide: d.divide(),
		Allergens: b.Allergens().String(),
	}
	s.Water, s.Mixer = d.waterData()
	s.Water.Portions = d.pouredEach(s.Weigh)
	if l := d.Levain; l != nil {
		left := quantity.Mass{}
		if hand := d.Bake.Levain.CultureAtHand; !hand.IsZero() && l.Short.IsZero() {
			left, _ = hand.Sub(l.Culture).RoundDown(quantity.Grams(1))
		}
		s.Levain = &LevainData{
			l.Culture,
			l.Short,
			left,
			toMinutes(l.Ripeness.From),
			toMinutes(l.Ripeness.Peak),
			toMinutes(l.Ripeness.Until),
		}
	}
	for i, r := range d.Preferments {
		if x := d.Bake.Preferments[i]; x.computed() {
			s.Preferments = append(s.Preferments, RipePreferment{x.Name, toMinutes(r.From), toMinutes(r.Peak),
				toMinutes(r.Until)})
		}
	}
	s.Bulk = d.bulkData()
	if d.Bake.Retard != nil {
		before := d.Bake.Shaping.Takes.Duration() // the cold
		if d.Bake.undivided() {
			before = puttingIn.Duration()
		}
		s.Retard = &RetardData{
			For: d.inCold(), Into: d.Bake.Kitchen.Refrigerator, WarmUp: d.Bake.Retard.WarmUp,
			DoughIn: thousandths(d.Rising.Bulk.Bulk().History.At(d.Rising.Bulk.Ready().Likely + before)),
			DoughAt: thousandths(d.Rising.FromCold), IntoOven: thousandths(d.Rising.Into), Undivided: d.Bake.undivided(),
		}
	} else if d.Rising.HasProof {
		r := toMinutes(d.Rising.Proof)
		s.Proof = &r
	}
	o, k := d.Bake.Oven, d.Baking
	s.Oven = OvenData{
		Temperature: o.Temperature, Then: o.Then, Takes: toMinutes(k.Program.Bake), GuideTime: k.Guide, Preheat: o.Preheat,
		Covered: o.Covered, Uncovered: o.Uncovered, Reheat: o.Reheat, Rounds: k.Rounds, Each: k.Each, Decks: k.Decks,
		Pots: min(o.Pots, k.Each),
		Core: tenths(k.Target.Core), Boiling: tenths(k.Target.Boiling),
		CoreFrom: tenths(k.Target.From), CoreTo: tenths(k.coreTo()),
		MinimumLoss: k.Doneness.MinimumLoss,
		Loss:        k.Loss, UsualLoss: k.Usual.Loss, Baked: d.Bake.Loaves.Baked,
		Cooling: toMinutes(k.Cooling.Ready), Slice: thousandths(k.Cooling.Slice), Rest: k.Cooling.Rest,
	}
	if d.Possible() {
		s.Steps = d.stepData()
	} else {
		s.Why = d.why()
	}
	if m := d.Missed; m != nil {
		s.Missed = &Missed{m.Wanted.In(d.Zone), m.Why}
	}
	for _, c := range d.Cautions() {
		s.Cautions = append(s.Cautions, CautionText{string(c.Subject), c.Text, sourceText(c.Source)})
	}
	return s
}

func sourceText(s working.Source) string {
	if s.IsZero() {
		return ""
	}
	return s.String()
}

func (d Day) weighLists() []WeighList {
	var out []WeighList
	scalds := d.scalds()
	for _, b := range d.Weighing.Builds {
		if b.Build.Name == levainName && (d.Bake.Levain.standing() || d.sharesLevain()) {
			continue // it stands there, or is weighed once for all: nothing of it is weighed but what goes into the dough
		}
		l := weighBuild(b)
		if s, ok := scalds[l.Name]; ok {
			l.Says = append(scaldSays(s), l.Says...)
		}
		out = append(out, l)
	}
	l := WeighList{Name: "dough", Total: d.Weighing.Dough, Residue: d.Weighing.Residue, Batches: d.Water.Mixes}
	turn := 0
	for _, w := range d.Weighing.Lines {
		line := WeighLine{Name: w.Name, Percent: w.Percent, Mass: w.Mass}
		line.At, line.Fold = d.Bake.moment(w.Name)
		if n := d.Water.Mixes; n > 1 {
			line.Portions = portions(w, n, turn, d.Weighing.Scales.Flour)
			if line.Portions[0] != line.Portions[n-1] {
				turn++
			}
		}
		l.Lines, l.Says = append(l.Lines, line), append(l.Says, line.unseen(w.Exact)...)
	}
	// What ripens gives off gas and dries a little, and some of it stays in the jar: common practice, no source.
	if l.Batches > 1 && d.Levain != nil && !d.Bake.Levain.standing() && !d.sharesLevain() {
		l.Says = append(l.Says, working.Tell("bakeday.last_takes_rest",
			"the last batch takes what is left of the levain: ripe it weighs a little less than what was fed"))
	}
	return append(out, l)
}

// sharesLevain reports whether the levain feeds other breads too.
func (d Day) sharesLevain() bool { return d.Levain != nil && !d.Levain.Shared.IsZero() }

func weighBuild(b dough.WeighedBuild) WeighList {
	l := WeighList{Name: b.Build.Name, Total: b.Made, Batches: 1}
	for _, w := range b.Lines {
		line := WeighLine{Name: w.Name, Percent: w.Percent, Mass: w.Mass}
		l.Lines, l.Says = append(l.Lines, line), append(l.Says, line.unseen(w.Exact)...)
		l.Residue = l.Residue.Add(w.Residue)
	}
	return l
}

// unseen says how to weigh a line of which the scale shows nothing, in all or for one of the batches.
func (l WeighLine) unseen(exact quantity.Mass) []working.Message {
	one := exact.Divide(int64(max(1, len(l.Portions))))
	shown := !l.Mass.IsZero() && !slices.ContainsFunc(l.Portions, quantity.Mass.IsZero)
	if shown || one.Sign() <= 0 {
		return nil
	}
	return []working.Message{tooSmall(one, l.Name)}
}

// portions divides a weighed line among batches in whole steps of its scale; the steps that are left
// over go to the batches from the given one on, so that the batches come out alike.
func portions(w dough.Weighed, n, from int, scale quantity.Mass) []quantity.Mass {
	step := w.Step
	if step.IsZero() { // a build, whose weight follows from its own list
		step = scale
	}
	each, _ := w.Mass.Divide(int64(n)).RoundDown(step)
	left := w.Mass.Sub(each.Times(int64(n)))
	out := make([]quantity.Mass, n)
	for i := range out {
		k := (from + i) % n
		out[k] = each
		if left.Compare(step) >= 0 {
			out[k], left = out[k].Add(step), left.Sub(step)
		}
	}
	out[from%n] = out[from%n].Add(left)
	return out
}

func (d Day) waterData() (WaterData, *MixerData) {
	w := d.Water
	s := WaterData{
		Temperature: thousandths(w.Temperature),
		Pour:        w.Pour, Liquids: w.Liquids, Feasible: w.Feasible,
		Target: d.Bake.Mixing.Temperature, Warming: w.Warming, Guess: w.Guess,
	}
	for _, f := range w.Factors {
		s.Factors = append(s.Factors, FactorData{f.Name, thousandths(f.Temperature)})
	}
	for _, r := range w.Remedies {
		s.Remedies = append(s.Remedies, r.Text)
		if s.Ice.IsZero() {
			s.Ice = r.Ice
		}
	}
	if !w.HasFit {
		return s, nil
	}
	m := &MixerData{
		Kind:     d.Bake.Mixing.Mixer,
		Verdict:  w.Fit.Fullness,
		Says:     w.Fit.Message(),
		MostLow:  w.Fit.MostLow,
		MostHigh: w.Fit.MostHigh,
		Batches:  w.Mixes,
		Each:     w.Each,
		Ready:    w.Fit.Kneading.Ready,
	}
	for _, k := range w.Fit.Kneading.Stages {
		m.Kneading = append(m.Kneading, k.Message())
	}
	return s, m
}

func (d Day) bulkData() BulkData {
	e, r := d.Rising.Bulk, d.Rising
	h := e.Bulk().History
	s := BulkData{
		Box:   d.Bake.Bulk.Box,
		Ready: toMinutes(e.Ready()), ShapeAt: r.ShapeAt, Total: r.InOven,
		Start: thousandths(h.At(0)), End: thousandths(h.At(e.Ready().Likely)), RestsOn: e.RestsOn(),
	}
	for _, p := range e.RiseCurve(49) {
		p.At = quantity.Elapsed(p.At.Duration().Round(time.Minute))
		p.Temperature = quantity.Celsius(roundTo(p.Temperature.Celsius(), 10))
		s.Curve = append(s.Curve, p)
	}
	return s
}

func (d Day) stepData() []StepData {
	var out []StepData
	for _, i := range d.Timetable.ByTime() {
		t := d.Timetable.Steps[i]
		if t.Spare {
			continue
		}
		s := StepData{
			ID: t.ID, Kind: t.Kind, Number: t.Number, Of: t.Of, Bread: t.Bread, Thing: t.Thing, Name: t.Title(),
			Start: t.Start.In(d.Zone),
			End:   t.End.In(d.Zone), EarliestStart: t.EarliestStart.In(d.Zone), LatestStart: t.LatestStart.In(d.Zone),
			Hands: t.Kind.Hands(), Takes: quantity.Elapsed(t.End.Sub(t.Start)), Windows: []quantity.Window{},
			Slack: t.Slack, Earlier: quantity.Elapsed(t.Start.Sub(t.EarliestStart)),
		}
		for _, w := range t.Windows {
			s.Windows = append(s.Windows, quantity.Window{From: w.From.In(d.Zone), To: w.To.In(d.Zone)})
		}
		if t.Watch != nil {
			from, to := t.Watch.From.In(d.Zone), t.Watch.To.In(d.Zone)
			s.LookFrom, s.LookTo = &from, &to
		}
		out = append(out, s)
		if t.Kind == schedule.Bake {
			out = append(out, d.tending(s)...)
		}
	}
	byTime(out)
	for i := range out {
		out[i].Adds, out[i].Notes = d.adds(out[i]), d.Bake.notesOn(out[i])
	}
	return out
}

// byTime sorts steps by their starts.
func byTime(steps []StepData) {
	slices.SortStableFunc(steps, func(a, b StepData) int { return a.Start.Compare(b.Start) })
}

// inCold is how long the loaves rest in the cold: as the timetable has it, where there is one.
func (d Day) inCold() quantity.Elapsed {
	if s, ok := d.Timetable.Step(idRetard); ok && d.Possible() {
		return quantity.Elapsed(s.End.Sub(s.Start))
	}
	return d.Rising.Retard
}
