package house

import (
	"go/ast"
	"go/token"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// cutsText are the functions of package strings that look for words in a text. To look for a kind of character, such
// as a control character in a name, is no meaning.
var cutsText = []string{
	"Compare", "Contains", "ContainsAny", "ContainsRune", "Count", "Cut", "CutPrefix", "CutSuffix", "EqualFold",
	"Fields", "FieldsFunc",
	"HasPrefix", "HasSuffix", "Index", "IndexAny", "IndexByte", "IndexRune", "LastIndex", "Split", "SplitAfter",
	"SplitN", "SplitSeq", "FieldsSeq",
}

// readers are the files whose work is to read or to render text: parsers of what people and files say, and what turns
// a value into a text. Nothing else looks into words.
var readers = map[string]string{
	"dough/quantity":                   "reads what people type: every quantity is parsed from text",
	"dough/working":                    "renders messages, numbers and formulas, and reads messages back",
	"dough/report":                     "renders answers as text, HTML and Markdown",
	"internal/curve":                   "wraps the labels of a picture",
	"internal/enum":                    "reads words as people type them",
	"internal/trial":                   "looks for lines on a page, for tests alone",
	"internal/house":                   "reads Go source",
	"internal/nearest":                 "compares words that were typed",
	"internal/published":               "reads testdata/published.csv",
	"internal/textpage":                "lays text out on pages",
	"internal/handcheck":               "reads printed derivations back as a reader would",
	"internal/pupil":                   "reads printed exercises as a class would",
	"bake/text.go":                     "renders a number in Go syntax of a formula",
	"bake/ovenwords.go":                "reads what an oven is set to as recipes say it",
	"dough/cost/money.go":              "reads an amount of money",
	"dough/food/table.go":              "finds a food by the name or code that its table and its user give",
	"dough/food/words.go":              "reads an amount of food as people type it",
	"dough/food/volume.go":             "finds a measure by the name of its food",
	"ferment/law.go":                   "reads a curve back from its key",
	"ferment/csv.go":                   "reads a file of temperatures",
	"schedule/bakeday/wish.go":         "reads a wish as typed",
	"schedule/bakeday/filekeys.go":     "reads the comments of a schema",
	"schedule/bakeday/newbreadsaid.go": "reads what a baker answers",
	"schedule/bakeday/newbreadfile.go": "renders a bake file",
	"schedule/bakeday/sheet.go":        "renders the page to print; keys of its sections have parts",
	"schedule/bakeday/plancsv.go":      "renders a plan as a table",
	"schedule/bench/csv.go":            "reads a spreadsheet",
	"dough/weightstext.go":             "reads weights as typed",
	"dough/feedingtext.go":             "reads a feeding by parts as typed",
	"dough/food/amount.go":             "reads an amount as typed",
	"dough/vessel/tintext.go":          "reads the sides of a tin as typed",
	"ferment/parseyeast.go":            "reads an amount of yeast as typed",
	"schedule/bench/probed.go":         "reads what a probe showed as typed",
	"schedule/wallclock/clock.go":      "reads a time of day",
	"schedule/wallclock/days.go":       "reads days of the week",
	"schedule/wallclock/habit.go":      "reads a habit as typed",
	"schedule/wallclock/moment.go":     "reads a moment as typed",
	"schedule/wallclock/date.go":       "reads a date as typed",
	"schedule/calendar/text.go":        "escapes and folds the lines of a calendar file",
}

// wordsOf are the fields and methods that hold words for people.
var wordsOf = []string{"Name", "Words", "Text", "Says", "Title", "Label", "Note", "Subject", "Summary", "String",
	"Error"}

// TestNoMeaningInWords: no code decides by cutting a text, or by comparing a name or a sentence with words of its
// own; kinds and codes do that. What reads and renders text is listed with its reason, and so is what waits for its
// room.
func TestNoMeaningInWords(t *testing.T) {
	o := offences{}
	parsed(t, func(p listed, file string, set *token.FileSet, f *ast.File) {
		room := strings.TrimPrefix(p.ImportPath, module+"/")
		if readers[room] != "" || readers[room+"/"+file] != "" {
			return
		}
		at := func(n ast.Node) string { return filepath.Base(set.Position(n.Pos()).String()) }
		ast.Inspect(f, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.CallExpr:
				if s, ok := n.Fun.(*ast.SelectorExpr); ok {
					if x, ok := s.X.(*ast.Ident); ok && x.Name == "strings" && slices.Contains(cutsText, s.Sel.Name) {
						o.add(room+"/"+file, "%s: strings.%s", at(n), s.Sel.Name)
					}
					if x, ok := s.X.(*ast.Ident); ok && x.Name == "regexp" {
						o.add(room+"/"+file, "%s: regexp.%s", at(n), s.Sel.Name)
					}
				}
			case *ast.BinaryExpr:
				if n.Op == token.EQL || n.Op == token.NEQ {
					if holdsWords(n.X) && literalWords(n.Y) || holdsWords(n.Y) && literalWords(n.X) {
						o.add(room+"/"+file, "%s: words compared with a literal", at(n))
					}
				}
			case *ast.SwitchStmt:
				if n.Tag != nil && holdsWords(n.Tag) {
					o.add(room+"/"+file, "%s: a switch over words", at(n))
				}
			}
			return true
		})
	})
	o.judge(t, wordy)
}

func holdsWords(e ast.Expr) bool {
	switch e := e.(type) {
	case *ast.SelectorExpr:
		return slices.Contains(wordsOf, e.Sel.Name)
	case *ast.CallExpr:
		if s, ok := e.Fun.(*ast.SelectorExpr); ok {
			return slices.Contains(wordsOf, s.Sel.Name)
		}
	}
	return false
}

// literalWords reports whether the expression is a text with something in it: to ask whether a name is given is no
// meaning.
func literalWords(e ast.Expr) bool {
	lit, ok := e.(*ast.BasicLit)
	return ok && lit.Kind == token.STRING && len(lit.Value) > 2
}
