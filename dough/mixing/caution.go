package mixing

import (
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// Cautions returns what can hurt with this way of mixing. They are rules of the trade and
// of operators' manuals; the manual of the machine, local rules and its electrician decide.
func (kind MixerKind) Cautions() []working.Caution {
	if kind == Hand {
		return nil
	}
	rule := sources.Practice("operators' manuals of dough mixers, common practice")
	out := []working.Caution{
		{Subject: "mixer", Text: working.Tell("mixing.caution_stay", "stay with a mixer that is running: a stiff dough can make it walk off a counter"), Source: rule},
		{Subject: "mixer", Text: working.Tell("mixing.caution_hands", "keep hands, scrapers, sleeves and hair out of a moving bowl; stop it before you touch the dough"), Source: rule},
		{Subject: "flour dust", Text: working.Tell("mixing.caution_flour_dust", "cover the bowl and start slowly, so that flour does not fly"), Source: rule},
		{Subject: "mixer", Text: working.Tell("mixing.caution_guard", "never defeat a guard or its interlock; the machine's manual and local safety rules decide"), Source: rule},
		{Subject: "motor", Text: working.Tell("mixing.caution_motor", "let a motor that feels hot rest with the power off before the next batch"), Source: rule},
	}
	return out
}
