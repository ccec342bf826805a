package house

import (
	"go/ast"
	"go/token"
	"path"
	"strings"
	"testing"
)

// TestNothingCanBeReassigned: an exported variable can be changed by every program that imports the package. Curves,
// tables and reasons are constants, functions or values behind them.
func TestNothingCanBeReassigned(t *testing.T) {
	o := offences{}
	parsed(t, func(p listed, _ string, _ *token.FileSet, f *ast.File) {
		if !public(p) {
			return // no other program reaches it, and the house does not write to it: TestNoStateChanges
		}
		room := strings.TrimPrefix(p.ImportPath, module+"/")
		for _, d := range f.Decls {
			g, ok := d.(*ast.GenDecl)
			if !ok || g.Tok != token.VAR {
				continue
			}
			for _, s := range g.Specs {
				for _, n := range s.(*ast.ValueSpec).Names {
					if n.IsExported() {
						o.add(room+"."+n.Name, "an exported variable")
					}
				}
			}
		}
	})
	o.judge(t, reassignable)
}

// TestNoStateChanges: nothing writes to a variable of its package after it is made.
func TestNoStateChanges(t *testing.T) {
	variables := map[string]map[string]bool{}
	parsed(t, func(p listed, _ string, _ *token.FileSet, f *ast.File) {
		if variables[p.ImportPath] == nil {
			variables[p.ImportPath] = map[string]bool{}
		}
		for _, d := range f.Decls {
			if g, ok := d.(*ast.GenDecl); ok && g.Tok == token.VAR {
				for _, s := range g.Specs {
					for _, n := range s.(*ast.ValueSpec).Names {
						variables[p.ImportPath][n.Name] = true
					}
				}
			}
		}
	})
	parsed(t, func(p listed, _ string, set *token.FileSet, f *ast.File) {
		for _, d := range f.Decls {
			fn, ok := d.(*ast.FuncDecl)
			if !ok || fn.Body == nil {
				continue
			}
			local, imported := declaredIn(fn), importNames(f)
			written := func(e ast.Expr) {
				name := root(e)
				switch {
				case name == "" || local[name]:
				case variables[p.ImportPath][name]:
					t.Errorf("%s: %s of the package is written to", set.Position(e.Pos()), name)
				case imported[name]:
					t.Errorf("%s: a variable of package %s is written to", set.Position(e.Pos()), name)
				}
			}
			ast.Inspect(fn.Body, func(n ast.Node) bool {
				switch n := n.(type) {
				case *ast.AssignStmt:
					if n.Tok != token.DEFINE {
						for _, e := range n.Lhs {
							written(e)
						}
					}
				case *ast.IncDecStmt:
					written(n.X)
				case *ast.CallExpr:
					if f, ok := n.Fun.(*ast.Ident); ok && (f.Name == "delete" || f.Name == "clear" || f.Name == "copy") &&
						len(n.Args) > 0 {
						written(n.Args[0])
					}
				}
				return true
			})
		}
	})
}

func importNames(f *ast.File) map[string]bool {
	names := map[string]bool{}
	for _, i := range f.Imports {
		name := path.Base(strings.Trim(i.Path.Value, `"`))
		if i.Name != nil {
			name = i.Name.Name
		}
		names[name] = true
	}
	return names
}

// root is the variable that an assignable expression begins with.
func root(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.Ident:
		return e.Name
	case *ast.IndexExpr:
		return root(e.X)
	case *ast.SelectorExpr:
		return root(e.X)
	case *ast.StarExpr:
		return root(e.X)
	case *ast.ParenExpr:
		return root(e.X)
	}
	return ""
}

// declaredIn lists every name that a function declares, wherever: a name that is both is given the benefit of the
// doubt.
func declaredIn(fn *ast.FuncDecl) map[string]bool {
	names := map[string]bool{}
	note := func(fields *ast.FieldList) {
		if fields != nil {
			for _, f := range fields.List {
				for _, n := range f.Names {
					names[n.Name] = true
				}
			}
		}
	}
	note(fn.Recv)
	note(fn.Type.Params)
	note(fn.Type.Results)
	ast.Inspect(fn.Body, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.AssignStmt:
			if n.Tok == token.DEFINE {
				for _, e := range n.Lhs {
					if id, ok := e.(*ast.Ident); ok {
						names[id.Name] = true
					}
				}
			}
		case *ast.RangeStmt:
			for _, e := range []ast.Expr{n.Key, n.Value} {
				if id, ok := e.(*ast.Ident); ok && n.Tok == token.DEFINE {
					names[id.Name] = true
				}
			}
		case *ast.ValueSpec:
			for _, id := range n.Names {
				names[id.Name] = true
			}
		case *ast.FuncLit:
			note(n.Type.Params)
			note(n.Type.Results)
		}
		return true
	})
	return names
}
