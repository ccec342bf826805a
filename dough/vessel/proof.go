package vessel

import (
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

// Volume for each gram of dough, mL/g. Basket: proofed dough of 1.9 to 2.2 mL/g and a tenth to
// spare (judgment). Lined bowl: a bowl of 1.5 quarts for about 950 g (common practice), which the
// loaf tops by a dome.
const (
	basketLow  = 1.9 * 1.1
	basketHigh = 2.2 * 1.1
	bowlRatio  = 1.5 * 946.352946 / 950
	bowlSpread = 0.1
)

// Proofing is a loaf and what it proofs in: give the dough to learn the size of the vessel, the volume to learn the
// dough.
type Proofing struct {
	Vessel ProofVessel     `json:"vessel"`
	Dough  quantity.Mass   `json:"dough,omitzero"`  // of one loaf
	Volume quantity.Volume `json:"volume,omitzero"` // filled to the rim
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
//	V = v · m     v = 2.09 to 2.42 mL/g for a basket, about 1.49 mL/g for a lined bowl
//
// m is the dough of one loaf. The basket holds the proofed dough with a tenth to spare; over the
// rim of a lined bowl the loaf domes, which is why the bowl is smaller. The round baskets are those practitioners
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

// Fill answers the largest dough for a basket or lined bowl of a volume, the inverse of [Proofing.Size]: m = V ÷ v.
// Volume 0.1 to 20 L. Errors: ErrOutOfRange.
func (in Proofing) Fill() (VesselFill, error) {
	var p quantity.Problems
	proofVessels.Check(&p, "Vessel", in.Vessel)
	quantity.Check(&p, "Volume", in.Volume, quantity.Liters(0.1), quantity.Liters(20))
	if err := p.ErrFor(in); err != nil {
		return VesselFill{}, err
	}
	ratio, of, says := in.Vessel.ratio()
	return fillOf(in.Volume, ratio, of, says), nil
}

// ratio is the volume for each gram of dough in mL: least, likely, most.
func (v ProofVessel) ratio() ([3]float64, asked, working.Source) {
	if v == LinedBowl {
		return [3]float64{bowlRatio * (1 - bowlSpread), bowlRatio, bowlRatio * (1 + bowlSpread)}, forBowl,
			sources.Practice("a bowl of 1.5 quarts for a loaf of about 950 g of dough")
	}
	return [3]float64{basketLow, (basketLow + basketHigh) / 2, basketHigh}, forBasket, sources.BasketVolume
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
