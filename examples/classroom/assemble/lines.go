package assemble

import (
	"bytes"
	"encoding/binary"
)

// A Go program carries what only the trace of a crash shows: the name, the file and the lines of each function. The page
// shows a fault in its own words (desk.Answer), and so withoutLines takes them out of the table of functions. Every
// place stays where it is: what is left over is zeros, which compress to nothing. Source of the form: runtime/symtab.go and
// internal/abi/symtab.go of Go 1.26 (_func, pcHeader, pcvalue). A table of another form is left as it is.
func withoutLines(data []byte) {
	for at := 0; ; at += 8 {
		found := bytes.Index(data[at:], []byte("\xf1\xff\xff\xff\x00\x00\x01\x08"))
		if found < 0 {
			return
		}
		at += found
		if t, ok := readFunctions(data[at:]); ok {
			t.slim()
			return
		}
	}
}

const (
	headBytes = 72 // of the table
	funcBytes = 44 // of a function, before its lists
	// Lists by number that nothing reads here: where a goroutine may be stopped at any instruction, which WebAssembly
	// never does, and which arguments a trace shows.
	unsafePoints, liveArguments = 0, 3
)

// A functions is the table of functions, in the pieces that its head names.
type functions struct {
	count                       int
	names, units, files, tables []byte
	all                         []byte // an index of two numbers for each function, and the functions
	records                     []record
}

// A record is one function: where it is in all, and how many tables it has.
type record struct {
	at, tables int
}

// readFunctions reads the head and every function, and says whether all is where it should be.
func readFunctions(b []byte) (functions, bool) {
	var t functions
	if len(b) < headBytes {
		return t, false
	}
	var head [8]uint64
	for i := range head {
		head[i] = binary.LittleEndian.Uint64(b[8+8*i:])
	}
	count, names, units, files, tables, all := head[0], head[3], head[4], head[5], head[6], head[7]
	if names != headBytes || units < names || files < units || tables < files || all < tables || all > uint64(len(b)) ||
		count > uint64(len(b))/8 || all+8*count > uint64(len(b)) {
		return t, false
	}
	t = functions{count: int(count), names: b[names:units], units: b[units:files], files: b[files:tables],
		tables: b[tables:all], all: b[all:]}
	for i := range t.count {
		at := int(binary.LittleEndian.Uint32(t.all[8*i+4:]))
		if at < 8*t.count || at+funcBytes > len(t.all) ||
			binary.LittleEndian.Uint32(t.all[at:]) != binary.LittleEndian.Uint32(t.all[8*i:]) {
			return t, false
		}
		r := record{at, int(binary.LittleEndian.Uint32(t.all[at+28:]))}
		if r.tables > 16 || at+funcBytes+4*r.tables > len(t.all) {
			return t, false
		}
		t.records = append(t.records, r)
	}
	return t, true
}

// slim empties what only a trace shows, and writes the tables that are still needed one after the other.
func (t functions) slim() {
	kept := make([]byte, 1, len(t.tables)) // a table at 0 is none
	places := map[string]uint32{}
	put := func(place []byte) bool {
		from := binary.LittleEndian.Uint32(place)
		if from == 0 {
			return true
		}
		table, ok := tableAt(t.tables, from)
		if !ok {
			return false
		}
		at, known := places[table]
		if !known {
			at = uint32(len(kept))
			places[table] = at
			kept = append(kept, table...)
		}
		binary.LittleEndian.PutUint32(place, at)
		return true
	}
	// Written to a copy first: half a table would be worse than a large one.
	all := bytes.Clone(t.all)
	for _, r := range t.records {
		f := all[r.at:]
		clear(f[4:8])   // the name
		clear(f[20:28]) // files and lines
		clear(f[32:40]) // the unit that was compiled, the first line
		if !put(f[16:20]) {
			return
		}
		for i := range r.tables {
			place := f[funcBytes+4*i:][:4]
			if i == unsafePoints || i == liveArguments {
				clear(place)
			} else if !put(place) {
				return
			}
		}
	}
	copy(t.all, all)
	clear(t.tables)
	copy(t.tables, kept)
	clear(t.names)
	clear(t.units)
	clear(t.files)
}

// tableAt is the table that begins there: pairs of a change and a length, up to a change of zero that is not the first.
func tableAt(tables []byte, from uint32) (string, bool) {
	if uint64(from) >= uint64(len(tables)) {
		return "", false
	}
	rest := tables[from:]
	for first := true; ; first = false {
		change, n := binary.Uvarint(rest)
		if n <= 0 {
			return "", false
		}
		rest = rest[n:]
		if change == 0 && !first {
			return string(tables[from : len(tables)-len(rest)]), true
		}
		_, n = binary.Uvarint(rest)
		if n <= 0 {
			return "", false
		}
		rest = rest[n:]
	}
}
