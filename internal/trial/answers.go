package trial

import (
	"strings"

	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// A Told is an answer that tells itself as a page and as a derivation.
type Told interface {
	Report() report.Report
	Working() working.Working
}

// Must is the answer to a question that has one.
func Must[T any](answer T, err error) T {
	if err != nil {
		panic(err)
	}
	return answer
}

// KeptAnswer compares an answer as it is told today, page and derivation, with what is kept under this name in
// testdata/answers: that nothing is lost from it, and that no number moves unseen. A derivation that with its numbers
// has fewer bytes than short, for a US reader, is kept so too.
func KeptAnswer(t Failer, name string, a Told, short int) {
	t.Helper()
	page := a.Report().Markdown(report.Options{}) + "\n" + a.Working().Text(110)
	us := working.Telling{Reader: working.Reader{Units: working.USCustomary}, Level: working.WithNumbers, Width: 110}
	if told := us.Text(a.Working()); len(told) < short {
		page += "\n" + told
	}
	Kept(t, "answers/"+name+".md", strings.TrimRight(page, "\n")+"\n")
}
