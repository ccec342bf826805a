package cli

import (
	"strings"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"github.com/spf13/cobra"
)

type keepFlags struct {
	output
	in   *asked
	loaf bake.StoredLoaf
}

func newKeep(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "keep",
		Short: "How stale the loaf gets where it lies, and how to keep it",
		Long: `keep says how far the crumb of a loaf has firmed after lying here and there, from about two hours
after the oven; how long bread of its style is usually good; and how to freeze and refresh it.`,
		Example: `  maslin keep --style pan --stay 2d=21C
  maslin keep --style baguette --stay 12h=21C --stay 1d=4C
  maslin keep --style rye --stay 30d=0F --us`,
		Args: flagsOnly,
	}
	f := &keepFlags{in: ask(cmd)}
	in := f.in
	styleFlag(in, &f.loaf.Style)
	in.each(func(text string) error {
		long, at, found := strings.Cut(text, "=")
		var stay bake.Stay
		d, err := quantity.ParseDuration(long)
		if !found || err != nil {
			return &quantity.InputError{Got: quantity.Excerpt(text), Want: quantity.Tell("cli.want_how_long_and_how_warm", `how long and how warm, such as "2d=21C"`), Err: quantity.ErrUnit}
		}
		stay.For = quantity.Elapsed(d)
		f.loaf.Stays = append(f.loaf.Stays, stay)
		return f.loaf.Stays[len(f.loaf.Stays)-1].At.UnmarshalText([]byte(at))
	}, "stay", "TIME=TEMPERATURE", "where it lies, in order (may be repeated)", "Stays")
	f.register(cmd)
	cmd.RunE = func(*cobra.Command, []string) error {
		if err := f.check(); err != nil {
			return err
		}
		r, err := f.loaf.Staling()
		if wrong := in.complain(err); wrong != nil {
			return wrong
		}
		return s.tell(f.output, r, true)
	}
	return cmd
}
