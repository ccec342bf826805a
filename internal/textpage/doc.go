// Package textpage lays out plain text for a terminal: headings, rows in columns, and paragraphs wrapped to a width,
// in ASCII and in color where the reader's terminal asks for it.
//
//	an empty page                New
//	how wide is a text?          Width
//	what a user gave, made safe  Printable
//	a number with its unit       Glue
//	a text in ASCII              ASCII
//	a text, a file of HTML       Escaped, Document
package textpage
