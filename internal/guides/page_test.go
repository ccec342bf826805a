package guides

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"example.org/maslin/internal/handcheck"
)

// A page is a guide that is being checked.
type page struct {
	t    *testing.T
	name string
	text string // with one space between words
	left string // without what is accounted for
}

var spaces = regexp.MustCompile(`\s+`)

// read reads a guide and checks every line of arithmetic in it.
func read(t *testing.T, name string) *page {
	t.Helper()
	b, err := os.ReadFile("../../" + name)
	if err != nil {
		t.Fatal(err)
	}
	p := &page{t: t, name: name}
	var rest []string
	for _, line := range strings.Split(string(b), "\n") {
		if formula, ok := strings.CutPrefix(line, "    "); ok {
			p.arithmetic(formula)
			continue
		}
		rest = append(rest, line)
	}
	p.text = spaces.ReplaceAllString(strings.Join(rest, " "), " ")
	p.left = p.text
	return p
}

// arithmetic checks that what stands before = gives what stands behind it.
func (p *page) arithmetic(line string) {
	p.t.Helper()
	left, right, ok := strings.Cut(line, " = ")
	if !ok {
		p.t.Errorf("%s: %q is no arithmetic", p.name, line)
		return
	}
	want, ok := handcheck.ReadValue(right)
	_, got, err := handcheck.Evaluate(left)
	if !ok || err != nil || !want.Gives(got) {
		p.t.Errorf("%s: %s gives %.10g (%v), the page says %s", p.name, left, got, err, right)
	}
}

// says demands that the page says it, and takes it as accounted for.
func (p *page) says(what string) {
	p.t.Helper()
	if !strings.Contains(p.text, what) {
		p.t.Errorf("%s does not say %q", p.name, what)
	}
	p.left = strings.ReplaceAll(p.left, what, "")
}

var digits = regexp.MustCompile(`.{0,30}[0-9].{0,30}`)

// done demands that every number of the page is accounted for.
func (p *page) done() {
	p.t.Helper()
	for _, rest := range digits.FindAllString(p.left, -1) {
		p.t.Errorf("%s: nothing computes the number in %q", p.name, rest)
	}
}
