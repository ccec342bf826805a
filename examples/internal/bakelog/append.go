package bakelog

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/bench"
)

const patience = 10 * time.Second // with another program that holds the lock

// Append adds entries to the log in one piece and returns once they are on the disk. Folder and
// file are made when they are not there. When the disk is full nothing of the entries remains.
// Errors: those of bench.Observation.Check under "entries[i]"; ErrVersion when the last line of the log is
// of a later version; ErrNotLog when the file holds something else; those of the file system.
func Append(name string, entries ...bench.Observation) error {
	lines, err := encode(entries)
	if err != nil || len(lines) == 0 {
		return err
	}
	f, err := openLocked(name)
	if err != nil {
		return err
	}
	err = appendTo(f, lines)
	if e := f.Close(); err == nil { // closing gives the lock back
		err = e
	}
	return err
}

func encode(entries bench.Observations) ([]byte, error) {
	var p quantity.Problems
	var lines []byte
	for i, e := range entries {
		if err := e.Check(); err != nil {
			for _, one := range quantity.InputErrors(err) {
				p.Add(fmt.Sprintf("entries[%d].%s", i, one.Path), one.Got, one.Want, one.Err)
			}
			continue
		}
		line, err := json.Marshal(e)
		if err != nil {
			return nil, err
		}
		if len(line) >= mostLine {
			p.Add(fmt.Sprintf("entries[%d]", i), quantity.Tell("bakelog.got_bytes", "%d bytes", len(line)), quantity.Tell("bakelog.want_less_than_bytes", "less than %d bytes", mostLine), quantity.ErrOutOfRange)
		}
		lines = append(append(lines, line...), '\n')
	}
	return lines, p.Err()
}

// openLocked opens the log for appending and takes its lock. A log that was moved away while
// it waited is opened anew.
func openLocked(name string) (*os.File, error) {
	for {
		f, err := open(name)
		if err != nil {
			return nil, err
		}
		if err := lock(f, patience); err != nil {
			f.Close()
			return nil, err
		}
		mine, err := f.Stat()
		if err != nil {
			f.Close()
			return nil, err
		}
		if there, err := os.Stat(name); err == nil && os.SameFile(mine, there) {
			return f, nil
		}
		f.Close()
	}
}

func open(name string) (*os.File, error) {
	const flags = os.O_RDWR | os.O_APPEND
	f, err := os.OpenFile(name, flags, 0)
	if err == nil || !errors.Is(err, os.ErrNotExist) {
		return f, err
	}
	folder := filepath.Dir(name)
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return nil, err
	}
	if f, err = os.OpenFile(name, flags|os.O_CREATE, 0o644); err != nil {
		return nil, err
	}
	if d, err := os.Open(folder); err == nil { // the name, too, must outlive a power cut
		_ = d.Sync() // not every file system can
		d.Close()
	}
	return f, nil
}

func appendTo(f *os.File, lines []byte) error {
	info, err := f.Stat()
	if err != nil {
		return err
	}
	if !info.Mode().IsRegular() {
		return &os.PathError{Op: "append", Path: f.Name(), Err: errors.New("not a file")}
	}
	size := info.Size()
	last, err := lastLine(f, size)
	if err != nil {
		return err
	}
	_, wrong := decode(bytes.TrimSuffix(last, []byte("\n")))
	if errors.Is(wrong, ErrVersion) {
		return wrong
	}
	if size > 0 && wrong != nil && !holdsEntries(io.NewSectionReader(f, 0, size)) {
		return ErrNotLog
	}
	if len(last) > 0 && last[len(last)-1] != '\n' {
		lines = append([]byte("\n"), lines...) // an unfinished line keeps to itself
	}
	_, err = f.Write(lines)
	if err == nil {
		err = f.Sync()
	}
	if err != nil {
		// What of it was written is of no use. Nobody else has written: the lock is ours.
		return errors.Join(err, f.Truncate(size))
	}
	return nil
}

// holdsEntries reports whether what is there is a log: it has a line that can be read, or is no more than the
// beginning of one, as a power cut leaves it.
func holdsEntries(r *io.SectionReader) bool {
	in := NewReader(r)
	if in.Next() || in.Err() != nil {
		return true
	}
	if in.line != 1 || !in.torn || len(in.problems) != 1 {
		return false
	}
	const first = `{"v":`
	start := make([]byte, len(first))
	n, _ := r.ReadAt(start, 0) // what cannot be read is not ours
	return n > 0 && string(start[:n]) == first[:n]
}

// lastLine is the last line with its end, or as much of it as one line may have.
func lastLine(f io.ReaderAt, size int64) ([]byte, error) {
	for step := int64(4096); ; step *= 8 {
		from := max(0, size-step)
		tail := make([]byte, size-from)
		if n, err := f.ReadAt(tail, from); n < len(tail) {
			return nil, err
		}
		if i := bytes.LastIndexByte(bytes.TrimSuffix(tail, []byte("\n")), '\n'); i >= 0 {
			return tail[i+1:], nil
		}
		if from == 0 || step > mostLine {
			return tail, nil
		}
	}
}
