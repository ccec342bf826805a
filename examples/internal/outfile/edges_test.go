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

// A folder is told as one, whatever is allowed.
func TestFoldersAreTold(t *testing.T) {
	folder := t.TempDir()
	for _, replace := range []bool{false, true} {
		err := HTML().writable(folder, replace)
		if err == nil || err.Error() != "got "+folder+", which is a folder; want a file" {
			t.Error(err)
		}
	}
}

// A form is looked for in the first 4096 bytes, up to the last of them.
func TestWhereAFormIsLookedFor(t *testing.T) {
	const begin, mark = "<!DOCTYPE html>", `<meta name="generator" content="Maslin">`
	name := filepath.Join(t.TempDir(), "page.html")
	for length, ours := range map[int]bool{len(begin) + len(mark): true, 4096: true, 4097: false} {
		page := begin + strings.Repeat(" ", length-len(begin)-len(mark)) + mark
		if err := os.WriteFile(name, []byte(page), 0o600); err != nil {
			t.Fatal(err)
		}
		if err := HTML().writable(name, false); (err == nil) != ours {
			t.Errorf("a mark that ends at byte %d: %v", length, err)
		}
	}
}

// A file is protected where nobody may write it, whoever may read it or run it.
func TestProtected(t *testing.T) {
	name := filepath.Join(t.TempDir(), "page.html")
	if err := os.WriteFile(name, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	for mode, protected := range map[os.FileMode]bool{0o400: true, 0o444: true, 0o555: true, 0o600: false, 0o420: false, 0o402: false} {
		if err := os.Chmod(name, mode); err != nil {
			t.Fatal(err)
		}
		if err := HTML().writable(name, false); (err != nil) != protected {
			t.Errorf("%o: %v", mode, err)
		}
	}
}

// Two names in folders that are not there are not one name.
func TestNamesThatLeadNowhere(t *testing.T) {
	folder := t.TempDir()
	g := Guard{Outputs: []Output{{Flag: "--a", Name: filepath.Join(folder, "none", "x"), Form: HTML()},
		{Flag: "--b", Name: filepath.Join(folder, "no", "x"), Form: SVG()}}}
	if err := g.Check(); err != nil {
		t.Error(err)
	}
	t.Chdir(folder)
	g = Guard{Outputs: []Output{{Flag: "--a", Name: "x", Form: HTML()}, {Flag: "--b", Name: "./x", Form: SVG()}}}
	if err := g.Check(); err == nil {
		t.Error("two names of one file in this folder")
	}
}

// What the program prints to is not replaced: what is written stands once where its words are.
func TestWhatIsPrintedTo(t *testing.T) {
	name := filepath.Join(t.TempDir(), "all")
	f, err := os.Create(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	for _, std := range []**os.File{&os.Stdout, &os.Stderr} {
		own := *std
		t.Cleanup(func() { *std = own })
		*std = f
		_, _ = f.WriteString("before,")
		if err := (Output{Name: name, Form: HTML()}).Write([]byte("page,"), false); err != nil {
			t.Error(err)
		}
		_, _ = f.WriteString("after;")
		*std = own
	}
	if b, err := os.ReadFile(name); err != nil || string(b) != "before,page,after;before,page,after;" {
		t.Errorf("%q, %v", b, err)
	}
}
