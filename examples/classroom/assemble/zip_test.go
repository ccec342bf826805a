package assemble

import (
	"bytes"
	"compress/gzip"
	"io"
	"os/exec"
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
