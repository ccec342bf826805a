// Package desk is the classroom without its browser: it takes what a reader typed, asks the library, and gives back the
// parts of a page. It holds no sentence about bread but the questions it asks, and no arithmetic of baking at all:
// answers, workings, pictures, tables, cautions and errors are those of the library, told by it in the reader's units
// and language.
//
// Its one door is [Answer]: a request in, a response out, whatever comes in. The same code runs in the browser and in tests, so that both can be compared to the last digit.
//
//	the door                                   Answer
//	everything a page is in, and its link      State, State.Fragment, ReadFragment
//	the sentences of the page, for a catalog   the identifiers that begin with "desk."
//
// A task is a question on a bench: fields, a guess, and what the library says. Its fields are named as the data form of
// the library's input names them, so that a problem is shown at the field that it is about.
package desk
