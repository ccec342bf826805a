package cost

import (
	"math/big"

	"example.org/maslin/dough/quantity"

	"github.com/shopspring/decimal"
)

// unitRat is a unit of mass in micrograms, exactly. Source: avoirdupois pound of 453.59237 g.
func unitRat(u quantity.MassUnit) *big.Rat {
	switch u {
	case quantity.Kilogram:
		return big.NewRat(1_000_000_000, 1)
	case quantity.Milligram:
		return big.NewRat(1000, 1)
	case quantity.Ounce:
		return big.NewRat(453_592_370, 16)
	case quantity.Pound:
		return big.NewRat(453_592_370, 1)
	}
	return big.NewRat(1_000_000, 1)
}

func rat(d decimal.Decimal) *big.Rat {
	r := new(big.Rat).SetInt(d.Coefficient())
	e := d.Exponent()
	ten := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(max(e, -e))), nil)
	if e < 0 {
		return r.Quo(r, new(big.Rat).SetInt(ten))
	}
	return r.Mul(r, new(big.Rat).SetInt(ten))
}

func massRat(m quantity.Mass) *big.Rat {
	n, _ := m.Micrograms()
	return big.NewRat(n, 1)
}

// percentRat is the share of one.
func percentRat(p quantity.Percent) *big.Rat {
	n, _ := p.Millionths()
	return big.NewRat(n, one)
}

// roundMoney rounds an amount of zero or more to the places.
func roundMoney(r *big.Rat, places int32, how MoneyRounding) decimal.Decimal {
	n := new(big.Int).Mul(r.Num(), new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(places)), nil))
	q, rest := new(big.Int).QuoRem(n, r.Denom(), new(big.Int))
	up := false
	switch c := new(big.Int).Lsh(rest, 1).Cmp(r.Denom()); how {
	case MoneyUp:
		up = rest.Sign() > 0
	case MoneyHalfUp:
		up = c >= 0
	case MoneyHalfEven, MoneyExact:
		up = c > 0 || c == 0 && q.Bit(0) == 1
	}
	if up {
		q.Add(q, big.NewInt(1))
	}
	return decimal.NewFromBigInt(q, -places)
}
