package house

import (
	"go/ast"
	"go/token"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// capital is a word that is written like an exported identifier, and flagged one of a command line.
var (
	capital = regexp.MustCompile(`\b[A-Z][a-z]+[A-Za-z]*\b`)
	flagged = regexp.MustCompile(`(^|\s)--[a-z]`)
)

// TestWantsSpeakToPeople: what an error says is accepted is read by whoever filled in a form or a file. It names no
// field or constant of Go and no flag of a program: the path beside it says where.
func TestWantsSpeakToPeople(t *testing.T) {
	names := map[string]bool{}
	parsed(t, func(_ listed, _ string, _ *token.FileSet, f *ast.File) {
		ast.Inspect(f, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.Field:
				for _, name := range n.Names {
					names[name.Name] = true
				}
			case *ast.ValueSpec:
				for _, name := range n.Names {
					names[name.Name] = true
				}
			case *ast.TypeSpec:
				names[n.Name.Name] = true
			}
			return true
		})
	})
	for _, word := range []string{"Saturday", "Sunday", "Monday", "Celsius", "Fahrenheit"} {
		delete(names, word)
	}
	o := offences{}
	wants := 0
	parsed(t, func(p listed, file string, set *token.FileSet, f *ast.File) {
		room := strings.TrimPrefix(p.ImportPath, module+"/")
		for _, e := range wantsOf(f) {
			for _, text := range literals(e) {
				wants++
				for _, word := range capital.FindAllString(text, -1) {
					if names[word] {
						o.add(room+"/"+file, "%s: %q names %s", set.Position(e.Pos()), text, word)
					}
				}
				if flagged.MatchString(text) {
					o.add(room+"/"+file, "%s: %q names a flag", set.Position(e.Pos()), text)
				}
			}
		}
	})
	o.judge(t, nil)
	if wants < 300 {
		t.Errorf("only %d texts are looked at", wants)
	}
}

// wantsOf lists what the errors made in a file say is accepted.
func wantsOf(f *ast.File) []ast.Expr {
	var out []ast.Expr
	ast.Inspect(f, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.KeyValueExpr:
			if key, ok := n.Key.(*ast.Ident); ok && key.Name == "Want" {
				out = append(out, n.Value)
			}
		case *ast.CallExpr:
			s, ok := n.Fun.(*ast.SelectorExpr)
			if !ok {
				return true
			}
			at := map[string]int{"Required": 1, "Add": 2, "AddCode": 3}[s.Sel.Name]
			if at > 0 && len(n.Args) > at {
				out = append(out, n.Args[at])
			}
		}
		return true
	})
	return out
}

// literals are the texts in an expression.
func literals(e ast.Expr) []string {
	var out []string
	ast.Inspect(e, func(n ast.Node) bool {
		if lit, ok := n.(*ast.BasicLit); ok && lit.Kind == token.STRING {
			if text, err := strconv.Unquote(lit.Value); err == nil {
				out = append(out, text)
			}
		}
		return true
	})
	return out
}
