package ferment_test

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"pgregory.net/rapid"
)

// A dough followed reading by reading is the dough estimated from the whole log, at every reading.
func TestFollowingIsEstimatingTheLog(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBulk(t)
		knots := b.History.Knots()
		f, err := b.Follow(knots[0].Temperature)
		if err != nil {
			t.Fatal(err)
		}
		for i, k := range knots {
			if i > 0 {
				if f, err = f.Read(k.At.Duration(), k.Temperature); err != nil {
					t.Fatal(err)
				}
			}
			whole := b
			if whole.History, err = (ferment.Readings{Points: knots[:i+1]}).History(); err != nil {
				t.Fatal(err)
			}
			e := estimate(t, whole)
			got, want := f.Ready(), e.Ready()
			for _, x := range [][2]time.Duration{{got.Early, want.Early}, {got.Likely, want.Likely}, {got.Late, want.Late}} {
				// The cuts of a run lie elsewhere; the scheme is within 3e-3 of the log of the gas.
				if !(math.Abs(x[0].Hours()-x[1].Hours()) <= 3e-3*x[1].Hours()+1.0/1800) {
					t.Fatalf("after %d readings: %v, estimated %v", i+1, got, want)
				}
			}
			rise, err := e.RiseAt(k.At.Duration())
			if err != nil {
				t.Fatal(err)
			}
			if d := f.Rise().Likely.Points() - rise.Likely.Points(); !(math.Abs(d) <= 0.02+0.005*rise.Likely.Points()) {
				t.Fatalf("after %d readings risen %v, estimated %v", i+1, f.Rise(), rise)
			}
			if f.Readings() != i+1 || f.Last().At != k.At {
				t.Fatalf("%d readings, last %v", f.Readings(), f.Last())
			}
		}
		data, err := json.Marshal(f)
		if err != nil {
			t.Fatal(err)
		}
		var back ferment.Followed
		if err := json.Unmarshal(data, &back); err != nil {
			t.Fatal(err)
		}
		if !back.Equal(f) || back.Ready() != f.Ready() {
			t.Fatalf("%v comes back as %v", f, back)
		}
	})
}

func TestReadingsThatCannotBeFollowed(t *testing.T) {
	c := quantity.Celsius
	_, err := good().Follow(quantity.Temperature{})
	refuses(t, err, quantity.ErrRequired, "Temperature")
	_, err = good().Follow(c(80))
	refuses(t, err, quantity.ErrOutOfRange, "Temperature")
	if strings.Contains(err.Error(), "istory") {
		t.Errorf("the history is not used, and is asked for: %v", err)
	}
	hot := good()
	hot.Yeast = ferment.Yeast{Amount: quantity.NewPercent(1)}
	_, err = hot.Follow(c(50))
	refuses(t, err, quantity.ErrModelRange, "Temperature")
	refuses(t, err, quantity.ErrRequired, "Yeast.Kind")
	unknown := good()
	unknown.Yeast = ferment.Yeast{Amount: quantity.NewPercent(1)}
	_, err = unknown.Estimate()
	refuses(t, err, quantity.ErrRequired, "Yeast.Kind")
	_, err = ferment.Ripening{Yeast: unknown.Yeast, Hydration: quantity.NewPercent(100), History: unknown.History}.Ripe()
	refuses(t, err, quantity.ErrRequired, "Yeast.Kind")
	_, err = ferment.Followed{}.Read(time.Hour, c(20))
	refuses(t, err, quantity.ErrRequired, "Followed")
	f, err := good().Follow(c(24))
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range []struct {
		at     time.Duration
		t      quantity.Temperature
		reason error
		path   string
	}{
		{0, c(24), quantity.ErrInconsistent, "At"}, {-time.Hour, c(24), quantity.ErrInconsistent, "At"},
		{5 * time.Hour, c(24), quantity.ErrInconsistent, "At"},
		{time.Hour, c(50), quantity.ErrModelRange, "Temperature"}, {time.Hour, c(200), quantity.ErrOutOfRange, "Temperature"},
		{time.Hour, quantity.Temperature{}, quantity.ErrRequired, "Temperature"},
		{math.MaxInt64, c(24), quantity.ErrInconsistent, "At"},
	} {
		after, err := f.Read(x.at, x.t)
		refuses(t, err, x.reason, x.path)
		if after.Readings() != 1 {
			t.Error("a refused reading is counted")
		}
	}
	kept, err := json.Marshal(f)
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range [][3]string{
		{`"format":1`, `"format":2`, "format"},
		{`"readings":1`, `"readings":-1`, "readings"},
		{`"at":"0m"`, `"at":"-1m"`, "last.at"},
		{`"at":"0m"`, `"at":"721h"`, "last.at"},
		{`"temperature":"24 °C"`, `"temperature":"900 °C"`, "last.temperature"},
		{`"rise":"75 %"`, `"rise":"900 %"`, "bulk.rise"},
		{`"rise":"75 %"`, `"rise":"75"`, "bulk.rise"},
		{`"state":[`, `"state":[-`, "state"},
		{`"state":[`, `"passed":[1,2,3,4],"state":[`, "passed"},
		{`"last"`, `"hour"`, "hour"},
	} {
		text := strings.Replace(string(kept), x[0], x[1], 1)
		found := quantity.InputErrors(json.Unmarshal([]byte(text), &f))
		if text == string(kept) || len(found) != 1 || found[0].Path != x[2] {
			t.Errorf("%s: %v, want %s", text, found, x[2])
		}
	}
	for _, text := range []string{`{"bulk":{},"readings":1}`, `[]`, `"x"`} {
		if err := json.Unmarshal([]byte(text), &f); err == nil {
			t.Errorf("%s is taken", text)
		}
	}
	if text, err := json.Marshal(ferment.Followed{}); err != nil || string(text) != "null" ||
		(ferment.Followed{}).String() != "no dough is followed" {
		t.Error(string(text), err)
	}
}

// A dough is mixed at 25 °C; the probe in it reads every minute, and an hour later it is asked.
func ExampleBulk_Follow() {
	f, err := maslin().Follow(quantity.Celsius(25))
	for minute := 1; minute <= 60 && err == nil; minute++ {
		f, err = f.Read(time.Duration(minute)*time.Minute, quantity.Celsius(25-0.02*float64(minute)))
	}
	fmt.Println(f, err)
	// Output:
	// 2 % by now; 75 % rise after 4h22m to 8h45m (80 %), likely 6h08m <nil>
}

// followLog is a day of a probe that reads every 3 seconds: 28,800 readings.
func followLog() []ferment.Knot {
	out := make([]ferment.Knot, 28_800)
	for i := range out {
		out[i] = ferment.Knot{At: quantity.Elapsed(time.Duration(i) * 3 * time.Second),
			Temperature: quantity.Celsius(24 + math.Sin(float64(i)/2000))}
	}
	return out
}

// Taking in one more reading and asking when the dough is ready, after 10 and after 28,000 readings, and the same by
// making the history and the estimate anew.
func BenchmarkFollow(b *testing.B) {
	log := followLog()
	dough := good()
	for _, n := range []int{10, 1000, 28_000} {
		f, err := dough.Follow(log[0].Temperature)
		if err != nil {
			b.Fatal(err)
		}
		for _, k := range log[1:n] {
			if f, err = f.Read(k.At.Duration(), k.Temperature); err != nil {
				b.Fatal(err)
			}
		}
		b.Run(fmt.Sprintf("followed/%d", n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				g, err := f.Read(log[n].At.Duration(), log[n].Temperature)
				if err != nil || g.Ready().Likely == 0 {
					b.Fatal(err)
				}
			}
		})
		b.Run(fmt.Sprintf("anew/%d", n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				h, err := ferment.Readings{Points: log[:n+1]}.History()
				if err != nil {
					b.Fatal(err)
				}
				in := dough
				in.History = h
				if _, err := in.Estimate(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
