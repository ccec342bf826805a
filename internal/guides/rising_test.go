package guides

import (
	"fmt"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

// hallDough is the dough of the page.
func hallDough(levain float64, history ferment.History) ferment.Bulk {
	return ferment.Bulk{
		Inoculation: quantity.NewPercent(levain), Hydration: quantity.NewPercent(70), Salt: quantity.NewPercent(2),
		Rise: quantity.NewPercent(50), Law: ferment.GasBalance(), History: history,
	}
}

func ready(t *testing.T, b ferment.Bulk) quantity.TimeRange {
	t.Helper()
	e, err := b.Estimate()
	if err != nil {
		t.Fatal(err)
	}
	return e.Ready()
}

func minutely(d time.Duration) string { return elapsed(d.Round(time.Minute)) }

func TestRising(t *testing.T) {
	p := read(t, "ferment/RISING.md")
	at := func(c float64) ferment.History { return ferment.Constant(quantity.Celsius(c)) }
	p.says("has 12 % of its flour in the levain, 70 % water and 2 % salt")
	likely := map[float64]time.Duration{}
	for c := 18.0; c <= 28; c += 2 {
		likely[c] = ready(t, hallDough(12, at(c))).Likely
		p.says(fmt.Sprintf("| %.0f °C | %s |", c, minutely(likely[c])))
	}
	longer := func(slow, fast float64) float64 { return likely[slow].Minutes() / likely[fast].Minutes() }
	near(t, "24 to 22 °C", longer(22, 24), 1.21)
	near(t, "20 to 18 °C", longer(18, 20), 1.27)
	for c := 18.0; c < 28; c += 2 {
		if x := longer(c, c+2); x < 1.1 || x > 1.3 {
			t.Errorf("from %v °C two degrees less take %.2f times as long", c+2, x)
		}
	}
	if gain := longer(26, 28); gain > longer(24, 26) || gain > longer(22, 24) {
		t.Errorf("above 28 °C there is more to gain: %.2f", gain)
	}
	for _, levain := range []float64{24, 12, 6} {
		p.says(fmt.Sprintf("| %.0f %% | %s |", levain, minutely(ready(t, hallDough(levain, at(24))).Likely)))
	}
	yeast := hallDough(0, at(24))
	yeast.Hydration, yeast.Rise = quantity.NewPercent(65), quantity.NewPercent(100)
	dose := func(points float64) time.Duration {
		yeast.Yeast = ferment.Yeast{Kind: ferment.InstantYeast, Amount: quantity.NewPercent(points)}
		return ready(t, yeast).Likely
	}
	p.says(fmt.Sprintf("A plain dough at 24 °C with 1 %% instant yeast doubles in %s, with 0.5 %% in %s",
		minutely(dose(1)), minutely(dose(0.5))))
	cooled, err := ferment.FromKnots(ferment.Knot{At: 0, Temperature: quantity.Celsius(26)},
		ferment.Knot{At: quantity.Elapsed(2 * time.Hour), Temperature: quantity.Celsius(26)},
		ferment.Knot{At: quantity.Elapsed(2 * time.Hour), Temperature: quantity.Celsius(20)},
		ferment.Knot{At: quantity.Elapsed(40 * time.Hour), Temperature: quantity.Celsius(20)})
	if err != nil {
		t.Fatal(err)
	}
	byShares := 2*time.Hour + time.Duration((1-2/likely[26].Hours())*float64(likely[20]))
	p.says("two hours at 26 °C the stove of the kitchen goes out, and the dough stands at 20 °C")
	p.says("At 26 °C all of it takes " + minutely(likely[26]))
	p.says("at 20 °C where all of it takes " + minutely(likely[20]))
	p.says("ready " + minutely(byShares) + " after mixing")
	p.says("one by one and says " + minutely(ready(t, hallDough(12, cooled)).Likely))
	piece, err := ferment.Piece{
		Mass: quantity.Grams(900), Start: quantity.Celsius(25), Into: ferment.Room{Night: quantity.Celsius(4)},
		Exposure: ferment.RefrigeratorBasket,
	}.History()
	if err != nil {
		t.Fatal(err)
	}
	p.says("A loaf of 900 g that goes into a refrigerator of 4 °C at 25 °C")
	for _, h := range []int{1, 2, 4, 8} {
		hours := "hours"
		if h == 1 {
			hours = "hour"
		}
		p.says(fmt.Sprintf("| %d %s | %.0f °C |", h, hours, piece.At(time.Duration(h)*time.Hour).Celsius()))
	}
	unknown := ready(t, hallDough(12, at(24)))
	near(t, "early", unknown.Early.Round(time.Minute).Minutes(), 193)
	near(t, "late", unknown.Late.Round(time.Minute).Minutes(), 402)
	of10 := unknown.Probability.Points() / 10
	p.says(fmt.Sprintf("puts the dough of the hall at 24 °C, in %.0f of 10,", of10))
	p.says(fmt.Sprintf("The %.0f of 10 is what those beliefs come to; it has not been checked on real bakes yet", of10))
	for _, said := range []string{
		"Say it stands 4 cm high", "stands at 6 cm", "a rise of 100 %, not of 200 %", "From 24 to 22 °C", "from 20 to 18 °C",
		"Above 28 °C", "risen by half at 24 °C", "1. Put the same", "2. Reckon from",
		"at 22 °C for half", "at 26 °C for the rest", "3. Take half",
	} {
		p.says(said)
	}
	p.done()
}
