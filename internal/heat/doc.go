// Package heat answers: how does the temperature inside a solid follow the temperature around it? It has
// the exact series of transient conduction for the slab, the cylinder and the sphere with a convecting
// surface, their products (short cylinder, block), a body in surroundings that themselves change, and the
// thermal diffusivity of crumb.
//
// Everything is in SI units: meters, seconds, W/(m K), W/(m² K), kg/m³, J/(kg K); temperatures only enter
// as differences or in °C. Results of the series are the share of the initial temperature difference that
// is left, θ = (T − T∞)/(T₀ − T∞), between 1 and 0.
//
// # Assumptions and limits
//
// Constant properties, one uniform starting temperature, the same surface coefficient all around, no heat
// made inside. A dough that ferments makes a little heat, and a loaf in the oven has a moving front of
// evaporation: neither is in these solutions.
//
// # From question to function
//
//	eigenvalues and coefficients for a Biot number    NewSeries, Series.Term
//	θ at a Fourier number, and the inverse            Series.Center, Mean, At, CenterTime, MeanTime
//	the same in seconds for a real body               NewBody: Plate, LongCylinder, Ball, ShortCylinder, Block
//	surroundings that change                          NewFollowed, Body.Follow, Trace.At
//	diffusivity of crumb                              CrumbDiffusivity
package heat

import (
	"errors"
	"fmt"

	"example.org/maslin/dough/quantity"
)

// ErrUnreachable says that the surroundings never bring the body to that temperature.
var ErrUnreachable = errors.New("never reached")

func outOfRange(what string, got, low, high float64, unit string) error {
	return fmt.Errorf("%s %w: got %g %s, want %g to %g %s", what, quantity.ErrOutOfRange, got, unit, low, high, unit)
}

func within(x, low, high float64) bool { return x >= low && x <= high }
