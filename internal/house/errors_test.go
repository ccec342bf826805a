package house

import (
	"go/ast"
	"go/token"
	"testing"
)

// A room names the Go path of what it refuses; the path of the data form is derived from the tags of the input
// (Problems.ErrFor), so that no room keeps a second table of names.
func TestErrorsNameGoPaths(t *testing.T) {
	parsed(t, func(p listed, _ string, set *token.FileSet, f *ast.File) {
		if p.ImportPath == module+"/dough/quantity" {
			return
		}
		ast.Inspect(f, func(n ast.Node) bool {
			lit, ok := n.(*ast.CompositeLit)
			if !ok {
				return true
			}
			if s, ok := lit.Type.(*ast.SelectorExpr); !ok || s.Sel.Name != "InputError" {
				return true
			}
			for _, e := range lit.Elts {
				if kv, ok := e.(*ast.KeyValueExpr); ok {
					if key, ok := kv.Key.(*ast.Ident); ok && key.Name == "Path" {
						t.Errorf("%s: an InputError is made with a Path; name the GoPath", set.Position(kv.Pos()))
					}
				}
			}
			return true
		})
	})
}
