package quantity

import (
	"cmp"

	"github.com/shopspring/decimal"
)

// Volume is an amount of space, exact to a picoliter, within ±1,000,000 L: a mixer's bowl, a
// proofing container, a cup. The zero value is 0 L. Cups, quarts and spoons of the
// US customary system are converted by definition and rounded to the picoliter.
type Volume struct{ exact[volumeKind] }

type volumeKind struct{}

func (volumeKind) kind() *kind { return &volumes }

func newVolume(quanta int64) Volume { return Volume{exact[volumeKind]{quanta}} }

// VolumeUnit names a unit that volumes are read and shown in.
type VolumeUnit int

// The units of volume. US customary: 1 gallon = 231 in³ = 4 quarts = 16 cups =
// 128 fluid ounces = 256 tablespoons = 768 teaspoons.
const (
	Liter VolumeUnit = iota
	Milliliter
	USGallon
	USQuart
	USPint
	USCup
	USFluidOunce
	USTablespoon
	USTeaspoon
	MetricCup
	CubicInch
	Deciliter
)

// volumes: 1 in = 2.54 cm and 1 US gallon = 231 in³ = 3.785411784 L, by definition.
// Source: NIST SP 811 (2008), appendix B.8.
var volumes = kind{
	noun:      "volume",
	fractions: true,
	letter:    'v', goMust: "MustVolume", goInvalid: "quantity.Liters(math.NaN())", show: int(Milliliter),
	accepted: Tell("quantity.want_volume",
		`a volume with its unit, such as "7 L", "250 mL", "1.5 qt", "2 cup" or "1 tbsp"`),
	low: -1e18, high: 1e18,
	scales: []scale{
		{symbol: "L", names: []string{"l", "liter", "liters", "litre", "litres"}, num: 1e12, den: 1, places: 12},
		{symbol: "mL", names: []string{"ml", "cm3", "cm³", "milliliter", "milliliters"}, num: 1e9, den: 1, places: 9},
		{symbol: "gal", names: []string{"gallon", "gallons"}, num: 3_785_411_784_000, den: 1, places: 12, rounds: true},
		{symbol: "qt", names: []string{"quart", "quarts"}, num: 946_352_946_000, den: 1, places: 11, rounds: true},
		{symbol: "pt", names: []string{"pint", "pints"}, num: 473_176_473_000, den: 1, places: 11, rounds: true},
		{symbol: "cup", names: []string{"cups"}, num: 236_588_236_500, den: 1, places: 11, rounds: true},
		{symbol: "fl oz", names: []string{"floz"}, num: 295_735_295_625, den: 10, places: 10, rounds: true},
		{symbol: "tbsp", names: []string{"tablespoon", "tablespoons"}, num: 1_478_676_478_125, den: 100, places: 10,
			rounds: true},
		{
			symbol: "tsp",
			names:  []string{"teaspoon", "teaspoons"},
			num:    492_892_159_375,
			den:    100,
			places: 9,
			rounds: true,
		},
		{symbol: "metric cup", names: []string{"metric cups"}, num: 250_000_000_000, den: 1, places: 11},
		{symbol: "in³", names: []string{"in3", "cu in"}, num: 16_387_064_000, den: 1, places: 10, rounds: true},
		{symbol: "dL", names: []string{"dl", "deciliter", "deciliters", "decilitre", "decilitres"}, num: 1e11, den: 1,
			places: 11},
	},
}

func (u VolumeUnit) scale() *scale {
	if u < 0 || int(u) >= len(volumes.scales) {
		u = Liter
	}
	return &volumes.scales[u]
}

// Liters returns l liters, rounded to the picoliter; NaN and infinities give an invalid volume.
func Liters(l float64) Volume { return newVolume(volumes.fromFloat(l, Liter.scale())) }

// Milliliters returns ml milliliters; see [Liters].
func Milliliters(ml float64) Volume { return newVolume(volumes.fromFloat(ml, Milliliter.scale())) }

// Picoliters returns exactly n picoliters, or an invalid volume beyond the limits.
func Picoliters(n int64) Volume { return newVolume(volumes.keep(n)) }

// ParseVolume reads a number and a unit: "7 L", "250 mL", "1.5 qt", "2 cups", "2 1/4 tsp", "½ cup". The unit
// is required. Errors: ErrUnit, ErrTooPrecise, ErrOutOfRange, ErrRequired (empty text).
func ParseVolume(text string) (Volume, error) {
	q, err := volumes.parse(text)
	if err != nil {
		return newVolume(invalid), err
	}
	return newVolume(q), nil
}

// MustVolume is [ParseVolume] for literals; it panics on an error.
func MustVolume(text string) Volume { return must(ParseVolume(text)) }

// In returns the volume in the unit; NaN if invalid.
func (v Volume) In(u VolumeUnit) float64 { return volumes.toFloat(v.quanta, u.scale()) }

// Liters returns the volume in liters; NaN if invalid.
func (v Volume) Liters() float64 { return v.In(Liter) }

// Milliliters returns the volume in milliliters; NaN if invalid.
func (v Volume) Milliliters() float64 { return v.In(Milliliter) }

// Decimal returns the volume in the unit, rounded half to even to twelve decimals.
func (v Volume) Decimal(u VolumeUnit) decimal.Decimal { return decimalOf(v.quanta, u.scale(), 12) }

// Picoliters returns the exact count of picoliters, and false if the volume is invalid.
func (v Volume) Picoliters() (int64, bool) { return v.quanta, v.IsValid() }

// Add returns v + o.
func (v Volume) Add(o Volume) Volume { return newVolume(volumes.add(v.quanta, o.quanta)) }

// Sub returns v − o.
func (v Volume) Sub(o Volume) Volume {
	return newVolume(volumes.add(v.quanta, volumes.neg(o.quanta)))
}

// Times returns n·v exactly.
func (v Volume) Times(n int64) Volume { return newVolume(volumes.mulDiv(v.quanta, n, 1)) }

// Compare returns −1, 0 or 1; an invalid volume comes before every other.
func (v Volume) Compare(o Volume) int { return cmp.Compare(v.quanta, o.quanta) }

// Equal reports v == o.
func (v Volume) Equal(o Volume) bool { return v == o }

// Text prints the volume in the unit with exactly that many decimals.
func (v Volume) Text(u VolumeUnit, places int) string {
	return string(volumes.append(nil, v.quanta, u.scale(), places, false))
}
