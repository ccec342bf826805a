// Package handcheck checks a printed derivation by hand, as a reader with a pocket calculator does. It knows nothing
// of how the derivation was made: it reads text, and imports nothing of this library. It is for tests.
//
// # What is checked
//
//	does a line of arithmetic give the value printed below it?   at the digits printed
//	are the numbers those that the symbols are said to have?     letter by letter
//	does a symbol stand for one thing, in one unit?              within one derivation
//	does each row of a table give what is printed in it?         and its sum what is said to be its sum
//	is a value that comes from an earlier step the one there?    as rounded
//	does a step without arithmetic say where to look?            and how many are there
//
// # Assumptions
//
// A number is read as printed, uncertain by half of its last digit. A derivation is the text that the library
// makes at the level that tells everything, in English.
//
// # Limits
//
// It checks the arithmetic, not whether a formula is the right one; the published checks of each room do that.
package handcheck
