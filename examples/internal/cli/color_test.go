package cli

import (
	"bytes"
	"regexp"
	"strings"
	"testing"
	"time"
)

func planOn(terminal bool, width int, env map[string]string) string {
	var out bytes.Buffer
	Run([]string{"plan", "../../bakes/hall-kitchen.toml"}, System{
		In: strings.NewReader(""), Out: &out, Err: &out, Getenv: func(name string) string { return env[name] },
		Now:      func() time.Time { return time.Date(2026, 11, 25, 20, 0, 0, 0, time.UTC) },
		Terminal: terminal, Width: width,
	})
	return out.String()
}

func TestColorsOnlyOnATerminalThatWantsThem(t *testing.T) {
	xterm := map[string]string{"TERM": "xterm"}
	for _, c := range []struct {
		name     string
		terminal bool
		env      map[string]string
		want     bool
	}{
		{"a terminal", true, xterm, true},
		{"an empty NO_COLOR says nothing", true, map[string]string{"TERM": "xterm", "NO_COLOR": ""}, true},
		{"the C locale", true, map[string]string{"TERM": "xterm", "LANG": "C"}, true},
		{"a pipe", false, xterm, false},
		{"NO_COLOR", true, map[string]string{"TERM": "xterm", "NO_COLOR": "1"}, false},
		{"a dumb terminal", true, map[string]string{"TERM": "dumb"}, false},
		{"a terminal that does not say what it is", true, nil, false},
	} {
		if got := strings.Contains(planOn(c.terminal, 0, c.env), "\x1b["); got != c.want {
			t.Errorf("%s: colors %v, want %v", c.name, got, c.want)
		}
	}
}

// Without its colors the page is the same, at every width: nothing is said by color alone, and codes take no room.
func TestColorsChangeNothingElse(t *testing.T) {
	codes := regexp.MustCompile("\x1b\\[[0-9]*m")
	for _, width := range []int{20, 33, 60, 80, 100, 300} {
		colored := planOn(true, width, map[string]string{"TERM": "xterm"})
		if got, want := codes.ReplaceAllString(colored, ""), planOn(true, width,
			map[string]string{"TERM": "dumb"}); got != want {
			t.Errorf("at %d columns the page differs by more than its colors", width)
		}
		for _, line := range strings.Split(colored, "\n") {
			if strings.Count(line, "\x1b[")%2 != 0 || strings.LastIndex(line, "\x1b[0m") != strings.LastIndex(line, "\x1b[") {
				t.Errorf("a color runs on after %q", line)
			}
		}
	}
}

// The width is that of COLUMNS, else of the terminal, else 80.
func TestWidthFollowsTheTerminal(t *testing.T) {
	for _, c := range []struct {
		width int
		env   string
		want  int
	}{{0, "", 80}, {60, "", 60}, {60, "40", 40}, {60, "-1", 60}, {60, "forty", 60}, {5, "", 20}, {500, "", 100}} {
		s := System{Width: c.width, Getenv: func(name string) string { return map[string]string{"COLUMNS": c.env}[name] }}
		if got := s.page().Columns(); got != c.want {
			t.Errorf("a terminal of %d columns with COLUMNS %q: %d, want %d", c.width, c.env, got, c.want)
		}
	}
}
