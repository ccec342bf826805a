package house

import (
	"context"
	"encoding"
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/schedule/wallclock"
	"github.com/shopspring/decimal"
)

// A maker makes values of any type: sensible ones, such as a bake has, or hostile ones. Values that functions of the
// rooms answered are kept in a pool and handed out again, since a type with private state comes from nowhere else.
type maker struct {
	r       *rand.Rand
	hostile bool
	pool    map[reflect.Type][]reflect.Value
	counts  map[reflect.Type]int     // of the values of enumerations
	fitting map[reflect.Type]fitting // of interfaces
}

// fitting is what of the pool implements an interface, while the pool holds that many types.
type fitting struct {
	types  int
	values []reflect.Value
}

func newMaker(seed uint64) *maker {
	return &maker{r: rand.New(rand.NewPCG(seed, 20261128)), pool: map[reflect.Type][]reflect.Value{},
		counts: map[reflect.Type]int{}, fitting: map[reflect.Type]fitting{}}
}

func pick[T any](m *maker, from ...T) T { return from[m.r.IntN(len(from))] }

func (m *maker) chance(p float64) bool { return m.r.Float64() < p }

// simple makes the types that have no parts.
func (m *maker) simple(t reflect.Type) (any, bool) {
	bad := m.hostile && m.chance(0.5)
	float := func(good float64) float64 {
		if bad {
			return pick(m, math.NaN(), math.Inf(1), math.Inf(-1), -1, 0, 1e300, math.SmallestNonzeroFloat64)
		}
		return math.Round(good*1000) / 1000
	}
	whole := func(good int64) int64 {
		if bad {
			return pick[int64](m, math.MinInt64, math.MaxInt64, -1, 0, 1)
		}
		return good
	}
	switch t {
	case reflect.TypeFor[quantity.Mass]():
		return quantity.Grams(float(pick(m, 0.4, 20, 350, 500, 900, 1740) + m.r.Float64())), true
	case reflect.TypeFor[quantity.Percent]():
		return quantity.NewPercent(float(pick(m, 0.2, 2, 12, 20, 68, 75, 80, 100))), true
	case reflect.TypeFor[quantity.Temperature]():
		if m.chance(0.1) {
			return quantity.Temperature{}, true
		}
		if m.chance(0.5) {
			return quantity.Fahrenheit(float(pick(m, 39.0, 68, 76, 78, 203, 450))), true
		}
		return quantity.Celsius(float(pick(m, 4.0, 18, 21.3, 24, 26, 94, 230))), true
	case reflect.TypeFor[quantity.TemperatureDelta]():
		return quantity.DeltaFahrenheit(float(pick(m, 0, 3, 18, 24.0))), true
	case reflect.TypeFor[quantity.Volume]():
		return quantity.Liters(float(pick(m, 0.24, 2, 7.0))), true
	case reflect.TypeFor[quantity.Length]():
		return quantity.Meters(float(pick(m, 0.07, 0.11, 0.24, 1150.0))), true
	case reflect.TypeFor[quantity.Elapsed]():
		return quantity.Elapsed(whole(m.duration())), true
	case reflect.TypeFor[time.Duration]():
		return time.Duration(whole(m.duration())), true
	case reflect.TypeFor[wallclock.Date]():
		if bad {
			return wallclock.Date{Year: int(whole(2026)), Month: time.Month(whole(11)), Day: int(whole(28))}, true
		}
		return wallclock.Date{Year: 2026, Month: time.Month(1 + m.r.IntN(12)), Day: 1 + m.r.IntN(28)}, true
	case reflect.TypeFor[time.Time]():
		if bad && m.chance(0.5) {
			return pick(m, time.Time{}, time.Unix(1<<50, 0), time.Unix(-1<<50, 0)), true
		}
		return time.Date(2026, 11, 28, 6, 0, 0, 0, time.UTC).Add(time.Duration(m.r.IntN(48)) * 45 * time.Minute), true
	case reflect.TypeFor[*time.Location]():
		if bad && m.chance(0.5) {
			return (*time.Location)(nil), true
		}
		return time.UTC, true
	case reflect.TypeFor[decimal.Decimal]():
		if bad {
			return pick(m, decimal.New(1, 1<<30), decimal.New(-1, -1<<30), decimal.Decimal{}), true
		}
		return decimal.New(m.r.Int64N(100_000), -2), true
	case reflect.TypeFor[working.Message]():
		return working.Tell("house.said", "water at %s", quantity.Fahrenheit(75)), true
	case reflect.TypeFor[context.Context]():
		if bad {
			ended, cancel := context.WithCancel(context.Background())
			cancel()
			return ended, true
		}
		return context.Background(), true
	}
	return nil, false
}

func (m *maker) duration() int64 {
	return int64(pick(m, 20*time.Second, 8*time.Minute, 45*time.Minute, 4*time.Hour+30*time.Minute, 14*time.Hour))
}

// value makes a value of the type, at most depth structs deep.
func (m *maker) value(t reflect.Type, depth int) reflect.Value {
	v := reflect.New(t).Elem()
	if made, ok := m.simple(t); ok {
		if made := reflect.ValueOf(made); made.IsValid() {
			v.Set(made)
		}
		return v
	}
	if kept := m.pool[t]; len(kept) > 0 && m.chance(0.6) {
		return kept[m.r.IntN(len(kept))]
	}
	bad := m.hostile && m.chance(0.3)
	switch t.Kind() {
	case reflect.Bool:
		v.SetBool(m.chance(0.5))
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		if known := m.count(t); known > 0 && !bad {
			v.SetInt(m.r.Int64N(int64(known)))
		} else if bad {
			v.SetInt(pick[int64](m, math.MinInt64, math.MaxInt64, -1, 0, 1) >> (64 - t.Bits()))
		} else {
			v.SetInt(pick(m, 1, 2, 3, 6, int64(12)))
		}
	case reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		if known := m.count(t); known > 0 && !bad {
			v.SetUint(m.r.Uint64N(uint64(known)))
		} else if bad {
			v.SetUint(math.MaxUint64 >> (64 - t.Bits()))
		} else {
			v.SetUint(m.r.Uint64N(4))
		}
	case reflect.Float32, reflect.Float64:
		v.SetFloat(pick(m, 0.5, 1, 2.5, 20, 60))
		if bad {
			v.SetFloat(pick(m, math.NaN(), math.Inf(1), math.Inf(-1), -1, 0, 1e300))
		}
	case reflect.String:
		v.SetString(pick(m, "rye", "wheat", "mixed seeds", "flour", "water", "hall"))
		if bad {
			v.SetString(pick(m, "", "\x00", "\xff\xfe", "\x1b[2J", long, "−5 g", "5 °C", "4h30m", "%d",
				"../x", "24.11.2026"))
		}
	case reflect.Pointer:
		if depth > 0 && !bad {
			p := reflect.New(t.Elem())
			p.Elem().Set(m.value(t.Elem(), depth-1))
			v.Set(p)
		}
	case reflect.Slice:
		n := m.r.IntN(3) + 1
		if depth <= 0 || bad {
			n = 0
		}
		for range n {
			v.Set(reflect.Append(v, m.value(t.Elem(), depth-1)))
		}
	case reflect.Array:
		for i := range v.Len() {
			v.Index(i).Set(m.value(t.Elem(), depth-1))
		}
	case reflect.Map:
		if depth > 0 && !bad {
			v.Set(reflect.MakeMap(t))
			v.SetMapIndex(m.value(t.Key(), depth-1), m.value(t.Elem(), depth-1))
		}
	case reflect.Struct:
		for i := range t.NumField() {
			if f := t.Field(i); f.IsExported() && depth > 0 && !m.chance(0.1) {
				v.Field(i).Set(m.value(f.Type, depth-1))
			}
		}
	case reflect.Interface:
		if fits := m.fits(t); len(fits) > 0 && !bad {
			v.Set(fits[m.r.IntN(len(fits))])
		}
	}
	return v
}

var long = strings.Repeat("x", 100_000)

// fits is what of the pool implements the interface. The pool is a map: it is put in order by name, so that a run can
// be repeated.
func (m *maker) fits(t reflect.Type) []reflect.Value {
	if kept := m.fitting[t]; kept.types == len(m.pool) {
		return kept.values
	}
	var fits []reflect.Value
	for have, kept := range m.pool {
		if have.Implements(t) && have.Kind() != reflect.Interface {
			fits = append(fits, kept[0])
		}
	}
	slices.SortFunc(fits, func(a, b reflect.Value) int { return strings.Compare(a.Type().String(), b.Type().String()) })
	m.fitting[t] = fitting{len(m.pool), fits}
	return fits
}

// count is enumCount, counted once.
func (m *maker) count(t reflect.Type) int {
	n, ok := m.counts[t]
	if !ok {
		n = enumCount(t)
		m.counts[t] = n
	}
	return n
}

// enumCount counts the values of an enumeration from zero; 0 for a plain number.
func enumCount(t reflect.Type) int {
	if t.PkgPath() == "" || !t.Implements(reflect.TypeFor[encoding.TextMarshaler]()) &&
		!t.Implements(reflect.TypeFor[fmt.Stringer]()) {
		return 0
	}
	n := 0
	for ; n < 200; n++ {
		v := reflect.New(t).Elem()
		if v.CanInt() {
			if v.OverflowInt(int64(n)) {
				break
			}
			v.SetInt(int64(n))
		} else {
			if v.OverflowUint(uint64(n)) {
				break
			}
			v.SetUint(uint64(n))
		}
		text, ok := v.Interface().(encoding.TextMarshaler)
		if !ok {
			return 0
		}
		if _, err := text.MarshalText(); err != nil {
			break
		}
	}
	if n == 200 {
		return 0
	}
	return n
}

// keep puts a value that a room answered into the pool.
func (m *maker) keep(v reflect.Value) {
	const most = 12
	t := v.Type()
	if t.PkgPath() == "" && t.Kind() != reflect.Slice && t.Kind() != reflect.Pointer || t.Kind() == reflect.Interface {
		return
	}
	if kept := m.pool[t]; len(kept) < most {
		m.pool[t] = append(kept, v)
	} else {
		kept[m.r.IntN(most)] = v
	}
}
