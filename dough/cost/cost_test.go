package cost_test

import (
	"math/big"
	"strings"
	"testing"

	"example.org/maslin/dough/cost"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/trial"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

func drawMoney(t *rapid.T, label string) decimal.Decimal {
	return decimal.New(rapid.Int64Range(0, 10_000_000).Draw(t, label), -rapid.Int32Range(0, 4).Draw(t, label+" places"))
}

func drawSheet(t *rapid.T) cost.CostSheet {
	in := cost.CostSheet{
		Loaves: rapid.IntRange(1, 500).Draw(t, "loaves"), Unit: quantity.MassUnit(rapid.IntRange(0, 4).Draw(t,
			"unit")), Other: drawMoney(t, "other"),
		Places: rapid.IntRange(-1, 4).Draw(t, "places"), Rounding: cost.MoneyRounding(rapid.IntRange(0, 3).Draw(t,
			"rounding")), UnitRounding: cost.MoneyRounding(rapid.IntRange(0, 3).Draw(t, "unit rounding")),
	}
	in.Sold = rapid.IntRange(0, in.Loaves).Draw(t, "sold")
	for range rapid.IntRange(1, 4).Draw(t, "lines") {
		l := cost.CostLine{Used: trial.Grams(t, "used", 0, 1e5), Price: drawMoney(t, "price"),
			Pack: trial.Grams(t, "pack", 1, 1e5)}
		if rapid.Bool().Draw(t, "yield") {
			l.Yield = trial.Percent(t, "percent", 5, 100)
		}
		in.Lines = append(in.Lines, l)
	}
	return in
}

func ratOf(d decimal.Decimal) *big.Rat { return d.Rat() }

// The sum is an exact fraction: computed again here with big.Rat, and only the last rounding differs.
func TestCostIsExactUntilTheEnd(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawSheet(t)
		in.UnitRounding = cost.MoneyExact
		c, err := in.Cost()
		if err != nil {
			t.Fatal(err)
		}
		trial.Sound(t, c.Working())
		want := ratOf(in.Other)
		for _, l := range in.Lines {
			yield := l.Yield
			if yield.IsZero() {
				yield = quantity.MustPercent("100 %")
			}
			used, _ := l.Used.Micrograms()
			pack, _ := l.Pack.Micrograms()
			y, _ := yield.Millionths()
			x := new(big.Rat).Mul(ratOf(l.Price), big.NewRat(used, pack))
			want.Add(want, x.Mul(x, big.NewRat(100_000_000, y)))
		}
		places := int32(2)
		switch {
		case in.Places > 0:
			places = int32(in.Places)
		case in.Places < 0:
			places = 0
		}
		unit := new(big.Rat).SetFrac(big.NewInt(1), new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(places)), nil))
		off := new(big.Rat).Sub(ratOf(c.Batch), want)
		limit := new(big.Rat).Quo(unit, big.NewRat(2, 1))
		if in.Rounding == cost.MoneyUp {
			if off.Sign() < 0 || off.Cmp(unit) >= 0 {
				t.Fatalf("%v rounded up is %v", want.FloatString(8), c.Batch)
			}
		} else if off.Abs(off).Cmp(limit) > 0 {
			t.Fatalf("%v is printed as %v", want.FloatString(8), c.Batch)
		}
		trial.Travels(t, in)
		if got, want := c.Working().Answer().Text(working.Reader{}), c.PerLoaf.StringFixed(places); got != want {
			t.Fatalf("the working ends with %v, the answer is %v", got, want)
		}
		if -c.Batch.Exponent() != places || -c.PerLoaf.Exponent() != places {
			t.Fatalf("places of %v and %v, want %d", c.Batch, c.PerLoaf, places)
		}
	})
}

// Unit costs rounded up never cost less than exact ones.
func TestRoundedUpUnitCosts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawSheet(t)
		in.Rounding = cost.MoneyUp
		in.UnitRounding = cost.MoneyExact
		exact, err := in.Cost()
		if err != nil {
			t.Fatal(err)
		}
		in.UnitRounding = cost.MoneyUp
		up, err := in.Cost()
		if err != nil {
			t.Fatal(err)
		}
		trial.Sound(t, up.Working())
		if up.Batch.LessThan(exact.Batch) {
			t.Fatalf("rounded up %v, exact %v", up.Batch, exact.Batch)
		}
		if up.PerSold.LessThan(up.PerLoaf) {
			t.Fatalf("sold %v, made %v", up.PerSold, up.PerLoaf)
		}
	})
}

func TestToBuyIsInverseToYield(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		usable, yield := trial.Grams(t, "usable", 1, 1e6), trial.Percent(t, "yield", 1, 100)
		bought, err := cost.Trimming{Usable: usable, Yield: yield}.ToBuy()
		if err != nil {
			t.Fatal(err)
		}
		back, err := cost.Trimming{Usable: usable, Bought: bought}.UsableYield()
		if err != nil {
			t.Fatal(err)
		}
		if d := back.Sub(yield).Points(); d > 1e-4 || d < -1e-4 {
			t.Fatalf("%v came back as %v", yield, back)
		}
	})
}

func TestHostileCost(t *testing.T) {
	d := decimal.RequireFromString
	extreme := decimal.New(1, 9_000)
	tiny := decimal.New(1, -9_000)
	flour := cost.CostLine{Used: quantity.Kilograms(1), Price: d("20"), Pack: quantity.Kilograms(25)}
	with := func(f func(*cost.CostLine)) cost.CostSheet {
		l := flour
		f(&l)
		return cost.CostSheet{Lines: []cost.CostLine{l}, Loaves: 1}
	}
	for name, c := range map[string]struct {
		err  error
		want string
	}{
		"zero": {trial.Err(cost.CostSheet{}.Cost()), "lines required; loaves required"},
		"many": {trial.Err(cost.CostSheet{Lines: make([]cost.CostLine, 201), Loaves: 1}.Cost()), "lines out of range"},
		"line": {trial.Err(with(func(l *cost.CostLine) { *l = cost.CostLine{Yield: quantity.NewPercent(0.5)} }).Cost()),
			"lines[0].pack required; lines[0].yield out of range"},
		"pack": {trial.Err(with(func(l *cost.CostLine) { l.Pack = quantity.Kilograms(-1) }).Cost()),
			"lines[0].pack out of range"},
		"heaviest": {trial.Err(with(func(l *cost.CostLine) { l.Used = quantity.Kilograms(100_000) }).Cost()), ""},
		"heavier": {trial.Err(with(func(l *cost.CostLine) { l.Used = quantity.Kilograms(100_000.5) }).Cost()),
			"lines[0].used out of range"},
		"negative": {trial.Err(with(func(l *cost.CostLine) { l.Price = d("-1") }).Cost()), "lines[0].price out of range"},
		"extreme":  {trial.Err(with(func(l *cost.CostLine) { l.Price = extreme }).Cost()), "lines[0].price out of range"},
		"tiny":     {trial.Err(with(func(l *cost.CostLine) { l.Price = tiny }).Cost()), "lines[0].price out of range"},
		"precise": {trial.Err(with(func(l *cost.CostLine) { l.Price = d("1.0000000000001") }).Cost()),
			"lines[0].price too precise"},
		"sold": {trial.Err(cost.CostSheet{Lines: []cost.CostLine{flour}, Loaves: 6, Sold: 7}.Cost()),
			"sold inconsistent"},
		"choices": {trial.Err(cost.CostSheet{Lines: []cost.CostLine{flour}, Loaves: 6, Unit: 99, UnitRounding: -1,
			Rounding: 9, Places: 40}.Cost()), "unit unit; unit_rounding out of range; rounding out of range; places out of " +
			"range"},
		"usable": {trial.Err(cost.Trimming{Usable: quantity.Grams(2), Bought: quantity.Grams(1)}.UsableYield()),
			"usable inconsistent"},
		"not bought":    {trial.Err(cost.Trimming{Usable: quantity.Grams(2)}.UsableYield()), "bought required"},
		"all is usable": {trial.Err(cost.Trimming{Usable: quantity.Grams(2), Bought: quantity.Grams(2)}.UsableYield()), ""},
		"to buy": {trial.Err(cost.Trimming{Usable: quantity.Grams(-2), Yield: quantity.Percent{}}.ToBuy()),
			"usable out of range; yield required"},
		"to buy, more than a mass can be": {trial.Err(cost.Trimming{Usable: quantity.Kilograms(99_999),
			Yield: quantity.MustPercent("2 %")}.ToBuy()), "usable out of range"},
		"bought, more than a mass can be": {trial.Err(cost.CostSheet{Lines: []cost.CostLine{{Name: "leeks",
			Used: quantity.Kilograms(99_999), Pack: quantity.Kilograms(1), Price: flour.Price,
			Yield: quantity.MustPercent("1.47 %")}}, Loaves: 1}.Cost()), "lines[0].used out of range"},
	} {
		if got := trial.Refused(c.err); got != c.want {
			t.Errorf("%s:\n got %s\nwant %s", name, got, c.want)
		}
		if c.err != nil && len(c.err.Error()) > 2000 {
			t.Errorf("%s: an error of %d bytes", name, len(c.err.Error()))
		}
	}
	long := with(func(l *cost.CostLine) { l.Name = strings.Repeat("n", 1<<20) })
	c, err := long.Cost()
	if err != nil {
		t.Fatal(err)
	}
	if n := len(c.Working().Text(80)); n > 5000 {
		t.Errorf("a name of a megabyte made a text of %d bytes", n)
	}
}

// The decimal package has settings that other parts of a program may change; none changes an amount.
func TestCostIgnoresDecimalSettings(t *testing.T) {
	precision, trim, quotes := decimal.DivisionPrecision, decimal.TrimTrailingZeros, decimal.MarshalJSONWithoutQuotes
	defer func() {
		decimal.DivisionPrecision, decimal.TrimTrailingZeros, decimal.MarshalJSONWithoutQuotes = precision, trim, quotes
	}()
	in := cost.CostSheet{
		Lines: []cost.CostLine{{Name: "flour", Used: quantity.Grams(3055), Price: decimal.RequireFromString("21.90"),
			Pack: quantity.Kilograms(25)}},
		Loaves: 7, Unit: quantity.Kilogram, UnitRounding: cost.MoneyUp, Places: 3,
	}
	run := func() string {
		c, err := in.Cost()
		if err != nil {
			t.Fatal(err)
		}
		return c.String() + c.Working().Text(80)
	}
	want := run()
	decimal.DivisionPrecision, decimal.TrimTrailingZeros, decimal.MarshalJSONWithoutQuotes = 1, !trim, !quotes
	if got := run(); got != want {
		t.Errorf("got %s\nwant %s", got, want)
	}
}

func BenchmarkCost(b *testing.B) {
	var in cost.CostSheet
	for range 12 {
		in.Lines = append(
			in.Lines,
			cost.CostLine{Used: quantity.Grams(812.5), Price: decimal.RequireFromString("21.90"),
				Pack: quantity.Kilograms(25)},
		)
	}
	in.Loaves, in.Unit = 6, quantity.Kilogram
	b.ReportAllocs()
	for b.Loop() {
		if _, err := in.Cost(); err != nil {
			b.Fatal(err)
		}
	}
}
