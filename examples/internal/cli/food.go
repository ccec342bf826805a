package cli

import (
	"example.org/maslin/dough/food"
	"example.org/maslin/dough/mixing"
)

// chill asks by when food beside the dough must be cold, and is thrown away.
type chill struct {
	Kind food.ChilledKind `arg:"FOOD"`
	Made string           `flag:"made"`
}

func (q *chill) ask(c *call) error {
	return c.tell(food.ChilledFood{Kind: q.Kind, Made: c.past("made", q.Made, c.Now())}.Limits())
}

// scald asks how hot the water of a scald must be.
type scald struct {
	Scald mixing.Scald `flags:"* Flour=flour-weight FlourTemperature=flour Water=water-weight"`
}

func (q *scald) ask(c *call) error { return c.tell(q.Scald.Pour()) }
