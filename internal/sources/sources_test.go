package sources

import (
	"encoding/csv"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// vague are words for a source that nobody can follow.
var vague = regexp.MustCompile(`(?i)\b(forums?|several|as cited|as quoted|quoted on|glossary|encyclop\w+|comment of|` +
	`(a|baking|trade|public|teaching|cookbook|discussion|miller's|bakery's|supplier's|safety|Italian) pages?)\b`)

// nobodys are sources of checks that nobody can look up: pages and posts without author and title.
var nobodys = regexp.MustCompile(`(?i)\b(forums?|web ?logs?|web pages?|newsgroups?|encyclop\w+|slides?|glossary|` +
	`newsletter|manualshive|moodleshare|docslide|trade magazine|supplier|consumer (page|text)|` +
	`(baking|trade|cookbook|discussion|teaching|bakery's|supplier's|author's|pizza|sourdough) (web )?pages?|` +
	`quoted at|as cited|UK (oven )?charts?)\b|\bpages? [0-9]`)

// What a check expects comes from somebody who can be looked up, or is called common practice or from memory.
func TestSourcesOfChecksCanBeFollowed(t *testing.T) {
	root := filepath.Join("..", "..")
	checked := 0
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.Name() != "published.csv" {
			return err
		}
		f, err := os.Open(path)
		if err != nil {
			return err
		}
		defer func() { _ = f.Close() }()
		rows, err := csv.NewReader(f).ReadAll()
		for _, r := range rows[min(1, len(rows)):] {
			checked++
			source, status := r[6], r[7]
			if nobodys.MatchString(source) {
				t.Errorf("%s, %s: nobody can follow %q", path, r[0], source)
			}
			if status == "published" && strings.Contains(source, "common practice") {
				t.Errorf("%s, %s: common practice is not published", path, r[0])
			}
		}
		return err
	})
	if err != nil || checked < 1000 {
		t.Errorf("%d checks were found, %v", checked, err)
	}
}

// abstract marks a paper of which only the title and the abstract were read.
var abstract = regexp.MustCompile(`^"abstract`)

// A published source names who says it, where, and in what. What nobody in particular says is common practice.
func TestSourcesCanBeFollowed(t *testing.T) {
	files, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	set, checked := token.NewFileSet(), 0
	for _, file := range files {
		f, err := parser.ParseFile(set, file, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(f, func(n ast.Node) bool {
			if lit, ok := n.(*ast.BasicLit); ok && file != "sources_test.go" {
				if text, _ := strconv.Unquote(lit.Value); lit.Kind == token.STRING && vague.MatchString(text) {
					t.Errorf("%s: nobody can follow %q", set.Position(lit.Pos()), text)
				}
			}
			c, ok := n.(*ast.CompositeLit)
			if !ok {
				return true
			}
			given, where := map[string]bool{}, ""
			for _, e := range c.Elts {
				if kv, ok := e.(*ast.KeyValueExpr); ok {
					if key, ok := kv.Key.(*ast.Ident); ok {
						given[key.Name] = true
						if lit, ok := kv.Value.(*ast.BasicLit); ok && key.Name == "Where" {
							where = lit.Value
						}
					}
				}
			}
			if !given["Key"] || given["Standing"] {
				return true
			}
			checked++
			if !given["Author"] && !given["URL"] && !abstract.MatchString(where) || !given["Title"] ||
				!given["Year"] && !given["Where"] && !given["URL"] {
				t.Errorf("%s: a published source needs author, title, and a year, place or address",
					set.Position(c.Pos()))
			}
			return true
		})
	}
	if checked < 30 {
		t.Errorf("only %d published sources were found", checked)
	}
}
