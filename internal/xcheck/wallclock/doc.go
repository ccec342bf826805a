// Package wallclock compares the resolver of package schedule/wallclock with Python's zoneinfo,
// whose fold attribute (PEP 495) names the same two readings of a moment in a gap or fold. It
// holds tests only, and is skipped with a message without Python 3.9 or later. Both sides read
// the zone data of this machine.
package wallclock
