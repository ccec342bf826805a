package ferment

import (
	"math"

	"example.org/maslin/internal/enum"
)

// Form is the form of a piece of dough.
type Form int

// The forms of dough. Round is a sphere: a ball of dough or a boule. Log is a long cylinder: a batard or baguette. Slab
// is dough spread in a tray or a wide box, cooled from both faces. Tub is dough filling a round container as wide as it
// is deep, cooled all around.
const (
	Round Form = iota
	Log
	SlabOfDough
	Tub
)

var forms = enum.Of[Form]("form of dough", "round", "log", "slab", "tub")

// String names the form.
func (f Form) String() string { return forms.String(f) }

// MarshalText implements encoding.TextMarshaler.
func (f Form) MarshalText() ([]byte, error) { return forms.Marshal(f) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (f *Form) UnmarshalText(text []byte) error { return forms.Unmarshal(f, text) }

// Exposure is how a piece of dough stands, for the heat that crosses its surface.
type Exposure int

// The exposures, with their surface coefficients in W/(m² K): Covered bowl or tub 5; Open in still air 9; on the rack
// of a Refrigerator, bare or in a metal tin, 8; in a basket there 5; in a basket inside a bag 4; in a closed tub 5; in
// moving air (Fan), as in a retarder or a proofing box with one, 20.
const (
	Covered Exposure = iota
	Open
	Refrigerator
	Fan
	RefrigeratorBasket
	RefrigeratorBag
	RefrigeratorTub
)

var exposures = enum.Of[Exposure]("place of a piece of dough", "covered", "open", "in a refrigerator", "in moving air",
	"in a basket in a refrigerator", "in a bagged basket in a refrigerator", "in a closed tub in a refrigerator")

// String names the exposure.
func (e Exposure) String() string { return exposures.String(e) }

// MarshalText implements encoding.TextMarshaler.
func (e Exposure) MarshalText() ([]byte, error) { return exposures.Marshal(e) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (e *Exposure) UnmarshalText(text []byte) error { return exposures.Unmarshal(e, text) }

// Surface coefficients, W/(m² K). Sources: 9 for still air, radiation included, tables of cold-store design (9.37); on
// a refrigerator's rack natural convection alone gives 6 (Lienhard and Lienhard, A Heat Transfer Textbook, example 5.2)
// and radiation there is of the same size (Laguerre 2010), so that 8 is taken, a judgment. 5 covered and 20 in moving
// air are judgments within 4 to 6 and 15 to 30. A basket adds the resistance of half a centimeter of wood or cane, a
// bag that of a layer of still air: 1/(1/8 + 0.005/0.1) is 5.7 and with a layer of 0.1 m² K/W 3.6; 5 and 4 are
// judgments.
const (
	hCovered      = 5
	hOpen         = 9
	hRefrigerator = 8
	hFan          = 20
	hBag          = 4
	// crowded is what is left of the coefficient for a piece close among others: judgment.
	crowded = 0.75
)

func (e Exposure) surface() float64 {
	switch e {
	case Covered, RefrigeratorBasket, RefrigeratorTub:
		return hCovered
	case Open:
		return hOpen
	case Refrigerator:
		return hRefrigerator
	case Fan:
		return hFan
	case RefrigeratorBag:
		return hBag
	}
	return math.NaN()
}
