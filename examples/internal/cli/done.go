package cli

import (
	"example.org/maslin/bake"
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"github.com/spf13/cobra"
)

type doneFlags struct {
	output
	goalFlags
	in *asked
	r  bake.LoafReading
}

func newDone(s System) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "done",
		Short: "Is the loaf baked? By core temperature, and by weight or time held",
		Long: `done says whether a loaf is baked: the core at its target AND baked out, which its weight or the
time held at the target tells. The target is that of the bread, or what boiling water allows
at your altitude. The color of the crust is yours to judge.

Exit status: 0 answered, done or not yet; 1 the reading says nothing, so close to boiling;
2 bad input.`,
		Example: `  maslin done --core 95C --altitude 1150m --dough 897g --loaf 795g
  maslin done --style "soft roll" --core 199F --held 3min --us`,
		Args: flagsOnly,
	}
	f := doneFlags{in: ask(cmd)}
	in := f.in
	in.value(&f.r.Core, "core", "TEMPERATURE", "what the probe reads in the middle of the loaf", "Core")
	f.goalFlags.register(in, true)
	in.value(&f.r.Dough, "dough", "MASS", "of the piece when it went in", "Dough")
	in.value(&f.r.Loaf, "loaf", "MASS", "of the loaf now", "Loaf")
	lasting(in, &f.r.Held, "held", "since the core reached its target", "Held")
	lasting(in, &f.r.InOven, "in-oven", "since the loaf went in", "InOven")
	in.value(&f.r.ProbeError, "probe-error", "DIFFERENCE", "how far the probe may be off (1dC)", "ProbeError")
	f.output.register(cmd)
	cmd.RunE = func(*cobra.Command, []string) error { return runDone(s, f) }
	return cmd
}

func runDone(s System, f doneFlags) error {
	if err := f.check(); err != nil {
		return err
	}
	f.r.Goal = f.goal
	v, err := f.r.Judge()
	if wrong := f.in.complain(err); wrong != nil {
		return wrong
	}
	target, err := f.goal.Target()
	if err != nil {
		return f.in.complain(err)
	}
	guide, err := f.goal.Style.Guide()
	if err != nil {
		return f.in.complain(err)
	}
	return s.show(f.output, answer{
		page: func(p *page, u units) { donePage(p, u, f, v, target, guide) }, data: doneData(f, v, target, guide), workings: []working.Working{v.Working()},
		cautions: v.Cautions(), no: v.State == bake.SaysNothing,
	})
}

func donePage(p *page, u units, f doneFlags, v bake.LoafVerdict, t bake.CoreTarget, guide bake.StyleGuide) {
	core := u.temperature(f.r.Core, 1)
	switch v.State {
	case bake.Done:
		p.para(0, "Done — a core of "+core)
	case bake.SaysNothing:
		p.para(0, "This reading says nothing — a core of "+core+" is where every loaf ends, baked out or not")
	default:
		p.para(0, "Not yet — a core of "+core)
	}
	section(p, "By what")
	least := percent(guide.MinimumLoss, 0)
	p.rows(2, "ll", [][]string{{"core", doneCore(u, v)}, {"weight", doneWeight(v, guide, least)}, {"time held", doneHeld(f, v, guide)}, {"color", "yours to judge; no number here sees it"}})
	section(p, "What done means here: "+f.goal.Style.String())
	p.para(2, "a core of "+u.temperature(t.Core, 1)+"; sources accept "+u.temperature(t.From, 0)+" to "+u.temperature(t.To, 0)+" ("+guide.Confidence.String()+" agreement)")
	p.para(2, placePart(u, t.Boiling, f.goal.Place, t.Capped))
	if guide.MinimumLoss.Sign() > 0 {
		p.para(2, "and "+least+" lighter than the dough, or held at that core for "+quantity.FormatDuration(guide.Hold)+" or more")
	}
	if guide.Note != "" {
		p.para(2, guide.Note)
	}
}

func doneCore(u units, v bake.LoafVerdict) string {
	switch {
	case v.CoreThere && v.Informs:
		return "there"
	case v.CoreThere:
		return "there, but so close to boiling that it tells no more"
	case v.InAccepted:
		return "short of " + u.temperature(v.Target, 1) + "; some take it out from here"
	}
	return "short of " + u.temperature(v.Target, 1)
}

func doneWeight(v bake.LoafVerdict, guide bake.StyleGuide, least string) string {
	switch {
	case guide.MinimumLoss.Sign() == 0:
		return "no criterion for this bread"
	case !v.Weighed:
		return "not weighed"
	case v.Light:
		return percent(v.Loss, 1) + " lighter: drier than usual"
	case v.LossThere:
		return percent(v.Loss, 1) + " lighter: baked out"
	}
	return percent(v.Loss, 1) + " lighter; " + least + " wanted"
}

func doneHeld(f doneFlags, v bake.LoafVerdict, guide bake.StyleGuide) string {
	switch {
	case guide.MinimumLoss.Sign() == 0 && guide.Hold == 0:
		return "no criterion for this bread"
	case v.HeldThere:
		return quantity.FormatDuration(f.r.Held) + ": long enough"
	case v.HoldFor > 0 && !v.LossThere:
		return quantity.FormatDuration(v.HoldFor) + " more at the target would do"
	case f.r.Held == 0:
		return "not given"
	}
	return quantity.FormatDuration(f.r.Held)
}

type doneAnswer struct {
	Format     string               `json:"format"`
	State      bake.LoafState       `json:"state"`
	Style      bake.Style           `json:"style"`
	Core       quantity.Temperature `json:"core"`
	Target     quantity.Temperature `json:"target"`
	From       quantity.Temperature `json:"accepted_from"`
	To         quantity.Temperature `json:"accepted_to"`
	Place      placeData            `json:"place"`
	Capped     bool                 `json:"capped"`
	CoreThere  bool                 `json:"core_there"`
	InAccepted bool                 `json:"in_accepted"`
	Loss       *quantity.Percent    `json:"loss,omitempty"`
	LossThere  bool                 `json:"loss_there"`
	HeldThere  bool                 `json:"held_there"`
	HoldFor    quantity.Elapsed     `json:"hold_for"`
	Least      quantity.Percent     `json:"minimum_loss"`
	Hold       quantity.Elapsed     `json:"hold"`
	Informs    bool                 `json:"reading_informs"`
	Says       string               `json:"says"`
	Cautions   []cautionData        `json:"cautions"`
}

func doneData(f doneFlags, v bake.LoafVerdict, t bake.CoreTarget, guide bake.StyleGuide) doneAnswer {
	out := doneAnswer{
		Format: "maslin done 1", State: v.State, Style: f.goal.Style, Core: f.r.Core, Target: v.Target, From: t.From, To: t.To,
		Place: placeData{f.goal.Place.Altitude, v.Boiling}, Capped: v.Capped, CoreThere: v.CoreThere, InAccepted: v.InAccepted,
		LossThere: v.LossThere, HeldThere: v.HeldThere, HoldFor: quantity.Elapsed(v.HoldFor), Least: guide.MinimumLoss, Hold: quantity.Elapsed(guide.Hold),
		Informs: v.Informs, Says: v.String(), Cautions: cautionsData(v.Cautions()),
	}
	if v.Weighed {
		out.Loss = &v.Loss
	}
	return out
}
