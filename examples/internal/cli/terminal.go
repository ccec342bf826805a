package cli

import (
	"os"
	"time"
)

// terminal reports whether a reader or writer is a terminal.
func terminal(x any) bool {
	f, ok := x.(*os.File)
	if !ok {
		return false
	}
	info, err := f.Stat()
	if err != nil || info.Mode()&os.ModeCharDevice == 0 {
		return false
	}
	nothing, err := os.Stat(os.DevNull)
	return err != nil || !os.SameFile(info, nothing)
}

// Machine is the machine as it is.
func Machine() System {
	return System{
		In: os.Stdin, Out: os.Stdout, Err: os.Stderr, Getenv: os.Getenv, Now: time.Now,
		Terminal: terminal(os.Stdout), Width: terminalWidth(os.Stdout), Zone: machineZone("/etc/localtime", "/etc/timezone"),
	}
}
