package mixing

// MixerKind says how a dough is mixed.
type MixerKind int

// The ways of mixing. The zero value is not one of them.
const (
	_ MixerKind = iota
	// Hand is kneading or folding by hand.
	Hand
	// Planetary is an upright mixer whose hook circles in a fixed bowl, at home or in the trade.
	Planetary
	// Spiral is a mixer whose bowl turns under a spiral hook.
	Spiral
	// Fork is a slow mixer whose two-pronged fork turns in a slanting bowl that turns too.
	Fork
	// Processor is a food processor with a blade.
	Processor
)

// ParseMixerKind reads a way of mixing as a person types it: "planetary", in any case and with spaces around it.
// Errors: ErrRequired (empty text), ErrOutOfRange.
func ParseMixerKind(text string) (MixerKind, error) { return mixerKinds.Parse(text) }

// DoughKind says what dough is mixed, as far as capacity, kneading and its signs depend on it.
type DoughKind int

// The kinds of dough. The zero value is wheat bread of sifted flour.
const (
	WheatDough DoughKind = iota
	// WholeGrainDough has half or more of its flour whole.
	WholeGrainDough
	// RyeDough has half or more of its flour rye.
	RyeDough
	// SpeltDough is mostly spelt.
	SpeltDough
	PizzaDough
	// EnrichedDough has fat, sugar or eggs of more than about a tenth of the flour: brioche, braids, doughnuts.
	EnrichedDough
	// MixedRyeDough has three tenths to a half of its flour rye.
	MixedRyeDough
	// GlutenFreeDough has half or more of its flour without gluten.
	GlutenFreeDough
)
