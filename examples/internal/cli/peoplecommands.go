package cli

import "github.com/spf13/cobra"

// peopleCommands are the commands about first minutes and teaching: new, table, compare.
func peopleCommands(s System) []*cobra.Command {
	return []*cobra.Command{newNew(s), newTable(s), newCompare(s)}
}

// bakeFiles completes the names of bake files.
func bakeFiles(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	return []string{"toml"}, cobra.ShellCompDirectiveFilterFileExt
}
