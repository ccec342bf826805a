package bench_test

import (
	"context"
	"encoding/json"
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/trial"
	"example.org/maslin/schedule/bakeday"
	"example.org/maslin/schedule/bench"
)

// Whatever is refused, of an observation, a table, a probe, a log or a step, is told in whole sentences with its place.
func TestRefusalsInWords(t *testing.T) {
	when := at(4, 10, 0)
	var out strings.Builder
	tell := func(what string, err error) {
		fmt.Fprintf(&out, "== %s\n%v\n", what, err)
	}
	wild := bench.Observation{Version: 2, Kind: 99, Bread: strings.Repeat("b", 4001), By: "a\xff", Note: "a\x00",
		Step: "a\u202eb"}
	tell("an observation of no kind", wild.Check())
	tell("of another kind, and of none of its parts", bench.Observation{Version: 1, At: when, Kind: bench.SawMixed,
		Rise: &bench.SeenRise{Error: quantity.NewPercent(0.05)}, Ready: &bench.ReadyDough{},
		Core:    &bench.SeenCore{Core: quantity.Celsius(-6), After: quantity.Elapsed(-time.Minute)},
		Weights: &bench.LoafWeights{Style: bake.Style(-1)},
		Note:    "n", Plan: &bench.FollowedPlan{Style: bake.Style(99), Altitude: quantity.Meters(-501)}, Step: "s"}.Check())
	year := func(y int) time.Time { return time.Date(y, 1, 2, 3, 4, 5, 0, time.UTC) }
	tell("a plan of another age", bench.Observation{Version: 1, At: year(1899), Kind: bench.SawPlan,
		Plan: &bench.FollowedPlan{Made: year(1898), Wanted: year(9999), Altitude: quantity.Meters(9001)}}.Check())
	for _, kind := range quantity.Values[bench.Sight]() {
		tell(kind.String()+", and nothing of it", bench.Observation{Version: 1, At: when, Kind: kind}.Check())
	}
	tell("a dough beyond all limits", saw(when, bench.SawMixed, func(o *bench.Observation) {
		c, kg, p := quantity.Celsius(-41), quantity.Kilograms(1001), quantity.NewPercent(301)
		long := quantity.Elapsed(4*time.Hour + time.Minute)
		o.Mix = &bench.DoughMixed{Dough: c, Flour: c, Water: c, Levain: c, Bowl: c, Room: c, FlourWeight: kg, WaterWeight: kg,
			LevainWeight: kg, Weight: kg, Slow: long, Fast: long, Inoculation: p, Yeast: p, Salt: p, Sugar: p, Hydration: p,
			WholeGrain: p, Rise: p, Altitude: quantity.Meters(9001), Style: bake.Style(-1)}
	}).Check())
	tell("more bread than dough", weighed(when, 900, 901).Check())

	parse := func(text string) (time.Time, error) { return time.Parse("2006-01-02 15:04", text) }
	table := func(what, text string) {
		got, err := bench.ReadCSV(text, parse)
		if len(got) > 0 {
			t.Errorf("%s: %d observations", what, len(got))
		}
		tell(what, err)
	}
	table("a table of 65 MB", strings.Repeat("x", 65<<20))
	const heading = "time,kind,note\n"
	table("a table a byte too long", heading+strings.Repeat("#", 64<<20-len(heading)+1))
	table("no table", "# nothing\n\n")
	table("a heading that is not known, before rows that are wrong", "time,kind,colour\nsoon,mix,1\n")
	table("a heading with a column twice, and none of the needed", "rise,Rise\n")
	table("no more than twenty problems", "time,kind\n"+strings.Repeat("2026-11-27 16:52,plan\n", 25))
	table("a quotation that does not end", "time,kind\n\"2026")
	table("rows that are wrong", "time,kind,dough,rise,yeast,yeast kind\nsoon,mix,25 °C,,,\n"+
		"2026-11-27 16:52,mix,25,,1 %,wild\n"+
		"2026-11-27 16:52,Rise,24 °C,900 %\n2026-11-27 16:52,ready,,,,,7\n")

	for _, texts := range [][]string{{"94C", "95C"}, {"12min=70C", "95C"}, {"14:05=82C", "12min=95C"}, {"soon=82C"},
		{"94"}, {"14=82C"}} {
		_, err := bench.ReadProbe(texts)
		tell(fmt.Sprintf("a probe, %q", texts), err)
	}
	_, err := bench.ReadRises([]string{"30%", "x at soon", "30 at 2h"}, when)
	tell("rises", err)

	blank := saw(when, bench.SawNote, func(o *bench.Observation) { o.Note = " " })
	_, err = bench.Observations{{}, risen(when, 301), blank}.Lines()
	tell("lines", err)
	_, err = bench.LogReading{}.From(strings.NewReader("\n\n{\"v\":1.5}\n"))
	tell("a log of a later version", err)
	tell("a later version, of no line", bench.LaterVersion{Version: 2})
	got, err := bench.LogReading{}.From(strings.NewReader("hello\n{}\n{\"v\":0}\n{\"v\":1}\n" +
		`{"v":1,"at":"2026-11-28T10:40:00Z","kind":"rise","rise":{"rise":"30"}}` + "\n" +
		strings.Repeat("é", 20) + "\n[]\n{\"v\""))
	for _, l := range got.Unreadable {
		fmt.Fprintf(&out, "line %d, %s: %v\n", l.Line, l.Text, l.Why)
	}
	tell("unreadable lines", err)
	_, err = bench.Class{{Person: "Ueli"}, {}, {Person: "Ueli"}}.Pool()
	tell("a class", err)
	for _, halfLife := range []time.Duration{24*time.Hour - time.Minute, 366*24*time.Hour + time.Minute} {
		_, err = bench.Observations{}.Learn(halfLife)
		tell("a half-life", err)
	}
	tell("a raising", new(bench.Raising).UnmarshalText([]byte("baking powder")))
	tell("a sight", new(bench.Sight).UnmarshalText([]byte("smell")))
	tell("an observation as data", json.Unmarshal([]byte(`{"v":1,"kind":"smell"}`), new(bench.Observation)))

	made := at(4, 6, 0)
	ctx := context.Background()
	_, err = bench.KitchenUnder{Order: two(t)}.At(ctx, bakeday.KitchenClock{Now: made})
	tell("no zone", err)
	b := hall(t)
	b.Kitchen.HalfLife = quantity.Elapsed(time.Hour)
	_, err = bench.Under{Bake: b}.At(ctx, clock(made))
	tell("a half-life in the kitchen", err)
	b = hall(t)
	b.Salt, b.Loaves.Pieces = quantity.NewPercent(90), -1
	_, err = bench.Under{Bake: b}.At(ctx, clock(made))
	tell("a bake that is wrong", err)
	k := together(t, made, following(made)...)
	for _, text := range []string{"", "shape", "moon/shape"} {
		_, err := k.StepNamed(text)
		tell(fmt.Sprintf("a step, %q", text), err)
	}
	_, err = together(t, at(5, 11, 0), following(made)...).StepNamed("")
	tell("one step of several", err)
	_, err = alone(t, hall(t), at(5, 11, 0), following(made)[:1]...).StepNamed("")
	tell("one step of several of one bread", err)
	trial.Kept(t, "refused.txt", out.String())
}

// What a dough lacks is told alone, and together; with a probe no room is asked for.
func TestWhatADoughLacks(t *testing.T) {
	for _, c := range []struct {
		want   string
		change func(*bench.DoughMixed)
	}{
		{"", func(*bench.DoughMixed) {}},
		{"inoculation or yeast", func(m *bench.DoughMixed) { m.Inoculation = quantity.Percent{} }},
		{"hydration", func(m *bench.DoughMixed) { m.Hydration = quantity.Percent{} }},
		{"room temperature or readings of a probe", func(m *bench.DoughMixed) { m.Room = quantity.Temperature{} }},
	} {
		m := *mixed(at(4, 10, 0), 26).Mix
		m.YeastKind = ferment.FreshYeast // which was not weighed
		c.change(&m)
		bulk, missing, err := m.Bulk(nil)
		var got []string
		for _, x := range missing {
			got = append(got, x.String())
		}
		if strings.Join(got, ", ") != c.want || err != nil || bulk.Yeast != (ferment.Yeast{}) {
			t.Errorf("%v, %v, want %q; yeast %v", got, err, c.want, bulk.Yeast)
		}
	}
	o := measured(at(4, 10, 0), mixing.Spiral)
	for want, change := range map[string]func(*bench.DoughMixed){
		"flour weight":             func(m *bench.DoughMixed) { m.FlourWeight = quantity.Mass{} },
		"flour temperature":        func(m *bench.DoughMixed) { m.Flour = quantity.Temperature{} },
		"water weight":             func(m *bench.DoughMixed) { m.WaterWeight = quantity.Mass{} },
		"water temperature":        func(m *bench.DoughMixed) { m.Water = quantity.Temperature{} },
		"levain temperature":       func(m *bench.DoughMixed) { m.LevainWeight = quantity.Grams(100) },
		"minutes of mixing":        func(m *bench.DoughMixed) { m.Slow, m.Fast = 0, 0 },
		"bowl or room temperature": func(m *bench.DoughMixed) { m.Room = quantity.Temperature{} },
	} {
		m := *o.Mix
		change(&m)
		if _, why := (bench.LoggedBake{Mixed: o.At, Mix: m}).Batch(); why.String() != "not logged: "+want {
			t.Errorf("%v, want %s", why, want)
		}
	}
}
