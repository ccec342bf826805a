package assemble

import (
	"bytes"
	"encoding/binary"
	"slices"
	"testing"
)

// A testFunction is what a table of functions holds of one.
type testFunction struct {
	name, stack, file, line uint32
	tables                  []uint32
}

// The tables of a test, one behind the other: two are equal, and one is only for a trace.
var (
	stackTable  = []byte{2, 5, 3, 130, 1, 0}
	lineTable   = []byte{9, 1, 4, 7, 0}
	pointTable  = []byte{1, 3, 0}
	zeroesFirst = []byte{0, 9, 6, 1, 0}
)

func tableOf(functions []testFunction, tables []byte) []byte {
	names, units, files := "\x00main.main\x00runtime.goexit\x00", "unit", "file.go\x00"
	var all []byte
	for i := range functions {
		all = binary.LittleEndian.AppendUint32(all, uint32(100*i))
		all = binary.LittleEndian.AppendUint32(all, 0)
	}
	for i, f := range functions {
		binary.LittleEndian.PutUint32(all[8*i+4:], uint32(len(all)))
		for _, v := range []uint32{uint32(100 * i), f.name, 16, 7, f.stack, f.file, f.line, uint32(len(f.tables)), 3, 12,
			0x01000002} {
			all = binary.LittleEndian.AppendUint32(all, v)
		}
		for _, v := range append(slices.Clone(f.tables), 0xffffffff) {
			all = binary.LittleEndian.AppendUint32(all, v)
		}
	}
	out := []byte("\xf1\xff\xff\xff\x00\x00\x01\x08")
	at := uint64(headBytes)
	for _, v := range []uint64{uint64(len(functions)), 1, 0} {
		out = binary.LittleEndian.AppendUint64(out, v)
	}
	for _, n := range []int{0, len(names), len(units), len(files), len(tables)} {
		at += uint64(n)
		out = binary.LittleEndian.AppendUint64(out, at)
	}
	return slices.Concat(out, []byte(names), []byte(units), []byte(files), tables, all)
}

func TestOnlyWhatATraceShowsIsTakenOut(t *testing.T) {
	tables := slices.Concat([]byte{0}, lineTable, stackTable, pointTable, zeroesFirst, stackTable)
	line, stack := uint32(1), uint32(1+len(lineTable))
	points := stack + uint32(len(stackTable))
	zeroes := points + uint32(len(pointTable))
	again := zeroes + uint32(len(zeroesFirst))
	program := append([]byte("\xf1\xff\xff\xff\x00\x00\x01\x08 no table here"), make([]byte, 10)...)
	table := tableOf([]testFunction{
		{name: 1, stack: stack, file: line, line: line, tables: []uint32{points, zeroes, 0, zeroes}},
		{name: 11, stack: again, file: line, line: line},
	}, tables)
	program = append(program, table...)
	before := bytes.Clone(program)
	withoutLines(program)
	got, ok := readFunctions(program[len(program)-len(table):])
	if !ok || len(program) != len(before) {
		t.Fatalf("the table is no table afterward: %v, %d bytes", ok, len(program))
	}
	word := func(f, i int) uint32 { return binary.LittleEndian.Uint32(got.all[got.records[f].at+4*i:]) }
	for f := range 2 {
		for _, i := range []int{1, 5, 6, 8, 9} {
			if word(f, i) != 0 {
				t.Errorf("function %d, word %d: %d is left", f, i, word(f, i))
			}
		}
		if word(f, 0) != uint32(100*f) || word(f, 2) != 16 || word(f, 3) != 7 || word(f, 10) != 0x01000002 {
			t.Errorf("function %d: what the program needs has changed", f)
		}
		if kept, _ := tableAt(got.tables, word(f, 4)); kept != string(stackTable) {
			t.Errorf("function %d: its stack is %v", f, kept)
		}
	}
	if word(0, 4) != word(1, 4) {
		t.Error("equal tables stand there twice")
	}
	if kept, _ := tableAt(got.tables, word(0, 12)); kept != string(zeroesFirst) || word(0, 13) != 0 || word(0, 15) != 0xffffffff {
		t.Errorf("the second table is %v; %d, %d", kept, word(0, 13), word(0, 15))
	}
	if word(0, 11) != 0 || word(0, 14) != 0 {
		t.Error("tables of a trace are left")
	}
	if len(bytes.Trim(got.names, "\x00")) > 0 || len(bytes.Trim(got.units, "\x00")) > 0 || len(bytes.Trim(got.files, "\x00")) > 0 {
		t.Errorf("names are left: %q %q %q", got.names, got.units, got.files)
	}
	if kept := len(bytes.TrimRight(got.tables, "\x00")) + 1; kept != 1+len(stackTable)+len(zeroesFirst) {
		t.Errorf("%d bytes of tables are left", kept)
	}
}

// A table of another form, or one that breaks off, stays byte for byte as it is.
func TestAnotherFormIsLeftAlone(t *testing.T) {
	good := func() []byte {
		return tableOf([]testFunction{{name: 1, stack: 1, tables: []uint32{1, 1}}}, append([]byte{0}, stackTable...))
	}
	all := int(binary.LittleEndian.Uint64(good()[64:]))
	for name, change := range map[string]func(b []byte) []byte{
		"cut in the head":           func(b []byte) []byte { return b[:headBytes-1] },
		"cut in a function":         func(b []byte) []byte { return b[:len(b)-13] },
		"another magic number":      func(b []byte) []byte { b[0] = 0xf2; return b },
		"names elsewhere":           func(b []byte) []byte { b[32]++; return b },
		"parts out of order":        func(b []byte) []byte { b[40], b[48] = b[48], b[40]; return b },
		"too many functions":        func(b []byte) []byte { b[11] = 1; return b },
		"a function elsewhere":      func(b []byte) []byte { b[all+4]++; return b },
		"another entry":             func(b []byte) []byte { b[all]++; return b },
		"too many tables":           func(b []byte) []byte { b[all+8+28] = 17; return b },
		"a table that is none":      func(b []byte) []byte { b[all+8+16] = 200; return b },
		"a table without end":       func(b []byte) []byte { b[all-1] = 1; return b },
		"a last table that is none": func(b []byte) []byte { b[all+8+funcBytes+4] = 200; return b },
	} {
		b := change(good())
		before := bytes.Clone(b)
		if withoutLines(b); !bytes.Equal(b, before) {
			t.Errorf("%s: changed", name)
		}
	}
	b := good()
	if before := bytes.Clone(b); true {
		if withoutLines(b); bytes.Equal(b, before) {
			t.Error("the good one is not slimmed")
		}
	}
}

// Wherever a table breaks off, and whatever one byte of it says, nothing is read outside it, and its length stays; cut
// anywhere it is left as it is. One that stands right behind what only looks like its beginning is found.
func TestTablesThatAreDamaged(t *testing.T) {
	good := tableOf([]testFunction{{name: 1, stack: 1, tables: []uint32{1, 1, 1}}, {name: 2, stack: 1, tables: []uint32{1}}},
		append([]byte{0}, stackTable...))
	const behind = 4 // the last function's list ends with bytes that are none of the table's
	for n := range len(good) - behind {
		b := bytes.Clone(good[:n:n])
		if withoutLines(b); !bytes.Equal(b, good[:n]) {
			t.Errorf("cut at %d of %d bytes: changed", n, len(good))
		}
	}
	for at := range good {
		for _, v := range []byte{0, 1, 0x20, 0x2c, 0x7f, 0x80, 0xff} { // 0x20: eight times the count is none
			b := bytes.Clone(good)
			b[at] = v
			if withoutLines(b[:len(b):len(b)]); len(b) != len(good) {
				t.Errorf("byte %d as %d", at, v)
			}
		}
	}
	if b := bytes.Clone(good[:len(good)-behind]); true {
		if withoutLines(b); bytes.Equal(b, good[:len(b)]) {
			t.Error("whole to its last byte, and not slimmed")
		}
	}
	index := bytes.Clone(good) // a function that lies in the index, at its own entry
	all := int(binary.LittleEndian.Uint64(good[64:]))
	binary.LittleEndian.PutUint32(index[all+8+4:], 8)
	if before := bytes.Clone(index); true {
		if withoutLines(index); !bytes.Equal(index, before) {
			t.Error("a function in the index was taken for one")
		}
	}
	slimmed := bytes.Clone(good)
	withoutLines(slimmed)
	if bytes.Equal(slimmed, good) {
		t.Fatal("the good one is not slimmed")
	}
	for _, before := range [][]byte{{}, make([]byte, 5), good[:8], append(bytes.Clone(good[:8]), good[:8]...)} {
		b := append(bytes.Clone(before), good...)
		if withoutLines(b); !bytes.Equal(b, append(bytes.Clone(before), slimmed...)) {
			t.Errorf("behind %d bytes: not the same", len(before))
		}
	}
}
