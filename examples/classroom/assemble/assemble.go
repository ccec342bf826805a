// Package assemble builds the classroom: the library compiled to WebAssembly, with one page around it.
package assemble

import (
	"bytes"
	"embed"
	"errors"
	"fmt"
	"mime"
	"net/http"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"strings"

	"example.org/maslin/dough/report"
	"example.org/maslin/examples/classroom/beside"
	"example.org/maslin/examples/internal/language"
	"example.org/maslin/examples/internal/outfile"
)

//go:embed page/page.html page/page.css page/page.js page/together.js
var page embed.FS

const library = "example.org/maslin/examples/classroom/wasm"

// A Classroom is its files by name: the page that needs nothing else, and the same as a folder to serve.
type Classroom struct {
	Files   map[string][]byte
	Library []byte // as the browser runs it
}

// The names of the files.
const (
	SingleFile = "classroom.html"
	ServedPage = "index.html"
	Compressed = "classroom.columns.gz"
	styleFile  = "classroom.css"
	scriptFile = "classroom.js"
)

// Build compiles the library to WebAssembly and puts the pages together. Small, it is compressed for minutes by the
// program zopfli, which must be installed, and a twentieth smaller.
func Build(small bool) (Classroom, error) {
	wasm, err := compile()
	if err != nil {
		return Classroom{}, err
	}
	runner, err := runtimeScript()
	if err != nil {
		return Classroom{}, err
	}
	packed, err := compressed(wasm, small)
	if err != nil {
		return Classroom{}, err
	}
	files, err := pages(packed, runner)
	return Classroom{Files: files, Library: wasm}, err
}

// compressed is a program in columns, compressed. What cannot be put in columns, of a newer compiler say, is compressed
// as it is.
func compressed(program []byte, small bool) ([]byte, error) {
	sent, err := inColumns(program)
	if errors.Is(err, errCode) {
		sent, err = program, nil
	}
	if err != nil {
		return nil, err
	}
	if small {
		return zippedSmall(sent)
	}
	return zipped(sent)
}

// Pack packs another program of the library as the classroom's is packed, into name.columns.gz of a folder, and puts
// beside it the script whose function together puts it in order again in a browser. What a crash would print of the
// program's functions is left out. It says how many bytes there are to transfer.
func Pack(program []byte, dir, name string, small bool) (int, error) {
	joined, err := merged(program)
	if err != nil {
		return 0, err
	}
	packed, err := compressed(joined, small)
	if err != nil {
		return 0, err
	}
	script, err := page.ReadFile("page/together.js")
	if err != nil {
		return 0, err
	}
	files := map[string][]byte{name + ".columns.gz": packed, "together.js": script}
	for name, content := range files {
		there, err := os.ReadFile(filepath.Join(dir, name))
		if err == nil && !bytes.HasPrefix(there, content[:min(len(content), 24)]) { // the head of gzip with its mark
			return 0, fmt.Errorf("%s is there already and was not packed here: it is left as it is; choose another folder",
				filepath.Join(dir, name))
		}
	}
	var errs []error
	for name, content := range files {
		errs = append(errs, outfile.Output{Name: filepath.Join(dir, name)}.Write(content, true))
	}
	return len(packed), errors.Join(errs...)
}

// pages are the files around a library that is packed, and the script that runs it.
func pages(packed []byte, runner string) (map[string][]byte, error) {
	var text [4]string
	for i, name := range []string{"page.html", "page.css", "together.js", "page.js"} {
		b, err := page.ReadFile("page/" + name)
		if err != nil {
			return nil, err
		}
		text[i] = string(b)
	}
	frame, style, script := text[0], report.Style()+text[1], runner+"\n"+text[2]+text[3]
	// The policy of each page names all it may do: the single file may ask no server for anything.
	const common = "default-src 'none'; img-src data:; base-uri 'none'; form-action 'none'; "
	fill := func(policy, style, library, script string) []byte {
		return []byte(strings.NewReplacer("{{policy}}", common+policy, "{{style}}", style, "{{library}}", library,
			"{{script}}", script).Replace(frame))
	}
	single := fill("style-src 'unsafe-inline'; script-src 'unsafe-inline' 'wasm-unsafe-eval'",
		"<style>\n"+style+"</style>",
		`<script type="application/octet-stream" id="library">`+inText(packed)+"</script>",
		"<script>\n"+script+"</script>")
	// Pictures bring a style of their own.
	served := fill("style-src 'self' 'unsafe-inline'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self'",
		`<link rel="stylesheet" href="`+styleFile+`"><link rel="preload" href="`+Compressed+`" as="fetch" crossorigin>`, "",
		`<script src="`+scriptFile+`"></script>`)
	return map[string][]byte{
		SingleFile: single, ServedPage: served, styleFile: []byte(style), scriptFile: []byte(script),
		Compressed: packed,
	}, nil
}

// compile builds the library for the browser, with the German catalog beside it. Without inlining it is a sixth smaller to transfer and a fifth slower.
func compile() ([]byte, error) {
	dir, err := os.MkdirTemp("", "classroom")
	if err != nil {
		return nil, err
	}
	defer func() { _ = os.RemoveAll(dir) }()
	out := filepath.Join(dir, "classroom.wasm")
	cmd := exec.Command("go", "build", "-trimpath", "-tags=classroom", "-gcflags=all=-l", "-ldflags=-s -w", "-o", out, library)
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm", "CGO_ENABLED=0")
	if text, err := cmd.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("%w: %s", err, text)
	}
	program, err := os.ReadFile(out)
	if err != nil {
		return nil, err
	}
	small, err := merged(program)
	if err != nil {
		return nil, err
	}
	catalog, err := beside.Write(language.German(), saidBy(program))
	return withSection(small, beside.Section, []byte(catalog)), err
}

// runtimeScript is the script of this Go that a browser runs its programs with.
func runtimeScript() (string, error) {
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return "", err
	}
	b, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js"))
	return string(b), err
}

// ServeHTTP answers with the files of the classroom and with nothing else.
func (c Classroom) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	name := path.Base(r.URL.Path)
	if r.URL.Path == "/" {
		name = ServedPage
	}
	content, ok := c.Files[name]
	if !ok || path.Dir(r.URL.Path) != "/" {
		http.NotFound(w, r)
		return
	}
	kind := mime.TypeByExtension(path.Ext(name))
	if path.Ext(name) == ".gz" {
		kind = "application/gzip"
	}
	w.Header().Set("Content-Type", kind)
	_, _ = w.Write(content)
}

// Write puts the files into a folder. A folder where other files have one of the names, and no classroom is, is left as
// it is.
func (c Classroom) Write(dir string) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	there := func(name string) bool {
		_, err := os.Lstat(filepath.Join(dir, name))
		return err == nil
	}
	for name := range c.Files {
		if there(name) && !there(Compressed) {
			return fmt.Errorf("%s is there already and no classroom: it is left as it is; choose another folder",
				filepath.Join(dir, name))
		}
	}
	var errs []error
	for name, content := range c.Files {
		errs = append(errs, outfile.Output{Name: filepath.Join(dir, name)}.Write(content, true))
	}
	return errors.Join(errs...)
}
