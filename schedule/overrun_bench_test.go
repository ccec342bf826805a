//go:build unix

package schedule

import (
	"context"
	"errors"
	"fmt"
	"syscall"
	"testing"
	"time"
)

// busy is the processor time that this program has used.
func busy() time.Duration {
	var u syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &u) != nil {
		return 0
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// paid is a context that ends when the program has used so much processor time: a deadline that other programs on the
// machine do not move.
type paid struct {
	context.Context
	end time.Duration
}

func (p paid) Err() error {
	if busy() < p.end {
		return nil
	}
	return context.DeadlineExceeded
}

// How much processor time an answer takes after the time has run out.
func BenchmarkOverrun(b *testing.B) {
	for name, p := range deadlines() {
		for call, solve := range map[string]func(Problem, context.Context) (Timetable, error){"Best": Problem.Best,
			"Latest": Problem.Latest} {
			for _, limit := range []time.Duration{time.Millisecond, 20 * time.Millisecond, 100 * time.Millisecond,
				300 * time.Millisecond} {
				b.Run(fmt.Sprintf("%s/%s/%v", name, call, limit), func(b *testing.B) {
					worst := time.Duration(0)
					for b.Loop() {
						end := busy() + limit
						if _, err := solve(p, paid{context.Background(), end}); err != nil &&
							!errors.Is(err, context.DeadlineExceeded) {
							b.Fatal(err)
						}
						worst = max(worst, busy()-end)
					}
					b.ReportMetric(float64(worst.Microseconds())/1000, "overrun-cpu-ms")
				})
			}
		}
	}
}
