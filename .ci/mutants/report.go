package main

import (
	"bufio"
	"cmp"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"
)

// summary tells how many mutants were noticed, and which were not.
func (t *trial) summary(w io.Writer) {
	counts := map[string]int{}
	kinds := map[string][2]int{}
	for _, v := range t.done {
		counts[v.Verdict]++
		k := kinds[v.Kind]
		k[0]++
		if v.Verdict != survived {
			k[1]++
		}
		kinds[v.Kind] = k
	}
	slices.SortFunc(t.done, func(a, b verdict) int {
		return cmp.Or(cmp.Compare(a.File, b.File), cmp.Compare(a.Line, b.Line), cmp.Compare(a.Change, b.Change))
	})
	for _, v := range t.done {
		if v.Verdict == survived {
			fmt.Fprintf(w, "survived: %s:%d %s %s [%s]\n", v.File, v.Line, v.Kind, v.Change, v.In)
		}
	}
	var byKind []string
	for k, n := range kinds {
		byKind = append(byKind, fmt.Sprintf("%s %d/%d", k, n[1], n[0]))
	}
	slices.Sort(byKind)
	fmt.Fprintln(w, strings.Join(byKind, ", "))
	all := len(t.done)
	noticed := all - counts[survived]
	fmt.Fprintf(w, "%s seed %d: %d mutants, %d noticed (%d of them by the time they took), %d survived: %.1f %%\n",
		t.src.path, t.options.seed, all, noticed, counts["timeout"], counts[survived],
		100*float64(noticed)/float64(max(all, 1)))
}

// survivorsOf reads which mutants of an earlier run survived, by their names.
func survivorsOf(path string) (map[string]bool, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	out := map[string]bool{}
	lines := bufio.NewScanner(f)
	for lines.Scan() {
		var v verdict
		if err := json.Unmarshal(lines.Bytes(), &v); err != nil {
			return nil, err
		}
		if v.Verdict == survived {
			out[fmt.Sprintf("%s:%d %s %s", v.File, v.Line, v.Kind, v.Change)] = true
		}
	}
	return out, lines.Err()
}
