package cli

import (
	"bytes"
	"encoding/json"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// together is several answers told as one: the first has the headline, all have their sections.
type together struct{ all []part }

type part struct {
	key    string
	answer telling
}

// add takes an answer in, or the reason why there is none.
func (t *together) add(p *quantity.Problems, key string, a telling, err error) {
	p.Join("", err)
	if err == nil {
		t.all = append(t.all, part{key, a})
	}
}

// Report tells the answers one after the other. What hurts is said once.
func (t together) Report() report.Report {
	var out report.Report
	said := map[working.Message]bool{}
	for i, p := range t.all {
		r := p.answer.Report()
		switch {
		case i == 0:
			out.Headline = r.Headline
		case len(r.Sections) == 0:
			out.Sections = append(out.Sections, report.Section{Key: p.key, Blocks: []report.Block{report.Say(r.Headline)}})
		}
		out.Sections = append(out.Sections, r.Sections...)
		out.RestsOn = append(out.RestsOn, r.RestsOn...)
		out.Sources = append(out.Sources, r.Sources...)
		for _, c := range r.Cautions {
			if !said[c.Text] {
				said[c.Text] = true
				out.Cautions = append(out.Cautions, c)
			}
		}
	}
	return out
}

// Workings are those of all answers.
func (t together) Workings() []working.Working {
	var out []working.Working
	for _, p := range t.all {
		out = append(out, derivations(p.answer)...)
	}
	return out
}

// MarshalJSON writes each answer under its key, in order.
func (t together) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, p := range t.all {
		if i > 0 {
			b.WriteByte(',')
		}
		data, err := json.Marshal(p.answer)
		if err != nil {
			return nil, err
		}
		b.WriteString(`"` + p.key + `":`)
		b.Write(data)
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}
