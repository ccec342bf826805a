package cli

import (
	"example.org/maslin/dough/mixing"
	"example.org/maslin/schedule/bakeday"
)

// mixer asks whether a dough fits a mixer, and how it is kneaded.
type mixer struct {
	Mix mixing.Mix `flags:"*"`
}

func (q *mixer) ask(c *call) error {
	if err := fillMix(c, &q.Mix); err != nil {
		return err
	}
	r, err := q.Mix.Fit()
	return c.tellIf(r.Fullness != mixing.Unknown, r, err)
}

// sticking asks why a dough does not clear the bowl.
type sticking struct {
	Mix      mixing.Mix      `flags:"*"`
	Sticking mixing.Sticking `flags:"* Kneaded=mixing Dough=temperature" paths:"Dough=temperature"`
}

func (q *sticking) ask(c *call) error {
	if err := fillMix(c, &q.Mix); err != nil {
		return err
	}
	q.Sticking.Mix = q.Mix
	return c.tell(q.Sticking.Advise())
}

// fillMix takes from a bake file, where there is one, what no flag says.
func fillMix(c *call, m *mixing.Mix) error {
	if len(c.args) == 0 {
		return nil
	}
	file, err := loadFormula(c, c.args[0])
	if err != nil {
		return err
	}
	batch, err := file.first().Batch(nil)
	if err != nil {
		return file.complain(err)
	}
	*m = bakeday.Mix(batch, file.first().Mixer().Kind, file.first().Mixer().Bowl)
	c.over("mixer", "bowl", "kind", "dough", "flour", "water", "high-gluten", "water-temperature", "rated")
	return nil
}

// over puts what these flags say, where they are given, over what a file has put into their fields.
func (c *call) over(names ...string) {
	for _, name := range names {
		if f := c.cmd.Flags().Lookup(name); f != nil && f.Changed && !c.faulty(name) {
			_ = f.Value.Set(f.Value.String()) // it was read before
		}
	}
}
