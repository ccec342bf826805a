package cli

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"example.org/maslin/examples/internal/bakelog"
	"example.org/maslin/schedule/bench"
)

type brokenPipe struct{}

func (brokenPipe) Write([]byte) (int, error) {
	return 0, &os.PathError{Op: "write", Path: "|1", Err: syscall.EPIPE}
}

func kitchen(t *testing.T, log string) (System, *bytes.Buffer) {
	t.Helper()
	var out bytes.Buffer
	return System{
		In: strings.NewReader(""), Out: &out, Err: &out,
		Now: func() time.Time { return time.Date(2026, 11, 27, 17, 0, 0, 0, time.UTC) },
		Getenv: func(name string) string {
			if name == "MASLIN_LOG" {
				return log
			}
			return ""
		},
	}, &out
}

// The observation is on the disk before anything is printed: whoever reads the output may go away.
func TestLogOutlivesABrokenPipe(t *testing.T) {
	log := filepath.Join(t.TempDir(), "bakes.jsonl")
	s, _ := kitchen(t, log)
	s.Out = brokenPipe{}
	if status := Run([]string{"log", "rise", "30%"}, s); status == exitAnswered {
		t.Error("a broken pipe was not noticed")
	}
	content, err := bakelog.Read(log, bench.LogReading{})
	if err != nil || len(content.Entries) != 1 || content.Entries[0].Rise.Rise.Points() != 30 {
		t.Errorf("%v %+v", err, content)
	}
}

// Whatever is on the command line, there is an answer or a complaint.
func TestHostileClockFlags(t *testing.T) {
	log := filepath.Join(t.TempDir(), "bakes.jsonl")
	huge := strings.Repeat("9", 1<<20)
	values := []string{"", "NaN", "-1", "1e999 %", huge, huge + "%", "\x00", "−5 %", "5 %\n", "9:9:9", "0:0:0",
		"NaN:1:1", "Inf:Inf:Inf", "1 % at 1h", " at ", "999999h", "25 °C", "780 g", "\xff\xfe"}
	commands := map[string][]string{
		"bulk": {"prefermented", "yeast", "salt", "hydration", "whole-grain", "rise", "dough", "room", "night",
			"weight", "drift", "readings", "kneaded-by", "curve", "mixed", "retard", "refrigerator", "piece", "shaping",
			"ready-by", "seen", "now", "log"},
		"log mix": {"dough", "flour", "water", "slow", "fast", "mixer", "flour-weight", "prefermented", "yeast",
			"hydration", "rise", "at", "now"},
		"log rise":    {"from", "to", "error", "at"},
		"log weights": {"in", "out", "style"},
		"log core":    {"after"},
		"log show":    {"last", "bread", "log"},
	}
	for command, flags := range commands {
		for _, flag := range flags {
			for _, v := range values {
				s, out := kitchen(t, log)
				args := append(strings.Fields(command), "--"+flag+"="+v)
				if command == "bulk" && flag != "dough" {
					args = append(args, "--dough=25C")
				}
				if command == "bulk" && flag != "prefermented" && flag != "yeast" {
					args = append(args, "--prefermented=9%")
				}
				status := Run(args, s)
				if status < 0 || status > exitBadInput || out.Len() == 0 {
					t.Errorf("%s --%s=%.30q: status %d, %d bytes said", command, flag, v, status, out.Len())
				}
				if out.Len() > 20_000 {
					t.Errorf("%s --%s=%.30q: %d bytes said", command, flag, v, out.Len())
				}
			}
		}
	}
	if _, err := os.Stat(log); err == nil {
		content, err := bakelog.Read(log, bench.LogReading{})
		if err != nil || len(content.Unreadable) > 0 {
			t.Errorf("%v %v", err, content.Unreadable)
		}
	} else if !errors.Is(err, os.ErrNotExist) {
		t.Error(err)
	}
}
