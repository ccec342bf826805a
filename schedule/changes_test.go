package schedule

import (
	"context"
	"errors"
	"testing"
	"time"

	"example.org/maslin/dough/quantity"
)

// An oven that is 40 minutes hotter than cooler, and 15 the other way: the hot bread goes first.
func changing() Problem {
	return Problem{
		Anchor: dawn, Horizon: mins(300),
		Steps: []DayStep{
			{ID: "rye", Min: mins(60), Needs: []Need{{Resource: "oven", Amount: 1, Program: "hot"}}},
			{ID: "rolls", Min: mins(20), Needs: []Need{{Resource: "oven", Amount: 1, Program: "mild"}}},
		},
		Resources: []Resource{{ID: "oven", Capacity: 1, Changeover: mins(5), Changes: []Changeover{
			{From: "mild", To: "hot", Takes: mins(40)}, {From: "hot", To: "mild", Takes: mins(15)},
		}}},
	}
}

func TestChangesDependOnTheOrder(t *testing.T) {
	got, err := changing().Earliest(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	rye, _ := got.Step("rye")
	rolls, _ := got.Step("rolls")
	// Rolls first: 20 + 40 + 60; rye first: 60 + 15 + 20. The sum of all times is least with the rolls first:
	// 0+20+60+120 < 0+60+75+95.
	if rolls.Start.Sub(dawn) != 0 || rye.Start.Sub(dawn) != time.Hour {
		t.Errorf("rolls at %v, rye at %v", rolls.Start, rye.Start)
	}
	p := changing()
	p.Horizon = mins(100) // now only the hot bread first is quick enough
	if got, err = p.Earliest(context.Background()); err != nil || len(got.Steps) == 0 {
		t.Fatal(err, got)
	}
	rolls, _ = got.Step("rolls")
	if rolls.Start.Sub(dawn) != 75*time.Minute {
		t.Errorf("rolls at %v, want 75 minutes after dawn", rolls.Start)
	}
	p.Horizon = mins(94)
	if got, err = p.Earliest(context.Background()); err != nil || got.Verdict != Infeasible {
		t.Errorf("95 minutes fit into 94: %v %v", got, err)
	}
}

// The day goes on: what was in the oven last says how long it needs before the next.
func TestMidwayKeepsChanges(t *testing.T) {
	p := changing()
	rest, err := p.Midway(Midway{Now: dawn.Add(25 * time.Minute), Done: []Done{
		{Step: "rolls", Start: dawn, End: dawn.Add(20 * time.Minute)},
	}})
	if err != nil {
		t.Fatal(err)
	}
	got, err := rest.Earliest(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	if rye, _ := got.Step("rye"); rye.Start.Sub(dawn) != time.Hour {
		t.Errorf("rye at %v, want an hour after dawn", rye.Start)
	}
}

func TestChangesAreChecked(t *testing.T) {
	p := changing()
	p.Resources[0].Changes = append(p.Resources[0].Changes,
		Changeover{From: "hot", To: "mild", Takes: mins(1)}, Changeover{From: "hot", To: "hot", Takes: -1})
	_, err := p.Latest(context.Background())
	if !errors.Is(err, quantity.ErrInconsistent) || !errors.Is(err, quantity.ErrOutOfRange) {
		t.Errorf("got %v", err)
	}
}
