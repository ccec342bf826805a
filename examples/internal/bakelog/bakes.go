package bakelog

import (
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

// Bake is what the log says about one dough.
type Bake struct {
	Bread   string
	Mixed   time.Time
	Mix     Mix
	Rises   []Entry // in order of time
	Ready   *Entry  // the last of its kind
	Cores   []Entry
	Weights []Entry
	Notes   []Entry
}

// longest is how long after mixing an observation may belong to a dough: a judgment that leaves
// room for some days in the cold.
const longest = 5 * 24 * time.Hour

// Group sorts entries into bakes: an observation belongs to the dough of its bread that was mixed
// last before it, or to the last dough of any bread when it names none. What has no dough within
// five days is left out, and so are plans and steps. Entries must be in order of time.
func Group(entries []Entry) []Bake {
	var all []Bake
	last := map[string]int{}
	newest := -1
	for i := range entries {
		e := &entries[i]
		if e.Kind == KindMix {
			all = append(all, Bake{Bread: e.Bread, Mixed: e.At, Mix: *e.Mix})
			newest = len(all) - 1
			last[e.Bread] = newest
			continue
		}
		k := newest
		if e.Bread != "" {
			var ok bool
			if k, ok = last[e.Bread]; !ok {
				continue
			}
		}
		if k < 0 || e.At.Sub(all[k].Mixed) > longest {
			continue
		}
		b := &all[k]
		switch e.Kind {
		case KindRise:
			b.Rises = append(b.Rises, *e)
		case KindReady:
			b.Ready = e
		case KindCore:
			b.Cores = append(b.Cores, *e)
		case KindWeights:
			b.Weights = append(b.Weights, *e)
		case KindNote:
			b.Notes = append(b.Notes, *e)
		}
	}
	return all
}

// Leavening is what a culture is learned for.
type Leavening string

// The leavenings: each has its own culture.
const (
	Levain Leavening = "levain"
	Yeast  Leavening = "yeast"
	Both   Leavening = "levain and yeast"
)

// Leavening says how the dough was raised; empty when the log does not say.
func (m Mix) Leavening() Leavening {
	switch {
	case m.Yeast.Sign() > 0 && m.Inoculation.Sign() > 0:
		return Both
	case m.Yeast.Sign() > 0:
		return Yeast
	case m.Inoculation.Sign() > 0:
		return Levain
	}
	return ""
}

// LeaveningOf says how a dough is raised.
func LeaveningOf(b ferment.Bulk) Leavening {
	switch {
	case b.Yeast.Kind == ferment.NoYeast:
		return Levain
	case b.Inoculation.IsZero():
		return Yeast
	}
	return Both
}

// Bulk is the dough for package ferment, from mixing on, without its rise. Missing names what
// the log would have to say; the answer then is of no use. Without a probe the dough follows its
// room: in a covered tub when its weight is known, otherwise with a time constant of two hours.
func (m Mix) Bulk(readings []Reading) (bulk ferment.Bulk, missing []string, err error) {
	bulk = ferment.Bulk{
		WholeGrain: m.WholeGrain, Hydration: m.Hydration, Salt: m.Salt, Law: ferment.GasBalance(), Inoculation: m.Inoculation, Kneading: Kneading(m.Mixer),
	}
	switch m.Leavening() {
	case "":
		missing = append(missing, "inoculation or yeast")
	case Yeast, Both:
		bulk.Yeast = ferment.Yeast{Kind: yeastKinds[m.YeastKind], Amount: m.Yeast}
	}
	if m.Hydration.IsZero() {
		missing = append(missing, "hydration")
	}
	if len(readings) == 0 && m.Room.IsZero() {
		missing = append(missing, "room temperature or readings of a probe")
	}
	if len(missing) > 0 {
		return bulk, missing, nil
	}
	room := ferment.Room{Night: m.Room}
	switch {
	case len(readings) > 0:
		var points ferment.Readings
		for _, r := range readings {
			points.Points = append(points.Points, ferment.Knot{At: quantity.Elapsed(r.After.Duration()), Temperature: r.Temperature})
		}
		bulk.History, err = points.History()
	case m.Weight.Sign() > 0:
		bulk.History, err = ferment.Piece{Mass: m.Weight, Form: ferment.Tub, Start: m.Dough, Into: room, Exposure: ferment.Covered, For: quantity.Elapsed(48 * time.Hour)}.History()
	default:
		bulk.History, err = ferment.Relaxing{Start: m.Dough, Room: room}.History()
	}
	return bulk, nil, err
}

// Kneading is the way of kneading that a mixer means.
func Kneading(k mixing.MixerKind) ferment.KneadedBy {
	switch k {
	case 0:
		return ferment.KneadingUnstated
	case mixing.Hand:
		return ferment.ByHand
	}
	return ferment.ByMachine
}

// usefulRise is the rise below which a reading says too little about the pace to learn from.
const usefulRise = 10

// Dough is the bake as package ferment learns from it: how long it took to rise how far, by the
// entry that says it was ready, else by the last reading of 10 % or more. Why says what is
// missing when it cannot be learned from.
func (b Bake) Dough() (one ferment.LoggedBulk, why string) {
	var readings []Reading
	switch {
	case b.Ready != nil:
		one.Bulk.Rise, one.Took, readings = b.Ready.Ready.Rise, quantity.Elapsed(b.Ready.At.Sub(b.Mixed)), b.Ready.Ready.Readings
	case len(b.Rises) > 0 && b.Rises[len(b.Rises)-1].Rise.Rise.Points() >= usefulRise:
		last := b.Rises[len(b.Rises)-1]
		one.Bulk.Rise, one.Took, one.Error = last.Rise.Rise, quantity.Elapsed(last.At.Sub(b.Mixed)), last.Rise.Error
	default:
		return one, "no reading of 10 % or more, and not when it was ready"
	}
	bulk, missing, err := b.Mix.Bulk(readings)
	switch {
	case err != nil:
		return one, err.Error()
	case len(missing) > 0:
		return one, "not logged: " + join(missing)
	case one.Took.Duration() < time.Minute:
		return one, "ready in less than a minute after mixing"
	}
	bulk.Rise = one.Bulk.Rise
	one.Bulk = bulk
	if _, err := (ferment.Learning{Bakes: []ferment.LoggedBulk{one}}).Learn(); err != nil {
		return one, err.Error()
	}
	return one, ""
}

// Batch is the mixing of the bake as package mixing learns from it.
func (b Bake) Batch() (one mixing.Logged, why string) {
	m := b.Mix
	var missing []string
	need := func(absent bool, what string) {
		if absent {
			missing = append(missing, what)
		}
	}
	need(m.Mixer == 0, "mixer")
	need(m.FlourWeight.Sign() <= 0, "flour weight")
	need(m.Flour.IsZero(), "flour temperature")
	need(m.WaterWeight.Sign() <= 0, "water weight")
	need(m.Water.IsZero(), "water temperature")
	need(m.LevainWeight.Sign() > 0 && m.Levain.IsZero(), "levain temperature")
	need(m.Slow+m.Fast <= 0, "minutes of mixing")
	need(m.Bowl.IsZero() && m.Room.IsZero(), "bowl or room temperature")
	if len(missing) > 0 {
		return one, "not logged: " + join(missing)
	}
	one = mixing.Logged{Bowl: m.Bowl, Speeds: []quantity.Elapsed{m.Slow, m.Fast}, Dough: m.Dough, Ingredients: []mixing.Portion{
		{Name: "flour", Mass: m.FlourWeight, Temperature: m.Flour, Substance: mixing.Flour},
		{Name: "water", Mass: m.WaterWeight, Temperature: m.Water, Substance: mixing.Water},
	}}
	if one.Bowl.IsZero() {
		one.Bowl = m.Room
	}
	if m.LevainWeight.Sign() > 0 {
		one.Ingredients = append(one.Ingredients, mixing.Portion{Name: "levain", Mass: m.LevainWeight, Temperature: m.Levain, Substance: mixing.Levain, Hydration: quantity.NewPercent(100)})
	}
	if _, err := (mixing.Log{Kind: m.Mixer, Batches: []mixing.Logged{one}}).Learn(); err != nil {
		return one, err.Error()
	}
	return one, ""
}

func join(words []string) string {
	out := ""
	for i, w := range words {
		switch {
		case i == 0:
		case i == len(words)-1:
			out += " and "
		default:
			out += ", "
		}
		out += w
	}
	return out
}

// A Skipped bake could not be learned from.
type Skipped struct {
	Bread string
	Mixed time.Time
	Why   string
}

// Cultured is what the bakes with one leavening say.
type Cultured struct {
	Leavening Leavening
	Lesson    ferment.Lesson
	Bakes     []Bake               // those it rests on
	Doughs    []ferment.LoggedBulk // the same, as they were learned from
	Skipped   []Skipped
}

// Culture learns the culture of one leavening; ok is false without a bake to learn from.
func Culture(bakes []Bake, l Leavening) (c Cultured, ok bool, err error) {
	c.Leavening = l
	in := ferment.Learning{Robust: true}
	for _, b := range bakes {
		if b.Mix.Leavening() != l {
			continue
		}
		one, why := b.Dough()
		if why != "" {
			c.Skipped = append(c.Skipped, Skipped{b.Bread, b.Mixed, why})
			continue
		}
		in.Bakes = append(in.Bakes, one)
		c.Bakes = append(c.Bakes, b)
	}
	c.Doughs = in.Bakes
	if len(in.Bakes) == 0 {
		return c, false, nil
	}
	c.Lesson, err = in.Learn()
	return c, err == nil, err
}

// Mixed is what the bakes say about one way of mixing.
type Mixed struct {
	Kind    mixing.MixerKind
	Learned mixing.Learned
	Batches []mixing.Logged
	Skipped []Skipped
}

// Mixers learns every mixer of the log.
func Mixers(bakes []Bake) ([]Mixed, error) {
	var out []Mixed
	for kind := mixing.Hand; kind <= mixing.Processor; kind++ {
		m := Mixed{Kind: kind}
		for _, b := range bakes {
			if b.Mix.Mixer != kind {
				continue
			}
			one, why := b.Batch()
			if why != "" {
				m.Skipped = append(m.Skipped, Skipped{b.Bread, b.Mixed, why})
				continue
			}
			m.Batches = append(m.Batches, one)
		}
		if len(m.Batches) > 0 {
			var err error
			if m.Learned, err = (mixing.Log{Kind: kind, Batches: m.Batches}).Learn(); err != nil {
				return nil, err
			}
		}
		if len(m.Batches)+len(m.Skipped) > 0 {
			out = append(out, m)
		}
	}
	return out, nil
}

// Lost is what loaves of one style lose.
type Lost struct {
	Style   bake.Style
	Learned bake.LearnedLoss
}

// Losses learns the loss of every style of the log.
func Losses(entries []Entry) ([]Lost, error) {
	var out []Lost
	for _, style := range quantity.Values[bake.Style]() {
		in := bake.LossLog{Style: style}
		for _, e := range entries {
			if e.Kind == KindWeights && e.Weights.Style == style {
				in.Loaves = append(in.Loaves, bake.WeighedLoaf{Dough: e.Weights.In, Baked: e.Weights.Out})
			}
		}
		if len(in.Loaves) == 0 {
			continue
		}
		learned, err := in.Learn()
		if err != nil {
			return nil, err
		}
		out = append(out, Lost{style, learned})
	}
	return out, nil
}
