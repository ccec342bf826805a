package cli

import (
	"example.org/maslin/dough/mixing"
	"example.org/maslin/schedule/bakeday"
	"github.com/spf13/pflag"
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
	c.over()
	return nil
}

// over puts what flags say over what a file has put into their fields.
func (c *call) over() {
	c.cmd.Flags().Visit(func(f *pflag.Flag) {
		if !c.faulty(f.Name) {
			_ = f.Value.Set(f.Value.String()) // it was read before
		}
	})
}

// take puts what a flag says over what a file says.
func take[T any](c *call, flag string, to *T, own T) {
	if c.given(flag) {
		*to = own
	}
}
