// Package schedule compares the planner of maslin with engines that share nothing with it: a
// constraint model solved by MiniZinc with Gecode, and a mixed integer model (one binary for
// every event and moment) solved by HiGHS.
//
// engines/install.sh installs both. The comparison runs when MASLIN_ENGINES is set:
//
//	MASLIN_ENGINES=1 go test -v -run Engines -timeout 30m ./schedule
//
// Costs are compared, not times of steps: optima tie. What Gecode found for 235
// random days of two and three doughs is kept in testdata/random.json with their seeds, so
// that the planner is compared with it on every run without an engine. It proved 200 of them in
// at most a minute each, 152 with an optimum and 48 without a timetable; of the rest
// the best cost it found is kept.
package schedule
