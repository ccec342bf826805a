// Package calendar reads the calendar files that package schedule/calendar writes with readers
// written by others: a Go decoder and a JavaScript one. It holds tests only.
//
// The JavaScript test installs ical.js with npm into a temporary directory, and is skipped
// with a message when node, npm or the package is not to be had.
package calendar
