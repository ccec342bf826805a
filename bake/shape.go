package bake

import (
	"math"
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/heat"
)

// Shape is the form of a loaf.
type Shape int

// The shapes. The zero value is the shape usual for the style: round for hearth loaves, thin for baguettes,
// a tin for pan bread, a ball for rolls.
const (
	UsualShape Shape = iota // what the style usually has
	Round                   // a boule, about half as high as wide
	Long                    // a bâtard, about three times as long as thick
	Thin                    // a baguette, about nine times as long as thick
	Tin                     // a loaf with the form of its tin, about twice as long as wide and high
	Ball                    // a roll or a small ball
)

var shapeNames = [...]string{"usual", "round", "long", "thin", "tin", "ball"}

// Shapes lists every shape but the usual one.
func Shapes() []Shape { return []Shape{Round, Long, Thin, Tin, Ball} }

// For is the shape itself, or the one usual for the style.
func (s Shape) For(style Style) Shape {
	if s != UsualShape {
		return s
	}
	return rowOf(style).shape
}

// IsValid reports whether the shape is one of the shapes.
func (s Shape) IsValid() bool { return s >= 0 && int(s) < len(shapeNames) }

// String names the shape as [ParseShape] reads it.
func (s Shape) String() string {
	if !s.IsValid() {
		return "unknown shape"
	}
	return shapeNames[s]
}

// ParseShape reads a shape's name. The empty text is the usual shape.
func ParseShape(text string) (Shape, error) {
	if text == "" {
		return UsualShape, nil
	}
	if i := indexName(shapeNames[:], text); i >= 0 {
		return Shape(i), nil
	}
	return 0, &quantity.InputError{Got: quantity.Excerpt(text), Want: strings.Join(shapeNames[:], ", "), Err: quantity.ErrOutOfRange}
}

// MarshalText implements encoding.TextMarshaler.
func (s Shape) MarshalText() ([]byte, error) {
	if !s.IsValid() {
		return nil, unknown("shape", int(s), shapeNames[:])
	}
	return []byte(s.String()), nil
}

// UnmarshalText implements encoding.TextUnmarshaler; see [ParseShape].
func (s *Shape) UnmarshalText(text []byte) error {
	v, err := ParseShape(string(text))
	if err == nil {
		*s = v
	}
	return err
}

// solid is the body of a loaf of a volume in m³ for the conduction equation. Proportions are judgment.
func (s Shape) solid(volume float64) heat.Geometry {
	switch s {
	case Long: // length 3 times the diameter
		r := math.Cbrt(volume / (6 * math.Pi))
		return heat.ShortCylinder(r, 6*r)
	case Thin:
		r := math.Cbrt(volume / (18 * math.Pi))
		return heat.ShortCylinder(r, 18*r)
	case Tin:
		w := math.Cbrt(volume / 2)
		return heat.Block(2*w, w, w)
	case Ball:
		return heat.Ball(math.Cbrt(3 * volume / (4 * math.Pi)))
	}
	// Round: as high as its radius.
	r := math.Cbrt(volume / math.Pi)
	return heat.ShortCylinder(r, r)
}
