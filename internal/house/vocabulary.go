package house

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strings"
)

// Vocabulary reads the source below the root of the repository and lists the keys by which a language finds the words
// that are no sentences: those of enumerations, "bake.Style/lean hearth", the subjects of cautions,
// "working.Subject/burns", what an enumeration is called, "enum.Noun/style of bread", and what package working shows
// for a quantity that is none, "working.Word/invalid mass".
func Vocabulary(root string) ([]string, error) {
	var keys []string
	for _, room := range everything {
		err := filepath.WalkDir(filepath.Join(root, room), func(path string, d fs.DirEntry, err error) error {
			switch {
			case err != nil:
				return err
			case d.IsDir() && (d.Name() == "testdata" || d.Name() == "xcheck" || d.Name() == "house"):
				return filepath.SkipDir
			case !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go"):
				return nil
			}
			f, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
			if err != nil {
				return err
			}
			keys = append(keys, wordKeys(f)...)
			return nil
		})
		if err != nil {
			return nil, err
		}
	}
	slices.Sort(keys)
	return slices.Compact(keys), nil
}

// wordKeys lists the keys of the words in a file.
func wordKeys(f *ast.File) []string {
	var out []string
	ast.Inspect(f, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.CallExpr:
			out = append(out, enumKeys(f.Name.Name, n)...)
			if s, ok := n.Fun.(*ast.SelectorExpr); ok && s.Sel.Name == "word" && f.Name.Name == "working" {
				out = append(out, keysOf("working.Word/", n.Args)...)
			}
		case *ast.KeyValueExpr:
			if key, ok := n.Key.(*ast.Ident); ok && key.Name == "Subject" {
				out = append(out, keysOf("working.Subject/", []ast.Expr{n.Value})...)
			}
		case *ast.ValueSpec:
			if s, ok := n.Type.(*ast.SelectorExpr); ok && s.Sel.Name == "Subject" {
				out = append(out, keysOf("working.Subject/", n.Values)...)
			}
		}
		return true
	})
	return out
}

// enumKeys are the noun and the words of a call enum.Of[Type](noun, words...).
func enumKeys(room string, call *ast.CallExpr) []string {
	of, ok := call.Fun.(*ast.IndexExpr)
	if !ok {
		return nil
	}
	if s, ok := of.X.(*ast.SelectorExpr); !ok || s.Sel.Name != "Of" || len(call.Args) == 0 {
		return nil
	}
	noun := keysOf("enum.Noun/", call.Args[:1])
	switch t := of.Index.(type) {
	case *ast.Ident:
		return append(noun, keysOf(room+"."+t.Name+"/", call.Args[1:])...)
	case *ast.SelectorExpr:
		if x, ok := t.X.(*ast.Ident); ok {
			return append(noun, keysOf(x.Name+"."+t.Sel.Name+"/", call.Args[1:])...)
		}
	}
	return nil
}

func keysOf(prefix string, words []ast.Expr) []string {
	var out []string
	for _, w := range words {
		if word, ok := text(w); ok && word != "" {
			out = append(out, prefix+word)
		}
	}
	return out
}
