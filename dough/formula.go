package dough

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/enum"
)

// Formula is what a dough is made of, in baker's percentages: every percentage is of the weight
// of all flour, including the flour inside levains and other preferments.
//
// It is the overall formula. What goes into a preferment is stated under Preferments (or
// Soakers) and is taken out of the lines above, never added to them: a formula with 72 % water
// and a levain has 72 % water, of which the levain holds its part.
//
// Flours add up to 100 %. There is at least one liquid; a liquid of unstated kind is water.
// Names are unique. Use [Formula.For] to turn it into weights.
type Formula struct {
	Name    string           `json:"name,omitzero"` // of the bread
	Flours  []Part           `json:"flours"`
	Liquids []Part           `json:"liquids"`
	Salt    quantity.Percent `json:"salt,omitzero"`
	Others  []Part           `json:"others,omitzero"` // yeast, fats, sweeteners, malt, …
	// mixed in at folding or lamination: nuts, fruit, cheese; no part of the hydration
	Inclusions  []Part       `json:"inclusions,omitzero"`
	Preferments []Preferment `json:"preferments,omitzero"`
	Soakers     []Soaker     `json:"soakers,omitzero"`
}

// Part is one ingredient and its share.
type Part struct {
	Name    string           `json:"name"`
	Percent quantity.Percent `json:"percent"`       // of total flour, unless the field it stands in says otherwise
	Kind    Kind             `json:"kind,omitzero"` // which grain, water, allergens: stated, never guessed
	// Water is how much of the ingredient's weight is water, for the effective hydration:
	// 88.13 % for whole milk. A liquid that is water needs none.
	Water quantity.Percent `json:"water"`
	// Contains adds allergens that the kind does not tell: chocolate with milk and soy.
	Contains Allergens `json:"contains,omitzero"`
}

// PrefermentKind names a part of the dough that is mixed and fermented beforehand.
type PrefermentKind uint8

// The kinds of preferment. All are computed alike; the kind is for labels and for what may be
// read from it.
const (
	Levain PrefermentKind = iota
	Poolish
	Biga
	OldDough // pâte fermentée: a preferment with salt
	Sponge
	RyeSour
	OtherPreferment
)

var prefermentWords = enum.Of[PrefermentKind]("kind of preferment", "levain", "poolish", "biga", "old dough",
	"sponge", "rye sour", "preferment")

// String names the kind of preferment.
func (k PrefermentKind) String() string { return prefermentWords.String(k) }

// MarshalText implements encoding.TextMarshaler.
func (k PrefermentKind) MarshalText() ([]byte, error) { return prefermentWords.Marshal(k) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (k *PrefermentKind) UnmarshalText(text []byte) error { return prefermentWords.Unmarshal(k, text) }

// Preferment is a part of the dough's flour and water that ferments beforehand. It may rest on
// further preferments: a levain built in three stages is three nested ones.
type Preferment struct {
	Name string         `json:"name"`
	Kind PrefermentKind `json:"kind"`
	// Flour is the flour in it, everything nested inside included, as a percentage of the
	// dough's total flour: the prefermented flour. For other printed meanings of "20 % levain"
	// see [PrintedLevain].
	Flour quantity.Percent `json:"flour"`
	// Hydration is its water as a percentage of its own flour.
	Hydration quantity.Percent `json:"hydration,omitzero"`
	// Blend is which flours it is made of, in percent of its own flour, adding up to 100 %. Names are
	// those of Formula.Flours. Empty means the flours of the formula in their proportions.
	Blend []Part `json:"blend,omitzero"`
	// Salt and Others are percentages of its own flour; the names in Others are names of the
	// formula's liquids, others or inclusions.
	Salt   quantity.Percent `json:"salt,omitzero"`
	Others []Part           `json:"others,omitzero"`
	// Seed is the ripe starter it is started from, if that is to be part of the account.
	Seed Seed `json:"seed,omitzero"`
	// Preferments and Soakers go into this one.
	Preferments []Preferment `json:"preferments,omitzero"`
	Soakers     []Soaker     `json:"soakers,omitzero"`
}

// SeedAccount says how the starter that starts a levain enters the sums. Print is divided, so
// it is named.
type SeedAccount uint8

const (
	// SeedCounted splits the starter into its flour and water, which are part of the
	// preferment's Flour and Hydration. It is the default.
	SeedCounted SeedAccount = iota
	// SeedRemoved leaves the starter out of all sums: as much ripe levain as went in is taken
	// away again before mixing, to be the next culture. Source: Hamelman, Bread (2004).
	SeedRemoved
	// SeedSeparate makes the starter a line of the formula of its own, neither flour nor water; the
	// whole levain goes into the dough. Its percentage of total flour is rounded to a millionth
	// of a point.
	SeedSeparate
	// SeedRemovedAtEnd is SeedRemoved for a levain of several stages: the starter of this stage stays in through
	// all further stages, and as much is taken away from the last one, the ripe levain that goes into the dough.
	SeedRemovedAtEnd
)

var seedWords = enum.Of[SeedAccount]("account of the seed", "counted", "removed", "separate line", "removed at the end")

// String names the account of the seed.
func (a SeedAccount) String() string { return seedWords.String(a) }

// MarshalText implements encoding.TextMarshaler.
func (a SeedAccount) MarshalText() ([]byte, error) { return seedWords.Marshal(a) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (a *SeedAccount) UnmarshalText(text []byte) error { return seedWords.Unmarshal(a, text) }

// InoculationBasis says of what an inoculation is a percentage; print uses both.
type InoculationBasis uint8

const (
	// OfNewFlour: starter ÷ flour added in this build. 1:5:5 is 20 %. It is the default.
	OfNewFlour InoculationBasis = iota
	// OfMix: starter ÷ everything in the bowl, starter included. 1:5:5 is 9.09 %.
	OfMix
)

var basisWords = enum.Of[InoculationBasis]("basis of an inoculation", "of new flour", "of mix")

// String names the basis of an inoculation.
func (b InoculationBasis) String() string { return basisWords.String(b) }

// MarshalText implements encoding.TextMarshaler.
func (b InoculationBasis) MarshalText() ([]byte, error) { return basisWords.Marshal(b) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (b *InoculationBasis) UnmarshalText(text []byte) error { return basisWords.Unmarshal(b, text) }

// Seed is the ripe starter that starts a preferment. The zero value is no seed: the
// preferment's build then lists its flour and water only.
type Seed struct {
	Percent   quantity.Percent `json:"percent,omitzero"` // the inoculation
	Of        InoculationBasis `json:"of"`
	Hydration quantity.Percent `json:"hydration,omitzero"` // of the starter
	// its flours, in percent of its flour; empty: those of the preferment
	Blend   []Part      `json:"blend,omitzero"`
	Account SeedAccount `json:"account"`
}

// SoakerKind names a part of the dough that is wetted, but not fermented, beforehand.
type SoakerKind uint8

// The kinds of soaker.
const (
	ColdSoaker SoakerKind = iota
	HotSoaker
	Scald // flour or meal over which boiling water is poured

)

var soakerWords = enum.Of[SoakerKind]("kind of soaker", "cold soaker", "hot soaker", "scald")

// String names the kind of soaker.
func (k SoakerKind) String() string { return soakerWords.String(k) }

// MarshalText implements encoding.TextMarshaler.
func (k SoakerKind) MarshalText() ([]byte, error) { return soakerWords.Marshal(k) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (k *SoakerKind) UnmarshalText(text []byte) error { return soakerWords.Unmarshal(k, text) }

// Soaker is a part of the dough that is wetted beforehand without fermenting: seeds in water, a
// scald of rye. Its parts are percentages of the dough's total flour, under names of the
// formula, and are taken out of those lines. Its flour is not prefermented flour.
type Soaker struct {
	Name  string     `json:"name"`
	Kind  SoakerKind `json:"kind"`
	Parts []Part     `json:"parts"`
}
