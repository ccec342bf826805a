package bake

import (
	"math"

	"example.org/maslin/internal/enum"
	"example.org/maslin/internal/heat"
)

// Shape is the form of a loaf.
type Shape int

// The shapes. The zero value is "not given": the shape usual for the style, round for hearth loaves, thin for
// baguettes, a tin for pan bread, a ball for rolls.
const (
	UsualShape Shape = iota // what the style usually has
	Round                   // a boule, about half as high as wide
	Long                    // a bâtard, about three times as long as thick
	Thin                    // a baguette, about nine times as long as thick
	Tin                     // a loaf with the form of its tin, about twice as long as wide and high
	Ball                    // a roll or a small ball
	Sheet                   // a focaccia in a sheet, about 25 mm thick
	Flat                    // a pizza or a flat bread, about 10 mm thick
)

var shapes = enum.Of[Shape]("shape of a loaf", "", "round", "long", "thin", "tin", "ball", "sheet", "flat")

// For is the shape in the oven: the shape itself, or the one usual for the style. Pizza and flat breads bake flat,
// whatever they were as balls, unless they bake in a sheet.
func (s Shape) For(style Style) Shape {
	usual := rowOf(style).shape
	if s == UsualShape || usual == Flat && s != Sheet {
		return usual
	}
	return s
}

// IsValid reports whether the shape is given and one of the shapes.
func (s Shape) IsValid() bool { return shapes.Has(s) }

// String names the shape; it is empty for the usual one.
func (s Shape) String() string { return shapes.String(s) }

// MarshalText implements encoding.TextMarshaler.
func (s Shape) MarshalText() ([]byte, error) { return shapes.Marshal(s) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (s *Shape) UnmarshalText(text []byte) error { return shapes.Unmarshal(s, text) }

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
	case Sheet:
		return heat.Plate(0.0125)
	case Flat:
		return heat.Plate(0.005)
	case Ball:
		return heat.Ball(math.Cbrt(3 * volume / (4 * math.Pi)))
	}
	// Round: as high as its radius.
	r := math.Cbrt(volume / math.Pi)
	return heat.ShortCylinder(r, r)
}
