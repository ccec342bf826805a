package handcheck

import (
	"fmt"
	"math"
	"math/big"
	"strings"
	"unicode"
	"unicode/utf8"
)

// A number is kept as an exact fraction while the line uses only + − × ÷ and whole powers,
// and as a float64 otherwise.
type number struct {
	exact *big.Rat // nil once a function or a fractional power was used
	float float64
}

func exact(r *big.Rat) number {
	f, _ := r.Float64()
	return number{r, f}
}

// Evaluate computes a line such as "26 + (26 − 21) − 12" or "ln(1 + 0.5 ÷ 0.09)". The exact
// result is nil when the line needs functions.
func Evaluate(line string) (*big.Rat, float64, error) {
	if len(line) > 20_000 {
		return nil, 0, fmt.Errorf("line of %d bytes", len(line))
	}
	p := &parser{
		text: strings.NewReplacer("−", "-", "×", "*", "·", "*", "÷", "/", "–", "-", "\u202f", "", "\u00a0",
			" ").Replace(line),
	}
	v, err := p.sum()
	if err != nil {
		return nil, 0, err
	}
	p.space()
	if p.at < len(p.text) {
		return nil, 0, fmt.Errorf("cannot read %q in %q", p.text[p.at:], line)
	}
	return v.exact, v.float, nil
}

type parser struct {
	text  string
	at    int
	depth int
}

func (p *parser) space() {
	for p.at < len(p.text) && (p.text[p.at] == ' ' || p.text[p.at] == '\n' || p.text[p.at] == '\t') {
		p.at++
	}
}

func (p *parser) take(c byte) bool {
	p.space()
	if p.at < len(p.text) && p.text[p.at] == c {
		p.at++
		return true
	}
	return false
}

func (p *parser) sum() (number, error) {
	p.depth++
	defer func() { p.depth-- }()
	if p.depth > 200 {
		return number{}, fmt.Errorf("nested too deeply")
	}
	left, err := p.product()
	for err == nil {
		var right number
		switch {
		case p.take('+'):
			if right, err = p.product(); err == nil {
				left = combine(left, right, (*big.Rat).Add, left.float+right.float)
			}
		case p.take('-'):
			if right, err = p.product(); err == nil {
				left = combine(left, right, (*big.Rat).Sub, left.float-right.float)
			}
		default:
			return left, nil
		}
	}
	return number{}, err
}

func combine(a, b number, op func(z, x, y *big.Rat) *big.Rat, float float64) number {
	if a.exact == nil || b.exact == nil {
		return number{nil, float}
	}
	return exact(op(new(big.Rat), a.exact, b.exact))
}

func (p *parser) product() (number, error) {
	left, err := p.signed()
	for err == nil {
		var right number
		switch {
		case p.take('*'):
			if right, err = p.signed(); err == nil {
				left = combine(left, right, (*big.Rat).Mul, left.float*right.float)
			}
		case p.take('/'):
			if right, err = p.signed(); err == nil {
				if right.float == 0 {
					return number{}, fmt.Errorf("division by zero")
				}
				left = combine(left, right, (*big.Rat).Quo, left.float/right.float)
			}
		default:
			return left, nil
		}
	}
	return number{}, err
}

func (p *parser) signed() (number, error) {
	if p.take('-') {
		v, err := p.signed()
		if err != nil {
			return v, err
		}
		if v.exact == nil {
			return number{nil, -v.float}, nil
		}
		return exact(new(big.Rat).Neg(v.exact)), nil
	}
	if p.take('+') {
		return p.signed()
	}
	return p.power()
}

func (p *parser) power() (number, error) {
	base, err := p.atom()
	if err != nil || !p.take('^') {
		return base, err
	}
	exponent, err := p.signed()
	if err != nil {
		return number{}, err
	}
	if e := exponent.exact; e != nil && e.IsInt() && base.exact != nil && math.Abs(exponent.float) <= 64 &&
		(exponent.float >= 0 || base.float != 0) {
		n := int(exponent.float)
		out := big.NewRat(1, 1)
		for range max(n, -n) {
			out.Mul(out, base.exact)
		}
		if n < 0 {
			out.Inv(out)
		}
		return exact(out), nil
	}
	return number{nil, math.Pow(base.float, exponent.float)}, nil
}

func (p *parser) atom() (number, error) {
	p.space()
	if p.take('(') {
		v, err := p.sum()
		if err == nil && !p.take(')') {
			err = fmt.Errorf("missing closing parenthesis")
		}
		return v, err
	}
	if minutes, ok := p.clock(); ok {
		return exact(new(big.Rat).SetInt64(minutes)), nil
	}
	start := p.at
	for p.at < len(p.text) && (p.text[p.at] >= '0' && p.text[p.at] <= '9' || p.text[p.at] == '.') {
		p.at++
	}
	if p.at > start {
		if p.at+1 < len(p.text) && p.text[p.at] == 'e' &&
			(p.text[p.at+1] == '-' || p.text[p.at+1] >= '0' && p.text[p.at+1] <= '9') {
			p.at += 2
			for p.at < len(p.text) && p.text[p.at] >= '0' && p.text[p.at] <= '9' {
				p.at++
			}
		}
		digits := p.text[start:p.at]
		r, ok := new(big.Rat).SetString(digits)
		if !ok || len(digits) > 60 {
			return number{}, fmt.Errorf("not a number: %q", digits)
		}
		if rest := strings.TrimPrefix(p.text[p.at:], " min"); len(rest) < len(p.text[p.at:]) &&
			(rest == "" || rest[0] == ' ' || rest[0] == ')') {
			p.at = len(p.text) - len(rest) // minutes beside a time of day
		}
		return exact(r), nil
	}
	for p.at < len(p.text) {
		r, n := utf8.DecodeRuneInString(p.text[p.at:])
		if !unicode.IsLetter(r) && !(p.at > start && unicode.IsDigit(r)) {
			break
		}
		p.at += n
	}
	name := p.text[start:p.at]
	switch name {
	case "":
		if start < len(p.text) {
			return number{}, fmt.Errorf("cannot read %q", p.text[start:])
		}
		return number{}, fmt.Errorf("line ends too early")
	case "π", "pi":
		return number{nil, math.Pi}, nil
	}
	if !p.take('(') {
		return number{}, fmt.Errorf("unknown name %q", name)
	}
	var args []number
	for {
		v, err := p.sum()
		if err != nil {
			return number{}, err
		}
		args = append(args, v)
		if p.take(')') {
			break
		}
		if !p.take(',') && !p.take(';') {
			return number{}, fmt.Errorf("missing closing parenthesis after %s", name)
		}
	}
	return call(name, args)
}

func call(name string, args []number) (number, error) {
	if r, ok := exactly(name, args); ok {
		return exact(r), nil
	}
	one := map[string]func(float64) float64{
		"exp": math.Exp, "ln": math.Log, "log10": math.Log10, "sqrt": math.Sqrt, "abs": math.Abs,
		"sin": math.Sin, "cos": math.Cos, "tan": math.Tan,
		"floor": math.Floor, "ceil": math.Ceil, "J0": math.J0, "J1": math.J1,
	}
	if f, ok := one[name]; ok && len(args) == 1 {
		return number{nil, f(args[0].float)}, nil
	}
	if (name == "min" || name == "max") && len(args) > 0 {
		best := args[0]
		for _, a := range args[1:] {
			if name == "min" && a.float < best.float || name == "max" && a.float > best.float {
				best = a
			}
		}
		return best, nil
	}
	return number{}, fmt.Errorf("unknown function %s with %d arguments", name, len(args))
}

// exactly computes the functions of one fraction that give a fraction.
func exactly(name string, args []number) (*big.Rat, bool) {
	if len(args) != 1 || args[0].exact == nil {
		return nil, false
	}
	x := args[0].exact
	down := func(x *big.Rat) *big.Rat { return new(big.Rat).SetInt(new(big.Int).Div(x.Num(), x.Denom())) }
	switch name {
	case "abs":
		return new(big.Rat).Abs(x), true
	case "floor":
		return down(x), true
	case "ceil":
		return new(big.Rat).Neg(down(new(big.Rat).Neg(x))), true
	}
	return nil, false
}
