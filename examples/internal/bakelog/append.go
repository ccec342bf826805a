package bakelog

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"os"
	"path/filepath"
	"time"

	"example.org/maslin/schedule/bench"
	"github.com/rogpeppe/go-internal/lockedfile"
)

const (
	patience = 10 * time.Second // with another program that holds the lock
	longLine = 4 << 20          // longer than any line that is written
)

// ErrNotLog: the file holds something else, and nothing is added to it.
var ErrNotLog = errors.New("is not a bake log: it is left as it is; want a bake log, an empty file, " +
	"or a name that is not taken")

// Read reads a log. A file that is not there is an empty log. Errors: those of [bench.LogReading.From] and of the file
// system.
func Read(name string, r bench.LogReading) (bench.KeptLog, error) {
	f, err := toRead(name)
	if errors.Is(err, os.ErrNotExist) {
		return bench.KeptLog{}, nil
	}
	if err != nil {
		return bench.KeptLog{}, err
	}
	defer func() { _ = f.Close() }()
	return r.From(f)
}

// Append adds entries to the log in one piece and returns once they are on the disk. Folder and
// file are made when they are not there. When the disk is full nothing of the entries remains.
// Errors: those of bench.Observation.Check under "entries[i]"; bench.LaterVersion when the last line of the log is
// of a later version; ErrNotLog when the file holds something else; those of the file system.
func Append(name string, entries ...bench.Observation) error {
	lines, err := bench.Observations(entries).Lines()
	if err != nil || len(lines) == 0 {
		return err
	}
	f, err := openLocked(name)
	if err != nil {
		return err
	}
	err = appendTo(f.File, lines)
	if e := f.Close(); err == nil { // closing gives the lock back
		err = e
	}
	return err
}

// openLocked opens the log for appending and takes its lock. A log that was moved away while
// it waited is opened anew.
func openLocked(name string) (*lockedfile.File, error) {
	for {
		f, err := openOrMake(name)
		if err != nil {
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

func openOrMake(name string) (*lockedfile.File, error) {
	const flags = os.O_RDWR | os.O_APPEND
	f, err := open(name, flags, patience)
	if err == nil || !errors.Is(err, os.ErrNotExist) {
		return f, err
	}
	folder := filepath.Dir(name)
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return nil, err
	}
	if f, err = open(name, flags|os.O_CREATE, patience); err != nil {
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
	if ours, err := isLog(f, size, last); err != nil {
		return err
	} else if !ours {
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

// isLog reports whether what is there is a log: its last line can be read, or another one, or it is no more than the
// beginning of one, as a power cut leaves it. A log of a later version is an error.
func isLog(f io.ReaderAt, size int64, last []byte) (bool, error) {
	if size == 0 {
		return true, nil
	}
	end, err := bench.LogReading{Last: 1}.From(bytes.NewReader(last))
	if later := (bench.LaterVersion{}); errors.As(err, &later) {
		return false, bench.LaterVersion{Version: later.Version} // of the whole log it is another line
	}
	if err != nil {
		return false, err
	}
	if len(end.Entries) > 0 {
		return true, nil
	}
	whole, err := bench.LogReading{Last: 1}.From(io.NewSectionReader(f, 0, size))
	if err != nil || len(whole.Entries) > 0 {
		return true, err
	}
	const first = `{"v":`
	n := min(len(first), len(last))
	return len(whole.Unreadable) == 1 && int64(len(last)) == size && n > 0 && last[len(last)-1] != '\n' &&
		string(last[:n]) == first[:n] && !json.Valid(last), nil
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
		if from == 0 || step > longLine {
			return tail, nil
		}
	}
}
