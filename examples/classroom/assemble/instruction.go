package assemble

import (
	"bytes"
	"encoding/binary"
	"math"
	"slices"
)

// An operand is what follows the fixed bytes of an instruction, as the page's script has to write it; its numbers are the
// script's (page/together.js).
type operand byte

const (
	nothing operand = iota
	opens           // nothing, and a block begins
	closes          // nothing, and a block ends
	copied          // a number of LEB128, as it stands
	four            // four bytes
	eight           // eight bytes
	label           // how many blocks out a branch leads; told is the block, counted from the outermost
	labels          // the same, of a table of branches
	resumes         // the place where a function goes on after a call; told is how far from where it is expected
	jumps           // the same, before a jump
)

// An instruction is one in the body of a function.
type instruction struct {
	fixed   []byte // its opcode, and what else is no operand
	operand operand
	bytes   []byte  // the operand as it stands
	told    []int64 // the operand as a column has it, where that is not as it stands
}

// Opcodes that are read in a way of their own. Those between the first and the last of a pair are alike.
const (
	opBlock, opLoop, opIf          = 0x02, 0x03, 0x04
	opEnd                          = 0x0b
	opBranch, opBranchIf           = 0x0c, 0x0d
	opBranchTable                  = 0x0e
	opCall, opCallIndirect         = 0x10, 0x11
	opLocalGet, opLocalSet         = 0x20, 0x21
	opGlobalSet                    = 0x24
	opLoad, opStore                = 0x28, 0x3e
	opMemorySize, opMemoryGrow     = 0x3f, 0x40
	opI32, opI64, opF32, opF64     = 0x41, 0x42, 0x43, 0x44
	opCompare, opExtend            = 0x45, 0xc4
	opMore                         = 0xfc
	moreConversions                = 7 // the last of opMore without operands
	moreMemoryCopy, moreMemoryFill = 10, 11
)

// firstFunction is what Go's compiler adds to the number of a function where it notes a place in it.
const firstFunction = 0x1000

// blocks follows the blocks of a function. Go's compiler numbers the places where a function may go on, and begins it
// with a table that leads from each number to a block; where the block ends is the place.
type blocks struct {
	depth, outer, ended int
	number              []int64 // of the first place that leads to each block
}

func (b *blocks) close() {
	b.depth--
	if b.depth < b.outer {
		b.outer = b.depth
		b.ended++
	}
}

func (b *blocks) table(leads []uint64) {
	b.outer, b.ended, b.number = b.depth, 0, b.number[:0]
	for i, block := range leads {
		for uint64(len(b.number)) <= min(block, uint64(len(leads))) {
			b.number = append(b.number, int64(i))
		}
	}
}

// expected is the number of the place where the block ends that is open.
func (b *blocks) expected() int64 {
	if b.ended < len(b.number) {
		return b.number[b.ended]
	}
	return 0
}

// walk reads the functions of a program's code: the lists of variables of each, and its instructions. It says whether
// all of it could be read.
func walk(code []byte, variables func(lists []byte), visit func(*instruction)) bool {
	var b blocks
	for function := int64(firstFunction); len(code) > 0; function++ {
		body, rest, ok := sized(code)
		if !ok || !shortest(code[:len(code)-len(rest)-len(body)], uint64(len(body))) {
			return false
		}
		code = rest
		n := listsLength(body)
		if n == 0 {
			return false
		}
		variables(body[:n])
		b = blocks{number: b.number[:0]}
		for body = body[n:]; len(body) > 0; {
			in, n := b.read(body, function)
			if n == 0 || b.depth < 0 && n < len(body) {
				return false
			}
			visit(&in)
			body = body[n:]
		}
		if b.depth >= 0 {
			return false
		}
	}
	return true
}

// listsLength is the length of a function's lists of variables, so many of a type; 0 if they cannot be read.
func listsLength(body []byte) int {
	count, at := binary.Uvarint(body)
	if at <= 0 || !shortest(body[:at], count) {
		return 0
	}
	for range count {
		_, k := binary.Uvarint(body[at:])
		if k <= 0 || at+k >= len(body) {
			return 0
		}
		at += k + 1
	}
	return at
}

// read reads an instruction and says how many bytes it takes: 0 when it is none that Go's compiler writes.
func (b *blocks) read(code []byte, function int64) (instruction, int) {
	op, c := code[0], cursor{code: code, at: 1}
	in := instruction{}
	fixed := func() { in.fixed = code[:min(c.at, len(code))] }
	fixed()
	operand := func(kind operand) {
		in.operand, in.bytes = kind, code[len(in.fixed):max(len(in.fixed), min(c.at, len(code)))]
	}
	switch {
	case op == opBlock || op == opLoop || op == opIf:
		c.skip(1)
		fixed()
		in.operand = opens
		b.depth++
	case op == opEnd:
		in.operand = closes
		b.close()
	case op == opBranch || op == opBranchIf:
		out := c.number()
		operand(label)
		in.told = []int64{int64(b.depth) - int64(out)}
		if out > math.MaxInt32 || !shortest(in.bytes, out) {
			return in, 0
		}
	case op == opBranchTable:
		leads := []uint64{c.number()}
		if leads[0] >= uint64(len(code)) {
			return in, 0
		}
		for range leads[0] + 1 {
			leads = append(leads, c.number())
		}
		for i, lead := range leads {
			in.told = append(in.told, int64(lead))
			if i > 1 {
				in.told[i] -= int64(leads[i-1])
			}
		}
		operand(labels)
		if slices.Max(leads) > math.MaxInt32 || !shortest(in.bytes, leads...) {
			return in, 0
		}
		b.table(leads[1:])
	case op == opCallIndirect:
		c.number()
		c.number()
		fixed()
	case op >= opLoad && op <= opStore:
		c.number() // how it is aligned, which goes with the opcode
		fixed()
		c.number()
		operand(copied)
	case op == opMemorySize || op == opMemoryGrow:
		c.skip(1)
		fixed()
	case op == opCall || op >= opLocalGet && op <= opGlobalSet:
		c.number()
		operand(copied)
	case op == opI32 || op == opI64:
		v := c.signed()
		operand(copied)
		place := v - b.expected()
		if op == opI64 {
			place -= function << 16
		}
		switch {
		case v < 0 || v > math.MaxInt32 || !bytes.Equal(in.bytes, appendSigned(nil, v)):
		case op == opI64 && v>>16 == function:
			in.operand, in.told = resumes, []int64{place}
		case op == opI32 && bytes.HasPrefix(code[min(c.at, len(code)):], []byte{opLocalSet, 0}):
			in.operand, in.told = jumps, []int64{place}
		}
	case op == opF32:
		c.skip(4)
		operand(four)
	case op == opF64:
		c.skip(8)
		operand(eight)
	case op == opMore:
		switch more := c.number(); {
		case more == moreMemoryCopy:
			c.skip(2)
		case more == moreMemoryFill:
			c.skip(1)
		case more > moreConversions:
			return in, 0
		}
		fixed()
	case op <= 0x01 || op == 0x05 || op == 0x0f || op == 0x1a || op == 0x1b || op >= opCompare && op <= opExtend:
	default:
		return in, 0
	}
	if c.at > len(code) {
		return in, 0
	}
	return in, c.at
}

// shortest says whether numbers are written with no more bytes than they take.
func shortest(written []byte, numbers ...uint64) bool {
	var again []byte
	for _, n := range numbers {
		again = binary.AppendUvarint(again, n)
	}
	return bytes.Equal(written, again)
}

// A cursor reads numbers; behind the end of the code it stands when there is none.
type cursor struct {
	code []byte
	at   int
}

func (c *cursor) skip(n int) { c.at += n }

func (c *cursor) number() uint64 {
	if c.at >= len(c.code) {
		c.at = len(c.code) + 1
		return 0
	}
	v, n := binary.Uvarint(c.code[c.at:])
	if n <= 0 {
		n = len(c.code) + 1
	}
	c.at += n
	return v
}

func (c *cursor) signed() int64 {
	if c.at >= len(c.code) {
		c.at = len(c.code) + 1
		return 0
	}
	v, n := signed(c.code[c.at:])
	if n == 0 {
		n = len(c.code) + 1
	}
	c.at += n
	return v
}
