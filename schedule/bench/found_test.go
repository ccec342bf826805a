package bench_test

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/internal/trial"
	"example.org/maslin/schedule/bakeday"
	"example.org/maslin/schedule/bench"
)

// A plan is followed until twelve hours after its bread was wanted; a dough is on its way for twelve hours, and in the
// cold as long as its bake allows, and its plan is that of twelve hours before its mixing.
func TestHowLongABakeIsUnderWay(t *testing.T) {
	_, plan := followed()
	b := hall(t)
	var err error
	if b.Wanted, err = bakeday.ParseWish("Saturday 12:30"); err != nil {
		t.Fatal(err)
	}
	for late, want := range map[time.Duration]bool{12*time.Hour - time.Second: true, 12 * time.Hour: false} {
		m := alone(t, b, at(5, 12, 30).Add(late), plan).Breads[0]
		if (m.Followed != nil) != want || m.Wanted.Equal(at(5, 12, 30)) != want {
			t.Errorf("%v after it was wanted: followed %v", late, m.Followed)
		}
	}
	when := at(4, 7, 0)
	for since, want := range map[time.Duration]bool{26*time.Hour - time.Second: true, 26 * time.Hour: false} {
		now := when.Add(since)
		m := moment(t, now, mixed(when, 26))
		made := now
		if want {
			made = when.Add(-12 * time.Hour)
		}
		if (m.Dough != nil) != want || !m.Day.Now.Equal(made) {
			t.Errorf("%v after mixing: dough %v, plan of %v, not of %v", since, m.Dough, m.Day.Now, made)
		}
	}
}

// A reading, the word that it is ready, and a core are of the dough that was planned, where no mixing was logged; what
// was said before it was to be mixed is of none.
func TestTheDoughThatWasMixedAsPlanned(t *testing.T) {
	made, plan := followed()
	bulk, _ := moment(t, made.Add(time.Minute), plan).Step("bulk")
	core := func(when time.Time) bench.Observation {
		return saw(when, bench.SawCore, func(o *bench.Observation) { o.Core = &bench.SeenCore{Core: quantity.Celsius(80)} })
	}
	when := bulk.Start.Add(2 * time.Hour)
	for name, o := range map[string]bench.Observation{"risen": risen(when, 15), "ready": readied(when, 25),
		"core": core(when)} {
		for _, bread := range []string{"hall", ""} {
			o.Bread = bread
			m := moment(t, when.Add(time.Minute), plan, o)
			if m.Dough == nil || !m.Dough.Mixed.Equal(bulk.Start) || m.Dough.Bread != "hall" ||
				len(m.Dough.Rises)+len(m.Dough.Cores) != 1 && m.Dough.Ready == nil {
				t.Errorf("%s of %q: %+v", name, bread, m.Dough)
			}
		}
		o.Bread = "rye"
		if m := moment(t, when.Add(time.Minute), plan, o); m.Dough != nil {
			t.Errorf("%s of another bread: %+v", name, m.Dough)
		}
		o.Bread, o.At = "hall", bulk.Start
		if m := moment(t, when.Add(time.Minute), plan, o); m.Dough != nil {
			t.Errorf("%s as it was mixed: %+v", name, m.Dough)
		}
	}
}

// A dough that was mixed as planned and that nobody looked at stays where it was planned, however late it gets; and one
// that was mixed by the tick alone too.
func TestADoughThatNobodyLookedAt(t *testing.T) {
	made, plan := followed()
	start := moment(t, made.Add(time.Minute), plan)
	bulk, _ := start.Step("bulk")
	shape, _ := start.Step("shape")
	for _, o := range []bench.Observation{mixed(bulk.Start, 26), ticked("mix-1", bulk.Start)} {
		for _, now := range []time.Time{bulk.Start.Add(time.Hour), shape.Start.Add(10 * time.Minute)} {
			if s, _ := moment(t, now, plan, o).Step("shape"); s.Start.Sub(shape.Start).Abs() >= 5*time.Minute {
				t.Errorf("%v at %v: shaped at %v, planned at %v", o, now, s.Start, shape.Start)
			}
		}
	}
	// A dough that is read and late waits for its baker.
	read := risen(bulk.Start.Add(2*time.Hour), 15)
	m := moment(t, read.At.Add(time.Minute), plan, mixed(bulk.Start, 26), read)
	ready := m.Progress.Now.Ready()
	now := bulk.Start.Add(ready.Late)
	if s, _ := moment(t, now, plan, mixed(bulk.Start, 26), read).Step("shape"); s.Start.Sub(now).Abs() > time.Minute {
		t.Errorf("at %v it is shaped at %v", now, s.Start)
	}
}

// Doubts stand in the order in which they were said.
func TestDoubtsInTheirOrder(t *testing.T) {
	made, plan := followed()
	bulk, _ := moment(t, made.Add(time.Minute), plan).Step("bulk")
	hot := func(minute int) bench.Observation {
		return saw(bulk.Start.Add(time.Duration(minute)*time.Minute), bench.SawCore, func(o *bench.Observation) {
			o.Core = &bench.SeenCore{Core: quantity.Celsius(120)}
		})
	}
	m := moment(t, bulk.Start.Add(time.Hour), plan, mixed(bulk.Start, 26), hot(4), ticked("bake-1",
		bulk.Start.Add(5*time.Minute)), hot(6), ticked("retard", bulk.Start.Add(7*time.Minute)), hot(8))
	var got []string
	for _, d := range m.Doubts {
		got = append(got, d.Observation.At.Sub(bulk.Start).String())
	}
	if text := strings.Join(got, " "); text != "4m0s 5m0s 6m0s 7m0s 8m0s" {
		t.Error(text)
	}
}

// Cores that somebody else read, or of another bread, say nothing of this loaf, also where no dough was logged.
func TestCoresOfAnother(t *testing.T) {
	core := func(minute int, celsius float64, bread, by string) bench.Observation {
		return bench.Observation{Version: bench.Format, At: at(5, 8, minute), Kind: bench.SawCore, Bread: bread, By: by,
			Core: &bench.SeenCore{Core: quantity.Celsius(celsius)}}
	}
	own := core(10, 85, "hall", "Ueli")
	alone, err := bench.Observations{own}.Tells(own)
	if err != nil || len(alone) != 2 {
		t.Fatal(alone, err)
	}
	note := core(4, 72, "hall", "Ueli")
	note.Kind, note.Note = bench.SawNote, "pale"
	bare := core(4, 72, "hall", "Ueli")
	bare.Core = nil
	for _, other := range []bench.Observation{core(4, 72, "rye", "Ueli"), core(4, 72, "hall", "Vreni"), note, bare} {
		if got, err := (bench.Observations{other, own}).Tells(own); err != nil || fmt.Sprint(got) != fmt.Sprint(alone) {
			t.Errorf("after %+v: %v, %v", other, got, err)
		}
	}
	first := core(4, 72, "hall", "Ueli")
	if got, err := (bench.Observations{first, own}).Tells(own); err != nil || fmt.Sprint(got) == fmt.Sprint(alone) {
		t.Errorf("after a core of the same loaf: %v, %v", got, err)
	}
}

// Each step is known by its bread and its name, at the oven too; in a kitchen of one bread by its name alone.
func TestEveryStepHasAName(t *testing.T) {
	made := at(4, 6, 0)
	day := together(t, made, following(made)...)
	single := alone(t, hall(t), made)
	for _, m := range day.Breads {
		for _, s := range m.Steps {
			got, err := day.StepNamed(m.Name + "/" + s.ID)
			if err != nil || got.ID != s.ID || got.Bread != m.Name || !got.Start.Equal(s.Start) {
				t.Errorf("%s/%s: %+v, %v", m.Name, s.ID, got, err)
			}
		}
	}
	for _, s := range single.Breads[0].Steps {
		if got, err := single.StepNamed(s.ID); err != nil || got.ID != s.ID || !got.Start.Equal(s.Start) {
			t.Errorf("%s: %+v, %v", s.ID, got, err)
		}
	}
}

// What is to be done and looked for at every step of doughs of many kinds, and how each dough is logged as it was
// planned.
func TestWhatToDoAtEveryStep(t *testing.T) {
	rich := hall(t)
	rich.Name, rich.Levain, rich.Retard = "brioche", nil, nil
	rich.Liquids = []bakeday.Ingredient{{Name: "milk", Percent: quantity.NewPercent(50), Kind: dough.KindMilk}}
	rich.Others = []bakeday.Ingredient{
		{Name: "yeast", Percent: quantity.NewPercent(0.6), Kind: dough.KindInstantYeast},
		{Name: "egg", Percent: quantity.NewPercent(15), Kind: dough.KindEgg},
		{Name: "sugar", Percent: quantity.NewPercent(8), Kind: dough.KindSweetener},
	}
	rich.Loaves.FreshWithin = quantity.Elapsed(16 * time.Hour)
	rich.Bulk.Rise = quantity.NewPercent(180)
	rich.Bulk.Box = quantity.Celsius(27)
	many := hall(t)
	many.Name, many.Loaves.Pieces, many.Oven.Together = "many", 9, 3
	var out strings.Builder
	for _, b := range []bakeday.Bake{hall(t), overnight(t), rich, many} {
		k := alone(t, b, at(3, 20, 0))
		m := k.Breads[0]
		fmt.Fprintf(&out, "== %s\n", b.Name)
		if !m.Day.Possible() {
			t.Errorf("%s: %s", b.Name, m.Report().Text(report.Options{}))
		}
		for _, s := range m.Steps {
			fmt.Fprintf(&out, "%s %s, %v\n", s.Start.Format("Mon 15:04"), s.ID, s.Takes)
			for _, says := range m.LookFor(s) {
				fmt.Fprintf(&out, "  · %v\n", says)
			}
		}
		bulk, _ := m.Step("bulk")
		mix := bench.DoughMixed{Dough: quantity.Celsius(25)}.AsPlanned(m.Day, bulk.Start)
		data, err := json.MarshalIndent(mix, "", "  ")
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(&out, "%s\n", data)
	}
	trial.Kept(t, "steps.txt", out.String())
}
