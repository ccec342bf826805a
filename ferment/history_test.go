package ferment_test

import (
	"math"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"pgregory.net/rapid"
)

// A dough drifting to a room with day and night follows the differential equation, integrated here in steps of a
// minute.
func TestRelaxingFollowsItsEquation(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := ferment.Relaxing{
			Start: quantity.Celsius(rapid.Float64Range(5, 35).Draw(t, "start")),
			Room: ferment.Room{Night: quantity.Celsius(rapid.Float64Range(10, 25).Draw(t, "night")),
				Day:       quantity.Celsius(rapid.Float64Range(10, 30).Draw(t, "day")),
				WarmestAt: quantity.Elapsed(time.Duration(rapid.IntRange(0, 24).Draw(t, "warmest")) * time.Hour),
				Starts:    quantity.Elapsed(time.Duration(rapid.IntRange(0, 24).Draw(t, "clock")) * time.Hour)},
			TimeConstant: quantity.Elapsed(time.Duration(rapid.IntRange(20, 600).Draw(t, "minutes")) * time.Minute),
		}
		h, err := r.History()
		if err != nil {
			t.Fatal(err)
		}
		warmest := r.Room.WarmestAt.Duration().Hours()
		if r.Room.WarmestAt == 0 {
			warmest = 15
		}
		room := func(x float64) float64 {
			n, d := r.Room.Night.Celsius(), r.Room.Day.Celsius()
			return (n+d)/2 + (d-n)/2*math.Cos(2*math.Pi*(r.Room.Starts.Duration().Hours()+x-warmest)/24)
		}
		tau := r.TimeConstant.Duration().Hours()
		y := r.Start.Celsius()
		const dt = 1.0 / 60
		for i := range 48 * 60 {
			x := float64(i) * dt
			k1 := (room(x) - y) / tau
			k2 := (room(x+dt/2) - y - k1*dt/2) / tau
			y += dt * k2
			at := time.Duration(i+1) * time.Minute
			if i%97 == 0 && !(math.Abs(h.At(at).Celsius()-y) <= 0.015) {
				t.Fatalf("after %v: %v, want %.4f", at, h.At(at), y)
			}
		}
	})
}

// In a day and night the body follows the same Duhamel solution, and on the way lies between what surrounds it and
// its start.
func TestCoolingIntoADayAndANight(t *testing.T) {
	c := ferment.Piece{Mass: quantity.Kilograms(2), Form: ferment.Tub, Start: quantity.Celsius(26),
		Into: ferment.Room{
			Night:  quantity.Celsius(17),
			Day:    quantity.Celsius(23),
			Starts: quantity.Elapsed(18 * time.Hour),
		}}
	mean, err := c.History()
	if err != nil {
		t.Fatal(err)
	}
	core, err := c.Core()
	if err != nil {
		t.Fatal(err)
	}
	for at := time.Duration(0); at < 72*time.Hour; at += 30 * time.Minute {
		m, k := mean.At(at).Celsius(), core.At(at).Celsius()
		if m < 16.9 || m > 26.01 || k < 16.9 || k > 26.01 || at < 4*time.Hour && k < m-0.02 {
			t.Errorf("after %v: mean %.2f, core %.2f", at, m, k)
		}
	}
	if core.At(0) != quantity.Celsius(26) || mean.At(0) != quantity.Celsius(26) {
		t.Errorf("starts at %v, %v", core.At(0), mean.At(0))
	}
}

func TestFormsPlacesAndBiot(t *testing.T) {
	last := 100.0
	for _, p := range []ferment.Exposure{ferment.Covered, ferment.Refrigerator, ferment.Open, ferment.Fan} {
		h, err := ferment.Piece{Mass: quantity.Kilograms(1), Start: quantity.Celsius(25),
			Into: ferment.Room{Night: quantity.Celsius(4)}, Exposure: p}.History()
		if err != nil {
			t.Fatal(err)
		}
		if c := h.At(2 * time.Hour).Celsius(); c >= last {
			t.Errorf("%v does not cool faster: %v", p, c)
		} else {
			last = c
		}
		if !strings.Contains(h.String(), p.String()) {
			t.Error(h)
		}
	}
	for f := ferment.Round; f <= ferment.Tub; f++ {
		c := ferment.Piece{Mass: quantity.Grams(800), Form: f, Start: quantity.Celsius(25),
			Into: ferment.Room{Night: quantity.Celsius(4)}, Exposure: ferment.Refrigerator, Metallic: true}
		h, err := c.History()
		if err != nil {
			t.Fatal(err)
		}
		if e := h.At(48 * time.Hour).Celsius(); !(math.Abs(e-4) <= 0.1) {
			t.Errorf("%v ends at %v", f, e)
		}
	}
}

func TestJumpsAreKept(t *testing.T) {
	h, err := ferment.Join(
		ferment.Stretch{History: ferment.Constant(quantity.Celsius(26)), For: quantity.Elapsed(3 * time.Hour)},
		ferment.Stretch{History: ferment.Constant(quantity.Celsius(4)), For: quantity.Elapsed(12 * time.Hour)},
		ferment.Stretch{History: ferment.Constant(quantity.Celsius(22))})
	if err != nil {
		t.Fatal(err)
	}
	for at, want := range map[time.Duration]float64{0: 26, 3*time.Hour - time.Second: 26, 3 * time.Hour: 4,
		15*time.Hour - time.Second: 4, 15 * time.Hour: 22, 99 * time.Hour: 22} {
		if got := h.At(at); got != quantity.Celsius(want) {
			t.Errorf("after %v: %v, want %v °C", at, got, want)
		}
	}
	mean, err := h.Mean(0, 20*time.Hour)
	if err != nil || !(math.Abs(mean.Celsius()-(3*26+12*4+5*22)/20.0) <= 1e-3) {
		t.Errorf("%v, %v", mean, err)
	}
	if m, err := h.Mean(3*time.Hour, 3*time.Hour); err != nil || m != quantity.Celsius(4) {
		t.Errorf("%v, %v", m, err)
	}
	if h.Known() != 15*time.Hour || !strings.Contains(h.String(), "then") {
		t.Errorf("%v, %v", h.Known(), h)
	}
}
