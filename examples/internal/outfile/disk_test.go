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

// A pipe gives what is written to its reader, once; a device that takes nothing is an error, and so is a file that
// cannot be read.
func TestPipesAndDevices(t *testing.T) {
	pipe := filepath.Join(t.TempDir(), "pipe")
	if err := syscall.Mkfifo(pipe, 0o600); err != nil {
		t.Skip(err)
	}
	got := make(chan string)
	go func() {
		b, _ := os.ReadFile(pipe)
		got <- string(b)
	}()
	if err := (Output{Name: pipe, Form: HTML()}).Write([]byte("page"), false); err != nil {
		t.Error(err)
	}
	if text := <-got; text != "page" {
		t.Errorf("%q", text)
	}
	if info, err := os.Stat(pipe); err != nil || info.Mode()&os.ModeNamedPipe == 0 {
		t.Error("the pipe is gone")
	}
	if err := write("/dev/full", []byte("page")); !errors.Is(err, syscall.ENOSPC) {
		t.Error(err)
	}
	if err := HTML().writable("/proc/self/mem", false); !errors.Is(err, syscall.EIO) {
		t.Error(err)
	}
}
