package ferment

import (
	"encoding/json"
	"math"
	"reflect"

	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/enum"
	"example.org/maslin/internal/gasbalance"
)

// Culture is what is known about one kitchen's culture: how much gas it makes, its pace, how strongly temperature moves
// it, and how much one bake differs from the next. The zero value is a culture nothing is known about; [Learning.Learn]
// makes one from logged bakes. It may know of other cultures and persons too, which then speak for it: see
// [Culture.Merge] and [Culture.Of]. It is immutable, and comes back equal from JSON.
type Culture struct{ of *culture }

// culture holds what the bakes of a group add up to, from which everything learned follows, and whose culture it is.
type culture struct {
	group        gasbalance.Group
	person, name string
	taught       gasbalance.Taught
}

func newCulture(g gasbalance.Group, person, name string) Culture {
	return Culture{&culture{g, person, name, g.Taught(person, name)}}
}

// IsZero reports whether nothing is known of the culture.
func (c Culture) IsZero() bool { return c.of == nil }

// Equal reports whether two cultures rest on the same bakes and speak of the same one.
func (c Culture) Equal(o Culture) bool {
	if c.of == nil || o.of == nil {
		return c.of == o.of
	}
	return c.of.person == o.of.person && c.of.name == o.of.name && reflect.DeepEqual(c.of.group, o.of.group)
}

// learnedFrom reports whether the culture may be used for a kind of leavening.
func (c Culture) learnedFrom(kind gasbalance.Leavening) bool {
	return c.of == nil || c.of.group.Kind == kind
}

// belief is what is believed of a dough kneaded in this way.
func (c Culture) belief(kind gasbalance.Leavening, how KneadedBy) gasbalance.Belief {
	if c.of == nil {
		return gasbalance.Unlearned(kind)
	}
	return c.of.taught.Belief(int(how))
}

func (c Culture) taught() gasbalance.Taught {
	if c.of == nil {
		return gasbalance.Untaught(gasbalance.ByLevain)
	}
	return c.of.taught
}

// Bakes is how many logged bakes the culture rests on.
func (c Culture) Bakes() int {
	if c.of == nil {
		return 0
	}
	return c.of.taught.Bakes
}

// z80 is the standard normal quantile at 90 %.
const z80 = 1.2815515655446004

// Pace is how fast the culture is relative to the typical one, at 24 °C: 120 % means a fifth faster.
func (c Culture) Pace() quantity.Range[quantity.Percent] {
	t := c.taught()
	m, s := t.Unknown(gasbalance.Pace)
	at := func(x float64) quantity.Percent { return quantity.NewPercent(100 * math.Exp(x)) }
	return band{Low: at(m - z80*s), Likely: at(m), High: at(m + z80*s), Probability: probabilityClaimed}
}

// Amplitude is how much gas the culture makes relative to the typical one, at the same pace.
func (c Culture) Amplitude() quantity.Range[quantity.Percent] {
	t := c.taught()
	m, s := t.Unknown(gasbalance.Amplitude)
	at := func(x float64) quantity.Percent { return quantity.NewPercent(100 * math.Exp(x)) }
	return band{Low: at(m - z80*s), Likely: at(m), High: at(m + z80*s), Probability: probabilityClaimed}
}

// TemperatureSensitivity is how much more than the law the culture speeds up with one degree Celsius: 2 % a degree
// more. It is rounded to a tenth of a percent: no number of bakes tells it finer.
func (c Culture) TemperatureSensitivity() quantity.Range[quantity.Percent] {
	t := c.taught()
	m, s := t.Unknown(gasbalance.Slope)
	at := func(x float64) quantity.Percent { return quantity.NewPercent(math.Round(1000*x) / 10) }
	return band{Low: at(m - z80*s), Likely: at(m), High: at(m + z80*s), Probability: probabilityClaimed}
}

// BakeToBake is the standard deviation of the log of the time from one bake to the next, in percent: 12 % means
// that two of three bakes lie within that.
func (c Culture) BakeToBake() quantity.Percent {
	t := c.taught()
	return quantity.NewPercent(100 * t.Luck)
}

// String says what is known: "learned from 5 bakes: pace 110 % (100 % to 121 %), …".
func (c Culture) String() string { return c.Message().String() }

// Message says what is known.
func (c Culture) Message() working.Message {
	if c.of == nil {
		return working.Tell("ferment.culture_unknown", "a culture nothing is known about")
	}
	p := c.Pace()
	known := working.Tell("ferment.culture",
		"learned from %d {1|bake|bakes}: pace %.0f (%.0f to %.0f), %+.1f a degree beyond the law, %.0f from bake to bake",
		c.Bakes(), p.Likely, p.Low, p.High, c.TemperatureSensitivity().Likely, c.BakeToBake())
	if fades := c.fades(); !fades.IsZero() {
		return working.Tell("ferment.culture_fades", "%v; %v", known, fades)
	}
	return known
}

// changed is how much likelier a log must be when old bakes fade for it to be said that the pace has changed: a hundred
// times, decisive evidence by Jeffreys' scale (Theory of Probability, 1961, appendix B; from memory).
const changed = 2 * math.Ln10

// fades says how old bakes count when the log chose it; nothing when all count alike or the baker said how.
func (c Culture) fades() working.Message {
	t := c.taught()
	days := int(t.HalfLife)
	switch {
	case t.Evidence >= changed:
		return working.Tell("ferment.changed",
			"the pace has changed over the log, so recent bakes count more: one counts half after %d {1|day|days}", days)
	case t.Evidence > 0:
		return working.Tell("ferment.fades",
			"recent bakes count more, which foretold this log better: one counts half after %d {1|day|days}", days)
	}
	return working.Message{}
}

// rests says what an estimate owes to it.
func (c Culture) rests() working.Message {
	if c.of == nil {
		return working.Tell("ferment.rests_unknown",
			"a kitchen nothing is known of: the range narrows with every bake logged")
	}
	return c.Message()
}

// leavenings are the words for what raises a dough.
var leavenings = enum.Of[gasbalance.Leavening]("leavening", "levain", "yeast", "levain and yeast")

// cultureData is a [Culture] as JSON: what its bakes add up to.
type cultureData struct {
	Format    int                `json:"format"`
	Leavening string             `json:"leavening"`
	Person    string             `json:"person,omitzero"`
	Name      string             `json:"name,omitzero"`
	HalfLife  float64            `json:"half_life_days,omitzero"`
	Log       []gasbalance.Entry `json:"log"`
}

// cultureFormat is the number of the form in which cultures are kept.
const cultureFormat = 3

// MarshalJSON writes what the culture's bakes add up to; null for a culture nothing is known of.
func (c Culture) MarshalJSON() ([]byte, error) {
	if c.of == nil {
		return []byte("null"), nil
	}
	g := c.of.group
	return json.Marshal(cultureData{cultureFormat, leavenings.String(g.Kind), c.of.person, c.of.name, g.HalfLife,
		g.Entries})
}

// UnmarshalJSON reads what MarshalJSON wrote. Errors: ErrOutOfRange for an unknown format or leavening, or numbers no
// bakes add up to.
func (c *Culture) UnmarshalJSON(data []byte) error {
	*c = Culture{}
	if string(data) == "null" {
		return nil
	}
	var d cultureData
	if err := quantity.ReadJSON(data, &d); err != nil {
		return err
	}
	var p problems
	if d.Format != cultureFormat {
		p.Add("Format", d.Format, quantity.Tell("ferment.want_format", "%d", cultureFormat), errOutOfRange)
	}
	kind, err := leavenings.Parse(d.Leavening)
	p.Join("Leavening", err)
	p.Float("HalfLife", d.HalfLife, 0, 1e6, "days")
	p.name("Person", d.Person)
	p.name("Name", d.Name)
	g := gasbalance.Group{Kind: kind, HalfLife: d.HalfLife}
	for i := range d.Log {
		p.name(indexed("Log", i)+".Person", d.Log[i].Person)
		p.name(indexed("Log", i)+".Culture", d.Log[i].Culture)
		if !d.Log[i].Sound() || d.HalfLife > 0 && len(d.Log[i].Fading) > 0 {
			p.Add(indexed("Log", i)+".Sums", quantity.Tell("ferment.got_numbers_contradict_each_other",
				"numbers that contradict each other"), quantity.Tell("ferment.want_what_bakes_add_up_to", "what bakes add up to"),
				quantity.ErrInconsistent)
		}
	}
	if err := p.ErrFor(d); err != nil {
		return err
	}
	for _, e := range d.Log { // in order, and each culture once, whatever the file says
		g = g.Add(e)
	}
	*c = newCulture(g, d.Person, d.Name)
	return nil
}
