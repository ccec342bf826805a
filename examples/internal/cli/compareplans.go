package cli

import (
	"context"

	"example.org/maslin/dough/mixing"
)

type compareFlags struct {
	output
	in      *asked
	hand    bool
	machine mixing.MixerKind
	now     string
}

func runCompare(ctx context.Context, s System, names []string, f *compareFlags) error {
	if err := f.check(); err != nil {
		return err
	}
	if wrong := f.in.complain(nil); wrong != nil {
		return wrong
	}
	ways := 0
	for _, asked := range []bool{f.hand, f.machine != 0, len(names) == 2} {
		if asked {
			ways++
		}
	}
	if ways != 1 {
		return badInput("maslin compare: want one of: a second bake file, --hand, or --machine planetary, spiral, fork or processor")
	}
	l, err := load(s, names[0], f.now)
	if err != nil {
		return err
	}
	if len(names) == 2 {
		return compareFiles(ctx, s, f, l, names[1])
	}
	kind := mixing.Hand
	if !f.hand {
		kind = f.machine
	}
	if l.bake.Mixer().Kind == kind {
		return badInput("maslin compare: %s is kneaded that way already (%s); choose another", l.name, kind)
	}
	two, err := l.bake.KneadedBy(ctx, l.clock, kind)
	if err != nil {
		return complain(l.name, located(l.file, err))
	}
	return s.tell(f.output, two, true)
}

func compareFiles(ctx context.Context, s System, f *compareFlags, one loaded, name string) error {
	first, err := one.bake.Plan(ctx, one.clock)
	if err != nil {
		return complain(one.name, located(one.file, err))
	}
	two, err := load(s, name, f.now)
	if err != nil {
		return err
	}
	second, err := two.bake.Plan(ctx, two.clock)
	if err != nil {
		return complain(name, located(two.file, err))
	}
	return s.tell(f.output, first.Beside(second), true)
}
