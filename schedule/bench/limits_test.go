package bench

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/trial"
)

// What is believed ends where the page says: at 101 °C in the crumb, at 2 % and 35 % lost in the oven, and below a rise
// of more than 12 %.
func TestWhereDoubtsBegin(t *testing.T) {
	mixed := Observation{Version: 1, At: saturday, Kind: SawMixed, Mix: &DoughMixed{Dough: quantity.Celsius(25),
		Inoculation: quantity.NewPercent(12), Hydration: quantity.NewPercent(70), Room: quantity.Celsius(22)}}
	soon := saturday.Add(time.Minute)
	core := func(celsius float64) Observation {
		return Observation{At: soon, Kind: SawCore, Core: &SeenCore{Core: quantity.Celsius(celsius)}}
	}
	weighed := func(in, out float64) Observation {
		return Observation{At: soon, Kind: SawWeights,
			Weights: &LoafWeights{In: quantity.Grams(in), Out: quantity.Grams(out)}}
	}
	rise := func(percent float64) Observation {
		return Observation{At: soon, Kind: SawRise, Rise: &SeenRise{Rise: quantity.NewPercent(percent)}}
	}
	sure := weighed(0, 10)
	sure.Sure = true
	for _, c := range []struct {
		o    Observation
		code string
	}{
		{core(101), ""}, {core(101.01), "bench.doubt_core"},
		{weighed(1000, 980), ""}, {weighed(1000, 980.1), "bench.doubt_kept"},
		{weighed(1000, 650), ""}, {weighed(1000, 649.9), "bench.doubt_lost"},
		{rise(12), ""}, {rise(12.01), "bench.doubt_rise"}, {sure, ""},
	} {
		got := ""
		if all := (Observations{mixed, c.o}).Doubts(); len(all) > 0 {
			got = all[0].Code()
		}
		if got != c.code {
			t.Errorf("%v: %q, want %q", c.o, got, c.code)
		}
	}
	if says, err := (Observations{sure}).Tells(sure); err != nil || len(says) != 1 ||
		says[0].String() != "lost 0.0 % of the dough" {
		t.Errorf("of no dough: %v, %v", says, err)
	}
}

// A reading teaches from a rise of 10 % on, and a shaping of a dough that was to rise by as much; what takes less than
// a minute teaches nothing.
func TestWhatTeachesOfACulture(t *testing.T) {
	mix := DoughMixed{Dough: quantity.Celsius(25), Inoculation: quantity.NewPercent(12),
		Hydration: quantity.NewPercent(70), Room: quantity.Celsius(22)}
	for percent, teaches := range map[float64]bool{9.99: false, 10: true} {
		p := quantity.NewPercent(percent)
		read := LoggedBake{Mixed: saturday, Mix: mix,
			Rises: Observations{{At: saturday.Add(2 * time.Hour), Kind: SawRise, Rise: &SeenRise{Rise: p}}}}
		shaped := LoggedBake{Mixed: saturday, Mix: mix,
			Steps: Observations{{At: saturday.Add(2 * time.Hour), Kind: SawStep, Step: "shape"}}}
		shaped.Mix.Rise = p
		for name, b := range map[string]LoggedBake{"read": read, "shaped": shaped} {
			if one, why := b.Taught(); why.IsZero() != teaches || teaches && one.Took.Duration() != 2*time.Hour {
				t.Errorf("%s at %v %%: %v after %v", name, percent, why, one.Took)
			}
		}
	}
	for took, want := range map[time.Duration]string{59 * time.Second: "ready in less than a minute after mixing",
		time.Minute: ""} {
		b := LoggedBake{Mixed: saturday, Mix: mix, Ready: &Observation{At: saturday.Add(took), Kind: SawReady,
			Ready: &ReadyDough{Rise: quantity.NewPercent(1)}}}
		if _, why := b.Taught(); why.String() != want {
			t.Errorf("after %v: %v", took, why)
		}
	}
}

// Bakes are learned from up to the limits of the rooms that learn.
func TestLimitsOfLearningAreThoseOfTheRooms(t *testing.T) {
	for n, more := range map[int]bool{mostBakes: false, mostBakes + 1: true} {
		_, err := ferment.Learning{Bakes: make([]ferment.LoggedBulk, n)}.Learn()
		if got := strings.HasPrefix(trial.Refused(err), "bakes required"); got != more {
			t.Errorf("%d bakes: %.60s", n, trial.Refused(err))
		}
	}
	for n, more := range map[int]bool{mostBatches: false, mostBatches + 1: true} {
		_, err := mixing.Log{Kind: mixing.Spiral, Batches: make([]mixing.Logged, n)}.Learn()
		if got := strings.HasPrefix(trial.Refused(err), "batches out of range"); got != more {
			t.Errorf("%d batches: %.60s", n, trial.Refused(err))
		}
	}
}

// Readings of a probe are up to 20,000.
func TestReadingsOfAProbeAreUpTo20000(t *testing.T) {
	o := Observation{Version: 1, At: saturday, Kind: SawReady, Ready: &ReadyDough{Rise: quantity.NewPercent(30)}}
	for n, want := range map[int]string{20_000: "", 20_001: "ready.readings out of range"} {
		o.Ready.Readings = make([]ferment.Knot, n)
		for i := range o.Ready.Readings {
			o.Ready.Readings[i].Temperature = quantity.Celsius(20)
		}
		if got := trial.Refused(o.Check()); got != want {
			t.Errorf("%d: %s", n, got)
		}
	}
	o.Ready.Readings = []ferment.Knot{{Temperature: quantity.Celsius(20)}, {Temperature: quantity.Celsius(77)},
		{Temperature: quantity.Celsius(78)}}
	if got := trial.Refused(o.Check()); got != "ready.readings[1].temperature out of range" {
		t.Errorf("in °F: %s", got)
	}
}

// The share of bakes inside has the quantiles of Beta(½ + inside, ½ + misses), to a tenth of a point, by summing the
// density over a fine grid.
func TestSharesAreJeffreysIntervals(t *testing.T) {
	for _, c := range []struct{ inside, bakes int }{{7, 9}, {1, 2}, {4, 4}, {30, 40}} {
		a, b := 0.5+float64(c.inside), 0.5+float64(c.bakes-c.inside)
		const n = 40_000
		weight := func(i int) float64 { // with x = sin²u the ends are tame: density · dx/du
			u := (float64(i) + 0.5) / n * math.Pi / 2
			return math.Pow(math.Sin(u), 2*a-1) * math.Pow(math.Cos(u), 2*b-1)
		}
		total := 0.0
		for i := range n {
			total += weight(i)
		}
		s := newScore(ByYeast, "Vreni", c.inside, c.bakes)
		sum, at := 0.0, 0
		for _, q := range []struct {
			share float64
			got   quantity.Percent
		}{{0.1, s.Share.Low}, {0.5, s.Share.Likely}, {0.9, s.Share.High}} {
			for ; sum < q.share*total; at++ {
				sum += weight(at)
			}
			sine := math.Sin(float64(at) / n * math.Pi / 2)
			if want := quantity.NewPercent(math.Round(1000*sine*sine) / 10); want != q.got {
				t.Errorf("%d of %d, %v: %v, want %v", c.inside, c.bakes, q.share, q.got, want)
			}
		}
		want := Score{By: "Vreni", Raising: ByYeast, Inside: c.inside, Bakes: c.bakes, Share: s.Share,
			Claimed: quantity.NewPercent(80)}
		if want.Share.Probability = quantity.NewPercent(80); s != want {
			t.Errorf("%+v, want %+v", s, want)
		}
	}
}

// A clock that goes back by up to twelve hours was read in another order, and beyond that on the next day.
func TestClocksOfAProbeThatGoBack(t *testing.T) {
	for second, want := range map[string]time.Duration{"06:00": -12 * time.Hour, "05:59": 12*time.Hour - time.Minute,
		"17:59": -time.Minute, "23:59": 6*time.Hour - time.Minute} {
		got, err := ReadProbe([]string{"18:00=70C", second + "=80C"})
		if err != nil || len(got.Samples) != 2 || got.Samples[1].At.Duration() != want {
			t.Errorf("%s: %v, %v, want %v", second, got.Samples, err, want)
		}
	}
}

// countedLog counts the bytes that are read of a log.
type countedLog struct {
	io.ReaderAt
	read int64
}

func (c *countedLog) ReadAt(p []byte, at int64) (int, error) {
	c.read += int64(len(p))
	return c.ReaderAt.ReadAt(p, at)
}

// A log that ends in a line that can be read is known by its end: no more than that is read, however long it is.
func TestALogIsKnownByItsEnd(t *testing.T) {
	log := logOf(t, numbered(2000))
	in := &countedLog{ReaderAt: log}
	lines, ours, err := Observations{note("x")}.Behind(in, log.Size())
	if err != nil || !ours || len(lines) == 0 || in.read > 4096 {
		t.Errorf("%d of %d bytes are read: %v, %v", in.read, log.Size(), ours, err)
	}
}

// Of a log 16 MiB of lines are kept where nothing else is asked for, and not a line more.
func TestALogIsKeptUpTo16MiB(t *testing.T) {
	var log strings.Builder
	for _, o := range numbered(17) {
		line, err := json.Marshal(o)
		if err != nil {
			t.Fatal(err)
		}
		log.Write(line)
		log.WriteString(strings.Repeat(" ", 1<<20-len(line)-1) + "\n")
	}
	got, err := LogReading{}.From(strings.NewReader(log.String()))
	if err != nil || len(got.Entries) != 16 || got.Older != 1 || got.Entries[0].Note != "1" {
		t.Errorf("%d entries, %d older, %v", len(got.Entries), got.Older, err)
	}
}

// While a log is read no more is held than is kept, a quarter of it and a hundred observations; and what is too much is
// let go of in one go, not one by one.
func TestWhatIsHeldWhileALogIsRead(t *testing.T) {
	most, closed := 0, 0
	w := window{most: math.MaxInt, last: 1000}
	for i, o := range numbered(10_000) {
		before := len(w.entries)
		w.add(o, 10)
		most = max(most, len(w.entries))
		if len(w.entries) <= before {
			closed++
		}
		if w.older+len(w.entries) != i+1 || w.size != 10*len(w.entries) {
			t.Fatalf("%d of %d, and %d older; %d bytes", len(w.entries), i+1, w.older, w.size)
		}
	}
	if most != 1350 || closed != 9000/351 {
		t.Errorf("%d are held at most, and let go of %d times", most, closed)
	}
	w, most = window{most: 1000, last: math.MaxInt}, 0
	for _, o := range numbered(1000) {
		w.add(o, 10)
		most = max(most, w.size)
	}
	if most != 1250 {
		t.Errorf("%d bytes are held at most", most)
	}
}

// A kitchen without breads plans nothing, and a bread that nothing is known of asks for nothing.
func TestNothingPlanned(t *testing.T) {
	if got := (KitchenNow{}).Report(); got.Headline.String() != "nothing is planned" || len(got.Sections) > 0 {
		t.Errorf("%+v", got)
	}
	_, err := Under{}.At(context.Background(), clockOf(saturday))
	if !errors.Is(err, quantity.ErrRequired) {
		t.Error(err)
	}
}

// The mixer of which nothing could be learned is named, with what is missing, and the culture of one bake has
// no review.
func TestLessonsOfLittle(t *testing.T) {
	mix := &DoughMixed{Dough: quantity.Celsius(25), Inoculation: quantity.NewPercent(12), Mixer: mixing.Spiral,
		Hydration: quantity.NewPercent(70), Room: quantity.Celsius(22)}
	yeast := *mix
	yeast.Inoculation, yeast.Yeast, yeast.YeastKind = quantity.Percent{}, quantity.NewPercent(1), ferment.FreshYeast
	yeast.Mixer = mixing.Planetary
	at := func(d time.Duration) time.Time { return saturday.Add(d) }
	all := Observations{
		{Version: 1, At: at(0), Kind: SawMixed, Bread: "rye", Mix: mix},
		{Version: 1, At: at(3 * time.Hour), Kind: SawReady, Bread: "rye", Ready: &ReadyDough{Rise: quantity.NewPercent(40)}},
		{Version: 1, At: at(4 * time.Hour), Kind: SawMixed, Bread: "rolls", Mix: &yeast},
		{Version: 1, At: at(9 * time.Hour), Kind: SawWeights, Weights: &LoafWeights{In: quantity.Grams(900),
			Out: quantity.Grams(780), Style: bake.Pan}},
	}
	l, err := all.Learn(0)
	if err != nil {
		t.Fatal(err)
	}
	trial.Kept(t, "little.txt", fmt.Sprint(l.Report().Text(reportOptions)))
	if b, ok := l.Mixer(mixing.Spiral); ok {
		t.Errorf("%+v", b)
	}
}
