package ferment_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/trial"
)

// A dough's own heat only hurries it, by less the faster it is lost, also where the dough waits in the cold for days
// before it is warmed.
func TestOwnHeatOnlyHurries(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := good()
		wait := rapid.Float64Range(0, 120).Draw(t, "waits")
		h, err := ferment.FromKnots(ferment.Knot{Temperature: quantity.Celsius(3)},
			ferment.Knot{At: span(wait), Temperature: quantity.Celsius(3)},
			ferment.Knot{At: span(wait + 2), Temperature: quantity.Celsius(rapid.Float64Range(18, 24).Draw(t, "then"))})
		if err != nil {
			t.Fatal(err)
		}
		b.History, b.Rise = h, pct(rapid.Float64Range(40, 150).Draw(t, "rise"))
		before := estimate(t, b).Ready().Likely
		for _, hours := range []float64{0.1, 2, 8} {
			b.OwnHeat = span(hours)
			now := estimate(t, b).Ready().Likely
			if now > before || hours == 8 && now > before-time.Minute {
				t.Errorf("heat kept for %v h: ready after %v, with less of it after %v", hours, now, before)
			}
			before = now
		}
	})
}

// A table of rises and one of curves have their sizes, and say so; a temperature at the end of a curve is in its range.
func TestSizesOfTables(t *testing.T) {
	rises := func(temperatures, amounts int) error {
		in := ferment.RiseTable{Bulk: good()}
		for range temperatures {
			in.Temperatures = append(in.Temperatures, quantity.Celsius(23))
		}
		for range amounts {
			in.Amounts = append(in.Amounts, pct(10))
		}
		return trial.Err(in.Times())
	}
	curves := func(curves, temperatures int) error {
		in := ferment.CurveTable{}
		for range curves {
			in.Curves = append(in.Curves, ferment.SquareRootCold())
		}
		for range temperatures {
			in.Temperatures = append(in.Temperatures, quantity.Celsius(20))
		}
		return trial.Err(in.Rates())
	}
	for _, c := range []struct {
		err  error
		want string
	}{
		{rises(100, 1), ""}, {rises(1, 100), ""}, {curves(100, 1), ""}, {curves(1, 10_000), ""},
		{rises(0, 0), "temperatures: required: want 1 to 100 temperatures\namounts: required: want 1 to 100 amounts of " +
			"levain or yeast"},
		{rises(101, 1), "temperatures: out of range: got 101, want 1 to 100 temperatures"},
		{rises(1, 101), "amounts: out of range: got 101, want 1 to 100 amounts of levain or yeast"},
		{curves(0, 0), "curves: required: want 1 to 100 curves\ntemperatures: required: want 1 to 10,000 temperatures"},
		{curves(101, 1), "curves: out of range: got 101, want 1 to 100 curves"},
		{curves(1, 10_001), "temperatures: out of range: got 10001, want 1 to 10,000 temperatures"},
	} {
		if d := cmp.Diff(c.want, saying(c.err)); d != "" {
			t.Error(d)
		}
	}
	in := ferment.CurveTable{Curves: []ferment.Curve{ferment.TradeQ10(), ferment.SquareRootCold()},
		Temperatures: temperatures(14.99, 15, 25, 25.01, 35, 35.01, -1)}
	r, err := in.Rates()
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff([]ferment.About{ferment.TradeQ10().About(), ferment.SquareRootCold().About()}, r.Curves); d != "" {
		t.Error(d)
	}
	for i, want := range [][]bool{{false, true}, {true, true}, {true, true}, {true, false}, {true, false}, {false, false},
		{false, false}} {
		row := r.Rows[i]
		if d := cmp.Diff(want, row.InRange); d != "" || row.Temperature != in.Temperatures[i] {
			t.Errorf("at %v: %s", row.Temperature, d)
		}
		for k, c := range in.Curves {
			mu := c.Rate(row.Temperature.Celsius())
			doubling := math.Ln2 / mu
			if mu == 0 {
				doubling = 0
			}
			if row.Rates[k] != mu || row.Doublings[k] != doubling {
				t.Errorf("%v at %v: %v/h and %v h", c, row.Temperature, row.Rates[k], row.Doublings[k])
			}
		}
	}
}

// The words of yeasts and of kneading are read as they are written, and what is none is refused by what it should be.
func TestWordsOfYeastAndKneading(t *testing.T) {
	for word, kind := range map[string]ferment.YeastKind{"no yeast": ferment.NoYeast, "fresh yeast": ferment.FreshYeast,
		"active dry yeast": ferment.ActiveDryYeast, "instant yeast": ferment.InstantYeast,
		"osmotolerant instant yeast": ferment.OsmotolerantYeast} {
		var back ferment.YeastKind
		if text, err := kind.MarshalText(); err != nil || string(text) != word || kind.String() != word ||
			back.UnmarshalText(text) != nil || back != kind {
			t.Errorf("%q: %s, %v, %v", word, text, err, back)
		}
	}
	for word, kind := range map[string]ferment.KneadedBy{"": ferment.KneadingUnstated, "by hand": ferment.ByHand,
		"by machine": ferment.ByMachine} {
		var back ferment.KneadedBy
		if text, err := kind.MarshalText(); err != nil || string(text) != word || kind.String() != word ||
			back.UnmarshalText(text) != nil || back != kind {
			t.Errorf("%q: %s, %v, %v", word, text, err, back)
		}
	}
	var kind ferment.YeastKind
	var by ferment.KneadedBy
	for _, c := range [][2]string{
		{ferment.YeastKind(9).String(), "unknown kind of yeast 9"}, {ferment.KneadedBy(9).String(),
			"unknown way of kneading 9"},
		{saying(kind.UnmarshalText([]byte("beer"))), `out of range: got "beer", want kind of yeast: no yeast, fresh yeast, ` +
			"active dry yeast, instant yeast, osmotolerant instant yeast"},
		{saying(by.UnmarshalText([]byte("by foot"))),
			`out of range: got "by foot", want way of kneading: by hand, by machine`},
		{ferment.Yeast{}.String(), "no yeast"},
		{ferment.Yeast{Kind: ferment.FreshYeast, Amount: pct(0.75)}.String(), "0.75 % fresh yeast"},
	} {
		if d := cmp.Diff(c[1], c[0]); d != "" {
			t.Error(d)
		}
	}
	bad := changed(func(b *ferment.Bulk) { b.Yeast.Amount = pct(1) })
	if d := cmp.Diff("yeast.kind: required: want the kind of the yeast, or no amount of it",
		saying(trial.Err(bad.Estimate()))); d != "" {
		t.Error(d)
	}
}

// A third of the weight of fresh yeast in instant yeast, or 0.4 of it in active dry yeast, is the same dough; sugar is
// felt by all but the yeast that is made for it, in a preferment too.
func TestYeastsInPlaceOfEachOther(t *testing.T) {
	ready := func(kind ferment.YeastKind, percent, sugar float64) quantity.TimeRange {
		return estimate(t, with(yeasted(kind, percent), func(b *ferment.Bulk) { b.Sugar = pct(sugar) })).Ready()
	}
	ripe := func(kind ferment.YeastKind, percent, sugar float64) quantity.TimeRange {
		r, err := ferment.Ripening{Yeast: ferment.Yeast{Kind: kind, Amount: pct(percent)}, Sugar: pct(sugar),
			Law: ferment.GasBalance(), History: ferment.Constant(quantity.Celsius(22))}.Ripe()
		if err != nil {
			t.Fatal(err)
		}
		return r.Peak
	}
	for _, of := range []func(ferment.YeastKind, float64, float64) quantity.TimeRange{ready, ripe} {
		fresh := of(ferment.FreshYeast, 1.2, 0)
		for kind, percent := range map[ferment.YeastKind]float64{ferment.InstantYeast: 0.4, ferment.ActiveDryYeast: 0.48} {
			if got := of(kind, percent, 0); (got.Likely - fresh.Likely).Abs() > time.Second {
				t.Errorf("%v %% of %v: %v, of fresh yeast %v", percent, kind, got, fresh)
			}
		}
		plain, sweet, made := of(ferment.InstantYeast, 0.4, 12), of(ferment.FreshYeast, 1.2, 12),
			of(ferment.OsmotolerantYeast, 0.4, 12)
		if (plain.Likely-sweet.Likely).Abs() > time.Second || !(made.Likely < plain.Likely-time.Minute) {
			t.Errorf("sweet: instant yeast %v, fresh yeast %v, osmotolerant yeast %v", plain, sweet, made)
		}
	}
}

// A culture is of its leavening, in a preferment as in a dough, and what it has learned of its pace counts there.
func TestCulturesOfPreferments(t *testing.T) {
	slow := func(b ferment.Bulk) ferment.Culture {
		var log []ferment.LoggedBulk
		for range 8 {
			log = append(log, ferment.LoggedBulk{Bulk: b, Took: quantity.Elapsed(2 * estimate(t, b).Ready().Likely)})
		}
		return learn(t, ferment.Learning{Bakes: log}).Culture
	}
	cultures := map[string]ferment.Culture{"levain": slow(good()),
		"yeast": slow(yeasted(ferment.InstantYeast, 0.3)),
		"both":  slow(both(5, 0.1))}
	for kind, r := range map[string]ferment.Ripening{
		"levain": {Seed: pct(20)},
		"yeast":  {Yeast: ferment.Yeast{Kind: ferment.InstantYeast, Amount: pct(0.1)}},
		"both":   {Seed: pct(5), Yeast: ferment.Yeast{Kind: ferment.InstantYeast, Amount: pct(0.1)}},
	} {
		r.Law, r.History = ferment.GasBalance(), ferment.Constant(quantity.Celsius(23))
		plain, err := r.Ripe()
		if err != nil {
			t.Fatal(err)
		}
		for of, culture := range cultures {
			r.Culture = culture
			known, err := r.Ripe()
			if of != kind {
				if got := trial.Refused(err); got != "culture inconsistent" {
					t.Errorf("a culture of %s in a preferment of %s: %q", of, kind, got)
				}
				continue
			}
			if err != nil || !(known.Peak.Likely > plain.Peak.Likely*5/4) {
				t.Errorf("%s: at its peak after %v, by a culture that takes twice as long %v (%v)", kind, plain.Peak, known.Peak,
					err)
			}
		}
	}
}

// What of its stages a preferment reaches in thirty days is told one by one.
func TestWhichStagesAPrefermentReaches(t *testing.T) {
	met := map[string]bool{}
	for celsius := -1.0; celsius <= 4; celsius += 0.125 {
		r, err := ferment.Ripening{Seed: pct(20), Law: ferment.GasBalance(),
			History: ferment.Constant(quantity.Celsius(celsius))}.Ripe()
		if err != nil {
			t.Fatal(err)
		}
		ripe, peak, past := r.Reached()
		for _, c := range []struct {
			reached bool
			when    quantity.TimeRange
		}{{ripe, r.From}, {peak, r.Peak}, {past, r.Until}} {
			if c.reached != (c.when.Likely < ferment.Horizon) {
				t.Errorf("at %v °C %v is reached: %v", celsius, c.when, c.reached)
			}
		}
		met[strings.Join([]string{word(ripe, "ripe"), word(peak, "peak"), word(past, "past")}, "")] = true
		if never := r.String() == "not ripe within 30 days at these temperatures"; never == ripe {
			t.Errorf("at %v °C: %v", celsius, r)
		}
	}
	for _, want := range []string{"", "ripe", "ripepeak", "ripepeakpast"} {
		if !met[want] {
			t.Errorf("no preferment reached %q of %v", want, met)
		}
	}
}

func word(is bool, text string) string {
	if is {
		return text
	}
	return ""
}

// An estimate as data has its rise at 25 times, evenly spaced from mixing to a tenth beyond its late end.
func TestTheRiseAsData(t *testing.T) {
	e := estimate(t, good())
	text, err := json.Marshal(e)
	var kept struct {
		Rise []ferment.RisePoint `json:"rise"`
	}
	if err == nil {
		err = json.Unmarshal(text, &kept)
	}
	if err != nil || len(kept.Rise) != 25 {
		t.Fatalf("%d points, %v", len(kept.Rise), err)
	}
	last := 1.1 * e.Ready().Late.Seconds()
	for i, p := range kept.Rise {
		if want := last * float64(i) / 24; !(math.Abs(p.At.Duration().Seconds()-want) <= 1.2) {
			t.Errorf("point %d is after %v, want %v s", i, p.At, want)
		}
		band, err := e.RiseAt(p.At.Duration())
		if err != nil || !(math.Abs(p.Rise.Likely.Points()-band.Likely.Points()) <= 0.02) ||
			p.Temperature != quantity.Celsius(23) {
			t.Errorf("after %v: %v at %v, want %v (%v)", p.At, p.Rise, p.Temperature, band, err)
		}
	}
}
