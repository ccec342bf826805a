// Package enum makes an enumeration of a few words: its String, its text in JSON and files, and what it says of a
// word that it does not know, each in one line and by one rule for the whole library.
//
// # How to write an enumeration
//
//	// Style is a kind of bread with its own idea of done.
//	type Style int
//
//	// The styles.
//	const (
//		LeanHearth Style = iota + 1 // zero means "not given"; let the constants begin at iota where zero is a choice
//		Baguette
//	)
//
//	// The first word is that of zero: "" where zero means "not given".
//	var styles = enum.Of[Style]("style of bread", "", "lean hearth", "baguette")
//
//	// String names the style.
//	func (s Style) String() string { return styles.String(s) }
//
//	// IsValid reports whether the style is given and known.
//	func (s Style) IsValid() bool { return styles.Has(s) }
//
//	// MarshalText implements encoding.TextMarshaler.
//	func (s Style) MarshalText() ([]byte, error) { return styles.Marshal(s) }
//
//	// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
//	func (s *Style) UnmarshalText(text []byte) error { return styles.Unmarshal(s, text) }
//
// A value without a word cannot be marshaled. quantity.Values[Style]() lists the values, so that no room has a list
// function of its own. A check of an input is styles.Check(&problems, "Style", in.Style), or CheckIfGiven where zero
// may stay. Words that people type, in any case and with a space, a hyphen or an underscore between their parts, are
// read with styles.Parse.
//
// # Limits
//
// The values are consecutive from zero; words differ when they are written without spaces and hyphens.
package enum
