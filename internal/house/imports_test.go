package house

import (
	"encoding/json"
	"errors"
	"io"
	"os/exec"
	"slices"
	"strings"
	"testing"
)

const module = "example.org/maslin"

// listed is what `go list -json` says of a package that matters here.
type listed struct {
	ImportPath string
	Dir        string
	Imports    []string
	GoFiles    []string
}

func packages(t *testing.T) []listed {
	t.Helper()
	cmd := exec.Command("go", "list", "-json=ImportPath,Dir,Imports,GoFiles", "./...")
	cmd.Dir = "../.."
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("go list: %v", err)
	}
	var all []listed
	for d := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p listed
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			return all
		} else if err != nil {
			t.Fatal(err)
		}
		all = append(all, p)
	}
}

// mayImport is the table of rooms. A room may import what is listed and what lies below it;
// "internal" stands for the internal packages.
var mayImport = map[string][]string{
	"dough/quantity":     {},
	"dough/working":      {"dough/quantity", "internal"},
	"dough/report":       {"dough/quantity", "dough/working", "internal"},
	"dough":              {"dough/quantity", "dough/working", "dough/report", "internal"},
	"dough/flour":        {"dough/quantity", "dough/working", "dough/report", "internal"},
	"dough/food":         {"dough/quantity", "dough/working", "dough/report", "dough", "internal"},
	"dough/vessel":       {"dough/quantity", "dough/working", "dough/report", "internal"},
	"dough/cost":         {"dough/quantity", "dough/working", "dough/report", "internal"},
	"dough/mixing":       {"dough/quantity", "dough/working", "dough/report", "internal"},
	"ferment":            {"dough/quantity", "dough/working", "dough/report", "internal"},
	"bake":               {"dough/quantity", "dough/working", "dough/report", "internal"},
	"schedule":           {"dough/quantity", "dough/working", "dough/report", "internal", "schedule/wallclock"},
	"schedule/wallclock": {"dough/quantity", "internal"},
	"schedule/calendar":  {"dough/quantity"},
	"schedule/bakeday": {
		"dough/quantity", "dough/working", "dough/report", "dough", "dough/flour", "dough/food", "dough/vessel",
		"dough/cost", "dough/mixing", "ferment", "bake", "schedule", "schedule/wallclock", "schedule/calendar", "internal",
	},
	"schedule/exercise": {
		"dough/quantity", "dough/working", "dough/report", "dough", "dough/mixing", "ferment", "bake", "schedule", "internal",
	},
	"schedule/bench": {
		"dough/quantity", "dough/working", "dough/report", "dough", "dough/flour", "dough/food", "dough/vessel",
		"dough/cost", "dough/mixing", "ferment", "bake", "schedule", "schedule/wallclock", "schedule/calendar",
		"schedule/bakeday", "internal",
	},
	"internal/sources":   {"dough/quantity", "dough/working"},
	"internal/workcheck": {"dough/quantity", "dough/working", "internal"},
	"internal/trial":     {"dough/quantity", "dough/working", "dough/report", "internal"},
}

func TestImportLaw(t *testing.T) {
	seen := map[string]bool{}
	for _, p := range packages(t) {
		room := strings.TrimPrefix(p.ImportPath, module+"/")
		seen[room] = true
		allowed, known := mayImport[room]
		if !known {
			if !strings.HasPrefix(room, "internal/") {
				t.Errorf("%s is not a room of the house: add it to the table, with what it may import", room)
				continue
			}
			// Internal packages know quantities and each other, and no public room.
			allowed = []string{"dough/quantity", "internal"}
		}
		for _, imported := range p.Imports {
			name, ours := strings.CutPrefix(imported, module+"/")
			if !ours {
				if strings.Contains(imported, ".") && imported != "github.com/shopspring/decimal" && room != "internal/trial" {
					t.Errorf("%s imports %s: only decimal may be imported from outside", room, imported)
				}
				continue
			}
			ok := slices.Contains(allowed, name) || strings.HasPrefix(name, "internal/") && slices.Contains(allowed, "internal")
			if !ok {
				t.Errorf("%s imports %s, which its room may not", room, name)
			}
		}
	}
	for room := range mayImport {
		if !seen[room] {
			t.Errorf("the table names %s, which does not exist", room)
		}
	}
}

// forTests are the internal packages that only tests import.
var forTests = []string{"guides", "handcheck", "workcheck", "house", "published", "pupil", "trial"}

// Library packages read no clock, file, environment or random source, and keep no state.
func TestLibraryIsPure(t *testing.T) {
	banned := []string{"os", "io/ioutil", "math/rand", "math/rand/v2", "crypto/rand", "net", "net/http", "os/exec",
		"log", "log/slog", "unsafe", "syscall"}
	for _, p := range packages(t) {
		room := strings.TrimPrefix(p.ImportPath, module+"/")
		if strings.HasPrefix(room, "internal/") && slices.Contains(forTests, strings.TrimPrefix(room, "internal/")) {
			continue
		}
		for _, b := range banned {
			if slices.Contains(p.Imports, b) {
				t.Errorf("%s imports %s: clock, files, environment and randomness belong to the caller", room, b)
			}
		}
	}
}
