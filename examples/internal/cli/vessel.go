package cli

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/vessel"
)

// vesselTin asks how much dough a tin takes, or how large a tin a dough needs.
type vesselTin struct {
	Dough  quantity.Mass   `flag:"dough" paths:"Mass=dough"`
	Volume quantity.Volume `flag:"volume"`
	Size   string          `flag:"size" paths:"Rim=size Box.Length=size Box.Width=size Box.Height=size"`
	Base   string          `flag:"base" paths:"Box.BaseLength=base Box.BaseWidth=base"`
	Loaf   vessel.TinLoaf  `flag:"loaf" paths:"loaf=loaf"`
	Own    vessel.OwnTin   `flags:"Volume=own-volume Dough=own-dough"`
}

func (q *vesselTin) ask(c *call) error {
	given := c.one("dough", "volume", "size")
	var box vessel.TinBox
	var p quantity.Problems
	if given == "size" {
		read, err := vessel.ReadTin(q.Size, q.Base)
		box = read
		p.Join("", err)
	} else {
		c.only("--size", "base")
	}
	factor, err := q.Loaf.Factor()
	own := c.given("own-volume") || c.given("own-dough")
	if own {
		factor, err = q.Own.Factor()
		err = quantity.At("Own", err)
	}
	if p.Join("", err); p.Err() != nil || len(c.faults) > 0 {
		return c.complain(p.Err())
	}
	switch given {
	case "dough":
		return c.tell(factor.Tin(q.Dough))
	case "volume":
		return c.tell(factor.Fill(q.Volume))
	}
	volume, err := box.Volume()
	if wrong := c.complain(quantity.At("Box", err)); wrong != nil {
		return wrong
	}
	if own {
		return c.tell(factor.Fill(volume))
	}
	return c.tell(box.Fill(q.Loaf))
}

// vesselProof asks the same of a proofing basket or a lined bowl.
type vesselProof struct {
	In vessel.Proofing `flags:"* Depth=height"`
}

func (q *vesselProof) ask(c *call) error {
	if c.given("height") {
		c.not(quantity.Tell("cli.with_sides", "the sides"), "dough", "volume")
		return c.tell(q.In.Fill())
	}
	if c.only("--height", "diameter", "length", "width"); len(c.faults) > 0 {
		return c.complain(nil)
	}
	given := c.one("dough", "volume")
	if given == "dough" {
		return c.tell(q.In.Size())
	}
	return c.tell(q.In.Fill())
}

// vesselPiece asks for the dough of a sheet, a disk or a stick by its size, or the other way round.
type vesselPiece struct {
	In vessel.SizedPiece `flags:"* Mass=dough"`
}

func (q *vesselPiece) ask(c *call) error {
	if c.given("dough") {
		return c.tell(q.In.Size())
	}
	return c.tell(q.In.Dough())
}

// vesselTub asks where to mark a straight-sided tub so that the rise can be read.
type vesselTub struct {
	In vessel.RiseContainer `flags:"* Rises=rise"`
}

func (q *vesselTub) ask(c *call) error {
	c.zero("density", q.In.Density == 0, quantity.Tell("cli.want_0_5_to_1_4", "0.5 to 1.4 kg/L"))
	if c.given("start") {
		c.only("--dough", "density")
	}
	return c.tell(q.In.Marks())
}

// vesselJar asks how much dough goes into a sample jar, and for its marks.
type vesselJar struct {
	In vessel.SampleJar `flags:"*"`
}

func (q *vesselJar) ask(c *call) error {
	c.zero("density", q.In.Density == 0, quantity.Tell("cli.want_0_5_to_1_4", "0.5 to 1.4 kg/L"))
	c.zero("rise", q.In.Rise.IsZero(), quantity.Tell("cli.want_10_percent_to_500_percent", "10 %% to 500 %%"))
	return c.tell(q.In.Sample())
}

// zero refuses a zero that was given: to the library it is "not given".
func (c *call) zero(flag string, is bool, want quantity.Phrase) {
	if c.given(flag) && is && !c.faulty(flag) {
		c.fault(flag, "0", want, quantity.ErrOutOfRange)
	}
}
