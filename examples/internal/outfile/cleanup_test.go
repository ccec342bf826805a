package outfile

import (
	"os"
	"path/filepath"
	"testing"
)

// A program that is told to stop leaves no half-written file, and begins no new one.
func TestCleanup(t *testing.T) {
	t.Cleanup(func() { pending.over = false })
	folder := t.TempDir()
	f, err := temporary(folder)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	Cleanup()
	if _, err := os.Stat(f.Name()); !os.IsNotExist(err) {
		t.Errorf("%s is still there: %v", f.Name(), err)
	}
	if err := write(filepath.Join(folder, "new"), []byte("x")); err == nil {
		t.Error("written after the end")
	}
	if left, _ := os.ReadDir(folder); len(left) > 0 {
		t.Error("left behind:", left)
	}
}
