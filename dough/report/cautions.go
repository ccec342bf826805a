package report

import "example.org/maslin/dough/working"

// cautionTexts are the cautions as sentences, each once: those that come with every bake in short, unless all are
// wanted in full.
func cautionTexts(all []working.Caution, inFull bool) []working.Message {
	var out []working.Message
	seen := map[working.Message]bool{}
	for _, c := range all {
		m := c.Message()
		if !inFull {
			m = c.Brief()
		}
		if !seen[m] {
			seen[m] = true
			out = append(out, m)
		}
	}
	return out
}
