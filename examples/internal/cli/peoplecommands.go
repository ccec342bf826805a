package cli

import "github.com/spf13/cobra"

// peopleCommands are the commands about first minutes and teaching: new, table, compare.
func peopleCommands(s System) []*cobra.Command { return nil }
