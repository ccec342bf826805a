// Package report answers: how is an answer shown?
//
// A [Report] is a small document of typed content: a headline, sections of rows, tables, sentences and charts,
// what can hurt, what the answer rests on and who says so. Its values are quantities and messages, not text, so
// that units, rounding and language are chosen when it is rendered, and every rendering tells the same answer.
//
// # From question to method
//
//	on a terminal, or as plain text          Report.Text
//	in a document                            Report.Markdown
//	in a browser, or on paper                Report.HTML
//	inside a page of one's own               Report.Fragment
//	a table for a spreadsheet                Grid.CSV, Report.Grids
//	every value, as data                     the answer's own JSON
//
// # Assumptions
//
// A report says nothing that its answer does not: it is made by the answer's Report method. Names that somebody
// gave are text in every rendering: they add no markup and send no command to a terminal.
//
// # Limits
//
// Grids that are wider than the paper or the terminal are told row by row. A chart has one main line with its
// band, further lines, and one line on a second axis.
package report
