package ferment_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/workcheck"
)

func learn(t *testing.T, l ferment.Learning) ferment.Lesson {
	t.Helper()
	out, err := l.Learn()
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func TestLearningFindsThePace(t *testing.T) {
	last := math.Inf(1)
	for _, n := range []int{1, 5, 20, 100, 1000} {
		l := learn(t, ferment.Learning{Bakes: bakeLog(t, n)})
		p := l.Culture.Pace()
		if width := p.High.Points() - p.Low.Points(); width >= last {
			t.Errorf("%d bakes: pace %v is no narrower than %v", n, p, last)
		} else {
			last = width
		}
		if l.Culture.Bakes() != n {
			t.Errorf("%d bakes, says %d", n, l.Culture.Bakes())
		}
	}
	l := learn(t, ferment.Learning{Bakes: bakeLog(t, 1000)})
	// Pace, kneading and amplitude stay entangled; what they predict together does not.
	in := hall(t)
	e0, err := in.Estimate()
	if err != nil {
		t.Fatal(err)
	}
	in.Culture = l.Culture
	e, err := in.Estimate()
	if err != nil {
		t.Fatal(err)
	}
	if ratio := float64(e0.Ready().Likely) / float64(e.Ready().Likely); !(math.Abs(ratio-1.2) <= 0.03) {
		t.Errorf("a culture a fifth faster is predicted %v times as fast", ratio)
	}
	workcheck.Verify(t, l.Working())
	workcheck.Verify(t, e.Working())
	if s := l.Culture.BakeToBake().Points(); !(math.Abs(s-10) <= 1) {
		t.Errorf("bakes differ by a tenth, learned %v", s)
	}
	if d := l.Culture.TemperatureSensitivity(); !(d.Low.Sign() < 0 && d.High.Sign() > 0) ||
		d.High.Points()-d.Low.Points() > 2 {
		t.Errorf("temperature sensitivity %v", d)
	}
	lo, hi := l.Temperatures()
	if lo.Celsius() < 20 || hi.Celsius() > 25 || hi.Celsius()-lo.Celsius() < 4 {
		t.Errorf("temperatures %v to %v", lo, hi)
	}
	if !strings.Contains(l.String(), "1000 bakes") {
		t.Error(l.String())
	}
}

func TestLearningFindsTemperatureSensitivity(t *testing.T) {
	// A kitchen whose doughs speed up 5 % a degree more than the law.
	r := rand.New(rand.NewPCG(3, 3))
	dough := func(c float64) ferment.Bulk {
		in := good()
		in.History = ferment.Constant(quantity.Celsius(c))
		return in
	}
	var log []ferment.LoggedBulk
	for range 200 {
		c := 18 + 8*r.Float64()
		ready := estimate(t, dough(c)).Ready().Likely
		took := time.Duration(float64(ready) * math.Exp(-0.05*(c-24)+0.08*r.NormFloat64()))
		log = append(log, ferment.LoggedBulk{Bulk: dough(c), Took: quantity.Elapsed(took), Error: pct(0.5)})
	}
	lesson := learn(t, ferment.Learning{Bakes: log})
	for _, c := range []float64{18, 22, 26} {
		b := dough(c)
		plain := estimate(t, b).Ready().Likely
		b.Culture = lesson.Culture
		got := math.Log(estimate(t, b).Ready().Likely.Hours() / plain.Hours())
		if want := -0.05 * (c - 24); !(math.Abs(got-want) <= 0.05) {
			t.Errorf("at %v °C the log of the time moves by %.3f, logged %.3f", c, got, want)
		}
	}
	if d := lesson.Culture.TemperatureSensitivity(); !(math.Abs(d.Likely.Points()-5) <= 0.8) {
		t.Errorf("%v", d)
	}
}

func TestRobustLearningForgetsWildBakes(t *testing.T) {
	log := bakeLog(t, 20)
	clean := learn(t, ferment.Learning{Bakes: log})
	wild := append([]ferment.LoggedBulk(nil), log...)
	wild[7].Took *= 3
	plain := learn(t, ferment.Learning{Bakes: wild})
	robust := learn(t, ferment.Learning{Bakes: wild, Robust: true})
	off := func(l ferment.Lesson) float64 {
		in := hall(t)
		in.Culture = l.Culture
		e, err := in.Estimate()
		if err != nil {
			t.Fatal(err)
		}
		return e.Ready().Likely.Hours()
	}
	spread := func(l ferment.Lesson) float64 { return l.Culture.BakeToBake().Points() }
	want := off(clean)
	// Both ways of weighing hardly hear it: the likely time moves by less than a minute or three, the spread by a tenth.
	if p, r := math.Abs(off(plain)-want), math.Abs(off(robust)-want); !(p <= 0.06 && r <= 0.06) {
		t.Errorf("the likely time moves by %.3f h, robust by %.3f h", p, r)
	}
	if spread(robust) > 1.2*spread(clean) || spread(plain) > 1.2*spread(clean) {
		t.Errorf("spread: clean %v, weighed %v, robust %v",
			clean.Culture.BakeToBake(), plain.Culture.BakeToBake(), robust.Culture.BakeToBake())
	}
	// On ordinary bakes both say nearly the same.
	if d := math.Abs(off(learn(t, ferment.Learning{Bakes: log, Robust: true})) - want); !(d <= 0.02*want) {
		t.Errorf("robust differs by %v h on ordinary bakes", d)
	}
}

func TestKneadingHasItsOwnPace(t *testing.T) {
	log := bakeLog(t, 40)
	for i := range log {
		log[i].Bulk.Kneading = ferment.ByMachine
		if i%2 == 0 {
			log[i].Bulk.Kneading = ferment.ByHand
			log[i].Took = log[i].Took * 115 / 100
		}
	}
	l := learn(t, ferment.Learning{Bakes: log})
	likely := func(k ferment.KneadedBy) float64 {
		in := hall(t)
		in.Culture, in.Kneading = l.Culture, k
		e, err := in.Estimate()
		if err != nil {
			t.Fatal(err)
		}
		return e.Ready().Likely.Hours()
	}
	if ratio := likely(ferment.ByHand) / likely(ferment.ByMachine); ratio < 1.08 || ratio > 1.2 {
		t.Errorf("hand over machine %v, logged 1.15", ratio)
	}
}

func TestReviewsLeaveTheBakeOut(t *testing.T) {
	log := bakeLog(t, 60)
	l := learn(t, ferment.Learning{Bakes: log})
	all, inside, err := l.Reviews()
	if err != nil {
		t.Fatal(err)
	}
	if len(all) != 60 || inside < 40 || inside > 58 {
		t.Errorf("%d of %d inside", inside, len(all))
	}
	// By hand: learning without bake 4 predicts the same, but for what the other bakes weighed and scored while it was
	// there.
	rest := append(append([]ferment.LoggedBulk(nil), log[:4]...), log[5:]...)
	in := log[4].Bulk
	in.Culture = learn(t, ferment.Learning{Bakes: rest}).Culture
	e, err := in.Estimate()
	if err != nil {
		t.Fatal(err)
	}
	if d := e.Ready().Likely - all[4].Predicted.Likely; d > 2*time.Minute || d < -2*time.Minute {
		t.Errorf("left out: %v, learned without: %v", all[4].Predicted, e.Ready())
	}
	if !strings.Contains(all[4].String(), "the other bakes said") {
		t.Error(all[4])
	}
	// One wild bake is shown to be outside.
	log[9].Took *= 3
	all, _, err = learn(t, ferment.Learning{Bakes: log, Robust: true}).Reviews()
	if r := all[9]; err != nil || r.Inside || !strings.HasSuffix(r.String(), ": outside") {
		t.Errorf("%v, %v", r, err)
	}
}

// Learning in two steps is learning at once, but for the luck, which is not looked for again after every bake and
// weighs the next.
func TestLearningContinues(t *testing.T) {
	log := bakeLog(t, 40)
	once := learn(t, ferment.Learning{Bakes: log}).Culture
	first := learn(t, ferment.Learning{Bakes: log[:15]}).Culture
	twice := learn(t, ferment.Learning{Bakes: log[15:], Prior: first}).Culture
	pace := math.Abs(twice.Pace().Likely.Points()/once.Pace().Likely.Points() - 1)
	luck := math.Abs(twice.BakeToBake().Points()/once.BakeToBake().Points() - 1)
	if twice.Bakes() != 40 || pace > 5e-3 || luck > 2e-2 || twice.Score().Ranges != 40 {
		t.Errorf("once %v, in two steps %v", once, twice)
	}
}

func TestLearningRefusesAMix(t *testing.T) {
	log := bakeLog(t, 2)
	log[1].Bulk.Inoculation = quantity.Percent{}
	log[1].Bulk.Yeast = ferment.Yeast{Kind: ferment.InstantYeast, Amount: pct(1)}
	_, err := ferment.Learning{Bakes: log}.Learn()
	refuses(t, err, quantity.ErrInconsistent, "Bakes[1].Bulk")
	yeast := learn(t, ferment.Learning{Bakes: log[1:]}).Culture
	b := good()
	b.Culture = yeast
	_, err = b.Estimate()
	refuses(t, err, quantity.ErrInconsistent, "Culture")
	_, err = ferment.Learning{Bakes: log[:1], Prior: yeast}.Learn()
	refuses(t, err, quantity.ErrInconsistent, "Prior")
	bad := log[:1]
	bad[0].Took, bad[0].Error = 0, pct(90)
	_, err = ferment.Learning{Bakes: bad}.Learn()
	refuses(t, err, quantity.ErrOutOfRange, "Bakes[0].Took", "Bakes[0].Error")
	bad[0].Took, bad[0].Error = quantity.Elapsed(time.Hour), quantity.Percent{}
	bad[0].Bulk.History, bad[0].Bulk.Extrapolate = ferment.Constant(quantity.Celsius(-5)), true
	_, err = ferment.Learning{Bakes: bad}.Learn()
	refuses(t, err, quantity.ErrInconsistent, "Bakes[0].Bulk.History")
}

// What warm bakes taught is not stretched into the cold: below the coldest of them the range opens again, within their
// temperatures it does not, and colder is never surer.
func TestTheColdIsNotLearnedFromWarmBakes(t *testing.T) {
	lesson := func(temperatures ...float64) ferment.Culture {
		var bakes []ferment.LoggedBulk
		for _, c := range temperatures {
			b := good()
			b.History = ferment.Constant(quantity.Celsius(c))
			bakes = append(bakes, ferment.LoggedBulk{Bulk: b, Took: quantity.Elapsed(estimate(t, b).Ready().Likely)})
		}
		l, err := ferment.Learning{Bakes: bakes}.Learn()
		if err != nil {
			t.Fatal(err)
		}
		return l.Culture
	}
	width := func(known ferment.Culture, celsius float64) float64 {
		b := good()
		b.Culture, b.History = known, ferment.Constant(quantity.Celsius(celsius))
		r := estimate(t, b).Ready()
		return math.Log(r.Late.Hours() / r.Early.Hours())
	}
	warm, cool := lesson(22, 23, 24, 25, 26), lesson(15, 18, 22, 24, 26)
	for _, c := range []float64{22, 24, 26} {
		if w := width(warm, c); w > 0.45 {
			t.Errorf("at %v °C, where it was logged, the width is %.2f", c, w)
		}
	}
	if a, b := width(warm, 15), width(cool, 15); a < 1.3*b {
		t.Errorf("at 15 °C after warm bakes %.2f, after bakes down to 15 °C %.2f", a, b)
	}
	last := 0.0
	for _, c := range []float64{22, 20, 18, 16, 14, 12} {
		w := width(warm, c)
		if w < last {
			t.Errorf("at %v °C the width is %.2f, less than at a warmer temperature", c, w)
		}
		last = w
	}
}

// Where bakes were logged, a kitchen in which they took as long as expected is never less known than one that logged
// none, by itself or after a reading of the dough.
func TestBakesAsExpectedNarrowTheRangeWhereTheyWere(t *testing.T) {
	b := good()
	b.History = ferment.Constant(quantity.Celsius(20))
	one := ferment.LoggedBulk{Bulk: b, Took: quantity.Elapsed(estimate(t, b).Ready().Likely)}
	for _, n := range []int{1, 3, 7} {
		var log []ferment.LoggedBulk
		for range n {
			log = append(log, one)
		}
		l, err := ferment.Learning{Bakes: log}.Learn()
		if err != nil {
			t.Fatal(err)
		}
		known := b
		known.Culture = l.Culture
		for _, c := range []float64{20, 22, 24, 27} {
			width := func(b ferment.Bulk) (blind, seen float64) {
				b.History = ferment.Constant(quantity.Celsius(c))
				e := estimate(t, b)
				u, err := e.Update(ferment.RiseReading{At: quantity.Elapsed(e.Ready().Likely / 2), Rise: pct(20)})
				if err != nil {
					t.Fatal(err)
				}
				return math.Log(e.Ready().Late.Hours() / e.Ready().Early.Hours()),
					math.Log(u.Now.Ready().Late.Hours() / u.Now.Ready().Early.Hours())
			}
			blind, seen := width(b)
			learned, both := width(known)
			if learned > 1.02*blind || both > 1.02*seen {
				t.Errorf("after %d bakes at 20 °C the width at %v °C is %.3f for %.3f, with a reading %.3f for %.3f",
					n, c, learned, blind, both, seen)
			}
		}
	}
}
