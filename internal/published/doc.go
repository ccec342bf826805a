// Package published checks the figures of testdata/published.csv against what the library computes. It is for
// tests.
//
// A table has the columns id, what, inputs, expected, tolerance, reason, source and status. Inputs are key=value
// pairs separated by semicolons; the key "find" names what is computed from them. Expected is a number, or
// "refused" where an error is the right answer.
package published
