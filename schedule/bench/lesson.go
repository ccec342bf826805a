package bench

import (
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
)

// Unused is a bake that could not be learned from, and why.
type Unused struct {
	Bread string          `json:"bread,omitempty"`
	Mixed time.Time       `json:"mixed"`
	Why   working.Message `json:"why"`
}

// CultureLesson is what the bakes with one leavening teach.
type CultureLesson struct {
	Raising Raising        `json:"raising"`
	Lesson  ferment.Lesson `json:"lesson"`
	Bakes   []LoggedBake   `json:"bakes"` // those it rests on
	Unused  []Unused       `json:"unused,omitempty"`
	Older   int            `json:"older,omitzero"` // so many before them count no more
}

// MixerLesson is what the bakes teach about one way of mixing.
type MixerLesson struct {
	Mixer   mixing.MixerKind `json:"mixer"`
	Learned mixing.Learned   `json:"learned"`
	Batches []mixing.Logged  `json:"batches"`
	Unused  []Unused         `json:"unused,omitempty"`
	Older   int              `json:"older,omitzero"` // so many before them count no more
}

// LossLesson is what loaves of one style lose.
type LossLesson struct {
	Style   bake.Style       `json:"style"`
	Learned bake.LearnedLoss `json:"learned"`
}

// Lessons are everything that observations teach.
type Lessons struct {
	Observations int             `json:"observations"`
	Bakes        int             `json:"bakes"`
	Mixers       []MixerLesson   `json:"mixers,omitempty"`
	Cultures     []CultureLesson `json:"cultures,omitempty"`
	Losses       []LossLesson    `json:"losses,omitempty"`
	Doubts       []Doubt         `json:"doubts,omitempty"`
	// HalfLife is after how long a bake counts half, where it was given; zero: each culture's log chooses.
	HalfLife quantity.Elapsed `json:"half_life,omitzero"`
}

// Learn answers: what do all observations teach about mixers, cultures and loaves? Each culture is learned robustly, so
// that one wild bake does little; see [ferment.Learning.Learn], [mixing.Log.Learn] and [bake.LossLog.Learn]. After
// halfLife a bake counts half for what is known of its culture, so that one that changes is followed; with 0 the log
// chooses whether bakes fade ([ferment.Lesson.HalfLife]). A kitchen's own is [bakeday.Kitchen.HalfLife]. Mixers and
// ovens are not taken to change.
//
// Errors: ErrOutOfRange for a half-life other than 0 under one day or over 366 days; those of the three, which
// observations that pass [Observation.Check] do not cause.
func (all Observations) Learn(halfLife time.Duration) (Lessons, error) {
	out := Lessons{Observations: len(all), HalfLife: quantity.Elapsed(halfLife)}
	if halfLife != 0 {
		var p quantity.Problems
		p.Duration("HalfLife", halfLife, 24*time.Hour, 366*24*time.Hour)
		if err := p.ErrFor(out); err != nil {
			return Lessons{}, err
		}
	}
	judged := all.judge()
	out.Doubts = judged.doubts
	believed := judged.believed()
	bakes := believed.ByTime().grouped()
	out.Bakes = len(bakes)
	for _, kind := range quantity.Values[mixing.MixerKind]() {
		one, ok, err := learnMixer(kind, bakes)
		if err != nil {
			return out, err
		}
		if ok {
			out.Mixers = append(out.Mixers, one)
		}
	}
	for _, r := range quantity.Values[Raising]() {
		one, err := learnCulture(r, bakes, judged.doughs, halfLife)
		if err != nil {
			return out, err
		}
		if len(one.Bakes)+len(one.Unused) > 0 {
			out.Cultures = append(out.Cultures, one)
		}
	}
	var err error
	out.Losses, err = learnLosses(believed)
	return out, err
}

func learnMixer(kind mixing.MixerKind, bakes []LoggedBake) (out MixerLesson, ok bool, err error) {
	out.Mixer = kind
	for _, b := range bakes {
		if b.Mix.Mixer != kind {
			continue
		}
		one, why := b.Batch()
		if !why.IsZero() {
			out.Unused = append(out.Unused, Unused{b.Bread, b.Mixed, why})
			continue
		}
		out.Batches = append(out.Batches, one)
	}
	out.Batches, out.Older = latest(out.Batches, mostBatches)
	if len(out.Batches) > 0 {
		out.Learned, err = mixing.Log{Kind: kind, Batches: out.Batches}.Learn()
	}
	return out, len(out.Batches)+len(out.Unused) > 0, err
}

// Learning has no end: beyond these the latest are learned from, and the answer says how many are not. A mixer is
// known long before; the limits are those of [mixing.Log] and [ferment.Learning].
const (
	mostBatches = 10_000
	mostBakes   = 100_000
)

// latest are the last of a list that is in order of time, and how many come before them.
func latest[T any](all []T, most int) ([]T, int) {
	older := max(0, len(all)-most)
	return all[older:], older
}

func learnCulture(r Raising, bakes []LoggedBake, known doughs, halfLife time.Duration) (
	out CultureLesson, err error,
) {
	out.Raising = r
	in := ferment.Learning{Robust: true, HalfLife: quantity.Elapsed(halfLife)}
	for _, b := range bakes {
		if b.Mix.RaisedBy() != r {
			continue
		}
		one, why := b.taught(known)
		if !why.IsZero() {
			out.Unused = append(out.Unused, Unused{b.Bread, b.Mixed, why})
			continue
		}
		one.On = b.Mixed
		in.Bakes = append(in.Bakes, one)
		out.Bakes = append(out.Bakes, b)
	}
	in.Bakes, out.Older = latest(in.Bakes, mostBakes)
	out.Bakes, _ = latest(out.Bakes, mostBakes)
	if len(in.Bakes) > 0 {
		out.Lesson, err = in.Learn()
	}
	return out, err
}

func learnLosses(believed Observations) ([]LossLesson, error) {
	var out []LossLesson
	for _, style := range quantity.Values[bake.Style]() {
		in := bake.LossLog{Style: style}
		for _, o := range believed {
			if o.Kind == SawWeights && o.Weights.Style == style {
				in.Loaves = append(in.Loaves, bake.WeighedLoaf{Dough: o.Weights.In, Baked: o.Weights.Out})
			}
		}
		if len(in.Loaves) == 0 {
			continue
		}
		in.Loaves, _ = latest(in.Loaves, mostBatches)
		learned, err := in.Learn()
		if err != nil {
			return nil, err
		}
		out = append(out, LossLesson{style, learned})
	}
	return out, nil
}

// Culture is what is taught about doughs raised so; the zero value is nothing.
func (l Lessons) Culture(r Raising) ferment.Culture {
	for _, c := range l.Cultures {
		if c.Raising == r && len(c.Bakes) > 0 {
			return c.Lesson.Culture
		}
	}
	return ferment.Culture{}
}

// Mixer is what is taught about a way of mixing; ok is false when it is nothing.
func (l Lessons) Mixer(kind mixing.MixerKind) (lesson MixerLesson, ok bool) {
	for _, m := range l.Mixers {
		if m.Mixer == kind && len(m.Batches) > 0 {
			return m, true
		}
	}
	return MixerLesson{}, false
}

// Loss is what loaves of the style were seen to lose; ok is false when none was weighed.
func (l Lessons) Loss(style bake.Style) (learned bake.LearnedLoss, ok bool) {
	for _, x := range l.Losses {
		if x.Style == style {
			return x.Learned, true
		}
	}
	return bake.LearnedLoss{}, false
}
