package vessel

import (
	"math"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// SampleJar is a small straight-sided jar in which a piece of the dough shows the rise, the input
// of [SampleJar.Sample].
type SampleJar struct {
	Diameter quantity.Length `json:"diameter"`
	Height   quantity.Length `json:"height"` // inside
	// Rise is the most that should still fit; zero means 100 %, double.
	Rise    quantity.Percent `json:"rise,omitzero"`
	Density float64          `json:"density,omitzero"` // kg/L; zero means 1.12
}

// JarSample is the answer of [SampleJar.Sample].
type JarSample struct {
	answer

	// Dough is how much to put in, with about a tenth of the height to spare at the end of the rise.
	Dough quantity.Mass `json:"dough"`
	RiseMarks
	// Notes say how far the sample speaks for the bulk.
	Notes []working.Message `json:"notes"`

	jar SampleJar
}

// Sample answers how much dough to put into a small jar so that the whole rise can be read on
// it, and where to mark it.
//
//	h₀ = 0.9·H ÷ (1 + rise);  m = ρ·π·d²·h₀ ÷ 4
//
// The jar must stand where the dough stands, against it if possible: a small sample follows the
// room within half an hour, a bulk of kilograms takes hours, so that it runs ahead in a warm room
// and behind in a cold one. Diameter 2 to 20 cm, height 3 to 40 cm. Errors: ErrRequired,
// ErrOutOfRange. Source: geometry; density from memory.
func (in SampleJar) Sample() (JarSample, error) {
	var p quantity.Problems
	cm := quantity.Centimeters
	check := func(path string, l, low, high quantity.Length) {
		if l.IsZero() {
			p.Required(path, quantity.Tell("vessel.want_to", "%s to %s", low.Text(quantity.Centimeter, 0),
				high.Text(quantity.Centimeter, 0)))
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
	if err := p.ErrFor(in); err != nil {
		return JarSample{}, err
	}
	start := 0.9 * in.Height.Centimeters() / (1 + in.Rise.Fraction())
	area := math.Pi / 4 * in.Diameter.Centimeters() * in.Diameter.Centimeters()
	// The smallest jar, with the lightest dough that rises most, takes 0.7 g.
	dough, _ := quantity.Grams(in.Density * area * start).RoundTo(quantity.Grams(1))
	marks, err := RiseContainer{Diameter: in.Diameter, Height: in.Height, Dough: dough, Density: in.Density}.Marks()
	if err != nil {
		return JarSample{}, err
	}
	return JarSample{Dough: dough, RiseMarks: marks, jar: in, Notes: []working.Message{
		working.Tell("vessel.jar_against_bulk",
			"keep the jar against the bulk: alone it follows the room much faster and tells another story"),
		working.Tell("vessel.jar_mark_start",
			"press the sample flat and mark its own height: the reckoned start is within about 7 %%"),
		working.Tell("vessel.jar_throw_back", "throw the sample back into the dough, or away: it is not an extra loaf"),
	}}, nil
}

// String is the headline of the report.
func (r JarSample) String() string { return r.Report().Headline.String() }

// Report says how much to put in and where to mark.
func (r JarSample) Report() report.Report {
	if r.Dough.IsZero() {
		return report.Report{Headline: working.Tell("vessel.no_sample", "no sample")}
	}
	return report.Report{
		Headline: working.Tell("vessel.sample", "Put %v of dough into the jar", r.Dough),
		Sections: []report.Section{{Key: "marks", Blocks: []report.Block{r.table(), report.List(r.Notes)}}},
		Sources:  []working.Source{sources.CylinderGeometry, sources.DoughDensity},
	}
}

// Working derives the dough and the marks.
func (r JarSample) Working() working.Working {
	d := working.Derive(working.Tell("vessel.derive_sample", "Sample of the dough in a jar"))
	if r.Dough.IsZero() {
		return d.Working()
	}
	density := working.Given("ρ", working.Tell("vessel.symbol_density", "density of the mixed dough"),
		working.Amount(r.jar.Density, "g/mL", 2))
	diameter := working.Given("d", working.Tell("vessel.symbol_diameter", "inside diameter"), r.jar.Diameter)
	height := working.Given("H", working.Tell("vessel.symbol_height", "height of the jar"), r.jar.Height)
	rise := working.Given("r", working.Tell("vessel.symbol_held_rise", "rise that the jar is to hold"), r.jar.Rise)
	start := d.Find(working.Finding{
		Name: working.Tell("vessel.sample_height",
			"height of the sample"), Symbol: "h_sample", Unit: working.Centimeter, Decimals: 2,
		By:     height.Times(working.Num(0.9)).Over(working.Num(1).Plus(rise.Share())),
		Note:   working.Tell("vessel.tenth_to_spare", "with a tenth of the height to spare"),
		Source: sources.CylinderGeometry,
	})
	d.Find(working.Finding{
		Name:   working.Tell("vessel.sample_dough", "dough to put in"),
		Symbol: "m", Is: r.Dough, Decimals: working.WholeNumber,
		By:     density.Times(working.Pi()).Over(working.Num(4)).Times(diameter).Times(diameter).Times(start),
		Source: sources.CylinderGeometry,
	})
	d.Add(r.RiseMarks.Working())
	return d.Working()
}
