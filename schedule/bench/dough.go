package bench

import (
	"time"

	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/enum"
)

// Raising says what raises a dough. Each has a culture of its own.
type Raising int

// What raises a dough.
const (
	ByLevain Raising = iota + 1
	ByYeast
	ByLevainAndYeast
)

var raisings = enum.Of[Raising]("leavening", "", "levain", "yeast", "levain and yeast")

// String returns the word.
func (r Raising) String() string { return raisings.String(r) }

// MarshalText implements encoding.TextMarshaler.
func (r Raising) MarshalText() ([]byte, error) { return raisings.Marshal(r) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (r *Raising) UnmarshalText(text []byte) error { return raisings.Unmarshal(r, text) }

func raisedBy(levain, yeast bool) Raising {
	switch {
	case levain && yeast:
		return ByLevainAndYeast
	case yeast:
		return ByYeast
	case levain:
		return ByLevain
	}
	return 0
}

// RaisedBy says what raised the dough; zero when the observation does not say.
func (m DoughMixed) RaisedBy() Raising {
	return raisedBy(m.Inoculation.Sign() > 0, m.Yeast.Sign() > 0)
}

// RaisingOf says what raises a dough that is planned: its culture is that of doughs raised so.
func RaisingOf(b ferment.Bulk) Raising {
	return raisedBy(!b.Inoculation.IsZero(), b.Yeast.Kind != ferment.NoYeast || len(b.Preferments) > 0)
}

// Bulk answers: how does the dough ferment from mixing on? It has no Rise yet. Missing names what the observation
// would have to say; the answer then is of no use. Without a probe the dough follows its room: in a covered tub when
// its weight is known, otherwise with a time constant of two hours.
func (m DoughMixed) Bulk(probe []ferment.Knot) (bulk ferment.Bulk, missing []working.Message, err error) {
	bulk = ferment.Bulk{
		WholeGrain: m.WholeGrain, Hydration: m.Hydration, Salt: m.Salt, Sugar: m.Sugar, Altitude: m.Altitude,
		Law:         ferment.GasBalance(),
		Inoculation: m.Inoculation, Kneading: kneadedBy(m.Mixer), Enriched: m.Enriched,
	}
	need := func(absent bool, what working.Message) {
		if absent {
			missing = append(missing, what)
		}
	}
	if m.Yeast.Sign() > 0 {
		bulk.Yeast = ferment.Yeast{Kind: m.YeastKind, Amount: m.Yeast}
	}
	need(m.RaisedBy() == 0, working.Tell("bench.need_leavening", "inoculation or yeast"))
	need(m.Hydration.IsZero(), working.Tell("bench.need_hydration", "hydration"))
	need(len(probe) == 0 && m.Room.IsZero(), working.Tell("bench.need_room", "room temperature or readings of a probe"))
	if len(missing) > 0 {
		return bulk, missing, nil
	}
	room := m.Into
	if room.Night.IsZero() {
		room = ferment.Room{Night: m.Room}
	}
	switch {
	case len(probe) > 0:
		bulk.History, err = ferment.Readings{Points: probe}.History()
	case m.Weight.Sign() > 0:
		bulk.History, err = ferment.Piece{
			Mass: m.Weight, Form: ferment.Tub, Start: m.Dough, Into: room, Exposure: ferment.Covered,
			For: quantity.Elapsed(48 * time.Hour),
		}.History()
	default:
		bulk.History, err = ferment.Relaxing{Start: m.Dough, Room: room}.History()
	}
	return bulk, nil, err
}

// kneadedBy is the way of kneading that a mixer means.
func kneadedBy(k mixing.MixerKind) ferment.KneadedBy {
	switch k {
	case 0:
		return ferment.KneadingUnstated
	case mixing.Hand:
		return ferment.ByHand
	}
	return ferment.ByMachine
}

// usefulRise is the rise, in percent, below which a reading says too little about the pace to learn from. Judgment.
const usefulRise = 10

// Taught answers: what does this dough teach about its culture? How long it took to rise how far, by the observation
// that says it was ready, else by the last reading of 10 % or more. Without either, a step of shaping that was ticked
// off teaches that the dough had by then the rise it was planned to have. Why says what is missing when it teaches
// nothing.
func (b LoggedBake) Taught() (one ferment.LoggedBulk, why working.Message) { return b.taught(doughs{}) }

func (b LoggedBake) taught(known doughs) (one ferment.LoggedBulk, why working.Message) {
	var probe []ferment.Knot
	switch shaped := b.shaped(); {
	case b.Ready != nil && b.Ready.Ready != nil:
		one.Bulk.Rise, one.Took, probe = b.Ready.Ready.Rise, quantity.Elapsed(b.Ready.At.Sub(b.Mixed)),
			b.Ready.Ready.Readings
	case len(b.Rises) > 0 && b.Rises[len(b.Rises)-1].Rise != nil &&
		b.Rises[len(b.Rises)-1].Rise.Rise.Points() >= usefulRise:
		last := b.Rises[len(b.Rises)-1]
		one.Bulk.Rise, one.Took, one.Error = last.Rise.Rise, quantity.Elapsed(last.At.Sub(b.Mixed)), last.Rise.Error
	case shaped != nil && b.Mix.Rise.Points() >= usefulRise:
		one.Bulk.Rise, one.Took, one.Error = b.Mix.Rise, quantity.Elapsed(shaped.At.Sub(b.Mixed)),
			quantity.NewPercent(tickedError)
	default:
		return one, working.Tell("bench.no_rise", "no reading of 10 % or more, and not when it was ready")
	}
	bulk, missing, err := known.bulk(b.Mix, probe)
	switch {
	case err != nil:
		return one, working.Problem(err)
	case len(missing) > 0:
		return one, notLogged(missing)
	case one.Took.Duration() < time.Minute:
		return one, working.Tell("bench.at_once", "ready in less than a minute after mixing")
	}
	bulk.Rise = one.Bulk.Rise
	one.Bulk = bulk
	if _, err := (ferment.Learning{Bakes: []ferment.LoggedBulk{one}}).Learn(); err != nil {
		return one, working.Problem(err)
	}
	return one, working.Message{}
}

// tickedError is how far, in points of rise, a dough may be off that somebody shaped without saying how far it had
// risen. Judgment: twice that of a look at a jar, and more.
const tickedError = 12

// shaped is the shaping that was ticked off, or that the dough went into the cold to be shaped later.
func (b LoggedBake) shaped() *Observation {
	for i := range b.Steps {
		if id := b.Steps[i].Step; id == stepShape || id == stepChill {
			return &b.Steps[i]
		}
	}
	return nil
}

func notLogged(missing []working.Message) working.Message {
	items := make([]any, len(missing))
	for i, m := range missing {
		items[i] = m
	}
	return working.Tell("bench.not_logged", "not logged: %v", working.And(items...))
}

// Batch is the mixing of the bake as package mixing learns from it. Why says what is missing when it teaches nothing.
func (b LoggedBake) Batch() (one mixing.Logged, why working.Message) {
	m := b.Mix
	var missing []working.Message
	need := func(absent bool, what working.Message) {
		if absent {
			missing = append(missing, what)
		}
	}
	need(m.Mixer == 0, working.Tell("bench.need_mixer", "mixer"))
	need(m.FlourWeight.Sign() <= 0, working.Tell("bench.need_flour_weight", "flour weight"))
	need(m.Flour.IsZero(), working.Tell("bench.need_flour", "flour temperature"))
	need(m.WaterWeight.Sign() <= 0, working.Tell("bench.need_water_weight", "water weight"))
	need(m.Water.IsZero(), working.Tell("bench.need_water", "water temperature"))
	need(m.LevainWeight.Sign() > 0 && m.Levain.IsZero(), working.Tell("bench.need_levain", "levain temperature"))
	need(m.Slow+m.Fast <= 0, working.Tell("bench.need_minutes", "minutes of mixing"))
	need(m.Bowl.IsZero() && m.Room.IsZero(), working.Tell("bench.need_bowl", "bowl or room temperature"))
	if len(missing) > 0 {
		return one, notLogged(missing)
	}
	one = mixing.Logged{
		Bowl:   m.Bowl,
		Speeds: []quantity.Elapsed{m.Slow, m.Fast},
		Dough:  m.Dough,
		Ingredients: []mixing.Portion{
			{Name: "flour", Mass: m.FlourWeight, Temperature: m.Flour, Substance: mixing.Flour},
			{Name: "water", Mass: m.WaterWeight, Temperature: m.Water, Substance: mixing.Water},
		},
	}
	if one.Bowl.IsZero() {
		one.Bowl = m.Room
	}
	if m.LevainWeight.Sign() > 0 {
		one.Ingredients = append(one.Ingredients, mixing.Portion{
			Name: "levain", Mass: m.LevainWeight, Temperature: m.Levain, Substance: mixing.Levain,
			Hydration: quantity.NewPercent(100),
		})
	}
	if _, err := (mixing.Log{Kind: m.Mixer, Batches: []mixing.Logged{one}}).Learn(); err != nil {
		return one, working.Problem(err)
	}
	return one, working.Message{}
}
