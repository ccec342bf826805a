// Package bakesheet puts the report of a day on paper: two pages to print or prop up beside the scales, and the same on a
// phone, with boxes to tick and lines to write on.
//
// It says nothing that the report does not, but for what is to be written down. The page is self-contained: no network,
// no script, nothing to install. It follows the reader's light or dark preference, and whatever stands in a name stays
// text.
package bakesheet
