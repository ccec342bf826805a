package house

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// Vocabulary reads the source below the root of the repository and lists the keys by which a language finds the words
// that are no sentences: those of enumerations, "bake.Style/lean hearth", the subjects of cautions,
// "working.Subject/burns", what an enumeration is called, "enum.Noun/style of bread", what package working shows
// for a quantity that is none, "working.Word/invalid mass", what a source is that has no author,
// "working.sourceTitle/arithmetic on the values above", and the words by which symbols are told apart,
// "working.Index/flour".
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
			out = append(out, ruleKeys(n)...)
			if s, ok := n.Fun.(*ast.SelectorExpr); ok && s.Sel.Name == "word" && f.Name.Name == "working" {
				out = append(out, keysOf("working.Word/", n.Args)...)
			}
		case *ast.KeyValueExpr:
			if key, ok := n.Key.(*ast.Ident); ok && key.Name == "Subject" {
				out = append(out, keysOf("working.Subject/", []ast.Expr{n.Value})...)
			}
		case *ast.BasicLit:
			out = append(out, indexKeys(f.Name.Name, n)...)
		case *ast.CompositeLit:
			out = append(out, sourceKeys(n)...)
		case *ast.ValueSpec:
			if s, ok := n.Type.(*ast.SelectorExpr); ok && s.Sel.Name == "Subject" {
				out = append(out, keysOf("working.Subject/", n.Values)...)
			}
		}
		return true
	})
	return out
}

// nameOf is the last name of a function or a type.
func nameOf(x ast.Expr) string {
	switch x := x.(type) {
	case *ast.Ident:
		return x.Name
	case *ast.SelectorExpr:
		return x.Sel.Name
	}
	return ""
}

// rulesOf make a source of a rule that has no author.
var rulesOf = []string{"NoSource", "Practice", "practice", "Judged", "OvenJudgment", "FromMemory"}

// ruleKeys are the rule of a call that makes a source of it.
func ruleKeys(call *ast.CallExpr) []string {
	if !slices.Contains(rulesOf, nameOf(call.Fun)) || len(call.Args) == 0 {
		return nil
	}
	return keysOf("working.sourceTitle/", call.Args[len(call.Args)-1:])
}

// sourceKeys are the title of a source that is no published one and has nothing but a title.
func sourceKeys(lit *ast.CompositeLit) []string {
	if nameOf(lit.Type) != "Source" {
		return nil
	}
	var title []ast.Expr
	own := false
	for _, e := range lit.Elts {
		pair, ok := e.(*ast.KeyValueExpr)
		if !ok {
			return nil
		}
		switch nameOf(pair.Key) {
		case "Key":
		case "Title":
			title = append(title, pair.Value)
		case "Standing":
			own = true
		default:
			return nil
		}
	}
	if !own {
		return nil
	}
	return keysOf("working.sourceTitle/", title)
}

// indexed is a symbol with words behind its letter, such as T_flour.
var indexed = regexp.MustCompile(`^"\pL((?:_[a-z]{2,})+)"$`)

// indexKeys are the words of a symbol, in a room that derives.
func indexKeys(room string, lit *ast.BasicLit) []string {
	m := indexed.FindStringSubmatch(lit.Value)
	if m == nil || room == "main" || room == "cli" {
		return nil
	}
	var out []string
	for _, word := range strings.Split(m[1], "_")[1:] {
		out = append(out, "working.Index/"+word)
	}
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
