package dough_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/shopspring/decimal"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
)

var twelve = []struct {
	name    string
	percent string
	role    dough.Role
}{
	{"bread flour", "70", dough.RoleFlour},
	{"whole rye", "20", dough.RoleFlour},
	{"whole wheat", "10", dough.RoleFlour},
	{"water", "72.5", dough.RoleLiquid},
	{"milk", "5", dough.RoleLiquid},
	{"salt", "2.1", dough.RoleSalt},
	{"instant yeast", "0.25", dough.RoleOther},
	{"honey", "3", dough.RoleOther},
	{"butter", "4.5", dough.RoleOther},
	{"malt", "0.75", dough.RoleOther},
	{"walnuts", "12", dough.RoleInclusion},
	{"raisins", "8.3", dough.RoleInclusion},
}

func twelveFormula() dough.Formula {
	var f dough.Formula
	for _, i := range twelve {
		part := dough.Part{Name: i.name, Percent: pc(i.percent + " %")}
		switch i.role {
		case dough.RoleFlour:
			f.Flours = append(f.Flours, part)
		case dough.RoleLiquid:
			f.Liquids = append(f.Liquids, part)
		case dough.RoleSalt:
			f.Salt = part.Percent
		case dough.RoleInclusion:
			f.Inclusions = append(f.Inclusions, part)
		default:
			f.Others = append(f.Others, part)
		}
	}
	return f
}

// quoRem is the same computation written directly on decimals: each part is the quotient of
// whole · share and the sum of the shares, truncated at places, and the units left over go to the
// largest remainders.
func quoRem(whole decimal.Decimal, shares []decimal.Decimal, places int32) []decimal.Decimal {
	sum := decimal.Sum(shares[0], shares[1:]...)
	parts := make([]decimal.Decimal, len(shares))
	rest := make([]decimal.Decimal, len(shares))
	order := make([]int, len(shares))
	for i, s := range shares {
		parts[i], rest[i] = whole.Mul(s).QuoRem(sum, places)
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return rest[b].Cmp(rest[a]) })
	units := whole.Sub(decimal.Sum(parts[0], parts[1:]...)).Shift(places).IntPart()
	unit := decimal.New(1, -places)
	for _, i := range order[:units] {
		parts[i] = parts[i].Add(unit)
	}
	return parts
}

func decimals() (decimal.Decimal, []decimal.Decimal) {
	shares := make([]decimal.Decimal, len(twelve))
	for i, s := range twelve {
		shares[i] = decimal.RequireFromString(s.percent)
	}
	return decimal.RequireFromString("8655"), shares
}

// The two computations of the benchmarks agree line by line.
func TestBenchmarksComputeTheSame(t *testing.T) {
	b, err := twelveFormula().For(dough.ByDough{Mass: quantity.Grams(8655)})
	if err != nil {
		t.Fatal(err)
	}
	whole, shares := decimals()
	want := map[string]string{}
	for i, d := range quoRem(whole, shares, 6) {
		want[twelve[i].name] = d.String() + " g"
	}
	for _, l := range b.Overall() {
		if l.Mass.String() != want[l.Name] {
			t.Errorf("%s: %v, on decimals %s", l.Name, l.Mass, want[l.Name])
		}
	}
}

func BenchmarkScaleTwelve(b *testing.B) {
	f := twelveFormula()
	target := dough.ByDough{Mass: quantity.Grams(8655)}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := f.For(target); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkScaleTwelveOnQuoRem(b *testing.B) {
	for _, places := range []int32{6, 0} {
		b.Run(fmt.Sprintf("places=%d", places), func(b *testing.B) {
			whole, shares := decimals()
			b.ReportAllocs()
			for b.Loop() {
				quoRem(whole, shares, places)
			}
		})
	}
}

func BenchmarkScaleAndWeighTwelve(b *testing.B) {
	f := twelveFormula()
	b.ReportAllocs()
	for b.Loop() {
		batch, err := f.For(dough.ByDough{Mass: quantity.Grams(8655)})
		if err != nil {
			b.Fatal(err)
		}
		if _, err := batch.Weigh(dough.Scales{Flour: quantity.Grams(1)}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkHallKitchen(b *testing.B) {
	f := maslin()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := f.For(dough.Baked{Pieces: 6, Each: quantity.Grams(780), Loss: pc("12 %")}); err != nil {
			b.Fatal(err)
		}
	}
}
