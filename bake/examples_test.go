package bake

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"strings"
	"testing"
)

// Every exported function has a runnable example with a checked output.
func TestEveryFunctionHasAnExample(t *testing.T) {
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
			if !ok || fn.Recv != nil {
				continue
			}
			name := fn.Name.Name
			switch {
			case strings.HasSuffix(e.Name(), "_test.go"):
				if base, ok := strings.CutPrefix(name, "Example"); ok {
					base, _, _ = strings.Cut(base, "_")
					examples[base] = true
				}
			case fn.Name.IsExported():
				functions = append(functions, name)
			}
		}
	}
	if len(functions) < 30 {
		t.Fatalf("only %d functions found", len(functions))
	}
	for _, name := range functions {
		if !examples[name] {
			t.Errorf("%s has no example", name)
		}
	}
}
