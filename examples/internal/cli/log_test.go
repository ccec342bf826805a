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
	content, err := (bakelog.Reading{}).File(log)
	if err != nil || len(content.Entries) != 1 || content.Entries[0].Rise.Rise.Points() != 30 {
		t.Errorf("%v %+v", err, content)
	}
}

func TestTimeIn(t *testing.T) {
	zurich, err := time.LoadLocation("Europe/Zurich")
	if err != nil {
		t.Skip(err)
	}
	now := time.Date(2026, 11, 28, 0, 30, 0, 0, zurich)
	for _, c := range []struct{ text, want string }{
		{"00:20", "2026-11-28T00:20:00+01:00"},
		{"23:50", "2026-11-27T23:50:00+01:00"}, // just before midnight
		{"0:31", "2026-11-28T00:31:00+01:00"},  // a clock a minute fast
		{"2026-11-27 18:40", "2026-11-27T18:40:00+01:00"},
		{"2026-07-01 12:00", "2026-07-01T12:00:00+02:00"},
		{"2026-11-27T17:40:00Z", "2026-11-27T18:40:00+01:00"},
	} {
		got, err := timeIn(c.text, now)
		if err != nil || got.Format(time.RFC3339) != c.want {
			t.Errorf("%s: got %s, %v, want %s", c.text, got.Format(time.RFC3339), err, c.want)
		}
	}
	for _, text := range []string{"", "soon", "24:00", "12", "2026-13-01 10:00", strings.Repeat("9", 1<<20)} {
		if at, err := timeIn(text, now); err == nil {
			t.Errorf("%.20q: got %v", text, at)
		}
	}
}

func TestWhenFrom(t *testing.T) {
	start := time.Date(2026, 11, 27, 16, 50, 0, 0, time.UTC)
	for _, c := range []struct {
		text string
		want time.Duration
	}{{"2h10m", 130 * time.Minute}, {"19:00", 130 * time.Minute}, {"02:50", 10 * time.Hour}, {"2026-11-28 16:50",
		24 * time.Hour}} {
		if got, err := whenFrom(c.text, start); err != nil || got != c.want {
			t.Errorf("%s: got %v, %v, want %v", c.text, got, err, c.want)
		}
	}
}

func TestYeastOf(t *testing.T) {
	for _, text := range []string{"0.6 % instant", "0.6% Instant yeast", "2 % fresh", "0,8 % active-dry",
		"1 % dry yeast"} {
		var y yeastDose
		if err := y.UnmarshalText([]byte(text)); err != nil || y.Amount.Sign() <= 0 {
			t.Errorf("%s: %v %v", text, y, err)
		}
	}
	for _, text := range []string{"", "%", "1 instant", "instant", "1 % wild", "x % instant", "1 % instant % fresh"} {
		var y yeastDose
		if err := y.UnmarshalText([]byte(text)); err == nil {
			t.Errorf("%s: got %v", text, y)
		}
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
		content, err := (bakelog.Reading{}).File(log)
		if err != nil || len(content.Problems) > 0 {
			t.Errorf("%v %v", err, content.Problems)
		}
	} else if !errors.Is(err, os.ErrNotExist) {
		t.Error(err)
	}
}
