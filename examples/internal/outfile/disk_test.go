//go:build linux

package outfile

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// On a full disk the old file stays whole, the error says so, and nothing is left behind.
func TestFullDisk(t *testing.T) {
	folder := t.TempDir()
	if err := syscall.Mount("tmpfs", folder, "tmpfs", 0, "size=64k"); err != nil {
		t.Skip("cannot mount a small disk here: ", err)
	}
	t.Cleanup(func() { _ = syscall.Unmount(folder, syscall.MNT_DETACH) })
	name := filepath.Join(folder, "plan.html")
	if err := write(name, []byte("old")); err != nil {
		t.Fatal(err)
	}
	err := write(name, make([]byte, 128<<10))
	if !errors.Is(err, syscall.ENOSPC) || !strings.HasPrefix(err.Error(), name+": cannot be written: ") {
		t.Error(err)
	}
	if got, err := os.ReadFile(name); err != nil || string(got) != "old" {
		t.Errorf("%d bytes, %v", len(got), err)
	}
	if left, err := filepath.Glob(filepath.Join(folder, ".maslin-*")); err != nil || len(left) > 0 {
		t.Error("left behind:", left, err)
	}
	if err := write(name, make([]byte, 16<<10)); err != nil {
		t.Errorf("the room of the failed write is not free: %v", err)
	}
}
