// Package working answers: how was this number reached, and says who?
//
// A result of this library that has a Working method derives, on demand, the steps that led to
// it: the formula in symbols, what each symbol stands for with its value and unit, the same
// line with the numbers put in, the value, whether it was rounded, and the source. A caller who
// does not ask pays nothing, because results keep their inputs and replay themselves.
//
// A step is one expression over bound symbols. The formula, the line with the numbers put in, the value, LaTeX and
// MathML are made from it, in the units of the reader, and the printed line evaluates to the printed value.
// [Telling] tells a Working as text, Markdown, LaTeX or MathML; [Working.Lines] gives every printed line as data.
//
// # From question to type
//
//	how was it reached, as arithmetic  Derive, Given, Finding, Expr
//	the whole derivation               Working
//	tell it: text, LaTeX, MathML       Telling
//	every printed line as data         Working.Lines, Line
//	what it ends with                  Working.Answer, Value
//	who says so, and how firmly        Source, Standing
//	what can go wrong or hurt          Caution
//	a sentence for any reader          Message, Tell, And, Or
//	an error in another language       Problem
//	who reads: units, language, zone   Reader, Language
//	metric or US customary             Units
//
// # In another language
//
// A [Language] is a catalog as plain data: templates by the identifiers of sentences, words by their keys, the decimal
// sign. It reads from JSON. An application gives its own to a [Reader], or to the options of package report, and
// everything is told in it: answers, notes, cautions, conflicts, remedies, step names and, by [Problem], errors.
// Whatever the catalog lacks is told in English. [Message.ID], and the JSON of an answer, say by which identifier a
// sentence is found; [Language.Check] finds templates that do not show the arguments of the English ones.
package working
