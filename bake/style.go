package bake

import "example.org/maslin/internal/enum"

// Style is a kind of bread with its own idea of done.
type Style int

// The styles. The zero value is the lean hearth loaf.
const (
	LeanHearth Style = iota // free-standing or pot-baked wheat bread without fat or sugar
	Baguette                // baguettes and other small crusty pieces
	Pan                     // white or sandwich bread in a tin
	Enriched                // brioche, stollen and other rich doughs
	SoftRoll                // soft rolls and buns
	Wholegrain              // mostly wholegrain wheat, spelt or the like
	Rye                     // half rye or more
	GlutenFree              // yeast bread without gluten
	ParBaked                // the second bake of bread that was baked once before
	MixedRye                // wheat with a fifth to a half of rye
	CrustyRoll              // lean rolls with a crust
	Bagel                   // boiled, then baked
	Focaccia                // a sheet of oiled dough two to three centimeters thick
	Pizza                   // thin, topped, done by time and color
	FlatBread               // pita, naan and other breads under 15 mm, done by time and color
)

// styles has the words of styleTable, in its order.
var styles = enum.Of[Style]("style of bread", "lean hearth", "baguette", "pan", "enriched", "soft roll", "wholegrain",
	"rye", "gluten-free", "par-baked", "mixed rye", "crusty roll", "bagel", "focaccia", "pizza", "flat bread")

// String names the style.
func (s Style) String() string { return styles.String(s) }

// IsValid reports whether the style is one of the styles.
func (s Style) IsValid() bool { return styles.Has(s) }

// MarshalText implements encoding.TextMarshaler.
func (s Style) MarshalText() ([]byte, error) { return styles.Marshal(s) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (s *Style) UnmarshalText(text []byte) error { return styles.Unmarshal(s, text) }

// ByCore reports whether a probe in the middle tells when bread of this style is done. Thin breads are done by time and
// color: a probe finds no middle in less than 15 mm.
func (s Style) ByCore() bool { return rowOf(s).done.core > 0 }
