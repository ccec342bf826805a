package ferment

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/enum"
)

// YeastKind is a commercial form of baker's yeast.
type YeastKind int

// The kinds: pressed (fresh) yeast, active dry yeast, instant dry yeast, and instant dry yeast made for sweet doughs.
const (
	NoYeast YeastKind = iota
	FreshYeast
	ActiveDryYeast
	InstantYeast
	OsmotolerantYeast
)

var yeastKinds = enum.Of[YeastKind]("kind of yeast", "no yeast", "fresh yeast", "active dry yeast", "instant yeast",
	"osmotolerant instant yeast")

// String names the kind.
func (k YeastKind) String() string { return yeastKinds.String(k) }

// MarshalText implements encoding.TextMarshaler.
func (k YeastKind) MarshalText() ([]byte, error) { return yeastKinds.Marshal(k) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (k *YeastKind) UnmarshalText(text []byte) error { return yeastKinds.Unmarshal(k, text) }

// asInstant is how much instant yeast one part is worth: fresh yeast is replaced by a third of its weight in
// instant or 0.4 of it in active dry yeast (common practice, no source).
func (k YeastKind) asInstant() float64 {
	switch k {
	case FreshYeast:
		return 1.0 / 3
	case ActiveDryYeast:
		return 1.0 / 3 / 0.4
	case InstantYeast, OsmotolerantYeast:
		return 1
	}
	return 0
}

// Yeast is a dose of commercial yeast in percent of the flour.
type Yeast struct {
	Kind   YeastKind        `json:"kind"`
	Amount quantity.Percent `json:"amount"`
}

// String prints "0.6 % instant yeast".
func (y Yeast) String() string { return y.Message().String() }

// Message says how much of which yeast.
func (y Yeast) Message() working.Message {
	if y.Kind == NoYeast {
		return working.Tell("ferment.no_yeast", "no yeast")
	}
	return working.Tell("ferment.yeast", "%v %v", y.Amount, y.Kind)
}

// instant is the dose as instant yeast, in percent of the flour.
func (y Yeast) instant() float64 { return y.Amount.Points() * y.Kind.asInstant() }

func (y Yeast) check(p *problems, path string) {
	if y.Kind == NoYeast && !y.Amount.IsZero() {
		p.Required(path+".Kind", quantity.Tell("ferment.want_kind_of_yeast",
			"the kind of the yeast, or no amount of it"))
		return
	}
	if yeastKinds.Check(&p.Problems, path+".Kind", y.Kind) {
		quantity.Check(&p.Problems, path+".Amount", y.Amount, leastDose, greatestDose)
	}
}

var (
	leastDose    = quantity.NewPercent(0.001)
	greatestDose = quantity.NewPercent(15)
)
