package nearest

import "strings"

// Word returns the known word with the fewest edits, if that is few enough to be a slip, or "".
func Word(name string, known []string) string {
	best, fewest := "", 3
	if len(name) <= 4 {
		fewest = 2
	}
	if len(name) > 64 {
		return ""
	}
	for _, k := range known {
		if d := edits(name, k); d < fewest {
			best, fewest = k, d
		}
	}
	return best
}

// edits counts insertions, deletions, substitutions and swaps of neighbors (optimal string
// alignment).
func edits(a, b string) int {
	x, y := []rune(a), []rune(b)
	d := make([][]int, len(x)+1)
	for i := range d {
		d[i] = make([]int, len(y)+1)
		d[i][0] = i
	}
	for j := range d[0] {
		d[0][j] = j
	}
	for i := 1; i <= len(x); i++ {
		for j := 1; j <= len(y); j++ {
			cost := 1
			if x[i-1] == y[j-1] {
				cost = 0
			}
			d[i][j] = min(d[i-1][j]+1, d[i][j-1]+1, d[i-1][j-1]+cost)
			if i > 1 && j > 1 && x[i-1] == y[j-2] && x[i-2] == y[j-1] {
				d[i][j] = min(d[i][j], d[i-2][j-2]+1)
			}
		}
	}
	return d[len(x)][len(y)]
}

// Name is the name that was probably meant, in any case: one that differs by a slip, or that holds what was given.
func Name(name string, names []string) string {
	near := Word(strings.ToLower(name), names)
	for _, n := range names {
		if near == "" && strings.Contains(strings.ToLower(n), strings.ToLower(name)) {
			near = n
		}
	}
	return near
}
