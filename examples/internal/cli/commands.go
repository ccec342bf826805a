package cli

import "github.com/spf13/cobra"

// bowlCommands are the commands about what goes into the bowl: formula, levain, water, mixer, flour, yeast, convert, chill, vessel, cost.
func bowlCommands(s System) []*cobra.Command {
	return []*cobra.Command{newFormula(s), newLevain(s), newWater(s), newMixer(s), newSticking(s), newScald(s), newFlour(s), newYeast(s), newConvert(s), newChill(s), newVessel(s), newCost(s)}
}

// clockCommands are the commands about the clock of the dough: bulk, log, learn, now.
func clockCommands(s System) []*cobra.Command {
	return []*cobra.Command{newBulk(s), newLog(s), newLearn(s), newNow(s)}
}

// ovenCommands are the commands about the oven and after: done, left, cool, keep, loss, oven.
func ovenCommands(s System) []*cobra.Command {
	return []*cobra.Command{newDone(s), newLeft(s), newCool(s), newKeep(s), newLoss(s), newOven(s)}
}

// peopleCommands are the commands about first minutes and teaching: new, table, compare, exercise.
func peopleCommands(s System) []*cobra.Command {
	return []*cobra.Command{newNew(s), newBakeFile(s), newTable(s), newCompare(s), newExercise(s)}
}

// bakeFiles completes the names of bake files.
func bakeFiles(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	return []string{"toml"}, cobra.ShellCompDirectiveFilterFileExt
}
