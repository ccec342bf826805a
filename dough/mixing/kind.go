package mixing

import "example.org/maslin/dough/quantity"

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
	// Processor is a food processor with a blade.
	Processor
)

const kinds = "hand, planetary, spiral or processor"

// String names the kind: "planetary".
func (k MixerKind) String() string {
	switch k {
	case Hand:
		return "hand"
	case Planetary:
		return "planetary"
	case Spiral:
		return "spiral"
	case Processor:
		return "processor"
	}
	return "no mixer"
}

// ParseMixerKind reads "hand", "planetary", "spiral" or "processor". Errors: ErrRequired (empty
// text), ErrOutOfRange.
func ParseMixerKind(text string) (MixerKind, error) {
	for k := Hand; k <= Processor; k++ {
		if text == k.String() {
			return k, nil
		}
	}
	if text == "" {
		return 0, &quantity.InputError{Got: "an empty text", Want: kinds, Err: quantity.ErrRequired}
	}
	return 0, &quantity.InputError{Got: quantity.Excerpt(text), Want: kinds, Err: quantity.ErrOutOfRange}
}

// MarshalText implements encoding.TextMarshaler: "planetary".
func (k MixerKind) MarshalText() ([]byte, error) {
	if k < Hand || k > Processor {
		return nil, &quantity.InputError{Got: k.String(), Want: kinds, Err: quantity.ErrOutOfRange}
	}
	return []byte(k.String()), nil
}

// UnmarshalText implements encoding.TextUnmarshaler; see [ParseMixerKind].
func (k *MixerKind) UnmarshalText(text []byte) error {
	v, err := ParseMixerKind(string(text[:min(len(text), 64)]))
	if err != nil {
		return err
	}
	*k = v
	return nil
}

func checkKind(p *quantity.Problems, path string, k MixerKind) bool {
	switch {
	case k >= Hand && k <= Processor:
		return true
	case k == 0:
		p.Required(path, kinds)
	default:
		p.Add(path, "an unknown kind", kinds, quantity.ErrOutOfRange)
	}
	return false
}
