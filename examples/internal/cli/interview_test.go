package cli

import (
	"bytes"
	"errors"
	"io"
	"os"
	"strings"
	"testing"
	"time"
)

// answers are lines that somebody types; when they are at an end, what then happens.
type answers struct {
	lines []string
	then  func() error
}

func (a *answers) Read(b []byte) (int, error) {
	if len(a.lines) == 0 {
		return 0, a.then()
	}
	n := copy(b, a.lines[0]+"\n")
	a.lines = a.lines[1:]
	return n, nil
}

// gone is a terminal that was closed.
type gone struct{}

func (gone) Write([]byte) (int, error) { return 0, errors.New("input/output error") }

// interrupted asks for a new bread, of which the first answers are given.
func interrupted(errOut io.Writer, then func(say func()) error, lines ...string) (status int, out string) {
	var o bytes.Buffer
	var say func()
	status = Run([]string{"new", "hall.toml", "--ask", "--zone", "UTC"}, System{
		In:  &answers{lines, func() error { return then(say) }},
		Out: &o, Err: errOut, Getenv: func(string) string { return "" }, Stopping: func(now func()) { say = now },
		Now: func() time.Time { return time.Date(2026, 11, 25, 20, 0, 0, 0, time.UTC) }, Width: 80,
	})
	return status, o.String()
}

// Whoever stops in the middle, or has no more answers, is told how to go on from there, and nothing is written.
func TestNewStoppedInTheMiddle(t *testing.T) {
	const goesOn = "nothing was written; to go on from here: maslin new hall.toml --name 'Hall loaf' --pieces 3 --zone UTC"
	for why, then := range map[string]func(func()) error{
		"stopped":      func(say func()) error { say(); return io.EOF },
		"no answer to": func(func()) error { return io.EOF },
	} {
		t.Chdir(t.TempDir())
		var wrong bytes.Buffer
		status, _ := interrupted(&wrong, then, "Hall loaf", "3")
		if status != exitBadInput || !strings.Contains(wrong.String(), why) || !strings.Contains(wrong.String(), goesOn) {
			t.Errorf("%s: %d %s", why, status, wrong.String())
		}
		if left, err := os.ReadDir("."); err != nil || len(left) > 0 {
			t.Errorf("%s: %v %v", why, left, err)
		}
	}
}

// Where the terminal is gone, the answers are kept in a file, are told of the next time, and go when they are used.
func TestNewKeepsAnswersOfAClosedTerminal(t *testing.T) {
	t.Chdir(t.TempDir())
	ended := func(func()) error { return io.EOF }
	interrupted(gone{}, ended, "Hall loaf", "3")
	text, err := os.ReadFile("hall.toml.answers")
	if want := "maslin new hall.toml --name 'Hall loaf' --pieces 3 --zone UTC\n"; err != nil || string(text) != want {
		t.Fatalf("%q %v, want %q", text, err, want)
	}
	var wrong bytes.Buffer
	_, out := interrupted(&wrong, ended)
	if want := "hall.toml.answers has answers of an earlier time; to go on from there: " + string(text); !strings.Contains(out,
		want) {
		t.Errorf("%s, want %s", out, want)
	}
	if status, _, complaint := run("new", "hall.toml", "--name", "Hall loaf", "--zone", "UTC"); status != 0 {
		t.Fatal(complaint)
	}
	if _, err := os.Stat("hall.toml.answers"); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("used answers stay: %v", err)
	}
}

// Stopped before anything was answered there is nothing to keep.
func TestNewKeepsNoAnswersOfNothing(t *testing.T) {
	t.Chdir(t.TempDir())
	interrupted(gone{}, func(func()) error { return io.EOF })
	if left, err := os.ReadDir("."); err != nil || len(left) > 0 {
		t.Errorf("%v %v", left, err)
	}
}
