package bake

import (
	"example.org/maslin/dough/quantity"
	"example.org/maslin/dough/working"
	"example.org/maslin/internal/sources"
)

// OvenCautions says what can hurt at a hot oven: heat, steam, lids, glass, enamel, children, dust. Local
// codes and the makers' manuals go before anything said here.
func OvenCautions() []working.Caution {
	return []working.Caution{
		{
			Subject: burnsSubject, Source: sources.Judged("safe handling of hot vessels"),
			Short: working.Tell("bake.short_burns",
				"oven, pots, lids and racks burn at a touch: dry gloves that cover the wrist"),
			Text: working.Tell("bake.caution_burns",
				"Oven, pot, lid, stone and rack burn at a touch, and a lid looks the same hot or cold. Use dry gloves that "+
					"cover the wrist; a wet glove carries the heat through."),
		},
		{
			Subject: steamSubject, Source: sources.Judged("safe handling of steam"),
			Short: working.Tell(
				"bake.short_steam",
				"open oven and lids away from you and let the steam out first; water for steam only into a pan meant for it",
			),
			Text: working.Tell("bake.caution_steam",
				"Open the oven and lift a lid away from you and let the steam out before you reach in. Pour water for steam "+
					"only into a pan meant for it, with a long spout and the face turned away."),
		},
		{
			Subject: "hot glass, enamel and iron", Source: sources.GlassOvenware,
			Short: working.Tell("bake.short_hot_glass",
				"no water on hot glass, enamel or cast iron: it can burst"),
			Text: working.Tell("bake.caution_hot_glass",
				"No water on the glass of an oven door, on hot glass, enamel or cast iron, and no hot vessel on a cold or wet "+
					"surface: it can burst. Preheat the oven before glass goes in, never from freezer to oven, and throw chipped "+
					"glass away."),
		},
		{
			Subject: "children and animals", Source: sources.Judged("safe kitchen"),
			Short: working.Tell("bake.short_children",
				"children and animals away from the oven and from hot pots"),
			Text: working.Tell("bake.caution_children",
				"Keep them away from the open door, and from pots left to cool."),
		},
		{
			Subject: firstAidSubject, Source: sources.BurnsFirstAid,
			Short: working.Tell("bake.short_first_aid",
				"a burn is cooled at once under cool running water for 20 minutes, rings and clothing off unless they stick, no "+
					"ice, no butter, then covered; call for help when it is large, deep, or on face or hands"),
			Text: working.Tell("bake.caution_first_aid",
				"Cool a burn at once under cool running water for 20 minutes, no ice, no butter. Take rings, watches and "+
					"clothing off it unless they stick, keep the person warm, then cover it with clean film; call for help when "+
					"it is large, deep, or on face or hands."),
		},
		{
			Subject: "flour dust", Source: sources.HSEFlourDust,
			Short: working.Tell("bake.short_flour_dust",
				"dust little and from low down: flour dust can cause asthma, and a cloud of it can ignite"),
			Text: working.Tell("bake.caution_flour_dust",
				"Flour dust causes asthma: keep it as far below 10 mg/m³ over 8 hours (30 over 15 minutes) as you can. Sprinkle "+
					"from low down instead of throwing, never sweep dry or blow flour away, start mixers slowly; stop and see a "+
					"doctor with a cough or a wheeze. A cloud of it near a flame or a glowing element can ignite."),
		},
		{
			Subject: "rules", Source: sources.Judged("local codes come first"),
			Short: working.Tell(
				"bake.short_rules",
				"local fire, gas, food and labor codes decide in a business; gas and electrical work is for licensed people",
			),
			Text: working.Tell("bake.caution_rules",
				"In a business, local fire, gas, food and labor codes decide, and gas and electrical work is for licensed "+
					"people."),
		},
	}
}

// doorCautions are for one who opens the door to look: what burns, what to do then, and that color decides too.
func doorCautions() []working.Caution {
	var out []working.Caution
	for _, c := range OvenCautions() {
		if c.Subject == burnsSubject || c.Subject == steamSubject || c.Subject == firstAidSubject {
			out = append(out, c)
		}
	}
	return append(out, colorCaution())
}

// The subjects of what happens at an open oven.
const (
	burnsSubject    working.Subject = "burns"
	steamSubject    working.Subject = "steam"
	firstAidSubject working.Subject = "first aid"
)

// FoodCautions says what temperature and time cannot promise.
func FoodCautions() []working.Caution {
	return []working.Caution{
		{
			Subject: "never a promise", Source: sources.Judged("a core temperature is no kill step"),
			Short: working.Tell("bake.short_never_a_promise",
				"a core temperature is no proof that food is safe"),
			Text: working.Tell(
				"bake.caution_never_a_promise",
				"A core temperature is information, not a proof that food is safe: fillings, dry crusts and what lands on the "+
					"loaf after baking are outside of it. In a business a validated process and the food authority decide.",
			),
		},
		{
			Subject: "raw dough", Source: sources.RawFlour,
			Short: working.Tell("bake.short_raw_dough",
				"raw flour may carry germs: do not taste it; wash hands and tools; no dough for pets"),
			Text: working.Tell("bake.caution_raw_dough",
				"Raw flour and dough are not eaten or tasted; wash hands and tools with soap, do not try to heat-treat flour at "+
					"home, and keep rising dough away from pets: it goes on rising in their stomach and makes alcohol, an "+
					"emergency."),
		},
		{
			Subject: "acrylamide", Source: sources.AcrylamideRule,
			Short: working.Tell("bake.short_acrylamide",
				"bake golden, not dark"),
			Text: working.Tell("bake.caution_acrylamide",
				"It forms in the crust above %v when it is dry. Bake golden, not dark. EU benchmark levels: 50 µg/kg for soft "+
					"wheat bread, 100 µg/kg for other soft bread.", quantity.Celsius(120)),
		},
		ropeCaution(),
	}
}

func ropeCaution() working.Caution {
	return working.Caution{
		Subject: "rope", Source: sources.RopeSpores,
		Short: working.Tell("bake.short_rope",
			"cool fast on a rack, keep dry, and throw away what smells of overripe fruit or pulls strings"),
		Text: working.Tell("bake.caution_rope",
			"Spores of Bacillus survive in a core that only just reaches boiling. Cool loaves fast on a rack, keep them "+
				"dry and not warm, and throw bread away that smells of overripe fruit or pulls strings; toasting does not "+
				"rescue it."),
	}
}

func colorCaution() working.Caution {
	return working.Caution{
		Subject: "crust", Source: sources.GuideBakeTimes,
		Short: working.Tell("bake.short_crust", "the color of the crust is yours to judge, whatever the core says"),
		Text: working.Tell("bake.caution_crust",
			"The color of the crust is a criterion of its own that no number here can see: a strong fire browns a loaf that "+
				"is not baked."),
	}
}

// coolingCautions says what goes wrong with warm bread.
func coolingCautions() []working.Caution {
	return []working.Caution{
		{
			Subject: "do not wrap warm", Source: sources.NoWarmWrap,
			Text: working.Tell("bake.caution_warm_wrap",
				"Cool on a rack with air all around, and wrap or bag only when the core is at room temperature: warm bread "+
					"sweats in its wrapping and molds."),
		},
		ropeCaution(),
	}
}
