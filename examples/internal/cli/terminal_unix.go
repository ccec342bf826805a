//go:build linux || darwin || freebsd || netbsd || openbsd

package cli

import (
	"os"
	"syscall"
	"unsafe"
)

// terminalWidth is how many columns a terminal has; 0 when it does not say.
func terminalWidth(f *os.File) int {
	var size struct{ rows, columns, x, y uint16 }
	_, _, failed := syscall.Syscall(syscall.SYS_IOCTL, f.Fd(), syscall.TIOCGWINSZ, uintptr(unsafe.Pointer(&size)))
	if failed != 0 {
		return 0
	}
	return int(size.columns)
}
