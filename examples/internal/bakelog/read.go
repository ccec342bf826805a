package bakelog

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/bench"
)

const (
	mostLine     = 4 << 20 // bytes in one line
	mostProblems = 20
)

// Reader reads a log of any size, line by line.
//
//	r := bakelog.NewReader(file)
//	for r.Next() {
//		use(r.Entry())
//	}
//	err := r.Err()
type Reader struct {
	in       *bufio.Reader
	line     int
	buffer   []byte
	entry    bench.Observation
	err      error
	problems []Problem
	skipped  int
	torn     bool
}

// NewReader reads a log.
func NewReader(r io.Reader) *Reader { return &Reader{in: bufio.NewReaderSize(r, 1<<16)} }

// Next goes to the next entry that can be read. It is false at the end and after an error.
func (r *Reader) Next() bool {
	for r.err == nil {
		line, whole, long, err := r.next()
		if err != nil {
			if err != io.EOF {
				r.err = err
			}
			return false
		}
		r.line++
		r.torn = !whole
		if r.line == 1 {
			line = bytes.TrimPrefix(line, []byte("\ufeff")) // as some editors put in front
		}
		if len(bytes.TrimSpace(line)) == 0 && !long {
			continue
		}
		if long {
			r.problem(line, fmt.Sprintf("longer than %d bytes", mostLine))
			continue
		}
		entry, err := decode(line)
		switch {
		case errors.Is(err, ErrVersion):
			r.err = fmt.Errorf("line %d: %w", r.line, err)
			return false
		case err != nil && !whole:
			r.problem(line, "the last line is not finished; it is left alone")
		case err != nil:
			r.problem(line, err.Error())
		default:
			r.entry = entry
			return true
		}
	}
	return false
}

// next reads one line without its end. Of a line that is too long it keeps the beginning.
func (r *Reader) next() (line []byte, whole, long bool, err error) {
	r.buffer = r.buffer[:0]
	for {
		part, err := r.in.ReadSlice('\n')
		if len(r.buffer)+len(part) > mostLine {
			long = true
		} else {
			r.buffer = append(r.buffer, part...)
		}
		switch {
		case err == nil:
			return bytes.TrimSuffix(r.buffer, []byte("\n")), true, long, nil
		case errors.Is(err, bufio.ErrBufferFull):
		case err == io.EOF && (len(r.buffer) > 0 || long):
			return r.buffer, false, long, nil
		default:
			return nil, false, false, err
		}
	}
}

func (r *Reader) problem(line []byte, why string) {
	if len(r.problems) == mostProblems {
		r.skipped++
		return
	}
	r.problems = append(r.problems, Problem{r.line, quantity.Excerpt(string(line[:min(len(line), 200)])), why})
}

// Entry is the entry that Next went to.
func (r *Reader) Entry() bench.Observation { return r.entry }

// Err is what stopped the reading: ErrVersion, or an error of the reader below.
func (r *Reader) Err() error { return r.err }

// Problems lists the first lines that could not be read, and how many more there were.
func (r *Reader) Problems() (first []Problem, more int) { return r.problems, r.skipped }

// decode reads one line.
func decode(line []byte) (bench.Observation, error) {
	var e bench.Observation
	err := json.Unmarshal(line, &e)
	if err != nil || e.Version != bench.Format {
		// A later version may have changed what a field is: its number is looked for by itself.
		var v struct {
			Version *float64 `json:"v"`
		}
		_ = json.Unmarshal(line, &v) // what cannot be read leaves the version open
		switch {
		case v.Version != nil && *v.Version > bench.Format:
			return bench.Observation{}, fmt.Errorf("%w: got version %v, this one reads up to %d", ErrVersion, *v.Version, bench.Format)
		case err == nil && v.Version == nil:
			return bench.Observation{}, errors.New("not a line of a bake log: no version")
		case err == nil:
			return bench.Observation{}, fmt.Errorf("not a line of a bake log: version %v", *v.Version)
		}
		var input *quantity.InputError
		if errors.As(err, &input) {
			return bench.Observation{}, input
		}
		return bench.Observation{}, errors.New("not a line of a bake log")
	}
	return e, e.Check()
}

// Size is how many bytes the line of the entry has, with its end.
func (r *Reader) Size() int { return len(r.buffer) }

// each hands the entries of a log on, one at a time. A file that is not there is an empty log.
func each(name string, use func(o bench.Observation, size int)) (first []Problem, more int, err error) {
	f, err := os.Open(name)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, 0, nil
	}
	if err != nil {
		return nil, 0, err
	}
	defer f.Close()
	r := NewReader(f)
	for r.Next() {
		use(r.Entry(), r.Size())
	}
	first, more = r.Problems()
	return first, more, r.Err()
}

// Each hands on every entry of a log that can be read, in the order in which they were written.
func Each(name string, use func(bench.Observation)) error {
	_, _, err := each(name, func(o bench.Observation, _ int) { use(o) })
	return err
}
