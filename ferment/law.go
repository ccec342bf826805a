package ferment

import (
	"strings"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/gasbalance"
	"example.org/maslin/internal/sources"
)

// Law is how the clock of a dough is reckoned: the gas balance, with its own rate curves or with rivals in their place.
// It is an immutable value; equal laws compare equal with ==. Name one in every input: none is a hidden default. It
// marshals as its key, "gas-balance" or "gas-balance levain=ganzle-yeast", and reads back from it.
type Law struct {
	named              bool
	levain, yeast, gas Curve // zero: the law's own
}

// GasBalance is the law this library stands on.
//
//	dX/dt = P·μ₂₇·g_l(T)·φ·X     dY/dt = P·μ₂₇·g_y(T)·φ·Y     φ = max(0, 1 − (X + Y)/X_m)
//	dG/dt = K·P·q₂₇·r_q(T)·(X + Y)     ready when G = N(R, T, p)
//
// X and Y are cells of levain and of commercial yeast, counted by their gas in percent of the flour as instant yeast; G
// is carbon dioxide in liters (25 °C, 1 atm) per kilogram of flour; N is what a rise R takes at the dough's temperature
// T under the air pressure p, dissolved gas included; P is what the formula and the kitchen do to every rate, K the
// kitchen's amplitude; g and r_q are rate curves, 1 at 27 °C; X_m is where crowding ends growth.
//
// Valid from −1 to 43 °C, to 40 % sugar on flour. Four of its numbers were fitted to rules of the trade; four more, and
// the spreads of an unknown kitchen, are judgments: [Law.About] names them. Accuracy: 79 of 93 rules of the trade lie
// in the range it gives. Source: logistic growth; Luedeking and Piret 1959 for gas from cells; Ratkowsky et al. 1983
// and Gänzle, Ehmann and Hammes 1998 for the curves.
func GasBalance() Law { return Law{named: true} }

// Rivals are curves to put in place of the law's own: only their shape counts, not their size. A zero Curve keeps the
// law's own. Levain and Yeast are curves of growth, Gas is one of gas.
type Rivals struct {
	Levain Curve `json:"levain"`
	Yeast  Curve `json:"yeast"`
	Gas    Curve `json:"gas"`
}

// With is the law with rival curves, for comparison and for teaching; it takes longer to reckon with than the law's
// own.
func (l Law) With(r Rivals) Law {
	return Law{named: true, levain: r.Levain, yeast: r.Yeast, gas: r.Gas}
}

// IsZero reports whether no law is given.
func (l Law) IsZero() bool { return l == Law{} }

// The temperatures of the law, °C: dough freezes below; above, cells die and the law has no dying.
const (
	lawLow  = -1.0
	lawHigh = 43.0
)

// About says what the law is, where it holds, and which of its numbers are fitted or judged.
func (l Law) About() About {
	if l.IsZero() {
		return About{}
	}
	low, high := l.limits()
	a := About{
		Name: "gas balance", Key: l.key(), Low: low, High: high,
		Formula: "dX/dt = P·μ₂₇·g(T)·(1 − X/X_m)·X; dG/dt = K·P·q₂₇·r(T)·X; ready when G = N(R, T, p)",
		Note: "q₂₇ 2.05, μ₂₇ 0.37, X_m 1.70 and S_r 5.85 were fitted to rules of the trade; the cold end of gas, the " +
			"levain's " +
			"mixture, what solutes and stiffness do, and every spread are judgments",
		Source: sources.Judged("logistic growth and gas from cells, four numbers fitted to 47 rules of the trade"),
	}
	if l != GasBalance() {
		a.Name += " with rival curves"
	}
	return a
}

// limits are the temperatures between which the law and its curves hold, °C.
func (l Law) limits() (low, high float64) {
	low, high = lawLow, lawHigh
	if l != GasBalance() {
		for _, c := range []Curve{l.levain, l.yeast, l.gas} {
			if own := c.About(); !c.IsZero() {
				low, high = max(low, own.Low), min(high, own.High)
			}
		}
	}
	return low, high
}

// String prints the law's name.
func (l Law) String() string { return l.About().Name }

// Message names the law.
func (l Law) Message() working.Message {
	if l == GasBalance() {
		return working.Tell("ferment.gas_balance", "gas balance")
	}
	return working.Tell("ferment.gas_balance_rivals", "gas balance with rival curves")
}

const lawKey = "gas-balance"

func (l Law) key() string {
	out := lawKey
	for _, r := range []struct {
		name  string
		curve Curve
	}{{"levain", l.levain}, {"yeast", l.yeast}, {"gas", l.gas}} {
		if !r.curve.IsZero() {
			out += " " + r.name + "=" + r.curve.About().Key
		}
	}
	return out
}

// MarshalText writes the key of the law, and nothing for the zero Law. Errors: as [Curve.MarshalText] for a rival of
// your own.
func (l Law) MarshalText() ([]byte, error) {
	if l.IsZero() {
		return nil, nil
	}
	for _, c := range []Curve{l.levain, l.yeast, l.gas} {
		if _, err := c.MarshalText(); err != nil {
			return nil, err
		}
	}
	return []byte(l.key()), nil
}

// UnmarshalText reads the key of a law; an empty text is the zero Law. Errors: ErrOutOfRange for any other text.
func (l *Law) UnmarshalText(text []byte) error {
	*l = Law{}
	if len(text) == 0 {
		return nil
	}
	refuse := func() error {
		return &quantity.InputError{
			Got: quantity.Excerpt(string(text)), Err: errOutOfRange,
			Want: quantity.Tell("ferment.want_or_levain_curve_yeast_curve",
				"%s, or %s levain=CURVE yeast=CURVE gas=CURVE with the key of a rate curve", lawKey, lawKey),
		}
	}
	words := strings.Fields(string(text))
	if len(text) > 200 || len(words) == 0 || words[0] != lawKey {
		return refuse()
	}
	out := GasBalance()
	into := map[string]*Curve{"levain": &out.levain, "yeast": &out.yeast, "gas": &out.gas}
	for _, w := range words[1:] {
		name, key, _ := strings.Cut(w, "=")
		c, known := CurveNamed(key)
		if to := into[name]; to == nil || !known || !to.IsZero() {
			return refuse()
		}
		*into[name] = c
	}
	*l = out
	return nil
}

// balance is the law made ready for arithmetic. Errors: ErrInconsistent for a rival that does not run at 27 °C.
func (l Law) balance() (*gasbalance.Law, error) {
	if l == GasBalance() {
		return gasbalance.Standard(), nil
	}
	p := gasbalance.Standing()
	var faults problems
	plug := func(path string, c Curve, into *gasbalance.Curve) {
		if c.IsZero() {
			return
		}
		about := c.About()
		made, ok := gasbalance.Custom(about.Key, about.Low, about.High, c.of.rate)
		if !ok {
			faults.Add(path, quantity.Tell("ferment.got_h_at_27_c", "%v/h at 27 °C", c.Rate(27)),
				quantity.Tell("ferment.want_curve_runs_at_27_c", "a curve that runs at 27 °C, where curves are compared"),
				quantity.ErrInconsistent)
			return
		}
		*into = made
	}
	plug("Law.Yeast", l.yeast, &p.YeastCurve)
	plug("Law.Gas", l.gas, &p.GasCurve)
	if !l.levain.IsZero() {
		plug("Law.Levain", l.levain, &p.HumilisCurve)
		p.Mixture = 0
	}
	if err := faults.ErrFor(l); err != nil {
		return nil, err
	}
	out, _ := gasbalance.New(p) // the standing parameters with curves that were made: there is such a law
	return out, nil
}
