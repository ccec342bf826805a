package house

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

func parsed(t *testing.T, visit func(p listed, file string, set *token.FileSet, f *ast.File)) {
	t.Helper()
	for _, p := range packages(t) {
		set := token.NewFileSet()
		for _, name := range p.GoFiles {
			path := filepath.Join(p.Dir, name)
			f, err := parser.ParseFile(set, path, nil, parser.ParseComments)
			if err != nil {
				t.Fatal(err)
			}
			visit(p, name, set, f)
		}
	}
}

func TestEveryExportedIdentifierIsDocumented(t *testing.T) {
	packageDoc := map[string]bool{}
	parsed(t, func(p listed, _ string, set *token.FileSet, f *ast.File) {
		packageDoc[p.ImportPath] = packageDoc[p.ImportPath] || f.Doc.Text() != ""
		missing := func(n ast.Node, name string) { t.Errorf("%s: %s has no doc comment", set.Position(n.Pos()), name) }
		for _, d := range f.Decls {
			switch d := d.(type) {
			case *ast.FuncDecl:
				if d.Name.IsExported() && exportedReceiver(d) && d.Doc.Text() == "" {
					missing(d, d.Name.Name)
				}
			case *ast.GenDecl:
				for _, s := range d.Specs {
					switch s := s.(type) {
					case *ast.TypeSpec:
						if s.Name.IsExported() && d.Doc.Text() == "" && s.Doc.Text() == "" {
							missing(s, s.Name.Name)
						}
					case *ast.ValueSpec:
						for _, n := range s.Names {
							if n.IsExported() && d.Doc.Text() == "" && s.Doc.Text() == "" && s.Comment.Text() == "" {
								missing(s, n.Name)
							}
						}
					}
				}
			}
		}
	})
	for path, ok := range packageDoc {
		if !ok {
			t.Errorf("%s has no package comment", path)
		}
	}
}

func exportedReceiver(d *ast.FuncDecl) bool {
	if d.Recv == nil || len(d.Recv.List) == 0 {
		return true
	}
	x := d.Recv.List[0].Type
	if star, ok := x.(*ast.StarExpr); ok {
		x = star.X
	}
	switch generic := x.(type) {
	case *ast.IndexExpr:
		x = generic.X
	case *ast.IndexListExpr:
		x = generic.X
	}
	name, ok := x.(*ast.Ident)
	return !ok || name.IsExported()
}

// No panics on data: only Must functions, which are for literals. No init, and no call of the
// decimal functions that read package globals.
func TestNoPanicsInitOrGlobals(t *testing.T) {
	parsed(t, func(p listed, _ string, set *token.FileSet, f *ast.File) {
		for _, d := range f.Decls {
			fn, ok := d.(*ast.FuncDecl)
			if !ok {
				continue
			}
			if fn.Name.Name == "init" && fn.Recv == nil {
				t.Errorf("%s: init", set.Position(fn.Pos()))
			}
			ast.Inspect(fn, func(n ast.Node) bool {
				call, ok := n.(*ast.CallExpr)
				if !ok {
					return true
				}
				switch f := call.Fun.(type) {
				case *ast.Ident:
					if f.Name == "panic" && !strings.HasPrefix(strings.ToLower(fn.Name.Name), "must") {
						t.Errorf("%s: panic in %s", set.Position(call.Pos()), fn.Name.Name)
					}
				case *ast.SelectorExpr:
					if x, ok := f.X.(*ast.Ident); ok && x.Name == "time" &&
						(f.Sel.Name == "Now" || f.Sel.Name == "Since" || f.Sel.Name == "Until" || f.Sel.Name == "LoadLocation") {
						t.Errorf("%s: time.%s belongs to the caller", set.Position(call.Pos()), f.Sel.Name)
					}
				}
				return true
			})
		}
	})
}

func TestTopLevelIsFixed(t *testing.T) {
	allowed := " dough ferment bake schedule examples internal README.md DEVELOPERS.md CHANGELOG.md LICENSE go.mod " +
		"go.sum go.work go.work.sum .git .gitignore .gitattributes .golangci.yml .ci "
	for _, name := range topLevel(t) {
		if !strings.Contains(allowed, " "+name+" ") {
			t.Errorf("%s stands at the top level", name)
		}
	}
}

// topLevel lists what the repository has at its top: a bake file or a program that somebody made there is
// theirs. Without git it is what lies there.
func topLevel(t *testing.T) []string {
	t.Helper()
	var names []string
	if out, err := exec.Command("git", "-C", "../..", "ls-tree", "--name-only", "HEAD").Output(); err == nil {
		return strings.Fields(string(out))
	}
	entries, err := os.ReadDir("../..")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return names
}

// The root module requires decimal, and for tests go-cmp and rapid; nothing more.
func TestRootModuleStaysSmall(t *testing.T) {
	text, err := os.ReadFile("../../go.mod")
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(string(text), "\n") {
		fields := strings.Fields(strings.TrimPrefix(strings.TrimSpace(line), "require "))
		if len(fields) < 2 || !strings.Contains(fields[0], ".") {
			continue
		}
		switch fields[0] {
		case "github.com/shopspring/decimal", "github.com/google/go-cmp", "pgregory.net/rapid":
		default:
			t.Errorf("go.mod requires %s", fields[0])
		}
	}
	if !strings.Contains(string(text), "\ngo 1.26.0\n") {
		t.Error("go.mod must say go 1.26.0")
	}
}
