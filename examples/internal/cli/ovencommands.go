package cli

import "github.com/spf13/cobra"

// ovenCommands are the commands about the oven and after: done, left, cool, loss, oven.
func ovenCommands(s System) []*cobra.Command {
	return []*cobra.Command{newDone(s), newLeft(s), newCool(s), newLoss(s), newOven(s)}
}
