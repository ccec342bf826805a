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
	put(t, at("page.html"), "\ufeff\n <!DOCTYPE HTML><html><meta name=\"generator\" content=\"Maslin\">", 0o644)
	put(t, at("home.html"), "<!doctype html><title>My bread</title>", 0o644)
	put(t, at("old.svg"), "<svg role=\"img\" aria-labelledby=\"curve-1\"/>", 0o644)
	put(t, at("logo.svg"), "<svg/>", 0o644)
	put(t, at("family.ics"), "BEGIN:VCALENDAR\r\nPRODID:-//Family//EN\r\n", 0o644)
	put(t, at("kept.html"), "<!DOCTYPE html><meta name=\"generator\" content=\"Maslin\">", 0o444)
	put(t, at("feed.xml"), "<?xml version=\"1.0\"?>\n<rss/>", 0o644)
	put(t, at("plan.ics"), "BEGIN:VCALENDAR\r\nPRODID:-//maslin//x//EN\r\n", 0o644)
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
		{"family.ics", outfile.Calendar(), "is not a calendar of this program", ""},
		{"home.html", outfile.HTML(), "is not an HTML page of this program", ""},
		{"logo.svg", outfile.SVG(), "is not an SVG picture of this program", ""},
		{"kept.html", outfile.HTML(), "is protected from being written", ""},
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

func written(name, content string) error {
	return outfile.Output{Flag: "--out", Name: name, Form: outfile.HTML()}.Write([]byte(content), true)
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
		if err := written(at(name), "content of "+name); err != nil {
			t.Fatal(err)
		}
	}
	got := fmt.Sprintln(read(t, at("private")), mode("private"), mode("link")[:1], read(t, at("made")), mode("ahead")[:1], mode("new") == mode("plain"))
	if want := "content of link -rw------- L content of ahead L true\n"; got != want {
		t.Errorf("got  %swant %s", got, want)
	}
	if err := written(os.DevNull, "x"); err != nil {
		t.Error(err)
	}
	if err := written(folder, "x"); err == nil {
		t.Error("a folder was written")
	}
	if err := written(at("none/x"), "x"); err == nil || !strings.Contains(err.Error(), "none/x: cannot be written: ") {
		t.Error(err)
	}
	left, err := filepath.Glob(at(".maslin-*"))
	if err != nil || len(left) > 0 {
		t.Error("left behind:", left, err)
	}
}

// A name leads where the system says: ".." behind a linked folder, or in a link in one, is not the folder that the text
// of the path names.
func TestPathsThroughLinkedFolders(t *testing.T) {
	folder := t.TempDir()
	at := func(name string) string { return folder + "/" + name } // filepath.Join would shorten it
	for _, name := range []string{"far/off/dir", "near"} {
		if err := os.MkdirAll(at(name), 0o755); err != nil {
			t.Fatal(err)
		}
	}
	for name, to := range map[string]string{"near/sub": "../far/off/dir", "far/off/dir/made": "../new",
		"far/off/dir/there": "../old"} {
		if err := os.Symlink(to, at(name)); err != nil {
			t.Skip(err)
		}
	}
	put(t, at("far/off/old"), "old", 0o644)
	for name, real := range map[string]string{"near/sub/made": "far/off/new", "near/sub/there": "far/off/old",
		"near/sub/../page": "far/off/page", "near/sub/.././sub": "far/off/sub"} {
		beside := at("near/" + filepath.Base(real))
		if filepath.Base(real) != "sub" {
			put(t, beside, "precious", 0o644)
		}
		two := outfile.Guard{Outputs: []outfile.Output{{Flag: "--a", Name: at(name), Form: outfile.HTML()},
			{Flag: "--b", Name: at(real), Form: outfile.HTML()}}, Replace: true}
		if err := two.Check(); err == nil || !strings.Contains(err.Error(), "which --a writes too") {
			t.Errorf("%s and %s: %v", name, real, err)
		}
		if err := written(at(name), "new"); err != nil {
			t.Error(err)
		}
		if got := read(t, at(real)); got != "new" {
			t.Errorf("%s: %s holds %q", name, real, got)
		}
		if b, err := os.ReadFile(beside); err == nil && string(b) == "new" {
			t.Errorf("%s was written in place of %s", beside, real)
		}
	}
	if err := os.Symlink("round", at("round")); err != nil {
		t.Fatal(err)
	}
	if err := written(at("round"), "x"); err == nil {
		t.Error("a link to itself was written")
	}
}

// What another program makes between the look at a file and the writing is not lost either.
func TestTakenMeanwhile(t *testing.T) {
	name := filepath.Join(t.TempDir(), "page.html")
	out := outfile.Output{Flag: "--html", Name: name, Form: outfile.HTML()}
	if err := (outfile.Guard{Outputs: []outfile.Output{out}}).Check(); err != nil {
		t.Fatal(err)
	}
	put(t, name, "precious", 0o644)
	err := out.Write([]byte("page"), false)
	if err == nil || !strings.HasPrefix(err.Error(), "--html: ") || read(t, name) != "precious" {
		t.Errorf("%v, %q", err, read(t, name))
	}
}
