package assemble

import (
	"encoding/binary"
	"index/suffixarray"
)

// saidBy tells whether a program may say a sentence: its identifier is one of the texts that the program holds.
func saidBy(program []byte) func(id string) bool {
	texts := suffixarray.New(program)
	return func(id string) bool { return len(texts.Lookup([]byte(id), 1)) > 0 }
}

// withSection puts a section of its own behind a program, for whoever loads it. Source: WebAssembly Core Specification
// 2.0 (2022), 5.5.3 (custom section).
func withSection(program []byte, name string, content []byte) []byte {
	body := append(binary.AppendUvarint(nil, uint64(len(name))), name...)
	body = append(body, content...)
	out := append([]byte(nil), program...)
	out = binary.AppendUvarint(append(out, 0), uint64(len(body)))
	return append(out, body...)
}
