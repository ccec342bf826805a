package outfile

import (
	"crypto/rand"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"sync"
)

// Write writes the content: to a temporary file in the same folder, synced and renamed, so that the target is either
// the old file or the whole new one. A link is followed. A device or a pipe is written through, and so is the file that
// the program prints to. What was free when the command began may be taken by now: it is looked at once more.
func (o Output) Write(content []byte, replace bool) error {
	var err error
	for range 3 {
		if err := o.Form.writable(o.Name, replace); err != nil {
			return fmt.Errorf("%s: %w", o.Flag, err)
		}
		if err = write(o.Name, content); !errors.Is(err, errTaken) {
			break
		}
	}
	return err
}

func write(name string, content []byte) error {
	info, err := os.Stat(name)
	switch {
	case err == nil && info.IsDir():
		return fmt.Errorf("%s: is a folder", name)
	case err == nil && !info.Mode().IsRegular():
		err = through(name, content)
	case err == nil && printedTo(info) != nil:
		_, err = printedTo(info).Write(content)
	case err == nil:
		err = replace(name, content, info)
	case errors.Is(err, os.ErrNotExist):
		err = replace(name, content, nil)
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

// replace puts a file in the place of the old one, or where none is.
func replace(name string, content []byte, old os.FileInfo) error {
	name, err := place(name)
	if err != nil {
		return err
	}
	f, err := temporary(filepath.Dir(name))
	if err != nil {
		return err
	}
	defer drop(f.Name())
	if old != nil {
		err = f.Chmod(old.Mode().Perm())
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
		err = putInPlace(f.Name(), name, old)
	}
	return err
}

// errTaken: since it was looked, another program has made or changed what is there.
var errTaken = errors.New("another program is writing it")

// putInPlace renames a finished file to its name, where what is there is still the old file, or still nothing.
func putInPlace(made, name string, old os.FileInfo) error {
	if old == nil {
		err := os.Link(made, name) // unlike a rename, it takes nobody's name
		if errors.Is(err, os.ErrExist) {
			return errTaken
		} else if err == nil {
			return nil
		} // not every file system has links
	} else if there, err := os.Stat(name); err != nil {
		return err
	} else if !os.SameFile(there, old) {
		return errTaken
	}
	return os.Rename(made, name)
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
