package vessel

import (
	"math"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// SizedPiece is a sheet, a disk or a stick of dough: give its size to learn the dough, or the dough to learn the size.
type SizedPiece struct {
	Bread SizedBread `json:"bread"`
	// Diameter of a disk, or of a round tray inside.
	Diameter quantity.Length `json:"diameter,omitzero"`
	// Length of a stick; Length and Width of a rectangular tray, inside.
	Length quantity.Length `json:"length,omitzero"`
	Width  quantity.Length `json:"width,omitzero"`
	Mass   quantity.Mass   `json:"mass,omitzero"` // of one piece of dough, for its size
}

// PieceFit is the dough for a size, or the size for a dough, as a range without a probability.
type PieceFit struct {
	answer

	Bread SizedBread `json:"bread"`
	// Dough of one piece.
	Dough quantity.Range[quantity.Mass] `json:"dough"`
	// Across is the diameter or the length that was asked for; not given when the dough was.
	Across quantity.Range[quantity.Length] `json:"across,omitzero"`
	// Thickness of the dough in a tray, before it rises.
	Thickness quantity.Range[quantity.Length] `json:"thickness,omitzero"`

	in  SizedPiece
	row sizedRow
}

// The most and the least that a side and a piece measure.
var (
	leastSide, mostSide   = quantity.Centimeters(5), quantity.Centimeters(200)
	leastPiece, mostPiece = quantity.Grams(5), quantity.Kilograms(50)
)

// gasFree is the density of a dough without its gas in g/cm³, for the thickness of a sheet. From memory.
const gasFree = 1.1

// Dough answers how much dough a tray, a disk or a stick of this size takes.
//
//	tray m = g·l·w or g·π·d² ÷ 4     disk m = g·π·d² ÷ 4     stick m = g·l     thickness = g ÷ 1.1 g/cm³
//
// g is the dough of the bread for each cm² or cm, as a range; l, w and d are length, width and diameter. Sides 5 cm to
// 2 m. Accuracy: bakers differ by a tenth and more, which the range holds; how thick you like it goes before any
// figure. Errors: ErrRequired, ErrOutOfRange, ErrInconsistent for two shapes at once. Source: the rule of the trade or
// the memory that the answer names.
func (in SizedPiece) Dough() (PieceFit, error) {
	var p quantity.Problems
	sizedBreads.Check(&p, "Bread", in.Bread)
	row := in.Bread.row()
	extent := in.extent(&p, row.by)
	if !in.Mass.IsZero() {
		p.Add("Mass", in.Mass, quantity.Tell("vessel.want_size_alone_dough_answer",
			"the size alone; the dough is the answer"), quantity.ErrInconsistent)
	}
	if err := p.ErrFor(in); err != nil {
		return PieceFit{}, err
	}
	g := func(i int) quantity.Mass { return quantity.Grams(extent * row.dose[i]) }
	out := PieceFit{Bread: in.Bread, Dough: quantity.Range[quantity.Mass]{Low: g(0), Likely: g(1), High: g(2)}, in: in,
		row: row}
	if row.by == asSheet {
		t := func(i int) quantity.Length { return quantity.Centimeters(row.dose[i] / gasFree) }
		out.Thickness = quantity.Range[quantity.Length]{Low: t(0), Likely: t(1), High: t(2)}
	}
	return out, nil
}

// Size answers how large a tray, disk or stick a piece of dough makes, the inverse of [SizedPiece.Dough]: the diameter
// of a disk or a round tray, the length of a stick, or with Width the length of a rectangular tray. Dough 5 g to 50 kg.
// Errors: ErrOutOfRange, ErrInconsistent when the size is given too.
func (in SizedPiece) Size() (PieceFit, error) {
	var p quantity.Problems
	sizedBreads.Check(&p, "Bread", in.Bread)
	row := in.Bread.row()
	quantity.Check(&p, "Mass", in.Mass, leastPiece, mostPiece)
	without(&p, "Diameter", in.Diameter, quantity.Tell("vessel.want_dough_and_rectangular_tray_width",
		"the dough, and of a rectangular tray its width"))
	without(&p, "Length", in.Length, quantity.Tell("vessel.want_dough_and_rectangular_tray_width",
		"the dough, and of a rectangular tray its width"))
	if row.by != asSheet {
		without(&p, "Width", in.Width, quantity.Tell("vessel.want_no_width_only_trays_have", "no width: only trays have one"))
	} else if !in.Width.IsZero() {
		quantity.Check(&p, "Width", in.Width, leastSide, mostSide)
	}
	if err := p.ErrFor(in); err != nil {
		return PieceFit{}, err
	}
	across := func(i int) quantity.Length {
		extent := in.Mass.Grams() / row.dose[i]
		switch {
		case row.by == asStick:
			return quantity.Centimeters(extent)
		case !in.Width.IsZero():
			return quantity.Centimeters(extent / in.Width.Centimeters())
		}
		return quantity.Centimeters(math.Sqrt(4 * extent / math.Pi))
	}
	return PieceFit{
		Bread: in.Bread, Dough: quantity.Range[quantity.Mass]{Low: in.Mass, High: in.Mass},
		Across: quantity.Range[quantity.Length]{Low: across(2), Likely: across(1), High: across(0)}, in: in, row: row,
	}, nil
}

// without refuses a length that has no place here.
func without(p *quantity.Problems, path string, l quantity.Length, want quantity.Phrase) {
	if !l.IsZero() {
		p.Add(path, l, want, quantity.ErrInconsistent)
	}
}

// extent is the area in cm², or the length in cm of a stick.
func (in SizedPiece) extent(p *quantity.Problems, by measured) float64 {
	round, long := !in.Diameter.IsZero(), !in.Length.IsZero() || !in.Width.IsZero()
	switch {
	case by == asStick:
		without(p, "Diameter", in.Diameter, quantity.Tell("vessel.want_length_alone_stick", "the length alone of a stick"))
		without(p, "Width", in.Width, quantity.Tell("vessel.want_length_alone_stick", "the length alone of a stick"))
		quantity.Check(p, "Length", in.Length, leastSide, mostSide)
		return in.Length.Centimeters()
	case round && long:
		p.Add("Diameter", in.Diameter, quantity.Tell("vessel.want_either_diameter_or_length_and",
			"either a diameter or length and width"), quantity.ErrInconsistent)
	case by == asDisk && long:
		p.Add("Length", in.Length, quantity.Tell("vessel.want_diameter_disk", "the diameter of a disk"),
			quantity.ErrInconsistent)
	case by == asDisk || round:
		quantity.Check(p, "Diameter", in.Diameter, leastSide, mostSide)
		return math.Pi / 4 * in.Diameter.Centimeters() * in.Diameter.Centimeters()
	case !long:
		p.Required("Length", quantity.Tell("vessel.want_length_and_width_tray_inside",
			"length and width of the tray inside, or its diameter"))
	default:
		quantity.Check(p, "Length", in.Length, leastSide, mostSide)
		quantity.Check(p, "Width", in.Width, leastSide, mostSide)
		return in.Length.Centimeters() * in.Width.Centimeters()
	}
	return 0
}

// sized reports whether the answer is of a question.
func (f PieceFit) sized() bool { return f.row.dose[0] > 0 }

// String is the headline of the report.
func (f PieceFit) String() string { return f.Report().Headline.String() }

// Report tells the dough or the size.
func (f PieceFit) Report() report.Report {
	r := report.Report{Headline: f.headline()}
	if !f.sized() {
		return r
	}
	notes := report.List{working.Tell("vessel.taste_decides",
		"how thick you like it decides; note what you took, and it is your own figure")}
	if f.row.by == asSheet {
		notes = append(notes, working.Tell("vessel.measure_inside",
			"measure the tray inside, on its floor: trays are sold by their rim"))
	}
	if !f.Thickness.High.IsZero() {
		notes = append(notes, working.Tell("vessel.sheet_thickness",
			"spread %v to %v thick before it rises; baked it is three to four times as high (from memory)",
			f.Thickness.Low, f.Thickness.High))
	}
	r.Sections = []report.Section{{Key: "size", Blocks: []report.Block{notes}}}
	r.Sources = []working.Source{f.row.says}
	return r
}

func (f PieceFit) headline() working.Message {
	switch {
	case !f.sized():
		return working.Tell("vessel.no_piece", "no size was asked for")
	case f.Across.High.IsZero():
		return working.Tell("vessel.piece_dough", "About %.0f of dough for a %v of %v (%.0f to %.0f)", f.Dough.Likely,
			f.Bread, f.in.told(), f.Dough.Low, f.Dough.High)
	case !f.in.Width.IsZero():
		return working.Tell("vessel.piece_length", "%v of dough fills a %v %v wide and about %v long (%v to %v)",
			f.in.Mass, f.Bread, f.in.Width, f.Across.Likely, f.Across.Low, f.Across.High)
	case f.row.by == asStick:
		return working.Tell("vessel.piece_stick", "%v of dough makes a %v about %v long (%v to %v)", f.in.Mass, f.Bread,
			f.Across.Likely, f.Across.Low, f.Across.High)
	}
	return working.Tell("vessel.piece_round", "%v of dough makes a %v about %v across (%v to %v)", f.in.Mass, f.Bread,
		f.Across.Likely, f.Across.Low, f.Across.High)
}

// told is the size in words.
func (in SizedPiece) told() working.Message {
	switch {
	case !in.Diameter.IsZero():
		return working.Say("%v", in.Diameter)
	case in.Width.IsZero():
		return working.Say("%v", in.Length)
	}
	return working.Say("%v × %v", in.Length, in.Width)
}

// Working derives the dough or the size.
func (f PieceFit) Working() working.Working {
	d := working.Derive(working.Tell("vessel.derive_piece", "Dough by size"))
	if !f.sized() {
		return d.Working()
	}
	quarter := working.Pi().Over(working.Num(4))
	for i, of := range bounds() {
		dose := working.Given("g_"+of.index, working.Tell("vessel.symbol_dose", "dough for its size, %v", f.Bread),
			working.Amount(f.row.dose[i], f.row.by.unit(), 3))
		if f.Across.High.IsZero() {
			f.findDough(d, i, of, dose, quarter)
			continue
		}
		across := working.Given("m", working.Tell("vessel.symbol_piece", "dough of a piece"), f.in.Mass).Over(dose)
		symbol := "l_" + of.index
		switch {
		case !f.in.Width.IsZero():
			across = across.Over(working.Given("w", working.Tell("vessel.symbol_width", "width"), f.in.Width))
		case f.row.by != asStick:
			across, symbol = working.Sqrt(across.Over(quarter)), "d_"+of.index
		}
		d.Find(working.Finding{
			Name: working.Tell("vessel.size_with", "size with the dose g_%s", of.index), Symbol: symbol, By: across,
			Is: [3]quantity.Length{f.Across.High, f.Across.Likely, f.Across.Low}[i], Decimals: 1, Source: f.row.says,
		})
	}
	return d.Working()
}

func (f PieceFit) findDough(d *working.Derivation, i int, of bound, dose, quarter working.Expr) {
	by := dose
	switch {
	case !f.in.Diameter.IsZero():
		across := working.Given("d", working.Tell("vessel.symbol_diameter", "inside diameter"), f.in.Diameter)
		by = by.Times(quarter).Times(across).Times(across)
	default:
		by = by.Times(working.Given("l", working.Tell("vessel.symbol_length", "length"), f.in.Length))
		if !f.in.Width.IsZero() {
			by = by.Times(working.Given("w", working.Tell("vessel.symbol_width", "width"), f.in.Width))
		}
	}
	d.Find(working.Finding{
		Name: of.dough, Symbol: "m_" + of.index, By: by, Source: f.row.says,
		Is: [3]quantity.Mass{f.Dough.Low, f.Dough.Likely, f.Dough.High}[i], Decimals: working.WholeNumber,
	})
	if f.row.by == asSheet {
		d.Find(working.Finding{
			Name:   working.Tell("vessel.thickness_with", "thickness before the rise with the dose g_%s", of.index),
			Symbol: "t_" + of.index, Decimals: 2, Unit: working.Centimeter, Source: sources.DoughDensity,
			By: dose.Over(working.Given("ρ", working.Tell("vessel.symbol_gas_free", "density of dough without its gas"),
				working.Amount(gasFree, "g/cm³", 2))),
		})
	}
}
