package bakeday

import (
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule"
)

// Each lever stands at its ends and at points between them, in steps that a kitchen can keep: half a percent, a
// percent, half a degree.
func TestPointsOfTheLevers(t *testing.T) {
	b := fiveLevers()
	all := b.settings()
	if len(all) != 5*4*4*4*2 {
		t.Errorf("%d settings", len(all))
	}
	for name, c := range map[string]struct {
		of   func(Bake) float64
		want []float64
	}{
		"prefermented": {func(b Bake) float64 { return b.Levain.Prefermented.Points() }, []float64{3, 7.5, 11.5, 16, 20}},
		"inoculation":  {func(b Bake) float64 { return b.Levain.Inoculation.Points() }, []float64{10, 27, 43, 60}},
		"temperature":  {func(b Bake) float64 { return b.Mixing.Temperature.Celsius() }, []float64{22, 23.5, 25.5, 27}},
		"box":          {func(b Bake) float64 { return b.Bulk.Box.Celsius() }, []float64{20, 22.5, 25.5, 28}},
		"retard": {func(b Bake) float64 { return b.Retard.AtLeast.Duration().Hours() * 100 },
			[]float64{600, 800}},
		"retard at most": {func(b Bake) float64 { return b.Retard.AtMost.Duration().Hours() }, []float64{14, 36}},
	} {
		var got []float64
		for _, s := range all {
			if v := c.of(s); !slices.Contains(got, v) {
				got = append(got, v)
			}
		}
		slices.Sort(got)
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
	if b.Levain.Prefermented != quantity.NewPercent(3) || b.Retard.AtMost != inMinutes(14*60) {
		t.Error("the bake itself was changed")
	}
	b.Levain, b.Retard, b.Levers = nil, nil, fiveLevers().Levers
	if n := len(b.settings()); n != 4*4 {
		t.Errorf("without levain and retard %d settings", n)
	}
	if n := len(hall().settings()); n != 1 {
		t.Errorf("without levers %d settings", n)
	}
}

// A lever that is moved over its whole length counts 20 points, over half of it 10; beyond it no more. A box where
// there was none counts whole, a retard half.
func TestHowFarASettingIs(t *testing.T) {
	percent := quantity.NewPercent
	b := fiveLevers()
	for name, c := range map[string]struct {
		change func(*Bake)
		points float64
		says   string
	}{
		"nothing": {func(*Bake) {}, 0, ""},
		"half the levain": {func(b *Bake) { b.Levain.Prefermented = percent(11.5) }, 10,
			"prefermented flour 11.5 % instead of 3 %"},
		"all the levain":    {func(b *Bake) { b.Levain.Prefermented = percent(20) }, 20, "20 % instead of 3 %"},
		"beyond the levain": {func(b *Bake) { b.Levain.Prefermented = percent(54) }, 20, "54 % instead of 3 %"},
		"less culture": {func(b *Bake) { b.Levain.Inoculation = percent(35) }, 10,
			"culture in the levain's feed 35 % instead of 60 %"},
		"a warmer dough": {func(b *Bake) { b.Mixing.Temperature = celsius(23) }, 4, "dough at 23 °C instead of 22 °C"},
		"a warmer box":   {func(b *Bake) { b.Bulk.Box = celsius(24) }, 5, "bulk at 24 °C instead of 22 °C"},
		"a longer retard": {func(b *Bake) { b.Retard.AtMost = inMinutes(20 * 60) }, 10,
			"retard from 8h to 20h instead of 8h to 14h"},
		"two of them":      {func(b *Bake) { b.Mixing.Temperature, b.Bulk.Box = celsius(27), celsius(24) }, 25, "bulk at"},
		"without a levain": {func(b *Bake) { b.Levain = nil }, 0, ""},
		"without retard":   {func(b *Bake) { b.Retard = nil }, 0, ""},
	} {
		changed := fiveLevers()
		c.change(&changed)
		var says []string
		for _, m := range b.moved(changed) {
			says = append(says, strings.ReplaceAll(m.String(), "\u202f", " "))
		}
		if got := b.distance(changed); !(math.Abs(got-c.points) <= 1e-9) ||
			!strings.Contains(strings.Join(says, "; "), c.says) ||
			(len(says) == 0) != (c.points == 0) {
			t.Errorf("%s: %v points, %q", name, got, says)
		}
	}
	b.Bulk.Box = quantity.Temperature{}
	changed := fiveLevers()
	if got := b.distance(changed); got != 20 {
		t.Errorf("a box instead of the room: %v points", got)
	}
	b.Levers = Levers{}
	b.Bulk.Box = changed.Bulk.Box
	changed.Mixing.Temperature = celsius(25)
	if got := b.distance(changed); got != 0 {
		t.Errorf("no lever: %v points", got)
	}
	b.Levers.Temperature = []quantity.Temperature{celsius(24), celsius(24)}
	if got := b.distance(changed); got != 20 {
		t.Errorf("a lever without length: %v points", got)
	}
}

// A bake that names no levers has half to twice its levain, at most half the flour, and a dough two degrees cooler or
// one warmer.
func TestUsualLevers(t *testing.T) {
	share := func(p float64) Bake {
		b := hall()
		b.Levain.Prefermented = quantity.NewPercent(p)
		return b
	}
	for name, c := range map[string]struct {
		bake      Bake
		low, high float64
	}{"12 %": {share(12), 6, 24}, "25 %": {share(25), 12.5, 50}, "40 %": {share(40), 20, 50},
		"by weight": {loafByWeight(), 50.0 / 11, 200.0 / 11}} {
		l := c.bake.usualLevers()
		if len(l.Prefermented) != 2 || !(math.Abs(l.Prefermented[0].Points()-c.low) <= 1e-5) ||
			!(math.Abs(l.Prefermented[1].Points()-c.high) <= 1e-5) || len(l.Temperature) != 2 ||
			l.Temperature[0] != celsius(24) || l.Temperature[1] != celsius(27) {
			t.Errorf("%s: %+v", name, l)
		}
	}
	b := rolls()
	b.Levain = nil
	if l := b.usualLevers(); len(l.Prefermented) != 0 || len(l.Temperature) != 2 || l.IsZero() {
		t.Errorf("without a levain: %+v", l)
	}
}

// What speaks against a plan: the minutes of work before seven or after nine, a dough that may not be early, no plan.
func TestWhatSpeaksAgainstAPlan(t *testing.T) {
	step := func(kind schedule.StepKind, hour, minute, takes int, spare bool) schedule.Timed {
		var s schedule.Timed
		s.Kind, s.Spare = kind, spare
		s.Start = time.Date(2026, 11, 28, hour, minute, 0, 0, time.UTC)
		s.End = s.Start.Add(time.Duration(takes) * time.Minute)
		return s
	}
	d := Day{Zone: time.UTC}
	d.Rising.Feasible, d.Timetable.Verdict, d.Robust.Survives = true, schedule.Optimal, true
	d.Timetable.Steps = []schedule.Timed{
		step(schedule.Shape, 6, 50, 25, false), // ten minutes before seven
		step(schedule.Mix, 20, 50, 25, false),  // fifteen after nine
		step(schedule.Mix, 7, 0, 60, false), step(schedule.Shape, 20, 0, 60, false),
		step(schedule.Bulk, 2, 0, 120, false), step(schedule.Feed, 23, 0, 10, true),
	}
	b := hall()
	for name, c := range map[string]struct {
		change func(*Day)
		points float64
		want   []Drawback
		says   string
	}{
		"odd hours": {func(*Day) {}, 25, []Drawback{OddHours}, "25m of hands-on work before 7:00 or after 21:00"},
		"by day":    {func(d *Day) { d.Timetable.Steps = d.Timetable.Steps[2:] }, 0, nil, ""},
		"fragile": {func(d *Day) { d.Robust.Survives, d.Robust.Share = false, 0.6 }, 105, []Drawback{Fragile, OddHours},
			"only 60 % of the range"},
		"brittle": {func(d *Day) { d.Robust.Survives, d.Robust.Share = false, 0 }, 225, []Drawback{Fragile, OddHours},
			"only if the dough keeps to its likely time"},
		"nearly sure": {func(d *Day) { d.Robust.Survives, d.Robust.Share = false, 0.95 }, 35, []Drawback{OddHours, Fragile},
			"only 95 % of the range"},
		"careful": {func(d *Day) { d.Robust.Survives, d.Careful = false, true }, 25, []Drawback{OddHours}, "25m"},
		"impossible": {func(d *Day) { d.Timetable.Verdict = schedule.Infeasible }, 1000, []Drawback{NoTimetable},
			"no timetable"},
	} {
		day := d
		c.change(&day)
		choice := b.choice(day, b)
		var got []Drawback
		var says []string
		for _, a := range choice.Against {
			got = append(got, a.Drawback)
			says = append(says, strings.ReplaceAll(a.String(), "\u202f", " "))
		}
		if !(math.Abs(choice.Points-c.points) <= 1e-9) || !slices.Equal(got, c.want) ||
			!strings.Contains(strings.Join(says, "; "), c.says) {
			t.Errorf("%s: %v points, %v, %q", name, choice.Points, got, says)
		}
	}
	warmer := b
	warmer.Mixing.Temperature = celsius(27)
	b.Levers.Temperature = []quantity.Temperature{celsius(25), celsius(27)}
	if c := b.choice(d, warmer); c.Points != 25+10 || len(c.Changes) != 1 || c.Changes[0].Lever != TemperatureLever {
		t.Errorf("a degree warmer: %+v", c)
	}
}

// What is done with a dough is called as its bread asks for it.
func TestStepsOfEveryStyle(t *testing.T) {
	for _, c := range []struct {
		style                    bake.Style
		shape                    bake.Shape
		pieces                   int
		stand, shaped, hot, oven string
	}{
		{bake.LeanHearth, bake.Round, 6, "bulk fermentation", "divide and shape", "heat the oven", "bake"},
		{bake.LeanHearth, bake.Round, 1, "bulk fermentation", "shape the loaf", "heat the oven", "bake"},
		{bake.Pizza, bake.UsualShape, 4, "bulk fermentation", "divide into balls", "heat the oven", "stretch and bake"},
		{bake.FlatBread, bake.UsualShape, 4, "bulk fermentation", "divide into balls", "heat the oven", "roll out and bake"},
		{bake.Focaccia, bake.UsualShape, 1, "bulk fermentation", "lay it in the oiled tray", "heat the oven",
			"dimple and bake"},
		{bake.Bagel, bake.UsualShape, 8, "bulk fermentation", "divide and shape", "heat the oven, and a wide pot of water",
			"boil 1m to 2m in a wide pot, and bake"},
		{bake.GlutenFree, bake.Tin, 1, "the batter swells", "fill the tins, and smooth them with a wet spoon",
			"heat the oven", "bake"},
		{bake.GlutenFree, bake.Round, 1, "the batter swells", "shape with wet hands", "heat the oven", "bake"},
	} {
		b := Bake{Loaves: Loaves{Style: c.style, Shape: c.shape, Pieces: c.pieces}}
		got := []string{b.standName().String(), b.shapeName().String(), b.heatName().String(), b.bakeName().String()}
		if want := []string{c.stand, c.shaped, c.hot, c.oven}; !slices.Equal(got, want) {
			t.Errorf("%v: %q, want %q", c.style, got, want)
		}
		if proof := b.proofName().String(); (proof == "proof") != (c.style == bake.GlutenFree) {
			t.Errorf("%v: %s", c.style, proof)
		}
	}
}

// What is filled in or laid on top is no part of the dough that is weighed for a piece: of 173 parts of a dough with 10
// of cheese on top a piece of 163 g becomes one of 173.
func TestAPieceWithWhatIsLaidOnIt(t *testing.T) {
	percent := quantity.NewPercent
	b := Bake{
		Flours: []Ingredient{{Name: "flour", Percent: percent(100)}}, Salt: percent(2),
		Liquids: []Ingredient{{Name: "water", Percent: percent(61)}},
	}
	if got := b.withApart(quantity.Grams(163)); got != quantity.Grams(163) {
		t.Errorf("nothing on top: %v", got)
	}
	for _, at := range []schedule.StepKind{schedule.Shape, schedule.Bake, schedule.Mix, schedule.Fold} {
		b.Inclusions = []Ingredient{{Name: "cheese", Percent: percent(10), At: at, Kind: dough.KindDairy}}
		want := quantity.Grams(163)
		apart := at == schedule.Shape || at == schedule.Bake
		if apart {
			want = quantity.Grams(173)
		}
		if got := b.withApart(quantity.Grams(163)); got != want || b.enriched() == apart {
			t.Errorf("cheese at %v: %v, want %v; enriched: %v", at, got, want, b.enriched())
		}
	}
}

// A day that keeps all of the room for its doughs is a careful one, of one bread or of two.
func TestACarefulDayKeepsAllItsRoom(t *testing.T) {
	o := sunday()
	for _, c := range []struct {
		bakes   []Bake
		careful bool
	}{{o.Bakes[:1], true}, {[]Bake{o.Bakes[0], o.Bakes[2]}, true}, {o.Bakes[:2], false}} {
		some := o
		some.Bakes = c.bakes
		k := planAll(t, some)
		if !k.Possible() || k.Careful != c.careful || (k.Room == quantity.NewPercent(100)) != c.careful {
			t.Errorf("%d breads: careful %v, room %v", len(c.bakes), k.Careful, k.Room)
		}
	}
}

// How a dough rises that was mixed at another time is asked of a day that was planned.
func TestADoughOfNoDay(t *testing.T) {
	_, err := (Day{}).MixedAt(time.Date(2026, 11, 28, 9, 0, 0, 0, time.UTC), celsius(24))
	if all := quantity.InputErrors(err); len(all) != 1 || !strings.Contains(err.Error(), "a day that was planned") {
		t.Error(err)
	}
}
