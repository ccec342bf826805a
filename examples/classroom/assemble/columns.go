package assemble

import (
	"bytes"
	"cmp"
	"encoding/binary"
	"errors"
	"maps"
	"slices"
)

// A program is one instruction after another, each with its operand. Compressed, that is a half larger than the same
// kept in columns: the instructions in one, the places in memory in another, and so on, with numbers that can be foretold
// told as the step from what is expected. inColumns writes a program so; the page's script puts the same bytes together
// again (page/together.js). An instruction with an operand that is met often is a symbol of its own, and so is a run of
// instructions. Source of the forms: WebAssembly Core Specification 2.0 (2022), 5.4 (instructions) and 5.5.13 (code
// section); of the places where a function goes on: cmd/internal/obj/wasm/wasmobj.go of Go 1.26.
//
// Written are parts, each behind its length: the bytes before the first function, those after the last, the meanings of
// the symbols, the symbols, and the columns.
func inColumns(program []byte) ([]byte, error) {
	before, code, after, err := aroundCode(program)
	if err != nil {
		return nil, err
	}
	c, err := columnsOf(code)
	if err != nil {
		return nil, err
	}
	out := binary.AppendUvarint(nil, uint64(len(program)))
	for _, part := range append([][]byte{before, after, c.meanings(), c.written}, c.columns...) {
		out = binary.AppendUvarint(out, uint64(len(part)))
		out = append(out, part...)
	}
	return out, nil
}

var errCode = errors.New("code that Go's compiler does not write")

// aroundCode cuts a program before its first function and behind its last.
func aroundCode(program []byte) (before, code, after []byte, err error) {
	for at := min(8, len(program)); at < len(program); {
		body, rest, ok := sized(program[at+1:])
		if !ok {
			break
		}
		next := len(program) - len(rest)
		if program[at] != codeSection {
			at = next
			continue
		}
		_, n := binary.Uvarint(body)
		if n <= 0 {
			break
		}
		first := next - len(body) + n
		return program[:first], program[first:next], rest, nil
	}
	return nil, nil, nil, errors.New("a program without code")
}

const codeSection = 10

// A symbol is written for an instruction, or for a run of which all but the last have no operand.
type symbol struct {
	fixed   string
	operand operand
	column  byte
}

// Columns are the instructions of a program and their operands.
type columns struct {
	symbols []symbol
	written []byte // the symbols' numbers
	columns [][]byte

	often  map[string]bool // instructions that are symbols with their operand
	number map[symbol]byte
	of     map[string]byte // the column of an instruction's operands
}

const (
	// How many instructions are symbols with their operand, and how many symbols there are: tried, 30 to 40 and all that
	// a byte can tell are best.
	mostOften, mostSymbols = 34, 256
	// A run that is met more seldom is none.
	leastMet = 200
	// The column of the lists of variables of each function, behind how many there are.
	variables = 0
)

func columnsOf(code []byte) (*columns, error) {
	c := columns{columns: make([][]byte, 1), number: map[symbol]byte{}, of: map[string]byte{}}
	met := map[string]int{}
	count := func(in *instruction) {
		if in.operand == copied {
			met[string(in.fixed)+string(in.bytes)]++
		}
	}
	if !walk(code, func([]byte) {}, count) {
		return nil, errCode
	}
	c.often = map[string]bool{}
	mostMet := func(a, b string) int { return cmp.Or(cmp.Compare(met[b], met[a]), cmp.Compare(a, b)) }
	for _, in := range slices.SortedFunc(maps.Keys(met), mostMet)[:min(mostOften, len(met))] {
		c.often[in] = true
	}
	full := false
	walk(code, func(lists []byte) { c.columns[variables] = append(c.columns[variables], lists...) },
		func(in *instruction) { full = !c.write(in) || full })
	if full {
		return nil, errCode
	}
	for c.runTogether() {
	}
	return &c, nil
}

// write writes an instruction; it cannot when there are more symbols than a byte can tell.
func (c *columns) write(in *instruction) bool {
	s := symbol{fixed: string(in.fixed), operand: in.operand}
	if whole := s.fixed + string(in.bytes); in.operand == copied && c.often[whole] {
		s.fixed, s.operand = whole, nothing
	}
	switch s.operand {
	case nothing, opens, closes:
	default:
		s.column = c.column(in)
		to := &c.columns[s.column]
		if in.told == nil {
			*to = append(*to, in.bytes...)
		}
		for _, v := range in.told {
			*to = appendSigned(*to, v)
		}
	}
	n, ok := c.number[s]
	if !ok {
		if len(c.symbols) == mostSymbols {
			return false
		}
		n = byte(len(c.symbols))
		c.number[s], c.symbols = n, append(c.symbols, s)
	}
	c.written = append(c.written, n)
	return true
}

// column is the one of an instruction's operands, by what the instruction is and how they are told.
func (c *columns) column(in *instruction) byte {
	key := string(in.fixed) + string(rune(in.operand))
	n, ok := c.of[key]
	if !ok {
		n = byte(len(c.columns))
		c.of[key], c.columns = n, append(c.columns, nil)
	}
	return n
}

// runTogether makes a symbol of the two that follow each other most often, and says whether it did.
func (c *columns) runTogether() bool {
	if len(c.symbols) == mostSymbols || len(c.written) < leastMet {
		return false
	}
	var met [mostSymbols * mostSymbols]int32
	for i, s := range c.written[min(1, len(c.written)):] {
		met[int(c.written[i])*mostSymbols+int(s)]++
	}
	best := -1
	for pair, n := range met {
		if n >= leastMet && (best < 0 || n > met[best]) && c.symbols[pair/mostSymbols].operand == nothing {
			best = pair
		}
	}
	if best < 0 {
		return false
	}
	first, second, both := byte(best/mostSymbols), byte(best%mostSymbols), byte(len(c.symbols))
	s := c.symbols[second]
	s.fixed = c.symbols[first].fixed + s.fixed
	c.symbols = append(c.symbols, s)
	out := c.written[:0]
	for i := 0; i < len(c.written); i++ {
		if c.written[i] == first && i+1 < len(c.written) && c.written[i+1] == second {
			out = append(out, both)
			i++
			continue
		}
		out = append(out, c.written[i])
	}
	c.written = out
	return true
}

// meanings are the symbols: the kind of the operand, its column, and the bytes before it, behind their number.
func (c *columns) meanings() []byte {
	var out bytes.Buffer
	for _, s := range c.symbols {
		out.Write([]byte{byte(s.operand), s.column})
		out.Write(binary.AppendUvarint(nil, uint64(len(s.fixed))))
		out.WriteString(s.fixed)
	}
	return out.Bytes()
}
