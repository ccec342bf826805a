// Package readme checks that README's steps work as they are written.
package readme

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// block returns the first fenced or indented block of README after a sentence.
func block(t *testing.T, after string) string {
	t.Helper()
	text, err := os.ReadFile("../../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	_, rest, ok := strings.Cut(string(text), after)
	if !ok {
		t.Fatalf("README does not say %q", after)
	}
	var out []string
	fenced := false
	for _, line := range strings.Split(rest, "\n") {
		code, indented := strings.CutPrefix(line, "    ")
		switch {
		case strings.HasPrefix(line, "```") && fenced:
			return strings.Join(out, "\n") + "\n"
		case strings.HasPrefix(line, "```"):
			fenced = true
		case fenced:
			out = append(out, line)
		case indented:
			out = append(out, code)
		case len(out) > 0:
			return strings.Join(out, "\n") + "\n"
		}
	}
	t.Fatalf("no block after %q", after)
	return ""
}

// The program that README shows is embedded in an empty folder by the commands that README gives.
func TestEmbeddingSteps(t *testing.T) {
	if testing.Short() {
		t.Skip("builds a program of its own")
	}
	root, err := filepath.Abs("../../..")
	if err != nil {
		t.Fatal(err)
	}
	folder := filepath.Join(t.TempDir(), "my-program")
	if err := os.Mkdir(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(root, filepath.Join(filepath.Dir(folder), "maslin")); err != nil {
		t.Skip(err)
	}
	if err := os.WriteFile(filepath.Join(folder, "main.go"), []byte(block(t, "## Embedding it")), 0o644); err != nil {
		t.Fatal(err)
	}
	var out []byte
	for _, line := range strings.Split(strings.TrimSpace(block(t, "into an empty folder beside it and run there:")), "\n") {
		line, _, _ = strings.Cut(line, "#")
		words := strings.Fields(line)
		cmd := exec.Command(words[0], words[1:]...)
		cmd.Dir = folder
		cmd.Env = append(os.Environ(), "GOWORK=off", "GOFLAGS=")
		if out, err = cmd.CombinedOutput(); err != nil {
			t.Fatalf("%s: %v\n%s", line, err, out)
		}
	}
	if text := string(out); !strings.Contains(text, "70 %") || !strings.Contains(text, "T_water") {
		t.Errorf("the program prints\n%s", text)
	}
}
