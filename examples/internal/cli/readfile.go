package cli

import (
	"errors"
	"io"
	"os"

	"example.org/maslin/dough/working"
	"example.org/maslin/internal/textpage"
)

// mostText is how large a file of values may be: a probe that reads every second for months.
const mostText = 64 << 20

// readFile reads a file, and of one with more than most bytes one more than that: a device may have no end.
func readFile(name string, most int64) ([]byte, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, unreadable(name, err)
	}
	defer f.Close()
	info, err := f.Stat()
	if err == nil && info.IsDir() {
		return nil, badInput(working.Tell("cli.folder_want_file", "%s: is a folder; want a file", fileName(name)))
	}
	source, err := io.ReadAll(io.LimitReader(f, most+1))
	if err != nil {
		return nil, unreadable(name, err)
	}
	return source, nil
}

// readText reads a file of values.
func readText(name string) (string, error) {
	source, err := readFile(name, mostText)
	if len(source) > mostText {
		err = badInput(working.Tell("cli.mb_want_at_most_mb", "%s: has more than the %d MB that are read", fileName(name),
			mostText>>20))
	}
	return string(source), err
}

func unreadable(name string, err error) error {
	return badInput(working.Say("%s: %s", fileName(name), reason(err)))
}

// reason is why a file cannot be had. What the system says otherwise is not the program's.
func reason(err error) working.Message {
	var path *os.PathError
	switch {
	case errors.Is(err, os.ErrNotExist):
		return working.Tell("cli.no_such_file", "no such file or directory")
	case errors.Is(err, os.ErrPermission):
		return working.Tell("cli.no_permission", "permission denied")
	case errors.As(err, &path):
		return working.Say(path.Err.Error())
	}
	return working.Say(err.Error())
}

// fileName is the name of a file as a message shows it.
func fileName(name string) string {
	const most = 300
	if len(name) > most {
		name = name[:most] + "…"
	}
	return textpage.Printable(name)
}
