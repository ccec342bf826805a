package ferment_test

import (
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/trial"
)

// Whose bakes they are and of which culture is told in at most 200 bytes each, and each is refused by its own name.
func TestNamesOfALesson(t *testing.T) {
	long := strings.Repeat("a", 201)
	for _, c := range []struct {
		in   ferment.Learning
		want string
	}{
		{ferment.Learning{Person: long[1:], Name: long[1:]}, ""}, {ferment.Learning{Person: long}, "person out of range"},
		{ferment.Learning{Name: long}, "name out of range"},
		{ferment.Learning{Name: "a\u202eb", Person: "\x00"}, "person out of range; name out of range"},
	} {
		c.in.Bakes = bakeLog(t, 1)
		if got := trial.Refused(trial.Err(c.in.Learn())); got != c.want {
			t.Errorf("refused are %q, want %q", got, c.want)
		}
	}
}

// A log that chose how fast its bakes fade says so; one that was told, or that did not, says nothing of it.
func TestALessonSaysThatItFades(t *testing.T) {
	log := bakeLog(t, 40)
	for i := range log {
		log[i].On = time.Date(2026, 1, 4, 8, 0, 0, 0, time.UTC).AddDate(0, 0, 7*i)
		if i >= 20 {
			log[i].Took = log[i].Took * 3 / 2
		}
	}
	chosen := learn(t, ferment.Learning{Bakes: log})
	days := int(chosen.HalfLife.Duration().Hours() / 24)
	want := map[int]string{15: "15 days", 60: "60 days"}[days]
	if said := chosen.Fades.String(); want == "" || !strings.Contains(said, want) {
		t.Errorf("half-life %v, said is %q", chosen.HalfLife, said)
	}
	given := learn(t, ferment.Learning{Bakes: log, HalfLife: span(15 * 24)})
	steady := learn(t, ferment.Learning{Bakes: log[:20]})
	for _, l := range []ferment.Lesson{given, steady, {}} {
		if !l.Fades.IsZero() {
			t.Errorf("half-life %v, said is %v", l.HalfLife, l.Fades)
		}
	}
	if given.HalfLife != span(15*24) || steady.HalfLife != 0 {
		t.Errorf("half-lives %v and %v", given.HalfLife, steady.HalfLife)
	}
}

// What is believed of the kitchen when a bake is logged is no part of what the bake teaches.
func TestALogTeachesWithoutItsCultures(t *testing.T) {
	log := bakeLog(t, 8)
	want := learn(t, ferment.Learning{Bakes: log}).Culture
	slow := learn(t, ferment.Learning{Bakes: slower(log, 50)}).Culture
	yeast := yeasted(ferment.InstantYeast, 0.3)
	other := learn(t, ferment.Learning{Bakes: []ferment.LoggedBulk{{Bulk: yeast, Took: span(4)}}}).Culture
	for _, culture := range []ferment.Culture{slow, other} { // of the same leavening and of another
		for i := range log {
			log[i].Bulk.Culture = culture
		}
		if got := learn(t, ferment.Learning{Bakes: log}).Culture; !got.Equal(want) {
			t.Errorf("%v, without cultures %v", got, want)
		}
	}
}

// What the other bakes said of one is what a lesson without it says, of a person with a culture of their own who knows
// another's too; and those inside are those whose time lies in their range.
func TestReviewsOfOnePersonsBakes(t *testing.T) {
	others := learn(t, ferment.Learning{Bakes: slower(bakeLog(t, 12), 40), Person: "Bo", Name: "wheat"}).Culture
	log := bakeLog(t, 12)
	in := ferment.Learning{Bakes: log, Person: "Ada", Name: "rye", Prior: others}
	all, inside, err := learn(t, in).Reviews()
	if err != nil || len(all) != len(log) {
		t.Fatal(all, err)
	}
	held := 0
	for i, r := range all {
		if r.Took != log[i].Took || r.Inside != r.Predicted.Contains(log[i].Took.Duration()) {
			t.Errorf("bake %d: %+v", i, r)
		}
		if r.Inside {
			held++
		}
		without := in
		without.Bakes = append(append([]ferment.LoggedBulk(nil), log[:i]...), log[i+1:]...)
		b := log[i].Bulk
		b.Culture = learn(t, without).Culture
		want := estimate(t, b).Ready()
		if off := (r.Predicted.Likely - want.Likely).Abs(); off > 3*time.Minute { // its luck weighed the others
			t.Errorf("bake %d: the others said %v, learned without it %v", i, r.Predicted, want)
		}
	}
	if held != inside {
		t.Errorf("%d inside, told are %d", held, inside)
	}
	none, inside, err := ferment.Lesson{}.Reviews()
	if none != nil || inside != 0 || err != nil {
		t.Errorf("nothing was learned, and %d of %v were inside (%v)", inside, none, err)
	}
	low, high := ferment.Lesson{}.Temperatures()
	if low.IsValid() || high.IsValid() {
		t.Errorf("nothing was learned, at %v to %v", low, high)
	}
	r := ferment.Review{Took: span(6.5), Predicted: quantity.TimeRange{Early: 5 * time.Hour, Likely: 6 * time.Hour,
		Late: 7 * time.Hour, Probability: pct(80)}, Inside: true}
	if d := cmp.Diff("took 6h30m; the other bakes said 5h to 7h (80 %), likely 6h", r.String()); d != "" {
		t.Error(d)
	}
	r.Inside = false
	if d := cmp.Diff("took 6h30m; the other bakes said 5h to 7h (80 %), likely 6h: outside", r.String()); d != "" {
		t.Error(d)
	}
}
