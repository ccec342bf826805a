package working

import (
	"math"
	"math/big"
	"strings"
)

// evaluate computes an expression, with the numbers of its symbols from look.
func (n *node) evaluate(look func(*node) float64) float64 {
	switch n.op {
	case opNumber:
		return n.literal.value
	case opSymbol, opIn:
		return look(n)
	case opPi:
		return math.Pi
	}
	x := make([]float64, len(n.args))
	for i, a := range n.args {
		x[i] = a.evaluate(look)
	}
	switch n.op {
	case opSum:
		sum := 0.0
		for _, y := range x {
			sum += y
		}
		return sum
	case opAdd:
		return x[0] + x[1]
	case opSubtract:
		return x[0] - x[1]
	case opMultiply:
		return x[0] * x[1]
	case opDivide:
		return x[0] / x[1]
	case opPower:
		return math.Pow(x[0], x[1])
	case opNegate:
		return -x[0]
	}
	return function(n.name, x)
}

func function(name string, x []float64) float64 {
	if len(x) == 0 {
		return math.NaN()
	}
	switch name {
	case "exp":
		return math.Exp(x[0])
	case "ln":
		return math.Log(x[0])
	case "log10":
		return math.Log10(x[0])
	case "sqrt":
		return math.Sqrt(x[0])
	case "sin":
		return math.Sin(x[0])
	case "cos":
		return math.Cos(x[0])
	case "tan":
		return math.Tan(x[0])
	case "J0":
		return math.J0(x[0])
	case "J1":
		return math.J1(x[0])
	case "abs":
		return math.Abs(x[0])
	case "floor":
		return math.Floor(x[0])
	case "ceil":
		return math.Ceil(x[0])
	}
	best := x[0]
	for _, y := range x[1:] {
		if name == "min" {
			best = min(best, y)
		} else {
			best = max(best, y)
		}
	}
	return best
}

// rational computes an expression of literals exactly, where only + − × ÷, small whole powers and functions that round
// or choose occur.
func (n *node) rational() (*big.Rat, bool) {
	switch n.op {
	case opNumber:
		return n.literal.rational()
	case opSymbol, opIn, opPi:
		return nil, false
	}
	x := make([]*big.Rat, len(n.args))
	for i, a := range n.args {
		r, ok := a.rational()
		if !ok {
			return nil, false
		}
		x[i] = r
	}
	switch n.op {
	case opSum:
		sum := new(big.Rat)
		for _, y := range x {
			sum.Add(sum, y)
		}
		return sum, true
	case opAdd:
		return new(big.Rat).Add(x[0], x[1]), true
	case opSubtract:
		return new(big.Rat).Sub(x[0], x[1]), true
	case opMultiply:
		return new(big.Rat).Mul(x[0], x[1]), true
	case opNegate:
		return new(big.Rat).Neg(x[0]), true
	case opDivide:
		if x[1].Sign() == 0 {
			return nil, false
		}
		return new(big.Rat).Quo(x[0], x[1]), true
	case opCall:
		return rationalFunction(n.name, x)
	}
	if !x[1].IsInt() || x[1].Num().CmpAbs(big.NewInt(8)) > 0 || x[1].Sign() < 0 {
		return nil, false
	}
	out := big.NewRat(1, 1)
	for range x[1].Num().Int64() {
		out.Mul(out, x[0])
	}
	return out, true
}

func rationalFunction(name string, x []*big.Rat) (*big.Rat, bool) {
	if len(x) == 0 {
		return nil, false
	}
	switch name {
	case "abs":
		return new(big.Rat).Abs(x[0]), true
	case "floor":
		return floor(x[0]), true
	case "ceil":
		return new(big.Rat).Neg(floor(new(big.Rat).Neg(x[0]))), true
	case "min", "max":
		best := x[0]
		for _, y := range x[1:] {
			if (y.Cmp(best) < 0) == (name == "min") {
				best = y
			}
		}
		return best, true
	}
	return nil, false
}

func floor(x *big.Rat) *big.Rat {
	return new(big.Rat).SetInt(new(big.Int).Div(x.Num(), x.Denom())) // Div rounds down, as the denominator is positive
}

func (l literalNumber) rational() (*big.Rat, bool) {
	if l.exponent < -30 || l.exponent > 30 || len(l.mantissa) > 60 {
		return nil, false
	}
	r, ok := new(big.Rat).SetString(strings.Replace(l.mantissa, "−", "-", 1))
	if !ok {
		return nil, false
	}
	ten := new(big.Rat).SetInt(new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(max(l.exponent, -l.exponent))), nil))
	if l.exponent < 0 {
		return r.Quo(r, ten), true
	}
	return r.Mul(r, ten), true
}

// symbols lists the symbols of an expression in order of appearance, each once.
func (n *node) symbols() []*node {
	var out []*node
	seen := map[bindingKey]bool{}
	var walk func(*node)
	walk = func(n *node) {
		if n.op == opSymbol || n.op == opSum {
			if k := n.symbol.key(); !seen[k] {
				seen[k] = true
				out = append(out, n)
			}
			return
		}
		for _, a := range n.args {
			walk(a)
		}
	}
	walk(n)
	return out
}

// replace makes a new expression with every symbol, and every symbol in another unit, replaced.
func (n *node) replace(with func(*node) *node) *node {
	if n.op == opSymbol || n.op == opIn {
		return with(n)
	}
	if len(n.args) == 0 {
		return n
	}
	out := *n
	out.args = make([]*node, len(n.args))
	for i, a := range n.args {
		out.args[i] = a.replace(with)
	}
	return &out
}

// A bindingKey is the identity of a symbol: what it is called, what it stands for, and how much it is.
type bindingKey struct {
	name    string
	meaning Message
	unit    Unit
	bits    uint64
	fixed   bool
	column  bool
}

func (b *binding) key() bindingKey {
	return bindingKey{b.name, b.meaning, b.value.Unit, math.Float64bits(b.value.Number), b.fixed, b.column}
}
