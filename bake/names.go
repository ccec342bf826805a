package bake

import (
	"strconv"
	"strings"

	"example.org/maslin/dough/quantity"
)

// indexName finds a name however its words are joined; −1 if there is none.
func indexName(names []string, text string) int {
	if len(text) > 64 {
		return -1
	}
	plain := func(s string) string {
		return strings.Map(func(r rune) rune {
			if r == ' ' || r == '-' || r == '_' {
				return -1
			}
			return r
		}, strings.ToLower(strings.TrimSpace(s)))
	}
	text = plain(text)
	for i, n := range names {
		if plain(n) == text {
			return i
		}
	}
	return -1
}

func unknown(what string, got int, names []string) error {
	return &quantity.InputError{Got: what + " " + strconv.Itoa(got), Want: strings.Join(names, ", "), Err: quantity.ErrOutOfRange}
}

// MarshalText implements encoding.TextMarshaler.
func (s LoafState) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// MarshalText implements encoding.TextMarshaler.
func (s LeftState) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// MarshalText implements encoding.TextMarshaler.
func (c Confidence) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// MarshalText implements encoding.TextMarshaler.
func (k PhaseKind) MarshalText() ([]byte, error) { return []byte(k.String()), nil }
