package bench

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
)

const (
	mostLine       = 4 << 20 // bytes in one line
	mostUnreadable = 20
)

// LaterVersion is the error of a log that was written by a later version of this library.
type LaterVersion struct {
	Line    int     `json:"line,omitempty"` // 0: not known
	Version float64 `json:"version"`
}

// Error says where it begins, and what is read, in English.
func (e LaterVersion) Error() string { return e.Message().String() }

// Message says where it begins, and what is read.
func (e LaterVersion) Message() working.Message {
	says := working.Tell("bench.later_version",
		"written by a later version of maslin: got version %v, this one reads up to %d", e.Version, Format)
	if e.Line > 0 {
		return working.Tell("bench.later_version_from", "line %d: %v", e.Line, says)
	}
	return says
}

// Lines are the observations as a log keeps them: one line of JSON for each, in the order given.
//
// Errors: those of [Observation.Check] under "entries[i]", as in a [KeptLog]; ErrOutOfRange for a line of 4 MiB or
// more.
func (all Observations) Lines() ([]byte, error) {
	var p quantity.Problems
	var lines []byte
	for i, e := range all {
		if err := e.Check(); err != nil {
			p.Join(fmt.Sprintf("Entries[%d]", i), err)
			continue
		}
		line, err := json.Marshal(e)
		if err != nil {
			return nil, err
		}
		if len(line) >= mostLine {
			p.Add(fmt.Sprintf("Entries[%d]", i), quantity.Tell("bench.got_bytes", "%d bytes", len(line)),
				quantity.Tell("bench.want_less_than_bytes", "less than %d bytes", mostLine), quantity.ErrOutOfRange)
		}
		lines = append(append(lines, line...), '\n')
	}
	return lines, p.ErrFor(KeptLog{Entries: all})
}

// logLines reads a log line by line.
type logLines struct {
	in       *bufio.Reader
	line     int
	buffer   []byte
	entry    Observation
	err      error
	problems []UnreadableLine
	skipped  int
}

func newLogLines(r io.Reader) *logLines { return &logLines{in: bufio.NewReaderSize(r, 1<<16)} }

// next goes to the next entry that can be read. It is false at the end and after an error.
func (r *logLines) next() bool {
	for r.err == nil {
		line, whole, long, err := r.bytes()
		if err != nil {
			if err != io.EOF {
				r.err = err
			}
			return false
		}
		r.line++
		if r.line == 1 {
			line = bytes.TrimPrefix(line, []byte("\ufeff")) // as some editors put in front
		}
		if len(bytes.TrimSpace(line)) == 0 && !long {
			continue
		}
		if long {
			r.problem(line, working.Tell("bench.line_too_long", "longer than %d bytes", mostLine))
			continue
		}
		var later LaterVersion
		entry, why, err := decode(line)
		switch {
		case errors.As(err, &later):
			r.err = LaterVersion{r.line, later.Version}
			return false
		case !why.IsZero() && !whole:
			r.problem(line, working.Tell("bench.line_unfinished", "the last line is not finished; it is left alone"))
		case !why.IsZero():
			r.problem(line, why)
		default:
			r.entry = entry
			return true
		}
	}
	return false
}

// bytes reads one line without its end. Of a line that is too long it keeps the beginning.
func (r *logLines) bytes() (line []byte, whole, long bool, err error) {
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

func (r *logLines) problem(line []byte, why working.Message) {
	if len(r.problems) == mostUnreadable {
		r.skipped++
		return
	}
	r.problems = append(r.problems, UnreadableLine{r.line, quantity.Excerpt(string(line)), why})
}

// decode reads one line, or says why it cannot be read. An error is that of a later version.
func decode(line []byte) (e Observation, why working.Message, err error) {
	bad := json.Unmarshal(line, &e)
	if bad == nil && e.Version == Format {
		return e, working.Problem(e.Check()), nil
	}
	// A later version may have changed what a field is: its number is looked for by itself.
	var v struct {
		Version *float64 `json:"v"`
	}
	_ = json.Unmarshal(line, &v) // what cannot be read leaves the version open
	var input *quantity.InputError
	switch {
	case v.Version != nil && *v.Version > Format:
		return e, why, LaterVersion{Version: *v.Version}
	case bad == nil && v.Version == nil:
		return e, working.Tell("bench.line_no_version", "not a line of a bake log: no version"), nil
	case bad == nil:
		return e, working.Tell("bench.line_version", "not a line of a bake log: version %v", *v.Version), nil
	case errors.As(bad, &input):
		return e, working.Problem(input), nil
	}
	return e, working.Tell("bench.line_no_log", "not a line of a bake log"), nil
}
