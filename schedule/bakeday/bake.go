package bakeday

import (
	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule"
)

// Bake is one bake as a baker would write it down: the bread, how it is made, and the kitchen with
// the life around it. It reads from JSON by its tags, and from any other format through the
// text forms of its fields.
type Bake struct {
	Name   string `json:"name,omitzero"`   // what the bread is called
	Wanted Wish   `json:"wanted,omitzero"` // when the bread is wanted: "Saturday 12:30" or "2026-11-28 12:30"

	// what comes out of the oven
	Loaves Loaves `json:"loaves" fills:"rise:Stages[0].Mass"`

	// each flour of the dough, those in levain and preferments included
	Flours []Ingredient `json:"flour"`
	// water, milk and what else is poured
	Liquids    []Ingredient     `json:"liquid" fills:"rise:Hydration"`
	Salt       quantity.Percent `json:"salt,omitzero"`        // of all flour: "2 %"
	SaltWeight quantity.Mass    `json:"salt_weight,omitzero"` // instead of salt
	// yeast, fat, sugar, malt and the like
	Others     []Ingredient `json:"other,omitzero" fills:"rise:Yeast rise:Sugar"`
	Inclusions []Ingredient `json:"inclusion,omitzero"` // seeds, nuts, fruit: they count as none of the flour

	Preferments []PrefermentWork `json:"preferment,omitzero"` // poolish, biga, sponge, old dough
	Soakers     []SoakerWork     `json:"soaker,omitzero"`     // what is soaked or scalded beforehand

	Levain  *Levain  `json:"levain,omitzero"`  // left out: raised with yeast alone
	Mixing  Mixing   `json:"mixing"`           // how the dough is mixed, and how warm it is to be
	Bulk    BulkWork `json:"bulk"`             // how it rises before it is divided
	Shaping Shaping  `json:"shaping,omitzero"` // dividing and shaping
	// left out: a final proof in the room
	Retard *Retard  `json:"retard,omitzero" fills:"rise:Stages[0].For"`
	Oven   OvenWork `json:"oven"` // left out: the guide values of style and size
	// where it is made, and the life around it
	Kitchen Kitchen `json:"kitchen" fills:"rise:History"`

	Notes []StepNote `json:"note,omitzero"` // the baker's own, on any step

	// PerLoaf is true when the weights of the file are those of one loaf, and not of the whole dough.
	PerLoaf bool `json:"per_loaf,omitzero"`

	Levers Levers `json:"levers,omitzero"` // how far a search for a better plan may go

	// Culture is what logged bakes have taught about the levain or yeast; the zero value is nothing. It is
	// not part of the text of a bake.
	Culture ferment.Culture `json:"-"`
}

// Loaves says what comes out of the oven. Where the dough is given by weight, all of it may be left out: the dough
// is then one loaf; the pieces alone share the dough, a weight alone says how many there are, and both together say how
// much dough there is to be, in the proportions of the weights.
type Loaves struct {
	// how many
	Pieces int `json:"pieces,omitzero" fills:"formula:Baked.Pieces oven:Pieces"`
	// each, when cool
	Baked quantity.Mass `json:"baked,omitzero" fills:"formula:Baked.Each oven:Dough"`
	// dough for each, without what is filled in or laid on top; instead of its weight when baked
	Scaling quantity.Mass `json:"scaling,omitzero"`
	// lost in the oven, of the dough; 0 % takes the guide value for style and size
	Loss quantity.Percent `json:"loss,omitzero" fills:"formula:Baked.Loss"`
	// core temperature, bake loss and the usual oven follow it; not given: a lean hearth loaf
	Style bake.Style `json:"style,omitzero" fills:"oven:Style"`
	// not given: round
	Shape bake.Shape `json:"shape,omitzero" fills:"oven:Shape"`
	// FreshWithin is how long before it is wanted the bread may be cool; zero means 12 h, or half an hour when
	// it is eaten warm.
	FreshWithin quantity.Elapsed `json:"fresh_within,omitzero"`
	// eaten warm: wanted a few minutes after the last round, not when cool; pizza and flat breads always are
	Warm bool `json:"warm,omitzero"`
}

// Ingredient is one line of the formula: in percent of all flour, what preferments and soakers hold of it included; or,
// where all flours are weighed, by what goes into the bowl at mixing.
type Ingredient struct {
	Name    string           `json:"name"`             // as it stands on the lists
	Percent quantity.Percent `json:"percent,omitzero"` // of all flour
	// instead of percent: weighed at mixing, beside what is made beforehand
	Weight quantity.Mass `json:"weight,omitzero"`
	AtHand quantity.Mass `json:"at_hand,omitzero"` // what there is of it; less than the dough takes makes fewer loaves
	Kind   dough.Kind    `json:"kind,omitzero"`    // what it is, such as "whole rye" or "butter": names decide nothing
	// in the ingredient itself: 88 % for milk; for the effective hydration
	Water quantity.Percent `json:"water,omitzero"`

	// At is when it goes into the dough: "mix", "fold", "laminate", "shape", or "bake" for what is laid on top before the
	// oven. Not given: at mixing, or at the fold of that number.
	At   schedule.StepKind `json:"at,omitzero"`
	Fold int               `json:"fold,omitzero"` // at which fold, from 1
	// spoils when it stands warm, as milk, eggs and cooked fillings do
	Perishable bool `json:"perishable,omitzero"`
	// how warm it goes into the dough; not given: out of the refrigerator what spoils, the rest as warm as the flour
	Temperature quantity.Temperature `json:"temperature,omitzero"`
}

// Levain says how the levain is built and how much of the flour it holds.
type Levain struct {
	// Name is what the levain is called where it feeds several doughs of one day: those whose levains have the same name
	// are fed with one, which is built once. Not given: it is the dough's own.
	Name string `json:"name,omitzero"`

	// flour in the levain, of all flour
	Prefermented quantity.Percent `json:"prefermented,omitzero" fills:"formula:Flour rise:Inoculation"`
	// instead of prefermented, where flours are weighed: levain for the dough, beside them
	Weight    quantity.Mass    `json:"weight,omitzero"`
	Hydration quantity.Percent `json:"hydration"` // water, of its flour
	// name of the flour it is built with; empty: all flours in proportion, but for several doughs
	Flour string `json:"flour,omitzero" fills:"formula:Blend"`
	// culture, in percent of the new flour of the build
	Inoculation quantity.Percent `json:"inoculation" fills:"formula:Seed"`
	// of the culture; 0 % means as the levain
	CultureHydration quantity.Percent     `json:"culture_hydration,omitzero" fills:"formula:Seed.Hydration"`
	CultureAtHand    quantity.Mass        `json:"culture_at_hand,omitzero"` // in the refrigerator; 0 g means enough
	Temperature      quantity.Temperature `json:"temperature,omitzero"`     // where it ripens; not given: the room
	Takes            quantity.Elapsed     `json:"takes,omitzero"`           // to feed it; zero: 10 minutes
	// RipeNow is true when a ripe levain stands ready at the moment of the plan: nothing has to be fed first. How much
	// of it there is stands under culture_at_hand.
	RipeNow bool `json:"ripe_now,omitzero"`
	// FedAgo is how long ago the levain was fed that is ripening now, in the ratio of inoculation; zero: it is fed for
	// this bake.
	FedAgo quantity.Elapsed `json:"fed_ago,omitzero"`
}

// standing reports whether the levain stands ready or ripens already, so that it is not fed for this bake.
func (l *Levain) standing() bool { return l != nil && (l.RipeNow || l.FedAgo > 0) }

// Mixing says how the dough is mixed and how warm it is to be.
type Mixing struct {
	Temperature quantity.Temperature `json:"temperature"` // of the dough when mixed
	// "planetary", "spiral", "processor" or "hand"; not given: the kitchen's only mixer
	Mixer mixing.MixerKind `json:"mixer,omitzero"`
	// how much mixing warms the dough itself; 0: the guide value for the mixer
	Warming quantity.TemperatureDelta `json:"warming,omitzero"`
	Takes   quantity.Elapsed          `json:"takes,omitzero"` // per batch, weighing included; zero: 25 minutes
}

// BulkWork says how the dough ferments before it is divided.
type BulkWork struct {
	// wanted in all, from mixing to the oven, as added volume: 100 % is doubled
	Rise    quantity.Percent `json:"rise" fills:"rise:Rise rise:Total"`
	ShapeAt quantity.Percent `json:"shape_at,omitzero"` // the rise at which to shape; 0 %: computed
	// Box is the temperature of a proofing box for bulk and proof; not given: the room.
	Box   quantity.Temperature `json:"box,omitzero"`
	Folds int                  `json:"folds,omitzero"` // how many times the dough is folded
	// from one fold to the next, and from mixing to the first; zero: 40 minutes
	FoldEvery quantity.Elapsed `json:"fold_every,omitzero"`
	FoldTakes quantity.Elapsed `json:"fold_takes,omitzero"` // for each fold; zero: five minutes
	// Lamination is a stretching of the dough over the bench, with what is laid into it.
	Lamination *Lamination `json:"lamination,omitzero"`
}

// Shaping says how long dividing, resting and shaping take.
type Shaping struct {
	// dividing, resting and shaping; zero: 30 minutes, or 10 to fill tins with a batter
	Takes quantity.Elapsed `json:"takes"`
}

// Retard is a rest in the refrigerator: of the shaped loaves, or of the dough before it is divided.
type Retard struct {
	AtLeast quantity.Elapsed `json:"at_least"` // the shortest time in the refrigerator
	AtMost  quantity.Elapsed `json:"at_most"`  // the longest; the timetable chooses between them
	// in the room or box before baking; zero: from the cold into the oven, or 1h30m for dough that rested undivided
	WarmUp quantity.Elapsed `json:"warm_up,omitzero"`
	// the dough rests in its tub, and is divided and shaped when it comes out of the cold; warm_up is its final proof
	Undivided bool `json:"undivided,omitzero"`
}

// OvenWork says how the loaves are baked. What is left out takes the guide values for style, size and vessel.
type OvenWork struct {
	// that the oven is set to; not given: that of the style
	Temperature quantity.Temperature `json:"temperature,omitzero" fills:"oven:Oven"`
	// when the lid comes off or the steam is let out; not given: as before
	Then quantity.Temperature `json:"then,omitzero"`
	// without pots; not given: a tin or tray where the style is baked so, else a stone
	Vessel   bake.Vessel      `json:"vessel,omitzero"`
	Pots     int              `json:"pots,omitzero"`     // covered pots, one loaf each; 0: no pots
	Together int              `json:"together,omitzero"` // loaves in one round; 0: as many as pots, or all
	Preheat  quantity.Elapsed `json:"preheat,omitzero"`  // oven and pots
	Reheat   quantity.Elapsed `json:"reheat,omitzero"`   // between rounds
	Covered  quantity.Elapsed `json:"covered,omitzero"`  // lid on, or with steam
	// until done, about; without it and covered: the guide times
	Uncovered quantity.Elapsed `json:"uncovered,omitzero"`
	// RescoreAfter is when the cuts are opened again, from loading; zero: they are not.
	RescoreAfter quantity.Elapsed `json:"rescore_after,omitzero"`
	TurnAfter    quantity.Elapsed `json:"turn_after,omitzero"` // from loading: turned front to back; zero: not turned
}
