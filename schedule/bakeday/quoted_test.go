package bakeday

import (
	"encoding/json"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

// Whatever a baker writes comes back from the file as it was written.
func TestAQuotedTextIsReadBack(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		often := rapid.SampledFrom([]rune{'"', '\\', '\n', 0x7f, 0})
		value := rapid.StringOf(rapid.OneOf(rapid.Rune(), often)).Draw(r, "text")
		if !utf8.ValidString(value) {
			r.Skip("no text")
		}
		var got string
		if err := json.Unmarshal([]byte(quoted(value)), &got); err != nil || got != value {
			r.Errorf("%s is read as %q: %v", quoted(value), got, err)
		}
	})
}
