// Package workcheck has a derivation checked as it is printed, for metric and for US readers, so that the text a result
// prints and the arithmetic behind it cannot drift apart. It is for tests.
//
// # Assumptions
//
// What reads the text back is [example.org/maslin/internal/handcheck], which knows nothing of how it was made.
//
// # Limits
//
// It checks the arithmetic of a line, not whether its formula is the right one; the published checks of each room do
// that.
package workcheck
