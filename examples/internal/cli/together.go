package cli

import (
	"encoding/json"
	"strings"

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

// Report tells the answers one after the other.
func (t together) Report() (out report.Report) {
	for i, p := range t.all {
		if i == 0 {
			out = p.answer.Report()
		} else {
			out = out.With(p.key, p.answer.Report())
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
	var fields []string
	for _, p := range t.all {
		data, err := json.Marshal(p.answer)
		if err != nil {
			return nil, err
		}
		fields = append(fields, `"`+p.key+`":`+string(data))
	}
	return []byte("{" + strings.Join(fields, ",") + "}"), nil
}
