package cli

import (
	"os"
	"path/filepath"
	"testing"
)

func TestZoneOfTheMachine(t *testing.T) {
	for _, c := range []struct {
		env, machine, want string
		known              bool
	}{
		{"", "Europe/Zurich", "Europe/Zurich", true},
		{"America/Denver", "Europe/Zurich", "America/Denver", true},
		{":America/Denver", "", "America/Denver", true},
		{"", "posix/Europe/Zurich", "Europe/Zurich", true},
		{"", "", "UTC", false},
		{"", "Etc/UTC", "UTC", false},
		{"UTC", "Europe/Zurich", "UTC", false},
		{"", "Local", "UTC", false},
		{"CET-1CEST,M3.5.0,M10.5.0/3", "", "UTC", false},
		{"../../etc/passwd", "", "UTC", false},
		{"", "Europe/Atlantis", "UTC", false},
	} {
		s := System{Zone: c.machine, Getenv: func(string) string { return c.env }}
		if got, known := zoneOf(s); got != c.want || known != c.known {
			t.Errorf("TZ=%q on a machine in %q: %q, known %v; want %q, %v", c.env, c.machine, got, known, c.want, c.known)
		}
	}
}

func TestZoneByItsFiles(t *testing.T) {
	dir := t.TempDir()
	link, name, plain := filepath.Join(dir, "link"), filepath.Join(dir, "name"), filepath.Join(dir, "plain")
	if err := os.Symlink("../usr/share/zoneinfo/Europe/Zurich", link); err != nil {
		t.Skip("no links here:", err)
	}
	for file, content := range map[string]string{name: "America/Denver\n", plain: "TZif2"} {
		if err := os.WriteFile(file, []byte(content), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for _, c := range []struct{ localtime, timezone, want string }{
		{link, name, "Europe/Zurich"}, {plain, name, "America/Denver"}, {dir, dir, ""},
		{filepath.Join(dir, "none"), filepath.Join(dir, "none"), ""},
	} {
		if got := machineZone(c.localtime, c.timezone); got != c.want {
			t.Errorf("%s and %s: %q, want %q", c.localtime, c.timezone, got, c.want)
		}
	}
}
