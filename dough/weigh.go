package dough

import (
	"slices"

	"example.org/maslin/dough/quantity"
)

// Scales are what the kitchen weighs with: the step of the large scale, and of a fine one.
//
// The fine scale is used for salt and yeast of any weight and for every line lighter than
// FineBelow. A zero Fine means there is no fine scale; a zero FineBelow means 100 steps of
// Flour, below which one such step is off by more than half a percent.
type Scales struct {
	Flour     quantity.Mass `json:"flour"`         // step of the scale for flour and water: 1 g
	Fine      quantity.Mass `json:"fine,omitzero"` // step of the scale for salt and yeast: 0.1 g
	FineBelow quantity.Mass `json:"fine_below,omitzero"`
}

// Weighed is a line as a scale can weigh it.
type Weighed struct {
	DoughLine               // its Mass is what to weigh
	Exact     quantity.Mass `json:"exact"`            // what the formula asks for
	Residue   quantity.Mass `json:"residue,omitzero"` // Exact − Mass
	// of the scale it is weighed on; zero for a preferment, which is taken as it was made
	Step quantity.Mass `json:"step,omitzero"`
}

// WeighedBuild is a preferment or soaker as a scale can weigh it.
type WeighedBuild struct {
	Build   Build         `json:"build"` // names and kind; the exact weights
	Lines   []Weighed     `json:"lines"`
	Made    quantity.Mass `json:"made"` // Σ Lines
	Removed quantity.Mass `json:"removed,omitzero"`
	Left    quantity.Mass `json:"left,omitzero"` // not used; see [Build]
	Used    quantity.Mass `json:"used"`          // Made − Removed − Left: the line of that name in what it goes into
}

// Weighing is a batch in weights that a kitchen scale can weigh. Every list adds up exactly, a
// build's used weight is the weight of its line in what it goes into, and nothing hides:
// the residue of each line and of the whole is shown.
type Weighing struct {
	Batch   Batch          `json:"batch"` // exactly
	Scales  Scales         `json:"scales"`
	Builds  []WeighedBuild `json:"builds,omitzero"`
	Lines   []Weighed      `json:"lines"`            // the final dough
	Dough   quantity.Mass  `json:"dough"`            // Σ Lines
	Exact   quantity.Mass  `json:"exact"`            // the dough that was asked for
	Residue quantity.Mass  `json:"residue,omitzero"` // Exact − Dough
}

// Weigh rounds the batch to what the scales can weigh.
//
// On each list the lines of one scale are rounded by largest remainder: their sum is the exact sum
// rounded to the nearest step, and each line is less than one step from its exact weight. A line of fewer
// than 20 steps, such as 0.13 g of yeast on a scale of 0.1 g, is only rounded to its own nearest step; larger lines
// of the list take what that leaves. The weight of a preferment in the dough is what its rounded build
// weighs. Accuracy: each list is within half a step of each scale when it has a line of 20 steps
// on it, and otherwise within half a step for every line. Errors: ErrOutOfRange for steps that are not between 1 mg and
// 1 kg; ErrInconsistent for a fine step above the other.
func (b Batch) Weigh(s Scales) (Weighing, error) {
	s, err := s.check()
	if err != nil {
		return Weighing{}, err
	}
	w := Weighing{Batch: b, Scales: s, Exact: b.dough}
	builds := b.Builds()
	var used map[string]quantity.Mass
	if len(builds) > 0 {
		used = make(map[string]quantity.Mass, len(builds))
		w.Builds = make([]WeighedBuild, 0, len(builds))
	}
	for _, build := range builds {
		wb := WeighedBuild{Build: build, Lines: s.round(build.Lines, used)}
		for _, l := range wb.Lines {
			wb.Made = wb.Made.Add(l.Mass)
		}
		wb.Removed, wb.Left = s.nearest(build.Removed), s.nearest(build.Left)
		wb.Used = wb.Made.Sub(wb.Removed).Sub(wb.Left)
		used[build.Name] = wb.Used
		w.Builds = append(w.Builds, wb)
	}
	w.Lines = s.round(b.FinalDough(), used)
	for _, l := range w.Lines {
		w.Dough = w.Dough.Add(l.Mass)
	}
	w.Residue = w.Exact.Sub(w.Dough)
	return w, nil
}

func (s Scales) check() (Scales, error) {
	var p quantity.Problems
	low, high := quantity.Micrograms(1000), quantity.Kilograms(1)
	ok := quantity.Check(&p, "Flour", s.Flour, low, high)
	if !s.Fine.IsZero() {
		ok = quantity.Check(&p, "Fine", s.Fine, low, high) && ok
		if ok && s.Fine.Compare(s.Flour) > 0 {
			p.Add("Fine", s.Fine, quantity.Tell("dough.want_step_no_larger_than_other",
				"a step no larger than the %v of the other scale", s.Flour),
				quantity.ErrInconsistent)
		}
	}
	quantity.Check(&p, "FineBelow", s.FineBelow, quantity.Mass{}, quantity.Kilograms(100))
	if err := p.ErrFor(s); err != nil {
		return s, err
	}
	if s.Fine.IsZero() {
		s.Fine = s.Flour
	}
	if s.FineBelow.IsZero() {
		s.FineBelow = s.Flour.Times(100)
	}
	return s, nil
}

func (s Scales) fine(l DoughLine) bool {
	return l.Kind == KindSalt || l.Kind.Yeast() || l.Mass.Compare(s.FineBelow) < 0
}

func (s Scales) nearest(m quantity.Mass) quantity.Mass {
	step := s.Flour
	if m.Compare(s.FineBelow) < 0 {
		step = s.Fine
	}
	rounded, _ := m.RoundTo(step)
	return rounded
}

// round rounds one list. The weights of builds that are already rounded are given.
func (s Scales) round(lines []DoughLine, used map[string]quantity.Mass) []Weighed {
	out := make([]Weighed, len(lines))
	for i, l := range lines {
		out[i] = Weighed{DoughLine: l, Exact: l.Mass}
		switch {
		case l.Role == RolePreferment:
			out[i].Mass = used[l.Name]
			out[i].Residue = l.Mass.Sub(out[i].Mass)
		case s.fine(l):
			out[i].Step = s.Fine
		default:
			out[i].Step = s.Flour
		}
	}
	largestRemainder(out, s.Flour)
	if s.Fine != s.Flour {
		largestRemainder(out, s.Fine)
	}
	return out
}

// fewSteps is the weight in steps of the scale below which a line is never moved off its nearest step, so that
// rounding a list changes no line by more than a twentieth. Judgment.
const fewSteps = 20

// largestRemainder rounds the lines that are weighed in this step so that their sum is the exact
// sum, rounded. Each is first rounded to the nearest step; what the sum then lacks, or has too much,
// goes to the lines whose residues are largest, of those that are heavy enough.
func largestRemainder(lines []Weighed, step quantity.Mass) {
	var exact, sum quantity.Mass
	for i := range lines {
		if l := &lines[i]; l.Step == step {
			l.Mass, l.Residue = l.Exact.RoundTo(step)
			exact, sum = exact.Add(l.Exact), sum.Add(l.Mass)
		}
	}
	whole, _ := exact.RoundTo(step)
	least := step.Times(fewSteps)
	large := func(l *Weighed) bool { return l.Step == step && l.Exact.Compare(least) >= 0 }
	if !slices.ContainsFunc(lines, func(l Weighed) bool { return large(&l) }) {
		return
	}
	move := func(by quantity.Mass, better func(a, b quantity.Mass) bool) {
		best := nobody
		for i := range lines {
			if large(&lines[i]) && (best == nobody || better(lines[i].Residue, lines[best].Residue)) {
				best = i
			}
		}
		l := &lines[best]
		l.Mass, l.Residue = l.Mass.Add(by), l.Residue.Sub(by)
		sum = sum.Add(by)
	}
	for sum.Compare(whole) < 0 { // to the largest residue, the first of equals
		move(step, func(a, b quantity.Mass) bool { return a.Compare(b) > 0 })
	}
	for sum.Compare(whole) > 0 { // from the smallest residue, the last of equals
		move(step.Neg(), func(a, b quantity.Mass) bool { return a.Compare(b) <= 0 })
	}
}

// TooSmall lists what the scales cannot weigh well: lines whose rounding is more than a tenth
// of their exact weight, such as 0.04 g of yeast on a scale of 0.1 g. Such an amount is weighed as
// part of a larger one: dissolve 1 g of yeast in 99 g of water and weigh off the solution.
func (w Weighing) TooSmall() []Weighed {
	var out []Weighed
	add := func(lines []Weighed) {
		for _, l := range lines {
			r := l.Residue
			if r.Sign() < 0 {
				r = r.Neg()
			}
			if r.Times(10).Compare(l.Exact) > 0 {
				out = append(out, l)
			}
		}
	}
	for _, b := range w.Builds {
		add(b.Lines)
	}
	add(w.Lines)
	return out
}
