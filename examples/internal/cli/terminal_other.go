//go:build !(linux || darwin || freebsd || netbsd || openbsd)

package cli

import "os"

// terminalWidth is not known here.
func terminalWidth(*os.File) int { return 0 }
