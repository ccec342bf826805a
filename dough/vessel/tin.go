package vessel

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// TinLoaf says what is baked in a tin.
type TinLoaf int

// The loaves.
const (
	// OpenTinWhite is a white loaf of an open tin, at home or in a small bakery.
	OpenTinWhite TinLoaf = iota
	// WholesaleWhite is the light, open-top white loaf of a large bakery.
	WholesaleWhite
	// LiddedTin is a tin with its lid on.
	LiddedTin
	// WholeGrainTin is a whole-wheat loaf.
	WholeGrainTin
	// RyeTin is a loaf of mostly rye.
	RyeTin
	// EnrichedTin is a loaf rich in eggs and butter.
	EnrichedTin
	tinEnd
)

var tinNames = []string{"open white", "wholesale white", "lidded", "whole grain", "rye", "enriched"}

// String names the loaf.
func (t TinLoaf) String() string { return nameOf(tinNames, int(t)) }

// AppendText implements encoding.TextAppender; a value without a name is an error.
func (t TinLoaf) AppendText(b []byte) ([]byte, error) { return appendName(b, tinNames, int(t)) }

// MarshalText implements encoding.TextMarshaler: "open white".
func (t TinLoaf) MarshalText() ([]byte, error) { return t.AppendText(nil) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what String prints.
func (t *TinLoaf) UnmarshalText(text []byte) error {
	i, err := readName(text, tinNames)
	if err == nil {
		*t = TinLoaf(i)
	}
	return err
}

// TinFactor is the volume of tin for each gram of dough, in mL/g, as a range.
type TinFactor struct {
	Loaf      TinLoaf
	Low, High float64
	Source    working.Source
}

// TinFactorOf answers how much tin a gram of dough takes.
//
// Published are 7.6 in³/oz (4.39 mL/g) for the wholesale white loaf, and practitioners' sizes
// between 1.9 and 3.6 mL/g for home tins; the ranges for the other loaves are chosen between them.
// Errors: ErrOutOfRange. Source: named in the answer.
func TinFactorOf(loaf TinLoaf) (TinFactor, error) {
	if loaf < 0 || loaf >= tinEnd {
		return TinFactor{}, &quantity.InputError{GoPath: "loaf", Got: loaf.String(), Want: oneOf(tinNames), Err: quantity.ErrOutOfRange}
	}
	// 7.6 in³ for an ounce, both exact.
	const wholesale = 7.6 * 16.387064 / 28.349523125
	f := [tinEnd][2]float64{{3.0, 3.5}, {wholesale, wholesale}, {3.6, 4.0}, {2.4, 2.8}, {1.6, 1.9}, {3.0, 3.4}}[loaf]
	t := TinFactor{loaf, f[0], f[1], sources.TinRanges}
	if loaf == WholesaleWhite {
		t.Source = sources.TinWholesale
	}
	return t, nil
}

// TinBox answers the volume of a tin with straight sides: length · width · height. A fluted or
// tapered tin holds less (a sixth less was measured): fill it with water and weigh the water. Sides
// 1 cm to 2 m. Errors: ErrOutOfRange. Source: geometry.
func TinBox(length, width, height quantity.Length) (quantity.Volume, error) {
	var p quantity.Problems
	low, high := quantity.Centimeters(1), quantity.Centimeters(200)
	quantity.Check(&p, "length", length, low, high)
	quantity.Check(&p, "width", width, low, high)
	quantity.Check(&p, "height", height, low, high)
	if err := p.Err(); err != nil {
		return quantity.Volume{}, err
	}
	return quantity.Milliliters(length.Centimeters() * width.Centimeters() * height.Centimeters()), nil
}

// TinFill is the answer of [DoughForTin].
type TinFill struct {
	Low, High quantity.Mass
	Factor    TinFactor

	tin quantity.Volume
}

// DoughForTin answers how much dough a tin takes.
//
//	m = V ÷ f
//
// V is the tin's volume, best measured with water, f the tin factor; the range is that of the
// factor. Volume 50 mL to 50 L. Errors: ErrOutOfRange. Source: [TinFactorOf].
func DoughForTin(tin quantity.Volume, loaf TinLoaf) (TinFill, error) {
	var p quantity.Problems
	quantity.Check(&p, "tin", tin, quantity.Milliliters(50), quantity.Liters(50))
	f, err := TinFactorOf(loaf)
	p.Join("", err)
	if err := p.Err(); err != nil {
		return TinFill{}, err
	}
	return TinFill{quantity.Grams(tin.Milliliters() / f.High), quantity.Grams(tin.Milliliters() / f.Low), f, tin}, nil
}

// TinForDough answers how large a tin a dough needs: V = m · f, the inverse of [DoughForTin]. Dough
// 10 g to 20 kg. Errors: ErrOutOfRange.
func TinForDough(dough quantity.Mass, loaf TinLoaf) (VesselVolume, error) {
	var p quantity.Problems
	quantity.Check(&p, "dough", dough, quantity.Grams(10), quantity.Kilograms(20))
	f, err := TinFactorOf(loaf)
	p.Join("", err)
	if err := p.Err(); err != nil {
		return VesselVolume{}, err
	}
	ml := func(x float64) quantity.Volume { return quantity.Milliliters(dough.Grams() * x) }
	middle := (f.Low + f.High) / 2
	return VesselVolume{ml(f.Low), ml(middle), ml(f.High), vesselBasis{dough, [3]float64{f.Low, middle, f.High}, "tin factor, " + loaf.String(), f.Source, "the middle of the factors"}}, nil
}

// String prints "579 to 676 g of dough".
func (r TinFill) String() string {
	if r.tin.IsZero() {
		return "no tin"
	}
	if r.Low == r.High {
		return r.Low.Text(quantity.Gram, 0) + " of dough"
	}
	return bareNumber(r.Low.Text(quantity.Gram, 0)) + " to " + r.High.Text(quantity.Gram, 0) + " of dough"
}

// Working derives the weights.
func (r TinFill) Working() working.Working {
	w := working.Working{Title: "Dough for a tin"}
	if r.tin.IsZero() {
		return w
	}
	step := func(name, symbol string, f float64, m quantity.Mass) working.Step {
		return working.Step{
			Name: name, Symbol: symbol, Formula: "V ÷ f",
			Where: []working.Binding{
				{Symbol: "V", Meaning: "volume of the tin", Value: decimals(r.tin.Milliliters(), 6) + " mL"},
				{Symbol: "f", Meaning: "tin factor, " + r.Factor.Loaf.String(), Value: decimals(f, 6) + " mL/g"},
			},
			Numbers: decimals(r.tin.Milliliters(), 6) + " ÷ " +
				decimals(f, 6), Value: m.Text(quantity.Gram, 2), Tolerance: 1e-6 * m.Grams(), Source: r.Factor.Source,
		}
	}
	w.Steps = []working.Step{step("least dough", "m_low", r.Factor.High, r.Low), step("most dough", "m_high", r.Factor.Low, r.High)}
	return w
}
