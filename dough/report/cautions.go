package report

import "example.org/maslin/dough/working"

// cautionTexts are the cautions as sentences, each once, and who decides. Unless all are wanted in full, those that
// come with every bake are told in short, the ones of a subject in one line.
func cautionTexts(all []working.Caution, inFull bool) []working.Message {
	if len(all) == 0 {
		return nil
	}
	var out []working.Message
	seen := map[working.Message]bool{}
	at := map[working.Subject]int{} // of the short line of a subject
	for _, c := range all {
		says, short := c.Message(), !inFull && !c.Short.IsZero()
		if short {
			says = c.Brief()
		}
		if seen[says] {
			continue
		}
		seen[says] = true
		if i, known := at[c.Subject]; short && known {
			out[i] = working.Tell("report.cautions_of_subject", "%v; %v", out[i], c.Short)
			continue
		}
		if short {
			at[c.Subject] = len(out)
		}
		out = append(out, says)
	}
	return append(
		out,
		working.Tell("report.rules_decide",
			"Local food and workplace rules and licensed professionals decide, not these words."),
	)
}
