package quantity

import "database/sql/driver"

// Value implements driver.Valuer for database/sql: the canonical text, "12.5 g".
func (m Mass) Value() (driver.Value, error) { return textValue(m.MarshalText()) }

// Scan implements sql.Scanner: a text with its unit, as string or bytes. A bare number and NULL are refused.
func (m *Mass) Scan(from any) error {
	text, err := scanText(&masses, from)
	if err != nil {
		return err
	}
	return m.UnmarshalText(text)
}

// MarshalBinary implements encoding.BinaryMarshaler, for encoding/gob.
func (m Mass) MarshalBinary() ([]byte, error) {
	if !m.IsValid() {
		return nil, &InputError{Got: m.String(), Want: masses.accepted, Err: ErrOutOfRange}
	}
	return appendBinary(nil, 'm', m.micrograms), nil
}

// UnmarshalBinary implements encoding.BinaryUnmarshaler; it reads what MarshalBinary writes.
func (m *Mass) UnmarshalBinary(data []byte) error {
	q, err := fromBinary(&masses, 'm', data)
	if err != nil {
		return err
	}
	*m = Mass{q}
	return nil
}

// Value implements driver.Valuer for database/sql: the canonical text, "68 %".
func (p Percent) Value() (driver.Value, error) { return textValue(p.MarshalText()) }

// Scan implements sql.Scanner: a text with its unit, as string or bytes. A bare number and NULL are refused.
func (p *Percent) Scan(from any) error {
	text, err := scanText(&percents, from)
	if err != nil {
		return err
	}
	return p.UnmarshalText(text)
}

// MarshalBinary implements encoding.BinaryMarshaler, for encoding/gob.
func (p Percent) MarshalBinary() ([]byte, error) {
	if !p.IsValid() {
		return nil, &InputError{Got: p.String(), Want: percents.accepted, Err: ErrOutOfRange}
	}
	return appendBinary(nil, 'p', p.millionths), nil
}

// UnmarshalBinary implements encoding.BinaryUnmarshaler; it reads what MarshalBinary writes.
func (p *Percent) UnmarshalBinary(data []byte) error {
	q, err := fromBinary(&percents, 'p', data)
	if err != nil {
		return err
	}
	*p = Percent{q}
	return nil
}

// Value implements driver.Valuer for database/sql: the canonical text, "0.24 L".
func (v Volume) Value() (driver.Value, error) { return textValue(v.MarshalText()) }

// Scan implements sql.Scanner: a text with its unit, as string or bytes. A bare number and NULL are refused.
func (v *Volume) Scan(from any) error {
	text, err := scanText(&volumes, from)
	if err != nil {
		return err
	}
	return v.UnmarshalText(text)
}

// MarshalBinary implements encoding.BinaryMarshaler, for encoding/gob.
func (v Volume) MarshalBinary() ([]byte, error) {
	if !v.IsValid() {
		return nil, &InputError{Got: v.String(), Want: volumes.accepted, Err: ErrOutOfRange}
	}
	return appendBinary(nil, 'v', v.picoliters), nil
}

// UnmarshalBinary implements encoding.BinaryUnmarshaler; it reads what MarshalBinary writes.
func (v *Volume) UnmarshalBinary(data []byte) error {
	q, err := fromBinary(&volumes, 'v', data)
	if err != nil {
		return err
	}
	*v = Volume{q}
	return nil
}

// Value implements driver.Valuer for database/sql: the canonical text, "0.24 m".
func (l Length) Value() (driver.Value, error) { return textValue(l.MarshalText()) }

// Scan implements sql.Scanner: a text with its unit, as string or bytes. A bare number and NULL are refused.
func (l *Length) Scan(from any) error {
	text, err := scanText(&lengths, from)
	if err != nil {
		return err
	}
	return l.UnmarshalText(text)
}

// MarshalBinary implements encoding.BinaryMarshaler, for encoding/gob.
func (l Length) MarshalBinary() ([]byte, error) {
	if !l.IsValid() {
		return nil, &InputError{Got: l.String(), Want: lengths.accepted, Err: ErrOutOfRange}
	}
	return appendBinary(nil, 'l', l.micrometers), nil
}

// UnmarshalBinary implements encoding.BinaryUnmarshaler; it reads what MarshalBinary writes.
func (l *Length) UnmarshalBinary(data []byte) error {
	q, err := fromBinary(&lengths, 'l', data)
	if err != nil {
		return err
	}
	*l = Length{q}
	return nil
}

// Value implements driver.Valuer for database/sql: the canonical text, "13.3333 Δ°C".
func (d TemperatureDelta) Value() (driver.Value, error) { return textValue(d.MarshalText()) }

// Scan implements sql.Scanner: a text with its unit, as string or bytes. A bare number and NULL are refused.
func (d *TemperatureDelta) Scan(from any) error {
	text, err := scanText(&deltas, from)
	if err != nil {
		return err
	}
	return d.UnmarshalText(text)
}

// MarshalBinary implements encoding.BinaryMarshaler, for encoding/gob.
func (d TemperatureDelta) MarshalBinary() ([]byte, error) {
	if !d.IsValid() {
		return nil, &InputError{Got: d.String(), Want: deltas.accepted, Err: ErrOutOfRange}
	}
	return appendBinary(nil, 'd', d.ninethousandths), nil
}

// UnmarshalBinary implements encoding.BinaryUnmarshaler; it reads what MarshalBinary writes.
func (d *TemperatureDelta) UnmarshalBinary(data []byte) error {
	q, err := fromBinary(&deltas, 'd', data)
	if err != nil {
		return err
	}
	*d = TemperatureDelta{q}
	return nil
}

// Value implements driver.Valuer for database/sql: the canonical text, "24.5 °C", and NULL when the temperature is not
// given.
func (t Temperature) Value() (driver.Value, error) {
	if !t.IsValid() {
		return nil, nil
	}
	return textValue(t.MarshalText())
}

// Scan implements sql.Scanner: a text with its scale, as string or bytes; NULL is a temperature that is not given. A bare
// number is refused.
func (t *Temperature) Scan(from any) error {
	if from == nil {
		*t = Temperature{}
		return nil
	}
	text, err := scanText(&temperatures, from)
	if err != nil {
		return err
	}
	return t.UnmarshalText(text)
}

// MarshalBinary implements encoding.BinaryMarshaler, for encoding/gob; a temperature that is not given is 0 K.
func (t Temperature) MarshalBinary() ([]byte, error) {
	return appendBinary(nil, 't', t.ninethousandthsAboveZero), nil
}

// UnmarshalBinary implements encoding.BinaryUnmarshaler; it reads what MarshalBinary writes.
func (t *Temperature) UnmarshalBinary(data []byte) error {
	notGiven, _ := Temperature{}.MarshalBinary()
	if string(data) == string(notGiven) {
		*t = Temperature{}
		return nil
	}
	q, err := fromBinary(&temperatures, 't', data)
	if err != nil {
		return err
	}
	*t = Temperature{q}
	return nil
}
