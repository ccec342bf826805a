// Package bakelog keeps a baker's observations in an append-only file: one line of JSON for
// each, in the order in which they were written.
//
//	what is on a line, and what is kept       bench.Observation, bench.LogReading
//	add lines                                 Append
//	read a log of any size                    Read
//	where it is                               Place
//
// # What the file promises
//
// Append writes under a lock, in one piece, and returns after the disk has it: two programs at
// once do not mix their lines, and what Append has returned for survives the program being
// killed. Lines are never changed. A line that another program left unfinished stays as it is
// and is reported; the next observation starts on a line of its own.
//
// Every line carries the version of its shape. A version that is not known is refused, for
// reading and for appending, because half-understood lines would teach the wrong things.
package bakelog
