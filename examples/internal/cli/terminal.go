package cli

import (
	"os"
	"time"

	"golang.org/x/term"
)

// terminal reports whether a reader or writer is a terminal.
func terminal(x any) bool {
	f, ok := x.(*os.File)
	return ok && term.IsTerminal(int(f.Fd()))
}

// Machine is the machine as it is.
func Machine() System {
	width, _, _ := term.GetSize(int(os.Stdout.Fd())) // 0 where it is none, or does not say
	return System{
		In: os.Stdin, Out: os.Stdout, Err: os.Stderr, Getenv: os.Getenv, Now: time.Now,
		Terminal: terminal(os.Stdout), Width: width, Zone: machineZone("/etc/localtime", "/etc/timezone"),
	}
}
