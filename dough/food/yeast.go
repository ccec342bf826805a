package food

import (
	"strconv"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// YeastTable says which weights of the three forms of yeast raise a dough alike. Only their
// proportions matter. A form of weight zero is not in the table.
type YeastTable struct {
	Name      string         `json:"name"`
	Fresh     quantity.Mass  `json:"fresh,omitzero"`
	ActiveDry quantity.Mass  `json:"active_dry,omitzero"`
	Instant   quantity.Mass  `json:"instant,omitzero"`
	Source    working.Source `json:"source,omitzero"`
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
		{"a small cake for a packet", g(12), g(5), g(5), sources.YeastSmallCake},
	}
}

func (t YeastTable) of(k dough.Kind) quantity.Mass {
	switch k {
	case dough.KindFreshYeast:
		return t.Fresh
	case dough.KindActiveDryYeast:
		return t.ActiveDry
	case dough.KindInstantYeast, dough.KindOsmotolerantYeast: // by weight as strong; it bears sugar better
		return t.Instant
	}
	return quantity.Mass{}
}

// YeastSwap is yeast and the form that it is to be replaced by.
type YeastSwap struct {
	Mass quantity.Mass `json:"mass"`
	From dough.Kind    `json:"from"`        // fresh, active dry or instant yeast
	To   dough.Kind    `json:"to,omitzero"` // not given: both others
	// Table replaces [DefaultYeast] when it is not the zero value.
	Table YeastTable `json:"table,omitzero"`
}

// YeastForm is a weight of one form of yeast.
type YeastForm struct {
	Kind dough.Kind    `json:"kind"`
	Mass quantity.Mass `json:"mass"`
	// Published are the least and most that the published tables and the table used give.
	Published quantity.Range[quantity.Mass] `json:"published"`
}

// SwappedYeast is the answer of [YeastSwap.Convert].
type SwappedYeast struct {
	answer

	Mass quantity.Mass `json:"mass"`
	From dough.Kind    `json:"from"`
	To   []YeastForm   `json:"to"`

	table YeastTable
}

func yeasts() []dough.Kind {
	return []dough.Kind{dough.KindFreshYeast, dough.KindActiveDryYeast, dough.KindInstantYeast}
}

// Convert answers how much of another form of yeast raises a dough alike.
//
//	m_to = m_from · e_to ÷ e_from
//
// e are equivalent weights of the table. Exact but for one rounding, half to even, to the
// microgram. The published tables differ by a fifth and more, and yeasts differ too: Published
// shows the spread. Fresh yeast is about 69 % water, dry about 5 %: a formula that counts it
// corrects the water by the difference. Mass 0 to 100 t. Errors: ErrRequired, ErrOutOfRange;
// ErrInconsistent when the table lacks a form. Source: Hamelman, Bread.
func (in YeastSwap) Convert() (SwappedYeast, error) {
	var p quantity.Problems
	quantity.Check(&p, "Mass", in.Mass, quantity.Mass{}, mostDough)
	want := quantity.Tell("food.want_fresh_yeast_active_dry_yeast", "fresh yeast, active dry yeast or instant yeast")
	switch {
	case in.From == dough.KindUnstated:
		p.Required("From", want)
	case !in.From.Yeast():
		p.Add("From", in.From, want, quantity.ErrOutOfRange)
	}
	if in.To != dough.KindUnstated && !in.To.Yeast() {
		p.Add("To", in.To, want, quantity.ErrOutOfRange)
	}
	table := in.Table
	if table == (YeastTable{}) {
		table = DefaultYeast()
	}
	quantity.Check(&p, "Table.Fresh", table.Fresh, quantity.Mass{}, mostDough)
	quantity.Check(&p, "Table.ActiveDry", table.ActiveDry, quantity.Mass{}, mostDough)
	quantity.Check(&p, "Table.Instant", table.Instant, quantity.Mass{}, mostDough)
	out := SwappedYeast{Mass: in.Mass, From: in.From, table: table}
	forms := yeasts()
	if in.To != dough.KindUnstated {
		forms = []dough.Kind{in.To}
	}
	for _, to := range forms {
		if p.Err() != nil || in.To == dough.KindUnstated && to == in.From {
			continue
		}
		if table.of(to).IsZero() && in.To == dough.KindUnstated && !table.of(in.From).IsZero() {
			continue // a table of two forms
		}
		out.add(&p, to)
	}
	if p.Err() == nil && len(out.To) == 0 {
		p.Add("Table", quantity.Tell("food.got_one_form_yeast", "one form of yeast"),
			quantity.Tell("food.want_table_both_forms", "a table with both forms"), quantity.ErrInconsistent)
	}
	if err := p.ErrFor(in); err != nil {
		return SwappedYeast{}, err
	}
	return out, nil
}

// add converts to one form.
func (r *SwappedYeast) add(p *quantity.Problems, to dough.Kind) {
	for _, k := range []dough.Kind{r.From, to} {
		if r.table.of(k).IsZero() {
			p.Add("Table", quantity.Tell("food.got_no", "no %v", k),
				quantity.Tell("food.want_table_both_forms", "a table with both forms"), quantity.ErrInconsistent)
			return
		}
	}
	m := r.Mass.Scale(r.table.of(to), r.table.of(r.From))
	if !m.IsValid() {
		p.Add("Table", quantity.Tell("food.got_proportion_beyond_all_limits", "a proportion beyond all limits"),
			quantity.Tell("food.want_equivalent_weights_yeast", "equivalent weights of yeast"), quantity.ErrOutOfRange)
		return
	}
	low, high := m, m
	for _, t := range PublishedYeast() {
		if t.of(r.From).IsZero() || t.of(to).IsZero() {
			continue
		}
		other := r.Mass.Scale(t.of(to), t.of(r.From))
		if other.Compare(low) < 0 {
			low = other
		}
		if other.Compare(high) > 0 {
			high = other
		}
	}
	r.To = append(r.To, YeastForm{Kind: to, Mass: m,
		Published: quantity.Range[quantity.Mass]{Low: low, Likely: m, High: high}})
}

// String is the headline of the report.
func (r SwappedYeast) String() string { return r.Report().Headline.String() }

// Report tells the other forms, with the spread of the published tables.
func (r SwappedYeast) Report() report.Report {
	if len(r.To) == 0 {
		return report.Report{Headline: working.Tell("food.no_yeast", "no yeast")}
	}
	out := report.Report{Headline: working.Tell("food.yeast_forms", "In place of %v of %v", r.Mass, r.From),
		Sources: []working.Source{r.table.Source}}
	if len(r.To) == 1 {
		out.Headline = working.Tell("food.yeast", "%v of %v in place of %v of %v", shown(r.To[0].Mass), r.To[0].Kind,
			r.Mass, r.From)
	}
	t := report.Grid{Key: "forms", Columns: []report.GridColumn{
		{Key: "mass", Title: working.Tell("food.column_mass", "weight"), Right: true},
		{Key: "kind", Title: working.Tell("food.column_form", "form")},
		{Key: "published", Title: working.Tell("food.column_published", "published tables")},
	}}
	for _, f := range r.To {
		range_ := working.Tell("food.from_to", "%v to %v", shown(f.Published.Low), shown(f.Published.High))
		t.Rows = append(t.Rows, []report.Cell{report.Of(shown(f.Mass)), report.Of(f.Kind), report.Of(range_)})
	}
	out.Sections = []report.Section{{Key: "forms", Blocks: []report.Block{t, report.List{
		working.Tell("food.yeasts_differ", "yeasts differ as much as the tables do: watch the dough"),
		working.Tell("food.yeast_water", "fresh yeast is two thirds water, dry yeast has next to none"),
	}}}}
	return out
}

// shown rounds a weight of yeast for reading: to a tenth of a gram, below 10 g to a hundredth.
func shown(m quantity.Mass) quantity.Mass {
	step := quantity.Grams(0.1)
	if m.Compare(quantity.Grams(10)) < 0 {
		step = quantity.Grams(0.01)
	}
	rounded, _ := m.RoundTo(step)
	return rounded
}

// Working derives the weights.
func (r SwappedYeast) Working() working.Working {
	d := working.Derive(working.Tell("food.derive_yeast", "Another form of yeast"))
	if len(r.To) == 0 {
		return d.Working()
	}
	source := r.table.Source
	if source.IsZero() {
		source = working.Source{Key: "given", Title: "table given by the user", Standing: working.Computed}
	}
	worth := func(k dough.Kind, index string) working.Expr {
		return working.Given("e_"+index, working.Tell("food.symbol_worth", "equivalent weight of %v", k), r.table.of(k))
	}
	from := working.Given("m", working.Tell("food.symbol_yeast", "%v", r.From), r.Mass)
	for i, f := range r.To {
		n := strconv.Itoa(i + 1)
		d.Find(working.Finding{
			Name: working.Tell("food.symbol_yeast", "%v", f.Kind), Symbol: "m_" +
				n, By: from.Times(worth(f.Kind, n)).Over(worth(r.From, "from")),
			Is: shown(f.Mass), Decimals: 3, Source: source,
			Rounding: working.Tell("food.scale_step", "to what a small scale shows"),
			Note: working.Tell("food.published", "published tables give %v to %v", shown(f.Published.Low),
				shown(f.Published.High)),
		})
	}
	return d.Working()
}
