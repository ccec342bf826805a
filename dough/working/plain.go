package working

import (
	"strconv"
	"strings"
)

// How tightly an operation binds, so that parentheses stand where they are needed and nowhere else.
const (
	bindSum = iota
	bindProduct
	bindSign
	bindPower
	bindAtom
)

// binds is how tightly the text of a node holds together.
func (n *node) binds() int {
	switch n.op {
	case opNumber:
		switch {
		case n.shown != "":
			return bindAtom
		case n.literal.exponent != 0:
			return bindProduct
		case n.negative():
			return bindSign
		}
	case opAdd, opSubtract:
		return bindSum
	case opSum:
		if len(n.args) == 1 && n.args[0].op != opSymbol {
			return n.args[0].binds()
		}
		return bindSum
	case opMultiply, opDivide:
		return bindProduct
	case opNegate:
		return bindSign
	case opPower:
		return bindPower
	}
	return bindAtom
}

// negative reports whether the text of a node begins with a minus of its own.
func (n *node) negative() bool {
	if (n.op == opMultiply || n.op == opDivide) && len(n.args) > 0 {
		return n.args[0].negative()
	}
	return n.op == opNegate || n.op == opNumber && n.shown == "" && strings.HasPrefix(n.literal.mantissa, "−")
}

// parenthesized reports whether an operand of a node stands in parentheses: where it would be read wrong without, and
// where the formula groups it, as in T + (T − F).
func (n *node) parenthesized(operand int) bool {
	a := n.args[operand]
	if operand > 0 && a.negative() {
		return true
	}
	switch n.op {
	case opAdd, opSubtract:
		return a.binds() < bindSum+operand
	case opMultiply, opDivide:
		return a.binds() < bindProduct+operand
	case opNegate:
		return a.binds() <= bindSign
	case opPower:
		return a.binds() < bindAtom
	}
	return false
}

// plain writes a formula in plain characters.
func (r Reader) plain(n *node, names *names) string {
	part := func(i int) string {
		text := r.plain(n.args[i], names)
		if n.parenthesized(i) {
			return "(" + text + ")"
		}
		return text
	}
	switch n.op {
	case opNumber:
		return r.literalText(n)
	case opSymbol:
		return names.name(n.symbol)
	case opIn:
		return r.plain(n.args[0], names)
	case opPi:
		return "π"
	case opAdd:
		return part(0) + " + " + part(1)
	case opSubtract:
		return part(0) + " − " + part(1)
	case opMultiply:
		return part(0) + " × " + part(1)
	case opDivide:
		return part(0) + " ÷ " + part(1)
	case opPower:
		return part(0) + "^" + part(1)
	case opNegate:
		return "−" + part(0)
	case opSum:
		if names != nil && (len(n.args) == 0 || n.args[0].op == opSymbol) {
			return "Σ " + names.name(n.symbol)
		}
		var terms []string
		for _, a := range n.args {
			text := r.plain(a, names)
			if a.binds() == bindSum || a.negative() {
				text = "(" + text + ")"
			}
			terms = append(terms, text)
		}
		return strings.Join(terms, " + ")
	}
	var args []string
	for _, a := range n.args {
		args = append(args, r.plain(a, names))
	}
	return n.name + "(" + strings.Join(args, r.separator()) + ")"
}

// separator stands between two numbers: a comma, unless it is the decimal sign.
func (r Reader) separator() string {
	if r.Language.Decimal == "," {
		return "; "
	}
	return ", "
}

// literalText writes a number of a formula, a small one as a power of ten.
func (r Reader) literalText(n *node) string {
	if n.shown != "" {
		return n.shown
	}
	text := r.number(n.literal.mantissa)
	switch e := n.literal.exponent; {
	case e < 0:
		text += " × 10^(" + minus(strconv.Itoa(e)) + ")"
	case e > 0:
		text += " × 10^" + strconv.Itoa(e)
	}
	return text
}
