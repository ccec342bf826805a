package main

import (
	"go/ast"
	"go/token"
	"go/types"
	"slices"
)

// The kinds of errors.
const (
	relation    = "relation"     // a boundary moved, or equal for unequal
	arithmetic  = "arithmetic"   // one operator for its opposite
	constant    = "constant"     // off by one, or by one percent
	dropped     = "dropped"      // a statement left out
	negated     = "negated"      // a condition turned round
	logic       = "logic"        // and for or
	exchanged   = "exchanged"    // two arguments of one type
	otherMethod = "other method" // the opposite method or function
	withheld    = "withheld"     // nothing in place of a result
	early       = "early"        // a function that returns at once
)

// collector walks one file.
type collector struct {
	src   *source
	file  *file
	skip  []string
	out   []*mutant
	stack []ast.Node
	in    string
}

// collect finds every place of the package where an error can be made.
func (s *source) collect(skip []string) []*mutant {
	var out []*mutant
	for _, f := range s.files {
		c := &collector{src: s, file: f, skip: skip}
		ast.Inspect(f.tree, c.visit)
		out = append(out, c.out...)
	}
	return out
}

func (c *collector) offset(p token.Pos) int { return c.src.fset.Position(p).Offset }

func (c *collector) text(n ast.Node) string { return c.file.text[c.offset(n.Pos()):c.offset(n.End())] }

func (c *collector) typeOf(e ast.Expr) types.Type { return c.src.info.TypeOf(e) }

// add notes a mutant in place of a node. What is told may be shorter than the node.
func (c *collector) add(kind string, form form, n ast.Node, mutated, results, told string) {
	c.out = append(c.out, &mutant{
		file: c.file, line: c.src.fset.Position(n.Pos()).Line, kind: kind, in: c.in, form: form,
		start: c.offset(n.Pos()), end: c.offset(n.End()), mutated: mutated, results: results, told: oneLine(told),
	})
}

func (c *collector) visit(n ast.Node) bool {
	if n == nil {
		if _, ok := c.stack[len(c.stack)-1].(*ast.FuncDecl); ok {
			c.in = ""
		}
		c.stack = c.stack[:len(c.stack)-1]
		return true
	}
	if !c.enters(n) {
		return false
	}
	c.stack = append(c.stack, n)
	switch n := n.(type) {
	case *ast.BinaryExpr:
		c.binary(n)
	case *ast.BasicLit:
		c.literal(n)
	case *ast.IfStmt:
		if b, ok := n.Cond.(*ast.BinaryExpr); !ok || b.Op != token.EQL && b.Op != token.NEQ { // which is a relation
			c.add(negated, truth, n.Cond, "!("+c.text(n.Cond)+")", "", "not: "+c.text(n.Cond))
		}
	case *ast.CallExpr:
		c.call(n)
	case *ast.ExprStmt, *ast.IncDecStmt, *ast.AssignStmt:
		c.drop(n.(ast.Stmt))
	case *ast.ReturnStmt:
		c.withhold(n)
	}
	return true
}

// enters leaves out imports, types, keys of lists, and the functions that are skipped; it notes where it is.
func (c *collector) enters(n ast.Node) bool {
	switch n := n.(type) {
	case *ast.GenDecl:
		return n.Tok != token.IMPORT && n.Tok != token.TYPE
	case *ast.ArrayType, *ast.StructType:
		return false
	case *ast.FuncDecl:
		c.in = n.Name.Name
		if n.Recv != nil {
			t := n.Recv.List[0].Type
			if p, ok := t.(*ast.StarExpr); ok {
				t = p.X
			}
			if g, ok := t.(*ast.IndexExpr); ok {
				t = g.X
			}
			c.in = c.text(t) + "." + c.in
		}
		if slices.Contains(c.skip, n.Name.Name) || slices.Contains(c.skip, c.in) {
			return false
		}
		c.returnEarly(n)
	case ast.Expr:
		call, ok := c.parent().(*ast.CallExpr)
		if ok && len(call.Args) == 3 && call.Args[2] == n && c.text(call.Fun) == "make" {
			return false // how much room is made changes no answer
		}
		kv, ok := c.parent().(*ast.KeyValueExpr)
		if !ok || kv.Key != n {
			return true
		}
		list := c.stack[len(c.stack)-2].(*ast.CompositeLit)
		switch c.typeOf(list).Underlying().(type) {
		case *types.Array, *types.Slice:
			return false // the compiler wants a constant there
		}
	}
	return true
}

func (c *collector) parent() ast.Node {
	if len(c.stack) == 0 {
		return nil
	}
	return c.stack[len(c.stack)-1]
}

// returnEarly makes a function of more than one statement return nothing at once.
func (c *collector) returnEarly(f *ast.FuncDecl) {
	if f.Body == nil || len(f.Body.List) < 2 {
		return
	}
	sig := c.src.info.Defs[f.Name].Type().(*types.Signature)
	zeros, ok := c.nothing(sig.Results())
	if !ok {
		return
	}
	at := c.offset(f.Body.Lbrace) + 1
	c.out = append(c.out, &mutant{
		file: c.file, line: c.src.fset.Position(f.Pos()).Line, kind: early, in: c.in, form: before,
		start: at, end: at, mutated: "return " + zeros, told: "returns at once",
	})
}

// drop leaves a statement out, where it stands in a list of statements.
func (c *collector) drop(s ast.Stmt) {
	switch c.stack[len(c.stack)-2].(type) {
	case *ast.BlockStmt, *ast.CaseClause, *ast.CommClause:
	default:
		return
	}
	kept := "" // what the compiler wants to see used
	switch s := s.(type) {
	case *ast.IncDecStmt:
		kept = "_ = " + c.text(s.X)
	case *ast.AssignStmt:
		if s.Tok == token.DEFINE || !slices.ContainsFunc(s.Lhs, notBlank) {
			return
		}
		for i := range s.Lhs {
			if i > 0 {
				kept += ", "
			}
			kept += "_"
		}
		kept += " = " + c.file.text[c.offset(s.Rhs[0].Pos()):c.offset(s.End())]
	}
	c.add(dropped, statement, s, kept, "", "without: "+c.text(s))
}

func notBlank(e ast.Expr) bool {
	id, ok := e.(*ast.Ident)
	return !ok || id.Name != "_"
}

// withhold returns nothing in place of one result, if there is any.
func (c *collector) withhold(r *ast.ReturnStmt) {
	results := c.signature().Results()
	if len(r.Results) == 0 || len(r.Results) != results.Len() {
		return
	}
	for i, e := range r.Results {
		if c.isNothing(e) {
			continue
		}
		zero, ok := c.zero(results.At(i).Type())
		if !ok {
			continue
		}
		before := c.file.text[c.offset(r.Pos()):c.offset(e.Pos())]
		after := c.file.text[c.offset(e.End()):c.offset(r.End())]
		c.add(withheld, statement, r, before+zero+after, "", "nothing for: "+c.text(e))
	}
}

// signature is that of the function around the current node.
func (c *collector) signature() *types.Signature {
	for i := len(c.stack) - 1; i >= 0; i-- {
		switch f := c.stack[i].(type) {
		case *ast.FuncLit:
			return c.typeOf(f).(*types.Signature)
		case *ast.FuncDecl:
			return c.src.info.Defs[f.Name].Type().(*types.Signature)
		}
	}
	return types.NewSignatureType(nil, nil, nil, nil, nil, false)
}
