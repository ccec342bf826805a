package vessel

import (
	"math"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/enum"
	"example.org/maslin/internal/sources"
)

// ProofVessel says in what a shaped loaf proofs.
type ProofVessel int

// The vessels.
const (
	// ProofBasket is a proofing basket that the risen dough should fill and not top.
	ProofBasket ProofVessel = iota
	// LinedBowl is a bowl lined with a cloth, over whose rim the loaf may dome.
	LinedBowl
)

var proofVessels = enum.Of[ProofVessel]("vessel for the proof", "basket", "lined bowl")

// String names the vessel: "lined bowl".
func (v ProofVessel) String() string { return proofVessels.String(v) }

// MarshalText implements encoding.TextMarshaler.
func (v ProofVessel) MarshalText() ([]byte, error) { return proofVessels.Marshal(v) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (v *ProofVessel) UnmarshalText(text []byte) error { return proofVessels.Unmarshal(v, text) }

// Volume for each gram of dough, mL/g. Both hold the same proofed dough of about 2.0 mL/g. Basket: makers' labels for
// round baskets of known depth lie between 1.6 and 2.6. Lined bowl: at its smallest a bowl of 1.5 quarts for about
// 950 g (common practice), which the loaf tops by a dome of a quarter of itself; likely a tenth (judgment).
var (
	basketRatio = [...]float64{1.6, 2.0, 2.6}
	bowlRatio   = [...]float64{1.5 * 946.352946 / 950, 1.8, 2.6}
)

// Proofing is a loaf and what it proofs in: give the dough to learn the size of the vessel, the volume to learn the
// dough.
type Proofing struct {
	Vessel ProofVessel     `json:"vessel"`
	Dough  quantity.Mass   `json:"dough,omitzero"`  // of one loaf
	Volume quantity.Volume `json:"volume,omitzero"` // filled to the rim
	// Instead of the volume: the inside of a round basket at its rim and its depth, or Length and Width of an oval one.
	Diameter quantity.Length `json:"diameter,omitzero"`
	Length   quantity.Length `json:"length,omitzero"`
	Width    quantity.Length `json:"width,omitzero"`
	Depth    quantity.Length `json:"depth,omitzero"`
}

// RoundBasket is a round basket with the doughs practitioners put into it.
type RoundBasket struct {
	Diameter quantity.Length               `json:"diameter"`
	Dough    quantity.Range[quantity.Mass] `json:"dough"`
	// Fits reports whether the dough asked about lies between.
	Fits bool `json:"fits"`
}

// Size answers how large a basket or lined bowl a dough needs for its last proof.
//
//	V = v · m     v = 1.6 to 2.6 mL/g, likely 2.0, for a basket; 1.5 to 2.6 mL/g, likely 1.8, for a lined bowl
//
// m is the dough of one loaf. Both hold the same proofed dough; over the rim of a lined bowl the loaf domes, which is
// why the bowl may be smaller. The round baskets are those practitioners
// name by diameter; makers' own labels differ. Dough 50 g to 5 kg. Errors: ErrOutOfRange. Source: judgment and
// common practice, named in the working.
func (in Proofing) Size() (VesselVolume, error) {
	var p quantity.Problems
	proofVessels.Check(&p, "Vessel", in.Vessel)
	quantity.Check(&p, "Dough", in.Dough, quantity.Grams(50), quantity.Kilograms(5))
	if err := p.ErrFor(in); err != nil {
		return VesselVolume{}, err
	}
	ratio, of, says := in.Vessel.ratio()
	v := volumeFor(in.Dough, ratio, of, says)
	for _, b := range []struct{ inches, low, high float64 }{{8, 0.5, 1}, {9, 1, 2}, {10, 2, 3}, {11.75, 3, 4}} {
		rb := RoundBasket{
			Diameter: quantity.Inches(b.inches),
			Dough:    quantity.Range[quantity.Mass]{Low: quantity.Pounds(b.low), High: quantity.Pounds(b.high)},
		}
		rb.Fits = rb.Dough.Contains(in.Dough)
		v.Round = append(v.Round, rb)
	}
	return v, nil
}

// Fill answers how much dough a basket or lined bowl takes, the inverse of [Proofing.Size].
//
//	m = V ÷ v     round V = π·h·(3·d²/4 + h²) ÷ 6     oval V = the round one of its width · l ÷ w
//
// V is the volume, as filled with water or sand, or of the cap of a sphere by diameter d and depth h; an oval basket is
// that of its width w, stretched to its length l. Volume 0.1 to 20 L, sides 8 to 80 cm, depth 3 to 40 cm and at most
// half of the width. Accuracy: a basket with a flat floor holds more than the cap, by up to a third. Errors:
// ErrOutOfRange, ErrRequired, ErrInconsistent for a volume beside sides.
func (in Proofing) Fill() (VesselFill, error) {
	var p quantity.Problems
	proofVessels.Check(&p, "Vessel", in.Vessel)
	v := in.Volume
	if in.Diameter.IsZero() && in.Length.IsZero() && in.Width.IsZero() && in.Depth.IsZero() {
		quantity.Check(&p, "Volume", v, quantity.Liters(0.1), quantity.Liters(20))
	} else {
		v = in.hollow(&p)
	}
	if err := p.ErrFor(in); err != nil {
		return VesselFill{}, err
	}
	ratio, of, says := in.Vessel.ratio()
	return fillOf(v, ratio, of, says), nil
}

// hollow is the volume by the sides.
func (in Proofing) hollow(p *quantity.Problems) quantity.Volume {
	if !in.Volume.IsZero() {
		p.Add("Volume", in.Volume, quantity.Tell("vessel.want_either_volume_or_sides", "either a volume or sides"),
			quantity.ErrInconsistent)
	}
	low, high := quantity.Centimeters(8), quantity.Centimeters(80)
	wide, stretch := in.Diameter.Centimeters(), 1.0
	var ok bool
	if in.Length.IsZero() && in.Width.IsZero() {
		ok = quantity.Check(p, "Diameter", in.Diameter, low, high)
	} else {
		without(p, "Diameter", in.Diameter, quantity.Tell("vessel.want_either_diameter_or_length_and",
			"either a diameter or length and width"))
		ok = quantity.Check(p, "Length", in.Length, low, high)
		ok = quantity.Check(p, "Width", in.Width, low, high) && ok
		wide, stretch = in.Width.Centimeters(), in.Length.Centimeters()/in.Width.Centimeters()
	}
	if !ok || !quantity.Check(p, "Depth", in.Depth, quantity.Centimeters(3), quantity.Centimeters(min(40, wide/2))) {
		return quantity.Volume{}
	}
	h := in.Depth.Centimeters()
	return quantity.Milliliters(stretch * math.Pi * h * (0.75*wide*wide + h*h) / 6)
}

// ratio is the volume for each gram of dough in mL: least, likely, most.
func (v ProofVessel) ratio() ([3]float64, asked, working.Source) {
	if v == LinedBowl {
		return bowlRatio, forBowl, sources.Practice(
			"proofed dough of about 2 cm³/g; at its smallest a bowl of 1.5 quarts for a loaf of about 950 g of dough")
	}
	return basketRatio, forBasket, sources.BasketVolume
}

func roundBaskets(round []RoundBasket) report.Section {
	t := report.Grid{Key: "round_baskets", Columns: []report.GridColumn{
		{Key: "diameter", Title: working.Tell("vessel.column_diameter", "diameter"), Right: true},
		{Key: "dough", Title: working.Tell("vessel.column_dough", "dough")},
		{Key: "fits"},
	}}
	for _, b := range round {
		row := []report.Cell{report.Of(b.Diameter), report.Rounded(b.Dough, 0), {}}
		if b.Fits {
			row[2] = report.Of(working.Tell("vessel.fits", "fits"))
		}
		t.Rows = append(t.Rows, row)
	}
	return report.Section{
		Key: "round_baskets", Title: working.Tell("vessel.round_baskets",
			"Round baskets, as published"), Blocks: []report.Block{t},
	}
}
