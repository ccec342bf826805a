package main

import (
	"encoding/csv"
	"errors"
	"math"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"
)

const head = "name,pieces,each,loss,water,salt,levain\n"

func lines(t *testing.T, in string) [][]string {
	t.Helper()
	var out strings.Builder
	if err := scale(strings.NewReader(in), &out); err != nil {
		t.Fatal(err)
	}
	all, err := csv.NewReader(strings.NewReader(out.String())).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return all
}

func TestLinesAreScaled(t *testing.T) {
	all := lines(t, head+"maslin,6,780 g,13 %,70 %,2.1 %,12 %\nrolls,24,70 g,\"12,5 %\",60 %,1.8 %,0 %\n")
	if len(all) != 3 || all[1][0] != "maslin" || all[2][10] != "" {
		t.Fatalf("%q", all)
	}
	for i, want := range []float64{6 * 780 / 0.87, 24 * 70 / 0.875} { // dough: baked weight over what the oven leaves
		sum := 0.0
		for _, cell := range all[i+1][7:11] {
			if cell != "" {
				v, err := strconv.ParseFloat(cell, 64)
				if err != nil {
					t.Fatal(err)
				}
				sum += v
			}
		}
		if !(math.Abs(sum-want) <= 0.2) { // four cells rounded to a tenth
			t.Errorf("%s weighs %.2f, want %.2f", all[i+1][0], sum, want)
		}
	}
}

// What stands in each column, by hand: 6 loaves of 780 g that lose 13 % need 5379.31 g of dough, which is 172.1 % of its
// flour, so 3125.69 g of flour, of which 12 % with as much water are in the levain.
func TestEveryColumn(t *testing.T) {
	all := lines(t, head+"maslin,6,780 g,13 %,70 %,2.1 %,12 %\nplain,1,\"1,4 kg\",0 %,40 %,0 %,0 %\nbad,1,1 kg,0,40 %,x,0 %\n")
	if got, want := strings.Join(all[0], ","), strings.TrimSpace(head)+",flour_g,water_g,salt_g,levain_g,problem"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	if got := strings.Join(all[1][:7], ","); got != "maslin,6,780 g,13 %,70 %,2.1 %,12 %" {
		t.Error(got)
	}
	for i, want := range []float64{3125.69 * 0.88, 3125.69 * 0.58, 3125.69 * 0.021, 3125.69 * 0.24} {
		if got, err := strconv.ParseFloat(all[1][7+i], 64); err != nil || !(math.Abs(got-want) <= 0.06) { // tenths are shown
			t.Errorf("%s: %s, want %.2f", all[0][7+i], all[1][7+i], want)
		}
	}
	if got := strings.Join(all[2][7:], ","); got != "1000.0,400.0,,," {
		t.Errorf("1.4 kg at 40 %%: %s", got)
	}
	all = lines(t, head+"bad,six,1,0,40 %,2 %,x\n")
	at := 0
	for _, part := range []string{`pieces: got "six", want a whole number`, `each: unit: got "1"`, `loss: unit: got "0"`,
		`levain: unit: got "x"`} { // in the order of the columns
		i := strings.Index(all[1][11][at:], part)
		if i < 0 {
			t.Fatalf("no %s after byte %d of %q", part, at, all[1][11])
		}
		at += i
	}
	if strings.Join(all[1][7:11], "") != "" || strings.Count(all[1][11], "; ") != 3 || strings.Contains(all[1][11], "\n") {
		t.Errorf("%q", all[1])
	}
}

// As a program it reads and writes what a shell gives it, and says with its status and on the error output what it
// cannot take.
func TestMain(m *testing.M) {
	if os.Getenv("BATCH_IS_THE_PROGRAM") != "" {
		main()
		return
	}
	os.Exit(m.Run())
}

func TestTheProgram(t *testing.T) {
	for in, want := range map[string]string{head + "plain,1,1400 g,0 %,40 %,0 %,0 %\n": "0 ", "a,b\n": "2 batch: want the columns name,pieces,each,loss,water,salt,levain\n"} {
		cmd := exec.Command(os.Args[0])
		cmd.Env = append(os.Environ(), "BATCH_IS_THE_PROGRAM=1")
		cmd.Stdin = strings.NewReader(in)
		var out, faults strings.Builder
		cmd.Stdout, cmd.Stderr = &out, &faults
		_ = cmd.Run()
		if got := strconv.Itoa(cmd.ProcessState.ExitCode()) + " " + faults.String(); got != want ||
			(want == "0 ") != strings.Contains(out.String(), "1000.0,400.0") {
			t.Errorf("%q: %q, %q", in, got, out.String())
		}
	}
}

func TestABadLineDoesNotStopTheOthers(t *testing.T) {
	all := lines(t, head+"a,six,780 g,13 %,70 %,2 %,12 %\nb,2,780,13 %,70 %,2 %,12 %\nc,2,780 g,113 %,70 %,2 %,12 %\nd,2,780 g,13 %,70 %,2 %,90 %\n\"=cmd()\",1,1 kg,10 %,65 %,2 %,0 %\n")
	for i, bad := range []bool{true, true, true, true, false} {
		if got := all[i+1][11] != ""; got != bad {
			t.Errorf("line %d: problem %q", i+1, all[i+1][11])
		}
	}
	if all[5][7] == "" {
		t.Error("the last line was not scaled")
	}
}

func TestOtherTablesAreRefused(t *testing.T) {
	for _, in := range []string{"", "name,pieces\nx,1\n", head + "too,few\n", head + "\"open"} {
		var out strings.Builder
		if err := scale(strings.NewReader(in), &out); err == nil {
			t.Errorf("%q is taken: %s", in, out.String())
		}
	}
}

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, errors.New("no space left") }

func TestAFullDiskIsNoticed(t *testing.T) {
	if err := scale(strings.NewReader(head), fullDisk{}); err == nil {
		t.Error("a full disk goes unnoticed")
	}
}
