package bakeday

import (
	"strings"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule"
)

// SheetFormat names the shape of [Sheet]; the number grows when a field changes its meaning.
const SheetFormat = "maslin plan 1"

// Sheet is a day as plain data, for a page, a screen or another program. Quantities marshal as text
// with their units, durations as "4h30m", instants as RFC 3339 with the offset of the kitchen's zone.
type Sheet struct {
	Format   string    `json:"format"`
	Name     string    `json:"name"`
	Zone     string    `json:"zone"`
	Now      time.Time `json:"now"`
	Wanted   time.Time `json:"wanted"`
	Possible bool      `json:"possible"`

	Weigh    []WeighList       `json:"weigh"`
	Formula  FormulaSheet      `json:"formula"`
	Water    WaterSheet        `json:"water"`
	Mixer    *MixerSheet       `json:"mixer,omitempty"`
	Levain   *LevainSheet      `json:"levain,omitempty"`
	Bulk     BulkSheet         `json:"bulk"`
	Retard   *RetardSheet      `json:"retard,omitempty"`
	Proof    *Range            `json:"proof,omitempty"`
	Oven     OvenSheet         `json:"oven"`
	Steps    []StepSheet       `json:"steps"`
	Why      *WhySheet         `json:"why_not,omitempty"`
	Missed   *MissedSheet      `json:"missed,omitempty"`
	Notes    []working.Message `json:"notes"`
	Cautions []CautionText     `json:"cautions"`
}

// Range is a prediction: Early to Late with the probability, Likely in the middle.
type Range struct {
	Early       quantity.Elapsed `json:"early"`
	Likely      quantity.Elapsed `json:"likely"`
	Late        quantity.Elapsed `json:"late"`
	Probability quantity.Percent `json:"probability"`
}

// NewRange makes data of a range, to the minute.
func NewRange(r quantity.TimeRange) Range {
	f := func(d time.Duration) quantity.Elapsed { return quantity.Elapsed(d.Round(time.Minute)) }
	return Range{f(r.Early), f(r.Likely), f(r.Late), r.Probability}
}

// TimeRange is the range as the library computes with it.
func (r Range) TimeRange() quantity.TimeRange {
	return quantity.TimeRange{Early: r.Early.Duration(), Likely: r.Likely.Duration(), Late: r.Late.Duration(), Probability: r.Probability}
}

// WeighList is one bowl: its lines add up exactly to Total, and Total + Residue is what the formula asks for.
type WeighList struct {
	Name    string        `json:"name"`
	Lines   []WeighLine   `json:"lines"`
	Total   quantity.Mass `json:"total"`
	Residue quantity.Mass `json:"residue"`
	Batches int           `json:"batches"`
}

// WeighLine is one ingredient. Portions are its parts for each batch, when there are several.
type WeighLine struct {
	Name     string           `json:"name"`
	Percent  quantity.Percent `json:"percent"` // of the flour on the list
	Mass     quantity.Mass    `json:"mass"`
	Portions []quantity.Mass  `json:"portions,omitempty"`
}

// FormulaSheet is the dough as a whole.
type FormulaSheet struct {
	Dough        quantity.Mass    `json:"dough"`
	Flour        quantity.Mass    `json:"flour"`
	Hydration    quantity.Percent `json:"hydration"`
	Effective    quantity.Percent `json:"effective_hydration"` // the water in milk, egg and the like included, as far as it is stated
	Prefermented quantity.Percent `json:"prefermented_flour"`
	Salt         quantity.Percent `json:"salt"`
	WholeGrain   quantity.Percent `json:"whole_grain"`
	Rye          quantity.Percent `json:"rye"`
	Pieces       int              `json:"pieces"`
	Scaling      quantity.Mass    `json:"scaling_weight"`
	Allergens    string           `json:"allergens"`
}

// WaterSheet is the water to pour for one batch.
type WaterSheet struct {
	Temperature quantity.Temperature      `json:"temperature"`
	Pour        quantity.Mass             `json:"pour"` // ice included
	Ice         quantity.Mass             `json:"ice"`
	Feasible    bool                      `json:"feasible"`
	Target      quantity.Temperature      `json:"dough_temperature"`
	Warming     quantity.TemperatureDelta `json:"warming"`
	Guess       bool                      `json:"warming_is_a_guide_value"`
	Factors     []FactorSheet             `json:"factors"`
	Remedies    []working.Message         `json:"remedies,omitempty"`
}

// FactorSheet is one temperature that the water answers to.
type FactorSheet struct {
	Name        string               `json:"name"`
	Temperature quantity.Temperature `json:"temperature"`
}

// MixerSheet is whether the batch fits.
type MixerSheet struct {
	Verdict  string          `json:"verdict"`
	Says     working.Message `json:"says"`
	MostLow  quantity.Mass   `json:"most_low"`
	MostHigh quantity.Mass   `json:"most_high"`
	Batches  int             `json:"batches"`
	Each     quantity.Mass   `json:"each"`
	Kneading []string        `json:"kneading,omitempty"`
	Ready    string          `json:"ready,omitempty"`
}

// LevainSheet is the levain after feeding.
type LevainSheet struct {
	Culture quantity.Mass `json:"culture"`
	Short   quantity.Mass `json:"culture_missing"`
	Left    quantity.Mass `json:"culture_left"` // of what is at hand, to feed and keep
	Ripe    Range         `json:"ripe"`
	Peak    Range         `json:"peak"`
	Until   Range         `json:"usable_until"`
}

// BulkSheet is the dough's clock until it is shaped.
type BulkSheet struct {
	Ready   Range                `json:"ready"`
	ShapeAt quantity.Percent     `json:"shape_at_rise"`
	Total   BandSheet            `json:"rise_in_oven"`
	Start   quantity.Temperature `json:"dough_at_start"`
	End     quantity.Temperature `json:"dough_at_end"`
	RestsOn []working.Message    `json:"rests_on"`
	Curve   []CurveSheet         `json:"curve"`
}

// BandSheet is a rise with its band.
type BandSheet struct {
	Low    quantity.Percent `json:"low"`
	Likely quantity.Percent `json:"likely"`
	High   quantity.Percent `json:"high"`
}

// CurveSheet is one point of the rise curve.
type CurveSheet struct {
	After       quantity.Elapsed     `json:"after"`
	Temperature quantity.Temperature `json:"temperature"`
	Rise        BandSheet            `json:"rise"`
}

// RetardSheet is the rest in the refrigerator.
type RetardSheet struct {
	For     quantity.Elapsed     `json:"for"`
	Into    quantity.Temperature `json:"refrigerator"`
	DoughIn quantity.Temperature `json:"dough_going_in"`
	DoughAt quantity.Temperature `json:"dough_coming_out"`
	WarmUp  quantity.Elapsed     `json:"warm_up"`
}

// OvenSheet is the bake.
type OvenSheet struct {
	Temperature quantity.Temperature `json:"temperature"`
	Preheat     quantity.Elapsed     `json:"preheat"`
	Covered     quantity.Elapsed     `json:"covered"`
	Uncovered   quantity.Elapsed     `json:"uncovered"`
	Reheat      quantity.Elapsed     `json:"reheat"`
	Rounds      int                  `json:"rounds"`
	Each        int                  `json:"loaves_in_a_round"`
	Core        quantity.Temperature `json:"core"`
	CoreFrom    quantity.Temperature `json:"core_from"`
	CoreTo      quantity.Temperature `json:"core_to"`
	Boiling     quantity.Temperature `json:"water_boils"`
	MinimumLoss quantity.Percent     `json:"minimum_loss"`
	Loss        quantity.Percent     `json:"loss"`
	UsualLoss   BandSheet            `json:"usual_loss"`
	Baked       quantity.Mass        `json:"baked"`
	Cooling     Range                `json:"cooling"`
	Slice       quantity.Temperature `json:"slice_at"`
	Rest        quantity.Elapsed     `json:"rest"`
}

// StepSheet is one line of the timetable.
type StepSheet struct {
	Name          string           `json:"name"`
	Start         time.Time        `json:"start"`
	End           time.Time        `json:"end"`
	EarliestStart time.Time        `json:"earliest_start"`
	LatestStart   time.Time        `json:"latest_start"`
	Hands         bool             `json:"hands"`
	Windows       []WindowSheet    `json:"windows"` // when it may start, other steps giving way
	Slack         quantity.Elapsed `json:"slack"`   // how much earlier it could start
	LookFrom      *time.Time       `json:"look_from,omitempty"`
	LookTo        *time.Time       `json:"look_to,omitempty"`
	Takes         quantity.Elapsed `json:"takes"`
}

// WindowSheet is a span of possible starts, both ends possible.
type WindowSheet struct {
	From time.Time `json:"from"`
	To   time.Time `json:"to"`
}

// WhySheet says why there is no timetable.
type WhySheet struct {
	Says    string           `json:"says"`
	Short   quantity.Elapsed `json:"short"`
	Rules   []RuleSheet      `json:"rules"`
	InOrder bool             `json:"in_order"` // beside the rules, each step follows the one before
	Earlier *time.Time       `json:"nearest_earlier,omitempty"`
	Later   *time.Time       `json:"nearest_later,omitempty"`
}

// RuleSheet is one rule that is in the way, and the least change of it alone that would help.
type RuleSheet struct {
	Words  string `json:"words"`
	Remedy string `json:"remedy,omitempty"`
}

// MissedSheet is the earlier day that can no longer be met.
type MissedSheet struct {
	Wanted time.Time `json:"wanted"`
	Why    *WhySheet `json:"why_not,omitempty"`
}

// CautionText is a caution with its source.
type CautionText struct {
	Subject string          `json:"subject"`
	Text    working.Message `json:"text"`
	Source  string          `json:"source"`
}

// thousandths rounds a computed temperature for data, which would otherwise carry digits that mean
// nothing; what the baker gave is left as it is.
func thousandths(t quantity.Temperature) quantity.Temperature {
	if !t.IsValid() {
		return t
	}
	return quantity.Celsius(roundTo(t.Celsius(), 1000))
}

func band(low, likely, high quantity.Percent) BandSheet { return BandSheet{low, likely, high} }

// Sheet turns the day into plain data.
func (d Day) Sheet() Sheet {
	s := Sheet{
		Format: SheetFormat, Name: d.Bake.Name, Zone: d.Bake.Zone, Now: d.Now.In(d.Zone).Truncate(time.Second), Wanted: d.Wanted.In(d.Zone), Possible: d.Possible(),
		Weigh: d.weighLists(), Notes: append([]working.Message{}, d.Notes...), Steps: []StepSheet{}, Cautions: []CautionText{},
	}
	b := d.Batch
	s.Formula = FormulaSheet{
		Dough: b.Dough(), Flour: b.Flour(), Hydration: b.Hydration(), Effective: b.EffectiveHydration().Hydration, Prefermented: b.Prefermented(), Salt: b.SaltShare(),
		WholeGrain: b.WholeGrain(), Rye: b.Rye(), Pieces: b.Pieces(), Scaling: b.ScalingWeight(), Allergens: b.Allergens().String(),
	}
	s.Water, s.Mixer = d.waterSheet()
	if l := d.Levain; l != nil {
		left := quantity.Mass{}
		if hand := d.Bake.Levain.CultureAtHand; !hand.IsZero() && l.Short.IsZero() {
			left, _ = hand.Sub(l.Culture).RoundDown(quantity.Grams(1))
		}
		s.Levain = &LevainSheet{l.Culture, l.Short, left, NewRange(l.Ripeness.From), NewRange(l.Ripeness.Peak), NewRange(l.Ripeness.Until)}
	}
	s.Bulk = d.bulkSheet()
	if d.Bake.Retard != nil {
		shaping := d.Bake.Shaping.Takes.Duration()
		s.Retard = &RetardSheet{
			For: quantity.Elapsed(d.Rising.Retard), Into: d.Bake.Kitchen.Refrigerator, WarmUp: d.Bake.Retard.WarmUp,
			DoughIn: thousandths(d.Rising.Bulk.Bulk().History.At(d.Rising.Bulk.Ready().Likely + shaping)), DoughAt: thousandths(d.Rising.FromCold),
		}
	} else if d.Rising.HasProof {
		r := NewRange(d.Rising.Proof)
		s.Proof = &r
	}
	o, k := d.Bake.Oven, d.Baking
	s.Oven = OvenSheet{
		Temperature: o.Temperature, Preheat: o.Preheat, Covered: o.Covered, Uncovered: o.Uncovered, Reheat: o.Reheat, Rounds: k.Rounds, Each: k.Each,
		Core: thousandths(k.Target.Core), CoreFrom: thousandths(k.Target.From), CoreTo: thousandths(k.Target.To), Boiling: thousandths(k.Target.Boiling), MinimumLoss: k.Doneness.MinimumLoss,
		Loss: k.Loss, UsualLoss: band(k.Usual.Low, k.Usual.Likely, k.Usual.High), Baked: d.Bake.Loaves.Baked,
		Cooling: NewRange(k.Cooling.Ready), Slice: thousandths(k.Cooling.Slice), Rest: quantity.Elapsed(k.Cooling.Rest),
	}
	if d.Possible() {
		s.Steps = d.stepSheets()
	} else {
		s.Why = d.why(d.Timetable.Conflict, d.Earlier, d.Later)
	}
	if m := d.Missed; m != nil {
		s.Missed = &MissedSheet{m.Wanted.In(d.Zone), d.why(m.Conflict, nil, nil)}
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
	for _, b := range d.Weighing.Builds {
		l := WeighList{Name: b.Build.Name, Total: b.Made, Batches: 1}
		for _, w := range b.Lines {
			l.Lines = append(l.Lines, WeighLine{Name: w.Name, Percent: w.Percent, Mass: w.Mass})
			l.Residue = l.Residue.Add(w.Residue)
		}
		out = append(out, l)
	}
	l := WeighList{Name: "dough", Total: d.Weighing.Dough, Residue: d.Weighing.Residue, Batches: d.Water.Mixes}
	turn := 0
	for _, w := range d.Weighing.Lines {
		line := WeighLine{Name: w.Name, Percent: w.Percent, Mass: w.Mass}
		if n := d.Water.Mixes; n > 1 {
			line.Portions = portions(w, n, turn, d.Weighing.Scales.Flour)
			if line.Portions[0] != line.Portions[n-1] {
				turn++
			}
		}
		l.Lines = append(l.Lines, line)
	}
	return append(out, l)
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

func (d Day) waterSheet() (WaterSheet, *MixerSheet) {
	w := d.Water
	s := WaterSheet{
		Temperature: thousandths(w.Temperature), Pour: w.Pour, Feasible: w.Feasible, Target: d.Bake.Mixing.Temperature, Warming: w.Rise, Guess: w.Guess,
	}
	for _, f := range w.Factors.Others {
		s.Factors = append(s.Factors, FactorSheet{f.Name, thousandths(f.Temperature)})
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
	m := &MixerSheet{Verdict: w.Fit.Fullness.String(), Says: w.Fit.Message(), MostLow: w.Fit.MostLow, MostHigh: w.Fit.MostHigh, Batches: w.Mixes, Each: w.Each, Ready: w.Fit.Ready}
	for _, k := range w.Fit.Times {
		m.Kneading = append(m.Kneading, k.String())
	}
	return s, m
}

func (d Day) bulkSheet() BulkSheet {
	e, r := d.Rising.Bulk, d.Rising
	h := e.Bulk().History
	s := BulkSheet{
		Ready: NewRange(e.Ready()), ShapeAt: r.ShapeAt, Total: band(r.InOven.Low, r.InOven.Likely, r.InOven.High),
		Start: thousandths(h.At(0)), End: thousandths(h.At(e.Ready().Likely)), RestsOn: e.RestsOn(),
	}
	for _, p := range e.RiseCurve(49) {
		s.Curve = append(s.Curve, CurveSheet{quantity.Elapsed(p.At.Duration().Round(time.Minute)), quantity.Celsius(roundTo(p.Temperature.Celsius(), 10)), band(p.Rise.Low, p.Rise.Likely, p.Rise.High)})
	}
	return s
}

func (d Day) stepSheets() []StepSheet {
	var out []StepSheet
	for _, i := range d.Timetable.ByTime() {
		t := d.Timetable.Steps[i]
		if imagined(t.Name) {
			continue
		}
		s := StepSheet{
			Name: t.Name, Start: t.Start.In(d.Zone), End: t.End.In(d.Zone), EarliestStart: t.EarliestStart.In(d.Zone), LatestStart: t.LatestStart.In(d.Zone),
			Hands: handsOn(t.Name), Takes: quantity.Elapsed(t.End.Sub(t.Start)),
		}
		s.Windows = []WindowSheet{}
		for _, w := range t.Windows {
			s.Windows = append(s.Windows, WindowSheet{w.From.In(d.Zone), w.To.In(d.Zone)})
		}
		s.Slack = quantity.Elapsed(t.Start.Sub(t.EarliestStart))
		if t.Watch != nil {
			from, to := t.Watch.From.In(d.Zone), t.Watch.To.In(d.Zone)
			s.LookFrom, s.LookTo = &from, &to
		}
		out = append(out, s)
	}
	return out
}

// handsOn reports whether a step keeps the baker busy.
func handsOn(name string) bool {
	switch name {
	case stepRipen, stepBulk, stepRetard, stepWarm, stepProof, stepCool, stepHeat:
		return false
	}
	return !standsBeforehand(name)
}

func (d Day) why(c *schedule.Conflict, earlier, later *time.Time) *WhySheet {
	if c == nil {
		if d.Rising.Feasible {
			return nil
		}
		return &WhySheet{Says: "even if shaped at once the dough would rise " + d.Rising.Unrisen.Text(0) + " before it is baked, more than the " + d.Bake.Bulk.Rise.Text(0) + " wanted: a shorter or colder rest after shaping, or less levain, would help"}
	}
	w := &WhySheet{Says: c.String(), Short: quantity.Elapsed(c.Short), Rules: []RuleSheet{}}
	for _, m := range c.Members {
		if strings.HasSuffix(m.Words, " at once") {
			w.InOrder = true // the order of the steps is not up for change
			continue
		}
		r := RuleSheet{Words: m.Words}
		if m.Enough {
			r.Remedy = m.Remedy
		}
		w.Rules = append(w.Rules, r)
	}
	at := func(t *time.Time) *time.Time {
		if t == nil {
			return nil
		}
		local := t.In(d.Zone)
		return &local
	}
	w.Earlier, w.Later = at(earlier), at(later)
	return w
}
