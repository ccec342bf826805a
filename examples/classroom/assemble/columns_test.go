package assemble

import (
	"bytes"
	"compress/gzip"
	"encoding/binary"
	"errors"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// A column that a test reads back.
type column []byte

func (c *column) take(n int) []byte {
	out := (*c)[:n]
	*c = (*c)[n:]
	return out
}

func (c *column) unsigned() int {
	v, n := binary.Uvarint(*c)
	c.take(n)
	return int(v)
}

func (c *column) signed() int {
	v, n := signed(*c)
	c.take(n)
	return int(v)
}

// written is a number as it stands.
func (c *column) written() []byte {
	n := 0
	for (*c)[n] > 127 {
		n++
	}
	return c.take(n + 1)
}

// put together, as the page's script does; it is written apart from what writes the columns.
func putTogether(packed []byte) []byte {
	all := column(packed)
	all.unsigned()
	part := func() column { return all.take(all.unsigned()) }
	before, after, meanings, symbols := part(), part(), part(), part()
	var columns []*column
	for len(all) > 0 {
		c := part()
		columns = append(columns, &c)
	}
	type meaning struct {
		operand byte
		from    *column
		fixed   []byte
	}
	var means []meaning
	for len(meanings) > 0 {
		head := meanings.take(2)
		means = append(means, meaning{head[0], columns[head[1]], meanings.take(meanings.unsigned())})
	}
	out := slices.Clone([]byte(before))
	for function := 0x1000; len(symbols) > 0; function++ {
		lists := columns[0].unsigned()
		body := binary.AppendUvarint(nil, uint64(lists))
		for range lists {
			body = append(append(body, columns[0].written()...), columns[0].take(1)...)
		}
		var places []int // where each open block leads
		depth, floor, block := 0, 0, 0
		place := func() int {
			if block < len(places) {
				return places[block]
			}
			return 0
		}
		for depth >= 0 {
			m := means[symbols.take(1)[0]]
			body = append(body, m.fixed...)
			switch operand(m.operand) {
			case opens:
				depth++
			case closes:
				if depth--; depth < floor {
					floor, block = depth, block+1
				}
			case copied:
				body = append(body, m.from.written()...)
			case four:
				body = append(body, m.from.take(4)...)
			case eight:
				body = append(body, m.from.take(8)...)
			case label:
				body = binary.AppendUvarint(body, uint64(depth-m.from.signed()))
			case labels:
				last := m.from.signed()
				body = binary.AppendUvarint(body, uint64(last))
				floor, block, places = depth, 0, nil
				for i, l := 0, 0; i <= last; i++ {
					l += m.from.signed()
					body = binary.AppendUvarint(body, uint64(l))
					for len(places) <= min(l, last+1) {
						places = append(places, i)
					}
				}
			case resumes:
				body = appendSigned(body, int64(function<<16+place()+m.from.signed()))
			case jumps:
				body = appendSigned(body, int64(place()+m.from.signed()))
			}
		}
		out = append(binary.AppendUvarint(out, uint64(len(body))), body...)
	}
	return append(out, after...)
}

// body is a function: its lists of variables, and its instructions.
func body(instructions ...string) string {
	return "\x02\x01\x7f\x02\x7e" + strings.Join(instructions, "") + "\x0b"
}

// number is a signed number as it stands in code.
func number(v int64) string { return string(appendSigned(nil, v)) }

// codeOf is a program with code, something before it and something behind it.
func codeOf(bodies ...string) []byte {
	code := binary.AppendUvarint([]byte{codeSection}, uint64(len(bodies)))
	for _, b := range bodies {
		code = append(binary.AppendUvarint(code, uint64(len(b))), b...)
	}
	return program([]byte("\x00\x04namebefore"), code, []byte("\x0b\x00"))
}

// All kinds of instructions, and the form that Go's compiler gives a function: a table at its beginning, and places
// where it goes on that are numbered.
func sample() []byte {
	call := func(function, place int64, out string) string {
		return "\x20\x01\x42" + number((firstFunction+function)<<16|place) + "\x37\x03\x00\x41\x00\x10\xc1\x00\x23\x00\x21\x01\x0d" + out + "\x0b"
	}
	resuming := func(f int64) string {
		return body("\x23\x00\x21\x01\x02\x40\x03\x40\x02\x40\x02\x40\x02\x40\x20\x00\x0e\x04\x00\x00\x01\x02\x02\x0b",
			call(f, 2, "\x02"), "\x41\x03\x21\x00\x0c\x01", call(f, 3, "\x01"), "\x20\x01\x28\x02\x90\x01\x1a\x0b\x0b")
	}
	return codeOf(
		body("\x43\x00\x00\x80\x3f\x1a\x44\x00\x00\x00\x00\x00\x00\xf0\x3f\x1a\x41\xe4\x00\x1a\x42\x7f\x1a"),
		"\x00\x0b",
		resuming(2), resuming(3),
		body("\x41\x00\x04\x7f\x41\x01\x05\x41\x02\x0b\x11\x00\x00\x3f\x00\x40\x00\xfc\x02\xfc\x0a\x00\x00\xfc\x0b\x00\x0f\x00"),
		// A place in another function, one that is no place, and numbers that are not as short as they could be.
		body("\x02\x40\x02\x40", call(90, 1, "\x01"), "\x0b"+"\x42\x80\x80\x80\x00\x1a\x41\x83\x00\x21\x00\x42", number(-5), "\x1a\x42", number(1<<40), "\x1a"),
	)
}

func TestColumnsComeTogetherAgain(t *testing.T) {
	often := body(strings.Repeat("\x20\x01\x41\x08\x6b\x22\x01\x24\x00\x20\x01\x29\x03\x10\x1a", 1000))
	for name, p := range map[string][]byte{"all kinds": sample(), "runs that are met often": codeOf(often, often),
		"no function": codeOf()} {
		packed, err := inColumns(p)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if got := putTogether(packed); !bytes.Equal(got, p) {
			t.Errorf("%s: comes back as\n% x, not\n% x", name, got, p)
		}
		if size, _ := binary.Uvarint(packed); int(size) != len(p) {
			t.Errorf("%s: %d bytes are told, there are %d", name, size, len(p))
		}
		if name == "runs that are met often" && len(packed) > len(p)/10 {
			t.Errorf("a run of ten instructions is not one symbol: %d bytes of %d", len(packed), len(p))
		}
	}
}

// The places where a function goes on are foretold from its blocks, and branches to one block are told alike, however
// deep they stand.
func TestPlacesAreForetold(t *testing.T) {
	_, code, _, err := aroundCode(sample())
	if err != nil {
		t.Fatal(err)
	}
	told := map[operand][]int64{}
	walk(code, func([]byte) {}, func(in *instruction) { told[in.operand] = append(told[in.operand], in.told...) })
	want := map[operand][]int64{resumes: {0, 0, 0, 0}, jumps: {0, 0}, label: {2, 2, 2, 2, 2, 2, 1},
		labels: {4, 0, 0, 1, 1, 0, 4, 0, 0, 1, 1, 0}}
	for kind, want := range want {
		if !slices.Equal(told[kind], want) {
			t.Errorf("operands of kind %d are told as %d, not %d", kind, told[kind], want)
		}
	}
}

// Whatever else a program is, it comes back as it was or is refused.
func TestDamagedCodeComesBackOrIsRefused(t *testing.T) {
	in := sample()
	refused := 0
	r := rand.New(rand.NewPCG(1, 2))
	try := func(what string, p []byte) {
		packed, err := inColumns(p)
		switch {
		case err != nil:
			refused++
		case !bytes.Equal(putTogether(packed), p):
			t.Fatalf("%s: another program comes back", what)
		}
	}
	for at := range in {
		try("cut", in[:at])
		for range 40 {
			p := slices.Clone(in)
			p[at] = byte(r.Uint32())
			try("one byte is another", p)
		}
	}
	if refused < len(in) {
		t.Errorf("only %d are refused", refused)
	}
	for name, p := range map[string][]byte{
		"a vector": codeOf(body("\xfd\x0c")), "a number too long": codeOf(body("\x41\x80\x80\x80\x80\x80\x80\x80\x80\x80\x80\x80\x00")),
		"a long branch": codeOf(body("\x0c\x80\x00")), "a table without its end": codeOf(body("\x0e\x7f\x00")),
		"bytes behind the end": codeOf(body("\x0b\x1a")), "a block left open": codeOf(body("\x02\x40")),
		"a length of more bytes": program([]byte("\x0a\x01\x82\x00\x00\x0b")),
	} {
		if _, err := inColumns(p); !errors.Is(err, errCode) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := inColumns(program([]byte("\x0b\x00"))); err == nil || errors.Is(err, errCode) {
		t.Errorf("a program without code: %v", err)
	}
}

// Another program is packed into a folder, twice too, but over nobody else's files.
func TestAnotherProgramIsPacked(t *testing.T) {
	dir := t.TempDir()
	in := sample()
	for range 2 {
		n, err := Pack(in, dir, "five", false)
		if err != nil {
			t.Fatal(err)
		}
		packed, err := os.ReadFile(filepath.Join(dir, "five.columns.gz"))
		if err != nil || len(packed) != n {
			t.Fatalf("%d bytes, %d are told: %v", len(packed), n, err)
		}
		z, err := gzip.NewReader(bytes.NewReader(packed))
		if err != nil {
			t.Fatal(err)
		}
		columns, err := io.ReadAll(z)
		if err != nil || !bytes.Equal(putTogether(columns), in) {
			t.Fatalf("another program comes back: %v", err)
		}
	}
	script := filepath.Join(dir, "together.js")
	if b, err := os.ReadFile(script); err != nil || !bytes.Contains(b, []byte("\nfunction together(packed) {")) {
		t.Errorf("the script: %v", err)
	}
	if err := os.WriteFile(script, []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := Pack(in, dir, "five", false); err == nil || !strings.Contains(err.Error(), "was not packed here") {
		t.Errorf("over another's script: %v", err)
	}
	if b, err := os.ReadFile(script); err != nil || string(b) != "mine" {
		t.Errorf("another's script: %q, %v", b, err)
	}
	if _, err := Pack([]byte("no program"), t.TempDir(), "five", false); err == nil {
		t.Error("a text is packed")
	}
}
