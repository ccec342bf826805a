package nearest

import (
	"strings"
	"testing"
)

func TestWord(t *testing.T) {
	known := []string{"hydration", "flour", "salt"}
	for in, want := range map[string]string{
		"hydratoin": "hydration", "flours": "flour", "slt": "salt", "sl": "", "flxxr": "flour", "flxxx": "", "zzzz": "",
		"": "", strings.Repeat("x", 1000): "",
	} {
		if got := Word(in, known); got != want {
			t.Errorf("%s: %q, want %q", in, got, want)
		}
	}
}

// A name is found by a part of it, in any case, when no slip explains it.
func TestName(t *testing.T) {
	names := []string{"Bread flour", "Whole rye", "salt"}
	for in, want := range map[string]string{"rye": "Whole rye", "FLOUR": "Bread flour", "Slat": "salt", "beer": ""} {
		if got := Name(in, names); got != want {
			t.Errorf("%s: %q, want %q", in, got, want)
		}
	}
}
