package bakelog

import (
	"errors"
	"os"
	"path/filepath"
	"time"

	"example.org/maslin/schedule/bench"
	"github.com/rogpeppe/go-internal/lockedfile"
)

const patience = 10 * time.Second // with another program that holds the lock

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
	all := bench.Observations(entries)
	if lines, err := all.Lines(); err != nil || len(lines) == 0 {
		return err
	}
	f, err := openLocked(name)
	if err != nil {
		return err
	}
	err = appendTo(f.File, all)
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

func appendTo(f *os.File, all bench.Observations) error {
	info, err := f.Stat()
	if err != nil {
		return err
	}
	if !info.Mode().IsRegular() {
		return &os.PathError{Op: "append", Path: f.Name(), Err: errors.New("not a file")}
	}
	size := info.Size()
	lines, ours, err := all.Behind(f, size)
	if err != nil {
		return err
	} else if !ours {
		return ErrNotLog
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
