package assemble

import (
	"bytes"
	"encoding/binary"
	"math"
	"strings"
	"testing"
)

// memory is what a program begins with.
func memory(t *testing.T, pieces []piece, size int) []byte {
	t.Helper()
	out := make([]byte, size)
	for _, p := range pieces {
		if p.at < 0 || int(p.at)+len(p.data) > size {
			t.Fatalf("a piece at %d of %d bytes", p.at, len(p.data))
		}
		copy(out[p.at:], p.data)
	}
	return out
}

func program(sections ...[]byte) []byte {
	out := []byte("\x00asm\x01\x00\x00\x00")
	for _, s := range sections {
		out = append(out, s[0])
		out = binary.AppendUvarint(out, uint64(len(s)-1))
		out = append(out, s[1:]...)
	}
	return out
}

func TestMergedDataIsTheSameMemory(t *testing.T) {
	pieces := []piece{{70000, []byte("end")}, {64, []byte("a")}, {70, []byte("bc")}, {1 << 14, []byte("far")},
		{1<<14 + 3, []byte("ther")}, {200000, []byte("x")}}
	other, code := []byte("\x00\x04nameabc"), []byte("\x0acode")
	in := program(code, append([]byte{dataSection}, writePieces(pieces)...), other)
	out, err := merged(in)
	if err != nil {
		t.Fatal(err)
	}
	rest, ok := bytes.CutPrefix(out, program(code))
	if !ok || rest[0] != dataSection || !bytes.HasSuffix(out, program(other)[8:]) {
		t.Fatalf("the other sections are not as they were: %q", out)
	}
	body, _, _ := sized(rest[1:])
	count, _ := binary.Uvarint(body)
	got, err := readPieces(body)
	if err != nil || count != 4 {
		t.Fatalf("%d pieces, %v", count, err)
	}
	if !bytes.Equal(memory(t, got, 1<<18), memory(t, pieces, 1<<18)) {
		t.Error("the memory is another")
	}
	if again, err := merged(out); err != nil || !bytes.Equal(again, out) {
		t.Errorf("merged twice: %v", err)
	}
}

func TestWhatCannotBeMerged(t *testing.T) {
	piece := "\x01\x00\x41\x40\x0b\x01a" // at −64
	for name, in := range map[string][]byte{
		"no program":     []byte("\x7fELF\x00\x00\x00\x00"),
		"cut off":        []byte("\x00asm\x01\x00\x00\x00\x0b\x09\x01"),
		"below zero":     program([]byte("\x0b" + piece)),
		"by a global":    program([]byte("\x0b" + strings.Replace(piece, "\x41", "\x23", 1))),
		"passive":        program([]byte("\x0b\x01\x01\x01a")),
		"bytes too many": program([]byte("\x0b\x01\x00\x41\x08\x0b\x01ab")),
		"bytes too few":  program([]byte("\x0b\x01\x00\x41\x08\x0b\x03a")),
		"no count":       program([]byte("\x0b")),
		"no piece":       program([]byte("\x0b\x01")),
		"half a piece":   program([]byte("\x0b\x01\x00")),
		"no place":       program([]byte("\x0b\x01\x00\x41")),
	} {
		if out, err := merged(in); err == nil {
			t.Errorf("%s: %q", name, out)
		}
	}
}

func TestSignedNumbers(t *testing.T) {
	for _, v := range []int64{0, 1, 63, 64, 127, 128, 8191, 8192, 1<<31 - 1, -1, -64, -65, -1 << 31,
		math.MaxInt64, math.MinInt64} {
		b := appendSigned(nil, v)
		if got, n := signed(b); got != v || n != len(b) {
			t.Errorf("%d comes back as %d, %d of %d bytes", v, got, n, len(b))
		}
	}
	if _, n := signed(append(bytes.Repeat([]byte{0x80}, 10), 0)); n != 0 {
		t.Error("a number without an end is read")
	}
}

func TestBytesInText(t *testing.T) {
	all := make([]byte, 5000)
	for i := range all {
		all[i] = byte(i * i >> 3)
	}
	for _, n := range []int{0, 1, 6, 7, 8, 255, 5000} {
		text := inText(all[:n])
		if strings.ContainsAny(text, "\x00\n\r<\x1a") {
			t.Errorf("%d bytes: %q", n, text)
		}
		var got []byte
		held, bits := 0, 0
		for _, r := range text {
			if r > 255 {
				t.Fatalf("%q", r)
			}
			held = (held<<7 | int(r)&127) & 0x7fff
			if bits += 7; bits >= 8 {
				bits -= 8
				got = append(got, byte(held>>bits))
			}
		}
		if !bytes.Equal(got, all[:n]) {
			t.Errorf("%d bytes come back as %d", n, len(got))
		}
	}
}

// Pieces join where less than 4096 bytes lie between them, in their order, from the first byte of the memory on.
func TestWherePiecesJoin(t *testing.T) {
	for name, c := range map[string]struct {
		second int64 // where the second one lies, behind three bytes at 0
		count  uint64
	}{
		"side by side": {3, 1}, "a gap": {4, 1}, "the largest gap": {3 + 4095, 1}, "too far": {3 + 4096, 2}, "over the first": {2, 2},
	} {
		body := writePieces([]piece{{0, []byte("abc")}, {c.second, []byte("de")}})
		out, err := merged(program(append([]byte{dataSection}, body...)))
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		joined, _, _ := sized(out[9:])
		got, err := readPieces(joined)
		if count, _ := binary.Uvarint(joined); count != c.count || err != nil {
			t.Errorf("%s: %d pieces, want %d, %v", name, count, c.count, err)
		}
		want := memory(t, []piece{{0, []byte("abc")}, {c.second, []byte("de")}}, 8192)
		if !bytes.Equal(memory(t, got, 8192), want) {
			t.Errorf("%s: the memory is another", name)
		}
	}
}

// A data section as the specification writes it, byte for byte: two active segments of memory 0, at 8 and at 9, become
// one. Source: WebAssembly Core Specification 2.0 (2022), 5.4.9 (expressions) and 5.5.14 (data section).
func TestADataSectionByteForByte(t *testing.T) {
	in := program([]byte("\x0b\x02\x00\x41\x08\x0b\x01a\x00\x41\x09\x0b\x02bc"))
	want := program([]byte("\x0b\x01\x00\x41\x08\x0b\x03abc"))
	if got, err := merged(in); err != nil || !bytes.Equal(got, want) {
		t.Errorf("%q, %v; want %q", got, err, want)
	}
}
