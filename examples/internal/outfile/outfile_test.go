package outfile_test

import (
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"example.org/maslin/examples/internal/outfile"
)

const heading = "table,part,item"

func put(t *testing.T, name, content string, mode os.FileMode) {
	t.Helper()
	if err := os.WriteFile(name, []byte(content), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Chmod(name, mode); err != nil {
		t.Fatal(err)
	}
}

func read(t *testing.T, name string) string {
	t.Helper()
	b, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// Every way in which an output may meet a file that exists.
func TestCheck(t *testing.T) {
	folder := t.TempDir()
	at := func(name string) string { return filepath.Join(folder, name) }
	put(t, at("bake.toml"), "name = \"x\"\n", 0o644)
	put(t, at("photo.jpg"), "\xff\xd8\xff", 0o644)
	put(t, at("page.html"), "\ufeff\n <!DOCTYPE HTML><html>", 0o644)
	put(t, at("old.svg"), "<?xml version=\"1.0\"?>\n<svg/>", 0o644)
	put(t, at("feed.xml"), "<?xml version=\"1.0\"?>\n<rss/>", 0o644)
	put(t, at("plan.ics"), "BEGIN:VCALENDAR\r\n", 0o644)
	put(t, at("plan.csv"), heading+"\r\nweigh,,\r\n", 0o644)
	put(t, at("probe.csv"), "time,temperature\n0:00,25\n", 0o644)
	put(t, at("empty"), "", 0o644)
	if err := os.Mkdir(at("folder"), 0o755); err != nil {
		t.Fatal(err)
	}
	link := func(to, name string) {
		if err := os.Symlink(to, at(name)); err != nil {
			t.Skip(err)
		}
	}
	link("bake.toml", "link-to-bake")
	link("new.html", "link-to-new")
	if err := os.Link(at("bake.toml"), at("hard-link")); err != nil {
		t.Skip(err)
	}
	in := []outfile.Input{{Called: "the bake file", Name: at("bake.toml")}, {Called: "the log", Name: ""}}
	for _, c := range []struct {
		name string
		form outfile.Form
		want string // part of the refusal; empty: allowed
		even string // the same with Replace
	}{
		{"new.html", outfile.HTML(), "", ""},
		{"empty", outfile.HTML(), "", ""},
		{"page.html", outfile.HTML(), "", ""},
		{"old.svg", outfile.SVG(), "", ""},
		{"plan.ics", outfile.Calendar(), "", ""},
		{"plan.csv", outfile.CSV(heading), "", ""},
		{"feed.xml", outfile.SVG(), "is not an SVG picture", ""},
		{"page.html", outfile.SVG(), "is not an SVG picture", ""},
		{"probe.csv", outfile.CSV(heading), "is not a table with the columns of this program", ""},
		{"photo.jpg", outfile.HTML(), "is not an HTML page", ""},
		{"plan.csv", outfile.Calendar(), "is not a calendar", ""},
		{"folder", outfile.HTML(), "is a folder", "is a folder"},
		{"bake.toml", outfile.HTML(), "which is the bake file", "which is the bake file"},
		{"link-to-bake", outfile.HTML(), "which is the bake file", "which is the bake file"},
		{"hard-link", outfile.HTML(), "which is the bake file", "which is the bake file"},
		{"folder/../bake.toml", outfile.HTML(), "which is the bake file", "which is the bake file"},
	} {
		for _, replace := range []bool{false, true} {
			want := c.want
			if replace {
				want = c.even
			}
			err := outfile.Guard{Inputs: in, Outputs: []outfile.Output{{Flag: "--out", Name: at(c.name), Form: c.form}}, Replace: replace}.Check()
			if want == "" && err != nil || want != "" && (err == nil || !strings.Contains(err.Error(), want) || !strings.HasPrefix(err.Error(), "--out: ")) {
				t.Errorf("%s, replace %v: got %v, want %q", c.name, replace, err, want)
			}
		}
	}
	two := func(a, b string) error {
		return outfile.Guard{Outputs: []outfile.Output{{Flag: "--a", Name: a, Form: outfile.HTML()}, {Flag: "--b", Name: b, Form: outfile.HTML()}}}.Check()
	}
	for _, c := range []struct {
		a, b string
		ok   bool
	}{
		{at("one"), at("two"), true}, {"", "", true}, {at("one"), at("one"), false}, {at("one"), at("folder/../one"), false},
		{at("new.html"), at("link-to-new"), false}, {at("page.html"), at("page.html"), false}, {os.DevNull, os.DevNull, true},
	} {
		if err := two(c.a, c.b); (err == nil) != c.ok {
			t.Errorf("%q and %q: %v", c.a, c.b, err)
		}
	}
	all := outfile.Guard{Inputs: in, Outputs: []outfile.Output{
		{Flag: "--a", Name: at("bake.toml"), Form: outfile.HTML()}, {Flag: "--b", Name: at("photo.jpg"), Form: outfile.HTML()},
	}}.Check()
	if all == nil || strings.Count(all.Error(), "\n") != 1 {
		t.Errorf("not all problems at once: %v", all)
	}
}

// A file that is replaced keeps its mode and its links; a new one is made as the umask says.
func TestWrite(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("modes and links are those of Unix")
	}
	folder := t.TempDir()
	at := func(name string) string { return filepath.Join(folder, name) }
	mode := func(name string) string {
		info, err := os.Lstat(at(name))
		if err != nil {
			t.Fatal(err)
		}
		return info.Mode().String()
	}
	put(t, at("private"), "old", 0o600)
	if err := os.Symlink("private", at("link")); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink("made", at("ahead")); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(at("plain"), nil, 0o666); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"link", "ahead", "new"} {
		if err := outfile.Write(at(name), []byte("content of "+name)); err != nil {
			t.Fatal(err)
		}
	}
	got := fmt.Sprintln(read(t, at("private")), mode("private"), mode("link")[:1], read(t, at("made")), mode("ahead")[:1], mode("new") == mode("plain"))
	if want := "content of link -rw------- L content of ahead L true\n"; got != want {
		t.Errorf("got  %swant %s", got, want)
	}
	if err := outfile.Write(os.DevNull, []byte("x")); err != nil {
		t.Error(err)
	}
	if err := outfile.Write(folder, []byte("x")); err == nil {
		t.Error("a folder was written")
	}
	if err := outfile.Write(at("none/x"), []byte("x")); err == nil || !strings.Contains(err.Error(), "none/x: cannot be written: ") {
		t.Error(err)
	}
	left, err := filepath.Glob(at(".maslin-*"))
	if err != nil || len(left) > 0 {
		t.Error("left behind:", left, err)
	}
}
