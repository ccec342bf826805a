package main

import (
	"flag"
	"fmt"
	"os"
	"strings"
)

// options are what a run is asked.
type options struct {
	module, pkg, dependents, out, again, skip, without string
	count, atOnce                                      int
	seed                                               int64
	list                                               bool
}

func main() {
	var o options
	flag.StringVar(&o.module, "C", ".", "directory of the module")
	flag.StringVar(&o.pkg, "pkg", "", "package to mutate, as ./bake")
	flag.StringVar(&o.dependents, "dependents", "", "packages whose tests are asked about survivors")
	flag.IntVar(&o.count, "n", 100, "how many mutants")
	flag.Int64Var(&o.seed, "seed", 1, "seed of the sample")
	flag.IntVar(&o.atOnce, "p", 2, "how many run at once")
	flag.StringVar(&o.out, "out", "", "file of a JSON line for each mutant")
	flag.StringVar(&o.again, "again", "", "file of an earlier run, of which only the survivors are tried")
	flag.StringVar(&o.skip, "skip", "", "functions left out, as Name or Type.Name, with spaces between")
	flag.StringVar(&o.without, "without", "", "tests left out, as a pattern: slow ones,"+
		" by which fewer mutants are noticed")
	flag.BoolVar(&o.list, "list", false, "only list the sample")
	flag.Parse()
	if err := run(o); err != nil {
		fmt.Fprintln(os.Stderr, "mutants:", err)
		os.Exit(1)
	}
}

func run(o options) error {
	src, err := load(o.module, o.pkg)
	if err != nil {
		return err
	}
	places, err := chosen(src, o)
	if err != nil {
		return err
	}
	together, alone := src.fitting(places)
	fmt.Printf("%s: %d mutants in one binary, %d built alone\n", src.path, len(together), len(alone))
	if o.list {
		for _, m := range append(together, alone...) {
			fmt.Println(m)
		}
		return nil
	}
	work, err := os.MkdirTemp("", "mutants")
	if err != nil {
		return err
	}
	defer os.RemoveAll(work)
	t, err := newTrial(src, o, work)
	if err != nil {
		return err
	}
	defer t.close()
	if err := t.together(together); err != nil {
		return err
	}
	if err := t.alone(alone); err != nil {
		return err
	}
	t.summary(os.Stdout)
	return nil
}

// chosen samples the places of a package, or finds again the survivors of an earlier run.
func chosen(src *source, o options) ([]*mutant, error) {
	all := src.collect(strings.Fields(o.skip))
	if o.again == "" {
		return src.sample(all, o.count, o.seed), nil
	}
	survivors, err := survivorsOf(o.again)
	if err != nil {
		return nil, err
	}
	var out []*mutant
	for _, m := range all {
		if survivors[m.name()] {
			out = append(out, m)
		}
	}
	fmt.Printf("%d of %d survivors read the same\n", len(out), len(survivors))
	return out, nil
}
