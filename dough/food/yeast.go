package food

import (
	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// YeastTable says which weights of the three forms of yeast raise a dough alike. Only their
// proportions matter. A form of weight zero is not in the table.
type YeastTable struct {
	Name                      string
	Fresh, ActiveDry, Instant quantity.Mass
	Source                    working.Source
}

// DefaultYeast is Hamelman's: active dry 0.4 and instant 0.33 of the weight of fresh yeast. Other
// tables put active dry anywhere from 0.33 to 0.5; see [PublishedYeast].
func DefaultYeast() YeastTable {
	g := quantity.Grams
	return YeastTable{"0.4 and 0.33", g(100), g(40), g(33), sources.HamelmanYeast}
}

// PublishedYeast lists the published tables, the default first. They disagree.
func PublishedYeast() []YeastTable {
	g := quantity.Grams
	return []YeastTable{
		DefaultYeast(),
		{"one half and one third", g(6), g(3), g(2), sources.YeastHalfThird},
		{"active dry one third", g(3), g(1), quantity.Mass{}, sources.YeastOldSupplier},
		{"household packets, three eighths", g(8), g(3), quantity.Mass{}, sources.YeastHousehold},
	}
}

func (t YeastTable) of(k dough.Kind) quantity.Mass {
	switch k {
	case dough.KindFreshYeast:
		return t.Fresh
	case dough.KindActiveDryYeast:
		return t.ActiveDry
	case dough.KindInstantYeast:
		return t.Instant
	}
	return quantity.Mass{}
}

// YeastSwap is the input of [ConvertYeast].
type YeastSwap struct {
	Mass     quantity.Mass
	From, To dough.Kind // dough.KindFreshYeast, dough.KindActiveDryYeast, dough.KindInstantYeast
	// Table replaces [DefaultYeast] when it is not the zero value.
	Table YeastTable
}

// YeastResult is the answer of [ConvertYeast].
type YeastResult struct {
	Mass quantity.Mass
	// Low and High are the least and most that the published tables and the table used give.
	Low, High quantity.Mass

	in YeastSwap
}

// ConvertYeast answers how much of another form of yeast raises a dough alike.
//
//	m_to = m_from · e_to ÷ e_from
//
// e are equivalent weights of the table. Exact but for one rounding, half to even, to the
// microgram. The published tables differ by a fifth and more, and yeasts differ too: Low and High
// show the spread. Fresh yeast is about 69 % water, dry about 5 %: a formula that counts it
// corrects the water by the difference. Mass 0 to 100 t. Errors: ErrRequired, ErrOutOfRange;
// ErrInconsistent when the table lacks a form. Source: Hamelman, Bread.
func ConvertYeast(in YeastSwap) (YeastResult, error) {
	var p quantity.Problems
	quantity.Check(&p, "Mass", in.Mass, quantity.Mass{}, mostDough)
	const want = "fresh yeast, active dry yeast or instant yeast"
	for _, f := range []struct {
		path string
		kind dough.Kind
	}{{"From", in.From}, {"To", in.To}} {
		switch {
		case f.kind == dough.KindUnstated:
			p.Required(f.path, want)
		case !f.kind.Yeast():
			p.Add(f.path, f.kind.String(), want, quantity.ErrOutOfRange)
		}
	}
	if in.Table == (YeastTable{}) {
		in.Table = DefaultYeast()
	}
	quantity.Check(&p, "Table.Fresh", in.Table.Fresh, quantity.Mass{}, mostDough)
	quantity.Check(&p, "Table.ActiveDry", in.Table.ActiveDry, quantity.Mass{}, mostDough)
	quantity.Check(&p, "Table.Instant", in.Table.Instant, quantity.Mass{}, mostDough)
	if p.Err() == nil {
		for _, k := range []dough.Kind{in.From, in.To} {
			if in.Table.of(k).IsZero() {
				p.Add("Table", "no "+k.String(), "a table with both forms", quantity.ErrInconsistent)
			}
		}
	}
	if err := p.Err(); err != nil {
		return YeastResult{}, err
	}
	m := in.Mass.Scale(in.Table.of(in.To), in.Table.of(in.From))
	if !m.IsValid() {
		p.Add("Table", "a proportion beyond all limits", "equivalent weights of yeast", quantity.ErrOutOfRange)
		return YeastResult{}, p.Err()
	}
	r := YeastResult{Mass: m, Low: m, High: m, in: in}
	for _, t := range PublishedYeast() {
		if t.of(in.From).IsZero() || t.of(in.To).IsZero() {
			continue
		}
		other := in.Mass.Scale(t.of(in.To), t.of(in.From))
		if other.Compare(r.Low) < 0 {
			r.Low = other
		}
		if other.Compare(r.High) > 0 {
			r.High = other
		}
	}
	return r, nil
}

// String prints "8 g active dry yeast (published: 6.67 to 10 g)".
func (r YeastResult) String() string {
	if r.in.To == dough.KindUnstated {
		return "no yeast"
	}
	text := r.Mass.String() + " " + r.in.To.String()
	if r.Low != r.High {
		text += " (published: " + bareNumber(r.Low.Text(quantity.Gram, 2)) + " to " + r.High.Text(quantity.Gram, 2) + ")"
	}
	return text
}

// Working derives the weight.
func (r YeastResult) Working() working.Working {
	w := working.Working{Title: "Another form of yeast"}
	if r.in.To == dough.KindUnstated {
		return w
	}
	in := r.in
	from, to := in.Table.of(in.From), in.Table.of(in.To)
	source := in.Table.Source
	if source.IsZero() {
		source = working.Source{Key: "given", Title: "table given by the user", Standing: working.Computed}
	}
	w.Steps = []working.Step{{
		Name: in.To.String(), Symbol: "m_to", Formula: "m_from × e_to ÷ e_from",
		Where: []working.Binding{
			{Symbol: "m_from", Meaning: in.From.String(), Value: in.Mass.String()},
			{Symbol: "e_to", Meaning: "equivalent weight of " + in.To.String(), Value: to.String()},
			{Symbol: "e_from", Meaning: "equivalent weight of " + in.From.String(), Value: from.String()},
		},
		Numbers: bareNumber(in.Mass.String()) + " × " + bareNumber(to.String()) + " ÷ " + bareNumber(from.String()),
		Value:   r.Mass.String(),
		Note:    "published tables give " + r.Low.Text(quantity.Gram, 3) + " to " + r.High.Text(quantity.Gram, 3), Source: source,
	}}
	return w
}
