// Package tomlbind reads a TOML file into a Go struct and reports everything that is wrong
// with it in one run, each fault with its line and column: unknown keys with a suggestion, values
// of the wrong kind, and texts that a field's own parser refuses.
//
// Fields are matched by their json tag. A leaf may be a string, a bool, an int, a float64, or
// any type that implements encoding.TextUnmarshaler. [File.Locate] maps a Go field path, such
// as "Flours[1].Percent", back to a place in the file, so that faults found later, by the library
// that the values are for, can be reported at their line too.
package tomlbind
