package bakelog

import (
	"errors"
	"os"
	"time"
)

// ErrBusy: another program held the lock of the log for too long.
var ErrBusy = errors.New("another program is writing to it")

// lock takes the lock of an open file, waiting for at most the patience. Closing the file, or
// the end of the program however it comes, gives it back.
func lock(f *os.File, patience time.Duration) error {
	wait := time.Millisecond
	for until := time.Now().Add(patience); ; wait = min(2*wait, 50*time.Millisecond) {
		taken, err := tryLock(f)
		if taken || err != nil {
			return err
		}
		if time.Now().After(until) {
			return &os.PathError{Op: "lock", Path: f.Name(), Err: ErrBusy}
		}
		time.Sleep(wait)
	}
}
