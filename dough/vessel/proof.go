package vessel

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
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

var vesselNames = []string{"basket", "lined bowl"}

// String names the vessel: "lined bowl".
func (v ProofVessel) String() string { return nameOf(vesselNames, int(v)) }

// AppendText implements encoding.TextAppender; a value without a name is an error.
func (v ProofVessel) AppendText(b []byte) ([]byte, error) { return appendName(b, vesselNames, int(v)) }

// MarshalText implements encoding.TextMarshaler: "basket".
func (v ProofVessel) MarshalText() ([]byte, error) { return v.AppendText(nil) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads what String prints.
func (v *ProofVessel) UnmarshalText(text []byte) error {
	i, err := readName(text, vesselNames)
	if err == nil {
		*v = ProofVessel(i)
	}
	return err
}

// Volume for each gram of dough, mL/g. Basket: proofed dough of 1.9 to 2.2 mL/g and a tenth to
// spare (judgment). Lined bowl: a bowl of 1.5 quarts for about 950 g (common practice), which the
// loaf tops by a dome.
const (
	basketLow  = 1.9 * 1.1
	basketHigh = 2.2 * 1.1
	bowlRatio  = 1.5 * 946.352946 / 950
	bowlSpread = 0.1
)

// RoundBasket is a round basket with the doughs practitioners put into it.
type RoundBasket struct {
	Diameter  quantity.Length
	Low, High quantity.Mass
	// Fits reports whether the dough asked about lies between.
	Fits bool
}

// ProofSize is the answer of [ProofVesselFor].
type ProofSize struct {
	Volume VesselVolume
	// Round lists the published round baskets, whatever the vessel.
	Round []RoundBasket

	dough  quantity.Mass
	vessel ProofVessel
	ratio  [3]float64
}

// ProofVesselFor answers how large a basket or lined bowl a dough needs for its last proof.
//
//	V = v · m     v = 2.1 to 2.4 mL/g for a basket, about 1.5 mL/g for a lined bowl
//
// m is the dough of one loaf. The basket holds the proofed dough with a tenth to spare; over the
// rim of a lined bowl the loaf domes. The round baskets are those practitioners name by diameter;
// makers' own labels differ. Dough 50 g to 5 kg. Errors: ErrOutOfRange. Source: judgment and common
// practice, named in the working.
func ProofVesselFor(dough quantity.Mass, vessel ProofVessel) (ProofSize, error) {
	var p quantity.Problems
	quantity.Check(&p, "dough", dough, quantity.Grams(50), quantity.Kilograms(5))
	if vessel != ProofBasket && vessel != LinedBowl {
		p.Add("vessel", vessel.String(), "basket or lined bowl", quantity.ErrOutOfRange)
	}
	if err := p.Err(); err != nil {
		return ProofSize{}, err
	}
	r := ProofSize{dough: dough, vessel: vessel, ratio: [3]float64{basketLow, (basketLow + basketHigh) / 2, basketHigh}}
	if vessel == LinedBowl {
		r.ratio = [3]float64{bowlRatio * (1 - bowlSpread), bowlRatio, bowlRatio * (1 + bowlSpread)}
	}
	ml := func(i int) quantity.Volume { return quantity.Milliliters(dough.Grams() * r.ratio[i]) }
	r.Volume = VesselVolume{Low: ml(0), Likely: ml(1), High: ml(2)}
	for _, b := range []struct{ inches, low, high float64 }{{8, 0.5, 1}, {9, 1, 2}, {10, 2, 3}, {11.75, 3, 4}} {
		rb := RoundBasket{Diameter: quantity.Inches(b.inches), Low: quantity.Pounds(b.low), High: quantity.Pounds(b.high)}
		rb.Fits = dough.Compare(rb.Low) >= 0 && dough.Compare(rb.High) <= 0
		r.Round = append(r.Round, rb)
	}
	return r, nil
}

// DoughForVessel answers the largest dough for a basket or lined bowl of a volume, the inverse of
// [ProofVesselFor]: m = V ÷ v, as a range. Volume 0.1 to 20 L. Errors: ErrOutOfRange.
func DoughForVessel(v quantity.Volume, vessel ProofVessel) (low, likely, high quantity.Mass, err error) {
	var p quantity.Problems
	quantity.Check(&p, "v", v, quantity.Liters(0.1), quantity.Liters(20))
	if vessel != ProofBasket && vessel != LinedBowl {
		p.Add("vessel", vessel.String(), "basket or lined bowl", quantity.ErrOutOfRange)
	}
	if err := p.Err(); err != nil {
		return low, likely, high, err
	}
	l, m, h := basketLow, (basketLow+basketHigh)/2, basketHigh
	if vessel == LinedBowl {
		l, m, h = bowlRatio*(1-bowlSpread), bowlRatio, bowlRatio*(1+bowlSpread)
	}
	at := func(ratio float64) quantity.Mass { return quantity.Grams(v.Milliliters() / ratio) }
	return at(h), at(m), at(l), nil
}

// String prints the volume.
func (r ProofSize) String() string {
	if r.dough.IsZero() {
		return "no vessel"
	}
	return "a " + r.vessel.String() + " of " + r.Volume.String() + " for " + r.dough.Text(quantity.Gram, 0)
}

// Working derives the volume.
func (r ProofSize) Working() working.Working {
	w := working.Working{Title: "Vessel for the last proof"}
	if r.dough.IsZero() {
		return w
	}
	source := sources.BasketVolume
	if r.vessel == LinedBowl {
		source = sources.Practice("a bowl of 1.5 quarts for a loaf of about 950 g of dough")
	}
	for i, name := range []string{"least", "likely", "most"} {
		v := [3]quantity.Volume{r.Volume.Low, r.Volume.Likely, r.Volume.High}[i]
		w.Steps = append(w.Steps, working.Step{
			Name: name + " volume", Symbol: "V_" + name, Formula: "m × v",
			Where: []working.Binding{
				{Symbol: "m", Meaning: "dough of one loaf", Value: r.dough.String()},
				{Symbol: "v", Meaning: "volume for each gram", Value: decimals(r.ratio[i], 6) + " mL/g"},
			},
			Numbers: bareNumber(r.dough.String()) + " × " + decimals(r.ratio[i], 6),
			Value:   decimals(v.Milliliters(), 1) + " mL", Tolerance: 1e-6 * r.dough.Grams(), Source: source,
		})
	}
	return w
}
