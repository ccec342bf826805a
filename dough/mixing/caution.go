package mixing

import (
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// Cautions returns what can hurt with this way of mixing. They are rules of the trade and of operators' manuals; the
// manual of the machine, local rules and its electrician decide.
func (k MixerKind) Cautions() []working.Caution {
	if k == Hand {
		return nil
	}
	rule := sources.Practice("operators' manuals of dough mixers, common practice")
	return []working.Caution{
		{
			Subject: "mixer", Source: rule,
			Text: working.Tell(
				"mixing.caution_stay", "stay with a mixer that is running: a stiff dough can make it walk off a "+
					"counter"),
			Short: working.Tell("mixing.caution_stay_short", "stay with it while it runs"),
		},
		{
			Subject: "mixer", Source: rule,
			Text: working.Tell(
				"mixing.caution_hands",
				"keep hands, scrapers, sleeves and hair out of a moving bowl; stop it before you touch the dough"),
			Short: working.Tell(
				"mixing.caution_hands_short", "hands, scrapers, sleeves and hair out of a moving bowl: stop it first"),
		},
		{
			Subject: "flour dust", Source: rule,
			Text: working.Tell(
				"mixing.caution_flour_dust", "cover the bowl and start slowly, so that flour does not fly"),
			Short: working.Tell("mixing.caution_flour_dust_short", "cover the bowl and start slowly"),
		},
		{
			Subject: "mixer", Source: rule,
			Text: working.Tell(
				"mixing.caution_guard",
				"never defeat a guard or its interlock; the machine's manual and local safety rules decide"),
			Short: working.Tell(
				"mixing.caution_guard_short",
				"guards and interlocks stay on, and its manual and local safety rules decide"),
		},
		{
			Subject: "motor", Source: rule,
			Text: working.Tell(
				"mixing.caution_motor",
				"let a motor that feels hot rest with the power off before the next batch"),
			Short: working.Tell("mixing.caution_motor_short", "a hot motor rests with the power off"),
		},
	}
}
