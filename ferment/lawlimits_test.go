package ferment_test

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/trial"
)

// saying is the text of an error, empty without one.
func saying(err error) string {
	if err == nil {
		return ""
	}
	return err.Error()
}

// A law holds to the degree where it says, both ends included, and with rivals where all of them do; what is refused
// says where the dough is, at one temperature or between two.
func TestWhereALawHolds(t *testing.T) {
	own := ferment.GasBalance()
	rival := func(r ferment.Rivals) ferment.Law { return own.With(r) }
	for _, c := range []struct {
		law       ferment.Law
		low, high float64
	}{
		{own, -1, 43}, {rival(ferment.Rivals{}), -1, 43}, {rival(ferment.Rivals{Levain: ferment.GanzleYeastHeld()}), 0, 38},
		{rival(ferment.Rivals{Yeast: ferment.SaccharomycesCardinal()}), 0, 43},
		{rival(ferment.Rivals{Gas: ferment.TradeQ10()}), 15, 35},
		{rival(ferment.Rivals{Levain: ferment.GanzleLactobacilli(), Yeast: ferment.SquareRootFull(),
			Gas: ferment.TradeQ10()}), 15, 35},
	} {
		if a := c.law.About(); a.Low != c.low || a.High != c.high {
			t.Errorf("%v from %v to %v °C, want %v to %v", c.law, a.Low, a.High, c.low, c.high)
		}
		want := fmt.Sprintf(", want %.0f °C to %.0f °C for the %v, unless extrapolating is allowed", c.low, c.high, c.law)
		want = strings.ReplaceAll(want, "-", "−")
		want = strings.ReplaceAll(want, "gas−balance", "gas balance")
		for _, x := range []struct {
			h   ferment.History
			got string
		}{
			{ferment.Constant(quantity.Celsius(c.low)), ""}, {ferment.Constant(quantity.Celsius(c.high)), ""},
			{bends(t, 0, c.low, 5, c.high, 500, c.low), ""},
			{ferment.Constant(quantity.Celsius(c.low - 0.1)), "got " + quantity.Celsius(c.low-0.1).String() + want},
			{ferment.Constant(quantity.Celsius(c.high + 0.1)), "got " + quantity.Celsius(c.high+0.1).String() + want},
			{bends(t, 0, c.low, 3, c.high+0.1, 4, 26),
				fmt.Sprintf("got %.1f °C to %.1f °C", c.low, c.high+0.1) + want},
			{bends(t, 0, c.low-0.1, 2, 26, 4, 26),
				fmt.Sprintf("got %.1f °C to %.1f °C", c.low-0.1, 26.0) + want},
		} {
			b := changed(func(b *ferment.Bulk) { b.Law, b.History = c.law, x.h })
			_, err := b.Estimate()
			if x.got != "" {
				x.got = strings.ReplaceAll("history: outside the model's range: "+x.got, "got -", "got −")
			}
			if d := cmp.Diff(x.got, saying(err)); d != "" {
				t.Error(d)
			}
			b.Extrapolate = true
			if _, err := b.Estimate(); err != nil {
				t.Errorf("extrapolated: %v", err)
			}
		}
	}
	if a := (ferment.Law{}).About(); a != (ferment.About{}) {
		t.Errorf("no law is %+v", a)
	}
}

// A rival counts where it stands: of yeast in a dough of yeast, of levain in one of levain, of gas in both; and each is
// refused by its name when it stands still where curves are compared, in a preferment as in a dough.
func TestEachRivalCountsWhereItStands(t *testing.T) {
	still, err := ferment.NewCurve(ferment.About{Name: "own", Low: 0, High: 40}, func(c float64) float64 {
		return math.Abs(c - 27)
	})
	if err != nil {
		t.Fatal(err)
	}
	slots := map[string]func(ferment.Curve) ferment.Rivals{
		"levain": func(c ferment.Curve) ferment.Rivals { return ferment.Rivals{Levain: c} },
		"yeast":  func(c ferment.Curve) ferment.Rivals { return ferment.Rivals{Yeast: c} },
		"gas":    func(c ferment.Curve) ferment.Rivals { return ferment.Rivals{Gas: c} },
	}
	cool := ferment.Constant(quantity.Celsius(18))
	// A rival of levain stands alone: the yeast of the law's own mixture counts no more, but in the doubt.
	alone := changed(func(b *ferment.Bulk) {
		b.History, b.Law = cool, ferment.GasBalance().With(ferment.Rivals{Levain: ferment.GanzleYeast()})
	})
	beside := with(alone, func(b *ferment.Bulk) {
		b.Law = ferment.GasBalance().With(ferment.Rivals{Levain: ferment.GanzleYeast(), Yeast: ferment.SquareRootFull()})
	})
	if a, b := estimate(t, alone).Ready().Likely, estimate(t, beside).Ready().Likely; a != b {
		t.Errorf("a levain by a rival is ready after %v, and with a rival of yeast after %v", a, b)
	}
	levain, yeast := good(), yeasted(ferment.InstantYeast, 0.5)
	levain.History, yeast.History = cool, cool
	for name, slot := range slots {
		for what, b := range map[string]ferment.Bulk{"levain": levain, "yeast": yeast} {
			before := estimate(t, b).Ready().Likely
			b.Law = ferment.GasBalance().With(slot(ferment.SaccharomycesCardinal()))
			moved := estimate(t, b).Ready().Likely != before
			if other := name != "gas" && name != what && what == "yeast"; moved == other {
				t.Errorf("a rival of %s moves a dough of %s: %v", name, what, moved)
			}
		}
		law := ferment.GasBalance().With(slot(still))
		want := "law." + name + ": inconsistent: got 0/h at 27 °C, want a curve that runs at 27 °C, where curves are compared"
		b := changed(func(b *ferment.Bulk) { b.Law = law })
		fed := ferment.Ripening{Seed: pct(20), Law: law, History: cool}
		for _, err := range []error{trial.Err(b.Estimate()), trial.Err(b.AmountFor(5 * time.Hour)), trial.Err(fed.Ripe())} {
			if d := cmp.Diff(want, saying(err)); d != "" {
				t.Errorf("%s: %s", name, d)
			}
		}
		if _, ok, err := fed.SeedFor(5 * time.Hour); ok || saying(err) != want {
			t.Errorf("%s: seed for it: %v, %v", name, ok, err)
		}
	}
}

// Keys of laws are read with the spaces of a careless hand; what is no key is refused in whole, and what is too long is
// not read at all.
func TestKeysOfLaws(t *testing.T) {
	const want = "out of range: got %s, want gas-balance, or gas-balance levain=CURVE yeast=CURVE gas=CURVE with " +
		"the key of a rate curve"
	long := "gas-balance" + strings.Repeat(" ", 200-len("gas-balance gas=trade-q10")) + " gas=trade-q10"
	for text, refused := range map[string]bool{"gas-balance": false, " gas-balance  gas=trade-q10 ": false, long: false,
		long + " ": true, "   ": true, "gas": true, "gas-balance gas=trade-q10 gas=trade-q10": true, "gas-balance gas": true,
		"gas-balance gas=": true, "gas-balance own=trade-q10": true, "gas=trade-q10 gas-balance": true} {
		var law ferment.Law
		err := law.UnmarshalText([]byte(text))
		if (err != nil) != refused || law.IsZero() != refused {
			t.Errorf("%q is read as %v, %v", text, law, err)
		}
		if refused {
			if d := cmp.Diff(fmt.Sprintf(want, quantity.Excerpt(text)), saying(err)); d != "" {
				t.Error(d)
			}
		}
	}
	// Three rivals have a key that comes back, in their order; the zero law has none.
	all := ferment.GasBalance().With(ferment.Rivals{Levain: ferment.GanzleLactobacilli(), Yeast: ferment.SquareRootFull(),
		Gas: ferment.TradeQ10()})
	text, err := json.Marshal(all)
	if err != nil || string(text) != `"gas-balance levain=ganzle-lactobacilli yeast=square-root-full gas=trade-q10"` {
		t.Errorf("%s, %v", text, err)
	}
	mine, err := ferment.NewCurve(ferment.About{Name: "mine", Low: 0, High: 40}, func(float64) float64 { return 0.3 })
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range []ferment.Rivals{{Levain: mine}, {Yeast: mine}, {Gas: mine}} {
		if _, err := ferment.GasBalance().With(r).MarshalText(); err == nil {
			t.Error("a law with a curve of one's own has a key")
		}
	}
}
