package bench

import (
	"slices"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/enum"
)

// Format is the version of observations as data, and the highest that is read. It grows when a field changes its
// meaning.
const Format = 1

// Sight says what was observed.
type Sight int

// What can be observed.
const (
	SawMixed   Sight = iota + 1 // a dough left the mixer
	SawRise                     // how far it has risen
	SawReady                    // it was ready for shaping, by hand and eye
	SawCore                     // the core of a loaf in the oven
	SawWeights                  // dough in, bread out
	SawNote                     // anything else, in words
	SawPlan                     // a plan is being followed
	SawStep                     // a step of the plan is done
)

var sights = enum.Of[Sight]("kind of observation", "", "mix", "rise", "ready", "core", "weights", "note", "plan",
	"step")

// String returns the word.
func (s Sight) String() string { return sights.String(s) }

// MarshalText implements encoding.TextMarshaler.
func (s Sight) MarshalText() ([]byte, error) { return sights.Marshal(s) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (s *Sight) UnmarshalText(text []byte) error { return sights.Unmarshal(s, text) }

// Observation is what was observed, when, of which bread. Of the parts, the one of its kind is present and no other.
type Observation struct {
	Version int       `json:"v"`
	At      time.Time `json:"at"`
	Kind    Sight     `json:"kind"`
	Bread   string    `json:"bread,omitempty"` // empty: the bread that was mixed last
	By      string    `json:"by,omitempty"`    // whose observation it is, where several people keep one log
	// Sure says that an observation which can hardly be true was looked at again, and is.
	Sure bool `json:"sure,omitzero"`

	Mix     *DoughMixed   `json:"mix,omitempty"`
	Rise    *SeenRise     `json:"rise,omitempty"`
	Ready   *ReadyDough   `json:"ready,omitempty"`
	Core    *SeenCore     `json:"core,omitempty"`
	Weights *LoafWeights  `json:"weights,omitempty"`
	Note    string        `json:"note,omitempty"`
	Plan    *FollowedPlan `json:"plan,omitempty"`
	Step    string        `json:"step,omitempty"` // the ID of the step that is done
}

// DoughMixed is a dough as it left the mixer. Only Dough is required; what else is known decides what can be learned
// from it.
type DoughMixed struct {
	Dough quantity.Temperature `json:"dough"`

	// For the mixer: what went into one batch, how warm, and for how long.
	Flour        quantity.Temperature `json:"flour,omitzero"`
	Water        quantity.Temperature `json:"water,omitzero"`
	Levain       quantity.Temperature `json:"levain,omitzero"`
	Bowl         quantity.Temperature `json:"bowl,omitzero"` // not given: as the room
	FlourWeight  quantity.Mass        `json:"flour_weight,omitzero"`
	WaterWeight  quantity.Mass        `json:"water_weight,omitzero"`
	LevainWeight quantity.Mass        `json:"levain_weight,omitzero"`
	Mixer        mixing.MixerKind     `json:"mixer,omitzero"`
	Slow         quantity.Elapsed     `json:"slow,omitzero"`
	Fast         quantity.Elapsed     `json:"fast,omitzero"`

	// For the culture: what the dough is, and where it stands.
	Inoculation quantity.Percent     `json:"inoculation,omitzero"` // flour in the levain, of all flour
	Yeast       quantity.Percent     `json:"yeast,omitzero"`
	YeastKind   ferment.YeastKind    `json:"yeast_kind,omitzero"`
	Salt        quantity.Percent     `json:"salt,omitzero"`
	Sugar       quantity.Percent     `json:"sugar,omitzero"`
	Hydration   quantity.Percent     `json:"hydration,omitzero"`
	WholeGrain  quantity.Percent     `json:"whole_grain,omitzero"`
	Altitude    quantity.Length      `json:"altitude,omitzero"`
	Enriched    bool                 `json:"enriched,omitzero"` // with milk or egg
	Room        quantity.Temperature `json:"room,omitzero"`     // at mixing
	Into        ferment.Room         `json:"into,omitzero"`     // where it rises; not given: Room throughout
	Weight      quantity.Mass        `json:"weight,omitzero"`   // of the dough in its tub
	Rise        quantity.Percent     `json:"rise,omitzero"`     // aimed at when it is shaped

	// For the oven: what it becomes.
	Style bake.Style `json:"style,omitzero"`
}

// SeenRise is how far the dough has risen.
type SeenRise struct {
	Rise  quantity.Percent `json:"rise"`
	Error quantity.Percent `json:"error,omitzero"` // in points of rise; zero: 5
}

// ReadyDough is a dough that was ready for shaping.
type ReadyDough struct {
	Rise quantity.Percent `json:"rise"` // as read or judged then
	// Readings are those of a probe in the dough, from mixing on.
	Readings []ferment.Knot `json:"readings,omitempty"`
}

// SeenCore is the core of a loaf in the oven.
type SeenCore struct {
	Core  quantity.Temperature `json:"core"`
	After quantity.Elapsed     `json:"after,omitzero"` // in the oven
	Out   bool                 `json:"out,omitempty"`  // the loaf was done and taken out
}

// LoafWeights are those of one loaf.
type LoafWeights struct {
	In    quantity.Mass `json:"in"`  // dough
	Out   quantity.Mass `json:"out"` // bread, when cool
	Style bake.Style    `json:"style"`
}

// FollowedPlan is a plan being followed: with the bake it says everything, because a plan depends on nothing but the
// bake and the clock.
type FollowedPlan struct {
	Made   time.Time `json:"made"`
	Wanted time.Time `json:"wanted"`

	// What is baked, and where: so that a core that is logged says something without the bake.
	Style    bake.Style      `json:"style,omitzero"`
	Altitude quantity.Length `json:"altitude,omitzero"`
}

// Observations are what was observed, in any order of time unless a method says otherwise.
type Observations []Observation

// ByTime returns them in the order in which things happened; of the same instant the order given stands.
func (all Observations) ByTime() Observations {
	out := slices.Clone(all)
	slices.SortStableFunc(out, func(a, b Observation) int { return a.At.Compare(b.At) })
	return out
}

// Until returns those that are not after the moment.
func (all Observations) Until(at time.Time) Observations {
	var out Observations
	for _, o := range all {
		if !o.At.After(at) {
			out = append(out, o)
		}
	}
	return out
}
