package bake

import (
	"strings"

	"example.org/maslin/dough/quantity"
)

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
)

// Styles lists every style.
func Styles() []Style {
	out := make([]Style, len(styleTable))
	for i := range out {
		out[i] = Style(i)
	}
	return out
}

func styleNames() []string {
	out := make([]string, len(styleTable))
	for i := range styleTable {
		out[i] = styleTable[i].name
	}
	return out
}

// IsValid reports whether the style is one of the styles.
func (s Style) IsValid() bool { return s >= 0 && int(s) < len(styleTable) }

// String names the style as [ParseStyle] reads it.
func (s Style) String() string {
	if !s.IsValid() {
		return "unknown style"
	}
	return styleTable[s].name
}

// ParseStyle reads a style's name, in any case, with space, hyphen or underscore between words. The empty
// text is the lean hearth loaf.
func ParseStyle(text string) (Style, error) {
	if text == "" {
		return LeanHearth, nil
	}
	if i := indexName(styleNames(), text); i >= 0 {
		return Style(i), nil
	}
	return 0, &quantity.InputError{Got: quantity.Excerpt(text), Want: strings.Join(styleNames(), ", "), Err: quantity.ErrOutOfRange}
}

// MarshalText implements encoding.TextMarshaler.
func (s Style) MarshalText() ([]byte, error) {
	if !s.IsValid() {
		return nil, unknown("style", int(s), styleNames())
	}
	return []byte(s.String()), nil
}

// UnmarshalText implements encoding.TextUnmarshaler; see [ParseStyle].
func (s *Style) UnmarshalText(text []byte) error {
	v, err := ParseStyle(string(text))
	if err == nil {
		*s = v
	}
	return err
}
