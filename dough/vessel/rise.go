package vessel

import (
	"math"
	"strconv"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// Density of a mixed dough with the gas of mixing in it, kg/L. Published figures were not found;
// the spread is what bakers' texts give. [from memory]
const (
	densityLow    = 1.05
	densityLikely = 1.12
	densityHigh   = 1.20
)

// VesselVolume is a volume as a range.
type VesselVolume struct {
	Low, Likely, High quantity.Volume

	of vesselBasis
}

// vesselBasis is what a volume was reckoned from, for its working.
type vesselBasis struct {
	dough     quantity.Mass
	perGram   [3]float64 // mL
	meaning   string
	says      working.Source
	likeliest string // how the middle was chosen
}

// String prints "847 mL (791 to 904 mL)".
func (v VesselVolume) String() string {
	return v.Likely.Text(quantity.Milliliter, 0) + " (" + bareNumber(v.Low.Text(quantity.Milliliter, 0)) +
		" to " + v.High.Text(quantity.Milliliter, 0) + ")"
}

// DoughVolume answers how much room a dough takes as it leaves the mixer: V = m ÷ ρ.
//
// density is in kg/L, 0.5 to 1.4; zero means 1.12 with 1.05 to 1.20 as range, and a density that is
// given is taken as exact. Dough 1 g to 100 t. Errors: ErrOutOfRange. Source: density of mixed
// dough, from memory.
func DoughVolume(dough quantity.Mass, density float64) (VesselVolume, error) {
	var p quantity.Problems
	quantity.Check(&p, "dough", dough, quantity.Grams(1), quantity.Kilograms(100_000))
	low, likely, high := densityHigh, densityLikely, densityLow
	if density != 0 {
		p.Float("density", density, 0.5, 1.4, "kg/L")
		low, likely, high = density, density, density
	}
	if err := p.Err(); err != nil {
		return VesselVolume{}, err
	}
	at := func(d float64) quantity.Volume { return quantity.Liters(dough.Kilograms() / d) }
	return VesselVolume{at(low), at(likely), at(high), vesselBasis{dough, [3]float64{1 / low, 1 / likely, 1 / high}, "room of a gram, 1 ÷ density", sources.DoughDensity, ""}}, nil
}

// Working derives the volumes.
func (v VesselVolume) Working() working.Working {
	w := working.Working{Title: "Room for a dough"}
	if v.of.dough.IsZero() {
		return w
	}
	m := bareNumber(v.of.dough.String())
	for i, name := range []string{"least", "likely", "most"} {
		f := decimals(v.of.perGram[i], 6)
		ml := [3]quantity.Volume{v.Low, v.Likely, v.High}[i].Milliliters()
		s := working.Step{
			Name: name + " volume", Symbol: "V_" + name, Formula: "m × f",
			Where: []working.Binding{
				{Symbol: "m", Meaning: "dough", Value: v.of.dough.String()},
				{Symbol: "f", Meaning: v.of.meaning, Value: f + " mL/g"},
			},
			Numbers: m + " × " + f, Value: decimals(ml, 1) + " mL", Tolerance: 1e-6 * v.of.dough.Grams(), Source: v.of.says,
		}
		if i == 1 {
			s.Note = v.of.likeliest
		}
		w.Steps = append(w.Steps, s)
	}
	return w
}

// RiseContainer is a container with straight sides in which a rise is read, the input of [FillLines].
type RiseContainer struct {
	// Diameter is inside. For a square one give Width and Depth instead.
	Diameter     quantity.Length
	Width, Depth quantity.Length
	// Height is inside; zero: not known, and nothing is said about overflowing.
	Height quantity.Length
	// Start is the height of the dough when it was put in, pressed level. When it is not given, Dough and
	// Density give it.
	Start   quantity.Length
	Dough   quantity.Mass
	Density float64 // kg/L; zero means 1.12
	// Rises are the marks wanted; none means +30, +50, +75 and +100 %.
	Rises []quantity.Percent
}

// RiseMark is one mark on the container.
type RiseMark struct {
	Rise   quantity.Percent
	Height quantity.Length
	// Above reports that the mark lies above the rim.
	Above bool
}

// FillLine is the answer of [FillLines].
type FillLine struct {
	Start quantity.Length
	// Measured reports whether the start was measured; otherwise it comes from a density and is
	// within about 7 %.
	Measured bool
	Marks    []RiseMark

	in   RiseContainer
	area float64 // cm²
}

// FillLines answers where to mark a straight-sided container for the rise of a dough.
//
//	h₀ = m ÷ (ρ·A), or as measured;  h = h₀ · (1 + rise)
//
// A is the area of the floor, π·d² ÷ 4 or width·depth. In a straight-sided container height is
// volume, so "double" is twice the start; in a bowl it is not. Measure the start when you can: the
// formula's start is as uncertain as the density. Diameter and sides 2 cm to 2 m, start 0.2 cm to 2
// m, rises 1 to 500 %. Errors: ErrRequired, ErrOutOfRange. Source: geometry; density from memory.
func FillLines(in RiseContainer) (FillLine, error) {
	var p quantity.Problems
	area := in.area(&p)
	cm := quantity.Centimeters
	if !in.Height.IsZero() {
		quantity.Check(&p, "Height", in.Height, cm(1), cm(300))
	}
	r := FillLine{in: in, Measured: !in.Start.IsZero()}
	switch {
	case r.Measured:
		quantity.Check(&p, "Start", in.Start, cm(0.2), cm(200))
		r.Start = in.Start
	case in.Dough.IsZero():
		p.Required("Start", "the height of the dough when put in, or its weight in Dough")
	default:
		v, err := DoughVolume(in.Dough, in.Density)
		p.Join("", err)
		if err == nil && area > 0 {
			r.Start = cm(v.Likely.Milliliters() / area)
			quantity.Check(&p, "Dough", r.Start, cm(0.2), cm(200))
		}
	}
	if len(in.Rises) == 0 {
		for _, s := range []string{"30 %", "50 %", "75 %", "100 %"} {
			in.Rises = append(in.Rises, quantity.MustPercent(s))
		}
	}
	if len(in.Rises) > 50 {
		p.Add("Rises", strconv.Itoa(len(in.Rises))+" marks", "at most 50", quantity.ErrOutOfRange)
		return FillLine{}, p.Err()
	}
	for i, x := range in.Rises {
		quantity.Check(&p, at("Rises", i), x, quantity.MustPercent("1 %"), quantity.MustPercent("500 %"))
	}
	if err := p.Err(); err != nil {
		return FillLine{}, err
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
			p.Required("Diameter", "the inside diameter, or Width and Depth of a square container")
		} else if quantity.Check(p, "Diameter", in.Diameter, low, high) {
			return math.Pi / 4 * in.Diameter.Centimeters() * in.Diameter.Centimeters()
		}
		return 0
	}
	ok := quantity.Check(p, "Width", in.Width, low, high)
	ok = quantity.Check(p, "Depth", in.Depth, low, high) && ok
	if !in.Diameter.IsZero() {
		p.Add("Diameter", in.Diameter.String(), "either a diameter or width and depth", quantity.ErrInconsistent)
		return 0
	}
	if !ok {
		return 0
	}
	return in.Width.Centimeters() * in.Depth.Centimeters()
}

// String lists the marks.
func (r FillLine) String() string {
	if len(r.Marks) == 0 {
		return "no marks"
	}
	text := "start at " + r.Start.Text(quantity.Centimeter, 1)
	for _, m := range r.Marks {
		text += ", +" + m.Rise.String() + " at " + m.Height.Text(quantity.Centimeter, 1)
		if m.Above {
			text += " (above the rim)"
		}
	}
	return text
}

// Working derives the start and the marks.
func (r FillLine) Working() working.Working {
	w := working.Working{Title: "Marks on a straight-sided container"}
	if len(r.Marks) == 0 {
		return w
	}
	start := decimals(r.Start.Centimeters(), 4)
	if !r.Measured {
		in := r.in
		floor := working.Step{Name: "area of the floor", Symbol: "A", Value: decimals(r.area, 4) + " cm²", Source: sources.CylinderGeometry}
		if in.Diameter.IsZero() {
			floor.Formula = "a × b"
			floor.Where = []working.Binding{
				{Symbol: "a", Meaning: "width", Value: in.Width.Text(quantity.Centimeter, 4)},
				{Symbol: "b", Meaning: "depth", Value: in.Depth.Text(quantity.Centimeter, 4)},
			}
			floor.Numbers = decimals(in.Width.Centimeters(), 4) + " × " + decimals(in.Depth.Centimeters(), 4)
		} else {
			d := decimals(in.Diameter.Centimeters(), 4)
			floor.Formula, floor.Numbers = "π ÷ 4 × d × d", "π ÷ 4 × "+d+" × "+d
			floor.Where = []working.Binding{{Symbol: "d", Meaning: "inside diameter", Value: d + " cm"}}
		}
		floor.Tolerance = 1e-4 * math.Sqrt(r.area) * 2
		density := in.Density
		if density == 0 {
			density = densityLikely
		}
		w.Steps = append(w.Steps, floor, working.Step{
			Name: "height of the dough at the start", Symbol: "h₀", Formula: "m ÷ ρ ÷ A",
			Where: []working.Binding{
				{Symbol: "m", Meaning: "dough", Value: in.Dough.String()},
				{Symbol: "ρ", Meaning: "density of the mixed dough", Value: decimals(density, 4) + " g/mL"},
			},
			Numbers: bareNumber(in.Dough.String()) + " ÷ " + decimals(density, 4) + " ÷ " +
				decimals(r.area, 4), Value: decimals(r.Start.Centimeters(), 3) + " cm",
			Tolerance: r.Start.Centimeters()*(1e-4+1e-4/r.area) + 1e-4, Source: sources.DoughDensity,
		})
	}
	for i, m := range r.Marks {
		n := strconv.Itoa(i + 1)
		s := working.Step{
			Name: "mark " + n, Symbol: "h_" + n, Formula: "h₀ × (1 + r ÷ 100)",
			Where: []working.Binding{
				{Symbol: "h₀", Meaning: "start", Value: start + " cm"},
				{Symbol: "r", Meaning: "rise", Value: m.Rise.String()},
			},
			Numbers: start + " × (1 + " + points(m.Rise) + " ÷ 100)",
			Value:   decimals(m.Height.Centimeters(), 3) + " cm", Tolerance: 1e-3, Source: sources.CylinderGeometry,
		}
		if m.Above {
			s.Note = "above the rim"
		}
		w.Steps = append(w.Steps, s)
	}
	return w
}

// SampleJar is a small straight-sided jar in which a piece of the dough shows the rise, the input
// of [FillSample].
type SampleJar struct {
	Diameter quantity.Length
	Height   quantity.Length // inside
	// Rise is the most that should still fit; zero means 100 %, double.
	Rise    quantity.Percent
	Density float64 // kg/L; zero means 1.12
}

// JarSample is the answer of [FillSample].
type JarSample struct {
	// Dough is how much to put in, with a tenth of the height to spare at the end of the rise.
	Dough quantity.Mass
	FillLine
	// Notes say how far the sample speaks for the bulk.
	Notes []working.Message
}

// FillSample answers how much dough to put into a small jar so that the whole rise can be read on
// it, and where to mark it.
//
//	h₀ = 0.9·H ÷ (1 + rise);  m = ρ·π·d²·h₀ ÷ 4
//
// The jar must stand where the dough stands, against it if possible: a small sample follows the
// room within half an hour, a bulk of kilograms takes hours, so that it runs ahead in a warm room
// and behind in a cold one. Diameter 2 to 20 cm, height 3 to 40 cm. Errors: ErrRequired,
// ErrOutOfRange. Source: geometry; density from memory.
func FillSample(in SampleJar) (JarSample, error) {
	var p quantity.Problems
	cm := quantity.Centimeters
	check := func(path string, l, low, high quantity.Length) {
		if l.IsZero() {
			p.Required(path, low.Text(quantity.Centimeter, 0)+" to "+high.Text(quantity.Centimeter, 0))
		} else {
			quantity.Check(&p, path, l, low, high)
		}
	}
	check("Diameter", in.Diameter, cm(2), cm(20))
	check("Height", in.Height, cm(3), cm(40))
	if in.Rise.IsZero() {
		in.Rise = wholeFlour
	}
	quantity.Check(&p, "Rise", in.Rise, quantity.MustPercent("10 %"), quantity.MustPercent("500 %"))
	if in.Density == 0 {
		in.Density = densityLikely
	}
	p.Float("Density", in.Density, 0.5, 1.4, "kg/L")
	if err := p.Err(); err != nil {
		return JarSample{}, err
	}
	start := 0.9 * in.Height.Centimeters() / (1 + in.Rise.Fraction())
	dough, _ := quantity.Grams(in.Density * math.Pi / 4 * in.Diameter.Centimeters() * in.Diameter.Centimeters() * start).RoundDown(quantity.Grams(1))
	if dough.IsZero() {
		p.Add("Height", in.Height.String(), "a jar that holds a gram of dough", quantity.ErrOutOfRange)
		return JarSample{}, p.Err()
	}
	lines, err := FillLines(RiseContainer{Diameter: in.Diameter, Height: in.Height, Dough: dough, Density: in.Density})
	if err != nil {
		return JarSample{}, err
	}
	return JarSample{Dough: dough, FillLine: lines, Notes: []working.Message{
		working.Say("keep the jar against the bulk: alone it follows the room much faster and tells another story"),
		working.Say("press the sample flat and mark its own height: the reckoned start is within about 7 %"),
		working.Say("throw the sample back into the dough, or away: it is not an extra loaf"),
	}}, nil
}

// String says how much to put in and where to mark.
func (r JarSample) String() string {
	if r.Dough.IsZero() {
		return "no sample"
	}
	return "put in " + r.Dough.Text(quantity.Gram, 0) + ": " + r.FillLine.String()
}
