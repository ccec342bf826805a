package outfile

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A file that holds nothing but our first line is ours, and one of a single byte is not; what cannot be looked at says
// why.
func TestFilesAtTheEdge(t *testing.T) {
	folder := t.TempDir()
	for content, ours := range map[string]bool{"": true, "x": false, "BEGIN:VCALENDAR": true, "begin:vcalendar": true,
		"BEGIN:VCALENDA": false, "\ufeff \n BEGIN:VCALENDAR": true} {
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
	if err := replace(full, []byte("x"), 0, false); err == nil {
		t.Error("a folder was replaced")
	}
	if err := Write(filepath.Join(folder, "new"), []byte("x")); err != nil {
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
