package assemble

import (
	"bytes"
	"compress/gzip"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
)

// mark stands in the head of what is zipped here, by which it is known again (RFC 1952, 2.3.1: FCOMMENT).
const mark = "maslin columns"

// zipped compresses as gzip does at its best.
func zipped(program []byte) ([]byte, error) {
	var out bytes.Buffer
	z, err := gzip.NewWriterLevel(&out, gzip.BestCompression)
	if err != nil {
		return nil, err
	}
	z.Comment = mark
	if _, err := z.Write(program); err != nil {
		return nil, err
	}
	err = z.Close()
	return out.Bytes(), err
}

// zippedSmall has the program zopfli look for the shortest of all ways to write the same, and reads it back.
func zippedSmall(program []byte) ([]byte, error) {
	dir, err := os.MkdirTemp("", "classroom-zip")
	if err != nil {
		return nil, err
	}
	defer func() { _ = os.RemoveAll(dir) }()
	plain := filepath.Join(dir, "program")
	if err := os.WriteFile(plain, program, 0o600); err != nil {
		return nil, err
	}
	if text, err := exec.Command("zopfli", "--gzip", "--i5", plain).CombinedOutput(); err != nil {
		return nil, fmt.Errorf("zopfli: %w: %s", err, text)
	}
	out, err := os.ReadFile(plain + ".gz")
	if err != nil {
		return nil, err
	}
	z, err := gzip.NewReader(bytes.NewReader(out))
	if err != nil {
		return nil, err
	}
	if back, err := io.ReadAll(z); err != nil || !bytes.Equal(back, program) {
		return nil, fmt.Errorf("zopfli: what comes back is not what went in (%w)", err)
	}
	return out, nil
}
