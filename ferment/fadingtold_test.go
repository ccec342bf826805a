package ferment_test

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
)

// How old bakes count follows from what is derived of the log: as it was foretold best when that is likelier by a sixth
// than all alike, and a hundred times as likely is a pace that has changed.
func TestHowOldBakesCount(t *testing.T) {
	seen := map[string]bool{}
	for _, slow := range []int{0, 10, 25, 28, 32, 40} {
		for _, apart := range []int{7, 30} {
			log := bakeLog(t, 12)
			copy(log[6:], slower(log[6:], slow))
			for i := range log {
				log[i].On = time.Date(2026, 1, 4+apart*i, 8, 0, 0, 0, time.UTC)
			}
			l := learn(t, ferment.Learning{Bakes: log})
			likelier := map[string]float64{}
			for _, line := range l.Working().Lines(working.Reader{}) {
				if x, err := strconv.ParseFloat(strings.ReplaceAll(line.Value, "−", "-"), 64); err == nil {
					likelier[line.Symbol] = x
				}
			}
			days, best := 60, likelier["D_1"]
			if likelier["D_2"] > best {
				days, best = 15, likelier["D_2"]
			}
			after := fmt.Sprintf("one counts half after %d days", days)
			want := "the pace has changed over the log, so recent bakes count more: " + after
			switch {
			case best <= math.Log(7.0/6):
				want, days = "", 0
			case best < math.Log(100):
				want = "recent bakes count more, which foretold this log better: " + after
			}
			seen[want] = true
			half := quantity.Elapsed(time.Duration(days) * 24 * time.Hour)
			if got := l.Fades.String(); got != want || l.HalfLife != half {
				t.Errorf("%d %% slower, %v: half after %v, %q; want %v, %q", slow, likelier, l.HalfLife, got, half, want)
			}
			if told := l.Culture.String(); want != "" && !strings.HasSuffix(told, "; "+want) || want == "" &&
				strings.Contains(told, "count") {
				t.Errorf("%q, want %q in it", told, want)
			}
		}
	}
	if len(seen) < 4 {
		t.Errorf("only %v", seen)
	}
}
