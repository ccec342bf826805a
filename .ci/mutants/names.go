package main

import (
	"go/ast"
	"go/types"
	"strings"
)

// named writes a type as the file can say it.
func (c *collector) named(t types.Type) (string, bool) {
	ok := t != nil
	if !ok {
		return "", false
	}
	s := types.TypeString(t, func(p *types.Package) string {
		if p == c.src.pkg {
			return ""
		}
		name, imported := c.file.names[p.Path()]
		ok = ok && imported
		return name
	})
	if b, basic := t.(*types.Basic); basic && b.Info()&types.IsUntyped != 0 || basic && b.Kind() == types.Invalid {
		return "", false
	}
	return s, ok
}

// tuple writes the types of several results, "" for none.
func (c *collector) tuple(t *types.Tuple) (string, bool) {
	var out []string
	for i := range t.Len() {
		s, ok := c.named(t.At(i).Type())
		if !ok {
			return "", false
		}
		out = append(out, s)
	}
	if len(out) == 0 {
		return "", true
	}
	return "(" + strings.Join(out, ", ") + ")", true
}

// zero writes the zero value of a type.
func (c *collector) zero(t types.Type) (string, bool) {
	s, ok := c.named(t)
	return "*new(" + s + ")", ok
}

// nothing writes the zero values of several results.
func (c *collector) nothing(t *types.Tuple) (string, bool) {
	var out []string
	for i := range t.Len() {
		z, ok := c.zero(t.At(i).Type())
		if !ok {
			return "", false
		}
		out = append(out, z)
	}
	return strings.Join(out, ", "), true
}

// isNothing reports whether an expression is plainly the zero value.
func (c *collector) isNothing(e ast.Expr) bool {
	switch e := e.(type) {
	case *ast.Ident:
		if e.Name == "nil" || e.Name == "false" {
			return true
		}
	case *ast.CompositeLit:
		switch c.typeOf(e).Underlying().(type) {
		case *types.Struct, *types.Array:
			return len(e.Elts) == 0
		}
	}
	v := c.src.info.Types[e].Value
	return v != nil && (v.ExactString() == "0" || v.ExactString() == `""` || v.ExactString() == "false")
}
