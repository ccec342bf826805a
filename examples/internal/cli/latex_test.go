package cli

import (
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// compiled runs pdflatex on a document and returns its log. Without pdflatex the test is skipped, unless
// MASLIN_LATEX says that it has to be there.
func compiled(t *testing.T, document string) string {
	t.Helper()
	latex, err := exec.LookPath("pdflatex")
	if err != nil {
		if os.Getenv("MASLIN_LATEX") != "" {
			t.Fatal(err)
		}
		t.Skip("pdflatex is not installed")
	}
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "page.tex"), []byte(document), 0o600); err != nil {
		t.Fatal(err)
	}
	run := exec.Command(latex, "-interaction=nonstopmode", "-halt-on-error", "page.tex")
	run.Dir = dir
	out, failed := run.CombinedOutput()
	log, err := os.ReadFile(filepath.Join(dir, "page.log"))
	if failed != nil || err != nil {
		t.Fatalf("%v\n%s", failed, out[max(0, len(out)-3000):])
	}
	return string(log)
}

// complaint is what a log says that a page should not have.
var complaint = regexp.MustCompile(`(?m)^(Overfull .*|Missing character.*|! .*|LaTeX Warning: .*(?:undefined|math mode).*)$`)

const (
	begins = `\begin{document}`
	ends   = `\end{document}`
)

// bodyOf is what stands within a complete document.
func bodyOf(t *testing.T, document string) string {
	t.Helper()
	_, body, begun := strings.Cut(document, begins)
	body, rest, ended := strings.Cut(body, ends)
	if !begun || !ended || strings.TrimSpace(rest) != "" {
		t.Fatalf("no complete document: %.200s", document)
	}
	return body
}

// The derivations of every command compile, in both systems of units and in German, without a character left out and
// without a line
// over the margin.
func TestEveryWorkingCompiles(t *testing.T) {
	if testing.Short() {
		t.Skip("compiles for seconds")
	}
	a := questioner{rand.New(rand.NewPCG(7, 20261128))}
	var all []string
	preamble := ""
	for name, draw := range drawn {
		for _, units := range [][]string{nil, {"--us"}, {"--language", "de"}} {
			args := append(append(draw(a), "--working=latex", "--document"), units...)
			status, out, wrong := run(args...)
			if out == "" {
				t.Logf("%s: %d %s", name, status, wrong)
				continue
			}
			if strings.Contains(out, "[U+") {
				t.Errorf("%v: a character is left out", args)
			}
			preamble, _, _ = strings.Cut(out, begins)
			all = append(all, "% "+strings.Join(args, " "), bodyOf(t, out), `\clearpage`)
		}
	}
	document := preamble + begins + "\n" + strings.Join(all, "\n") + "\n" + ends + "\n"
	for _, wrong := range complaint.FindAllString(compiled(t, document), 20) {
		t.Error(wrong)
	}
}

var pages = regexp.MustCompile(`Output written on page\.pdf \((\d+) pages?`)

// Worksheets and keys compile too, and a key of seven questions fits two pages.
func TestWorksheetsAndKeysCompile(t *testing.T) {
	if testing.Short() {
		t.Skip("compiles for seconds")
	}
	for _, difficulty := range []string{"one step", "usual", "hard"} {
		for _, more := range [][]string{nil, {"--key"}, {"--key", "--us"}, {"--key", "--language", "de"}} {
			args := append([]string{"exercise", "--form", "latex", "--count", "7", "--difficulty", difficulty}, more...)
			_, out, wrong := run(args...)
			if wrong != "" {
				t.Fatal(wrong)
			}
			log := compiled(t, out)
			for _, wrong := range complaint.FindAllString(log, 5) {
				t.Errorf("%v: %s", args, wrong)
			}
			if m := pages.FindStringSubmatch(strings.ReplaceAll(log, "\n", "")); m == nil || m[1] > "2" {
				t.Errorf("%v: %v pages", args, m)
			}
		}
	}
}
