package vessel

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/enum"
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
	// WholeGrainTin is a loaf of half to all whole-grain wheat.
	WholeGrainTin
	// RyeTin is a loaf of half to all rye.
	RyeTin
	// EnrichedTin is a loaf rich in eggs and butter.
	EnrichedTin
	// ShallowTinWhite is a white loaf of a home tin lower than 0.7 of its width, which it tops by a high dome.
	ShallowTinWhite
	// SourdoughTin is an open loaf of about 75 % water raised by levain.
	SourdoughTin
	// HomeMilledTin is a loaf of freshly milled whole grain alone.
	HomeMilledTin
	// GlutenFreeTin is a batter without gluten.
	GlutenFreeTin
)

var tinLoaves = enum.Of[TinLoaf]("loaf of a tin", "open white", "wholesale white", "lidded", "whole grain", "rye",
	"enriched", "shallow white", "sourdough", "home-milled", "gluten-free")

// String names the loaf: "open white".
func (t TinLoaf) String() string { return tinLoaves.String(t) }

// MarshalText implements encoding.TextMarshaler.
func (t TinLoaf) MarshalText() ([]byte, error) { return tinLoaves.Marshal(t) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (t *TinLoaf) UnmarshalText(text []byte) error { return tinLoaves.Unmarshal(t, text) }

// TinFactor is the volume of tin for each gram of dough, in mL/g, as a range.
type TinFactor struct {
	Low    float64 `json:"low"`
	Likely float64 `json:"likely"`
	High   float64 `json:"high"`
	// Own reports that it was found from somebody's own tin; otherwise it is that of the loaf.
	Own    bool           `json:"own,omitzero"`
	Loaf   TinLoaf        `json:"loaf"`
	Source working.Source `json:"source"`
}

// Factor answers how much tin a gram of dough takes.
//
// Published are 7.6 in³/oz (4.39 mL/g) for the wholesale white loaf, 3.06 mL/g for a home sandwich loaf, 1.54 to
// 1.82 mL/g for freshly milled whole grain, and practitioners' sizes between 1.9 and 3.6 mL/g for home tins; the ranges
// for the other loaves are chosen between them. A shallow tin of 9 × 5 × 2.75 in takes 800 to 900 g in the trade,
// 2.25 to 2.5 mL/g: the loaf stands as high above the rim as in it. Sources disagree by style and by who pays for
// volume: fill your own tin once and use [OwnTin]. Errors:
// ErrOutOfRange. Source: named in the answer.
func (t TinLoaf) Factor() (TinFactor, error) {
	var p quantity.Problems
	tinLoaves.Check(&p, "loaf", t)
	if err := p.ErrFor(t); err != nil {
		return TinFactor{}, err
	}
	// 7.6 in³ for an ounce, both exact.
	const wholesale = 7.6 * 16.387064 / 28.349523125
	f := [...][3]float64{
		OpenTinWhite: {2.4, 3.0, 3.5}, WholesaleWhite: {wholesale, wholesale, wholesale}, LiddedTin: {3.6, 3.9, 4.2},
		WholeGrainTin: {1.7, 2.4, 2.9}, RyeTin: {1.4, 1.7, 2.0}, EnrichedTin: {3.0, 3.3, 3.6},
		ShallowTinWhite: {2.2, 2.4, 3.2}, SourdoughTin: {2.4, 2.6, 2.8}, HomeMilledTin: {1.54, 1.67, 1.82},
		GlutenFreeTin: {1.7, 1.85, 2.0},
	}[t]
	out := TinFactor{Low: f[0], Likely: f[1], High: f[2], Loaf: t, Source: sources.TinRanges}
	switch t {
	case WholesaleWhite:
		out.Source = sources.TinWholesale
	case ShallowTinWhite:
		out.Source = sources.TinShallow
	case HomeMilledTin:
		out.Source = sources.TinHomeMilled
	case SourdoughTin, GlutenFreeTin:
		out.Source = sources.FromMemory("mL of tin for a gram: sourdough 2.4 to 2.8, gluten-free batter 1.7 to 2.0")
	case OpenTinWhite, LiddedTin, WholeGrainTin, RyeTin, EnrichedTin:
	}
	return out, nil
}

// OwnTin is a tin that somebody has baked in, with the dough that fills it well.
type OwnTin struct {
	Volume quantity.Volume `json:"volume"` // filled with water to the rim
	Dough  quantity.Mass   `json:"dough"`  // that it takes
}

// Factor answers the tin factor of one's own tin and bread, to use with other tins.
//
//	f = V ÷ m
//
// V is the volume of the tin in mL, m the dough in g. Volume 50 mL to 50 L, factor 1 to 8 mL/g. Errors:
// ErrOutOfRange; ErrInconsistent for a factor that no bread has. Source: algebra.
func (o OwnTin) Factor() (TinFactor, error) {
	var p quantity.Problems
	ok := checkTin(&p, o.Volume)
	ok = quantity.Check(&p, "Dough", o.Dough, quantity.Grams(10), quantity.Kilograms(50)) && ok
	f := 0.0
	if ok {
		if f = o.Volume.Milliliters() / o.Dough.Grams(); f < 1 || f > 8 {
			p.Add("Dough", quantity.Tell("vessel.got_in", "%v in %v", o.Dough, o.Volume),
				quantity.Tell("vessel.want_1_to_8_ml_tin", "1 to 8 mL of tin for each gram of dough"),
				quantity.ErrInconsistent)
		}
	}
	if err := p.ErrFor(o); err != nil {
		return TinFactor{}, err
	}
	return TinFactor{Low: f, Likely: f, High: f, Own: true, Source: working.Algebra()}, nil
}

// Fill answers how much dough a tin takes.
//
//	m = V ÷ f
//
// V is the tin's volume, best measured with water, f the tin factor; the range is that of the
// factor. Volume 50 mL to 50 L. Errors: ErrOutOfRange. Source: that of the factor.
func (f TinFactor) Fill(tin quantity.Volume) (VesselFill, error) {
	var p quantity.Problems
	f.check(&p)
	checkTin(&p, tin)
	if err := p.ErrFor(f); err != nil {
		return VesselFill{}, err
	}
	out := fillOf(tin, [3]float64{f.Low, f.Likely, f.High}, f.asked(), f.Source)
	out.loaf = f.Loaf
	return out, nil
}

// Tin answers how large a tin a dough needs: V = m · f, the inverse of [TinFactor.Fill]. Dough
// 10 g to 20 kg. Errors: ErrOutOfRange.
func (f TinFactor) Tin(dough quantity.Mass) (VesselVolume, error) {
	var p quantity.Problems
	f.check(&p)
	quantity.Check(&p, "Dough", dough, quantity.Grams(10), quantity.Kilograms(20))
	if err := p.ErrFor(f); err != nil {
		return VesselVolume{}, err
	}
	out := volumeFor(dough, [3]float64{f.Low, f.Likely, f.High}, f.asked(), f.Source)
	out.loaf = f.Loaf
	return out, nil
}

func (f TinFactor) asked() asked {
	if f.Own {
		return forOwnTin
	}
	return forTin
}

func (f TinFactor) check(p *quantity.Problems) {
	ok := p.Float("Low", f.Low, 1, 8, "mL/g")
	ok = p.Float("High", f.High, 1, 8, "mL/g") && ok
	if ok {
		p.Float("Likely", f.Likely, f.Low, f.High, "mL/g")
	}
}

func checkTin(p *quantity.Problems, v quantity.Volume) bool {
	return quantity.Check(p, "Volume", v, quantity.Milliliters(50), quantity.Liters(50))
}

// TinBox is a tin with flat sides: a box, or a tapered one when its base is given.
type TinBox struct {
	Length quantity.Length `json:"length"` // inside, at the rim
	Width  quantity.Length `json:"width"`
	Height quantity.Length `json:"height"`
	// BaseLength and BaseWidth are those of the floor; zero means those of the rim.
	BaseLength quantity.Length `json:"base_length,omitzero"`
	BaseWidth  quantity.Length `json:"base_width,omitzero"`
}

// shallowBelow is the height over the width of a tin from which the factor of an open tin holds. Judgment: home tins of
// 8 × 4 and 9 × 5 in stand at 0.55 to 0.63, bakers' tins of 4 in at 1.
const shallowBelow = 0.7

// Fill answers how much dough this tin takes: [TinFactor.Fill] of its volume. An open white loaf in a tin lower than
// 0.7 of its width is taken as [ShallowTinWhite], and the answer says so. Errors: as [TinBox.Volume] and
// [TinLoaf.Factor].
func (b TinBox) Fill(t TinLoaf) (VesselFill, error) {
	v, err := b.Volume()
	if err != nil {
		return VesselFill{}, err
	}
	if t == OpenTinWhite && b.Height.Centimeters() < shallowBelow*b.Width.Centimeters() {
		t = ShallowTinWhite
	}
	f, err := t.Factor()
	if err != nil {
		return VesselFill{}, err
	}
	return f.Fill(v)
}

// Volume answers the volume of a tin with flat sides.
//
//	V = h ÷ 6 · (A_rim + A_floor + 4 · A_middle)
//
// A are the areas at the rim, the floor and half way, h the height; a box is length · width · height. Rounded
// corners and flutes take some more: fill it with water and weigh the water. Sides 1 cm to 2 m, a base no larger than
// the rim. Errors: ErrOutOfRange. Source: geometry (prismatoid).
func (b TinBox) Volume() (quantity.Volume, error) {
	var p quantity.Problems
	low, high := quantity.Centimeters(1), quantity.Centimeters(200)
	side := func(rim string, of quantity.Length, base string, at *quantity.Length) {
		most := high
		if quantity.Check(&p, rim, of, low, high) {
			most = of
		}
		if at.IsZero() {
			*at = of
		} else {
			quantity.Check(&p, base, *at, low, most)
		}
	}
	side("Length", b.Length, "BaseLength", &b.BaseLength)
	side("Width", b.Width, "BaseWidth", &b.BaseWidth)
	quantity.Check(&p, "Height", b.Height, low, high)
	if err := p.ErrFor(b); err != nil {
		return quantity.Volume{}, err
	}
	l, w, k, n := b.Length.Centimeters(), b.Width.Centimeters(), b.BaseLength.Centimeters(), b.BaseWidth.Centimeters()
	return quantity.Milliliters(b.Height.Centimeters() / 6 * (l*w + k*n + (l+k)*(w+n))), nil
}
