package cli

import (
	"os"
	"strings"
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

// machineZone is the name of a machine's time zone by the two files that may tell: a link into the
// zone files, and a name.
func machineZone(localtime, timezone string) string {
	if link, err := os.Readlink(localtime); err == nil {
		if _, name, ok := strings.Cut(link, "zoneinfo/"); ok {
			return name
		}
	}
	if name, err := os.ReadFile(timezone); err == nil && len(name) < 100 {
		return strings.TrimSpace(string(name))
	}
	return ""
}

// zoneOf is the time zone of this reader, and whether it is known. Machines that say UTC have mostly never
// been told where they are, and a kitchen that keeps UTC is rare.
func zoneOf(s System) (name string, known bool) {
	name = strings.TrimPrefix(s.Getenv("TZ"), ":")
	if name == "" {
		name = s.Zone
	}
	for _, tree := range []string{"posix/", "right/"} {
		name = strings.TrimPrefix(name, tree)
	}
	if _, err := time.LoadLocation(name); err != nil || name == "" || name == "Local" {
		return "UTC", false
	}
	switch strings.TrimPrefix(name, "Etc/") {
	case "UTC", "UCT", "GMT", "GMT0", "GMT+0", "GMT-0", "Universal", "Zulu", "Greenwich", "Unknown":
		return "UTC", false
	}
	return name, true
}
