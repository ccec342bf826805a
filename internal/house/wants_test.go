package house

import (
	"go/ast"
	"go/token"
	"regexp"
	"strings"
	"testing"
)

// capital is a word that is written like an exported identifier, and flagged one of a command line. quoted is an
// example of what is typed. ofError is the identifier of what an error says.
var (
	capital = regexp.MustCompile(`\b[A-Z][a-z]+[A-Za-z]*\b`)
	quoted  = regexp.MustCompile(`"[^"]*"`)
	flagged = regexp.MustCompile(`(^|\s)--[a-z]`)
	ofError = regexp.MustCompile(`\.(want|got|hint)_`)
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
	english, faults, err := Sentences("../..")
	if err != nil || len(faults) > 0 {
		t.Fatal(err, faults)
	}
	wants := 0
	for id, text := range english {
		if !ofError.MatchString(id) {
			continue
		}
		wants++
		for _, word := range capital.FindAllString(quoted.ReplaceAllString(text, ""), -1) {
			if names[word] {
				t.Errorf("%s: %q names %s", id, text, word)
			}
		}
		if flagged.MatchString(text) {
			t.Errorf("%s: %q names a flag", id, text)
		}
	}
	if wants < 400 {
		t.Errorf("only %d texts are looked at", wants)
	}
}

// TestWantsHaveIdentifiers: what an error says can be told in every language. A phrase is made by quantity.Tell, whose
// identifier and template are checked with all sentences; what was given is a value, such a phrase, or a text of the
// caller, and no English that is put together.
func TestWantsHaveIdentifiers(t *testing.T) {
	o := offences{}
	seen := 0
	parsed(t, func(p listed, file string, set *token.FileSet, f *ast.File) {
		room := strings.TrimPrefix(p.ImportPath, module+"/")
		ast.Inspect(f, func(n ast.Node) bool {
			if c, ok := n.(*ast.CompositeLit); ok && room != "dough/quantity" && len(c.Elts) > 0 {
				if s, ok := c.Type.(*ast.SelectorExpr); ok && s.Sel.Name == "Phrase" {
					o.add(room+"/"+file, "%s: a phrase without an identifier", set.Position(n.Pos()))
				}
			}
			return true
		})
		for _, e := range givenOf(f) {
			seen++
			for _, text := range english(e) {
				o.add(room+"/"+file, "%s: %q is given without an identifier", set.Position(e.Pos()), text)
			}
		}
	})
	o.judge(t, nil)
	if seen < 200 {
		t.Errorf("only %d errors are looked at", seen)
	}
}

// TestErrorsSayGivenBeforeAccepted: what was given stands before what is accepted wherever an error is made, so that no
// reader is told to give what was refused.
func TestErrorsSayGivenBeforeAccepted(t *testing.T) {
	seen := 0
	parsed(t, func(_ listed, _ string, set *token.FileSet, f *ast.File) {
		ast.Inspect(f, func(n ast.Node) bool {
			c, ok := n.(*ast.CallExpr)
			if !ok {
				return true
			}
			s, ok := c.Fun.(*ast.SelectorExpr)
			if !ok {
				return true
			}
			at := map[string]int{"Add": 1, "AddCode": 2}[s.Sel.Name]
			if at == 0 || len(c.Args) < at+3 {
				return true
			}
			given, accepted := toldIn(c.Args[at]), toldIn(c.Args[at+1])
			if strings.Contains(given, ".want_") || strings.Contains(accepted, ".got_") {
				t.Errorf("%v: what was given, %q, and what is accepted, %q, stand the other way about", set.Position(n.Pos()),
					given, accepted)
			}
			if accepted != "" {
				seen++
			}
			return true
		})
	})
	if seen < 200 {
		t.Errorf("only %d errors are looked at", seen)
	}
}

// toldIn is the identifier of a phrase that is told on the spot.
func toldIn(e ast.Expr) string {
	c, ok := e.(*ast.CallExpr)
	if !ok || len(c.Args) == 0 {
		return ""
	}
	id, ok := c.Args[0].(*ast.BasicLit)
	if !ok {
		return ""
	}
	return id.Value
}

// givenOf lists what the errors made in a file say was given.
func givenOf(f *ast.File) []ast.Expr {
	var out []ast.Expr
	ast.Inspect(f, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.KeyValueExpr:
			if key, ok := n.Key.(*ast.Ident); ok && key.Name == "Got" {
				out = append(out, n.Value)
			}
		case *ast.CallExpr:
			s, ok := n.Fun.(*ast.SelectorExpr)
			if !ok {
				return true
			}
			at := map[string]int{"Add": 1, "AddCode": 2}[s.Sel.Name]
			if at > 0 && len(n.Args) > at+1 {
				out = append(out, n.Args[at])
			}
		}
		return true
	})
	return out
}

var words = regexp.MustCompile(`[A-Za-z]{2,} [A-Za-z]{2,}`)

// english are the texts of two words and more in an expression that stand outside of a call of Tell.
func english(e ast.Expr) []string {
	var out []string
	ast.Inspect(e, func(n ast.Node) bool {
		if c, ok := n.(*ast.CallExpr); ok {
			if s, ok := c.Fun.(*ast.SelectorExpr); ok && s.Sel.Name == "Tell" {
				return false
			}
			if i, ok := c.Fun.(*ast.Ident); ok && i.Name == "Tell" {
				return false
			}
		}
		if lit, ok := n.(*ast.BasicLit); ok && words.MatchString(lit.Value) {
			out = append(out, lit.Value)
		}
		return true
	})
	return out
}
