// Package outfile writes what a program makes without destroying what is there.
//
// # From question to function
//
//	may all of this be written?        Guard.Check
//	write it, whole or not at all      Output.Write
//	what is in that file already?      Form
//	the program is told to stop        Cleanup
//
// An output that is also an input, or that is named twice, is refused before anything is written. A
// file that the program did not write, or that is protected, is left alone unless the user says that
// it may be replaced. A link is followed, so that the file it points to is the one replaced; devices and
// pipes are written through; a file that is replaced keeps its mode, and a new one is made as the umask says.
package outfile
