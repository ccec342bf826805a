package pupil

import (
	"math"
	"regexp"
	"strings"
)

// A problem is a kind of question: where its numbers stand in the sentence, in English and in German, what comes out,
// and what comes out with each of the usual mistakes. In a sentence, {flour:mass} is the number to be called flour, a
// weight, and … is whatever stands between.
type problem struct {
	english, german string
	// unit is that of the answer, or a number of the question that it shares its unit with
	unit     string
	answer   func(n given) float64
	mistakes map[string]func(n given) float64
}

// given are the numbers of a question by their names.
type given map[string]amount

// of is a number of the question.
func (g given) of(name string) float64 {
	a, ok := g[name]
	if !ok {
		return math.NaN()
	}
	return a.number
}

var blank = regexp.MustCompile(`\{([a-zA-Z]+):([a-z]+)\}|…`)

// A form is a kind of question as it is written in a language.
type form struct {
	problem
	kind         string
	sentence     *regexp.Regexp
	names, kinds []string // of the numbers, as they stand in the sentence
}

// in is the form of the question in a language.
func (p problem) in(t tongue, kind string) form {
	sentence := p.english
	if t == german {
		sentence = p.german
	}
	f := form{problem: p, kind: kind}
	var text strings.Builder
	at := 0
	for _, m := range blank.FindAllStringSubmatchIndex(sentence, -1) {
		text.WriteString(regexp.QuoteMeta(sentence[at:m[0]]))
		at = m[1]
		if m[2] < 0 {
			text.WriteString(".*?")
			continue
		}
		f.names, f.kinds = append(f.names, sentence[m[2]:m[3]]), append(f.kinds, sentence[m[4]:m[5]])
		text.WriteString("(" + t.form(f.kinds[len(f.kinds)-1]) + ")")
	}
	text.WriteString(regexp.QuoteMeta(sentence[at:]))
	f.sentence = regexp.MustCompile(text.String())
	return f
}

// read finds the numbers of the question; ok is false if it is another kind of question.
func (f form) read(t tongue, question string) (given, bool) {
	found := f.sentence.FindStringSubmatch(question)
	if found == nil {
		return nil, false
	}
	out := given{}
	for i, name := range f.names {
		out[name] = t.read(f.kinds[i], found[i+1])
	}
	return out, true
}

// unitOf is the unit that the answer has.
func (p problem) unitOf(n given) string {
	if a, ok := n[p.unit]; ok {
		return a.unit
	}
	return p.unit
}

// zero is the freezing point of water in the degrees of a question.
func (g given) zero(name string) float64 {
	if g[name].unit == degreeF {
		return 32
	}
	return 0
}

// sea is the boiling point of water at sea level.
func (g given) sea(name string) float64 {
	if g[name].unit == degreeF {
		return 212
	}
	return 100
}
