package cli

import (
	"os"
	"strings"
	"testing"
)

// A loaf from a ripe levain takes at most ten lines to describe.
func TestTheShortestBakeFile(t *testing.T) {
	content, err := os.ReadFile("../../bakes/ripe-at-eight.toml")
	if err != nil {
		t.Fatal(err)
	}
	lines := 0
	for _, line := range strings.Split(string(content), "\n") {
		if strings.TrimSpace(line) != "" {
			lines++
		}
	}
	if lines == 0 || lines > 10 {
		t.Errorf("%d lines", lines)
	}
}
