package workcheck

import (
	"math"
	"math/big"
	"regexp"
	"strings"
	"testing"

	"example.org/maslin/dough/working"
)

// Verify fails the test unless the derivation has at least one step and every step names what
// it finds, its symbol, its value and its source; binds every symbol of its formula; and gives
// its value when its line of numbers is evaluated: exactly when the step claims to be exact,
// and otherwise to half a unit of the last digit printed plus the step's stated tolerance.
func Verify(t testing.TB, w working.Working) {
	t.Helper()
	for _, fault := range Faults(w) {
		t.Error(fault)
	}
}

var identifier = regexp.MustCompile(`[\p{L}_][\p{L}\p{N}_ᵢ₀₁₂₃₄₅₆₇₈₉'′]*`)

var known = map[string]bool{
	"exp": true, "ln": true, "log10": true, "sqrt": true,
	"abs": true, "sin": true, "cos": true, "tan": true, "cot": true,
	"floor": true, "ceil": true, "round": true, "min": true, "max": true, "Σ": true,
	"π": true, "pi": true, "e": true, "d": true, "dt": true, "J0": true, "J1": true,
}

// Faults lists what [Verify] would complain about.
func Faults(w working.Working) []string {
	if len(w.Steps) == 0 {
		return []string{w.Title + ": a working without steps"}
	}
	var out []string
	bound := map[string]bool{}
	out = append(out, derived(w)...)
	for _, s := range w.Steps {
		if s.Derived() {
			bound[s.Symbol] = true
			for _, v := range s.Where {
				bound[v.Symbol] = true
			}
			continue
		}
		fault := func(text string) { out = append(out, w.Title+": step "+s.Name+": "+text) }
		if s.Name == "" || s.Symbol == "" || s.Value == "" {
			fault("needs a name, a symbol and a value")
		}
		if s.Source.IsZero() {
			fault("has no source")
		}
		for _, v := range s.Where {
			bound[v.Symbol] = true
			if v.Value == "" || v.Meaning == "" {
				fault("symbol " + v.Symbol + " has no value or no meaning")
			}
		}
		for _, name := range identifier.FindAllString(s.Formula, -1) {
			if !bound[name] && !known[name] {
				fault("formula " + s.Formula + " uses " + name + ", which is not explained")
			}
		}
		bound[s.Symbol] = true
		if s.Numbers == "" {
			if s.Note == "" && s.Formula != "" {
				fault("shows a formula without numbers and does not say why")
			}
			continue
		}
		if f := disagreement(s); f != "" {
			fault(f)
		}
	}
	return out
}

var leading = regexp.MustCompile(`^[-−+]?[0-9]+(\.[0-9]+)?(e[-−]?[0-9]+)?`)

func disagreement(s working.Step) string {
	rat, float, err := Evaluate(s.Numbers)
	if err != nil {
		return "numbers do not evaluate: " + err.Error()
	}
	printed := leading.FindString(s.Value)
	if printed == "" {
		return "value " + s.Value + " does not begin with a number"
	}
	plain := strings.Replace(printed, "−", "-", 2)
	want, ok := new(big.Rat).SetString(plain)
	if !ok {
		return "value " + s.Value + " does not begin with a number"
	}
	if s.Exact {
		if rat == nil || rat.Cmp(want) != 0 {
			return "claims to be exact: " + s.Numbers + " is not " + printed
		}
		return ""
	}
	half := 0.5
	mantissa, exponent, hasExponent := strings.Cut(plain, "e")
	if _, frac, ok := strings.Cut(mantissa, "."); ok {
		half *= math.Pow(10, -float64(len(frac)))
	}
	if hasExponent {
		e, _ := new(big.Rat).SetString("1e" + exponent)
		scale, _ := e.Float64()
		half *= scale
	}
	w, _ := want.Float64()
	if diff := math.Abs(float - w); !(diff <= half*(1+1e-9)+s.Tolerance+1e-12*math.Abs(w)) {
		return "numbers give " + big.NewFloat(float).Text('g', 12) + ", the value says " + s.Value
	}
	return ""
}
