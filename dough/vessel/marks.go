package vessel

import (
	"math"
	"strconv"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// RiseContainer is a container with straight sides in which a rise is read, the input of [RiseContainer.Marks].
type RiseContainer struct {
	// Diameter is inside. For a square one give Width and Depth instead.
	Diameter quantity.Length `json:"diameter,omitzero"`
	Width    quantity.Length `json:"width,omitzero"`
	Depth    quantity.Length `json:"depth,omitzero"`
	// Height is inside; zero: not known, and nothing is said about overflowing.
	Height quantity.Length `json:"height,omitzero"`
	// Start is the height of the dough when it was put in, pressed level. When it is not given, Dough and
	// Density give it.
	Start   quantity.Length `json:"start,omitzero"`
	Dough   quantity.Mass   `json:"dough,omitzero"`
	Density float64         `json:"density,omitzero"` // kg/L; zero means 1.12
	// Rises are the marks wanted; none means +30, +50, +75 and +100 %.
	Rises []quantity.Percent `json:"rises,omitempty"`
}

// RiseMark is one mark on the container.
type RiseMark struct {
	Rise   quantity.Percent `json:"rise"`
	Height quantity.Length  `json:"height"` // from the floor
	// Above reports that the mark lies above the rim.
	Above bool `json:"above,omitzero"`
}

// RiseMarks is the answer of [RiseContainer.Marks].
type RiseMarks struct {
	answer

	Start quantity.Length `json:"start"` // height of the dough at the start
	// Measured reports whether the start was measured; otherwise it comes from a density and is
	// within about 7 %.
	Measured bool       `json:"measured"`
	Marks    []RiseMark `json:"marks"`

	in   RiseContainer
	area float64 // cm²
}

// Marks answers where to mark a straight-sided container for the rise of a dough.
//
//	h₀ = m ÷ (ρ·A), or as measured;  h = h₀ · (1 + rise)
//
// A is the area of the floor, π·d² ÷ 4 or width·depth. In a straight-sided container height is
// volume, so "double" is twice the start; in a bowl it is not. Measure the start when you can: the
// formula's start is as uncertain as the density. Diameter and sides 2 cm to 2 m, start 0.2 cm to 2
// m, rises 1 to 500 %. Errors: ErrRequired, ErrOutOfRange. Source: geometry; density from memory.
func (in RiseContainer) Marks() (RiseMarks, error) {
	var p quantity.Problems
	area := in.area(&p)
	cm := quantity.Centimeters
	if !in.Height.IsZero() {
		quantity.Check(&p, "Height", in.Height, cm(1), cm(300))
	}
	r := RiseMarks{in: in, Measured: !in.Start.IsZero()}
	switch {
	case r.Measured:
		quantity.Check(&p, "Start", in.Start, cm(0.2), cm(200))
		r.Start = in.Start
	case in.Dough.IsZero():
		p.Required("Start", quantity.Tell("vessel.want_height_dough_when_put_or",
			"the height of the dough when put in, or its weight"))
	default:
		ok := quantity.Check(&p, "Dough", in.Dough, quantity.Grams(1), quantity.Kilograms(100_000))
		if in.Density == 0 {
			r.in.Density = densityLikely
		} else {
			ok = p.Float("Density", in.Density, 0.5, 1.4, "kg/L") && ok
		}
		if ok && area > 0 {
			r.Start = cm(in.Dough.Grams() / r.in.Density / area)
			quantity.Check(&p, "Dough", r.Start, cm(0.2), cm(200))
		}
	}
	if len(in.Rises) == 0 {
		for _, s := range []string{"30 %", "50 %", "75 %", "100 %"} {
			in.Rises = append(in.Rises, quantity.MustPercent(s))
		}
	}
	if len(in.Rises) > 50 {
		p.Add("Rises", quantity.Tell("vessel.got_marks", "%d marks", len(in.Rises)),
			quantity.Tell("vessel.want_at_most_50", "at most 50"), quantity.ErrOutOfRange)
		return RiseMarks{}, p.ErrFor(in)
	}
	for i, x := range in.Rises {
		quantity.Check(&p, at("Rises", i), x, quantity.MustPercent("1 %"), quantity.MustPercent("500 %"))
	}
	if err := p.ErrFor(in); err != nil {
		return RiseMarks{}, err
	}
	r.area = area
	r.in.Rises = nil
	for _, x := range in.Rises {
		h := cm(r.Start.Centimeters() * (1 + x.Fraction()))
		r.Marks = append(r.Marks, RiseMark{x, h, !in.Height.IsZero() && h.Compare(in.Height) > 0})
	}
	return r, nil
}

// area is that of the floor in cm².
func (in RiseContainer) area(p *quantity.Problems) float64 {
	low, high := quantity.Centimeters(2), quantity.Centimeters(200)
	if in.Width.IsZero() && in.Depth.IsZero() {
		if in.Diameter.IsZero() {
			p.Required("Diameter", quantity.Tell("vessel.want_inside_diameter_or_width_and",
				"the inside diameter, or the width and depth of a square container"))
		} else if quantity.Check(p, "Diameter", in.Diameter, low, high) {
			return math.Pi / 4 * in.Diameter.Centimeters() * in.Diameter.Centimeters()
		}
		return 0
	}
	ok := quantity.Check(p, "Width", in.Width, low, high)
	ok = quantity.Check(p, "Depth", in.Depth, low, high) && ok
	if !in.Diameter.IsZero() {
		p.Add("Diameter", in.Diameter, quantity.Tell("vessel.want_either_diameter_or_width_and",
			"either a diameter or width and depth"), quantity.ErrInconsistent)
		return 0
	}
	if !ok {
		return 0
	}
	return in.Width.Centimeters() * in.Depth.Centimeters()
}

// String is the headline of the report.
func (r RiseMarks) String() string { return r.Report().Headline.String() }

// Report lists the marks.
func (r RiseMarks) Report() report.Report {
	if len(r.Marks) == 0 {
		return report.Report{Headline: working.Tell("vessel.no_marks", "no marks")}
	}
	last := r.Marks[len(r.Marks)-1]
	notes := report.List{working.Tell("vessel.straight", "height is volume only where the sides are straight")}
	if !r.Measured {
		notes = append(notes, working.Tell("vessel.measure_start",
			"the start is reckoned from the weight, within about 7 %%: press the dough level and measure it"))
	}
	return report.Report{
		Headline: working.Tell("vessel.marks", "From the floor: start at %v, +%v at %v", r.Start, last.Rise,
			last.Height),
		Sections: []report.Section{{Key: "marks", Blocks: []report.Block{r.table(), notes}}},
		Sources:  []working.Source{sources.CylinderGeometry, sources.DoughDensity},
	}
}

func (r RiseMarks) table() report.Grid {
	t := report.Grid{Key: "marks", Columns: []report.GridColumn{
		{Key: "rise", Title: working.Tell("vessel.column_rise", "rise"), Right: true},
		{Key: "height", Title: working.Tell("vessel.column_height", "from the floor"), Right: true},
		{Key: "note"},
	}, Rows: [][]report.Cell{{report.Of(working.Tell("vessel.start", "start")), report.Of(r.Start), {}}}}
	for _, m := range r.Marks {
		row := []report.Cell{report.Of(m.Rise), report.Of(m.Height), {}}
		if m.Above {
			row[2] = report.Of(working.Tell("vessel.above_rim", "above the rim"))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// Working derives the start and the marks.
func (r RiseMarks) Working() working.Working {
	d := working.Derive(working.Tell("vessel.derive_marks", "Marks on a straight-sided container"))
	if len(r.Marks) == 0 {
		return d.Working()
	}
	start := working.Given("h_start", working.Tell("vessel.symbol_start", "height of the dough at the start"), r.Start)
	if !r.Measured {
		start = r.findStart(d)
	}
	for i, m := range r.Marks {
		rise := working.Given("r_"+strconv.Itoa(i+1), working.Tell("vessel.symbol_rise", "rise"), m.Rise)
		f := working.Finding{
			Name: working.Tell("vessel.mark", "mark for +%v", m.Rise), Symbol: "h_" + strconv.Itoa(i+1),
			By: start.Times(working.Num(1).Plus(rise.Share())),
			Is: m.Height, Decimals: 1, Source: sources.CylinderGeometry,
		}
		if m.Above {
			f.Note = working.Tell("vessel.above_rim", "above the rim")
		}
		d.Find(f)
	}
	return d.Working()
}

// findStart derives the start from the weight of the dough and the floor of the container.
func (r RiseMarks) findStart(d *working.Derivation) working.Expr {
	in := r.in
	by := working.Pi().Over(working.Num(4))
	if in.Diameter.IsZero() {
		by = working.Given("a", working.Tell("vessel.symbol_width", "width"), in.Width).
			Times(working.Given("b", working.Tell("vessel.symbol_depth", "depth"), in.Depth))
	} else {
		diameter := working.Given("d", working.Tell("vessel.symbol_diameter", "inside diameter"), in.Diameter)
		by = by.Times(diameter).Times(diameter)
	}
	floor := d.Find(working.Finding{
		Name:   working.Tell("vessel.floor", "area of the floor"),
		Symbol: "A", By: by, Is: working.Amount(r.area, "cm²", 1),
		Source: sources.CylinderGeometry,
	})
	m := working.Given("m", working.Tell("vessel.symbol_dough", "dough"), in.Dough)
	density := working.Given("ρ", working.Tell("vessel.symbol_density", "density of the mixed dough"),
		working.Amount(in.Density, "g/mL", 2))
	return d.Find(working.Finding{
		Name: working.Tell("vessel.symbol_start",
			"height of the dough at the start"), Symbol: "h_start", By: m.Over(density).Over(floor),
		Is: r.Start, Decimals: 1, Source: sources.DoughDensity,
	})
}
