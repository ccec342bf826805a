package main

import (
	"flag"
	"os"
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

// update rewrites the expected output in the scripts: go test ./examples/maslin -update, then
// read the difference by eye.
var update = flag.Bool("update", false, "rewrite the expected output in the scripts")

func TestMain(m *testing.M) { testscript.Main(m, map[string]func(){"maslin": main}) }

func TestScripts(t *testing.T) {
	bakes, err := filepath.Abs("../bakes")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir: "testdata/script", UpdateScripts: *update, RequireUniqueNames: true,
		Setup: func(e *testscript.Env) error {
			e.Setenv("COLUMNS", "80")
			e.Setenv("MASLIN_MUTANT", os.Getenv("MASLIN_MUTANT")) // .ci/mutants: a deliberate error reaches the program too
			for _, name := range []string{"hall-kitchen.toml", "same-day-rolls.toml", "supper-loaves.toml", "ripe-at-eight.toml", "pizza-evening.toml",
				"overnight-buns.toml"} {
				content, err := os.ReadFile(filepath.Join(bakes, name))
				if err != nil {
					return err
				}
				if err := os.WriteFile(filepath.Join(e.WorkDir, name), content, 0o644); err != nil {
					return err
				}
			}
			for _, day := range []string{"market", "sunday", "class"} {
				if err := os.CopyFS(filepath.Join(e.WorkDir, day), os.DirFS(filepath.Join(bakes, day))); err != nil {
					return err
				}
			}
			return nil
		},
	})
}
