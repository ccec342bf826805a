package desk

import (
	"strings"
	"testing"
)

// Every task is told in German: nothing of the page is left in English, numbers have a comma, and the fields take one.
func TestGerman(t *testing.T) {
	english := map[string]string{}
	for _, id := range Tasks() {
		english[id] = ask(t, Request{Do: "open", Fragment: State{At: id, Phase: open}.Fragment()}).Page
	}
	for _, id := range Tasks() {
		out := ask(t, Request{Do: "open", Fragment: State{At: id, Phase: open, Language: "de"}.Fragment()})
		if out.Page == english[id] || !strings.Contains(out.Page, `lang="de"`) || !strings.Contains(out.Page, "Was die Bibliothek sagt") {
			t.Errorf("%s is not German", id)
		}
		for _, word := range []string{" the ", " of ", "guess", "Take care", "Sources", "What you"} {
			if at := strings.Index(out.Answer, word); at >= 0 && !inReference(out.Answer, at) {
				t.Errorf("%s: %q in …%s…", id, word, out.Answer[max(at-80, 0):min(at+80, len(out.Answer))])
			}
		}
		for _, f := range Fields(State{At: id, Language: "de"}) {
			if len(f.Stops) > 0 && len(f.Rows) == 0 {
				text := f.Stops[len(f.Stops)-1]
				s := State{At: id, Phase: open, Language: "de", Fields: map[string]string{f.Name: text}}
				if out := ask(t, Request{Do: "type", State: s}); strings.Contains(out.Problems[f.Name], "Einheit") {
					t.Errorf("%s: the slider writes %q, which is not read: %s", id, text, out.Problems[f.Name])
				}
			}
		}
	}
	s := State{At: "water.plan", Phase: open, Language: "de", Fields: map[string]string{"target": "24,5"}}
	if out := ask(t, Request{Do: "type", State: s}); !strings.Contains(out.Headline, ",") || len(out.Problems) > 0 {
		t.Errorf("%q %v", out.Headline, out.Problems)
	}
	s.Fields["target"] = "warm"
	if out := ask(t, Request{Do: "type", State: s}); !strings.Contains(out.Problems["target"], "warm") || strings.Contains(out.Status, "mend") {
		t.Errorf("%v %s", out.Problems, out.Status)
	}
}

// inReference reports whether a place in a page is inside a reference: titles of books keep their language.
func inReference(page string, at int) bool {
	begin := strings.LastIndex(page[:at], "report-sources")
	return begin >= 0
}
