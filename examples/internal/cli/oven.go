package cli

import (
	"strings"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/schedule/bench"
)

// oven asks what to set an oven to, and for the rounds of a bake.
type oven struct {
	Set  bake.OvenSetting `flags:"Fan Off" paths:"Wanted=SETTING Setting=SETTING Oven=SETTING"`
	Load bake.OvenLoad    `flags:"*"`
}

var roundFlags = strings.Fields("together style shape vessel cold then preheat reheat covered uncovered rescore " +
	"known-dough known-time extrapolate")

func (q *oven) ask(c *call) error {
	var asked bake.AskedOven
	var p quantity.Problems
	if c.given("pieces") || c.given("dough") {
		asked.Load = &q.Load
	} else {
		c.only("--pieces and --dough", roundFlags...)
	}
	if text := strings.Join(c.args, " "); text != "" {
		said, err := bake.ReadOvenSetting(text)
		p.Join("Setting.Wanted", err)
		q.Set.Wanted, q.Set.Notes, asked.Setting = said.Wanted, said.Notes, &q.Set
	} else {
		c.only("a setting, such as 230C", "fan", "off")
	}
	a, err := asked.Answer()
	p.Join("", err)
	return c.tell(a, p.ErrFor(asked))
}

// done asks whether a loaf is baked, by what is known of it now, and by two readings or more, how long still.
type done struct {
	Core  []string         `flag:"core" paths:"Samples=core"`
	Loaf  bake.LoafReading `flags:"* Core=- Wanted=target"`
	Place bake.Site        `flags:"Altitude Station=barometer SeaLevel=weather" paths:"Place=weather"`
	Probe bake.Probe       `flags:"Approach Window Extrapolate" paths:"Error=probe-error"`
}

func (q *done) ask(c *call) error {
	q.Loaf.Place = q.Place
	core, err := bench.ReadProbe(q.Core)
	c.note("core", err)
	if !core.Timed() {
		c.only("two or more --core with their times", "approach", "window", "extrapolate")
		q.Loaf.Core = core.Core
		v, err := q.Loaf.Judge()
		return c.tellIf(v.State != bake.SaysNothing, v, err)
	}
	c.not("--core with its times, which say how long still", "dough", "loaf", "held")
	p := &q.Probe
	p.Goal, p.InOven, p.Error = q.Loaf.Goal, q.Loaf.InOven, q.Loaf.ProbeError
	p.Samples, p.Now = core.Samples, core.Last(c.Now())
	p.EntryUnknown = core.ByClock && p.InOven == 0
	left, err := p.TimeLeft()
	return c.tellIf(left.State != bake.NearBoiling && left.State != bake.Vague, left, err)
}

// cool asks when a loaf may be cut: by its weight and shape, or by a probe in it.
type cool struct {
	Core  []string                  `flag:"core" paths:"From=core Samples=core"`
	Loaf  bake.CoolingLoaf          `flags:"* Baked=loaf"`
	Error quantity.TemperatureDelta `flag:"probe-error"`
}

func (q *cool) ask(c *call) error {
	core, err := bench.ReadProbe(q.Core)
	c.note("core", err)
	if core.Timed() {
		c.not("--core with its times, which say more", "loaf", "style", "shape", "loses")
		return c.tell(bake.CoolingProbe{
			Samples: core.Samples, Now: core.Last(c.Now()), Room: q.Loaf.Room, Slice: q.Loaf.Slice, Error: q.Error,
		}.TimeLeft())
	}
	c.only("two or more --core with their times", "probe-error")
	q.Loaf.From = core.Core
	return c.tell(q.Loaf.Time())
}

// keep asks how stale a loaf gets where it lies.
type keep struct {
	Loaf  bake.StoredLoaf `flags:"Style"`
	Stays []bake.Stay     `flag:"stay" pair:"For=At"`
}

func (q *keep) ask(c *call) error {
	q.Loaf.Stays = q.Stays
	return c.tell(q.Loaf.Staling())
}

// loss asks what a loaf loses in the oven, and how much dough to scale for it.
type loss struct {
	Asked  bake.AskedLoss     `flags:"Style"`
	Dough  quantity.Mass      `flag:"dough"`
	Loaf   bake.PromisedLoaf  `flags:"Baked Loss Cooling"`
	Basis  bake.LossBasis     `flag:"basis" words:"dough,bread" form:"of *"`
	Loaves []bake.WeighedLoaf `flag:"weighed" pair:"Dough=Baked"`
	Packed bake.PackedWeight  `flags:"Nominal=packed"`
	Solids bake.Solids        `flags:"Water=hydration OtherSolids"`
}

func (q *loss) ask(c *call) error {
	a := &q.Asked
	if a.Known = c.given("loss"); !a.Known {
		c.only("--loss", "cooling", "basis")
	}
	q.Loaf.Basis, a.Loaves = q.Basis, q.Loaves
	if c.given("baked") {
		c.not("--baked: either the bread is given or the dough", "dough")
		a.Bread = &q.Loaf
	} else if c.given("dough") {
		a.Piece = &bake.ScaledPiece{Dough: q.Dough, Loss: q.Loaf.Loss, Cooling: q.Loaf.Cooling, Basis: q.Basis}
	}
	if c.given("packed") {
		a.Packed = &q.Packed
	}
	if c.given("hydration") {
		a.Solids = &q.Solids
	} else {
		c.only("--hydration", "other-solids")
	}
	if !c.given("dough") && !c.given("weighed") && !c.given("packed") && !c.given("hydration") {
		c.need("baked", quantity.Tell("cli.want_weight_cool_loaf_or_dough",
			"the weight of a cool loaf; or --dough, --weighed, --packed or --hydration"))
	}
	return c.tell(a.Answer())
}
