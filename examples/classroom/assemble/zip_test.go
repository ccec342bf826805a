package assemble

import (
	"bytes"
	"compress/gzip"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

func TestZippedComesBack(t *testing.T) {
	program := bytes.Repeat([]byte("global.get 0 i32.const 8 i32.sub "), 3000)
	ways := map[string]func([]byte) ([]byte, error){"gzip": zipped}
	if _, err := exec.LookPath("zopfli"); err == nil {
		ways["zopfli"] = zippedSmall
	}
	for name, compress := range ways {
		out, err := compress(program)
		if err != nil || len(out) > len(program)/20 {
			t.Fatalf("%s: %d bytes, %v", name, len(out), err)
		}
		z, err := gzip.NewReader(bytes.NewReader(out))
		if err != nil {
			t.Fatal(err)
		}
		if back, err := io.ReadAll(z); err != nil || !bytes.Equal(back, program) {
			t.Errorf("%s: %d bytes come back, %v", name, len(back), err)
		}
	}
}

// Without the program zopfli, or with one that writes something else, nothing is taken for its work.
func TestSmallWithoutItsProgram(t *testing.T) {
	folder := t.TempDir()
	t.Setenv("PATH", folder)
	if out, err := zippedSmall([]byte("program")); err == nil || out != nil || !strings.Contains(err.Error(), "zopfli") {
		t.Errorf("%q, %v", out, err)
	}
	other, err := zipped([]byte("another"))
	if err != nil {
		t.Fatal(err)
	}
	for content, want := range map[string]string{string(other): "not what went in", "no gzip, but long enough": "gzip: ", "": "EOF"} {
		made := filepath.Join(folder, "made")
		if err := os.WriteFile(made, []byte(content), 0o600); err != nil {
			t.Fatal(err)
		}
		script := "#!/bin/sh\n/bin/cat '" + made + "' >\"$3.gz\"\n"
		if err := os.WriteFile(filepath.Join(folder, "zopfli"), []byte(script), 0o700); err != nil {
			t.Fatal(err)
		}
		if _, err := exec.LookPath("zopfli"); err != nil {
			t.Skip(err)
		}
		if out, err := zippedSmall([]byte("program")); err == nil || out != nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %q, %v", content, out, err)
		}
	}
}
