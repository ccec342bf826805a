// Package curve draws the rise of a dough over time: a likely line, the band it may lie in,
// and a second line (the temperature) on its own axis.
//
//	a picture for a page or for printing   Plot.SVG
//	a picture in a terminal                Plot.Text
//
// Both are drawn from plain numbers and depend on nothing. The same plot gives the same bytes.
//
// The picture is one self-contained SVG element. It has a title and a description for those who
// cannot see it; it takes its ink from the page around it (currentColor), so it fits light and
// dark pages, and from the reader's preference when it stands alone; and nothing in it is told
// apart by color only: the likely line is solid, the band is a tint with edges, the second line
// is dashed, a level is dotted, so a black-and-white print says the same. A page may set
// --curve-line, --curve-band and --curve-second.
//
// All texts are data: whatever stands in them, they cannot add an element to the picture or
// send a command to the terminal.
package curve
