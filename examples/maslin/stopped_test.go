//go:build unix

package main

import (
	"bufio"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// program is the program with arguments, in a folder.
func program(t *testing.T, folder string, args ...string) *exec.Cmd {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Skip(err)
	}
	cmd := exec.Command(self, args...)
	cmd.Args[0], cmd.Dir = "maslin", folder // by which the tests know that they are the program
	cmd.Env = append(os.Environ(), "LANG=C", "LC_ALL=", "LC_MESSAGES=", "COLUMNS=80", "MASLIN_LOG="+filepath.Join(folder, "log"))
	return cmd
}

// Told to stop in the middle of its questions, the program ends as shells expect of a signal, has written no bake file,
// and says how to go on; where nobody can be told it is kept beside the file.
func TestToldToStop(t *testing.T) {
	for signal, status := range map[syscall.Signal]int{syscall.SIGINT: 130, syscall.SIGTERM: 143, syscall.SIGHUP: 129} {
		for _, heard := range []bool{true, false} {
			folder := t.TempDir()
			cmd := program(t, folder, "new", "rye.toml", "--ask", "--zone", "Europe/Zurich")
			in, err := cmd.StdinPipe()
			if err != nil {
				t.Fatal(err)
			}
			out, err := cmd.StdoutPipe()
			if err != nil {
				t.Fatal(err)
			}
			var said strings.Builder
			cmd.Stderr = &said
			if !heard {
				full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
				if err != nil {
					continue // not every system has it
				}
				defer full.Close()
				cmd.Stderr = full
			}
			if err := cmd.Start(); err != nil {
				t.Fatal(err)
			}
			questions := bufio.NewReader(out)
			asked, err := questions.ReadString(']')
			if err != nil || !strings.Contains(asked, "What is the bread called?") {
				t.Errorf("%q, %v", asked, err)
			}
			if _, err := in.Write([]byte("Village rye\n")); err != nil {
				t.Error(err)
			}
			if _, err := questions.ReadString(']'); err != nil { // the next question: the first is answered
				t.Error(err)
			}
			if err := cmd.Process.Signal(signal); err != nil {
				t.Error(err)
			}
			_ = cmd.Wait()
			if got := cmd.ProcessState.ExitCode(); got != status {
				t.Errorf("%v: status %d, want %d", signal, got, status)
			}
			const goOn = "maslin new rye.toml --name 'Village rye' --zone Europe/Zurich"
			var left []string
			entries, err := os.ReadDir(folder)
			for _, e := range entries {
				left = append(left, e.Name())
			}
			kept, _ := os.ReadFile(filepath.Join(folder, "rye.toml.answers"))
			switch {
			case err != nil:
				t.Error(err)
			case heard && (len(left) != 0 || !strings.Contains(said.String(), "nothing was written") || !strings.Contains(said.String(), goOn)):
				t.Errorf("%v: left %v, said %q", signal, left, said.String())
			case !heard && (strings.Join(left, " ") != "rye.toml.answers" || string(kept) != goOn+"\n"):
				t.Errorf("%v: left %v, kept %q", signal, left, kept)
			}
		}
	}
}

// Told to stop while it waits for somebody to read a pipe, it ends, and the pipe is still there.
func TestToldToStopBeforeAPipe(t *testing.T) {
	bake, err := filepath.Abs("../bakes/hall-kitchen.toml")
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	if err := syscall.Mkfifo(filepath.Join(folder, "pipe"), 0o600); err != nil {
		t.Skip(err)
	}
	// The calendar is written before the page: when it is there, the program is at the pipe or soon will be.
	cmd := program(t, folder, "plan", bake, "--now", "2026-11-25 20:00", "--ics", "first.ics", "--html", "pipe", "--csv", "never.csv")
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	ended := make(chan struct{})
	go func() { _ = cmd.Wait(); close(ended) }()
	for there := false; !there; {
		select {
		case <-ended:
			t.Fatalf("it did not wait: %v", cmd.ProcessState)
		case <-time.After(5 * time.Millisecond):
			_, err := os.Stat(filepath.Join(folder, "first.ics"))
			there = err == nil
		}
	}
	if err := cmd.Process.Signal(syscall.SIGTERM); err != nil {
		t.Fatal(err)
	}
	<-ended
	var left []string
	entries, err := os.ReadDir(folder)
	for _, e := range entries {
		left = append(left, e.Name())
	}
	if got := strings.Join(left, " "); err != nil || got != "first.ics pipe" || cmd.ProcessState.ExitCode() != 143 {
		t.Errorf("left %s, status %d, %v", got, cmd.ProcessState.ExitCode(), err)
	}
}
