package bakelog

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule/bench"
	"github.com/google/go-cmp/cmp"
)

const helperLog = "BAKELOG_TEST_WRITES_TO"

// TestMain turns the test program into a writer that appends notes until it is killed, and says
// which of them it believes to be on the disk.
func TestMain(m *testing.M) {
	if name := os.Getenv(helperLog); name != "" {
		writeUntilKilled(name, os.Args[1])
		return
	}
	os.Exit(m.Run())
}

func writeUntilKilled(name, prefix string) {
	for i := 0; i < 10_000; i++ {
		// Long and short lines: a long one takes the disk more than one page.
		text := prefix + " " + strconv.Itoa(i) + " " + strings.Repeat("x", i%7*500)
		if err := Append(name, note(text)); err != nil {
			fmt.Println("error", err)
			os.Exit(1)
		}
		fmt.Println(prefix, i)
	}
}

var saturday = time.Date(2026, 11, 28, 10, 40, 0, 0, time.FixedZone("", 3600))

func note(text string) bench.Observation {
	return bench.Observation{Version: bench.Format, At: saturday, Kind: bench.SawNote, Bread: "maslin", Note: text}
}

// Killing writers at random moments loses no line that was reported as written, and tears none.
func TestKilledWriters(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		killWriters(t, 200)
		return
	}
	killWriters(t, 1000)
}

func killWriters(t *testing.T, kills int) {
	self, err := os.Executable()
	if err != nil {
		t.Skip(err)
	}
	name := filepath.Join(t.TempDir(), "bakes.jsonl")
	var mu sync.Mutex
	said := map[string]bool{}
	work := make(chan int)
	var wg sync.WaitGroup
	for range 6 { // several programs at once
		wg.Add(1)
		go func() {
			defer wg.Done()
			for k := range work {
				cmd := exec.Command(self, "w"+strconv.Itoa(k))
				cmd.Env = append(os.Environ(), helperLog+"="+name)
				out, err := cmd.StdoutPipe()
				if err != nil {
					t.Error(err)
					continue
				}
				if err := cmd.Start(); err != nil {
					t.Error(err)
					continue
				}
				lines := bufio.NewScanner(out)
				lines.Scan() // it is at work
				timer := time.AfterFunc(time.Duration(rand.IntN(4000))*time.Microsecond, func() { _ = cmd.Process.Kill() })
				mu.Lock()
				for ok := lines.Text() != ""; ok; ok = lines.Scan() {
					said[lines.Text()] = true
				}
				mu.Unlock()
				timer.Stop()
				_ = cmd.Wait()
			}
		}()
	}
	for k := range kills {
		work <- k
	}
	close(work)
	wg.Wait()
	content, err := Read(name, bench.LogReading{})
	if err != nil {
		t.Fatal(err)
	}
	found := map[string]int{}
	for _, e := range content.Entries {
		words := strings.Fields(e.Note)
		i, err := strconv.Atoi(words[1])
		if err != nil {
			t.Fatalf("a torn note: %.40q", e.Note)
		}
		if want := words[0] + " " + words[1] + " " + strings.Repeat("x", i%7*500); e.Note != want {
			t.Fatalf("a note of %d bytes, want %d", len(e.Note), len(want))
		}
		found[words[0]+" "+words[1]]++
	}
	for line := range said {
		if strings.HasPrefix(line, "error") {
			t.Error(line)
			continue
		}
		if found[line] != 1 {
			t.Errorf("%s was written and is there %d times", line, found[line])
		}
	}
	for line, n := range found {
		if n != 1 {
			t.Errorf("%s is there %d times", line, n)
		}
	}
	if len(said) < kills {
		t.Errorf("%d kills and only %d lines: the writers were not at work", kills, len(said))
	}
	t.Logf("%d kills, %d lines committed, %d found, %d left unfinished", kills, len(said), len(found),
		len(content.Unreadable)+content.More)
}

func TestAppendAndReadBack(t *testing.T) {
	name := filepath.Join(t.TempDir(), "not", "yet", "there", "bakes.jsonl")
	want := someEntries()
	for _, e := range want[:3] {
		if err := Append(name, e); err != nil {
			t.Fatal(err)
		}
	}
	if err := Append(name, want[3:]...); err != nil {
		t.Fatal(err)
	}
	got, err := Read(name, bench.LogReading{})
	if err != nil {
		t.Fatal(err)
	}
	if len(got.Unreadable) > 0 {
		t.Error(got.Unreadable)
	}
	if d := cmp.Diff(want, got.Entries, cmp.Comparer(func(a, b time.Time) bool { return a.Equal(b) }),
		cmp.Comparer(func(a, b quantity.Temperature) bool { return a == b }),
		cmp.Comparer(func(a, b quantity.Mass) bool { return a == b }), cmp.Comparer(func(a,
			b quantity.Percent) bool {
			return a == b
		})); d != "" {
		t.Error(d)
	}
}

func someEntries() bench.Observations {
	at := func(d time.Duration) time.Time { return saturday.Add(d) }
	return bench.Observations{
		{Version: 1, At: at(0), Kind: bench.SawPlan, Bread: "maslin",
			Plan: &bench.FollowedPlan{Made: at(-time.Hour), Wanted: at(26 * time.Hour)}},
		{Version: 1, At: at(time.Hour), Kind: bench.SawMixed, Bread: "maslin", Mix: &bench.DoughMixed{
			Dough: quantity.Celsius(25.5), Flour: quantity.Celsius(21), Water: quantity.Celsius(17),
			Levain: quantity.Celsius(22), FlourWeight: quantity.Grams(1376), WaterWeight: quantity.Grams(906),
			LevainWeight: quantity.Grams(375), Mixer: 2, Slow: quantity.Elapsed(3 * time.Minute),
			Fast:        quantity.Elapsed(8 * time.Minute),
			Inoculation: quantity.NewPercent(12), Salt: quantity.NewPercent(2.1), Hydration: quantity.NewPercent(70),
			WholeGrain: quantity.NewPercent(25),
			Room:       quantity.Celsius(22), Weight: quantity.Grams(5379), Rise: quantity.NewPercent(28),
		}},
		{Version: 1, At: at(3 * time.Hour), Kind: bench.SawRise,
			Rise: &bench.SeenRise{Rise: quantity.NewPercent(15), Error: quantity.NewPercent(4)}},
		{Version: 1, At: at(4 * time.Hour), Kind: bench.SawReady,
			Ready: &bench.ReadyDough{Rise: quantity.NewPercent(28),
				Readings: []ferment.Knot{{Temperature: quantity.Celsius(25.5)},
					{At: quantity.Elapsed(time.Hour), Temperature: quantity.Celsius(25.2)}}}},
		{Version: 1, At: at(5 * time.Hour), Kind: bench.SawStep, Bread: "maslin", Step: "divide and shape"},
		{Version: 1, At: at(22 * time.Hour), Kind: bench.SawCore,
			Core: &bench.SeenCore{Core: quantity.Celsius(94.1), After: quantity.Elapsed(40 * time.Minute), Out: true}},
		{Version: 1, At: at(23 * time.Hour), Kind: bench.SawWeights,
			Weights: &bench.LoafWeights{In: quantity.Grams(897), Out: quantity.Grams(781), Style: bake.LeanHearth}},
		{Version: 1, At: at(24 * time.Hour), Kind: bench.SawNote, Note: "crust a little pale — 水 \u2028 ok"},
	}
}

// A line that another tool left unfinished is reported, stays byte for byte, and costs nothing
// of what is written after it.
func TestUnfinishedLastLine(t *testing.T) {
	name := filepath.Join(t.TempDir(), "bakes.jsonl")
	torn := `{"v":1,"at":"2026-11-28T10:40:00+01:00","kind":"note","no`
	if err := Append(name, note("first")); err != nil {
		t.Fatal(err)
	}
	first, _ := os.ReadFile(name)
	if err := os.WriteFile(name, append(bytes.Clone(first), torn...), 0o644); err != nil {
		t.Fatal(err)
	}
	got, err := Read(name, bench.LogReading{})
	if err != nil || len(got.Entries) != 1 || len(got.Unreadable) != 1 {
		t.Fatalf("%v %d entries, problems %v", err, len(got.Entries), got.Unreadable)
	}
	if p := got.Unreadable[0]; p.Line != 2 || !strings.Contains(p.Why.String(), "left alone") {
		t.Error(p)
	}
	if err := Append(name, note("second")); err != nil {
		t.Fatal(err)
	}
	now, _ := os.ReadFile(name)
	if !bytes.HasPrefix(now, append(bytes.Clone(first), torn+"\n"...)) {
		t.Errorf("the earlier bytes have changed:\n%s", now)
	}
	got, err = Read(name, bench.LogReading{})
	if err != nil || len(got.Entries) != 2 || got.Entries[1].Note != "second" || len(got.Unreadable) != 1 {
		t.Errorf("%v %+v", err, got)
	}
}

// A whole line without its end, as an editor may leave it, counts, and so does the next.
func TestLastLineWithoutEnd(t *testing.T) {
	name := filepath.Join(t.TempDir(), "bakes.jsonl")
	if err := Append(name, note("first")); err != nil {
		t.Fatal(err)
	}
	b, _ := os.ReadFile(name)
	if err := os.WriteFile(name, bytes.TrimSuffix(b, []byte("\n")), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := Append(name, note("second")); err != nil {
		t.Fatal(err)
	}
	got, err := Read(name, bench.LogReading{})
	if err != nil || len(got.Entries) != 2 || len(got.Unreadable) != 0 {
		t.Errorf("%v %+v", err, got)
	}
}

func TestLaterVersionIsRefused(t *testing.T) {
	for _, line := range []string{
		`{"v":2,"at":"2026-11-28T10:40:00+01:00","kind":"note","note":"x"}`,
		`{"v":2,"at":12345,"kind":["new"],"mix":"text now"}`,
		`{"v":1.5,"note":"x"}`,
	} {
		name := filepath.Join(t.TempDir(), "bakes.jsonl")
		if err := os.WriteFile(name, []byte(line+"\n"), 0o644); err != nil {
			t.Fatal(err)
		}
		if _, err := Read(name, bench.LogReading{}); !errors.As(err, new(bench.LaterVersion)) ||
			!strings.Contains(err.Error(), "line 1") {
			t.Errorf("%s: read: %v", line, err)
		}
		if err := Append(name, note("old")); !errors.As(err, new(bench.LaterVersion)) {
			t.Errorf("%s: append: %v", line, err)
		}
		if b, _ := os.ReadFile(name); string(b) != line+"\n" {
			t.Errorf("the file has changed: %s", b)
		}
	}
}

func TestManyWritersInOneProgram(t *testing.T) {
	name := filepath.Join(t.TempDir(), "bakes.jsonl")
	var wg sync.WaitGroup
	const writers, each = 8, 25
	for w := range writers {
		wg.Add(1)
		go func() {
			defer wg.Done()
			for i := range each {
				if err := Append(name, note(fmt.Sprintf("%d %d", w, i))); err != nil {
					t.Error(err)
				}
			}
		}()
	}
	wg.Wait()
	got, err := Read(name, bench.LogReading{})
	if err != nil || len(got.Entries) != writers*each || len(got.Unreadable) != 0 {
		t.Errorf("%v: %d entries, %v", err, len(got.Entries), got.Unreadable)
	}
}

func TestLockHeldTooLong(t *testing.T) {
	name := filepath.Join(t.TempDir(), "bakes.jsonl")
	f, err := openLocked(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	for _, flag := range []int{os.O_RDWR, os.O_RDONLY} {
		if _, err := open(name, flag, 20*time.Millisecond); !errors.Is(err, ErrBusy) {
			t.Errorf("got %v", err)
		}
	}
}

func TestRefusedEntries(t *testing.T) {
	name := filepath.Join(t.TempDir(), "bakes.jsonl")
	err := Append(name, note("fine"), bench.Observation{},
		bench.Observation{Version: 1, At: saturday, Kind: bench.SawRise},
		bench.Observation{Version: 1, At: saturday, Kind: 99, Note: "x"},
		bench.Observation{Version: 1, At: saturday, Kind: bench.SawMixed,
			Mix: &bench.DoughMixed{Dough: quantity.Celsius(77), Yeast: quantity.NewPercent(1)}},
		note(strings.Repeat("x", 1<<20)), note("\xff"))
	var paths []string
	for _, e := range quantity.InputErrors(err) {
		paths = append(paths, e.Path)
	}
	want := []string{
		"entries[1].v", "entries[1].at", "entries[1].kind", "entries[2].rise", "entries[3].kind",
		"entries[4].mix.dough", "entries[4].mix.yeast_kind", "entries[5].note", "entries[6].note",
	}
	if d := cmp.Diff(want, paths); d != "" {
		t.Error(d)
	}
	if _, err := os.Stat(name); err == nil {
		t.Error("something was written")
	}
}

// A byte-order mark in front, as some editors put one, hides nothing.
func TestByteOrderMark(t *testing.T) {
	name := filepath.Join(t.TempDir(), "bakes.jsonl")
	line, err := bench.Observations{note("first")}.Lines()
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, append([]byte("\ufeff"), line...), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := Append(name, note("second")); err != nil {
		t.Fatal(err)
	}
	c, err := Read(name, bench.LogReading{})
	if err != nil || len(c.Entries) != 2 || c.Entries[0].Note != "first" || len(c.Unreadable) != 0 {
		t.Errorf("%+v, %v", c, err)
	}
}

// Nothing is added to a file that is no log; the beginning of a first line, as a power cut leaves it, is one.
func TestAppendOnlyToLogs(t *testing.T) {
	folder := t.TempDir()
	for i, c := range []struct {
		content string
		ours    bool
	}{
		{"", true}, {"{\"v\":1,\"at\":\"2026-", true}, {"{", true}, {"{\"v\":", true},
		{"name = \"bread\"\n", false}, {"name", false}, {"\xff\xd8\xff\x00", false}, {"{}\n", false},
		{"{\"name\":\"x\"}\n", false}, {"\n\n", false}, {"{\"v\":1,\"own\":true}", false},
	} {
		name := filepath.Join(folder, strconv.Itoa(i))
		if err := os.WriteFile(name, []byte(c.content), 0o644); err != nil {
			t.Fatal(err)
		}
		err := Append(name, note("x"))
		after, readErr := os.ReadFile(name)
		if readErr != nil {
			t.Fatal(readErr)
		}
		if c.ours && err != nil || !c.ours && (!errors.Is(err, ErrNotLog) || string(after) != c.content) {
			t.Errorf("%q: %v, then %q", c.content, err, after)
		}
	}
}
