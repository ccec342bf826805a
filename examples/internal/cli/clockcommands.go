package cli

import "github.com/spf13/cobra"

// clockCommands are the commands about the clock of the dough: bulk, log, learn, now.
func clockCommands(s System) []*cobra.Command {
	return []*cobra.Command{newBulk(s), newLog(s), newLearn(s), newNow(s)}
}
