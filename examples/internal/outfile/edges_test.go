package outfile

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A file that holds nothing but our first line is ours, and one of a single byte is not; what cannot be looked at says
// why.
func TestFilesAtTheEdge(t *testing.T) {
	folder := t.TempDir()
	const product = "\nPRODID:-//maslin//"
	for content, ours := range map[string]bool{"": true, "x": false, "BEGIN:VCALENDAR" + product: true,
		"begin:vcalendar" + product: true, "BEGIN:VCALENDA" + product: false, product: false, "BEGIN:VCALENDAR": false,
		"\ufeff \n BEGIN:VCALENDAR" + product: true} {
		name := filepath.Join(folder, "plan.ics")
		if err := os.WriteFile(name, []byte(content), 0o600); err != nil {
			t.Fatal(err)
		}
		if err := Calendar().writable(name, false); (err == nil) != ours {
			t.Errorf("%q: %v", content, err)
		}
		if err := Calendar().writable(name, true); err != nil {
			t.Errorf("%q is not replaced: %v", content, err)
		}
	}
	inside := filepath.Join(folder, "plan.ics", "x")
	if err := Calendar().writable(inside, false); err == nil || !strings.HasPrefix(err.Error(), inside+": ") {
		t.Error(err)
	}
}

// A file that cannot be put in its place is an error, and is no longer known as under way.
func TestWhatCannotBePutInPlace(t *testing.T) {
	folder := t.TempDir()
	full := filepath.Join(folder, "full")
	if err := os.MkdirAll(filepath.Join(full, "inside"), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := replace(full, []byte("x"), nil); err == nil {
		t.Error("a folder was replaced")
	}
	if err := write(filepath.Join(folder, "new"), []byte("x")); err != nil {
		t.Error(err)
	}
	for name := range pending.names {
		if strings.HasPrefix(name, folder) {
			t.Errorf("still under way: %s", name)
		}
	}
	if left, err := filepath.Glob(filepath.Join(folder, ".maslin-*")); err != nil || len(left) > 0 {
		t.Error("left behind:", left, err)
	}
}

// A file that was made or moved since it was looked at is left, and a name that leads to no place makes none.
func TestPutInPlace(t *testing.T) {
	folder := t.TempDir()
	at := func(name string) string { return filepath.Join(folder, name) }
	for _, name := range []string{"made", "old", "other"} {
		if err := os.WriteFile(at(name), []byte(name), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	old, err := os.Stat(at("old"))
	if err != nil {
		t.Fatal(err)
	}
	if err := putInPlace(at("made"), at("other"), nil); !errors.Is(err, errTaken) {
		t.Errorf("where nothing was: %v", err)
	}
	if err := putInPlace(at("made"), at("other"), old); !errors.Is(err, errTaken) {
		t.Errorf("where another file was: %v", err)
	}
	if err := putInPlace(at("made"), at("gone"), old); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("where the file is gone: %v", err)
	}
	if err := putInPlace(at("made"), at("old"), old); err != nil {
		t.Error(err)
	}
	for name, want := range map[string]string{"other": "other", "old": "made"} {
		if b, err := os.ReadFile(at(name)); err != nil || string(b) != want {
			t.Errorf("%s: %q, %v", name, b, err)
		}
	}
}
