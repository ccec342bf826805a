// Command maslin does a bread baker's whole computation at the command line: formula and
// levain weights, water temperature, fermentation, doneness, and a timetable that works
// backward from when the bread is wanted. It is a thin layer over the library.
package main

import (
	"os"
	"os/signal"
	"sync"
	"syscall"
	_ "time/tzdata" // zones must work on machines that have none installed

	"example.org/maslin/examples/internal/cli"
	"example.org/maslin/examples/internal/outfile"
)

func main() {
	s := cli.Machine()
	var last sayings
	s.Stopping = last.set
	cleanUpWhenStopped(&last)
	os.Exit(cli.Run(os.Args[1:], s))
}

// hangUp says that the terminal is gone. Not every machine that Go is compiled for has a name for it.
const hangUp = syscall.Signal(1)

// cleanUpWhenStopped removes half-written files when the program is told to stop, and exits with the status
// that shells expect of a program ended by a signal.
func cleanUpWhenStopped(last *sayings) {
	stop := make(chan os.Signal, 1)
	signal.Notify(stop, os.Interrupt, syscall.SIGTERM, hangUp)
	go func() {
		status := 130
		switch <-stop {
		case syscall.SIGTERM:
			status = 143
		case hangUp:
			status = 129
		}
		outfile.Cleanup()
		last.say()
		os.Exit(status)
	}()
}

// sayings are what a command still has to say when the program is told to stop.
type sayings struct {
	sync.Mutex
	now func()
}

func (l *sayings) set(say func()) {
	l.Lock()
	defer l.Unlock()
	l.now = say
}

func (l *sayings) say() {
	l.Lock()
	defer l.Unlock()
	if l.now != nil {
		l.now()
	}
}
