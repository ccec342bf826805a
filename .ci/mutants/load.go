package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
)

// source is the package that is mutated, without its tests.
type source struct {
	module, path, dir string
	files             []*file
	fset              *token.FileSet
	info              *types.Info
	pkg               *types.Package
	exports           map[string]string // compiled dependencies by import path
	importer          types.Importer
}

// file is one file of the source.
type file struct {
	path  string
	text  string
	tree  *ast.File
	names map[string]string // what the file calls the packages that it imports, by their paths
}

type listed struct {
	ImportPath, Dir, Export string
	GoFiles                 []string
	DepOnly                 bool
}

// load reads a package and checks its types against its compiled dependencies.
func load(module, pkg string) (*source, error) {
	cmd := exec.Command("go", "list", "-export", "-deps", "-json=ImportPath,Dir,Export,GoFiles,DepOnly", pkg,
		"os", "strconv") // which the choice between mutants imports
	cmd.Dir, cmd.Stderr = module, os.Stderr
	data, err := cmd.Output()
	if err != nil {
		return nil, fmt.Errorf("go list: %w", err)
	}
	s := &source{module: module, fset: token.NewFileSet(), exports: map[string]string{}}
	var names []string
	for d := json.NewDecoder(bytes.NewReader(data)); ; {
		var l listed
		if err := d.Decode(&l); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return nil, err
		}
		s.exports[l.ImportPath] = l.Export
		if !l.DepOnly && l.ImportPath != "os" && l.ImportPath != "strconv" {
			s.path, s.dir, names = l.ImportPath, l.Dir, l.GoFiles
		}
	}
	for _, n := range names {
		path := filepath.Join(s.dir, n)
		text, err := os.ReadFile(path)
		if err != nil {
			return nil, err
		}
		tree, err := parser.ParseFile(s.fset, path, text, parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		s.files = append(s.files, &file{path: path, text: string(text), tree: tree, names: map[string]string{}})
	}
	s.info = &types.Info{
		Types: map[ast.Expr]types.TypeAndValue{}, Defs: map[*ast.Ident]types.Object{}, Uses: map[*ast.Ident]types.Object{},
		Implicits: map[ast.Node]types.Object{}, Selections: map[*ast.SelectorExpr]*types.Selection{},
	}
	var trees []*ast.File
	for _, f := range s.files {
		trees = append(trees, f.tree)
	}
	s.importer = s.dependencies()
	c := types.Config{Importer: s.importer}
	s.pkg, err = c.Check(s.path, s.fset, trees, s.info)
	if err != nil {
		return nil, err
	}
	for _, f := range s.files {
		f.nameImports(s.info)
	}
	return s, nil
}

func (f *file) nameImports(info *types.Info) {
	for _, i := range f.tree.Imports {
		var o types.Object
		if i.Name != nil {
			o = info.Defs[i.Name]
		} else {
			o = info.Implicits[i]
		}
		if p, ok := o.(*types.PkgName); ok && p.Name() != "_" && p.Name() != "." {
			f.names[p.Imported().Path()] = p.Name()
		}
	}
}

// dependencies reads what the package imports from where it was compiled.
func (s *source) dependencies() types.Importer {
	return importer.ForCompiler(s.fset, "gc", func(path string) (io.ReadCloser, error) {
		name, ok := s.exports[path]
		if !ok || name == "" {
			return nil, fmt.Errorf("%s is not compiled", path)
		}
		return os.Open(name)
	})
}

// compiles reports whether the package is sound with these texts in place of its files.
func (s *source) compiles(texts map[string]string) bool {
	fset := token.NewFileSet()
	var trees []*ast.File
	for _, f := range s.files {
		text, changed := texts[f.path]
		if !changed {
			text = f.text
		}
		tree, err := parser.ParseFile(fset, f.path, text, parser.SkipObjectResolution)
		if err != nil {
			return false
		}
		trees = append(trees, tree)
	}
	if helper, ok := texts[s.helperPath()]; ok {
		tree, err := parser.ParseFile(fset, s.helperPath(), helper, parser.SkipObjectResolution)
		if err != nil {
			return false
		}
		trees = append(trees, tree)
	}
	c := types.Config{Importer: s.importer}
	_, err := c.Check(s.path, fset, trees, nil)
	return err == nil
}
