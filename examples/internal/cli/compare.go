package cli

import (
	"example.org/maslin/dough/mixing"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/ferment"
	"example.org/maslin/internal/textpage"
)

// compare asks for two plans side by side: two bakes, or one by hand and by machine.
type compare struct {
	Hand    bool             `flag:"hand"`
	Machine mixing.MixerKind `flag:"machine" words:"planetary,spiral,fork,processor" paths:"Mixing.Mixer=machine"`
	Now     string           `flag:"now"`
}

func (q *compare) ask(c *call) error {
	if wrong := c.complain(nil); wrong != nil {
		return wrong
	}
	ways := 0
	for _, asked := range []bool{q.Hand, q.Machine != 0, len(c.args) == 2} {
		if asked {
			ways++
		}
	}
	if ways != 1 {
		return badInput(working.Tell("cli.compare_want_one_second_bake", "maslin compare: want one of: a second bake file, "+
			"--hand, or --machine planetary, spiral, fork or processor"))
	}
	one, err := load(c, q.Now, c.args[0])
	if err != nil {
		return err
	}
	if len(c.args) == 2 {
		return q.files(c, one)
	}
	kind := mixing.Hand
	if !q.Hand {
		kind = q.Machine
	}
	if one.first().Mixer().Kind == kind {
		return badInput(working.Tell("cli.compare_kneaded_way_already_choose", "maslin compare: %s is kneaded that way already (%s); choose another", c.args[0], kind))
	}
	two, err := one.first().KneadedBy(c.cmd.Context(), one.clock, kind)
	return c.tell(two, one.complain(err))
}

func (q *compare) files(c *call, one bakes) error {
	first, err := one.first().Plan(c.cmd.Context(), one.clock)
	if err != nil {
		return one.complain(err)
	}
	two, err := load(c, q.Now, c.args[1])
	if err != nil {
		return err
	}
	second, err := two.first().Plan(c.cmd.Context(), two.clock)
	return c.tell(first.Beside(second), two.complain(err))
}

// compareWater asks for the factor method beside the heat balance for the water of one bake.
type compareWater struct {
	Now string `flag:"now"`
}

func (q *compareWater) ask(c *call) error {
	l, err := load(c, q.Now, c.args[0])
	if err != nil {
		return err
	}
	day, err := l.first().Plan(c.cmd.Context(), l.clock)
	if err != nil {
		return l.complain(err)
	}
	two, ok := day.Water.Comparison()
	if !ok {
		return badInput(working.Tell("cli.compare_water_two_methods_cannot", "maslin compare water: %s: the two methods cannot be compared here", textpage.Printable(c.args[0])))
	}
	return c.tell(two, nil)
}

// compareCurves asks for two rate curves side by side.
type compareCurves struct {
	Table ferment.CurveTable `flags:"Temperatures" paths:"Curves=CURVE"`
}

func newCompareCurves() *compareCurves {
	return &compareCurves{ferment.CurveTable{
		Temperatures: celsius(4, 8, 12, 16, 20, 24, 28, 32, 36),
		Curves:       []ferment.Curve{ferment.GanzleYeastHeld(), ferment.TradeQ10()},
	}}
}

// completes lists the curves.
func (*compareCurves) completes() (out []string) {
	for _, c := range ferment.Curves() {
		out = append(out, c.About().Key)
	}
	return out
}

func (q *compareCurves) ask(c *call) error {
	var p quantity.Problems
	if len(c.args) == 1 {
		p.Add("Curves", quantity.Tell("cli.got_1_curve", "1 curve"),
			quantity.Tell("cli.want_two_curves_or_none", "two curves or none"), quantity.ErrInconsistent)
	}
	for i, key := range c.args {
		p.Join("Curves", q.Table.Curves[i].UnmarshalText([]byte(key)))
	}
	rates, err := q.Table.Rates()
	if p.Err() != nil {
		err = p.Err()
	}
	return c.tell(rates, err)
}
