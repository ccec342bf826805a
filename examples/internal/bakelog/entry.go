package bakelog

import "errors"

// ErrVersion: the log was written by a later version of the program.
var ErrVersion = errors.New("written by a later version of maslin")

// ErrNotLog: the file holds something else, and nothing is added to it.
var ErrNotLog = errors.New("is not a bake log: it is left as it is; want a bake log, an empty file, or a name that is not taken")

// A Problem is a line that cannot be read. The line stays as it is.
type Problem struct {
	Line int
	Text string // the beginning of the line
	Why  string
}
