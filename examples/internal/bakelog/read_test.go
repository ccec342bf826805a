package bakelog

import (
	"bytes"
	"encoding/json"
	"io"
	"strings"
	"testing"

	"example.org/maslin/schedule/bench"
)

// Whatever is between them, the good lines are read and the others counted.
func TestRubbishBetweenLines(t *testing.T) {
	good, err := encode(bench.Observations{note("a")})
	if err != nil {
		t.Fatal(err)
	}
	rubbish := []string{
		"hello", "null", "[]", "{}", `{"v":0,"kind":"note","note":"x","at":"2026-11-28T10:40:00Z"}`, `{"v":1}`, `{"v":1,"at":"yesterday","kind":"note","note":"x"}`,
		`{"v":1,"at":"2026-11-28T10:40:00Z","kind":"rise","rise":{"rise":"30"}}`, `{"v":-1}`, `{"v":"1"}`, "\x00\x01\x02", strings.Repeat("[", 20000), strings.Repeat("z", mostLine+10),
	}
	var in bytes.Buffer
	in.Write(good)
	for _, line := range rubbish {
		in.WriteString(line + "\n\n")
		in.Write(good)
	}
	r := NewReader(&in)
	n := 0
	for r.Next() {
		n++
	}
	first, more := r.Problems()
	if r.Err() != nil || n != len(rubbish)+1 || len(first)+more != len(rubbish) {
		t.Errorf("%v: %d entries, want %d; %d problems, want %d", r.Err(), n, len(rubbish)+1, len(first)+more, len(rubbish))
	}
	if !strings.Contains(first[7].Why, "rise") && !strings.Contains(first[7].Why, "unit") {
		t.Errorf("it does not say what is wrong: %+v", first[7])
	}
}

func FuzzReader(f *testing.F) {
	for _, e := range someEntries() {
		line, err := json.Marshal(e)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(line)
	}
	f.Add([]byte(`{"v":3}` + "\n"))
	f.Fuzz(func(t *testing.T, source []byte) {
		r := NewReader(bytes.NewReader(source))
		for r.Next() {
			e := r.Entry()
			if err := e.Check(); err != nil {
				t.Errorf("an entry that fails its own check: %v", err)
			}
			if _, err := encode(bench.Observations{e}); err != nil {
				t.Errorf("an entry that cannot be written again: %v", err)
			}
			for _, b := range (bench.Observations{e}).Bakes() {
				_, _ = b.Taught()
				_, _ = b.Batch()
			}
		}
	})
}

func BenchmarkRead(b *testing.B) {
	lines, err := encode(someEntries())
	if err != nil {
		b.Fatal(err)
	}
	log := bytes.Repeat(lines, 10<<20/len(lines))
	b.SetBytes(int64(len(log)))
	b.ReportAllocs()
	for b.Loop() {
		r := NewReader(bytes.NewReader(log))
		n := 0
		for r.Next() {
			n++
		}
		if n == 0 || r.Err() != nil {
			b.Fatal(r.Err())
		}
	}
}

// A log far larger than the memory it needs: the reader keeps one line.
func TestStreams(t *testing.T) {
	line, err := encode(bench.Observations{note("a line of the length of most")})
	if err != nil {
		t.Fatal(err)
	}
	r := NewReader(io.LimitReader(&repeating{line: line}, int64(len(line))*20_000))
	n := 0
	for r.Next() {
		n++
	}
	if r.Err() != nil || n != 20_000 || cap(r.buffer) > 1<<16 {
		t.Errorf("%v: %d entries, a buffer of %d bytes", r.Err(), n, cap(r.buffer))
	}
}

type repeating struct {
	line []byte
	at   int
}

func (r *repeating) Read(p []byte) (int, error) {
	n := 0
	for n < len(p) {
		k := copy(p[n:], r.line[r.at:])
		n += k
		r.at = (r.at + k) % len(r.line)
	}
	return n, nil
}
