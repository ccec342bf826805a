package bench_test

import (
	"context"
	"encoding/json"
	"errors"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/maslin/bake"
	"example.org/maslin/dough"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/schedule"
	"example.org/maslin/schedule/bakeday"
	"example.org/maslin/schedule/bench"
	"github.com/google/go-cmp/cmp"
)

// two are a loaf held cold overnight and rolls with yeast, for one noon.
func two(t testing.TB) bakeday.Order {
	t.Helper()
	rolls := hall(t)
	rolls.Name, rolls.Levain, rolls.Retard = "rolls", nil, nil
	rolls.Others = []bakeday.Ingredient{
		{Name: "instant yeast", Percent: quantity.NewPercent(0.8), Kind: dough.KindInstantYeast},
	}
	rolls.Bulk = bakeday.BulkWork{Rise: quantity.NewPercent(150)}
	rolls.Loaves = bakeday.Loaves{Pieces: 8, Baked: quantity.Grams(80), Style: bake.SoftRoll}
	rolls.Oven = bakeday.OvenWork{
		Temperature: quantity.Celsius(210), Preheat: quantity.Elapsed(30 * time.Minute),
		Uncovered: quantity.Elapsed(18 * time.Minute),
	}
	return bakeday.Order{Bakes: []bakeday.Bake{hall(t), rolls}}
}

func together(t testing.TB, now time.Time, all ...bench.Observation) bench.KitchenNow {
	t.Helper()
	k, err := bench.KitchenUnder{Order: two(t), Observations: all}.At(context.Background(), clock(now))
	if err != nil {
		t.Fatal(err)
	}
	return k
}

// following are the observations of who follows the plan of both breads.
func following(made time.Time) bench.Observations {
	var out bench.Observations
	for _, bread := range []string{"hall", "rolls"} {
		out = append(out, bench.Observation{
			Version: bench.Format, At: made, Kind: bench.SawPlan, Bread: bread,
			Plan: &bench.FollowedPlan{Made: made, Wanted: at(5, 12, 30)},
		})
	}
	return out
}

func begins(t testing.TB, k bench.KitchenNow, bread, id string) time.Time {
	t.Helper()
	for _, m := range k.Breads {
		if s, ok := m.Step(id); ok && m.Name == bread {
			return s.Start
		}
	}
	t.Fatalf("no step %s of %s", id, bread)
	return time.Time{}
}

// A kitchen that bakes one bread is that bread.
func TestOneBreadOfAKitchen(t *testing.T) {
	when := at(4, 16, 0)
	seen := bench.Observations{mixed(when, 24), risen(when.Add(2*time.Hour), 9)}
	now := when.Add(150 * time.Minute)
	k, err := bench.KitchenUnder{Order: bakeday.Order{Bakes: []bakeday.Bake{hall(t)}}, Observations: seen}.
		At(context.Background(), clock(now))
	if err != nil {
		t.Fatal(err)
	}
	alone := moment(t, now, seen...)
	one, _ := json.Marshal(alone)
	other, _ := json.Marshal(k.Breads[0])
	if diff := cmp.Diff(string(one), string(other)); diff != "" {
		t.Error(diff)
	}
	text := func(r report.Report) string { return r.Text(report.Options{}) }
	if diff := cmp.Diff(text(alone.Report()), text(k.Report())); diff != "" || k.String() != alone.String() {
		t.Error(diff)
	}
}

// What is due, and next, is found over all breads; what is ticked off is of its bread.
func TestDueAcrossBreads(t *testing.T) {
	made := at(4, 6, 0)
	start := together(t, made, following(made)...)
	feed := begins(t, start, "hall", "feed")
	mix := begins(t, start, "rolls", "mix-1")
	if !feed.Before(mix) {
		t.Fatalf("fed at %v, mixed at %v", feed, mix)
	}
	k := together(t, mix.Add(time.Minute), following(made)...)
	// Nothing was ticked off, though much is over: it has to be asked which.
	var ids []string
	for _, s := range k.StepsDue() {
		ids = append(ids, s.Bread+"/"+s.ID)
	}
	if got := strings.Join(ids, " "); got != "hall/feed hall/mix-1 hall/shape rolls/mix-1" {
		t.Errorf("due is %s", got)
	}
	fed := append(following(made), bench.Observation{
		Version: bench.Format, At: begins(t, start, "hall", "retard"), Kind: bench.SawStep, Bread: "hall", Step: "shape",
	})
	if due := together(t, mix.Add(time.Minute), fed...).StepsDue(); len(due) != 1 || due[0].Bread != "rolls" ||
		due[0].ID != "mix-1" {
		t.Errorf("due is %v", due)
	}
	for text, want := range map[string]string{"hall/shape": "hall", "rolls/mix-1": "rolls", "retard": "hall",
		"rolls/bake": "rolls"} {
		if s, err := k.StepNamed(text); err != nil || s.Bread != want || strings.Contains(s.ID, "/") {
			t.Errorf("%q is %s of %q: %v", text, s.ID, s.Bread, err)
		}
	}
	for _, text := range []string{"", "shape", "moon/shape"} {
		if _, err := k.StepNamed(text); err == nil {
			t.Errorf("%q is accepted", text)
		}
	}
	done := append(following(made), bench.Observation{
		Version: bench.Format, At: mix.Add(time.Minute), Kind: bench.SawStep, Bread: "rolls", Step: "mix-1",
	})
	k = together(t, mix.Add(2*time.Minute), done...)
	for _, due := range k.StepsDue() {
		if due.Bread == "rolls" && due.ID == "mix-1" {
			t.Error("a step that is done is due")
		}
	}
	page := k.Report().Text(report.Options{})
	if !strings.Contains(page, "rolls: bulk fermentation") || !strings.Contains(page, "hall: ") ||
		strings.Contains(page, "This is the plan if it is made now") {
		t.Error(page)
	}
	if !strings.Contains(together(t, made).Report().Text(report.Options{}), "This is the plan if it is made now") {
		t.Error("nobody follows the plan, and it does not say so")
	}
}

// A dough that is early or late moves its own bread; the other stays.
func TestOneDoughIsEarlyOrLate(t *testing.T) {
	made := at(4, 6, 0)
	start := together(t, made, following(made)...)
	bulk := begins(t, start, "hall", "bulk")
	for percent, sign := range map[float64]int{3: 1, 24: -1} {
		seen := append(following(made), mixed(bulk, 26), risen(bulk.Add(2*time.Hour), percent))
		k := together(t, bulk.Add(2*time.Hour+time.Minute), seen...)
		if k.Changed == nil || !k.Changed.Possible() || k.Breads[0].Changed != nil {
			t.Fatalf("risen by %v %%: changed %v", percent, k.Changed)
		}
		by := begins(t, k, "hall", "shape").Sub(begins(t, start, "hall", "shape"))
		if sign > 0 && by < 10*time.Minute || sign < 0 && by > -10*time.Minute {
			t.Errorf("risen by %v %%: shaped %v later", percent, by)
		}
		for _, s := range start.Breads[1].Steps {
			if got := begins(t, k, "rolls", s.ID); !got.Equal(s.Start) {
				t.Errorf("risen by %v %%: %s of the rolls moves from %v to %v", percent, s.ID, s.Start, got)
			}
		}
		if page := k.Report().Text(report.Options{}); !strings.Contains(page, "every bread is still there") {
			t.Error(page)
		}
	}
}

// A colder dough is late although nobody has looked at it yet.
func TestColdDoughIsLate(t *testing.T) {
	made := at(4, 6, 0)
	start := together(t, made, following(made)...)
	bulk := begins(t, start, "hall", "bulk")
	k := together(t, bulk.Add(time.Minute), append(following(made), mixed(bulk, 22))...)
	by := begins(t, k, "hall", "shape").Sub(begins(t, start, "hall", "shape"))
	if by < 15*time.Minute {
		t.Errorf("mixed at 22 °C instead of 26 °C: shaped %v later", by)
	}
}

// What names no bread is of the dough that was mixed last, observed or planned.
func TestNamelessReading(t *testing.T) {
	made := at(4, 6, 0)
	start := together(t, made, following(made)...)
	loaf, rolls := begins(t, start, "hall", "bulk"), begins(t, start, "rolls", "bulk")
	if !loaf.Before(rolls) {
		t.Fatal("the rolls are mixed first")
	}
	reading := risen(rolls.Add(-time.Minute), 11)
	reading.Bread = ""
	k := together(t, rolls.Add(-time.Minute), append(following(made), reading)...)
	if k.Breads[0].Dough == nil || len(k.Breads[0].Dough.Rises) != 1 || k.Breads[1].Dough != nil {
		t.Error("a reading before the rolls were mixed is not the loaf's")
	}
	reading.At = rolls.Add(20 * time.Minute)
	k = together(t, reading.At, append(following(made), reading)...)
	if k.Breads[0].Dough != nil || k.Breads[1].Dough == nil {
		t.Error("a reading after the rolls were mixed is not theirs")
	}
}

// Each bread is planned with what doughs raised like it have taught.
func TestLearnedPerBread(t *testing.T) {
	var seen bench.Observations
	for day := 1; day < 4; day++ {
		when := time.Date(2026, 11, day, 9, 0, 0, 0, zurich)
		seen = append(seen, mixed(when, 26), bench.Observation{
			Version: bench.Format, At: when.Add(5 * time.Hour), Kind: bench.SawReady, Bread: "hall",
			Ready: &bench.ReadyDough{Rise: quantity.NewPercent(28)},
		})
	}
	k := together(t, at(4, 6, 0), seen...)
	if len(k.Breads[0].RestsOn) == 0 || len(k.Breads[1].RestsOn) != 0 {
		t.Errorf("the loaf rests on %v, the rolls on %v", k.Breads[0].RestsOn, k.Breads[1].RestsOn)
	}
	if plain := together(t, at(4, 6, 0)); k.Breads[0].Day.Rising.Bulk.Ready() == plain.Breads[0].Day.Rising.Bulk.Ready() ||
		k.Breads[1].Day.Rising.Bulk.Ready() != plain.Breads[1].Day.Rising.Bulk.Ready() {
		t.Error("what was learned is of the levain alone")
	}
}

// The data form says the same as the page, and a day that cannot be says why.
func TestKitchenMomentAsData(t *testing.T) {
	made := at(4, 6, 0)
	start := together(t, made, following(made)...)
	now := begins(t, start, "rolls", "bulk").Add(time.Minute)
	text, err := json.Marshal(together(t, now, following(made)...))
	if err != nil {
		t.Fatal(err)
	}
	var data struct {
		Format   string
		Possible bool
		UnderWay []bakeday.StepData `json:"under_way"`
		Next     bakeday.StepData
		Breads   []struct {
			Name  string
			Steps []bakeday.StepData
			Plan  *bakeday.PlanData
		}
		Plan bakeday.KitchenDayData
	}
	if err := json.Unmarshal(text, &data); err != nil {
		t.Fatal(err)
	}
	if data.Format != bench.KitchenMomentFormat || !data.Possible || len(data.Breads) != 2 || len(data.Plan.Breads) != 2 ||
		data.Breads[0].Plan != nil || !data.Next.Start.After(now) {
		t.Errorf("%s", text)
	}
	if !slices.ContainsFunc(data.UnderWay, func(s bakeday.StepData) bool {
		return s.Bread == "rolls" && s.Kind == schedule.Bulk
	}) {
		t.Errorf("under way: %v", data.UnderWay)
	}
	late, err := bench.KitchenUnder{Order: two(t)}.At(context.Background(), clock(at(5, 9, 0)))
	if err != nil || late.Day.Possible() {
		t.Fatal(late, err)
	}
	if page := late.Report(); len(page.Section("why").Blocks) == 0 || !strings.Contains(late.String(), "does not fit") {
		t.Error(page.Text(report.Options{}))
	}
	if _, err := json.Marshal(bench.KitchenNow{}); err != nil || len(bench.KitchenNow{}.String()) == 0 {
		t.Error(err)
	}
	wrong := two(t)
	wrong.Bakes[1].Name = "hall"
	_, err = bench.KitchenUnder{Order: wrong}.At(context.Background(), clock(made))
	if !errors.Is(err, quantity.ErrInconsistent) {
		t.Error(err)
	}
	if _, err := (bench.KitchenUnder{Order: two(t)}).At(context.Background(), bakeday.KitchenClock{}); !errors.Is(err,
		quantity.ErrRequired) {
		t.Error(err)
	}
	broken := hall(t)
	broken.Salt = quantity.NewPercent(90)
	_, err = bench.Under{Bake: broken}.At(context.Background(), clock(made))
	for _, e := range quantity.InputErrors(err) {
		if strings.Contains(e.GoPath+e.Path, "akes[") {
			t.Error(e)
		}
	}
	if err == nil {
		t.Error("90 % of salt is accepted")
	}
}
