package quantity_test

import (
	"bytes"
	"database/sql"
	"database/sql/driver"
	"encoding/gob"
	"errors"
	"fmt"
	"math"
	"testing"

	"example.org/maslin/dough/quantity"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

type stored interface {
	driver.Valuer
	MarshalBinary() ([]byte, error)
}

type column interface {
	sql.Scanner
	UnmarshalBinary([]byte) error
}

type everything struct {
	M quantity.Mass
	P quantity.Percent
	T quantity.Temperature
	D quantity.TemperatureDelta
	V quantity.Volume
	L quantity.Length
}

func (e *everything) parts() ([]stored, []column) {
	return []stored{e.M, e.P, e.T, e.D, e.V, e.L}, []column{&e.M, &e.P, &e.T, &e.D, &e.V, &e.L}
}

func TestStoredAndLoaded(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.Int64Range(-90_000_000, 90_000_000).Draw(t, "n")
		in := everything{quantity.Micrograms(n), quantity.Millionths(n), quantity.TemperatureQuanta(n),
			quantity.DeltaQuanta(n), quantity.Picoliters(n), quantity.Micrometers(n)}
		var byText, byBinary, byGob everything
		values, _ := in.parts()
		_, texts := byText.parts()
		_, binaries := byBinary.parts()
		for i, v := range values {
			text, err := v.Value()
			if err != nil || !driver.IsValue(text) {
				t.Fatal(text, err)
			}
			if err := texts[i].Scan(text); err != nil {
				t.Fatal(err)
			}
			raw, err := v.MarshalBinary()
			if err != nil || len(raw) != 9 {
				t.Fatal(raw, err)
			}
			if err := binaries[i].UnmarshalBinary(raw); err != nil {
				t.Fatal(err)
			}
		}
		var buffer bytes.Buffer
		if err := gob.NewEncoder(&buffer).Encode(in); err != nil {
			t.Fatal(err)
		}
		if err := gob.NewDecoder(&buffer).Decode(&byGob); err != nil {
			t.Fatal(err)
		}
		for _, got := range []everything{byText, byBinary, byGob} {
			if diff := cmp.Diff(in, got); diff != "" {
				t.Fatal(diff)
			}
		}
	})
}

func TestTheExactInteger(t *testing.T) {
	m, ok1 := quantity.Micrograms(5).Micrograms()
	p, ok2 := quantity.Millionths(-68_000_000).Millionths()
	c, ok3 := quantity.TemperatureQuanta(2_458_350).Quanta()
	d, ok4 := quantity.DeltaQuanta(-9000).Quanta()
	v, ok5 := quantity.Picoliters(1e9).Picoliters()
	l, ok6 := quantity.Micrometers(240_000).Micrometers()
	if !ok1 || !ok2 || !ok3 || !ok4 || !ok5 || !ok6 || m != 5 || p != -68_000_000 || c != 2_458_350 || d != -9000 ||
		v != 1e9 || l != 240_000 {
		t.Error(m, p, c, d, v, l)
	}
	if got := fmt.Sprint(quantity.Millionths(68_000_000), quantity.TemperatureQuanta(2_458_350),
		quantity.DeltaQuanta(-9000), quantity.Picoliters(1e9), quantity.Micrometers(240_000)); got != "68 % 0 °C −1 Δ°C 1 "+
		"mL 0.24 m" {
		t.Error(got)
	}
	for _, n := range []int64{math.MinInt64, math.MaxInt64, 1e18 + 1, -1e18 - 1} {
		for i, valid := range []bool{
			quantity.Micrograms(n).IsValid(), quantity.Millionths(n).IsValid(), quantity.TemperatureQuanta(n).IsValid(),
			quantity.DeltaQuanta(n).IsValid(), quantity.Picoliters(n).IsValid(), quantity.Micrometers(n).IsValid(),
		} {
			if valid {
				t.Errorf("%d made a valid quantity, kind %d", n, i)
			}
		}
	}
	if _, ok := quantity.TemperatureQuanta(0).Quanta(); ok {
		t.Error("0 K is no temperature")
	}
	if _, ok := quantity.Picoliters(math.MinInt64).Picoliters(); ok {
		t.Error("an invalid volume has a count")
	}
}

func TestColumnsThatAreRefused(t *testing.T) {
	in := everything{quantity.Grams(1), quantity.NewPercent(1), quantity.Celsius(1), quantity.DeltaCelsius(1),
		quantity.Liters(1), quantity.Meters(1)}
	before := in
	values, columns := in.parts()
	for i, c := range columns {
		for _, from := range []any{int64(5), 2.5, true, "5", "5 furlongs", []byte("7 g %"), struct{}{}} {
			if err := c.Scan(from); !errors.Is(err, quantity.ErrUnit) {
				t.Errorf("%T from %v: %v", c, from, err)
			}
		}
		own, _ := values[i].MarshalBinary()
		for j := range values {
			if other, _ := values[j].MarshalBinary(); j != i {
				if err := c.UnmarshalBinary(other); !errors.Is(err, quantity.ErrForm) {
					t.Errorf("%T read the bytes of a %T: %v", c, values[j], err)
				}
			}
		}
		beyond := append([]byte{own[0]}, 0x7f, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff)
		for _, data := range [][]byte{nil, own[:8], append(own[:9:9], 0), beyond} {
			if err := c.UnmarshalBinary(data); err == nil {
				t.Errorf("%T read % x", c, data)
			}
		}
		if _, isTemperature := c.(*quantity.Temperature); !isTemperature {
			if err := c.Scan(nil); !errors.Is(err, quantity.ErrRequired) {
				t.Errorf("%T from NULL: %v", c, err)
			}
		}
	}
	if in != before {
		t.Error("a refused column changed its value")
	}
	if err := in.T.Scan(nil); err != nil || !in.T.IsZero() {
		t.Error("NULL is a temperature that is not given", err)
	}
	if v, err := in.T.Value(); v != nil || err != nil {
		t.Error("a temperature that is not given is NULL", v, err)
	}
	bad := math.NaN()
	for _, v := range []stored{quantity.Grams(bad), quantity.NewPercent(bad), quantity.DeltaCelsius(bad),
		quantity.Liters(bad), quantity.Meters(bad)} {
		if got, err := v.Value(); err == nil {
			t.Errorf("%T stored as %v", v, got)
		}
		if got, err := v.MarshalBinary(); err == nil {
			t.Errorf("%T written as % x", v, got)
		}
	}
}
