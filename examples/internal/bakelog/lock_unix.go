//go:build darwin || dragonfly || freebsd || illumos || linux || netbsd || openbsd

package bakelog

import (
	"errors"
	"os"
	"syscall"
)

func tryLock(f *os.File) (bool, error) {
	for {
		err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
		switch {
		case err == nil:
			return true, nil
		case errors.Is(err, syscall.EINTR):
		case errors.Is(err, syscall.EWOULDBLOCK):
			return false, nil
		default:
			return false, &os.PathError{Op: "lock", Path: f.Name(), Err: err}
		}
	}
}
