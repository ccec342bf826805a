package house

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// library are the folders of the library's rooms.
var library = []string{"dough", "ferment", "bake", "schedule", "internal"}

// everything is the library and the example programs, which have sentences of their own.
var everything = append(library[:len(library):len(library)], "examples")

// Sentences reads the source below the root of the repository and lists the English template of every
// message of the library by its identifier, and what is wrong with them: an identifier or a template that is no
// literal, an identifier of the wrong form or with two templates, and arguments that are missing or not shown.
func Sentences(root string) (english map[string]string, faults []string, err error) {
	return sentences(root, library)
}

// AllSentences is Sentences of the library and of the example programs.
func AllSentences(root string) (english map[string]string, faults []string, err error) {
	return sentences(root, everything)
}

func sentences(root string, rooms []string) (english map[string]string, faults []string, err error) {
	english = map[string]string{}
	at, known := map[string]token.Position{}, map[string]bool{}
	err = eachTell(root, rooms, func(room string, where token.Position, call *ast.CallExpr) {
		id, template, fault := sentence(room, call)
		if fault == "" && known[id] && english[id] != template {
			fault = fmt.Sprintf("%s has another template at %s", id, at[id])
		}
		if fault != "" {
			faults = append(faults, where.String()+": "+fault)
			return
		}
		english[id], at[id], known[id] = template, where, true
	})
	if err != nil {
		return nil, nil, err
	}
	return english, faults, nil
}

// eachTell goes through every call of working.Tell and quantity.Tell below some folders of the root.
func eachTell(root string, rooms []string, do func(room string, where token.Position, call *ast.CallExpr)) error {
	set := token.NewFileSet()
	for _, room := range rooms {
		err := filepath.WalkDir(filepath.Join(root, room), func(path string, d fs.DirEntry, err error) error {
			switch {
			case err != nil:
				return err
			case d.IsDir() && (d.Name() == "testdata" || d.Name() == "xcheck"):
				return filepath.SkipDir
			case !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go"):
				return nil
			}
			f, err := parser.ParseFile(set, path, nil, 0)
			if err != nil {
				return err
			}
			for _, call := range tells(f) {
				do(f.Name.Name, set.Position(call.Pos()), call)
			}
			return nil
		})
		if err != nil {
			return err
		}
	}
	return nil
}

// tells lists the calls of working.Tell and quantity.Tell in a file, whatever name it imports the packages by.
func tells(f *ast.File) []*ast.CallExpr {
	names := map[string]bool{}
	for _, i := range f.Imports {
		path, _ := strconv.Unquote(i.Path.Value)
		if room := strings.TrimPrefix(path, "example.org/maslin/dough/"); room == "working" || room == "quantity" {
			if i.Name != nil {
				room = i.Name.Name
			}
			names[room] = true
		}
	}
	own := f.Name.Name == "working" || f.Name.Name == "quantity"
	var out []*ast.CallExpr
	ast.Inspect(f, func(n ast.Node) bool {
		call, ok := n.(*ast.CallExpr)
		if !ok {
			return true
		}
		switch fun := call.Fun.(type) {
		case *ast.Ident:
			if own && fun.Name == "Tell" {
				out = append(out, call)
			}
		case *ast.SelectorExpr:
			if x, ok := fun.X.(*ast.Ident); ok && names[x.Name] && fun.Sel.Name == "Tell" {
				out = append(out, call)
			}
		}
		return true
	})
	return out
}

var identifierForm = regexp.MustCompile(`^[a-z]+(\.[a-z0-9_]+)+$`)

func sentence(room string, call *ast.CallExpr) (id, template, fault string) {
	if len(call.Args) < 2 {
		return "", "", "needs an identifier and a template"
	}
	id, ok := text(call.Args[0])
	if !ok || !identifierForm.MatchString(id) {
		return "", "", "the identifier is no literal such as \"room.words_of_its_own\""
	}
	if first, _, _ := strings.Cut(id, "."); first != room && !(room == "working" && first == "error") &&
		!(room == "cli" && first == "maslin") {
		return "", "", id + " does not begin with its package, " + room
	}
	template, ok = text(call.Args[1])
	if !ok {
		return "", "", id + ": the template is no literal"
	}
	if call.Ellipsis.IsValid() {
		return "", "", id + ": the arguments are not written out"
	}
	if given, shown := len(call.Args)-2, slices.Sorted(maps.Keys(Placeholders(template))); len(shown) != given ||
		given > 0 && slices.Max(shown) != given {
		return "", "", fmt.Sprintf("%s: %d arguments for %q", id, given, template)
	}
	return id, template, ""
}

// text is a literal, or literals joined by +.
func text(e ast.Expr) (string, bool) {
	switch e := e.(type) {
	case *ast.BasicLit:
		s, err := strconv.Unquote(e.Value)
		return s, err == nil && e.Kind == token.STRING
	case *ast.BinaryExpr:
		x, okX := text(e.X)
		y, okY := text(e.Y)
		return x + y, okX && okY && e.Op == token.ADD
	case *ast.ParenExpr:
		return text(e.X)
	}
	return "", false
}

var placeholder = regexp.MustCompile(`%%|%(\+?)(?:\[(\d+)\])?((?:0\d*)?(?:\.\d+)?[vsdfgqtx])`)

// Placeholders tells how a template shows each argument, by its number: {1: "%.1f"}; an argument that is shown several
// times has all of them, in order.
func Placeholders(template string) map[int]string {
	out := map[int]string{}
	next := 1
	for _, m := range placeholder.FindAllStringSubmatch(template, -1) {
		if m[0] == "%%" {
			continue
		}
		if m[2] != "" {
			next, _ = strconv.Atoi(m[2])
		}
		out[next] += "%" + m[1] + m[3]
		next++
	}
	return out
}
