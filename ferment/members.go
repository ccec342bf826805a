package ferment

import (
	"unicode"
	"unicode/utf8"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/internal/gasbalance"
)

// CultureMember is one culture of one person in what a [Culture] knows of.
type CultureMember struct {
	Person string `json:"person,omitzero"`
	Name   string `json:"name,omitzero"`
	Bakes  int    `json:"bakes"`
	Held   Held   `json:"held"` // how the ranges given for its bakes have held
}

// Members are all cultures whose bakes speak for this one, by person and name.
func (c Culture) Members() []CultureMember {
	if c.of == nil {
		return nil
	}
	out := make([]CultureMember, len(c.of.group.Entries))
	for i, e := range c.of.group.Entries {
		out[i] = CultureMember{e.Person, e.Culture, e.Sums.Bakes, Held{e.Sums.Score.Inside, e.Sums.Score.Ranges}}
	}
	return out
}

// Score is how the ranges have held that were given for this culture's bakes before they were known. Ranges that
// were too narrow are stretched for the next bake, and too wide ones drawn in, by √((3 + Σ z²)/(3 + n)), z being
// how far each fell from what was expected.
func (c Culture) Score() Held {
	t := c.taught()
	if c.of == nil {
		return Held{}
	}
	return Held{t.Score.Inside, t.Score.Ranges}
}

// Pooled is the score of all cultures together.
func (c Culture) Pooled() (h Held) {
	for _, m := range c.Members() {
		h.Inside += m.Held.Inside
		h.Ranges += m.Held.Ranges
	}
	return h
}

// Of answers: what does everything known here say of a person's culture? For one not among [Culture.Members] it is
// what a newcomer starts from: that person's other cultures, or else everyone's. A kitchen differs from the typical
// one by what is common to all (a fifth of the variance), to one person's kitchen (three tenths) and to the culture
// (half): judgments. Errors: ErrOutOfRange for a name that is no text.
func (c Culture) Of(person, name string) (Culture, error) {
	var p problems
	p.name("Person", person)
	p.name("Name", name)
	asked := struct {
		Person string `json:"person"`
		Name   string `json:"name"`
	}{person, name}
	if err := p.ErrFor(asked); err != nil || c.of == nil {
		return Culture{}, err
	}
	return newCulture(c.of.group, person, name), nil
}

// Merge answers: what do several logs say together? The order does not matter, but for whose culture the result speaks
// of: the one of c, or of the first that is of any. Cultures learned apart and merged are as learned together; where
// several hold bakes of the same culture, these are added up, each weighed and scored as it was when it was learned.
// The same bakes in two of them would count twice. Errors: ErrInconsistent for cultures raised by different leavening
// or that forget at different rates.
func (c Culture) Merge(others ...Culture) (Culture, error) {
	var p problems
	first, merged := c, gasbalance.Group{}
	if c.of != nil {
		merged = c.of.group
	}
	for _, d := range others {
		switch {
		case d.of == nil:
			continue
		case first.of == nil:
			first, merged = d, d.of.group
			continue
		}
		if merged.Kind != d.of.group.Kind {
			p.Add("Leavening", d.of.group.Kind, quantity.Tell("ferment.want_other", "%v, as in the other", merged.Kind),
				quantity.ErrInconsistent)
		}
		if merged.HalfLife != d.of.group.HalfLife {
			p.Add("HalfLife", quantity.Tell("ferment.got_days", "%v days", d.of.group.HalfLife),
				quantity.Tell("ferment.want_days_other", "%v days, as in the other", merged.HalfLife),
				quantity.ErrInconsistent)
		}
		if p.Err() == nil {
			merged = merged.Merge(d.of.group)
		}
	}
	if err := p.ErrFor(c); err != nil || first.of == nil {
		return Culture{}, err
	}
	return newCulture(merged, first.of.person, first.of.name), nil
}

// longestName is the longest name of a person or a culture, in bytes.
const longestName = 200

// name checks a name: text of one line.
func (p *problems) name(path, s string) {
	bad := len(s) > longestName || !utf8.ValidString(s)
	for _, r := range s {
		bad = bad || unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r)
	}
	if bad {
		p.Add(path, quantity.Excerpt(s), quantity.Tell("ferment.want_at_most_200_bytes_text",
			"at most 200 bytes of text without control or direction characters"),
			errOutOfRange)
	}
}
