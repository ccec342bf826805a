package cli

import "github.com/spf13/cobra"

func newNow(s System) *cobra.Command { return &cobra.Command{Use: "now"} }
