package cli

import (
	"strings"
	"testing"
)

// What is wrong with how a dough stands is said once, of the flag that says so, though a time that is wished for asks
// for it too.
func TestAFaultIsSaidOnceOfItsFlag(t *testing.T) {
	for flags, want := range map[string]string{
		"--dough 24C --room 20C --drift 1000h --ready-by 5h": "--drift: out of range: got 41 days 16h, want 1m to 7 days",
		"--dough 90C --room 20C --ready-by 5h":               "--dough: out of range: got 90 °C, want −25 °C to 60 °C",
		"--dough 24C --room 90C --ready-by 5h":               "--room: out of range: got 90 °C, want −25 °C to 60 °C",
		"--dough 24C --room 20C --ready-by 5m":               "--ready-by: out of range: got 5m, want 10m to 30 days",
	} {
		status, out, complaint := run(append([]string{"bulk", "--prefermented", "10%"}, strings.Fields(flags)...)...)
		if status != exitBadInput || out != "" || complaint != "maslin bulk: "+want+"\n" {
			t.Errorf("%s: %d %q %q", flags, status, out, complaint)
		}
	}
}
