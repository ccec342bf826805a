package bake

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/report"
	"example.org/maslin/dough/working"
)

// AskedOven is a setting, a batch, or a batch at a setting, and everything that is asked at once of its bake. What is
// nil is not asked.
type AskedOven struct {
	Setting *OvenSetting `json:"setting,omitempty"`
	Load    *OvenLoad    `json:"load,omitempty"` // its Oven, where that is not given, is the setting
}

// OvenAnswers are the answers of [AskedOven.Answer].
type OvenAnswers struct {
	answer

	Setting *OvenDial `json:"setting,omitempty"`
	Program *Program  `json:"program,omitempty"`
	// BakedOut is what the bake does to the crust, where that can be said: not of thin breads.
	BakedOut *BakedOut `json:"baked_out,omitempty"`
}

// Answer asks, as far as they are asked, [OvenSetting.Dial], [OvenLoad.Program] and [Program.BakeOut]; what can be
// answered is, beside an error for the rest. Valid range, accuracy and sources are theirs. Errors: those of the first
// two; ErrRequired where nothing is asked.
func (a AskedOven) Answer() (OvenAnswers, error) {
	var p quantity.Problems
	var out OvenAnswers
	if a.Setting == nil && a.Load == nil {
		p.Required("Setting", quantity.Tell("bake.want_setting_or_load",
			`an oven setting, such as "230C" or "gas 7"; or the pieces and the dough of a batch, for its rounds`))
	}
	if a.Setting != nil {
		dial, err := a.Setting.Dial()
		out.Setting = found(&p, "Setting", dial, err)
	}
	if a.Load != nil {
		load := *a.Load
		if load.Oven.IsZero() && a.Setting != nil {
			load.Oven = a.Setting.Wanted
		}
		program, err := load.Program()
		if out.Program = found(&p, "Load", program, err); err == nil {
			crust, err := program.BakeOut()
			out.BakedOut = found(new(quantity.Problems), "", crust, err)
		}
	}
	return out, p.ErrFor(a)
}

// parts are the answers in the order in which they are told.
func (a OvenAnswers) parts() parts {
	return with(with(with(nil, "setting", a.Setting), "program", a.Program), "baked_out", a.BakedOut)
}

// String is the headline of the report.
func (a OvenAnswers) String() string { return a.Report().Headline.String() }

// Report tells the setting, then the program of the batch, and then what it does to the crust.
func (a OvenAnswers) Report() report.Report { return a.parts().told() }

// Workings derive each of them.
func (a OvenAnswers) Workings() []working.Working { return a.parts().derived() }
