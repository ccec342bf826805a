package bakelog

import (
	"errors"
	"io"
	"os"
	"runtime"
	"time"

	"github.com/rogpeppe/go-internal/lockedfile"
)

// ErrBusy: another program held the lock of the log for too long.
var ErrBusy = errors.New("another program is writing to it")

// toRead opens a log for reading, which a lock holds up on Windows only.
func toRead(name string) (io.ReadCloser, error) {
	if runtime.GOOS == "windows" {
		return open(name, os.O_RDONLY, patience)
	}
	return os.Open(name)
}

// open opens a file under a lock, alone to write and with others to read, waiting for at most the patience. Closing the
// file, or the end of the program however it comes, gives the lock back.
func open(name string, flag int, patience time.Duration) (*lockedfile.File, error) {
	type outcome struct {
		file *lockedfile.File
		err  error
	}
	opened := make(chan outcome, 1)
	go func() {
		f, err := lockedfile.OpenFile(name, flag, 0o644)
		opened <- outcome{f, err}
	}()
	select {
	case o := <-opened:
		return o.file, o.err
	case <-time.After(patience):
		go func() { // what still comes is given back
			if o := <-opened; o.err == nil {
				o.file.Close()
			}
		}()
		return nil, &os.PathError{Op: "lock", Path: name, Err: ErrBusy}
	}
}
