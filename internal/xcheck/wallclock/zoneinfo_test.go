package wallclock_test

import (
	"bufio"
	"bytes"
	"fmt"
	"math/rand/v2"
	"os/exec"
	"testing"
	"time"

	"example.org/maslin/schedule/wallclock"
)

var zones = []string{
	"Europe/Berlin", "America/Denver", "Australia/Lord_Howe", "America/New_York", "Asia/Kathmandu", "Europe/Dublin",
	"Antarctica/Troll",
	"America/St_Johns", "America/Sao_Paulo", "America/Havana", "Pacific/Apia", "Pacific/Chatham",
}

type question struct {
	zone   *time.Location
	moment wallclock.Moment
}

// questions are moments from 1980 to 2036, most of them within a day of a jump.
func questions(t *testing.T, n int) []question {
	random := rand.New(rand.NewPCG(1, 2))
	loaded := make([]*time.Location, len(zones))
	for i, name := range zones {
		z, err := time.LoadLocation(name)
		if err != nil {
			t.Skipf("skipped: no zone data: %v", err)
		}
		loaded[i] = z
	}
	var out []question
	for range n {
		z := loaded[random.IntN(len(loaded))]
		at := time.Unix(315532800+random.Int64N(56*365*86400), 0).In(z)
		if _, end := at.ZoneBounds(); !end.IsZero() && end.Year() < 2037 && random.IntN(4) > 0 {
			_, offset := end.Add(-time.Second).Zone()
			// what a clock shows that did not jump
			at = end.Add(time.Duration(random.IntN(400)-200)*time.Minute + time.Duration(offset)*time.Second).UTC()
			out = append(out, question{z, wallclock.MomentOf(at, nil)})
			continue
		}
		out = append(out, question{z, wallclock.MomentOf(at, z)})
	}
	return out
}

func TestSameAsZoneinfo(t *testing.T) {
	python, err := exec.LookPath("python3")
	if err != nil {
		t.Skip("skipped: python3 is not installed")
	}
	if err := exec.Command(python, "-c", "import zoneinfo; zoneinfo.ZoneInfo('Europe/Berlin')").Run(); err != nil {
		t.Skip("skipped: python3 has no zoneinfo or no zone data")
	}
	all := questions(t, 6_000)
	var ask bytes.Buffer
	for _, q := range all {
		fmt.Fprintf(&ask, "%v %vT%v\n", q.zone, q.moment.Date, q.moment.Clock)
	}
	run := exec.Command(python, "testdata/read.py")
	run.Stdin = &ask
	out, err := run.Output()
	if err != nil {
		t.Fatal(err)
	}
	answers := bufio.NewScanner(bytes.NewReader(out))
	count := map[string]int{}
	for _, q := range all {
		if !answers.Scan() {
			t.Fatal("too few answers")
		}
		var first, second int64
		var shown string
		if _, err := fmt.Sscan(answers.Text(), &first, &second, &shown); err != nil {
			t.Fatal(err)
		}
		count[shown]++
		// fold=1 is the later instant of a fold and the earlier one of a gap.
		other := wallclock.Later
		if shown == "skipped" {
			other = wallclock.Earlier
		}
		a, err1 := wallclock.Resolve(q.moment, q.zone, wallclock.RFC5545)
		b, err2 := wallclock.Resolve(q.moment, q.zone, other)
		if err1 != nil || err2 != nil || a.At.Unix() != first || b.At.Unix() != second || a.Reading.String() != shown {
			t.Errorf("%v in %v: %v and %v (%v, %v); zoneinfo says %s", q.moment, q.zone, a, b, err1, err2, answers.Text())
		}
	}
	t.Logf("the same for %d moments: %v", len(all), count)
	if count["skipped"] < 100 || count["twice"] < 100 {
		t.Errorf("too few gaps and folds tried: %v", count)
	}
}
