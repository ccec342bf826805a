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

func put(t *testing.T, name, content string) {
	t.Helper()
	if err := os.WriteFile(name, []byte(content), 0o600); err != nil {
		t.Fatal(err)
	}
}

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

// However long the last line is, and wherever it breaks off, it keeps to itself and the log is known.
func TestLongLastLines(t *testing.T) {
	entry, err := bench.Observations{note("first")}.Lines()
	if err != nil {
		t.Fatal(err)
	}
	for _, length := range []int{1, 4094, 4095, 4096, 4097, 32767, 32768, 32769, longLine - 1, longLine + 1, 2*longLine + 7} {
		for _, end := range []string{"", "\n"} {
			name := filepath.Join(t.TempDir(), "bakes.jsonl")
			before := string(entry) + strings.Repeat("x", length) + end
			put(t, name, before)
			if err := Append(name, note("second")); err != nil {
				t.Errorf("%d bytes and %q: %v", length, end, err)
				continue
			}
			after, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			want := strings.TrimSuffix(before, "\n") + "\n" + strings.Replace(string(entry), "first", "second", 1)
			if string(after) != want {
				t.Errorf("%d bytes and %q: the file has %d bytes, want %d", length, end, len(after), len(want))
			}
		}
	}
}

// A log is known by any of its lines. A later version is told without the number of a line, which would be counted from
// its last one.
func TestHowALogIsKnown(t *testing.T) {
	entry, err := bench.Observations{note("first")}.Lines()
	if err != nil {
		t.Fatal(err)
	}
	later := `{"v":2,"at":"2026-11-28T10:40:00+01:00","kind":"note","note":"x"}` + "\n"
	for content, ours := range map[string]bool{
		string(entry) + "no line\nand no other\n": true, "no line\n" + string(entry): true,
		"no line\n" + string(entry) + "no line": true, "no line\nand no other\n": false,
		`{"v":` + "\n": false, "x\n" + `{"v":`: false, `{"v":` + "\n" + `{"v":`: false, `{"v"`: true, `{"w"`: false,
	} {
		name := filepath.Join(t.TempDir(), "bakes.jsonl")
		put(t, name, content)
		if err := Append(name, note("x")); (err == nil) != ours || err != nil && !errors.Is(err, ErrNotLog) {
			t.Errorf("%q: %v", content, err)
		}
	}
	name := filepath.Join(t.TempDir(), "bakes.jsonl")
	put(t, name, string(entry)+later)
	err = Append(name, note("x"))
	if !errors.As(err, new(bench.LaterVersion)) || strings.Contains(err.Error(), "line") {
		t.Error(err)
	}
}
