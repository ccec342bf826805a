package house

import (
	"encoding/json"
	"fmt"
	"go/ast"
	"go/token"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// public reports whether a package is one that other programs may import.
func public(p listed) bool { return !strings.Contains(p.ImportPath, "/internal/") }

// TestRoomsByReflection runs the tests that look at every exported type and function by reflection
// (TestEveryTypeMarshals, TestEnumerations, TestNothingPanics, …). Go cannot list them at run time, so the list is
// made from the source and compiled in place of exported_test.go.
func TestRoomsByReflection(t *testing.T) {
	if len(exportedTypes()) > 0 {
		t.Skip("inside")
	}
	dir := t.TempDir()
	source := filepath.Join(dir, "exported_test.go")
	if err := os.WriteFile(source, []byte(exportedList(t)), 0o600); err != nil {
		t.Fatal(err)
	}
	here, err := filepath.Abs("exported_test.go")
	if err != nil {
		t.Fatal(err)
	}
	replace, err := json.Marshal(map[string]map[string]string{"Replace": {here: source}})
	if err != nil {
		t.Fatal(err)
	}
	overlay := filepath.Join(dir, "overlay.json")
	if err := os.WriteFile(overlay, replace, 0o600); err != nil {
		t.Fatal(err)
	}
	args := []string{"test", "-count=1", "-overlay=" + overlay, "-run=ByReflection$", "."}
	if testing.Short() {
		args = append(args, "-short")
	}
	if testing.Verbose() {
		args = append(args, "-v")
	}
	out, err := exec.Command("go", args...).CombinedOutput()
	if err != nil {
		t.Errorf("%v\n%s", err, out)
	} else if testing.Verbose() {
		t.Logf("%s", out)
	}
}

// exportedList writes the Go source that fills the lists of exported_test.go.
func exportedList(t *testing.T) string {
	t.Helper()
	imports, types, funcs := map[string]bool{}, []string{}, []string{}
	parsed(t, func(p listed, _ string, _ *token.FileSet, f *ast.File) {
		if !public(p) {
			return
		}
		name := path.Base(p.ImportPath)
		for _, d := range f.Decls {
			switch d := d.(type) {
			case *ast.FuncDecl:
				if d.Recv == nil && d.Name.IsExported() && d.Type.TypeParams == nil {
					imports[p.ImportPath] = true
					funcs = append(funcs, fmt.Sprintf("{%q, %s.%s},", name+"."+d.Name.Name, name, d.Name.Name))
				}
			case *ast.GenDecl:
				for _, s := range d.Specs {
					if s, ok := s.(*ast.TypeSpec); ok && s.Name.IsExported() && s.TypeParams == nil && !s.Assign.IsValid() {
						imports[p.ImportPath] = true
						types = append(types, fmt.Sprintf("{%q, reflect.TypeFor[%s.%s]()},", name+"."+s.Name.Name, name, s.Name.Name))
					}
				}
			}
		}
	})
	slices.Sort(types)
	slices.Sort(funcs)
	var paths []string
	for p := range imports {
		paths = append(paths, fmt.Sprintf("%q", p))
	}
	slices.Sort(paths)
	return "package house\n\nimport (\n\"reflect\"\n" + strings.Join(paths, "\n") + "\n)\n\n" +
		"type namedType struct {\nname string\ntyp reflect.Type\n}\n\ntype namedFunc struct {\nname string\nfn any\n}\n\n" +
		"func exportedTypes() []namedType {\nreturn []namedType{\n" + strings.Join(types, "\n") + "\n}\n}\n\n" +
		"func exportedFuncs() []namedFunc {\nreturn []namedFunc{\n" + strings.Join(funcs, "\n") + "\n}\n}\n"
}
