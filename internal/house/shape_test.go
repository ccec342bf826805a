package house

import (
	"bytes"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"
)

// sources calls visit for every Go file of the library, tests included.
func sources(t *testing.T, visit func(room, file string, text []byte)) {
	t.Helper()
	for _, p := range packages(t) {
		files, err := filepath.Glob(filepath.Join(p.Dir, "*.go"))
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range files {
			text, err := os.ReadFile(f)
			if err != nil {
				t.Fatal(err)
			}
			visit(strings.TrimPrefix(p.ImportPath, module+"/"), filepath.Base(f), text)
		}
	}
}

// TestEveryPackageHasADocFile: it states what the package answers, its assumptions and its limits.
func TestEveryPackageHasADocFile(t *testing.T) {
	o := offences{}
	for _, p := range packages(t) {
		room := strings.TrimPrefix(p.ImportPath, module+"/")
		text, err := os.ReadFile(filepath.Join(p.Dir, "doc.go"))
		if err != nil {
			o.add(room, "no doc.go")
			continue
		}
		f, err := parser.ParseFile(token.NewFileSet(), "doc.go", text, parser.ParseComments)
		if err != nil || len(f.Doc.Text()) < 100 {
			o.add(room, "doc.go says next to nothing")
		}
	}
	o.judge(t, docless)
}

const (
	mostColumns = 120
	mostLines   = 400
)

// TestLinesAndFilesStayShort counts lines beyond 120 columns by room, what an example prints apart, and files beyond
// 400 lines. The allowances only get smaller.
func TestLinesAndFilesStayShort(t *testing.T) {
	if testing.Short() {
		t.Skip("a change that is underway may be longer")
	}
	long := map[string]int{}
	files := offences{}
	sources(t, func(room, file string, text []byte) {
		for _, line := range bytes.Split(text, []byte("\n")) {
			output := strings.HasPrefix(file, "example") && bytes.HasPrefix(line, []byte("\t// "))
			if utf8.RuneCount(line) > mostColumns && !output {
				long[room]++
			}
		}
		if n := bytes.Count(text, []byte("\n")); n > mostLines {
			files.add(room+"/"+file, "%d lines", n)
		}
	})
	for _, room := range sortedKeys(long) {
		if long[room] > longLines[room] {
			t.Errorf("%s has %d lines of more than %d columns, allowed are %d", room, long[room], mostColumns, longLines[room])
		}
	}
	for _, room := range sortedKeys(longLines) {
		if long[room] < longLines[room] {
			t.Logf("%s has %d long lines, allowed are %d: write the smaller number", room, long[room], longLines[room])
		}
	}
	files.judge(t, longFiles)
}

// exported visits the exported identifiers of the public rooms, fields apart.
func exported(t *testing.T, visit func(room string, name string, isType bool)) {
	t.Helper()
	parsed(t, func(p listed, _ string, _ *token.FileSet, f *ast.File) {
		if !public(p) {
			return
		}
		room := strings.TrimPrefix(p.ImportPath, module+"/")
		for _, d := range f.Decls {
			switch d := d.(type) {
			case *ast.FuncDecl:
				if d.Name.IsExported() && exportedReceiver(d) {
					visit(room, d.Name.Name, false)
				}
			case *ast.GenDecl:
				for _, s := range d.Specs {
					switch s := s.(type) {
					case *ast.TypeSpec:
						if s.Name.IsExported() {
							visit(room, s.Name.Name, true)
						}
					case *ast.ValueSpec:
						for _, n := range s.Names {
							if n.IsExported() {
								visit(room, n.Name, false)
							}
						}
					}
				}
			}
		}
	})
}

// TestOneNameOneMeaning: no two rooms export a type of the same name.
func TestOneNameOneMeaning(t *testing.T) {
	if testing.Short() {
		t.Skip("a change that is underway may have both the old and the new")
	}
	rooms := map[string][]string{}
	exported(t, func(room, name string, isType bool) {
		if isType && !slices.Contains(rooms[name], room) {
			rooms[name] = append(rooms[name], room)
		}
	})
	o := offences{}
	for name, in := range rooms {
		if len(in) > 1 {
			o.add(name, "a type of %s", strings.Join(in, " and of "))
		}
	}
	o.judge(t, twins)
}

// TestTheHouseShrinks counts the exported identifiers without fields.
func TestTheHouseShrinks(t *testing.T) {
	if testing.Short() {
		t.Skip("a change that is underway may have both the old and the new")
	}
	total, perRoom := 0, map[string]int{}
	exported(t, func(room, _ string, _ bool) { total++; perRoom[room]++ })
	for _, room := range sortedKeys(perRoom) {
		t.Logf("%-20s %4d", path.Clean(room), perRoom[room])
	}
	if total > mostExported {
		t.Errorf("%d exported identifiers without fields, allowed are %d", total, mostExported)
	}
	t.Logf("%d in all, allowed are %d", total, mostExported)
}
