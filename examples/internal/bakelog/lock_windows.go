package bakelog

import (
	"errors"
	"os"
	"syscall"
	"unsafe"
)

var lockFileEx = syscall.NewLazyDLL("kernel32.dll").NewProc("LockFileEx")

// tryLock locks one byte far beyond any log, so that readers are not held up.
func tryLock(f *os.File) (bool, error) {
	const (
		failImmediately = 1
		exclusive       = 2
		lockViolation   = syscall.Errno(33)
	)
	place := syscall.Overlapped{OffsetHigh: 0x7fffffff}
	ok, _, err := lockFileEx.Call(f.Fd(), exclusive|failImmediately, 0, 1, 0, uintptr(unsafe.Pointer(&place)))
	switch {
	case ok != 0:
		return true, nil
	case errors.Is(err, lockViolation), errors.Is(err, syscall.ERROR_IO_PENDING):
		return false, nil
	}
	return false, &os.PathError{Op: "lock", Path: f.Name(), Err: err}
}
