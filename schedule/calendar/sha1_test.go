package calendar

import (
	crypto "crypto/sha1"
	"encoding/hex"
	"strings"
	"testing"
)

// Source: NIST, "Secure Hash Standard: example values, SHA-1" (one block, two blocks); RFC 3174 (2001), section 7.3.
func TestDigestsOfTheStandard(t *testing.T) {
	for text, want := range map[string]string{
		"abc": "a9993e364706816aba3e25717850c26c9cd0d89d",
		"abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq": "84983e441c3bd26ebaae4aa1f95129e5e54670f1",
		strings.Repeat("a", 1_000_000):                             "34aa973cd4c4daa4f61eeb2bdbad27316534016f",
		"":                                                         "da39a3ee5e6b4b0d3255bfef95601890afd80709",
	} {
		got := sha1([]byte(text))
		if hex.EncodeToString(got[:]) != want {
			t.Errorf("%.60q: %x, want %s", text, got, want)
		}
	}
}

func TestDigestsAreThoseOfTheStandardLibrary(t *testing.T) {
	for n := range 200 {
		text := []byte(strings.Repeat("maslin\x00", n/7+1)[:n])
		if got, want := sha1(text), crypto.Sum(text); got != want {
			t.Errorf("%d bytes: %x, want %x", n, got, want)
		}
	}
}
