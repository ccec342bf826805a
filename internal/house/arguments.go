package house

import (
	"go/ast"
	"go/token"
	"go/types"
	"strings"
	"unicode"
)

// Arguments lists, for each sentence of the library that has some, what its arguments are called in the source where
// it is first told: for "the water is too warm at %.1f" perhaps ["temperature"]. A translator reads them as a hint.
func Arguments(root string) (map[string][]string, error) {
	out := map[string][]string{}
	err := eachTell(root, library, func(room string, _ token.Position, call *ast.CallExpr) {
		id, _, fault := sentence(room, call)
		if _, known := out[id]; fault != "" || known || len(call.Args) <= 2 {
			return
		}
		for _, a := range call.Args[2:] {
			out[id] = append(out[id], argumentName(a))
		}
	})
	return out, err
}

// argumentName is the last name in an expression: "temperature" of w.Temperature, "loaves" of len(b.Loaves).
func argumentName(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.Ident:
		return inWords(e.Name)
	case *ast.SelectorExpr:
		return inWords(e.Sel.Name)
	case *ast.IndexExpr:
		return argumentName(e.X)
	case *ast.ParenExpr:
		return argumentName(e.X)
	case *ast.UnaryExpr:
		return argumentName(e.X)
	case *ast.StarExpr:
		return argumentName(e.X)
	case *ast.CallExpr:
		if len(e.Args) > 1 {
			if id, ok := text(e.Args[0]); ok { // a sentence within the sentence
				return strings.ReplaceAll(id[strings.LastIndex(id, ".")+1:], "_", " ")
			}
		}
		if method, ok := e.Fun.(*ast.SelectorExpr); ok && len(e.Args) != 1 {
			return inWords(method.Sel.Name)
		}
		if len(e.Args) > 0 {
			return argumentName(e.Args[0])
		}
		return argumentName(e.Fun)
	}
	return types.ExprString(e)
}

// inWords writes the parts of a name as words: "WholeGrain" is "whole grain".
func inWords(name string) string {
	var b strings.Builder
	before := ' '
	for _, r := range name {
		if unicode.IsUpper(r) && unicode.IsLower(before) {
			b.WriteByte(' ')
		}
		b.WriteRune(unicode.ToLower(r))
		before = r
	}
	return b.String()
}
