// Package workcheck re-evaluates every printed line of a derivation, so that the text a result prints and the
// arithmetic behind it cannot drift apart. It is for tests.
//
// # Assumptions
//
// A line is read as a reader reads it: the numbers as printed, each uncertain by half of its last digit.
//
// # Limits
//
// It checks the arithmetic of a line, not whether its formula is the right one; the published checks of each room do
// that.
package workcheck
