package workcheck

import (
	"fmt"
	"math"
	"math/big"
	"regexp"
	"strconv"
	"strings"

	"example.org/maslin/dough/working"
)

// readers are those that every derivation is checked for.
var readers = [...]working.Reader{{}, {Units: working.USCustomary}}

// derived lists what is wrong with the steps of a working that were made from expressions: it reads what is
// printed, for metric and for US readers, and knows nothing of how it was made.
func derived(w working.Working) []string {
	var out []string
	for _, r := range readers {
		meanings := map[string]string{}
		units := map[string]string{}
		for _, l := range w.Lines(r) {
			s := w.Steps[l.Step-1]
			if !s.Derived() {
				continue
			}
			fault := func(format string, args ...any) {
				out = append(
					out,
					fmt.Sprintf(
						"%s: step %d, %s, %s: %s",
						w.Title,
						l.Step,
						s.Name,
						r.Units,
						fmt.Sprintf(format, args...),
					),
				)
			}
			if s.Name == "" || l.Symbol == "" || l.Value == "" {
				fault("needs a name, a symbol and a value")
			}
			if s.Source.IsZero() {
				fault("has no source")
			}
			if l.Fault != "" {
				fault("%s", l.Fault)
			}
			if table := w.Table(l.Step, r); table.Fault != "" {
				fault("%s", table.Fault)
			}
			for _, v := range l.Where {
				if v.Meaning == "" || v.Value == "" {
					fault("symbol %s has no value or no meaning", v.Symbol)
				}
				if m, ok := meanings[v.Symbol]; ok && m != v.Meaning {
					fault("symbol %s stands for %q and for %q", v.Symbol, m, v.Meaning)
				}
				meanings[v.Symbol] = v.Meaning
				if u := unitOf(v.Value); u != "" && units[v.Symbol] != "" && units[v.Symbol] != u {
					fault("symbol %s is in %s and in %s", v.Symbol, units[v.Symbol], u)
				} else if u != "" {
					units[v.Symbol] = u
				}
			}
			if l.Numbers == "" {
				if s.Note == "" {
					fault("has no arithmetic and does not say where to look")
				}
				continue
			}
			for _, f := range lineFaults(l) {
				fault("%s", f)
			}
		}
	}
	return out
}

// lineFaults checks one line: the numbers give the value, and they are those that the symbols are said to have.
func lineFaults(l working.Line) []string {
	var out []string
	rat, got, err := Evaluate(l.Numbers)
	if err != nil {
		return []string{"numbers do not evaluate: " + l.Numbers + ": " + err.Error()}
	}
	want, half, ok := printedValue(l.Value)
	if !ok {
		return []string{"value " + l.Value + " does not begin with a number"}
	}
	wanted, _ := want.Float64()
	difference := math.Abs(got - wanted)
	if clockForm.MatchString(l.Value) {
		difference = math.Mod(difference, week)
		difference = min(difference, week-difference)
	}
	switch {
	case l.Exact && !clockForm.MatchString(l.Value):
		if rat == nil || rat.Cmp(want) != 0 {
			out = append(out, "claims to be exact: "+l.Numbers+" is not "+l.Value)
		}
	case !(difference <= half*(1+tie)+l.Within+1e-12*math.Abs(wanted)):
		out = append(out, fmt.Sprintf("%s gives %.12g, the value says %s", l.Numbers, got, l.Value))
	}
	if f := substituted(l, got); f != "" {
		out = append(out, f)
	}
	return out
}

var symbolForm = regexp.MustCompile(`[\p{L}Δ][\p{L}\p{N}_₀₁₂₃₄₅₆₇₈₉′]*(\()?`)

// substituted puts the values that the symbols are said to have into the formula, which has to give what the line of
// numbers gives.
func substituted(l working.Line, numbers float64) string {
	if strings.Contains(l.Formula, "Σ") {
		return ""
	}
	missing := ""
	line := symbolForm.ReplaceAllStringFunc(l.Formula, func(name string) string {
		if strings.HasSuffix(name, "(") || name == "π" {
			return name
		}
		for _, v := range l.Where {
			if v.Symbol == name {
				return "(" + asNumber(v.Value) + ")"
			}
		}
		missing = name
		return name
	})
	if missing != "" {
		return "formula " + l.Formula + " uses " + missing + ", which is not explained"
	}
	_, got, err := Evaluate(line)
	if err != nil {
		return "formula " + l.Formula + " with the values of its symbols: " + err.Error()
	}
	if !(math.Abs(got-numbers) <= 1e-9*math.Max(1, math.Abs(numbers)) || got == numbers) {
		return fmt.Sprintf(
			"formula %s with the values of its symbols gives %.12g, the line of numbers %.12g",
			l.Formula,
			got,
			numbers,
		)
	}
	return ""
}

var valueForm = regexp.MustCompile(`^([−-]?)([0-9]+)(?:\.([0-9]+))?(?: × 10([⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+))?`)

var plainDigits = strings.NewReplacer(
	"⁻",
	"-",
	"⁰",
	"0",
	"¹",
	"1",
	"²",
	"2",
	"³",
	"3",
	"⁴",
	"4",
	"⁵",
	"5",
	"⁶",
	"6",
	"⁷",
	"7",
	"⁸",
	"8",
	"⁹",
	"9",
)

// printedValue reads the number that a value begins with, and half a unit of its last digit.
func printedValue(text string) (value *big.Rat, half float64, ok bool) {
	if m := clockForm.FindStringSubmatch(text); m != nil {
		return new(big.Rat).SetInt64(minutesOf(m)), 0.5, true
	}
	m := valueForm.FindStringSubmatch(text)
	if m == nil {
		return nil, 0, false
	}
	exponent := 0
	if m[4] != "" {
		exponent, _ = strconv.Atoi(plainDigits.Replace(m[4]))
	}
	value, ok = new(
		big.Rat,
	).SetString(
		strings.Replace(m[1], "−", "-", 1) + m[2] + "." + m[3] + "0e" + strconv.Itoa(exponent),
	)
	return value, 0.5 * math.Pow10(exponent-len(m[3])), ok
}

// asNumber is the number of a value as a line of numbers writes it.
func asNumber(text string) string {
	if m := clockForm.FindString(text); m != "" {
		return m
	}
	m := valueForm.FindStringSubmatch(text)
	if m == nil {
		return text
	}
	number := m[1] + m[2]
	if m[3] != "" {
		number += "." + m[3]
	}
	if m[4] != "" {
		number += " × 10^(" + plainDigits.Replace(m[4]) + ")"
	}
	return number
}

// unitOf is what stands behind the number of a value.
func unitOf(text string) string {
	m := valueForm.FindString(text)
	unit, _, _ := strings.Cut(strings.TrimSpace(text[len(m):]), " (")
	return unit
}

// tie is how far beyond half a digit, as a share of it, a line may lie: a result at a tie is rounded by a last quantum of
// its own that the numbers need not have.
const tie = 1e-4
