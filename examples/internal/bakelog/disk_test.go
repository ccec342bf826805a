//go:build linux

package bakelog

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"runtime/debug"
	"strconv"
	"strings"
	"syscall"
	"testing"

	"example.org/maslin/schedule/bench"
)

// On a full disk nothing is lost and nothing is left half written; when there is room again, it
// goes on.
func TestFullDisk(t *testing.T) {
	folder := t.TempDir()
	if err := syscall.Mount("tmpfs", folder, "tmpfs", 0, "size=64k"); err != nil {
		t.Skip("cannot mount a small disk here: ", err)
	}
	t.Cleanup(func() { _ = syscall.Unmount(folder, syscall.MNT_DETACH) })
	name := filepath.Join(folder, "bakes.jsonl")
	ballast := filepath.Join(folder, "ballast")
	if err := os.WriteFile(ballast, make([]byte, 16<<10), 0o644); err != nil {
		t.Fatal(err)
	}
	text := strings.Repeat("y", 3000)
	var before []byte
	written := 0
	for ; ; written++ {
		if written > 100 {
			t.Fatal("the disk does not get full")
		}
		err := Append(name, note(text))
		if err != nil {
			if !errors.Is(err, syscall.ENOSPC) {
				t.Fatal(err)
			}
			break
		}
		before, _ = os.ReadFile(name)
	}
	after, _ := os.ReadFile(name)
	if !bytes.Equal(before, after) {
		t.Errorf("%d bytes before, %d after", len(before), len(after))
	}
	if err := os.Remove(ballast); err != nil {
		t.Fatal(err)
	}
	if err := Append(name, note(text)); err != nil {
		t.Fatal(err)
	}
	got, err := Read(name, bench.LogReading{})
	if err != nil || len(got.Entries) != written+1 || len(got.Unreadable) != 0 {
		t.Errorf("%v: %d entries, want %d, %v", err, len(got.Entries), written+1, got.Unreadable)
	}
}

// A folder or file that may not be written is said as such. Root may write everywhere, so a
// read-only disk stands for it when the test can mount one.
func TestReadOnly(t *testing.T) {
	folder := t.TempDir()
	name := filepath.Join(folder, "bakes.jsonl")
	want := []error{syscall.EACCES}
	if os.Getuid() == 0 {
		if err := syscall.Mount("tmpfs", folder, "tmpfs", syscall.MS_RDONLY, "size=64k"); err != nil {
			t.Skip("cannot mount a read-only disk here: ", err)
		}
		t.Cleanup(func() { _ = syscall.Unmount(folder, syscall.MNT_DETACH) })
		want = []error{syscall.EROFS}
	} else if err := os.Chmod(folder, 0o555); err != nil {
		t.Fatal(err)
	}
	for _, n := range []string{name, filepath.Join(folder, "deeper", "bakes.jsonl")} {
		if err := Append(n, note("x")); !errors.Is(err, want[0]) {
			t.Errorf("%s: got %v, want %v", n, err, want[0])
		}
	}
}

func TestNotAFile(t *testing.T) {
	for _, name := range []string{"/dev/full", "/dev/null", t.TempDir()} {
		if err := Append(name, note("x")); err == nil {
			t.Errorf("%s was accepted", name)
		}
	}
}

// A pipe is no log, and is not waited for.
func TestPipeIsNoLog(t *testing.T) {
	name := filepath.Join(t.TempDir(), "pipe")
	if err := syscall.Mkfifo(name, 0o600); err != nil {
		t.Skip(err)
	}
	err := Append(name, note("x"))
	if err == nil || !strings.Contains(err.Error(), "not a file") || !strings.Contains(err.Error(), name) {
		t.Error(err)
	}
}

// Whatever becomes of it, no file stays open.
func TestNoFileStaysOpen(t *testing.T) {
	opened := func() int {
		all, err := os.ReadDir("/proc/self/fd")
		if err != nil {
			t.Skip(err)
		}
		return len(all)
	}
	gc := debug.SetGCPercent(-1) // which would close what was forgotten
	defer debug.SetGCPercent(gc)
	folder := t.TempDir()
	other := filepath.Join(folder, "other")
	if err := os.WriteFile(other, []byte("no log\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	before := opened()
	for i := range 5 {
		name := filepath.Join(folder, strconv.Itoa(i), "bakes.jsonl")
		for range 2 {
			if err := Append(name, note("x")); err != nil {
				t.Fatal(err)
			}
		}
		if _, err := Read(name, bench.LogReading{}); err != nil {
			t.Fatal(err)
		}
		for _, no := range []string{other, filepath.Join(other, "x"), folder} {
			if err := Append(no, note("x")); err == nil {
				t.Errorf("%s was written", no)
			}
		}
	}
	if after := opened(); after > before {
		t.Errorf("%d files are open, %d were", after, before)
	}
}
