// Package nearest answers: which of the known words was probably meant?
//
//	a word that has a slip             Word
//	a name that has one, or a part     Name
//
// Words are compared by the edits that lead from one to the other; from three edits on, or two of a short word, none is
// meant.
package nearest
