package cost_test

import (
	"strings"
	"testing"

	"example.org/maslin/dough/cost"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/trial"

	"github.com/shopspring/decimal"
)

func coins(s string) decimal.Decimal { return decimal.RequireFromString(s) }

// hallSheet costs, by hand: flour 36 ÷ 25 = 1.44 a kilogram, times 5 = 7.20; the second line 8 ÷ 2 ÷ 0.8 = 5.00
// times 0.1 = 0.50, of which 100 ÷ 0.8 = 125 g is bought; salt 1 ÷ 0.75 = 1.3333 times 0.09 = 0.12; with 2.50 beside
// them 10.32: 1.032 for each of 10, 1.29 for each of 8, and 10.32 ÷ 5.19 = 1.988 for a kilogram.
func hallSheet() cost.CostSheet {
	return cost.CostSheet{
		Name: "hall", Loaves: 10, Sold: 8, Unit: quantity.Kilogram, Other: coins("2.5"), Places: 2,
		Lines: []cost.CostLine{
			{Name: "flour", Used: quantity.Kilograms(5), Price: coins("36"), Pack: quantity.Kilograms(25)},
			{
				Used: quantity.Grams(100), Price: coins("8"), Pack: quantity.Kilograms(2),
				Yield: quantity.NewPercent(80),
			},
			{Name: "salt", Used: quantity.Grams(90), Price: coins("1"), Pack: quantity.Grams(750)},
		},
	}
}

func pageOf(t *testing.T, in cost.CostSheet) (page, derivation string) {
	t.Helper()
	c, err := in.Cost()
	if err != nil {
		t.Fatal(err)
	}
	return c.Report().Text(report.Options{Width: 80}), c.Working().Text(100)
}

func TestPageOfCosts(t *testing.T) {
	page, derivation := pageOf(t, hallSheet())
	trial.Holds(t, page, "hall: 10.32 for 10 loaves, 1.03 each", "5000.0 g 7.20 1.44 flour",
		"100.0 g 0.50 5.00 125 g is bought",
		"90.0 g 0.12 1.3333 salt", "2.50 other", "10.32 together", "each of the 8 that are sold has to bring 1.29",
		"1 kg of what goes in costs 1.99")
	trial.Holds(t, derivation, "cost of one kg of ingredient 2", "u_1 = 36.00 ÷ 25 u_1 = 1.4400", "u_3 ≈ 1.3333",
		"k_3 = 1.3333 × 0.09 k_3 ≈ 0.1200", "S = 7.2000 + 0.5000 + 0.1200 + 2.50 S = 10.3200", "k_sold = 1.29", "k ≈ 1.03")
	if strings.Contains(derivation, "rounded half") {
		t.Errorf("ordinary rounding is told as another:\n%s", derivation)
	}
	plain := hallSheet()
	plain.Other, plain.Sold = decimal.Decimal{}, 0
	page, derivation = pageOf(t, plain)
	for _, text := range []string{page, derivation} {
		if strings.Contains(text, "2.50") || strings.Contains(text, "other costs") || strings.Contains(text, "sold") {
			t.Errorf("other costs and loaves sold, of which there are none:\n%s", text)
		}
	}
}

// In words a line says what so much costs at which price.
func TestCostsInWords(t *testing.T) {
	c, err := hallSheet().Cost()
	if err != nil {
		t.Fatal(err)
	}
	trial.Holds(t, working.Telling{Level: working.InWords, Width: 2000}.Text(c.Working()),
		"5000 g of flour at 1.44 the kg cost 7.2.", "90 g of salt at 1.333 the kg cost 0.12.")
}

// Rounding up is not what a reader would do: the derivation says that it is done, and to how many decimals.
func TestRoundingIsTold(t *testing.T) {
	in := hallSheet()
	in.Rounding = cost.MoneyUp
	page, derivation := pageOf(t, in)
	trial.Holds(t, page, "hall: 10.32 for 10 loaves, 1.04 each")
	trial.Holds(t, derivation, "k_sold = 1.29", "1.04", "rounded up to 2 decimals")
	in = hallSheet()
	in.UnitRounding = cost.MoneyUp
	page, derivation = pageOf(t, in)
	// 1.34 for a kilogram of salt; 1.44 and 5.00 are whole cents as they are.
	trial.Holds(t, page, "1.34 salt")
	if n := strings.Count(derivation, "rounded up to 2 decimals"); n != 1 {
		t.Errorf("told %d times, want once:\n%s", n, derivation)
	}
	in = hallSheet()
	in.Places, in.Rounding = -1, cost.MoneyHalfEven
	page, derivation = pageOf(t, in)
	trial.Holds(t, page, "hall: 10 for 10 loaves, 1 each")
	trial.Holds(t, derivation, "k = 10.3200 ÷ 10")
}

// Amounts are shown with the places of the currency; −1 is none.
func TestPlacesOfAPage(t *testing.T) {
	for places, want := range map[int]string{-1: "10 for 10 loaves, 1 each", 1: "10.3 for 10 loaves, 1.0 each",
		3: "10.320 for 10 loaves, 1.032 each", 4: "10.3200 for 10 loaves, 1.0320 each",
		5: "10.32000 for 10 loaves, 1.03200 each", 6: "10.320000 for 10 loaves, 1.032000 each"} {
		in := hallSheet()
		in.Places = places
		page, derivation := pageOf(t, in)
		trial.Holds(t, page, "hall: "+want)
		_, each, _ := strings.Cut(want, "loaves, ")
		trial.Holds(t, derivation, " "+strings.TrimSuffix(each, " each")+" source:")
	}
}

// A sum of half a cent is rounded in a step of its own, which says how; a name of more than 40 bytes is cut at 32.
func TestSumOfHalfACent(t *testing.T) {
	in := hallSheet()
	in.Other = coins("2.505")
	in.Lines[0].Name, in.Lines[2].Name = strings.Repeat("x", 40), strings.Repeat("y", 41)
	_, derivation := pageOf(t, in)
	trial.Holds(t, derivation, "cost of the batch K = S",
		"K = 10.325 K, rounded: 10.33 note: rounded half up to 2 decimals",
		"cost of "+in.Lines[0].Name+" k_1", `cost of "`+strings.Repeat("y", 32)+`"… k_3`)
}

// What halves are rounded to, for each rule: 0.125, 0.375 and 0.25 to two places.
func TestHalves(t *testing.T) {
	for _, c := range []struct {
		price string
		how   cost.MoneyRounding
		want  string
	}{
		{"0.125", cost.MoneyHalfUp, "0.13"}, {"0.125", cost.MoneyHalfEven, "0.12"}, {"0.125", cost.MoneyUp, "0.13"},
		{"0.375", cost.MoneyHalfUp, "0.38"}, {"0.375", cost.MoneyHalfEven, "0.38"}, {"0.25", cost.MoneyUp, "0.25"},
		{"0.121", cost.MoneyUp, "0.13"}, {"0.121", cost.MoneyHalfUp, "0.12"}, {"0.121", cost.MoneyExact, "0.12"},
		{"0", cost.MoneyUp, "0"}, {"0.126", cost.MoneyHalfEven, "0.13"},
	} {
		r, err := cost.CostSheet{
			Loaves: 1, Unit: quantity.Kilogram, Rounding: c.how, Places: 2,
			Lines: []cost.CostLine{{Used: quantity.Kilograms(1), Price: coins(c.price), Pack: quantity.Kilograms(1)}},
		}.Cost()
		if err != nil {
			t.Fatal(err)
		}
		if !r.Batch.Equal(coins(c.want)) {
			t.Errorf("%s rounded %v: %v, want %s", c.price, c.how, r.Batch, c.want)
		}
	}
}

func TestRoundingsAreReadBack(t *testing.T) {
	for _, m := range quantity.Values[cost.MoneyRounding]() {
		var back cost.MoneyRounding
		text, err := m.MarshalText()
		if err != nil || back.UnmarshalText(text) != nil || back != m {
			t.Errorf("%v is read back as %v", m, back)
		}
	}
	var m cost.MoneyRounding
	if err := m.UnmarshalText([]byte("sideways")); err == nil {
		t.Error("read a rounding that there is not")
	}
}

// A trimming that yields more than was bought names both weights.
func TestTrimmingNamesBothWeights(t *testing.T) {
	_, err := cost.Trimming{Bought: quantity.Grams(500), Usable: quantity.Grams(600)}.UsableYield()
	bad := quantity.InputErrors(err)
	if len(bad) != 1 || !strings.Contains(bad[0].Error(), "got 600 g") || !strings.Contains(bad[0].Error(), "500 g") {
		t.Errorf("%v", err)
	}
}
