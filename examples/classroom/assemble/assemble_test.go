package assemble

import (
	"net/http/httptest"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// One page holds everything and may ask nobody; the other names the files beside it and may ask for them alone. Nothing
// of the frame is left to fill, and style stands before library before script.
func TestPages(t *testing.T) {
	const runner = "/* the runner */"
	files, err := pages([]byte("packed"), runner)
	if err != nil || len(files) != 5 || string(files[Compressed]) != "packed" {
		t.Fatal(len(files), err)
	}
	style, script := string(files[styleFile]), string(files[scriptFile])
	if !strings.HasPrefix(script, runner+"\n") || len(script) < 1000 || len(style) < 1000 {
		t.Errorf("%d and %d bytes", len(script), len(style))
	}
	for name, parts := range map[string][]string{
		SingleFile: {"script-src 'unsafe-inline' 'wasm-unsafe-eval'", "<style>\n" + style + "</style>",
			`id="library">` + inText([]byte("packed")) + "</script>", "<script>\n" + script + "</script>"},
		ServedPage: {"connect-src 'self'", `href="classroom.css"`, `href="classroom.columns.gz"`, `<script src="classroom.js"></script>`},
	} {
		page, at := string(files[name]), 0
		for _, part := range append([]string{"<!DOCTYPE html>", "default-src 'none'; img-src data:; base-uri 'none'; form-action 'none'; "}, parts...) {
			i := strings.Index(strings.ToLower(page[at:]), strings.ToLower(part))
			if i < 0 {
				t.Fatalf("%s: no %.80q behind byte %d", name, part, at)
			}
			at += i + len(part)
		}
		if strings.Contains(page, "{{") {
			t.Errorf("%s: something is left to fill", name)
		}
		if own := strings.Contains(page, "connect-src"); own != (name == ServedPage) {
			t.Errorf("%s: may it ask a server: %v", name, own)
		}
	}
}

// Only the files of the classroom are served.
func TestServesItsFilesAndNothingElse(t *testing.T) {
	c := Classroom{Files: map[string][]byte{ServedPage: []byte("<p>"), styleFile: []byte("p{}"), Compressed: {31, 139}}}
	for path, want := range map[string]struct {
		code int
		kind string
	}{
		"/": {200, "text/html"}, "/index.html": {200, "text/html"}, "/classroom.css": {200, "text/css"},
		"/classroom.columns.gz": {200, "application/gzip"},
		"/classroom.js":         {404, ""}, "/a/index.html": {404, ""}, "/../assemble.go": {404, ""}, "/favicon.ico": {404, ""},
	} {
		w := httptest.NewRecorder()
		c.ServeHTTP(w, httptest.NewRequest("GET", path, nil))
		if w.Code != want.code || !strings.HasPrefix(w.Header().Get("Content-Type"), want.kind) {
			t.Errorf("%s: %d, %s", path, w.Code, w.Header().Get("Content-Type"))
		}
	}
	dir := filepath.Join(t.TempDir(), "new")
	if err := c.Write(dir); err != nil {
		t.Fatal(err)
	}
	if b, err := os.ReadFile(filepath.Join(dir, styleFile)); err != nil || string(b) != "p{}" {
		t.Errorf("%s, %v", b, err)
	}
}

// A folder of other pages is left as it is; one of an earlier classroom is written anew.
func TestWritesOverNoOtherPages(t *testing.T) {
	c := Classroom{Files: map[string][]byte{ServedPage: []byte("new"), styleFile: []byte("new"), Compressed: {31, 139}}}
	dir := t.TempDir()
	index := filepath.Join(dir, ServedPage)
	if err := os.WriteFile(index, []byte("own"), 0o600); err != nil {
		t.Fatal(err)
	}
	err := c.Write(dir)
	if left, e := os.ReadDir(dir); err == nil || !strings.Contains(err.Error(), index) || len(left) != 1 || e != nil {
		t.Errorf("%v, %v, %v", err, left, e)
	}
	if b, err := os.ReadFile(index); err != nil || string(b) != "own" {
		t.Errorf("%s, %v", b, err)
	}
	if err := os.WriteFile(filepath.Join(dir, Compressed), []byte{31, 139}, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := c.Write(dir); err != nil {
		t.Error(err)
	}
	if b, err := os.ReadFile(index); err != nil || string(b) != "new" {
		t.Errorf("%s, %v", b, err)
	}
}

// The page asks no other server, and its script has no word for a reader: those come from the library's door.
func TestPageHasNoWordsOfItsOwn(t *testing.T) {
	script, err := page.ReadFile("page/page.js")
	if err != nil {
		t.Fatal(err)
	}
	if regexp.MustCompile(`https?://|import\(|localStorage|sessionStorage|document\.cookie`).Match(script) {
		t.Error("the script asks a server or stores something")
	}
	for _, line := range strings.Split(string(script), "\n") {
		code, _, _ := strings.Cut(line, "//")
		for _, quoted := range regexp.MustCompile(`"[^"]*"`).FindAllString(code, -1) {
			if regexp.MustCompile(`[a-z] [a-z]`).MatchString(quoted) && !strings.ContainsAny(quoted, "[.#") &&
				quoted != `"use strict"` &&
				quoted != `"the library has ended"` {
				t.Errorf("words in the script: %s", quoted)
			}
		}
	}
}
