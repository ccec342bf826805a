package main

import (
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/examples/internal/bakelog"
	"example.org/maslin/ferment"
	"example.org/maslin/schedule/bench"
)

var fed = time.Date(2026, 11, 27, 8, 0, 0, 0, time.UTC)

func TestItSaysWhenAndRingsThen(t *testing.T) {
	var out strings.Builder
	var slept time.Duration
	if err := run([]string{"-seed", "1:2:2", "-room", "23 °C", "-ring"}, &out, fed, func(d time.Duration) { slept += d }); err != nil {
		t.Fatal(err)
	}
	want, err := ferment.Ripening{Seed: quantity.MustPercent("20 %"), Hydration: quantity.MustPercent("100 %"), History: ferment.Constant(quantity.Celsius(23)), Law: ferment.GasBalance()}.Ripe()
	if err != nil {
		t.Fatal(err)
	}
	for _, text := range []string{
		"look at it from " + fed.Add(want.From.Early).Format("Mon 15:04"), "likely ripe " + fed.Add(want.From.Likely).Format("Mon 15:04"),
		"use it before " + fed.Add(want.Until.Likely).Format("Mon 15:04"), "mold", "\aLook at the levain.",
	} {
		if !strings.Contains(out.String(), text) {
			t.Errorf("it does not say %q:\n%s", text, out.String())
		}
	}
	if slept != want.From.Early {
		t.Errorf("rang after %v, want %v", slept, want.From.Early)
	}
}

func TestWarmthAndSeedHurry(t *testing.T) {
	say := func(args ...string) string {
		var out strings.Builder
		if err := run(args, &out, fed, nil); err != nil {
			t.Fatal(err)
		}
		return out.String()
	}
	if say("-room", "19 °C") == say("-room", "25 °C") || say("-seed", "1:2:2") == say("-seed", "1:5:5") || say("-cold") == say() {
		t.Error("it makes no difference")
	}
}

func TestBadInputIsRefused(t *testing.T) {
	for _, args := range [][]string{
		{"-seed", "1:2"}, {"-seed", "a:b:c"}, {"-seed", "1:0:1"}, {"-seed", "NaN:1:1"}, {"-seed", "1:1:Inf"}, {"-seed", "-1:2:2"},
		{"-seed", strings.Repeat("1:", 1<<20)}, {"-room", "23"}, {"-room", "90 °C"}, {"-rooom", "1"},
	} {
		var out strings.Builder
		if err := run(args, &out, fed, nil); err == nil {
			t.Errorf("%.60v is taken: %s", args, out.String())
		}
	}
}

// With a log it goes by the culture of the baker: three bulks took half as long as expected, so the levain hurries too.
// A log of nothing, or none, is refused.
func TestItGoesByTheLog(t *testing.T) {
	name := filepath.Join(t.TempDir(), "bakes.jsonl")
	if err := run([]string{"-log", name}, io.Discard, fed, nil); err == nil || !strings.HasPrefix(err.Error(), "-log: ") {
		t.Error(err)
	}
	for day := range 3 {
		mixed := fed.AddDate(0, 0, day-9)
		mix := bench.DoughMixed{Dough: quantity.Celsius(24), Inoculation: quantity.NewPercent(12), Room: quantity.Celsius(24),
			Salt: quantity.NewPercent(2), Hydration: quantity.NewPercent(70), Rise: quantity.NewPercent(75)}
		if err := bakelog.Append(name,
			bench.Observation{Version: bench.Format, At: mixed, Kind: bench.SawMixed, Bread: "Hall loaf", Mix: &mix},
			bench.Observation{Version: bench.Format, At: mixed.Add(150 * time.Minute), Kind: bench.SawReady,
				Bread: "Hall loaf", Ready: &bench.ReadyDough{Rise: quantity.NewPercent(75)}}); err != nil {
			t.Fatal(err)
		}
	}
	culture, err := learned(name)
	if err != nil {
		t.Fatal(err)
	}
	want, err := ferment.Ripening{Seed: quantity.MustPercent("20 %"), Hydration: quantity.MustPercent("100 %"),
		History: ferment.Constant(quantity.Celsius(21)), Law: ferment.GasBalance(), Culture: culture}.Ripe()
	if err != nil {
		t.Fatal(err)
	}
	var usual, own strings.Builder
	if err := errors.Join(run(nil, &usual, fed, nil), run([]string{"-log", name}, &own, fed, nil)); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(own.String(), "likely ripe "+fed.Add(want.From.Likely).Format("Mon 15:04")) || own.String() >= usual.String() {
		t.Errorf("by the log: %susually: %s", own.String(), usual.String())
	}
}

// Whatever is asked, the times stand in their order, and without -ring nobody waits; the help is told, too.
func TestTheLineThatIsTold(t *testing.T) {
	var out strings.Builder
	if err := run(nil, &out, fed, nil); err != nil {
		t.Fatal(err)
	}
	first, rest, _ := strings.Cut(out.String(), "\n")
	shape := regexp.MustCompile(`^look at it from (\w{3} \d\d:\d\d), likely ripe (\w{3} \d\d:\d\d), use it before (\w{3} \d\d:\d\d)$`)
	times := shape.FindStringSubmatch(first)
	if times == nil || !strings.Contains(rest, "mold") || strings.Contains(rest, "\a") {
		t.Fatalf("%q", out.String())
	}
	if !(times[1] < times[2] && times[2] < times[3]) { // one Friday, so that texts compare as times
		t.Errorf("%q", first)
	}
	var cold strings.Builder
	if err := run([]string{"-cold"}, &cold, fed, nil); err != nil {
		t.Fatal(err)
	}
	if later := shape.FindStringSubmatch(strings.SplitN(cold.String(), "\n", 2)[0]); later == nil || later[2] <= times[2] {
		t.Errorf("seed from the cold is ripe at %v, warm seed at %v", later, times)
	}
	usual := out.String()
	out.Reset()
	if err := run([]string{"-room", "21 °C", "-seed", "1:2:2"}, &out, fed, nil); err != nil || out.String() != usual {
		t.Errorf("%v: got %q, usually %q", err, out.String(), usual)
	}
	out.Reset()
	if err := run([]string{"-h"}, &out, fed, nil); err == nil || !strings.Contains(out.String(), "-room") {
		t.Errorf("%v: %s", err, out.String())
	}
}

// As a program it says with its status and on the error output what it cannot take.
func TestMain(m *testing.M) {
	if os.Getenv("REMINDER_IS_THE_PROGRAM") != "" {
		main()
		return
	}
	os.Exit(m.Run())
}

func TestTheProgram(t *testing.T) {
	for seed, want := range map[string]string{"1:3:3": "0 ", "1": `2 -seed: unit: got "1", want culture, flour and water as 1:5:5`} {
		cmd := exec.Command(os.Args[0], "-seed", seed)
		cmd.Env = append(os.Environ(), "REMINDER_IS_THE_PROGRAM=1")
		var out, faults strings.Builder
		cmd.Stdout, cmd.Stderr = &out, &faults
		_ = cmd.Run()
		if got := strconv.Itoa(cmd.ProcessState.ExitCode()) + " " + faults.String(); !strings.HasPrefix(got, want) ||
			(want == "0 ") != strings.HasPrefix(out.String(), "look at it from ") || (want == "0 ") != (faults.Len() == 0) {
			t.Errorf("%s: %q, %q", seed, got, out.String())
		}
	}
}
