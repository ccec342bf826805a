package bench_test

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/maslin/schedule/bench"
)

func noted(text string) bench.Observations {
	return bench.Observations{{Version: bench.Format, Kind: bench.SawNote, Note: text,
		At: time.Date(2026, 11, 28, 10, 40, 0, 0, time.UTC)}}
}

func ExampleObservations_Behind() {
	there := strings.NewReader(`{"v":1,"at":"2026-11-28T10:40:00Z","kind":"no`) // a power cut
	lines, ours, err := noted("sticky").Behind(there, there.Size())
	fmt.Printf("%q %v %v\n", lines, ours, err)
	// Output: "\n{\"v\":1,\"at\":\"2026-11-28T10:40:00Z\",\"kind\":\"note\",\"note\":\"sticky\"}\n" true <nil>
}

// However long the last line is, and wherever it breaks off, it keeps to itself and the log is known.
func TestLongLastLines(t *testing.T) {
	entry, err := noted("first").Lines()
	if err != nil {
		t.Fatal(err)
	}
	second := strings.Replace(string(entry), "first", "second", 1)
	const longLine = 4 << 20
	for _, length := range []int{
		1, 4094, 4095, 4096, 4097, 32767, 32768, 32769, longLine - 1, longLine + 1, 2*longLine + 7,
	} {
		for end, want := range map[string]string{"": "\n" + second, "\n": second} {
			before := []byte(string(entry) + strings.Repeat("x", length) + end)
			lines, ours, err := noted("second").Behind(bytes.NewReader(before), int64(len(before)))
			if err != nil || !ours || string(lines) != want {
				t.Errorf("%d bytes and %q: %v, %v, %.200q", length, end, err, ours, lines)
			}
		}
	}
}

// A log is known by any of its lines. A later version is told without the number of a line, which would be counted from
// its last one; of what cannot be written nothing is said.
func TestHowALogIsKnown(t *testing.T) {
	entry, err := noted("first").Lines()
	if err != nil {
		t.Fatal(err)
	}
	for content, want := range map[string]bool{
		"": true, string(entry): true, string(entry) + "no line\nand no other\n": true, "no line\n" + string(entry): true,
		"no line\n" + string(entry) + "no line": true, "no line\nand no other\n": false,
		`{"v":` + "\n": false, "x\n" + `{"v":`: false, `{"v":` + "\n" + `{"v":`: false, `{"v"`: true, `{"w"`: false,
	} {
		lines, ours, err := noted("x").Behind(strings.NewReader(content), int64(len(content)))
		if err != nil || ours != want || ours != (len(lines) > 0) {
			t.Errorf("%q: %v, %v, %q", content, ours, err, lines)
		}
	}
	later := string(entry) + `{"v":2,"at":"2026-11-28T10:40:00+01:00","kind":"note","note":"x"}` + "\n"
	_, _, err = noted("x").Behind(strings.NewReader(later), int64(len(later)))
	if !errors.As(err, new(bench.LaterVersion)) || strings.Contains(err.Error(), "line") {
		t.Error(err)
	}
	if _, _, err := (bench.Observations{{}}).Behind(strings.NewReader(""), 0); err == nil {
		t.Error("nothing was seen, and is written")
	}
	if _, _, err := noted("x").Behind(strings.NewReader("short"), 100); err == nil {
		t.Error("a log that ends before its end is gone on with")
	}
}
