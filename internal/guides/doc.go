// Package guides keeps the guides beside the packages true: every number in them is computed by its tests, either as a
// line of arithmetic that is read back from the page, or as an answer of the library that the page has to say.
//
// # Assumptions
//
// A guide is a Markdown file. Lines set apart by four spaces are arithmetic: what stands before = has to give what
// stands behind it, at the digits printed.
//
// # Limits
//
// It does not check words.
package guides
