package heat

import "math"

// Component is one of the substances foods are reckoned from.
type Component int

// The components of Choi and Okos.
const (
	Water Component = iota
	Protein
	Fat
	Carbohydrate
	Fiber
	Ash
	Ice
)

// String names the component.
func (c Component) String() string {
	names := [...]string{"water", "protein", "fat", "carbohydrate", "fiber", "ash", "ice"}
	if c < 0 || int(c) >= len(names) {
		return "unknown component"
	}
	return names[c]
}

type quadratic [3]float64

func (q quadratic) at(t float64) float64 { return q[0] + t*(q[1]+t*q[2]) }

// substance holds cp in kJ/(kg K), k in W/(m K) and ρ in kg/m³ as quadratics in °C.
type substance struct{ cp, k, rho quadratic }

// choiOkos is the table of Choi and Okos.
// Source: Choi and Okos, Effects of temperature and composition on the thermal properties of foods (1986),
// valid from −40 to 150 °C.
func choiOkos(c Component, t float64) (substance, bool) {
	switch c {
	case Water:
		s := substance{quadratic{4.1762, -9.0864e-5, 5.4731e-6}, quadratic{0.57109, 1.7625e-3, -6.7036e-6}, quadratic{997.18, 3.1439e-3, -3.7574e-3}}
		if t < 0 {
			s.cp = quadratic{4.0817, -5.3062e-3, 9.9516e-4}
		}
		return s, true
	case Ice:
		return substance{quadratic{2.0623, 6.0769e-3}, quadratic{2.2196, -6.2489e-3, 1.0154e-4}, quadratic{916.89, -0.13071}}, true
	case Protein:
		return substance{quadratic{2.0082, 1.2089e-3, -1.3129e-6}, quadratic{0.17881, 1.1958e-3, -2.7178e-6}, quadratic{1329.9, -0.5184}}, true
	case Fat:
		return substance{quadratic{1.9842, 1.4733e-3, -4.8008e-6}, quadratic{0.18071, -2.7604e-4, -1.7749e-7}, quadratic{925.59, -0.41757}}, true
	case Carbohydrate:
		return substance{quadratic{1.5488, 1.9625e-3, -5.9399e-6}, quadratic{0.20141, 1.3874e-3, -4.3312e-6}, quadratic{1599.1, -0.31046}}, true
	case Fiber:
		return substance{quadratic{1.8459, 1.8306e-3, -4.6509e-6}, quadratic{0.18331, 1.2497e-3, -3.1683e-6}, quadratic{1311.5, -0.36589}}, true
	case Ash:
		return substance{quadratic{1.0926, 1.8896e-3, -3.6817e-6}, quadratic{0.32962, 1.4011e-3, -2.9069e-6}, quadratic{2423.8, -0.28063}}, true
	}
	return substance{}, false
}

// ComponentProperties is the material of one pure component at t °C.
//
// Valid range: −40 to 150 °C. Errors: [quantity.ErrOutOfRange].
//
// Source: Choi and Okos (1986).
func ComponentProperties(c Component, celsius float64) (Material, error) {
	if !within(celsius, -40, 150) {
		return Material{}, outOfRange("temperature", celsius, -40, 150, "°C")
	}
	s, ok := choiOkos(c, celsius)
	if !ok {
		return Material{}, outOfRange("component", float64(c), float64(Water), float64(Ice), "")
	}
	return Material{Conductivity: s.k.at(celsius), Density: s.rho.at(celsius), HeatCapacity: 1000 * s.cp.at(celsius)}, nil
}

// Share is the mass fraction of one component.
type Share struct {
	Component Component
	Fraction  float64
}

// Mixture is a food by mass fractions of its components, which must add up to 1 within 0.001, and the share
// of its volume that is gas.
type Mixture struct {
	Shares   []Share
	Porosity float64 // 0 to 0.95
}

// Properties mixes the components at t °C.
//
// Formula: cp = Σ xᵢ·cpᵢ; 1/ρ = Σ xᵢ/ρᵢ, times 1 − porosity; k = Σ vᵢ·kᵢ over volume fractions (heat
// flowing along the layers), and with gas the Maxwell-Eucken form with the solid continuous and air at
// 0.026 W/(m K).
// Valid range: −40 to 150 °C, no ice formed on the way. Accuracy: about 5 % for cp and density of moist
// foods, 10 % for dry flour; conductivity without gas lies between this and the series value
// ([Mixture.SeriesConductivity]).
// Errors: [quantity.ErrOutOfRange].
//
// Source: Choi and Okos (1986); Singh and Heldman, Introduction to Food Engineering, table A.2.9.
func (m Mixture) Properties(celsius float64) (Material, error) {
	var cp, volume, k float64
	err := m.each(celsius, func(x float64, p Material) {
		cp += x * p.HeatCapacity
		volume += x / p.Density
		k += x / p.Density * p.Conductivity
	})
	if err != nil {
		return Material{}, err
	}
	out := Material{Conductivity: k / volume, Density: (1 - m.Porosity) / volume, HeatCapacity: cp}
	out.Conductivity = MaxwellEucken(out.Conductivity, airConductivity, m.Porosity)
	return out, nil
}

const airConductivity = 0.026 // W/(m K)

// SeriesConductivity is the conductivity without gas if heat had to cross the components one after the
// other, 1/k = Σ vᵢ/kᵢ: the lower bound. Range, errors and source as [Mixture.Properties].
func (m Mixture) SeriesConductivity(celsius float64) (float64, error) {
	var volume, resistance float64
	err := m.each(celsius, func(x float64, p Material) {
		volume += x / p.Density
		resistance += x / p.Density / p.Conductivity
	})
	return volume / resistance, err
}

func (m Mixture) each(celsius float64, visit func(fraction float64, p Material)) error {
	if !within(m.Porosity, 0, 0.95) {
		return outOfRange("porosity", m.Porosity, 0, 0.95, "")
	}
	sum := 0.0
	for _, s := range m.Shares {
		if !within(s.Fraction, 0, 1) {
			return outOfRange("mass fraction of "+s.Component.String(), s.Fraction, 0, 1, "")
		}
		p, err := ComponentProperties(s.Component, celsius)
		if err != nil {
			return err
		}
		sum += s.Fraction
		visit(s.Fraction, p)
	}
	if !within(sum, 0.999, 1.001) {
		return outOfRange("sum of mass fractions", sum, 0.999, 1.001, "")
	}
	return nil
}

// MaxwellEucken is the conductivity of a continuous solid with a volume share of separate inclusions of
// another conductivity.
//
// Formula: k = ks·(2ks + ki − 2φ(ks − ki))/(2ks + ki + φ(ks − ki)).
//
// Source: Eucken (1940) after Maxwell, as in Singh and Heldman, Introduction to Food Engineering.
func MaxwellEucken(solid, inclusion, share float64) float64 {
	d := share * (solid - inclusion)
	return solid * (2*solid + inclusion - 2*d) / (2*solid + inclusion + d)
}

// CrumbDensity is the density of bread crumb in kg/m³ at a porosity from 0 to 0.95: ρ = 979 − 9.90·ε, ε in
// %.
// Errors: [quantity.ErrOutOfRange].
//
// Source: Zanoni, Peri and Gianotti, Journal of Food Engineering 26 (1995) 497-510.
func CrumbDensity(porosity float64) (float64, error) {
	if !within(porosity, 0, 0.95) {
		return 0, outOfRange("porosity", porosity, 0, 0.95, "")
	}
	return 979 - 990*porosity, nil
}

// CrumbDiffusivity is the thermal diffusivity of bread crumb in m²/s at a porosity from 0 to 0.95: α =
// exp(0.01·ε − 15.25), ε in %. It was measured without evaporation: an evaporating crumb conducts better.
// Errors: [quantity.ErrOutOfRange].
//
// Source: Zanoni, Peri and Gianotti, Journal of Food Engineering 26 (1995) 497-510.
func CrumbDiffusivity(porosity float64) (float64, error) {
	if !within(porosity, 0, 0.95) {
		return 0, outOfRange("porosity", porosity, 0, 0.95, "")
	}
	return math.Exp(porosity - 15.25), nil
}
