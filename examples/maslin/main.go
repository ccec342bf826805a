// Command maslin does a bread baker's whole computation at the command line: formula and
// levain weights, water temperature, fermentation, doneness, and a timetable that works
// backward from when the bread is wanted. It is a thin layer over the library.
package main

import (
	"os"
	_ "time/tzdata" // zones must work on machines that have none installed

	"example.org/maslin/examples/internal/cli"
)

func main() {
	os.Exit(cli.Run(os.Args[1:], cli.Machine()))
}
