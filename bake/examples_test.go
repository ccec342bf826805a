package bake

import (
	"go/ast"
	"go/parser"
	"go/token"
	"go/types"
	"os"
	"strings"
	"testing"
)

// Every exported function, and every method that answers a question or says why it cannot, has a runnable
// example with a checked output.
func TestEveryQuestionHasAnExample(t *testing.T) {
	entries, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	examples, set := map[string]bool{}, token.NewFileSet()
	var functions []string
	for _, e := range entries {
		if !strings.HasSuffix(e.Name(), ".go") {
			continue
		}
		f, err := parser.ParseFile(set, e.Name(), nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range f.Decls {
			fn, ok := d.(*ast.FuncDecl)
			if !ok {
				continue
			}
			name := fn.Name.Name
			if fn.Recv != nil {
				if !answers(fn) {
					continue
				}
				name = types.ExprString(fn.Recv.List[0].Type) + "_" + name
			}
			switch {
			case strings.HasSuffix(e.Name(), "_test.go"):
				if base, ok := strings.CutPrefix(name, "Example"); ok {
					parts := append(strings.Split(base, "_"), "")
					examples[parts[0]], examples[parts[0]+"_"+parts[1]] = true, true
				}
			case fn.Name.IsExported():
				functions = append(functions, name)
			}
		}
	}
	if len(functions) < 24 {
		t.Fatalf("only %d functions found", len(functions))
	}
	for _, name := range functions {
		if !examples[name] {
			t.Errorf("%s has no example", name)
		}
	}
}

// answers reports an exported method whose last result is an error and that is no text or data form.
func answers(fn *ast.FuncDecl) bool {
	if !fn.Name.IsExported() || fn.Type.Results == nil {
		return false
	}
	results := fn.Type.Results.List
	last, ok := results[len(results)-1].Type.(*ast.Ident)
	return ok && last.Name == "error" && len(results) > 1 && !strings.Contains(fn.Name.Name, "Text") &&
		!strings.Contains(fn.Name.Name, "JSON")
}
