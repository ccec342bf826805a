//go:build !(darwin || dragonfly || freebsd || illumos || linux || netbsd || openbsd || windows)

package bakelog

import (
	"errors"
	"os"
)

// tryLock refuses: without a lock two programs could mix their lines.
func tryLock(f *os.File) (bool, error) {
	return false, &os.PathError{Op: "lock", Path: f.Name(), Err: errors.ErrUnsupported}
}
