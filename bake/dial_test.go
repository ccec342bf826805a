package bake

import (
	"math"
	"strconv"
	"testing"

	"example.org/maslin/dough/quantity"
)

// Gas marks are 25 °F apart from 275 °F, which is mark 1; a half is 250 and a quarter 225 °F. The nearest is found to
// half a step around each, and beyond there is none.
func TestGasMarksByTheirSteps(t *testing.T) {
	marks := map[float64]GasMark{225: {1}, 250: {2}}
	for n := 1; n <= 10; n++ {
		if g := Mark(n); g.Number() != strconv.Itoa(n) || !g.IsValid() || g.IsZero() {
			t.Errorf("mark %d is %v", n, g)
		}
		marks[250+25*float64(n)] = Mark(n)
	}
	for f, mark := range marks {
		if got := mark.Temperature(); !(math.Abs(got.Fahrenheit()-f) <= 1e-6) {
			t.Errorf("%v is %v, want %v °F", mark, got, f)
		}
		if got := mark.Dial().Celsius(); !(math.Abs(got-5*math.Round((f-32)/1.8/5)) <= 1e-9) {
			t.Errorf("%v is %v on a dial", mark, got)
		}
		for _, off := range []float64{-12.4, 0, 12.4} {
			got, delta := NearestMark(quantity.Fahrenheit(f + off))
			if got != mark || !(math.Abs(delta.Fahrenheit()+off) <= 1e-4) {
				t.Errorf("%v °F: %v, %v off", f+off, got, delta)
			}
		}
		again, err := ParseGasMark(mark.Number())
		if err != nil || again != mark {
			t.Errorf("%q: %v, %v", mark.Number(), again, err)
		}
	}
	for _, n := range []int{-1, 0, 11} {
		if g := Mark(n); g.IsValid() || !g.IsZero() || g.Number() != "" || !g.Temperature().IsZero() || !g.Dial().IsZero() {
			t.Errorf("mark %d is %v", n, g)
		}
	}
	for _, f := range []float64{212, 513} {
		if got, delta := NearestMark(quantity.Fahrenheit(f)); !got.IsZero() || delta != (quantity.TemperatureDelta{}) {
			t.Errorf("%v °F: %v, %v", f, got, delta)
		}
	}
	for _, text := range []string{"0", "11", "-1", "1.5", "gas", "mark", "two"} {
		if g, err := ParseGasMark(text); err == nil || !g.IsZero() {
			t.Errorf("%q is %v", text, g)
		}
	}
}

// With a fan 20 °C less, by other advice 15 to 30; an oven that shows more than its dial is set lower by as much.
func TestDialsByHand(t *testing.T) {
	for _, c := range []struct {
		wanted, off               float64
		fan                       bool
		set, least, most, on5, gf float64
	}{
		{220, 0, false, 220, 220, 220, 220, 7}, {220, 0, true, 200, 190, 205, 200, 6},
		{220, 10, false, 210, 210, 210, 210, 6},
		{220, -10, true, 210, 200, 215, 210, 6}, {233, 0, false, 233, 233, 233, 235, 8},
		{50, 0, false, 50, 50, 50, 50, 0}, {500, 60, true, 420, 410, 425, 420, 0},
	} {
		d, err := OvenSetting{Wanted: quantity.Celsius(c.wanted), Fan: c.fan, Off: quantity.DeltaCelsius(c.off)}.Dial()
		if err != nil || d.Set != quantity.Celsius(c.set) || d.Advice.Low != quantity.Celsius(c.least) ||
			d.Advice.High != quantity.Celsius(c.most) || d.Dial != quantity.Celsius(c.on5) || d.Mark != Mark(int(c.gf)) {
			t.Errorf("%+v: %+v, %v", c, d, err)
		}
	}
	for _, c := range []struct {
		wanted, off float64
		want        string
	}{{49.9, 0, "Wanted"}, {500.1, 0, "Wanted"}, {220, 60.1, "Off"}, {220, -60.1, "Off"}, {0, 99, "Wanted Off"}} {
		_, err := OvenSetting{Wanted: quantity.Celsius(c.wanted), Off: quantity.DeltaCelsius(c.off)}.Dial()
		if paths(err) != c.want {
			t.Errorf("%+v: %v", c, err)
		}
	}
	for f, want := range map[float64]float64{350: 350, 355: 355, 392: 400, 390: 390, 387.4: 375, 387.6: 400} {
		if got := fahrenheitDial(quantity.Fahrenheit(f)).Fahrenheit(); !(math.Abs(got-want) <= 1e-6) {
			t.Errorf("%v °F is %v on a dial, want %v", f, got, want)
		}
	}
}
