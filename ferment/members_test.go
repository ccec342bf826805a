package ferment_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/workcheck"
)

func likely(t *testing.T, c ferment.Culture) float64 {
	t.Helper()
	in := hall(t)
	in.Culture = c
	return estimate(t, in).Ready().Likely.Hours()
}

func of(t *testing.T, c ferment.Culture, person, name string) ferment.Culture {
	t.Helper()
	out, err := c.Of(person, name)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func slower(log []ferment.LoggedBulk, percent int) []ferment.LoggedBulk {
	out := append([]ferment.LoggedBulk(nil), log...)
	for i := range out {
		out[i].Took = out[i].Took * quantity.Elapsed(100+percent) / 100
	}
	return out
}

// A class: what each learned apart is merged in any order, a newcomer starts nearer to the class than to the
// typical kitchen, and a person's new culture nearer still.
func TestClassMerges(t *testing.T) {
	log := slower(bakeLog(t, 30), 60)
	ada := learn(t, ferment.Learning{Bakes: log[:15], Person: "Ada", Name: "rye"}).Culture
	bo := learn(t, ferment.Learning{Bakes: log[15:], Person: "Bo", Name: "wheat"}).Culture
	ab, err := ada.Merge(bo)
	if err != nil {
		t.Fatal(err)
	}
	ba, err := bo.Merge(ada)
	if err != nil {
		t.Fatal(err)
	}
	if !of(t, ab, "Ada", "rye").Equal(of(t, ba, "Ada", "rye")) {
		t.Error("the order of merging matters")
	}
	want := []ferment.CultureMember{{Person: "Ada", Name: "rye", Bakes: 15}, {Person: "Bo", Name: "wheat", Bakes: 15}}
	members := ab.Members()
	for i := range members {
		if members[i].Held.Ranges != 15 {
			t.Errorf("%+v", members[i])
		}
		members[i].Held = ferment.Held{}
	}
	if d := cmp.Diff(want, members); d != "" {
		t.Error(d)
	}
	if p := ab.Pooled(); p.Ranges != 30 || p.Inside != ada.Score().Inside+bo.Score().Inside {
		t.Errorf("pooled %+v", p)
	}
	typical, newcomer := likely(t, ferment.Culture{}), likely(t, of(t, ab, "Cy", "first"))
	second := likely(t, of(t, ab, "Ada", "new"))
	if own := likely(t, ab); !(typical < newcomer && newcomer < second && second < own) {
		t.Errorf("typical %.2f h, newcomer %.2f, Ada's new culture %.2f, Ada's own %.2f",
			typical, newcomer, second, own)
	}
	if zero, err := (ferment.Culture{}).Merge(ada); err != nil || !zero.Equal(ada) {
		t.Errorf("merged with nothing: %v, %v", zero, err)
	}
	if _, err := ada.Of("a\u202eb", strings.Repeat("x", 300)); err == nil {
		t.Error("names that are no text")
	} else {
		refuses(t, err, quantity.ErrOutOfRange, "Person", "Name")
	}
	forgets := learn(t, ferment.Learning{Bakes: log[:1], HalfLife: quantity.Elapsed(1000 * time.Hour)}).Culture
	_, err = ada.Merge(forgets)
	refuses(t, err, quantity.ErrInconsistent, "HalfLife")
	_, err = ferment.Learning{Bakes: log[:1], HalfLife: quantity.Elapsed(time.Hour)}.Learn()
	refuses(t, err, quantity.ErrOutOfRange, "HalfLife")
	// Many at once are as one after the other.
	cy := learn(t, ferment.Learning{Bakes: log[:4], Person: "Cy", Name: "oat"}).Culture
	abc, err := ab.Merge(cy)
	if err != nil {
		t.Fatal(err)
	}
	atOnce, err := ada.Merge(bo, ferment.Culture{}, cy)
	if err != nil || !atOnce.Equal(abc) || len(atOnce.Members()) != 3 {
		t.Errorf("%v and %v: %v", atOnce.Members(), abc.Members(), err)
	}
	// All of it is kept.
	text, err := json.Marshal(ab)
	if err != nil {
		t.Fatal(err)
	}
	var back ferment.Culture
	if err := json.Unmarshal(text, &back); err != nil || !back.Equal(ab) {
		t.Errorf("%v: %s", err, text)
	}
}

// Dated bakes are learned from in their order, whatever order they are given in; a culture that has changed is followed
// with a half-life, and without one as the log chooses, which is said, derived, kept and merged.
func TestDatesAndForgetting(t *testing.T) {
	log := bakeLog(t, 40)
	day := time.Date(2026, 1, 4, 8, 0, 0, 0, time.UTC)
	for i := range log {
		log[i].On = day.AddDate(0, 0, 7*i)
		if i >= 20 {
			log[i].Took = log[i].Took * 3 / 2
		}
	}
	backwards := make([]ferment.LoggedBulk, 0, len(log))
	for i := range log {
		backwards = append(backwards, log[len(log)-1-i])
	}
	in := ferment.Learning{Bakes: log, HalfLife: quantity.Elapsed(60 * 24 * time.Hour)}
	kept := learn(t, in)
	in.Bakes = backwards
	if again := learn(t, in); !again.Culture.Equal(kept.Culture) {
		t.Errorf("in order %v, backwards %v", kept, again)
	}
	in.Bakes, in.HalfLife = log, quantity.Elapsed(100*365*24*time.Hour)
	all := learn(t, in)
	in.HalfLife = 0
	chosen := learn(t, in)
	after := learn(t, ferment.Learning{Bakes: log[20:]})
	k, a, w := likely(t, kept.Culture), likely(t, all.Culture), likely(t, after.Culture)
	c := likely(t, chosen.Culture)
	if !(math.Abs(k-w) <= 0.5*math.Abs(a-w)) || !(math.Abs(c-w) <= 0.5*math.Abs(a-w)) {
		t.Errorf("after the change %.2f h, with a half-life %.2f, as the log chooses %.2f, without %.2f", w, k, c, a)
	}
	if d := chosen.HalfLife; d != quantity.Elapsed(15*24*time.Hour) && d != quantity.Elapsed(60*24*time.Hour) {
		t.Errorf("a culture that has changed: %v", d)
	}
	if !strings.Contains(chosen.String(), "the pace has changed over the log, so recent bakes count more") {
		t.Error(chosen)
	}
	if !kept.Fades.IsZero() || kept.HalfLife != quantity.Elapsed(60*24*time.Hour) {
		t.Errorf("a half-life that was given is chosen: %v, %v", kept.HalfLife, kept.Fades)
	}
	workcheck.Verify(t, chosen.Working())
	text, err := json.Marshal(chosen.Culture)
	if err != nil {
		t.Fatal(err)
	}
	var back ferment.Culture
	if err := json.Unmarshal(text, &back); err != nil || !back.Equal(chosen.Culture) {
		t.Errorf("%v: %s", err, text)
	}
	steady := learn(t, ferment.Learning{Bakes: log[:20], Person: "Ada"})
	ab, err := steady.Culture.Merge(chosen.Culture)
	if err != nil {
		t.Fatal(err)
	}
	ba, err := chosen.Culture.Merge(steady.Culture)
	if err != nil {
		t.Fatal(err)
	}
	if !of(t, ab, "", "").Equal(of(t, ba, "", "")) || !strings.Contains(of(t, ab, "", "").String(), "has changed") {
		t.Errorf("merged %v, the other way %v", of(t, ab, "", ""), of(t, ba, "", ""))
	}
	for _, l := range []ferment.Lesson{kept, chosen} {
		if _, _, err := l.Reviews(); err != nil {
			t.Error(err)
		}
	}
	log[3].On = time.Time{}
	_, err = ferment.Learning{Bakes: log}.Learn()
	refuses(t, err, quantity.ErrInconsistent, "Bakes[3].On")
	log[3].On = time.Date(1066, 1, 1, 0, 0, 0, 0, time.UTC)
	_, err = ferment.Learning{Bakes: log}.Learn()
	refuses(t, err, quantity.ErrOutOfRange, "Bakes[3].On")
}

// 7 of 9 is not 78 %.
func TestScoreHasItsOwnUncertainty(t *testing.T) {
	h := ferment.Held{Inside: 7, Ranges: 9}
	s, ok := h.Share()
	if !ok || !(math.Abs(s.Likely.Points()-77.78) <= 0.01) ||
		s.Low.Points() > 60 || s.High.Points() < 85 || s.High.Points() >= 100 {
		t.Errorf("%v %v", s, ok)
	}
	if got := h.String(); got != "7 of 9 ranges held their bakes: that speaks for 57 % to 90 %" {
		t.Error(got)
	}
	// Wilson (1927): k of n at z; by hand 0 of 5 reaches from 0 to z²/(n + z²).
	const z2 = 1.2815515655446004 * 1.2815515655446004
	if s, _ := (ferment.Held{Ranges: 5}).Share(); s.Low.Points() != 0 ||
		!(math.Abs(s.High.Points()-100*z2/(5+z2)) <= 0.01) {
		t.Errorf("%v", s)
	}
	for _, bad := range []ferment.Held{{}, {Inside: 3, Ranges: 2}, {Inside: -1, Ranges: 4}} {
		if _, ok := bad.Share(); ok {
			t.Errorf("%+v has a share", bad)
		}
	}
	last := 100.0
	for _, n := range []int{5, 10, 20, 40, 80} {
		s, _ := ferment.Held{Inside: n * 4 / 5, Ranges: n}.Share()
		if w := s.High.Points() - s.Low.Points(); w >= last {
			t.Errorf("of %d: %v", n, s)
		} else {
			last = w
		}
	}
}
