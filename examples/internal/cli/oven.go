package cli

import (
	"fmt"
	"strings"

	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"github.com/spf13/cobra"
)

type ovenFlags struct {
	output
	in  *asked
	set bake.OvenSetting
	b   bake.OvenLoad
}

var roundFlags = []string{"pieces", "dough", "together", "style", "shape", "vessel", "cold", "preheat", "reheat", "covered", "uncovered", "rescore", "known-dough", "known-time", "extrapolate"}

func newOven(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "oven [SETTING]",
		Short: "What to set the oven to, and the rounds of a bake",
		Long: `oven turns a setting into the other scales: °C, °F and gas mark, for an oven with a fan and for
one that is off. With --pieces and --dough it lays out the whole bake: preheating, lid on and
off, rounds, and reheating between them, in ranges.`,
		Example: `  maslin oven 230C --fan
  maslin oven gas 7
  maslin oven 475F --off 15dF --us
  maslin oven 245C --pieces 6 --dough 897g --vessel pot --together 2`,
	}
	f := &ovenFlags{in: ask(cmd)}
	in, b := f.in, &f.b
	cmd.Flags().BoolVar(&f.set.Fan, "fan", false, "the oven blows its air")
	in.value(&f.set.Off, "off", "DIFFERENCE", "what a thermometer in the oven shows, less its dial", "Off")
	in.number(&b.Pieces, "pieces", "to bake", "Pieces")
	in.value(&b.Dough, "dough", "MASS", "of each piece", "Dough")
	in.number(&b.Together, "together", "pieces in one round (all)", "Together")
	styleFlag(in, &b.Style)
	shapeFlag(in, &b.Shape)
	in.word(&b.Vessel, wordsOf(bake.Stone, bake.Pot, bake.TinPan, bake.Tray), "vessel", "what it bakes on or in (stone)", "Vessel")
	cmd.Flags().BoolVar(&b.Cold, "cold", false, "straight from the refrigerator")
	lasting(in, &b.Preheat, "preheat", "before the first round (the vessel's)", "Preheat")
	lasting(in, &b.Reheat, "reheat", "between rounds (the vessel's)", "Reheat")
	lasting(in, &b.Covered, "covered", "lid on, or steam in (the style's)", "Covered")
	lasting(in, &b.Uncovered, "uncovered", "until done (what is left of the bake)", "Uncovered")
	cmd.Flags().BoolVar(&b.Rescore, "rescore", false, "open the cuts again after the first minutes")
	in.value(&b.KnownDough, "known-dough", "MASS", "a piece of a bake of your own that the time is scaled from", "KnownDough")
	lasting(in, &b.KnownTime, "known-time", "how long that piece baked", "KnownTime")
	cmd.Flags().BoolVar(&b.Extrapolate, "extrapolate", false, "accept sizes outside the data")
	in.paths["Wanted"], in.paths["Oven"] = "SETTING", "SETTING"
	f.register(cmd)
	cmd.RunE = func(_ *cobra.Command, args []string) error { return runOven(s, args, f) }
	return cmd
}

// setting reads "230C", "450 °F" or "gas 7".
func setting(text string) (quantity.Temperature, error) {
	t, err := quantity.ParseTemperature(text)
	if err == nil {
		return t, nil
	}
	if mark, e := bake.ParseGasMark(text); e == nil && strings.Contains(strings.ToLower(text), "gas") {
		return mark.Temperature(), nil
	}
	return t, &quantity.InputError{Got: quantity.Excerpt(text), Want: `an oven temperature, such as "230C" or "450F", or a gas mark from "gas 1/4" to "gas 10"`, Err: quantity.ErrUnit}
}

func runOven(s System, args []string, f *ovenFlags) error {
	if err := f.check(); err != nil {
		return err
	}
	in := f.in
	var p quantity.Problems
	var d *bake.OvenDial
	var plan *bake.Program
	var workings []working.Working
	rounds := in.given("pieces") || in.given("dough")
	if text := strings.Join(args, " "); text != "" {
		var err error
		if f.set.Wanted, err = setting(text); err != nil {
			p.Join("Wanted", err)
		} else {
			f.b.Oven = f.set.Wanted
			dialed, err := f.set.Dial()
			p.Join("", err)
			if err == nil {
				d, workings = &dialed, append(workings, dialed.Working())
			}
		}
	} else {
		in.only("a setting, such as 230C", "fan", "off")
		if !rounds {
			p.Required("Wanted", `an oven temperature, such as "230C" or "gas 7"; or --pieces and --dough for the rounds of a bake`)
		}
	}
	var cautions []working.Caution
	if rounds {
		program, err := f.b.Program()
		p.Join("", err)
		if err == nil {
			plan, workings, cautions = &program, append(workings, program.Working()), program.Cautions()
		}
	} else {
		in.only("--pieces and --dough", roundFlags...)
	}
	if wrong := in.complain(p.Err()); wrong != nil {
		return wrong
	}
	return s.show(f.output, answer{
		page: func(p *page, u units) {
			if d != nil {
				settingPage(p, u, f, *d)
			}
			if plan != nil {
				roundsPage(p, u, f, *plan)
			}
		},
		data: ovenData(f, d, plan), workings: workings, cautions: cautions,
	})
}

func settingPage(p *page, u units, f *ovenFlags, d bake.OvenDial) {
	if d.Set == f.set.Wanted {
		p.para(0, "An oven of "+u.temperature(d.Set, 0))
	} else {
		p.para(0, "Set the oven to "+u.temperature(d.Set, 0)+" for "+u.temperature(f.set.Wanted, 0)+because(f.set, u))
	}
	section(p, "On other scales")
	rows := [][]string{
		{"°C", d.Set.Text(quantity.CelsiusScale, 0) + ", on the dial " + d.Dial.Text(quantity.CelsiusScale, 0)},
		{"°F", d.Set.Text(quantity.FahrenheitScale, 0)},
	}
	if !d.Mark.IsZero() {
		name := strings.TrimPrefix(d.Mark.String(), "gas mark ")
		rows = append(rows, []string{"gas", fmt.Sprintf("mark %s, which is %s (%s on dials)", name, u.temperature(d.Mark.Temperature(), 0), d.Mark.Dial().Text(quantity.CelsiusScale, 0))})
	} else {
		rows = append(rows, []string{"gas", "no mark comes near"})
	}
	p.rows(2, "ll", rows)
	if f.set.Fan {
		p.para(2, "advice on fan ovens differs: "+u.temperature(d.Low, 0)+" to "+u.temperature(d.High, 0)+"; do not also cut the time")
	}
	if f.set.Off.IsZero() {
		p.para(2, "thermostats are off by 10 to 30 degrees: put a thermometer in")
	}
}

// because says why the setting is not what is wanted.
func because(s bake.OvenSetting, u units) string {
	text := ""
	if s.Fan {
		text += ", with a fan"
	}
	switch s.Off.Sign() {
	case 1:
		text += ", in an oven that runs " + u.delta(s.Off) + " hot"
	case -1:
		text += ", in an oven that runs " + u.delta(s.Off.Neg()) + " cold"
	}
	return text
}

func roundsPage(p *page, u units, f *ovenFlags, r bake.Program) {
	title := fmt.Sprintf("%s of %s in %s, about %s from switching on", count(f.b.Pieces, "piece", "pieces"), u.mass(f.b.Dough), count(r.Rounds, "round", "rounds"), minutes(r.Total.Likely))
	if p.b.Len() > 0 {
		section(p, title)
	} else {
		p.para(0, title)
		p.line("")
	}
	var rows [][]string
	for _, x := range r.Phases {
		text := x.Kind.String()
		if r.Rounds > 1 && x.Kind != bake.Preheating {
			text += fmt.Sprintf(", round %d", x.Round)
		}
		if x.Takes.Likely > 0 {
			text += ", " + lasts(x.Takes)
		}
		if x.Oven.IsValid() {
			text += ", " + u.temperature(x.Oven, 0)
		}
		if x.Note != "" {
			text += ": " + x.Note
		}
		hands := ""
		if x.Hands {
			hands = "hands"
		}
		rows = append(rows, []string{minutes(x.Start.Likely), hands, text})
	}
	p.rows(2, "rll", rows)
	p.para(2, "in all "+r.Total.String())
	p.para(2, "each bake "+r.Bake.String()+"; go by the core and the color, not by the clock")
}

// lasts prints a time, as a range where it is one.
func lasts(r quantity.TimeRange) string {
	if r.Spread() == 0 {
		return minutes(r.Likely)
	}
	return minutes(r.Early) + " to " + minutes(r.Late)
}

type phaseData struct {
	Kind  bake.PhaseKind        `json:"kind"`
	Round int                   `json:"round"`
	Oven  *quantity.Temperature `json:"oven,omitempty"`
	Start *rangeData            `json:"start"`
	Takes *rangeData            `json:"takes"`
	Hands bool                  `json:"hands"`
	Note  string                `json:"note,omitempty"`
}

type ovenAnswer struct {
	Format  string                `json:"format"`
	Wanted  *quantity.Temperature `json:"wanted,omitempty"`
	Set     *quantity.Temperature `json:"set,omitempty"`
	Low     *quantity.Temperature `json:"low,omitempty"`
	High    *quantity.Temperature `json:"high,omitempty"`
	Dial    *quantity.Temperature `json:"dial,omitempty"`
	GasMark string                `json:"gas_mark,omitempty"`
	Rounds  int                   `json:"rounds,omitempty"`
	Phases  []phaseData           `json:"phases,omitempty"`
	Total   *rangeData            `json:"total,omitempty"`
	Bake    *rangeData            `json:"bake,omitempty"`
}

func ovenData(f *ovenFlags, d *bake.OvenDial, r *bake.Program) ovenAnswer {
	out := ovenAnswer{Format: "maslin oven 1"}
	if d != nil {
		out.Wanted, out.Set, out.Low, out.High, out.Dial = &f.set.Wanted, &d.Set, &d.Low, &d.High, &d.Dial
		if !d.Mark.IsZero() {
			out.GasMark = d.Mark.String()
		}
	}
	if r != nil {
		out.Rounds, out.Total, out.Bake = r.Rounds, rangeOf(r.Total), rangeOf(r.Bake)
		for _, x := range r.Phases {
			one := phaseData{x.Kind, x.Round, nil, rangeOf(x.Start), rangeOf(x.Takes), x.Hands, x.Note}
			if x.Oven.IsValid() {
				oven := x.Oven
				one.Oven = &oven
			}
			out.Phases = append(out.Phases, one)
		}
	}
	return out
}
