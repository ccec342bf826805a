package quantity

// A unit is an enumeration whose words are the symbols of its quantity's scales.

func (k *kind) unitText(u int) string {
	if u < 0 || u >= len(k.scales) {
		return "unknown unit of " + k.noun
	}
	return k.scales[u].symbol
}

func (k *kind) appendUnit(b []byte, u int) ([]byte, error) {
	if u < 0 || u >= len(k.scales) {
		return b, &InputError{Got: k.unitText(u), Want: k.symbols(), Code: "unknown_word", Err: ErrUnit}
	}
	return append(b, k.scales[u].symbol...), nil
}

func readUnit[U ~int](k *kind, into *U, text []byte) error {
	for i := range k.scales {
		if k.scales[i].symbol == string(text) {
			*into = U(i)
			return nil
		}
	}
	if len(text) == 0 {
		return &InputError{Want: k.symbols(), Err: ErrRequired}
	}
	return &InputError{Got: Excerpt(textOf(text)), Want: k.symbols(), Code: "unknown_word", Err: ErrUnit}
}

func (k *kind) symbols() Phrase {
	out := ""
	for i := range k.scales {
		if i > 0 {
			out += ", "
		}
		out += k.scales[i].symbol
	}
	return oneOf(out)
}

// String is the unit's symbol: "g".
func (u MassUnit) String() string { return masses.unitText(int(u)) }

// MarshalText implements encoding.TextMarshaler: the unit's symbol.
func (u MassUnit) MarshalText() ([]byte, error) { return masses.appendUnit(nil, int(u)) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what MarshalText writes.
func (u *MassUnit) UnmarshalText(text []byte) error { return readUnit(&masses, u, text) }

// String is the unit's symbol: "mL".
func (u VolumeUnit) String() string { return volumes.unitText(int(u)) }

// MarshalText implements encoding.TextMarshaler: the unit's symbol.
func (u VolumeUnit) MarshalText() ([]byte, error) { return volumes.appendUnit(nil, int(u)) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what MarshalText writes.
func (u *VolumeUnit) UnmarshalText(text []byte) error { return readUnit(&volumes, u, text) }

// String is the unit's symbol: "cm".
func (u LengthUnit) String() string { return lengths.unitText(int(u)) }

// MarshalText implements encoding.TextMarshaler: the unit's symbol.
func (u LengthUnit) MarshalText() ([]byte, error) { return lengths.appendUnit(nil, int(u)) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what MarshalText writes.
func (u *LengthUnit) UnmarshalText(text []byte) error { return readUnit(&lengths, u, text) }

// String is the scale's symbol: "°C".
func (u TemperatureUnit) String() string { return temperatures.unitText(int(u)) }

// MarshalText implements encoding.TextMarshaler: the scale's symbol.
func (u TemperatureUnit) MarshalText() ([]byte, error) { return temperatures.appendUnit(nil, int(u)) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what MarshalText writes.
func (u *TemperatureUnit) UnmarshalText(text []byte) error { return readUnit(&temperatures, u, text) }
