package main

import (
	"fmt"
	"go/ast"
	goconstant "go/constant"
	"go/token"
	"go/types"
	"strings"
)

var (
	relations = map[token.Token]token.Token{
		token.LSS: token.LEQ, token.LEQ: token.LSS, token.GTR: token.GEQ, token.GEQ: token.GTR,
		token.EQL: token.NEQ, token.NEQ: token.EQL,
	}
	opposites = map[token.Token]token.Token{
		token.ADD: token.SUB, token.SUB: token.ADD, token.MUL: token.QUO, token.QUO: token.MUL, token.REM: token.MUL,
	}
	connectives  = map[token.Token]token.Token{token.LAND: token.LOR, token.LOR: token.LAND}
	otherMethods = pairs("Add Sub", "Mul Div", "Before After", "Less Greater", "LessThan GreaterThan",
		"LessThanOrEqual GreaterThanOrEqual", "Floor Ceil", "Min Max", "min max", "IsPositive IsNegative",
		"HasPrefix HasSuffix", "First Last", "Low High", "Earliest Latest", "Round Trunc", "RoundToEven Round")
)

func pairs(names ...string) map[string]string {
	out := map[string]string{}
	for _, n := range names {
		a, b, _ := strings.Cut(n, " ")
		out[a] = b
		if _, ok := out[b]; !ok {
			out[b] = a
		}
	}
	return out
}

func (c *collector) binary(b *ast.BinaryExpr) {
	with := func(op token.Token) string {
		at := c.offset(b.OpPos)
		return c.file.text[c.offset(b.Pos()):at] + op.String() + c.file.text[at+len(b.Op.String()):c.offset(b.End())]
	}
	told := func(op token.Token) string { return fmt.Sprintf("%s for %s in: %s", op, b.Op, c.text(b)) }
	if op, ok := relations[b.Op]; ok {
		c.add(relation, truth, b, with(op), "", told(op))
	}
	if op, ok := connectives[b.Op]; ok {
		c.add(logic, truth, b, with(op), "", told(op))
	}
	if op, ok := opposites[b.Op]; ok && isNumber(c.typeOf(b)) {
		c.inExpression(arithmetic, b, with(op), told(op))
	}
}

func isNumber(t types.Type) bool {
	if t == nil {
		return false
	}
	b, ok := t.Underlying().(*types.Basic)
	return ok && b.Info()&types.IsNumeric != 0
}

func (c *collector) literal(l *ast.BasicLit) {
	changed := ""
	switch l.Kind {
	case token.INT:
		changed = "(" + l.Value + " + 1)"
	case token.FLOAT:
		changed = "(" + l.Value + " * 1.01)"
		if v, _ := goconstant.Float64Val(c.src.info.Types[l].Value); v == 0 {
			changed = "0.01"
		}
	default:
		return
	}
	c.inExpression(constant, l, changed, changed+" in: "+c.text(c.around(l)))
}

// around is the nearest statement, declaration or element that holds an expression, for people to read.
func (c *collector) around(e ast.Expr) ast.Node {
	at := ast.Node(e)
	for i := len(c.stack) - 2; i >= 0; i-- {
		switch c.stack[i].(type) {
		case *ast.BinaryExpr, *ast.CallExpr, *ast.UnaryExpr, *ast.ParenExpr, *ast.KeyValueExpr, *ast.ValueSpec,
			*ast.ReturnStmt, *ast.AssignStmt, *ast.IndexExpr, *ast.SliceExpr:
			at = c.stack[i]
			continue
		}
		break
	}
	return at
}

// inExpression changes an expression of a number. Within a constant expression, which Go evaluates exactly, the whole
// of it is what is chosen.
func (c *collector) inExpression(kind string, e ast.Expr, changed, told string) {
	whole := e
	for i := len(c.stack) - 1; i >= 0; i-- {
		outer, ok := c.stack[i].(ast.Expr)
		if !ok || c.src.info.Types[outer].Value == nil || !isNumber(c.typeOf(outer)) {
			break
		}
		whole = outer
	}
	c.chosen(kind, e, whole, changed, told)
}

// chosen replaces one expression within another, of which the value is what is chosen at run time.
func (c *collector) chosen(kind string, e, whole ast.Expr, changed, told string) {
	form := value
	results, ok := c.named(types.Default(c.typeOf(whole)))
	if !ok || c.inConstant() {
		form = fixed
	}
	mutated := c.file.text[c.offset(whole.Pos()):c.offset(e.Pos())] + changed +
		c.file.text[c.offset(e.End()):c.offset(whole.End())]
	c.add(kind, form, whole, mutated, results, told)
}

func (c *collector) inConstant() bool {
	for _, n := range c.stack {
		if d, ok := n.(*ast.GenDecl); ok && d.Tok == token.CONST {
			return true
		}
	}
	return false
}

// call exchanges arguments of one type and takes the opposite method.
func (c *collector) call(call *ast.CallExpr) {
	tv := c.src.info.Types[call.Fun]
	switch c.parent2().(type) {
	case *ast.DeferStmt, *ast.GoStmt:
		return
	}
	if tv.IsType() {
		return
	}
	c.opposite(call)
	name := ""
	switch f := call.Fun.(type) {
	case *ast.Ident:
		name = f.Name
	case *ast.SelectorExpr:
		name = f.Sel.Name
	}
	switch name {
	case "min", "max", "Min", "Max", "append", "Hypot", "Equal": // which is the same
		return
	}
	first := 0
	if name == "Tell" {
		first = 2 // the house tests look at the identifier and the template of every sentence
	}
	for i := first; i+1 < len(call.Args); i++ {
		a, b := call.Args[i], call.Args[i+1]
		spread := call.Ellipsis.IsValid() && i+2 == len(call.Args)
		if spread || c.text(a) == c.text(b) || !types.Identical(c.typeOf(a), c.typeOf(b)) {
			continue
		}
		t := c.file.text
		mutated := t[c.offset(call.Pos()):c.offset(a.Pos())] + c.text(b) +
			t[c.offset(a.End()):c.offset(b.Pos())] + c.text(a) + t[c.offset(b.End()):c.offset(call.End())]
		c.result(exchanged, call, mutated, "exchanged: "+c.text(a)+" and "+c.text(b)+" in: "+c.text(call))
	}
}

func (c *collector) parent2() ast.Node {
	if len(c.stack) < 2 {
		return nil
	}
	return c.stack[len(c.stack)-2]
}

// opposite takes the opposite of a method or function, if there is one of the same type.
func (c *collector) opposite(call *ast.CallExpr) {
	var name *ast.Ident
	var other types.Object
	switch f := call.Fun.(type) {
	case *ast.Ident:
		name = f
		if _, ok := c.src.info.Uses[f].(*types.Builtin); ok && len(call.Args) > 1 && otherMethods[f.Name] != "" {
			c.result(otherMethod, call, otherMethods[f.Name]+strings.TrimPrefix(c.text(call), f.Name),
				otherMethods[f.Name]+" for "+c.text(call))
			return
		}
	case *ast.SelectorExpr:
		name = f.Sel
		if s := c.src.info.Selections[f]; s != nil {
			other, _, _ = types.LookupFieldOrMethod(s.Recv(), true, c.src.pkg, otherMethods[name.Name])
		} else if o := c.src.info.Uses[name]; o != nil && o.Pkg() != nil {
			other = o.Pkg().Scope().Lookup(otherMethods[name.Name])
		}
	}
	if name == nil || other == nil || otherMethods[name.Name] == "" ||
		!types.Identical(other.Type(), c.src.info.Uses[name].Type()) {
		return
	}
	at := c.offset(name.Pos())
	mutated := c.file.text[c.offset(call.Pos()):at] + other.Name() + c.file.text[at+len(name.Name):c.offset(call.End())]
	c.result(otherMethod, call, mutated, other.Name()+" for "+c.text(call))
}

// result changes a call, of any number of results.
func (c *collector) result(kind string, call *ast.CallExpr, mutated, told string) {
	if b := c.src.info.Types[call]; b.Value != nil {
		return
	}
	form := value
	var results string
	ok := true
	switch t := c.typeOf(call).(type) {
	case nil:
	case *types.Tuple:
		results, ok = c.tuple(t)
	default:
		results, ok = c.named(types.Default(t))
	}
	if !ok {
		form = fixed
	}
	c.add(kind, form, call, mutated, results, told)
}
