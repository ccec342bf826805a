package assemble

import (
	"bytes"
	"encoding/binary"
	"errors"
)

// Go's linker cuts the data of a program into a hundred thousand pieces, to leave out runs of a few zeros. Compressed,
// the heads of the pieces are larger than the zeros were. merged puts neighboring pieces together again; the memory that
// the program begins with is the same. Source: WebAssembly Core Specification 2.0 (2022), 5.5 (sections) and 5.5.14
// (data section).
func merged(program []byte) ([]byte, error) {
	if !bytes.HasPrefix(program, []byte("\x00asm\x01\x00\x00\x00")) {
		return nil, errors.New("no WebAssembly of version 1")
	}
	out := append([]byte(nil), program[:8]...)
	for in := program[8:]; len(in) > 0; {
		kind := in[0]
		body, rest, ok := sized(in[1:])
		if !ok {
			return nil, errors.New("a section of the WebAssembly is cut off")
		}
		if kind == dataSection {
			pieces, err := readPieces(body)
			if err != nil {
				return nil, err
			}
			for _, p := range pieces {
				withoutLines(p.data)
			}
			body = writePieces(pieces)
		}
		out = binary.AppendUvarint(append(out, kind), uint64(len(body)))
		out = append(out, body...)
		in = rest
	}
	return out, nil
}

const (
	dataSection = 11
	constant    = 0x41 // i32.const
	end         = 0x0b
	// Pieces nearer to each other than this become one.
	nearest = 4096
)

// A piece of data and where it lies in the memory.
type piece struct {
	at   int64
	data []byte
}

// sized reads a length and so many bytes.
func sized(b []byte) (body, rest []byte, ok bool) {
	n, k := binary.Uvarint(b)
	if k <= 0 || n > uint64(len(b)-k) {
		return nil, nil, false
	}
	return b[k : k+int(n)], b[k+int(n):], true
}

var errData = errors.New("a piece of data that Go's linker does not write")

// readPieces reads the pieces and puts neighbors together.
func readPieces(body []byte) ([]piece, error) {
	count, k := binary.Uvarint(body)
	if k <= 0 {
		return nil, errData
	}
	body = body[k:]
	var out []piece
	for range count {
		if len(body) < 3 || body[0] != 0 || body[1] != constant {
			return nil, errData
		}
		at, n := signed(body[2:])
		if n == 0 || len(body) < 3+n || body[2+n] != end || at < 0 {
			return nil, errData
		}
		data, rest, ok := sized(body[3+n:])
		if !ok {
			return nil, errData
		}
		body = rest
		if last := len(out) - 1; last >= 0 {
			gap := at - out[last].at - int64(len(out[last].data))
			if gap >= 0 && gap < nearest {
				out[last].data = append(append(out[last].data, make([]byte, gap)...), data...)
				continue
			}
		}
		out = append(out, piece{at, append([]byte(nil), data...)})
	}
	if len(body) > 0 {
		return nil, errData
	}
	return out, nil
}

func writePieces(pieces []piece) []byte {
	out := binary.AppendUvarint(nil, uint64(len(pieces)))
	for _, p := range pieces {
		out = append(appendSigned(append(out, 0, constant), p.at), end)
		out = append(binary.AppendUvarint(out, uint64(len(p.data))), p.data...)
	}
	return out
}

// longest is a number of 64 bits, seven to a byte.
const longest = 10

// signed reads a signed number, LEB128; n is 0 when there is none.
func signed(b []byte) (v int64, n int) {
	for i := range min(len(b), longest) {
		v |= int64(b[i]&0x7f) << (7 * i)
		if b[i] < 0x80 {
			if b[i]&0x40 != 0 {
				v -= 1 << (7 * (i + 1))
			}
			return v, i + 1
		}
	}
	return 0, 0
}

func appendSigned(b []byte, v int64) []byte {
	for {
		low := byte(v & 0x7f)
		v >>= 7
		if v == 0 && low&0x40 == 0 || v == -1 && low&0x40 != 0 {
			return append(b, low)
		}
		b = append(b, low|0x80)
	}
}
