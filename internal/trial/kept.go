package trial

import (
	"os"
	"path/filepath"

	"github.com/google/go-cmp/cmp"
)

// Kept compares what is told now with what is kept in a file of testdata. With MASLIN_KEEP=1 the file is written anew,
// for whoever wants the difference and has looked at it.
func Kept(t Failer, file, now string) {
	t.Helper()
	path := filepath.Join("testdata", filepath.FromSlash(file))
	if os.Getenv("MASLIN_KEEP") == "1" {
		if err := os.WriteFile(path, []byte(now), 0o644); err != nil {
			t.Errorf("%v", err)
		}
	}
	kept, err := os.ReadFile(path)
	if err != nil {
		t.Errorf("%v", err)
		return
	}
	if diff := cmp.Diff(string(kept), now); diff != "" {
		t.Errorf("%s is told otherwise now: %s\nif that is meant, run the test again with MASLIN_KEEP=1", path, diff)
	}
}
