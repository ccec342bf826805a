package curve

import (
	"math"
	"strings"
	"testing"
)

// Letters are wide, usual, digits or narrow, from the first to the last of their kind; and a text is as wide as its
// letters together, in the size of its letters.
func TestWidthsOfLetters(t *testing.T) {
	for letters, want := range map[string]float64{
		"ABCDEFGHIJKLMNOPQRSTUVWXYZmw%": 0.8, "0123456789": 0.65, "abcdefgknopqrstuvxyz°@[`": 0.62, " .,:;!'ijl|()": 0.4,
		"中文字": 1.05,
	} {
		whole := 0.0
		for _, r := range letters {
			got := textWidth(string(r), 10)
			if !(math.Abs(got-10*want) <= 1e-9) {
				t.Errorf("%q is %v wide, want %v", r, got, 10*want)
			}
			whole += got
		}
		if got := textWidth(letters, 10); !(math.Abs(got-whole) <= 1e-9) {
			t.Errorf("%q is %v wide, its letters %v", letters, got, whole)
		}
	}
	if textWidth("", 10) != 0 || textWidth(strings.Repeat("a", 3), 20) != 2*textWidth("aaa", 10) {
		t.Error("a width does not go with the size of the letters")
	}
}
