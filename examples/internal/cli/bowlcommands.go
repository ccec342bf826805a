package cli

import "github.com/spf13/cobra"

// bowlCommands are the commands about what goes into the bowl: formula, levain, water, mixer, flour, yeast, convert.
func bowlCommands(s System) []*cobra.Command {
	return []*cobra.Command{newFormula(s), newLevain(s), newWater(s), newMixer(s), newFlour(s), newYeast(s), newConvert(s)}
}
