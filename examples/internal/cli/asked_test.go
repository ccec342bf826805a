package cli

import (
	"bytes"
	"fmt"
	"strings"
	"time"
)

// asked gives the program a command line in a system of which only what matters is said: nothing is typed, nothing is
// set, and it is a Wednesday evening. It returns how it ended, what it printed and what it complained of.
func asked(s System, args ...string) (status int, out, complaint string) {
	var o, e bytes.Buffer
	s.Out, s.Err = &o, &e
	if s.In == nil {
		s.In = strings.NewReader("")
	}
	if s.Getenv == nil {
		s.Getenv = func(string) string { return "" }
	}
	if s.Now == nil {
		s.Now = func() time.Time { return time.Date(2026, 11, 25, 20, 0, 0, 0, time.UTC) }
	}
	status = Run(args, s)
	return status, o.String(), e.String()
}

// run asks in a system of which nothing is said.
func run(args ...string) (status int, out, complaint string) { return asked(System{}, args...) }

// variables are those of an environment.
func variables(of map[string]string) func(string) string {
	return func(name string) string { return of[name] }
}

// heard is a command line with all that was said to it.
func heard(line string, status int, out, complaint string) string {
	if complaint != "" {
		out += "complaint: " + complaint
	}
	return fmt.Sprintf("$ maslin %s\n%s(%d)\n\n", line, out, status)
}
