package bench_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/bench"
	"github.com/google/go-cmp/cmp"
)

func ExampleReadProbe() {
	loaf, err := bench.ReadProbe([]string{"23:55=80C", "0:05=86C"})
	fmt.Println(loaf.Samples, loaf.Timed(), err)
	fmt.Println(loaf.Last(time.Date(2026, 11, 28, 23, 0, 0, 0, time.UTC)).Format(time.DateTime))
	// Output:
	// [{0m 80 °C} {10m 86 °C}] true <nil>
	// 2026-11-29 00:05:00
}

func TestReadProbe(t *testing.T) {
	sample := func(minutes int, celsius float64) bake.Sample {
		return bake.Sample{At: quantity.Elapsed(time.Duration(minutes) * time.Minute), Core: quantity.Celsius(celsius)}
	}
	equal := cmp.Comparer(func(a, b quantity.Temperature) bool { return a == b })
	for _, c := range []struct {
		texts []string
		core  quantity.Temperature
		want  []bake.Sample
		err   error
	}{
		{nil, quantity.Temperature{}, nil, nil},
		{[]string{"94C"}, quantity.Celsius(94), nil, nil},
		{[]string{"12min=70C"}, quantity.Temperature{}, []bake.Sample{sample(12, 70)}, nil},
		{[]string{"12min=70C", "20min=80C"}, quantity.Temperature{}, []bake.Sample{sample(12, 70), sample(20, 80)}, nil},
		{[]string{"14:05=82C", "14:00=83C"}, quantity.Temperature{}, []bake.Sample{sample(0, 82), sample(-5, 83)}, nil},
		{[]string{"94C", "95C"}, quantity.Temperature{}, nil, quantity.ErrInconsistent},
		{[]string{"14:05=82C", "95C"}, quantity.Temperature{}, nil, quantity.ErrInconsistent},
		{[]string{"14:05=82C", "12min=95C"}, quantity.Temperature{}, nil, quantity.ErrInconsistent},
		{[]string{"soon=82C"}, quantity.Temperature{}, nil, quantity.ErrUnit},
		{[]string{"94"}, quantity.Temperature{}, nil, quantity.ErrUnit},
	} {
		got, err := bench.ReadProbe(c.texts)
		if c.err != nil || err != nil {
			if !errors.Is(err, c.err) {
				t.Errorf("%q: %v", c.texts, err)
			}
			continue
		}
		if d := cmp.Diff(c.want, got.Samples, equal); d != "" || got.Core != c.core || got.Timed() != (c.want != nil) {
			t.Errorf("%q: %+v %s", c.texts, got, d)
		}
		if clock := strings.Contains(strings.Join(c.texts, ""), ":"); got.ByClock != clock ||
			got.Last(time.Now()).IsZero() == clock {
			t.Errorf("%q: by the clock %v", c.texts, got.ByClock)
		}
	}
}

// One reading by the clock is of that minute; times of both sorts are told as such.
func TestTimesOfOneProbe(t *testing.T) {
	one, err := bench.ReadProbe([]string{"14:05=82C"})
	now := time.Date(2026, 11, 28, 15, 0, 0, 0, time.UTC)
	if err != nil || !one.Last(now).Equal(now.Add(-55*time.Minute)) {
		t.Errorf("%v, %v", one.Last(now), err)
	}
	_, err = bench.ReadProbe([]string{"14:05=82C", "12min=95C"})
	const want = "got clock times and times since the loaf went in, want one or the other"
	if err == nil || !strings.Contains(err.Error(), want) {
		t.Error(err)
	}
}

func ExampleReadRises() {
	mixed := time.Date(2026, 11, 28, 14, 10, 0, 0, time.UTC)
	fmt.Println(bench.ReadRises([]string{"10 % at 1h", "30 % at 16:20"}, mixed))
	// Output: [{1h 10 % 0 %} {2h10m 30 % 0 %}] <nil>
}

// Each text that is no reading is told at its place.
func TestReadRisesRefuses(t *testing.T) {
	got, err := bench.ReadRises([]string{"30%", "20 % at 1h", "x at soon", "30 at 2h"}, time.Now())
	var paths []string
	for _, e := range quantity.InputErrors(err) {
		paths = append(paths, e.GoPath)
	}
	if strings.Join(paths, " ") != "[0] [2] [2] [3]" || !errors.Is(err, quantity.ErrUnit) || len(got) != 3 {
		t.Errorf("%v: %v, %v", paths, got, err)
	}
	if none, err := bench.ReadRises(nil, time.Now()); none != nil || err != nil {
		t.Error(none, err)
	}
}
