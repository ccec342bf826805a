// Package working answers: how was this number reached, and says who?
//
// A result of this library that has a Working method derives, on demand, the steps that led to
// it: the formula in symbols, what each symbol stands for with its value and unit, the same
// line with the numbers put in, the value, whether it was rounded, and the source. A caller who
// does not ask pays nothing, because results keep their inputs and replay themselves.
//
// A Working is plain data. It prints as text for a terminal ([Working.Text]), as Markdown
// ([Working.Markdown]) and as LaTeX ([Working.LaTeX]); an application may render the steps in any
// other way.
//
// # From question to type
//
//	one line of arithmetic             Step
//	what a symbol stands for           Binding
//	the whole derivation               Working
//	who says so, and how firmly        Source, Standing
//	what can go wrong or hurt          Caution
//	a sentence for any reader          Message, Tell, And, Or
//	an error in another language       Problem
//	who reads: units, language, zone   Reader, Language
//	metric or US customary             Units
package working
