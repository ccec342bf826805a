package working_test

import "flag"

// The same cases every time, so that a run can be repeated; explore others with -rapid.seed=0
// (a new seed each run) and -rapid.checks=10000.
func init() {
	if err := flag.Set("rapid.seed", "20261125"); err != nil {
		panic(err)
	}
}
