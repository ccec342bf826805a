package cli

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
)

// A file of values is read to its last byte, and one byte more than is taken is noticed.
func TestFilesAreReadToTheirLimit(t *testing.T) {
	name := filepath.Join(t.TempDir(), "text")
	for size, want := range map[int]int{9: 9, 10: 10, 11: 11, 12: 11, 100: 11} {
		if err := os.WriteFile(name, bytes.Repeat([]byte("x"), size), 0o600); err != nil {
			t.Fatal(err)
		}
		if got, err := readFile(name, 10); err != nil || len(got) != want {
			t.Errorf("%d bytes: %d are read, %v", size, len(got), err)
		}
	}
}
