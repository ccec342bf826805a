package calendar

import (
	"encoding/binary"
	"math/bits"
)

// sha1 is the digest that name-based identifiers are made of; it keeps no secret. Package crypto/sha1 brings much that
// a page in a browser would load for these lines. Source: FIPS 180-4 (2015), sections 5.1.1 and 6.1.2.
func sha1(text []byte) [20]byte {
	length := uint64(len(text)) * 8
	text = append(text[:len(text):len(text)], 0x80)
	for len(text)%64 != 56 {
		text = append(text, 0)
	}
	text = binary.BigEndian.AppendUint64(text, length)
	h := [5]uint32{0x67452301, 0xefcdab89, 0x98badcfe, 0x10325476, 0xc3d2e1f0}
	for ; len(text) > 0; text = text[64:] {
		block(&h, text[:64])
	}
	var sum [20]byte
	for i, word := range h {
		binary.BigEndian.PutUint32(sum[4*i:], word)
	}
	return sum
}

func block(h *[5]uint32, text []byte) {
	var w [80]uint32
	for t := range w {
		if t < 16 {
			w[t] = binary.BigEndian.Uint32(text[4*t:])
		} else {
			w[t] = bits.RotateLeft32(w[t-3]^w[t-8]^w[t-14]^w[t-16], 1)
		}
	}
	a, b, c, d, e := h[0], h[1], h[2], h[3], h[4]
	for t, word := range w {
		var f, k uint32
		switch t / 20 {
		case 0:
			f, k = b&c|^b&d, 0x5a827999
		case 1:
			f, k = b^c^d, 0x6ed9eba1
		case 2:
			f, k = b&c|b&d|c&d, 0x8f1bbcdc
		default:
			f, k = b^c^d, 0xca62c1d6
		}
		a, b, c, d, e = bits.RotateLeft32(a, 5)+f+e+k+word, a, bits.RotateLeft32(b, 30), c, d
	}
	for i, x := range [5]uint32{a, b, c, d, e} {
		h[i] += x
	}
}
