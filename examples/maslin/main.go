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
	s.Stopping = cleanUpWhenStopped()
	os.Exit(cli.Run(os.Args[1:], s))
}

// hangUp says that the terminal is gone. Not every machine that Go is compiled for has a name for it.
const hangUp = syscall.Signal(1)

// cleanUpWhenStopped removes half-written files when the program is told to stop, and exits with the status
// that shells expect of a program ended by a signal. What a command still has to say then is set by what it returns.
func cleanUpWhenStopped() (set func(say func())) {
	var saying sync.Mutex
	var last func()
	stop := make(chan os.Signal, 1)
	signal.Notify(stop, os.Interrupt, syscall.SIGTERM, hangUp)
	go func() {
		status := map[os.Signal]int{os.Interrupt: 130, syscall.SIGTERM: 143, hangUp: 129}[<-stop]
		outfile.Cleanup()
		saying.Lock() // and never unlocked: nothing is done any more that it says was not
		if last != nil {
			last()
		}
		os.Exit(status)
	}()
	return func(say func()) {
		saying.Lock()
		defer saying.Unlock()
		last = say
	}
}
