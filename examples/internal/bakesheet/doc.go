// Package bakesheet turns a planned bake into one page of HTML for the kitchen: weights with boxes to
// tick, times, windows in which to look at the dough, the rise curve, what done means, cautions
// and the sources used.
//
//	the whole page                     Render
//	the rise curve alone, as SVG       Curve
//
// The page is self-contained: no network, no script, nothing to install. It follows the
// reader's light or dark preference and prints on one or two sheets of A4 or Letter.
// Whatever stands in a name stays text.
package bakesheet
