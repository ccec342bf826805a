package working

import (
	"math"
	"strconv"
)

// An Expr is an expression over bound symbols: the arithmetic of a step. The formula, the line with the numbers put
// in, the value, LaTeX and MathML are all made from it. It is immutable. A symbol is an Expr too, so that formulas
// read as they are said: T.Plus(T.Minus(flour)).Minus(friction). Operands are an Expr or a plain number.
type Expr struct{ n *node }

type operation int

const (
	opNumber operation = iota // literal
	opSymbol                  // a bound symbol
	opIn                      // a symbol in another unit
	opAdd
	opSubtract
	opMultiply
	opDivide
	opPower
	opNegate
	opCall // name of args
	opPi
	opSum // of the cells of a column, args; symbol is the column
)

type node struct {
	op      operation
	args    []*node
	literal literalNumber
	symbol  *binding
	unit    Unit   // of opIn
	name    string // of opCall
	shown   string // of a number that is a moment or stands beside one, as it is written
}

// A binding is what a symbol stands for.
type binding struct {
	name    string
	meaning Message
	term    Message
	value   Value
	fixed   bool // shown in its own unit to every reader
	column  bool // stands for a column of a table
}

// shown is the value in the unit that the reader sees the symbol in.
func (b *binding) shown(r Reader) Value {
	if b.fixed {
		return b.value
	}
	return b.value.For(r)
}

// Given binds a symbol: its name, such as "T_flour", what it stands for, and its value, which is a quantity of the
// library, a time.Duration, a time.Time, a number, or an [Amount]. What comes behind an underscore is an index. A
// symbol keeps its identity from step to step; two that have the same name and do not stand for the same are told
// apart by a number when the working is told.
func Given(name string, meaning Message, value any) Expr {
	return Expr{&node{op: opSymbol, symbol: &binding{name: name, meaning: meaning, value: valueOf(value)}}}
}

// String is the formula in the names of its symbols; empty for none.
func (x Expr) String() string {
	if x.n == nil {
		return ""
	}
	return Reader{}.plain(x.n, newNames(nil, Reader{}))
}

// MarshalText implements encoding.TextMarshaler: the formula. It does not come back, because its symbols do not.
func (x Expr) MarshalText() ([]byte, error) { return []byte(x.String()), nil }

// Explained adds an entry of the glossary to a symbol: what it is in the words of a student.
func (x Expr) Explained(term Message) Expr {
	if x.n == nil || x.n.op != opSymbol {
		return x
	}
	b := *x.n.symbol
	b.term = term
	return Expr{&node{op: opSymbol, symbol: &b}}
}

// Pi is the number π.
func Pi() Expr { return Expr{&node{op: opPi}} }

// exact is a literal as it is written.
func exact(text string) Expr {
	x, _ := strconv.ParseFloat(text, 64)
	return Expr{&node{op: opNumber, literal: literalNumber{mantissa: minus(text), value: x}}}
}

// operand makes an expression of an Expr or a number.
func operand(v any) *node {
	switch v := v.(type) {
	case Expr:
		if v.n != nil {
			return v.n
		}
	case int:
		return exact(strconv.Itoa(v)).n
	case float64:
		if x := math.Abs(v); v != 0 && (x < 1e-4 || x >= 1e7) {
			mantissa, power := splitPower(v)
			if x < 1e15 && x == math.Trunc(x) && len(mantissa) > 5 {
				return exact(strconv.FormatFloat(v, 'f', -1, 64)).n
			}
			e, _ := strconv.Atoi(power)
			return &node{op: opNumber, literal: literalNumber{mantissa: minus(mantissa), exponent: e, value: v}}
		}
		return exact(strconv.FormatFloat(v, 'f', -1, 64)).n
	}
	return &node{op: opNumber, literal: literalNumber{mantissa: "?", value: math.NaN()}}
}

func splitPower(v float64) (mantissa, power string) {
	text := strconv.FormatFloat(v, 'e', -1, 64)
	for i := range text {
		if text[i] == 'e' {
			return text[:i], text[i+1:]
		}
	}
	return text, "0"
}

func apply(op operation, operands ...any) Expr {
	n := &node{op: op}
	for _, o := range operands {
		n.args = append(n.args, operand(o))
	}
	return Expr{n}
}

func call(name string, operands ...any) Expr {
	x := apply(opCall, operands...)
	x.n.name = name
	return x
}

// Num is a plain number as an expression: Num(1).Minus(loss.Over(100)).
func Num(x float64) Expr { return Expr{operand(x)} }

// Plus is x + y.
func (x Expr) Plus(y any) Expr { return apply(opAdd, x, y) }

// Minus is x − y.
func (x Expr) Minus(y any) Expr { return apply(opSubtract, x, y) }

// Times is x × y.
func (x Expr) Times(y any) Expr { return apply(opMultiply, x, y) }

// Over is x ÷ y.
func (x Expr) Over(y any) Expr { return apply(opDivide, x, y) }

// ToThe is x to the power of y.
func (x Expr) ToThe(y any) Expr { return apply(opPower, x, y) }

// Neg is −x.
func (x Expr) Neg() Expr { return apply(opNegate, x) }

// Share is x ÷ 100: the share that a percentage is.
func (x Expr) Share() Expr { return x.Over(100) }

// In is a symbol in another unit of its dimension. Where the symbol is not shown in that unit to the reader, a
// line of conversion stands before the formula: T.In(Kelvin) gives T_K = T + 273.15.
func (x Expr) In(unit Unit) Expr {
	n := apply(opIn, x)
	n.n.unit = unit
	return n
}

// Exp is e to the power of x.
func Exp(x any) Expr { return call("exp", x) }

// Ln is the natural logarithm.
func Ln(x any) Expr { return call("ln", x) }

// Log10 is the logarithm to the base 10.
func Log10(x any) Expr { return call("log10", x) }

// Sqrt is the square root.
func Sqrt(x any) Expr { return call("sqrt", x) }

// Sin is the sine of an angle in radians.
func Sin(x any) Expr { return call("sin", x) }

// Cos is the cosine of an angle in radians.
func Cos(x any) Expr { return call("cos", x) }

// Tan is the tangent of an angle in radians.
func Tan(x any) Expr { return call("tan", x) }

// J0 is the Bessel function of the first kind and order 0, which is to a cylinder what the cosine is to a slab.
func J0(x any) Expr { return call("J0", x) }

// J1 is the Bessel function of the first kind and order 1.
func J1(x any) Expr { return call("J1", x) }

// Abs is the size without the sign.
func Abs(x any) Expr { return call("abs", x) }

// Floor is the next whole number below.
func Floor(x any) Expr { return call("floor", x) }

// Ceil is the next whole number above.
func Ceil(x any) Expr { return call("ceil", x) }

// Min is the smallest of several.
func Min(x ...any) Expr { return call("min", x...) }

// Max is the largest of several.
func Max(x ...any) Expr { return call("max", x...) }

// Sum adds up several; none is 0.
func Sum(terms ...Expr) Expr {
	if len(terms) == 0 {
		return Num(0)
	}
	out := terms[0]
	for _, t := range terms[1:] {
		out = out.Plus(t)
	}
	return out
}
