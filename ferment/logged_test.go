package ferment_test

import (
	"slices"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/ferment"
)

// What is believed of the culture when a bake is logged says nothing of the bake, and the log stays as it was.
func TestALoggedBakeIsReadWithoutItsCulture(t *testing.T) {
	log := bakeLog(t, 12)
	want, err := ferment.Learning{Bakes: log}.Learn()
	if err != nil {
		t.Fatal(err)
	}
	for i := range log {
		log[i].Bulk.Culture = want.Culture
	}
	got, err := ferment.Learning{Bakes: log}.Learn()
	if err != nil || !got.Culture.Equal(want.Culture) {
		t.Errorf("%v, %v; without cultures %v", got, err, want)
	}
	for i := range log {
		if !log[i].Bulk.Culture.Equal(want.Culture) {
			t.Errorf("the culture of bake %d is gone from the log", i)
		}
	}
}

// Bakes are learned from in order of their dates, whatever order they are written in, and each keeps its weight.
func TestALogInAnyOrder(t *testing.T) {
	log := bakeLog(t, 12)
	for i := range log {
		log[i].On = time.Date(2026, 1, 4+7*i, 8, 0, 0, 0, time.UTC)
	}
	log[7].Took *= 3
	turned := make([]ferment.LoggedBulk, len(log))
	for i := range log {
		turned[len(log)-1-i] = log[i]
	}
	a, err := ferment.Learning{Bakes: log}.Learn()
	if err != nil {
		t.Fatal(err)
	}
	b, err := ferment.Learning{Bakes: turned}.Learn()
	if err != nil || !a.Culture.Equal(b.Culture) {
		t.Errorf("%v, %v; in order %v", b, err, a)
	}
	inOrder, _, err := a.Reviews()
	if err != nil {
		t.Fatal(err)
	}
	reviews, _, err := b.Reviews()
	if err != nil {
		t.Fatal(err)
	}
	slices.Reverse(reviews)
	if diff := cmp.Diff(inOrder, reviews); diff != "" {
		t.Error(diff)
	}
	// The heat that a ferment makes is counted in a log as well: the dough was warmer, so its culture is slower.
	for i := range log {
		log[i].Bulk.OwnHeat = quantity.Elapsed(12 * time.Hour)
	}
	warm, err := ferment.Learning{Bakes: log}.Learn()
	if err != nil || warm.Culture.Pace().Likely.Compare(a.Culture.Pace().Likely) >= 0 {
		t.Errorf("%v, %v; without the heat %v", warm.Culture.Pace(), err, a.Culture.Pace())
	}
}
