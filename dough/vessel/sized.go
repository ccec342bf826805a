package vessel

import (
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/enum"
	"example.org/maslin/internal/sources"
)

// SizedBread is a bread whose dough goes by its size: a sheet by its area, a disk by its diameter, a stick by its
// length.
type SizedBread int

// The breads. Sheets are measured inside, on the floor of the tray; disks with their rim; sticks from end to end.
const (
	PanPizza         SizedBread = iota // a sheet, pulled out thin to thick
	LowFocaccia                        // a sheet, about 2 cm high when baked
	TallFocaccia                       // a sheet, 3 to 4 cm high
	SicilianPizza                      // a sheet, thick and airy
	DeepPanPizza                       // a sheet in a deep rectangular pan
	AmericanPanPizza                   // a sheet in an oiled round or square pan
	ThinCrispPizza                     // a disk, rolled thin
	NeapolitanPizza                    // a disk with a raised rim
	NewYorkPizza                       // a large foldable disk
	AmericanPizza                      // a disk of medium thickness
	Pita                               // a disk that puffs
	Tortilla                           // a disk without leavening, of wheat
	Bun                                // a disk, measured when baked
	Baguette                           // a stick 5 to 6 cm across
	Ficelle                            // a thin stick
	Batard                             // a short, thick loaf
	HotDogRoll                         // a soft roll, measured when baked
	Ciabatta                           // a flat, wide stick
	BreadStick                         // thin and dry
)

var sizedBreads = enum.Of[SizedBread]("bread by size", "pan pizza", "low focaccia", "tall focaccia", "Sicilian pizza",
	"deep pan pizza", "American pan pizza", "thin crisp pizza", "Neapolitan pizza", "New York pizza", "American pizza",
	"pita", "tortilla", "bun", "baguette", "ficelle", "batard", "hot dog roll", "ciabatta", "bread stick")

// String names the bread: "low focaccia".
func (b SizedBread) String() string { return sizedBreads.String(b) }

// MarshalText implements encoding.TextMarshaler.
func (b SizedBread) MarshalText() ([]byte, error) { return sizedBreads.Marshal(b) }

// UnmarshalText implements encoding.TextUnmarshaler; it reads the words that String prints, and no others.
func (b *SizedBread) UnmarshalText(text []byte) error { return sizedBreads.Unmarshal(b, text) }

// measured is by what the dough of a bread goes.
type measured int

const (
	asSheet measured = iota // g/cm² of the floor
	asDisk                  // g/cm² of the disk
	asStick                 // g/cm
)

// sizedRow is the dough for each cm² or cm: least, likely, most, in g.
type sizedRow struct {
	by   measured
	dose [3]float64
	says working.Source
}

// sizedRow is the row of a bread that was checked.
func (b SizedBread) row() sizedRow {
	m := sources.FromMemory
	rows := [...]sizedRow{
		PanPizza: {asSheet, [3]float64{0.50, 0.60, 0.70}, sources.Practice(
			"dough in a tray: 0.5 g/cm² thin, 0.6 medium, 0.7 thick; half of the area in cm² for the Roman way")},
		LowFocaccia:      {asSheet, [3]float64{0.45, 0.50, 0.55}, m("focaccia of 2 cm: 0.45 to 0.55 g/cm²")},
		TallFocaccia:     {asSheet, [3]float64{0.80, 0.90, 1.00}, m("focaccia of 3 to 4 cm: 0.8 to 1.0 g/cm²")},
		SicilianPizza:    {asSheet, [3]float64{0.80, 0.85, 0.90}, m("thick airy sheet pizza: 0.8 to 0.9 g/cm²")},
		DeepPanPizza:     {asSheet, [3]float64{0.90, 0.95, 1.00}, m("pizza in a deep rectangular pan: 0.9 to 1.0 g/cm²")},
		AmericanPanPizza: {asSheet, [3]float64{0.70, 0.75, 0.80}, m("pizza in an oiled pan: 0.7 to 0.8 g/cm²")},
		ThinCrispPizza: {asDisk, [3]float64{0.20, 0.22, 0.24}, sources.Practice(
			"thin crisp pizza: 0.20 to 0.24 g/cm²; 175 g for 12 in")},
		NeapolitanPizza: {asDisk, [3]float64{0.23, 0.28, 0.31}, sources.Practice(
			"balls of 200 g for 29 to 33 cm, of 250 g for 32 to 35 cm")},
		NewYorkPizza:  {asDisk, [3]float64{0.34, 0.40, 0.455}, sources.Practice("250 g for 12 in, 450 g for 14 in")},
		AmericanPizza: {asDisk, [3]float64{0.50, 0.525, 0.55}, sources.Practice("540 g for 14 in")},
		Pita:          {asDisk, [3]float64{0.31, 0.39, 0.50}, m("80 to 100 g for 16 to 18 cm")},
		Tortilla:      {asDisk, [3]float64{0.14, 0.155, 0.17}, m("30 g for 16 cm, 50 g for 20 cm")},
		Bun:           {asDisk, [3]float64{0.88, 0.95, 1.02}, m("75 to 90 g for 10 to 11 cm when baked")},
		Baguette: {asStick, [3]float64{4.8, 5.4, 6.0}, sources.Practice(
			"315 to 350 g of dough for 65 cm; 350 g for 60 cm at home")},
		Ficelle:    {asStick, [3]float64{2.0, 2.3, 2.6}, m("125 to 150 g of dough for about 60 cm")},
		Batard:     {asStick, [3]float64{20, 25, 32}, m("500 g for 24 cm to 1 kg for 32 cm")},
		HotDogRoll: {asStick, [3]float64{4.3, 4.8, 5.4}, m("65 to 80 g for 15 cm when baked")},
		Ciabatta:   {asStick, [3]float64{11, 12.6, 14}, m("280 to 350 g for 25 cm")},
		BreadStick: {asStick, [3]float64{0.5, 0.7, 1.0}, m("15 to 25 g for 25 to 30 cm")},
	}
	if !sizedBreads.Has(b) {
		return sizedRow{}
	}
	return rows[b]
}

// unit is that of the dose.
func (by measured) unit() working.Unit {
	if by == asStick {
		return "g/cm"
	}
	return "g/cm²"
}
