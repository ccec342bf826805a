package bakelog

import (
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"example.org/maslin/schedule/bench"
)

func notes(t *testing.T, name string) (out []string) {
	t.Helper()
	got, err := Read(name, bench.LogReading{})
	if err != nil {
		t.Fatal(err)
	}
	for _, o := range got.Entries {
		out = append(out, o.Note)
	}
	return out
}

// Who waited for a log that was moved away meanwhile writes to the new one, not to the old.
func TestLogMovedAwayWhileWaiting(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("an open file is not moved there")
	}
	folder := t.TempDir()
	name, moved := filepath.Join(folder, "bakes.jsonl"), filepath.Join(folder, "last-year.jsonl")
	if err := Append(name, note("old")); err != nil {
		t.Fatal(err)
	}
	holder, err := openLocked(name)
	if err != nil {
		t.Fatal(err)
	}
	done := make(chan error)
	go func() { done <- Append(name, note("new")) }()
	time.Sleep(50 * time.Millisecond) // so that it waits for the lock; if it does not yet, the answer is the same
	if err := os.Rename(name, moved); err != nil {
		t.Fatal(err)
	}
	if err := holder.Close(); err != nil {
		t.Fatal(err)
	}
	if err := <-done; err != nil {
		t.Fatal(err)
	}
	again, err := open(moved, os.O_RDWR, 20*time.Millisecond)
	if err != nil {
		t.Fatal("the old log is still locked: ", err)
	}
	defer again.Close()
	if a, b := strings.Join(notes(t, moved), " "), strings.Join(notes(t, name), " "); a != "old" || b != "new" {
		t.Errorf("the old log has %q, the new one %q", a, b)
	}
}

// Nothing to write makes no file; a log is made with its folders, for its owner to write and others to read.
func TestWhatIsMade(t *testing.T) {
	name := filepath.Join(t.TempDir(), "a", "b", "bakes.jsonl")
	if err := Append(name); err != nil {
		t.Error(err)
	}
	if _, err := os.Stat(filepath.Dir(name)); !errors.Is(err, os.ErrNotExist) {
		t.Error("something was made for nothing: ", err)
	}
	if got, err := Read(name, bench.LogReading{}); err != nil || len(got.Entries) != 0 {
		t.Errorf("a log that is not there: %v, %v", got, err)
	}
	if err := Append(name, note("x")); err != nil {
		t.Fatal(err)
	}
	for of, most := range map[string]os.FileMode{name: 0o644, filepath.Dir(name): 0o755} {
		info, err := os.Stat(of)
		if err != nil || info.Mode().Perm()&^most != 0 || info.Mode().Perm()&0o600 != 0o600 {
			t.Errorf("%s: %v, %v", of, info.Mode(), err)
		}
	}
	if _, err := Read(filepath.Join(name, "x"), bench.LogReading{}); err == nil || errors.Is(err, os.ErrNotExist) {
		t.Errorf("a log inside a file: %v", err)
	}
}
