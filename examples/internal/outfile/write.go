package outfile

import (
	"crypto/rand"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"sync"
)

// Write writes the content: to a temporary file in the same folder, synced and renamed, so that the
// target is either the old file or the whole new one. A link is followed. A device or a pipe is written
// through.
func Write(name string, content []byte) error {
	info, err := os.Stat(name)
	switch {
	case err == nil && info.IsDir():
		return fmt.Errorf("%s: is a folder", name)
	case err == nil && !info.Mode().IsRegular():
		err = through(name, content)
	case err == nil:
		err = replace(place(name), content, info.Mode().Perm(), true)
	case errors.Is(err, os.ErrNotExist):
		err = replace(place(name), content, 0, false)
	}
	if err != nil {
		return fmt.Errorf("%s: cannot be written: %w", name, reason(err))
	}
	return nil
}

func through(name string, content []byte) error {
	f, err := os.OpenFile(name, os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	_, err = f.Write(content)
	if e := f.Close(); err == nil {
		err = e
	}
	return err
}

func replace(name string, content []byte, mode os.FileMode, keep bool) error {
	f, err := temporary(filepath.Dir(name))
	if err != nil {
		return err
	}
	defer drop(f.Name())
	if keep {
		err = f.Chmod(mode)
	}
	if err == nil {
		_, err = f.Write(content)
	}
	if err == nil {
		err = f.Sync()
	}
	if e := f.Close(); err == nil {
		err = e
	}
	if err == nil {
		err = os.Rename(f.Name(), name)
	}
	return err
}

// pending are the temporary files that would stay behind if the program ended now. A signal can come at
// any time, so that somebody else than the writer must know of them.
var pending = struct {
	sync.Mutex
	names map[string]bool
	over  bool
}{names: map[string]bool{}}

var errOver = errors.New("the program was told to stop")

// temporary makes a new file under the umask, which os.CreateTemp does not ask.
func temporary(folder string) (*os.File, error) {
	pending.Lock()
	defer pending.Unlock()
	if pending.over {
		return nil, errOver
	}
	f, err := os.OpenFile(filepath.Join(folder, ".maslin-"+rand.Text()), os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o666)
	if err == nil {
		pending.names[f.Name()] = true
	}
	return f, err
}

func drop(name string) {
	pending.Lock()
	defer pending.Unlock()
	delete(pending.names, name)
	_ = os.Remove(name) // gone already when it was renamed
}

// Cleanup removes the temporary files of writes that are under way, and lets no new one begin. It is for a
// program that was told to stop and exits next.
func Cleanup() {
	pending.Lock()
	defer pending.Unlock()
	pending.over = true
	for name := range pending.names {
		_ = os.Remove(name)
	}
}
